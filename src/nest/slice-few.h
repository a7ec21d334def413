/* A quick bound in place of the linear program over slices (slice-lp.h) where items are few: all slices are listed, and
 * the program is solved for prices of the items by which no slice is worth more than its width. Besides what each item
 * needs there may be lengths of which any of some items may take what it likes, as where a seam between two pieces may
 * lie anywhere. */
#pragma once

#include "slice-lp.h"

/* A length that items[first .. first + n - 1] share out among themselves. */
typedef struct
{
  RcLength length;
  guint    first, n;
} RcNestSlicePool;

/* A bound on the length as rc_nest_slice_bound gives one, at least `known`; no more than a simple one where there are
 * too many slices. */
RcLength rc_nest_slice_bound_few (const RcNestSliceItem *items, guint n, const RcNestSlicePool *pools, guint n_pools,
                                  RcLength width, RcLength known);
