#include "level-lp.h"

#include "column-lp.h"
#include "wide.h"

enum
{
  MOST_CELLS = 300000 /* of a table */
};

typedef struct
{
  RcNestLevelItem *items; /* narrowest first, in whole units: a column is led by the last of its items */
  guint            n;
  RcLength         width, longest;
  const gint64    *price;
  gint64          *stacks;  /* by item and length: the most valuable stack of the items up to this one */
  gint64          *level;   /* by width: the most valuable columns of the length at hand */
  guint8          *chosen;  /* by item and width: whether it leads a column */
  double          *promise; /* by length: no level of it is worth more for its length */
  RcLength        *lengths; /* most promising first */
} Levels;

static int
compare_items (gconstpointer a, gconstpointer b)
{
  const RcNestLevelItem *p = a, *q = b;

  if (p->w != q->w)
    return p->w < q->w ? -1 : 1;
  return p->h < q->h ? -1 : p->h > q->h;
}

/* The most valuable stack of items 0 .. k - 1 in length x. */
static gint64
get_stack (const Levels *self, guint k, RcLength x)
{
  return k == 0 ? 0 : self->stacks[((gsize)self->longest + 1) * (k - 1) + (gsize)x];
}

/* The most valuable column that item k leads in length x; 0: none. */
static gint64
get_column (const Levels *self, guint k, RcLength x)
{
  RcLength left = x - self->items[k].h;

  return left >= 0 ? self->price[k] + get_stack (self, k, left) : 0;
}

static void
fill_stacks (Levels *self)
{
  gsize row = (gsize)self->longest + 1;

  for (guint k = 0; k < self->n; k++)
    for (RcLength x = 0; x <= self->longest; x++)
      self->stacks[row * k + (gsize)x] = MAX (get_stack (self, k, x), get_column (self, k, x));
}

static int
compare_promises (gconstpointer a, gconstpointer b, gpointer user_data)
{
  const double *promise = user_data;
  RcLength      p = *(const RcLength *)a, q = *(const RcLength *)b;

  if (promise[p] != promise[q])
    return promise[p] > promise[q] ? -1 : 1;
  return p < q ? -1 : p > q;
}

/* A level is worth at most its width full of its best column. */
static void
sort_lengths (Levels *self)
{
  for (RcLength x = 1; x <= self->longest; x++)
    {
      double best = 0;

      for (guint k = 0; k < self->n; k++)
        best = MAX (best, (double)get_column (self, k, x) / (double)self->items[k].w);
      self->promise[x] = best * (double)self->width / (double)x * (1 + 1e-9);
      self->lengths[x - 1] = x;
    }
  g_qsort_with_data (self->lengths, (gint)self->longest, sizeof (RcLength), compare_promises, self->promise);
}

static gint64
fill_level (Levels *self, RcLength x)
{
  gsize row = (gsize)self->width + 1;

  memset (self->level, 0, sizeof (gint64) * row);
  memset (self->chosen, 0, row * self->n);
  for (guint k = 0; k < self->n; k++)
    {
      gint64   value = get_column (self, k, x);
      RcLength w = self->items[k].w;

      for (RcLength y = self->width; value > 0 && y >= w; y--)
        if (self->level[y - w] + value > self->level[y])
          {
            self->level[y] = self->level[y - w] + value;
            self->chosen[row * k + (gsize)y] = 1;
          }
    }
  return self->level[self->width];
}

/* The items of the level just filled. */
static void
read_level (const Levels *self, RcLength x, guint *pattern)
{
  RcLength y = self->width;

  for (guint k = self->n; k-- > 0;)
    {
      RcLength left = x;

      if (!self->chosen[((gsize)self->width + 1) * k + (gsize)y])
        continue;
      y -= self->items[k].w;
      pattern[k]++;
      left -= self->items[k].h;
      for (guint j = k; j-- > 0;)
        if (get_stack (self, j + 1, left) != get_stack (self, j, left))
          {
            pattern[j]++;
            left -= self->items[j].h;
          }
    }
}

static void
find_level (gpointer user_data, const gint64 *price, guint *pattern, gint64 *value, RcLength *cost)
{
  Levels *self = user_data;

  self->price = price;
  fill_stacks (self);
  sort_lengths (self);
  *value = 0;
  *cost = 1;
  for (RcLength i = 0; i < self->longest; i++)
    {
      RcLength x = self->lengths[i];
      gint64   found;

      if (self->promise[x] * (double)*cost <= (double)*value)
        break;
      found = fill_level (self, x);
      if ((__int128)found * *cost <= (__int128)*value * x)
        continue;
      *value = found;
      *cost = x;
    }
  memset (pattern, 0, sizeof (guint) * self->n);
  fill_level (self, *cost);
  read_level (self, *cost, pattern);
}

static void
start_level (gpointer user_data, guint i, guint *pattern, RcLength *cost)
{
  const Levels *self = user_data;

  pattern[i] = 1;
  *cost = self->items[i].h;
}

static gboolean
scale (Levels *self, const RcNestLevelItem *items, RcLength *unit_h)
{
  RcLength unit_w = self->width;

  *unit_h = 0;
  for (guint i = 0; i < self->n; i++)
    {
      unit_w = (RcLength)rc_wide_find_divisor (unit_w, items[i].w);
      *unit_h = (RcLength)rc_wide_find_divisor (*unit_h, items[i].h);
    }
  self->width /= unit_w;
  self->longest /= *unit_h;
  if (MAX (self->width, self->longest) * (RcLength)self->n > MOST_CELLS)
    return FALSE;
  self->items = g_new (RcNestLevelItem, self->n);
  for (guint i = 0; i < self->n; i++)
    self->items[i] = (RcNestLevelItem){ items[i].w / unit_w, items[i].h / *unit_h };
  qsort (self->items, self->n, sizeof *self->items, compare_items);
  return TRUE;
}

RcLength
rc_nest_level_bound (const RcNestLevelItem *items, guint n, RcLength width, RcLength longest, RcLength known,
                     const RcNestClock *clock)
{
  Levels               self = { .n = n, .width = width, .longest = longest };
  g_autofree RcLength *demand = g_new (RcLength, n + 1);
  RcNestColumns        columns = { n, demand, 1, find_level, start_level, &self };
  RcLength             unit, found;

  if (n == 0 || !scale (&self, items, &unit))
    return known;
  for (guint i = 0; i < n; i++)
    demand[i] = 1;
  self.stacks = g_new (gint64, ((gsize)self.longest + 1) * n);
  self.level = g_new (gint64, self.width + 1);
  self.chosen = g_new (guint8, ((gsize)self.width + 1) * n);
  self.promise = g_new (double, self.longest + 1);
  self.lengths = g_new (RcLength, self.longest + 1);
  found = unit * rc_nest_columns_bound (&columns, known / unit, clock);
  g_free (self.items);
  g_free (self.stacks);
  g_free (self.level);
  g_free (self.chosen);
  g_free (self.promise);
  g_free (self.lengths);
  return MAX (known, found);
}
