#include "nest-oracle.h"

#include <math.h>

#include "nest-oracle-model.h"

static void
read_pieces (Model *model, const RcNestProblem *problem)
{
  model->grid = 160;
  for (guint c = 0; c < problem->cuts->len; c++)
    {
      const RcNestCut *cut = problem->cuts->pdata[c];

      for (guint k = 0; k < cut->quantity; k++)
        {
          int at = model->n++;

          g_assert_cmpint (model->n, <=, MOST);
          for (; at > 0 && model->pieces[at - 1].w < (double)cut->width / model->grid; at--)
            model->pieces[at] = model->pieces[at - 1];
          model->pieces[at] = (Piece){ (double)cut->width / model->grid, (double)cut->length / model->grid,
                                       (double)cut->repeat / model->grid,
                                       (double)(cut->repeat > 0 ? cut->phase % cut->repeat : 0) / model->grid };
        }
    }
}

static void
read_rolls (Model *model, const RcNestProblem *problem)
{
  double all = 0;

  for (int i = 0; i < model->n; i++)
    all += model->pieces[i].h + model->pieces[i].repeat;
  for (guint r = 0; r < problem->rolls->len; r++)
    {
      const RcNestRoll *roll = problem->rolls->pdata[r];

      for (guint k = 0; k < MAX (roll->count, 1); k++)
        {
          g_assert_cmpint (model->n_rolls, <, MOST_ROLLS);
          model->roll[model->n_rolls++] = roll->length > 0 ? MIN ((double)roll->length / model->grid, all) : all;
        }
    }
  if (model->n_rolls == 0)
    model->roll[model->n_rolls++] = all;
}

/* Binaries u[j][i] (piece i in the column led by j <= i) and z[k][j] (column j in the level led by k <= j). */
static void
add_columns_and_levels (Model *model, int u[MOST][MOST], int z[MOST][MOST])
{
  for (int j = 0; j < model->n; j++)
    for (int i = j; i < model->n; i++)
      {
        u[j][i] = add_binary (model);
        z[j][i] = add_binary (model);
      }
  for (int i = 0; i < model->n; i++)
    {
      Row one = { 0 }, level = { 0 };

      for (int j = 0; j <= i; j++)
        {
          add_term (&one, 1, u[j][i]);
          add_term (&level, 1, z[j][i]);
        }
      add_row (model, &one, GLP_FX, 1);
      add_term (&level, -1, u[i][i]);
      add_row (model, &level, GLP_FX, 0);
    }
  for (int j = 0; j < model->n; j++)
    {
      Row wide = { 0 };

      for (int i = j + 1; i < model->n; i++)
        {
          Row lead = { 0 };

          add_term (&lead, 1, u[j][i]);
          add_term (&lead, -1, u[j][j]);
          add_row (model, &lead, GLP_UP, 0);
          add_term (&wide, model->pieces[i].w, z[j][i]);
        }
      add_term (&wide, -(model->width - model->pieces[j].w), z[j][j]);
      add_row (model, &wide, GLP_UP, 0);
    }
}

/* All levels together are as large as the pieces, and as long as those that cannot lie side by side: this follows from
 * the rest and only helps the search. */
static void
add_area (Model *model, int length[MOST][MOST_ROLLS])
{
  Row    all = { 0 };
  double area = 0, wide = 0;

  for (int i = 0; i < model->n; i++)
    {
      area += model->pieces[i].w * model->pieces[i].h;
      wide += 2 * model->pieces[i].w > model->width ? model->pieces[i].h : 0;
      for (int r = 0; r < model->n_rolls; r++)
        add_term (&all, 1, length[i][r]);
    }
  add_row (model, &all, GLP_LO, MAX (ceil (area / model->width - 1e-9), wide));
}

/* Plain: level k has length H[k][r] on roll r. */
static void
model_plain (Model *model)
{
  int u[MOST][MOST], z[MOST][MOST], on[MOST][MOST_ROLLS], length[MOST][MOST_ROLLS];

  add_columns_and_levels (model, u, z);
  for (int k = 0; k < model->n; k++)
    {
      Row somewhere = { 0 };

      for (int r = 0; r < model->n_rolls; r++)
        {
          Row only = { 0 };

          on[k][r] = add_binary (model);
          length[k][r] = add_length (model, model->roll[r], 1);
          add_term (&somewhere, 1, on[k][r]);
          add_term (&only, 1, length[k][r]);
          add_term (&only, -model->roll[r], on[k][r]);
          add_row (model, &only, GLP_UP, 0);
        }
      add_term (&somewhere, -1, z[k][k]);
      add_row (model, &somewhere, GLP_FX, 0);
    }
  for (int j = 0; j < model->n; j++)
    for (int k = 0; k <= j; k++)
      {
        Row    reach = { 0 };
        double all = 0;

        for (int i = j; i < model->n; i++)
          {
            add_term (&reach, model->pieces[i].h, u[j][i]);
            all += model->pieces[i].h;
          }
        for (int r = 0; r < model->n_rolls; r++)
          add_term (&reach, -1, length[k][r]);
        add_term (&reach, all, z[k][j]);
        add_row (model, &reach, GLP_UP, all);
      }
  for (int r = 0; r < model->n_rolls; r++)
    {
      Row fits = { 0 };

      for (int k = 0; k < model->n; k++)
        add_term (&fits, 1, length[k][r]);
      add_row (model, &fits, GLP_UP, model->roll[r]);
    }
  add_area (model, length);
}

