/* Drawing a room: a rectangle from corner to corner, or an outline corner by corner. */
#include <math.h>

#include <glib/gi18n-lib.h>

#include "choice.h"
#include "gesture-private.h"
#include "measure-edit.h"
#include "room-edit.h"

static const RcPoint ARROWS[]
    = { { 1, 0 }, { 0, 1 }, { -1, 0 }, { 0, -1 }, { 1, 1 }, { -1, 1 }, { -1, -1 }, { 1, -1 } };

/* The corner `length` away in a direction given by key. */
static RcPoint
step_by_arrow (RcPoint from, int arrow, RcLength length)
{
  RcPoint way = ARROWS[arrow];

  if (way.x != 0 && way.y != 0)
    length = llround ((double)length * G_SQRT2 / 2);
  return (RcPoint){ from.x + way.x * length, from.y + way.y * length };
}

static RcPoint
get_outline_corner (const RcGesture *gesture, const RcScene *scene)
{
  RcPoint  from = gesture->points[gesture->n_points - 1], to = gesture->pointer;
  RcLength typed = 0, length = rc_point_distance (from, to);
  gboolean is_typed = rc_gesture_get_typed (gesture, scene, 0, &typed);

  if (gesture->arrow >= 0)
    return step_by_arrow (from, gesture->arrow, is_typed ? typed : length);
  if (!is_typed || length == 0)
    return to;
  if (to.x == from.x)
    return (RcPoint){ from.x, from.y + (to.y < from.y ? -typed : typed) };
  if (to.y == from.y)
    return (RcPoint){ from.x + (to.x < from.x ? -typed : typed), from.y };
  double share = (double)typed / (double)length;
  return (RcPoint){ from.x + llround ((double)(to.x - from.x) * share),
                    from.y + llround ((double)(to.y - from.y) * share) };
}

static void
point_at (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event)
{
  RcSnapRequest request = { .pointer = event->at,
                            .reach = event->reach,
                            .is_free = event->is_free,
                            .keeps_square = gesture->tool == RC_TOOL_OUTLINE,
                            .others = gesture->points,
                            .n_others = gesture->n_points };

  if (gesture->n_points > 0)
    {
      request.has_anchor = TRUE;
      request.anchor = gesture->points[gesture->n_points - 1];
      request.n_others--; /* the anchor lines up by being square to it */
    }
  gesture->raw = event->at;
  gesture->snap = rc_snap_find (scene, &request);
  gesture->pointer = gesture->snap.point;
}

/* The corners become a room where they lie; the rest of the result says what to choose. */
static void
make_room (RcGesture *gesture, const RcScene *scene, const RcRing *corners, RcGestureResult *result)
{
  g_autoptr (RcJob) job = rc_gesture_dup_job (scene);
  RcMeasure         *measure = rc_gesture_get_measure (scene, job);
  RcChoice           like = gesture->area   ? rc_choice_of_thing (RC_THING_AREA, gesture->area)
                            : gesture->room ? rc_choice_of_thing (RC_THING_ROOM, gesture->room)
                                            : rc_choice_of_thing (RC_THING_JOB, NULL);
  const RcFloorArea *area = rc_choice_find_area (like, measure);
  g_autofree char   *name = g_strdup_printf ("%s %u", _ ("Room"), measure->rooms->len + 1);
  RcRoom            *room = rc_measure_edit_add_room (measure, name, scene->floor, 0, 0);

  room->placed = TRUE;
  g_array_append_vals (room->outline, corners->data, corners->len);
  rc_room_edit_make_walls (room);
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPolygon) polygon = rc_room_compute_polygon (room, &job->settings.closure, &error);
  if (polygon == NULL)
    {
      result->fault = g_strdup (error->message);
      return;
    }
  if (area)
    rc_measure_edit_put_room_in_area (measure, room->id, area->id);
  result->room = g_intern_string (room->id);
  result->step = _ ("Draw a room");
  result->job = g_steal_pointer (&job);
  rc_gesture_rest (gesture);
}

static void
finish_rectangle (RcGesture *gesture, const RcScene *scene, RcGestureResult *result)
{
  RcPoint from = gesture->points[0], to = rc_gesture_get_far_corner (gesture, scene);
  RcBox   box = { MIN (from.x, to.x), MIN (from.y, to.y), MAX (from.x, to.x), MAX (from.y, to.y) };

  if (rc_gesture_has_bad_text (gesture, scene, &result->fault))
    return;
  if (box.x0 == box.x1 || box.y0 == box.y1)
    {
      result->fault = g_strdup (_ ("The room has no width or no length yet: move the pointer or type both."));
      return;
    }
  /* Clockwise from the south-west corner, as a room that is typed. */
  const RcPoint points[] = { { box.x0, box.y0 }, { box.x0, box.y1 }, { box.x1, box.y1 }, { box.x1, box.y0 } };
  g_autoptr (GArray) corners = rc_ring_new_from_points (points, G_N_ELEMENTS (points));
  make_room (gesture, scene, corners, result);
}

