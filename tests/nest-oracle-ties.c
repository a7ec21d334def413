#include "nest-oracle.h"

#include "nest-oracle-model.h"

enum
{
  MOST_TIED = 5,
  SHIFT = 50 /* whole repeats that a phase may lie before the roll's start */
};

/* All but the pieces is in columns of the integer program. */
typedef struct
{
  Model                model;
  const RcNestProblem *problem;
  const RcNestCut     *cuts[MOST_TIED];
  const RcNestRoll    *rolls[MOST_ROLLS]; /* NULL: bought to measure */
  int                  source[MOST_ROLLS];
  double               big;
  int                  u[MOST_TIED][MOST_TIED], z[MOST_TIED][MOST_TIED], on[MOST_TIED][MOST_ROLLS];
  int                  x[MOST_TIED], y[MOST_TIED];
  int                  left[MOST_TIED], right[MOST_TIED]; /* of the columns */
  int                  start[MOST_TIED], end[MOST_TIED];  /* of the levels */
  GHashTable          *origins;                           /* of matches */
} Tied;

static double
to_grid (const Tied *self, RcLength length)
{
  return (double)length / self->model.grid;
}

static void
read_problem (Tied *self)
{
  RcLength all = self->problem->roll_width, longest = 0;

  self->model.grid = 160;
  for (guint c = 0; c < self->problem->cuts->len; c++)
    {
      const RcNestCut *cut = self->problem->cuts->pdata[c];

      for (guint k = 0; k < cut->quantity; k++)
        {
          g_assert_cmpint (self->model.n, <, MOST_TIED);
          self->cuts[self->model.n++] = cut;
          all += cut->length + 2 * cut->repeat;
        }
      if (cut->is_along_pinned)
        all += cut->along + cut->length;
    }
  for (guint r = 0; r < self->problem->rolls->len; r++)
    {
      const RcNestRoll *roll = self->problem->rolls->pdata[r];

      longest = MAX (longest, roll->length + roll->trim);
      for (guint k = 0; k < MAX (roll->count, 1); k++)
        {
          g_assert_cmpint (self->model.n_rolls, <, MOST_ROLLS);
          self->source[self->model.n_rolls] = (int)r;
          self->rolls[self->model.n_rolls++] = roll;
        }
    }
  if (self->model.n_rolls == 0)
    self->model.n_rolls = 1;
  self->big = to_grid (self, all + longest);
}

/* Piece i in the column led by j, column j in the level led by k; who leads has the least index. */
static void
add_structure (Tied *self)
{
  Model *model = &self->model;

  for (int j = 0; j < model->n; j++)
    for (int i = j; i < model->n; i++)
      {
        self->u[j][i] = add_binary (model);
        self->z[j][i] = add_binary (model);
      }
  for (int i = 0; i < model->n; i++)
    {
      Row one = { 0 }, level = { 0 }, roll = { 0 };

      for (int j = 0; j <= i; j++)
        {
          add_term (&one, 1, self->u[j][i]);
          add_term (&level, 1, self->z[j][i]);
        }
      add_row (model, &one, GLP_FX, 1);
      add_term (&level, -1, self->u[i][i]);
      add_row (model, &level, GLP_FX, 0);
      for (int r = 0; r < model->n_rolls; r++)
        add_term (&roll, 1, self->on[i][r] = add_binary (model));
      add_term (&roll, -1, self->z[i][i]);
      add_row (model, &roll, GLP_FX, 0);
    }
  for (int j = 0; j < model->n; j++)
    for (int i = j + 1; i < model->n; i++)
      {
        Row lead = { 0 }, lead_level = { 0 };

        add_term (&lead, 1, self->u[j][i]);
        add_term (&lead, -1, self->u[j][j]);
        add_row (model, &lead, GLP_UP, 0);
        add_term (&lead_level, 1, self->z[j][i]);
        add_term (&lead_level, -1, self->z[j][j]);
        add_row (model, &lead_level, GLP_UP, 0);
      }
}

