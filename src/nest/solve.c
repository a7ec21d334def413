#include "nest.h"

#include "answer.h"
#include "bands.h"
#include "blocks.h"
#include "bound.h"
#include "build.h"
#include "ends.h"
#include "exact.h"
#include "improve.h"
#include "lot.h"
#include "orders.h"
#include "pins.h"
#include "polish.h"
#include "reason.h"
#include "strokes.h"

/* Exact search this quick is part of the first answer. */
#define AT_ONCE_SECONDS 1e-4

/* Of the time: an exact search over beginnings of a pattern is tried that is estimated to take so much. Most of these
 * are ruled out by their bounds. */
#define MOST_OVERRATED 3

/* Of the area of the cuts: where the bound leaves more than this to waste it is not tried to fill bands. */
#define MOST_BAND_WASTE 0.001

enum
{
  POLISHED_AT_ONCE = 12,
  POLISHED_SEGMENTS = 120,
  MOST_BLOCK_WORK = 200000000, /* pairs of blocks tried for one length */
  MOST_BLOCKS = 200000,
  BAND_WORK = 1000 /* pairs of blocks tried for a step of the search, where these are counted */
};

typedef struct
{
  RcNestTask         *task;
  const RcNestParams *params;
  RcNestClock         clock;
  RcNestSpot         *spots;
  RcNestScore         score;
  RcLength            bound;
  gboolean            impossible; /* proved: no cutting exists */
} Solver;

static void
report (const Solver *self)
{
  if (self->params != NULL && self->params->progress != NULL && self->score.unplaced == 0)
    self->params->progress (self->score.used, self->bound, self->params->user_data);
}

static void
take_found (const RcNestSpot *spots, const RcNestScore *score, gpointer user_data)
{
  Solver *self = user_data;

  self->score = *score;
  report (self);
}

/* Dye lots of the groups are settled here. Returns why there surely is no answer, or NULL; some items may be left over
 * all the same. */
static char *
find_first (RcNestTask *task, RcNestSpot *spots)
{
  char *reason = rc_nest_reason_find (task);

  if (reason != NULL)
    return reason;
  if (task->bins->n_lots > 1 && task->items->groups->len > 0)
    return rc_nest_lot_choose (task, spots);
  rc_nest_build_best (task, spots);
  return NULL;
}

static gboolean
is_proved (const Solver *self)
{
  return self->score.unplaced == 0 && self->score.used == self->bound;
}

/* Proved, and nothing cheaper can exist either: with rolls of several costs the shortest cutting need not be the
 * cheapest. */
static gboolean
is_finished (const Solver *self)
{
  const RcNestBins *bins = self->task->bins;

  for (guint b = 1; b < bins->n; b++)
    if (bins->bins[b].cost_per_m != bins->bins[0].cost_per_m
        && self->score.cost > bins->bins[0].cost_per_m * self->bound)
      return FALSE;
  return is_proved (self);
}

static void
solve_exactly (Solver *self, double most_seconds, const RcNestClock *clock)
{
  guint                  n = self->task->items->n;
  g_autofree RcNestSpot *spots = g_memdup2 (self->spots, sizeof (RcNestSpot) * (n + 1));
  RcNestScore            score;
  RcLength               bound = self->bound;

  if (!rc_nest_exact_can (self->task) || rc_nest_exact_estimate_seconds (self->task) > most_seconds
      || !rc_nest_exact_solve (self->task, clock, self->score.unplaced == 0 ? self->score.used : RC_NEST_ENDLESS, spots,
                               &bound))
    return;
  self->impossible = bound == RC_NEST_ENDLESS;
  if (self->impossible)
    return;
  self->bound = MAX (self->bound, bound);
  score = rc_nest_score (self->task, spots);
  if (rc_nest_score_compare (&score, &self->score) < 0)
    {
      memcpy (self->spots, spots, sizeof *spots * n);
      self->score = score;
    }
  report (self);
}

