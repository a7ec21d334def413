/* The short list of an area's options: plans none of which another beats on cost, carpet, seam length and joins at
 * once, named by what is good about them.
 */
#pragma once

#include "plan.h"

/* TRUE if `a` is no worse than `b` in cost, carpet, seam length and joins, and better in one of them. */
gboolean rc_option_beats (const RcOption *a, const RcOption *b);

/* Leaves of the plans found (GPtrArray of RcOption, at least one) those worth choosing between, cheapest first, with
 * their merits and names: the best by cost, by seams, by joins and by carpet, and one with the pile along another axis
 * or between them if none beats it. Of equals the first stays. */
void rc_option_list_settle (GPtrArray *options);

/* Names the option by its merits, the first of them. */
void rc_option_set_merits (RcOption *option, guint merits);

/* TRUE if one of them (of RcOption) cuts the same pieces from the same floor at the same cost. */
gboolean rc_option_list_has_like (const GPtrArray *options, const RcOption *option);

/* Drops those with a cut longer than the carpet is sold, where there are others. */
void rc_option_list_drop_unbought (GPtrArray *options, const RcGoods *carpet);

/* Chooses the option that the estimator has taken, where it is there, or else the first. */
void rc_area_plan_choose (RcAreaPlan *area_plan);
