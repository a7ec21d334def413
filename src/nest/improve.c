#include "improve.h"

#include "random.h"

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

/* Whether less than half of the length is fixed by items that cannot lie side by side. */
static gboolean
is_mostly_narrow (const RcNestTask *task)
{
  const RcNestItems *items = task->items;
  RcLength           width = task->bins->bins[0].width;
  double             wide = 0, area = 0;

  for (guint i = 0; i < items->n; i++)
    {
      if (2 * items->items[i].w > width)
        wide += (double)items->items[i].h * (double)width;
      area += (double)items->items[i].w * (double)items->items[i].h;
    }
  return 2 * wide < area;
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
  cycle.is_strict = is_mostly_narrow (task);
  for (guint64 steps = FIRST_CYCLE; !is_done (task, search, spots); steps *= 2)
    {
      cycle.seed = rc_nest_random_next (&random);
      rc_nest_anneal (task, &cycle, steps, spots);
    }
}
