#include "level-lp.h"

#include "column-lp.h"
#include "wide.h"

enum
{
  MOST_CELLS = 300000,        /* of a table */
  MOST_CELLS_EXACT = 4800000, /* with the sets of single items */
  MOST_SINGLE = 6,
  MOST_SINGLE_AT_ONCE = 2
};

typedef struct
{
  RcNestLevelItem *items; /* narrowest first, in whole units: a column is led by the last of its items */
  guint            n;
  RcLength         width, longest;
  const gint64    *price;
  guint           *single;    /* by item: its bit among the single items, which lie once in a level; 0: it may repeat */
  guint            n_sets;    /* of single items: 1 << their number */
  guint           *repeated;  /* by item: how often it is in the level found last */
  gboolean         is_proper; /* no item counts more than once in a pattern */
  gint64          *stacks;    /* by item, set and length: the most valuable stack of the items up to this one */
  gint64          *nothing;   /* zeros, as many as lengths */
  gint64          *level;     /* by set and width: the most valuable columns of the length at hand */
  guint8          *chosen;    /* by item, set and width: 0, or 1 and the set of the column that it leads */
  double          *promise;   /* by length: no level of it is worth more for its length */
  RcLength        *lengths;   /* most promising first */
} Levels;

static int
compare_items (gconstpointer a, gconstpointer b)
{
  const RcNestLevelItem *p = a, *q = b;

  if (p->w != q->w)
    return p->w < q->w ? -1 : 1;
  return p->h < q->h ? -1 : p->h > q->h;
}

static inline gsize
get_stack_row (const Levels *self, guint k, guint set)
{
  return ((gsize)self->longest + 1) * (self->n_sets * k + set);
}

static inline gsize
get_level_row (const Levels *self, guint set)
{
  return ((gsize)self->width + 1) * set;
}

static inline guint8 *
get_chosen (const Levels *self, guint k, guint set)
{
  return self->chosen + ((gsize)self->width + 1) * (self->n_sets * k + set);
}

/* The most valuable stack of items 0 .. k - 1 in length x, with single items of a set only. */
static inline gint64
get_stack (const Levels *self, guint k, guint set, RcLength x)
{
  return k == 0 ? 0 : self->stacks[get_stack_row (self, k - 1, set) + (gsize)x];
}

/* The most valuable column that item k leads in length x; 0: none. */
static inline gint64
get_column (const Levels *self, guint k, guint set, RcLength x)
{
  RcLength left = x - self->items[k].h;

  if (left < 0 || (self->single[k] & ~set) != 0)
    return 0;
  return self->price[k] + get_stack (self, k, set & ~self->single[k], left);
}

static void
fill_stacks (Levels *self)
{
  const gint64 *none = self->nothing;

  for (guint k = 0; k < self->n; k++)
    for (guint set = 0; set < self->n_sets; set++)
      {
        gint64       *stacks = self->stacks + get_stack_row (self, k, set), price = self->price[k];
        const gint64 *without = k == 0 ? none : self->stacks + get_stack_row (self, k - 1, set);
        const gint64 *rest = k == 0 ? none : self->stacks + get_stack_row (self, k - 1, set & ~self->single[k]);
        RcLength      h = self->items[k].h, from = (self->single[k] & ~set) != 0 ? self->longest + 1 : h;

        memcpy (stacks, without, sizeof *stacks * (gsize)MIN (from, self->longest + 1));
        for (RcLength x = from; x <= self->longest; x++)
          stacks[x] = MAX (without[x], price + rest[x - h]);
      }
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
        best = MAX (best, (double)get_column (self, k, self->n_sets - 1, x) / (double)self->items[k].w);
      self->promise[x] = best * (double)self->width / (double)x * (1 + 1e-9);
      self->lengths[x - 1] = x;
    }
  g_qsort_with_data (self->lengths, (gint)self->longest, sizeof (RcLength), compare_promises, self->promise);
}

/* A column that item k leads: what it is worth with these single items in it. */
typedef struct
{
  guint  with;
  gint64 value;
} Column;

/* Those of length x worth more than any with fewer single items. */
static guint
list_columns (const Levels *self, guint k, RcLength x, Column *columns)
{
  guint n = 0;

  for (guint set = 0; set < self->n_sets; set++)
    {
      gint64   value = get_column (self, k, set, x);
      gboolean is_worth = value > 0;

      for (guint c = 0; c < n && is_worth; c++)
        is_worth = (columns[c].with & ~set) != 0 || columns[c].value < value;
      if (is_worth)
        columns[n++] = (Column){ set, value };
    }
  return n;
}

/* Columns of one leader are added to the levels that may hold `set`. Larger sets go first, so that the leader is not
 * yet in what their columns are put beside; a column without single items likewise comes first, and is put beside a
 * narrower level of the same set. */
