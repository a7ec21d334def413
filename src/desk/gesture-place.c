/* Putting things in: doors, archways and windows in the wall under the pointer, cut-outs on the floor. */
#include <math.h>

#include <glib/gi18n-lib.h>

#include "choice.h"
#include "gesture-follow.h"
#include "gesture-places.h"
#include "gesture-private.h"
#include "gesture-spot.h"
#include "room-edit.h"

/* Ways a leaf can hang: hinged at the near or the far edge, into the room or out of it; the last has no leaf. */
#define N_LEAVES 5

static RcOpeningKind
get_kind (const RcGesture *gesture)
{
  return gesture->tool == RC_TOOL_DOOR      ? RC_OPENING_DOOR
         : gesture->tool == RC_TOOL_ARCHWAY ? RC_OPENING_ARCHWAY
                                            : RC_OPENING_WINDOW;
}

static void
hang_leaf (RcOpening *opening, guint leaf)
{
  if (opening->kind != RC_OPENING_DOOR)
    return;
  opening->swing = leaf == N_LEAVES - 1 ? RC_SWING_NONE : leaf >= 2 ? RC_SWING_OUT : RC_SWING_IN;
  opening->hinge_at_end = leaf % 2 == 1;
}

/* The room that the opening leads to: the one whose wall lies behind all of it. */
static gboolean
find_room_behind (const RcScene *scene, const RcWallSpot *spot, RcSceneBehind *found)
{
  g_autoptr (GArray) all
      = rc_scene_find_behind (scene, spot->room, spot->wall, rc_follow_get_thickness_max (scene->job->units));

  for (guint i = 0; i < all->len; i++)
    {
      *found = g_array_index (all, RcSceneBehind, i);
      if (found->from <= spot->offset && spot->offset + spot->width <= found->to)
        return TRUE;
    }
  return FALSE;
}

/* The same opening in the other room's wall, so that either measures the other's place. */
static void
add_other_side (RcMeasure *measure, const RcWallSpot *spot, const RcSceneBehind *behind, RcRoom *room,
                RcOpening *opening, RcUnitSystem units)
{
  RcRoom    *other = rc_measure_find_room (measure, behind->room->room->id);
  RcOpening *back = rc_room_edit_add_opening (other, opening->kind, behind->wall, units);
  RcWallSpot wall = { .room = behind->room, .wall = behind->wall };

  rc_scene_get_wall (wall.room, wall.wall, &wall.from, &wall.to);
  wall.length = rc_point_distance (wall.from, wall.to);
  RcLength one = rc_wall_spot_get_foot (&wall, rc_wall_spot_get_point (spot, spot->offset));
  RcLength two = rc_wall_spot_get_foot (&wall, rc_wall_spot_get_point (spot, spot->offset + spot->width));
  gboolean runs_back = one > two;
  back->width = opening->width;
  back->offset = CLAMP (MIN (one, two), 0, wall.length - back->width);
  back->depth = opening->depth = behind->gap;
  back->swing = opening->swing == RC_SWING_IN    ? RC_SWING_OUT
                : opening->swing == RC_SWING_OUT ? RC_SWING_IN
                                                 : RC_SWING_NONE;
  back->hinge_at_end = runs_back ? !opening->hinge_at_end : opening->hinge_at_end;
  opening->to_room = g_strdup (other->id);
  opening->to_opening = g_strdup (back->id);
  back->to_room = g_strdup (room->id);
  back->to_opening = g_strdup (opening->id);
}