static int
get_origin (Tied *self, const char *axis, const char *match, RcLength repeat)
{
  g_autofree char *key = g_strconcat (axis, match, NULL);
  gpointer         known = g_hash_table_lookup (self->origins, key);

  if (known == NULL)
    {
      known = GINT_TO_POINTER (add_length (&self->model, to_grid (self, repeat), 0));
      g_hash_table_insert (self->origins, g_steal_pointer (&key), known);
    }
  return GPOINTER_TO_INT (known);
}

static void
add_pattern (Tied *self, int place, const char *axis, const char *match, RcLength repeat, RcLength phase)
{
  Row grid = { 0 };
  int times;

  if (repeat == 0)
    return;
  times = add_length (&self->model, self->big + SHIFT, 0);
  glp_set_col_kind (self->model.lp, times, GLP_IV);
  add_term (&grid, 1, place);
  add_term (&grid, -to_grid (self, repeat), times);
  if (match != NULL)
    add_term (&grid, -1, get_origin (self, axis, match, repeat));
  add_row (&self->model, &grid, GLP_FX, to_grid (self, phase - SHIFT * repeat));
}

static void
add_places (Tied *self)
{
  for (int i = 0; i < self->model.n; i++)
    {
      const RcNestCut *cut = self->cuts[i];

      self->x[i] = add_length (&self->model, self->big, 0);
      self->y[i] = add_length (&self->model, self->big, 0);
      self->left[i] = add_length (&self->model, self->big, 0);
      self->right[i] = add_length (&self->model, self->big, 0);
      self->start[i] = add_length (&self->model, self->big, 0);
      self->end[i] = add_length (&self->model, self->big, 0);
      if (cut->is_across_pinned)
        glp_set_col_bnds (self->model.lp, self->x[i], GLP_FX, to_grid (self, cut->across), 0);
      if (cut->is_along_pinned)
        glp_set_col_bnds (self->model.lp, self->y[i], GLP_FX, to_grid (self, cut->along), 0);
      add_pattern (self, self->y[i], "y ", cut->match, cut->repeat, cut->phase);
      add_pattern (self, self->x[i], "x ", cut->across_match, cut->across_repeat, cut->across_phase);
    }
}

/* One of two orders: a before b, or b before a, when all `same` are 1. */
static void
add_either (Tied *self, int a_end, double a_size, int a_start, int b_end, double b_size, int b_start, const int *same,
            int n_same)
{
  int before[4], after[4], first = add_binary (&self->model), second = add_binary (&self->model);
  Row one = { 0 };

  for (int k = 0; k < n_same; k++)
    before[k] = after[k] = same[k];
  before[n_same] = first;
  after[n_same] = second;
  add_term (&one, 1, first);
  add_term (&one, 1, second);
  add_row (&self->model, &one, GLP_FX, 1);
  add_order (&self->model, a_end, a_size, b_start, before, n_same + 1, self->big);
  add_order (&self->model, b_end, b_size, a_start, after, n_same + 1, self->big);
}

static void
add_orders (Tied *self)
{
  const Model *model = &self->model;

  for (int a = 0; a < model->n; a++)
    for (int b = a + 1; b < model->n; b++)
      {
        for (int j = 0; j <= a; j++)
          {
            int column[] = { self->u[j][a], self->u[j][b] }, level[] = { self->z[j][a], self->z[j][b] };

            add_either (self, self->y[a], to_grid (self, self->cuts[a]->length), self->y[a], self->y[b],
                        to_grid (self, self->cuts[b]->length), self->y[b], column, 2);
            add_either (self, self->right[a], 0, self->left[a], self->right[b], 0, self->left[b], level, 2);
          }
        for (int r = 0; r < model->n_rolls; r++)
          {
            int roll[] = { self->on[a][r], self->on[b][r] };

            add_either (self, self->end[a], 0, self->start[a], self->end[b], 0, self->start[b], roll, 2);
          }
      }
}

