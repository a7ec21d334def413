#include "gesture-scene.h"

#include <math.h>

#include "room-edit.h"

/* Walls that face each other may be out of parallel by the sine of about half a degree. */
#define PARALLEL_MAX 0.01

static void
scene_room_free (RcSceneRoom *room)
{
  g_array_unref (room->corners);
  g_free (room);
}

static gboolean
find_place (const RcRoom *room, const RcHouse *house, RcPoint *at)
{
  const RcPlacedRoom *placed = house ? rc_house_find_room (house, room->id) : NULL;

  if (!room->placed && placed == NULL)
    return FALSE;
  *at = room->placed ? room->at : placed->at;
  return TRUE;
}

static void
add_room (GPtrArray *rooms, const RcRoom *room, RcPoint at)
{
  RcSceneRoom *added = g_new0 (RcSceneRoom, 1);

  added->room = room;
  added->at = at;
  added->corners = rc_room_compute_corners (room);
  for (guint i = 0; i < added->corners->len; i++)
    {
      rc_ring_get (added->corners, i)->x += at.x;
      rc_ring_get (added->corners, i)->y += at.y;
    }
  added->is_left = rc_ring_compute_area (added->corners) >= 0;
  g_ptr_array_add (rooms, added);
}

static RcScene *
scene_new (const RcJob *job, const RcMeasure *measure, int floor)
{
  RcScene *scene = g_new0 (RcScene, 1);

  scene->job = job;
  scene->measure = measure;
  scene->floor = floor;
  scene->step = job->units == RC_UNITS_METRIC ? RC_TICKS_PER_CM : RC_TICKS_PER_INCH;
  scene->wall = rc_room_edit_get_usual_wall (job->units);
  scene->rooms = g_ptr_array_new_with_free_func ((GDestroyNotify)scene_room_free);
  scene->below = g_ptr_array_new_with_free_func ((GDestroyNotify)scene_room_free);
  return scene;
}

RcScene *
rc_scene_new (const RcJob *job, const RcMeasure *measure, const RcHouse *house, int floor)
{
  RcScene *scene = scene_new (job, measure, floor);

  for (guint i = 0; i < measure->rooms->len; i++)
    {
      const RcRoom *room = g_ptr_array_index (measure->rooms, i);
      RcPoint       at = { 0, 0 };
      if ((room->floor == floor || room->floor == floor - 1) && rc_room_get_n_walls (room) >= 3
          && find_place (room, house, &at))
        add_room (room->floor == floor ? scene->rooms : scene->below, room, at);
    }
  return scene;
}

RcScene *
rc_scene_new_noted (const RcJob *job, const RcMeasure *measure, int floor)
{
  RcScene *scene = scene_new (job, measure, floor);

  for (guint i = 0; i < measure->rooms->len; i++)
    {
      const RcRoom *room = g_ptr_array_index (measure->rooms, i);
      if (room->floor == floor && rc_room_get_n_walls (room) >= 3)
        add_room (scene->rooms, room, room->at);
    }
  return scene;
}

void
rc_scene_free (RcScene *scene)
{
  if (scene == NULL)
    return;
  g_ptr_array_unref (scene->rooms);
  g_ptr_array_unref (scene->below);
  g_free (scene);
}

const RcSceneRoom *
rc_scene_find_room (const RcScene *scene, const char *id)
{
  for (guint i = 0; i < scene->rooms->len; i++)
    {
      const RcSceneRoom *room = g_ptr_array_index (scene->rooms, i);
      if (g_strcmp0 (room->room->id, id) == 0)
        return room;
    }
  return NULL;
}

const RcSceneRoom *
rc_scene_find_room_at (const RcScene *scene, RcPoint point)
{
  for (guint i = scene->rooms->len; i-- > 0;)
    {
      const RcSceneRoom *room = g_ptr_array_index (scene->rooms, i);
      if (rc_ring_locate (room->corners, point) >= 0)
        return room;
    }
  return NULL;
}

void
rc_scene_get_wall (const RcSceneRoom *room, guint wall, RcPoint *from, RcPoint *to)
{
  *from = *rc_ring_get (room->corners, wall);
  *to = *rc_ring_get (room->corners, (wall + 1) % room->corners->len);
}

/* Foot of the point on the wall, clamped to its ends: how far along, how far away. */
static double
measure_to_wall (RcPoint from, RcPoint to, RcPoint point, double *along)
{
  double dx = (double)(to.x - from.x), dy = (double)(to.y - from.y), length = hypot (dx, dy);
  double px = (double)(point.x - from.x), py = (double)(point.y - from.y);

  *along = length > 0 ? CLAMP ((px * dx + py * dy) / length, 0, length) : 0;
  if (length == 0)
    return hypot (px, py);
  return hypot (px - dx * *along / length, py - dy * *along / length);
}

