#include "row-set.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MAX_COLUMNS 30

struct _RcRowSet
{
  gint64        job;
  GArray       *values[RC_N_TABLES]; /* of RcValue, row after row */
  GStringChunk *texts;               /* of what was read */
};

RcRowSet *
rc_row_set_new (gint64 job)
{
  RcRowSet *rows = g_new0 (RcRowSet, 1);

  rows->job = job;
  for (guint i = 0; i < RC_N_TABLES; i++)
    rows->values[i] = g_array_new (FALSE, FALSE, sizeof (RcValue));
  rows->texts = g_string_chunk_new (4096);
  return rows;
}

void
rc_row_set_free (RcRowSet *rows)
{
  if (rows == NULL)
    return;
  for (guint i = 0; i < RC_N_TABLES; i++)
    g_array_unref (rows->values[i]);
  g_string_chunk_free (rows->texts);
  g_free (rows);
}

void
rc_row_set_set_job (RcRowSet *rows, gint64 job)
{
  rows->job = job;
}

gint64
rc_row_set_get_job (const RcRowSet *rows)
{
  return rows->job;
}

void
rc_row_set_add (RcRowSet *rows, RcTableId table, const RcValue *values, guint n_values)
{
  g_assert (n_values == rc_row_table_get (table)->n_columns && n_values <= MAX_COLUMNS);
  g_array_append_vals (rows->values[table], values, n_values);
}

const char *
rc_row_set_keep (RcRowSet *rows, char *text)
{
  g_autofree char *taken = text;

  return taken != NULL ? g_string_chunk_insert (rows->texts, taken) : NULL;
}

guint
rc_row_set_get_n_rows (const RcRowSet *rows, RcTableId table)
{
  return rows->values[table]->len / rc_row_table_get (table)->n_columns;
}

const RcValue *
rc_row_set_get (const RcRowSet *rows, RcTableId table, guint row)
{
  return &g_array_index (rows->values[table], RcValue, row * rc_row_table_get (table)->n_columns);
}

static gboolean
read_table (RcRowSet *rows, RcStore *store, RcTableId table, gboolean by_key, GError **error)
{
  g_auto (RcQuery) query = { 0 };
  g_autofree char *sql = rc_row_table_dup_select (table, by_key);
  RcValue          job = rc_value_integer (rows->job);
  guint            n_columns = rc_row_table_get (table)->n_columns;

  if (!rc_query_start (&query, store, sql, &job, rc_row_table_is_of_job (table) ? 1 : 0, error))
    return FALSE;
  while (rc_query_next (&query, error))
    for (guint i = 0; i < n_columns; i++)
      {
        RcValue value = rc_query_get_value (&query, (int)i);

        if (value.kind == RC_VALUE_TEXT)
          value.text = g_string_chunk_insert_len (rows->texts, value.text, (gssize)value.size);
        g_array_append_val (rows->values[table], value);
      }
  return !query.failed;
}

gboolean
rc_row_set_read (RcRowSet *rows, RcStore *store, RcTableId first, RcTableId end, gboolean by_key, GError **error)
{
  for (RcTableId table = first; table < end; table++)
    if (!read_table (rows, store, table, by_key, error))
      return FALSE;
  return TRUE;
}

static int
compare_values (const RcValue *a, const RcValue *b, guint n_values)
{
  for (guint i = 0; i < n_values; i++)
    {
      int order = rc_value_compare (&a[i], &b[i]);

      if (order != 0)
        return order;
    }
  return 0;
}

static int
compare_keys (gconstpointer a, gconstpointer b, gpointer n_key)
{
  return compare_values (a, b, GPOINTER_TO_UINT (n_key));
}

/* "M1, hall, D2" */
static char *
format_key (const RcRowTable *table, const RcValue *row)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < table->n_key; i++)
    {
      g_autofree char *word = rc_value_format (&row[i]);

      g_string_append_printf (text, "%s%s", i == 0 ? "" : ", ", word);
    }
  return g_string_free (text, FALSE);
}

