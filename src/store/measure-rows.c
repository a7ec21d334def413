#include "job-rows.h"
#include "pin-rows.h"
#include "room-rows.h"
#include "seam-line.h"
#include "stair-rows.h"

#include <glib/gi18n-lib.h>

/* Columns of an area's row: see rc_measure_rows_drop_seam_lines. They stay, for steps recorded before have them. */
enum
{
  SEAM_LINE_PINNED = 9,
  SEAM_LINE_TICKS
};

static void
add_areas (const RcMeasure *measure, RcRowSet *rows)
{
  for (guint i = 0; i < measure->areas->len; i++)
    {
      const RcFloorArea *area = measure->areas->pdata[i];

      rc_row_set_add (rows, RC_TABLE_AREAS,
                      RC_VALUES (rc_value_text (measure->id), rc_value_text (area->id), rc_value_integer (i),
                                 rc_value_text (area->name), rc_value_text (area->carpet),
                                 rc_value_text (area->cushion), rc_value_text (rc_fixing_get_name (area->fixing)),
                                 rc_value_integer (area->pile_degrees), rc_value_text (area->option),
                                 rc_value_integer (0), rc_value_integer (0)));
      for (guint j = 0; j < area->rooms->len; j++)
        rc_row_set_add (rows, RC_TABLE_AREA_ROOMS,
                        RC_VALUES (rc_value_text (measure->id), rc_value_text (area->id), rc_value_integer (j),
                                   rc_value_text (area->rooms->pdata[j] != NULL ? area->rooms->pdata[j] : "")));
      rc_pin_rows_add (measure, area, rows);
    }
}

void
rc_measure_rows_add (const RcMeasure *measure, guint position, RcRowSet *rows)
{
  rc_row_set_add (rows, RC_TABLE_MEASURES,
                  RC_VALUES (rc_value_text (measure->id), rc_value_integer (position), rc_value_text (measure->date),
                             rc_value_text (measure->taken_by), rc_value_text (measure->notes)));
  for (guint i = 0; i < measure->rooms->len; i++)
    rc_room_rows_add (measure->id, measure->rooms->pdata[i], i, rows);
  rc_stair_rows_add (measure, rows);
  add_areas (measure, rows);
}

static void
build_measures (const RcRowSet *rows, RcJob *job)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_MEASURES); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_MEASURES, i);
      RcMeasure     *measure = rc_measure_new (rc_value_get_text (&row[0]));

      measure->date = rc_value_dup_text (&row[2]);
      measure->taken_by = rc_value_dup_text (&row[3]);
      g_free (measure->notes);
      measure->notes = rc_value_dup_text (&row[4]);
      g_ptr_array_add (job->measures, measure);
    }
}

RcMeasure *
rc_measure_rows_find (const RcJob *job, RcTableId table, const RcValue *row, GError **error)
{
  const char *id = rc_value_get_text (&row[0]);
  RcMeasure  *measure = id != NULL ? rc_job_get_measure (job, id) : NULL;

  if (measure == NULL)
    g_set_error (error, RC_ERROR, RC_ERROR_STORE, _ ("a row of %s belongs to no measure (%s)"),
                 rc_row_table_get (table)->name, id != NULL ? id : "");
  return measure;
}

static gboolean
build_areas (const RcRowSet *rows, RcJob *job, GError **error)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_AREAS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_AREAS, i);
      RcMeasure     *measure = rc_measure_rows_find (job, RC_TABLE_AREAS, row, error);
      RcFloorArea   *area;

      if (measure == NULL)
        return FALSE;
      area = rc_floor_area_new (rc_value_get_text (&row[1]), rc_value_get_text (&row[3]));
      g_ptr_array_add (measure->areas, area);
      area->carpet = rc_value_dup_text (&row[4]);
      area->cushion = rc_value_dup_text (&row[5]);
      area->pile_degrees = (int)rc_value_get_integer (&row[7]);
      area->option = rc_value_dup_text (&row[8]);
      if (!rc_fixing_parse (rc_value_get_text (&row[6]), &area->fixing, error))
        {
          g_prefix_error (error, _ ("area %s: "), area->id);
          return FALSE;
        }
    }
  return TRUE;
}

static gboolean
build_area_rooms (const RcRowSet *rows, RcJob *job, GError **error)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_AREA_ROOMS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_AREA_ROOMS, i);
      RcMeasure     *measure = rc_measure_rows_find (job, RC_TABLE_AREA_ROOMS, row, error);
      RcFloorArea   *area;

      if (measure == NULL)
        return FALSE;
      area = rc_measure_find_area (measure, rc_value_get_text (&row[1]));
      if (area == NULL)
        {
          g_set_error (error, RC_ERROR, RC_ERROR_STORE, _ ("a row of area_rooms belongs to no area (%s of measure %s)"),
                       rc_value_get_text (&row[1]), measure->id);
          return FALSE;
        }
      g_ptr_array_add (area->rooms, rc_value_dup_text (&row[3]));
    }
  return TRUE;
}

/* A line that crosses no room of its area, or an area whose rooms cannot be placed, makes no pin: it is let go. */
static void
pin_seam_lines (const RcRowSet *rows, RcJob *job)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_AREAS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_AREAS, i);

      if (rc_value_get_integer (&row[SEAM_LINE_PINNED]) == 0)
        continue;
      RcMeasure *measure = rc_job_get_measure (job, rc_value_get_text (&row[0]));
      rc_seam_line_pin (measure, &job->settings.closure, rc_measure_find_area (measure, rc_value_get_text (&row[1])),
                        rc_value_get_integer (&row[SEAM_LINE_TICKS]), NULL);
    }
}

gboolean
rc_measure_rows_drop_seam_lines (RcRowSet *rows)
{
  gboolean found = FALSE;

  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_AREAS); i++)
    {
      found |= rc_value_get_integer (&rc_row_set_get (rows, RC_TABLE_AREAS, i)[SEAM_LINE_PINNED]) != 0;
      rc_row_set_put (rows, RC_TABLE_AREAS, i, SEAM_LINE_PINNED, rc_value_integer (0));
      rc_row_set_put (rows, RC_TABLE_AREAS, i, SEAM_LINE_TICKS, rc_value_integer (0));
    }
  return found;
}

gboolean
rc_measure_rows_build (const RcRowSet *rows, RcJob *job, GError **error)
{
  build_measures (rows, job);
  if (!rc_room_rows_build (rows, job, error) || !rc_stair_rows_build (rows, job, error)
      || !build_areas (rows, job, error) || !build_area_rooms (rows, job, error)
      || !rc_pin_rows_build (rows, job, error))
    return FALSE;
  pin_seam_lines (rows, job);
  return TRUE;
}
