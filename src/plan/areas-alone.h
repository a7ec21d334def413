/* All areas of a plan, each by itself. */
#pragma once

#include "area-plan.h"
#include "progress.h"

/* More areas than this are many: each has a first answer before any is searched. */
#define RC_MOST_ALONE 16

/* Adds to plan->areas what is found for each of the planners (of RcAreaPlanner, in the measure's order), looked for
 * until `end_us` (rc_progress_get_us), or as a first answer where the plan has no time. FALSE and an error naming an
 * area. */
gboolean rc_areas_plan_alone (RcPlan *plan, const GPtrArray *planners, RcProgress *progress, gint64 end_us,
                              GError **error);
