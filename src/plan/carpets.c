#include "carpets.h"

#include "areas-alone.h"
#include "cutting.h"
#include "known-bound.h"
#include "joint.h"
#include "option.h"
#include "outlook.h"
#include "stair-pieces.h"
#include "steps.h"

/* The part of the time for a carpet that is spent on how well it can be planned at most, and with many areas in it. */
#define OUTLOOK_SHARE      0.6
#define MANY_OUTLOOK_SHARE 0.6

/* A step of that, where work is counted. */
#define STEP_WORK_US 5000

/* Likewise the part spent on whether what that suggests is better than what was found. */
#define SETTLING_SHARE 0.3

/* With less time than this left for many areas the suggestion is not searched on from. */
#define LEAST_AGAIN_US 500000

/* One carpet of the plan. */
typedef struct
{
  const RcGoods *goods;
  gint64         per_m;            /* its price by the weights */
  guint          n_areas, n_rooms; /* laid in it; 1 where there is none */
  RcMoney       *raised;           /* as in rc_carpets_choose */
  RcCutting     *cutting;
} Carpet;

typedef struct
{
  RcPlan          *plan;
  const GPtrArray *planners;
  RcProgress      *progress;
  gint64           end_us;
  GArray          *carpets; /* of Carpet */
} Carpets;

static Carpet *
get_carpet (const Carpets *self, guint carpet)
{
  return &g_array_index (self->carpets, Carpet, carpet);
}

static const RcFloorArea *
get_area (const RcPlan *plan, guint area)
{
  return ((RcAreaPlan *)g_ptr_array_index (plan->areas, area))->area;
}

static void
add_carpet (Carpets *self, guint goods, RcMoney *raised)
{
  Carpet        carpet = { .goods = g_ptr_array_index (self->plan->job->goods, goods), .raised = raised };
  RcPlanWeights weights = { 0 };
  self->progress->weights (carpet.goods, &weights, self->progress->weights_data);
  carpet.per_m = weights.carpet_per_m;
  for (guint i = 0; i < self->plan->areas->len; i++)
    {
      const RcFloorArea *area = get_area (self->plan, i);
      if (g_strcmp0 (area->carpet, carpet.goods->id) != 0)
        continue;
      carpet.n_areas++;
      carpet.n_rooms += area->rooms->len;
    }
  carpet.n_areas = MAX (1, carpet.n_areas);
  carpet.n_rooms = MAX (1, carpet.n_rooms);
  g_array_append_val (self->carpets, carpet);
}

/* When the step for a carpet is over: those under way at a time share the time left with those not begun, by how much
 * is laid in each. */
static gint64
find_end (const Carpets *self, guint index)
{
  gint64 now = rc_progress_get_us (self->progress), left = MAX (0, self->end_us - now);
  guint  at_once = rc_steps_count_at_once (self->carpets->len), own = get_carpet (self, index)->n_rooms, all = own;
  for (guint i = index + 1; i < self->carpets->len; i++)
    all += get_carpet (self, i)->n_rooms;
  return now + MIN (left, left * at_once * own / all);
}

/* --- choosing --- */

/* The part of `all` us from now on, counted from the start of that time. */
static gint64
get_part_of (gint64 start_us, gint64 all_us, double part)
{
  return start_us + (gint64)((double)MAX (0, all_us) * part);
}

/* With an effort so many steps, which count as the work done. */
static RcNestClock
make_outlook_clock (RcProgress *progress, gint64 end_us)
{
  const RcPlanParams *params = progress->params;
  RcNestClock         clock = { end_us, G_MAXUINT64, params->cancellable };
  if (params->effort == 0)
    return clock;
  gint64 budget_us = MAX (0, end_us - rc_progress_get_us (progress));
  clock.end_us = G_MAXINT64;
  clock.steps_left = (guint64)(budget_us / STEP_WORK_US);
  rc_progress_add_work (progress, budget_us);
  return clock;
}

static gboolean
choose_jointly (const Carpets *self, const Carpet *carpet, const GPtrArray *stairs, gboolean deep, gint64 end_us,
                GError **error)
{
  return rc_joint_choose (self->plan, carpet->goods, self->planners, stairs, carpet->per_m, deep, end_us,
                          self->progress->params->cancellable, self->progress, error);
}

/* Whether what the outlook suggests was taken, after two cuttings until `end_us`. */
static gboolean
settle (const Carpets *self, const Carpet *carpet, const GPtrArray *stairs, GPtrArray *suggested, gint64 end_us)
{
  RcPlanParams params = *self->progress->params;
  params.seconds = (double)MAX (0, end_us - rc_progress_get_us (self->progress)) / G_USEC_PER_SEC;
  return rc_outlook_settle (self->plan, carpet->goods, stairs, carpet->per_m, suggested, &params);
}

