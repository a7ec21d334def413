#include "measure-edit.h"

#include "free-id.h"
#include "id-stem.h"
#include "room-edit.h"

static gboolean
is_id_taken (const char *id, gconstpointer data)
{
  const RcMeasure *measure = data;

  if (rc_measure_find_room ((RcMeasure *)measure, id) || rc_measure_find_area ((RcMeasure *)measure, id))
    return TRUE;
  for (guint i = 0; i < measure->stairs->len; i++)
    if (g_str_equal (((const RcStair *)g_ptr_array_index (measure->stairs, i))->id, id))
      return TRUE;
  return FALSE;
}

/* "Bed room 2" gives "bed-room-2"; what begins with no letter is `otherwise`. */
static char *
dup_free_id (const RcMeasure *measure, const char *name, const char *otherwise)
{
  g_autofree char *stem = rc_id_stem_new (name);

  return rc_free_id_new (g_ascii_isalpha (*stem) ? stem : "", otherwise, is_id_taken, measure);
}

RcRoom *
rc_measure_edit_add_room (RcMeasure *measure, const char *name, int floor, RcLength width, RcLength length)
{
  g_autofree char *id = dup_free_id (measure, name, "room");
  RcRoom          *room = rc_room_new (id, name);

  room->floor = floor;
  if (width > 0 && length > 0)
    for (int i = 0; i < 4; i++)
      {
        RcWall wall = { .bearing_degrees = i * 90.0, .length = i % 2 ? width : length };
        g_array_append_val (room->walls, wall);
      }
  g_ptr_array_add (measure->rooms, room);
  return room;
}

RcRoom *
rc_measure_edit_duplicate_room (RcMeasure *measure, const char *id, const char *name)
{
  const RcRoom *from = rc_measure_find_room (measure, id);

  if (from == NULL)
    return NULL;
  RcRoom *room = rc_room_copy (from);
  g_free (room->id);
  g_free (room->name);
  room->id = dup_free_id (measure, name, "room");
  room->name = g_strdup (name);
  room->placed = FALSE;
  room->at = (RcPoint){ 0, 0 };
  for (guint i = 0; i < room->openings->len; i++)
    {
      RcOpening *opening = g_ptr_array_index (room->openings, i);
      g_clear_pointer (&opening->to_room, g_free);
      g_clear_pointer (&opening->to_opening, g_free);
    }
  g_ptr_array_add (measure->rooms, room);
  return room;
}

static void
take_out_of_areas (RcMeasure *measure, const char *room)
{
  for (guint a = 0; a < measure->areas->len; a++)
    {
      RcFloorArea *area = g_ptr_array_index (measure->areas, a);
      for (guint r = area->rooms->len; r-- > 0;)
        if (g_str_equal (g_ptr_array_index (area->rooms, r), room))
          g_ptr_array_remove_index (area->rooms, r);
      for (guint i = area->pins->len; i-- > 0;)
        if (g_strcmp0 (((const RcPin *)g_ptr_array_index (area->pins, i))->room, room) == 0)
          g_ptr_array_remove_index (area->pins, i);
    }
}

gboolean
rc_measure_edit_remove_room (RcMeasure *measure, const char *id)
{
  RcRoom *room = rc_measure_find_room (measure, id);

  if (room == NULL)
    return FALSE;
  take_out_of_areas (measure, room->id);
  for (guint r = 0; r < measure->rooms->len; r++)
    {
      RcRoom *other = g_ptr_array_index (measure->rooms, r);
      for (guint o = 0; o < other->openings->len; o++)
        {
          RcOpening *opening = g_ptr_array_index (other->openings, o);
          if (g_strcmp0 (opening->to_room, room->id) == 0)
            {
              g_clear_pointer (&opening->to_room, g_free);
              g_clear_pointer (&opening->to_opening, g_free);
            }
        }
    }
  return g_ptr_array_remove (measure->rooms, room);
}

gboolean
rc_measure_edit_put_room_in_area (RcMeasure *measure, const char *room, const char *area)
{
  RcFloorArea *to = area ? rc_measure_find_area (measure, area) : NULL;

  if (rc_measure_find_room (measure, room) == NULL || (area && to == NULL))
    return FALSE;
  g_autofree char *id = g_strdup (room);
  take_out_of_areas (measure, id);
  if (to)
    g_ptr_array_add (to->rooms, g_steal_pointer (&id));
  return TRUE;
}

