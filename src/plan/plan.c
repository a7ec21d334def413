#include "plan.h"

#include "area-plan.h"
#include "areas-alone.h"
#include "carpets.h"
#include "cutting.h"
#include "known-bound.h"
#include "option.h"
#include "pin-result.h"
#include "progress.h"
#include "site.h"
#include "stair-pieces.h"

/* The part of the time in which cuts are placed on the rolls. */
#define CUTTING_SHARE 0.2

/* And beyond it what pins cost is looked for. */
#define PINS_SHARE 0.1

void
rc_area_plan_free (RcAreaPlan *area_plan)
{
  if (area_plan == NULL)
    return;
  g_free (area_plan->key);
  g_clear_pointer (&area_plan->floor, g_ptr_array_unref);
  g_clear_pointer (&area_plan->options, g_ptr_array_unref);
  g_clear_pointer (&area_plan->pins, g_array_unref);
  g_free (area_plan);
}

void
rc_plan_free (RcPlan *plan)
{
  if (plan == NULL)
    return;
  g_clear_pointer (&plan->house, rc_house_free);
  g_clear_pointer (&plan->areas, g_ptr_array_unref);
  g_clear_pointer (&plan->pieces, g_ptr_array_unref);
  g_clear_pointer (&plan->seams, g_ptr_array_unref);
  g_clear_pointer (&plan->cuttings, g_ptr_array_unref);
  g_free (plan);
}

/* Pieces and seams of the chosen option, numbered on from what the plan has. */
static void
add_area (RcPlan *plan, RcAreaPlan *area_plan)
{
  const RcOption *option = rc_area_plan_get_chosen (area_plan);
  guint           before = plan->pieces->len, fills = 0;
  for (guint i = 0; i < before; i++)
    fills = MAX (fills, ((RcPiece *)g_ptr_array_index (plan->pieces, i))->fill);
  for (guint i = 0; i < option->pieces->len; i++)
    {
      RcPiece *piece = rc_piece_copy (g_ptr_array_index (option->pieces, i));
      piece->number += before;
      piece->fill += piece->fill > 0 ? fills : 0;
      g_ptr_array_add (plan->pieces, piece);
    }
  for (guint i = 0; i < option->seams->len; i++)
    {
      RcSeam *seam = rc_seam_copy (g_ptr_array_index (option->seams, i));
      seam->piece_a += before;
      seam->piece_b += before;
      g_ptr_array_add (plan->seams, seam);
    }
  plan->covered_area += area_plan->floor_area;
  plan->cost += option->seam_cost + option->rule_cost;
}

static gboolean
add_stair (RcPlan *plan, const RcStair *stair, GError **error)
{
  g_autoptr (GArray) parts = rc_stair_compute_pieces (stair);
  if (!rc_stair_add_pieces (plan->job, stair, plan->pieces, error))
    return FALSE;
  for (guint i = 0; i < parts->len; i++)
    {
      const RcStairPiece *part = &g_array_index (parts, RcStairPiece, i);
      plan->covered_area += rc_area_from_rectangle (part->width, part->length);
    }
  return TRUE;
}

/* Areas and stairs add their shares; a roll in stock saves at most its length times what it is cheaper than carpet
 * bought. */
static RcMoney
compute_simple_bound (const RcPlan *plan, const RcCutting *cutting)
{
  const RcNestProblem *problem = cutting->problem;
  const RcNestRoll    *bought = g_ptr_array_index (problem->rolls, problem->rolls->len - 1);
  RcMoney              bound = 0;
  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);
      if (g_strcmp0 (area_plan->area->carpet, cutting->goods->id) == 0)
        bound += area_plan->share_lower_bound;
    }
  for (guint c = 0; c < problem->cuts->len; c++)
    {
      const RcNestCut *cut = g_ptr_array_index (problem->cuts, c);
      const RcPiece   *piece = rc_plan_find_piece (plan, g_array_index (cutting->piece_numbers, guint, c));
      g_assert (piece != NULL); /* a cutting is of the plan's own pieces */
      if (piece->kind == RC_PIECE_STAIR)
        bound += rc_weigh ((RcLength)((__int128)cut->width * cut->length / problem->roll_width), bought->cost_per_m);
    }
  for (guint r = 0; r + 1 < problem->rolls->len; r++)
    {
      const RcNestRoll *roll = g_ptr_array_index (problem->rolls, r);
      bound -= rc_weigh (roll->length, bought->cost_per_m - roll->cost_per_m);
    }
  return bound;
}

/* `raised`: for each of the job's goods what rc_outlook_make found. What was proved of the same before stays so. */
static void
compute_lower_bound (RcPlan *plan, const RcMoney *raised, const RcPlan *previous)
{
  RcMoney bound = 0, sum_raised = 0;
  for (guint i = 0; i < plan->cuttings->len; i++)
    {
      RcCutting *cutting = g_ptr_array_index (plan->cuttings, i);
      guint      goods = 0;
      g_ptr_array_find (plan->job->goods, cutting->goods, &goods);
      sum_raised += raised[goods];
      cutting->cost_lower_bound = MAX (0, MAX (raised[goods], compute_simple_bound (plan, cutting)));
      cutting->cost_lower_bound = MAX (cutting->cost_lower_bound, rc_known_bound_find (plan, cutting, previous));
      bound += cutting->cost_lower_bound;
    }
  g_warn_if_fail (sum_raised <= plan->cost);
  /* A floor up to a sliver wider than the roll is laid without a seam, so a simple bound may lie a hair above. */
  plan->cost_lower_bound = MIN (bound, plan->cost);
}

