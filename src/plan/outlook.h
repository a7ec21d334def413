/* How well all that is laid in one carpet can be planned at most, and what that suggests for each area.
 */
#pragma once

#include "area-plan.h"
#include "plan.h"

/* Raises *lower_bound, of all plans of what is laid in the carpet, where that can be found out until the clock is over.
 * `suggested` gets what the bound suggests beside each other for the areas in the carpet: an RcOption, or NULL, at the
 * index of each of the plan's areas. `planners` are of the plan's areas, `stairs` (of RcPiece) in the carpet. FALSE and
 * an error where a floor cannot be dealt with. */
gboolean rc_outlook_make (const RcPlan *plan, const RcGoods *carpet, const GPtrArray *planners, const GPtrArray *stairs,
                          gint64 carpet_per_m, const RcNestClock *clock, RcMoney *lower_bound, GPtrArray *suggested,
                          GError **error);

/* Takes the suggestion, all of it, where it is cheaper than what is chosen, with the cuts of both placed on the rolls
 * in the time of `params`. FALSE where it is not, or nothing is suggested. */
gboolean rc_outlook_settle (RcPlan *plan, const RcGoods *carpet, const GPtrArray *stairs, gint64 carpet_per_m,
                            GPtrArray *suggested, const RcPlanParams *params);

/* What all that is laid in the carpet costs with its areas as chosen, cut in no time; G_MAXINT64 where the cuts find no
 * place. */
RcMoney rc_outlook_weigh_chosen (const RcPlan *plan, const RcGoods *carpet, const GPtrArray *stairs,
                                 gint64 carpet_per_m, const RcPlanParams *params);