/* Whether all items fit into a length of the only roll; `spots` get a cutting where they do. */
static RcNestBlocksResult
fit_blocks (Solver *self, RcLength used, const RcNestClock *clock, RcNestSpot *spots)
{
  const RcNestItems *items = self->task->items;
  const RcNestBin   *bin = &self->task->bins->bins[0];
  RcNestBlockItem    blocks[RC_NEST_MOST_BLOCK_ITEMS];
  RcNestBlocksLimit  limit = { MOST_BLOCK_WORK, MOST_BLOCKS, clock };
  RcNestBlocksResult result;

  for (guint i = 0; i < items->n; i++)
    blocks[i] = (RcNestBlockItem){ items->items[i].w, items->items[i].h, 0, 0 };
  result = rc_nest_blocks_fit (blocks, items->n, bin->width, used - bin->start, &limit);
  for (guint i = 0; i < items->n && result == RC_NEST_BLOCKS_FIT; i++)
    spots[i] = (RcNestSpot){ 0, blocks[i].across, blocks[i].along + bin->start };
  return result;
}

/* Whether straight cuts in any stages out of one roll are all there is to it. */
static gboolean
is_plain (const RcNestTask *task)
{
  return task->problem->stages == 0 && task->bins->n == 1 && !task->items->has_repeats && !task->items->is_tied;
}

/* In any stages, few cuts that leave little waste: one length after the other from the bound up is ruled out, in
 * strides that grow, or met. Takes at most a quarter of the time. */
static void
close_gap (Solver *self)
{
  const RcNestTask      *task = self->task;
  RcNestClock            clock = rc_nest_clock_take_part (&self->clock, self->params->seconds / 4);
  g_autofree RcNestSpot *spots = g_new (RcNestSpot, task->items->n + 1);
  RcLength               grid = rc_nest_bound_grid (task), stride = grid;

  if (!is_plain (task) || task->items->n > RC_NEST_MOST_BLOCK_ITEMS || self->score.unplaced > 0)
    return;
  while (!is_proved (self))
    {
      RcLength           length = MIN (self->bound + stride, self->score.used) - grid;
      RcNestBlocksResult result = fit_blocks (self, length, &clock, spots);

      if (result == RC_NEST_BLOCKS_UNKNOWN && stride == grid)
        break;
      if (result == RC_NEST_BLOCKS_UNKNOWN)
        {
          stride = grid;
          continue;
        }
      if (result == RC_NEST_BLOCKS_CANNOT_FIT)
        {
          self->bound = length + grid;
          stride *= 2;
          continue;
        }
      memcpy (self->spots, spots, sizeof *spots * task->items->n);
      self->score = rc_nest_score (task, spots);
      stride = grid;
    }
  report (self);
}

/* In any stages, many cuts of which the bound wastes next to nothing: whole bands are filled. Takes at most a
 * quarter of the time. */
static void
fill_bands (Solver *self)
{
  const RcNestItems     *items = self->task->items;
  const RcNestBin       *bin = &self->task->bins->bins[0];
  RcNestClock            clock = rc_nest_clock_take_part (&self->clock, self->params->seconds / 4);
  guint64                work = clock.steps_left < G_MAXUINT64 / BAND_WORK ? clock.steps_left * BAND_WORK : G_MAXUINT64;
  g_autofree RcNestSpot *spots = g_new0 (RcNestSpot, items->n + 1);
  double                 area = 0;

  for (guint i = 0; i < items->n; i++)
    area += (double)items->items[i].w * (double)items->items[i].h;
  if (!is_plain (self->task) || items->n <= RC_NEST_MOST_BLOCK_ITEMS || items->n > RC_NEST_MOST_BAND_ITEMS
      || (double)bin->width * (double)(self->bound - bin->start) > (1 + MOST_BAND_WASTE) * area
      || !rc_nest_bands_fit (items->items, items->n, bin->width, self->bound - bin->start, self->params->seed, work,
                             &clock, spots))
    return;
  for (guint i = 0; i < items->n; i++)
    spots[i].along += bin->start;
  memcpy (self->spots, spots, sizeof *spots * items->n);
  self->score = rc_nest_score (self->task, spots);
  report (self);
}

