#include "job-file-parts.h"

#define MAX_NAMED 3

/* Puts the room and, through openings that name a room or are named by one, all joined to it on its floor into `area`.
 */
static void
gather (const RcMeasure *measure, RcRoom *room, RcFloorArea *area, GHashTable *done)
{
  g_autoptr (GQueue) waiting = g_queue_new ();

  g_hash_table_add (done, room);
  g_queue_push_tail (waiting, room);
  while (!g_queue_is_empty (waiting))
    {
      RcRoom *from = g_queue_pop_head (waiting);

      g_ptr_array_add (area->rooms, g_strdup (from->id));
      for (guint i = 0; i < measure->rooms->len; i++)
        {
          RcRoom  *other = measure->rooms->pdata[i];
          gboolean joined = FALSE;

          if (other->floor != from->floor || g_hash_table_contains (done, other))
            continue;
          for (guint k = 0; k < from->openings->len && !joined; k++)
            joined = g_strcmp0 (((const RcOpening *)from->openings->pdata[k])->to_room, other->id) == 0;
          for (guint k = 0; k < other->openings->len && !joined; k++)
            joined = g_strcmp0 (((const RcOpening *)other->openings->pdata[k])->to_room, from->id) == 0;
          if (!joined)
            continue;
          g_hash_table_add (done, other);
          g_queue_push_tail (waiting, other);
        }
    }
}

/* "Parlour"; "Parlour, Hall, Closet"; with more, the first ones. (transfer full) */
static char *
make_name (const RcMeasure *measure, const RcFloorArea *area)
{
  GString *name = g_string_new (NULL);

  for (guint i = 0; i < MIN (area->rooms->len, MAX_NAMED); i++)
    {
      const RcRoom *room = rc_measure_find_room (measure, area->rooms->pdata[i]);

      g_string_append_printf (name, "%s%s", i == 0 ? "" : ", ", room != NULL ? rc_room_get_name (room) : "");
    }
  if (area->rooms->len > MAX_NAMED)
    g_string_append (name, " …");
  return g_string_free (name, FALSE);
}

void
rc_job_file_add_areas (RcMeasure *measure, const char *carpet)
{
  g_autoptr (GHashTable) done = g_hash_table_new (NULL, NULL);

  for (guint i = 0; i < measure->rooms->len; i++)
    {
      RcRoom      *room = measure->rooms->pdata[i];
      RcFloorArea *area;

      if (g_hash_table_contains (done, room))
        continue;
      area = rc_floor_area_new (room->id, NULL);
      gather (measure, room, area, done);
      area->name = make_name (measure, area);
      area->carpet = g_strdup (carpet);
      g_ptr_array_add (measure->areas, area);
    }
}