static void
add_columns (Levels *self, guint k, const Column *columns, guint n, guint set)
{
  RcLength w = self->items[k].w;
  gint64  *level = self->level + get_level_row (self, set);
  guint8  *chosen = get_chosen (self, k, set);

  for (guint c = 0; c < n; c++)
    {
      const gint64 *rest = self->level + get_level_row (self, set & ~columns[c].with) - w;
      gint64        value = columns[c].value;
      guint8        mark = (guint8)(columns[c].with + 1);

      if ((columns[c].with & ~set) != 0)
        continue;
      for (RcLength y = self->width; y >= w; y--)
        if (rest[y] + value > level[y])
          {
            level[y] = rest[y] + value;
            chosen[y] = mark;
          }
    }
}

static gint64
fill_level (Levels *self, RcLength x)
{
  Column columns[1 << MOST_SINGLE];

  memset (self->level, 0, sizeof (gint64) * get_level_row (self, self->n_sets));
  memset (self->chosen, 0, get_level_row (self, self->n_sets) * self->n);
  for (guint k = 0; k < self->n; k++)
    {
      guint n = list_columns (self, k, x, columns);

      for (guint set = self->n_sets; n > 0 && set-- > 0;)
        add_columns (self, k, columns, n, set);
    }
  return self->level[get_level_row (self, self->n_sets - 1) + (gsize)self->width];
}

/* How often each item is in the level just filled. */
static void
read_level (Levels *self, RcLength x)
{
  guint    set = self->n_sets - 1;
  RcLength y = self->width;

  memset (self->repeated, 0, sizeof (guint) * self->n);
  for (guint k = self->n; k-- > 0;)
    {
      guint    with = get_chosen (self, k, set)[y];
      RcLength left = x - self->items[k].h;

      if (with-- == 0)
        continue;
      y -= self->items[k].w;
      set &= ~with;
      self->repeated[k]++;
      with &= ~self->single[k];
      for (guint j = k; j-- > 0;)
        if (get_stack (self, j + 1, with, left) != get_stack (self, j, with, left))
          {
            self->repeated[j]++;
            left -= self->items[j].h;
            with &= ~self->single[j];
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
  fill_level (self, *cost);
  read_level (self, *cost);
  for (guint k = 0; k < self->n; k++)
    pattern[k] = self->is_proper ? MIN (self->repeated[k], 1) : self->repeated[k];
}

static void
make_tables (Levels *self)
{
  gsize sets = self->n_sets;

  self->stacks = g_renew (gint64, self->stacks, ((gsize)self->longest + 1) * self->n * sets);
  self->level = g_renew (gint64, self->level, ((gsize)self->width + 1) * sets);
  self->chosen = g_renew (guint8, self->chosen, ((gsize)self->width + 1) * self->n * sets);
}

static int
find_dearest_repeated (const Levels *self)
{
  int dearest = -1;

  for (guint k = 0; k < self->n; k++)
    if (self->repeated[k] > 1 && self->single[k] == 0 && (dearest < 0 || self->price[k] > self->price[dearest]))
      dearest = (int)k;
  return dearest;
}

/* Some of the items that the level found last repeats may do so no longer. */
static gboolean
refine (gpointer user_data)
{
  Levels  *self = user_data;
  RcLength cells = MAX (self->width, self->longest) * (RcLength)self->n * 2;
  gboolean refined = FALSE;

  self->is_proper = TRUE;
  for (guint k = 0; k < MOST_SINGLE_AT_ONCE; k++)
    {
      int item = find_dearest_repeated (self);

      if (item < 0 || self->n_sets == 1 << MOST_SINGLE || cells * (RcLength)self->n_sets > MOST_CELLS_EXACT)
        break;
      self->single[item] = self->n_sets;
      self->n_sets *= 2;
      refined = TRUE;
    }
  make_tables (self);
  return refined;
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
  Levels               self = { .n = n, .width = width, .longest = longest, .n_sets = 1 };
  g_autofree RcLength *demand = g_new (RcLength, n + 1);
  RcNestColumns        columns = { n, demand, 1, find_level, start_level, refine, &self };
  RcLength             unit, found;

  if (n == 0 || !scale (&self, items, &unit))
    return known;
  for (guint i = 0; i < n; i++)
    demand[i] = 1;
  make_tables (&self);
  self.single = g_new0 (guint, n);
  self.repeated = g_new0 (guint, n);
  self.nothing = g_new0 (gint64, self.longest + 1);
  self.promise = g_new (double, self.longest + 1);
  self.lengths = g_new (RcLength, self.longest + 1);
  found = unit * rc_nest_columns_bound (&columns, known / unit, clock);
  g_free (self.items);
  g_free (self.single);
  g_free (self.repeated);
  g_free (self.stacks);
  g_free (self.nothing);
  g_free (self.level);
  g_free (self.chosen);
  g_free (self.promise);
  g_free (self.lengths);
  return MAX (known, found);
}
