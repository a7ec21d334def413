/* A store that is too large to be looked through each time it is opened: it opens at once, and damage in it is found by
 * the day's backup, which a thread makes. */
#include <glib/gstdio.h>
#include <string.h>

#include "rowcut-error.h"
#include "store-maker.h"
#include "store-private.h"

#define LARGE (17 << 20) /* all pages are checked up to 16 MB */

/* A store with jobs and a large file in it, closed properly. */
static char *
make_store (const char *folder)
{
  char *path = g_build_filename (folder, "shop.db", NULL);
  g_autoptr (RcStore) store = rc_store_maker_open (path);
  g_autoptr (GRand) rand = g_rand_new_with_seed (3);
  g_autoptr (GBytes) bytes = g_bytes_new_take (g_malloc0 (LARGE), LARGE);
  g_autofree char *digest = NULL;

  rc_store_maker_fill (store, rand);
  digest = rc_store_add_file (store, bytes, NULL);
  g_assert_nonnull (digest);
  return path;
}

/* Where the first page of the table's tree lies in the file. */
static long
find_page (const char *path, const char *table)
{
  g_autofree char *sql = g_strdup_printf ("SELECT rootpage FROM sqlite_schema WHERE name = '%s'", table);
  sqlite3         *db = NULL;
  sqlite3_stmt    *statement = NULL;
  long             at;

  g_assert_cmpint (sqlite3_open_v2 (path, &db, SQLITE_OPEN_READONLY, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_prepare_v2 (db, sql, -1, &statement, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_step (statement), ==, SQLITE_ROW);
  at = (long)(sqlite3_column_int64 (statement, 0) - 1) * 4096;
  sqlite3_finalize (statement);
  sqlite3_close (db);
  return at;
}

static void
damage (const char *path, long at)
{
  static const char rubbish[64] = "\xff\xff\xff\xff not a page of a tree";
  FILE             *file = g_fopen (path, "r+b");

  g_assert_cmpint (fseek (file, at, SEEK_SET), ==, 0);
  g_assert_cmpuint (fwrite (rubbish, 1, sizeof rubbish, file), ==, sizeof rubbish);
  fclose (file);
}

static void
test_damage (void)
{
  char            *folder = rc_store_maker_new_folder ();
  g_autofree char *path = make_store (folder), *report = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GError) check_error = NULL;
  g_autoptr (RcStore) store = rc_store_maker_open (path);

  g_assert_true (rc_store_back_up_daily (store, "2026-03-01", &error));
  g_clear_pointer (&store, rc_store_close);
  damage (path, find_page (path, "outline_points"));
  store = rc_store_maker_open (path);
  g_assert_false (rc_store_back_up_daily (store, "2026-03-02", &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
  if (strstr (error->message, "store check") == NULL)
    g_error ("“%s” does not say what to do", error->message);
  g_assert_false (rc_store_is_backed_up (path, "2026-03-02"));
  g_assert_true (rc_store_is_backed_up (path, "2026-03-01"));

  g_assert_false (rc_store_check (store, &report, &check_error));
  g_assert_no_error (check_error);
  g_test_message ("%s", report);
  g_assert_nonnull (strstr (report, "Job J-1")); /* its rooms have corners */
  g_assert_nonnull (strstr (report, "Pages: "));
  g_clear_pointer (&store, rc_store_close);
  rc_store_maker_remove_folder (rc_store_dup_backup_folder (path));
  rc_store_maker_remove_folder (folder);
}

/* What was not closed properly is looked through, whatever its size. */
static void
test_left_open (void)
{
  char            *folder = rc_store_maker_new_folder ();
  g_autofree char *path = make_store (folder), *log = g_strconcat (path, "-wal", NULL);
  g_autoptr (GError) error = NULL;

  damage (path, find_page (path, "outline_points"));
  g_assert_true (g_file_set_contents (log, "left over", -1, NULL));
  g_assert_null (rc_store_open (path, NULL, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
  g_assert_nonnull (strstr (error->message, "go on with the latest backup"));
  rc_store_maker_remove_folder (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store-large/damage-is-found-by-the-backup", test_damage);
  g_test_add_func ("/store-large/what-was-left-open-is-looked-through", test_left_open);
  return g_test_run ();
}
