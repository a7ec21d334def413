#include "improve.h"

#include "random.h"
#include "strips.h"

enum
{
  FIRST_CYCLE = 4096, /* steps */
};

gboolean
rc_nest_can_improve (const RcNestTask *task)
{
  const RcNestItem *items = task->items->items;

  if (task->items->is_tied)
    return FALSE;
  for (guint i = 1; i < task->items->n; i++)
    if (items[i].repeat != items[0].repeat || items[i].phase != items[0].phase)
      return FALSE;
  return task->items->n > 0;
}

static gboolean
is_done (const RcNestTask *task, const RcNestSearch *search, const RcNestSpot *spots)
{
  RcNestScore score;

  if (rc_nest_clock_is_over (search->clock))
    return TRUE;
  score = rc_nest_score (task, spots);
  return score.unplaced == 0 && score.used <= search->goal;
}

void
rc_nest_improve (const RcNestTask *task, const RcNestSearch *search, RcNestSpot *spots)
{
  RcNestSearch cycle = *search;
  RcNestRandom random;

  rc_nest_random_seed (&random, search->seed);
  for (guint64 steps = FIRST_CYCLE; !is_done (task, search, spots); steps *= 2)
    {
      cycle.seed = rc_nest_random_next (&random);
      rc_nest_anneal (task, &cycle, steps, spots);
      cycle.seed = rc_nest_random_next (&random);
      if (steps > FIRST_CYCLE && !is_done (task, search, spots))
        rc_nest_improve_strips (task, &cycle, 4 * steps, spots);
    }
}
