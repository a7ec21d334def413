#include "choice-lp.h"

#include <glpk.h>
#include <math.h>

enum
{
  MOST_ROUNDS = 2000,
  MOST_MS = 5000, /* of one solution */
  MOST_IDLE = 60, /* checks that do not raise the bound, one after another */
  N_UNITS = 1440, /* at most, in the roll's width */
  N_RAISED = 96   /* widths of which the price is raised as far as slices allow */
};

/* A row of the program: the lengths cut of one width. */
typedef struct
{
  guint  width; /* in units */
  int    row;
  double dual;
} Width;

typedef struct
{
  guint group, way;
  int   column;
} Column;

typedef struct
{
  const RcNestChoice *choice;
  const RcNestClock  *clock;
  glp_prob           *lp;
  RcLength            unit;
  guint               n_units;
  GArray             *widths; /* of Width, rising */
  GArray             *ways;   /* of Column */
  double             *group_dual;
  RcNestPrices        prices; /* at hand: valid */
  guint              *pattern;
  gint64             *value; /* of the knapsack: the most valuable slice, by units of width */
  guint              *last;
  gint64              bound; /* the best */
} Program;

/* --- prices --- */

void
rc_nest_prices_clear (RcNestPrices *prices)
{
  g_clear_pointer (&prices->price, g_free);
  g_clear_pointer (&prices->turns, g_array_unref);
}

gint64
rc_nest_prices_get (const RcNestPrices *prices, RcLength width)
{
  return prices->price[width / prices->unit];
}

static void
find_turns (RcNestPrices *prices)
{
  prices->turns = g_array_new (FALSE, FALSE, sizeof (RcLength));
  for (guint u = 1; u <= prices->n; u++)
    {
      RcLength width = prices->unit * u;
      if (prices->price[u] != prices->price[u - 1])
        g_array_append_val (prices->turns, width);
    }
}

RcNestPrices
rc_nest_prices_scale (const RcNestPrices *prices, gint64 numerator, gint64 denominator)
{
  RcNestPrices scaled = { prices->unit, prices->n, g_new (gint64, prices->n + 1), NULL };
  for (guint u = 0; u <= prices->n; u++)
    scaled.price[u] = (gint64)((__int128)prices->price[u] * numerator / MAX (1, denominator));
  find_turns (&scaled);
  return scaled;
}

static Width *
get_width (const Program *self, guint i)
{
  return &g_array_index (self->widths, Width, i);
}

/* Lets any number of cuts of that width and price into the slices. */
static void
add_item (Program *self, guint width, gint64 price, guint mark)
{
  for (guint x = width; x <= self->n_units; x++)
    {
      gint64 with = self->value[x - width] + price;
      if (with > self->value[x])
        {
          self->value[x] = with;
          self->last[x] = mark;
        }
      if (self->value[x - 1] > self->value[x])
        {
          self->value[x] = self->value[x - 1];
          self->last[x] = 0;
        }
    }
}

static void
clear_items (Program *self)
{
  memset (self->value, 0, sizeof (gint64) * (self->n_units + 1));
  memset (self->last, 0, sizeof (guint) * (self->n_units + 1));
}

/* The most valuable slice at the program's prices: self->pattern. TRUE if it would lower the program's value. */
static gboolean
find_pattern (Program *self)
{
  double worth = 0;
  self->pattern = g_renew (guint, self->pattern, self->widths->len + 1);
  memset (self->pattern, 0, sizeof (guint) * (self->widths->len + 1));
  clear_items (self);
  for (guint i = 0; i < self->widths->len; i++)
    add_item (self, get_width (self, i)->width, (gint64)(get_width (self, i)->dual * RC_NEST_PRICE_PARTS), i + 1);
  for (guint x = self->n_units; x > 0;)
    {
      guint i = self->last[x];
      if (i > 0)
        self->pattern[i - 1]++;
      x -= i > 0 ? get_width (self, i - 1)->width : 1;
    }
  for (guint i = 0; i < self->widths->len; i++)
    worth += get_width (self, i)->dual * self->pattern[i];
  return worth > (double)self->choice->goods_per_m * (1 + 1e-6);
}

