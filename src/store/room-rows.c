#include "room-rows.h"

#include <glib/gi18n-lib.h>

static void
add_walls (const char *measure, const RcRoom *room, RcRowSet *rows)
{
  for (guint i = 0; i < room->walls->len; i++)
    {
      const RcWall *wall = &g_array_index (room->walls, RcWall, i);

      /* Adding zero makes a plain one of the negative zero, which would not come back. */
      rc_row_set_add (rows, RC_TABLE_WALLS,
                      RC_VALUES (rc_value_text (measure), rc_value_text (room->id), rc_value_integer (i),
                                 rc_value_real (wall->bearing_degrees + 0.0), rc_value_integer (wall->length),
                                 rc_value_integer (wall->bow)));
    }
}

static void
add_outlines (const char *measure, const RcRoom *room, RcRowSet *rows)
{
  for (guint i = 0; i < room->outline->len; i++)
    rc_row_set_add (rows, RC_TABLE_OUTLINE_POINTS,
                    RC_VALUES (rc_value_text (measure), rc_value_text (room->id), rc_value_integer (i),
                               rc_value_integer (rc_ring_get (room->outline, i)->x),
                               rc_value_integer (rc_ring_get (room->outline, i)->y)));
  for (guint i = 0; i < room->cutouts->len; i++)
    {
      const RcCutout *cutout = room->cutouts->pdata[i];
      const RcRing   *ring = cutout->points;

      rc_row_set_add (rows, RC_TABLE_CUTOUTS,
                      RC_VALUES (rc_value_text (measure), rc_value_text (room->id), rc_value_integer (i),
                                 rc_value_text (cutout->name), rc_value_text (rc_cutout_kind_get_name (cutout->kind)),
                                 rc_value_integer (cutout->diameter), rc_value_integer (cutout->strip != FALSE),
                                 rc_value_integer (cutout->counted != FALSE)));
      for (guint j = 0; j < ring->len; j++)
        rc_row_set_add (rows, RC_TABLE_CUTOUT_POINTS,
                        RC_VALUES (rc_value_text (measure), rc_value_text (room->id), rc_value_integer (i),
                                   rc_value_integer (j), rc_value_integer (rc_ring_get (ring, j)->x),
                                   rc_value_integer (rc_ring_get (ring, j)->y)));
    }
}

static void
add_openings (const char *measure, const RcRoom *room, RcRowSet *rows)
{
  for (guint i = 0; i < room->openings->len; i++)
    {
      const RcOpening *opening = room->openings->pdata[i];

      rc_row_set_add (rows, RC_TABLE_OPENINGS,
                      RC_VALUES (rc_value_text (measure), rc_value_text (room->id), rc_value_text (opening->id),
                                 rc_value_integer (i), rc_value_text (rc_opening_kind_get_name (opening->kind)),
                                 rc_value_integer (opening->wall), rc_value_integer (opening->offset),
                                 rc_value_integer (opening->width), rc_value_integer (opening->depth),
                                 rc_value_text (rc_swing_get_name (opening->swing)),
                                 rc_value_integer (opening->hinge_at_end != FALSE), rc_value_text (opening->to_room),
                                 rc_value_text (opening->to_opening), rc_value_text (opening->transition)));
    }
}

static void
add_diagonals (const char *measure, const RcRoom *room, RcRowSet *rows)
{
  for (guint i = 0; i < room->diagonals->len; i++)
    {
      const RcDiagonal *diagonal = &g_array_index (room->diagonals, RcDiagonal, i);

      rc_row_set_add (rows, RC_TABLE_DIAGONALS,
                      RC_VALUES (rc_value_text (measure), rc_value_text (room->id), rc_value_integer (i),
                                 rc_value_integer (diagonal->from), rc_value_integer (diagonal->to),
                                 rc_value_integer (diagonal->length)));
    }
}

void
rc_room_rows_add (const char *measure, const RcRoom *room, guint position, RcRowSet *rows)
{
  rc_row_set_add (rows, RC_TABLE_ROOMS,
                  RC_VALUES (rc_value_text (measure), rc_value_text (room->id), rc_value_integer (position),
                             rc_value_text (room->name), rc_value_integer (room->floor),
                             rc_value_integer (room->spread != FALSE), rc_value_integer (room->placed != FALSE),
                             rc_value_integer (room->at.x), rc_value_integer (room->at.y),
                             rc_value_text (room->notes)));
  add_walls (measure, room, rows);
  add_outlines (measure, room, rows);
  add_openings (measure, room, rows);
  add_diagonals (measure, room, rows);
}

/* Rooms by "measure\nroom", as rows name them. */
static char *
dup_room_key (const RcValue *row)
{
  return g_strdup_printf ("%s\n%s", rc_value_get_text (&row[0]), rc_value_get_text (&row[1]));
}

static RcRoom *
find_room (GHashTable *rooms, RcTableId table, const RcValue *row, GError **error)
{
  g_autofree char *key = dup_room_key (row);
  RcRoom          *room = g_hash_table_lookup (rooms, key);

  if (room == NULL)
    g_set_error (error, RC_ERROR, RC_ERROR_STORE, _ ("a row of %s belongs to no room (%s of measure %s)"),
                 rc_row_table_get (table)->name, rc_value_get_text (&row[1]), rc_value_get_text (&row[0]));
  return room;
}

