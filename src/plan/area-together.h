/* What areas cost at least that come out of one lot, with nothing else in it: all ways to lay them (area-choice.h), the
 * more promising first, strip lines in ever smaller stretches until the cheapest can be told (branch and bound). */
#pragma once

#include "area-choice.h"
#include "lay-bound.h"

/* TRUE if there are not too many ways for that. `choices` of RcAreaChoice, one at least. */
gboolean rc_area_choices_are_few (const GPtrArray *choices);

/* The areas and `cuts` (of RcNestChoiceCut) together, in the units of RcNestChoice; G_MAXINT64 where there is not
 * carpet enough. Where the clock is over or it takes too long, as high as was found by then, or 0. */
gint64 rc_area_choices_find_together (const GPtrArray *choices, const GArray *cuts, RcLengthCost cost,
                                      gconstpointer user_data, const RcNestClock *clock);
