/* Life of the parts a plan is made of: pieces, seams, broken rules, options. */
#pragma once

#include "plan.h"
#include "site.h"

RcPiece *rc_piece_new (RcPieceKind kind);
RcPiece *rc_piece_copy (const RcPiece *piece);
void     rc_piece_free (RcPiece *piece);

/* Its cut, to be placed on a roll, without a label. Its strings live as long as the program. */
RcNestCut rc_piece_get_cut (const RcPiece *piece);

RcSeam *rc_seam_new (RcSeamKind kind, RcPoint from, RcPoint to);
RcSeam *rc_seam_copy (const RcSeam *seam);
void    rc_seam_free (RcSeam *seam);

RcBrokenRule *rc_broken_rule_copy (const RcBrokenRule *broken);
void          rc_broken_rule_free (RcBrokenRule *broken);

RcOption *rc_option_new (const char *name);
RcOption *rc_option_copy (const RcOption *option);
void      rc_option_free (RcOption *option);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcOption, rc_option_free)

/* Moves all of it that lies in the house. */
void rc_option_move (RcOption *option, RcLength dx, RcLength dy);

/* TRUE if both cut the same pieces from the same floor at the same cost. */
gboolean rc_option_is_same (const RcOption *a, const RcOption *b);

/* What it takes and costs by the weights, with its cuts placed on a roll bought to measure. */
void rc_option_weigh (RcOption *option, const RcSite *site, const RcNestParams *params);
