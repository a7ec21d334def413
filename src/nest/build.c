#include "build.h"

typedef struct
{
  RcLength start, end; /* along the roll */
  RcLength across;     /* where the next column would start */
  RcLength width;      /* of its bin */
  int      bin;
  int      first_column; /* -1: none */
} Level;

typedef struct
{
  RcLength across, width, end;
  int      next;
} Column;

struct _RcNestBuilder
{
  const RcNestTask *task;
  Level            *levels;
  Column           *columns;
  int              *open; /* levels that may still take something */
  RcLength         *bin_end;
  int               n_levels, n_columns, n_open;
};

typedef struct
{
  gint64   score;
  int      slot, column; /* index in open[]; column -1: a new one */
  RcLength along;
} Choice;

RcNestBuilder *
rc_nest_builder_new (const RcNestTask *task)
{
  RcNestBuilder *self = g_new0 (RcNestBuilder, 1);
  guint          n = task->items->n + 1;

  self->task = task;
  self->levels = g_new (Level, n);
  self->columns = g_new (Column, n);
  self->open = g_new (int, n);
  self->bin_end = g_new (RcLength, task->bins->n + 1);
  return self;
}

void
rc_nest_builder_free (RcNestBuilder *self)
{
  if (self == NULL)
    return;
  g_free (self->levels);
  g_free (self->columns);
  g_free (self->open);
  g_free (self->bin_end);
  g_free (self);
}

/* A level is closed for good when nothing fits beside its columns nor on top of any. */
static gboolean
is_full (const RcNestBuilder *self, const Level *level)
{
  const RcNestItems *items = self->task->items;

  if (level->width - level->across >= items->least_w)
    return FALSE;
  for (int c = level->first_column; c >= 0; c = self->columns[c].next)
    if (level->end - self->columns[c].end >= items->least_h && self->columns[c].width >= items->least_w)
      return FALSE;
  return TRUE;
}

static void
try_level (const RcNestBuilder *self, const RcNestItem *item, int slot, int eagerness, Choice *best)
{
  const Level *level = &self->levels[self->open[slot]];

  for (int c = level->first_column; c >= 0; c = self->columns[c].next)
    {
      const Column *column = &self->columns[c];
      RcLength      along;
      gint64        score;

      if (column->width < item->w || level->end - column->end < item->h)
        continue;
      along = rc_nest_item_place (item, column->end);
      if (along + item->h > level->end)
        continue;
      score = 16 * ((column->width - item->w) * item->h + (along - column->end) * item->w);
      if (score < best->score)
        *best = (Choice){ score, slot, c, along };
    }
  if (level->width - level->across >= item->w)
    {
      RcLength along = rc_nest_item_place (item, level->start);
      gint64   score = eagerness * (level->end - level->start - item->h) * item->w;

      if (along + item->h <= level->end && score < best->score)
        *best = (Choice){ score, slot, -1, along };
    }
}

static void
add_column (RcNestBuilder *self, Level *level, const RcNestItem *item, RcLength along, RcNestSpot *spot)
{
  int c = self->n_columns++;

  self->columns[c] = (Column){ level->across, item->w, along + item->h, level->first_column };
  level->first_column = c;
  *spot = (RcNestSpot){ level->bin, level->across, along };
  level->across += item->w;
}

static gboolean
open_level (RcNestBuilder *self, const RcNestItem *item, const guint *bin_order, RcNestSpot *spot)
{
  const RcNestBins *bins = self->task->bins;

  for (guint k = 0; k < bins->n; k++)
    {
      guint            b = bin_order != NULL ? bin_order[k] : k;
      const RcNestBin *bin = &bins->bins[b];
      RcLength         along = rc_nest_item_place (item, self->bin_end[b]);
      Level           *level = &self->levels[self->n_levels];

      if (along + item->h > bin->end || !rc_nest_task_allows (self->task, item, bin))
        continue;
      *level = (Level){ self->bin_end[b], along + item->h, 0, bin->width, (int)b, -1 };
      self->bin_end[b] = level->end;
      add_column (self, level, item, along, spot);
      if (!is_full (self, level))
        self->open[self->n_open++] = self->n_levels;
      self->n_levels++;
      return TRUE;
    }
  *spot = (RcNestSpot){ -1, 0, 0 };
  return FALSE;
}

static gboolean
place (RcNestBuilder *self, const RcNestItem *item, int eagerness, const guint *bin_order, RcNestSpot *spot)
{
  Choice best = { G_MAXINT64, -1, -1, 0 };
  Level *level;

  for (int s = 0; s < self->n_open && best.score > 0; s++)
    if ((item->group < 0 && item->pinned == 0 && self->task->bins->n == 1)
        || rc_nest_task_allows (self->task, item, &self->task->bins->bins[self->levels[self->open[s]].bin]))
      try_level (self, item, s, eagerness, &best);
  if (best.slot < 0)
    return open_level (self, item, bin_order, spot);

  level = &self->levels[self->open[best.slot]];
  if (best.column >= 0)
    {
      Column *column = &self->columns[best.column];

      *spot = (RcNestSpot){ level->bin, column->across, best.along };
      column->end = best.along + item->h;
    }
  else
    add_column (self, level, item, best.along, spot);
  if (is_full (self, level))
    {
      self->n_open--;
      for (int s = best.slot; s < self->n_open; s++)
        self->open[s] = self->open[s + 1];
    }
  return TRUE;
}

guint
rc_nest_builder_run (RcNestBuilder *self, const guint *order, guint n_order, int eagerness, const guint *bin_order,
                     RcNestSpot *spots)
{
  guint unplaced = 0;

  self->n_levels = self->n_columns = self->n_open = 0;
  for (guint b = 0; b < self->task->bins->n; b++)
    self->bin_end[b] = self->task->bins->bins[b].start;
  for (guint k = 0; k < n_order; k++)
    unplaced += !place (self, &self->task->items->items[order[k]], eagerness, bin_order, &spots[order[k]]);
  return unplaced;
}

RcLength
rc_nest_builder_get_used (const RcNestBuilder *self)
{
  const RcNestBins *bins = self->task->bins;
  RcLength          used = 0;

  for (guint b = 0; b < bins->n; b++)
    {
      gboolean last = b + 1 == bins->n || bins->bins[b + 1].source != bins->bins[b].source
                      || bins->bins[b + 1].copy != bins->bins[b].copy;

      if (last && self->bin_end[b] > bins->bins[b].start)
        used += self->bin_end[b];
    }
  return used;
}

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
  RcNestScore            best = { G_MAXUINT, G_MAXINT64, 0, G_MAXINT64, 0 };

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
  RcNestScore            best = { G_MAXUINT, G_MAXINT64, 0, G_MAXINT64, 0 };

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
