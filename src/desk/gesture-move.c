/* Moving what is there by its grips: events and what is shown. */
#include <glib/gi18n-lib.h>

#include "gesture-places.h"
#include "gesture-private.h"
#include "measure-edit.h"
#include "room-corners.h"
#include "room-edit.h"
#include "wall-arc.h"

static const char *
get_step (RcGrip grip)
{
  switch (grip)
    {
    case RC_GRIP_CORNER:
      return _ ("Move a corner");
    case RC_GRIP_WALL:
      return _ ("Move a wall");
    case RC_GRIP_OPENING:
      return _ ("Place of an opening");
    case RC_GRIP_CUTOUT:
      return _ ("Move a cut-out");
    default:
      return _ ("Move a room");
    }
}

void
rc_gesture_finish_move (RcGesture *gesture, const RcScene *scene, RcGestureResult *result)
{
  if (rc_gesture_has_bad_text (gesture, scene, &result->fault))
    return;
  g_autoptr (RcJob) job = rc_gesture_compute_moved (gesture, scene);
  if (job == NULL)
    {
      result->fault = g_strdup (_ ("It cannot go there: a wall would have no length, or be shorter than its opening."));
      rc_gesture_rest (gesture);
      return;
    }
  g_autoptr (GPtrArray) loosened = g_ptr_array_new ();
  if (gesture->grip != RC_GRIP_OPENING && gesture->grip != RC_GRIP_CUTOUT)
    g_ptr_array_add (loosened, (gpointer)gesture->room);
  rc_places_keep (scene, job, loosened);
  result->job = g_steal_pointer (&job);
  result->step = gesture->is_bow ? _ ("Wall bow") : get_step (gesture->grip);
  rc_gesture_rest (gesture);
}

static guint
find_nearest_corner (const RcSceneRoom *room, RcPoint at)
{
  guint nearest = 0;

  for (guint i = 1; i < room->corners->len; i++)
    if (rc_point_distance (*rc_ring_get (room->corners, i), at)
        < rc_point_distance (*rc_ring_get (room->corners, nearest), at))
      nearest = i;
  return nearest;
}

static void
grip (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event)
{
  if (gesture->tool == RC_TOOL_MOVE)
    {
      const RcSceneRoom *room = rc_scene_find_room_at (scene, event->at);
      gesture->grip = room ? RC_GRIP_ROOM : RC_GRIP_NONE;
      gesture->room = room ? g_intern_string (room->room->id) : gesture->room;
      gesture->index = room ? find_nearest_corner (room, event->at) : 0;
    }
  else
    gesture->grip = rc_gesture_find_grip (gesture, scene, event->at, event->reach, &gesture->index);
  gesture->held = gesture->tool == RC_TOOL_CHOOSE ? gesture->grip : RC_GRIP_NONE;
  gesture->held_index = gesture->index;
  gesture->is_active = gesture->grip != RC_GRIP_NONE;
  gesture->is_down = gesture->is_active;
  gesture->points[0] = gesture->raw = event->at;
  gesture->n_points = 1;
}

/* What the pointer holds: a corner of the room moved, else the pointer itself. */
static void
point_at (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event)
{
  const RcSceneRoom *room = rc_scene_find_room (scene, gesture->room);
  RcSnapRequest      request
      = { .pointer = event->at, .reach = event->reach, .is_free = event->is_free, .except_room = gesture->room };

  gesture->raw = event->at;
  gesture->is_free = event->is_free;
  gesture->is_bow = event->is_bow && gesture->grip == RC_GRIP_WALL;
  if (room && gesture->grip == RC_GRIP_ROOM)
    {
      RcPoint delta = rc_gesture_get_delta (gesture), corner = *rc_ring_get (room->corners, gesture->index);
      request.has_anchor = TRUE;
      request.anchor = corner;
      request.pointer = (RcPoint){ corner.x + delta.x, corner.y + delta.y };
    }
  gesture->snap = rc_snap_find (scene, &request);
  gesture->pointer = gesture->snap.point;
  gesture->has_moved |= rc_point_distance (event->at, gesture->points[0]) > event->reach / 3;
}

