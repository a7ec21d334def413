#include "area-key.h"

static void
add_number (GString *key, gint64 number)
{
  g_string_append_printf (key, "%" G_GINT64_FORMAT ",", number);
}

static void
add_text (GString *key, const char *text)
{
  g_string_append_printf (key, "%s\n", text != NULL ? text : "");
}

static void
add_point (GString *key, RcPoint point, RcPoint origin)
{
  add_number (key, point.x - origin.x);
  add_number (key, point.y - origin.y);
}

static void
add_ring (GString *key, const RcRing *ring, RcPoint origin)
{
  add_number (key, ring->len);
  for (guint i = 0; i < ring->len; i++)
    add_point (key, *rc_ring_get (ring, i), origin);
}

static void
add_settings (GString *key, const RcSettings *settings)
{
  add_number (key, settings->trim_length);
  add_number (key, settings->trim_width);
  add_number (key, settings->least_fill_width);
  add_number (key, settings->least_piece_length);
  add_number (key, settings->most_joins);
  add_number (key, settings->door_distance);
  add_number (key, settings->stagger);
  for (guint i = 0; i < RC_N_RULES; i++)
    add_number (key, settings->rule_cost[i]);
}

static void
add_carpet (GString *key, const RcGoods *carpet)
{
  add_text (key, carpet->id);
  add_number (key, rc_goods_get_usable_width (carpet));
  add_number (key, carpet->repeat_length);
  add_number (key, carpet->repeat_width);
  add_number (key, carpet->match);
  add_number (key, carpet->length_step);
  add_number (key, carpet->least_cut);
  add_number (key, carpet->full_roll);
}

static void
add_room (GString *key, const RcPlacedRoom *placed, RcPoint origin)
{
  add_number (key, placed->room->floor);
  add_ring (key, placed->polygon->outer, origin);
  for (guint i = 0; i < placed->polygon->holes->len; i++)
    add_ring (key, g_ptr_array_index (placed->polygon->holes, i), origin);
}

static void
add_pin (GString *key, const RcPin *pin)
{
  add_number (key, pin->kind);
  add_text (key, pin->room);
  add_text (key, pin->roll);
  add_ring (key, pin->points, (RcPoint){ 0, 0 }); /* the room's own */
}

/* A room of the area by its number, another one by its name, which reasons tell. */
static void
add_side (GString *key, const RcFloorArea *area, const RcRoom *room)
{
  guint number = room != NULL ? rc_floor_area_find_room (area, room->id) : 0;
  add_number (key, number);
  if (number == 0)
    add_text (key, room != NULL ? room->name : NULL);
}

gboolean
rc_area_key_has_opening (const RcFloorArea *area, const RcPlacedOpening *placed)
{
  return rc_floor_area_find_room (area, placed->room->id) > 0
         || (placed->other != NULL && rc_floor_area_find_room (area, placed->other->id) > 0);
}

static void
add_opening (GString *key, const RcFloorArea *area, const RcPlacedOpening *placed, RcPoint origin)
{
  add_side (key, area, placed->room);
  add_side (key, area, placed->other);
  add_text (key, placed->opening->id);
  add_number (key, placed->opening->kind);
  add_number (key, placed->opening->width);
  add_number (key, placed->joins);
  add_number (key, placed->blocked);
  add_point (key, placed->from, origin);
  add_point (key, placed->to, origin);
  add_point (key, placed->outward, (RcPoint){ 0, 0 }); /* a step */
  add_number (key, placed->opening->swing);
  add_number (key, placed->opening->hinge_at_end);
  if (!placed->joins)
    return;
  add_point (key, placed->other_from, origin);
  add_point (key, placed->other_to, origin);
}

RcPoint
rc_area_key_find_origin (const RcHouse *house, const RcFloorArea *area)
{
  const RcPlacedRoom *first
      = area->rooms->len > 0 ? rc_house_find_room (house, g_ptr_array_index (area->rooms, 0)) : NULL;
  return first != NULL && first->polygon->outer->len > 0 ? *rc_ring_get (first->polygon->outer, 0) : (RcPoint){ 0, 0 };
}

char *
rc_area_key_new_shape (const RcJob *job, const RcHouse *house, const RcFloorArea *area, const RcPlanWeights *weights)
{
  GString *key = g_string_new (NULL);
  RcPoint  origin = rc_area_key_find_origin (house, area);
  add_number (key, area->pile_degrees);
  for (guint i = 0; i < area->pins->len; i++)
    add_pin (key, g_ptr_array_index (area->pins, i));
  add_number (key, job->units);
  add_settings (key, &job->settings);
  add_carpet (key, rc_job_find_goods (job, area->carpet));
  add_number (key, weights->carpet_per_m);
  add_number (key, weights->side_seam_per_m);
  add_number (key, weights->cross_seam_per_m);
  add_number (key, weights->cross_seam_each);
  for (guint i = 0; i < area->rooms->len; i++)
    add_room (key, rc_house_find_room (house, g_ptr_array_index (area->rooms, i)), origin);
  /* Rooms of other areas bound what runs into the walls between. */
  for (guint i = 0; i < house->openings->len; i++)
    if (rc_area_key_has_opening (area, g_ptr_array_index (house->openings, i)))
      add_opening (key, area, g_ptr_array_index (house->openings, i), origin);
  return g_string_free (key, FALSE);
}

char *
rc_area_key_new (const char *shape, const RcHouse *house, const RcFloorArea *area)
{
  GString *key = g_string_new (shape);
  add_text (key, area->id);
  add_text (key, area->name);
  for (guint i = 0; i < area->rooms->len; i++)
    {
      const RcRoom *room = rc_house_find_room (house, g_ptr_array_index (area->rooms, i))->room;
      add_text (key, room->id);
      add_text (key, room->name);
    }
  return g_string_free (key, FALSE);
}
