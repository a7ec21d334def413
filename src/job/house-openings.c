#include "house-place.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "door-links.h"
#include "rowcut-error.h"

static RcPoint
add (RcPoint a, RcPoint b)
{
  return (RcPoint){ a.x + b.x, a.y + b.y };
}

static gboolean
check_meets (const RcDoorLink *link, const RcPlacedOpening *placed, RcLength miss_max, GError **error)
{
  RcPoint  expected = { (placed->from.x + placed->to.x) / 2 + placed->outward.x,
                        (placed->from.y + placed->to.y) / 2 + placed->outward.y };
  RcPoint  found = { (placed->other_from.x + placed->other_to.x) / 2, (placed->other_from.y + placed->other_to.y) / 2 };
  RcLength miss = rc_point_distance (expected, found);
  g_autofree char *what = NULL, *text = NULL;

  if (miss <= miss_max)
    return TRUE;
  what = rc_door_link_describe (link);
  text = rc_length_format (miss, rc_room_get_length_style (link->room));
  g_set_error (
      error, RC_ERROR, RC_ERROR_GEOMETRY,
      _ ("%s misses %s of %s by %s; measure again how far both stand from their corners, or check where the rooms "
         "are placed"),
      what, link->other_opening->id, rc_room_get_name (link->other), text);
  return FALSE;
}

/* The point of the ring that the step from `from` reaches first, within `miss_max` of the step's end. */
static gboolean
find_behind (const RcRing *ring, RcPoint from, RcPoint step, RcLength miss_max, RcPoint *hit)
{
  double depth = hypot ((double)step.x, (double)step.y), best = INFINITY;

  if (depth == 0) /* the rooms touch: both faces are one */
    {
      *hit = from;
      return TRUE;
    }
  for (guint i = 0; i < ring->len; i++)
    {
      const RcPoint *a = rc_ring_get (ring, i), *b = rc_ring_get (ring, (i + 1) % ring->len);
      double         ex = (double)(b->x - a->x), ey = (double)(b->y - a->y);
      double         ax = (double)(a->x - from.x), ay = (double)(a->y - from.y);
      double         cross = (double)step.x * ey - (double)step.y * ex;
      double         t, s;

      if (cross == 0)
        continue;
      t = (ax * ey - ay * ex) / cross;
      s = (ax * (double)step.y - ay * (double)step.x) / cross;
      if (s >= 0 && s <= 1 && fabs (t - 1) < fabs (best - 1))
        best = t;
    }
  if (best < 0 || fabs (best - 1) * depth > (double)miss_max)
    return FALSE;
  *hit = (RcPoint){ from.x + llround (best * (double)step.x), from.y + llround (best * (double)step.y) };
  return TRUE;
}

/* Where the opening comes out on the other room's wall. */
static gboolean
find_far_side (const RcHouse *house, const RcDoorLink *link, RcPlacedOpening *placed, RcLength miss_max, GError **error)
{
  const RcPlacedRoom *other = rc_house_find_room (house, link->other->id);

  if (link->other_opening != NULL)
    {
      /* Walked the other way round as a rule; as it lies, whichever way the rooms were walked. */
      RcPoint  a = { 0 }, b = { 0 };
      gboolean crossed;

      rc_room_get_opening_ends (link->other, link->other_opening, &a, &b);
      a = add (a, other->at);
      b = add (b, other->at);
      crossed = rc_point_distance (placed->from, b) + rc_point_distance (placed->to, a)
                < rc_point_distance (placed->from, a) + rc_point_distance (placed->to, b);
      placed->other_from = crossed ? b : a;
      placed->other_to = crossed ? a : b;
      placed->joins = TRUE;
      return check_meets (link, placed, miss_max, error);
    }
  placed->joins = find_behind (other->polygon->outer, placed->from, placed->outward, miss_max, &placed->other_from)
                  && find_behind (other->polygon->outer, placed->to, placed->outward, miss_max, &placed->other_to);
  return TRUE;
}

/* A room of the same floor holds the middle of the wall's depth. */
static gboolean
is_blocked (const RcHouse *house, const RcPlacedOpening *placed)
{
  RcPoint end = { (placed->from.x + placed->to.x) / 2 + placed->outward.x / 2,
                  (placed->from.y + placed->to.y) / 2 + placed->outward.y / 2 };

  for (guint i = 0; i < house->rooms->len; i++)
    {
      const RcPlacedRoom *room = house->rooms->pdata[i];

      if (room->room->floor == placed->room->floor && rc_polygon_locate (room->polygon, end) > 0)
        return TRUE;
    }
  return FALSE;
}

static gboolean
place_opening (RcHouse *house, const RcPlacedRoom *room, const RcDoorLink *link, RcLength miss_max, GError **error)
{
  RcPlacedOpening *placed = g_new0 (RcPlacedOpening, 1);
  RcLength         depth = link->opening->depth;

  g_ptr_array_add (house->openings, placed);
  if (link->other_opening != NULL)
    depth = MAX (depth, link->other_opening->depth);
  placed->room = link->room;
  placed->opening = link->opening;
  placed->other = link->other;
  placed->other_opening = link->other_opening;
  rc_room_get_opening_ends (link->room, link->opening, &placed->from, &placed->to);
  rc_room_get_outward_step (link->room, link->opening->wall, depth, &placed->outward);
  placed->from = add (placed->from, room->at);
  placed->to = add (placed->to, room->at);
  if (link->opening->kind == RC_OPENING_WINDOW)
    return TRUE;
  if (link->other != NULL && link->other->floor == link->room->floor
      && !find_far_side (house, link, placed, miss_max, error))
    return FALSE;
  placed->blocked = !placed->joins && is_blocked (house, placed);
  return TRUE;
}

gboolean
rc_house_place_openings (RcHouse *house, RcLength miss_max, GError **error)
{
  g_autoptr (GHashTable) done = g_hash_table_new (NULL, NULL);

  for (guint i = 0; i < house->rooms->len; i++)
    {
      const RcPlacedRoom *room = house->rooms->pdata[i];

      for (guint k = 0; k < room->room->openings->len; k++)
        {
          const RcDoorLink *link = g_hash_table_lookup (house->links, room->room->openings->pdata[k]);

          if (g_hash_table_contains (done, link->opening))
            continue;
          if (link->other_opening != NULL)
            g_hash_table_add (done, (gpointer)link->other_opening);
          if (!place_opening (house, room, link, miss_max, error))
            return FALSE;
        }
    }
  return TRUE;
}
