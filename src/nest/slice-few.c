#include "slice-few.h"

enum
{
  MOST_ITEMS = 24,
  MOST_POOLS = 24,
  MOST_ROWS = 160, /* of the program: slices, and items of pools */
  MOST_COLUMNS = MOST_ITEMS + MOST_POOLS,
  MOST_PIVOTS = 200
};

#define ONE     (1 << 20) /* the worth of a slice */
#define AS_GOOD 1e-9      /* of the program's numbers: as good as nothing */

/* The program in the tableau of the simplex method: a row for each slice and each item of a pool, a column for the
 * price of each item and each pool. */
typedef struct
{
  const RcNestSliceItem *items;
  const RcNestSlicePool *pools;
  guint                  n, n_pools, n_slices, n_rows, n_columns;
  guint                  order[MOST_ITEMS]; /* of items, the widest first */
  guint8                 slices[MOST_ROWS][MOST_ITEMS];
  double                 cells[MOST_ROWS + 1][MOST_COLUMNS + 1]; /* the last row is what is to be made most of */
  int                    basic[MOST_ROWS], free[MOST_COLUMNS];   /* variables: columns, then rows */
  gint64                 price[MOST_ITEMS];
} Few;

/* --- slices --- */

/* Adds the slices that begin with what is in `slice` and hold no room for more. FALSE: too many. */
static gboolean
list_slices (Few *self, guint at, RcLength left, guint8 *slice)
{
  RcLength rest = 0;
  /* cppcheck-suppress ctuuninitvar ; n is set, the tableau is not yet */
  for (guint i = at; i < self->n; i++)
    rest += self->items[self->order[i]].w * self->items[self->order[i]].count;
  if (rest <= left) /* all fit, which is more than any of them */
    {
      for (guint i = 0; i < at; i++)
        {
          const RcNestSliceItem *item = &self->items[self->order[i]];
          if (slice[self->order[i]] < item->count && item->w <= left - rest)
            return TRUE;
        }
      if (self->n_slices == MOST_ROWS)
        return FALSE;
      memcpy (self->slices[self->n_slices], slice, MOST_ITEMS);
      for (guint i = at; i < self->n; i++)
        self->slices[self->n_slices][self->order[i]] = (guint8)self->items[self->order[i]].count;
      self->n_slices++;
      return TRUE;
    }
  /* NOLINTNEXTLINE(clang-analyzer-core.uninitialized.Assign): all n of the order are set; clearing it costs time */
  guint    i = self->order[at];
  guint    most = (guint)MIN ((RcLength)self->items[i].count, left / self->items[i].w);
  gboolean fine = TRUE;
  for (guint k = most + 1; k-- > 0 && fine;)
    {
      slice[i] = (guint8)k;
      fine = list_slices (self, at + 1, left - self->items[i].w * k, slice);
    }
  slice[i] = 0;
  return fine;
}

/* --- the program --- */

static void
fill_program (Few *self, guint n_rows)
{
  for (guint r = 0; r <= n_rows; r++)
    memset (self->cells[r], 0, sizeof (double) * (self->n + self->n_pools + 1));
  self->n_rows = 0;
  self->n_columns = self->n + self->n_pools;
  for (; self->n_rows < self->n_slices; self->n_rows++)
    {
      for (guint i = 0; i < self->n; i++)
        self->cells[self->n_rows][i] = self->slices[self->n_rows][i];
      self->cells[self->n_rows][self->n_columns] = 1;
    }
  for (guint p = 0; p < self->n_pools; p++)
    for (guint i = 0; i < self->pools[p].n; i++, self->n_rows++)
      {
        self->cells[self->n_rows][self->n + p] = 1;
        self->cells[self->n_rows][self->pools[p].first + i] = -1;
      }
  for (guint c = 0; c < self->n_columns; c++)
    self->free[c] = (int)c;
  for (guint r = 0; r < self->n_rows; r++)
    self->basic[r] = (int)(self->n_columns + r);
  for (guint c = 0; c < self->n_columns; c++)
    self->cells[self->n_rows][c]
        = (double)(c < self->n ? self->items[c].demand : self->pools[c - self->n].length) / RC_TICKS_PER_FOOT;
}

static void
pivot (Few *self, guint row, guint column)
{
  double by = 1 / self->cells[row][column];
  int    kept = self->basic[row];
  self->basic[row] = self->free[column];
  self->free[column] = kept;
  for (guint c = 0; c <= self->n_columns; c++)
    self->cells[row][c] *= by;
  self->cells[row][column] = by;
  for (guint r = 0; r <= self->n_rows; r++)
    {
      double factor = self->cells[r][column];
      if (r == row || (factor > -AS_GOOD && factor < AS_GOOD))
        continue;
      for (guint c = 0; c <= self->n_columns; c++)
        self->cells[r][c] -= factor * self->cells[row][c];
      self->cells[r][column] = -factor * by;
    }
}

