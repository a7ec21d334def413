#include "pin-result.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "area-plan.h"
#include "cutting.h"
#include "option.h"
#include "pin-kept.h"

static void
pin_result_clear (gpointer data)
{
  g_free (((RcPinResult *)data)->unmet);
}

static const RcPin *
get_pin (const RcFloorArea *area, guint index)
{
  return g_ptr_array_index (area->pins, index);
}

static const char *
get_room_name (const RcMeasure *measure, const RcPin *pin)
{
  const RcRoom *room = rc_measure_find_room (measure, pin->room);
  return room != NULL ? rc_room_get_name (room) : pin->room;
}

static char *
dup_kind_label (const RcPin *pin)
{
  switch (pin->kind)
    {
    case RC_PIN_SEAM:
      return g_strdup (_ ("seam line"));
    case RC_PIN_SPLIT:
      return g_strdup (_ ("split of a fill"));
    case RC_PIN_NO_SEAMS:
      return g_strdup (_ ("floor without seams"));
    case RC_PIN_ROLL:
    case RC_N_PIN_KINDS:
    default:
      return g_strdup_printf (_ ("piece on roll %s"), pin->roll);
    }
}

/* "Pin 2 (seam line in Living room)", at the start of a sentence or further on */
static char *
describe (const RcMeasure *measure, const RcFloorArea *area, guint index, gboolean first)
{
  const RcPin     *pin = get_pin (area, index);
  g_autofree char *kind = dup_kind_label (pin);

  return g_strdup_printf (first ? _ ("Pin %u (%s in %s)") : _ ("pin %u (%s in %s)"), index + 1, kind,
                          get_room_name (measure, pin));
}

/* --- the area planned otherwise --- */

/* The area's cheapest plan by itself, found at once; its first option. NULL where there is none. */
static RcAreaPlan *
plan_at_once (const RcPlan *plan, const RcFloorArea *area, const RcPlanWeights *weights)
{
  RcPlanParams at_once = { .steady = TRUE };
  g_autoptr (RcAreaPlanner) planner = rc_area_planner_new (plan->job, plan->house, area, weights, &at_once, NULL);

  return planner != NULL ? rc_area_planner_plan (planner, FALSE, 0, NULL) : NULL;
}

/* Index as in RcAreaPlan.pins. */
static RcFloorArea *
dup_without (const RcFloorArea *area, guint index)
{
  RcFloorArea *without = rc_floor_area_copy (area);
  if (index < area->pins->len)
    g_ptr_array_remove_index (without->pins, index);
  else
    without->pile_degrees = -1;
  return without;
}

static RcSite *
make_site (const RcPlan *plan, const RcFloorArea *area, const RcPlanWeights *weights, const RcOption *option)
{
  return rc_site_new (plan->job, plan->house, area, rc_job_find_goods (plan->job, area->carpet), weights,
                      90 - option->pile_degrees);
}

/* --- what stands against a pin --- */

/* TRUE if a plan of the area keeps its pin of that index. */
static gboolean
keeps (const RcPlan *plan, const RcFloorArea *area, const RcPlanWeights *weights, guint index)
{
  g_autoptr (RcAreaPlan) area_plan = plan_at_once (plan, area, weights);
  const RcOption *option = area_plan != NULL ? g_ptr_array_index (area_plan->options, 0) : NULL;
  g_autoptr (RcSite) site = option != NULL ? make_site (plan, area, weights, option) : NULL;
  const RcSitePin *pin = site != NULL ? rc_pin_find_in_site (site, index) : NULL;

  return pin != NULL && rc_pin_is_kept (site, option, pin);
}

/* What is fixed that the pin would be kept without: as in RcAreaPlan.pins, the pile's direction last; one more than
 * those: there is no one such. */
static guint
find_against (const RcPlan *plan, const RcFloorArea *area, const RcPlanWeights *weights, guint index)
{
  for (guint other = 0; other <= area->pins->len; other++)
    {
      g_autoptr (RcFloorArea) without = NULL;

      if (other == index || (other == area->pins->len && area->pile_degrees < 0))
        continue;
      without = dup_without (area, other);
      if (keeps (plan, without, weights, other < index ? index - 1 : index))
        return other;
    }
  return area->pins->len + 1;
}

