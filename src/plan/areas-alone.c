#include "areas-alone.h"

#include "steps.h"

/* With less time than this for each the search of many would find nothing. */
#define LEAST_US 10000

typedef struct
{
  RcPlan          *plan;
  const GPtrArray *planners;
  GArray          *models; /* of guint: the areas that follow no other */
  RcProgress      *progress;
} Alone;

static RcAreaPlanner *
get_planner (const Alone *self, guint area)
{
  return g_ptr_array_index (self->planners, area);
}

static void
list_models (Alone *self)
{
  for (guint i = 0; i < self->planners->len; i++)
    if (rc_area_planner_get_model (get_planner (self, i)) == get_planner (self, i))
      g_array_append_val (self->models, i);
}

static void
take (const Alone *self, guint area, RcAreaPlan *found)
{
  rc_area_plan_free (g_ptr_array_index (self->plan->areas, area));
  g_ptr_array_index (self->plan->areas, area) = found;
}

/* Areas that follow have what was found for the one that they are like. */
static void
plan_followers (const Alone *self)
{
  for (guint m = 0; m < self->models->len; m++)
    {
      guint model = g_array_index (self->models, guint, m);
      for (guint i = model + 1; i < self->planners->len; i++)
        if (rc_area_planner_get_model (get_planner (self, i)) == get_planner (self, model))
          take (self, i,
                rc_area_planner_copy_plan (get_planner (self, i), g_ptr_array_index (self->plan->areas, model)));
    }
}

static void
plan_at_once (guint step, gpointer user_data, GError **error)
{
  const Alone *self = user_data;
  guint        area = g_array_index (self->models, guint, step);
  take (self, area, rc_area_planner_plan (get_planner (self, area), FALSE, 0, error));
}

static gboolean
plan_all_at_once (Alone *self, GError **error)
{
  if (!rc_steps_take (self->models->len, plan_at_once, self, error))
    return FALSE;
  for (guint i = 0; i < self->models->len; i++)
    rc_progress_add_work (self->progress,
                          rc_area_planner_get_work_us (get_planner (self, g_array_index (self->models, guint, i))));
  plan_followers (self);
  rc_progress_note_areas (self->progress);
  return TRUE;
}

/* The options of the area, searched for so long. */
static gboolean
search (const Alone *self, guint area, gint64 budget_us, GError **error)
{
  RcAreaPlanner *planner = get_planner (self, area);
  gint64         before = rc_area_planner_get_work_us (planner);
  rc_progress_tell (self->progress, ((RcFloorArea *)g_ptr_array_index (self->plan->measure->areas, area))->name);
  RcAreaPlan *found = rc_area_planner_plan (planner, TRUE, (double)budget_us / G_USEC_PER_SEC, error);
  rc_progress_add_work (self->progress, rc_area_planner_get_work_us (planner) - before);
  if (found != NULL)
    take (self, area, found);
  return found != NULL;
}

/* Each in an equal part of the time left; of many only while that is enough to find something in. */
static gboolean
search_all (const Alone *self, gboolean many, gint64 end_us, GError **error)
{
  for (guint i = 0; i < self->models->len; i++)
    {
      gint64 budget_us = MAX (0, end_us - rc_progress_get_us (self->progress)) / (self->models->len - i);
      if (many && (budget_us < LEAST_US || g_cancellable_is_cancelled (self->progress->params->cancellable)))
        break;
      if (!search (self, g_array_index (self->models, guint, i), budget_us, error))
        return FALSE;
    }
  plan_followers (self);
  rc_progress_note_areas (self->progress);
  return TRUE;
}

gboolean
rc_areas_plan_alone (RcPlan *plan, const GPtrArray *planners, RcProgress *progress, gint64 end_us, GError **error)
{
  g_autoptr (GArray) models = g_array_new (FALSE, FALSE, sizeof (guint));
  Alone    self = { plan, planners, models, progress };
  gboolean many = planners->len > RC_MOST_ALONE, deep = progress->params->seconds > 0;
  list_models (&self);
  g_ptr_array_set_size (plan->areas, (int)planners->len);
  if ((many || !deep) && !plan_all_at_once (&self, error))
    return FALSE;
  return !deep || search_all (&self, many, end_us, error);
}
