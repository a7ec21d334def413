#include "store-older.h"

#include "schema.h"

static void
run (sqlite3 *db, const char *sql)
{
  char *message = NULL;

  sqlite3_exec (db, sql, NULL, NULL, &message);
  g_assert_cmpstr (message, ==, NULL);
}

void
store_older_write (const char *path, int version)
{
  g_autofree char *name = g_strdup_printf ("store-version-%d.sql", version);
  g_autofree char *file = g_test_build_filename (G_TEST_DIST, name, NULL);
  g_autofree char *sql = NULL;
  sqlite3         *db = NULL;

  g_assert_true (g_file_get_contents (file, &sql, NULL, NULL));
  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  run (db, sql);
  sqlite3_close (db);
}

void
store_older_write_version_4 (const char *path)
{
  RcSchema schema;
  sqlite3 *db = NULL;

  rc_schema_init_current (&schema);
  store_older_write (path, 1);
  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  for (guint i = 0; i < 3; i++)
    run (db, schema.migrations[i]);
  run (db, "PRAGMA user_version = 4");
  sqlite3_close (db);
}
