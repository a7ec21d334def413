#include "outlook.h"

#include "cost-bound.h"
#include "cutting.h"
#include "option-list.h"
#include "option.h"
#include "steps.h"

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

/* Of each area, one for all that are alike. (transfer container) GPtrArray of RcAreaChoice, owned by `all`; NULL where
 * some area has too many ways or the time is over. */
static GPtrArray *
list_choices (const GArray *areas, const GPtrArray *planners, const RcNestClock *clock, GHashTable *all, GError **error)
{
  g_autoptr (GPtrArray) choices = g_ptr_array_new ();
  for (guint i = 0; i < areas->len; i++)
    {
      RcAreaPlanner *planner
          = rc_area_planner_get_model (g_ptr_array_index (planners, g_array_index (areas, guint, i)));
      RcAreaChoice *choice = g_hash_table_lookup (all, planner);
      if (choice == NULL)
        {
          g_autoptr (GPtrArray) sites = rc_area_planner_list_sites (planner);
          choice = rc_area_choice_new (sites, clock, error);
          if (choice == NULL)
            return NULL;
          g_hash_table_insert (all, planner, choice);
        }
      g_ptr_array_add (choices, choice);
    }
  return g_steal_pointer (&choices);
}

/* The options that lay the areas in these ways. An area for which the estimator has taken an option keeps it. */
static gboolean
suggest (const RcPlan *plan, const GArray *areas, const GPtrArray *planners, const GPtrArray *ways,
         GPtrArray *suggested, GError **error)
{
  for (guint i = 0; i < areas->len; i++)
    {
      guint             area = g_array_index (areas, guint, i);
      RcAreaPlanner    *planner = g_ptr_array_index (planners, area);
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, area);
      const RcAreaWay  *way = g_ptr_array_index (ways, i);
      GError           *fault = NULL;
      if (area_plan->area->option != NULL || area_plan->stays || way == NULL)
        continue;
      RcOption *option = rc_area_planner_take_way (planner, way, &fault);
      if (fault != NULL)
        {
          g_propagate_error (error, fault);
          return FALSE;
        }
      if (option == NULL)
        continue;
      rc_option_set_merits (option, RC_MERIT_WITH_THE_JOB);
      if (rc_area_planner_keeps_pins (planner, option, rc_area_plan_get_chosen (area_plan)))
        g_ptr_array_index (suggested, area) = option;
      else
        rc_option_free (option);
    }
  return TRUE;
}

gboolean
rc_outlook_make (const RcPlan *plan, const RcGoods *carpet, const GPtrArray *planners, const GPtrArray *stairs,
                 gint64 carpet_per_m, const RcNestClock *clock, RcMoney *lower_bound, GPtrArray *suggested,
                 GError **error)
{
  GError *fault = NULL;
  g_autoptr (GArray) areas = list_areas (plan, carpet);
  g_autoptr (GHashTable) all = g_hash_table_new_full (NULL, NULL, NULL, (GDestroyNotify)rc_area_choice_free);
  g_autoptr (GPtrArray) choices = list_choices (areas, planners, clock, all, &fault);
  g_ptr_array_set_size (suggested, (int)plan->areas->len);
  if (fault != NULL)
    {
      g_propagate_error (error, fault);
      return FALSE;
    }
  if (choices == NULL)
    return TRUE;
  g_autoptr (GPtrArray) rolls = rc_cutting_new_rolls (plan->job, carpet, carpet_per_m, NULL);
  g_autoptr (GPtrArray) ways = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_area_way_free);
  g_autoptr (GArray) alone = g_array_new (FALSE, FALSE, sizeof (RcMoney));
  RcMoney bound = rc_cost_bound_compute (carpet, rolls, choices, stairs, clock, ways, alone);
  for (guint i = 0; i < areas->len; i++)
    {
      RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, g_array_index (areas, guint, i));
      area_plan->alone_lower_bound = MAX (area_plan->alone_lower_bound, g_array_index (alone, RcMoney, i));
    }
  *lower_bound = MAX (*lower_bound, bound);
  return areas->len < 2 || suggest (plan, areas, planners, ways, suggested, error);
}