/* Takes away the opening, the cut-out or the corner under the pointer. */
static void
take_away (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  guint  index = 0;
  RcGrip grip = rc_gesture_find_grip (gesture, scene, event->at, event->reach, &index);
  g_autoptr (RcJob) job = rc_gesture_dup_job (scene);
  RcRoom  *room = rc_measure_find_room (rc_gesture_get_measure (scene, job), gesture->room);
  gboolean done = FALSE;

  rc_places_note (scene, rc_gesture_get_measure (scene, job));
  if (grip == RC_GRIP_OPENING)
    {
      RcOpening *opening = g_ptr_array_index (room->openings, index);
      result->step = _ ("Take an opening out");
      rc_measure_edit_remove_other_side (rc_gesture_get_measure (scene, job), room->id, opening->id);
      done = rc_room_edit_remove_opening (room, opening->id);
    }
  else if (grip == RC_GRIP_CUTOUT)
    {
      result->step = _ ("Take a cut-out out");
      g_ptr_array_remove_index (room->cutouts, index);
      done = TRUE;
    }
  else if (grip == RC_GRIP_CORNER)
    {
      result->step = _ ("Take a corner out");
      done = rc_room_edit_remove_corner (room, index);
      if (!done)
        result->fault = g_strdup (_ ("That corner must stay: the walls at it have openings, or there are only three."));
    }
  if (!done)
    return;
  rc_places_keep (scene, job, NULL);
  result->job = g_steal_pointer (&job);
}

void
rc_gesture_move_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  if (event->kind == RC_EVENT_PRESS ? rc_gesture_grips_stair (gesture, scene, event->at)
                                    : gesture->grip == RC_GRIP_STAIR)
    {
      rc_gesture_stair_handle (gesture, scene, event, result);
      return;
    }
  if (event->kind == RC_EVENT_PRESS ? rc_gesture_grips_turn (gesture, scene, event->at, event->reach)
                                    : gesture->grip == RC_GRIP_TURN)
    {
      rc_gesture_turn_handle (gesture, scene, event, result);
      return;
    }
  if (!gesture->is_active && rc_gesture_held_handle (gesture, scene, event, result))
    return;
  if (event->kind == RC_EVENT_PRESS)
    {
      grip (gesture, scene, event);
      return;
    }
  if (event->kind == RC_EVENT_REMOVE && !gesture->is_active)
    take_away (gesture, scene, event, result);
  if (!gesture->is_active)
    return;
  switch (event->kind)
    {
    case RC_EVENT_MOTION:
      point_at (gesture, scene, event);
      break;
    case RC_EVENT_RELEASE:
    case RC_EVENT_ENTER:
      if (gesture->has_moved || rc_gesture_has_text (gesture))
        rc_gesture_finish_move (gesture, scene, result);
      else if (event->kind == RC_EVENT_RELEASE)
        {
          result->is_click = TRUE;
          result->room = gesture->grip == RC_GRIP_WALL ? gesture->room : NULL;
          result->wall = gesture->index + 1;
          rc_gesture_rest (gesture);
        }
      break;
    default:
      rc_gesture_take_key (gesture, event, 2);
    }
}

/* Sketch. */

static void
sketch_changed (const RcScene *before, const RcScene *after, RcSketch *sketch)
{
  for (guint i = 0; i < after->rooms->len; i++)
    {
      const RcSceneRoom *room = g_ptr_array_index (after->rooms, i);
      const RcSceneRoom *old = rc_scene_find_room (before, room->room->id);
      if (old && old->corners->len == room->corners->len
          && memcmp (old->corners->data, room->corners->data, old->corners->len * sizeof (RcPoint)) == 0)
        continue;
      g_ptr_array_add (sketch->rings, rc_ring_copy (room->corners));
    }
}

static void
sketch_wall_length (const RcGesture *gesture, const RcScene *scene, const RcSceneRoom *room, guint wall, int field,
                    RcSketch *sketch)
{
  RcPoint from, to;

  rc_scene_get_wall (room, wall % room->corners->len, &from, &to);
  if (room->is_left) /* the label stands outside */
    rc_sketch_add_length (sketch, gesture, scene, to, from, rc_point_distance (from, to), field);
  else
    rc_sketch_add_length (sketch, gesture, scene, from, to, rc_point_distance (from, to), field);
}

