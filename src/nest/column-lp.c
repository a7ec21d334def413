#include "column-lp.h"

#include <glpk.h>
#include <math.h>

enum
{
  MOST_ROUNDS = 2000,
  MOST_MS = 5, /* before the clock is looked at again */
  MOST_ITERATIONS = 500,
  LEAST_REFINED_US = 10000,
  LEAST_REFINED_ROUNDS = 20
};

typedef __int128 Wide;

typedef struct
{
  const RcNestColumns *columns;
  double              *dual;  /* prices of the program */
  double              *best;  /* prices that gave the best bound */
  gint64              *price; /* whole */
  guint               *pattern;
  glp_prob            *lp;
  gboolean             is_clipped;
  gint64               start_us, refine_until_us; /* by the clock */
  guint                n_rounds, refine_until_round;
} Program;

static void
add_pattern (Program *self, RcLength cost)
{
  guint              rows = self->columns->n;
  g_autofree int    *index = g_new (int, rows + 1);
  g_autofree double *values = g_new (double, rows + 1);
  int                c = glp_add_cols (self->lp, 1), n = 0;

  for (guint i = 0; i < rows; i++)
    if (self->pattern[i] > 0)
      {
        index[++n] = (int)i + 1;
        values[n] = self->pattern[i];
      }
  glp_set_col_bnds (self->lp, c, GLP_LO, 0, 0);
  glp_set_obj_coef (self->lp, c, (double)cost);
  glp_set_mat_col (self->lp, c, n, index, values);
}

static void
start_program (Program *self)
{
  const RcNestColumns *columns = self->columns;

  self->lp = glp_create_prob ();
  glp_set_obj_dir (self->lp, GLP_MIN);
  glp_add_rows (self->lp, (int)columns->n);
  for (guint i = 0; i < columns->n; i++)
    {
      RcLength cost;

      glp_set_row_bnds (self->lp, (int)i + 1, GLP_LO, (double)columns->demand[i], 0);
      memset (self->pattern, 0, sizeof (guint) * columns->n);
      columns->start (columns->user_data, i, self->pattern, &cost);
      add_pattern (self, cost);
    }
}

static void
read_duals (Program *self)
{
  for (guint i = 0; i < self->columns->n; i++)
    self->dual[i] = MAX (glp_get_row_dual (self->lp, (int)i + 1), 0);
}

/* Prices between the best known (share 1) and the program's (share 0), as whole numbers. */
static void
set_prices (Program *self, double share)
{
  double most = 1e-12;

  for (guint i = 0; i < self->columns->n; i++)
    most = MAX (most, share * self->best[i] + (1 - share) * self->dual[i]);
  for (guint i = 0; i < self->columns->n; i++)
    self->price[i]
        = (gint64)((share * self->best[i] + (1 - share) * self->dual[i]) / most * (double)(1 << RC_NEST_PRICE_BITS));
}

/* The price of all that is demanded over the value of what a unit of cost yields at most, rounded up. */
static RcLength
form_bound (const Program *self, gint64 value, RcLength cost)
{
  Wide total = 0;

  for (guint i = 0; i < self->columns->n; i++)
    total += (Wide)self->price[i] * self->columns->demand[i];
  return value > 0 ? (RcLength)((total * cost + value - 1) / value) : 0;
}

/* Whether the pattern would lower the program's value. */
static gboolean
is_worth_adding (const Program *self, RcLength cost)
{
  double value = 0;

  for (guint i = 0; i < self->columns->n; i++)
    value += self->dual[i] * self->pattern[i];
  return value > (double)cost * (1 + 1e-7);
}

/* Adds a pattern to the program. *best is the best bound of the program itself, *known is raised to it. FALSE: no
 * pattern would lower the program's value. */
static gboolean
improve_program (Program *self, RcLength *known, RcLength *best)
{
  static const double SHARES[] = { 0.8, 0.4, 0 };

  for (guint s = *best > 0 ? 0 : 2; s < G_N_ELEMENTS (SHARES); s++)
    {
      gint64   value;
      RcLength cost, bound;

      set_prices (self, SHARES[s]);
      self->columns->find (self->columns->user_data, self->price, self->pattern, &value, &cost);
      bound = form_bound (self, value, cost);
      if (bound > *best)
        {
          *best = bound;
          for (guint i = 0; i < self->columns->n; i++)
            self->best[i] = (double)self->price[i] * (double)cost / (double)value;
        }
      *known = MAX (*known, bound);
      if (!is_worth_adding (self, cost))
        continue;
      add_pattern (self, cost);
      return TRUE;
    }
  return FALSE;
}

