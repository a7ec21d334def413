#include "room-corners.h"

#include <math.h>

#include "room-edit.h"

#define STRAIGHT_MAX 0.05 /* sine of the angle at a corner that counts as none: 3 degrees */
#define SAME_BEARING 1e-6

static RcPoint
subtract (RcPoint a, RcPoint b)
{
  return (RcPoint){ a.x - b.x, a.y - b.y };
}

static gboolean
is_same (RcPoint a, RcPoint b)
{
  return a.x == b.x && a.y == b.y;
}

static RcPoint
get_point (const RcRing *ring, guint i)
{
  g_assert (ring->len > 0); /* a room has corners */
  return *rc_ring_get (ring, i % ring->len);
}

static double
compute_bearing (RcPoint from, RcPoint to)
{
  double degrees = atan2 ((double)(to.x - from.x), (double)(to.y - from.y)) * 180 / G_PI;
  return degrees < 0 ? degrees + 360 : degrees;
}

/* Where an opening that began at `place` begins on the wall from-to; FALSE where it is wider. */
static gboolean
fit_opening (RcOpening *opening, RcPoint place, RcPoint from, RcPoint to)
{
  RcLength length = rc_point_distance (from, to);
  RcPoint  along = subtract (to, from), off = subtract (place, from);

  if (opening->width > length)
    return FALSE;
  double foot = ((double)along.x * (double)off.x + (double)along.y * (double)off.y) / (double)length;
  opening->offset = CLAMP (llround (foot), 0, length - opening->width);
  return TRUE;
}

static gboolean
set_wall (RcRoom *room, guint w, RcPoint from, RcPoint to)
{
  RcWall *wall = &g_array_index (room->walls, RcWall, w);
  double  bearing = compute_bearing (from, to), off = fabs (bearing - wall->bearing_degrees);

  if (is_same (from, to))
    return FALSE;
  if (off > SAME_BEARING && fabs (off - 360) > SAME_BEARING)
    wall->bearing_degrees = bearing;
  wall->length = rc_point_distance (from, to);
  wall->bow = CLAMP (wall->bow, -wall->length / 2, wall->length / 2);
  return TRUE;
}

/* The room's origin is its first corner: what is given from it moves back. */
static void
move_origin (RcRoom *room, RcPoint by)
{
  room->at.x += by.x;
  room->at.y += by.y;
  for (guint c = 0; c < room->cutouts->len; c++)
    rc_cutout_move (g_ptr_array_index (room->cutouts, c), (RcPoint){ -by.x, -by.y });
}

static gboolean
set_all (RcRoom *room, const RcRing *old, const RcRing *corners)
{
  guint n = old->len;

  for (guint w = 0; w < n; w++)
    {
      RcPoint by_from = subtract (get_point (corners, w), get_point (old, w));
      RcPoint by_to = subtract (get_point (corners, w + 1), get_point (old, w + 1));
      if (!is_same (by_from, by_to) && !set_wall (room, w, get_point (corners, w), get_point (corners, w + 1)))
        return FALSE;
    }
  for (guint i = 0; i < room->openings->len; i++)
    {
      RcOpening *opening = g_ptr_array_index (room->openings, i);
      guint      w = opening->wall;
      if (w >= n)
        continue;
      RcPoint from = get_point (old, w), to = get_point (old, w + 1);
      RcPoint by_from = subtract (get_point (corners, w), from), by_to = subtract (get_point (corners, w + 1), to);
      double  share = (double)opening->offset / (double)MAX (rc_point_distance (from, to), 1);
      RcPoint place
          = { from.x + llround ((double)(to.x - from.x) * share), from.y + llround ((double)(to.y - from.y) * share) };
      if (!is_same (by_from, by_to)
          && !fit_opening (opening, place, get_point (corners, w), get_point (corners, w + 1)))
        return FALSE;
    }
  move_origin (room, subtract (get_point (corners, 0), get_point (old, 0)));
  return TRUE;
}

/* Takes over the shape of `from`, which is left empty of it. */
static void
take_shape (RcRoom *room, RcRoom *from)
{
  RcRoom old = *room;

  room->walls = from->walls;
  room->outline = from->outline;
  room->cutouts = from->cutouts;
  room->openings = from->openings;
  room->diagonals = from->diagonals;
  room->at = from->at;
  from->walls = old.walls;
  from->outline = old.outline;
  from->cutouts = old.cutouts;
  from->openings = old.openings;
  from->diagonals = old.diagonals;
}

void
rc_room_edit_restore (RcRoom *room, RcRoom *kept)
{
  take_shape (room, kept);
}

