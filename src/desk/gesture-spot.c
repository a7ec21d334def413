#include "gesture-spot.h"

#include <math.h>

#include "gesture-private.h"

#define WALL_REACH 2 /* walls are taken from farther away than corners: times the reach */

gboolean
rc_gesture_has_text (const RcGesture *gesture)
{
  for (guint i = 0; i < RC_GESTURE_FIELDS; i++)
    if (rc_gesture_is_typed (gesture, i))
      return TRUE;
  return FALSE;
}

RcLength
rc_wall_spot_get_foot (const RcWallSpot *spot, RcPoint point)
{
  double dx = (double)(spot->to.x - spot->from.x), dy = (double)(spot->to.y - spot->from.y);
  return llround (((double)(point.x - spot->from.x) * dx + (double)(point.y - spot->from.y) * dy)
                  / (double)spot->length);
}

gboolean
rc_gesture_find_spot (const RcGesture *gesture, const RcScene *scene, RcLength usual, RcWallSpot *spot)
{
  RcLength typed = 0;

  spot->room = gesture->n_points ? rc_scene_find_room (scene, gesture->room) : NULL;
  spot->wall = gesture->index;
  if (spot->room == NULL || spot->wall >= spot->room->corners->len)
    return FALSE;
  rc_scene_get_wall (spot->room, spot->wall, &spot->from, &spot->to);
  spot->length = rc_point_distance (spot->from, spot->to);
  if (spot->length == 0)
    return FALSE;
  spot->width = MIN (rc_gesture_get_typed (gesture, scene, 2, &typed) ? typed : usual, spot->length);
  RcLength offset = rc_wall_spot_get_foot (spot, gesture->raw) - spot->width / 2;
  if (!gesture->is_free)
    offset = rc_snap_round (offset, scene->step);
  if (rc_gesture_get_typed (gesture, scene, 0, &typed))
    offset = typed;
  else if (rc_gesture_get_typed (gesture, scene, 1, &typed))
    offset = spot->length - spot->width - typed;
  spot->offset = CLAMP (offset, 0, spot->length - spot->width);
  return TRUE;
}

RcPoint
rc_wall_spot_get_point (const RcWallSpot *spot, RcLength along)
{
  double share = (double)along / (double)spot->length;
  return (RcPoint){ spot->from.x + llround ((double)(spot->to.x - spot->from.x) * share),
                    spot->from.y + llround ((double)(spot->to.y - spot->from.y) * share) };
}

void
rc_gesture_aim_at_wall (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event)
{
  RcSceneWall wall;

  gesture->raw = gesture->pointer = event->at;
  gesture->is_free = event->is_free;
  if (rc_gesture_has_text (gesture))
    return;
  gesture->n_points = rc_scene_find_wall (scene, NULL, event->at, WALL_REACH * event->reach, &wall) ? 1 : 0;
  if (gesture->n_points == 0)
    return;
  gesture->room = g_intern_string (wall.room->room->id);
  gesture->index = wall.wall;
}

gboolean
rc_gesture_put_at_wall (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result,
                        RcGesturePut put)
{
  switch (event->kind)
    {
    case RC_EVENT_PRESS:
      rc_gesture_aim_at_wall (gesture, scene, event);
      put (gesture, scene, result);
      return TRUE;
    case RC_EVENT_ENTER:
      put (gesture, scene, result);
      return TRUE;
    case RC_EVENT_MOTION:
      rc_gesture_aim_at_wall (gesture, scene, event);
      return TRUE;
    case RC_EVENT_RELEASE:
      return TRUE;
    default:
      return FALSE;
    }
}
