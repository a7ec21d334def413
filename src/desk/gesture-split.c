/* One room into two by a line across it, two into one by a click on the wall between them. */
#include <math.h>

#include <glib/gi18n-lib.h>

#include "gesture-follow.h"
#include "gesture-places.h"
#include "gesture-private.h"
#include "room-parts.h"

/* --- splitting --- */

static void
point_at (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event)
{
  RcSnapRequest request = { .pointer = event->at,
                            .reach = event->reach,
                            .is_free = event->is_free,
                            .has_anchor = gesture->n_points > 0,
                            .anchor = gesture->points[0],
                            .keeps_square = TRUE };

  gesture->raw = event->at;
  gesture->is_free = event->is_free;
  gesture->snap = rc_snap_find (scene, &request);
  gesture->pointer = gesture->snap.point;
}

/* The line's two ends; a typed length is how far it begins from the start of the wall it begins on. */
static void
get_line (const RcGesture *gesture, const RcScene *scene, RcPoint *from, RcPoint *to)
{
  RcSceneWall wall;
  RcLength    typed = 0;

  *from = gesture->points[0];
  *to = gesture->pointer;
  if (!rc_gesture_get_typed (gesture, scene, 0, &typed)
      || !rc_scene_find_wall (scene, gesture->room, *from, G_MAXINT32, &wall) || wall.length == 0)
    return;
  RcPoint a, b;
  rc_scene_get_wall (wall.room, wall.wall, &a, &b);
  double  by = (double)(typed - wall.along) / (double)wall.length;
  RcPoint shift = { llround ((double)(b.x - a.x) * by), llround ((double)(b.y - a.y) * by) };
  *from = (RcPoint){ from->x + shift.x, from->y + shift.y };
  *to = (RcPoint){ to->x + shift.x, to->y + shift.y };
}

static void
split (RcGesture *gesture, const RcScene *scene, RcGestureResult *result)
{
  RcPoint from, to;

  if (rc_gesture_has_bad_text (gesture, scene, &result->fault))
    return;
  get_line (gesture, scene, &from, &to);
  const RcSceneRoom *seen = rc_scene_find_room_at (scene, (RcPoint){ (from.x + to.x) / 2, (from.y + to.y) / 2 });
  rc_gesture_rest (gesture);
  if (seen == NULL || rc_point_distance (from, to) == 0)
    {
      result->fault = g_strdup (_ ("Draw the line across the floor of a room."));
      return;
    }
  g_autoptr (RcJob) job = rc_gesture_dup_job (scene);
  g_autoptr (GError) error = NULL;
  g_autofree char *name = g_strdup_printf (_ ("%s, other part"), rc_room_get_name (seen->room));
  RcMeasure       *measure = rc_gesture_get_measure (scene, job);
  RcPoint          own_from = { from.x - seen->at.x, from.y - seen->at.y };
  RcPoint          own_to = { to.x - seen->at.x, to.y - seen->at.y };
  rc_places_note (scene, measure);
  RcRoom *added = rc_room_parts_split (measure, seen->room->id, own_from, own_to, name, &error);
  if (added == NULL)
    {
      result->fault = g_strdup (error->message);
      return;
    }
  rc_places_keep (scene, job, NULL);
  result->room = g_intern_string (added->id);
  result->step = _ ("Split a room");
  result->job = g_steal_pointer (&job);
}

static void
begin_split (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event)
{
  const RcSceneRoom *room = rc_scene_find_room_at (scene, event->at);

  gesture->room = room ? g_intern_string (room->room->id) : gesture->room;
  gesture->points[gesture->n_points++] = gesture->pointer;
  gesture->is_active = gesture->is_down = TRUE;
}

void
rc_gesture_split_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  if (event->kind == RC_EVENT_PRESS || event->kind == RC_EVENT_MOTION)
    point_at (gesture, scene, event);
  if (event->kind == RC_EVENT_PRESS && gesture->is_active)
    gesture->is_down = gesture->has_moved = TRUE;
  else if (event->kind == RC_EVENT_PRESS)
    begin_split (gesture, scene, event);
  else if (rc_gesture_take_span (gesture, event, 1))
    split (gesture, scene, result);
}

