#include "room.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"
#include "wall-arc.h"

/* How many walls a refusal asks to measure again. */
#define MAX_SUSPECTS_NAMED 4

static gboolean fail (const RcRoom *room, GError **error, const char *format, ...) G_GNUC_PRINTF (3, 4);

/* FALSE, with the room's name before the message. */
static gboolean
fail (const RcRoom *room, GError **error, const char *format, ...)
{
  g_autofree char *message = NULL;
  va_list          args;

  va_start (args, format);
  message = g_strdup_vprintf (format, args);
  va_end (args);
  g_set_error (error, RC_ERROR, RC_ERROR_GEOMETRY, "%s: %s", rc_room_get_name (room), message);
  return FALSE;
}

static char *
format_length (const RcRoom *room, RcLength length)
{
  return rc_length_format (length, rc_room_get_length_style (room));
}

static gboolean
check_wall (const RcRoom *room, guint i, GError **error)
{
  const RcWall    *wall = &g_array_index (room->walls, RcWall, i);
  g_autofree char *what = NULL, *bow = NULL;

  if (!isfinite (wall->bearing_degrees))
    return fail (room, error, _ ("wall %u has no bearing; give the way it is walked, as N, E, S, W or degrees"), i + 1);
  if (wall->length <= 0)
    return fail (room, error, _ ("wall %u has no length; measure it or leave it out"), i + 1);
  if (wall->length > RC_ROOM_MAX_SIDE)
    return fail (room, error, _ ("wall %u is longer than 1 km, the most a wall may have"), i + 1);
  if (wall->bow <= wall->length / 2 && wall->bow >= -wall->length / 2)
    return TRUE;
  what = rc_room_describe_wall (room, i);
  bow = format_length (room, wall->bow < 0 ? -wall->bow : wall->bow);
  return fail (room, error, _ ("%s bows by %s, but a wall may bow by at most half of its chord"), what, bow);
}

static gboolean
check_outline (const RcRoom *room, GError **error)
{
  for (guint i = 0; i < room->outline->len; i++)
    {
      const RcPoint *point = rc_ring_get (room->outline, i);

      if (MAX (ABS (point->x), ABS (point->y)) > RC_ROOM_MAX_SIDE)
        return fail (room, error, _ ("point %u lies farther than 1 km from the room's origin, the most it may"), i + 1);
    }
  return TRUE;
}

static gboolean
check_walls (const RcRoom *room, GError **error)
{
  guint n = rc_room_get_n_walls (room);

  if (n < 3)
    return fail (room, error, _ ("%u walls do not make a room; it takes at least three"), n);
  if (n > RC_ROOM_MAX_WALLS)
    return fail (room, error, _ ("%u walls are more than a room may have, %d"), n, RC_ROOM_MAX_WALLS);
  for (guint i = 0; i < room->walls->len; i++)
    if (!check_wall (room, i, error))
      return FALSE;
  return room->walls->len > 0 || check_outline (room, error);
}

static gboolean
check_closure (const RcRoom *room, const RcClosureLimits *limits, GError **error)
{
  RcClosure closure;
  g_autoptr (GString) suspects = g_string_new (NULL);
  g_autofree char *missed = NULL, *allowed = NULL;
  gboolean         closes;

  rc_room_compute_closure (room, &closure);
  closes = closure.error <= MAX (limits->error_max, limits->close_max);
  if (!closes)
    {
      for (guint i = 0; i < MIN (closure.suspects->len, MAX_SUSPECTS_NAMED); i++)
        {
          g_autofree char *wall = rc_room_describe_wall (room, g_array_index (closure.suspects, guint, i));

          g_string_append_printf (suspects, "%s%s", i == 0 ? "" : _ (", then "), wall);
        }
      missed = format_length (room, closure.error);
      allowed = format_length (room, limits->error_max);
      fail (room, error, _ ("the walls miss closing by %s, 1 part in %.0f, more than the %s allowed; measure again %s"),
            missed, floor (closure.ratio), allowed, suspects->str);
    }
  rc_closure_clear (&closure);
  return closes;
}

/* --- walls that meet where they should not --- */

static int
side_of (RcPoint a, RcPoint b, RcPoint p)
{
  __int128 cross = (__int128)(b.x - a.x) * (p.y - a.y) - (__int128)(b.y - a.y) * (p.x - a.x);

  return cross > 0 ? 1 : cross < 0 ? -1 : 0;
}

static gboolean
is_between (RcPoint a, RcPoint b, RcPoint p)
{
  return MIN (a.x, b.x) <= p.x && p.x <= MAX (a.x, b.x) && MIN (a.y, b.y) <= p.y && p.y <= MAX (a.y, b.y);
}

