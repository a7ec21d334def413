/* Turning the chosen room by the grip beside it: to right angles, to the walls of other rooms, or by degrees typed. */
#include <math.h>

#include <glib/gi18n-lib.h>

#include "gesture-places.h"
#include "gesture-private.h"
#include "gesture-room.h"

#define GRIP_AWAY    3    /* times the reach, above the room */
#define STEP_DEGREES 15.0 /* the turn goes by such steps, */
#define WALL_DEGREES 4.0  /* but sooner to where a wall lies along another room's */

static RcPoint
get_middle (const RcSceneRoom *room)
{
  RcBox box = rc_ring_compute_box (room->corners);
  return (RcPoint){ (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 };
}

RcPoint
rc_gesture_get_turn_grip (const RcSceneRoom *room, RcLength reach)
{
  RcBox box = rc_ring_compute_box (room->corners);
  return (RcPoint){ (box.x0 + box.x1) / 2, box.y1 + GRIP_AWAY * reach };
}

gboolean
rc_gesture_grips_turn (const RcGesture *gesture, const RcScene *scene, RcPoint at, RcLength reach)
{
  const RcSceneRoom *room = gesture->tool == RC_TOOL_CHOOSE ? rc_scene_find_room (scene, gesture->room) : NULL;
  return room && rc_point_distance (rc_gesture_get_turn_grip (room, reach), at) <= reach;
}

/* Counter-clockwise from east. */
static double
get_degrees (RcPoint from, RcPoint to)
{
  return atan2 ((double)(to.y - from.y), (double)(to.x - from.x)) * 180 / G_PI;
}

static double
get_longest_wall (const RcSceneRoom *room)
{
  RcLength longest = -1;
  double   degrees = 0;

  for (guint i = 0; i < room->corners->len; i++)
    {
      RcPoint from, to;
      rc_scene_get_wall (room, i, &from, &to);
      if (rc_point_distance (from, to) <= longest)
        continue;
      longest = rc_point_distance (from, to);
      degrees = get_degrees (from, to);
    }
  return degrees;
}

/* The turn nearest to the pointer's with which the longest wall lies along, or square to, a wall of another room. */
static gboolean
find_wall_turn (const RcScene *scene, const RcSceneRoom *turned, double pointed, double *found)
{
  double own = get_longest_wall (turned), best = WALL_DEGREES;

  for (guint r = 0; r < scene->rooms->len; r++)
    {
      const RcSceneRoom *room = g_ptr_array_index (scene->rooms, r);
      for (guint i = 0; room != turned && i < room->corners->len; i++)
        {
          RcPoint from, to;
          rc_scene_get_wall (room, i, &from, &to);
          double off = remainder (get_degrees (from, to) - own - pointed, 90);
          if (fabs (off) >= best)
            continue;
          best = fabs (off);
          *found = pointed + off;
        }
    }
  return best < WALL_DEGREES;
}

/* FALSE when what is typed is no number of degrees. */
static gboolean
get_turn (const RcGesture *gesture, const RcScene *scene, const RcSceneRoom *room, double *degrees)
{
  RcPoint middle = get_middle (room);

  if (rc_gesture_is_typed (gesture, 0))
    return rc_gesture_parse_degrees (gesture, degrees);
  double pointed = remainder (get_degrees (middle, gesture->raw) - get_degrees (middle, gesture->points[0]), 360);
  *degrees = pointed;
  if (!gesture->is_free && !find_wall_turn (scene, room, pointed, degrees))
    *degrees = round (pointed / STEP_DEGREES) * STEP_DEGREES;
  /* What is a whole quarter but for rounding is one: right angles stay exact. */
  if (fabs (remainder (*degrees, 90)) < 1e-6)
    *degrees = round (*degrees / 90) * 90;
  return TRUE;
}

static void
finish (RcGesture *gesture, const RcScene *scene, RcGestureResult *result)
{
  const RcSceneRoom *room = rc_scene_find_room (scene, gesture->room);
  double             degrees = 0;

  if (room == NULL || !get_turn (gesture, scene, room, &degrees))
    {
      result->fault = g_strdup (_ ("Type by how many degrees the room turns to the left: 30, -12.5."));
      return;
    }
  if (degrees != 0)
    {
      result->job = rc_gesture_room_turn (scene, gesture->room, degrees);
      result->step = _ ("Turn a room");
    }
  rc_gesture_rest (gesture);
}

void
rc_gesture_turn_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  switch (event->kind)
    {
    case RC_EVENT_PRESS:
      gesture->grip = gesture->held = RC_GRIP_TURN;
      gesture->held_index = 0;
      gesture->points[0] = gesture->raw = event->at;
      gesture->n_points = 1;
      gesture->is_active = gesture->is_down = TRUE;
      break;
    case RC_EVENT_MOTION:
      if (rc_gesture_is_typed (gesture, 0))
        break;
      gesture->raw = event->at;
      gesture->is_free = event->is_free;
      break;
    case RC_EVENT_RELEASE:
      /* After a click on the grip the degrees can be typed. */
      if (gesture->is_active && rc_point_distance (gesture->raw, gesture->points[0]) > event->reach / 3)
        finish (gesture, scene, result);
      break;
    case RC_EVENT_ENTER:
      finish (gesture, scene, result);
      break;
    default:
      if (gesture->is_active)
        rc_gesture_take_key (gesture, event, 1);
    }
}

void
rc_gesture_turn_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch)
{
  const RcSceneRoom *room = rc_scene_find_room (scene, gesture->room);
  double             degrees = 0;

  if (!gesture->is_active || room == NULL)
    return;
  gboolean reads = get_turn (gesture, scene, room, &degrees);
  sketch->word = rc_gesture_dup_degrees (gesture, degrees);
  sketch->word_at = get_middle (room);
  g_autoptr (RcJob) job = reads && degrees != 0 ? rc_gesture_room_turn (scene, gesture->room, degrees) : NULL;
  g_autoptr (RcScene) after = job ? rc_places_new_scene (scene, job) : NULL;
  const RcSceneRoom *turned = after ? rc_scene_find_room (after, gesture->room) : room;
  if (turned)
    g_ptr_array_add (sketch->rings, rc_ring_copy (turned->corners));
}
