/* A measure planned after goods were cut by the plan of an earlier one. */
#include "area-key.h"

static gboolean
is_same (const RcJob *job, const RcHouse *house, const RcFloorArea *area, const RcAreaPlan *was,
         const RcPlanWeights *weights)
{
  g_autofree char *shape = house != NULL ? rc_area_key_new_shape (job, house, area, weights) : NULL;
  g_autofree char *key = shape != NULL ? rc_area_key_new (shape, house, area) : NULL;

  return g_strcmp0 (key, was->key) == 0;
}

void
rc_plan_hold_pile (const RcJob *job, RcMeasure *measure, const RcPlan *before, RcPlanWeightsFunc weights,
                   gpointer user_data)
{
  g_autoptr (RcHouse) house = rc_house_new (measure, &job->settings.closure, NULL);

  for (guint i = 0; i < measure->areas->len; i++)
    {
      RcFloorArea      *area = g_ptr_array_index (measure->areas, i);
      const RcAreaPlan *was = rc_plan_find_area (before, area->id);
      const RcGoods    *carpet = rc_job_find_goods (job, area->carpet);
      double            degrees = was != NULL ? rc_area_plan_get_chosen (was)->pile_degrees : -1;
      RcPlanWeights     carpet_weights = { 0 };

      if (was == NULL || carpet == NULL || area->pile_degrees >= 0)
        continue;
      weights (carpet, &carpet_weights, user_data);
      if (!is_same (job, house, area, was, &carpet_weights)
          && (degrees == 0 || degrees == 90 || degrees == 180 || degrees == 270))
        area->pile_degrees = (int)degrees;
    }
}