gboolean
rc_room_edit_set_corners (RcRoom *room, const RcRing *corners)
{
  g_autoptr (RcRoom) changed = rc_room_copy (room);

  rc_room_edit_make_walls (changed);
  g_autoptr (GArray) old = rc_room_compute_corners (changed);
  if (corners->len != old->len || !set_all (changed, old, corners))
    return FALSE;
  take_shape (room, changed);
  return TRUE;
}

gboolean
rc_room_edit_insert_corner (RcRoom *room, guint wall, RcLength along)
{
  rc_room_edit_make_walls (room);
  if (wall >= room->walls->len)
    return FALSE;
  RcWall before = g_array_index (room->walls, RcWall, wall);
  if (along <= 0 || along >= before.length || before.bow != 0)
    return FALSE;
  for (guint i = 0; i < room->openings->len; i++)
    {
      const RcOpening *opening = g_ptr_array_index (room->openings, i);
      if (opening->wall == wall && opening->offset < along && opening->offset + opening->width > along)
        return FALSE;
    }
  RcWall after = { .bearing_degrees = before.bearing_degrees, .length = before.length - along };
  g_array_index (room->walls, RcWall, wall).length = along;
  g_array_insert_val (room->walls, wall + 1, after);
  rc_room_edit_shift_diagonals (room, wall + 1, 1);
  for (guint i = 0; i < room->openings->len; i++)
    {
      RcOpening *opening = g_ptr_array_index (room->openings, i);
      if (opening->wall == wall && opening->offset >= along)
        {
          opening->wall++;
          opening->offset -= along;
        }
      else if (opening->wall > wall)
        opening->wall++;
    }
  return TRUE;
}

/* No corner at all: the wall before and the one after run straight on. */
static gboolean
is_straight_at (const RcRing *corners, guint corner)
{
  guint   n = corners->len;
  RcPoint a = get_point (corners, corner + n - 1), b = get_point (corners, corner), c = get_point (corners, corner + 1);
  double  cross = (double)(b.x - a.x) * (double)(c.y - b.y) - (double)(b.y - a.y) * (double)(c.x - b.x);

  return fabs (cross) <= 2 * (double)rc_point_distance (a, c);
}

static gboolean
has_openings (const RcRoom *room, guint wall)
{
  for (guint i = 0; i < room->openings->len; i++)
    if (((const RcOpening *)g_ptr_array_index (room->openings, i))->wall == wall)
      return TRUE;
  return FALSE;
}

gboolean
rc_room_edit_remove_corner (RcRoom *room, guint corner)
{
  rc_room_edit_make_walls (room);
  guint n = room->walls->len, before = (corner + n - 1) % MAX (n, 1);
  if (n <= 3 || corner >= n || g_array_index (room->walls, RcWall, corner).bow != 0
      || g_array_index (room->walls, RcWall, before).bow != 0)
    return FALSE;
  g_autoptr (GArray) corners = rc_room_compute_corners (room);
  if (!is_straight_at (corners, corner) && (has_openings (room, corner) || has_openings (room, before)))
    return FALSE;
  RcPoint  from = get_point (corners, before), at = get_point (corners, corner), to = get_point (corners, corner + 1);
  RcLength length = rc_point_distance (from, at);
  if (!set_wall (room, before, from, to))
    return FALSE;
  g_array_remove_index (room->walls, corner);
  rc_room_edit_shift_diagonals (room, corner, -1);
  for (guint i = 0; i < room->openings->len; i++)
    {
      RcOpening *opening = g_ptr_array_index (room->openings, i);
      if (opening->wall == corner)
        {
          opening->wall = before;
          opening->offset += length;
        }
      if (opening->wall >= corner && opening->wall > 0)
        opening->wall--;
    }
  if (corner == 0)
    move_origin (room, to);
  return TRUE;
}

/* Moving a wall. */

typedef struct
{
  double x, y;
} Way;

static Way
get_way (RcPoint from, RcPoint to)
{
  double length = hypot ((double)(to.x - from.x), (double)(to.y - from.y));
  return length > 0 ? (Way){ (double)(to.x - from.x) / length, (double)(to.y - from.y) / length } : (Way){ 0, 0 };
}

/* Out of the room, square to wall w. */
static Way
get_outward (const RcRing *corners, guint w)
{
  Way way = get_way (get_point (corners, w), get_point (corners, w + 1));
  return rc_ring_compute_area (corners) >= 0 ? (Way){ way.y, -way.x } : (Way){ -way.y, way.x };
}

/* The step of the wall's end along its neighbour for each 1 that the wall moves out; FALSE where the neighbour runs
 * straight on. */
static gboolean
get_slide (const RcRing *corners, guint w, gboolean after, Way *slide)
{
  guint  n = corners->len, corner = after ? w + 1 : w;
  Way    out = get_outward (corners, w);
  Way    way = after ? get_way (get_point (corners, corner), get_point (corners, corner + 1))
                     : get_way (get_point (corners, corner + n - 1), get_point (corners, corner));
  double sine = way.x * out.x + way.y * out.y;

  if (fabs (sine) < STRAIGHT_MAX)
    return FALSE;
  *slide = (Way){ way.x / sine, way.y / sine };
  return TRUE;
}

