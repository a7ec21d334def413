#include "build.h"

typedef struct
{
  gint64   key, tie;
  guint    index;
  RcLength phase;
} SortKey;

static int
compare_keys (gconstpointer a, gconstpointer b)
{
  const SortKey *p = a, *q = b;

  if (p->key != q->key)
    return p->key > q->key ? -1 : 1;
  if (p->tie != q->tie)
    return p->tie > q->tie ? -1 : 1;
  if (p->phase != q->phase)
    return p->phase < q->phase ? -1 : 1;
  return p->index < q->index ? -1 : 1;
}

static void
sort_keys (SortKey *keys, guint n)
{
  if (n > 40)
    {
      qsort (keys, n, sizeof *keys, compare_keys);
      return;
    }
  for (guint i = 1; i < n; i++)
    {
      SortKey moved = keys[i];
      guint   j = i;

      for (; j > 0 && compare_keys (&keys[j - 1], &moved) > 0; j--)
        keys[j] = keys[j - 1];
      keys[j] = moved;
    }
}

void
rc_nest_sort_items (const RcNestItems *items, RcNestOrder by, guint *order)
{
  SortKey             few[64];
  g_autofree SortKey *many = items->n > G_N_ELEMENTS (few) ? g_new (SortKey, items->n) : NULL;
  SortKey            *keys = many != NULL ? many : few;
  RcLength            most_w = 1, most_h = 1;

  for (guint i = 0; i < items->n; i++)
    {
      most_w = MAX (most_w, items->items[i].w);
      most_h = MAX (most_h, items->items[i].h);
    }
  for (guint i = 0; i < items->n; i++)
    {
      const RcNestItem *item = &items->items[i];
      gint64            reach = (item->h << 16) / most_h + (item->w << 16) / most_w;

      keys[i] = (SortKey){ item->h, item->w, i, item->phase };
      if (by == RC_NEST_BY_AREA)
        keys[i].key = item->w * item->h, keys[i].tie = item->h;
      else if (by == RC_NEST_BY_WIDTH)
        keys[i].key = item->w, keys[i].tie = item->h;
      else if (by == RC_NEST_BY_REACH)
        keys[i].key = reach, keys[i].tie = item->h;
    }
  sort_keys (keys, items->n);
  for (guint i = 0; i < items->n; i++)
    order[i] = keys[i].index;
}

static const int EAGERNESS[] = { 16, 8, 24, 4, 64 };

/* A quick run tries the first of the orders and eagernesses. */
#define QUICK_ORDERS      2
#define QUICK_EAGERNESSES 3

/* Bins longest first within one cost, the other way round from the list's own order. */
static void
reverse_bin_order (const RcNestBins *bins, guint *order)
{
  for (guint from = 0; from < bins->n;)
    {
      guint to = from;

      while (to < bins->n && bins->bins[to].cost_per_m == bins->bins[from].cost_per_m)
        to++;
      for (guint k = from; k < to; k++)
        order[k] = to - 1 - (k - from);
      from = to;
    }
}

/* Several runs of the builder, each of which is looked at. */
typedef struct
{
  const RcNestTask *task;
  RcNestBuilder    *builder;
  guint             n_orders, n_eagernesses, n_ways; /* of the lists above; 2 ways: bins in reversed order too */
  guint             n_done;
  RcNestRandom      random;
  gboolean (*look) (RcNestBuilder *builder, const RcNestSpot *spots, gpointer user_data); /* TRUE: enough */
  gpointer user_data;
} Runs;

/* Another eagerness gives another cutting only where it decided something, or where pins vary from run to run. */
static gboolean
run_eagernesses (Runs *self, const guint *order, const guint *reversed, RcNestSpot *spots)
{
  const RcNestTask *task = self->task;
  gboolean          was_eager = TRUE;

  for (guint e = 0; e < self->n_eagernesses && was_eager; e++)
    {
      was_eager = task->items->is_tied;
      for (guint way = 0; way < self->n_ways; way++)
        {
          if (self->n_done > 0 && g_cancellable_is_cancelled (task->cancellable))
            return TRUE;
          if (self->n_done >= self->n_ways)
            rc_nest_builder_vary (self->builder, &self->random);
          rc_nest_builder_run (self->builder, order, task->items->n, EAGERNESS[e], way == 0 ? NULL : reversed, spots);
          was_eager |= rc_nest_builder_was_eager (self->builder);
          self->n_done++;
          if (self->look (self->builder, spots, self->user_data))
            return TRUE;
        }
    }
  return FALSE;
}

