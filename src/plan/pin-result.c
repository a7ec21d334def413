#include "pin-result.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "area-plan.h"
#include "cutting.h"
#include "option.h"
#include "site-pins.h"

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

static const char *
get_kind_label (RcPinKind kind)
{
  switch (kind)
    {
    case RC_PIN_SEAM:
      return _ ("seam line");
    case RC_PIN_SPLIT:
      return _ ("split of a fill");
    case RC_PIN_NO_SEAMS:
      return _ ("floor without seams");
    case RC_PIN_ROLL:
    case RC_N_PIN_KINDS:
    default:
      return _ ("piece on a roll");
    }
}

/* "Pin 2 (seam line in Living room)", at the start of a sentence or further on */
static char *
describe (const RcMeasure *measure, const RcFloorArea *area, guint index, gboolean first)
{
  const RcPin *pin = get_pin (area, index);
  return g_strdup_printf (first ? _ ("Pin %u (%s in %s)") : _ ("pin %u (%s in %s)"), index + 1,
                          get_kind_label (pin->kind), get_room_name (measure, pin));
}

/* The pin's points where they lie in the frame of the option's pile; the site is made for that. */
static const RcSitePin *
find_site_pin (const RcSite *site, guint index)
{
  for (guint i = 0; i < site->pins->len; i++)
    if (((RcSitePin *)g_ptr_array_index (site->pins, i))->index == index)
      return g_ptr_array_index (site->pins, i);
  return NULL;
}

/* A seam of the option in the frame, turned upright or level to the tick. */
static void
get_seam (const RcSite *site, const RcSeam *seam, RcPoint *from, RcPoint *to)
{
  *from = rc_point_rotate (seam->from, site->turn_degrees);
  *to = rc_point_rotate (seam->to, site->turn_degrees);
  if (ABS (from->x - to->x) <= RC_SLIVER)
    to->x = from->x;
  if (ABS (from->y - to->y) <= RC_SLIVER)
    to->y = from->y;
}

static gboolean
lies_on (RcPoint from, RcPoint to, RcPoint point)
{
  return point.x >= MIN (from.x, to.x) - RC_SLIVER && point.x <= MAX (from.x, to.x) + RC_SLIVER
         && point.y >= MIN (from.y, to.y) - RC_SLIVER && point.y <= MAX (from.y, to.y) + RC_SLIVER;
}

/* TRUE if a seam of that kind of the option lies at the point. */
static gboolean
has_seam_at (const RcSite *site, const RcOption *option, RcSeamKind kind, RcPoint point)
{
  for (guint i = 0; i < option->seams->len; i++)
    {
      const RcSeam *seam = g_ptr_array_index (option->seams, i);
      RcPoint       from, to;
      get_seam (site, seam, &from, &to);
      if (seam->kind == kind && lies_on (from, to, point))
        return TRUE;
    }
  return FALSE;
}

static RcPoint
get_middle (const RcSitePin *pin)
{
  const RcPoint *a = rc_ring_get (pin->points, 0), *b = rc_ring_get (pin->points, 1);
  return (RcPoint){ a->x + (b->x - a->x) / 2, a->y + (b->y - a->y) / 2 };
}

static gboolean
is_along_pile (const RcSitePin *pin)
{
  return ABS (rc_ring_get (pin->points, 0)->x - rc_ring_get (pin->points, 1)->x) <= RC_SLIVER;
}

/* --- whether a pin is kept --- */

static gboolean
is_kept (const RcSite *site, const RcOption *option, const RcSitePin *pin)
{
  switch (pin->pin->kind)
    {
    case RC_PIN_SEAM:
      return is_along_pile (pin) && has_seam_at (site, option, RC_SEAM_SIDE, get_middle (pin));
    case RC_PIN_SPLIT:
      for (guint i = 1; i < pin->points->len; i++)
        if (!has_seam_at (site, option, RC_SEAM_CROSS, *rc_ring_get (pin->points, i)))
          return FALSE;
      return TRUE;
    case RC_PIN_NO_SEAMS:
      for (guint i = 0; i < option->seams->len; i++)
        {
          RcPoint from, to;
          get_seam (site, g_ptr_array_index (option->seams, i), &from, &to);
          const RcSitePin *through = rc_site_find_kept_floor (site, from, to);
          if (through == pin)
            return FALSE;
        }
      return TRUE;
    case RC_PIN_ROLL:
      for (guint i = 0; i < option->pieces->len; i++)
        {
          const RcPiece *piece = g_ptr_array_index (option->pieces, i);
          if (piece->roll != NULL && piece->roll_pin == pin->index)
            return TRUE;
        }
      return FALSE;
    case RC_N_PIN_KINDS:
    default:
      return TRUE;
    }
}

/* --- which pin stands against it --- */

