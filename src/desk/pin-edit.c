#include "pin-edit.h"

#include <glib/gi18n-lib.h>

#include "strip.h"

guint
rc_pin_edit_get_n (const RcFloorArea *area)
{
  return area->pins->len + 1;
}

char *
rc_pin_edit_dup_words (const RcMeasure *measure, const RcFloorArea *area, guint index, const RcPinResult *result,
                       const RcCurrency *currency)
{
  g_autofree char *label = rc_pin_dup_label (measure, area, index), *cost = NULL;

  if (label == NULL)
    return NULL;
  if (result != NULL && result->unmet != NULL)
    return g_strdup (result->unmet);
  if (result == NULL || !result->cost_known)
    return g_steal_pointer (&label);
  if (result->cost == 0)
    return g_strdup_printf (_ ("%s: costs nothing"), label);
  cost = rc_money_format (result->cost, currency);
  return g_strdup_printf (_ ("%s: costs %s"), label, cost);
}

gboolean
rc_pin_edit_remove (RcFloorArea *area, guint index)
{
  if (index < area->pins->len)
    {
      g_ptr_array_remove_index (area->pins, index);
      return TRUE;
    }
  if (index == area->pins->len && area->pile_degrees >= 0)
    {
      area->pile_degrees = -1;
      return TRUE;
    }
  return FALSE;
}

/* A piece of the plan. */

static gboolean
is_of_fill (const RcPiece *piece, const RcPiece *of)
{
  return piece == of || (of->fill > 0 && piece->fill == of->fill && g_strcmp0 (piece->area, of->area) == 0);
}

/* The first piece of the fill (of the piece alone: `whole` FALSE) that holds the point; NULL for none. */
static const RcPiece *
find_holder (const RcPlan *plan, const RcPiece *piece, gboolean whole, RcPoint point)
{
  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const RcPiece *other = g_ptr_array_index (plan->pieces, i);
      if ((whole ? is_of_fill (other, piece) : other == piece) && rc_region_locate (other->outline, point) > 0)
        return other;
    }
  return NULL;
}

static gboolean
is_about (const RcPlan *plan, const RcPin *pin, const RcPiece *piece)
{
  const RcPlacedRoom *placed = rc_house_find_room (plan->house, pin->room);

  if (placed == NULL || pin->points->len == 0 || (pin->kind != RC_PIN_SPLIT && pin->kind != RC_PIN_ROLL))
    return FALSE;
  RcPoint at = *rc_ring_get (pin->points, 0);
  at = (RcPoint){ at.x + placed->at.x, at.y + placed->at.y };
  return find_holder (plan, piece, pin->kind == RC_PIN_SPLIT, at) != NULL;
}

static gboolean
unpin (const RcPlan *plan, const RcPiece *piece, RcFloorArea *area)
{
  guint before = area->pins->len;

  for (guint i = area->pins->len; i-- > 0;)
    if (is_about (plan, g_ptr_array_index (area->pins, i), piece))
      g_ptr_array_remove_index (area->pins, i);
  return area->pins->len < before;
}

/* A point well inside the outline: the middle of the longest way across it, at the first of a few places. */
static gboolean
find_inside (const RcRegion *outline, RcPoint *inside)
{
  static const int EIGHTHS[] = { 4, 3, 5, 2, 6, 1, 7 };
  RcBox            box = rc_region_compute_box (outline);

  for (guint i = 0; i < G_N_ELEMENTS (EIGHTHS); i++)
    {
      RcLength x = box.x0 + (box.x1 - box.x0) / 8 * EIGHTHS[i], longest = 0;
      g_autoptr (GArray) ways = rc_region_cross_line_x (outline, x);
      for (guint k = 0; k < ways->len; k++)
        {
          const RcInterval *way = &g_array_index (ways, RcInterval, k);
          if (way->to - way->from <= longest)
            continue;
          longest = way->to - way->from;
          *inside = (RcPoint){ x, way->from + longest / 2 };
        }
      if (longest > 0 && rc_region_locate (outline, *inside) > 0)
        return TRUE;
    }
  return FALSE;
}

static RcPin *
new_pin (RcPinKind kind, const RcPlacedRoom *placed, RcPoint at)
{
  RcPin  *pin = rc_pin_new (kind, placed->room->id);
  RcPoint own = { at.x - placed->at.x, at.y - placed->at.y };

  g_array_append_val (pin->points, own);
  return pin;
}

/* The stock roll that the piece is cut from; NULL for one to be bought. */
static const char *
find_roll (const RcPlan *plan, guint number)
{
  const RcCutting       *cutting;
  const RcNestPlacement *placement = rc_plan_find_placement (plan, number, &cutting);
  return placement != NULL
             ? rc_cutting_get_roll_id (cutting, g_ptr_array_index (cutting->answer->rolls, placement->roll))
             : NULL;
}

static const RcPiece *
find_floor_piece (const RcPlan *plan, guint number, const RcFloorArea *area)
{
  const RcPiece *piece = rc_plan_find_piece (plan, number);
  return piece != NULL && piece->kind != RC_PIECE_STAIR && g_strcmp0 (piece->area, area->id) == 0 ? piece : NULL;
}

gboolean
rc_pin_edit_pin_piece (const RcPlan *plan, guint number, RcFloorArea *area, const char **roll)
{
  const RcPiece      *piece = find_floor_piece (plan, number, area);
  const RcPlacedRoom *placed = piece ? rc_house_find_room (plan->house, piece->room) : NULL;
  const char         *from = find_roll (plan, number);
  RcPoint             inside;

  if (roll)
    *roll = from;
  if (placed == NULL || !find_inside (piece->outline, &inside))
    return FALSE;
  unpin (plan, piece, area);
  RcPin *split = new_pin (RC_PIN_SPLIT, placed, inside);
  for (guint i = 0; i < plan->seams->len; i++)
    {
      const RcSeam  *seam = g_ptr_array_index (plan->seams, i);
      const RcPiece *one = rc_plan_find_piece (plan, seam->piece_a), *two = rc_plan_find_piece (plan, seam->piece_b);
      if (seam->kind != RC_SEAM_CROSS || !is_of_fill (one, piece) || !is_of_fill (two, piece))
        continue;
      RcPoint own = { (seam->from.x + seam->to.x) / 2 - placed->at.x, (seam->from.y + seam->to.y) / 2 - placed->at.y };
      g_array_append_val (split->points, own);
    }
  g_ptr_array_add (area->pins, split);
  if (from == NULL)
    return TRUE;
  RcPin *held = new_pin (RC_PIN_ROLL, placed, inside);
  held->roll = g_strdup (from);
  g_ptr_array_add (area->pins, held);
  return TRUE;
}

gboolean
rc_pin_edit_unpin_piece (const RcPlan *plan, guint number, RcFloorArea *area)
{
  const RcPiece *piece = find_floor_piece (plan, number, area);
  return piece != NULL && unpin (plan, piece, area);
}
