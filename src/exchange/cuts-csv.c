#include "cuts-csv.h"

#include <glib/gi18n-lib.h>

#include "csv-table.h"

enum
{
  MOST_CUTS = 100000 /* over all rows, quantities counted */
};

typedef enum
{
  COLUMN_LABEL,
  COLUMN_WIDTH,
  COLUMN_LENGTH,
  COLUMN_QUANTITY,
  COLUMN_REPEAT,
  COLUMN_PHASE,
  COLUMN_MATCH,
  COLUMN_ACROSS_REPEAT,
  COLUMN_ACROSS_PHASE,
  COLUMN_ACROSS_MATCH,
  COLUMN_LOT,
  COLUMN_ROLL,
  COLUMN_ALONG,
  COLUMN_ACROSS,
  N_COLUMNS
} Column;

static const char *const COLUMN_NAMES[N_COLUMNS]
    = { "label",         "width",        "length",       "quantity", "repeat", "phase", "match",
        "across_repeat", "across_phase", "across_match", "lot",      "roll",   "along", "across" };

static char *
dup_name (const RcCsvTable *table, Column column)
{
  const char *text = rc_csv_table_get (table, column);

  return *text != '\0' ? g_strdup (text) : NULL;
}

/* The columns of a pattern follow one another: repeat, phase, match. */
static gboolean
read_pattern (const RcCsvTable *table, Column first, RcLength *repeat, RcLength *phase, char **match, GError **error)
{
  if (!rc_csv_table_read_length (table, first, TRUE, repeat, error)
      || !rc_csv_table_read_length (table, first + 1, TRUE, phase, error))
    return FALSE;
  *match = dup_name (table, first + 2);
  if (*repeat == 0 && *phase != 0)
    return rc_csv_table_fail (table, (int)first + 1, error, _ ("a phase needs a repeat beside it"));
  if (*repeat == 0 && *match != NULL)
    return rc_csv_table_fail (table, (int)first + 2, error, _ ("a match needs a repeat beside it"));
  return TRUE;
}

static gboolean
read_pins (const RcCsvTable *table, RcNestCut *cut, GError **error)
{
  if (*rc_csv_table_get (table, COLUMN_ROLL) != '\0'
      && !rc_csv_table_read_count (table, COLUMN_ROLL, RC_CSV_MOST_ROLLS, &cut->pinned_roll, error))
    return FALSE;
  cut->is_along_pinned = *rc_csv_table_get (table, COLUMN_ALONG) != '\0';
  cut->is_across_pinned = *rc_csv_table_get (table, COLUMN_ACROSS) != '\0';
  return rc_csv_table_read_length (table, COLUMN_ALONG, TRUE, &cut->along, error)
         && rc_csv_table_read_length (table, COLUMN_ACROSS, TRUE, &cut->across, error);
}

static gboolean
read_cut (const RcCsvTable *table, RcNestProblem *problem, guint *n_cuts, GError **error)
{
  const char *label = rc_csv_table_get (table, COLUMN_LABEL);
  RcNestCut  *cut = rc_nest_cut_new (label, 0, 0, 0);

  g_ptr_array_add (problem->cuts, cut);
  if (*label == '\0')
    return rc_csv_table_fail (table, COLUMN_LABEL, error, _ ("the cut has no label"));
  if (!rc_csv_table_read_length (table, COLUMN_WIDTH, FALSE, &cut->width, error)
      || !rc_csv_table_read_length (table, COLUMN_LENGTH, FALSE, &cut->length, error)
      || !read_pattern (table, COLUMN_REPEAT, &cut->repeat, &cut->phase, &cut->match, error)
      || !read_pattern (table, COLUMN_ACROSS_REPEAT, &cut->across_repeat, &cut->across_phase, &cut->across_match, error)
      || !read_pins (table, cut, error)
      || !rc_csv_table_read_count (table, COLUMN_QUANTITY, MOST_CUTS, &cut->quantity, error))
    return FALSE;
  if ((*n_cuts += cut->quantity) > MOST_CUTS)
    return rc_csv_table_fail (table, COLUMN_QUANTITY, error, _ ("more than %d cuts in all"), MOST_CUTS);
  cut->group = dup_name (table, COLUMN_LOT);
  return TRUE;
}

gboolean
rc_cuts_csv_parse (const char *csv, const char *name, RcLengthUnit bare_unit, RcNestProblem *problem, GError **error)
{
  g_auto (RcCsvTable) table = { 0 };
  guint   n_before = problem->cuts->len, n_cuts = 0;
  GError *fault = NULL;

  if (!rc_csv_table_init (&table, csv, name, COLUMN_NAMES, N_COLUMNS, COLUMN_QUANTITY + 1, bare_unit, error))
    return FALSE;
  while (rc_csv_table_next (&table, &fault))
    if (!read_cut (&table, problem, &n_cuts, error))
      {
        g_ptr_array_set_size (problem->cuts, (gint)problem->cuts->len - 1);
        return FALSE;
      }
  if (fault != NULL)
    {
      g_propagate_error (error, fault);
      return FALSE;
    }
  if (problem->cuts->len == n_before)
    return rc_csv_table_fail (&table, -1, error, _ ("no cut follows the line that names the columns"));
  return TRUE;
}
