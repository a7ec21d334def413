/* The linear program over slices: a cut right across the roll meets some items side by side, each item over all of its
 * length. The least total length of slices bounds every cutting, free or staged, on one roll or several. Solved by
 * column generation; a knapsack finds the most valuable slice. */
#pragma once

#include "clock.h"

typedef struct
{
  RcLength w, demand; /* demand: the length to be cut */
  guint    count;     /* most side by side in one slice */
} RcNestSliceItem;

/* The bound for `n` kinds of items, none wider than `width`; at least `known`, which ends the search once it is as high
 * as the program's own value rounded up to `grid`. */
RcLength rc_nest_slice_bound (const RcNestSliceItem *items, guint n, RcLength width, RcLength known, RcLength grid,
                              const RcNestClock *clock);
