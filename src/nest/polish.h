/* What the searches do not look at: with as little cost, a larger leftover and fewer cuts right across the rolls. */
#pragma once

#include "clock.h"
#include "layout.h"

/* Lengths of a cutting change rolls and places, or two become one, as long as the score gets better. Only where nothing
 * has a repeat or a pinned place, as lengths may then lie anywhere. Improves spots in place; all items are placed.
 * `clock` is nullable; with more than
 * `most_segments` lengths, all pairs of which are tried, nothing is done. TRUE: something got better. */
gboolean rc_nest_polish (const RcNestTask *task, const RcNestClock *clock, guint most_segments, RcNestSpot *spots);
