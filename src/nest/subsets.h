/* For few items: the least length that each subset of them needs, exactly, by dynamic programming over subsets.
 *
 * Three stages: a column is a subset, a level a set of columns with the least width for each length, a roll a sequence
 * of levels. Any stages: the widths and lengths that no other cutting of the same subset beats, by joining two subsets
 * side by side or one after the other. Patterns and pinned places are handled in three stages, matches not; there each
 * level start is a case of its own.
 */
#pragma once

#include "clock.h"
#include "layout.h"

enum
{
  RC_NEST_MOST_EXACT = 17,         /* items, three stages, no repeats */
  RC_NEST_MOST_EXACT_ANY = 13,     /* items, any stages */
  RC_NEST_MOST_EXACT_REPEATS = 11, /* items, with patterns or pins */
};

typedef struct _RcNestSubsets RcNestSubsets;

/* Items 0 .. n-1 in `items`, bit i of a set is item i; cuttings start at `start`, are at most `width` wide and end at
 * most at `end`. With `only_all` no other set than that of all items is asked for. NULL when the clock is over first.
 */
RcNestSubsets *rc_nest_subsets_new (const RcNestItem *items, guint n, int stages, RcLength width, RcLength start,
                                    RcLength end, gboolean only_all, const RcNestClock *clock);
void           rc_nest_subsets_free (RcNestSubsets *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcNestSubsets, rc_nest_subsets_free)

/* Where the best cutting of exactly these items ends; G_MAXINT64 when there is none. */
RcLength rc_nest_subsets_get_end (const RcNestSubsets *self, guint32 set);

/* Writes the spots of the items of `set`. */
void rc_nest_subsets_place (const RcNestSubsets *self, guint32 set, int bin, RcNestSpot *spots);
