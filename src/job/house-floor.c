#include "house.h"

#include <glib/gi18n-lib.h>

#include "edge-merge.h"
#include "rowcut-error.h"

/* What the floor is put together from: rings of rooms and of the floor inside walls. */
typedef struct
{
  const RcHouse *house;
  GPtrArray     *rooms; /* of RcPlacedRoom, borrowed */
  GPtrArray     *rings; /* of RcRing: outer rings and holes of all parts */
  GPtrArray     *outer; /* of RcRing, borrowed: the outer ring of rooms[i] */
  GPtrArray     *doors; /* of RcPolygon: floor inside walls */
  gboolean       touch; /* a door lies in a wall of no thickness, or reaches into another wall of its room */
} Parts;

static void
parts_clear (Parts *parts)
{
  g_clear_pointer (&parts->rooms, g_ptr_array_unref);
  g_clear_pointer (&parts->rings, g_ptr_array_unref);
  g_clear_pointer (&parts->outer, g_ptr_array_unref);
  g_clear_pointer (&parts->doors, g_ptr_array_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Parts, parts_clear)

static gboolean
add_rooms (Parts *parts, const RcFloorArea *area, RcArea *exact, GError **error)
{
  for (guint i = 0; i < area->rooms->len; i++)
    {
      const RcPlacedRoom *room = rc_house_find_room (parts->house, area->rooms->pdata[i]);
      RcRing             *outer;

      if (room == NULL)
        {
          g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("Area %s names the room “%s”, which is not measured"),
                       area->name != NULL ? area->name : area->id, (const char *)area->rooms->pdata[i]);
          return FALSE;
        }
      if (g_ptr_array_find (parts->rooms, room, NULL))
        continue;
      outer = rc_ring_copy (room->polygon->outer);
      g_ptr_array_add (parts->rooms, (gpointer)room);
      g_ptr_array_add (parts->rings, outer);
      g_ptr_array_add (parts->outer, outer);
      for (guint k = 0; k < room->polygon->holes->len; k++)
        g_ptr_array_add (parts->rings, rc_ring_copy (room->polygon->holes->pdata[k]));
      *exact += rc_polygon_compute_area (room->polygon);
    }
  return TRUE;
}

static RcRing *
find_outer (const Parts *parts, const RcRoom *room)
{
  for (guint i = 0; i < parts->rooms->len; i++)
    if (((const RcPlacedRoom *)parts->rooms->pdata[i])->room == room)
      return parts->outer->pdata[i];
  return NULL;
}

static void
add_door (Parts *parts, RcPoint a, RcPoint b, RcPoint far_b, RcPoint far_a, RcArea *exact)
{
  g_autoptr (RcPolygon) polygon = rc_polygon_new ();
  RcPoint points[] = { a, b, far_b, far_a };

  g_array_append_vals (polygon->outer, points, G_N_ELEMENTS (points));
  rc_polygon_normalize (polygon);
  if (rc_polygon_compute_area (polygon) == 0)
    {
      parts->touch = TRUE;
      return;
    }
  /* As given, not as normalised: its corners must stay those of the rooms' rings. */
  g_array_set_size (polygon->outer, 0);
  g_array_append_vals (polygon->outer, points, G_N_ELEMENTS (points));
  if (rc_ring_compute_area (polygon->outer) < 0)
    {
      RcPoint turned[] = { far_a, far_b, b, a };

      g_array_set_size (polygon->outer, 0);
      g_array_append_vals (polygon->outer, turned, G_N_ELEMENTS (turned));
    }
  *exact += rc_ring_compute_area (polygon->outer);
  g_ptr_array_add (parts->rings, rc_ring_copy (polygon->outer));
  g_ptr_array_add (parts->doors, g_steal_pointer (&polygon));
}

/* Whether the floor in the wall, which begins at a wall of the ring, comes to another as well: in an inner corner of
 * the room, where walls stand out of square. */
static gboolean
reaches (const RcRing *ring, RcPoint far_a, RcPoint far_b)
{
  return rc_ring_locate (ring, far_a) >= 0 || rc_ring_locate (ring, far_b) >= 0;
}

