/* The constructive solver: three-stage cuttings built level by level.
 *
 * A level is a length cut across the roll, as high as the piece that opened it. A column is a rip of a level, as wide
 * as the piece that opened it. Pieces go one by one to the top of a column, to a new column, or to a new level,
 * whichever wastes least.
 */
#pragma once

#include "layout.h"
#include "random.h"

typedef struct _RcNestBuilder RcNestBuilder;

RcNestBuilder *rc_nest_builder_new (const RcNestTask *task);
void           rc_nest_builder_free (RcNestBuilder *builder);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcNestBuilder, rc_nest_builder_free)

/* Places the items in `order` (n_order indices). `eagerness` in sixteenths: small opens columns early, large stacks
 * first. `bin_order` (nullable) tells which bins are opened first. Writes every spot named in `order`; returns the
 * number that found none. */
guint rc_nest_builder_run (RcNestBuilder *builder, const guint *order, guint n_order, int eagerness,
                           const guint *bin_order, RcNestSpot *spots);

/* Lengths that cuts are pinned in are made longer at random, so that longer cuts fit beside; without pins nothing. */
void rc_nest_builder_vary (RcNestBuilder *builder, RcNestRandom *random);

/* Whether another eagerness might have given another cutting in the last run. */
gboolean rc_nest_builder_was_eager (const RcNestBuilder *builder);

/* On one roll: later runs give up where they would use as much or more, and leave items without a place. */
void rc_nest_builder_stay_below (RcNestBuilder *builder, RcLength used);

/* The sum of the used lengths of the last run, were it only of those placed. */
RcLength rc_nest_builder_get_used (const RcNestBuilder *builder);

/* Orders in which items are worth being placed. */
typedef enum
{
  RC_NEST_BY_LENGTH,
  RC_NEST_BY_AREA,
  RC_NEST_BY_WIDTH,
  RC_NEST_BY_REACH, /* length and width together, each against the largest */
  RC_NEST_N_ORDERS
} RcNestOrder;

void rc_nest_sort_items (const RcNestItems *items, RcNestOrder by, guint *order);

/* The best of several runs: every order, several eagernesses and bin orders. spots has room for all items. */
void rc_nest_build_best (const RcNestTask *task, RcNestSpot *spots);

/* The same with few runs, one endless roll, and only the used length kept. Ends when that is `enough` or less. */
RcLength rc_nest_build_quickly (const RcNestTask *task, RcLength enough);

/* The best score of as few runs on the task's own rolls, by cost and length only. */
RcNestScore rc_nest_build_quick_score (const RcNestTask *task);
