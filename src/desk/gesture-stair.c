/* Stairs on the drawing: put where they begin, moved, turned, taken off it. */
#include <math.h>

#include <glib/gi18n-lib.h>

#include "choice.h"
#include "gesture-private.h"
#include "measure-edit.h"
#include "stair-figure.h"

#define SNAP_DEGREES 15 /* the way up goes by such steps */

static const RcStair *
find_stair_at (const RcScene *scene, const char *only, RcPoint at)
{
  for (guint i = scene->measure->stairs->len; i-- > 0;)
    {
      const RcStair *stair = g_ptr_array_index (scene->measure->stairs, i);
      if (stair->placed && stair->floor == scene->floor && (only == NULL || g_strcmp0 (only, stair->id) == 0)
          && rc_stair_find_step (stair, at) > 0)
        return stair;
    }
  return NULL;
}

gboolean
rc_gesture_grips_stair (const RcGesture *gesture, const RcScene *scene, RcPoint at)
{
  return gesture->tool == RC_TOOL_CHOOSE && gesture->stair && find_stair_at (scene, gesture->stair, at) != NULL;
}

/* The one that is put on an empty place: the chosen, else the first that stands nowhere, else a new one. */
static RcStair *
take_stair (const RcGesture *gesture, RcJob *job, RcMeasure *measure)
{
  RcStair *stair = gesture->stair ? rc_measure_find_stair (measure, gesture->stair) : NULL;

  for (guint i = 0; stair == NULL && i < measure->stairs->len; i++)
    if (!((RcStair *)g_ptr_array_index (measure->stairs, i))->placed)
      stair = g_ptr_array_index (measure->stairs, i);
  if (stair)
    return stair;
  g_autofree char   *name = g_strdup_printf ("%s %u", _ ("Stair"), measure->stairs->len + 1);
  const RcFloorArea *area = measure->areas->len > 0 ? g_ptr_array_index (measure->areas, 0) : NULL;
  stair = rc_measure_edit_add_stair (measure, name, job->units);
  stair->carpet = g_strdup (area ? area->carpet : NULL);
  stair->cushion = g_strdup (area ? area->cushion : NULL);
  return stair;
}

/* The way from the foot to the pointer. */
static int
get_bearing (const RcGesture *gesture, RcPoint foot, int as_it_was)
{
  RcPoint to = gesture->raw;
  double  degrees = atan2 ((double)(to.x - foot.x), (double)(to.y - foot.y)) * 180 / G_PI;
  int     step = gesture->is_free ? 1 : SNAP_DEGREES;

  if (to.x == foot.x && to.y == foot.y)
    return as_it_was;
  return ((int)lround (degrees / step) * step % 360 + 360) % 360;
}

/* The job with the stair where the gesture has it; *id (interned) tells which. */
static RcJob *
compute_placed (const RcGesture *gesture, const RcScene *scene, const char **id)
{
  RcJob     *job = rc_gesture_dup_job (scene);
  RcMeasure *measure = rc_gesture_get_measure (scene, job);
  RcStair   *stair = gesture->grip == RC_GRIP_STAIR ? rc_measure_find_stair (measure, gesture->stair)
                                                    : take_stair (gesture, job, measure);

  *id = g_intern_string (stair->id);
  if (gesture->grip == RC_GRIP_STAIR && gesture->is_bow)
    stair->bearing_degrees
        = gesture->has_moved ? get_bearing (gesture, stair->at, stair->bearing_degrees) : stair->bearing_degrees;
  else if (gesture->grip == RC_GRIP_STAIR && gesture->has_moved)
    stair->at = gesture->pointer;
  else if (gesture->grip != RC_GRIP_STAIR)
    {
      stair->placed = TRUE;
      stair->floor = scene->floor;
      stair->at = gesture->points[0];
      if (gesture->has_moved)
        stair->bearing_degrees = get_bearing (gesture, stair->at, stair->bearing_degrees);
    }
  stair->bearing_degrees = (stair->bearing_degrees + 90 * (int)gesture->leaf) % 360;
  return job;
}

