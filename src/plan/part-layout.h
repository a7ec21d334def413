/* One way to cut a part: the pieces and cross seams that a set of cuts leaves, and what they cost. Private to parts. */
#pragma once

#include "part.h"

/* Cross seams of a layout, from low to high. */
typedef struct
{
  RcLength y;
  gboolean is_step; /* of the outline: a full width may be cut there too */
} RcCut;

#define RC_MOST_CUTS 32

typedef struct
{
  RcCut cuts[RC_MOST_CUTS];
  guint n;
} RcCuts;

/* Cuts beyond RC_MOST_CUTS are left out. */
void rc_cuts_add (RcCuts *cuts, RcLength y, gboolean is_step);

RcBlock rc_block_make (const RcSite *site, RcBox box);

/* The part cut there. NULL where a full width that could be one length would be cut elsewhere than at a step, a seam
 * would lie in a neck, or a piece would be a sliver. (transfer full) */
RcLayout *rc_layout_new (const RcPart *part, const RcSite *site, const RcCuts *cuts);

/* The part cut where the estimator has fixed it, whatever that breaks. (transfer full) */
RcLayout *rc_layout_new_pinned (const RcPart *part, const RcSite *site, const RcRing *points);

/* TRUE if the layout's pieces are those of the cuts. */
gboolean rc_layout_is_cut_so (const RcLayout *layout, const RcCuts *cuts);

void rc_layout_free (RcLayout *layout);
