#include "outlook.h"

#include "cost-bound.h"
#include "cutting.h"
#include "option-list.h"
#include "option.h"

/* The areas in the carpet. (transfer full) GArray of guint. */
static GArray *
list_areas (const RcPlan *plan, const RcGoods *carpet)
{
  GArray *areas = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 0; i < plan->areas->len; i++)
    if (g_strcmp0 (((RcAreaPlan *)g_ptr_array_index (plan->areas, i))->area->carpet, carpet->id) == 0)
      g_array_append_val (areas, i);
  return areas;
}

/* (transfer full) GPtrArray of RcAreaChoice; NULL where some area has too many ways or the time is over. */
static GPtrArray *
list_choices (const GArray *areas, const GPtrArray *planners, const RcNestClock *clock, GError **error)
{
  g_autoptr (GPtrArray) choices = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_area_choice_free);
  for (guint i = 0; i < areas->len; i++)
    {
      RcAreaPlanner *planner = g_ptr_array_index (planners, g_array_index (areas, guint, i));
      g_autoptr (GPtrArray) sites = rc_area_planner_list_sites (planner);
      RcAreaChoice *choice = rc_area_choice_new (sites, clock, error);
      if (choice == NULL)
        return NULL;
      g_ptr_array_add (choices, choice);
    }
  return g_steal_pointer (&choices);
}

static gboolean
suggest (RcPlan *plan, const GArray *areas, const GPtrArray *planners, const GPtrArray *ways, GError **error)
{
  for (guint i = 0; i < areas->len; i++)
    {
      guint      area = g_array_index (areas, guint, i);
      GError    *fault = NULL;
      RcAreaWay *way = g_ptr_array_index (ways, i);
      RcOption  *option
          = way != NULL ? rc_area_planner_take_way (g_ptr_array_index (planners, area), way, &fault) : NULL;
      if (fault != NULL)
        {
          g_propagate_error (error, fault);
          return FALSE;
        }
      if (option == NULL)
        continue;
      rc_option_set_merits (option, RC_MERIT_WITH_THE_JOB);
      g_ptr_array_add (((RcAreaPlan *)g_ptr_array_index (plan->areas, area))->options, option);
    }
  return TRUE;
}

gboolean
rc_outlook_make (RcPlan *plan, const RcGoods *carpet, const GPtrArray *planners, const GPtrArray *stairs,
                 gint64 carpet_per_m, const RcNestClock *clock, RcMoney *lower_bound, GError **error)
{
  GError *fault = NULL;
  g_autoptr (GArray) areas = list_areas (plan, carpet);
  g_autoptr (GPtrArray) choices = list_choices (areas, planners, clock, &fault);
  if (fault != NULL)
    {
      g_propagate_error (error, fault);
      return FALSE;
    }
  if (choices == NULL)
    return TRUE;
  g_autoptr (GPtrArray) rolls = rc_cutting_new_rolls (plan->job, carpet, carpet_per_m, NULL);
  g_autoptr (GPtrArray) ways = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_area_way_free);
  RcMoney bound = rc_cost_bound_compute (carpet, rolls, choices, stairs, clock, ways);
  *lower_bound = MAX (*lower_bound, bound);
  return areas->len + stairs->len < 2 || suggest (plan, areas, planners, ways, error);
}
