/* A closet in one click: a room behind the wall, with an opening without a leaf in the middle. */
#include <math.h>

#include <glib/gi18n-lib.h>

#include "choice.h"
#include "gesture-places.h"
#include "gesture-private.h"
#include "gesture-spot.h"
#include "measure-edit.h"
#include "room-edit.h"

/* A closet for clothes: 6 ft by 2, metric 1800 mm by 600; its opening two thirds of that (common practice, no source).
 */
static RcLength
get_usual_width (const RcScene *scene)
{
  return scene->job->units == RC_UNITS_METRIC ? 1800 * RC_TICKS_PER_MM : 72 * RC_TICKS_PER_INCH;
}

static RcLength
get_depth (const RcScene *scene)
{
  return scene->job->units == RC_UNITS_METRIC ? 600 * RC_TICKS_PER_MM : 24 * RC_TICKS_PER_INCH;
}

/* `out` away from the room, square to the wall. */
static RcPoint
step_out (const RcWallSpot *spot, RcPoint point, RcLength out)
{
  double side = spot->room->is_left ? 1 : -1;
  double dx = (double)(spot->to.x - spot->from.x), dy = (double)(spot->to.y - spot->from.y), length = hypot (dx, dy);

  return (RcPoint){ point.x + llround (side * dy / length * (double)out),
                    point.y - llround (side * dx / length * (double)out) };
}

/* The closet's corners in the house: the wall towards the room comes first. */
static RcRing *
new_corners (const RcWallSpot *spot, const RcScene *scene)
{
  RcLength thick = rc_room_edit_get_usual_wall (scene->job->units), far = thick + get_depth (scene);
  RcPoint  a = rc_wall_spot_get_point (spot, spot->offset);
  RcPoint  b = rc_wall_spot_get_point (spot, spot->offset + spot->width);
  RcPoint  corners[]
      = { step_out (spot, a, thick), step_out (spot, b, thick), step_out (spot, b, far), step_out (spot, a, far) };

  return rc_ring_new_from_points (corners, G_N_ELEMENTS (corners));
}

static gboolean
is_taken (const RcScene *scene, const RcWallSpot *spot)
{
  RcLength far = rc_room_edit_get_usual_wall (scene->job->units) + get_depth (scene);
  g_autoptr (GArray) behind = rc_scene_find_behind (scene, spot->room, spot->wall, far);

  for (guint i = 0; i < behind->len; i++)
    {
      const RcSceneBehind *other = &g_array_index (behind, RcSceneBehind, i);
      if (other->from < spot->offset + spot->width && other->to > spot->offset)
        return TRUE;
    }
  return FALSE;
}

/* The opening between the two, as measured from either. */
static void
join (RcRoom *room, RcRoom *closet, const RcWallSpot *spot, RcUnitSystem units)
{
  RcOpening *here = rc_room_edit_add_opening (room, RC_OPENING_DOOR, spot->wall, units);
  RcOpening *there = rc_room_edit_add_opening (closet, RC_OPENING_DOOR, 0, units);

  here->width = there->width = spot->width * 2 / 3;
  there->offset = (spot->width - there->width) / 2;
  here->offset = spot->offset + there->offset;
  here->swing = there->swing = RC_SWING_NONE;
  here->to_room = g_strdup (closet->id);
  here->to_opening = g_strdup (there->id);
  there->to_room = g_strdup (room->id);
  there->to_opening = g_strdup (here->id);
}

static void
put_closet (RcGesture *gesture, const RcScene *scene, RcGestureResult *result)
{
  RcWallSpot spot;
  g_autoptr (GError) error = NULL;

  if (rc_gesture_has_bad_text (gesture, scene, &result->fault))
    return;
  if (!rc_gesture_find_spot (gesture, scene, get_usual_width (scene), &spot))
    {
      result->fault = g_strdup (_ ("Point at the wall that it stands in."));
      return;
    }
  if (is_taken (scene, &spot))
    {
      result->fault = g_strdup (_ ("There is a room behind that wall already."));
      return;
    }
  g_autoptr (RcJob) job = rc_gesture_dup_job (scene);
  g_autoptr (GArray) corners = new_corners (&spot, scene);
  RcMeasure         *measure = rc_gesture_get_measure (scene, job);
  const RcFloorArea *area = rc_choice_find_area_of_room (measure, spot.room->room->id);
  g_autofree char   *name = g_strdup_printf ("%s, %s", rc_room_get_name (spot.room->room), _ ("closet"));
  RcRoom            *closet = rc_measure_edit_add_room (measure, name, scene->floor, 0, 0);
  RcRoom            *room = rc_measure_find_room (measure, spot.room->room->id);
  rc_places_note (scene, measure);
  closet->placed = TRUE;
  g_array_append_vals (closet->outline, corners->data, corners->len);
  rc_room_edit_make_walls (closet);
  join (room, closet, &spot, job->units);
  if (!rc_room_check_openings (room, &error))
    {
      result->fault = g_strdup (error->message);
      return;
    }
  if (area)
    rc_measure_edit_put_room_in_area (measure, closet->id, area->id);
  rc_places_keep (scene, job, NULL);
  result->room = g_intern_string (closet->id);
  result->step = _ ("Put a closet behind a wall");
  result->job = g_steal_pointer (&job);
  rc_gesture_rest (gesture);
}

void
rc_gesture_closet_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                          RcGestureResult *result)
{
  if (rc_gesture_put_at_wall (gesture, scene, event, result, put_closet))
    return;
  if (gesture->n_points > 0)
    rc_gesture_take_key (gesture, event, RC_GESTURE_FIELDS);
  gesture->is_active = rc_gesture_has_text (gesture);
}

void
rc_gesture_closet_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch)
{
  RcWallSpot spot;

  if (!rc_gesture_find_spot (gesture, scene, get_usual_width (scene), &spot))
    return;
  RcPoint  start = rc_wall_spot_get_point (&spot, spot.offset);
  RcPoint  end = rc_wall_spot_get_point (&spot, spot.offset + spot.width);
  RcLength after = spot.length - spot.width - spot.offset;
  g_ptr_array_add (sketch->rings, new_corners (&spot, scene));
  rc_sketch_add_length (sketch, gesture, scene, spot.from, start, spot.offset, 0);
  rc_sketch_add_length (sketch, gesture, scene, end, spot.to, after, 1);
  rc_sketch_add_length (sketch, gesture, scene, end, start, spot.width, 2);
}
