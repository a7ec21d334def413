/* The cuts of a problem one by one: a cut of quantity 3 is three items. */
#pragma once

#include "nest.h"

typedef struct
{
  RcLength w, h;          /* across and along the roll, > 0 */
  RcLength repeat, phase; /* repeat 0: free; else 0 <= phase < repeat */
  int      group;         /* -1: none */
  guint    pinned;        /* as RcNestCut.pinned_roll */
  guint    cut, copy;
} RcNestItem;

typedef struct
{
  RcNestItem *items;
  guint       n;
  GPtrArray  *groups; /* of char*: the names, borrowed */
  gboolean    has_repeats;
  RcLength    least_w, least_h;
} RcNestItems;

RcNestItems *rc_nest_items_new (const RcNestProblem *problem);
/* Some of the items, in this order; groups and repeats are kept. */
RcNestItems *rc_nest_items_new_part (const RcNestItems *all, const guint *chosen, guint n);

void rc_nest_items_free (RcNestItems *items);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcNestItems, rc_nest_items_free)

/* The first place at or after `along` where an item may start. Never earlier for a later `along`. */
static inline RcLength
rc_nest_item_place (const RcNestItem *item, RcLength along)
{
  RcLength over;

  if (item->repeat == 0)
    return along;
  over = (along - item->phase) % item->repeat;
  if (over < 0)
    over += item->repeat;
  return over == 0 ? along : along + item->repeat - over;
}
