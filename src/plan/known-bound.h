/* What the plan before has found and proved of all that is laid in a carpet, where it is still the same. */
#pragma once

#include "plan.h"

/* The lower bound that `previous` (nullable) has for the carpet of the cutting of `plan`: where the same areas and
 * stairs are laid in it out of the same rolls at the same price, whatever has been chosen of them. 0: none. */
RcMoney rc_known_bound_find (const RcPlan *plan, const RcCutting *cutting, const RcPlan *previous);

/* TRUE where the areas laid in the carpet, what the estimator has taken of them, and the rolls (of RcNestRoll) are
 * those of `previous` (nullable). */
gboolean rc_known_choice_stands (const RcPlan *plan, const RcGoods *carpet, const GPtrArray *rolls,
                                 const RcPlan *previous);
