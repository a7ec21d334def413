#include "gesture-follow.h"

#include <math.h>

#include "gesture-places.h"
#include "gesture-private.h"
#include "room-corners.h"

RcLength
rc_follow_get_thickness_max (RcUnitSystem units)
{
  return units == RC_UNITS_METRIC ? 300 * RC_TICKS_PER_MM : RC_TICKS_PER_FOOT;
}

/* How far along the wall from-to the point lies. */
static RcLength
get_along (RcPoint from, RcPoint to, RcPoint point)
{
  double dx = (double)(to.x - from.x), dy = (double)(to.y - from.y);
  return llround (((double)(point.x - from.x) * dx + (double)(point.y - from.y) * dy) / hypot (dx, dy));
}

static RcPoint
get_point_along (RcPoint from, RcPoint to, RcLength along)
{
  double share = (double)along / (double)rc_point_distance (from, to);
  return (RcPoint){ from.x + llround ((double)(to.x - from.x) * share),
                    from.y + llround ((double)(to.y - from.y) * share) };
}

/* The stretch of the other room's wall that follows. A wall that comes out takes its own thickness along at both sides;
 * ends that are nearly the other wall's own are. */
static void
find_stretch (const RcSceneRoom *room, guint wall, const RcSceneBehind *behind, gboolean comes_out, RcLength *start,
              RcLength *end)
{
  RcPoint a, b, c, d;

  rc_scene_get_wall (room, wall, &a, &b);
  rc_scene_get_wall (behind->room, behind->wall, &c, &d);
  RcLength one = get_along (c, d, get_point_along (a, b, behind->from));
  RcLength two = get_along (c, d, get_point_along (a, b, behind->to));
  RcLength length = rc_point_distance (c, d), wide = comes_out ? behind->gap : 0, near = 2 * behind->gap + 1;
  *start = MIN (one, two) - wide;
  *end = MAX (one, two) + wide;
  if (*start <= near)
    *start = 0;
  if (*end >= length - near)
    *end = length;
}

static void
follow (RcRoom *other, guint wall, RcLength start, RcLength end, RcLength out)
{
  g_autoptr (RcRoom) kept = rc_room_copy (other);
  g_autoptr (GArray) corners = rc_room_compute_corners (other);
  RcLength length = rc_point_distance (*rc_ring_get (corners, wall), *rc_ring_get (corners, (wall + 1) % corners->len));
  gboolean done = TRUE;

  if (end < length)
    done = rc_room_edit_insert_corner (other, wall, end);
  if (done && start > 0)
    done = rc_room_edit_insert_corner (other, wall++, start);
  if (!done || !rc_room_edit_move_wall (other, &wall, -out))
    rc_room_edit_restore (other, kept);
}

gboolean
rc_follow_move_wall (const RcScene *scene, RcJob *job, const char *id, guint *wall, RcLength out)
{
  RcMeasure *measure = rc_gesture_get_measure (scene, job);
  RcRoom    *room = rc_measure_find_room (measure, id);
  g_autoptr (RcScene) now = rc_places_new_scene (scene, job);
  const RcSceneRoom *seen = rc_scene_find_room (now, id);

  if (seen == NULL || *wall >= seen->corners->len)
    return FALSE;
  guint was = *wall;
  g_autoptr (GArray) behind = rc_scene_find_behind (now, seen, was, rc_follow_get_thickness_max (job->units));
  if (!rc_room_edit_move_wall (room, wall, out))
    return FALSE;
  /* From the last wall on: a jog put in moves the walls after it. */
  for (guint i = behind->len; i-- > 0;)
    {
      const RcSceneBehind *other = &g_array_index (behind, RcSceneBehind, i);
      RcLength             start = 0, end = 0;
      find_stretch (seen, was, other, out > 0, &start, &end);
      follow (rc_measure_find_room (measure, other->room->room->id), other->wall, start, end, out);
    }
  return TRUE;
}
