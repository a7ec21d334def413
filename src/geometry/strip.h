/* Slicing a region into parts along strips that run in y.
 *
 * Used by the planner after it has turned the floor so that the pile runs along y.
 */
#pragma once

#include "polygon.h"

/* One connected part of a region inside a strip x0 <= x <= x1. The box is the least one on whole ticks that holds the
 * part: sloping walls are rounded outwards, never inwards. Parts that only touch at a point or have no area inside the
 * strip are not parts. */
typedef struct
{
  RcBox box;
} RcStripPart;

/* All parts in the strip, sorted by y0 then x0. x0 < x1. Exact: no floating point. (transfer full) GArray of
 * RcStripPart. */
GArray *rc_region_slice (const RcRegion *region, RcLength x0, RcLength x1);

/* Where the line x = `x` runs inside the region, as y intervals (GArray of RcInterval, sorted, apart). Intervals where
 * the region lies on both sides of the line only: a line along a wall gives none. Ends on sloping walls are rounded
 * outwards. */
typedef struct
{
  RcLength from, to;
} RcInterval;

GArray *rc_region_cross_line_x (const RcRegion *region, RcLength x);

/* The same across: where y = `y` runs inside the part of the region between x0 and x1. */
GArray *rc_region_cross_line_y (const RcRegion *region, RcLength y, RcLength x0, RcLength x1);

/* To the heights collected in `breaks` (of RcLength) adds those at which the box begins or ends within the interval.
 * Where two parts on one side of a line touch in a point of it, the interval goes on from one to the other. */
void rc_interval_add_breaks (const RcInterval *interval, const RcBox *box, GArray *breaks);
