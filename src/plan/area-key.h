/* What the plan of an area depends on, as text: two areas with the same key have the same plan, moved from the one's
 * origin to the other's.
 */
#pragma once

#include "plan.h"

/* All of it but what the area and its rooms are called: areas with the same shape have the same plan but for names.
 * (transfer full) */
char *rc_area_key_new_shape (const RcJob *job, const RcHouse *house, const RcFloorArea *area,
                             const RcPlanWeights *weights);

/* The shape and the names. (transfer full) */
char *rc_area_key_new (const char *shape, const RcHouse *house, const RcFloorArea *area);

/* A corner of the area's first room, in the house. */
RcPoint rc_area_key_find_origin (const RcHouse *house, const RcFloorArea *area);

/* TRUE if the opening is in a wall of one of the area's rooms. */
gboolean rc_area_key_has_opening (const RcFloorArea *area, const RcPlacedOpening *placed);