/* The linear programs take at most a quarter of the time. */
static void
raise_bound (Solver *self)
{
  RcNestClock clock = rc_nest_clock_take_part (&self->clock, self->params->seconds / 4);

  self->bound = rc_nest_bound_by_slices (self->task, self->bound, &clock);
  if (!is_proved (self) && self->score.unplaced == 0)
    self->bound = rc_nest_bound_by_levels (self->task, self->score.used, self->bound, &clock);
  report (self);
}

static void
search (Solver *self)
{
  RcNestSearch parameters
      = { .clock = &self->clock, .seed = self->params->seed, .found = take_found, .user_data = self };
  RcNestClock part;

  self->clock = rc_nest_clock_start (self->params);
  report (self);
  part = rc_nest_clock_take_part (&self->clock, self->params->seconds * 0.75);
  if (!is_finished (self))
    solve_exactly (self, self->params->seconds * (self->task->items->is_tied ? MOST_OVERRATED : 0.5), &part);
  if (self->impossible)
    return;
  if (!is_proved (self))
    raise_bound (self);
  if (!is_proved (self))
    close_gap (self);
  if (!is_proved (self))
    fill_bands (self);
  if (is_finished (self))
    return;
  parameters.goal = is_proved (self) ? 0 : self->bound;
  parameters.grain = rc_nest_bound_grid (self->task);
  if (rc_nest_can_improve (self->task))
    rc_nest_improve (self->task, &parameters, self->spots);
  else
    rc_nest_improve_orders (self->task, &parameters, self->spots);
}

/* With a search it may take a little longer than the search was given. */
static void
polish (Solver *self)
{
  gboolean    searched = self->params != NULL && self->params->seconds > 0;
  RcNestClock clock = { G_MAXINT64, G_MAXUINT64, self->task->cancellable, FALSE };

  if (searched)
    {
      clock = rc_nest_clock_set (&self->clock, MIN (self->params->seconds, 1) / 20);
      clock.end_us = MAX (clock.end_us, self->clock.end_us);
      clock.steps_left = G_MAXUINT64;
    }
  if (rc_nest_shorten_ends (self->task, self->spots)
      || rc_nest_polish (self->task, &clock, searched ? POLISHED_SEGMENTS : POLISHED_AT_ONCE, self->spots))
    {
      self->score = rc_nest_score (self->task, self->spots);
      report (self);
    }
}

static void
finish (Solver *self, RcNestAnswer *answer)
{
  rc_nest_layout_to_answer (self->task, self->spots, answer);
  rc_nest_strokes_fill (self->task->problem, answer);
  answer->lower_bound = self->bound;
  answer->status = RC_NEST_TIME_LIMIT;
  if (is_proved (self))
    answer->status = RC_NEST_OPTIMAL;
  else if (self->params != NULL && g_cancellable_is_cancelled (self->params->cancellable))
    answer->status = RC_NEST_CANCELLED;
}

static gboolean
is_any_left_over (const RcNestTask *task, const RcNestSpot *spots)
{
  for (guint i = 0; i < task->items->n; i++)
    if (spots[i].bin < 0)
      return TRUE;
  return FALSE;
}

/* The first answer with so many rolls bought; `reason` as find_first has it. */
static RcNestTask *
begin_with (const RcNestProblem *problem, guint n_bought, GCancellable *cancellable, RcNestSpot **spots, char **reason)
{
  RcNestTask *task = rc_nest_task_new (problem, n_bought);

  task->cancellable = cancellable;
  g_free (*spots);
  g_free (*reason);
  *spots = g_new (RcNestSpot, task->items->n + 1);
  *reason = find_first (task, *spots);
  return task;
}

