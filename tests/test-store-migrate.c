/* How an older store is brought up to date: one of version 1 as it was written then, and made-up later versions. */
#include <glib/gstdio.h>
#include <string.h>

#include "schema.h"
#include "store-maker.h"
#include "store-older.h"

typedef struct
{
  char    *folder, *path;
  RcStore *store;
  GRand   *rand;
} Fixture;

/* A store with jobs, steps, a deleted job, prices and quotations. */
static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->folder = rc_store_maker_new_folder ();
  fixture->path = g_build_filename (fixture->folder, "shop.db", NULL);
  fixture->rand = g_rand_new_with_seed ((guint32)g_test_rand_int ());
  fixture->store = rc_store_maker_open (fixture->path);
  rc_store_maker_fill (fixture->store, fixture->rand);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  rc_store_close (fixture->store);
  rc_store_maker_remove_folder (fixture->folder);
  g_free (fixture->path);
  g_rand_free (fixture->rand);
}

static gint64
find_number (RcStore *store, const char *sql)
{
  gint64 number = -1;

  g_assert_true (rc_schema_get_integer (store->db, store->path, sql, &number, NULL));
  return number;
}

static sqlite3 *
open_database (const char *path)
{
  sqlite3 *db = NULL;

  g_assert_cmpint (sqlite3_open_v2 (path, &db, SQLITE_OPEN_READONLY, NULL), ==, SQLITE_OK);
  return db;
}

/* Every row of a table, in the columns named, as SQL would write it. */
static void
append_rows (GString *text, sqlite3 *db, const char *table, const char *columns)
{
  g_auto (GStrv) names = g_strsplit (columns, ",", -1);
  g_autofree char *quoted = g_strjoinv (") || ',' || quote (", names);
  g_autofree char *sql = g_strdup_printf ("SELECT quote (%s) AS line FROM %s ORDER BY line", quoted, table);
  sqlite3_stmt    *statement = NULL;
  int              code;

  g_assert_cmpint (sqlite3_prepare_v2 (db, sql, -1, &statement, NULL), ==, SQLITE_OK);
  while ((code = sqlite3_step (statement)) == SQLITE_ROW)
    g_string_append_printf (text, "%s: %s\n", table, (const char *)sqlite3_column_text (statement, 0));
  g_assert_cmpint (code, ==, SQLITE_DONE);
  sqlite3_finalize (statement);
}

/* The rows of all tables of `model`, in its columns, as they are found in `db`; but for pictures, which have moved. */
static char *
dup_rows (sqlite3 *model, sqlite3 *db)
{
  GString      *text = g_string_new (NULL);
  sqlite3_stmt *statement = NULL;

  g_assert_cmpint (
      sqlite3_prepare_v2 (model,
                          "SELECT m.name, (SELECT group_concat (name) FROM pragma_table_info (m.name))"
                          " FROM sqlite_schema m WHERE m.type = 'table' AND m.name <> 'pictures' ORDER BY m.name",
                          -1, &statement, NULL),
      ==, SQLITE_OK);
  while (sqlite3_step (statement) == SQLITE_ROW)
    append_rows (text, db, (const char *)sqlite3_column_text (statement, 0),
                 (const char *)sqlite3_column_text (statement, 1));
  sqlite3_finalize (statement);
  return g_string_free (text, FALSE);
}

