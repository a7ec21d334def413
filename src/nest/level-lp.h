/* The linear program over levels: a cutting of three stages is a set of lengths cut across the roll, each of columns
 * side by side. The least total length of levels that hold all items bounds every such cutting, on one roll or several.
 *
 * Solved by column generation. The most valuable level is found by knapsacks, of items in a column and of columns in a
 * level, that let an item lie in several columns of a level at once: its value is never too low, so the bound holds.
 * Where that is as high as it gets, items that are repeated are kept apart one by one: the knapsacks then count which
 * of them a level has already (decremental state space relaxation, Righini and Salani 2008; from memory). Solved to the
 * end, no item is in a level twice; then a cut more never lowers the bound. */
#pragma once

#include "clock.h"

typedef struct
{
  RcLength w, h;
} RcNestLevelItem;

/* The bound for `n` items, none wider than `width`; no level is longer than `longest`. At least `known`; `known` itself
 * when the tables would be too large. */
RcLength rc_nest_level_bound (const RcNestLevelItem *items, guint n, RcLength width, RcLength longest, RcLength known,
                              const RcNestClock *clock);
