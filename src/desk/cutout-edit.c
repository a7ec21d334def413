#include "cutout-edit.h"

#include <math.h>

/* A wall's own directions: along it and into the room. */
typedef struct
{
  RcPoint from;
  double  ux, uy, vx, vy;
} Frame;

static gboolean
get_frame (const RcRoom *room, guint corner, Frame *frame)
{
  g_autoptr (GArray) corners = rc_room_compute_corners (room);

  if (corner >= corners->len)
    return FALSE;
  RcPoint from = *rc_ring_get (corners, corner), to = *rc_ring_get (corners, (corner + 1) % corners->len);
  double  dx = (double)(to.x - from.x), dy = (double)(to.y - from.y), length = hypot (dx, dy);
  double  side = rc_ring_compute_area (corners) >= 0 ? 1 : -1; /* the floor lies to the left of the walk */
  if (length == 0)
    return FALSE;
  *frame = (Frame){ from, dx / length, dy / length, -side * dy / length, side * dx / length };
  return TRUE;
}

static void
project (const Frame *frame, RcPoint point, double *along, double *off)
{
  double dx = (double)(point.x - frame->from.x), dy = (double)(point.y - frame->from.y);

  *along = dx * frame->ux + dy * frame->uy;
  *off = dx * frame->vx + dy * frame->vy;
}

static RcPoint
unproject (const Frame *frame, double along, double off)
{
  return (RcPoint){ frame->from.x + llround (along * frame->ux + off * frame->vx),
                    frame->from.y + llround (along * frame->uy + off * frame->vy) };
}

gboolean
rc_cutout_edit_get_place (const RcRoom *room, const RcCutout *cutout, guint corner, RcCutoutPlace *place)
{
  Frame  frame;
  double a0 = INFINITY, a1 = -INFINITY, b0 = INFINITY, b1 = -INFINITY, radius = (double)cutout->diameter / 2;

  if (cutout->points->len == 0 || !get_frame (room, corner, &frame))
    return FALSE;
  for (guint i = 0; i < cutout->points->len; i++)
    {
      double a, b;
      project (&frame, *rc_ring_get (cutout->points, i), &a, &b);
      a0 = MIN (a0, a - radius);
      a1 = MAX (a1, a + radius);
      b0 = MIN (b0, b - radius);
      b1 = MAX (b1, b + radius);
    }
  *place = (RcCutoutPlace){ llround (a0), llround (b0), llround (a1 - a0), llround (b1 - b0) };
  return TRUE;
}

/* From a stretch that begins at `from` and is `size` long to another. */
static double
stretch (double value, RcLength from, RcLength size, RcLength to, RcLength new_size)
{
  double part = size > 0 ? (value - (double)from) / (double)size : 0;
  return (double)to + part * (double)new_size;
}

gboolean
rc_cutout_edit_set_place (const RcRoom *room, RcCutout *cutout, guint corner, const RcCutoutPlace *place)
{
  RcCutoutPlace now;
  Frame         frame;

  if (place->width <= 0 || place->length <= 0 || !rc_cutout_edit_get_place (room, cutout, corner, &now)
      || !get_frame (room, corner, &frame))
    return FALSE;
  RcLength length = cutout->diameter > 0 ? place->width : place->length;
  for (guint i = 0; i < cutout->points->len; i++)
    {
      double a, b;
      project (&frame, *rc_ring_get (cutout->points, i), &a, &b);
      *rc_ring_get (cutout->points, i)
          = unproject (&frame, stretch (a, now.along, now.width, place->along, place->width),
                       stretch (b, now.off, now.length, place->off, length));
    }
  if (cutout->diameter > 0)
    cutout->diameter = place->width;
  return TRUE;
}

guint
rc_cutout_edit_find_corner (const RcRoom *room, const RcCutout *cutout)
{
  g_autoptr (GArray) corners = rc_room_compute_corners (room);
  g_autoptr (GArray) ring = rc_cutout_compute_ring (cutout);
  RcBox   box = rc_ring_compute_box (ring);
  RcPoint middle = { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 };
  guint   nearest = 0;

  for (guint i = 1; i < corners->len; i++)
    if (rc_point_distance (*rc_ring_get (corners, i), middle)
        < rc_point_distance (*rc_ring_get (corners, nearest), middle))
      nearest = i;
  return nearest;
}

