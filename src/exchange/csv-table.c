#include "csv-table.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

gboolean
rc_csv_table_fail (const RcCsvTable *table, int column, GError **error, const char *format, ...)
{
  va_list          arguments;
  g_autofree char *text = NULL;

  va_start (arguments, format);
  text = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  if (column >= 0)
    g_set_error (error, RC_ERROR, RC_ERROR_FORMAT, _ ("%s, line %u, column %s: %s"), table->reader.name,
                 table->reader.line, table->columns[column], text);
  else
    g_set_error (error, RC_ERROR, RC_ERROR_FORMAT, _ ("%s, line %u: %s"), table->reader.name, table->reader.line, text);
  return FALSE;
}

static gboolean
is_blank (const GPtrArray *fields)
{
  return fields->len == 1 && *(const char *)fields->pdata[0] == '\0';
}

/* FALSE at the end and on a fault. */
static gboolean
read_row (RcCsvTable *table, GError **error)
{
  do
    {
      g_clear_pointer (&table->fields, g_ptr_array_unref);
      table->fields = rc_csv_reader_next (&table->reader, error);
      for (guint f = 0; table->fields != NULL && f < table->fields->len; f++)
        g_strstrip (table->fields->pdata[f]);
    }
  while (table->fields != NULL && is_blank (table->fields));
  return table->fields != NULL;
}

static gboolean
read_title (RcCsvTable *table, guint field, GError **error)
{
  const char *title = table->fields->pdata[field];
  guint       c = 0;

  while (c < table->n_columns && g_ascii_strcasecmp (title, table->columns[c]) != 0)
    c++;
  if (c == table->n_columns)
    {
      g_autoptr (GString) list = g_string_new (NULL);

      for (guint k = 0; k < table->n_columns; k++)
        g_string_append_printf (list, "%s%s", k > 0 ? ", " : "", table->columns[k]);
      return rc_csv_table_fail (table, -1, error, _ ("“%s” is no column of this table; there may be %s"), title,
                                list->str);
    }
  if (table->field_of[c] >= 0)
    return rc_csv_table_fail (table, (int)c, error, _ ("the column is there twice"));
  table->field_of[c] = (int)field;
  return TRUE;
}

gboolean
rc_csv_table_init (RcCsvTable *table, const char *csv, const char *name, const char *const *columns, guint n_columns,
                   guint n_needed, RcLengthUnit bare_unit, GError **error)
{
  GError *fault = NULL;

  g_return_val_if_fail (n_columns <= RC_CSV_MOST_COLUMNS, FALSE);
  *table = (RcCsvTable){ .columns = columns, .n_columns = n_columns, .bare_unit = bare_unit };
  for (guint c = 0; c < n_columns; c++)
    table->field_of[c] = -1;
  if (!rc_csv_reader_init (&table->reader, csv, name, error))
    return FALSE;
  if (!read_row (table, &fault) && fault != NULL)
    {
      g_propagate_error (error, fault);
      return FALSE;
    }
  table->n_titles = table->fields != NULL ? table->fields->len : 0;
  for (guint f = 0; f < table->n_titles; f++)
    if (!read_title (table, f, error))
      return FALSE;
  for (guint c = 0; c < n_needed; c++)
    if (table->field_of[c] < 0)
      {
        g_autoptr (GString) list = g_string_new (NULL);

        for (guint k = 0; k < n_needed; k++)
          g_string_append_printf (list, "%s%s", k > 0 ? "," : "", columns[k]);
        return rc_csv_table_fail (table, -1, error, _ ("the first line must name the columns %s; %s is missing"),
                                  list->str, columns[c]);
      }
  return TRUE;
}

void
rc_csv_table_clear (RcCsvTable *table)
{
  g_clear_pointer (&table->fields, g_ptr_array_unref);
}

gboolean
rc_csv_table_next (RcCsvTable *table, GError **error)
{
  if (!read_row (table, error))
    return FALSE;
  if (table->fields->len > table->n_titles)
    return rc_csv_table_fail (table, -1, error, _ ("%u fields, more than there are columns"), table->fields->len);
  return TRUE;
}

const char *
rc_csv_table_get (const RcCsvTable *table, guint column)
{
  int f = table->field_of[column];

  return f >= 0 && f < (int)table->fields->len ? table->fields->pdata[f] : "";
}

gboolean
rc_csv_table_read_length (const RcCsvTable *table, guint column, gboolean may_be_empty, RcLength *length,
                          GError **error)
{
  const char *text = rc_csv_table_get (table, column);
  g_autoptr (GError) why = NULL;

  if (*text == '\0' && may_be_empty)
    return TRUE;
  if (!rc_length_parse (text, table->bare_unit, length, &why))
    return rc_csv_table_fail (table, (int)column, error, "%s", why->message);
  if (*length <= 0 && !may_be_empty)
    return rc_csv_table_fail (table, (int)column, error, _ ("must be more than zero"));
  return TRUE;
}

gboolean
rc_csv_table_read_count (const RcCsvTable *table, guint column, guint most, guint *count, GError **error)
{
  const char *text = rc_csv_table_get (table, column);
  guint64     value = 0;

  if (!g_ascii_string_to_unsigned (text, 10, 1, most, &value, NULL))
    return rc_csv_table_fail (table, (int)column, error, _ ("“%s” is not a whole number from 1 to %u"), text, most);
  *count = (guint)value;
  return TRUE;
}