static void
put_opening (RcGesture *gesture, const RcScene *scene, RcGestureResult *result)
{
  RcWallSpot    spot;
  RcSceneBehind behind;

  if (rc_gesture_has_bad_text (gesture, scene, &result->fault))
    return;
  if (!rc_gesture_find_spot (gesture, scene, rc_room_edit_get_usual_width (get_kind (gesture), scene->job->units),
                             &spot))
    {
      result->fault = g_strdup (_ ("Point at the wall that it stands in."));
      return;
    }
  g_autoptr (RcJob) job = rc_gesture_dup_job (scene);
  RcMeasure *measure = rc_gesture_get_measure (scene, job);
  RcRoom    *room = rc_measure_find_room (measure, spot.room->room->id);
  rc_places_note (scene, measure);
  RcOpening *opening = rc_room_edit_add_opening (room, get_kind (gesture), spot.wall, job->units);
  opening->width = spot.width;
  opening->offset = spot.offset;
  hang_leaf (opening, gesture->leaf);
  gboolean leads = opening->kind != RC_OPENING_WINDOW && find_room_behind (scene, &spot, &behind);
  if (leads)
    add_other_side (measure, &spot, &behind, room, opening, job->units);
  g_autoptr (GError) error = NULL;
  if (!rc_room_check_openings (room, &error)
      || (leads && !rc_room_check_openings (rc_measure_find_room (measure, behind.room->room->id), &error)))
    {
      result->fault = g_strdup (error->message);
      return;
    }
  rc_places_keep (scene, job, NULL);
  if (leads)
    rc_places_relax (scene, job, behind.room->room->id);
  result->room = g_intern_string (room->id);
  result->wall = spot.wall + 1;
  result->step = _ ("Put an opening in");
  result->job = g_steal_pointer (&job);
  rc_gesture_rest (gesture);
}

void
rc_gesture_opening_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                           RcGestureResult *result)
{
  gboolean is_letter = event->kind == RC_EVENT_LETTER;

  if (rc_gesture_put_at_wall (gesture, scene, event, result, put_opening))
    return;
  if (is_letter && event->letter == ' ' && !rc_gesture_has_text (gesture))
    gesture->leaf = (gesture->leaf + 1) % N_LEAVES;
  else if (!is_letter || gesture->n_points > 0)
    {
      rc_gesture_take_key (gesture, event, RC_GESTURE_FIELDS);
      gesture->is_active = rc_gesture_has_text (gesture);
    }
}

/* The leaf standing open. */
static void
sketch_leaf (const RcWallSpot *spot, guint leaf, RcSketch *sketch)
{
  if (leaf == N_LEAVES - 1)
    return;
  double  side = (leaf >= 2) == spot->room->is_left ? 1 : -1;
  RcPoint hinge = rc_wall_spot_get_point (spot, spot->offset + (leaf % 2 == 1 ? spot->width : 0));
  double  dx = (double)(spot->to.x - spot->from.x) / (double)spot->length;
  double  dy = (double)(spot->to.y - spot->from.y) / (double)spot->length;
  RcPoint open
      = { hinge.x + llround (side * dy * (double)spot->width), hinge.y - llround (side * dx * (double)spot->width) };

  rc_sketch_add_line (sketch->lines, hinge, open);
}

void
rc_gesture_opening_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch)
{
  RcWallSpot spot;

  if (!rc_gesture_find_spot (gesture, scene, rc_room_edit_get_usual_width (get_kind (gesture), scene->job->units),
                             &spot))
    return;
  RcPoint start = rc_wall_spot_get_point (&spot, spot.offset),
          end = rc_wall_spot_get_point (&spot, spot.offset + spot.width);
  rc_sketch_add_line (sketch->lines, start, end);
  if (gesture->tool == RC_TOOL_DOOR)
    sketch_leaf (&spot, gesture->leaf, sketch);
  rc_sketch_add_length (sketch, gesture, scene, spot.from, start, spot.offset, 0);
  rc_sketch_add_length (sketch, gesture, scene, end, spot.to, spot.length - spot.width - spot.offset, 1);
  rc_sketch_add_length (sketch, gesture, scene, end, start, spot.width, 2);
}

/* Cut-outs. */

/* A ring that no seam may lie on, kept with the area of its room. */
static gboolean
add_zone (RcMeasure *measure, const char *room, RcRing *ring, char **fault)
{
  const RcFloorArea *area = rc_choice_find_area_of_room (measure, room);

  if (area == NULL)
    {
      *fault = g_strdup (_ ("Begin on the floor of a room that is carpeted."));
      g_array_unref (ring);
      return FALSE;
    }
  RcPin *pin = rc_pin_new (RC_PIN_NO_SEAMS, room);
  g_array_unref (pin->points);
  pin->points = ring;
  g_ptr_array_add (rc_measure_find_area (measure, area->id)->pins, pin);
  return TRUE;
}