static void
test_older_version_loses_nothing (Fixture *fixture, gconstpointer data)
{
  int              version = GPOINTER_TO_INT (data);
  g_autofree char *path = g_build_filename (fixture->folder, "old.db", NULL);
  g_autofree char *backup = g_strdup_printf ("%s.version-%d.backup", path, version);
  g_autofree char *found = NULL, *fresh = NULL, *before = NULL, *backed_up = NULL, *after = NULL, *dump = NULL;
  g_autoptr (RcJob) job = NULL;
  g_autoptr (RcStore) store = NULL;
  g_autoptr (RcStore) newest = rc_store_maker_open (":memory:");
  sqlite3 *old, *kept;

  store_older_write (path, version);
  old = open_database (path);
  before = dup_rows (old, old);
  g_assert_nonnull (strstr (before, "issued_lines: 'Q-2'"));
  sqlite3_close (old);
  store = rc_store_maker_open (path);
  g_assert_cmpint (find_number (store, "PRAGMA user_version"), ==, RC_SCHEMA_VERSION);

  /* Its tables are those of a store made today. */
  found = rc_schema_describe (store->db, path, NULL);
  fresh = rc_schema_describe (newest->db, ":memory:", NULL);
  g_assert_cmpstr (found, ==, fresh);

  /* The backup is the old store; every row of it is in the new one. */
  kept = open_database (backup);
  backed_up = dup_rows (kept, kept);
  g_assert_cmpstr (backed_up, ==, before);
  after = dup_rows (kept, store->db);
  g_assert_cmpstr (after, ==, before);
  sqlite3_close (kept);
  rc_store_maker_assert_sound (store);

  /* What is deleted now comes back as it was, in the columns too that its rows did not have. */
  job = rc_store_load_job (store, "J-1", NULL);
  dump = rc_store_maker_dump_job (job);
  g_assert_true (rc_store_delete_job (store, "J-1", NULL));
  g_assert_true (rc_store_undo (store, "J-1", NULL, NULL));
  rc_store_maker_assert_stored (store, "J-1", dump);
}

/* Plan pictures, which were kept beside the jobs, are of their jobs. */
static void
test_pictures_move (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, "old.db", NULL);
  g_autoptr (RcStore) store = NULL;
  g_autoptr (RcJob) job = NULL;
  g_autoptr (GError) error = NULL;
  sqlite3 *old = NULL;

  store_older_write (path, 2);
  g_assert_cmpint (sqlite3_open (path, &old), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (old,
                                 "INSERT INTO files VALUES ('d1', x'00');"
                                 "INSERT INTO pictures VALUES ('J-1', 1, 'plan.png', 'd1', 2, -5, 7, 9000, -1500, 50);"
                                 "INSERT INTO pictures VALUES ('gone', 0, 'plan.png', 'd1', 1, 0, 0, 9000, 0, 100);",
                                 NULL, NULL, NULL),
                   ==, SQLITE_OK);
  sqlite3_close (old);
  store = rc_store_maker_open (path);
  job = rc_store_load_job (store, "J-1", &error);
  g_assert_no_error (error);
  g_assert_cmpuint (job->pictures->len, ==, 1);
  const RcPlanPicture *picture = rc_job_find_picture (job, 1);
  g_assert_cmpstr (picture->digest, ==, "d1");
  g_assert_cmpuint (picture->page, ==, 2);
  g_assert_cmpint (picture->at.x, ==, -5);
  g_assert_cmpint (picture->turn_millidegrees, ==, -1500);
  rc_store_maker_assert_sound (store);
}

/* A seam that an area held by two columns is read as a pin, and so it is stored with the next step; undone, it is held
 * by the columns again, and read as the same pin. */
static void
test_seam_line_is_a_pin (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, "old.db", NULL);
  g_autofree char *dump = NULL;
  g_autoptr (RcStore) store = NULL;
  g_autoptr (RcJob) job = NULL;
  g_autoptr (GError) error = NULL;
  const char *held = "SELECT count (*) FROM areas WHERE seam_line_pinned = 1";
  sqlite3    *old = NULL;

  store_older_write (path, 2);
  g_assert_cmpint (sqlite3_open (path, &old), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (old,
                                 "UPDATE areas SET seam_line_pinned = 1, seam_line_ticks = 100000, pile_degrees = 270"
                                 " WHERE (job, measure, position) IN (SELECT job, min (measure), 0 FROM areas WHERE job"
                                 " = (SELECT job FROM jobs WHERE id = 'J-1'))",
                                 NULL, NULL, NULL),
                   ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_changes (old), ==, 1);
  sqlite3_close (old);
  store = rc_store_maker_open (path);
  job = rc_store_load_job (store, "J-1", &error);
  g_assert_no_error (error);
  const RcFloorArea *area = ((RcMeasure *)job->measures->pdata[0])->areas->pdata[0];
  g_assert_cmpuint (area->pins->len, ==, 1);
  g_assert_cmpint (((RcPin *)area->pins->pdata[0])->kind, ==, RC_PIN_SEAM);
  dump = rc_store_maker_dump_job (job);
  rc_store_maker_assert_sound (store);

  g_free (job->title);
  job->title = g_strdup ("Once more");
  g_assert_true (rc_store_save_job (store, job, "Title", "2026-01-01T00:00:00Z", &error));
  g_assert_cmpint (find_number (store, held), ==, 0);
  rc_store_maker_assert_sound (store);
  g_assert_true (rc_store_undo (store, "J-1", NULL, &error));
  g_assert_no_error (error);
  g_assert_cmpint (find_number (store, held), ==, 1);
  rc_store_maker_assert_stored (store, "J-1", dump);
  rc_store_maker_assert_sound (store);
}