/* With as few rolls bought as the first answer finds room in; where that is more than one, room for one more. */
static RcNestTask *
begin (const RcNestProblem *problem, GCancellable *cancellable, RcNestSpot **spots, char **reason)
{
  guint       enough = rc_nest_bins_count_enough (problem), n = 1;
  RcNestTask *task = begin_with (problem, n, cancellable, spots, reason);

  while (n < enough && (*reason != NULL || is_any_left_over (task, *spots)))
    {
      n = MIN (enough, n + 1 + n / 16);
      rc_nest_task_free (task);
      task = begin_with (problem, n, cancellable, spots, reason);
    }
  if (n == 1 || n == enough || *reason != NULL)
    return task;
  rc_nest_task_free (task);
  return begin_with (problem, n + 1, cancellable, spots, reason);
}

RcNestAnswer *
rc_nest_solve (const RcNestProblem *problem, const RcNestParams *params)
{
  RcNestAnswer          *answer = rc_nest_answer_new ();
  g_autofree RcNestSpot *spots = NULL;
  g_autoptr (RcNestTask) task = begin (problem, params != NULL ? params->cancellable : NULL, &spots, &answer->reason);
  Solver self = { .task = task, .params = params, .spots = spots };

  if (answer->reason == NULL)
    {
      self.bound = MAX (rc_nest_bound_quick (task), rc_nest_pins_compute_bound (task));
      rc_nest_shorten_ends (task, spots);
      self.score = rc_nest_score (task, spots);
      if (params != NULL && params->seconds > 0)
        search (&self);
      else if (!is_finished (&self))
        {
          self.clock = (RcNestClock){ G_MAXINT64, G_MAXUINT64, task->cancellable, FALSE };
          solve_exactly (&self, AT_ONCE_SECONDS, &self.clock);
        }
      if (self.score.unplaced > 0)
        answer->reason = rc_nest_reason_for_left_over (task, spots, self.impossible);
    }
  if (answer->reason == NULL)
    {
      polish (&self);
      finish (&self, answer);
    }
  else
    answer->status = RC_NEST_INFEASIBLE;
  return answer;
}

RcLength
rc_nest_compute_quick_bound (const RcNestProblem *problem)
{
  g_autoptr (RcNestTask) task = rc_nest_task_new_endless (problem);

  return rc_nest_bound_quick (task);
}

RcLength
rc_nest_compute_quick_length (const RcNestProblem *problem)
{
  g_autoptr (RcNestTask) task = rc_nest_task_new_endless (problem);

  return rc_nest_build_quickly (task, 0);
}

RcLength
rc_nest_compute_exact_length (const RcNestProblem *problem, guint most_cuts)
{
  g_autoptr (RcNestTask) task = rc_nest_task_new_endless (problem);
  RcLength               bound = rc_nest_bound_quick (task), quick = rc_nest_build_quickly (task, bound);
  RcNestClock            clock = { G_MAXINT64, G_MAXUINT64, NULL, FALSE };
  g_autofree RcNestSpot *spots = NULL;

  if (task->items->n > most_cuts || task->items->is_tied || !rc_nest_exact_can (task) || bound == quick)
    return quick;
  spots = g_new (RcNestSpot, task->items->n + 1);
  return rc_nest_exact_solve (task, &clock, quick, spots, &bound) ? bound : quick;
}

guint
rc_nest_compute_quick_cost (const RcNestProblem *problem, gint64 *cost, RcLength *used)
{
  g_autoptr (RcNestTask) task = rc_nest_task_new (problem, rc_nest_bins_count_enough (problem));
  RcNestScore score = rc_nest_build_quick_score (task);

  *cost = score.cost;
  *used = score.used;
  return score.unplaced;
}
