/* The linear program over slices: a cut right across the roll meets some items side by side, each item over all of its
 * length. The least total length of slices bounds every cutting, free or staged, on one roll or several.
 *
 * Solved by column generation: GLPK finds prices of the items, a knapsack the most valuable slice. Prices are rounded
 * to whole numbers and the bound formed from them exactly (Farley 1990), so every step yields a valid bound. */
#pragma once

#include "clock.h"

typedef struct
{
  RcLength w, h;
  guint    count;
} RcNestSliceItem;

/* The bound for `n` kinds of items, none wider than `width`; at least `known`, which ends the search once it is as high
 * as the program's own value rounded up to `grid`. */
RcLength rc_nest_slice_bound (const RcNestSliceItem *items, guint n, RcLength width, RcLength known, RcLength grid,
                              const RcNestClock *clock);