static void
sketch_opening (const RcGesture *gesture, const RcScene *scene, const RcSceneRoom *room, RcSketch *sketch)
{
  const RcOpening *opening = g_ptr_array_index (room->room->openings, gesture->index);
  RcPoint          from, to, start, end;

  if (!rc_room_get_opening_ends (room->room, opening, &start, &end))
    return;
  start = (RcPoint){ start.x + room->at.x, start.y + room->at.y };
  end = (RcPoint){ end.x + room->at.x, end.y + room->at.y };
  rc_scene_get_wall (room, opening->wall, &from, &to);
  rc_sketch_add_line (sketch->lines, start, end);
  rc_sketch_add_length (sketch, gesture, scene, from, start, rc_point_distance (from, start), 0);
  rc_sketch_add_length (sketch, gesture, scene, end, to, rc_point_distance (end, to), 1);
}

static void
sketch_cutout (const RcGesture *gesture, const RcSceneRoom *room, RcSketch *sketch)
{
  RcRing *ring = rc_cutout_compute_ring (g_ptr_array_index (room->room->cutouts, gesture->index));

  for (guint i = 0; i < ring->len; i++)
    {
      rc_ring_get (ring, i)->x += room->at.x;
      rc_ring_get (ring, i)->y += room->at.y;
    }
  g_ptr_array_add (sketch->rings, ring);
}

/* The arc as chords, and its rise. */
static void
sketch_bow (const RcGesture *gesture, const RcScene *scene, const RcSceneRoom *room, RcSketch *sketch)
{
  RcPoint  from, to;
  RcLength bow = g_array_index (room->room->walls, RcWall, gesture->index).bow;
  g_autoptr (GArray) arc = rc_ring_new ();

  rc_scene_get_wall (room, gesture->index, &from, &to);
  g_array_append_val (arc, from);
  rc_wall_arc_append (arc, from, to, bow, room->is_left);
  g_array_append_val (arc, to);
  for (guint i = 0; i + 1 < arc->len; i++)
    rc_sketch_add_line (sketch->lines, *rc_ring_get (arc, i), *rc_ring_get (arc, i + 1));
  RcPoint middle = { (from.x + to.x) / 2, (from.y + to.y) / 2 };
  rc_sketch_add_length (sketch, gesture, scene, middle, *rc_ring_get (arc, arc->len / 2), ABS (bow), 0);
}

void
rc_gesture_move_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch)
{
  if (gesture->grip == RC_GRIP_STAIR)
    {
      rc_gesture_stair_sketch (gesture, scene, sketch);
      return;
    }
  if (gesture->grip == RC_GRIP_TURN)
    {
      rc_gesture_turn_sketch (gesture, scene, sketch);
      return;
    }
  if (!gesture->is_active || (!gesture->has_moved && !rc_gesture_has_text (gesture)))
    return;
  g_autoptr (RcJob) job = rc_gesture_compute_moved (gesture, scene);
  if (job == NULL)
    return;
  g_autoptr (RcScene) after = rc_places_new_scene (scene, job);
  const RcSceneRoom *room = rc_scene_find_room (after, gesture->room);
  guint              n = room->corners->len, i = gesture->index;

  sketch_changed (scene, after, sketch);
  if (gesture->grip == RC_GRIP_OPENING)
    sketch_opening (gesture, scene, room, sketch);
  else if (gesture->grip == RC_GRIP_CUTOUT)
    sketch_cutout (gesture, room, sketch);
  else
    rc_sketch_add_guides (sketch, gesture);
  if (gesture->is_bow)
    sketch_bow (gesture, scene, room, sketch);
  else if (gesture->grip == RC_GRIP_CORNER || gesture->grip == RC_GRIP_WALL)
    {
      sketch_wall_length (gesture, scene, room, i + n - 1, 0, sketch);
      sketch_wall_length (gesture, scene, room, i + (gesture->grip == RC_GRIP_WALL ? 1 : 0), 1, sketch);
    }
}
