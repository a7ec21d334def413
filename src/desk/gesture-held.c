/* What the hand holds at rest: corners, walls, openings and cut-outs of the chosen room, stepped through by a key and
 * moved by the arrow keys. */
#include <math.h>

#include <glib/gi18n-lib.h>

#include "gesture-private.h"
#include "gesture-room.h"

#define TURN_STEP      15
#define TURN_FINE_STEP 1

/* How far an arrow key moves: a whole step, 1 in or 1 cm; a fine one an eighth of an inch or a millimetre. */
static RcLength
get_amount (const RcScene *scene, gboolean is_fine)
{
  if (!is_fine)
    return scene->step;
  return scene->job->units == RC_UNITS_METRIC ? RC_TICKS_PER_MM : RC_TICKS_PER_INCH / 8;
}

/* All that can be held, in the order stepped: round the walls with their corners, what stands in them, what stands on
 * the floor, the room's turn. */
static guint
count_all (const RcSceneRoom *room)
{
  return 2 * room->corners->len + room->room->openings->len + room->room->cutouts->len + 1;
}

static void
set_held (RcGesture *gesture, const RcSceneRoom *room, guint n)
{
  guint n_walls = 2 * room->corners->len, n_openings = room->room->openings->len, n_cutouts = room->room->cutouts->len;

  gesture->held = n < n_walls                            ? (n % 2 == 0 ? RC_GRIP_CORNER : RC_GRIP_WALL)
                  : n < n_walls + n_openings             ? RC_GRIP_OPENING
                  : n < n_walls + n_openings + n_cutouts ? RC_GRIP_CUTOUT
                                                         : RC_GRIP_TURN;
  gesture->held_index = n < n_walls                            ? n / 2
                        : n < n_walls + n_openings             ? n - n_walls
                        : n < n_walls + n_openings + n_cutouts ? n - n_walls - n_openings
                                                               : 0;
}

/* Its place in that order; -1 when nothing (there) is held. */
static int
get_held (const RcGesture *gesture, const RcSceneRoom *room)
{
  int n_walls = 2 * (int)room->corners->len, n_openings = (int)room->room->openings->len;
  int n = (int)gesture->held_index;

  switch (gesture->held)
    {
    case RC_GRIP_CORNER:
    case RC_GRIP_WALL:
      n = 2 * n + (gesture->held == RC_GRIP_WALL);
      return n < n_walls ? n : -1;
    case RC_GRIP_OPENING:
      return n < n_openings ? n_walls + n : -1;
    case RC_GRIP_CUTOUT:
      return n < (int)room->room->cutouts->len ? n_walls + n_openings + n : -1;
    case RC_GRIP_TURN:
      return (int)count_all (room) - 1;
    default:
      return -1;
    }
}

static const RcSceneRoom *
find_room (const RcGesture *gesture, const RcScene *scene)
{
  return gesture->tool == RC_TOOL_CHOOSE && gesture->room ? rc_scene_find_room (scene, gesture->room) : NULL;
}

gboolean
rc_gesture_held_wants_key (const RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event)
{
  const RcSceneRoom *room = find_room (gesture, scene);

  if (room == NULL)
    return FALSE;
  gboolean holds = get_held (gesture, room) >= 0;
  switch (event->kind)
    {
    case RC_EVENT_LETTER:
      if (event->letter == 'h' || event->letter == 'H')
        return TRUE;
      return gesture->held == RC_GRIP_TURN && (event->letter == '-' || g_unichar_isdigit (event->letter));
    case RC_EVENT_ARROW:
      return holds && event->arrow < 4;
    case RC_EVENT_ESCAPE:
      return holds;
    default:
      return FALSE;
    }
}

/* The corner of what is held, or what stands for one: the move begins there. */
static RcPoint
get_start (const RcGesture *gesture, const RcSceneRoom *room)
{
  guint i = gesture->held == RC_GRIP_CORNER || gesture->held == RC_GRIP_WALL ? gesture->held_index : 0;
  return *rc_ring_get (room->corners, i % room->corners->len);
}

/* FALSE where an arrow along the wall would change nothing. */
static gboolean
can_move (const RcGesture *gesture, const RcSceneRoom *room, RcPoint by)
{
  gboolean is_opening = gesture->held == RC_GRIP_OPENING;
  RcPoint  from, to;

  if (gesture->held != RC_GRIP_WALL && !is_opening)
    return TRUE;
  rc_scene_get_wall (room,
                     is_opening
                         ? ((const RcOpening *)g_ptr_array_index (room->room->openings, gesture->held_index))->wall
                         : gesture->held_index,
                     &from, &to);
  double dx = (double)(to.x - from.x), dy = (double)(to.y - from.y), length = hypot (dx, dy);
  double part = is_opening ? (double)by.x * dx + (double)by.y * dy : (double)by.x * dy - (double)by.y * dx;
  return fabs (part) > 0.01 * length * (double)(ABS (by.x) + ABS (by.y));
}

static void
nudge (RcGesture *gesture, const RcScene *scene, const RcSceneRoom *room, const RcGestureEvent *event,
       RcGestureResult *result)
{
  static const RcPoint WAYS[] = { { 1, 0 }, { 0, 1 }, { -1, 0 }, { 0, -1 } };
  RcLength             amount = get_amount (scene, event->is_free);
  RcPoint              by = { WAYS[event->arrow].x * amount, WAYS[event->arrow].y * amount };
  RcGesture            moved = *gesture;

  if (!can_move (gesture, room, by))
    return;
  moved.grip = gesture->held;
  moved.index = gesture->held_index;
  moved.is_exact = TRUE;
  moved.points[0] = get_start (gesture, room);
  moved.raw = (RcPoint){ moved.points[0].x + by.x, moved.points[0].y + by.y };
  rc_gesture_finish_move (&moved, scene, result);
  result->is_nudge = TRUE;
  if (result->job == NULL)
    return;
  /* A wall put in between may have taken the number. */
  const RcRoom *after = rc_measure_find_room (rc_gesture_get_measure (scene, result->job), gesture->room);
  if (rc_room_get_n_walls (after) != room->corners->len)
    gesture->held = RC_GRIP_NONE;
}

static void
turn (const RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  int degrees = event->is_free ? TURN_FINE_STEP : TURN_STEP;

  result->job
      = rc_gesture_room_turn (scene, gesture->room, event->arrow == 0 || event->arrow == 3 ? -degrees : degrees);
  result->step = _ ("Turn a room");
  result->is_nudge = TRUE;
}

gboolean
rc_gesture_held_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  const RcSceneRoom *room = find_room (gesture, scene);

  if (!rc_gesture_held_wants_key (gesture, scene, event))
    return FALSE;
  int n = (int)count_all (room), held = get_held (gesture, room);
  if (event->kind == RC_EVENT_ARROW && gesture->held == RC_GRIP_TURN)
    turn (gesture, scene, event, result);
  else if (event->kind == RC_EVENT_ARROW)
    nudge (gesture, scene, room, event, result);
  else if (event->kind == RC_EVENT_LETTER && (event->letter == 'h' || event->letter == 'H'))
    set_held (gesture, room, (guint)((held + (event->letter == 'h' ? 1 : n - (held < 0 ? 0 : 1))) % n));
  else if (event->kind == RC_EVENT_LETTER)
    {
      /* Degrees typed: the turn begins. */
      gesture->grip = RC_GRIP_TURN;
      gesture->is_active = TRUE;
      gesture->n_points = 1;
      gesture->points[0] = gesture->raw = rc_gesture_get_turn_grip (room, 0);
      rc_gesture_take_key (gesture, event, 1);
    }
  return TRUE;
}
