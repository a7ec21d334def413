#include "gesture-room.h"

#include "gesture-places.h"
#include "gesture-private.h"
#include "room-corners.h"

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
