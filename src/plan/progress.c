#include "progress.h"

#include "cutting.h"
#include "site.h"

void
rc_progress_init (RcProgress *progress, const RcPlan *plan, const RcPlanParams *params, RcPlanWeightsFunc weights,
                  gpointer weights_data)
{
  *progress = (RcProgress){
    .plan = plan, .params = params, .weights = weights, .weights_data = weights_data, .thread = g_thread_self ()
  };
  g_mutex_init (&progress->lock);
  progress->start_us = rc_progress_get_us (progress);
  progress->costs = g_new0 (RcMoney, plan->job->goods->len + 1);
  progress->bounds = g_new0 (RcMoney, plan->job->goods->len + 1);
}

gint64
rc_progress_get_us (const RcProgress *progress)
{
  return progress->params->effort > 0 ? progress->work_us : g_get_monotonic_time ();
}

void
rc_progress_add_work (RcProgress *progress, gint64 us)
{
  if (progress->params->effort > 0)
    progress->work_us += us;
}

void
rc_progress_clear (RcProgress *progress)
{
  g_free (progress->costs);
  g_free (progress->bounds);
  g_mutex_clear (&progress->lock);
}

/* No cutting saves more by stock. */
static RcMoney
compute_most_saved (const RcProgress *progress, const RcGoods *carpet)
{
  RcPlanWeights weights = { 0 };
  RcMoney       saved = 0;
  progress->weights (carpet, &weights, progress->weights_data);
  g_autoptr (GPtrArray) rolls = rc_cutting_new_rolls (progress->plan->job, carpet, weights.carpet_per_m, NULL);
  for (guint i = 0; i < rolls->len; i++)
    {
      const RcNestRoll *roll = g_ptr_array_index (rolls, i);
      saved += rc_weigh (roll->length, weights.carpet_per_m - roll->cost_per_m);
    }
  return saved;
}

void
rc_progress_note_areas (RcProgress *progress)
{
  const RcPlan *plan = progress->plan;
  for (guint g = 0; g < plan->job->goods->len; g++)
    {
      const RcGoods *goods = g_ptr_array_index (plan->job->goods, g);
      progress->costs[g] = progress->bounds[g] = 0;
      for (guint i = 0; i < plan->areas->len; i++)
        {
          const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);
          if (g_strcmp0 (area_plan->area->carpet, goods->id) != 0)
            continue;
          progress->costs[g] += rc_area_plan_get_chosen (area_plan)->cost;
          progress->bounds[g] += area_plan->share_lower_bound;
        }
      if (progress->bounds[g] > 0)
        progress->bounds[g] = MAX (0, progress->bounds[g] - compute_most_saved (progress, goods));
    }
}

void
rc_progress_note_carpet (RcProgress *progress, const RcGoods *carpet, RcMoney cost)
{
  guint index;
  if (!g_ptr_array_find (progress->plan->job->goods, carpet, &index) || cost == G_MAXINT64)
    return;
  g_mutex_lock (&progress->lock);
  progress->costs[index] = cost;
  g_mutex_unlock (&progress->lock);
}

void
rc_progress_note_bound (RcProgress *progress, const RcGoods *carpet, RcMoney bound)
{
  guint index;
  if (!g_ptr_array_find (progress->plan->job->goods, carpet, &index))
    return;
  g_mutex_lock (&progress->lock);
  progress->bounds[index] = MAX (progress->bounds[index], bound);
  g_mutex_unlock (&progress->lock);
}

void
rc_progress_tell (RcProgress *progress, const char *what)
{
  const RcPlan       *plan = progress->plan;
  const RcPlanParams *params = progress->params;
  double              passed = (double)(rc_progress_get_us (progress) - progress->start_us) / G_USEC_PER_SEC;
  RcPlanProgress      told = { .what = what };
  if (params->progress == NULL || params->seconds == 0 || g_thread_self () != progress->thread)
    return;
  told.share = CLAMP (passed / params->seconds, 0, 1);
  g_mutex_lock (&progress->lock);
  for (guint g = 0; plan->areas->len == plan->measure->areas->len && g < plan->job->goods->len; g++)
    {
      told.cost += progress->costs[g];
      told.cost_lower_bound += progress->bounds[g];
    }
  g_mutex_unlock (&progress->lock);
  params->progress (&told, params->progress_data);
}