/* The steps that version 1 recorded go all the way back and forth, and the job deleted then comes back. */
static void
test_version_1_steps (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, "old.db", NULL);
  g_autofree char *dump = NULL;
  g_autoptr (RcStore) store = NULL;
  g_autoptr (RcJob) job = NULL;
  g_autoptr (RcJob) first = NULL;
  g_autoptr (RcJob) last = NULL;
  g_autoptr (GError) error = NULL;
  guint n_undone = 0, n_redone = 0;

  store_older_write (path, 1);
  store = rc_store_maker_open (path);
  job = rc_store_load_job (store, "J-1", &error);
  g_assert_no_error (error);
  dump = rc_store_maker_dump_job (job);
  g_assert_cmpstr (job->title, ==, "Gull Cottage, all floors");
  while (rc_store_undo (store, "J-1", NULL, &error))
    n_undone++;
  g_assert_no_error (error);
  g_assert_cmpuint (n_undone, ==, 4);
  first = rc_store_load_job (store, "J-1", &error);
  g_assert_cmpstr (first->title, ==, "Gull Cottage, ground floor");
  g_assert_cmpuint (first->measures->len, ==, 2);
  while (rc_store_redo (store, "J-1", NULL, &error))
    n_redone++;
  g_assert_no_error (error);
  g_assert_cmpuint (n_redone, ==, 6);
  last = rc_store_load_job (store, "J-1", &error);
  g_assert_cmpuint (last->measures->len, ==, 3);
  for (guint i = 0; i < 2; i++)
    g_assert_true (rc_store_undo (store, "J-1", NULL, &error));
  rc_store_maker_assert_stored (store, "J-1", dump);
  g_assert_true (rc_store_undo (store, "J-2", NULL, &error));
  g_assert_true (rc_store_undo (store, "J-2", NULL, &error));
  g_assert_no_error (error);
  rc_store_maker_assert_sound (store);
}

/* The steps that version 2 recorded, and what an order, a roll and a remnant were then. */
static void
test_version_2_steps (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, "old.db", NULL);
  g_autofree char *title = NULL;
  g_autoptr (RcStore) store = NULL;
  g_autoptr (RcJob) job = NULL;
  g_autoptr (RcJob) before = NULL;
  g_autoptr (GError) error = NULL;

  store_older_write (path, 2);
  store = rc_store_maker_open (path);
  job = rc_store_load_job (store, "J-1", &error);
  g_assert_no_error (error);
  g_assert_cmpstr (job->title, ==, "Gull Cottage, all floors");
  g_assert_true (rc_store_undo (store, "J-1", &title, &error));
  before = rc_store_load_job (store, "J-1", &error);
  g_assert_no_error (error);
  g_assert_cmpstr (before->title, ==, "Gull Cottage, ground floor");
  g_assert_true (rc_store_redo (store, "J-1", NULL, &error));
  g_assert_true (rc_store_redo (store, "J-2", NULL, &error));
  g_assert_true (rc_store_undo (store, "J-3", NULL, &error));
  g_assert_no_error (error);
  g_assert_cmpint (find_number (store, "SELECT count (*) FROM orders"), ==, 3);
  g_assert_cmpint (find_number (store, "SELECT count (*) FROM quotation_events WHERE state = 'accepted'"), ==, 1);
  rc_store_maker_assert_sound (store);
}

static const RcStair *
get_stair (const RcJob *job, guint index)
{
  return g_ptr_array_index (rc_job_get_measure (job, NULL)->stairs, index);
}

/* Version 4 kept the only turn of a stair in the stair's row: winders since its last step, a landing before it, none at
 * first beside figures of what it might be. Another turn and another kind are saved, and all of it goes back and forth.
 */