/* From now on a pattern meets a row at most once. */
static void
clip_patterns (Program *self)
{
  guint              rows = self->columns->n;
  g_autofree int    *index = g_new (int, rows + 1);
  g_autofree double *values = g_new (double, rows + 1);

  for (int c = 1; c <= glp_get_num_cols (self->lp); c++)
    {
      int n = glp_get_mat_col (self->lp, c, index, values);

      for (int k = 1; k <= n; k++)
        values[k] = 1;
      glp_set_mat_col (self->lp, c, n, index, values);
    }
  glp_std_basis (self->lp); /* the one at hand may have become singular */
}

/* Refined patterns take no more time than those before, or where steps are counted no more rounds. FALSE: the search
 * cannot go on. */
static gboolean
refine (Program *self, const RcNestClock *clock)
{
  gboolean is_first = !self->is_clipped;
  gint64   now_us = rc_nest_clock_get_us (clock);

  if (self->columns->refine == NULL)
    return FALSE;
  if (is_first)
    {
      clip_patterns (self);
      self->is_clipped = TRUE;
      self->refine_until_us = clock->end_us == G_MAXINT64 || rc_nest_clock_counts_steps (clock)
                                  ? G_MAXINT64
                                  : now_us + MAX (now_us - self->start_us, LEAST_REFINED_US);
      self->refine_until_round = rc_nest_clock_counts_steps (clock)
                                     ? self->n_rounds + MAX (self->n_rounds, LEAST_REFINED_ROUNDS)
                                     : G_MAXUINT;
    }
  if (now_us >= self->refine_until_us || self->n_rounds >= self->refine_until_round)
    return FALSE;
  return self->columns->refine (self->columns->user_data) || is_first;
}

static RcLength
generate (Program *self, RcLength known, const RcNestClock *clock)
{
  RcLength best = 0, grid = self->columns->grid;
  glp_smcp parameters;

  self->start_us = rc_nest_clock_get_us (clock);
  glp_init_smcp (&parameters);
  parameters.msg_lev = GLP_MSG_OFF;
  parameters.meth = GLP_PRIMAL;
  parameters.it_lim = MOST_ITERATIONS;
  for (self->n_rounds = 0; self->n_rounds < MOST_ROUNDS && !rc_nest_clock_is_over (clock); self->n_rounds++)
    {
      RcLength value;
      int      fault;

      parameters.tm_lim = rc_nest_clock_counts_steps (clock) ? G_MAXINT : rc_nest_clock_get_ms (clock, MOST_MS);
      fault = glp_simplex (self->lp, &parameters);
      if (fault == GLP_ETMLIM || fault == GLP_EITLIM)
        continue; /* from where it stopped */
      if (fault != 0 || glp_get_status (self->lp) != GLP_OPT)
        break;
      value = rc_length_round_up ((RcLength)ceil (glp_get_obj_val (self->lp) - 1e-6), grid);
      if (value <= rc_length_round_up (known, grid))
        {
          if (self->is_clipped || !refine (self, clock))
            break;
          continue;
        }
      read_duals (self);
      if (!improve_program (self, &known, &best) && !refine (self, clock))
        break;
    }
  return rc_length_round_up (known, grid);
}

RcLength
rc_nest_columns_bound (const RcNestColumns *columns, RcLength known, const RcNestClock *clock)
{
  Program  self = { .columns = columns };
  gboolean own = glp_init_env () == 0; /* this thread's; another user's stays as it is */
  int      loud = glp_term_out (GLP_OFF);

  self.dual = g_new0 (double, columns->n + 1);
  self.best = g_new0 (double, columns->n + 1);
  self.price = g_new (gint64, columns->n + 1);
  self.pattern = g_new0 (guint, columns->n + 1);
  start_program (&self);
  known = generate (&self, known, clock);
  glp_delete_prob (self.lp);
  glp_term_out (loud);
  if (own)
    glp_free_env ();
  g_free (self.dual);
  g_free (self.best);
  g_free (self.price);
  g_free (self.pattern);
  return known;
}