/* Half the wall as it was measured, from one side. */
static void
add_half_door (Parts *parts, const RcPlacedOpening *opening, gboolean from_other, RcRing *ring, RcArea *exact)
{
  RcPoint a = from_other ? opening->other_from : opening->from, b = from_other ? opening->other_to : opening->to;
  RcPoint half = { opening->outward.x / 2, opening->outward.y / 2 };

  if (opening->blocked)
    return;
  if (from_other)
    half = (RcPoint){ -half.x, -half.y };
  rc_ring_insert_corner (ring, &a);
  rc_ring_insert_corner (ring, &b);
  RcPoint far_a = { a.x + half.x, a.y + half.y }, far_b = { b.x + half.x, b.y + half.y };
  parts->touch |= reaches (ring, far_a, far_b);
  add_door (parts, a, b, far_b, far_a, exact);
}

/* The whole wall, between two rooms of the area. */
static void
add_whole_door (Parts *parts, const RcPlacedOpening *opening, RcRing *near, RcRing *far, RcArea *exact)
{
  RcPoint from = opening->from, to = opening->to, far_from = opening->other_from, far_to = opening->other_to;

  rc_ring_insert_corner (near, &from);
  rc_ring_insert_corner (near, &to);
  rc_ring_insert_corner (far, &far_from);
  rc_ring_insert_corner (far, &far_to);
  parts->touch |= reaches (near, far_from, far_to) || reaches (far, from, to);
  add_door (parts, from, to, far_to, far_from, exact);
}

static void
add_openings (Parts *parts, RcArea *exact)
{
  for (guint i = 0; i < parts->house->openings->len; i++)
    {
      const RcPlacedOpening *opening = parts->house->openings->pdata[i];
      RcRing                *near = find_outer (parts, opening->room);
      RcRing                *far = opening->joins ? find_outer (parts, opening->other) : NULL;

      if (opening->opening->kind == RC_OPENING_WINDOW)
        continue;
      if (near != NULL && far != NULL)
        add_whole_door (parts, opening, near, far, exact);
      else if (near != NULL)
        add_half_door (parts, opening, FALSE, near, exact);
      else if (far != NULL)
        add_half_door (parts, opening, TRUE, far, exact);
    }
}

/* Where shapes touch along walls of no thickness an overlay must join them. */
static RcRegion *
overlay (const Parts *parts, GError **error)
{
  g_autoptr (GPtrArray) floor = rc_region_new ();

  for (guint i = 0; i < parts->rooms->len + parts->doors->len; i++)
    {
      g_autoptr (GPtrArray) one = rc_region_new ();
      RcRegion *joined;

      if (i < parts->rooms->len)
        {
          const RcPlacedRoom *room = parts->rooms->pdata[i];
          RcPolygon          *polygon = rc_polygon_copy (room->polygon);

          g_array_unref (polygon->outer);
          polygon->outer = rc_ring_copy (parts->outer->pdata[i]);
          g_ptr_array_add (one, polygon);
        }
      else
        g_ptr_array_add (one, rc_polygon_copy (parts->doors->pdata[i - parts->rooms->len]));
      joined = rc_region_union (floor, one, error);
      if (joined == NULL)
        return NULL;
      g_ptr_array_unref (floor);
      floor = joined;
    }
  return g_steal_pointer (&floor);
}

RcRegion *
rc_house_compute_floor (const RcHouse *house, const RcFloorArea *area, RcArea *area_exact, GError **error)
{
  g_auto (Parts) parts = { house,
                           g_ptr_array_new (),
                           g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref),
                           g_ptr_array_new (),
                           g_ptr_array_new_with_free_func ((GDestroyNotify)rc_polygon_free),
                           FALSE };
  RcArea    exact = 0;
  RcRegion *floor;

  if (!add_rooms (&parts, area, &exact, error))
    return NULL;
  add_openings (&parts, &exact);
  floor = parts.touch ? NULL : rc_edge_merge (parts.rings);
  if (floor == NULL)
    floor = overlay (&parts, error);
  if (floor == NULL)
    g_prefix_error (error, _ ("Area %s: "), area->name != NULL ? area->name : area->id);
  else if (area_exact != NULL)
    *area_exact = exact;
  return floor;
}
