#include "nest-oracle-model.h"

#include <math.h>

void
add_term (Row *row, double value, int column)
{
  row->n++;
  row->column[row->n] = column;
  row->value[row->n] = value;
}

void
add_row (Model *model, const Row *row, int kind, double bound)
{
  int r = glp_add_rows (model->lp, 1);

  glp_set_row_bnds (model->lp, r, kind, bound, bound);
  glp_set_mat_row (model->lp, r, row->n, row->column, row->value);
}

int
add_binary (Model *model)
{
  int c = glp_add_cols (model->lp, 1);

  glp_set_col_kind (model->lp, c, GLP_BV);
  return c;
}

int
add_length (Model *model, double most, double cost)
{
  int c = glp_add_cols (model->lp, 1);

  glp_set_col_bnds (model->lp, c, GLP_DB, 0, most);
  glp_set_obj_coef (model->lp, c, cost);
  return c;
}

/* a + size <= b unless the binaries say otherwise: row  a - b + big x (binaries) <= big x most - size. */
void
add_order (Model *model, int a, double size, int b, const int *binaries, int n_binaries, double big)
{
  Row row = { 0 };

  if (a > 0)
    add_term (&row, 1, a);
  if (b > 0)
    add_term (&row, -1, b);
  for (int k = 0; k < n_binaries; k++)
    add_term (&row, big, binaries[k]);
  add_row (model, &row, GLP_UP, big * n_binaries - size);
}

gboolean
minimise (Model *model, RcLength *least)
{
  glp_iocp parameters;
  int      status;

  glp_init_iocp (&parameters);
  parameters.msg_lev = GLP_MSG_OFF;
  parameters.presolve = GLP_ON;
  parameters.mir_cuts = GLP_ON;
  parameters.tm_lim = 5000;
  status = glp_intopt (model->lp, &parameters);
  if (status == GLP_ENOPFS || status == GLP_ENODFS)
    {
      *least = -1;
      return TRUE;
    }
  if (status != 0)
    return FALSE;
  status = glp_mip_status (model->lp);
  *least = status == GLP_OPT ? (RcLength)(llround (glp_mip_obj_val (model->lp)) * llround (model->grid)) : -1;
  return status == GLP_OPT || status == GLP_NOFEAS;
}
