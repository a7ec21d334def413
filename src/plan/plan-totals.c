#include "plan-totals.h"

static void
add_rolls (const RcCutting *cutting, RcPlanTotals *totals)
{
  for (guint u = 0; u < cutting->answer->rolls->len; u++)
    {
      const RcNestUse *use = g_ptr_array_index (cutting->answer->rolls, u);

      if (rc_cutting_get_roll_id (cutting, use) != NULL)
        totals->from_stock += use->used;
      else
        totals->to_buy += use->length;
    }
}

void
rc_plan_compute_totals (const RcPlan *plan, RcPlanTotals *totals)
{
  *totals = (RcPlanTotals){ 0 };
  for (guint c = 0; c < plan->cuttings->len; c++)
    add_rolls (g_ptr_array_index (plan->cuttings, c), totals);
  for (guint s = 0; s < plan->seams->len; s++)
    {
      const RcSeam *seam = g_ptr_array_index (plan->seams, s);

      *(seam->kind == RC_SEAM_SIDE ? &totals->side_seam : &totals->cross_seam) += seam->length;
      *(seam->kind == RC_SEAM_SIDE ? &totals->n_side_seams : &totals->n_cross_seams) += 1;
    }
}
