#include "cutting.h"

#include "option.h"
#include "rowcut-error.h"

/* What a metre of stock counts against a metre bought, in hundredths: what lies there is used before goods are bought,
 * and remnants first. Common practice, no source. */
#define STOCK_PERCENT   80
#define REMNANT_PERCENT 50
/* A metre of a roll kept for the job against the cheapest metre of other stock, in hundredths: whatever else there is,
 * it is used first. It is weighed no lower than that, so that keeping a roll does not make its carpet worth wasting.
 * Common practice, no source. */
#define KEPT_PERCENT 98

static void
add_cut (RcNestProblem *problem, const RcPiece *piece)
{
  RcNestCut *cut = g_new0 (RcNestCut, 1);
  *cut = rc_piece_get_cut (piece);
  cut->label = g_strdup_printf ("%u", piece->number);
  cut->match = g_strdup (cut->match);
  cut->across_match = g_strdup (cut->across_match);
  cut->group = g_strdup (cut->group);
  g_ptr_array_add (problem->cuts, cut);
}

RcNestProblem *
rc_cutting_new_problem (const RcGoods *carpet, const GPtrArray *pieces)
{
  RcNestProblem *problem = rc_nest_problem_new (rc_goods_get_usable_width (carpet));
  for (guint i = 0; i < pieces->len; i++)
    add_cut (problem, g_ptr_array_index (pieces, i));
  return problem;
}

/* 0: as wide as its goods. */
static RcLength
get_narrow_width (const RcRoll *stock, RcLength usable_width)
{
  return stock->width < usable_width ? stock->width : 0;
}

/* What a metre of it weighs, whomever it is kept for. */
static gint64
weigh_stock (const RcRoll *stock, RcLength usable_width, gint64 carpet_per_m)
{
  gint64   per_m = carpet_per_m * (stock->remnant ? REMNANT_PERCENT : STOCK_PERCENT) / 100;
  RcLength width = get_narrow_width (stock, usable_width);

  return width > 0 ? (gint64)((__int128)per_m * width / usable_width) : per_m; /* so much less carpet */
}

static gboolean
is_of (const RcRoll *stock, const RcGoods *carpet)
{
  return g_strcmp0 (stock->goods_id, carpet->id) == 0 && stock->length > 0;
}

/* What a metre kept for the job weighs. */
static gint64
weigh_kept (const RcJob *job, const RcGoods *carpet, gint64 carpet_per_m)
{
  gint64 cheapest = carpet_per_m * REMNANT_PERCENT / 100;
  for (guint i = 0; i < job->rolls->len; i++)
    {
      const RcRoll *stock = g_ptr_array_index (job->rolls, i);
      if (is_of (stock, carpet) && !stock->cut && stock->kept == 0)
        cheapest = MIN (cheapest, weigh_stock (stock, rc_goods_get_usable_width (carpet), carpet_per_m));
    }
  return cheapest * KEPT_PERCENT / 100;
}

static RcNestRoll *
stock_roll_new (const RcRoll *stock, RcLength usable_width, gint64 carpet_per_m, gint64 kept_per_m)
{
  RcNestRoll *roll = rc_nest_roll_new (stock->id, stock->lot, stock->length, 1);

  roll->width = get_narrow_width (stock, usable_width);
  roll->cost_per_m = stock->cut ? 0 : weigh_stock (stock, usable_width, carpet_per_m);
  if (stock->kept > 0)
    roll->cost_per_m = MIN (roll->cost_per_m, kept_per_m);
  for (guint i = 0; i < stock->flaws->len; i++)
    {
      const RcFlaw *flaw = &g_array_index (stock->flaws, RcFlaw, i);

      rc_nest_roll_add_flaw (roll, flaw->from, flaw->to);
    }
  return roll;
}

RcLength
rc_cutting_compute_safe_length (const RcGoods *carpet, const GPtrArray *pieces)
{
  if (carpet->repeat_length == 0)
    return 0;
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (rc_goods_get_usable_width (carpet));
  for (guint i = 0; i < pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (pieces, i);
      if (g_strcmp0 (piece->goods, carpet->id) == 0)
        g_ptr_array_add (problem->cuts,
                         rc_nest_cut_new (NULL, piece->cut_width, piece->cut_length + carpet->repeat_length, 1));
    }
  return rc_nest_compute_quick_length (problem);
}