static void
add_nesting (Tied *self)
{
  Model *model = &self->model;

  for (int j = 0; j < model->n; j++)
    for (int i = j; i < model->n; i++)
      {
        add_order (model, self->left[j], 0, self->x[i], &self->u[j][i], 1, self->big);
        add_order (model, self->x[i], to_grid (self, self->cuts[i]->width), self->right[j], &self->u[j][i], 1,
                   self->big);
        for (int k = 0; k <= j; k++)
          {
            int both[] = { self->u[j][i], self->z[k][j] };

            add_order (model, self->start[k], 0, self->y[i], both, 2, self->big);
            add_order (model, self->y[i], to_grid (self, self->cuts[i]->length), self->end[k], both, 2, self->big);
          }
      }
}

/* Level k, when it is on roll r, lies between the trimmed ends and beside no flaw. */
static void
add_roll_limits (Tied *self, int k, int r)
{
  const RcNestRoll *roll = self->rolls[r];
  Model            *model = &self->model;

  if (roll == NULL)
    return;
  add_order (model, 0, to_grid (self, roll->trim), self->start[k], &self->on[k][r], 1, self->big);
  if (roll->length > 0)
    add_order (model, self->end[k], -to_grid (self, roll->length - roll->trim_end), 0, &self->on[k][r], 1, self->big);
  for (guint f = 0; roll->flaws != NULL && f < roll->flaws->len; f++)
    {
      const RcNestFlaw *flaw = &g_array_index (roll->flaws, RcNestFlaw, f);
      int before[] = { self->on[k][r], add_binary (model) }, after[] = { self->on[k][r], add_binary (model) };
      Row one = { 0 };

      add_term (&one, 1, before[1]);
      add_term (&one, 1, after[1]);
      add_row (model, &one, GLP_FX, 1);
      add_order (model, self->end[k], -to_grid (self, flaw->from), 0, before, 2, self->big);
      add_order (model, 0, to_grid (self, flaw->to), self->start[k], after, 2, self->big);
    }
}

static void
add_rolls (Tied *self)
{
  Model *model = &self->model;

  for (int r = 0; r < model->n_rolls; r++)
    {
      const RcNestRoll *roll = self->rolls[r];
      int               used = add_length (model, self->big, 1);
      RcLength          width = self->problem->roll_width;

      if (roll != NULL && roll->width > 0)
        width = MIN (width, roll->width);
      for (int k = 0; k < model->n; k++)
        {
          add_order (model, self->end[k], 0, used, &self->on[k][r], 1, self->big);
          add_roll_limits (self, k, r);
        }
      for (int k = 0; k < model->n; k++)
        for (int j = k; j < model->n; j++)
          for (int i = j; i < model->n; i++)
            {
              int here[] = { self->u[j][i], self->z[k][j], self->on[k][r] };
              Row not_here = { 0 };

              add_order (model, self->x[i], to_grid (self, self->cuts[i]->width - width), 0, here, 3, self->big);
              if (self->cuts[i]->pinned_roll == 0 || (int)self->cuts[i]->pinned_roll == self->source[r] + 1)
                continue;
              for (int b = 0; b < 3; b++)
                add_term (&not_here, 1, here[b]);
              add_row (model, &not_here, GLP_UP, 2);
            }
    }
}

gboolean
rc_nest_oracle_solve_tied (const RcNestProblem *problem, RcLength *least)
{
  Tied     self = { .problem = problem };
  gboolean proved;

  self.origins = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  self.model.lp = glp_create_prob ();
  glp_term_out (GLP_OFF);
  glp_set_obj_dir (self.model.lp, GLP_MIN);
  read_problem (&self);
  add_structure (&self);
  add_places (&self);
  add_orders (&self);
  add_nesting (&self);
  add_rolls (&self);
  proved = minimise (&self.model, least);
  glp_delete_prob (self.model.lp);
  g_hash_table_unref (self.origins);
  return proved;
}