/* TRUE if the pin would be kept if nothing else were fixed; asked where it is not without any one of those. */
static gboolean
is_kept_alone (const RcPlan *plan, const RcFloorArea *area, const RcPlanWeights *weights, guint index)
{
  g_autoptr (RcFloorArea) alone = NULL;

  if (area->pins->len + (area->pile_degrees >= 0) <= 2)
    return FALSE; /* that one is all there was */
  alone = rc_floor_area_copy (area);
  g_ptr_array_remove_range (alone->pins, index + 1, alone->pins->len - index - 1);
  g_ptr_array_remove_range (alone->pins, 0, index);
  alone->pile_degrees = -1;
  return keeps (plan, alone, weights, 0);
}

/* --- what stands against a pin, in a large area --- */

enum
{
  MOST_ROOMS = 6, /* of an area that is planned as a whole to find that out */
  MOST_ASKED = 12 /* other pins, of a larger one */
};

/* The rooms of the pins `a` and `b` (the same: one) with nothing else pinned but, unless `any_pile`, the pile. */
static RcFloorArea *
dup_rooms_of (const RcFloorArea *area, guint a, guint b, gboolean any_pile)
{
  RcFloorArea *rooms = rc_floor_area_copy (area);
  g_ptr_array_set_size (rooms->pins, 0);
  for (guint i = 0; i < area->pins->len; i++)
    if (i == a || i == b)
      g_ptr_array_add (rooms->pins, rc_pin_copy (get_pin (area, i)));
  for (guint i = rooms->rooms->len; i-- > 0;)
    if (g_strcmp0 (g_ptr_array_index (rooms->rooms, i), get_pin (area, a)->room) != 0
        && g_strcmp0 (g_ptr_array_index (rooms->rooms, i), get_pin (area, b)->room) != 0)
      g_ptr_array_remove_index (rooms->rooms, i);
  if (any_pile)
    rooms->pile_degrees = -1;
  return rooms;
}

/* TRUE if the pin is not kept there. */
static gboolean
stand_against (const RcPlan *plan, const RcFloorArea *area, const RcPlanWeights *weights, guint index, guint other,
               gboolean any_pile)
{
  g_autoptr (RcFloorArea) rooms = dup_rooms_of (area, index, other, any_pile);
  return !keeps (plan, rooms, weights, other < index);
}

/* As find_against, in the pins' rooms alone, those pins in its room before the others: an area of many rooms takes too
 * long to plan for each of its pins. *alone: it would be kept if nothing else were fixed. */
static guint
find_against_in_rooms (const RcPlan *plan, const RcFloorArea *area, const RcPlanWeights *weights, guint index,
                       gboolean *alone)
{
  guint n_asked = 0;
  *alone = !stand_against (plan, area, weights, index, index, TRUE);
  if (!*alone)
    return area->pins->len + 1;
  if (area->pile_degrees >= 0 && stand_against (plan, area, weights, index, index, FALSE))
    return area->pins->len;
  for (int elsewhere = 0; elsewhere < 2; elsewhere++)
    for (guint other = 0; other < area->pins->len && n_asked < MOST_ASKED; other++)
      {
        gboolean is_elsewhere = g_strcmp0 (get_pin (area, index)->room, get_pin (area, other)->room) != 0;
        if (other == index || is_elsewhere != elsewhere)
          continue;
        n_asked++;
        if (stand_against (plan, area, weights, index, other, FALSE))
          return other;
      }
  return area->pins->len + 1;
}

static const char *
get_plain_reason (RcPinKind kind)
{
  switch (kind)
    {
    case RC_PIN_SEAM:
      return _ ("no side seam can lie there");
    case RC_PIN_SPLIT:
      return _ ("its cross seams do not lie in one fill");
    case RC_PIN_NO_SEAMS:
      return _ ("there is no way to lay the carpet without a seam there");
    case RC_PIN_ROLL:
    case RC_N_PIN_KINDS:
    default:
      return _ ("no piece lies there");
    }
}

/* Two seam lines; rooms do not turn, so their own coordinates do. */
static gboolean
are_parallel (const RcPin *a, const RcPin *b)
{
  const RcPoint *a0 = rc_ring_get (a->points, 0), *a1 = rc_ring_get (a->points, 1);
  const RcPoint *b0 = rc_ring_get (b->points, 0), *b1 = rc_ring_get (b->points, 1);
  double         ax = (double)(a1->x - a0->x), ay = (double)(a1->y - a0->y);
  double         bx = (double)(b1->x - b0->x), by = (double)(b1->y - b0->y);

  return fabs (ax * by - ay * bx) <= 0.001 * hypot (ax, ay) * hypot (bx, by);
}