void
rc_gesture_split_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch)
{
  RcPoint     from, to, a, b;
  RcSceneWall wall;

  rc_sketch_add_guides (sketch, gesture);
  if (gesture->n_points == 0)
    return;
  get_line (gesture, scene, &from, &to);
  rc_sketch_add_line (sketch->lines, from, to);
  if (!rc_scene_find_wall (scene, gesture->room, from, G_MAXINT32, &wall))
    return;
  rc_scene_get_wall (wall.room, wall.wall, &a, &b);
  rc_sketch_add_length (sketch, gesture, scene, a, from, wall.along, 0);
}

/* --- merging --- */

/* The wall under the pointer that has another room right behind it. */
static gboolean
find_between (const RcScene *scene, RcPoint at, RcLength reach, RcSceneWall *wall, RcSceneBehind *behind)
{
  if (!rc_scene_find_wall (scene, NULL, at, 2 * reach, wall))
    return FALSE;
  g_autoptr (GArray) all
      = rc_scene_find_behind (scene, wall->room, wall->wall, rc_follow_get_thickness_max (scene->job->units));
  for (guint i = 0; i < all->len; i++)
    {
      *behind = g_array_index (all, RcSceneBehind, i);
      if (behind->from <= wall->along && wall->along <= behind->to)
        return TRUE;
    }
  return FALSE;
}

/* The floor of the wall between the two, a ring; NULL where they touch. (transfer full) */
static RcRing *
new_gap (const RcSceneWall *wall, const RcSceneBehind *behind)
{
  RcPoint a, b;

  if (behind->gap == 0)
    return NULL;
  rc_scene_get_wall (wall->room, wall->wall, &a, &b);
  double        dx = (double)(b.x - a.x) / (double)wall->length, dy = (double)(b.y - a.y) / (double)wall->length;
  double        side = wall->room->is_left ? 1 : -1, gap = (double)behind->gap;
  RcPoint       out = { llround (side * dy * gap), llround (-side * dx * gap) };
  RcPoint       from = { a.x + llround (dx * (double)behind->from), a.y + llround (dy * (double)behind->from) };
  RcPoint       to = { a.x + llround (dx * (double)behind->to), a.y + llround (dy * (double)behind->to) };
  const RcPoint points[] = { from, to, { to.x + out.x, to.y + out.y }, { from.x + out.x, from.y + out.y } };
  return rc_ring_new_from_points (points, G_N_ELEMENTS (points));
}

static void
merge (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  RcSceneWall   wall;
  RcSceneBehind behind;

  if (!find_between (scene, event->at, event->reach, &wall, &behind))
    {
      result->fault = g_strdup (_ ("Click on a wall that has another room right behind it."));
      return;
    }
  g_autoptr (RcJob) job = rc_gesture_dup_job (scene);
  g_autoptr (GArray) gap = new_gap (&wall, &behind);
  g_autoptr (GError) error = NULL;
  RcMeasure *measure = rc_gesture_get_measure (scene, job);
  rc_places_note (scene, measure);
  if (!rc_room_parts_merge (measure, wall.room->room->id, behind.room->room->id, gap, &error))
    {
      result->fault = g_strdup (error->message);
      return;
    }
  rc_places_keep (scene, job, NULL);
  result->room = g_intern_string (wall.room->room->id);
  result->step = _ ("Make one room of two");
  result->job = g_steal_pointer (&job);
  rc_gesture_rest (gesture);
}

void
rc_gesture_merge_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  RcSceneWall   wall;
  RcSceneBehind behind;

  if (event->kind == RC_EVENT_PRESS)
    merge (gesture, scene, event, result);
  else if (event->kind == RC_EVENT_MOTION)
    {
      gesture->raw = gesture->pointer = event->at;
      gesture->n_points = find_between (scene, event->at, event->reach, &wall, &behind) ? 1 : 0;
      gesture->points[0] = (RcPoint){ event->reach, 0 };
    }
}

void
rc_gesture_merge_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch)
{
  RcSceneWall   wall;
  RcSceneBehind behind;

  if (gesture->n_points == 0 || !find_between (scene, gesture->raw, gesture->points[0].x, &wall, &behind))
    return;
  RcRing *gap = new_gap (&wall, &behind);
  if (gap)
    g_ptr_array_add (sketch->rings, gap);
  g_ptr_array_add (sketch->rings, rc_ring_copy (wall.room->corners));
  g_ptr_array_add (sketch->rings, rc_ring_copy (behind.room->corners));
}
