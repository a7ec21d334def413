#include "stair-figure.h"

#include <math.h>

#include "polygon.h"

/* Where a flight or a turn begins, in the stair's own frame: x to the right of the way up at the bottom, y along it,
 * the bottom at 0,0. Each is made in a frame of its own, with the middle of its lowest edge at 0,0, and put there.
 */
typedef struct
{
  RcPoint start;
  int     turned; /* degrees counter-clockwise from the way up at the bottom */
} Frame;

/* -1: to the left (x below 0), 1: to the right. */
static int
get_side (const RcStairTurn *turn)
{
  return turn->bend == RC_BEND_RIGHT || turn->bend == RC_BEND_BACK_RIGHT ? 1 : -1;
}

static gboolean
comes_back (const RcStairTurn *turn)
{
  return turn->bend == RC_BEND_BACK_LEFT || turn->bend == RC_BEND_BACK_RIGHT;
}

static RcPoint
add (RcPoint a, RcPoint b)
{
  return (RcPoint){ a.x + b.x, a.y + b.y };
}

static void
add_box (GPtrArray *treads, RcLength x0, RcLength y0, RcLength x1, RcLength y1)
{
  const RcPoint corners[] = { { x0, y0 }, { x1, y0 }, { x1, y1 }, { x0, y1 } };

  g_ptr_array_add (treads,
                   x0 == x1 || y0 == y1 ? rc_ring_new () : rc_ring_new_from_points (corners, G_N_ELEMENTS (corners)));
}

static RcPoint
put_point (const Frame *frame, RcPoint point)
{
  return add (rc_point_rotate (point, frame->turned), frame->start);
}

static void
add_flight (GPtrArray *treads, const RcStair *stair, guint n)
{
  RcLength left = -stair->width / 2, right = stair->width + left;

  for (guint i = 0; i < n && treads->len < RC_STAIR_MAX_STEPS; i++)
    add_box (treads, left, (RcLength)i * stair->going, right, (RcLength)(i + 1) * stair->going);
}

/* Where the ray from the newel at `degrees` (0 away from the turn's side, 90 along the way up) leaves the winders'
 * square of `size`, or two squares side by side. */
static RcPoint
find_rim (double size, int side, double degrees)
{
  double c = cos (degrees * G_PI / 180), s = sin (degrees * G_PI / 180);
  double reach = MIN (fabs (c) > 1e-9 ? size / fabs (c) : INFINITY, fabs (s) > 1e-9 ? size / fabs (s) : INFINITY);

  return (RcPoint){ llround (-side * c * reach), llround (s * reach) };
}

static void
add_winders (GPtrArray *treads, const RcStair *stair, const RcStairTurn *turn)
{
  int     side = get_side (turn);
  double  all = comes_back (turn) ? 180 : 90, size = (double)stair->width;
  RcPoint newel = { side * (stair->width / 2), 0 };

  for (guint i = 0; i < turn->winders && treads->len < RC_STAIR_MAX_STEPS; i++)
    {
      double  from = all * i / turn->winders, to = all * (i + 1) / turn->winders;
      RcRing *ring = rc_ring_new ();
      RcPoint rim = add (newel, find_rim (size, side, from));
      g_array_append_val (ring, newel);
      g_array_append_val (ring, rim);
      for (int corner = 45; corner < all; corner += 90)
        if (corner > from + 1e-6 && corner < to - 1e-6)
          {
            rim = add (newel, find_rim (size, side, corner));
            g_array_append_val (ring, rim);
          }
      rim = add (newel, find_rim (size, side, to));
      g_array_append_val (ring, rim);
      if (stair->width == 0)
        g_array_set_size (ring, 0);
      g_ptr_array_add (treads, ring);
    }
}

static void
add_landing (GPtrArray *treads, const RcStair *stair, const RcStairTurn *turn)
{
  int      side = get_side (turn);
  RcLength near = turn->bend == RC_BEND_AHEAD ? turn->width / 2 : -side * (stair->width / 2);
  RcLength far = near + side * turn->width;

  if (treads->len < RC_STAIR_MAX_STEPS)
    add_box (treads, MIN (near, far), 0, MAX (near, far), turn->going);
}

/* How far a turn reaches along the way up to it. */
static RcLength
get_depth (const RcStair *stair, const RcStairTurn *turn)
{
  return turn->kind == RC_TURN_LANDING ? turn->going : stair->width;
}

