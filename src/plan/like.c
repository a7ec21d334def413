#include "like.h"

#include "area-key.h"
#include "option.h"

static const char *
get_room_name (const RcHouse *house, const RcFloorArea *area, guint room)
{
  return rc_house_find_room (house, g_ptr_array_index (area->rooms, room))->room->name;
}

/* What is called `name` in the area, as it is called in `to`; `name` itself where that is nothing of the area's. */
static const char *
rename_for (const RcHouse *house, const RcFloorArea *area, const RcFloorArea *to, const char *name)
{
  for (guint i = 0; i < area->rooms->len; i++)
    if (g_strcmp0 (get_room_name (house, area, i), name) == 0)
      return get_room_name (house, to, i);
  return g_strcmp0 (area->name, name) == 0 ? to->name : name;
}

static gboolean
stays (const RcHouse *house, const RcFloorArea *area, const RcFloorArea *to, const char *name)
{
  return g_strcmp0 (rename_for (house, area, to, name), name) == 0;
}

/* Openings and rooms of other areas keep their names. */
static gboolean
keeps_names (const RcHouse *house, const RcFloorArea *area, const RcFloorArea *to, const RcPlacedOpening *placed)
{
  const RcRoom *rooms[] = { placed->room, placed->other };
  for (guint i = 0; i < G_N_ELEMENTS (rooms); i++)
    if (rooms[i] != NULL && rc_floor_area_find_room (area, rooms[i]->id) == 0
        && !stays (house, area, to, rooms[i]->name))
      return FALSE;
  return stays (house, area, to, placed->opening->id);
}

gboolean
rc_like_is_possible (const RcHouse *house, const RcFloorArea *area, const RcFloorArea *to)
{
  for (guint i = 0; i < area->rooms->len; i++)
    if (g_strcmp0 (rename_for (house, area, to, get_room_name (house, area, i)), get_room_name (house, to, i)) != 0)
      return FALSE;
  for (guint i = 0; i < house->openings->len; i++)
    {
      const RcPlacedOpening *placed = g_ptr_array_index (house->openings, i);
      if (rc_area_key_has_opening (area, placed) && !keeps_names (house, area, to, placed))
        return FALSE;
    }
  return g_strcmp0 (rename_for (house, area, to, area->name), to->name) == 0;
}

static void
set_text (char **text, const char *to)
{
  char *copy = g_strdup (to);
  g_free (*text);
  *text = copy;
}

static void
set_room (char **id, const RcFloorArea *area, const RcFloorArea *to)
{
  guint number = rc_floor_area_find_room (area, *id);
  if (number > 0)
    set_text (id, g_ptr_array_index (to->rooms, number - 1));
}

RcOption *
rc_like_copy_option (const RcOption *option, const RcHouse *house, const RcFloorArea *area, const RcFloorArea *to)
{
  RcOption *copy = rc_option_copy (option);
  RcPoint   from = rc_area_key_find_origin (house, area), there = rc_area_key_find_origin (house, to);
  rc_option_move (copy, there.x - from.x, there.y - from.y);
  for (guint i = 0; i < copy->pieces->len; i++)
    {
      RcPiece *piece = g_ptr_array_index (copy->pieces, i);
      set_text (&piece->area, to->id);
      set_room (&piece->room, area, to);
    }
  for (guint i = 0; i < copy->seams->len; i++)
    {
      RcSeam *seam = g_ptr_array_index (copy->seams, i);
      set_text (&seam->area, to->id);
      set_room (&seam->room, area, to);
    }
  for (guint i = 0; i < copy->broken->len; i++)
    for (char **arg = ((RcBrokenRule *)g_ptr_array_index (copy->broken, i))->args; *arg != NULL; arg++)
      set_text (arg, rename_for (house, area, to, *arg));
  return copy;
}

static void
exchange (char **match, const RcFloorArea *area, const RcFloorArea *to)
{
  if (g_strcmp0 (*match, area->id) == 0)
    *match = (char *)g_intern_string (to->id);
  else if (g_strcmp0 (*match, to->id) == 0)
    *match = (char *)g_intern_string (area->id);
}

GPtrArray *
rc_like_exchange_cuts (const GPtrArray *cuts, const RcFloorArea *area, const RcFloorArea *to)
{
  GPtrArray *exchanged = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < cuts->len; i++)
    {
      RcNestCut *cut = g_memdup2 (g_ptr_array_index (cuts, i), sizeof *cut);
      exchange (&cut->match, area, to);
      exchange (&cut->across_match, area, to);
      exchange (&cut->group, area, to);
      g_ptr_array_add (exchanged, cut);
    }
  return exchanged;
}