/* Closed segments a-b and c-d share a point. */
static gboolean
segments_meet (RcPoint a, RcPoint b, RcPoint c, RcPoint d)
{
  int abc = side_of (a, b, c), abd = side_of (a, b, d), cda = side_of (c, d, a), cdb = side_of (c, d, b);

  if (abc * abd < 0 && cda * cdb < 0)
    return TRUE;
  return (abc == 0 && is_between (a, b, c)) || (abd == 0 && is_between (a, b, d)) || (cda == 0 && is_between (c, d, a))
         || (cdb == 0 && is_between (c, d, b));
}

/* Neighbours a-b and b-d share b; they fold back when d lies on the line of a-b, on a's side of b. */
static gboolean
folds_back (RcPoint a, RcPoint b, RcPoint d)
{
  __int128 dot = (__int128)(b.x - a.x) * (d.x - b.x) + (__int128)(b.y - a.y) * (d.y - b.y);

  return side_of (a, b, d) == 0 && dot < 0;
}

/* The first two edges of the ring that meet away from a shared end. */
static gboolean
find_meeting_edges (const RcRing *ring, guint *first, guint *second)
{
  guint n = ring->len;

  for (guint i = 0; i < n; i++)
    for (guint j = i + 1; j < n; j++)
      {
        RcPoint  a = *rc_ring_get (ring, i), b = *rc_ring_get (ring, (i + 1) % n);
        RcPoint  c = *rc_ring_get (ring, j), d = *rc_ring_get (ring, (j + 1) % n);
        gboolean meet;

        if (j == i + 1)
          meet = folds_back (a, b, d);
        else if (i == 0 && j == n - 1)
          meet = folds_back (c, d, b);
        else
          meet = segments_meet (a, b, c, d);
        if (meet)
          {
            *first = i;
            *second = j;
            return TRUE;
          }
      }
  return FALSE;
}

/* --- the outline with its curved walls --- */

static void
append_edge (RcRing *ring, GArray *walls, RcPoint point, guint wall)
{
  if (ring->len > 0 && rc_ring_get (ring, ring->len - 1)->x == point.x
      && rc_ring_get (ring, ring->len - 1)->y == point.y)
    {
      g_array_index (walls, guint, walls->len - 1) = wall;
      return;
    }
  g_array_append_val (ring, point);
  g_array_append_val (walls, wall);
}

/* Ring of all points; *wall_of gets, for each of its edges, the wall that it is part of. Both (transfer full). */
static RcRing *
new_outer_ring (const RcRoom *room, GArray **wall_of)
{
  g_autoptr (GArray) corners = rc_room_compute_corners (room);
  RcRing  *ring = rc_ring_new ();
  gboolean right = rc_ring_compute_area (corners) >= 0;

  *wall_of = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 0; i < corners->len; i++)
    {
      RcPoint from = *rc_ring_get (corners, i), to = *rc_ring_get (corners, (i + 1) % corners->len);
      g_autoptr (GArray) arc = rc_ring_new ();

      append_edge (ring, *wall_of, from, i);
      if (i < room->walls->len)
        rc_wall_arc_append (arc, from, to, g_array_index (room->walls, RcWall, i).bow, right);
      for (guint k = 0; k < arc->len; k++)
        append_edge (ring, *wall_of, *rc_ring_get (arc, k), i);
    }
  return ring;
}

static gboolean
fail_on_meeting_walls (const RcRoom *room, const RcRing *ring, const GArray *wall_of, GError **error)
{
  guint            first, second;
  g_autofree char *wall_a = NULL, *wall_b = NULL;

  if (!find_meeting_edges (ring, &first, &second))
    return fail (room, error, _ ("the walls make no floor; measure them again"));
  first = g_array_index (wall_of, guint, first);
  second = g_array_index (wall_of, guint, second);
  wall_a = rc_room_describe_wall (room, first);
  if (first == second)
    return fail (room, error, _ ("%s bows into itself; measure its bow again"), wall_a);
  wall_b = rc_room_describe_wall (room, second);
  return fail (room, error, _ ("%s meets %s where no corner is; the walls of a room must not cross or touch"), wall_a,
               wall_b);
}

static RcPolygon *
new_outer_polygon (const RcRoom *room, GError **error)
{
  g_autoptr (GArray) wall_of = NULL;
  g_autoptr (GArray) ring = new_outer_ring (room, &wall_of);
  g_autoptr (RcPolygon) polygon = rc_polygon_new ();

  g_array_unref (polygon->outer);
  polygon->outer = rc_ring_copy (ring);
  rc_polygon_normalize (polygon);
  if (!rc_polygon_check (polygon, NULL))
    {
      fail_on_meeting_walls (room, ring, wall_of, error);
      return NULL;
    }
  return g_steal_pointer (&polygon);
}

