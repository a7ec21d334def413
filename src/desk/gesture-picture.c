/* The plan picture under the floor: its scale by two points and a length, its place by a drag. */
#include <glib/gi18n-lib.h>

#include "gesture-private.h"

static void
aim (RcGesture *gesture, const RcGestureEvent *event)
{
  gesture->raw = gesture->pointer = event->at;
}

void
rc_gesture_scale_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  RcLength length = 0;

  switch (event->kind)
    {
    case RC_EVENT_PRESS:
      aim (gesture, event);
      if (gesture->n_points == 2)
        rc_gesture_rest (gesture);
      gesture->points[gesture->n_points++] = event->at;
      gesture->is_active = TRUE;
      break;
    case RC_EVENT_MOTION:
      aim (gesture, event);
      break;
    case RC_EVENT_RELEASE:
      if (gesture->n_points == 1 && rc_point_distance (event->at, gesture->points[0]) > event->reach)
        gesture->points[gesture->n_points++] = event->at;
      break;
    case RC_EVENT_ENTER:
      if (rc_gesture_has_bad_text (gesture, scene, &result->fault))
        break;
      if (gesture->n_points < 2 || !rc_gesture_get_typed (gesture, scene, 0, &length))
        {
          result->fault = g_strdup (_ ("Click on two points of the picture and type how far apart they are."));
          break;
        }
      result->picture = (RcPictureChange){ RC_PICTURE_SCALE, gesture->points[0], gesture->points[1], length };
      rc_gesture_rest (gesture);
      break;
    default:
      if (gesture->is_active)
        rc_gesture_take_key (gesture, event, 1);
    }
}

void
rc_gesture_slide_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  if (event->kind == RC_EVENT_PRESS)
    {
      gesture->points[0] = event->at;
      gesture->n_points = 1;
      gesture->is_active = TRUE;
    }
  if (event->kind <= RC_EVENT_RELEASE)
    aim (gesture, event);
  if (event->kind != RC_EVENT_RELEASE || !gesture->is_active)
    return;
  result->picture = (RcPictureChange){ RC_PICTURE_MOVE, gesture->points[0], event->at, 0 };
  rc_gesture_rest (gesture);
}

void
rc_gesture_picture_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch)
{
  if (gesture->n_points == 0)
    return;
  RcPoint from = gesture->points[0], to = gesture->n_points == 2 ? gesture->points[1] : gesture->raw;
  rc_sketch_add_line (sketch->lines, from, to);
  if (gesture->tool == RC_TOOL_SCALE)
    rc_sketch_add_length (sketch, gesture, scene, from, to, rc_point_distance (from, to), 0);
}
