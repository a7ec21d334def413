/* The options of one area. */
#pragma once

#include "plan.h"

/* (transfer full); NULL and an error naming the area. */
RcAreaPlan *rc_area_plan_new (const RcJob *job, const RcHouse *house, const RcFloorArea *area,
                              const RcPlanWeights *weights, const RcPlanParams *params, GError **error);
void        rc_area_plan_free (RcAreaPlan *area_plan);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcAreaPlan, rc_area_plan_free)
