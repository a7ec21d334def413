/* The few figures that a plan comes to over all its carpets.
 */
#pragma once

#include "plan.h"

typedef struct
{
  RcLength to_buy;     /* roll length to be bought, over all carpets */
  RcLength from_stock; /* roll length taken from stock */
  RcLength side_seam, cross_seam;
  guint    n_side_seams, n_cross_seams;
} RcPlanTotals;

void rc_plan_compute_totals (const RcPlan *plan, RcPlanTotals *totals);