static void
test_turns_of_version_4 (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, "old.db", NULL);
  g_autofree char *dump = NULL;
  g_autoptr (RcStore) store = NULL;
  g_autoptr (RcJob) job = NULL;
  g_autoptr (RcJob) before = NULL;
  g_autoptr (RcJob) first = NULL;
  g_autoptr (GError) error = NULL;
  RcStairTurn winders = { RC_TURN_WINDERS, RC_BEND_BACK_RIGHT, 5, 6, 30 * RC_TICKS_PER_INCH, 44 * RC_TICKS_PER_INCH };
  RcStairTurn landing = { RC_TURN_LANDING, RC_BEND_RIGHT, 6, 3, 36 * RC_TICKS_PER_INCH, 48 * RC_TICKS_PER_INCH };
  RcStairTurn more = { RC_TURN_LANDING, RC_BEND_AHEAD, 4, 0, 36 * RC_TICKS_PER_INCH, 40 * RC_TICKS_PER_INCH };

  store_older_write (path, 4);
  store = rc_store_maker_open (path);
  job = rc_store_load_job (store, "J-9", &error);
  g_assert_no_error (error);
  g_assert_cmpuint (get_stair (job, 0)->turns->len, ==, 1);
  g_assert_cmpmem (get_stair (job, 0)->turns->data, sizeof winders, &winders, sizeof winders);
  g_assert_cmpuint (get_stair (job, 1)->turns->len, ==, 0);
  rc_store_maker_assert_sound (store);

  g_array_append_val (get_stair (job, 0)->turns, more);
  g_assert_true (rc_store_save_job (store, job, "Add a turn", NOW, &error));
  dump = rc_store_maker_dump_job (job);
  rc_store_maker_assert_stored (store, "J-9", dump);
  g_assert_cmpint (find_number (store, "SELECT count (*) FROM stair_turns"), ==, 2);
  rc_store_maker_assert_sound (store);

  g_assert_true (rc_store_undo (store, "J-9", NULL, &error));
  g_assert_true (rc_store_undo (store, "J-9", NULL, &error));
  before = rc_store_load_job (store, "J-9", &error);
  g_assert_no_error (error);
  g_assert_cmpmem (get_stair (before, 0)->turns->data, sizeof landing, &landing, sizeof landing);
  rc_store_maker_assert_sound (store);
  g_assert_true (rc_store_undo (store, "J-9", NULL, &error));
  first = rc_store_load_job (store, "J-9", &error);
  g_assert_no_error (error);
  g_assert_cmpuint (get_stair (first, 0)->turns->len, ==, 0);
  for (guint i = 0; i < 3; i++)
    g_assert_true (rc_store_redo (store, "J-9", NULL, &error));
  rc_store_maker_assert_stored (store, "J-9", dump);
  rc_store_maker_assert_sound (store);
}

/* Version 5 wrote for itself, in its reader's language, what a remnant is of; suppliers had no language. A step of it
 * that added a turn goes back and forth. */
static void
test_stock_of_version_5 (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, "old.db", NULL);
  g_autoptr (RcStore) store = NULL;
  g_autoptr (RcPriceBook) book = NULL;
  g_autoptr (GPtrArray) moves = NULL;
  g_autoptr (RcJob) before = NULL;
  g_autoptr (RcJob) after = NULL;
  g_autoptr (GError) error = NULL;

  store_older_write (path, 5);
  store = rc_store_maker_open (path);
  moves = rc_store_find_moves (store, "R-2", &error);
  g_assert_no_error (error);
  g_assert_cmpuint (moves->len, ==, 1);
  g_assert_cmpstr (((const RcRollMove *)moves->pdata[0])->notes, ==, "remnant of roll R-9");

  book = rc_store_load_price_book (store, &error);
  g_assert_no_error (error);
  g_assert_cmpint (rc_price_book_find_supplier (book, "Skerrow Mills")->freight_free_from, ==, 90000);
  ((RcSupplier *)book->suppliers->pdata[1])->language = g_strdup ("es");
  g_assert_true (rc_store_save_price_book (store, book, &error));
  g_clear_pointer (&book, rc_price_book_free);
  book = rc_store_load_price_book (store, &error);
  g_assert_null (rc_price_book_get_language (book, "Skerrow Mills"));
  g_assert_cmpstr (rc_price_book_get_language (book, "Tolland Vale Carpets"), ==, "es");

  g_assert_true (rc_store_undo (store, "J-9", NULL, &error));
  before = rc_store_load_job (store, "J-9", &error);
  g_assert_cmpuint (get_stair (before, 0)->turns->len, ==, 1);
  g_assert_true (rc_store_redo (store, "J-9", NULL, &error));
  after = rc_store_load_job (store, "J-9", &error);
  g_assert_cmpuint (get_stair (after, 0)->turns->len, ==, 2);
  rc_store_maker_assert_sound (store);
}

