#include "house-place.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "door-links.h"
#include "rowcut-error.h"

/* Between rooms that no door places: a yard. */
#define ROW_GAP (RC_TICKS_PER_YARD)

/* Openings that are one face each other; walls that close by their last one may be turned by so much. */
#define FACING_MAX_DEGREES 10.0

typedef struct
{
  RcHouse    *house;
  GHashTable *index;  /* RcRoom to its index + 1 */
  gboolean   *placed; /* by index */
  GQueue      waiting;
} Placing;

static RcPlacedRoom *
get_room (const Placing *placing, guint i)
{
  return placing->house->rooms->pdata[i];
}

static gboolean
check_facing (const RcDoorLink *link, GError **error)
{
  RcPoint          a, b;
  g_autofree char *what = NULL;
  double           cosine;

  if (!rc_room_get_outward_step (link->room, link->opening->wall, RC_TICKS_PER_M, &a)
      || !rc_room_get_outward_step (link->other, link->other_opening->wall, RC_TICKS_PER_M, &b))
    return TRUE;
  cosine = ((double)a.x * (double)b.x + (double)a.y * (double)b.y) / ((double)RC_TICKS_PER_M * (double)RC_TICKS_PER_M);
  if (cosine <= -cos (FACING_MAX_DEGREES * G_PI / 180))
    return TRUE;
  what = rc_door_link_describe (link);
  g_set_error (error, RC_ERROR, RC_ERROR_GEOMETRY,
               _ ("%s does not face %s of %s: their walls must run side by side; check which walls they stand in"),
               what, link->other_opening->id, rc_room_get_name (link->other));
  return FALSE;
}

/* Where the other room's origin lies so that the openings' middles face each other across the wall. */
static RcPoint
compute_at (RcPoint at, const RcDoorLink *link)
{
  RcPoint from = { 0 }, to = { 0 }, other_from = { 0 }, other_to = { 0 }, step = { 0 };

  rc_room_get_opening_ends (link->room, link->opening, &from, &to);
  rc_room_get_opening_ends (link->other, link->other_opening, &other_from, &other_to);
  rc_room_get_outward_step (link->room, link->opening->wall, MAX (link->opening->depth, link->other_opening->depth),
                            &step);
  at.x += step.x + (from.x + to.x - other_from.x - other_to.x) / 2;
  at.y += step.y + (from.y + to.y - other_from.y - other_to.y) / 2;
  return at;
}

static void
place (Placing *placing, guint i, RcPoint at)
{
  get_room (placing, i)->at = at;
  placing->placed[i] = TRUE;
  g_queue_push_tail (&placing->waiting, GUINT_TO_POINTER (i));
}

/* Places, one after another, all rooms of the same floor that doors lead to from those waiting. */
static gboolean
spread_from_waiting (Placing *placing, GError **error)
{
  while (!g_queue_is_empty (&placing->waiting))
    {
      const RcPlacedRoom *from = get_room (placing, GPOINTER_TO_UINT (g_queue_pop_head (&placing->waiting)));

      for (guint k = 0; k < from->room->openings->len; k++)
        {
          const RcDoorLink *link = g_hash_table_lookup (placing->house->links, from->room->openings->pdata[k]);
          guint             other;

          if (link->other_opening == NULL || link->other->floor != from->room->floor)
            continue;
          if (!check_facing (link, error))
            return FALSE;
          other = GPOINTER_TO_UINT (g_hash_table_lookup (placing->index, link->other)) - 1;
          if (!placing->placed[other])
            place (placing, other, compute_at (from->at, link));
        }
    }
  return TRUE;
}

static RcBox
get_box (const RcPlacedRoom *room)
{
  RcBox box = rc_ring_compute_box (room->polygon->outer);

  box.x0 += room->at.x;
  box.x1 += room->at.x;
  box.y0 += room->at.y;
  box.y1 += room->at.y;
  return box;
}

/* Rooms first[0..n) have been put about the origin; moves them right of the others of their floor, on their base line.
 */
static void
move_to_row (Placing *placing, const GArray *group, int floor, const gboolean *before)
{
  RcBox    own = get_box (get_room (placing, g_array_index (group, guint, 0)));
  RcBox    rest = { 0 };
  gboolean first = TRUE;

  for (guint k = 1; k < group->len; k++)
    {
      RcBox box = get_box (get_room (placing, g_array_index (group, guint, k)));

      own.x0 = MIN (own.x0, box.x0);
      own.y0 = MIN (own.y0, box.y0);
    }
  for (guint i = 0; i < placing->house->rooms->len; i++)
    {
      RcBox box;

      if (!before[i] || get_room (placing, i)->room->floor != floor)
        continue;
      box = get_box (get_room (placing, i));
      rest.x1 = first ? box.x1 : MAX (rest.x1, box.x1);
      rest.y0 = first ? box.y0 : MIN (rest.y0, box.y0);
      first = FALSE;
    }
  for (guint k = 0; k < group->len; k++)
    {
      RcPlacedRoom *room = get_room (placing, g_array_index (group, guint, k));

      room->at.x += rest.x1 + ROW_GAP - own.x0;
      room->at.y += rest.y0 - own.y0;
    }
}

/* A room that nothing places yet, and all that its doors lead to. */
static gboolean
place_group (Placing *placing, guint i, GError **error)
{
  guint                n = placing->house->rooms->len;
  int                  floor = get_room (placing, i)->room->floor;
  g_autofree gboolean *before = g_memdup2 (placing->placed, n * sizeof (gboolean));
  g_autoptr (GArray) group = g_array_new (FALSE, FALSE, sizeof (guint));
  gboolean floor_is_empty = TRUE;

  for (guint k = 0; k < n; k++)
    if (before[k] && get_room (placing, k)->room->floor == floor)
      floor_is_empty = FALSE;
  place (placing, i, (RcPoint){ 0, 0 });
  if (!spread_from_waiting (placing, error))
    return FALSE;
  for (guint k = 0; k < n; k++)
    if (placing->placed[k] && !before[k])
      g_array_append_val (group, k);
  if (!floor_is_empty)
    move_to_row (placing, group, floor, before);
  return TRUE;
}

gboolean
rc_house_place_rooms (RcHouse *house, GError **error)
{
  g_autoptr (GHashTable) index = g_hash_table_new (NULL, NULL);
  g_autofree gboolean *placed = g_new0 (gboolean, house->rooms->len + 1);
  Placing              placing = { house, index, placed, G_QUEUE_INIT };
  gboolean             done;

  for (guint i = 0; i < house->rooms->len; i++)
    {
      const RcRoom *room = get_room (&placing, i)->room;

      g_hash_table_insert (index, (gpointer)room, GUINT_TO_POINTER (i + 1));
      if (room->placed)
        place (&placing, i, room->at);
    }
  done = spread_from_waiting (&placing, error);
  for (guint i = 0; done && i < house->rooms->len; i++)
    if (!placed[i])
      done = place_group (&placing, i, error);
  g_queue_clear (&placing.waiting);
  return done;
}
