#include "plan.h"

#include "area-plan.h"
#include "cutting.h"
#include "option.h"
#include "rowcut-error.h"
#include "site.h"

#include <glib/gi18n-lib.h>

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
}

/* The whole flight in one piece. (transfer full) */
static RcPiece *
new_stair_piece (const RcStair *stair, GError **error)
{
  RcPiece *piece = rc_piece_new (RC_PIECE_STAIR);
  piece->room = g_strdup (stair->id);
  piece->goods = g_strdup (stair->carpet);
  if (rc_stair_compute_cut (stair, &piece->cut_width, &piece->cut_length))
    return piece;
  rc_piece_free (piece);
  g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("%s: its sizes are too large"), stair->name);
  return NULL;
}

static gboolean
add_stair (RcPlan *plan, const RcStair *stair, GError **error)
{
  RcPiece *piece = new_stair_piece (stair, error);
  if (piece == NULL)
    return FALSE;
  piece->number = plan->pieces->len + 1;
  g_ptr_array_add (plan->pieces, piece);
  plan->covered_area += rc_area_from_rectangle (stair->width, (stair->going + stair->rise) * stair->steps);
  return TRUE;
}

static gboolean
is_used (const RcPlan *plan, const RcGoods *goods)
{
  for (guint i = 0; i < plan->pieces->len; i++)
    if (g_strcmp0 (((RcPiece *)g_ptr_array_index (plan->pieces, i))->goods, goods->id) == 0)
      return TRUE;
  return FALSE;
}

static gboolean
add_cuttings (RcPlan *plan, RcPlanWeightsFunc weights, gpointer user_data, const RcPlanParams *params, GError **error)
{
  for (guint i = 0; i < plan->job->goods->len; i++)
    {
      const RcGoods *goods = g_ptr_array_index (plan->job->goods, i);
      if (goods->kind != RC_GOODS_CARPET || !is_used (plan, goods))
        continue;
      RcPlanWeights weigh = { 0 };
      weights (goods, &weigh, user_data);
      RcCutting *cutting = rc_cutting_new (plan->job, goods, plan->pieces, weigh.carpet_per_m, params, error);
      if (cutting == NULL)
        return FALSE;
      g_ptr_array_add (plan->cuttings, cutting);
      plan->carpet_length += cutting->answer->used_length;
      plan->carpet_area += rc_area_from_rectangle (rc_goods_get_usable_width (goods), cutting->answer->used_length);
    }
  if (plan->carpet_area > 0)
    plan->waste_ppm = (gint64)(((__int128)(plan->carpet_area - plan->covered_area) * 1000000 + plan->carpet_area / 2)
                               / plan->carpet_area);
  return TRUE;
}

/* What the areas and stairs in one carpet cost together as the options are chosen now: their cuts on one roll bought to
 * measure, their seams and broken rules. `stairs`: pieces of that carpet. */
static RcMoney
weigh_together (const RcPlan *plan, const RcGoods *carpet, const GPtrArray *stairs, gint64 carpet_per_m)
{
  g_autoptr (GPtrArray) pieces = g_ptr_array_copy ((GPtrArray *)stairs, NULL, NULL);
  g_ptr_array_set_free_func (pieces, NULL);
  RcMoney cost = 0;
  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);
      const RcOption   *option = rc_area_plan_get_chosen (area_plan);
      if (g_strcmp0 (area_plan->area->carpet, carpet->id) != 0)
        continue;
      cost += option->cost - rc_weigh (rc_length_round_up (option->carpet_length, carpet->length_step), carpet_per_m);
      for (guint k = 0; k < option->pieces->len; k++)
        g_ptr_array_add (pieces, g_ptr_array_index (option->pieces, k));
    }
  g_autoptr (RcNestProblem) problem = rc_cutting_new_problem (carpet, pieces);
  RcLength length = rc_nest_compute_quick_length (problem);
  return cost + rc_weigh (rc_length_round_up (length, carpet->length_step), carpet_per_m);
}

/* A first answer may fit better beside the rest of the job than what a longer search finds for the area alone: its
 * options are candidates too, under one name. */
static const char WITH_THE_JOB[] = "with-the-job";

static gboolean
has_option_like (const RcAreaPlan *area_plan, const RcOption *option)
{
  for (guint i = 0; i < area_plan->options->len; i++)
    {
      const RcOption *known = g_ptr_array_index (area_plan->options, i);
      if (known->cost == option->cost && known->carpet_length == option->carpet_length)
        return TRUE;
    }
  return FALSE;
}

static void
add_candidates (RcAreaPlan *area_plan, const RcAreaPlan *first)
{
  for (guint i = 0; i < first->options->len; i++)
    {
      const RcOption *option = g_ptr_array_index (first->options, i);
      if (has_option_like (area_plan, option))
        continue;
      RcOption *candidate = rc_option_copy (option);
      g_free (candidate->name);
      candidate->name = g_strdup (WITH_THE_JOB);
      candidate->same_as = area_plan->options->len;
      g_ptr_array_add (area_plan->options, candidate);
    }
}