/* --- cut-outs --- */

static RcPolygon *
new_cutout_polygon (const RcRoom *room, guint i, const RcPolygon *outer, GError **error)
{
  g_autoptr (GArray) cutout = rc_cutout_compute_ring (room->cutouts->pdata[i]);
  g_autoptr (RcPolygon) polygon = rc_polygon_new ();
  g_autoptr (GError) fault = NULL;

  g_array_unref (polygon->outer);
  polygon->outer = rc_ring_copy (cutout);
  rc_polygon_normalize (polygon);
  if (!rc_polygon_check (polygon, &fault))
    {
      fail (room, error, _ ("cut-out %u is no shape: %s"), i + 1, fault->message);
      return NULL;
    }
  for (guint k = 0; k < cutout->len; k++)
    if (rc_polygon_locate (outer, *rc_ring_get (cutout, k)) < 0)
      {
        fail (room, error, _ ("corner %u of cut-out %u lies outside the room; a cut-out must lie within its walls"),
              k + 1, i + 1);
        return NULL;
      }
  return g_steal_pointer (&polygon);
}

/* Takes one cut-out off the floor, which it may touch at the walls. */
static RcPolygon *
cut_off (const RcRoom *room, RcPolygon *floor, const RcPolygon *cutout, guint i, GError **error)
{
  g_autoptr (GPtrArray) whole = rc_region_new (), part = rc_region_new (), rest = NULL;
  RcArea off = rc_polygon_compute_area (cutout), before = rc_polygon_compute_area (floor), after;

  g_ptr_array_add (whole, rc_polygon_copy (floor));
  g_ptr_array_add (part, rc_polygon_copy (cutout));
  rest = rc_region_difference (whole, part, error);
  if (rest == NULL)
    {
      g_prefix_error (error, "%s: ", rc_room_get_name (room));
      return NULL;
    }
  if (rest->len != 1)
    {
      fail (room, error,
            rest->len == 0 ? _ ("cut-out %u leaves no floor") : _ ("cut-out %u parts the floor; enter two rooms"),
            i + 1);
      return NULL;
    }
  after = rc_region_compute_area (rest);
  /* Corners inside, sides not: over a wall that juts in, or over another cut-out. A tick's breadth round it is
   * rounding. */
  if (before - after < off - 4 * rc_ring_compute_length (cutout->outer))
    {
      fail (room, error, _ ("cut-out %u reaches through a wall or over another cut-out"), i + 1);
      return NULL;
    }
  return rc_polygon_copy (rest->pdata[0]);
}

static RcPolygon *
cut_out_all (const RcRoom *room, RcPolygon *outer, GError **error)
{
  g_autoptr (RcPolygon) with_holes = rc_polygon_copy (outer);
  g_autoptr (RcPolygon) floor = rc_polygon_copy (outer);
  g_autoptr (GPtrArray) cutouts = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_polygon_free);

  for (guint i = 0; i < room->cutouts->len; i++)
    {
      RcPolygon *cutout = new_cutout_polygon (room, i, outer, error);

      if (cutout == NULL)
        return NULL;
      g_ptr_array_add (cutouts, cutout);
      g_ptr_array_add (with_holes->holes, rc_ring_copy (cutout->outer));
    }
  /* The usual case, exact: all stand free. */
  rc_polygon_normalize (with_holes);
  if (rc_polygon_check (with_holes, NULL))
    return g_steal_pointer (&with_holes);
  for (guint i = 0; i < cutouts->len; i++)
    {
      RcPolygon *rest = cut_off (room, floor, cutouts->pdata[i], i, error);

      if (rest == NULL)
        return NULL;
      rc_polygon_free (floor);
      floor = rest;
    }
  rc_polygon_normalize (floor);
  return g_steal_pointer (&floor);
}

RcPolygon *
rc_room_compute_polygon (const RcRoom *room, const RcClosureLimits *limits, GError **error)
{
  g_autoptr (RcPolygon) outer = NULL;
  g_autoptr (RcPolygon) floor = NULL;

  g_return_val_if_fail (room->walls->len == 0 || room->outline->len == 0, NULL);
  if (!check_walls (room, error) || !check_closure (room, limits, error))
    return NULL;
  outer = new_outer_polygon (room, error);
  if (outer == NULL || !rc_room_check_openings (room, error))
    return NULL;
  floor = cut_out_all (room, outer, error);
  return g_steal_pointer (&floor);
}
