/* Which group comes out of which lot: where they are few, all ways to share them out are looked at, with what each
 * group costs where nothing else comes out of its lot (area-together.h). */
#pragma once

#include "clock.h"
#include "cost-groups.h"

typedef struct _RcCostSharing RcCostSharing;

/* FALSE: there are too many groups or lots. */
gboolean rc_cost_sharing_is_possible (const RcCostGroups *groups);

/* NULL where there are too many. The groups, with their prices, outlive it. Takes up to a third of the time that the
 * clock has. (transfer full) */
RcCostSharing *rc_cost_sharing_new (const RcCostGroups *groups, const RcNestClock *clock);
void           rc_cost_sharing_free (RcCostSharing *sharing); /* NULL is fine */

/* What the group costs at least by itself, its carpet bought to measure; 0 where that is not known. */
RcMoney rc_cost_sharing_get_alone (const RcCostSharing *sharing, guint group);

/* What all groups cost at least, in the units of RcNestChoice; looked at closer until the clock is over. */
gint64 rc_cost_sharing_find_cheapest (RcCostSharing *sharing, const RcNestClock *clock);
