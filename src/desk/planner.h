/* Plans states of a job in threads, so that no edit waits for a plan.
 *
 * Of the states handed over the latest counts. Its first answer comes as soon as may be; then, when no other state has
 * come for a moment, a better one is looked for. A first answer under way for an earlier state may end when that takes
 * but a moment: while a wall is dragged the plan follows. All functions are for the main thread.
 */
#pragma once

#include <gio/gio.h>

#include "outcome.h"

#define RC_TYPE_PLANNER (rc_planner_get_type ())
G_DECLARE_FINAL_TYPE (RcPlanner, rc_planner, RC, PLANNER, GObject)

/* Told in the main thread. `outcome` NULL: the state cannot be planned, `fault` says why (borrowed). Both NULL: nothing
 * new, but what the planner is busy with has changed. */
typedef void (*RcPlannerTold) (RcOutcome *outcome, const GError *fault, gpointer data);

RcPlanner *rc_planner_new (RcPlannerTold told, gpointer data);

/* Plans this state (copied; what the job has already, nullable, is shared). Areas that are as they were in the last
 * plan keep what was found for them. */
void rc_planner_plan (RcPlanner *self, const RcJob *job, const char *measure, RcHeld *held, const RcPriceBook *book);

/* How long better plans are looked for; 0: not at all, and a search under way ends. */
void   rc_planner_set_improve_seconds (RcPlanner *self, double seconds);
double rc_planner_get_improve_seconds (RcPlanner *self);

/* Nothing is told any more; threads end by themselves. */
void rc_planner_stop (RcPlanner *self);

gboolean rc_planner_is_planning (RcPlanner *self);  /* the latest state has had no answer yet */
gboolean rc_planner_is_settled (RcPlanner *self);   /* it has, and no better plan will be looked for any more */
gboolean rc_planner_is_late (RcPlanner *self);      /* and that has taken long enough to be shown */
gboolean rc_planner_is_improving (RcPlanner *self); /* a better plan is being looked for */

/* While it is improving: the share of the time that has passed, 0 to 1, and the name of the area or the carpet that it
 * looks at (borrowed; NULL: nothing told yet). */
double      rc_planner_get_share (RcPlanner *self);
const char *rc_planner_get_what (RcPlanner *self);