static gboolean
check_value (RcTableId table, const RcValue *row, guint column, const char *owner, GError **error)
{
  const RcValue   *value = &row[column];
  g_autofree char *key = NULL;
  g_auto (GStrv) names = NULL;

  if (!(column < rc_row_table_get (table)->n_key && value->kind == RC_VALUE_NULL)
      && !(value->kind == RC_VALUE_TEXT && !g_utf8_validate_len (value->text, value->size, NULL))
      && !(value->kind == RC_VALUE_REAL && !isfinite (value->real)))
    return TRUE;
  key = format_key (rc_row_table_get (table), row);
  names = g_strsplit (rc_row_table_get (table)->columns, ", ", -1);
  if (value->kind == RC_VALUE_NULL)
    g_set_error (error, RC_ERROR, RC_ERROR_STORE, _ ("%s: a %s (%s) has no %s; every one needs its own"), owner,
                 rc_row_table_get_label (table), key, names[column]);
  else if (value->kind == RC_VALUE_TEXT)
    g_set_error (error, RC_ERROR, RC_ERROR_STORE, _ ("%s: the %s of %s %s is not UTF-8 text"), owner, names[column],
                 rc_row_table_get_label (table), table == RC_TABLE_JOBS ? "" : key);
  else
    g_set_error (error, RC_ERROR, RC_ERROR_STORE, _ ("%s: the %s of %s %s is not a number"), owner, names[column],
                 rc_row_table_get_label (table), key);
  return FALSE;
}

static gboolean
prepare_table (RcRowSet *rows, RcTableId id, const char *owner, GError **error)
{
  const RcRowTable *table = rc_row_table_get (id);
  guint             n_rows = rc_row_set_get_n_rows (rows, id);

  for (guint i = 0; i < n_rows * table->n_columns; i++)
    if (!check_value (id, rc_row_set_get (rows, id, i / table->n_columns), i % table->n_columns, owner, error))
      return FALSE;
  if (n_rows > 1)
    g_qsort_with_data (rows->values[id]->data, (int)n_rows, table->n_columns * sizeof (RcValue), compare_keys,
                       GUINT_TO_POINTER (table->n_key));
  for (guint i = 1; i < n_rows; i++)
    if (compare_values (rc_row_set_get (rows, id, i - 1), rc_row_set_get (rows, id, i), table->n_key) == 0)
      {
        g_autofree char *key = format_key (table, rc_row_set_get (rows, id, i));

        g_set_error (error, RC_ERROR, RC_ERROR_STORE, _ ("%s: the %s %s stands twice; give one of them another id"),
                     owner, rc_row_table_get_label (id), key);
        return FALSE;
      }
  return TRUE;
}

gboolean
rc_row_set_prepare (RcRowSet *rows, RcTableId first, RcTableId end, const char *owner, GError **error)
{
  for (RcTableId table = first; table < end; table++)
    if (!prepare_table (rows, table, owner, error))
      return FALSE;
  return TRUE;
}

typedef enum
{
  ROW_INSERT,
  ROW_UPDATE,
  ROW_DELETE,
  N_ROW_CHANGES
} RowChange;

static char *
dup_sql (RcTableId table, RowChange change)
{
  if (change == ROW_INSERT)
    return rc_row_table_dup_insert (table);
  return change == ROW_UPDATE ? rc_row_table_dup_update (table) : rc_row_table_dup_delete (table);
}

/* Parameters in the order that row-table.h gives. */
static gboolean
change_row (const RcRowSet *rows, RcStore *store, RcTableId table, RowChange change, const char *sql,
            const RcValue *row, GError **error)
{
  const guint n_columns = rc_row_table_get (table)->n_columns, n_key = rc_row_table_get (table)->n_key;
  RcValue     values[MAX_COLUMNS + 1];
  guint       n = 0;

  for (guint i = n_key; change == ROW_UPDATE && i < n_columns; i++)
    values[n++] = row[i];
  if (rc_row_table_is_of_job (table))
    values[n++] = rc_value_integer (rows->job);
  for (guint i = 0; i < (change == ROW_INSERT ? n_columns : n_key); i++)
    values[n++] = row[i];
  return rc_query_run (store, sql, values, n, error);
}

