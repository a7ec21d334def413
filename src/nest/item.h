/* The cuts of a problem one by one: a cut of quantity 3 is three items. */
#pragma once

#include "nest.h"

typedef struct
{
  RcLength w, h;          /* across and along the roll, > 0 */
  RcLength repeat, phase; /* repeat 0: free; else 0 <= phase < repeat */
  RcLength across_repeat, across_phase;
  int      match, across_match; /* -1: none */
  int      group;               /* -1: none */
  guint    pinned;              /* as RcNestCut.pinned_roll */
  gboolean is_along_pinned, is_across_pinned;
  RcLength along, across; /* where it is pinned */
  guint    cut, copy;
} RcNestItem;

typedef struct
{
  RcNestItem *items;
  guint       n;
  GPtrArray  *groups;                   /* of char*: the names, borrowed */
  GPtrArray  *matches, *across_matches; /* likewise */
  gboolean    has_repeats;
  gboolean    is_tied; /* a match, a pattern across or a pinned place: only the constructive solver handles these */
  RcLength    least_w, least_h;
} RcNestItems;

RcNestItems *rc_nest_items_new (const RcNestProblem *problem);
/* Some of the items, in this order; groups and repeats are kept. */
RcNestItems *rc_nest_items_new_part (const RcNestItems *all, const guint *chosen, guint n);

void rc_nest_items_free (RcNestItems *items);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcNestItems, rc_nest_items_free)

/* The first place at or after `from` that is phase (mod repeat); `from` itself when there is no repeat. */
static inline RcLength
rc_nest_place_in_repeat (RcLength repeat, RcLength phase, RcLength from)
{
  RcLength over;

  if (repeat == 0)
    return from;
  over = (from - phase) % repeat;
  if (over < 0)
    over += repeat;
  return over == 0 ? from : from + repeat - over;
}

/* The first place at or after `along` where an item may start by itself: what its match asks is left out. Never earlier
 * for a later `along`. */
static inline RcLength
rc_nest_item_place (const RcNestItem *item, RcLength along)
{
  return item->match >= 0 ? along : rc_nest_place_in_repeat (item->repeat, item->phase, along);
}
