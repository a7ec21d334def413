#include "cuts-csv.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "csv-table.h"
#include "decimal.h"

typedef enum
{
  COLUMN_LENGTH,
  COLUMN_NAME,
  COLUMN_COUNT,
  COLUMN_WIDTH,
  COLUMN_LOT,
  COLUMN_VALUE,
  COLUMN_TRIM,
  COLUMN_TRIM_END,
  COLUMN_DAMAGED,
  N_COLUMNS
} Column;

static const char *const COLUMN_NAMES[N_COLUMNS]
    = { "length", "name", "count", "width", "lot", "value", "trim", "trim_end", "damaged" };

/* One stretch, FROM to TO. */
static gboolean
read_stretch (const RcCsvTable *table, const char *text, RcNestRoll *roll, GError **error)
{
  g_auto (GStrv) ends = g_strsplit (text, " to ", -1);
  RcLength from = 0, to = 0;
  g_autoptr (GError) why = NULL;

  if (g_strv_length (ends) != 2)
    return rc_csv_table_fail (table, COLUMN_DAMAGED, error,
                              _ ("“%s” must be two places along the roll, like 2 m to 2.5 m; several are parted by ;"),
                              text);
  if (!rc_length_parse (ends[0], table->bare_unit, &from, &why)
      || !rc_length_parse (ends[1], table->bare_unit, &to, &why))
    return rc_csv_table_fail (table, COLUMN_DAMAGED, error, "%s", why->message);
  if (from >= to)
    return rc_csv_table_fail (table, COLUMN_DAMAGED, error, _ ("“%s” must end behind its beginning"), text);
  if (roll->length == 0)
    return rc_csv_table_fail (table, COLUMN_DAMAGED, error, _ ("only a roll of a given length can be damaged"));
  rc_nest_roll_add_flaw (roll, from, to);
  return TRUE;
}

static gboolean
read_damage (const RcCsvTable *table, RcNestRoll *roll, GError **error)
{
  g_auto (GStrv) stretches = g_strsplit (rc_csv_table_get (table, COLUMN_DAMAGED), ";", -1);

  for (guint s = 0; stretches[s] != NULL; s++)
    if (*g_strstrip (stretches[s]) != '\0' && !read_stretch (table, stretches[s], roll, error))
      return FALSE;
  return TRUE;
}

static gboolean
read_value (const RcCsvTable *table, RcNestRoll *roll, GError **error)
{
  const char *text = rc_csv_table_get (table, COLUMN_VALUE);

  roll->cost_per_m = roll->length > 0 ? RC_CSV_STOCK_VALUE : RC_CSV_BUY_VALUE;
  if (*text == '\0')
    return TRUE;
  if (rc_decimal_scan (text, 2, FALSE, &roll->cost_per_m) != RC_DECIMAL_OK)
    return rc_csv_table_fail (table, COLUMN_VALUE, error, _ ("“%s” must be the value of a metre, like 12.50"), text);
  if (roll->cost_per_m < 0 || roll->cost_per_m > 100000000)
    return rc_csv_table_fail (table, COLUMN_VALUE, error, _ ("must be between 0 and %d"), 1000000);
  return TRUE;
}

static gboolean
read_roll (const RcCsvTable *table, RcNestProblem *problem, guint *n_rolls, GError **error)
{
  const char *name = rc_csv_table_get (table, COLUMN_NAME), *lot = rc_csv_table_get (table, COLUMN_LOT);
  RcNestRoll *roll = rc_nest_roll_new (NULL, NULL, 0, 1);

  g_ptr_array_add (problem->rolls, roll);
  if (!rc_csv_table_read_length (table, COLUMN_LENGTH, TRUE, &roll->length, error)
      || !rc_csv_table_read_length (table, COLUMN_WIDTH, TRUE, &roll->width, error)
      || !rc_csv_table_read_length (table, COLUMN_TRIM, TRUE, &roll->trim, error)
      || !rc_csv_table_read_length (table, COLUMN_TRIM_END, TRUE, &roll->trim_end, error)
      || !read_value (table, roll, error) || !read_damage (table, roll, error))
    return FALSE;
  if (*rc_csv_table_get (table, COLUMN_COUNT) != '\0'
      && !rc_csv_table_read_count (table, COLUMN_COUNT, RC_CSV_MOST_ROLLS, &roll->count, error))
    return FALSE;
  if (roll->width > problem->roll_width)
    return rc_csv_table_fail (table, COLUMN_WIDTH, error, _ ("must not be more than the width that all rolls have"));
  if ((*n_rolls += roll->count) > RC_CSV_MOST_ROLLS)
    return rc_csv_table_fail (table, COLUMN_COUNT, error, _ ("more than %d rolls in all"), RC_CSV_MOST_ROLLS);
  if (roll->length > 0)
    {
      roll->name = g_strdup (*name != '\0' ? name : rc_csv_table_get (table, COLUMN_LENGTH));
      roll->lot = g_strdup (lot);
    }
  return TRUE;
}

gboolean
rc_rolls_csv_parse (const char *csv, const char *name, RcLengthUnit bare_unit, RcNestProblem *problem, GError **error)
{
  g_auto (RcCsvTable) table = { 0 };
  guint   n_rolls = 0;
  GError *fault = NULL;

  if (!rc_csv_table_init (&table, csv, name, COLUMN_NAMES, N_COLUMNS, 1, bare_unit, error))
    return FALSE;
  while (rc_csv_table_next (&table, &fault))
    if (!read_roll (&table, problem, &n_rolls, error))
      {
        g_ptr_array_set_size (problem->rolls, (gint)problem->rolls->len - 1);
        return FALSE;
      }
  if (fault != NULL)
    {
      g_propagate_error (error, fault);
      return FALSE;
    }
  if (n_rolls == 0)
    return rc_csv_table_fail (&table, -1, error, _ ("no roll follows the line that names the columns"));
  return TRUE;
}