/* One for each area, the first of like ones the model of the others. (transfer full) GPtrArray of RcAreaPlanner; NULL
 * and an error naming an area. */
static GPtrArray *
make_planners (const RcPlan *plan, const RcProgress *progress, GError **error)
{
  g_autoptr (GPtrArray) planners = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_area_planner_free);
  g_autoptr (GHashTable) models = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint i = 0; i < plan->measure->areas->len; i++)
    {
      const RcFloorArea *area = g_ptr_array_index (plan->measure->areas, i);
      RcPlanWeights      weights = { 0 };
      progress->weights (rc_job_find_goods (plan->job, area->carpet), &weights, progress->weights_data);
      RcAreaPlanner *planner = rc_area_planner_new (plan->job, plan->house, area, &weights, progress->params, error);
      if (planner == NULL)
        return NULL;
      g_ptr_array_add (planners, planner);
      RcAreaPlanner *model = g_hash_table_lookup (models, rc_area_planner_get_shape (planner));
      if (model == NULL)
        g_hash_table_insert (models, (gpointer)rc_area_planner_get_shape (planner), planner);
      else
        rc_area_planner_follow (planner, model);
    }
  return g_steal_pointer (&planners);
}

static gint64
get_us_after (const RcProgress *progress, double share)
{
  return progress->start_us + (gint64)(progress->params->seconds * share * G_USEC_PER_SEC);
}

static gboolean
fill_plan (RcPlan *plan, RcProgress *progress, GError **error)
{
  /* Steady cuttings take no time. */
  double              share = progress->params->steady ? 1 : 1 - CUTTING_SHARE;
  double              alone = plan->measure->areas->len > RC_MOST_ALONE ? share / 4 : share / 2;
  g_autofree RcMoney *raised = g_new0 (RcMoney, plan->job->goods->len + 1);
  plan->house = rc_house_new (plan->measure, &plan->job->settings.closure, error);
  if (plan->house == NULL)
    return FALSE;
  g_autoptr (GPtrArray) planners = make_planners (plan, progress, error);
  if (planners == NULL || !rc_areas_plan_alone (plan, planners, progress, get_us_after (progress, alone), error)
      || !rc_carpets_choose (plan, planners, progress, get_us_after (progress, share), raised, error))
    return FALSE;
  for (guint i = 0; i < plan->areas->len; i++)
    add_area (plan, g_ptr_array_index (plan->areas, i));
  for (guint i = 0; i < plan->measure->stairs->len; i++)
    if (!add_stair (plan, g_ptr_array_index (plan->measure->stairs, i), error))
      return FALSE;
  if (!rc_carpets_cut (plan, progress, get_us_after (progress, 1), error))
    return FALSE;
  compute_lower_bound (plan, raised, progress->params->previous);
  rc_pin_results_fill (plan, progress, get_us_after (progress, 1 + PINS_SHARE));
  return TRUE;
}

RcPlan *
rc_plan_new (const RcJob *job, const RcMeasure *measure, RcPlanWeightsFunc weights, gpointer user_data,
             const RcPlanParams *params, GError **error)
{
  static const RcPlanParams first_answer = { 0 };
  g_return_val_if_fail (job != NULL && measure != NULL && weights != NULL, NULL);
  if (!rc_job_check (job, measure, error))
    return NULL;

  g_autoptr (RcPlan) plan = g_new0 (RcPlan, 1);
  plan->job = job;
  plan->measure = measure;
  plan->areas = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_area_plan_free);
  plan->pieces = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_piece_free);
  plan->seams = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_seam_free);
  plan->cuttings = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_cutting_free);
  RcPlanParams own = params != NULL ? *params : first_answer;
  if (own.effort > 0)
    {
      own.seconds = (double)own.effort / 1000;
      own.steady = TRUE;
    }
  RcProgress progress;
  rc_progress_init (&progress, plan, &own, weights, user_data);
  gboolean fine = fill_plan (plan, &progress, error);
  rc_progress_clear (&progress);
  return fine ? g_steal_pointer (&plan) : NULL;
}

const RcPiece *
rc_plan_find_piece (const RcPlan *plan, guint number)
{
  return number >= 1 && number <= plan->pieces->len ? g_ptr_array_index (plan->pieces, number - 1) : NULL;
}

const RcNestPlacement *
rc_plan_find_placement (const RcPlan *plan, guint number, const RcCutting **cutting)
{
  for (guint c = 0; c < plan->cuttings->len; c++)
    {
      *cutting = g_ptr_array_index (plan->cuttings, c);
      for (guint i = 0; i < (*cutting)->answer->placements->len; i++)
        {
          const RcNestPlacement *placement = &g_array_index ((*cutting)->answer->placements, RcNestPlacement, i);
          if (g_array_index ((*cutting)->piece_numbers, guint, placement->cut) == number)
            return placement;
        }
    }
  return NULL;
}

const RcAreaPlan *
rc_plan_find_area (const RcPlan *plan, const char *area_id)
{
  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);
      if (g_strcmp0 (area_plan->area->id, area_id) == 0)
        return area_plan;
    }
  return NULL;
}
