#include "plan.h"

#include "area-plan.h"
#include "cutting.h"
#include "joint.h"
#include "option.h"
#include "outlook.h"
#include "pattern.h"
#include "pin-result.h"
#include "progress.h"
#include "rowcut-error.h"
#include "site.h"

#include <glib/gi18n-lib.h>

/* The part of the time for a carpet that is spent on how well it can be planned at most. */
#define OUTLOOK_SHARE 0.4

/* A step of that, where work is counted. */
#define STEP_WORK_US 5000

/* Likewise the part spent on whether what that suggests is better than what was found. */
#define SETTLING_SHARE 0.3

/* More areas than this are many. */
#define MOST_ALONE 16

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

/* Pieces of a stair share a pattern that runs down it, from its middle. */
static void
hold_stair_piece (RcPiece *piece, const RcGoods *carpet, const RcStairPiece *of, guint n_pieces)
{
  if (n_pieces == 1)
    return;
  RcLength over = (of->cut_length - of->length) / 2;
  piece->repeat = carpet->repeat_length;
  piece->phase = piece->repeat > 0 ? rc_wrap (of->from_top - over, piece->repeat) : 0;
  piece->across_repeat = rc_pattern_compute_across_repeat (carpet);
  piece->across_phase = piece->across_repeat > 0 ? rc_wrap (-of->cut_width / 2, piece->across_repeat) : 0;
}

/* Adds the stair's pieces to `pieces` (of RcPiece), numbered on from what it has. */
static gboolean
add_stair_pieces (const RcPlan *plan, const RcStair *stair, GPtrArray *pieces, GError **error)
{
  const RcGoods *carpet = rc_job_find_goods (plan->job, stair->carpet);
  g_autoptr (GArray) parts = rc_stair_compute_pieces (stair);
  if (parts == NULL)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("%s: its sizes are too large"), stair->name);
      return FALSE;
    }
  for (guint i = 0; i < parts->len; i++)
    {
      const RcStairPiece *part = &g_array_index (parts, RcStairPiece, i);
      RcPiece            *piece = rc_piece_new (RC_PIECE_STAIR);
      piece->number = pieces->len + 1;
      piece->room = g_strdup (stair->id);
      piece->goods = g_strdup (stair->carpet);
      piece->cut_width = part->cut_width;
      piece->cut_length = part->cut_length;
      piece->stair_piece = i;
      hold_stair_piece (piece, carpet, part, parts->len);
      g_ptr_array_add (pieces, piece);
    }
  return TRUE;
}

static gboolean
add_stair (RcPlan *plan, const RcStair *stair, GError **error)
{
  g_autoptr (GArray) parts = rc_stair_compute_pieces (stair);
  if (!add_stair_pieces (plan, stair, plan->pieces, error))
    return FALSE;
  for (guint i = 0; i < parts->len; i++)
    {
      const RcStairPiece *part = &g_array_index (parts, RcStairPiece, i);
      plan->covered_area += rc_area_from_rectangle (part->width, part->length);
    }
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
      plan->cost += rc_cutting_get_cost (cutting);
      plan->carpet_length += cutting->answer->used_length;
      plan->carpet_area += rc_area_from_rectangle (rc_goods_get_usable_width (goods), cutting->answer->used_length);
    }
  if (plan->carpet_area > 0)
    plan->waste_ppm = (gint64)(((__int128)(plan->carpet_area - plan->covered_area) * 1000000 + plan->carpet_area / 2)
                               / plan->carpet_area);
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
      guint            number = g_array_index (cutting->piece_numbers, guint, c);
      if (rc_plan_find_piece (plan, number)->kind == RC_PIECE_STAIR)
        bound += rc_weigh ((RcLength)((__int128)cut->width * cut->length / problem->roll_width), bought->cost_per_m);
    }
  for (guint r = 0; r + 1 < problem->rolls->len; r++)
    {
      const RcNestRoll *roll = g_ptr_array_index (problem->rolls, r);
      bound -= rc_weigh (roll->length, bought->cost_per_m - roll->cost_per_m);
    }
  return bound;
}

