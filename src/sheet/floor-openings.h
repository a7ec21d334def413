/* Doors, archways and windows of a floor drawing. Each draws those of the storey `floor` that the pen sees.
 */
#pragma once

#include "pen.h"

/* The gaps in the walls; leaves, swings and glass are drawn apart, over the carpet. */
void rc_floor_draw_gaps (RcPen *pen, const RcHouse *house, int floor);
void rc_floor_draw_leaves (RcPen *pen, const RcHouse *house, int floor);
/* Makes the box large enough for the leaves that stand open beyond it. */
void rc_floor_add_leaves (const RcHouse *house, int floor, RcBox *box);
/* The openings' own marks, "D2", beside them. */
void rc_floor_draw_opening_marks (RcPen *pen, const RcHouse *house, int floor);