static char *
dup_unmet (const RcPlan *plan, const RcFloorArea *area, const RcPlanWeights *weights, guint index)
{
  g_autofree char *what = describe (plan->measure, area, index, TRUE), *against = NULL;
  const gboolean   is_large = area->rooms->len > MOST_ROOMS;
  gboolean         alone = FALSE;
  const guint      other = is_large ? find_against_in_rooms (plan, area, weights, index, &alone)
                                    : find_against (plan, area, weights, index);
  const RcPinKind  kind = get_pin (area, index)->kind;

  if (other == area->pins->len)
    return g_strdup_printf (_ ("%s is not kept: it contradicts the pinned pile direction"), what);
  if (other > area->pins->len)
    return g_strdup_printf (_ ("%s is not kept: %s"), what,
                            alone || (!is_large && is_kept_alone (plan, area, weights, index))
                                ? _ ("it contradicts the other pins together")
                                : get_plain_reason (kind));
  against = describe (plan->measure, area, other, FALSE);
  if (kind == RC_PIN_SEAM && get_pin (area, other)->kind == RC_PIN_SEAM)
    return g_strdup_printf (
        are_parallel (get_pin (area, index), get_pin (area, other))
            ? _ ("%s is not kept: it contradicts %s, for seams lie a carpet's width apart or a multiple of it")
            : _ ("%s is not kept: it contradicts %s, for seams run with the pile, which leans one way in an area"),
        what, against);
  return g_strdup_printf (_ ("%s is not kept: it contradicts %s"), what, against);
}

static const char *
get_lot (const RcJob *job, const RcPin *pin)
{
  const RcRoll *roll = rc_rolls_find (job->rolls, pin->roll);

  return roll != NULL ? roll->lot : NULL;
}

/* Of a pin whose roll was let go of for that reason: pieces of an area are of one dye lot. */
static char *
dup_let_go (const RcPlan *plan, const RcFloorArea *area, guint index, const char *reason)
{
  g_autofree char *what = describe (plan->measure, area, index, TRUE);
  const RcPin     *pin = get_pin (area, index);

  for (guint i = 0; i < area->pins->len; i++)
    {
      const RcPin *other = get_pin (area, i);

      if (other->kind == RC_PIN_ROLL && g_strcmp0 (get_lot (plan->job, pin), get_lot (plan->job, other)) != 0)
        {
          g_autofree char *against = describe (plan->measure, area, i, FALSE);
          return g_strdup_printf (
              _ ("%s is not kept: it contradicts %s, for the rolls are of two dye lots and an area is cut from one"),
              what, against);
        }
    }
  return g_strdup_printf (_ ("%s is not kept: roll %s does not do (%s)"), what, pin->roll, reason);
}

/* --- what a pin costs --- */

/* FALSE where there is no plan of the area. */
static gboolean
find_cost (const RcPlan *plan, const RcFloorArea *area, const RcPlanWeights *weights, RcMoney *cost)
{
  g_autoptr (RcAreaPlan) area_plan = plan_at_once (plan, area, weights);
  if (area_plan == NULL)
    return FALSE;
  *cost = ((RcOption *)g_ptr_array_index (area_plan->options, 0))->cost;
  return TRUE;
}

static gboolean
is_over (const RcProgress *progress, gint64 end_us)
{
  return rc_progress_get_us (progress) > end_us || g_cancellable_is_cancelled (progress->params->cancellable);
}

static void
find_costs (const RcPlan *plan, RcAreaPlan *area_plan, const RcPlanWeights *weights, const RcProgress *progress,
            gint64 end_us)
{
  const RcFloorArea *area = area_plan->area;
  RcMoney            with, without;
  if (is_over (progress, end_us) || !find_cost (plan, area, weights, &with))
    return;
  for (guint i = 0; i < area_plan->pins->len && !is_over (progress, end_us); i++)
    {
      RcPinResult *result = &g_array_index (area_plan->pins, RcPinResult, i);
      gboolean     is_there = i < area->pins->len ? get_pin (area, i)->kind != RC_PIN_ROLL : area->pile_degrees >= 0;
      if (!is_there)
        continue;
      RcFloorArea *freed = dup_without (area, i);
      result->cost_known = find_cost (plan, freed, weights, &without);
      /* A quick search is no proof: with a pin it may find what it missed without. */
      if (result->cost_known)
        result->cost = MAX (0, with - without);
      rc_floor_area_free (freed);
    }
}

