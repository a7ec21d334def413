/* Rooms, their walls and openings, and stairs, of one measure against another. */
#include <glib/gi18n-lib.h>

#include "change-list.h"

static RcArea
get_area (const RcPlan *plan, const RcRoom *room)
{
  const RcPlacedRoom *placed = rc_house_find_room (plan->house, room->id);

  return placed != NULL ? rc_polygon_compute_area (placed->polygon) : 0;
}

/* "12' 6 1/2"", and which way it runs when `with_bearing`. */
static char *
format_wall (const RcChangeList *list, const RcRoom *room, guint wall, gboolean with_bearing)
{
  g_autofree char *length = NULL;
  char             bearing[G_ASCII_DTOSTR_BUF_SIZE];
  RcPoint          from, to;

  if (wall < room->walls->len)
    {
      const RcWall *measured = &g_array_index (room->walls, RcWall, wall);

      length = rc_change_list_format_length (list, measured->length);
      if (!with_bearing)
        return g_steal_pointer (&length);
      g_ascii_formatd (bearing, sizeof bearing, "%.10g", measured->bearing_degrees);
      return g_strdup_printf (_ ("%s at %s°"), length, bearing);
    }
  if (!rc_room_get_wall_ends (room, wall, &from, &to))
    return g_strdup ("");
  return rc_change_list_format_length (list, rc_point_distance (from, to));
}

static gboolean
has_other_bearing (const RcRoom *a, const RcRoom *b, guint wall)
{
  return wall < a->walls->len && wall < b->walls->len
         && g_array_index (a->walls, RcWall, wall).bearing_degrees
                != g_array_index (b->walls, RcWall, wall).bearing_degrees;
}

static void
add_bow (RcChangeList *list, const RcRoom *before, const RcRoom *after, guint wall)
{
  RcLength from = wall < before->walls->len ? g_array_index (before->walls, RcWall, wall).bow : 0;
  RcLength to = wall < after->walls->len ? g_array_index (after->walls, RcWall, wall).bow : 0;

  rc_change_list_add (list, "wall", g_strdup_printf (_ ("%s, bow of wall %u"), after->name, wall + 1),
                      rc_change_list_format_length (list, from), rc_change_list_format_length (list, to));
}

static void
add_walls (RcChangeList *list, const RcRoom *before, const RcRoom *after)
{
  guint n_before = rc_room_get_n_walls (before), n_after = rc_room_get_n_walls (after);

  if (n_before != n_after)
    {
      rc_change_list_add (list, "wall", g_strdup (after->name),
                          g_strdup_printf (ngettext ("%u wall", "%u walls", n_before), n_before),
                          g_strdup_printf (ngettext ("%u wall", "%u walls", n_after), n_after));
      return;
    }
  for (guint i = 0; i < n_after; i++)
    {
      gboolean with_bearing = has_other_bearing (before, after, i);

      rc_change_list_add (list, "wall", g_strdup_printf (_ ("%s, wall %u"), after->name, i + 1),
                          format_wall (list, before, i, with_bearing), format_wall (list, after, i, with_bearing));
      add_bow (list, before, after, i);
    }
}

static const char *
get_kind_label (RcOpeningKind kind)
{
  switch (kind)
    {
    case RC_OPENING_ARCHWAY:
      return _ ("archway");
    case RC_OPENING_WINDOW:
      return _ ("window");
    case RC_OPENING_DOOR:
    default:
      return _ ("door");
    }
}

/* "door 2' 8" wide, 1' along wall 3"; NULL for none. */
static char *
format_opening (const RcChangeList *list, const RcOpening *opening)
{
  g_autofree char *width = NULL, *offset = NULL;

  if (opening == NULL)
    return NULL;
  width = rc_change_list_format_length (list, opening->width);
  offset = rc_change_list_format_length (list, opening->offset);
  return g_strdup_printf (_ ("%s %s wide, %s along wall %u"), get_kind_label (opening->kind), width, offset,
                          opening->wall + 1);
}

static void
add_openings (RcChangeList *list, const RcRoom *before, const RcRoom *after)
{
  for (guint i = 0; i < before->openings->len; i++)
    {
      const RcOpening *opening = g_ptr_array_index (before->openings, i);

      rc_change_list_add (list, "opening", g_strdup_printf ("%s, %s", after->name, opening->id),
                          format_opening (list, opening),
                          format_opening (list, rc_room_find_opening (after, opening->id)));
    }
  for (guint i = 0; i < after->openings->len; i++)
    {
      const RcOpening *opening = g_ptr_array_index (after->openings, i);

      if (rc_room_find_opening (before, opening->id) == NULL)
        rc_change_list_add (list, "opening", g_strdup_printf ("%s, %s", after->name, opening->id), NULL,
                            format_opening (list, opening));
    }
}

static char *
format_room (const RcChangeList *list, const RcPlan *plan, const RcRoom *room)
{
  return rc_change_list_format_area (list, get_area (plan, room));
}

void
rc_change_list_add_rooms (RcChangeList *list)
{
  const RcMeasure *before = list->before->measure, *after = list->after->measure;

  for (guint i = 0; i < before->rooms->len; i++)
    {
      const RcRoom *room = g_ptr_array_index (before->rooms, i), *now = rc_measure_find_room (after, room->id);

      rc_change_list_add (list, "room", g_strdup (now != NULL ? now->name : room->name),
                          format_room (list, list->before, room),
                          now != NULL ? format_room (list, list->after, now) : NULL);
      if (now == NULL)
        continue;
      add_walls (list, room, now);
      add_openings (list, room, now);
    }
  for (guint i = 0; i < after->rooms->len; i++)
    {
      const RcRoom *room = g_ptr_array_index (after->rooms, i);

      if (rc_measure_find_room (before, room->id) == NULL)
        rc_change_list_add (list, "room", g_strdup (room->name), NULL, format_room (list, list->after, room));
    }
}

/* "13 steps, rise 7 1/2", tread 10", 3' wide"; NULL for none. */
static char *
format_stair (const RcChangeList *list, const RcStair *stair)
{
  g_autofree char *rise = NULL, *going = NULL, *width = NULL, *extras = NULL;

  if (stair == NULL)
    return NULL;
  rise = rc_change_list_format_length (list, stair->rise);
  going = rc_change_list_format_length (list, stair->going);
  width = rc_change_list_format_length (list, stair->width);
  extras = rc_stair_dup_extras (stair, &list->style);
  return g_strdup_printf (
      ngettext ("%u step, rise %s, tread %s, %s wide%s", "%u steps, rise %s, tread %s, %s wide%s", stair->steps),
      stair->steps, rise, going, width, extras);
}

void
rc_change_list_add_stairs (RcChangeList *list)
{
  const RcMeasure *before = list->before->measure, *after = list->after->measure;

  for (guint i = 0; i < before->stairs->len; i++)
    {
      const RcStair *stair = g_ptr_array_index (before->stairs, i);

      rc_change_list_add (list, "stair", g_strdup (stair->name), format_stair (list, stair),
                          format_stair (list, rc_measure_find_stair (after, stair->id)));
    }
  for (guint i = 0; i < after->stairs->len; i++)
    {
      const RcStair *stair = g_ptr_array_index (after->stairs, i);

      if (rc_measure_find_stair (before, stair->id) == NULL)
        rc_change_list_add (list, "stair", g_strdup (stair->name), NULL, format_stair (list, stair));
    }
}
