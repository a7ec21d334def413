#include "room.h"

RcRoom *
rc_room_new (const char *id, const char *name)
{
  RcRoom *room = g_new0 (RcRoom, 1);

  room->id = g_strdup (id);
  room->name = g_strdup (name);
  room->walls = g_array_new (FALSE, TRUE, sizeof (RcWall));
  room->outline = rc_ring_new ();
  room->cutouts = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_cutout_free);
  room->diagonals = g_array_new (FALSE, TRUE, sizeof (RcDiagonal));
  room->openings = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_opening_free);
  return room;
}

RcRoom *
rc_room_copy (const RcRoom *room)
{
  RcRoom *copy = rc_room_new (room->id, room->name);

  copy->floor = room->floor;
  copy->spread = room->spread;
  copy->placed = room->placed;
  copy->at = room->at;
  copy->notes = g_strdup (room->notes);
  g_array_append_vals (copy->walls, room->walls->data, room->walls->len);
  g_array_append_vals (copy->outline, room->outline->data, room->outline->len);
  g_array_append_vals (copy->diagonals, room->diagonals->data, room->diagonals->len);
  for (guint i = 0; i < room->cutouts->len; i++)
    g_ptr_array_add (copy->cutouts, rc_cutout_copy (room->cutouts->pdata[i]));
  for (guint i = 0; i < room->openings->len; i++)
    g_ptr_array_add (copy->openings, rc_opening_copy (room->openings->pdata[i]));
  return copy;
}

void
rc_room_free (RcRoom *room)
{
  if (room == NULL)
    return;
  g_free (room->id);
  g_free (room->name);
  g_array_unref (room->walls);
  g_array_unref (room->outline);
  g_array_unref (room->diagonals);
  g_ptr_array_unref (room->cutouts);
  g_ptr_array_unref (room->openings);
  g_free (room->notes);
  g_free (room);
}

guint
rc_room_get_n_walls (const RcRoom *room)
{
  return room->walls->len > 0 ? room->walls->len : room->outline->len;
}

const RcOpening *
rc_room_find_opening (const RcRoom *room, const char *id)
{
  for (guint i = 0; i < room->openings->len; i++)
    {
      const RcOpening *opening = room->openings->pdata[i];

      if (g_strcmp0 (opening->id, id) == 0)
        return opening;
    }
  return NULL;
}
