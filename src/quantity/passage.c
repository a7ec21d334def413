#include "passage.h"

gboolean
rc_opening_is_passage (const RcOpening *opening)
{
  return opening->kind == RC_OPENING_DOOR || opening->kind == RC_OPENING_ARCHWAY;
}

const RcOpening *
rc_placed_opening_find_other_side (const RcPlacedOpening *placed)
{
  if (placed->other == NULL)
    return NULL;
  if (placed->opening->to_opening != NULL)
    return rc_room_find_opening (placed->other, placed->opening->to_opening);
  for (guint i = 0; i < placed->other->openings->len; i++)
    {
      const RcOpening *opening = g_ptr_array_index (placed->other->openings, i);

      if (g_strcmp0 (opening->to_room, placed->room->id) == 0
          && g_strcmp0 (opening->to_opening, placed->opening->id) == 0)
        return opening;
    }
  return NULL;
}
