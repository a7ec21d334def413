#include "slice-lp.h"

#include <glpk.h>
#include <math.h>

enum
{
  MOST_ROUNDS = 2000,
  MOST_CELLS = 6000000, /* of the knapsack's table */
  PRICE_BITS = 30
};

typedef __int128 Wide;

typedef struct
{
  const RcNestSliceItem *items;
  guint                  n;
  RcLength               width;      /* in units of the knapsack */
  RcLength              *w;          /* likewise */
  gint64                *price;      /* whole */
  gint64                *value;      /* by width: the most valuable slice */
  guint8                *chosen;     /* by entry and width */
  guint                 *entry_item; /* an item of count 5 is entries of 1, 2 and 2 copies */
  guint                 *entry_copies;
  guint                  n_entries;
  guint                 *pattern; /* copies of each item in the best slice */
  glp_prob              *lp;
} Slices;

static RcLength
find_divisor (RcLength a, RcLength b)
{
  while (b != 0)
    {
      RcLength rest = a % b;
      a = b;
      b = rest;
    }
  return a;
}

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
    unit = find_divisor (unit, self->items[i].w);
  if (unit == 0)
    return FALSE;
  if (width / unit * self->n * 2 > MOST_CELLS)
    unit = width * self->n * 2 / MOST_CELLS + 1;
  self->width = width / unit;
  for (guint i = 0; i < self->n; i++)
    self->w[i] = self->items[i].w / unit;
  return self->width > 0;
}

/* The value of the most valuable slice; its pattern is written. */
static gint64
find_slice (Slices *self)
{
  gsize    row = (gsize)self->width + 1;
  RcLength c = self->width;

  memset (self->value, 0, sizeof (gint64) * row);
  memset (self->pattern, 0, sizeof (guint) * self->n);
  for (guint k = 0; k < self->n_entries; k++)
    {
      guint    i = self->entry_item[k];
      RcLength w = self->w[i] * self->entry_copies[k];
      gint64   price = self->price[i] * self->entry_copies[k];
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
        self->pattern[self->entry_item[k]] += self->entry_copies[k];
        c -= self->w[self->entry_item[k]] * self->entry_copies[k];
      }
  return self->value[self->width];
}

static void
add_pattern (Slices *self)
{
  g_autofree int    *rows = g_new (int, self->n + 1);
  g_autofree double *values = g_new (double, self->n + 1);
  int                c = glp_add_cols (self->lp, 1), n = 0;

  for (guint i = 0; i < self->n; i++)
    if (self->pattern[i] > 0)
      {
        rows[++n] = (int)i + 1;
        values[n] = self->pattern[i];
      }
  glp_set_col_bnds (self->lp, c, GLP_LO, 0, 0);
  glp_set_obj_coef (self->lp, c, 1);
  glp_set_mat_col (self->lp, c, n, rows, values);
}

static void
start_program (Slices *self)
{
  self->lp = glp_create_prob ();
  glp_set_obj_dir (self->lp, GLP_MIN);
  glp_add_rows (self->lp, (int)self->n);
  for (guint i = 0; i < self->n; i++)
    {
      double demand = (double)self->items[i].h * self->items[i].count;

      glp_set_row_bnds (self->lp, (int)i + 1, GLP_LO, demand, demand);
      memset (self->pattern, 0, sizeof (guint) * self->n);
      self->pattern[i] = 1;
      add_pattern (self);
    }
}

static void
read_prices (Slices *self)
{
  double most = 1e-12;

  for (guint i = 0; i < self->n; i++)
    most = MAX (most, glp_get_row_dual (self->lp, (int)i + 1));
  for (guint i = 0; i < self->n; i++)
    {
      double dual = MAX (glp_get_row_dual (self->lp, (int)i + 1), 0);
      self->price[i] = (gint64)(dual / most * (double)(1 << PRICE_BITS));
    }
}

/* Total price of all items over the dearest slice, rounded up. */
static RcLength
form_bound (const Slices *self, gint64 dearest)
{
  Wide total = 0;

  for (guint i = 0; i < self->n; i++)
    total += (Wide)self->price[i] * self->items[i].h * self->items[i].count;
  return dearest > 0 ? (RcLength)((total + dearest - 1) / dearest) : 0;
}

static RcLength
generate (Slices *self, RcLength known, RcLength grid, const RcNestClock *clock)
{
  glp_smcp parameters;

  glp_init_smcp (&parameters);
  parameters.msg_lev = GLP_MSG_OFF;
  parameters.meth = GLP_PRIMAL;
  start_program (self);
  for (guint round = 0; round < MOST_ROUNDS && !rc_nest_clock_is_over (clock); round++)
    {
      RcLength bound, value;

      parameters.tm_lim = MAX (1, (int)MIN ((clock->end_us - g_get_monotonic_time ()) / 1000, 5));
      if (glp_simplex (self->lp, &parameters) != 0 && glp_get_prim_stat (self->lp) != GLP_FEAS)
        break;
      read_prices (self);
      bound = rc_length_round_up (form_bound (self, find_slice (self)), grid);
      known = MAX (known, bound);
      value = rc_length_round_up ((RcLength)ceil (glp_get_obj_val (self->lp) - 1e-6), grid);
      if (glp_get_status (self->lp) == GLP_OPT && value <= known)
        break;
      add_pattern (self);
    }
  glp_delete_prob (self->lp);
  return known;
}

RcLength
rc_nest_slice_bound (const RcNestSliceItem *items, guint n, RcLength width, RcLength known, RcLength grid,
                     const RcNestClock *clock)
{
  Slices   self = { .items = items, .n = n };
  gboolean own = glp_init_env () == 0; /* this thread's; another user's stays as it is */
  int      loud = glp_term_out (GLP_OFF);

  if (n > 0 && scale_widths (&self, width))
    {
      list_entries (&self);
      self.price = g_new (gint64, n + 1);
      self.value = g_new (gint64, self.width + 1);
      self.chosen = g_new (guint8, (gsize)(self.width + 1) * (self.n_entries + 1));
      self.pattern = g_new0 (guint, n + 1);
      known = generate (&self, known, grid, clock);
    }
  glp_term_out (loud);
  if (own)
    glp_free_env ();
  g_free (self.w);
  g_free (self.price);
  g_free (self.value);
  g_free (self.chosen);
  g_free (self.entry_item);
  g_free (self.entry_copies);
  g_free (self.pattern);
  return known;
}