/* `raised`: for each of the job's goods what rc_outlook_make found. */
static void
compute_lower_bound (RcPlan *plan, const RcMoney *raised)
{
  RcMoney bound = 0, sum_raised = 0;
  for (guint i = 0; i < plan->cuttings->len; i++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, i);
      guint            goods = 0;
      g_ptr_array_find (plan->job->goods, cutting->goods, &goods);
      sum_raised += raised[goods];
      bound += MAX (raised[goods], compute_simple_bound (plan, cutting));
    }
  g_warn_if_fail (sum_raised <= plan->cost);
  /* A floor up to a sliver wider than the roll is laid without a seam, so a simple bound may lie a hair above. */
  plan->cost_lower_bound = CLAMP (bound, 0, plan->cost);
}

/* The pieces of the stairs in the carpet. (transfer full); NULL and an error naming a stair. */
static GPtrArray *
list_stairs (const RcPlan *plan, const RcGoods *carpet, GError **error)
{
  g_autoptr (GPtrArray) stairs = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_piece_free);
  for (guint i = 0; i < plan->measure->stairs->len; i++)
    {
      const RcStair *stair = g_ptr_array_index (plan->measure->stairs, i);
      if (g_strcmp0 (stair->carpet, carpet->id) == 0 && !add_stair_pieces (plan, stair, stairs, error))
        return NULL;
    }
  return g_steal_pointer (&stairs);
}

/* The part of `all` us from now on, counted from the start of that time. */
static gint64
get_part_of (gint64 start_us, gint64 all_us, double part)
{
  return start_us + (gint64)((double)MAX (0, all_us) * part);
}

/* With an effort so many steps, which count as the work done. */
static RcNestClock
make_outlook_clock (const RcPlanParams *params, RcProgress *progress, gint64 end_us)
{
  RcNestClock clock = { end_us, G_MAXUINT64, params->cancellable };
  if (params->effort == 0)
    return clock;
  gint64 budget_us = MAX (0, end_us - rc_progress_get_us (progress));
  clock.end_us = G_MAXINT64;
  clock.steps_left = (guint64)(budget_us / STEP_WORK_US);
  rc_progress_add_work (progress, budget_us);
  return clock;
}

/* All that is laid in one carpet, until `end_us`. *raised as in compute_lower_bound. */
static gboolean
choose_in_carpet (RcPlan *plan, const RcGoods *carpet, const GPtrArray *planners, gint64 carpet_per_m,
                  const RcPlanParams *params, RcProgress *progress, gint64 end_us, RcMoney *raised, GError **error)
{
  gint64       now = rc_progress_get_us (progress), all = end_us - now;
  gboolean     deep = params->seconds > 0;
  RcPlanParams settling = *params;
  RcNestClock  clock = make_outlook_clock (params, progress, get_part_of (now, all, OUTLOOK_SHARE));
  g_autoptr (GPtrArray) suggested = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_option_free);
  g_autoptr (GPtrArray) stairs = list_stairs (plan, carpet, error);
  if (stairs == NULL
      || (deep && !rc_outlook_make (plan, carpet, planners, stairs, carpet_per_m, &clock, raised, suggested, error))
      || !rc_joint_choose (plan, carpet, planners, stairs, carpet_per_m, deep,
                           get_part_of (now, all, deep ? 1 - SETTLING_SHARE : 1), params->cancellable, progress, error))
    return FALSE;
  /* Twice a cutting, which takes a quarter of the seconds it is given. */
  settling.seconds = (double)MAX (0, all) / G_USEC_PER_SEC * SETTLING_SHARE * 2;
  if (deep)
    rc_outlook_settle (plan, carpet, stairs, carpet_per_m, suggested, &settling);
  return TRUE;
}

