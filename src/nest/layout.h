/* Where each item lies, and how good that is. The common coin of all searches. */
#pragma once

#include "bin.h"
#include "item.h"

typedef struct
{
  int      bin; /* -1: not placed */
  RcLength across, along;
} RcNestSpot;

/* In the order of weight: fewer items left over, cheaper, a larger single leftover of use, fewer cuts right across the
 * rolls, less used. */
typedef struct
{
  guint    unplaced;
  gint64   cost;       /* minor units per metre x ticks */
  gint64   balance;    /* area of the largest leftover of use, square ticks */
  guint    cross_cuts; /* lengths that cuts across part */
  RcLength used;
} RcNestScore;

/* What every search works on; owns items and bins. */
typedef struct
{
  const RcNestProblem *problem; /* borrowed */
  RcNestItems         *items;
  RcNestBins          *bins;
  GCancellable        *cancellable;  /* borrowed, nullable: cuts the first answer short */
  int                 *lot_of_group; /* which lot each group is cut from; -1: not decided, none allowed */
} RcNestTask;

/* `n_bought` as in rc_nest_bins_new. */
RcNestTask *rc_nest_task_new (const RcNestProblem *problem, guint n_bought);

/* The same cuts on one roll bought to measure, whatever rolls the problem has. */
RcNestTask *rc_nest_task_new_endless (const RcNestProblem *problem);

void rc_nest_task_free (RcNestTask *task);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcNestTask, rc_nest_task_free)

/* Whether a bin is wide enough for an item and agrees with its pins. */
static inline gboolean
rc_nest_item_may_lie (const RcNestItem *item, const RcNestBin *bin)
{
  return item->w <= bin->width && (item->pinned == 0 || item->pinned == bin->source + 1)
         && (!item->is_along_pinned || (bin->start <= item->along && item->along + item->h <= bin->end))
         && (!item->is_across_pinned || (item->across >= 0 && item->across + item->w <= bin->width));
}

/* The same, and the dye lot of the item's group. */
static inline gboolean
rc_nest_task_allows (const RcNestTask *task, const RcNestItem *item, const RcNestBin *bin)
{
  return rc_nest_item_may_lie (item, bin) && (item->group < 0 || task->lot_of_group[item->group] == bin->lot);
}

/* The score of spots[0 .. n-1]. */
RcNestScore rc_nest_score (const RcNestTask *task, const RcNestSpot *spots);

/* The same without balance and cross cuts: of use where only cost and length count. */
RcNestScore rc_nest_score_cost (const RcNestTask *task, const RcNestSpot *spots);

/* Below 0 when a is better. */
int rc_nest_score_compare (const RcNestScore *a, const RcNestScore *b);

/* Fills placements, rolls, used_length and strokes of the answer from spots where every item is placed. */
void rc_nest_layout_to_answer (const RcNestTask *task, const RcNestSpot *spots, RcNestAnswer *answer);
