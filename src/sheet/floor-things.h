/* What stands on a floor: cut-outs, and stairs where they begin.
 */
#pragma once

#include "house.h"
#include "pen.h"

/* Cut-outs with their names where they fit; a stair opening crossed out. */
void rc_floor_draw_cutouts (RcPen *pen, const RcHouse *house, int floor);

/* Steps, the line walked with an arrow at the top, and the word UP at the bottom. */
void rc_floor_draw_stairs (RcPen *pen, const RcHouse *house, int floor);

/* The steps `first` to `last` (from 1) of a stair, tinted so that what was drawn there shows through. */
void rc_floor_tint_stair (RcPen *pen, const RcStair *stair, guint first, guint last);

/* What the stairs placed on the storey cover; FALSE when there are none. */
gboolean rc_floor_compute_stair_box (const RcMeasure *measure, int floor, RcBox *box);

/* The stair at a point of the house, the last drawn first; NULL for none. */
const RcStair *rc_floor_find_stair (const RcMeasure *measure, int floor, RcPoint point);