/* What a cut of that width may cost at most beside what is in the slices. */
static gint64
find_most (const Program *self, guint width, gint64 goods)
{
  gint64 most = goods;
  for (guint k = 1; k * width <= self->n_units; k++)
    most = MIN (most, (goods - self->value[self->n_units - k * width]) / k);
  return most;
}

static gint64
get_row_price (const Program *self, guint i, gint64 goods, gint64 value)
{
  gint64 price = (gint64)(get_width (self, i)->dual * RC_NEST_PRICE_PARTS);
  return value > goods ? (gint64)((__int128)price * goods / value) : price;
}

/* Raises the prices of widths up to half the roll to what they measure, as far as slices with the program's own widths
 * allow. */
static void
raise_prices (Program *self, gint64 goods)
{
  gint64 *price = self->prices.price;
  g_assert (self->n_units > 0); /* a roll is at least a unit wide */
  for (guint k = 1; k <= N_RAISED; k++)
    {
      guint  width = MAX (1, self->n_units * k / (2 * N_RAISED));
      gint64 most = MIN (find_most (self, width, goods), goods * width / self->n_units);
      if (most <= price[width])
        continue;
      price[width] = most;
      add_item (self, width, most, 0);
    }
}

/* Prices for all widths from the program's for some: brought down until no slice is worth more than goods cost; then
 * those between `raised`, or as they are, which shows ways that raised prices hide. Of cuts wider than half the roll no
 * two lie side by side, so each may cost what the most valuable cuts beside it leave. */
static void
set_prices (Program *self, gboolean raised)
{
  gint64 *price = self->prices.price, goods = self->choice->goods_per_m * RC_NEST_PRICE_PARTS, at = 0;
  gint64  value = self->value[self->n_units]; /* of the pattern found */
  memset (price, 0, sizeof (gint64) * (self->n_units + 1));
  clear_items (self);
  for (guint i = 0; i < self->widths->len; i++)
    {
      guint width = get_width (self, i)->width;
      price[width] = get_row_price (self, i, goods, value);
      add_item (self, width, price[width], 0);
    }
  if (raised)
    raise_prices (self, goods);
  clear_items (self);
  for (guint u = 1; 2 * u <= self->n_units; u++)
    if (price[u] > 0)
      add_item (self, u, price[u], 0);
  for (guint u = 1; u <= self->n_units; u++)
    at = price[u] = 2 * u <= self->n_units ? MAX (at, price[u]) : goods - self->value[self->n_units - u];
  g_clear_pointer (&self->prices.turns, g_array_unref);
  find_turns (&self->prices);
}

/* --- rows --- */

static void
add_column (Program *self, const int *rows, const double *values, int n, double cost)
{
  int c = glp_add_cols (self->lp, 1);
  glp_set_col_bnds (self->lp, c, GLP_LO, 0, 0);
  glp_set_obj_coef (self->lp, c, cost);
  glp_set_mat_col (self->lp, c, n, rows, values);
}

/* What is cut for a wider cut serves for a narrower one. */
static void
add_trimming (Program *self, guint from, guint to)
{
  int    rows[] = { 0, get_width (self, from)->row, get_width (self, to)->row };
  double values[] = { 0, -1, 1 };
  add_column (self, rows, values, 2, 0);
}

/* The row of the width, made when there is none. */
static int
get_row (Program *self, RcLength cut_width)
{
  guint i = 0, width = MAX (1, (guint)(cut_width / self->unit));
  while (i < self->widths->len && get_width (self, i)->width < width)
    i++;
  if (i < self->widths->len && get_width (self, i)->width == width)
    return get_width (self, i)->row;
  Width made = { width, glp_add_rows (self->lp, 1), 0 };
  glp_set_row_bnds (self->lp, made.row, GLP_LO, 0, 0);
  g_array_insert_val (self->widths, i, made);
  int    rows[] = { 0, made.row };
  guint  beside = self->n_units / width; /* whole ones */
  double values[] = { 0, beside };
  add_column (self, rows, values, 1, (double)self->choice->goods_per_m);
  if (i > 0)
    add_trimming (self, i, i - 1);
  if (i + 1 < self->widths->len)
    add_trimming (self, i + 1, i);
  return made.row;
}

/* --- columns --- */