/* What the carpet costs more because a piece is held to its roll. */
static void
find_roll_cost (const RcPlan *plan, const RcCutting *cutting, const RcAreaPlan *area_plan, guint index,
                gint64 carpet_per_m)
{
  RcPlanParams at_once = { .steady = TRUE };
  g_autoptr (GPtrArray) pieces = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_piece_free);
  RcPinResult *result = &g_array_index (area_plan->pins, RcPinResult, index);
  for (guint i = 0; i < plan->pieces->len; i++)
    g_ptr_array_add (pieces, rc_piece_copy (g_ptr_array_index (plan->pieces, i)));
  RcCutting *with = rc_cutting_new (plan->job, cutting->goods, pieces, carpet_per_m, &at_once, NULL);
  for (guint i = 0; i < pieces->len; i++)
    {
      RcPiece *piece = g_ptr_array_index (pieces, i);
      if (g_strcmp0 (piece->area, area_plan->area->id) == 0 && piece->roll != NULL && piece->roll_pin == index)
        g_clear_pointer (&piece->roll, g_free);
    }
  RcCutting *without = rc_cutting_new (plan->job, cutting->goods, pieces, carpet_per_m, &at_once, NULL);
  if (with != NULL && without != NULL)
    {
      result->cost_known = TRUE;
      result->cost = MAX (0, rc_cutting_get_cost (with) - rc_cutting_get_cost (without));
    }
  rc_cutting_free (with);
  rc_cutting_free (without);
}

/* --- all of them --- */

char *
rc_pin_dup_label (const RcMeasure *measure, const RcFloorArea *area, guint index)
{
  if (index < area->pins->len)
    return describe (measure, area, index, TRUE);
  return area->pile_degrees >= 0 ? g_strdup (_ ("Pile direction")) : NULL;
}

static void
note_let_go (const RcPlan *plan, const RcAreaPlan *area_plan)
{
  for (guint c = 0; c < plan->cuttings->len; c++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, c);
      for (guint i = 0; i < cutting->let_go->len; i++)
        {
          const RcLetGo *let_go = g_ptr_array_index (cutting->let_go, i);
          const RcPiece *piece = rc_plan_find_piece (plan, let_go->piece);
          if (piece == NULL || g_strcmp0 (piece->area, area_plan->area->id) != 0)
            continue;
          RcPinResult *result = &g_array_index (area_plan->pins, RcPinResult, piece->roll_pin);
          g_free (result->unmet);
          result->unmet = dup_let_go (plan, area_plan->area, piece->roll_pin, let_go->reason);
        }
    }
}

static void
fill_area (const RcPlan *plan, RcAreaPlan *area_plan, const RcPlanWeights *weights, const RcProgress *progress,
           gint64 end_us)
{
  const RcFloorArea *area = area_plan->area;
  const RcOption    *option = rc_area_plan_get_chosen (area_plan);
  g_autoptr (RcSite) site = make_site (plan, area, weights, option);
  area_plan->pins = g_array_new (FALSE, TRUE, sizeof (RcPinResult));
  g_array_set_clear_func (area_plan->pins, pin_result_clear);
  g_array_set_size (area_plan->pins, area->pins->len + 1);
  for (guint i = 0; i < area->pins->len; i++)
    {
      const RcSitePin *pin = rc_pin_find_in_site (site, i);
      if (pin != NULL && !rc_pin_is_kept (site, option, pin))
        g_array_index (area_plan->pins, RcPinResult, i).unmet = dup_unmet (plan, area, weights, i);
    }
  note_let_go (plan, area_plan);
  if (progress->params->seconds <= 0)
    return;
  find_costs (plan, area_plan, weights, progress, end_us);
  for (guint i = 0; i < area->pins->len && !is_over (progress, end_us); i++)
    for (guint c = 0; c < plan->cuttings->len && get_pin (area, i)->kind == RC_PIN_ROLL; c++)
      {
        const RcCutting *cutting = g_ptr_array_index (plan->cuttings, c);
        if (g_strcmp0 (cutting->goods->id, area->carpet) == 0)
          find_roll_cost (plan, cutting, area_plan, i, weights->carpet_per_m);
      }
}

void
rc_pin_results_fill (RcPlan *plan, const RcProgress *progress, gint64 end_us)
{
  for (guint i = 0; i < plan->areas->len; i++)
    {
      RcAreaPlan        *area_plan = g_ptr_array_index (plan->areas, i);
      const RcFloorArea *area = area_plan->area;
      RcPlanWeights      weigh = { 0 };
      if (area->pins->len == 0 && area->pile_degrees < 0)
        continue;
      progress->weights (rc_job_find_goods (plan->job, area->carpet), &weigh, progress->weights_data);
      fill_area (plan, area_plan, &weigh, progress, end_us);
    }
}
