#include "room-edit.h"

#include <math.h>

static double
compute_bearing (RcPoint from, RcPoint to)
{
  double degrees = atan2 ((double)(to.x - from.x), (double)(to.y - from.y)) * 180 / G_PI;
  return degrees < 0 ? degrees + 360 : degrees;
}

void
rc_room_edit_make_walls (RcRoom *room)
{
  if (room->walls->len > 0 || room->outline->len == 0)
    return;

  RcPoint start = *rc_ring_get (room->outline, 0);
  for (guint i = 0; i < room->outline->len; i++)
    {
      RcPoint from = *rc_ring_get (room->outline, i);
      RcPoint to = *rc_ring_get (room->outline, (i + 1) % room->outline->len);
      RcWall  wall = { .bearing_degrees = compute_bearing (from, to), .length = rc_point_distance (from, to) };
      g_array_append_val (room->walls, wall);
    }
  for (guint c = 0; c < room->cutouts->len; c++)
    rc_cutout_move (g_ptr_array_index (room->cutouts, c), (RcPoint){ -start.x, -start.y });
  room->at.x += start.x;
  room->at.y += start.y;
  g_array_set_size (room->outline, 0);
}

static RcWall *
get_wall (RcRoom *room, guint wall)
{
  rc_room_edit_make_walls (room);
  return wall < room->walls->len ? &g_array_index (room->walls, RcWall, wall) : NULL;
}

gboolean
rc_room_edit_set_length (RcRoom *room, guint wall, RcLength length)
{
  RcWall *w = get_wall (room, wall);

  if (w == NULL || length < 0)
    return FALSE;
  w->length = length;
  return TRUE;
}

gboolean
rc_room_edit_set_bearing (RcRoom *room, guint wall, double degrees)
{
  RcWall *w = get_wall (room, wall);

  if (w == NULL)
    return FALSE;
  w->bearing_degrees = degrees;
  return TRUE;
}

gboolean
rc_room_edit_set_bow (RcRoom *room, guint wall, RcLength bow)
{
  RcWall *w = get_wall (room, wall);

  if (w == NULL)
    return FALSE;
  w->bow = bow;
  return TRUE;
}

void
rc_room_edit_shift_diagonals (RcRoom *room, guint at, int more)
{
  for (guint i = room->diagonals->len; i-- > 0;)
    {
      RcDiagonal *diagonal = &g_array_index (room->diagonals, RcDiagonal, i);
      if (more < 0 && (diagonal->from == at || diagonal->to == at))
        {
          g_array_remove_index (room->diagonals, i);
          continue;
        }
      diagonal->from += diagonal->from >= at ? more : 0;
      diagonal->to += diagonal->to >= at ? more : 0;
    }
}

gboolean
rc_room_edit_insert_wall (RcRoom *room, guint wall, double degrees, RcLength length)
{
  rc_room_edit_make_walls (room);
  if (wall > room->walls->len || length < 0)
    return FALSE;

  RcWall added = { .bearing_degrees = degrees, .length = length };
  g_array_insert_val (room->walls, wall, added);
  rc_room_edit_shift_diagonals (room, wall, 1);
  for (guint i = 0; i < room->openings->len; i++)
    {
      RcOpening *opening = g_ptr_array_index (room->openings, i);
      if (opening->wall >= wall)
        opening->wall++;
    }
  return TRUE;
}

gboolean
rc_room_edit_remove_wall (RcRoom *room, guint wall)
{
  if (get_wall (room, wall) == NULL)
    return FALSE;

  g_array_remove_index (room->walls, wall);
  rc_room_edit_shift_diagonals (room, wall, -1);
  for (guint i = room->openings->len; i-- > 0;)
    {
      RcOpening *opening = g_ptr_array_index (room->openings, i);
      if (opening->wall == wall)
        g_ptr_array_remove_index (room->openings, i);
      else if (opening->wall > wall)
        opening->wall--;
    }
  return TRUE;
}

/* End minus start of the walk, summed from the legs' exact steps. */
static RcPoint
compute_gap (const RcRoom *room)
{
  RcPoint gap = { 0, 0 };

  for (guint i = 0; i < room->walls->len; i++)
    {
      const RcWall *wall = &g_array_index (room->walls, RcWall, i);
      RcLeg         leg = { wall->bearing_degrees, wall->length };
      RcPoint       step = rc_leg_get_step (&leg);
      gap.x += step.x;
      gap.y += step.y;
    }
  return gap;
}

