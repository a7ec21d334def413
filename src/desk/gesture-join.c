/* Two doors that are one: the second one's room is turned and put where they meet. */
#include <math.h>

#include <glib/gi18n-lib.h>

#include "gesture-places.h"
#include "gesture-private.h"
#include "gesture-room.h"
#include "measure-edit.h"
#include "room-corners.h"
#include "room-edit.h"

/* The opening nearest to the point, in any room: index in its room's openings. */
static const RcSceneRoom *
find_opening (const RcScene *scene, RcPoint at, RcLength reach, guint *index)
{
  const RcSceneRoom *found = NULL;
  RcLength           best = 2 * reach + 1;

  for (guint r = 0; r < scene->rooms->len; r++)
    {
      const RcSceneRoom *room = g_ptr_array_index (scene->rooms, r);
      for (guint i = 0; i < room->room->openings->len; i++)
        {
          const RcOpening *opening = g_ptr_array_index (room->room->openings, i);
          RcPoint          from, to;
          if (opening->kind == RC_OPENING_WINDOW || !rc_room_get_opening_ends (room->room, opening, &from, &to))
            continue;
          RcPoint  middle = { room->at.x + (from.x + to.x) / 2, room->at.y + (from.y + to.y) / 2 };
          RcLength distance = rc_point_distance (middle, at);
          if (distance >= best)
            continue;
          best = distance;
          found = room;
          *index = i;
        }
    }
  return found;
}

static double
get_angle (RcPoint step)
{
  return atan2 ((double)step.y, (double)step.x) * 180 / G_PI;
}

/* Turns the room so that its opening looks the other way than the first; exactly by right angles where nearly so. */
static void
turn_to_face (RcRoom *room, const RcOpening *opening, const RcRoom *first, const RcOpening *first_opening)
{
  RcPoint out = { 0 }, back = { 0 };

  if (!rc_room_get_outward_step (first, first_opening->wall, RC_TICKS_PER_M, &out)
      || !rc_room_get_outward_step (room, opening->wall, RC_TICKS_PER_M, &back))
    return;
  double turn = fmod (get_angle (out) + 180 - get_angle (back) + 720, 360), square = round (turn / 90) * 90;
  if (fabs (turn - square) < 0.1)
    turn = fmod (square, 360);
  if (turn != 0)
    rc_room_edit_turn (room, turn);
}

static RcPoint
get_middle (const RcRoom *room, const RcOpening *opening)
{
  RcPoint from = { 0 }, to = { 0 };

  rc_room_get_opening_ends (room, opening, &from, &to);
  return (RcPoint){ (from.x + to.x) / 2, (from.y + to.y) / 2 };
}

RcJob *
rc_gesture_room_join (const RcScene *scene, const char *first_id, const char *first_opening_id, const char *id,
                      const char *opening_id)
{
  g_autoptr (RcJob) job = rc_gesture_dup_job (scene);
  RcMeasure *measure = rc_gesture_get_measure (scene, job);
  RcRoom    *first = rc_scene_find_room (scene, first_id) ? rc_measure_find_room (measure, first_id) : NULL;
  RcRoom    *room = rc_scene_find_room (scene, id) ? rc_measure_find_room (measure, id) : NULL;
  RcOpening *first_opening = first ? rc_room_edit_find_opening (first, first_opening_id) : NULL;
  RcOpening *opening = room ? rc_room_edit_find_opening (room, opening_id) : NULL;
  RcPoint    out = { 0 };

  if (first_opening == NULL || opening == NULL)
    return NULL;
  rc_places_note (scene, measure);
  turn_to_face (room, opening, first, first_opening);
  rc_measure_edit_lead (measure, id, opening_id, first_id, first_opening_id);
  rc_room_get_outward_step (first, first_opening->wall, MAX (opening->depth, first_opening->depth), &out);
  RcPoint middle = get_middle (first, first_opening), own = get_middle (room, opening);
  room->at = (RcPoint){ first->at.x + middle.x + out.x - own.x, first->at.y + middle.y + out.y - own.y };
  room->placed = TRUE;
  g_autoptr (GPtrArray) loosened = g_ptr_array_new ();
  g_ptr_array_add (loosened, room->id);
  rc_places_keep (scene, job, loosened);
  rc_places_relax (scene, job, room->id);
  return g_steal_pointer (&job);
}

static void
join (RcGesture *gesture, const RcScene *scene, const RcSceneRoom *second, guint index, RcGestureResult *result)
{
  const RcRoom    *first = rc_scene_find_room (scene, gesture->room)->room;
  const RcOpening *opening = g_ptr_array_index (second->room->openings, index);
  const RcOpening *first_opening = g_ptr_array_index (first->openings, gesture->index);

  result->job = rc_gesture_room_join (scene, first->id, first_opening->id, second->room->id, opening->id);
  result->room = g_intern_string (second->room->id);
  result->step = _ ("Join two rooms at a door");
  rc_gesture_rest (gesture);
}

void
rc_gesture_join_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  guint              index = 0;
  const RcSceneRoom *room = NULL;

  if (event->kind == RC_EVENT_MOTION)
    gesture->raw = gesture->pointer = event->at;
  if (event->kind != RC_EVENT_PRESS)
    return;
  room = find_opening (scene, event->at, event->reach, &index);
  if (room == NULL)
    result->fault = g_strdup (_ ("Click on a door or an archway."));
  else if (!gesture->is_active)
    {
      gesture->is_active = TRUE;
      gesture->room = g_intern_string (room->room->id);
      gesture->index = index;
      gesture->points[0] = event->at;
      gesture->n_points = 1;
    }
  else if (g_strcmp0 (room->room->id, gesture->room) == 0)
    result->fault = g_strdup (_ ("The second door must be another room's."));
  else
    join (gesture, scene, room, index, result);
}

void
rc_gesture_join_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch)
{
  const RcSceneRoom *room = gesture->n_points ? rc_scene_find_room (scene, gesture->room) : NULL;

  if (room == NULL)
    return;
  RcPoint from = { 0 }, to = { 0 };
  rc_room_get_opening_ends (room->room, g_ptr_array_index (room->room->openings, gesture->index), &from, &to);
  from = (RcPoint){ from.x + room->at.x, from.y + room->at.y };
  to = (RcPoint){ to.x + room->at.x, to.y + room->at.y };
  rc_sketch_add_line (sketch->lines, from, to);
  rc_sketch_add_line (sketch->guides, gesture->points[0], gesture->raw);
}