/* Repeats: every piece has a place along[i] = phase + repeat x whole number; levels run from start to end. */
static void
model_repeats (Model *model)
{
  int    u[MOST][MOST], z[MOST][MOST], on[MOST][MOST_ROLLS], along[MOST], start[MOST], end[MOST], used[MOST_ROLLS];
  double big = 0;

  add_columns_and_levels (model, u, z);
  for (int r = 0; r < model->n_rolls; r++)
    {
      used[r] = add_length (model, model->roll[r], 1);
      big = MAX (big, model->roll[r]);
    }
  for (int i = 0; i < model->n; i++)
    {
      Row somewhere = { 0 };

      along[i] = add_length (model, big, 0);
      start[i] = add_length (model, big, 0);
      end[i] = add_length (model, big, 0);
      if (model->pieces[i].repeat > 0)
        {
          Row grid = { 0 };
          int times = add_length (model, big, 0);

          glp_set_col_kind (model->lp, times, GLP_IV);
          add_term (&grid, 1, along[i]);
          add_term (&grid, -model->pieces[i].repeat, times);
          add_row (model, &grid, GLP_FX, model->pieces[i].phase);
        }
      for (int r = 0; r < model->n_rolls; r++)
        {
          on[i][r] = add_binary (model);
          add_term (&somewhere, 1, on[i][r]);
          add_order (model, end[i], 0, used[r], &on[i][r], 1, big);
        }
      add_term (&somewhere, -1, z[i][i]);
      add_row (model, &somewhere, GLP_FX, 0);
    }
  for (int j = 0; j < model->n; j++)
    for (int i = j; i < model->n; i++)
      for (int k = 0; k <= j; k++)
        {
          int both[] = { u[j][i], z[k][j] };

          add_order (model, start[k], 0, along[i], both, 2, big);
          add_order (model, along[i], model->pieces[i].h, end[k], both, 2, big);
        }
  for (int i = 0; i < model->n; i++)
    for (int k = i + 1; k < model->n; k++)
      {
        int first = add_binary (model), level_first = add_binary (model);
        int second = add_binary (model), level_second = add_binary (model);
        Row one = { 0 }, level_one = { 0 };

        add_term (&one, 1, first);
        add_term (&one, 1, second);
        add_row (model, &one, GLP_FX, 1);
        add_term (&level_one, 1, level_first);
        add_term (&level_one, 1, level_second);
        add_row (model, &level_one, GLP_FX, 1);
        for (int j = 0; j <= i; j++)
          {
            int before[] = { u[j][i], u[j][k], first }, after[] = { u[j][i], u[j][k], second };

            add_order (model, along[i], model->pieces[i].h, along[k], before, 3, big);
            add_order (model, along[k], model->pieces[k].h, along[i], after, 3, big);
          }
        for (int r = 0; r < model->n_rolls; r++)
          {
            int before[] = { on[i][r], on[k][r], level_first }, after[] = { on[i][r], on[k][r], level_second };

            add_order (model, end[i], 0, start[k], before, 3, big);
            add_order (model, end[k], 0, start[i], after, 3, big);
          }
      }
}

gboolean
rc_nest_oracle_solve (const RcNestProblem *problem, RcLength *least)
{
  Model    model = { .lp = glp_create_prob () };
  gboolean repeats = FALSE, proved;

  glp_term_out (GLP_OFF);
  glp_set_obj_dir (model.lp, GLP_MIN);
  read_pieces (&model, problem);
  read_rolls (&model, problem);
  model.width = (double)problem->roll_width / model.grid;
  for (int i = 0; i < model.n; i++)
    repeats |= model.pieces[i].repeat > 0;
  if (repeats)
    model_repeats (&model);
  else
    model_plain (&model);
  proved = minimise (&model, least);
  glp_delete_prob (model.lp);
  return proved;
}