double
rc_room_edit_get_stretch (const RcRoom *room, guint wall, gboolean after)
{
  g_autoptr (GArray) corners = rc_room_compute_corners (room);
  Way slide;

  if (wall >= corners->len || !get_slide (corners, wall, after, &slide))
    return 0;
  guint n = corners->len, corner = after ? wall + 1 : wall;
  Way   way = after ? get_way (get_point (corners, corner + 1), get_point (corners, corner))
                    : get_way (get_point (corners, corner + n - 1), get_point (corners, corner));
  return slide.x * way.x + slide.y * way.y;
}

/* A wall without length before wall `at`, to be drawn out: its neighbours run straight on. */
static void
insert_blank (RcRoom *room, guint at, double bearing)
{
  rc_room_edit_insert_wall (room, at, bearing, 0);
}

static RcPoint
step_along (RcPoint point, Way way, RcLength out)
{
  return (RcPoint){ point.x + llround (way.x * (double)out), point.y + llround (way.y * (double)out) };
}

gboolean
rc_room_edit_move_wall (RcRoom *room, guint *wall, RcLength out)
{
  g_autoptr (RcRoom) changed = rc_room_copy (room);
  Way   slides[2] = { { 0, 0 }, { 0, 0 } };
  guint w = *wall;

  rc_room_edit_make_walls (changed);
  g_autoptr (GArray) before = rc_room_compute_corners (changed);
  if (w >= before->len)
    return FALSE;
  Way    outward = get_outward (before, w);
  double bearing = g_array_index (changed->walls, RcWall, w).bearing_degrees + 90;
  for (int after = 1; after >= 0; after--)
    if (!get_slide (before, w, after, &slides[after]))
      {
        slides[after] = outward;
        insert_blank (changed, after ? w + 1 : w, fmod (bearing, 360));
        w += after ? 0 : 1;
      }
  g_autoptr (GArray) corners = rc_room_compute_corners (changed);
  RcPoint *from = rc_ring_get (corners, w), *to = rc_ring_get (corners, (w + 1) % corners->len);
  *from = step_along (*from, slides[0], out);
  *to = step_along (*to, slides[1], out);
  g_autoptr (GArray) old = rc_room_compute_corners (changed);
  if (!set_all (changed, old, corners))
    return FALSE;
  for (guint i = 0; i < changed->walls->len; i++)
    if (g_array_index (changed->walls, RcWall, i).length == 0)
      return FALSE; /* not moved far enough for a wall between */
  take_shape (room, changed);
  *wall = w;
  return TRUE;
}

/* Mirroring and turning. */

static RcPoint
get_middle (const RcRoom *room)
{
  g_autoptr (GArray) corners = rc_room_compute_corners (room);
  RcBox box = rc_ring_compute_box (corners);
  return (RcPoint){ (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 };
}

static void
keep_middle (RcRoom *room, RcPoint before)
{
  RcPoint after = get_middle (room);
  room->at.x += before.x - after.x;
  room->at.y += before.y - after.y;
}

void
rc_room_edit_mirror (RcRoom *room)
{
  rc_room_edit_make_walls (room);
  RcPoint before = get_middle (room);
  for (guint i = 0; i < room->walls->len; i++)
    {
      RcWall *wall = &g_array_index (room->walls, RcWall, i);
      wall->bearing_degrees = fmod (360 - wall->bearing_degrees, 360);
    }
  for (guint c = 0; c < room->cutouts->len; c++)
    {
      RcRing *ring = ((RcCutout *)g_ptr_array_index (room->cutouts, c))->points;
      for (guint i = 0; i < ring->len; i++)
        rc_ring_get (ring, i)->x = -rc_ring_get (ring, i)->x;
    }
  keep_middle (room, before);
}

void
rc_room_edit_turn (RcRoom *room, double degrees)
{
  rc_room_edit_make_walls (room);
  RcPoint before = get_middle (room);
  for (guint i = 0; i < room->walls->len; i++)
    {
      RcWall *wall = &g_array_index (room->walls, RcWall, i);
      wall->bearing_degrees = fmod (fmod (wall->bearing_degrees - degrees, 360) + 360, 360);
    }
  for (guint c = 0; c < room->cutouts->len; c++)
    {
      RcRing *ring = ((RcCutout *)g_ptr_array_index (room->cutouts, c))->points;
      for (guint i = 0; i < ring->len; i++)
        *rc_ring_get (ring, i) = rc_point_rotate (*rc_ring_get (ring, i), degrees);
    }
  keep_middle (room, before);
}
