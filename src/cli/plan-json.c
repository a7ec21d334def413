#include "plan-json.h"

#include <math.h>

char *
rc_cutting_dup_roll_name (const RcCutting *cutting, guint use)
{
  const RcNestUse *roll = g_ptr_array_index (cutting->answer->rolls, use);
  const char      *id = rc_cutting_get_roll_id (cutting, roll);

  if (id != NULL)
    return g_strdup (id);
  if (roll->copy == 0)
    return g_strdup_printf ("%s/new", cutting->goods->id);
  return g_strdup_printf ("%s/new-%u", cutting->goods->id, roll->copy + 1);
}

/* The number of a piece, as text: what ties pieces and cuts together. */
static void
add_number (RcJson *json, const char *name, guint number)
{
  g_autofree char *text = g_strdup_printf ("%u", number);

  rc_json_add_string (json, name, text);
}

static void
add_degrees (RcJson *json, const char *name, double degrees)
{
  rc_json_add_micro (json, name, (gint64)llround (degrees * RC_MICRO));
}

static void
add_ring (RcJson *json, const char *name, const RcRing *ring)
{
  rc_json_begin_array (json, name);
  for (guint i = 0; i < ring->len; i++)
    rc_json_add_point (json, NULL, rc_ring_get (ring, i)->x, rc_ring_get (ring, i)->y);
  rc_json_end_array (json);
}

static void
add_holes (RcJson *json, const RcPolygon *polygon)
{
  if (polygon->holes->len == 0)
    return;
  rc_json_begin_array (json, "holes");
  for (guint i = 0; i < polygon->holes->len; i++)
    add_ring (json, NULL, g_ptr_array_index (polygon->holes, i));
  rc_json_end_array (json);
}

/* The outline of the largest part; what else there is of a piece stands in "more". */
static void
add_region (RcJson *json, const RcRegion *region)
{
  guint largest = 0;

  for (guint i = 1; i < region->len; i++)
    if (rc_polygon_compute_area (g_ptr_array_index (region, i))
        > rc_polygon_compute_area (g_ptr_array_index (region, largest)))
      largest = i;
  if (region->len == 0)
    {
      rc_json_begin_array (json, "outline");
      rc_json_end_array (json);
      return;
    }
  add_ring (json, "outline", ((RcPolygon *)g_ptr_array_index (region, largest))->outer);
  add_holes (json, g_ptr_array_index (region, largest));
  if (region->len == 1)
    return;
  rc_json_begin_array (json, "more");
  for (guint i = 0; i < region->len; i++)
    if (i != largest)
      {
        const RcPolygon *polygon = g_ptr_array_index (region, i);

        rc_json_begin_object (json, NULL);
        add_ring (json, "outline", polygon->outer);
        add_holes (json, polygon);
        rc_json_end_object (json);
      }
  rc_json_end_array (json);
}

/* The steps that a piece of a stair covers, from 1 at the bottom. */
static void
add_steps (RcJson *json, const RcMeasure *measure, const RcPiece *piece)
{
  g_autoptr (GArray) parts = rc_stair_compute_pieces (rc_measure_find_stair (measure, piece->room));
  const RcStairPiece *part = &g_array_index (parts, RcStairPiece, piece->stair_piece);

  rc_json_add_string (json, "part", rc_stair_piece_kind_get_name (part->kind));
  rc_json_add_int (json, "from_step", part->first);
  rc_json_add_int (json, "to_step", part->last);
}

static void
add_piece (RcJson *json, const RcPlan *plan, const RcPiece *piece)
{
  rc_json_begin_object (json, NULL);
  rc_json_add_string (json, "kind", rc_piece_kind_get_name (piece->kind));
  rc_json_add_string (json, "room", piece->room);
  add_number (json, "cut", piece->number);
  rc_json_add_length (json, "cut_width", piece->cut_width);
  rc_json_add_length (json, "cut_length", piece->cut_length);
  add_degrees (json, "pile_degrees", piece->pile_degrees);
  if (piece->fill != 0)
    rc_json_add_int (json, "fill", piece->fill);
  if (piece->repeat > 0)
    {
      rc_json_add_length (json, "repeat", piece->repeat);
      rc_json_add_length (json, "phase", piece->phase);
    }
  if (piece->across_repeat > 0)
    {
      rc_json_add_length (json, "across_repeat", piece->across_repeat);
      rc_json_add_length (json, "across_phase", piece->across_phase);
    }
  if (piece->kind == RC_PIECE_STAIR)
    add_steps (json, plan->measure, piece);
  else
    add_region (json, piece->outline);
  rc_json_end_object (json);
}

static void
add_pieces (RcJson *json, const char *name, const RcPlan *plan, const char *area_id)
{
  rc_json_begin_array (json, name);
  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (plan->pieces, i);

      if (g_strcmp0 (piece->area, area_id) == 0)
        add_piece (json, plan, piece);
    }
  rc_json_end_array (json);
}