static void
run_orders (Runs *self)
{
  g_autoptr (RcNestBuilder) builder = rc_nest_builder_new (self->task);
  guint                  n = self->task->items->n;
  guint                  few[64];
  RcNestSpot             few_spots[64];
  g_autofree guint      *many = n > 64 ? g_new (guint, n) : NULL;
  g_autofree RcNestSpot *many_spots = n > 64 ? g_new (RcNestSpot, n) : NULL;
  g_autofree guint      *reversed = self->n_ways > 1 ? g_new (guint, self->task->bins->n + 1) : NULL;
  guint                 *order = many != NULL ? many : few;
  gboolean               enough = FALSE;

  self->builder = builder;
  rc_nest_random_seed (&self->random, 1);
  if (reversed != NULL)
    reverse_bin_order (self->task->bins, reversed);
  for (guint by = 0; by < self->n_orders && !enough; by++)
    {
      rc_nest_sort_items (self->task->items, (RcNestOrder)by, order);
      enough = run_eagernesses (self, order, reversed, many_spots != NULL ? many_spots : few_spots);
    }
}

typedef struct
{
  const RcNestTask *task;
  RcNestScore       best;
  RcNestSpot       *spots; /* NULL: not kept, by cost and length only */
} BestScore;

static gboolean
keep_best_score (G_GNUC_UNUSED RcNestBuilder *builder, const RcNestSpot *spots, gpointer user_data)
{
  BestScore  *self = user_data;
  RcNestScore score = self->spots != NULL ? rc_nest_score (self->task, spots) : rc_nest_score_cost (self->task, spots);

  if (rc_nest_score_compare (&score, &self->best) >= 0)
    return FALSE;
  self->best = score;
  if (self->spots != NULL)
    memcpy (self->spots, spots, sizeof *spots * self->task->items->n);
  return FALSE;
}

void
rc_nest_build_best (const RcNestTask *task, RcNestSpot *spots)
{
  BestScore best = { task, { .unplaced = G_MAXUINT }, spots };
  Runs      runs = { .task = task,
                     .n_orders = RC_NEST_N_ORDERS,
                     .n_eagernesses = G_N_ELEMENTS (EAGERNESS),
                     .n_ways = task->bins->n > 1 ? 2 : 1,
                     .look = keep_best_score,
                     .user_data = &best };

  run_orders (&runs);
}

RcNestScore
rc_nest_build_quick_score (const RcNestTask *task)
{
  BestScore best = { task, { .unplaced = G_MAXUINT }, NULL };
  Runs      runs = { .task = task,
                     .n_orders = QUICK_ORDERS,
                     .n_eagernesses = QUICK_EAGERNESSES,
                     .n_ways = 1,
                     .look = keep_best_score,
                     .user_data = &best };

  run_orders (&runs);
  return best.best;
}

typedef struct
{
  RcLength best, enough;
} BestLength;

static gboolean
keep_best_length (RcNestBuilder *builder, G_GNUC_UNUSED const RcNestSpot *spots, gpointer user_data)
{
  BestLength *self = user_data;

  self->best = MIN (self->best, rc_nest_builder_get_used (builder));
  rc_nest_builder_stay_below (builder, self->best);
  return self->best <= self->enough;
}

RcLength
rc_nest_build_quickly (const RcNestTask *task, RcLength enough)
{
  BestLength best = { G_MAXINT64, enough };
  Runs       runs = { .task = task,
                      .n_orders = QUICK_ORDERS,
                      .n_eagernesses = QUICK_EAGERNESSES,
                      .n_ways = 1,
                      .look = keep_best_length,
                      .user_data = &best };

  run_orders (&runs);
  return best.best;
}
