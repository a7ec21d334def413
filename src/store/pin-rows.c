#include "pin-rows.h"

#include <glib/gi18n-lib.h>

#include "job-rows.h"

void
rc_pin_rows_add (const RcMeasure *measure, const RcFloorArea *area, RcRowSet *rows)
{
  for (guint i = 0; i < area->pins->len; i++)
    {
      const RcPin *pin = g_ptr_array_index (area->pins, i);

      rc_row_set_add (rows, RC_TABLE_PINS,
                      RC_VALUES (rc_value_text (measure->id), rc_value_text (area->id), rc_value_integer (i),
                                 rc_value_text (rc_pin_kind_get_name (pin->kind)), rc_value_text (pin->room),
                                 rc_value_text (pin->roll)));
      for (guint k = 0; k < pin->points->len; k++)
        rc_row_set_add (rows, RC_TABLE_PIN_POINTS,
                        RC_VALUES (rc_value_text (measure->id), rc_value_text (area->id), rc_value_integer (i),
                                   rc_value_integer (k), rc_value_integer (rc_ring_get (pin->points, k)->x),
                                   rc_value_integer (rc_ring_get (pin->points, k)->y)));
    }
}

/* The area that a row of pins or of their points belongs to. */
static RcFloorArea *
find_area (RcJob *job, RcTableId table, const RcValue *row, GError **error)
{
  RcMeasure   *measure = rc_measure_rows_find (job, table, row, error);
  RcFloorArea *area = measure != NULL ? rc_measure_find_area (measure, rc_value_get_text (&row[1])) : NULL;

  if (measure != NULL && area == NULL)
    g_set_error (error, RC_ERROR, RC_ERROR_STORE, _ ("a row of %s belongs to no area (%s of measure %s)"),
                 rc_row_table_get (table)->name, rc_value_get_text (&row[1]), measure->id);
  return area;
}

static gboolean
build_pins (const RcRowSet *rows, RcJob *job, GError **error)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_PINS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_PINS, i);
      RcFloorArea   *area = find_area (job, RC_TABLE_PINS, row, error);
      RcPinKind      kind;
      RcPin         *pin;

      if (area == NULL)
        return FALSE;
      if (!rc_pin_kind_parse (rc_value_get_text (&row[3]), &kind, error))
        {
          g_prefix_error (error, _ ("area %s: "), area->id);
          return FALSE;
        }
      pin = rc_pin_new (kind, NULL);
      pin->room = rc_value_dup_text (&row[4]);
      pin->roll = rc_value_dup_text (&row[5]);
      g_ptr_array_add (area->pins, pin);
    }
  return TRUE;
}

static gboolean
build_points (const RcRowSet *rows, RcJob *job, GError **error)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_PIN_POINTS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_PIN_POINTS, i);
      RcFloorArea   *area = find_area (job, RC_TABLE_PIN_POINTS, row, error);
      gint64         pin = rc_value_get_integer (&row[2]);
      RcPoint        point = { rc_value_get_integer (&row[4]), rc_value_get_integer (&row[5]) };

      if (area == NULL)
        return FALSE;
      if (pin >= 0 && pin < area->pins->len)
        g_array_append_val (((RcPin *)g_ptr_array_index (area->pins, (guint)pin))->points, point);
    }
  return TRUE;
}

gboolean
rc_pin_rows_build (const RcRowSet *rows, RcJob *job, GError **error)
{
  return build_pins (rows, job, error) && build_points (rows, job, error);
}
