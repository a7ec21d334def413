/* Moving what is there: corners, walls, openings and cut-outs of the chosen room by their grips, or a room as a whole.
 */
#include <math.h>

#include <glib/gi18n-lib.h>

#include "door-links.h"
#include "gesture-follow.h"
#include "gesture-places.h"
#include "gesture-private.h"
#include "measure-edit.h"
#include "room-corners.h"
#include "room-edit.h"

static RcPoint
get_delta (const RcGesture *gesture)
{
  return (RcPoint){ gesture->raw.x - gesture->points[0].x, gesture->raw.y - gesture->points[0].y };
}

static RcLength
get_wall_length (const RcSceneRoom *room, guint wall)
{
  RcPoint from, to;

  rc_scene_get_wall (room, wall % room->corners->len, &from, &to);
  return rc_point_distance (from, to);
}

static guint
get_neighbour (const RcSceneRoom *room, guint wall, gboolean after)
{
  guint n = room->corners->len;
  return after ? (wall + 1) % n : (wall + n - 1) % n;
}

/* How far the pointer has taken the wall out of the room: to a line it snaps to, else so that a neighbouring wall has a
 * whole length. */
static RcLength
get_pulled (const RcGesture *gesture, const RcScene *scene, const RcSceneRoom *room, guint wall, double stretch,
            RcLength length)
{
  RcPoint from, to, delta = get_delta (gesture);

  rc_scene_get_wall (room, wall, &from, &to);
  double along = hypot ((double)(to.x - from.x), (double)(to.y - from.y)), side = room->is_left ? 1 : -1;
  if (along == 0)
    return 0;
  double   nx = side * (double)(to.y - from.y) / along, ny = -side * (double)(to.x - from.x) / along;
  RcLength pulled = llround ((double)delta.x * nx + (double)delta.y * ny);
  if (gesture->is_free)
    return pulled;
  const RcSnap *snap = &gesture->snap;
  if (from.x == to.x && snap->x_kind > RC_SNAP_SQUARE)
    return (snap->point.x - from.x) * (nx > 0 ? 1 : -1);
  if (from.y == to.y && snap->y_kind > RC_SNAP_SQUARE)
    return (snap->point.y - from.y) * (ny > 0 ? 1 : -1);
  if (stretch == 0)
    return rc_snap_round (pulled, scene->step);
  RcLength whole = rc_snap_round (length + llround (stretch * (double)pulled), scene->step);
  return llround ((double)(whole - length) / stretch);
}

/* The same, or what gives a neighbouring wall the length typed: `field` is that neighbour's. */
static RcLength
get_out (const RcGesture *gesture, const RcScene *scene, const RcSceneRoom *room, guint wall, gboolean after,
         guint field)
{
  double   stretch = rc_room_edit_get_stretch (room->room, wall, after);
  RcLength length = get_wall_length (room, get_neighbour (room, wall, after)), typed = 0;

  if (stretch != 0 && rc_gesture_get_typed (gesture, scene, field, &typed))
    return llround ((double)(typed - length) / stretch);
  return get_pulled (gesture, scene, room, wall, stretch, length);
}

static gboolean
move_wall (const RcGesture *gesture, const RcScene *scene, const RcSceneRoom *room, RcJob *job)
{
  RcLength typed = 0;
  guint    wall = gesture->index;
  gboolean by_after
      = rc_gesture_get_typed (gesture, scene, 1, &typed) || rc_room_edit_get_stretch (room->room, wall, FALSE) == 0;
  RcLength out = get_out (gesture, scene, room, wall, by_after, by_after ? 1 : 0);

  return rc_follow_move_wall (scene, job, gesture->room, &wall, out);
}

/* The corner of a right angle takes both its walls along; any other, and one moved free, goes alone. */
static gboolean
is_square_corner (const RcSceneRoom *room, guint corner)
{
  RcPoint a, b, c, d;

  rc_scene_get_wall (room, get_neighbour (room, corner, FALSE), &a, &b);
  rc_scene_get_wall (room, corner, &c, &d);
  double dot = (double)(b.x - a.x) * (double)(d.x - c.x) + (double)(b.y - a.y) * (double)(d.y - c.y);
  double size = (double)rc_point_distance (a, b) * (double)rc_point_distance (c, d);
  return size > 0 && fabs (dot) < 0.01 * size;
}

