#include "gesture-places.h"

#include "door-links.h"
#include "gesture-private.h"

/* After so many rooms placed one by one the rest is placed at once. */
#define MAX_ROUNDS 6

void
rc_places_note (const RcScene *scene, RcMeasure *measure)
{
  for (guint i = 0; i < scene->rooms->len; i++)
    {
      const RcSceneRoom *known = g_ptr_array_index (scene->rooms, i);
      RcRoom            *room = rc_measure_find_room (measure, known->room->id);
      if (room)
        room->at = known->at;
    }
}

RcScene *
rc_places_new_scene (const RcScene *scene, RcJob *job)
{
  return rc_scene_new_noted (job, rc_gesture_get_measure (scene, job), scene->floor);
}

static RcPoint
add (RcPoint a, RcPoint b)
{
  return (RcPoint){ a.x + b.x, a.y + b.y };
}

/* How far the middle of the other opening lies from where this one has it; with both rooms where `at` says. */
static RcLength
compute_miss (const RcDoorLink *link)
{
  RcPoint from = { 0 }, to = { 0 }, other_from = { 0 }, other_to = { 0 }, step = { 0 };

  if (!rc_room_get_opening_ends (link->room, link->opening, &from, &to)
      || !rc_room_get_opening_ends (link->other, link->other_opening, &other_from, &other_to)
      || !rc_room_get_outward_step (link->room, link->opening->wall,
                                    MAX (link->opening->depth, link->other_opening->depth), &step))
    return G_MAXINT64;
  RcPoint middle = add (link->room->at, (RcPoint){ (from.x + to.x) / 2 + step.x, (from.y + to.y) / 2 + step.y });
  RcPoint other = add (link->other->at, (RcPoint){ (other_from.x + other_to.x) / 2, (other_from.y + other_to.y) / 2 });
  return rc_point_distance (middle, other);
}

static void
lead_nowhere (RcOpening *opening)
{
  g_clear_pointer (&opening->to_room, g_free);
  g_clear_pointer (&opening->to_opening, g_free);
}

static void
loosen_room (RcMeasure *measure, RcRoom *room, RcLength miss_max)
{
  g_autoptr (GHashTable) links = rc_door_links_new (measure, NULL);

  for (guint i = 0; links != NULL && i < room->openings->len; i++)
    {
      RcOpening        *opening = g_ptr_array_index (room->openings, i);
      const RcDoorLink *link = g_hash_table_lookup (links, opening);
      if (link->other_opening == NULL || link->other->floor != room->floor || compute_miss (link) <= miss_max)
        continue;
      lead_nowhere ((RcOpening *)link->other_opening);
      lead_nowhere (opening);
    }
}

static gboolean
is_touched (const RcSceneRoom *before, const RcRoom *room)
{
  g_autoptr (GArray) corners = rc_room_compute_corners (room);

  if (before == NULL || corners->len != before->corners->len)
    return TRUE;
  for (guint i = 0; i < corners->len; i++)
    {
      RcPoint now = add (*rc_ring_get (corners, i), room->at), then = *rc_ring_get (before->corners, i);
      if (now.x != then.x || now.y != then.y)
        return TRUE;
    }
  return FALSE;
}

/* The first room that does not lie where it should; one that the hand has changed before any other. */
static RcRoom *
find_astray (const RcScene *scene, RcMeasure *measure, const RcHouse *house)
{
  RcRoom *astray = NULL;

  for (guint i = 0; i < measure->rooms->len; i++)
    {
      RcRoom             *room = g_ptr_array_index (measure->rooms, i);
      const RcSceneRoom  *before = rc_scene_find_room (scene, room->id);
      const RcPlacedRoom *placed = house ? rc_house_find_room (house, room->id) : NULL;
      if (room->placed || room->floor != scene->floor || before == NULL
          || (placed && placed->at.x == room->at.x && placed->at.y == room->at.y))
        continue;
      if (is_touched (before, room))
        return room;
      if (astray == NULL && house)
        astray = room;
    }
  return astray;
}