/* A step of a first answer, for one area or one carpet: the steps do not touch one another. */
typedef struct
{
  RcPlan             *plan;
  const GPtrArray    *planners;
  const RcPlanParams *params;
  RcProgress         *progress;
  RcAreaPlanner      *planner;   /* of the area */
  RcAreaPlan         *area_plan; /* found */
  const RcGoods      *carpet;
  gint64              carpet_per_m;
  RcMoney            *raised;
  GError             *error;
} RcStep;

static void
plan_area_at_once (RcStep *step)
{
  step->area_plan = rc_area_planner_plan (step->planner, 0, &step->error);
}

static void
choose_at_once (RcStep *step)
{
  choose_in_carpet (step->plan, step->carpet, step->planners, step->carpet_per_m, step->params, step->progress, 0,
                    step->raised, &step->error);
}

typedef struct
{
  GArray *steps; /* of RcStep */
  void (*take) (RcStep *step);
  int next; /* the first that nobody has begun */
} RcSteps;

static gpointer
take_next_ones (gpointer data)
{
  RcSteps *steps = data;
  for (int i; (i = g_atomic_int_add (&steps->next, 1)) < (int)steps->steps->len;)
    steps->take (&g_array_index (steps->steps, RcStep, i));
  return NULL;
}

/* Takes all the steps, as many at a time as there are processors. FALSE and the first of their errors. */
static gboolean
take_steps (GArray *list, void (*take) (RcStep *step), GError **error)
{
  RcSteps steps = { list, take, 0 };
  g_autoptr (GPtrArray) threads = g_ptr_array_new ();
  for (guint i = 1; i < MIN (g_get_num_processors (), list->len); i++)
    g_ptr_array_add (threads, g_thread_new ("first answer", take_next_ones, &steps));
  take_next_ones (&steps);
  for (guint i = 0; i < threads->len; i++)
    g_thread_join (g_ptr_array_index (threads, i));

  gboolean fine = TRUE;
  for (guint i = 0; i < list->len; i++)
    {
      RcStep *step = &g_array_index (list, RcStep, i);
      if (step->error != NULL && fine)
        {
          g_propagate_error (error, g_steal_pointer (&step->error));
          fine = FALSE;
        }
      g_clear_error (&step->error);
    }
  return fine;
}

static gboolean
plan_areas_at_once (RcPlan *plan, const GPtrArray *planners, GError **error)
{
  g_autoptr (GArray) steps = g_array_new (FALSE, FALSE, sizeof (RcStep));
  for (guint i = 0; i < planners->len; i++)
    {
      RcStep step = { .planner = g_ptr_array_index (planners, i) };
      g_array_append_val (steps, step);
    }
  gboolean fine = take_steps (steps, plan_area_at_once, error);
  for (guint i = 0; i < steps->len; i++)
    {
      RcAreaPlan *area_plan = g_array_index (steps, RcStep, i).area_plan;
      if (area_plan != NULL)
        g_ptr_array_add (plan->areas, area_plan);
    }
  return fine;
}

/* Each carpet by itself: for a first answer some at a time, else one after another until `end_us` all told, each with
 * an equal part of what is left. `raised` as in compute_lower_bound. */
static gboolean
choose_together (RcPlan *plan, const GPtrArray *planners, RcPlanWeightsFunc weights, gpointer user_data,
                 const RcPlanParams *params, RcProgress *progress, gint64 end_us, RcMoney *raised, GError **error)
{
  g_autoptr (GArray) steps = g_array_new (FALSE, FALSE, sizeof (RcStep));
  guint left = 0;
  for (guint g = 0; g < plan->job->goods->len; g++)
    left += ((RcGoods *)g_ptr_array_index (plan->job->goods, g))->kind == RC_GOODS_CARPET;
  for (guint g = 0; g < plan->job->goods->len; g++)
    {
      const RcGoods *goods = g_ptr_array_index (plan->job->goods, g);
      RcPlanWeights  weigh = { 0 };
      gint64         now = rc_progress_get_us (progress);
      if (goods->kind != RC_GOODS_CARPET)
        continue;
      weights (goods, &weigh, user_data);
      RcStep step = { plan, planners, params, progress, NULL, NULL, goods, weigh.carpet_per_m, &raised[g], NULL };
      g_array_append_val (steps, step);
      if (params->seconds == 0)
        continue;
      rc_progress_tell (progress, goods->name);
      if (!choose_in_carpet (plan, goods, planners, weigh.carpet_per_m, params, progress, now + (end_us - now) / left--,
                             &raised[g], error))
        return FALSE;
      rc_progress_note_bound (progress, goods, raised[g]);
    }
  return params->seconds > 0 || take_steps (steps, choose_at_once, error);
}

