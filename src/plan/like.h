/* Areas that are alike but for where they lie and what they are called: what is found for one is found for all.
 */
#pragma once

#include "plan.h"

/* TRUE if what is told about the area can be told about `to`, which has its shape (rc_area_key_new_shape): everything
 * has one other name. */
gboolean rc_like_is_possible (const RcHouse *house, const RcFloorArea *area, const RcFloorArea *to);

/* The area's option as one of the like area `to`. (transfer full) */
RcOption *rc_like_copy_option (const RcOption *option, const RcHouse *house, const RcFloorArea *area,
                               const RcFloorArea *to);

/* The cuts beside which an option for `to` is looked for, so that it can be looked for as one of the like area: those
 * of `area` are held by the pattern of `to` and the other way round. (transfer full) GPtrArray of RcNestCut, with
 * borrowed strings. */
GPtrArray *rc_like_exchange_cuts (const GPtrArray *cuts, const RcFloorArea *area, const RcFloorArea *to);
