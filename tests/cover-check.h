/* What holds of every plan: its pieces cover the floor and nothing twice, its bounds do not lie above what they bound,
 * its cuts come off the rolls. */
#pragma once

#include "plan.h"

/* Fails the test where it does not hold of the plan, each of its options among it. */
void check_plan (const RcPlan *plan);
