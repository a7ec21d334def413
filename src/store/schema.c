#include "schema.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>

#include "rowcut-data.h"

#define DATA_PATH "/org/rowcut/Rowcut/data/"

G_STATIC_ASSERT (RC_SCHEMA_VERSION - 1 <= RC_SCHEMA_MAX_MIGRATIONS);

/* A file of data/, part of the program and ended by a nul. */
static const char *
get_sql (const char *name)
{
  g_autofree char *path = g_strconcat (DATA_PATH, name, NULL);
  g_autoptr (GBytes) bytes = NULL;

  rowcut_data_get_resource ();
  bytes = g_resources_lookup_data (path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  g_assert (bytes != NULL);
  return g_bytes_get_data (bytes, NULL);
}

void
rc_schema_init_current (RcSchema *schema)
{
  schema->version = RC_SCHEMA_VERSION;
  schema->sql = get_sql ("schema.sql");
  for (int from = 1; from < RC_SCHEMA_VERSION; from++)
    {
      g_autofree char *name = g_strdup_printf ("migrate-%d.sql", from);

      schema->migrations[from - 1] = get_sql (name);
    }
}

gboolean
rc_schema_get_integer (sqlite3 *db, const char *path, const char *sql, gint64 *number, GError **error)
{
  sqlite3_stmt *statement = NULL;
  int           code = sqlite3_prepare_v2 (db, sql, -1, &statement, NULL);

  if (code == SQLITE_OK)
    code = sqlite3_step (statement);
  if (code == SQLITE_ROW)
    *number = sqlite3_column_int64 (statement, 0);
  sqlite3_finalize (statement);
  return code == SQLITE_ROW || rc_store_fail_with (db, code, path, _ ("opening"), error);
}

/* Read by one statement, so that all three are of one moment: another program may be making the store just now. */
static gboolean
read_marks (sqlite3 *db, const char *path, gint64 *n_objects, gint64 *mark, gint64 *user_version, GError **error)
{
  sqlite3_stmt *statement = NULL;
  int           code = sqlite3_prepare_v2 (db,
                                           "SELECT (SELECT count (*) FROM sqlite_schema), application_id, user_version"
                                                     " FROM pragma_application_id, pragma_user_version",
                                           -1, &statement, NULL);

  if (code == SQLITE_OK)
    code = sqlite3_step (statement);
  if (code == SQLITE_ROW)
    {
      *n_objects = sqlite3_column_int64 (statement, 0);
      *mark = sqlite3_column_int64 (statement, 1);
      *user_version = sqlite3_column_int64 (statement, 2);
    }
  sqlite3_finalize (statement);
  return code == SQLITE_ROW || rc_store_fail_with (db, code, path, _ ("opening"), error);
}

gboolean
rc_schema_identify (sqlite3 *db, const char *path, const RcSchema *schema, int *version, GError **error)
{
  gint64 n_objects = 0, mark = 0, user_version = 0;

  if (!read_marks (db, path, &n_objects, &mark, &user_version, error))
    return FALSE;
  *version = 0;
  if (n_objects == 0 && mark == 0 && user_version == 0)
    return TRUE;
  if (mark != RC_SCHEMA_APPLICATION_ID)
    {
      g_set_error (
          error, RC_ERROR, RC_ERROR_STORE,
          _ ("%s is a database of another program, not a Rowcut store; nothing in it was touched. Name another "
             "file: a new store is made when there is none."),
          path);
      return FALSE;
    }
  if (user_version > schema->version)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_STORE,
                   _ ("%s was written by a newer Rowcut (store version %d; this program knows up to %d); nothing in it "
                      "was touched. Install the newer program to open it."),
                   path, (int)user_version, schema->version);
      return FALSE;
    }
  if (user_version < 1 || n_objects == 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_STORE,
                   _ ("%s is marked as a Rowcut store but has no version or no tables: it is damaged. Open a backup "
                      "instead."),
                   path);
      return FALSE;
    }
  *version = (int)user_version;
  return TRUE;
}

static int
create_within (sqlite3 *db, const RcSchema *schema)
{
  g_autofree char *marks = g_strdup_printf ("PRAGMA application_id = %d; PRAGMA user_version = %d;",
                                            RC_SCHEMA_APPLICATION_ID, schema->version);
  int              code = sqlite3_exec (db, schema->sql, NULL, NULL, NULL);

  if (code == SQLITE_OK)
    code = sqlite3_exec (db, marks, NULL, NULL, NULL);
  if (code == SQLITE_OK)
    code = sqlite3_exec (db, "COMMIT", NULL, NULL, NULL);
  return code;
}