/* The four corners of a place. */
static gboolean
set_box (const RcRoom *room, RcCutout *cutout, guint corner, const RcCutoutPlace *place)
{
  Frame frame;

  if (!get_frame (room, corner, &frame))
    return FALSE;
  double  a0 = (double)place->along, a1 = a0 + (double)place->width;
  double  b0 = (double)place->off, b1 = b0 + (double)place->length;
  RcPoint points[] = { unproject (&frame, a0, b0), unproject (&frame, a1, b0), unproject (&frame, a1, b1),
                       unproject (&frame, a0, b1) };
  cutout->diameter = 0;
  g_array_set_size (cutout->points, 0);
  g_array_append_vals (cutout->points, points, G_N_ELEMENTS (points));
  return TRUE;
}

static void
set_circle (RcCutout *cutout, RcPoint middle, RcLength diameter)
{
  cutout->diameter = diameter;
  g_array_set_size (cutout->points, 0);
  g_array_append_val (cutout->points, middle);
}

gboolean
rc_cutout_edit_set_round (const RcRoom *room, RcCutout *cutout, guint corner, gboolean is_round)
{
  RcCutoutPlace place;
  Frame         frame;

  if (is_round == (cutout->diameter > 0) || !rc_cutout_edit_get_place (room, cutout, corner, &place)
      || !get_frame (room, corner, &frame) || place.width <= 0)
    return FALSE;
  if (!is_round)
    return set_box (room, cutout, corner, &place);
  set_circle (
      cutout,
      unproject (&frame, (double)place.along + (double)place.width / 2, (double)place.off + (double)place.length / 2),
      place.width);
  return TRUE;
}

RcCutout *
rc_cutout_edit_add (RcRoom *room, RcCutoutKind kind, guint wall, RcUnitSystem units)
{
  static const struct
  {
    RcLength width_in, length_in, off_in, width_mm, length_mm, off_mm;
  } SIZES[RC_N_CUTOUT_KINDS] = {
    [RC_CUTOUT_OTHER] = { 24, 24, 36, 600, 600, 900 },           [RC_CUTOUT_HEARTH] = { 60, 18, 0, 1500, 450, 0 },
    [RC_CUTOUT_ISLAND] = { 72, 36, 36, 1800, 900, 900 },         [RC_CUTOUT_COLUMN] = { 12, 12, 36, 300, 300, 900 },
    [RC_CUTOUT_STAIR_OPENING] = { 120, 36, 36, 3000, 900, 900 }, [RC_CUTOUT_FIXTURE] = { 36, 24, 0, 900, 600, 0 }
  };
  gboolean      metric = units == RC_UNITS_METRIC;
  RcLength      unit = metric ? RC_TICKS_PER_MM : RC_TICKS_PER_INCH;
  RcCutoutPlace place = { .width = unit * (metric ? SIZES[kind].width_mm : SIZES[kind].width_in),
                          .length = unit * (metric ? SIZES[kind].length_mm : SIZES[kind].length_in),
                          .off = unit * (metric ? SIZES[kind].off_mm : SIZES[kind].off_in) };
  RcPoint       from, to;

  if (!rc_room_get_wall_ends (room, wall, &from, &to) || rc_point_distance (from, to) == 0)
    return NULL;
  RcLength along = rc_point_distance (from, to);
  place.width = MIN (place.width, along);
  place.along = (along - place.width) / 2;
  RcCutout *cutout = rc_cutout_new (kind);
  set_box (room, cutout, wall, &place);
  if (kind == RC_CUTOUT_COLUMN)
    rc_cutout_edit_set_round (room, cutout, wall, TRUE);
  g_ptr_array_add (room->cutouts, cutout);
  return cutout;
}