RcFloorArea *
rc_measure_edit_add_area (RcMeasure *measure, const char *name)
{
  g_autofree char *id = dup_free_id (measure, name, "area");
  RcFloorArea     *area = rc_floor_area_new (id, name);

  g_ptr_array_add (measure->areas, area);
  return area;
}

gboolean
rc_measure_edit_remove_area (RcMeasure *measure, const char *id)
{
  RcFloorArea *area = rc_measure_find_area (measure, id);
  return area && g_ptr_array_remove (measure->areas, area);
}

/* A usual straight flight to start typing from: thirteen risers of 7 1/2 in, 10 in going, 3 ft wide; or the like in
 * metric (common practice, no source). */
RcStair *
rc_measure_edit_add_stair (RcMeasure *measure, const char *name, RcUnitSystem units)
{
  g_autofree char *id = dup_free_id (measure, name, "stair");
  RcStair         *stair = rc_stair_new (id, name);
  gboolean         metric = units == RC_UNITS_METRIC;

  stair->steps = 13;
  stair->rise = metric ? 190 * RC_TICKS_PER_MM : 15 * RC_TICKS_PER_INCH / 2;
  stair->going = metric ? 250 * RC_TICKS_PER_MM : 10 * RC_TICKS_PER_INCH;
  stair->width = metric ? 900 * RC_TICKS_PER_MM : 36 * RC_TICKS_PER_INCH;
  g_ptr_array_add (measure->stairs, stair);
  return stair;
}

void
rc_measure_edit_add_turn (RcStair *stair)
{
  RcStairTurn turn = { .kind = RC_TURN_LANDING,
                       .after = rc_stair_count_flight_steps (stair, stair->turns->len) / 2,
                       .winders = 3, /* of a quarter turn, should it be one of winders */
                       .going = stair->width,
                       .width = stair->width };

  g_array_append_val (stair->turns, turn);
}

void
rc_measure_edit_remove_turn (RcStair *stair, guint index)
{
  if (index + 1 < stair->turns->len)
    rc_stair_get_turn (stair, index + 1)->after += rc_stair_get_turn (stair, index)->after;
  g_array_remove_index (stair->turns, index);
}

gboolean
rc_measure_edit_remove_stair (RcMeasure *measure, const char *id)
{
  RcStair *stair = rc_measure_find_stair (measure, id);
  return stair && g_ptr_array_remove (measure->stairs, stair);
}

void
rc_measure_edit_remove_other_side (RcMeasure *measure, const char *room, const char *opening)
{
  for (guint r = 0; r < measure->rooms->len; r++)
    {
      RcRoom *other = g_ptr_array_index (measure->rooms, r);
      for (guint i = other->openings->len; i-- > 0;)
        {
          const RcOpening *back = g_ptr_array_index (other->openings, i);
          if (g_strcmp0 (back->to_room, room) == 0 && g_strcmp0 (back->to_opening, opening) == 0)
            g_ptr_array_remove_index (other->openings, i);
        }
    }
}

static void
set_lead (RcOpening *opening, const char *room, const char *other)
{
  g_free (opening->to_room);
  g_free (opening->to_opening);
  opening->to_room = g_strdup (room);
  opening->to_opening = g_strdup (other);
}

/* Any opening that says it is this one no longer does. */
static void
untie (RcMeasure *measure, const char *room, const char *opening)
{
  for (guint r = 0; r < measure->rooms->len; r++)
    {
      RcRoom *other = g_ptr_array_index (measure->rooms, r);
      for (guint i = 0; i < other->openings->len; i++)
        {
          RcOpening *back = g_ptr_array_index (other->openings, i);
          if (g_strcmp0 (back->to_room, room) == 0 && g_strcmp0 (back->to_opening, opening) == 0)
            set_lead (back, NULL, NULL);
        }
    }
}

gboolean
rc_measure_edit_lead (RcMeasure *measure, const char *room, const char *opening, const char *to_room,
                      const char *to_opening)
{
  RcRoom    *from = rc_measure_find_room (measure, room), *to = rc_measure_find_room (measure, to_room);
  RcOpening *one = from ? rc_room_edit_find_opening (from, opening) : NULL;
  RcOpening *other = to && to_opening ? rc_room_edit_find_opening (to, to_opening) : NULL;

  if (one == NULL || (to_room && to == NULL) || (to_opening && other == NULL) || to == from)
    return FALSE;
  untie (measure, room, opening);
  if (other)
    {
      untie (measure, to_room, to_opening);
      set_lead (other, room, opening);
    }
  set_lead (one, to_room, to_opening);
  return TRUE;
}
