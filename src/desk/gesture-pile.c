/* How the carpet of an area lies, by the pointer: the way the pile leans, and where a seam runs. */
#include <glib/gi18n-lib.h>

#include "choice.h"
#include "gesture-private.h"

static RcFloorArea *
find_area (const RcGesture *gesture, const RcScene *scene, RcJob *job)
{
  RcMeasure         *measure = rc_gesture_get_measure (scene, job);
  const RcFloorArea *area = rc_choice_find_area_of_room (measure, gesture->room);
  return area ? rc_measure_find_area (measure, area->id) : NULL;
}

/* The way dragged, as a right angle: counter-clockwise from east. */
static int
get_way (const RcGesture *gesture)
{
  RcLength dx = gesture->raw.x - gesture->points[0].x, dy = gesture->raw.y - gesture->points[0].y;

  if (ABS (dx) >= ABS (dy))
    return dx >= 0 ? 0 : 180;
  return dy >= 0 ? 90 : 270;
}

static void
set_pile (const RcGesture *gesture, RcFloorArea *area)
{
  area->pile_degrees = gesture->has_moved ? get_way (gesture) : -1;
}

/* The seam pin nearest to where the pointer is, no farther than `reach`. */
static gboolean
find_pin (const RcGesture *gesture, const RcSceneRoom *room, const RcFloorArea *area, RcLength reach, guint *found)
{
  RcPoint own = { gesture->raw.x - room->at.x, gesture->raw.y - room->at.y };

  for (guint i = 0; i < area->pins->len; i++)
    {
      const RcPin *pin = g_ptr_array_index (area->pins, i);
      if (pin->kind != RC_PIN_SEAM || g_strcmp0 (pin->room, gesture->room) != 0 || pin->points->len < 2)
        continue;
      RcPoint  one = *rc_ring_get (pin->points, 0), two = *rc_ring_get (pin->points, 1);
      RcLength off = one.x == two.x ? ABS (own.x - one.x) : ABS (own.y - one.y);
      if (off > reach)
        continue;
      *found = i;
      return TRUE;
    }
  return FALSE;
}

/* A seam runs with the pile, which is pinned so. */
static void
set_seam (const RcGesture *gesture, const RcSceneRoom *room, RcLength reach, RcFloorArea *area)
{
  gboolean upright = get_way (gesture) % 180 == 90;
  guint    found = 0;

  if (!gesture->has_moved)
    {
      while (find_pin (gesture, room, area, reach, &found))
        g_ptr_array_remove_index (area->pins, found);
      return;
    }
  RcPin  *pin = rc_pin_new (RC_PIN_SEAM, gesture->room);
  RcBox   box = rc_ring_compute_box (room->corners);
  RcPoint at = { gesture->points[0].x - room->at.x, gesture->points[0].y - room->at.y };
  RcPoint one = upright ? (RcPoint){ at.x, box.y0 - room->at.y } : (RcPoint){ box.x0 - room->at.x, at.y };
  RcPoint two = upright ? (RcPoint){ at.x, box.y1 - room->at.y } : (RcPoint){ box.x1 - room->at.x, at.y };
  g_array_append_val (pin->points, one);
  g_array_append_val (pin->points, two);
  g_ptr_array_add (area->pins, pin);
  if (area->pile_degrees < 0 || (area->pile_degrees % 180 == 90) != upright)
    area->pile_degrees = upright ? 270 : 0;
}

static void
begin (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  const RcSceneRoom *room = rc_scene_find_room_at (scene, event->at);
  RcSnapRequest      request = { .pointer = event->at, .reach = event->reach, .is_free = event->is_free };

  if (room == NULL || rc_choice_find_area_of_room (scene->measure, room->room->id) == NULL)
    {
      result->fault = g_strdup (_ ("Begin on the floor of a room that is carpeted."));
      return;
    }
  gesture->room = g_intern_string (room->room->id);
  gesture->points[0] = rc_snap_find (scene, &request).point;
  gesture->n_points = 1;
  gesture->is_active = TRUE;
}

void
rc_gesture_pile_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  gesture->raw = event->kind <= RC_EVENT_RELEASE ? event->at : gesture->raw;
  if (event->kind == RC_EVENT_PRESS)
    begin (gesture, scene, event, result);
  else if (event->kind == RC_EVENT_MOTION && gesture->is_active)
    gesture->has_moved = rc_point_distance (event->at, gesture->points[0]) > event->reach;
  else if (event->kind == RC_EVENT_RELEASE && gesture->is_active)
    {
      g_autoptr (RcJob) job = rc_gesture_dup_job (scene);
      gboolean     is_pile = gesture->tool == RC_TOOL_PILE;
      RcFloorArea *area = find_area (gesture, scene, job);
      if (is_pile)
        set_pile (gesture, area);
      else
        set_seam (gesture, rc_scene_find_room (scene, gesture->room), 2 * event->reach, area);
      result->step = is_pile ? _ ("Pile direction") : _ ("Place of a seam");
      result->job = g_steal_pointer (&job);
      rc_gesture_rest (gesture);
    }
}

/* The pile's arrow from where it was pulled; a seam right through the room. */
void
rc_gesture_pile_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch)
{
  const RcSceneRoom *room = gesture->n_points ? rc_scene_find_room (scene, gesture->room) : NULL;

  if (room == NULL || !gesture->has_moved)
    return;
  RcPoint  at = gesture->points[0];
  RcBox    box = rc_ring_compute_box (room->corners);
  gboolean upright = get_way (gesture) % 180 == 90;
  if (gesture->tool == RC_TOOL_SEAM)
    {
      rc_sketch_add_line (sketch->lines, upright ? (RcPoint){ at.x, box.y0 } : (RcPoint){ box.x0, at.y },
                          upright ? (RcPoint){ at.x, box.y1 } : (RcPoint){ box.x1, at.y });
      rc_sketch_add_length (sketch, gesture, scene, at, upright ? (RcPoint){ box.x0, at.y } : (RcPoint){ at.x, box.y0 },
                            upright ? at.x - box.x0 : at.y - box.y0, -1);
      return;
    }
  RcPoint tip = upright ? (RcPoint){ at.x, gesture->raw.y } : (RcPoint){ gesture->raw.x, at.y };
  RcPoint back = { (at.x + 3 * tip.x) / 4, (at.y + 3 * tip.y) / 4 };
  RcPoint side = { (tip.y - at.y) / 8, (tip.x - at.x) / 8 };
  rc_sketch_add_line (sketch->lines, at, tip);
  rc_sketch_add_line (sketch->lines, tip, (RcPoint){ back.x + side.x, back.y + side.y });
  rc_sketch_add_line (sketch->lines, tip, (RcPoint){ back.x - side.x, back.y - side.y });
}