static void
add_seams (RcJson *json, const RcPlan *plan, const char *area_id)
{
  rc_json_begin_array (json, "seams");
  for (guint i = 0; i < plan->seams->len; i++)
    {
      const RcSeam *seam = g_ptr_array_index (plan->seams, i);

      if (g_strcmp0 (seam->area, area_id) != 0)
        continue;
      rc_json_begin_object (json, NULL);
      rc_json_add_string (json, "kind", rc_seam_kind_get_name (seam->kind));
      rc_json_add_point (json, "from", seam->from.x, seam->from.y);
      rc_json_add_point (json, "to", seam->to.x, seam->to.y);
      rc_json_add_length (json, "length", seam->length);
      rc_json_add_string (json, "room", seam->room);
      rc_json_begin_array (json, "cuts");
      add_number (json, NULL, seam->piece_a);
      add_number (json, NULL, seam->piece_b);
      rc_json_end_array (json);
      rc_json_end_object (json);
    }
  rc_json_end_array (json);
}

static void
add_rules_broken (RcJson *json, const RcOption *option, const RcCurrency *currency)
{
  rc_json_begin_array (json, "rules_broken");
  for (guint i = 0; i < option->broken->len; i++)
    {
      const RcBrokenRule *broken = g_ptr_array_index (option->broken, i);
      g_autofree char    *reason = rc_broken_rule_dup_reason (broken);

      rc_json_begin_object (json, NULL);
      rc_json_add_string (json, "rule", rc_rule_get_name (broken->rule));
      rc_json_add_point (json, "place", broken->place.x, broken->place.y);
      rc_json_add_string (json, "reason", reason);
      rc_json_add_money (json, "cost", broken->cost, currency);
      rc_json_end_object (json);
    }
  rc_json_end_array (json);
}

static void
add_options (RcJson *json, const RcAreaPlan *area_plan, const RcCurrency *currency)
{
  rc_json_begin_array (json, "options");
  for (guint i = 0; i < area_plan->options->len; i++)
    {
      const RcOption *option = g_ptr_array_index (area_plan->options, i);

      rc_json_begin_object (json, NULL);
      rc_json_add_string (json, "name", option->name);
      rc_json_add_bool (json, "chosen", i == area_plan->chosen);
      rc_json_begin_array (json, "merits");
      for (guint merit = 1; merit < RC_MERIT_END; merit <<= 1)
        if (option->merits & merit)
          rc_json_add_string (json, NULL, rc_merit_get_name (merit));
      rc_json_end_array (json);
      add_degrees (json, "pile_degrees", option->pile_degrees);
      rc_json_add_length (json, "carpet_length", option->carpet_length);
      rc_json_add_length (json, "length_lower_bound", option->length_lower_bound);
      if (option->safe_length > 0)
        rc_json_add_length (json, "one_repeat_a_cut_length", option->safe_length);
      rc_json_add_area (json, "carpet_area", option->carpet_area);
      rc_json_add_length (json, "side_seam", option->side_seam);
      rc_json_add_length (json, "cross_seam", option->cross_seam);
      rc_json_add_int (json, "joins", option->joins);
      rc_json_add_money (json, "cost", option->cost, currency);
      rc_json_add_money (json, "cost_lower_bound", option->cost_lower_bound, currency);
      rc_json_add_money (json, "carpet_cost", option->carpet_cost, currency);
      rc_json_add_money (json, "seam_cost", option->seam_cost, currency);
      rc_json_add_money (json, "rule_cost", option->rule_cost, currency);
      rc_json_add_string (json, "currency", currency->code);
      rc_json_end_object (json);
    }
  rc_json_end_array (json);
}

/* The area's pins in their order, then its pile direction where it is pinned. */
static void
add_pins (RcJson *json, const RcAreaPlan *area_plan, const RcCurrency *currency)
{
  const RcFloorArea *area = area_plan->area;

  rc_json_begin_array (json, "pins");
  for (guint i = 0; area_plan->pins != NULL && i < area_plan->pins->len; i++)
    {
      const RcPinResult *result = &g_array_index (area_plan->pins, RcPinResult, i);
      const RcPin       *pin = i < area->pins->len ? g_ptr_array_index (area->pins, i) : NULL;

      if (pin == NULL && area->pile_degrees < 0)
        continue;
      rc_json_begin_object (json, NULL);
      rc_json_add_string (json, "kind", pin != NULL ? rc_pin_kind_get_name (pin->kind) : "pile-degrees");
      rc_json_add_string (json, "room", pin != NULL ? pin->room : NULL);
      rc_json_add_string (json, "roll", pin != NULL ? pin->roll : NULL);
      rc_json_add_bool (json, "kept", result->unmet == NULL);
      rc_json_add_string (json, "unmet", result->unmet);
      if (result->cost_known)
        rc_json_add_money (json, "cost", result->cost, currency);
      rc_json_end_object (json);
    }
  rc_json_end_array (json);
}

