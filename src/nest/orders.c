#include "orders.h"

#include "build.h"
#include "random.h"

enum
{
  PATIENCE = 2000 /* steps without a better order before a fresh start */
};

static const int EAGERNESS[] = { 4, 8, 16, 24, 64 };

typedef struct
{
  const RcNestTask   *task;
  const RcNestSearch *search;
  RcNestBuilder      *builder;
  RcNestRandom        random;
  guint              *order, *changed;
  int                 eagerness;
  RcNestSpot         *tried, *spots;
  RcNestScore         now, best;
} Orders;

/* Some items change places, or move elsewhere. */
static void
change_order (Orders *self)
{
  guint n = self->task->items->n, changes = 1 + rc_nest_random_below (&self->random, 3);

  memcpy (self->changed, self->order, sizeof (guint) * n);
  for (guint k = 0; k < changes; k++)
    {
      guint from = rc_nest_random_below (&self->random, n), to = rc_nest_random_below (&self->random, n);
      guint item = self->changed[from];

      if (rc_nest_random_below (&self->random, 2) == 0)
        {
          self->changed[from] = self->changed[to];
          self->changed[to] = item;
          continue;
        }
      if (from < to)
        memmove (self->changed + from, self->changed + from + 1, sizeof (guint) * (to - from));
      else
        memmove (self->changed + to + 1, self->changed + to, sizeof (guint) * (from - to));
      self->changed[to] = item;
    }
}

static RcNestScore
build (Orders *self, const guint *order)
{
  RcNestScore score;

  rc_nest_builder_run (self->builder, order, self->task->items->n, self->eagerness, NULL, self->tried);
  score = rc_nest_score (self->task, self->tried);
  if (rc_nest_score_compare (&score, &self->best) < 0)
    {
      self->best = score;
      memcpy (self->spots, self->tried, sizeof (RcNestSpot) * self->task->items->n);
      if (self->search->found != NULL)
        self->search->found (self->spots, &score, self->search->user_data);
    }
  return score;
}

static void
start_afresh (Orders *self, guint round)
{
  self->eagerness = EAGERNESS[rc_nest_random_below (&self->random, G_N_ELEMENTS (EAGERNESS))];
  if (round > 0)
    rc_nest_builder_vary (self->builder, &self->random);
  rc_nest_sort_items (self->task->items, (RcNestOrder)(round % RC_NEST_N_ORDERS), self->order);
  self->now = build (self, self->order);
}

static gboolean
is_done (const Orders *self)
{
  return rc_nest_clock_is_over (self->search->clock)
         || (self->best.unplaced == 0 && self->best.used <= self->search->goal);
}

static void
run (Orders *self)
{
  RcNestClock *clock = self->search->clock;

  for (guint round = 0; !is_done (self); round++)
    {
      start_afresh (self, round);
      for (guint idle = 0; idle < PATIENCE && !is_done (self); idle++)
        {
          RcNestScore score;

          if (rc_nest_clock_counts_steps (clock))
            clock->steps_left--;
          change_order (self);
          score = build (self, self->changed);
          if (rc_nest_score_compare (&score, &self->now) > 0)
            continue;
          if (rc_nest_score_compare (&score, &self->now) < 0)
            idle = 0;
          self->now = score;
          memcpy (self->order, self->changed, sizeof (guint) * self->task->items->n);
        }
    }
}

void
rc_nest_improve_orders (const RcNestTask *task, const RcNestSearch *search, RcNestSpot *spots)
{
  guint  n = task->items->n;
  Orders self = { .task = task, .search = search, .spots = spots, .best = rc_nest_score (task, spots) };

  if (n == 0)
    return;
  self.builder = rc_nest_builder_new (task);
  self.order = g_new (guint, n);
  self.changed = g_new (guint, n);
  self.tried = g_new (RcNestSpot, n);
  rc_nest_random_seed (&self.random, search->seed);
  run (&self);
  rc_nest_builder_free (self.builder);
  g_free (self.order);
  g_free (self.changed);
  g_free (self.tried);
}