gboolean
rc_scene_find_wall (const RcScene *scene, const char *only, RcPoint point, RcLength reach, RcSceneWall *found)
{
  gboolean is_found = FALSE;

  for (guint i = 0; i < scene->rooms->len; i++)
    {
      const RcSceneRoom *room = g_ptr_array_index (scene->rooms, i);
      if (only && g_strcmp0 (room->room->id, only) != 0)
        continue;
      for (guint w = 0; w < room->corners->len; w++)
        {
          RcPoint from, to;
          double  along = 0;
          rc_scene_get_wall (room, w, &from, &to);
          double distance = measure_to_wall (from, to, point, &along);
          if (distance > reach || (is_found && distance >= found->distance))
            continue;
          *found = (RcSceneWall){ room, w, llround (along), rc_point_distance (from, to), distance };
          is_found = TRUE;
        }
    }
  return is_found;
}

gboolean
rc_scene_find_corner (const RcScene *scene, const char *only, RcPoint point, RcLength reach, const RcSceneRoom **room,
                      guint *corner)
{
  RcLength best = reach + 1;

  for (guint i = 0; i < scene->rooms->len; i++)
    {
      const RcSceneRoom *candidate = g_ptr_array_index (scene->rooms, i);
      if (only && g_strcmp0 (candidate->room->id, only) != 0)
        continue;
      for (guint c = 0; c < candidate->corners->len; c++)
        {
          RcLength distance = rc_point_distance (*rc_ring_get (candidate->corners, c), point);
          if (distance >= best)
            continue;
          best = distance;
          *room = candidate;
          *corner = c;
        }
    }
  return best <= reach;
}

/* What wall c-d, running the other way, shares with wall a-b seen along a-b, and how far it lies behind; outward is +1
 * where the outside lies to the left of a-b. */
static gboolean
compare_walls (RcPoint a, RcPoint b, RcPoint c, RcPoint d, int outward, RcSceneBehind *behind)
{
  double length = hypot ((double)(b.x - a.x), (double)(b.y - a.y));
  double other = hypot ((double)(d.x - c.x), (double)(d.y - c.y));

  if (length == 0 || other == 0)
    return FALSE;
  double ux = (double)(b.x - a.x) / length, uy = (double)(b.y - a.y) / length;
  double cross = (ux * (double)(d.y - c.y) - uy * (double)(d.x - c.x)) / other;
  double dot = (ux * (double)(d.x - c.x) + uy * (double)(d.y - c.y)) / other;
  if (fabs (cross) > PARALLEL_MAX)
    return FALSE;
  double at_c = (double)(c.x - a.x) * ux + (double)(c.y - a.y) * uy;
  double at_d = (double)(d.x - a.x) * ux + (double)(d.y - a.y) * uy;
  double off = -(double)(c.x - a.x) * uy + (double)(c.y - a.y) * ux;
  behind->gap = llround (off) * outward;
  behind->from = MAX (llround (MIN (at_c, at_d)), 0);
  behind->to = MIN (llround (MAX (at_c, at_d)), llround (length));
  return dot != 0 && behind->from < behind->to;
}

GArray *
rc_scene_find_behind (const RcScene *scene, const RcSceneRoom *room, guint wall, RcLength thick_max)
{
  GArray *all = g_array_new (FALSE, FALSE, sizeof (RcSceneBehind));
  RcPoint a, b;

  rc_scene_get_wall (room, wall, &a, &b);
  for (guint i = 0; i < scene->rooms->len; i++)
    {
      const RcSceneRoom *other = g_ptr_array_index (scene->rooms, i);
      for (guint w = 0; other != room && w < other->corners->len; w++)
        {
          RcSceneBehind behind = { other, w, 0, 0, 0 };
          RcPoint       c, d;
          rc_scene_get_wall (other, w, &c, &d);
          /* Its floor must lie on the far side: it runs the other way where both rooms are walked alike. */
          gboolean runs_back
              = (double)(b.x - a.x) * (double)(d.x - c.x) + (double)(b.y - a.y) * (double)(d.y - c.y) < 0;
          if (runs_back != (other->is_left == room->is_left)
              || !compare_walls (a, b, c, d, room->is_left ? -1 : 1, &behind))
            continue;
          if (behind.gap >= 0 && behind.gap <= thick_max)
            g_array_append_val (all, behind);
        }
    }
  return all;
}
