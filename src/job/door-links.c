#include "door-links.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

char *
rc_door_link_describe (const RcDoorLink *link)
{
  return g_strdup_printf ("%s: %s %s", rc_room_get_name (link->room), rc_opening_kind_get_label (link->opening->kind),
                          link->opening->id);
}

/* Fills in link->other from the opening's own words. */
static gboolean
resolve_room (RcDoorLink *link, GHashTable *rooms, GError **error)
{
  const char      *id = link->opening->to_room;
  g_autofree char *what = NULL;

  if (id == NULL)
    return TRUE;
  link->other = g_hash_table_lookup (rooms, id);
  if (link->other != NULL && link->other != link->room)
    return TRUE;
  what = rc_door_link_describe (link);
  if (link->other == NULL)
    g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE,
                 _ ("%s leads to “%s”, but the measure has no room of that id; name one of its rooms or none"), what,
                 id);
  else
    g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("%s leads to its own room; name the room behind it or none"),
                 what);
  return FALSE;
}

/* Ties an opening that names another to it, both ways. */
static gboolean
resolve_opening (RcDoorLink *link, GHashTable *links, GError **error)
{
  g_autofree char *what = NULL;
  const RcOpening *named;
  RcDoorLink      *back;

  if (link->other == NULL || link->opening->to_opening == NULL)
    return TRUE;
  what = rc_door_link_describe (link);
  named = rc_room_find_opening (link->other, link->opening->to_opening);
  if (named == NULL)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("%s meets “%s”, but %s has no opening of that id"), what,
                   link->opening->to_opening, rc_room_get_name (link->other));
      return FALSE;
    }
  back = g_hash_table_lookup (links, named);
  if ((back->other_opening != NULL && back->other_opening != link->opening)
      || (back->other != NULL && back->other != link->room))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("%s meets %s of %s, which leads elsewhere; make both agree"),
                   what, named->id, rc_room_get_name (link->other));
      return FALSE;
    }
  link->other_opening = named;
  back->other = link->room;
  back->other_opening = link->opening;
  return TRUE;
}

/* The only opening of `room`, not tied yet, that leads to `to`; NULL when there is none or more than one. */
static RcDoorLink *
find_only_link (const RcRoom *room, const RcRoom *to, GHashTable *links)
{
  RcDoorLink *found = NULL;

  for (guint i = 0; i < room->openings->len; i++)
    {
      RcDoorLink *link = g_hash_table_lookup (links, room->openings->pdata[i]);

      if (link->other != to || link->other_opening != NULL || link->opening->kind == RC_OPENING_WINDOW)
        continue;
      if (found != NULL)
        return NULL;
      found = link;
    }
  return found;
}

/* Ties two openings that name each other's rooms, where there can be no doubt. */
static void
tie_by_rooms (RcDoorLink *link, GHashTable *links)
{
  RcDoorLink *back;

  if (link->other == NULL || link->other_opening != NULL || find_only_link (link->room, link->other, links) != link)
    return;
  back = find_only_link (link->other, link->room, links);
  if (back == NULL)
    return;
  link->other_opening = back->opening;
  back->other_opening = link->opening;
}

static GHashTable *
index_rooms (const RcMeasure *measure)
{
  GHashTable *rooms = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < measure->rooms->len; i++)
    {
      RcRoom *room = measure->rooms->pdata[i];

      if (!g_hash_table_contains (rooms, room->id))
        g_hash_table_insert (rooms, room->id, room);
    }
  return rooms;
}

GHashTable *
rc_door_links_new (const RcMeasure *measure, GError **error)
{
  g_autoptr (GHashTable) rooms = index_rooms (measure);
  g_autoptr (GHashTable) links = g_hash_table_new_full (NULL, NULL, NULL, g_free);
  g_autoptr (GPtrArray) in_order = g_ptr_array_new ();

  for (guint i = 0; i < measure->rooms->len; i++)
    {
      const RcRoom *room = measure->rooms->pdata[i];

      for (guint k = 0; k < room->openings->len; k++)
        {
          RcDoorLink *link = g_new0 (RcDoorLink, 1);

          link->room = room;
          link->opening = room->openings->pdata[k];
          g_hash_table_insert (links, (gpointer)link->opening, link);
          g_ptr_array_add (in_order, link);
          if (!resolve_room (link, rooms, error))
            return NULL;
        }
    }
  for (guint i = 0; i < in_order->len; i++)
    if (!resolve_opening (in_order->pdata[i], links, error))
      return NULL;
  for (guint i = 0; i < in_order->len; i++)
    tie_by_rooms (in_order->pdata[i], links);
  return g_steal_pointer (&links);
}
