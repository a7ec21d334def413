#include "room-parts.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "measure-edit.h"
#include "room-corners.h"
#include "room-edit.h"
#include "rowcut-error.h"

#define NEAR_CORNER (RC_TICKS_PER_MM) /* a line that ends so near a corner ends on it */
#define NEAR_WALL   3                 /* ticks: rounding of sloping walls */

/* --- splitting --- */

/* Where the line meets a wall: how far along the line, how far along the wall. */
typedef struct
{
  guint    wall;
  double   t;
  RcLength along;
} Hit;

static gboolean
find_hit (RcPoint from, RcPoint to, RcPoint a, RcPoint b, Hit *hit)
{
  double dx = (double)(to.x - from.x), dy = (double)(to.y - from.y);
  double ex = (double)(b.x - a.x), ey = (double)(b.y - a.y), length = hypot (ex, ey), cross = dx * ey - dy * ex;

  if (fabs (cross) < 1e-9 * hypot (dx, dy) * length || length == 0)
    return FALSE;
  double ox = (double)(a.x - from.x), oy = (double)(a.y - from.y);
  double t = (ox * ey - oy * ex) / cross, s = (ox * dy - oy * dx) / cross * length;
  if (s < -0.5 || s > length + 0.5)
    return FALSE;
  hit->t = t;
  hit->along = llround (CLAMP (s, 0, length));
  return TRUE;
}

/* The walls met nearest the middle of the line, before it and behind it. */
static gboolean
find_hits (const RcRing *corners, RcPoint from, RcPoint to, Hit hits[2])
{
  gboolean has[2] = { FALSE, FALSE };

  for (guint w = 0; w < corners->len; w++)
    {
      Hit hit = { .wall = w };
      if (!find_hit (from, to, *rc_ring_get (corners, w), *rc_ring_get (corners, (w + 1) % corners->len), &hit))
        continue;
      int side = hit.t < 0.5 ? 0 : 1;
      if (!has[side] || fabs (hit.t - 0.5) < fabs (hits[side].t - 0.5))
        hits[side] = hit;
      has[side] = TRUE;
    }
  return has[0] && has[1];
}

/* A corner where the line meets the wall; its index. */
static gboolean
put_corner (RcRoom *room, const Hit *hit, guint *corner)
{
  RcLength length = g_array_index (room->walls, RcWall, hit->wall).length;

  *corner = hit->wall;
  if (hit->along <= NEAR_CORNER)
    return TRUE;
  *corner = (hit->wall + 1) % room->walls->len;
  if (hit->along >= length - NEAR_CORNER)
    return TRUE;
  *corner = hit->wall + 1;
  return rc_room_edit_insert_corner (room, hit->wall, hit->along);
}

static gboolean
put_corners (RcRoom *room, Hit hits[2], guint *first, guint *last)
{
  guint n = room->walls->len;

  /* The later wall first: what is put in moves those after it. */
  if (hits[0].wall < hits[1].wall)
    {
      Hit swapped = hits[0];
      hits[0] = hits[1];
      hits[1] = swapped;
    }
  if (hits[0].wall == hits[1].wall || !put_corner (room, &hits[0], last))
    return FALSE;
  guint before = room->walls->len;
  if (!put_corner (room, &hits[1], first))
    return FALSE;
  if (*last >= hits[1].wall + 1 && room->walls->len > before)
    ++*last;
  if (*last < *first)
    {
      guint swapped = *first;
      *first = *last;
      *last = swapped;
    }
  return *last - *first >= 2 && *last - *first <= room->walls->len - 2 && room->walls->len >= n;
}

/* Moves what is given from the room's origin so that `origin` is the new one. */
static void
move_cutouts (RcRoom *part, RcPoint origin)
{
  part->at.x += origin.x;
  part->at.y += origin.y;
  for (guint c = 0; c < part->cutouts->len; c++)
    rc_cutout_move (g_ptr_array_index (part->cutouts, c), (RcPoint){ -origin.x, -origin.y });
}

