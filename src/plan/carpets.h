/* The carpets of a plan: what is laid in each is chosen together, and its cuts placed on the rolls. */
#pragma once

#include "progress.h"

/* Chooses among the options of plan->areas, and finds more, until `end_us` (rc_progress_get_us), or as for a first
 * answer. `planners`: of RcAreaPlanner, by the plan's areas. `raised`, for each of the job's goods, is raised to what
 * all plans of it cost at least. FALSE and an error where a floor cannot be dealt with. */
gboolean rc_carpets_choose (RcPlan *plan, const GPtrArray *planners, RcProgress *progress, gint64 end_us,
                            RcMoney *raised, GError **error);

/* Adds a cutting for each carpet that the plan's pieces are of to its cuttings, and what that comes to to its sums;
 * better ones are looked for until `end_us`. FALSE and an error where cuts find no place. */
gboolean rc_carpets_cut (RcPlan *plan, RcProgress *progress, gint64 end_us, GError **error);