static gboolean
move_corner_alone (const RcGesture *gesture, const RcSceneRoom *room, RcJob *job, const RcScene *scene)
{
  g_autoptr (GArray) corners = rc_ring_copy (room->corners);
  RcRoom *moved = rc_measure_find_room (rc_gesture_get_measure (scene, job), gesture->room);

  *rc_ring_get (corners, gesture->index) = gesture->is_free ? gesture->raw : gesture->snap.point;
  for (guint i = 0; i < corners->len; i++)
    {
      rc_ring_get (corners, i)->x -= room->at.x;
      rc_ring_get (corners, i)->y -= room->at.y;
    }
  return rc_room_edit_set_corners (moved, corners);
}

static gboolean
move_corner (const RcGesture *gesture, const RcScene *scene, const RcSceneRoom *room, RcJob *job)
{
  guint before = get_neighbour (room, gesture->index, FALSE), after = gesture->index;

  if (gesture->is_free || !is_square_corner (room, gesture->index))
    return move_corner_alone (gesture, room, job, scene);
  RcLength out_after = get_out (gesture, scene, room, after, FALSE, 0);
  RcLength out_before = get_out (gesture, scene, room, before, TRUE, 1);
  if (out_after != 0 && !rc_follow_move_wall (scene, job, gesture->room, &after, out_after))
    return FALSE;
  guint n = rc_room_get_n_walls (rc_measure_find_room (rc_gesture_get_measure (scene, job), gesture->room));
  if (before > gesture->index) /* walls put in before it */
    before += n - room->corners->len;
  return out_before == 0 || rc_follow_move_wall (scene, job, gesture->room, &before, out_before);
}

/* Openings. */

static RcLength
get_offset (const RcGesture *gesture, const RcScene *scene, const RcSceneRoom *room, const RcOpening *opening)
{
  RcPoint  from, to, delta = get_delta (gesture);
  RcLength typed = 0, length = get_wall_length (room, opening->wall), offset = 0;

  rc_scene_get_wall (room, opening->wall, &from, &to);
  double moved = ((double)delta.x * (double)(to.x - from.x) + (double)delta.y * (double)(to.y - from.y))
                 / (double)MAX (length, 1);
  if (rc_gesture_get_typed (gesture, scene, 0, &typed))
    offset = typed;
  else if (rc_gesture_get_typed (gesture, scene, 1, &typed))
    offset = length - opening->width - typed;
  else if (gesture->is_free)
    offset = opening->offset + llround (moved);
  else
    offset = rc_snap_round (opening->offset + llround (moved), scene->step);
  return CLAMP (offset, 0, MAX (length - opening->width, 0));
}

/* The same opening as measured from the other side goes along. */
static void
slide_other (RcMeasure *measure, const RcOpening *opening, RcLength by)
{
  g_autoptr (GHashTable) links = rc_door_links_new (measure, NULL);
  const RcDoorLink *link = links ? g_hash_table_lookup (links, opening) : NULL;
  RcPoint           from, to, other_from, other_to;

  if (link == NULL || link->other_opening == NULL || link->other->floor != link->room->floor
      || !rc_room_get_wall_ends (link->room, opening->wall, &from, &to)
      || !rc_room_get_wall_ends (link->other, link->other_opening->wall, &other_from, &other_to))
    return;
  gboolean runs_back = (double)(to.x - from.x) * (double)(other_to.x - other_from.x)
                           + (double)(to.y - from.y) * (double)(other_to.y - other_from.y)
                       < 0;
  RcOpening *other = (RcOpening *)link->other_opening;
  RcLength   length = rc_point_distance (other_from, other_to);
  other->offset = CLAMP (other->offset + (runs_back ? -by : by), 0, MAX (length - other->width, 0));
}

static gboolean
move_opening (const RcGesture *gesture, const RcScene *scene, const RcSceneRoom *room, RcJob *job)
{
  RcMeasure *measure = rc_gesture_get_measure (scene, job);
  RcRoom    *moved = rc_measure_find_room (measure, gesture->room);
  RcOpening *opening = g_ptr_array_index (moved->openings, gesture->index);
  RcLength   by = get_offset (gesture, scene, room, opening) - opening->offset;

  opening->offset += by;
  slide_other (measure, opening, by);
  return TRUE;
}

/* Cut-outs and rooms. */

static RcPoint
get_whole_delta (const RcGesture *gesture, const RcScene *scene)
{
  RcPoint delta = get_delta (gesture);

  if (gesture->is_free)
    return delta;
  return (RcPoint){ rc_snap_round (delta.x, scene->step), rc_snap_round (delta.y, scene->step) };
}