/* What is chosen now of the areas in the carpet, as if it were suggested. (transfer full) */
static GPtrArray *
copy_chosen (const RcPlan *plan, const RcGoods *carpet)
{
  GPtrArray *options = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_option_free);
  for (guint i = 0; i < plan->areas->len; i++)
    {
      gboolean is_in = g_strcmp0 (get_area (plan, i)->carpet, carpet->id) == 0;
      g_ptr_array_add (options,
                       is_in ? rc_option_copy (rc_area_plan_get_chosen (g_ptr_array_index (plan->areas, i))) : NULL);
    }
  return options;
}

/* With the suggestion, where it is better, and time: searched on from there, and back to it where that is worse. */
static gboolean
search_on (const Carpets *self, const Carpet *carpet, const GPtrArray *stairs, GPtrArray *suggested, gint64 end_us,
           GError **error)
{
  RcProgress *progress = self->progress;
  gint64      now = rc_progress_get_us (progress), left = MAX (0, end_us - now);
  gboolean    is_long = left > LEAST_AGAIN_US;
  if (!settle (self, carpet, stairs, suggested, is_long ? get_part_of (now, left, SETTLING_SHARE) : end_us))
    return choose_jointly (self, carpet, stairs, TRUE, end_us, error);
  if (!is_long)
    return TRUE;
  g_autoptr (GPtrArray) before = copy_chosen (self->plan, carpet->goods);
  if (!choose_jointly (self, carpet, stairs, TRUE, get_part_of (now, left, 1 - SETTLING_SHARE), error))
    return FALSE;
  settle (self, carpet, stairs, before, end_us);
  return TRUE;
}

/* TRUE if no choice costs less than what is chosen now. */
static gboolean
is_proved (const Carpets *self, const Carpet *carpet, const GPtrArray *stairs)
{
  RcMoney cost = rc_outlook_weigh_chosen (self->plan, carpet->goods, stairs, carpet->per_m, self->progress->params);
  return cost <= *carpet->raised + 1; /* a bound is rounded down */
}

/* All that is laid in one carpet, until `end_us`. Where that is much the suggestion of the outlook is mostly better
 * than what a search finds, which then is spared. */
static gboolean
search_in (const Carpets *self, const Carpet *carpet, const GPtrArray *stairs, gint64 end_us, GError **error)
{
  RcProgress *progress = self->progress;
  gint64      now = rc_progress_get_us (progress), all = end_us - now;
  gboolean    many = carpet->n_areas > RC_MOST_ALONE;
  RcNestClock clock = make_outlook_clock (progress, get_part_of (now, all, many ? MANY_OUTLOOK_SHARE : OUTLOOK_SHARE));
  g_autoptr (GPtrArray) suggested = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_option_free);
  if (!rc_outlook_make (self->plan, carpet->goods, self->planners, stairs, carpet->per_m, &clock, carpet->raised,
                        suggested, error))
    return FALSE;
  rc_progress_note_bound (progress, carpet->goods, *carpet->raised);
  if (many)
    return choose_jointly (self, carpet, stairs, FALSE, end_us, error)
           && search_on (self, carpet, stairs, suggested, end_us, error);
  if (!choose_jointly (self, carpet, stairs, FALSE, end_us, error))
    return FALSE;
  if (is_proved (self, carpet, stairs))
    {
      g_ptr_array_set_size (suggested, 0); /* bounds are raised all the same */
      settle (self, carpet, stairs, suggested, end_us);
      return TRUE;
    }
  if (!choose_jointly (self, carpet, stairs, TRUE, get_part_of (now, all, 1 - SETTLING_SHARE), error))
    return FALSE;
  settle (self, carpet, stairs, suggested, end_us);
  return TRUE;
}

/* For a first answer nothing is chosen anew where it is what it was: an edit of the offer leaves the best plan alone.
 */
static gboolean
is_chosen (const Carpets *self, const Carpet *carpet)
{
  g_autoptr (GPtrArray) rolls = rc_cutting_new_rolls (self->plan->job, carpet->goods, carpet->per_m, NULL);
  return rc_known_choice_stands (self->plan, carpet->goods, rolls, self->progress->params->previous);
}

static gboolean
choose_in (const Carpets *self, const Carpet *carpet, gint64 end_us, GError **error)
{
  g_autoptr (GPtrArray) stairs = rc_stairs_list_pieces (self->plan, carpet->goods, error);
  if (stairs == NULL)
    return FALSE;
  if (self->progress->params->seconds > 0)
    return search_in (self, carpet, stairs, end_us, error);
  return is_chosen (self, carpet) || choose_jointly (self, carpet, stairs, FALSE, end_us, error);
}

