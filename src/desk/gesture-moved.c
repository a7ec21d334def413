/* Moving what is there: corners, walls, openings and cut-outs of the chosen room, or a room as a whole; the job as it
 * would be with the pointer where it is. */
#include <math.h>

#include "door-links.h"
#include "gesture-follow.h"
#include "gesture-places.h"
#include "gesture-private.h"
#include "room-corners.h"
#include "room-edit.h"

RcPoint
rc_gesture_get_delta (const RcGesture *gesture)
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
  RcPoint from, to, delta = rc_gesture_get_delta (gesture);

  rc_scene_get_wall (room, wall, &from, &to);
  double along = hypot ((double)(to.x - from.x), (double)(to.y - from.y)), side = room->is_left ? 1 : -1;
  if (along == 0)
    return 0;
  double   nx = side * (double)(to.y - from.y) / along, ny = -side * (double)(to.x - from.x) / along;
  RcLength pulled = llround ((double)delta.x * nx + (double)delta.y * ny);
  if (gesture->is_free || gesture->is_exact)
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

/* Bends the wall to an arc that rises to the pointer; out of the room where it is pulled out. */
static gboolean
bend_wall (const RcGesture *gesture, const RcScene *scene, const RcSceneRoom *room, RcJob *job)
{
  RcRoom  *bent = rc_measure_find_room (rc_gesture_get_measure (scene, job), gesture->room);
  RcLength half = get_wall_length (room, gesture->index) / 2, typed = 0;
  RcLength bow = get_pulled (gesture, scene, room, gesture->index, 0, 0);

  if (rc_gesture_get_typed (gesture, scene, 0, &typed))
    bow = bow < 0 ? -typed : typed;
  return rc_room_edit_set_bow (bent, gesture->index, CLAMP (bow, -half, half));
}

static gboolean
move_wall (const RcGesture *gesture, const RcScene *scene, const RcSceneRoom *room, RcJob *job)
{
  if (gesture->is_bow)
    return bend_wall (gesture, scene, room, job);
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

  *rc_ring_get (corners, gesture->index) = gesture->is_free || gesture->is_exact ? gesture->raw : gesture->snap.point;
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
  RcPoint  from, to, delta = rc_gesture_get_delta (gesture);
  RcLength typed = 0, length = get_wall_length (room, opening->wall), offset = 0;

  rc_scene_get_wall (room, opening->wall, &from, &to);
  double moved = ((double)delta.x * (double)(to.x - from.x) + (double)delta.y * (double)(to.y - from.y))
                 / (double)MAX (length, 1);
  if (rc_gesture_get_typed (gesture, scene, 0, &typed))
    offset = typed;
  else if (rc_gesture_get_typed (gesture, scene, 1, &typed))
    offset = length - opening->width - typed;
  else if (gesture->is_free || gesture->is_exact)
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
  RcPoint delta = rc_gesture_get_delta (gesture);

  if (gesture->is_free || gesture->is_exact)
    return delta;
  return (RcPoint){ rc_snap_round (delta.x, scene->step), rc_snap_round (delta.y, scene->step) };
}

static gboolean
move_cutout (const RcGesture *gesture, const RcScene *scene, const RcSceneRoom *room, RcJob *job)
{
  RcRoom *moved = rc_measure_find_room (rc_gesture_get_measure (scene, job), gesture->room);

  rc_cutout_move (g_ptr_array_index (moved->cutouts, gesture->index), get_whole_delta (gesture, scene));
  return TRUE;
}

static gboolean
move_room (const RcGesture *gesture, const RcScene *scene, const RcSceneRoom *room, RcJob *job)
{
  RcRoom *moved = rc_measure_find_room (rc_gesture_get_measure (scene, job), gesture->room);
  RcPoint corner = *rc_ring_get (room->corners, gesture->index), delta = rc_gesture_get_delta (gesture);

  if (!gesture->is_free)
    delta = (RcPoint){ gesture->snap.point.x - corner.x, gesture->snap.point.y - corner.y };
  moved->at.x += delta.x;
  moved->at.y += delta.y;
  return TRUE;
}

RcJob *
rc_gesture_compute_moved (const RcGesture *gesture, const RcScene *scene)
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
