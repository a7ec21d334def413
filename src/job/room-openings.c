#include "room.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

/* "Living room: door D1" (transfer full) */
static char *
describe (const RcRoom *room, const RcOpening *opening)
{
  return g_strdup_printf ("%s: %s %s", rc_room_get_name (room), rc_opening_kind_get_label (opening->kind), opening->id);
}

/* The wall as measured or as closed, whichever is longer: closing must not push out a door that was measured right. */
static RcLength
get_wall_length (const RcRoom *room, const RcRing *corners, guint wall)
{
  RcLength closed = rc_point_distance (*rc_ring_get (corners, wall), *rc_ring_get (corners, (wall + 1) % corners->len));

  return wall < room->walls->len ? MAX (closed, g_array_index (room->walls, RcWall, wall).length) : closed;
}

static gboolean
check_size (const RcRoom *room, const RcOpening *opening, const RcRing *corners, GError **error)
{
  const RcLengthStyle *style = rc_room_get_length_style (room);
  g_autofree char     *what = describe (room, opening);
  g_autofree char     *wall = rc_room_describe_wall (room, opening->wall),
                  *width = rc_length_format (opening->width, style);
  g_autofree char *end = NULL;
  RcLength         length = get_wall_length (room, corners, opening->wall);

  if (opening->width > length)
    g_set_error (error, RC_ERROR, RC_ERROR_GEOMETRY, _ ("%s is %s wide, wider than its %s"), what, width, wall);
  else if (opening->offset > length - opening->width)
    {
      end = rc_length_format (opening->offset > RC_LENGTH_MAX ? opening->offset : opening->offset + opening->width,
                              style);
      g_set_error (error, RC_ERROR, RC_ERROR_GEOMETRY,
                   _ ("%s ends %s along its %s, past the wall's end; measure how far it stands from the wall's start"),
                   what, end, wall);
    }
  else if (opening->kind != RC_OPENING_WINDOW && opening->wall < room->walls->len
           && g_array_index (room->walls, RcWall, opening->wall).bow != 0)
    g_set_error (error, RC_ERROR, RC_ERROR_GEOMETRY,
                 _ ("%s stands in the curved %s; give the curve as walls of their own beside a straight one for it"),
                 what, wall);
  else
    return TRUE;
  return FALSE;
}

static gboolean
check_opening (const RcRoom *room, const RcOpening *opening, const RcRing *corners, GError **error)
{
  g_autofree char *what = describe (room, opening);

  if (opening->wall >= corners->len)
    g_set_error (error, RC_ERROR, RC_ERROR_GEOMETRY, _ ("%s stands in wall %u, but the room has %u walls"), what,
                 opening->wall + 1, corners->len);
  else if (opening->width <= 0)
    g_set_error (error, RC_ERROR, RC_ERROR_GEOMETRY, _ ("%s has no width"), what);
  else if (opening->offset < 0 || opening->depth < 0)
    g_set_error (error, RC_ERROR, RC_ERROR_GEOMETRY, _ ("%s: its distance and depth must not be less than 0"), what);
  else if (opening->depth > RC_ROOM_MAX_SIDE)
    g_set_error (error, RC_ERROR, RC_ERROR_GEOMETRY, _ ("%s: the wall is deeper than 1 km, the most it may"), what);
  else
    return check_size (room, opening, corners, error);
  return FALSE;
}

/* Windows may stand over anything; of the others no two share a stretch of wall. */
static gboolean
check_apart (const RcRoom *room, const RcOpening *a, const RcOpening *b, GError **error)
{
  g_autofree char *what = NULL;

  if (a->kind == RC_OPENING_WINDOW || b->kind == RC_OPENING_WINDOW || a->wall != b->wall)
    return TRUE;
  if (a->offset + a->width <= b->offset || b->offset + b->width <= a->offset)
    return TRUE;
  what = describe (room, a);
  g_set_error (error, RC_ERROR, RC_ERROR_GEOMETRY, _ ("%s and %s %s lie over each other in wall %u"), what,
               rc_opening_kind_get_label (b->kind), b->id, a->wall + 1);
  return FALSE;
}

gboolean
rc_room_check_openings (const RcRoom *room, GError **error)
{
  g_autoptr (GArray) corners = rc_room_compute_corners (room);

  if (room->openings->len > RC_ROOM_MAX_OPENINGS)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_GEOMETRY, _ ("%s: %u openings are more than a room may have, %d"),
                   rc_room_get_name (room), room->openings->len, RC_ROOM_MAX_OPENINGS);
      return FALSE;
    }
  for (guint i = 0; i < room->openings->len; i++)
    {
      const RcOpening *opening = room->openings->pdata[i];

      if (!check_opening (room, opening, corners, error))
        return FALSE;
      for (guint k = 0; k < i; k++)
        if (!check_apart (room, room->openings->pdata[k], opening, error))
          return FALSE;
    }
  return TRUE;
}