/* For a first answer, or by time: some at a time. */
static void
choose_beside_others (guint index, gpointer user_data, GError **error)
{
  const Carpets *self = user_data;
  const Carpet  *carpet = get_carpet (self, index);
  rc_progress_tell (self->progress, carpet->goods->name);
  choose_in (self, carpet, find_end (self, index), error);
}

/* One after another, as work is counted. */
static gboolean
choose_in_turn (const Carpets *self, GError **error)
{
  for (guint i = 0; i < self->carpets->len; i++)
    {
      const Carpet *carpet = get_carpet (self, i);
      gint64        now = rc_progress_get_us (self->progress);
      rc_progress_tell (self->progress, carpet->goods->name);
      if (!choose_in (self, carpet, now + (self->end_us - now) / (self->carpets->len - i), error))
        return FALSE;
    }
  return TRUE;
}

/* Those in which least is laid come first: the time that they do not need is the others'. */
static int
compare_rooms (gconstpointer a, gconstpointer b)
{
  const Carpet *p = a, *q = b;
  return (p->n_rooms > q->n_rooms) - (p->n_rooms < q->n_rooms);
}

gboolean
rc_carpets_choose (RcPlan *plan, const GPtrArray *planners, RcProgress *progress, gint64 end_us, RcMoney *raised,
                   GError **error)
{
  g_autoptr (GArray) carpets = g_array_new (FALSE, FALSE, sizeof (Carpet));
  Carpets self = { plan, planners, progress, end_us, carpets };
  for (guint g = 0; g < plan->job->goods->len; g++)
    if (((RcGoods *)g_ptr_array_index (plan->job->goods, g))->kind == RC_GOODS_CARPET)
      add_carpet (&self, g, &raised[g]);
  g_array_sort (carpets, compare_rooms);
  if (progress->params->effort > 0)
    return choose_in_turn (&self, error);
  return rc_steps_take (carpets->len, choose_beside_others, &self, error);
}

/* --- cutting --- */

static gboolean
is_used (const RcPlan *plan, const RcGoods *goods)
{
  for (guint i = 0; i < plan->pieces->len; i++)
    if (g_strcmp0 (((RcPiece *)g_ptr_array_index (plan->pieces, i))->goods, goods->id) == 0)
      return TRUE;
  return FALSE;
}

static void
cut (guint index, gpointer user_data, GError **error)
{
  const Carpets *self = user_data;
  Carpet        *carpet = get_carpet (self, index);
  RcPlanParams   params = *self->progress->params;
  if (params.seconds > 0)
    params.seconds = (double)(find_end (self, index) - rc_progress_get_us (self->progress)) / G_USEC_PER_SEC;
  carpet->cutting = rc_cutting_new (self->plan->job, carpet->goods, self->plan->pieces, carpet->per_m, &params, error);
  if (carpet->cutting != NULL)
    rc_cutting_keep (carpet->cutting, params.previous);
}

static void
take_cutting (RcPlan *plan, RcCutting *cutting)
{
  g_ptr_array_add (plan->cuttings, cutting);
  plan->cost += rc_cutting_get_cost (cutting);
  plan->carpet_length += cutting->answer->used_length;
  plan->carpet_area
      += rc_area_from_rectangle (rc_goods_get_usable_width (cutting->goods), cutting->answer->used_length);
}

gboolean
rc_carpets_cut (RcPlan *plan, RcProgress *progress, gint64 end_us, GError **error)
{
  g_autoptr (GArray) carpets = g_array_new (FALSE, FALSE, sizeof (Carpet));
  Carpets self = { plan, NULL, progress, end_us, carpets };
  for (guint g = 0; g < plan->job->goods->len; g++)
    {
      const RcGoods *goods = g_ptr_array_index (plan->job->goods, g);
      if (goods->kind == RC_GOODS_CARPET && is_used (plan, goods))
        add_carpet (&self, g, NULL);
    }
  gboolean fine = rc_steps_take (carpets->len, cut, &self, error);
  for (guint i = 0; i < carpets->len; i++)
    if (get_carpet (&self, i)->cutting != NULL)
      take_cutting (plan, get_carpet (&self, i)->cutting);
  if (plan->carpet_area > 0)
    plan->waste_ppm = (gint64)(((__int128)(plan->carpet_area - plan->covered_area) * 1000000 + plan->carpet_area / 2)
                               / plan->carpet_area);
  return fine;
}
