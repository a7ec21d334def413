/* What of the chosen room the hand would take hold of. */
#include "gesture-private.h"

static gboolean
find_opening (const RcSceneRoom *room, RcPoint at, RcLength reach, guint *index)
{
  for (guint i = 0; i < room->room->openings->len; i++)
    {
      RcPoint from, to;
      if (!rc_room_get_opening_ends (room->room, g_ptr_array_index (room->room->openings, i), &from, &to))
        continue;
      RcPoint middle = { room->at.x + (from.x + to.x) / 2, room->at.y + (from.y + to.y) / 2 };
      if (rc_point_distance (middle, at) > MIN (reach, rc_point_distance (from, to) / 2) + reach / 2)
        continue;
      *index = i;
      return TRUE;
    }
  return FALSE;
}

static gboolean
find_cutout (const RcSceneRoom *room, RcPoint at, guint *index)
{
  RcPoint own = { at.x - room->at.x, at.y - room->at.y };

  for (guint i = 0; i < room->room->cutouts->len; i++)
    {
      g_autoptr (RcPolygon) polygon
          = rc_polygon_new_take (rc_cutout_compute_ring (g_ptr_array_index (room->room->cutouts, i)));
      rc_polygon_normalize (polygon);
      if (rc_polygon_locate (polygon, own) < 0)
        continue;
      *index = i;
      return TRUE;
    }
  return FALSE;
}

RcGrip
rc_gesture_find_grip (const RcGesture *gesture, const RcScene *scene, RcPoint at, RcLength reach, guint *index)
{
  const RcSceneRoom *room = rc_scene_find_room (scene, gesture->room);
  RcSceneWall        wall;

  if (rc_gesture_grips_stair (gesture, scene, at))
    return RC_GRIP_STAIR;
  if (rc_gesture_grips_turn (gesture, scene, at, reach))
    return RC_GRIP_TURN;
  if (gesture->tool != RC_TOOL_CHOOSE || room == NULL)
    return RC_GRIP_NONE;
  if (rc_scene_find_corner (scene, gesture->room, at, reach, &room, index))
    return RC_GRIP_CORNER;
  if (find_opening (room, at, reach, index))
    return RC_GRIP_OPENING;
  if (rc_scene_find_wall (scene, gesture->room, at, reach * 2 / 3, &wall))
    {
      *index = wall.wall;
      return RC_GRIP_WALL;
    }
  return find_cutout (room, at, index) ? RC_GRIP_CUTOUT : RC_GRIP_NONE;
}
