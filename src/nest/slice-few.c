#include "slice-few.h"

enum
{
  MOST_ITEMS = 24,
  MOST_POOLS = 24,
  MOST_ROWS = 160, /* of the program: slices, items of pools, items beside narrow ones */
  MOST_COLUMNS = MOST_ITEMS + MOST_POOLS + 1,
  MOST_PIVOTS = 200,
  MOST_STEPS = 5000 /* from item to item while slices are listed: of many narrow ones most hold room for more */
};

#define ONE     (1 << 20) /* the worth of a slice */
#define AS_GOOD 1e-9      /* of the program's numbers: as good as nothing */

/* The program in the tableau of the simplex method: a row for each slice and each item of a pool, a column for the
 * price of each item that is not narrow and of each pool, and one for the width of the roll filled with narrow items,
 * whose price is by their width alone. */
typedef struct
{
  RcNestSliceItem        items[MOST_ITEMS]; /* the widest first; those from n_wide on are narrow */
  guint                  place[MOST_ITEMS]; /* of the items as they were given */
  RcLength               rest[MOST_ITEMS];  /* as wide are the wide ones from there on, all side by side */
  const RcNestSlicePool *pools;
  RcLength               width;
  guint                  n, n_pools, n_wide, n_slices, n_steps, n_rows, n_columns;
  guint8                 slices[MOST_ROWS][MOST_ITEMS];          /* of wide items */
  RcLength               left[MOST_ROWS];                        /* beside them */
  double                 cells[MOST_ROWS + 1][MOST_COLUMNS + 1]; /* the last row is what is to be made most of */
  int                    basic[MOST_ROWS], free[MOST_COLUMNS];   /* variables: columns, then rows */
  gint64                 price[MOST_ITEMS], narrow_price;
} Few;

static void
sort_items (Few *self, const RcNestSliceItem *items, guint n)
{
  guint order[MOST_ITEMS] = { 0 };
  for (guint i = 0; i < n; i++)
    {
      guint at = i;
      for (; at > 0 && items[order[at - 1]].w < items[i].w; at--)
        order[at] = order[at - 1];
      order[at] = i;
    }
  self->n = n;
  for (guint i = 0; i < n; i++)
    {
      self->items[i] = items[order[i]];
      self->place[order[i]] = i;
    }
}

/* --- slices --- */

/* Adds the slice whose items from `at` on are all that there are, unless it holds room for more of those before. FALSE:
 * too many. */
static gboolean
add_slice (Few *self, guint at, RcLength left, const guint8 *slice)
{
  for (guint i = 0; i < at; i++)
    if (slice[i] < self->items[i].count && self->items[i].w <= left)
      return TRUE;
  if (self->n_slices == MOST_ROWS)
    return FALSE;
  memcpy (self->slices[self->n_slices], slice, at);
  for (guint i = at; i < self->n_wide; i++)
    self->slices[self->n_slices][i] = (guint8)self->items[i].count;
  self->left[self->n_slices++] = left;
  return TRUE;
}

/* Adds the slices that begin with what is in `slice` and hold no room for more. FALSE: too many. */
static gboolean
list_slices (Few *self, guint at, RcLength left, guint8 *slice)
{
  RcLength rest = at < self->n_wide ? self->rest[at] : 0;
  if (++self->n_steps > MOST_STEPS)
    return FALSE;
  if (rest <= left) /* all fit, which is more than any of them */
    return add_slice (self, at, left - rest, slice);
  const RcNestSliceItem *item = &self->items[at];
  guint                  most = (guint)MIN ((RcLength)item->count, left / item->w);
  gboolean               fine = TRUE;
  for (guint k = most + 1; k-- > 0 && fine;)
    {
      slice[at] = (guint8)k;
      fine = list_slices (self, at + 1, left - item->w * k, slice);
    }
  return fine;
}

/* `n_more`: rows of the pools. FALSE: too many. */
static gboolean
list_all_slices (Few *self, guint n_more)
{
  guint8   slice[MOST_ITEMS];
  RcLength rest = 0;
  for (guint i = self->n_wide; i-- > 0;)
    self->rest[i] = rest += self->items[i].w * self->items[i].count;
  self->n_slices = self->n_steps = 0;
  if (self->n_wide < self->n)
    n_more += self->n_wide;
  return list_slices (self, 0, self->width, slice) && self->n_slices + n_more <= MOST_ROWS;
}

/* Where there are too many slices, ever wider items are narrow. FALSE: too many all the same. */
static gboolean
choose_wide (Few *self, guint n_more)
{
  static const int parts[] = { 16, 8, 6, 4, 3 };
  self->n_wide = self->n;
  if (list_all_slices (self, n_more))
    return TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      guint before = self->n_wide;
      while (self->n_wide > 0 && self->items[self->n_wide - 1].w * parts[i] < self->width)
        self->n_wide--;
      if (self->n_wide < before && list_all_slices (self, n_more))
        return TRUE;
    }
  return FALSE;
}

