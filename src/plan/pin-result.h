/* What became of the pins: which were kept, which contradict each other, what each costs. */
#pragma once

#include "plan.h"

/* Fills the `pins` of the plan's areas once options are chosen and cut. Costs are found only where the plan was given
 * time. */
void rc_pin_results_fill (RcPlan *plan, RcPlanWeightsFunc weights, gpointer user_data, const RcPlanParams *params);
