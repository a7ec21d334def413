#include "areas-alone.h"

#include "steps.h"

/* With less time than this for each the search of many would find nothing. */
#define LEAST_US 10000

typedef struct
{
  RcPlan          *plan;
  const GPtrArray *planners;
  RcProgress      *progress;
} Alone;

static RcAreaPlanner *
get_planner (const Alone *self, guint area)
{
  return g_ptr_array_index (self->planners, area);
}

static void
plan_at_once (guint area, gpointer user_data, GError **error)
{
  const Alone *self = user_data;
  g_ptr_array_index (self->plan->areas, area) = rc_area_planner_plan (get_planner (self, area), FALSE, 0, error);
}

static gboolean
plan_all_at_once (Alone *self, GError **error)
{
  g_ptr_array_set_size (self->plan->areas, (int)self->planners->len);
  if (!rc_steps_take (self->planners->len, plan_at_once, self, error))
    return FALSE;
  for (guint i = 0; i < self->planners->len; i++)
    rc_progress_add_work (self->progress, rc_area_planner_get_work_us (get_planner (self, i)));
  return TRUE;
}

/* The options of the area, searched for so long. */
static gboolean
search (Alone *self, guint area, gint64 budget_us, GError **error)
{
  RcAreaPlanner *planner = get_planner (self, area);
  gint64         before = rc_area_planner_get_work_us (planner);
  rc_progress_tell (self->progress, ((RcFloorArea *)g_ptr_array_index (self->plan->measure->areas, area))->name);
  RcAreaPlan *found = rc_area_planner_plan (planner, TRUE, (double)budget_us / G_USEC_PER_SEC, error);
  rc_progress_add_work (self->progress, rc_area_planner_get_work_us (planner) - before);
  if (found == NULL)
    return FALSE;
  if (area == self->plan->areas->len)
    g_ptr_array_add (self->plan->areas, NULL);
  rc_area_plan_free (g_ptr_array_index (self->plan->areas, area));
  g_ptr_array_index (self->plan->areas, area) = found;
  return TRUE;
}

gboolean
rc_areas_plan_alone (RcPlan *plan, const GPtrArray *planners, RcProgress *progress, gint64 end_us, GError **error)
{
  Alone    self = { plan, planners, progress };
  gboolean many = planners->len > RC_MOST_ALONE, deep = progress->params->seconds > 0;
  if ((many || !deep) && !plan_all_at_once (&self, error))
    return FALSE;
  for (guint i = 0; deep && i < planners->len; i++)
    {
      gint64 budget_us = MAX (0, end_us - rc_progress_get_us (progress)) / (planners->len - i);
      if (many && (budget_us < LEAST_US || g_cancellable_is_cancelled (progress->params->cancellable)))
        break;
      if (!search (&self, i, budget_us, error))
        return FALSE;
    }
  rc_progress_note_areas (progress);
  return TRUE;
}