/* The foot of the stair that is held, or of the one to be put, snaps. */
static void
point_at (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event)
{
  const RcStair *stair
      = gesture->grip == RC_GRIP_STAIR ? rc_measure_find_stair ((RcMeasure *)scene->measure, gesture->stair) : NULL;
  RcSnapRequest request = { .pointer = event->at, .reach = event->reach, .is_free = event->is_free };

  gesture->raw = event->at;
  gesture->is_free = event->is_free;
  if (stair)
    {
      RcPoint delta = rc_gesture_get_delta (gesture);
      request.has_anchor = TRUE;
      request.anchor = stair->at;
      request.pointer = (RcPoint){ stair->at.x + delta.x, stair->at.y + delta.y };
    }
  gesture->snap = rc_snap_find (scene, &request);
  gesture->pointer = gesture->snap.point;
}

static void
press (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event)
{
  const RcStair *stair = find_stair_at (scene, gesture->tool == RC_TOOL_CHOOSE ? gesture->stair : NULL, event->at);

  rc_gesture_rest (gesture);
  point_at (gesture, scene, event);
  gesture->leaf = 0;
  gesture->grip = stair ? RC_GRIP_STAIR : RC_GRIP_NONE;
  gesture->stair = stair ? g_intern_string (stair->id) : gesture->stair;
  gesture->is_bow = stair && event->is_bow;
  gesture->points[0] = stair ? event->at : gesture->pointer;
  gesture->n_points = 1;
  gesture->is_active = gesture->is_down = TRUE;
}

static void
finish (RcGesture *gesture, const RcScene *scene, RcGestureResult *result)
{
  gboolean is_new = gesture->grip != RC_GRIP_STAIR;

  if (!is_new && !gesture->has_moved && gesture->leaf == 0)
    {
      result->is_click = TRUE;
      rc_gesture_rest (gesture);
      return;
    }
  result->job = compute_placed (gesture, scene, &result->stair);
  result->step = is_new                                   ? _ ("Put a stair on the drawing")
                 : gesture->is_bow || !gesture->has_moved ? _ ("Turn a stair")
                                                          : _ ("Move a stair");
  gesture->stair = result->stair;
  rc_gesture_rest (gesture);
  gesture->leaf = 0;
}

/* The stair under the pointer stands nowhere then. */
static void
take_off (const RcScene *scene, RcPoint at, RcGestureResult *result)
{
  const RcStair *seen = find_stair_at (scene, NULL, at);

  if (seen == NULL)
    return;
  result->job = rc_gesture_dup_job (scene);
  result->step = _ ("Take a stair off the drawing");
  rc_measure_find_stair (rc_gesture_get_measure (scene, result->job), seen->id)->placed = FALSE;
}

void
rc_gesture_stair_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  switch (event->kind)
    {
    case RC_EVENT_PRESS:
      press (gesture, scene, event);
      break;
    case RC_EVENT_MOTION:
      point_at (gesture, scene, event);
      gesture->has_moved |= gesture->is_down && rc_point_distance (event->at, gesture->points[0]) > event->reach / 3;
      break;
    case RC_EVENT_RELEASE:
    case RC_EVENT_ENTER:
      if (gesture->is_active)
        finish (gesture, scene, result);
      break;
    case RC_EVENT_LETTER:
      if (gesture->is_active && event->letter == ' ')
        gesture->leaf = (gesture->leaf + 1) % 4;
      break;
    case RC_EVENT_REMOVE:
      if (!gesture->is_active && gesture->tool == RC_TOOL_STAIR)
        take_off (scene, event->at, result);
      break;
    default:
      break;
    }
}

void
rc_gesture_stair_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch)
{
  const char *id = NULL;

  if (!gesture->is_active)
    return;
  g_autoptr (RcJob) job = compute_placed (gesture, scene, &id);
  const RcStair *stair = rc_measure_find_stair (rc_gesture_get_measure (scene, job), id);
  g_autoptr (GPtrArray) treads = rc_stair_compute_treads (stair);
  g_autoptr (GArray) walk = rc_stair_compute_walk (stair);
  for (guint i = 0; i < treads->len; i++)
    if (((const RcRing *)g_ptr_array_index (treads, i))->len >= 3)
      g_ptr_array_add (sketch->rings, rc_ring_copy (g_ptr_array_index (treads, i)));
  for (guint i = 0; i + 1 < walk->len; i++)
    rc_sketch_add_line (sketch->lines, *rc_ring_get (walk, i), *rc_ring_get (walk, i + 1));
}
