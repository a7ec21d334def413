/* All that is cut from one carpet, chosen together: which option of each area, and out of which dye lot each area and
 * stair is cut, so that carpet, seams and broken rules of all of them cost least; options that fit beside the others
 * better than those known are searched for.
 */
#pragma once

#include "area-plan.h"
#include "progress.h"

/* Sets `chosen` of the plan's areas in the carpet where the estimator has taken no option. `planners`: of
 * RcAreaPlanner, by the plan's areas. `stairs`: of RcPiece, those in the carpet. Searches until `deadline_us`
 * (rc_progress_get_us); without `deep` only what a first answer has time for. FALSE and an error where a floor cannot
 * be dealt with. */
gboolean rc_joint_choose (RcPlan *plan, const RcGoods *carpet, const GPtrArray *planners, const GPtrArray *stairs,
                          gint64 carpet_per_m, gboolean deep, gint64 deadline_us, GCancellable *cancellable,
                          RcProgress *progress, GError **error);