/* What all that is laid in the carpet costs with its areas as chosen, and as suggested where something is. */
typedef struct
{
  const RcPlan       *plan;
  const RcGoods      *carpet;
  const GPtrArray    *stairs;
  gint64              carpet_per_m;
  const GPtrArray    *suggested;
  const RcPlanParams *params;
  RcMoney             costs[2]; /* chosen, suggested; G_MAXINT64 where the cuts find no place */
} Settling;

static void
weigh (guint index, gpointer user_data, GError **error)
{
  Settling *self = user_data;
  g_autoptr (GArray) areas = list_areas (self->plan, self->carpet);
  g_autoptr (GPtrArray) pieces = g_ptr_array_new ();
  RcMoney cost = 0;
  for (guint i = 0; i < areas->len; i++)
    {
      guint           area = g_array_index (areas, guint, i);
      const RcOption *option = index == 1 ? g_ptr_array_index (self->suggested, area) : NULL;
      if (option == NULL)
        option = rc_area_plan_get_chosen (g_ptr_array_index (self->plan->areas, area));
      cost += option->seam_cost + option->rule_cost;
      g_ptr_array_extend (pieces, option->pieces, NULL, NULL);
    }
  g_ptr_array_extend (pieces, (GPtrArray *)self->stairs, NULL, NULL);
  RcCutting *cutting = rc_cutting_new (self->plan->job, self->carpet, pieces, self->carpet_per_m, self->params, NULL);
  self->costs[index] = cutting != NULL ? cost + rc_cutting_get_cost (cutting) : G_MAXINT64;
  rc_cutting_free (cutting);
}

RcMoney
rc_outlook_weigh_chosen (const RcPlan *plan, const RcGoods *carpet, const GPtrArray *stairs, gint64 carpet_per_m,
                         const RcPlanParams *params)
{
  RcPlanParams quick = *params;
  g_autoptr (GPtrArray) nothing = g_ptr_array_new ();
  Settling self = { plan, carpet, stairs, carpet_per_m, nothing, &quick, { 0 } };
  quick.seconds = 0;
  weigh (0, &self, NULL);
  return self.costs[0];
}

static gboolean
take_suggested (const RcPlan *plan, GPtrArray *suggested)
{
  for (guint i = 0; i < suggested->len; i++)
    {
      RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);
      RcOption   *option = g_steal_pointer (&g_ptr_array_index (suggested, i));
      if (option == NULL)
        continue;
      area_plan->chosen = area_plan->options->len;
      g_ptr_array_add (area_plan->options, option);
    }
  return TRUE;
}

static void
raise_bounds (const RcPlan *plan, const RcGoods *carpet)
{
  g_autoptr (GArray) areas = list_areas (plan, carpet);
  for (guint i = 0; i < areas->len; i++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, g_array_index (areas, guint, i));
      for (guint k = 0; k < area_plan->options->len; k++)
        {
          RcOption *option = g_ptr_array_index (area_plan->options, k);
          option->cost_lower_bound = MIN (option->cost, MAX (option->cost_lower_bound, area_plan->alone_lower_bound));
        }
    }
}

gboolean
rc_outlook_settle (RcPlan *plan, const RcGoods *carpet, const GPtrArray *stairs, gint64 carpet_per_m,
                   GPtrArray *suggested, const RcPlanParams *params)
{
  RcPlanParams each = *params;
  Settling     self = { plan, carpet, stairs, carpet_per_m, suggested, &each, { 0 } };
  guint        n = 0;
  for (guint i = 0; i < suggested->len; i++)
    n += g_ptr_array_index (suggested, i) != NULL;
  each.seconds = params->seconds * rc_steps_count_at_once (2) / 2;
  gboolean is_taken = n > 0 && rc_steps_take (2, weigh, &self, NULL) && self.costs[1] < self.costs[0]
                      && take_suggested (plan, suggested);
  raise_bounds (plan, carpet);
  return is_taken;
}