static gboolean
contradicts (const RcSite *site, const RcOption *option, const RcSitePin *pin, const RcSitePin *other)
{
  RcPinKind kind = pin->pin->kind, with = other->pin->kind;
  if (kind == RC_PIN_SEAM && with == RC_PIN_SEAM)
    return is_along_pile (pin) != is_along_pile (other)
           || rc_wrap (rc_ring_get (pin->points, 0)->x - rc_ring_get (other->points, 0)->x, site->strip_width) != 0;
  if (kind == RC_PIN_SPLIT && with == RC_PIN_SPLIT)
    for (guint i = 0; i < option->pieces->len; i++)
      {
        const RcPiece *piece = g_ptr_array_index (option->pieces, i);
        RcPoint        here = rc_point_rotate (*rc_ring_get (pin->points, 0), -site->turn_degrees);
        if (rc_region_locate (piece->outline, here) < 0)
          continue;
        for (guint k = 0; k < option->pieces->len; k++)
          {
            const RcPiece *mate = g_ptr_array_index (option->pieces, k);
            RcPoint        there = rc_point_rotate (*rc_ring_get (other->points, 0), -site->turn_degrees);
            if ((mate == piece || (mate->fill == piece->fill && piece->fill > 0))
                && rc_region_locate (mate->outline, there) >= 0)
              return TRUE;
          }
      }
  if (kind == RC_PIN_ROLL && with == RC_PIN_ROLL)
    for (guint i = 0; i < option->pieces->len; i++)
      {
        const RcPiece *piece = g_ptr_array_index (option->pieces, i);
        RcPoint        here = rc_point_rotate (*rc_ring_get (pin->points, 0), -site->turn_degrees);
        if (piece->roll != NULL && piece->roll_pin == other->index && rc_region_locate (piece->outline, here) > 0)
          return TRUE;
      }
  if (kind == RC_PIN_NO_SEAMS && with == RC_PIN_SEAM && is_along_pile (other))
    {
      RcPoint from = *rc_ring_get (other->points, 0), to = *rc_ring_get (other->points, 1);
      to.x = from.x;
      return rc_site_find_kept_floor (site, from, to) == pin;
    }
  if (kind == RC_PIN_NO_SEAMS && with == RC_PIN_SPLIT)
    for (guint i = 1; i < other->points->len; i++)
      if (rc_region_locate (pin->floor, *rc_ring_get (other->points, i)) > 0)
        return TRUE;
  return FALSE;
}

static char *
dup_plain_reason (RcPinKind kind)
{
  switch (kind)
    {
    case RC_PIN_SEAM:
      return g_strdup (_ ("no side seam can lie there"));
    case RC_PIN_SPLIT:
      return g_strdup (_ ("its cross seams do not lie in one fill"));
    case RC_PIN_NO_SEAMS:
      return g_strdup (_ ("there is no way to lay the carpet without a seam there"));
    case RC_PIN_ROLL:
    case RC_N_PIN_KINDS:
    default:
      return g_strdup (_ ("no piece lies there"));
    }
}

static char *
dup_unmet (const RcPlan *plan, const RcFloorArea *area, const RcSite *site, const RcOption *option,
           const RcSitePin *pin)
{
  g_autofree char *what = describe (plan->measure, area, pin->index, TRUE), *reason = NULL;
  for (guint i = 0; i < site->pins->len; i++)
    {
      const RcSitePin *other = g_ptr_array_index (site->pins, i);
      if (other == pin || !contradicts (site, option, pin, other))
        continue;
      g_autofree char *against = describe (plan->measure, area, other->index, FALSE);
      if (pin->pin->kind == RC_PIN_SEAM)
        return g_strdup_printf (
            _ ("%s is not kept: it contradicts %s, for seams lie a carpet's width apart or a multiple of it"), what,
            against);
      return g_strdup_printf (_ ("%s is not kept: it contradicts %s"), what, against);
    }
  if (pin->pin->kind == RC_PIN_SEAM && area->pile_degrees >= 0 && !is_along_pile (pin))
    return g_strdup_printf (_ ("%s is not kept: it contradicts the pinned pile direction, which it is square to"),
                            what);
  reason = dup_plain_reason (pin->pin->kind);
  return g_strdup_printf (_ ("%s is not kept: %s"), what, reason);
}

/* --- what a pin costs --- */

/* The cheapest plan of the area by itself, found at once. FALSE where there is none. */
static gboolean
find_cost (const RcPlan *plan, const RcFloorArea *area, const RcPlanWeights *weights, RcMoney *cost)
{
  RcPlanParams at_once = { .steady = TRUE };
  g_autoptr (RcAreaPlanner) planner = rc_area_planner_new (plan->job, plan->house, area, weights, &at_once, NULL);
  g_autoptr (RcAreaPlan) area_plan = planner != NULL ? rc_area_planner_plan (planner, FALSE, 0, NULL) : NULL;
  if (area_plan == NULL)
    return FALSE;
  *cost = ((RcOption *)g_ptr_array_index (area_plan->options, 0))->cost;
  return TRUE;
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
          RcPinResult     *result = &g_array_index (area_plan->pins, RcPinResult, piece->roll_pin);
          g_autofree char *what = describe (plan->measure, area_plan->area, piece->roll_pin, TRUE);
          g_free (result->unmet);
          result->unmet
              = g_strdup_printf (_ ("%s is not kept: roll %s does not do (%s)"), what, piece->roll, let_go->reason);
        }
    }
}

static void
fill_area (const RcPlan *plan, RcAreaPlan *area_plan, const RcPlanWeights *weights, const RcProgress *progress,
           gint64 end_us)
{
  const RcFloorArea *area = area_plan->area;
  const RcOption    *option = rc_area_plan_get_chosen (area_plan);
  g_autoptr (RcSite) site = rc_site_new (plan->job, plan->house, area, rc_job_find_goods (plan->job, area->carpet),
                                         weights, 90 - option->pile_degrees);
  area_plan->pins = g_array_new (FALSE, TRUE, sizeof (RcPinResult));
  g_array_set_clear_func (area_plan->pins, pin_result_clear);
  g_array_set_size (area_plan->pins, area->pins->len + 1);
  for (guint i = 0; i < area->pins->len; i++)
    {
      const RcSitePin *pin = find_site_pin (site, i);
      if (pin != NULL && !is_kept (site, option, pin))
        g_array_index (area_plan->pins, RcPinResult, i).unmet = dup_unmet (plan, area, site, option, pin);
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