/* What Space has come to. */
static RcCutoutKind
get_cutout_kind (const RcGesture *gesture)
{
  return gesture->leaf % RC_N_CUTOUT_KINDS;
}

static gboolean
is_round (const RcGesture *gesture)
{
  return gesture->tool == RC_TOOL_CUTOUT && get_cutout_kind (gesture) == RC_CUTOUT_COLUMN;
}

/* A round one is drawn from its middle: twice as wide as the pointer is away, or as typed. */
static RcLength
get_diameter (const RcGesture *gesture, const RcScene *scene)
{
  RcLength typed = 0;

  if (rc_gesture_get_typed (gesture, scene, 0, &typed))
    return typed;
  RcLength radius = rc_point_distance (gesture->points[0], gesture->pointer);
  return 2 * (gesture->is_free ? radius : rc_snap_round (radius, scene->step));
}

static gboolean
add_cutout (RcJob *job, RcRoom *room, RcCutout *cutout, char **fault)
{
  g_autoptr (GError) error = NULL;

  g_ptr_array_add (room->cutouts, cutout);
  g_autoptr (RcPolygon) floor = rc_room_compute_polygon (room, &job->settings.closure, &error);
  if (floor == NULL)
    *fault = g_strdup (error->message);
  return floor != NULL;
}

/* Takes away the floor without seams under the pointer. */
static void
remove_zone (const RcScene *scene, RcPoint at, RcGestureResult *result)
{
  const RcSceneRoom *seen = rc_scene_find_room_at (scene, at);
  const RcFloorArea *area = seen ? rc_choice_find_area_of_room (scene->measure, seen->room->id) : NULL;

  for (guint i = 0; area && i < area->pins->len; i++)
    {
      const RcPin *pin = g_ptr_array_index (area->pins, i);
      if (pin->kind != RC_PIN_NO_SEAMS || g_strcmp0 (pin->room, seen->room->id) != 0
          || rc_ring_locate (pin->points, (RcPoint){ at.x - seen->at.x, at.y - seen->at.y }) < 0)
        continue;
      result->job = rc_gesture_dup_job (scene);
      result->step = _ ("Let seams lie here again");
      RcFloorArea *own = rc_measure_find_area (rc_gesture_get_measure (scene, result->job), area->id);
      g_ptr_array_remove_index (own->pins, i);
      return;
    }
}

/* What is drawn, in the room's own coordinates; NULL while it has no size. */
static RcCutout *
new_drawn (const RcGesture *gesture, const RcScene *scene, const RcSceneRoom *room)
{
  RcPoint  from = gesture->points[0], to = rc_gesture_get_far_corner (gesture, scene);
  RcLength diameter = is_round (gesture) ? get_diameter (gesture, scene) : 0;

  from = (RcPoint){ from.x - room->at.x, from.y - room->at.y };
  to = (RcPoint){ to.x - room->at.x, to.y - room->at.y };
  if (is_round (gesture))
    return diameter > 0 ? rc_cutout_new_round (get_cutout_kind (gesture), from, diameter) : NULL;
  if (from.x == to.x || from.y == to.y)
    return NULL;
  const RcPoint points[] = { from, { to.x, from.y }, to, { from.x, to.y } };
  return rc_cutout_new_take (get_cutout_kind (gesture), rc_ring_new_from_points (points, G_N_ELEMENTS (points)));
}

