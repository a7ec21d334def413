/* The parts of a floor drawing that a house has without a plan: walls, names, dimensions. Each draws the
 * storey `floor` only, and only what the pen sees.
 */
#pragma once

#include "pen.h"

void rc_floor_draw_walls (RcPen *pen, const RcHouse *house, int floor, const char *selected_room);
void rc_floor_draw_names (RcPen *pen, const RcHouse *house, int floor, const char *selected_room, RcAreaUnit area_unit);
void rc_floor_draw_dimensions (RcPen *pen, const RcHouse *house, int floor, const RcLengthStyle *style);
/* The whole storey's width and height, outside it. */
void rc_floor_draw_overall (RcPen *pen, const RcHouse *house, int floor, const RcLengthStyle *style);

/* What the storey's rooms cover; all zero for none. */
RcBox rc_floor_compute_box (const RcHouse *house, int floor);

/* How thick walls are drawn. */
double rc_floor_get_wall_width (const RcPen *pen);