/* Two versions later: a column more in two tables, and a table more. */
static const char *const two_steps[] = {
  "ALTER TABLE jobs ADD COLUMN colour TEXT; ALTER TABLE walls ADD COLUMN height_ticks INTEGER NOT NULL DEFAULT 7;"
  " UPDATE jobs SET colour = 'of ' || id",
  "CREATE TABLE visits (job INTEGER NOT NULL REFERENCES jobs, day TEXT NOT NULL, PRIMARY KEY (job, day)) STRICT,"
  " WITHOUT ROWID; INSERT INTO visits SELECT job, '2025-01-01' FROM jobs",
};

static char *
dup_later_sql (void)
{
  RcSchema current;
  g_autoptr (GString) sql = NULL;

  rc_schema_init_current (&current);
  sql = g_string_new (current.sql);
  g_assert_cmpuint (g_string_replace (sql, "  opened TEXT,\n", "  opened TEXT,\n  colour TEXT,\n", 1), ==, 1);
  g_assert_cmpuint (g_string_replace (sql, "  bow_ticks INTEGER NOT NULL,\n",
                                      "  bow_ticks INTEGER NOT NULL,\n  height_ticks INTEGER NOT NULL DEFAULT 7,\n", 1),
                    ==, 1);
  g_string_append (sql, "CREATE TABLE visits (job INTEGER NOT NULL REFERENCES jobs, day TEXT NOT NULL,"
                        " PRIMARY KEY (job, day)) STRICT, WITHOUT ROWID;");
  return g_string_free (g_steal_pointer (&sql), FALSE);
}

