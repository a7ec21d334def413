/* One area of a plan, laid in one of its ways, as a plan by itself: for drawings that leave the rest of the house out.
 */
#pragma once

#include "plan.h"

/* `option` is an index in area_plan->options; G_MAXUINT: as chosen, with the pieces numbered as in the whole plan. The
 * view shares all it shows with the plan, which must outlive it. Only house, areas, pieces and seams differ. */
RcPlan *rc_area_view_new (const RcPlan *plan, const RcAreaPlan *area_plan, guint option);
void    rc_area_view_free (gpointer view);

/* The storeys on which the view has rooms, lowest first: GArray of int. */
GArray *rc_house_dup_floors (const RcHouse *house);
