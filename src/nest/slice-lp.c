#include "slice-lp.h"

#include "column-lp.h"
#include "wide.h"

enum
{
  MOST_CELLS = 6000000 /* of the knapsack's table */
};

typedef struct
{
  const RcNestSliceItem *items;
  guint                  n;
  RcLength               width;      /* in units of the knapsack */
  RcLength              *w;          /* likewise */
  gint64                *value;      /* by width: the most valuable slice */
  guint8                *chosen;     /* by entry and width */
  guint                 *entry_item; /* an item of count 5 is entries of 1, 2 and 2 copies */
  guint                 *entry_copies;
  guint                  n_entries;
} Slices;

static void
list_entries (Slices *self)
{
  guint most = 0, k = 0;

  for (guint i = 0; i < self->n; i++)
    most += 1 + g_bit_storage (self->items[i].count);
  self->entry_item = g_new (guint, most + 1);
  self->entry_copies = g_new (guint, most + 1);
  for (guint i = 0; i < self->n; i++)
    {
      guint left = (guint)MIN ((RcLength)self->items[i].count, self->width / MAX (self->w[i], 1));

      for (guint copies = 1; left > 0; copies *= 2, k++)
        {
          self->entry_item[k] = i;
          self->entry_copies[k] = MIN (copies, left);
          left -= self->entry_copies[k];
        }
    }
  self->n_entries = k;
}

/* Widths in whole units; rounding them down when the table would be too large only lowers the bound. */
static gboolean
scale_widths (Slices *self, RcLength width)
{
  RcLength unit = 0;

  self->w = g_new (RcLength, self->n + 1);
  for (guint i = 0; i < self->n; i++)
    unit = (RcLength)rc_wide_find_divisor (unit, self->items[i].w);
  if (unit == 0)
    return FALSE;
  if (width / unit * self->n * 2 > MOST_CELLS)
    unit = width * self->n * 2 / MOST_CELLS + 1;
  self->width = width / unit;
  for (guint i = 0; i < self->n; i++)
    self->w[i] = self->items[i].w / unit;
  return self->width > 0;
}

/* The most valuable slice; all cost the same. */
static void
find_slice (gpointer user_data, const gint64 *prices, guint *pattern, gint64 *value, RcLength *cost)
{
  Slices  *self = user_data;
  gsize    row = (gsize)self->width + 1;
  RcLength c = self->width;

  memset (self->value, 0, sizeof (gint64) * row);
  memset (pattern, 0, sizeof (guint) * self->n);
  for (guint k = 0; k < self->n_entries; k++)
    {
      guint    i = self->entry_item[k];
      RcLength w = self->w[i] * self->entry_copies[k];
      gint64   price = prices[i] * self->entry_copies[k];
      guint8  *chosen = self->chosen + row * k;

      memset (chosen, 0, row);
      if (price == 0)
        continue;
      for (RcLength x = self->width; x >= w; x--)
        if (self->value[x - w] + price > self->value[x])
          {
            self->value[x] = self->value[x - w] + price;
            chosen[x] = 1;
          }
    }
  for (guint k = self->n_entries; k-- > 0;)
    if (self->chosen[row * k + (gsize)c])
      {
        pattern[self->entry_item[k]] += self->entry_copies[k];
        c -= self->w[self->entry_item[k]] * self->entry_copies[k];
      }
  *value = self->value[self->width];
  *cost = 1;
}

static void
start_slice (gpointer user_data, guint i, guint *pattern, RcLength *cost)
{
  const Slices *self = user_data;

  pattern[i] = (guint)MIN ((RcLength)self->items[i].count, self->width / MAX (self->w[i], 1));
  *cost = 1;
}

RcLength
rc_nest_slice_bound (const RcNestSliceItem *items, guint n, RcLength width, RcLength known, RcLength grid,
                     const RcNestClock *clock)
{
  Slices               self = { .items = items, .n = n };
  g_autofree RcLength *demand = g_new (RcLength, n + 1);
  RcNestColumns        columns = { n, demand, grid, find_slice, start_slice, NULL, &self };

  for (guint i = 0; i < n; i++)
    demand[i] = items[i].demand;
  if (n > 0 && scale_widths (&self, width))
    {
      list_entries (&self);
      self.value = g_new (gint64, self.width + 1);
      self.chosen = g_new (guint8, (gsize)(self.width + 1) * (self.n_entries + 1));
      known = rc_nest_columns_bound (&columns, known, clock);
    }
  g_free (self.w);
  g_free (self.value);
  g_free (self.chosen);
  g_free (self.entry_item);
  g_free (self.entry_copies);
  return known;
}