static gboolean
move_cutout (const RcGesture *gesture, const RcScene *scene, const RcSceneRoom *room, RcJob *job)
{
  RcRoom *moved = rc_measure_find_room (rc_gesture_get_measure (scene, job), gesture->room);
  RcRing *ring = g_ptr_array_index (moved->cutouts, gesture->index);
  RcPoint delta = get_whole_delta (gesture, scene);

  for (guint i = 0; i < ring->len; i++)
    {
      rc_ring_get (ring, i)->x += delta.x;
      rc_ring_get (ring, i)->y += delta.y;
    }
  return TRUE;
}

static gboolean
move_room (const RcGesture *gesture, const RcScene *scene, const RcSceneRoom *room, RcJob *job)
{
  RcRoom *moved = rc_measure_find_room (rc_gesture_get_measure (scene, job), gesture->room);
  RcPoint corner = *rc_ring_get (room->corners, gesture->index), delta = get_delta (gesture);

  if (!gesture->is_free)
    delta = (RcPoint){ gesture->snap.point.x - corner.x, gesture->snap.point.y - corner.y };
  moved->at.x += delta.x;
  moved->at.y += delta.y;
  return TRUE;
}

/* Events. */

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

/* The job as it would be. NULL: it cannot be so. (transfer full) */
static RcJob *
compute_moved (const RcGesture *gesture, const RcScene *scene)
{
  static gboolean (*const MOVES[]) (const RcGesture *, const RcScene *, const RcSceneRoom *, RcJob *)
      = { [RC_GRIP_CORNER] = move_corner,
          [RC_GRIP_WALL] = move_wall,
          [RC_GRIP_OPENING] = move_opening,
          [RC_GRIP_CUTOUT] = move_cutout,
          [RC_GRIP_ROOM] = move_room };
  const RcSceneRoom *room = rc_scene_find_room (scene, gesture->room);
  g_autoptr (RcJob) job = rc_gesture_dup_job (scene);

  rc_places_note (scene, rc_gesture_get_measure (scene, job));
  if (room == NULL || gesture->grip == RC_GRIP_NONE || !MOVES[gesture->grip](gesture, scene, room, job))
    return NULL;
  return g_steal_pointer (&job);
}

static void
finish (RcGesture *gesture, const RcScene *scene, RcGestureResult *result)
{
  if (rc_gesture_has_bad_text (gesture, scene, &result->fault))
    return;
  g_autoptr (RcJob) job = compute_moved (gesture, scene);
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
  result->step = get_step (gesture->grip);
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
  if (room && gesture->grip == RC_GRIP_ROOM)
    {
      RcPoint delta = get_delta (gesture), corner = *rc_ring_get (room->corners, gesture->index);
      request.has_anchor = TRUE;
      request.anchor = corner;
      request.pointer = (RcPoint){ corner.x + delta.x, corner.y + delta.y };
    }
  gesture->snap = rc_snap_find (scene, &request);
  gesture->pointer = gesture->snap.point;
  gesture->has_moved |= rc_point_distance (event->at, gesture->points[0]) > event->reach / 3;
}

static gboolean
has_text (const RcGesture *gesture)
{
  return rc_gesture_is_typed (gesture, 0) || rc_gesture_is_typed (gesture, 1);
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
      if (gesture->has_moved || has_text (gesture))
        finish (gesture, scene, result);
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
  RcRing *ring = rc_ring_copy (g_ptr_array_index (room->room->cutouts, gesture->index));

  for (guint i = 0; i < ring->len; i++)
    {
      rc_ring_get (ring, i)->x += room->at.x;
      rc_ring_get (ring, i)->y += room->at.y;
    }
  g_ptr_array_add (sketch->rings, ring);
}

void
rc_gesture_move_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch)
{
  if (!gesture->is_active || (!gesture->has_moved && !has_text (gesture)))
    return;
  g_autoptr (RcJob) job = compute_moved (gesture, scene);
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
  if (gesture->grip == RC_GRIP_CORNER || gesture->grip == RC_GRIP_WALL)
    {
      sketch_wall_length (gesture, scene, room, i + n - 1, 0, sketch);
      sketch_wall_length (gesture, scene, room, i + (gesture->grip == RC_GRIP_WALL ? 1 : 0), 1, sketch);
    }
}