/* Each area by itself: for a first answer some at a time, else in equal parts of half the time; of many, of a quarter:
 * what counts then is how they go together.
 */
static gboolean
plan_areas (RcPlan *plan, const GPtrArray *planners, double seconds, RcProgress *progress, GError **error)
{
  if (seconds == 0)
    return plan_areas_at_once (plan, planners, error);
  gint64 end_us
      = rc_progress_get_us (progress) + (gint64)(seconds / (planners->len > MOST_ALONE ? 4 : 2) * G_USEC_PER_SEC);
  for (guint i = 0; i < planners->len; i++)
    {
      rc_progress_tell (progress, ((const RcFloorArea *)g_ptr_array_index (plan->measure->areas, i))->name);
      RcAreaPlanner *planner = g_ptr_array_index (planners, i);
      double         left = (double)MAX (0, end_us - rc_progress_get_us (progress)) / G_USEC_PER_SEC;
      RcAreaPlan    *area_plan = rc_area_planner_plan (planner, left / (planners->len - i), error);
      if (area_plan == NULL)
        return FALSE;
      rc_progress_add_work (progress, rc_area_planner_get_work_us (planner));
      g_ptr_array_add (plan->areas, area_plan);
    }
  rc_progress_note_areas (progress);
  return TRUE;
}

static gboolean
fill_plan (RcPlan *plan, RcPlanWeightsFunc weights, gpointer user_data, const RcPlanParams *params,
           RcProgress *progress, GError **error)
{
  gint64 end_us = rc_progress_get_us (progress) + (gint64)(params->seconds * G_USEC_PER_SEC);
  g_autoptr (GPtrArray) planners = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_area_planner_free);
  g_autofree RcMoney *raised = g_new0 (RcMoney, plan->job->goods->len + 1);
  plan->house = rc_house_new (plan->measure, &plan->job->settings.closure, error);
  if (plan->house == NULL)
    return FALSE;
  for (guint i = 0; i < plan->measure->areas->len; i++)
    {
      const RcFloorArea *area = g_ptr_array_index (plan->measure->areas, i);
      RcPlanWeights      weigh = { 0 };
      weights (rc_job_find_goods (plan->job, area->carpet), &weigh, user_data);
      RcAreaPlanner *planner = rc_area_planner_new (plan->job, plan->house, area, &weigh, params, error);
      if (planner == NULL)
        return FALSE;
      g_ptr_array_add (planners, planner);
    }
  if (!plan_areas (plan, planners, params->seconds, progress, error)
      || !choose_together (plan, planners, weights, user_data, params, progress, end_us, raised, error))
    return FALSE;
  for (guint i = 0; i < plan->areas->len; i++)
    add_area (plan, g_ptr_array_index (plan->areas, i));
  for (guint i = 0; i < plan->measure->stairs->len; i++)
    if (!add_stair (plan, g_ptr_array_index (plan->measure->stairs, i), error))
      return FALSE;
  if (!add_cuttings (plan, weights, user_data, params, error))
    return FALSE;
  compute_lower_bound (plan, raised);
  rc_pin_results_fill (plan, weights, user_data, params);
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
  gboolean fine = fill_plan (plan, weights, user_data, progress.params, &progress, error);
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
