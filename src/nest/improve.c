#include "improve.h"

#include "random.h"

enum
{
  FIRST_CYCLE = 4096, /* steps */
  AFRESH_STEPS = 64,  /* for each item: cycles of so many begin from the first cutting again */
  PATIENCE = 3,       /* cycles that fail before they become longer */
};

/* Of the used length: the least by which an aim is shorter. */
#define LEAST_STEP 0.0005

/* Of the gap to the bound: so much may stay open between what is reached and what has failed. */
#define OPEN_SHARE 0.125

/* Of the gap to the bound: so much is open again for longer cycles. */
#define REOPENED_SHARE 0.5

typedef struct
{
  const RcNestTask   *task;
  const RcNestSearch *search;
  RcNestSpot         *spots, *first; /* the best cutting, and the one that was given */
  RcNestScore         best;
  RcNestRandom        random;
  gboolean            is_strict;
  gboolean            from_first; /* longer cycles begin from the first cutting */
} Improve;

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
is_done (const Improve *self)
{
  return rc_nest_clock_is_over (self->search->clock)
         || (self->best.unplaced == 0 && self->best.used <= self->search->goal);
}

/* So many steps that a cycle begun now ends with the time, cold, rather than be cut short while it is hot: where after
 * the next one of its length no longer one would end in time. Where steps are counted the cycles stay as they are. */
static guint64
fit_in_time (const RcNestClock *clock, guint64 steps, gint64 us, guint64 next)
{
  double fitting = (double)(clock->end_us - rc_nest_clock_get_us (clock)) * (double)steps / (double)MAX (us, 1);

  if (rc_nest_clock_counts_steps (clock) || fitting > 3 * (double)next)
    return next;
  return (guint64)MAX (fitting, 1);
}

/* What shall count as having failed before anything has been tried: `share` of the way from what is reached to what no
 * cutting can reach. Without a goal no more is asked for than a step. */
static RcLength
guess_failed (const RcNestSearch *search, RcLength reached, double share)
{
  if (search->goal == 0)
    return reached;
  return reached - (RcLength)((double)(reached - search->goal) * share) - search->grain;
}

/* The next used length to aim at: half way from what is reached to what has failed. */
static RcLength
choose_aim (const RcNestSearch *search, RcLength reached, RcLength failed)
{
  RcLength step = MAX ((reached - failed) / 2, (RcLength)((double)reached * LEAST_STEP));

  return MAX (reached - rc_length_round_up (MAX (step, 1), search->grain), search->goal);
}

/* Whether what has failed is so near to what is reached that longer cycles promise more than another aim between. */
static gboolean
is_narrowed (const RcNestSearch *search, RcLength reached, RcLength failed)
{
  double open = MAX ((double)(reached - search->goal) * OPEN_SHARE, (double)reached * LEAST_STEP);

  return (double)(reached - failed) <= MAX (open, (double)search->grain);
}

/* What a cycle begun from another cutting finds counts when it beats the best. */
static void
take_found (const RcNestSpot *spots, const RcNestScore *score, gpointer user_data)
{
  Improve *self = user_data;

  if (rc_nest_score_compare (score, &self->best) >= 0)
    return;
  self->best = *score;
  memcpy (self->spots, spots, sizeof (RcNestSpot) * self->task->items->n);
  if (self->search->found != NULL)
    self->search->found (spots, score, self->search->user_data);
}

static void
run_cycle (Improve *self, guint64 steps, RcLength aim)
{
  const RcNestTask      *task = self->task;
  gboolean               afresh = self->from_first && steps >= AFRESH_STEPS * (guint64)task->items->n;
  const RcNestSpot      *from = afresh ? self->first : self->spots;
  g_autofree RcNestSpot *spots = g_memdup2 (from, sizeof (RcNestSpot) * (task->items->n + 1));
  RcNestSearch           cycle = *self->search;

  cycle.seed = rc_nest_random_next (&self->random);
  cycle.is_strict = self->is_strict;
  cycle.aim = aim;
  cycle.found = take_found;
  cycle.user_data = self;
  rc_nest_anneal (task, &cycle, steps, spots);
}

/* Short aims first; where a few cycles have failed that are next to what is reached, longer cycles. */
static void
run (Improve *self)
{
  const RcNestSearch *search = self->search;
  guint64             steps = FIRST_CYCLE;
  RcLength            failed = guess_failed (search, self->best.used, 1);
  guint               n_failed = 0;

  while (!is_done (self))
    {
      gint64   us = -rc_nest_clock_get_us (search->clock);
      guint64  done = steps;
      RcLength aim = choose_aim (search, self->best.used, failed);

      run_cycle (self, steps, aim);
      us += rc_nest_clock_get_us (search->clock);
      if (self->best.used > aim)
        failed = MAX (failed, aim);
      if (!self->is_strict || (is_narrowed (search, self->best.used, failed) && ++n_failed == PATIENCE))
        {
          failed = guess_failed (search, self->best.used, REOPENED_SHARE);
          steps *= 2;
          n_failed = 0;
        }
      steps = fit_in_time (search->clock, done, us, steps);
    }
}

void
rc_nest_improve (const RcNestTask *task, const RcNestSearch *search, RcNestSpot *spots)
{
  Improve self = { .task = task, .search = search, .spots = spots };

  self.first = g_memdup2 (spots, sizeof (RcNestSpot) * (task->items->n + 1));
  self.best = rc_nest_score (task, spots);
  self.is_strict = is_mostly_narrow (task);
  self.from_first = self.is_strict && self.best.unplaced == 0;
  rc_nest_random_seed (&self.random, search->seed);
  run (&self);
  g_free (self.first);
}
