/* What the plan of an area depends on, as text: two areas with the same key have the same plan, moved from the one's
 * origin to the other's. */
#pragma once

#include "plan.h"

/* (transfer full) */
char *rc_area_key_new (const RcJob *job, const RcHouse *house, const RcFloorArea *area, const RcPlanWeights *weights);

/* A corner of the area's first room, in the house. */
RcPoint rc_area_key_find_origin (const RcHouse *house, const RcFloorArea *area);