static void
put_cutout (RcGesture *gesture, const RcScene *scene, RcGestureResult *result)
{
  const RcSceneRoom *seen = rc_scene_find_room (scene, gesture->room);
  g_autoptr (RcCutout) drawn = NULL;

  if (rc_gesture_has_bad_text (gesture, scene, &result->fault))
    return;
  drawn = seen ? new_drawn (gesture, scene, seen) : NULL;
  if (drawn == NULL)
    {
      result->fault = g_strdup (_ ("It has no width or no length yet: move the pointer or type both."));
      return;
    }
  g_autoptr (RcJob) job = rc_gesture_dup_job (scene);
  RcMeasure *measure = rc_gesture_get_measure (scene, job);
  gboolean   is_zone = gesture->tool == RC_TOOL_ZONE;
  if (is_zone
          ? !add_zone (measure, gesture->room, rc_ring_copy (drawn->points), &result->fault)
          : !add_cutout (job, rc_measure_find_room (measure, gesture->room), g_steal_pointer (&drawn), &result->fault))
    return;
  result->room = gesture->room;
  result->step = is_zone ? _ ("Keep floor free of seams") : _ ("Put a cut-out in");
  result->job = g_steal_pointer (&job);
  rc_gesture_rest (gesture);
}

static void
point_at (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event)
{
  RcSnapRequest request = { .pointer = event->at,
                            .reach = event->reach,
                            .is_free = event->is_free,
                            .has_anchor = gesture->n_points > 0,
                            .anchor = gesture->points[0] };

  gesture->raw = event->at;
  gesture->is_free = event->is_free;
  gesture->snap = rc_snap_find (scene, &request);
  gesture->pointer = gesture->snap.point;
}

static void
begin_cutout (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  const RcSceneRoom *room = rc_scene_find_room_at (scene, event->at);

  if (room == NULL)
    {
      result->fault = g_strdup (_ ("Begin on the floor of a room."));
      return;
    }
  gesture->room = g_intern_string (room->room->id);
  gesture->points[0] = gesture->pointer;
  gesture->n_points = 1;
  gesture->is_active = gesture->is_down = TRUE;
}

void
rc_gesture_cutout_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                          RcGestureResult *result)
{
  if (event->kind == RC_EVENT_PRESS || event->kind == RC_EVENT_MOTION)
    point_at (gesture, scene, event);
  if (event->kind == RC_EVENT_PRESS && gesture->is_active)
    gesture->is_down = gesture->has_moved = TRUE;
  else if (event->kind == RC_EVENT_PRESS)
    begin_cutout (gesture, scene, event, result);
  else if (event->kind == RC_EVENT_REMOVE)
    {
      if (gesture->tool == RC_TOOL_ZONE && !gesture->is_active)
        remove_zone (scene, event->at, result);
    }
  else if (event->kind == RC_EVENT_LETTER && event->letter == ' ' && gesture->tool == RC_TOOL_CUTOUT
           && !rc_gesture_has_text (gesture))
    gesture->leaf = (gesture->leaf + 1) % RC_N_CUTOUT_KINDS;
  else if (rc_gesture_take_span (gesture, event, is_round (gesture) ? 1 : 2))
    put_cutout (gesture, scene, result);
}

static void
sketch_circle (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch)
{
  RcPoint  middle = gesture->points[0];
  RcLength diameter = get_diameter (gesture, scene), radius = diameter / 2;

  if (diameter <= 0)
    return;
  g_autoptr (RcCutout) round = rc_cutout_new_round (RC_CUTOUT_COLUMN, middle, diameter);
  g_ptr_array_add (sketch->rings, rc_cutout_compute_ring (round));
  rc_sketch_add_length (sketch, gesture, scene, (RcPoint){ middle.x - radius, middle.y },
                        (RcPoint){ middle.x + radius, middle.y }, diameter, 0);
}

void
rc_gesture_cutout_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch)
{
  rc_sketch_add_guides (sketch, gesture);
  if (gesture->tool == RC_TOOL_CUTOUT)
    {
      sketch->word = g_strdup (rc_cutout_kind_get_label (get_cutout_kind (gesture)));
      sketch->word_at = gesture->pointer;
    }
  if (gesture->n_points > 0 && is_round (gesture))
    sketch_circle (gesture, scene, sketch);
  else if (gesture->n_points > 0)
    rc_sketch_add_rectangle (sketch, gesture, scene);
}
