/* The plan picture under the floor: its scale by two points and a length, its place by a drag, and how it is turned. */
#include <math.h>

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

static double
get_degrees (RcPoint about, RcPoint point)
{
  return atan2 ((double)(point.y - about.y), (double)(point.x - about.x)) * 180 / G_PI;
}

/* How far round the first point the pointer has come since it was pressed; by tenths of a degree, freely with Shift.
 * FALSE when what is typed is no number of degrees. */
static gboolean
get_swivel (const RcGesture *gesture, double *degrees)
{
  if (rc_gesture_is_typed (gesture, 0))
    return rc_gesture_parse_degrees (gesture, degrees);
  if (gesture->n_points < 2)
    return FALSE;
  *degrees = remainder (
      get_degrees (gesture->points[0], gesture->raw) - get_degrees (gesture->points[0], gesture->points[1]), 360);
  if (!gesture->is_free)
    *degrees = round (*degrees * 10) / 10;
  return TRUE;
}

static void
finish_swivel (RcGesture *gesture, RcGestureResult *result)
{
  double degrees = 0;

  if (gesture->n_points == 0 || !get_swivel (gesture, &degrees))
    {
      result->fault = g_strdup (_ ("Type by how many degrees the picture turns to the left: 1.5, -0.7."));
      return;
    }
  if (degrees != 0)
    result->picture = (RcPictureChange){ .kind = RC_PICTURE_TURN,
                                         .from = gesture->points[0],
                                         .millidegrees = llround (degrees * 1000) };
  rc_gesture_rest (gesture);
}

void
rc_gesture_swivel_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                          RcGestureResult *result)
{
  switch (event->kind)
    {
    case RC_EVENT_PRESS:
      aim (gesture, event);
      gesture->points[gesture->n_points++] = event->at;
      gesture->is_active = TRUE;
      break;
    case RC_EVENT_MOTION:
      aim (gesture, event);
      gesture->is_free = event->is_free;
      break;
    case RC_EVENT_RELEASE:
      if (gesture->n_points == 2 && rc_point_distance (event->at, gesture->points[1]) > event->reach / 3)
        finish_swivel (gesture, result);
      else
        gesture->n_points = MIN (gesture->n_points, 1);
      break;
    case RC_EVENT_ENTER:
      finish_swivel (gesture, result);
      break;
    default:
      if (gesture->is_active)
        rc_gesture_take_key (gesture, event, 1);
    }
}

void
rc_gesture_swivel_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch)
{
  double degrees = 0;

  if (gesture->n_points == 0)
    return;
  get_swivel (gesture, &degrees);
  rc_sketch_add_line (sketch->lines, gesture->points[0], gesture->raw);
  if (gesture->n_points == 2)
    rc_sketch_add_line (sketch->guides, gesture->points[0], gesture->points[1]);
  sketch->word = rc_gesture_dup_degrees (gesture, degrees);
  sketch->word_at = gesture->points[0];
}
