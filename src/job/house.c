#include "house.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "door-links.h"
#include "house-place.h"
#include "rowcut-error.h"

/* Rooms of one floor may lie over each other by this much: rounding of sloping walls. */
#define OVERLAP_MAX (RC_TICKS_PER_MM)

void
rc_house_free (RcHouse *house)
{
  if (house == NULL)
    return;
  g_hash_table_unref (house->rooms_by_id);
  g_ptr_array_unref (house->rooms);
  g_ptr_array_unref (house->openings);
  g_clear_pointer (&house->links, g_hash_table_unref);
  g_free (house);
}

static void
placed_room_free (RcPlacedRoom *placed)
{
  rc_polygon_free (placed->polygon);
  g_free (placed);
}

static void
move_ring (GArray *ring, RcPoint by)
{
  for (guint i = 0; i < ring->len; i++)
    {
      rc_ring_get (ring, i)->x += by.x;
      rc_ring_get (ring, i)->y += by.y;
    }
}

/* The rooms' polygons where they lie. */
static gboolean
add_rooms (RcHouse *house, const RcClosureLimits *limits, GError **error)
{
  for (guint i = 0; i < house->measure->rooms->len; i++)
    {
      const RcRoom *room = house->measure->rooms->pdata[i];
      RcPolygon    *polygon = rc_room_compute_polygon (room, limits, error);
      RcPlacedRoom *placed;

      if (polygon == NULL)
        return FALSE;
      placed = g_new0 (RcPlacedRoom, 1);
      placed->room = room;
      placed->polygon = polygon;
      g_ptr_array_add (house->rooms, placed);
      if (room->id != NULL && !g_hash_table_contains (house->rooms_by_id, room->id))
        g_hash_table_insert (house->rooms_by_id, room->id, placed);
    }
  if (!rc_house_place_rooms (house, error))
    return FALSE;
  for (guint i = 0; i < house->rooms->len; i++)
    {
      RcPlacedRoom *placed = house->rooms->pdata[i];

      move_ring (placed->polygon->outer, placed->at);
      for (guint k = 0; k < placed->polygon->holes->len; k++)
        move_ring (placed->polygon->holes->pdata[k], placed->at);
    }
  return TRUE;
}

/* How deep the two lie in each other: the breadth of the widest part that they share. */
static gboolean
compute_overlap (const RcPolygon *a, const RcPolygon *b, RcLength *depth, GError **error)
{
  g_autoptr (GPtrArray) region_a = rc_region_new (), region_b = rc_region_new (), only_a = NULL, shared = NULL;

  *depth = 0;
  g_ptr_array_add (region_a, rc_polygon_copy (a));
  g_ptr_array_add (region_b, rc_polygon_copy (b));
  only_a = rc_region_difference (region_a, region_b, error);
  shared = only_a != NULL ? rc_region_difference (region_a, only_a, error) : NULL;
  if (shared == NULL)
    return FALSE;
  for (guint i = 0; i < shared->len; i++)
    {
      const RcPolygon *part = shared->pdata[i];
      RcLength         around = rc_ring_compute_length (part->outer);

      /* A strip w wide and long has the doubled area 2 w l and 2 l around it. */
      if (around > 0)
        *depth = MAX (*depth, rc_polygon_compute_area (part) / around);
    }
  return TRUE;
}

static gboolean
boxes_meet (RcBox a, RcBox b)
{
  return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;
}

static gboolean
check_apart (const RcPlacedRoom *a, const RcPlacedRoom *b, GError **error)
{
  RcLength depth;

  if (!compute_overlap (a->polygon, b->polygon, &depth, error))
    {
      g_prefix_error (error, "%s, %s: ", rc_room_get_name (a->room), rc_room_get_name (b->room));
      return FALSE;
    }
  if (depth > OVERLAP_MAX)
    {
      g_autofree char *text = rc_length_format (depth, rc_room_get_length_style (a->room));

      g_set_error (
          error, RC_ERROR, RC_ERROR_GEOMETRY,
          _ ("%s and %s lie over each other, about %s deep; check their walls, the doors between them and where "
             "they are placed"),
          rc_room_get_name (a->room), rc_room_get_name (b->room), text);
      return FALSE;
    }
  return TRUE;
}

static gboolean
check_rooms_apart (const RcHouse *house, GError **error)
{
  g_autofree RcBox *boxes = g_new (RcBox, house->rooms->len + 1);

  for (guint i = 0; i < house->rooms->len; i++)
    {
      const RcPlacedRoom *a = house->rooms->pdata[i];

      boxes[i] = rc_ring_compute_box (a->polygon->outer);
      for (guint k = 0; k < i; k++)
        {
          const RcPlacedRoom *b = house->rooms->pdata[k];

          if (a->room->floor == b->room->floor && boxes_meet (boxes[i], boxes[k]) && !check_apart (b, a, error))
            return FALSE;
        }
    }
  return TRUE;
}

RcHouse *
rc_house_new_rooms (const RcMeasure *measure, const RcClosureLimits *limits, GError **error)
{
  g_autoptr (RcHouse) house = g_new0 (RcHouse, 1);

  house->measure = measure;
  house->rooms = g_ptr_array_new_with_free_func ((GDestroyNotify)placed_room_free);
  house->rooms_by_id = g_hash_table_new (g_str_hash, g_str_equal);
  house->openings = g_ptr_array_new_with_free_func (g_free);
  house->links = rc_door_links_new (measure, error);
  if (house->links == NULL || !add_rooms (house, limits, error))
    return NULL;
  return g_steal_pointer (&house);
}

RcHouse *
rc_house_new (const RcMeasure *measure, const RcClosureLimits *limits, GError **error)
{
  g_autoptr (RcHouse) house = rc_house_new_rooms (measure, limits, error);

  if (house == NULL || !check_rooms_apart (house, error) || !rc_house_place_openings (house, limits->error_max, error))
    return NULL;
  return g_steal_pointer (&house);
}

const RcPlacedRoom *
rc_house_find_room (const RcHouse *house, const char *id)
{
  return id != NULL ? g_hash_table_lookup (house->rooms_by_id, id) : NULL;
}