/* Of the candidates only one that was chosen stays. */
static void
drop_candidates (RcAreaPlan *area_plan)
{
  for (guint i = area_plan->options->len; i-- > 0;)
    {
      RcOption *option = g_ptr_array_index (area_plan->options, i);
      if (i == area_plan->chosen || !g_str_equal (option->name, WITH_THE_JOB))
        continue;
      g_ptr_array_remove_index (area_plan->options, i);
      if (area_plan->chosen > i)
        area_plan->chosen--;
    }
  RcOption *chosen = g_ptr_array_index (area_plan->options, area_plan->chosen);
  chosen->same_as = MIN (chosen->same_as, area_plan->chosen);
}

static RcAreaPlan *
plan_area (RcPlan *plan, const RcFloorArea *area, const RcPlanWeights *weights, const RcPlanParams *params,
           GError **error)
{
  g_autoptr (RcAreaPlan) first = NULL;
  RcAreaPlan *area_plan = rc_area_plan_new (plan->job, plan->house, area, weights, params, error);
  if (area_plan == NULL || params->seconds == 0)
    return area_plan;
  RcPlanParams at_once = *params;
  at_once.seconds = 0;
  first = rc_area_plan_new (plan->job, plan->house, area, weights, &at_once, error);
  if (first == NULL)
    g_clear_pointer (&area_plan, rc_area_plan_free);
  else
    add_candidates (area_plan, first);
  return area_plan;
}

static gboolean
is_free_to_choose (const RcFloorArea *area)
{
  return area->option == NULL || g_str_equal (area->option, WITH_THE_JOB);
}

/* Where the estimator has not taken an option: the one that is cheapest with all else that is cut from the carpet. Two
 * rounds over the areas; of equals the cheapest by itself stays. */
static void
choose_together (RcPlan *plan, const RcGoods *carpet, const GPtrArray *stairs, gint64 carpet_per_m)
{
  RcMoney best = weigh_together (plan, carpet, stairs, carpet_per_m);
  for (guint round = 0; round < 2; round++)
    for (guint i = 0; i < plan->areas->len; i++)
      {
        RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);
        guint       taken = area_plan->chosen;
        if (!is_free_to_choose (area_plan->area) || g_strcmp0 (area_plan->area->carpet, carpet->id) != 0)
          continue;
        for (guint o = 0; o < area_plan->options->len; o++)
          {
            area_plan->chosen = o;
            RcMoney cost = weigh_together (plan, carpet, stairs, carpet_per_m);
            if (cost < best)
              {
                best = cost;
                taken = o;
              }
          }
        area_plan->chosen = taken;
      }
}

static gboolean
choose_options (RcPlan *plan, RcPlanWeightsFunc weights, gpointer user_data, GError **error)
{
  for (guint g = 0; g < plan->job->goods->len; g++)
    {
      const RcGoods *goods = g_ptr_array_index (plan->job->goods, g);
      RcPlanWeights  weigh = { 0 };
      g_autoptr (GPtrArray) stairs = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_piece_free);
      if (goods->kind != RC_GOODS_CARPET)
        continue;
      for (guint i = 0; i < plan->measure->stairs->len; i++)
        {
          const RcStair *stair = g_ptr_array_index (plan->measure->stairs, i);
          RcPiece       *piece;
          if (g_strcmp0 (stair->carpet, goods->id) != 0)
            continue;
          piece = new_stair_piece (stair, error);
          if (piece == NULL)
            return FALSE;
          g_ptr_array_add (stairs, piece);
        }
      weights (goods, &weigh, user_data);
      choose_together (plan, goods, stairs, weigh.carpet_per_m);
    }
  return TRUE;
}

static gboolean
fill_plan (RcPlan *plan, RcPlanWeightsFunc weights, gpointer user_data, const RcPlanParams *params, GError **error)
{
  plan->house = rc_house_new (plan->measure, &plan->job->settings.closure, error);
  if (plan->house == NULL)
    return FALSE;
  for (guint i = 0; i < plan->measure->areas->len; i++)
    {
      const RcFloorArea *area = g_ptr_array_index (plan->measure->areas, i);
      RcPlanWeights      weigh = { 0 };
      weights (rc_job_find_goods (plan->job, area->carpet), &weigh, user_data);
      RcAreaPlan *area_plan = plan_area (plan, area, &weigh, params, error);
      if (area_plan == NULL)
        return FALSE;
      g_ptr_array_add (plan->areas, area_plan);
    }
  if (!choose_options (plan, weights, user_data, error))
    return FALSE;
  for (guint i = 0; i < plan->areas->len; i++)
    {
      drop_candidates (g_ptr_array_index (plan->areas, i));
      add_area (plan, g_ptr_array_index (plan->areas, i));
    }
  for (guint i = 0; i < plan->measure->stairs->len; i++)
    if (!add_stair (plan, g_ptr_array_index (plan->measure->stairs, i), error))
      return FALSE;
  return add_cuttings (plan, weights, user_data, params, error);
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
  if (!fill_plan (plan, weights, user_data, params != NULL ? params : &first_answer, error))
    return NULL;
  return g_steal_pointer (&plan);
}

const RcPiece *
rc_plan_find_piece (const RcPlan *plan, guint number)
{
  return number >= 1 && number <= plan->pieces->len ? g_ptr_array_index (plan->pieces, number - 1) : NULL;
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