/* Keeps of `part`, a copy of the whole, the corners from `first` on round to `last`, and what stands in their walls. */
static void
keep_part (RcRoom *part, const RcRing *corners, guint first, guint last)
{
  guint n = corners->len, n_kept = (last + n - first) % n;
  g_autoptr (GArray) walls = g_steal_pointer (&part->walls);
  RcRoom *closing = rc_room_new (NULL, NULL);

  g_array_set_size (part->diagonals, 0); /* between corners that are apart now */
  part->walls = g_array_new (FALSE, TRUE, sizeof (RcWall));
  for (guint k = 0; k < n_kept; k++)
    g_array_append_val (part->walls, g_array_index (walls, RcWall, (first + k) % n));
  /* The new wall, back to the start. */
  g_array_append_val (closing->outline, *rc_ring_get (corners, last));
  g_array_append_val (closing->outline, *rc_ring_get (corners, first));
  rc_room_edit_make_walls (closing);
  g_array_append_val (part->walls, g_array_index (closing->walls, RcWall, 0));
  rc_room_free (closing);
  for (guint i = part->openings->len; i-- > 0;)
    {
      RcOpening *opening = g_ptr_array_index (part->openings, i);
      guint      k = (opening->wall + n - first) % n;
      if (k >= n_kept)
        g_ptr_array_remove_index (part->openings, i);
      else
        opening->wall = k;
    }
  move_cutouts (part, *rc_ring_get (corners, first));
}

/* Which of the two rings a cut-out lies in; -1: across the line. */
static int
find_side (const RcCutout *thing, const RcRing *ring)
{
  g_autoptr (GArray) cutout = rc_cutout_compute_ring (thing);
  guint n_in = 0, n_out = 0;

  for (guint i = 0; i < cutout->len; i++)
    {
      int where = rc_ring_locate (ring, *rc_ring_get (cutout, i));
      n_in += where > 0;
      n_out += where < 0;
    }
  return n_in && n_out ? -1 : n_in ? 1 : 0;
}

static gboolean
part_cutouts (RcRoom *part, const RcRing *ring)
{
  for (guint c = part->cutouts->len; c-- > 0;)
    {
      int side = find_side (g_ptr_array_index (part->cutouts, c), ring);
      if (side < 0)
        return FALSE;
      if (side == 0)
        g_ptr_array_remove_index (part->cutouts, c);
    }
  return TRUE;
}

static RcRing *
copy_stretch (const RcRing *corners, guint first, guint last)
{
  RcRing *ring = rc_ring_new ();

  for (guint i = first;; i = (i + 1) % corners->len)
    {
      g_array_append_val (ring, *rc_ring_get (corners, i));
      if (i == last)
        return ring;
    }
}

static gboolean
fail (const RcRoom *room, GError **error, const char *message)
{
  g_set_error (error, RC_ERROR, RC_ERROR_GEOMETRY, "%s: %s", rc_room_get_name (room), message);
  return FALSE;
}

/* The whole, with corners where the line meets it, as two parts. */
static gboolean
split (RcRoom *whole, RcPoint from, RcPoint to, RcRoom **one, RcRoom **two, GError **error)
{
  Hit   hits[2];
  guint first = 0, last = 0;

  rc_room_edit_make_walls (whole);
  g_autoptr (GArray) before = rc_room_compute_corners (whole);
  if (!find_hits (before, from, to, hits))
    return fail (whole, error, _ ("the line does not run from one wall to another"));
  if (!put_corners (whole, hits, &first, &last))
    return fail (whole, error, _ ("the line must end in two straight walls, beside their openings"));
  g_autoptr (GArray) corners = rc_room_compute_corners (whole);
  g_autoptr (GArray) inner = copy_stretch (corners, first, last);
  g_autoptr (GArray) outer = copy_stretch (corners, last, first);
  *one = rc_room_copy (whole);
  *two = rc_room_copy (whole);
  if (!part_cutouts (*one, outer) || !part_cutouts (*two, inner))
    return fail (whole, error, _ ("the line crosses a cut-out"));
  keep_part (*one, corners, last, first);
  keep_part (*two, corners, first, last);
  return TRUE;
}

/* Doors that led to the whole lead to the part that they stand before now. */
static void
follow_doors (RcMeasure *measure, const char *whole, const RcRoom *part)
{
  for (guint i = 0; i < part->openings->len; i++)
    {
      const RcOpening *opening = g_ptr_array_index (part->openings, i);
      RcRoom          *other = opening->to_room ? rc_measure_find_room (measure, opening->to_room) : NULL;
      for (guint k = 0; other && k < other->openings->len; k++)
        {
          RcOpening *back = g_ptr_array_index (other->openings, k);
          if (g_strcmp0 (back->to_room, whole) != 0
              || (back->to_opening && !g_str_equal (back->to_opening, opening->id)))
            continue;
          g_free (back->to_room);
          back->to_room = g_strdup (part->id);
        }
    }
}

