#include "gesture-room.h"

#include "gesture-places.h"
#include "gesture-private.h"
#include "room-corners.h"

/* What was pinned in the room lay another way. */
static void
drop_pins (RcMeasure *measure, const char *room)
{
  for (guint a = 0; a < measure->areas->len; a++)
    {
      RcFloorArea *area = g_ptr_array_index (measure->areas, a);
      for (guint i = area->pins->len; i-- > 0;)
        if (g_strcmp0 (((const RcPin *)g_ptr_array_index (area->pins, i))->room, room) == 0)
          g_ptr_array_remove_index (area->pins, i);
    }
}

static RcJob *
change (const RcScene *scene, const char *id, gboolean mirrored, double degrees)
{
  g_autoptr (RcJob) job = rc_gesture_dup_job (scene);
  RcMeasure *measure = rc_gesture_get_measure (scene, job);
  RcRoom    *room = rc_scene_find_room (scene, id) ? rc_measure_find_room (measure, id) : NULL;
  g_autoptr (GPtrArray) loosened = g_ptr_array_new ();

  if (room == NULL)
    return NULL;
  rc_places_note (scene, measure);
  drop_pins (measure, id);
  if (mirrored)
    rc_room_edit_mirror (room);
  else
    rc_room_edit_turn (room, degrees);
  g_ptr_array_add (loosened, room->id);
  rc_places_keep (scene, job, loosened);
  return g_steal_pointer (&job);
}

RcJob *
rc_gesture_room_mirror (const RcScene *scene, const char *room)
{
  return change (scene, room, TRUE, 0);
}

RcJob *
rc_gesture_room_turn (const RcScene *scene, const char *room, double degrees)
{
  return change (scene, room, FALSE, degrees);
}
