/* The parts of the fitters' sheet that differ from area to area and stair to stair.
 */
#pragma once

#include "sheet-head.h"

/* A drawing of the area, its pieces in order with where they come off the rolls, its seams: cross seams first, with
 * the edge to cut first, marks, tape. */
void rc_fitters_add_area (RcSheetWork *work, const RcAreaPlan *area_plan);

/* What 1 % is in each room that is stretched. */
void rc_fitters_add_stretch_table (RcSheetWork *work);

/* Where a piece comes off: "Roll R-7 at 12' 0\"". (transfer full) */
char *rc_fitters_dup_source (const RcPlan *plan, const RcPiece *piece);

/* A drawing of the stair laid flat, its pieces, the work on it. */
void rc_fitters_add_stair (RcSheetWork *work, const RcStair *stair);

/* Which of a cross seam's two pieces is cut first: the one whose pile leans out over the seam. 0 when the pile runs
 * along the seam. */
guint rc_seam_find_first_cut (const RcPlan *plan, const RcSeam *seam);
