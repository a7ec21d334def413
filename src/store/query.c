#include "query.h"

#include <glib/gi18n-lib.h>

static sqlite3_stmt *
find_statement (RcStore *store, const char *sql, GError **error)
{
  sqlite3_stmt *statement = g_hash_table_lookup (store->statements, sql);

  if (statement != NULL)
    return statement;
  if (sqlite3_prepare_v3 (store->db, sql, -1, SQLITE_PREPARE_PERSISTENT, &statement, NULL) != SQLITE_OK)
    {
      rc_store_fail (store, _ ("reading the store's tables"), error);
      return NULL;
    }
  g_hash_table_insert (store->statements, g_strdup (sql), statement);
  return statement;
}

static int
bind (sqlite3_stmt *statement, int place, const RcValue *value)
{
  switch (value->kind)
    {
    case RC_VALUE_INTEGER:
      return sqlite3_bind_int64 (statement, place, value->integer);
    case RC_VALUE_REAL:
      return sqlite3_bind_double (statement, place, value->real);
    case RC_VALUE_TEXT:
      return sqlite3_bind_text64 (statement, place, value->text, value->size, SQLITE_TRANSIENT, SQLITE_UTF8);
    case RC_VALUE_BLOB:
      return sqlite3_bind_blob64 (statement, place, value->bytes, value->size, SQLITE_TRANSIENT);
    case RC_VALUE_NULL:
    default:
      return sqlite3_bind_null (statement, place);
    }
}

gboolean
rc_query_start (RcQuery *query, RcStore *store, const char *sql, const RcValue *values, guint n_values, GError **error)
{
  query->store = store;
  query->failed = FALSE;
  query->statement = find_statement (store, sql, error);
  if (query->statement == NULL)
    {
      query->failed = TRUE;
      return FALSE;
    }
  g_assert (!sqlite3_stmt_busy (query->statement));
  g_assert ((guint)sqlite3_bind_parameter_count (query->statement) == n_values);
  for (guint i = 0; i < n_values; i++)
    if (bind (query->statement, (int)i + 1, &values[i]) != SQLITE_OK)
      {
        query->failed = TRUE;
        return rc_store_fail (store, _ ("handing a value to the store"), error);
      }
  return TRUE;
}

/* A text that memory is too short for would otherwise be taken for none, and be lost when it is written back. */
static gboolean
has_texts (RcQuery *query)
{
  for (int i = 0; i < sqlite3_column_count (query->statement); i++)
    if (sqlite3_column_type (query->statement, i) == SQLITE_TEXT && sqlite3_column_text (query->statement, i) == NULL)
      return FALSE;
  return TRUE;
}

gboolean
rc_query_next (RcQuery *query, GError **error)
{
  int code = sqlite3_step (query->statement);

  if (code == SQLITE_ROW && has_texts (query))
    return TRUE;
  if (code != SQLITE_DONE)
    {
      query->failed = TRUE;
      rc_store_fail (query->store, sqlite3_stmt_readonly (query->statement) ? _ ("reading") : _ ("writing"), error);
    }
  return FALSE;
}

void
rc_query_clear (RcQuery *query)
{
  if (query->statement == NULL)
    return;
  sqlite3_reset (query->statement);
  sqlite3_clear_bindings (query->statement);
  query->statement = NULL;
}

gint64
rc_query_get_integer (const RcQuery *query, int column)
{
  return sqlite3_column_int64 (query->statement, column);
}

const char *
rc_query_get_text (const RcQuery *query, int column)
{
  return (const char *)sqlite3_column_text (query->statement, column);
}

char *
rc_query_dup_text (const RcQuery *query, int column)
{
  return g_strdup (rc_query_get_text (query, column));
}

RcValue
rc_query_get_value (const RcQuery *query, int column)
{
  const char *text;

  switch (sqlite3_column_type (query->statement, column))
    {
    case SQLITE_INTEGER:
      return rc_value_integer (sqlite3_column_int64 (query->statement, column));
    case SQLITE_FLOAT:
      return rc_value_real (sqlite3_column_double (query->statement, column));
    case SQLITE_TEXT:
      text = (const char *)sqlite3_column_text (query->statement, column);
      return (RcValue){ .kind = RC_VALUE_TEXT,
                        .text = text,
                        .size = (gsize)sqlite3_column_bytes (query->statement, column) };
    case SQLITE_BLOB:
      return rc_value_blob (sqlite3_column_blob (query->statement, column),
                            (gsize)sqlite3_column_bytes (query->statement, column));
    default:
      return (RcValue){ .kind = RC_VALUE_NULL };
    }
}

gboolean
rc_query_run (RcStore *store, const char *sql, const RcValue *values, guint n_values, GError **error)
{
  g_auto (RcQuery) query = { 0 };

  if (!rc_query_start (&query, store, sql, values, n_values, error))
    return FALSE;
  while (rc_query_next (&query, error))
    ;
  return !query.failed;
}

gboolean
rc_query_find_integer (RcStore *store, const char *sql, const RcValue *values, guint n_values, gint64 otherwise,
                       gint64 *found, GError **error)
{
  g_auto (RcQuery) query = { 0 };

  *found = otherwise;
  if (!rc_query_start (&query, store, sql, values, n_values, error))
    return FALSE;
  if (rc_query_next (&query, error) && sqlite3_column_type (query.statement, 0) != SQLITE_NULL)
    *found = rc_query_get_integer (&query, 0);
  return !query.failed;
}