GPtrArray *
rc_cutting_new_rolls (const RcJob *job, const RcGoods *carpet, gint64 carpet_per_m, GPtrArray *ids)
{
  GPtrArray *rolls = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_nest_roll_free);
  gint64     kept_per_m = weigh_kept (job, carpet, carpet_per_m);
  for (guint i = 0; i <= job->rolls->len; i++)
    {
      const RcRoll *stock = i < job->rolls->len ? g_ptr_array_index (job->rolls, i) : NULL;
      RcNestRoll   *roll;
      if (stock != NULL && !is_of (stock, carpet))
        continue;
      roll = stock != NULL ? stock_roll_new (stock, rc_goods_get_usable_width (carpet), carpet_per_m, kept_per_m)
                           : rc_nest_roll_new (NULL, NULL, 0, 1);
      if (stock == NULL)
        roll->cost_per_m = carpet_per_m;
      g_ptr_array_add (rolls, roll);
      if (ids != NULL)
        g_ptr_array_add (ids, g_strdup (roll->name));
    }
  return rolls;
}

static void
let_go_free (gpointer data)
{
  RcLetGo *let_go = data;
  g_free (let_go->reason);
  g_free (let_go);
}

/* Of the problem's rolls counted from 1; 0 when it is none of them. */
static guint
find_roll (const RcCutting *cutting, const char *id)
{
  for (guint i = 0; id != NULL && i < cutting->roll_ids->len; i++)
    if (g_strcmp0 (g_ptr_array_index (cutting->roll_ids, i), id) == 0)
      return i + 1;
  return 0;
}

/* Pins the cuts to their pieces' rolls. `rolls` gets the roll of each cut. Returns how many there are. */
static guint
hold_to_rolls (const RcCutting *cutting, const GPtrArray *pieces, GArray *rolls)
{
  guint n = 0;
  for (guint i = 0; i < pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (pieces, i);
      if (g_strcmp0 (piece->goods, cutting->goods->id) != 0)
        continue;
      guint roll = find_roll (cutting, piece->roll);
      ((RcNestCut *)g_ptr_array_index (cutting->problem->cuts, rolls->len))->pinned_roll = roll;
      g_array_append_val (rolls, roll);
      n += roll > 0;
    }
  return n;
}

/* Not all pins to rolls can be kept: takes them one after another and lets go of those that do not fit beside the ones
 * before. */
static void
let_go_of_rolls (RcCutting *cutting, const GArray *rolls)
{
  for (guint i = 0; i < rolls->len; i++)
    ((RcNestCut *)g_ptr_array_index (cutting->problem->cuts, i))->pinned_roll = 0;
  for (guint i = 0; i < rolls->len; i++)
    {
      RcNestCut *cut = g_ptr_array_index (cutting->problem->cuts, i);
      if (g_array_index (rolls, guint, i) == 0)
        continue;
      cut->pinned_roll = g_array_index (rolls, guint, i);
      g_autoptr (RcNestAnswer) answer = rc_nest_solve (cutting->problem, NULL);
      if (answer->status != RC_NEST_INFEASIBLE)
        continue;
      RcLetGo *let_go = g_new0 (RcLetGo, 1);
      let_go->piece = g_array_index (cutting->piece_numbers, guint, i);
      let_go->reason = g_strdup (answer->reason);
      g_ptr_array_add (cutting->let_go, let_go);
      cut->pinned_roll = 0;
    }
}

