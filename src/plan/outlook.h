/* How well all that is laid in one carpet can be planned at most, and what that suggests for each area.
 */
#pragma once

#include "area-plan.h"
#include "plan.h"

/* Raises *lower_bound, of all plans of what is laid in the carpet, where that can be found out until the clock is over.
 * Areas get the option that the bound suggests for each beside the others, with the merit of that
 * (RC_MERIT_WITH_THE_JOB). `planners` are of the plan's areas, `stairs` (of RcPiece) in the carpet. FALSE and an error
 * where a floor cannot be dealt with. */
gboolean rc_outlook_make (RcPlan *plan, const RcGoods *carpet, const GPtrArray *planners, const GPtrArray *stairs,
                          gint64 carpet_per_m, const RcNestClock *clock, RcMoney *lower_bound, GError **error);