static gboolean
build_rooms (const RcRowSet *rows, RcJob *job, GHashTable *rooms, GError **error)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_ROOMS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_ROOMS, i);
      RcMeasure     *measure = rc_measure_rows_find (job, RC_TABLE_ROOMS, row, error);
      RcRoom        *room;

      if (measure == NULL)
        return FALSE;
      room = rc_room_new (rc_value_get_text (&row[1]), rc_value_get_text (&row[3]));
      room->floor = (int)rc_value_get_integer (&row[4]);
      room->spread = rc_value_get_integer (&row[5]) != 0;
      room->placed = rc_value_get_integer (&row[6]) != 0;
      room->at = (RcPoint){ rc_value_get_integer (&row[7]), rc_value_get_integer (&row[8]) };
      g_free (room->notes);
      room->notes = rc_value_dup_text (&row[9]);
      g_ptr_array_add (measure->rooms, room);
      g_hash_table_insert (rooms, dup_room_key (row), room);
    }
  return TRUE;
}

static gboolean
build_walls (const RcRowSet *rows, GHashTable *rooms, GError **error)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_WALLS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_WALLS, i);
      RcRoom        *room = find_room (rooms, RC_TABLE_WALLS, row, error);
      RcWall wall = { rc_value_get_real (&row[3]), rc_value_get_integer (&row[4]), rc_value_get_integer (&row[5]) };

      if (room == NULL)
        return FALSE;
      g_array_append_val (room->walls, wall);
    }
  return TRUE;
}

static gboolean
build_outline (const RcRowSet *rows, GHashTable *rooms, GError **error)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_OUTLINE_POINTS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_OUTLINE_POINTS, i);
      RcRoom        *room = find_room (rooms, RC_TABLE_OUTLINE_POINTS, row, error);
      RcPoint        point = { rc_value_get_integer (&row[3]), rc_value_get_integer (&row[4]) };

      if (room == NULL)
        return FALSE;
      g_array_append_val (room->outline, point);
    }
  return TRUE;
}

static gboolean
build_cutouts (const RcRowSet *rows, GHashTable *rooms, GError **error)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_CUTOUTS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_CUTOUTS, i);
      RcRoom        *room = find_room (rooms, RC_TABLE_CUTOUTS, row, error);
      RcCutout      *cutout;

      if (room == NULL)
        return FALSE;
      cutout = rc_cutout_new (RC_CUTOUT_OTHER);
      g_ptr_array_add (room->cutouts, cutout);
      cutout->name = rc_value_dup_text (&row[3]);
      cutout->diameter = rc_value_get_integer (&row[5]);
      cutout->strip = rc_value_get_integer (&row[6]) != 0;
      cutout->counted = rc_value_get_integer (&row[7]) != 0;
      if (!rc_cutout_kind_parse (rc_value_get_text (&row[4]), &cutout->kind, error))
        {
          g_prefix_error (error, _ ("room %s, cut-out %u: "), room->id, room->cutouts->len);
          return FALSE;
        }
    }
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_CUTOUT_POINTS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_CUTOUT_POINTS, i);
      RcRoom        *room = find_room (rooms, RC_TABLE_CUTOUT_POINTS, row, error);
      gint64         cutout = rc_value_get_integer (&row[2]);
      RcPoint        point = { rc_value_get_integer (&row[4]), rc_value_get_integer (&row[5]) };

      if (room == NULL)
        return FALSE;
      if (cutout >= 0 && cutout < room->cutouts->len)
        g_array_append_val (((RcCutout *)room->cutouts->pdata[cutout])->points, point);
    }
  return TRUE;
}

static gboolean
build_openings (const RcRowSet *rows, GHashTable *rooms, GError **error)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_OPENINGS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_OPENINGS, i);
      RcRoom        *room = find_room (rooms, RC_TABLE_OPENINGS, row, error);
      RcOpening     *opening;

      if (room == NULL)
        return FALSE;
      opening = rc_opening_new (rc_value_get_text (&row[2]), RC_OPENING_DOOR);
      g_ptr_array_add (room->openings, opening);
      opening->wall = (guint)rc_value_get_integer (&row[5]);
      opening->offset = rc_value_get_integer (&row[6]);
      opening->width = rc_value_get_integer (&row[7]);
      opening->depth = rc_value_get_integer (&row[8]);
      opening->hinge_at_end = rc_value_get_integer (&row[10]) != 0;
      opening->to_room = rc_value_dup_text (&row[11]);
      opening->to_opening = rc_value_dup_text (&row[12]);
      opening->transition = rc_value_dup_text (&row[13]);
      if (!rc_opening_kind_parse (rc_value_get_text (&row[4]), &opening->kind, error)
          || !rc_swing_parse (rc_value_get_text (&row[9]), &opening->swing, error))
        {
          g_prefix_error (error, _ ("room %s, opening %s: "), room->id, opening->id);
          return FALSE;
        }
    }
  return TRUE;
}

static gboolean
build_diagonals (const RcRowSet *rows, GHashTable *rooms, GError **error)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_DIAGONALS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_DIAGONALS, i);
      RcRoom        *room = find_room (rooms, RC_TABLE_DIAGONALS, row, error);
      RcDiagonal     diagonal = { (guint)rc_value_get_integer (&row[3]), (guint)rc_value_get_integer (&row[4]),
                                  rc_value_get_integer (&row[5]) };

      if (room == NULL)
        return FALSE;
      g_array_append_val (room->diagonals, diagonal);
    }
  return TRUE;
}

gboolean
rc_room_rows_build (const RcRowSet *rows, RcJob *job, GError **error)
{
  g_autoptr (GHashTable) rooms = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  return build_rooms (rows, job, rooms, error) && build_walls (rows, rooms, error) && build_outline (rows, rooms, error)
         && build_cutouts (rows, rooms, error) && build_openings (rows, rooms, error)
         && build_diagonals (rows, rooms, error);
}