/* One way to cut a group. */
static void
add_way (Program *self, guint group, const GArray *cuts, gint64 own, guint way)
{
  g_autofree int    *rows = g_new (int, cuts->len + 2);
  g_autofree double *values = g_new (double, cuts->len + 2);
  int                n = 1;
  rows[1] = (int)group + 1;
  values[1] = 1;
  for (guint i = 0; i < cuts->len; i++)
    {
      const RcNestChoiceCut *cut = &g_array_index (cuts, RcNestChoiceCut, i);
      int                    row = get_row (self, cut->w), k = 2;
      while (k <= n && rows[k] != row)
        k++;
      if (k > n)
        {
          rows[++n] = row;
          values[n] = 0;
        }
      values[k] -= (double)cut->h / RC_TICKS_PER_M;
    }
  add_column (self, rows, values, n, (double)own / ((double)RC_NEST_PRICE_PARTS * RC_TICKS_PER_M));
  Column column = { group, way, glp_get_num_cols (self->lp) };
  g_array_append_val (self->ways, column);
}

static void
add_pattern (Program *self)
{
  g_autofree int    *rows = g_new (int, self->widths->len + 1);
  g_autofree double *values = g_new (double, self->widths->len + 1);
  int                n = 0;
  for (guint i = 0; i < self->widths->len; i++)
    if (self->pattern[i] > 0)
      {
        rows[++n] = get_width (self, i)->row;
        values[n] = self->pattern[i];
      }
  add_column (self, rows, values, n, (double)self->choice->goods_per_m);
}

/* What the way costs at the program's own prices; a width without a row at that of the next narrower. */
static double
weigh_way (const Program *self, const GArray *cuts, gint64 own)
{
  double cost = (double)own / ((double)RC_NEST_PRICE_PARTS * RC_TICKS_PER_M);
  for (guint i = 0; i < cuts->len; i++)
    {
      const RcNestChoiceCut *cut = &g_array_index (cuts, RcNestChoiceCut, i);
      double                 dual = 0;
      for (guint k = 0; k < self->widths->len && get_width (self, k)->width <= cut->w / self->unit; k++)
        dual = MAX (dual, get_width (self, k)->dual);
      cost += dual * (double)cut->h / RC_TICKS_PER_M;
    }
  return cost;
}

/* --- the search --- */

static void
keep_prices (const Program *self, RcNestPrices *best)
{
  rc_nest_prices_clear (best);
  *best = rc_nest_prices_scale (&self->prices, 1, 1);
}

/* Adds the ways that are cheapest at the prices at hand, where they lower the program's value. FALSE: none does, or the
 * time is over. */
static gboolean
add_ways (Program *self, gboolean likely, RcNestPrices *best)
{
  gboolean better = FALSE;
  gint64   bound = 0;
  g_autoptr (GArray) cuts = g_array_new (FALSE, FALSE, sizeof (RcNestChoiceCut));
  for (guint g = 0; g < self->choice->n_groups; g++)
    {
      gint64 own;
      guint  way;
      if (rc_nest_clock_is_over (self->clock))
        return FALSE;
      g_array_set_size (cuts, 0);
      bound += self->choice->find (self->choice->user_data, g, &self->prices, likely, cuts, &own, &way);
      double cost = weigh_way (self, cuts, own);
      if (cost >= self->group_dual[g] - 1e-6 * (1 + fabs (cost)))
        continue;
      add_way (self, g, cuts, own, way);
      better = TRUE;
    }
  if (!likely && bound > self->bound)
    {
      self->bound = bound;
      keep_prices (self, best);
    }
  return better;
}

static gboolean
solve_program (Program *self, double *value)
{
  glp_smcp parameters;
  glp_init_smcp (&parameters);
  parameters.msg_lev = GLP_MSG_OFF;
  parameters.meth = GLP_PRIMAL;
  /* By effort too: a degenerate program can go round for ever. */
  parameters.tm_lim = rc_nest_clock_get_ms (self->clock, MOST_MS);
  if (glp_simplex (self->lp, &parameters) != 0 || glp_get_status (self->lp) != GLP_OPT)
    return FALSE;
  *value = glp_get_obj_val (self->lp);
  for (guint g = 0; g < self->choice->n_groups; g++)
    self->group_dual[g] = glp_get_row_dual (self->lp, (int)g + 1);
  for (guint i = 0; i < self->widths->len; i++)
    get_width (self, i)->dual = MAX (0, glp_get_row_dual (self->lp, get_width (self, i)->row));
  return TRUE;
}

