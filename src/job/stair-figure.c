#include "stair-figure.h"

#include <math.h>

#include "polygon.h"

/* A flight begins at `start` (the middle of its lowest edge) and runs `turned` degrees counter-clockwise from the way
 * up of the first. All here is in the stair's own frame: x to the right of the way up, y along it, the bottom at 0,0.
 */
typedef struct
{
  RcPoint start;
  int     turned;
} Flight;

/* To the left is where the turn leads, mirrored for one to the right. */
typedef struct
{
  const RcStair *stair;
  RcLength       below; /* where the turn begins along the way up */
  int            side;  /* -1: the turn leads to the left (x below 0), 1: to the right */
  gboolean       comes_back;
} Turn;

static guint
count_lower (const RcStair *stair)
{
  return stair->turn == RC_STAIR_STRAIGHT ? stair->steps : MIN (stair->turn_after, stair->steps);
}

static Turn
get_turn (const RcStair *stair)
{
  gboolean is_right = stair->bend == RC_STAIR_RIGHT || stair->bend == RC_STAIR_BACK_RIGHT;

  return (Turn){ stair, (RcLength)count_lower (stair) * stair->going, is_right ? 1 : -1,
                 stair->bend == RC_STAIR_BACK_LEFT || stair->bend == RC_STAIR_BACK_RIGHT };
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

static void
add_flight (GPtrArray *treads, const RcStair *stair, const Flight *flight, guint n)
{
  RcLength left = -stair->width / 2, right = stair->width + left;

  for (guint i = 0; i < n && treads->len < RC_STAIR_MAX_STEPS; i++)
    {
      add_box (treads, left, (RcLength)i * stair->going, right, (RcLength)(i + 1) * stair->going);
      RcRing *ring = g_ptr_array_index (treads, treads->len - 1);
      for (guint k = 0; k < ring->len; k++)
        *rc_ring_get (ring, k) = add (rc_point_rotate (*rc_ring_get (ring, k), flight->turned), flight->start);
    }
}

/* Where the ray from the newel at `degrees` (0 away from the turn's side, 90 along the way up) leaves the winders'
 * square, or two squares side by side. */
static RcPoint
find_rim (const Turn *turn, double degrees)
{
  double c = cos (degrees * G_PI / 180), s = sin (degrees * G_PI / 180), size = (double)turn->stair->width;
  double reach = MIN (fabs (c) > 1e-9 ? size / fabs (c) : INFINITY, fabs (s) > 1e-9 ? size / fabs (s) : INFINITY);

  return (RcPoint){ llround (-turn->side * c * reach), llround (s * reach) };
}

static void
add_winders (GPtrArray *treads, const Turn *turn)
{
  guint   n = MIN (turn->stair->winders, RC_STAIR_MAX_STEPS);
  double  all = turn->comes_back ? 180 : 90;
  RcPoint newel = { turn->side * (turn->stair->width / 2), turn->below };

  for (guint i = 0; i < n && treads->len < RC_STAIR_MAX_STEPS; i++)
    {
      double  from = all * i / n, to = all * (i + 1) / n;
      RcRing *ring = rc_ring_new ();
      RcPoint rim = add (newel, find_rim (turn, from));
      g_array_append_val (ring, newel);
      g_array_append_val (ring, rim);
      for (int corner = 45; corner < all; corner += 90)
        if (corner > from + 1e-6 && corner < to - 1e-6)
          {
            rim = add (newel, find_rim (turn, corner));
            g_array_append_val (ring, rim);
          }
      rim = add (newel, find_rim (turn, to));
      g_array_append_val (ring, rim);
      if (turn->stair->width == 0)
        g_array_set_size (ring, 0);
      g_ptr_array_add (treads, ring);
    }
}

static void
add_landing (GPtrArray *treads, const Turn *turn)
{
  RcLength near = -turn->side * (turn->stair->width / 2), far = near + turn->side * turn->stair->turn_width;

  add_box (treads, MIN (near, far), turn->below, MAX (near, far), turn->below + turn->stair->turn_going);
}

/* Where the upper flight begins, and which way it goes. */
static Flight
get_upper (const Turn *turn)
{
  const RcStair *stair = turn->stair;
  RcLength       half = stair->width / 2;
  gboolean       is_landing = stair->turn == RC_STAIR_LANDING;
  RcLength       across = is_landing ? stair->turn_width : turn->comes_back ? 2 * stair->width : stair->width;
  RcLength       along = is_landing ? stair->turn_going : stair->width;
  Flight         upper = { { turn->side * (across - half), turn->below + along - half }, -turn->side * 90 };

  if (turn->comes_back)
    upper = (Flight){ { turn->side * (across - stair->width), turn->below }, 180 };
  return upper;
}

static void
place (const RcStair *stair, RcRing *ring)
{
  for (guint i = 0; i < ring->len; i++)
    *rc_ring_get (ring, i) = add (rc_point_rotate (*rc_ring_get (ring, i), -stair->bearing_degrees), stair->at);
}

GPtrArray *
rc_stair_compute_treads (const RcStair *stair)
{
  GPtrArray *treads = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  guint      lower = count_lower (stair);
  Flight     first = { { 0, 0 }, 0 };
  Turn       turn = get_turn (stair);

  add_flight (treads, stair, &first, lower);
  if (stair->turn == RC_STAIR_LANDING)
    add_landing (treads, &turn);
  else if (stair->turn == RC_STAIR_WINDERS)
    add_winders (treads, &turn);
  if (stair->turn != RC_STAIR_STRAIGHT)
    {
      Flight upper = get_upper (&turn);
      add_flight (treads, stair, &upper, stair->steps - lower);
    }
  for (guint i = 0; i < treads->len; i++)
    place (stair, g_ptr_array_index (treads, i));
  return treads;
}

RcRing *
rc_stair_compute_walk (const RcStair *stair)
{
  RcRing *walk = rc_ring_new ();
  Turn    turn = get_turn (stair);
  RcPoint at = { 0, 0 };

  g_array_append_val (walk, at);
  at.y = turn.below;
  if (stair->turn != RC_STAIR_STRAIGHT)
    {
      Flight   upper = get_upper (&turn);
      RcLength along = stair->turn == RC_STAIR_LANDING ? stair->turn_going : stair->width;
      at.y = turn.comes_back ? turn.below + along / 2 : upper.start.y;
      g_array_append_val (walk, at);
      at.x = turn.comes_back ? upper.start.x : at.x;
      if (turn.comes_back)
        g_array_append_val (walk, at);
      RcPoint up = { 0, (RcLength)(stair->steps - count_lower (stair)) * stair->going };
      at = add (upper.start, rc_point_rotate (up, upper.turned));
    }
  g_array_append_val (walk, at);
  place (stair, walk);
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
