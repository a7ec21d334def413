/* The options of one area, and further searches of it beside all else that is cut from its carpet. */
#pragma once

#include "area-choice.h"
#include "area-state.h"
#include "plan.h"

void rc_area_plan_free (RcAreaPlan *area_plan);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcAreaPlan, rc_area_plan_free)

/* An area being planned: what was worked out for it stays at hand between its searches. */
typedef struct _RcAreaPlanner RcAreaPlanner;

/* All arguments outlive the planner. NULL and an error naming the area where its floor cannot be dealt with. (transfer
 * full) */
RcAreaPlanner *rc_area_planner_new (const RcJob *job, const RcHouse *house, const RcFloorArea *area,
                                    const RcPlanWeights *weights, const RcPlanParams *params, GError **error);
void           rc_area_planner_free (RcAreaPlanner *planner);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcAreaPlanner, rc_area_planner_free)

/* From now on the other planner, which outlives this one and plans first, does all the work for both, as their areas
 * are alike. FALSE, and nothing is done, where they are not. */
gboolean rc_area_planner_follow (RcAreaPlanner *planner, RcAreaPlanner *model);

/* The shape of its area: rc_area_key_new_shape. */
const char *rc_area_planner_get_shape (const RcAreaPlanner *planner);

/* The planner that does the work: itself where it follows none. */
RcAreaPlanner *rc_area_planner_get_model (RcAreaPlanner *planner);

/* The options of an area that follows, from the model's plan. (transfer full) */
RcAreaPlan *rc_area_planner_copy_plan (RcAreaPlanner *planner, const RcAreaPlan *of_model);

/* The area's options by themselves, with `deep` searched for `seconds` of those that the plan is given, else as for a
 * first answer. (transfer full); NULL and an error naming the area. */
RcAreaPlan *rc_area_planner_plan (RcAreaPlanner *planner, gboolean deep, double seconds, GError **error);

/* The area along each of the pile directions allowed. Not for one that follows. (transfer container) GPtrArray of
 * RcSite, borrowed from the planner. */
GPtrArray *rc_area_planner_list_sites (RcAreaPlanner *planner);

/* The option that lays the area in that way, one of its model's where it follows. (transfer full); NULL without an
 * error where pins or a pattern do not allow it, NULL and an error naming the area where its floor cannot be dealt
 * with. */
RcOption *rc_area_planner_take_way (RcAreaPlanner *planner, const RcAreaWay *way, GError **error);

/* TRUE once it has planned, if the options are those of the plan before. */
gboolean rc_area_planner_has_kept (const RcAreaPlanner *planner);

/* TRUE if the option keeps as many pins as the other. */
gboolean rc_area_planner_keeps_pins (RcAreaPlanner *planner, const RcOption *option, const RcOption *other);

/* The work that its searches took so far, as time; with an effort only. */
gint64 rc_area_planner_get_work_us (const RcAreaPlanner *planner);

/* The option that is cheapest beside the other cuts, searched for so long (with an effort: so much), or with `deep`
 * FALSE just as for a first answer. (transfer full); NULL and an error naming the area. */
RcOption *rc_area_planner_search_beside (RcAreaPlanner *planner, const RcBeside *beside, gboolean deep,
                                         gint64 budget_us, GError **error);