/* Prices by width alone, as if nothing were wasted; each group's cheapest way at them begins the program. */
static void
start_program (Program *self, RcNestPrices *best)
{
  const RcNestChoice *choice = self->choice;
  g_autoptr (GArray) cuts = g_array_new (FALSE, FALSE, sizeof (RcNestChoiceCut));
  glp_set_obj_dir (self->lp, GLP_MIN);
  if (choice->n_groups > 0)
    glp_add_rows (self->lp, (int)choice->n_groups);
  set_prices (self, TRUE);
  keep_prices (self, best);
  for (guint g = 0; g < choice->n_groups; g++)
    {
      gint64 own;
      guint  way;
      g_array_set_size (cuts, 0);
      glp_set_row_bnds (self->lp, (int)g + 1, GLP_FX, 1, 1);
      choice->find (choice->user_data, g, best, TRUE, cuts, &own, &way);
      add_way (self, g, cuts, own, way);
    }
}

/* Likely ways until none is better, then all. */
static void
generate (Program *self, RcNestPrices *best)
{
  guint idle = 0;
  for (guint round = 0;
       round < MIN (MOST_ROUNDS, self->clock->steps_left) && idle < MOST_IDLE && !rc_nest_clock_is_over (self->clock);
       round++)
    {
      double value;
      gint64 before = self->bound;
      if (!solve_program (self, &value)
          || value * RC_NEST_PRICE_PARTS * RC_TICKS_PER_M - (double)self->bound < 2e-4 * (double)self->bound)
        return;
      gboolean better = find_pattern (self);
      if (better)
        add_pattern (self);
      set_prices (self, TRUE);
      better |= add_ways (self, TRUE, best);
      if (better)
        continue;
      better = add_ways (self, FALSE, best);
      if (!better && !rc_nest_clock_is_over (self->clock))
        {
          find_pattern (self);
          set_prices (self, FALSE);
          better = add_ways (self, FALSE, best);
        }
      idle = self->bound > before ? 0 : idle + 1;
      if (!better)
        return;
    }
  if (self->bound == 0) /* no time to check any: the last ones */
    keep_prices (self, best);
}

static void
list_shares (const Program *self, GArray *shares)
{
  for (guint i = 0; i < self->ways->len; i++)
    {
      const Column *column = &g_array_index (self->ways, Column, i);
      RcNestShare   share = { column->group, column->way, glp_get_col_prim (self->lp, column->column) };
      if (share.share > 1e-6)
        g_array_append_val (shares, share);
    }
}

void
rc_nest_choice_solve (const RcNestChoice *choice, const RcNestClock *clock, RcNestPrices *prices, GArray *shares)
{
  Program  self = { .choice = choice, .clock = clock };
  gboolean own = glp_init_env () == 0; /* this thread's; another user's stays as it is */
  int      loud = glp_term_out (GLP_OFF);
  self.unit = choice->roll_width / N_UNITS + 1;
  self.n_units = (guint)(choice->roll_width / self.unit);
  self.prices = (RcNestPrices){ self.unit, self.n_units, g_new0 (gint64, self.n_units + 1), NULL };
  self.lp = glp_create_prob ();
  self.ways = g_array_new (FALSE, FALSE, sizeof (Column));
  self.widths = g_array_new (FALSE, FALSE, sizeof (Width));
  self.group_dual = g_new0 (double, choice->n_groups + 1);
  self.value = g_new0 (gint64, self.n_units + 1);
  self.last = g_new0 (guint, self.n_units + 1);
  start_program (&self, prices);
  generate (&self, prices);
  list_shares (&self, shares);
  glp_delete_prob (self.lp);
  glp_term_out (loud);
  if (own)
    glp_free_env ();
  rc_nest_prices_clear (&self.prices);
  g_array_unref (self.widths);
  g_array_unref (self.ways);
  g_free (self.group_dual);
  g_free (self.pattern);
  g_free (self.value);
  g_free (self.last);
}