/* Both sides are sorted by key: walks them side by side. */
static gboolean
merge_table (const RcRowSet *rows, const RcRowSet *stored, RcStore *store, RcTableId id, GError **error)
{
  const RcRowTable *table = rc_row_table_get (id);
  guint             n_new = rc_row_set_get_n_rows (rows, id), n_old = rc_row_set_get_n_rows (stored, id);
  char             *sql[N_ROW_CHANGES] = { NULL };
  gboolean          done = TRUE;

  for (guint i = 0, j = 0; done && (i < n_new || j < n_old);)
    {
      const RcValue *new_row = i < n_new ? rc_row_set_get (rows, id, i) : NULL;
      const RcValue *old_row = j < n_old ? rc_row_set_get (stored, id, j) : NULL;
      int       order = new_row == NULL ? 1 : old_row == NULL ? -1 : compare_values (new_row, old_row, table->n_key);
      RowChange change = order == 0 ? ROW_UPDATE : order < 0 ? ROW_INSERT : ROW_DELETE;
      const RcValue *row = order <= 0 ? new_row : old_row;

      i += order <= 0;
      j += order >= 0;
      if (order == 0 && compare_values (new_row, old_row, table->n_columns) == 0)
        continue;
      if (sql[change] == NULL)
        sql[change] = dup_sql (id, change);
      g_assert (row != NULL); /* of the side that the order names */
      done = change_row (rows, store, id, change, sql[change], row, error);
    }
  for (guint i = 0; i < N_ROW_CHANGES; i++)
    g_free (sql[i]);
  return done;
}

gboolean
rc_row_set_write (const RcRowSet *rows, RcStore *store, RcTableId first, RcTableId end, GError **error)
{
  g_autoptr (RcRowSet) stored = rc_row_set_new (rows->job);

  if (!rc_row_set_read (stored, store, first, end, TRUE, error))
    return FALSE;
  for (RcTableId table = first; table < end; table++)
    if (!merge_table (rows, stored, store, table, error))
      return FALSE;
  return TRUE;
}

void
rc_row_set_put (RcRowSet *rows, RcTableId id, guint row, guint column, RcValue value)
{
  guint n_columns = rc_row_table_get (id)->n_columns;

  g_array_index (rows->values[id], RcValue, row * n_columns + column) = value;
}

void
rc_row_set_drop_unknown (RcRowSet *rows, const RcRowSet *other, RcTableId id)
{
  const RcRowTable *table = rc_row_table_get (id);
  guint             n_other = rc_row_set_get_n_rows (other, id), j = 0;

  for (guint i = 0; i < rc_row_set_get_n_rows (rows, id);)
    {
      while (j < n_other
             && compare_values (rc_row_set_get (other, id, j), rc_row_set_get (rows, id, i), table->n_key) < 0)
        j++;
      if (j < n_other
          && compare_values (rc_row_set_get (other, id, j), rc_row_set_get (rows, id, i), table->n_key) == 0)
        i++;
      else
        g_array_remove_range (rows->values[id], i * table->n_columns, table->n_columns);
    }
}

static char *
describe_difference (RcTableId id, const RcValue *a, const RcValue *b)
{
  const RcRowTable *table = rc_row_table_get (id);
  g_autofree char  *key = format_key (table, a != NULL ? a : b);
  g_auto (GStrv) names = g_strsplit (table->columns, ", ", -1);
  g_autofree char *one = NULL, *other = NULL;
  guint            i = 0;

  if (a == NULL || b == NULL)
    return g_strdup_printf (_ ("%s %s: a row stands on one side only"), table->name, key);
  while (i < table->n_columns - 1 && rc_value_compare (&a[i], &b[i]) == 0)
    i++;
  one = rc_value_format (&a[i]);
  other = rc_value_format (&b[i]);
  return g_strdup_printf (_ ("%s %s: %s is “%s” on one side and “%s” on the other"), table->name, key, names[i], one,
                          other);
}

char *
rc_row_set_compare (const RcRowSet *a, const RcRowSet *b, RcTableId first, RcTableId end)
{
  for (RcTableId id = first; id < end; id++)
    {
      guint n_a = rc_row_set_get_n_rows (a, id), n_b = rc_row_set_get_n_rows (b, id);

      for (guint i = 0; i < MAX (n_a, n_b); i++)
        {
          const RcValue *row_a = i < n_a ? rc_row_set_get (a, id, i) : NULL;
          const RcValue *row_b = i < n_b ? rc_row_set_get (b, id, i) : NULL;

          if (row_a == NULL || row_b == NULL || compare_values (row_a, row_b, rc_row_table_get (id)->n_columns) != 0)
            return describe_difference (id, row_a, row_b);
        }
    }
  return NULL;
}