RcRoom *
rc_room_parts_split (RcMeasure *measure, const char *id, RcPoint from, RcPoint to, const char *name, GError **error)
{
  RcRoom *room = rc_measure_find_room (measure, id);
  g_autoptr (RcRoom) whole = rc_room_copy (room);
  g_autoptr (RcRoom) one = NULL;
  g_autoptr (RcRoom) two = NULL;

  if (!split (whole, from, to, &one, &two, error))
    return NULL;
  RcRoom *added = rc_measure_edit_add_room (measure, name, room->floor, 0, 0);
  rc_room_edit_restore (room, one);
  rc_room_edit_restore (added, two);
  added->placed = TRUE;
  added->spread = room->spread;
  follow_doors (measure, id, added);
  for (guint a = 0; a < measure->areas->len; a++)
    {
      const RcFloorArea *area = g_ptr_array_index (measure->areas, a);
      for (guint r = 0; r < area->rooms->len; r++)
        if (g_str_equal (g_ptr_array_index (area->rooms, r), id))
          {
            rc_measure_edit_put_room_in_area (measure, added->id, area->id);
            return added;
          }
    }
  return added;
}

/* --- merging --- */

static RcPolygon *
new_polygon_in_house (const RcRoom *room)
{
  RcRing *ring = rc_room_compute_corners (room);

  for (guint i = 0; i < ring->len; i++)
    {
      rc_ring_get (ring, i)->x += room->at.x;
      rc_ring_get (ring, i)->y += room->at.y;
    }
  RcPolygon *polygon = rc_polygon_new_take (ring);
  rc_polygon_normalize (polygon);
  return polygon;
}

static RcPolygon *
unite (const RcRoom *first, const RcRoom *second, const RcRing *gap, GError **error)
{
  g_autoptr (GPtrArray) one = rc_region_new (), two = rc_region_new ();

  g_ptr_array_add (one, new_polygon_in_house (first));
  g_ptr_array_add (two, new_polygon_in_house (second));
  if (gap)
    {
      g_autoptr (GPtrArray) wall = rc_region_new ();
      RcPolygon *polygon = rc_polygon_new_take (rc_ring_copy (gap));
      rc_polygon_normalize (polygon);
      g_ptr_array_add (wall, polygon);
      GPtrArray *wider = rc_region_union (two, wall, error);
      if (wider == NULL)
        return NULL;
      g_ptr_array_unref (two);
      two = wider;
    }
  g_autoptr (GPtrArray) all = rc_region_union (one, two, error);
  if (all == NULL)
    return NULL;
  if (all->len != 1 || ((RcPolygon *)all->pdata[0])->holes->len != 0)
    {
      fail (first, error, _ ("the two rooms do not make one floor"));
      return NULL;
    }
  return rc_polygon_copy (all->pdata[0]);
}

/* How far the point is off the stretch from-to; beyond its ends far. */
static double
get_distance (RcPoint from, RcPoint to, RcPoint point)
{
  double dx = (double)(to.x - from.x), dy = (double)(to.y - from.y), length = hypot (dx, dy);
  double px = (double)(point.x - from.x), py = (double)(point.y - from.y);
  double along = length > 0 ? (px * dx + py * dy) / length : 0;

  if (along < -NEAR_WALL || along > length + NEAR_WALL)
    return INFINITY;
  return fabs (px * dy - py * dx) / MAX (length, 1);
}

/* Puts the opening, whose ends lie there in the house, into the wall of `ring` that it stands in; FALSE: in none. */
static gboolean
put_in_wall (RcOpening *opening, const RcRing *ring, RcPoint start, RcPoint end)
{
  for (guint w = 0; w < ring->len; w++)
    {
      RcPoint from = *rc_ring_get (ring, w), to = *rc_ring_get (ring, (w + 1) % ring->len);
      if (get_distance (from, to, start) > NEAR_WALL || get_distance (from, to, end) > NEAR_WALL)
        continue;
      RcLength one = rc_point_distance (from, start), two = rc_point_distance (from, end);
      opening->wall = w;
      opening->hinge_at_end = one <= two ? opening->hinge_at_end : !opening->hinge_at_end;
      opening->offset = CLAMP (MIN (one, two), 0, MAX (rc_point_distance (from, to) - opening->width, 0));
      return TRUE;
    }
  return FALSE;
}

