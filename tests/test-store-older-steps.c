/* Steps that an older program recorded of rows which it had not stored itself: they lacked the columns that had come
 * since, and SQLite's recording gives NULL there, where the columns must have a value. */
#include "row-table.h"
#include "store-maker.h"
#include "store-older.h"
#include "store-private.h"

typedef struct
{
  char    *folder, *path, *before;
  sqlite3 *db; /* the store of version 4 */
} Fixture;

static char *
dup_dump (RcStore *store, const char *job_id)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcJob) job = rc_store_load_job (store, job_id, &error);

  g_assert_no_error (error);
  return rc_store_maker_dump_job (job);
}

static void
set_up (Fixture *fixture, gconstpointer job_id)
{
  g_autofree char *untouched = NULL;
  g_autoptr (RcStore) store = NULL;

  fixture->folder = rc_store_maker_new_folder ();
  fixture->path = g_build_filename (fixture->folder, "shop.db", NULL);
  untouched = g_build_filename (fixture->folder, "untouched.db", NULL);
  store_older_write_version_4 (untouched);
  store = rc_store_maker_open (untouched);
  fixture->before = dup_dump (store, job_id);
  store_older_write_version_4 (fixture->path);
  g_assert_cmpint (sqlite3_open (fixture->path, &fixture->db), ==, SQLITE_OK);
}

static void
tear_down (Fixture *fixture, gconstpointer job_id)
{
  rc_store_maker_remove_folder (fixture->folder);
  g_free (fixture->path);
  g_free (fixture->before);
}

static void
run (sqlite3 *db, const char *format, const char *word)
{
  char *sql = sqlite3_mprintf (format, word);

  g_assert_cmpint (sqlite3_exec (db, sql, NULL, NULL, NULL), ==, SQLITE_OK);
  sqlite3_free (sql);
}

/* As the program of version 4 kept a step: what the SQL does to the job's tables, as the job's latest. */
static void
record_step (Fixture *fixture, const char *job_id, const char *sql, gboolean deletes)
{
  const char *insert = "INSERT INTO steps (job_id, number, name, made, deletes, changeset) SELECT ?1, count (*) + 1,"
                       " 'Edit', '2025-01-01T00:00:00Z', ?2, ?3 FROM steps WHERE job_id = ?1";
  sqlite3_session *session = NULL;
  sqlite3_stmt    *statement = NULL;
  void            *changeset = NULL;
  int              size = 0;

  g_assert_cmpint (sqlite3session_create (fixture->db, "main", &session), ==, SQLITE_OK);
  for (RcTableId table = 0; table < RC_N_JOB_TABLES; table++)
    g_assert_cmpint (sqlite3session_attach (session, rc_row_table_get (table)->name), ==, SQLITE_OK);
  run (fixture->db, sql, job_id);
  g_assert_cmpint (sqlite3session_changeset (session, &size, &changeset), ==, SQLITE_OK);
  sqlite3session_delete (session);
  g_assert_cmpint (size, >, 0);

  run (fixture->db, "DELETE FROM steps WHERE job_id = %Q AND undone = 1", job_id);
  g_assert_cmpint (sqlite3_prepare_v2 (fixture->db, insert, -1, &statement, NULL), ==, SQLITE_OK);
  sqlite3_bind_text (statement, 1, job_id, -1, SQLITE_STATIC);
  sqlite3_bind_int (statement, 2, deletes);
  sqlite3_bind_blob (statement, 3, changeset, size, SQLITE_STATIC);
  g_assert_cmpint (sqlite3_step (statement), ==, SQLITE_DONE);
  sqlite3_finalize (statement);
  sqlite3_free (changeset);
}

/* Today's program, which brings the store up. */
static RcStore *
open_today (Fixture *fixture)
{
  RcStore *store;

  sqlite3_close (fixture->db);
  store = rc_store_maker_open (fixture->path);
  rc_store_maker_assert_sound (store);
  return store;
}

static void
test_edits (Fixture *fixture, gconstpointer job_id)
{
  static const char *const edits[] = {
    "UPDATE stairs SET name = name || '!' WHERE job = (SELECT job FROM jobs WHERE id = %Q)",
    "DELETE FROM job_rolls WHERE job = (SELECT job FROM jobs WHERE id = %Q)",
    "UPDATE job_goods SET name = name || '!' WHERE job = (SELECT job FROM jobs WHERE id = %Q)",
    "DELETE FROM stairs WHERE job = (SELECT job FROM jobs WHERE id = %Q)",
  };
  g_autofree char *after = NULL;
  g_autoptr (RcStore) store = NULL;
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (edits); i++)
    record_step (fixture, job_id, edits[i], FALSE);
  store = open_today (fixture);
  after = dup_dump (store, job_id);
  g_assert_cmpstr (after, !=, fixture->before);
  for (guint turn = 0; turn < 2; turn++)
    {
      for (guint i = 0; i < G_N_ELEMENTS (edits); i++)
        g_assert_true (rc_store_undo (store, job_id, NULL, &error));
      rc_store_maker_assert_stored (store, job_id, fixture->before);
      rc_store_maker_assert_sound (store);
      for (guint i = 0; i < G_N_ELEMENTS (edits); i++)
        g_assert_true (rc_store_redo (store, job_id, NULL, &error));
      rc_store_maker_assert_stored (store, job_id, after);
      rc_store_maker_assert_sound (store);
    }
}

static void
test_deletion (Fixture *fixture, gconstpointer job_id)
{
  g_autoptr (GString) sql = g_string_new ("DELETE FROM search WHERE rowid = (SELECT job FROM jobs WHERE id = %Q);"
                                          "DELETE FROM revisions WHERE job = (SELECT job FROM jobs WHERE id = 'J-1');");
  g_autoptr (RcStore) store = NULL;
  g_autoptr (GError) error = NULL;

  /* Tables whose rows are pointed at come before those that point. */
  for (RcTableId table = RC_N_JOB_TABLES; table-- > 0;)
    if (table != RC_TABLE_STAIR_TURNS) /* of version 5 */
      g_string_append_printf (sql, "DELETE FROM %s WHERE job = (SELECT job FROM jobs WHERE id = 'J-1');",
                              rc_row_table_get (table)->name);
  record_step (fixture, job_id, sql->str, TRUE);
  store = open_today (fixture);
  g_assert_null (rc_store_load_job (store, job_id, NULL));
  g_assert_true (rc_store_undo (store, job_id, NULL, &error));
  g_assert_no_error (error);
  rc_store_maker_assert_stored (store, job_id, fixture->before);
  rc_store_maker_assert_sound (store);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/store-older-steps/edits-go-back-and-forth", Fixture, "J-1", set_up, test_edits, tear_down);
  g_test_add ("/store-older-steps/a-job-deleted-comes-back", Fixture, "J-1", set_up, test_deletion, tear_down);
  return g_test_run ();
}