static void
add_area (RcJson *json, const RcPlan *plan, const RcAreaPlan *area_plan)
{
  const RcOption *chosen = rc_area_plan_get_chosen (area_plan);

  rc_json_begin_object (json, NULL);
  rc_json_add_string (json, "name", area_plan->area->name);
  rc_json_add_string (json, "id", area_plan->area->id);
  rc_json_add_string (json, "carpet", area_plan->area->carpet);
  rc_json_add_area (json, "floor_area", area_plan->floor_area);
  add_degrees (json, "pile_degrees", chosen->pile_degrees);
  add_pieces (json, "pieces", plan, area_plan->area->id);
  add_seams (json, plan, area_plan->area->id);
  add_rules_broken (json, chosen, &plan->job->currency);
  add_pins (json, area_plan, &plan->job->currency);
  add_options (json, area_plan, &plan->job->currency);
  rc_json_end_object (json);
}

static void
add_cuts (RcJson *json, const RcCutting *cutting)
{
  for (guint i = 0; i < cutting->answer->placements->len; i++)
    {
      const RcNestPlacement *place = &g_array_index (cutting->answer->placements, RcNestPlacement, i);
      g_autofree char       *roll = rc_cutting_dup_roll_name (cutting, place->roll);

      rc_json_begin_object (json, NULL);
      add_number (json, "label", g_array_index (cutting->piece_numbers, guint, place->cut));
      rc_json_add_string (json, "roll", roll);
      rc_json_add_length (json, "across", place->across);
      rc_json_add_length (json, "along", place->along);
      rc_json_add_length (json, "width", place->width);
      rc_json_add_length (json, "length", place->length);
      rc_json_end_object (json);
    }
}

static void
add_rolls (RcJson *json, const RcCutting *cutting)
{
  for (guint i = 0; i < cutting->answer->rolls->len; i++)
    {
      const RcNestUse  *use = g_ptr_array_index (cutting->answer->rolls, i);
      const RcNestRoll *source = g_ptr_array_index (cutting->problem->rolls, use->source);
      g_autofree char  *roll = rc_cutting_dup_roll_name (cutting, i);

      rc_json_begin_object (json, NULL);
      rc_json_add_string (json, "roll", roll);
      rc_json_add_string (json, "carpet", cutting->goods->id);
      rc_json_add_string (json, "lot", source->lot);
      rc_json_add_bool (json, "in_stock", rc_cutting_get_roll_id (cutting, use) != NULL);
      rc_json_add_length (json, "width", cutting->problem->roll_width);
      rc_json_add_length (json, "length", use->length);
      rc_json_add_length (json, "used", use->used);
      rc_json_end_object (json);
    }
}

/* Patterned carpets: what their pattern leaves of the roll, and its price in length. */
static void
add_pattern (RcJson *json, const RcCutting *cutting)
{
  const RcGoods *goods = cutting->goods;

  if (goods->repeat_length == 0 && goods->repeat_width == 0)
    return;
  rc_json_begin_object (json, NULL);
  rc_json_add_string (json, "carpet", goods->id);
  rc_json_add_length (json, "repeat_length", goods->repeat_length);
  rc_json_add_length (json, "repeat_width", goods->repeat_width);
  rc_json_add_string (json, "match", rc_match_get_name (goods->match));
  rc_json_add_length (json, "usable_width", rc_goods_compute_matching_width (goods));
  rc_json_add_length (json, "roll_width", rc_goods_get_usable_width (goods));
  rc_json_add_length (json, "used_length", cutting->answer->used_length);
  if (cutting->safe_length > 0)
    rc_json_add_length (json, "one_repeat_a_cut_length", cutting->safe_length);
  rc_json_end_object (json);
}

void
rc_plan_json_add (RcJson *json, const RcPlan *plan)
{
  rc_json_begin_array (json, "areas");
  for (guint i = 0; i < plan->areas->len; i++)
    add_area (json, plan, g_ptr_array_index (plan->areas, i));
  rc_json_end_array (json);
  add_pieces (json, "stairs", plan, NULL);
  rc_json_begin_array (json, "cuts");
  for (guint i = 0; i < plan->cuttings->len; i++)
    add_cuts (json, g_ptr_array_index (plan->cuttings, i));
  rc_json_end_array (json);
  rc_json_begin_array (json, "rolls");
  for (guint i = 0; i < plan->cuttings->len; i++)
    add_rolls (json, g_ptr_array_index (plan->cuttings, i));
  rc_json_end_array (json);
  rc_json_begin_array (json, "patterns");
  for (guint i = 0; i < plan->cuttings->len; i++)
    add_pattern (json, g_ptr_array_index (plan->cuttings, i));
  rc_json_end_array (json);
  rc_json_add_length (json, "carpet_length", plan->carpet_length);
  rc_json_add_area (json, "carpet_area", plan->carpet_area);
  rc_json_add_area (json, "covered_area", plan->covered_area);
  rc_json_add_micro (json, "waste_percent", plan->waste_ppm * 100);
}