/* Openings and bows of `from` go into `into`, which has the walls of `ring`. */
static void
take_over (RcRoom *into, const RcRing *ring, const RcRoom *from)
{
  for (guint i = 0; i < from->openings->len; i++)
    {
      RcOpening *opening = rc_opening_copy (g_ptr_array_index (from->openings, i));
      RcPoint    start = { 0 }, end = { 0 };
      rc_room_get_opening_ends (from, opening, &start, &end);
      start = (RcPoint){ start.x + from->at.x, start.y + from->at.y };
      end = (RcPoint){ end.x + from->at.x, end.y + from->at.y };
      if (!put_in_wall (opening, ring, start, end))
        {
          rc_opening_free (opening);
          continue;
        }
      while (rc_room_find_opening (into, opening->id))
        {
          char *id = g_strconcat (opening->id, "b", NULL);
          g_free (opening->id);
          opening->id = id;
        }
      g_ptr_array_add (into->openings, opening);
    }
  for (guint w = 0; w < from->walls->len; w++)
    {
      RcPoint a, b;
      rc_room_get_wall_ends (from, w, &a, &b);
      for (guint k = 0; k < ring->len; k++)
        {
          RcPoint c = *rc_ring_get (ring, k), d = *rc_ring_get (ring, (k + 1) % ring->len);
          c = (RcPoint){ c.x - from->at.x, c.y - from->at.y };
          d = (RcPoint){ d.x - from->at.x, d.y - from->at.y };
          gboolean alike = (rc_point_distance (a, c) == 0 && rc_point_distance (b, d) == 0)
                           || (rc_point_distance (a, d) == 0 && rc_point_distance (b, c) == 0);
          if (alike)
            g_array_index (into->walls, RcWall, k).bow = g_array_index (from->walls, RcWall, w).bow;
        }
    }
  for (guint c = 0; c < from->cutouts->len; c++)
    {
      RcCutout *cutout = rc_cutout_copy (g_ptr_array_index (from->cutouts, c));
      rc_cutout_move (cutout, (RcPoint){ from->at.x - into->at.x, from->at.y - into->at.y });
      g_ptr_array_add (into->cutouts, cutout);
    }
}

/* Doors of other rooms that led to `from` lead to `to`, by the other's name there. */
static void
lead_doors_to (RcMeasure *measure, const char *from, const char *to)
{
  for (guint r = 0; r < measure->rooms->len; r++)
    {
      RcRoom *room = g_ptr_array_index (measure->rooms, r);
      for (guint i = 0; i < room->openings->len; i++)
        {
          RcOpening *opening = g_ptr_array_index (room->openings, i);
          if (g_strcmp0 (opening->to_room, from) != 0)
            continue;
          g_free (opening->to_room);
          opening->to_room = g_strdup (to);
          g_clear_pointer (&opening->to_opening, g_free);
        }
    }
}

/* Doors of other rooms keep no name of an opening that went with the wall between. */
static void
forget_lost_openings (RcMeasure *measure, const RcRoom *whole)
{
  for (guint r = 0; r < measure->rooms->len; r++)
    {
      RcRoom *room = g_ptr_array_index (measure->rooms, r);
      for (guint i = 0; i < room->openings->len; i++)
        {
          RcOpening *opening = g_ptr_array_index (room->openings, i);
          if (opening->to_opening && g_strcmp0 (opening->to_room, whole->id) == 0
              && rc_room_find_opening (whole, opening->to_opening) == NULL)
            g_clear_pointer (&opening->to_opening, g_free);
        }
    }
}

gboolean
rc_room_parts_merge (RcMeasure *measure, const char *first_id, const char *second_id, const RcRing *gap, GError **error)
{
  RcRoom *first = rc_measure_find_room (measure, first_id), *second = rc_measure_find_room (measure, second_id);
  g_autoptr (RcRoom) whole = rc_room_new (first->id, first->name);
  g_autoptr (RcPolygon) polygon = unite (first, second, gap, error);

  if (polygon == NULL)
    return FALSE;
  whole->at = (RcPoint){ 0, 0 };
  g_array_append_vals (whole->outline, polygon->outer->data, polygon->outer->len);
  rc_room_edit_make_walls (whole);
  take_over (whole, polygon->outer, first);
  take_over (whole, polygon->outer, second);
  rc_room_edit_restore (first, whole);
  first->placed |= second->placed;
  lead_doors_to (measure, second_id, first_id);
  forget_lost_openings (measure, first);
  for (guint i = 0; i < first->openings->len; i++)
    {
      RcOpening *opening = g_ptr_array_index (first->openings, i);
      if (g_strcmp0 (opening->to_room, first_id) != 0)
        continue;
      g_clear_pointer (&opening->to_room, g_free);
      g_clear_pointer (&opening->to_opening, g_free);
    }
  return rc_measure_edit_remove_room (measure, second_id);
}
