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

void
rc_nest_build_best (const RcNestTask *task, RcNestSpot *spots)
{
  g_autoptr (RcNestBuilder) builder = rc_nest_builder_new (task);
  guint                  n = task->items->n;
  g_autofree guint      *order = g_new (guint, n + 1);
  g_autofree guint      *reversed = g_new (guint, task->bins->n + 1);
  g_autofree RcNestSpot *tried = g_new (RcNestSpot, n + 1);
  RcNestScore            best = { .unplaced = G_MAXUINT };
  RcNestRandom           random;

  rc_nest_random_seed (&random, 1);
  reverse_bin_order (task->bins, reversed);
  for (int by = 0; by < RC_NEST_N_ORDERS; by++)
    {
      rc_nest_sort_items (task->items, (RcNestOrder)by, order);
      for (guint e = 0; e < G_N_ELEMENTS (EAGERNESS); e++)
        for (int way = 0; way < (task->bins->n > 1 ? 2 : 1); way++)
          {
            RcNestScore score;

            if (best.unplaced != G_MAXUINT && g_cancellable_is_cancelled (task->cancellable))
              return;
            if (by + (int)e > 0)
              rc_nest_builder_vary (builder, &random);
            rc_nest_builder_run (builder, order, n, EAGERNESS[e], way == 0 ? NULL : reversed, tried);
            score = rc_nest_score (task, tried);
            if (rc_nest_score_compare (&score, &best) < 0)
              {
                best = score;
                memcpy (spots, tried, sizeof *tried * n);
              }
          }
    }
}

RcLength
rc_nest_build_quickly (const RcNestTask *task)
{
  g_autoptr (RcNestBuilder) builder = rc_nest_builder_new (task);
  guint                  n = task->items->n;
  guint                  few[64];
  RcNestSpot             few_spots[64];
  g_autofree guint      *many = n > 64 ? g_new (guint, n) : NULL;
  g_autofree RcNestSpot *many_spots = n > 64 ? g_new (RcNestSpot, n) : NULL;
  guint                 *order = many != NULL ? many : few;
  RcNestSpot            *spots = many_spots != NULL ? many_spots : few_spots;
  RcLength               best = G_MAXINT64;

  for (int by = 0; by < QUICK_ORDERS; by++)
    {
      rc_nest_sort_items (task->items, (RcNestOrder)by, order);
      for (guint e = 0; e < QUICK_EAGERNESSES; e++)
        {
          rc_nest_builder_run (builder, order, n, EAGERNESS[e], NULL, spots);
          best = MIN (best, rc_nest_builder_get_used (builder));
        }
    }
  return best;
}

RcNestScore
rc_nest_build_quick_score (const RcNestTask *task)
{
  g_autoptr (RcNestBuilder) builder = rc_nest_builder_new (task);
  guint                  n = task->items->n;
  g_autofree guint      *order = g_new (guint, n + 1);
  g_autofree RcNestSpot *spots = g_new (RcNestSpot, n + 1);
  RcNestScore            best = { .unplaced = G_MAXUINT };

  for (int by = 0; by < QUICK_ORDERS; by++)
    {
      rc_nest_sort_items (task->items, (RcNestOrder)by, order);
      for (guint e = 0; e < QUICK_EAGERNESSES; e++)
        {
          RcNestScore score;

          rc_nest_builder_run (builder, order, n, EAGERNESS[e], NULL, spots);
          score = rc_nest_score (task, spots);
          if (rc_nest_score_compare (&score, &best) < 0)
            best = score;
        }
    }
  return best;
}