/* The column that gains most, or the first that gains where `first`; n_columns: none does. */
static guint
find_column (const Few *self, gboolean first)
{
  guint  found = self->n_columns;
  double most = AS_GOOD;
  for (guint c = 0; c < self->n_columns; c++)
    {
      double gain = self->cells[self->n_rows][c];
      if (gain <= most || (first && found < self->n_columns && self->free[c] > self->free[found]))
        continue;
      found = c;
      most = first ? AS_GOOD : gain;
    }
  return found;
}

static guint
find_row (const Few *self, guint column)
{
  guint  found = self->n_rows;
  double least = 0;
  for (guint r = 0; r < self->n_rows; r++)
    {
      if (self->cells[r][column] <= AS_GOOD)
        continue;
      double ratio = self->cells[r][self->n_columns] / self->cells[r][column];
      if (found < self->n_rows && (ratio > least || (ratio >= least && self->basic[r] > self->basic[found])))
        continue;
      found = r;
      least = ratio;
    }
  return found;
}

/* However far the program was solved, its prices are good ones but for rounding, which settle_prices sees to. */
static void
solve (Few *self)
{
  for (guint i = 0; i < MOST_PIVOTS; i++)
    {
      guint column = find_column (self, i > MOST_PIVOTS / 2);
      guint row = column < self->n_columns ? find_row (self, column) : self->n_rows;
      if (row == self->n_rows)
        break;
      pivot (self, row, column);
    }
  memset (self->price, 0, sizeof (self->price));
  for (guint r = 0; r < self->n_rows; r++)
    if (self->basic[r] < (int)self->n)
      self->price[self->basic[r]] = (gint64)(CLAMP (self->cells[r][self->n_columns], 0.0, 1.0) * ONE);
}

/* Whole numbers by which no slice is worth more than ONE. */
static void
settle_prices (Few *self)
{
  gint64 most = ONE;
  for (guint s = 0; s < self->n_slices; s++)
    {
      gint64 worth = 0;
      for (guint i = 0; i < self->n; i++)
        worth += self->price[i] * self->slices[s][i];
      most = MAX (most, worth);
    }
  for (guint i = 0; i < self->n && most > ONE; i++)
    self->price[i] = self->price[i] * ONE / most;
}

static RcLength
add_up (const Few *self)
{
  __int128 sum = 0;
  for (guint i = 0; i < self->n; i++)
    sum += (__int128)self->price[i] * self->items[i].demand;
  for (guint p = 0; p < self->n_pools; p++)
    {
      gint64 least = ONE;
      for (guint i = 0; i < self->pools[p].n; i++)
        least = MIN (least, self->price[self->pools[p].first + i]);
      sum += (__int128)least * self->pools[p].length;
    }
  return (RcLength)((sum + ONE - 1) / ONE);
}

/* Items wider than half the roll lie beside none of each other. */
static RcLength
add_up_wide (const RcNestSliceItem *items, guint n, RcLength width)
{
  RcLength sum = 0;
  for (guint i = 0; i < n; i++)
    sum += items[i].w * 2 > width ? items[i].demand : 0;
  return sum;
}

RcLength
rc_nest_slice_bound_few (const RcNestSliceItem *items, guint n, const RcNestSlicePool *pools, guint n_pools,
                         RcLength width, RcLength known)
{
  Few    self;
  guint8 slice[MOST_ITEMS] = { 0 };
  guint  n_rows = 0;
  known = MAX (known, add_up_wide (items, n, width));
  if (n == 0 || n > MOST_ITEMS || n_pools > MOST_POOLS)
    return known;
  self.items = items;
  self.pools = pools;
  self.n = n;
  self.n_pools = n_pools;
  self.n_slices = 0;
  for (guint i = 0; i < n; i++)
    {
      guint at = i;
      for (; at > 0 && items[self.order[at - 1]].w < items[i].w; at--)
        self.order[at] = self.order[at - 1];
      self.order[at] = i;
    }
  for (guint p = 0; p < n_pools; p++)
    n_rows += pools[p].n;
  if (!list_slices (&self, 0, width, slice) || self.n_slices + n_rows > MOST_ROWS)
    return known;
  fill_program (&self, self.n_slices + n_rows);
  solve (&self);
  settle_prices (&self);
  return MAX (known, add_up (&self));
}
