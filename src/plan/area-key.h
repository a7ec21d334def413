/* What the plan of an area depends on, as text: two areas with the same key have the same plan. */
#pragma once

#include "plan.h"

/* (transfer full) */
char *rc_area_key_new (const RcJob *job, const RcHouse *house, const RcFloorArea *area, const RcPlanWeights *weights);