static void
test_migration (Fixture *fixture, gconstpointer data)
{
  g_autofree char *sql = dup_later_sql (), *title = NULL, *dump = NULL;
  g_autofree char *backup = g_strdup_printf ("%s.version-%d.backup", fixture->path, RC_SCHEMA_VERSION);
  RcSchema         later = { .version = RC_SCHEMA_VERSION + 2, .sql = sql };
  g_autoptr (RcStore) backed_up = NULL;
  g_autoptr (RcJob) job = rc_store_load_job (fixture->store, "J-1", NULL);
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (two_steps); i++)
    later.migrations[RC_SCHEMA_VERSION - 1 + i] = two_steps[i];
  dump = rc_store_maker_dump_job (job);
  rc_store_close (fixture->store);
  fixture->store = rc_store_open_schema (fixture->path, &later, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpint (find_number (fixture->store, "PRAGMA user_version"), ==, later.version);
  g_assert_cmpint (find_number (fixture->store, "SELECT count (*) FROM visits"), ==, 2);
  g_assert_cmpint (find_number (fixture->store, "SELECT count (*) FROM jobs WHERE colour = 'of J-1'"), ==, 1);
  g_assert_cmpint (find_number (fixture->store, "PRAGMA foreign_keys"), ==, 1);
  rc_store_maker_assert_stored (fixture->store, "J-1", dump);

  /* Steps taken before still go back, and jobs deleted before come back. */
  g_assert_true (rc_store_undo (fixture->store, "J-1", &title, &error));
  g_assert_true (rc_store_redo (fixture->store, "J-1", NULL, &error));
  g_assert_true (rc_store_undo (fixture->store, "J-3", NULL, &error));
  g_assert_no_error (error);
  rc_store_maker_assert_stored (fixture->store, "J-1", dump);

  backed_up = rc_store_maker_open (backup);
  rc_store_maker_assert_stored (backed_up, "J-1", dump);
  rc_store_maker_assert_sound (backed_up);

  /* The same store again: nothing to do. */
  rc_store_close (fixture->store);
  fixture->store = rc_store_open_schema (fixture->path, &later, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpint (find_number (fixture->store, "SELECT count (*) FROM visits"), ==, 2);
}

/* How many files beside the store have "version-" in their name. */
static guint
count_backups (Fixture *fixture)
{
  g_autoptr (GDir) dir = g_dir_open (fixture->folder, 0, NULL);
  const char *name;
  guint       n = 0;

  while ((name = g_dir_read_name (dir)) != NULL)
    n += strstr (name, "version-") != NULL;
  return n;
}

/* Each of these fails somewhere; the store stays what it was, with one backup of it beside it, however often it is
 * tried; once the store has changed, with one more. */
static void
test_failing_migrations (Fixture *fixture, gconstpointer data)
{
  static const char *const failing[] = {
    "CREATE TABLE visits (job); SELECT no_such_function ()", "DELETE FROM rooms", /* leaves walls without a room */
    "ALTER TABLE jobs ADD COLUMN b", /* not what the new version looks like */
    NULL,                            /* no way on */
  };
  g_autofree char *backup = g_strdup_printf ("%s.version-%d.backup", fixture->path, RC_SCHEMA_VERSION);
  g_autofree char *second = g_strdup_printf ("%s.version-%d-2.backup", fixture->path, RC_SCHEMA_VERSION);
  g_autofree char *first_dump = NULL, *dump = NULL;
  g_autoptr (RcJob) job = rc_store_load_job (fixture->store, "J-1", NULL);
  g_autoptr (RcStore) kept = NULL;
  g_autoptr (RcStore) kept_later = NULL;
  RcSchema current;

  rc_schema_init_current (&current);
  first_dump = rc_store_maker_dump_job (job);
  for (guint i = 0; i < 3 * G_N_ELEMENTS (failing); i++)
    {
      RcSchema later = { .version = RC_SCHEMA_VERSION + 1, .sql = current.sql };
      g_autoptr (GError) error = NULL;

      if (i == 2 * G_N_ELEMENTS (failing))
        {
          rc_job_free (job);
          job = rc_store_load_job (fixture->store, "J-1", NULL);
          g_free (job->title);
          job->title = g_strdup ("Once more"); /* an edit by chance may change nothing */
          g_assert_true (rc_store_save_job (fixture->store, job, "Edit", NOW, NULL));
          dump = rc_store_maker_dump_job (job);
        }
      g_clear_pointer (&fixture->store, rc_store_close);
      later.migrations[RC_SCHEMA_VERSION - 1] = failing[i % G_N_ELEMENTS (failing)];
      g_assert_null (rc_store_open_schema (fixture->path, &later, NULL, &error));
      g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
      g_assert_cmpuint (count_backups (fixture), ==, i < 2 * G_N_ELEMENTS (failing) ? 1 : 2);
      fixture->store = rc_store_maker_open (fixture->path);
      rc_store_maker_assert_sound (fixture->store);
    }
  rc_store_maker_assert_stored (fixture->store, "J-1", dump);
  kept = rc_store_maker_open (backup);
  rc_store_maker_assert_stored (kept, "J-1", first_dump);
  kept_later = rc_store_maker_open (second);
  rc_store_maker_assert_stored (kept_later, "J-1", dump);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (int version = 1; version < RC_SCHEMA_VERSION; version++)
    {
      g_autofree char *name = g_strdup_printf ("/store-migrate/version-%d-loses-nothing", version);

      g_test_add (name, Fixture, GINT_TO_POINTER (version), set_up, test_older_version_loses_nothing, tear_down);
    }
#define ADD(path, function) g_test_add (path, Fixture, NULL, set_up, function, tear_down)
  ADD ("/store-migrate/pictures-move-into-their-jobs", test_pictures_move);
  ADD ("/store-migrate/seam-line-is-a-pin", test_seam_line_is_a_pin);
  ADD ("/store-migrate/the-steps-of-version-1-go-back-and-forth", test_version_1_steps);
  ADD ("/store-migrate/the-steps-of-version-2-go-back-and-forth", test_version_2_steps);
  ADD ("/store-migrate/turns-of-version-4", test_turns_of_version_4);
  ADD ("/store-migrate/stock-of-version-5", test_stock_of_version_5);
  ADD ("/store-migrate/an-older-store-is-brought-up-to-date", test_migration);
  ADD ("/store-migrate/a-failing-migration-changes-nothing", test_failing_migrations);
  return g_test_run ();
}
