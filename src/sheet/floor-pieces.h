/* The parts of a floor drawing that a plan adds: pieces, seams, numbers, marks at broken rules. */
#pragma once

#include "pen.h"

/* How a kind of piece is hatched: drops plain, fills hatched, fills of several joined pieces cross-hatched. */
typedef enum
{
  RC_HATCH_PLAIN,
  RC_HATCH_LINES,
  RC_HATCH_CROSSED,
} RcHatch;

RcHatch rc_piece_get_hatch (const RcPiece *piece);

/* Fills rings by their hatch, with a thin outline; selected ones are tinted and heavy. For legends too. */
void rc_piece_draw_rings (RcPen *pen, const GPtrArray *rings, RcHatch hatch, gboolean selected);
/* Sets the line for a kind of seam: side seams one heavy line, cross seams a heavy dashed one. The caller saves and
 * restores cr, adds the path and strokes. */
void rc_seam_set_line (RcPen *pen, RcSeamKind kind);
/* A number in a ring, the mark of a piece; in a triangle, of a broken rule. */
void   rc_piece_draw_number (RcPen *pen, RcSpot middle, guint number, gboolean selected);
double rc_piece_get_number_radius (RcPen *pen, guint number);
void   rc_rule_draw_mark (RcPen *pen, RcSpot middle, guint number);

void rc_floor_draw_pieces (RcPen *pen, const RcPlan *plan, int floor, guint selected);
void rc_floor_draw_seams (RcPen *pen, const RcPlan *plan, int floor);
void rc_floor_draw_marks (RcPen *pen, const RcPlan *plan, int floor);
void rc_floor_draw_numbers (RcPen *pen, const RcPlan *plan, int floor, guint selected);
void rc_floor_draw_sizes (RcPen *pen, const RcPlan *plan, int floor);

/* Broken rules of the chosen options in the order they are numbered from 1: GPtrArray of RcBrokenRule (borrowed). The
 * floor of each is in `floors` (GArray of int, nullable, transfer full). */
GPtrArray *rc_plan_dup_broken (const RcPlan *plan, GArray **floors);

/* The storey of a room; FALSE for an id that is no room of the house, as a stair's. */
gboolean rc_house_get_room_floor (const RcHouse *house, const char *room_id, int *floor);