RcCutting *
rc_cutting_new (const RcJob *job, const RcGoods *carpet, const GPtrArray *pieces, gint64 carpet_per_m,
                const RcPlanParams *params, GError **error)
{
  RcCutting *cutting = g_new0 (RcCutting, 1);
  cutting->goods = carpet;
  cutting->problem = rc_nest_problem_new (rc_goods_get_usable_width (carpet));
  cutting->problem->buy_step = carpet->length_step;
  cutting->problem->buy_least = carpet->least_cut;
  cutting->problem->buy_most = carpet->full_roll;
  cutting->piece_numbers = g_array_new (FALSE, FALSE, sizeof (guint));
  cutting->roll_ids = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (pieces, i);
      if (g_strcmp0 (piece->goods, carpet->id) != 0)
        continue;
      add_cut (cutting->problem, piece);
      g_array_append_val (cutting->piece_numbers, piece->number);
    }
  cutting->safe_length = rc_cutting_compute_safe_length (carpet, pieces);
  g_ptr_array_unref (cutting->problem->rolls);
  cutting->problem->rolls = rc_cutting_new_rolls (job, carpet, carpet_per_m, cutting->roll_ids);

  RcNestParams nest_params = { .seed = params->seed, .cancellable = params->cancellable };
  nest_params.seconds = params->steady ? 0 : params->seconds;
  cutting->let_go = g_ptr_array_new_with_free_func (let_go_free);
  g_autoptr (GArray) rolls = g_array_new (FALSE, FALSE, sizeof (guint));
  guint  n_pinned = hold_to_rolls (cutting, pieces, rolls);
  gint64 end_us = g_get_monotonic_time () + (gint64)(nest_params.seconds * G_USEC_PER_SEC);
  cutting->answer = rc_nest_solve (cutting->problem, &nest_params);
  if (cutting->answer->status == RC_NEST_INFEASIBLE && n_pinned > 0)
    {
      let_go_of_rolls (cutting, rolls);
      rc_nest_answer_free (cutting->answer);
      nest_params.seconds = (double)MAX (0, end_us - g_get_monotonic_time ()) / G_USEC_PER_SEC;
      cutting->answer = rc_nest_solve (cutting->problem, &nest_params);
    }
  if (cutting->answer->status == RC_NEST_INFEASIBLE)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_INFEASIBLE, "%s: %s", carpet->name, cutting->answer->reason);
      g_clear_pointer (&cutting, rc_cutting_free);
    }
  return cutting;
}

const char *
rc_cutting_get_roll_id (const RcCutting *cutting, const RcNestUse *use)
{
  return use->source < cutting->roll_ids->len ? g_ptr_array_index (cutting->roll_ids, use->source) : NULL;
}

RcMoney
rc_cutting_get_cost (const RcCutting *cutting)
{
  __int128 cost = 0;
  for (guint i = 0; i < cutting->answer->rolls->len; i++)
    {
      const RcNestUse  *use = g_ptr_array_index (cutting->answer->rolls, i);
      const RcNestRoll *roll = g_ptr_array_index (cutting->problem->rolls, use->source);
      cost += (__int128)(roll->length > 0 ? use->used : use->length) * roll->cost_per_m;
    }
  return (RcMoney)((cost + RC_TICKS_PER_M / 2) / RC_TICKS_PER_M);
}

void
rc_cutting_keep (RcCutting *cutting, const RcPlan *previous)
{
  for (guint i = 0; previous != NULL && i < previous->cuttings->len; i++)
    {
      const RcCutting *before = g_ptr_array_index (previous->cuttings, i);
      if (g_strcmp0 (before->goods->id, cutting->goods->id) != 0
          || !rc_nest_check (cutting->problem, before->answer, NULL))
        continue;
      RcNestAnswer *found = cutting->answer;
      RcMoney       cost = rc_cutting_get_cost (cutting);
      cutting->answer = rc_nest_answer_copy (before->answer);
      cutting->answer->status = RC_NEST_TIME_LIMIT; /* of these cuts, what is proved is what was found now */
      cutting->answer->lower_bound = MIN (found->lower_bound, cutting->answer->used_length);
      if (rc_cutting_get_cost (cutting) < cost)
        {
          rc_nest_answer_free (found);
          return;
        }
      rc_nest_answer_free (cutting->answer);
      cutting->answer = found;
    }
}

void
rc_cutting_free (RcCutting *cutting)
{
  if (cutting == NULL)
    return;
  g_clear_pointer (&cutting->problem, rc_nest_problem_free);
  g_clear_pointer (&cutting->answer, rc_nest_answer_free);
  g_clear_pointer (&cutting->piece_numbers, g_array_unref);
  g_clear_pointer (&cutting->roll_ids, g_ptr_array_unref);
  g_clear_pointer (&cutting->let_go, g_ptr_array_unref);
  g_free (cutting);
}