gboolean
rc_schema_create (sqlite3 *db, const char *path, const RcSchema *schema, GError **error)
{
  int code = sqlite3_exec (db, "BEGIN IMMEDIATE", NULL, NULL, NULL);
  int version;

  if (code != SQLITE_OK)
    return rc_store_fail_with (db, code, path, _ ("making a new store"), error);
  if (!rc_schema_identify (db, path, schema, &version, error))
    {
      sqlite3_exec (db, "ROLLBACK", NULL, NULL, NULL);
      return FALSE;
    }
  if (version == 0)
    code = create_within (db, schema);
  else
    code = sqlite3_exec (db, "COMMIT", NULL, NULL, NULL);
  if (code == SQLITE_OK)
    return TRUE;
  rc_store_fail_with (db, code, path, _ ("making a new store"), error);
  if (!sqlite3_get_autocommit (db))
    sqlite3_exec (db, "ROLLBACK", NULL, NULL, NULL);
  return FALSE;
}

/* Columns with type and key, table options and foreign keys for tables; the text for indexes and triggers. */
#define DESCRIBE                                                                                                       \
  "SELECT m.type || ' ' || m.name || ' '"                                                                              \
  "  || CASE m.type WHEN 'table' THEN"                                                                                 \
  "    coalesce ((SELECT 'wr' || l.wr || ' strict' || l.strict FROM pragma_table_list (m.name) l"                      \
  "               WHERE l.schema = 'main'), '')"                                                                       \
  "    || coalesce ((SELECT group_concat (c.line, '') FROM (SELECT ', ' || name || ' ' || type || ' ' || \"notnull\""  \
  "                  || ' ' || pk || ' ' || coalesce (dflt_value, '') || ' ' || hidden AS line"                        \
  "                  FROM pragma_table_xinfo (m.name) ORDER BY name) c), '')"                                          \
  "    || coalesce ((SELECT group_concat (f.line, '') FROM (SELECT ' -> ' || \"table\" || ' ' || \"from\" || ' '"      \
  "                  || coalesce (\"to\", '') || ' ' || on_delete || ' ' || on_update AS line"                         \
  "                  FROM pragma_foreign_key_list (m.name) ORDER BY \"table\", \"from\") f), '')"                      \
  "  ELSE m.sql END"                                                                                                   \
  " FROM sqlite_schema m WHERE m.name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY m.type, m.name"

char *
rc_schema_describe (sqlite3 *db, const char *path, GError **error)
{
  g_autoptr (GString) text = g_string_new (NULL);
  sqlite3_stmt *statement = NULL;
  int           code = sqlite3_prepare_v2 (db, DESCRIBE, -1, &statement, NULL);

  while (code == SQLITE_OK || code == SQLITE_ROW)
    {
      code = sqlite3_step (statement);
      if (code == SQLITE_ROW)
        g_string_append_printf (text, "%s\n", (const char *)sqlite3_column_text (statement, 0));
    }
  sqlite3_finalize (statement);
  if (code != SQLITE_DONE)
    {
      rc_store_fail_with (db, code, path, _ ("reading the store's tables"), error);
      return NULL;
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static char *
describe_expected (const RcSchema *schema, GError **error)
{
  sqlite3 *db = NULL;
  char    *text = NULL;
  int      code = sqlite3_open_v2 (":memory:", &db, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, NULL);

  if (code == SQLITE_OK)
    code = sqlite3_exec (db, schema->sql, NULL, NULL, NULL);
  if (code == SQLITE_OK)
    text = rc_schema_describe (db, ":memory:", error);
  else
    rc_store_fail_with (db, code, ":memory:", _ ("reading the schema"), error);
  sqlite3_close (db);
  return text;
}

gboolean
rc_schema_check (sqlite3 *db, const char *path, const RcSchema *schema, GError **error)
{
  g_autofree char *expected = describe_expected (schema, error);
  g_autofree char *found = expected == NULL ? NULL : rc_schema_describe (db, path, error);
  g_auto (GStrv) expected_lines = NULL, found_lines = NULL;
  guint i = 0;

  if (found == NULL)
    return FALSE;
  if (g_str_equal (expected, found))
    return TRUE;
  expected_lines = g_strsplit (expected, "\n", -1);
  found_lines = g_strsplit (found, "\n", -1);
  while (g_strcmp0 (expected_lines[i], found_lines[i]) == 0)
    i++;
  g_set_error (error, RC_ERROR, RC_ERROR_STORE,
               _ ("%s: the tables are not those of store version %d; something else has changed them. Expected “%s”, "
                  "found “%s”. Open a backup instead."),
               path, schema->version, expected_lines[i] != NULL ? expected_lines[i] : "",
               found_lines[i] != NULL ? found_lines[i] : "");
  return FALSE;
}
