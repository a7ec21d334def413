/* A quick bound in place of the linear program over slices (slice-lp.h): prices for the items by which no slice is
 * worth more than its width, found item by item. */
#pragma once

#include "slice-lp.h"

/* A bound on the length as rc_nest_slice_bound gives one, at least `known`. Quick where `width` is a few hundred. */
RcLength rc_nest_slice_bound_few (const RcNestSliceItem *items, guint n, RcLength width, RcLength known);