/* The same room at another place: its pins go along as they are. */
static gboolean
is_moved_whole (const RcSceneRoom *before, const RcRoom *room)
{
  g_autoptr (GArray) corners = rc_room_compute_corners (room);

  if (corners->len != before->corners->len)
    return FALSE;
  for (guint i = 0; i < corners->len; i++)
    {
      RcPoint now = *rc_ring_get (corners, i), then = *rc_ring_get (before->corners, i);
      if (now.x != then.x - before->at.x || now.y != then.y - before->at.y)
        return FALSE;
    }
  return TRUE;
}

/* The pin stays where it is in the house; FALSE when it lies in its room no more. */
static gboolean
keep_pin (RcPin *pin, const RcSceneRoom *before, const RcRoom *room)
{
  if (room == NULL)
    return FALSE;
  if (before == NULL || is_moved_whole (before, room))
    return TRUE;
  RcPoint middle = { 0, 0 };
  for (guint i = 0; i < pin->points->len; i++)
    {
      RcPoint *point = rc_ring_get (pin->points, i);
      *point = (RcPoint){ point->x + before->at.x - room->at.x, point->y + before->at.y - room->at.y };
      middle = add (middle, (RcPoint){ point->x / pin->points->len, point->y / pin->points->len });
    }
  g_autoptr (GArray) corners = rc_room_compute_corners (room);
  return rc_ring_locate (corners, middle) >= 0;
}

static void
keep_pins (const RcScene *scene, RcMeasure *measure)
{
  for (guint a = 0; a < measure->areas->len; a++)
    {
      RcFloorArea *area = g_ptr_array_index (measure->areas, a);
      for (guint i = area->pins->len; i-- > 0;)
        {
          RcPin *pin = g_ptr_array_index (area->pins, i);
          if (pin->room
              && !keep_pin (pin, rc_scene_find_room (scene, pin->room), rc_measure_find_room (measure, pin->room)))
            g_ptr_array_remove_index (area->pins, i);
        }
    }
}

void
rc_places_keep (const RcScene *scene, RcJob *job, const GPtrArray *loosened)
{
  RcMeasure *measure = rc_gesture_get_measure (scene, job);

  for (guint i = 0; loosened && i < loosened->len; i++)
    {
      RcRoom *room = rc_measure_find_room (measure, g_ptr_array_index (loosened, i));
      if (room)
        loosen_room (measure, room, job->settings.closure.error_max);
    }
  keep_pins (scene, measure);
  gboolean is_settled = FALSE;
  for (guint round = 0; !is_settled && round <= MAX_ROUNDS; round++)
    {
      g_autoptr (RcHouse) house = rc_house_new_rooms (measure, &job->settings.closure, NULL);
      RcRoom *astray = find_astray (scene, measure, house);
      is_settled = astray == NULL;
      for (; astray; astray = round == MAX_ROUNDS ? find_astray (scene, measure, house) : NULL)
        astray->placed = TRUE;
    }
  for (guint i = 0; i < measure->rooms->len; i++)
    {
      RcRoom       *room = g_ptr_array_index (measure->rooms, i);
      const RcRoom *before = rc_measure_find_room (scene->measure, room->id);
      if (!room->placed && before)
        room->at = before->at;
    }
}

static gboolean
are_places_same (const RcHouse *before, const RcHouse *after)
{
  for (guint i = 0; i < before->rooms->len; i++)
    {
      const RcPlacedRoom *one = g_ptr_array_index (before->rooms, i), *two = g_ptr_array_index (after->rooms, i);
      if (one->at.x != two->at.x || one->at.y != two->at.y)
        return FALSE;
    }
  return TRUE;
}

void
rc_places_relax (const RcScene *scene, RcJob *job, const char *id)
{
  RcMeasure *measure = rc_gesture_get_measure (scene, job);
  RcRoom    *room = rc_measure_find_room (measure, id);

  if (room == NULL || !room->placed)
    return;
  g_autoptr (RcHouse) before = rc_house_new_rooms (measure, &job->settings.closure, NULL);
  room->placed = FALSE;
  g_autoptr (RcHouse) after = rc_house_new_rooms (measure, &job->settings.closure, NULL);
  if (before == NULL || after == NULL || !are_places_same (before, after))
    room->placed = TRUE;
  else
    room->at = (RcPoint){ 0, 0 };
}