/* --- the program --- */

static double
get_part (const Few *self, RcLength width)
{
  return (double)width / (double)self->width;
}

/* A row of nothing: no more than `most`. */
static double *
add_row (Few *self, double most)
{
  double *row = self->cells[self->n_rows];
  memset (row, 0, sizeof (double) * self->n_columns);
  row[self->n_columns] = most;
  self->basic[self->n_rows] = (int)(self->n_columns + self->n_rows);
  self->n_rows++;
  return row;
}

/* Each slice is worth no more than one, with what is left of it filled with narrow items. That holds of slices with
 * fewer wide items too if these are worth no less than what is narrow, as wide as they are. */
static void
add_slice_rows (Few *self, gboolean has_narrow)
{
  for (guint s = 0; s < self->n_slices; s++)
    {
      double *row = add_row (self, 1);
      for (guint i = 0; i < self->n_wide; i++)
        row[i] = self->slices[s][i];
      if (has_narrow)
        row[self->n_columns - 1] = get_part (self, self->left[s]);
    }
  for (guint i = 0; i < self->n_wide && has_narrow; i++)
    {
      double *row = add_row (self, 0);
      row[i] = -1;
      row[self->n_columns - 1] = get_part (self, self->items[i].w);
    }
}

/* A pool is worth no more than any of its items. */
static void
add_pool_rows (Few *self)
{
  for (guint p = 0; p < self->n_pools; p++)
    for (guint i = 0; i < self->pools[p].n; i++)
      {
        double *row = add_row (self, 0);
        guint   place = self->place[self->pools[p].first + i];
        row[self->n_wide + p] = 1;
        if (place < self->n_wide)
          row[place] = -1;
        else
          row[self->n_columns - 1] = -get_part (self, self->items[place].w);
      }
}

static void
fill_program (Few *self)
{
  gboolean has_narrow = self->n_wide < self->n;
  self->n_columns = self->n_wide + self->n_pools + has_narrow;
  self->n_rows = 0;
  add_slice_rows (self, has_narrow);
  add_pool_rows (self);
  for (guint c = 0; c < self->n_columns; c++)
    self->free[c] = (int)c;
  double *most = self->cells[self->n_rows];
  memset (most, 0, sizeof (double) * (self->n_columns + 1));
  for (guint i = 0; i < self->n; i++)
    {
      double length = (double)self->items[i].demand / RC_TICKS_PER_FOOT;
      if (i < self->n_wide)
        most[i] = length;
      else
        most[self->n_columns - 1] += length * get_part (self, self->items[i].w);
    }
  for (guint p = 0; p < self->n_pools; p++)
    most[self->n_wide + p] = (double)self->pools[p].length / RC_TICKS_PER_FOOT;
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
  self->narrow_price = 0;
  for (guint r = 0; r < self->n_rows; r++)
    {
      gint64 price = (gint64)(CLAMP (self->cells[r][self->n_columns], 0.0, 1.0) * ONE);
      if (self->basic[r] < (int)self->n_wide)
        self->price[self->basic[r]] = price;
      else if (self->basic[r] == (int)self->n_columns - 1 && self->n_wide < self->n)
        self->narrow_price = price;
    }
}

/* Whole numbers by which no slice is worth more than ONE, nor anything narrow more by its width than what is wide. */
static void
settle_prices (Few *self)
{
  gint64 most = ONE;
  for (guint s = 0; s < self->n_slices; s++)
    {
      gint64 worth = (self->narrow_price * self->left[s] + self->width - 1) / self->width;
      for (guint i = 0; i < self->n_wide; i++)
        worth += self->price[i] * self->slices[s][i];
      most = MAX (most, worth);
    }
  self->narrow_price = self->narrow_price * ONE / most;
  for (guint i = 0; i < self->n_wide; i++)
    {
      self->price[i] = self->price[i] * ONE / most;
      self->narrow_price = MIN (self->narrow_price, self->price[i] * self->width / self->items[i].w);
    }
  for (guint i = self->n_wide; i < self->n; i++)
    self->price[i] = self->narrow_price * self->items[i].w / self->width;
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
        least = MIN (least, self->price[self->place[self->pools[p].first + i]]);
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
  Few   self;
  guint n_pool_rows = 0;
  known = MAX (known, add_up_wide (items, n, width));
  if (n == 0 || n > MOST_ITEMS || n_pools > MOST_POOLS)
    return known;
  sort_items (&self, items, n);
  self.pools = pools;
  self.n_pools = n_pools;
  self.width = width;
  for (guint p = 0; p < n_pools; p++)
    n_pool_rows += pools[p].n;
  if (!choose_wide (&self, n_pool_rows))
    return known;
  fill_program (&self);
  solve (&self);
  settle_prices (&self);
  return MAX (known, add_up (&self));
}