static void
finish_outline (RcGesture *gesture, const RcScene *scene, RcGestureResult *result)
{
  g_autoptr (GArray) corners = rc_ring_new_from_points (gesture->points, gesture->n_points);

  rc_ring_simplify (corners);
  if (corners->len < 3)
    {
      result->fault = g_strdup (_ ("A room takes at least three corners: click one more."));
      return;
    }
  make_room (gesture, scene, corners, result);
}

static void
take_corner (RcGesture *gesture, RcPoint corner, RcGestureResult *result)
{
  if (gesture->n_points == RC_GESTURE_MAX_POINTS)
    {
      result->fault = g_strdup_printf (_ ("An outline drawn by hand has at most %d corners."), RC_GESTURE_MAX_POINTS);
      return;
    }
  if (gesture->n_points > 0 && rc_point_distance (gesture->points[gesture->n_points - 1], corner) == 0)
    return;
  gesture->points[gesture->n_points++] = corner;
  gesture->is_active = TRUE;
  gesture->pointer = gesture->raw = corner;
  gesture->arrow = -1;
  gesture->text[0][0] = '\0';
}

static void
handle_rectangle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  if (event->kind == RC_EVENT_PRESS || event->kind == RC_EVENT_MOTION)
    point_at (gesture, scene, event);
  if (event->kind == RC_EVENT_PRESS)
    {
      gesture->is_down = TRUE;
      if (gesture->n_points == 0)
        take_corner (gesture, gesture->pointer, result);
      else
        gesture->has_moved = TRUE;
    }
  else if (rc_gesture_take_span (gesture, event, 2))
    finish_rectangle (gesture, scene, result);
}

/* Enter takes the corner that is typed or given by an arrow; without one it closes the room. */
static void
enter_outline (RcGesture *gesture, const RcScene *scene, RcGestureResult *result)
{
  if (rc_gesture_has_bad_text (gesture, scene, &result->fault))
    return;
  if (rc_gesture_is_typed (gesture, 0))
    take_corner (gesture, get_outline_corner (gesture, scene), result);
  else
    finish_outline (gesture, scene, result);
}

static void
handle_outline (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  switch (event->kind)
    {
    case RC_EVENT_PRESS:
      point_at (gesture, scene, event);
      if (gesture->n_points >= 3 && rc_point_distance (event->at, gesture->points[0]) <= event->reach)
        finish_outline (gesture, scene, result);
      else if (!rc_gesture_has_bad_text (gesture, scene, &result->fault))
        take_corner (gesture, gesture->n_points ? get_outline_corner (gesture, scene) : gesture->pointer, result);
      break;
    case RC_EVENT_MOTION:
      point_at (gesture, scene, event);
      break;
    case RC_EVENT_ENTER:
      enter_outline (gesture, scene, result);
      break;
    case RC_EVENT_ARROW:
      gesture->arrow = event->arrow;
      if (rc_gesture_is_typed (gesture, 0)) /* the length first, then the way: the wall is told in full */
        enter_outline (gesture, scene, result);
      break;
    case RC_EVENT_NEXT:
      break;
    default:
      if (rc_gesture_take_key (gesture, event, 1) || event->kind != RC_EVENT_RUBOUT)
        break;
      gesture->n_points--;
      if (gesture->n_points == 0)
        rc_gesture_rest (gesture);
    }
}

void
rc_gesture_draw_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  gboolean is_pointer
      = event->kind == RC_EVENT_PRESS || event->kind == RC_EVENT_MOTION || event->kind == RC_EVENT_RELEASE;

  if (!gesture->is_active && (!is_pointer || event->kind == RC_EVENT_RELEASE))
    {
      /* Without a pointer: from where it was last, or the house's origin. */
      if (event->kind == RC_EVENT_ENTER || event->kind == RC_EVENT_LETTER)
        take_corner (gesture, gesture->pointer, result);
      if (event->kind != RC_EVENT_LETTER)
        return;
    }
  if (gesture->tool == RC_TOOL_ROOM)
    handle_rectangle (gesture, scene, event, result);
  else
    handle_outline (gesture, scene, event, result);
}

static void
sketch_outline (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch)
{
  RcPoint from = gesture->points[gesture->n_points - 1], to = get_outline_corner (gesture, scene);
  RcRing *ring = rc_sketch_add_ring (sketch);

  sketch->is_open = TRUE;
  g_array_append_vals (ring, gesture->points, gesture->n_points);
  g_array_append_val (ring, to);
  rc_sketch_add_length (sketch, gesture, scene, from, to, rc_point_distance (from, to), 0);
}

void
rc_gesture_draw_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch)
{
  rc_sketch_add_guides (sketch, gesture);
  if (gesture->n_points == 0)
    return;
  if (gesture->tool == RC_TOOL_ROOM)
    rc_sketch_add_rectangle (sketch, gesture, scene);
  else
    sketch_outline (gesture, scene, sketch);
}
