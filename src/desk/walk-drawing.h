/* The walls of one room as they are typed, closed or not, over the floor plan: the wall at hand marked, the gap that is
 * left dashed.
 */
#pragma once

#include "floor-drawing.h"

/* `at`: where the room's origin lies in the house. `wall`: the wall at hand from 1, 0 for none. With `is_open` the
 * whole walk is drawn, because the plan does not show it; otherwise only the wall at hand. */
void rc_walk_drawing_draw (const RcRoom *room, RcPoint at, guint wall, gboolean is_open, const RcPalette *palette,
                           const RcView *view, cairo_t *cr);