/* Where the flight above a turn begins, in the turn's frame. */
static Frame
get_flight_above (const RcStair *stair, const RcStairTurn *turn)
{
  int      side = get_side (turn);
  RcLength half = stair->width / 2, depth = get_depth (stair, turn);
  RcLength across = turn->kind == RC_TURN_LANDING ? turn->width : comes_back (turn) ? 2 * stair->width : stair->width;

  if (turn->bend == RC_BEND_AHEAD)
    return (Frame){ { 0, depth }, 0 };
  if (comes_back (turn))
    return (Frame){ { side * (across - stair->width), 0 }, 180 };
  return (Frame){ { side * (across - half), depth - half }, -side * 90 };
}

/* Takes a frame up a flight. */
static void
climb_flight (const RcStair *stair, guint flight, Frame *frame)
{
  RcLength up = (RcLength)rc_stair_count_flight_steps (stair, flight) * stair->going;

  frame->start = put_point (frame, (RcPoint){ 0, up });
}

/* Takes a frame over a turn. */
static void
climb_turn (const RcStair *stair, const RcStairTurn *turn, Frame *frame)
{
  Frame above = get_flight_above (stair, turn);

  *frame = (Frame){ put_point (frame, above.start), frame->turned + above.turned };
}

/* Puts the rings from `first` on where the frame is, and the stair is in the house. */
static void
place_treads (GPtrArray *treads, guint first, const RcStair *stair, const Frame *frame)
{
  Frame house = { stair->at, -stair->bearing_degrees };

  for (guint i = first; i < treads->len; i++)
    {
      RcRing *ring = g_ptr_array_index (treads, i);

      for (guint k = 0; k < ring->len; k++)
        *rc_ring_get (ring, k) = put_point (&house, put_point (frame, *rc_ring_get (ring, k)));
    }
}

GPtrArray *
rc_stair_compute_treads (const RcStair *stair)
{
  GPtrArray *treads = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  Frame      frame = { { 0, 0 }, 0 };

  for (guint flight = 0; flight <= stair->turns->len; flight++)
    {
      guint first = treads->len;

      add_flight (treads, stair, rc_stair_count_flight_steps (stair, flight));
      place_treads (treads, first, stair, &frame);
      if (flight == stair->turns->len)
        break;
      const RcStairTurn *turn = rc_stair_get_turn (stair, flight);
      climb_flight (stair, flight, &frame);
      first = treads->len;
      if (turn->kind == RC_TURN_LANDING)
        add_landing (treads, stair, turn);
      else
        add_winders (treads, stair, turn);
      place_treads (treads, first, stair, &frame);
      climb_turn (stair, turn, &frame);
    }
  return treads;
}

/* The corners of the walk over a turn, as it leads to the middle of the flight above. */
static void
add_turn_corners (RcRing *walk, const RcStair *stair, const RcStairTurn *turn, const Frame *frame)
{
  Frame    above = get_flight_above (stair, turn);
  gboolean back = comes_back (turn);
  RcPoint  corner = { 0, back ? get_depth (stair, turn) / 2 : above.start.y };
  RcPoint  other = { above.start.x, corner.y };

  if (turn->bend == RC_BEND_AHEAD)
    return;
  corner = put_point (frame, corner);
  g_array_append_val (walk, corner);
  if (!back)
    return;
  other = put_point (frame, other);
  g_array_append_val (walk, other);
}

RcRing *
rc_stair_compute_walk (const RcStair *stair)
{
  RcRing *walk = rc_ring_new ();
  Frame   frame = { { 0, 0 }, 0 }, house = { stair->at, -stair->bearing_degrees };

  g_array_append_val (walk, frame.start);
  for (guint flight = 0; flight <= stair->turns->len; flight++)
    {
      climb_flight (stair, flight, &frame);
      if (flight == stair->turns->len)
        break;
      const RcStairTurn *turn = rc_stair_get_turn (stair, flight);
      add_turn_corners (walk, stair, turn, &frame);
      climb_turn (stair, turn, &frame);
    }
  g_array_append_val (walk, frame.start);
  for (guint i = 0; i < walk->len; i++)
    *rc_ring_get (walk, i) = put_point (&house, *rc_ring_get (walk, i));
  return walk;
}

guint
rc_stair_find_step (const RcStair *stair, RcPoint point)
{
  g_autoptr (GPtrArray) treads = rc_stair_compute_treads (stair);

  for (guint i = 0; i < treads->len; i++)
    {
      const RcRing *ring = g_ptr_array_index (treads, i);
      if (ring->len >= 3 && rc_ring_locate (ring, point) >= 0)
        return i + 1;
    }
  return 0;
}