double
rc_room_edit_guess_bearing (const RcRoom *room)
{
  if (room->walls->len == 0)
    return 0;

  if (room->walls->len >= 3)
    {
      RcPoint gap = compute_gap (room);
      if (gap.x != 0 || gap.y != 0)
        {
          double back = compute_bearing (gap, (RcPoint){ 0, 0 });
          double square = round (back / 90) * 90;
          if (fabs (back - square) < 0.5)
            return fmod (square, 360);
        }
    }
  double last = g_array_index (room->walls, RcWall, room->walls->len - 1).bearing_degrees;
  return fmod (last + 90, 360);
}

gboolean
rc_room_edit_find_closing_length (const RcRoom *room, guint wall, RcLength left_max, RcLength *length)
{
  if (wall >= room->walls->len)
    return FALSE;

  const RcWall *w = &g_array_index (room->walls, RcWall, wall);
  RcPoint       gap = compute_gap (room);
  double        radians = w->bearing_degrees * G_PI / 180;
  RcLength      best = w->length - llround (gap.x * sin (radians) + gap.y * cos (radians));

  if (best <= 0)
    return FALSE;
  RcLeg   now = { w->bearing_degrees, w->length }, then = { w->bearing_degrees, best };
  RcPoint step_now = rc_leg_get_step (&now), step_then = rc_leg_get_step (&then);
  RcPoint left = { gap.x + step_then.x - step_now.x, gap.y + step_then.y - step_now.y };
  if (rc_point_distance (left, (RcPoint){ 0, 0 }) > left_max)
    return FALSE;
  *length = best;
  return TRUE;
}

RcOpening *
rc_room_edit_find_opening (RcRoom *room, const char *id)
{
  for (guint i = 0; i < room->openings->len; i++)
    {
      RcOpening *opening = g_ptr_array_index (room->openings, i);
      if (g_strcmp0 (opening->id, id) == 0)
        return opening;
    }
  return NULL;
}

RcLength
rc_room_edit_get_usual_width (RcOpeningKind kind, RcUnitSystem units)
{
  gboolean metric = units == RC_UNITS_METRIC;

  if (kind == RC_OPENING_DOOR)
    return metric ? 800 * RC_TICKS_PER_MM : 32 * RC_TICKS_PER_INCH;
  return metric ? 1200 * RC_TICKS_PER_MM : 48 * RC_TICKS_PER_INCH;
}

RcLength
rc_room_edit_get_usual_wall (RcUnitSystem units)
{
  return units == RC_UNITS_METRIC ? 115 * RC_TICKS_PER_MM : 9 * RC_TICKS_PER_INCH / 2;
}

RcOpening *
rc_room_edit_add_opening (RcRoom *room, RcOpeningKind kind, guint wall, RcUnitSystem units)
{
  static const char LETTERS[] = { [RC_OPENING_DOOR] = 'D', [RC_OPENING_ARCHWAY] = 'A', [RC_OPENING_WINDOW] = 'W' };
  RcPoint           from, to;

  if (!rc_room_get_wall_ends (room, wall, &from, &to))
    return NULL;

  g_autofree char *id = NULL;
  for (guint n = 1; id == NULL || rc_room_edit_find_opening (room, id); n++)
    {
      g_free (id);
      id = g_strdup_printf ("%c%u", LETTERS[kind], n);
    }
  RcLength   along = rc_point_distance (from, to);
  RcOpening *opening = rc_opening_new (id, kind);
  opening->wall = wall;
  opening->width = MIN (rc_room_edit_get_usual_width (kind, units), along);
  opening->offset = (along - opening->width) / 2;
  opening->depth = rc_room_edit_get_usual_wall (units);
  opening->swing = kind == RC_OPENING_DOOR ? RC_SWING_IN : RC_SWING_NONE;
  g_ptr_array_add (room->openings, opening);
  return opening;
}

gboolean
rc_room_edit_remove_opening (RcRoom *room, const char *id)
{
  RcOpening *opening = rc_room_edit_find_opening (room, id);
  return opening && g_ptr_array_remove (room->openings, opening);
}
