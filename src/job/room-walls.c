#include "room.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

static GArray *
new_legs (const RcRoom *room)
{
  GArray *legs = g_array_sized_new (FALSE, FALSE, sizeof (RcLeg), room->walls->len);

  for (guint i = 0; i < room->walls->len; i++)
    {
      const RcWall *wall = &g_array_index (room->walls, RcWall, i);
      RcLeg         leg = { wall->bearing_degrees, wall->length };

      g_array_append_val (legs, leg);
    }
  return legs;
}

void
rc_room_compute_closure (const RcRoom *room, RcClosure *closure)
{
  g_autoptr (GArray) legs = new_legs (room);

  memset (closure, 0, sizeof *closure);
  if (legs->len == 0)
    closure->suspects = g_array_new (FALSE, FALSE, sizeof (guint));
  else
    rc_traverse_compute_closure ((const RcLeg *)legs->data, legs->len, closure);
}

RcRing *
rc_room_compute_corners (const RcRoom *room)
{
  g_autoptr (GArray) legs = NULL;
  RcPoint start = { 0, 0 };

  if (room->walls->len == 0)
    return rc_ring_copy (room->outline);
  legs = new_legs (room);
  return rc_traverse_compute_ring ((const RcLeg *)legs->data, legs->len, start, room->spread);
}

gboolean
rc_room_get_wall_ends (const RcRoom *room, guint wall, RcPoint *from, RcPoint *to)
{
  g_autoptr (GArray) corners = NULL;

  if (wall >= rc_room_get_n_walls (room))
    return FALSE;
  corners = rc_room_compute_corners (room);
  *from = *rc_ring_get (corners, wall);
  *to = *rc_ring_get (corners, (wall + 1) % corners->len);
  return TRUE;
}

/* The point `distance` from `from` on the way to `to`; an end where the way is shorter. */
static RcPoint
point_on_wall (RcPoint from, RcPoint to, RcLength distance)
{
  double  length = hypot ((double)(to.x - from.x), (double)(to.y - from.y));
  RcPoint point = from;

  if (length == 0 || distance <= 0)
    return from;
  if (distance >= length)
    return to;
  /* Exact on walls that run along an axis. */
  if (from.x == to.x)
    point.y += to.y > from.y ? distance : -distance;
  else if (from.y == to.y)
    point.x += to.x > from.x ? distance : -distance;
  else
    {
      point.x += llround ((double)(to.x - from.x) * (double)distance / length);
      point.y += llround ((double)(to.y - from.y) * (double)distance / length);
    }
  return point;
}

gboolean
rc_room_get_opening_ends (const RcRoom *room, const RcOpening *opening, RcPoint *from, RcPoint *to)
{
  RcPoint wall_from, wall_to;

  if (!rc_room_get_wall_ends (room, opening->wall, &wall_from, &wall_to))
    return FALSE;
  *from = point_on_wall (wall_from, wall_to, opening->offset);
  *to = point_on_wall (wall_from, wall_to, opening->offset + opening->width);
  return TRUE;
}

gboolean
rc_room_get_outward_step (const RcRoom *room, guint wall, RcLength depth, RcPoint *step)
{
  g_autoptr (GArray) corners = NULL;
  const RcPoint *from, *to;
  double         length;
  RcLength       dx, dy;

  if (wall >= rc_room_get_n_walls (room))
    return FALSE;
  corners = rc_room_compute_corners (room);
  from = rc_ring_get (corners, wall);
  to = rc_ring_get (corners, (wall + 1) % corners->len);
  dx = to->x - from->x;
  dy = to->y - from->y;
  length = hypot ((double)dx, (double)dy);
  if (length == 0)
    return FALSE;
  /* To the right of the walk in a room walked counter-clockwise, else to the left. */
  if (rc_ring_compute_area (corners) < 0)
    depth = -depth;
  if (dx == 0)
    *step = (RcPoint){ dy > 0 ? depth : -depth, 0 };
  else if (dy == 0)
    *step = (RcPoint){ 0, dx > 0 ? -depth : depth };
  else
    *step = (RcPoint){ llround ((double)dy * (double)depth / length), llround (-(double)dx * (double)depth / length) };
  return TRUE;
}

/* Every wall a whole number of 1/32 in: it was measured in feet and inches. */
static gboolean
is_imperial (const RcRoom *room, const RcRing *corners)
{
  for (guint i = 0; i < room->walls->len; i++)
    if (g_array_index (room->walls, RcWall, i).length % RC_TICKS_PER_32ND != 0)
      return FALSE;
  for (guint i = 0; room->walls->len == 0 && i < corners->len; i++)
    if (rc_ring_get (corners, i)->x % RC_TICKS_PER_32ND != 0 || rc_ring_get (corners, i)->y % RC_TICKS_PER_32ND != 0)
      return FALSE;
  return TRUE;
}

const RcLengthStyle *
rc_room_get_length_style (const RcRoom *room)
{
  return is_imperial (room, room->outline) ? &RC_LENGTH_STYLE_IMPERIAL : &RC_LENGTH_STYLE_METRIC;
}

/* "going north"; "going 37.5° from north" away from the eight points of the compass. (transfer full) */
static char *
format_bearing (double bearing_degrees)
{
  static const char *const points[]
      = { N_ ("going north"), N_ ("going north-east"), N_ ("going east"), N_ ("going south-east"),
          N_ ("going south"), N_ ("going south-west"), N_ ("going west"), N_ ("going north-west") };
  double bearing = fmod (fmod (bearing_degrees, 360) + 360, 360);
  int    nearest = (int)floor (bearing / 45 + 0.5);
  char   number[G_ASCII_DTOSTR_BUF_SIZE];

  if (fabs (bearing - 45 * nearest) < 0.05)
    return g_strdup (_ (points[nearest % 8]));
  g_ascii_formatd (number, sizeof number, "%.1f", bearing);
  return g_strdup_printf (_ ("going %s° from north"), number);
}

char *
rc_room_describe_wall (const RcRoom *room, guint wall)
{
  g_autofree char *length = NULL, *bearing = NULL;
  RcPoint          from, to;

  if (wall < room->walls->len)
    {
      const RcWall *measured = &g_array_index (room->walls, RcWall, wall);

      length = rc_length_format (measured->length, rc_room_get_length_style (room));
      bearing = format_bearing (measured->bearing_degrees);
    }
  else if (rc_room_get_wall_ends (room, wall, &from, &to))
    {
      length = rc_length_format (rc_point_distance (from, to), rc_room_get_length_style (room));
      bearing = format_bearing (atan2 ((double)(to.x - from.x), (double)(to.y - from.y)) * 180 / G_PI);
    }
  else
    return g_strdup_printf (_ ("wall %u"), wall + 1);
  return g_strdup_printf (_ ("wall %u (%s %s)"), wall + 1, length, bearing);
}

const char *
rc_room_get_name (const RcRoom *room)
{
  return room->name != NULL && *room->name != '\0' ? room->name : room->id;
}
