#include "gesture-snap.h"

#include <math.h>

#define SQUARE_MAX_DEGREES 7.0
#define STEEPNESS          50   /* at most one part out of square in so many */
#define WALL_SHARE         0.75 /* a line far off must be nearer than a corner at hand to win over it */

/* One axis at a time: `at` is what the pointer says, `best` how far the best line lies off it. */
typedef struct
{
  RcLength   at, best, value;
  RcSnapKind kind;
  RcPoint    from;
} Axis;

static void
offer (Axis *axis, RcLength value, RcSnapKind kind, RcPoint from, RcLength reach)
{
  RcLength off = ABS (axis->at - value);

  if (off > reach || off >= axis->best)
    return;
  axis->best = off;
  axis->value = value;
  axis->kind = kind;
  axis->from = from;
}

RcLength
rc_snap_round (RcLength length, RcLength step)
{
  RcLength half = length >= 0 ? step / 2 : -(step / 2);
  return (length + half) / step * step;
}

/* Walls measured a little out of square count as square, where the pointer is along them. */
static gboolean
is_upright (RcPoint from, RcPoint to)
{
  return ABS (to.x - from.x) * STEEPNESS < ABS (to.y - from.y);
}

static RcLength
get_x_at (RcPoint from, RcPoint to, RcLength y)
{
  y = CLAMP (y, MIN (from.y, to.y), MAX (from.y, to.y));
  return from.x + llround ((double)(to.x - from.x) * (double)(y - from.y) / (double)(to.y - from.y));
}

static RcPoint
swap_axes (RcPoint point)
{
  return (RcPoint){ point.y, point.x };
}

/* A wall offers its own line, and the line a wall's thickness behind it. */
static void
offer_wall (Axis *x, Axis *y, RcPoint from, RcPoint to, gboolean is_left, const RcScene *scene, RcLength reach)
{
  if (is_upright (from, to))
    {
      RcLength out = (to.y > from.y) == is_left ? scene->wall : -scene->wall, line = get_x_at (from, to, y->at);
      offer (x, line, RC_SNAP_WALL, from, reach);
      offer (x, line + out, RC_SNAP_BEHIND, from, reach);
    }
  else if (is_upright (swap_axes (from), swap_axes (to)))
    {
      RcLength out = (to.x > from.x) == is_left ? -scene->wall : scene->wall;
      RcLength line = get_x_at (swap_axes (from), swap_axes (to), x->at);
      offer (y, line, RC_SNAP_WALL, from, reach);
      offer (y, line + out, RC_SNAP_BEHIND, from, reach);
    }
  else
    {
      offer (x, from.x, RC_SNAP_WALL, from, (RcLength)(WALL_SHARE * (double)reach));
      offer (y, from.y, RC_SNAP_WALL, from, (RcLength)(WALL_SHARE * (double)reach));
    }
}

static void
offer_rooms (Axis *x, Axis *y, const RcScene *scene, const RcSnapRequest *request)
{
  for (guint i = 0; i < scene->rooms->len; i++)
    {
      const RcSceneRoom *room = g_ptr_array_index (scene->rooms, i);
      if (request->except_room && g_str_equal (room->room->id, request->except_room))
        continue;
      for (guint w = 0; w < room->corners->len; w++)
        {
          RcPoint from, to;
          rc_scene_get_wall (room, w, &from, &to);
          offer_wall (x, y, from, to, room->is_left, scene, request->reach);
        }
    }
  for (guint i = 0; i < scene->below->len; i++)
    {
      const RcSceneRoom *room = g_ptr_array_index (scene->below, i);
      for (guint c = 0; c < room->corners->len; c++)
        {
          RcPoint corner = *rc_ring_get (room->corners, c);
          offer (x, corner.x, RC_SNAP_WALL, corner, request->reach);
          offer (y, corner.y, RC_SNAP_WALL, corner, request->reach);
        }
    }
  for (guint i = 0; i < request->n_others; i++)
    {
      offer (x, request->others[i].x, RC_SNAP_WALL, request->others[i], request->reach);
      offer (y, request->others[i].y, RC_SNAP_WALL, request->others[i], request->reach);
    }
}

/* Nearly along an axis from the anchor: that axis is kept. */
static void
offer_square (Axis *x, Axis *y, const RcSnapRequest *request)
{
  double dx = (double)ABS (request->pointer.x - request->anchor.x);
  double dy = (double)ABS (request->pointer.y - request->anchor.y);
  double slope = tan (SQUARE_MAX_DEGREES * G_PI / 180);

  if (dx <= dy * slope || dx <= (double)request->reach / 2)
    *x = (Axis){ x->at, 0, request->anchor.x, RC_SNAP_SQUARE, request->anchor };
  if (dy <= dx * slope || dy <= (double)request->reach / 2)
    *y = (Axis){ y->at, 0, request->anchor.y, RC_SNAP_SQUARE, request->anchor };
}

/* Nearly at half a right angle from the anchor: exactly so, in whole steps of both axes. */
static gboolean
snap_half_square (const RcScene *scene, const RcSnapRequest *request, RcSnap *snap)
{
  RcLength dx = request->pointer.x - request->anchor.x, dy = request->pointer.y - request->anchor.y;
  double   off = fabs (atan2 ((double)ABS (dy), (double)ABS (dx)) * 180 / G_PI - 45);

  if (off > SQUARE_MAX_DEGREES)
    return FALSE;
  RcLength side = rc_snap_round ((ABS (dx) + ABS (dy)) / 2, scene->step);
  snap->point = (RcPoint){ request->anchor.x + (dx < 0 ? -side : side), request->anchor.y + (dy < 0 ? -side : side) };
  snap->x_kind = snap->y_kind = RC_SNAP_SQUARE;
  return TRUE;
}

static void
finish_axis (Axis *axis, RcLength zero, RcLength step)
{
  if (axis->kind != RC_SNAP_NONE)
    return;
  axis->value = zero + rc_snap_round (axis->at - zero, step);
  axis->kind = RC_SNAP_STEP;
}

RcSnap
rc_snap_find (const RcScene *scene, const RcSnapRequest *request)
{
  RcSnap snap = { .point = request->pointer };
  Axis   x = { request->pointer.x, G_MAXINT64, 0, RC_SNAP_NONE, { 0, 0 } };
  Axis   y = { request->pointer.y, G_MAXINT64, 0, RC_SNAP_NONE, { 0, 0 } };

  if (request->is_free)
    return snap;
  offer_rooms (&x, &y, scene, request);
  if (request->has_anchor && request->keeps_square)
    offer_square (&x, &y, request);
  if (request->has_anchor && request->keeps_square && x.kind == RC_SNAP_NONE && y.kind == RC_SNAP_NONE
      && snap_half_square (scene, request, &snap))
    return snap;
  RcPoint zero = request->has_anchor ? request->anchor : (RcPoint){ 0, 0 };
  finish_axis (&x, zero.x, scene->step);
  finish_axis (&y, zero.y, scene->step);
  snap.point = (RcPoint){ x.value, y.value };
  snap.x_kind = x.kind;
  snap.y_kind = y.kind;
  snap.x_from = x.from;
  snap.y_from = y.from;
  if (x.kind == RC_SNAP_WALL && y.kind == RC_SNAP_WALL && x.from.x == y.from.x && x.from.y == y.from.y)
    snap.x_kind = snap.y_kind = RC_SNAP_CORNER;
  return snap;
}
