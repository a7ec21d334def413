#include "fault-rounds.h"

#include <glib/gstdio.h>
#include <sqlite3.h>
#include <string.h>

#include "fault-calls.h"
#include "fault-layer.h"
#include "rounds.h"
#include "schema.h"
#include "store-maker.h"
#include "store-office.h"

#define SEED     20
#define N_ROUNDS 2
#define N_SLOW   1000

/* Two jobs with steps, one of them undone, one deleted, prices, and what the office has. */
static void
make_base (FaultFixture *fixture)
{
  g_autoptr (RcStore) store = rc_store_maker_open (fixture->path);
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  g_autoptr (RcJob) other = rc_store_maker_new_job (rand, "J-2", 2);
  g_autoptr (RcJob) job = rc_store_maker_new_job (rand, "J-1", 3);
  g_autoptr (RcJob) gone = rc_store_maker_new_job (rand, "J-3", 2);
  g_autoptr (RcPriceBook) book = rc_store_maker_new_price_book (rand, 3);
  g_autoptr (GError) error = NULL;

  g_assert_true (rc_store_save_job (store, other, "Edit", NOW, &error));
  g_assert_true (rc_store_backup (store, fixture->earlier, &error));
  g_assert_true (rc_store_save_job (store, gone, "Edit", NOW, &error));
  g_assert_true (rc_store_delete_job (store, "J-3", &error));
  for (guint i = 0; i < 4; i++)
    {
      g_assert_true (rc_store_save_job (store, job, "Edit", NOW, &error));
      rc_store_maker_edit_job (rand, job);
    }
  g_assert_true (rc_store_undo (store, "J-1", NULL, &error));
  g_assert_true (rc_store_save_price_book (store, book, &error));
  store_office_fill (store, job, rand);
}

/* The store that a program of an earlier version wrote. */
static void
make_old_base (FaultFixture *fixture, int version)
{
  g_autofree char *name = g_strdup_printf ("store-version-%d.sql", version), *sql = NULL;
  g_autofree char *file = g_test_build_filename (G_TEST_DIST, name, NULL);
  sqlite3         *db;

  g_assert_true (g_file_get_contents (file, &sql, NULL, NULL));
  g_assert_cmpint (sqlite3_open (fixture->path, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (db, sql, NULL, NULL, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (db, "PRAGMA journal_mode = WAL", NULL, NULL, NULL), ==, SQLITE_OK);
  sqlite3_close (db);
}

static void
set_up (FaultFixture *fixture, gconstpointer data)
{
  const FaultWork *work = data;
  char            *contents;
  gsize            size;

  fixture->folder = rc_store_maker_new_folder ();
  fixture->path = g_build_filename (fixture->folder, "shop.db", NULL);
  fixture->earlier = g_build_filename (fixture->folder, "earlier.db", NULL);
  fixture->copy = g_build_filename (fixture->folder, work->copy != NULL ? work->copy : "copy.db", NULL);
  if (work->version > 0)
    make_old_base (fixture, work->version);
  else
    make_base (fixture);
  g_assert_true (g_file_get_contents (fixture->path, &contents, &size, NULL));
  fixture->base = g_bytes_new_take (contents, size);
}

static void
tear_down (FaultFixture *fixture, gconstpointer data)
{
  rc_store_maker_remove_folder (fixture->folder);
  g_free (fixture->path);
  g_free (fixture->copy);
  g_free (fixture->earlier);
  g_free (fixture->stored);
  g_bytes_unref (fixture->base);
}

static char *
dup_columns (sqlite3_stmt *statement)
{
  GString *text = g_string_new (NULL);

  for (int i = 0; i < sqlite3_column_count (statement); i++)
    {
      const void *bytes = sqlite3_column_blob (statement, i);
      int         size = sqlite3_column_bytes (statement, i);

      g_string_append_printf (text, "%d:%d:", sqlite3_column_type (statement, i), size);
      g_string_append_len (text, bytes, size);
    }
  return g_string_free (text, FALSE);
}

/* Every row of every table, without the store's help. What the search index holds follows from them. */
static char *
dup_contents (const char *path)
{
  g_autoptr (GChecksum) sum = g_checksum_new (G_CHECKSUM_SHA256);
  sqlite3      *db;
  sqlite3_stmt *tables, *rows;

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_prepare_v2 (db,
                                       "SELECT name FROM sqlite_schema WHERE type = 'table' AND sql NOT LIKE "
                                       "'CREATE VIRTUAL%' AND name NOT LIKE 'search_%' ORDER BY name",
                                       -1, &tables, NULL),
                   ==, SQLITE_OK);
  while (sqlite3_step (tables) == SQLITE_ROW)
    {
      g_autofree char *sql = g_strdup_printf ("SELECT * FROM \"%s\"", sqlite3_column_text (tables, 0));

      g_assert_cmpint (sqlite3_prepare_v2 (db, sql, -1, &rows, NULL), ==, SQLITE_OK);
      while (sqlite3_step (rows) == SQLITE_ROW)
        {
          g_autofree char *row = dup_columns (rows);

          g_checksum_update (sum, (const guchar *)row, (gssize)strlen (row));
        }
      sqlite3_finalize (rows);
    }
  sqlite3_finalize (tables);
  sqlite3_close (db);
  return g_strdup (g_checksum_get_string (sum));
}

typedef struct
{
  const FaultWork *work;
  FaultKind        kind;
  guint            number;
  gboolean         once;
  gboolean         done;
  guint            n_failed;
  char            *contents; /* of the file afterwards */
} Round;

static void
put_base (FaultFixture *fixture)
{
  g_autofree char *log = g_strconcat (fixture->path, "-wal", NULL);
  g_autofree char *index = g_strconcat (fixture->path, "-shm", NULL);
  FILE            *file;

  g_unlink (log);
  g_unlink (index);
  g_unlink (fixture->copy);
  file = g_fopen (fixture->path, "wb");
  g_assert_cmpuint (fwrite (g_bytes_get_data (fixture->base, NULL), 1, g_bytes_get_size (fixture->base), file), ==,
                    g_bytes_get_size (fixture->base));
  fclose (file);
}

static RcJob *
dup_edited_job (FaultFixture *fixture, RcStore *store)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED + 3);
  RcJob *job = rc_store_load_job (store, "J-1", NULL);

  g_free (fixture->stored);
  fixture->stored = rc_store_maker_dump_job (job);
  rc_store_maker_edit_job (rand, job);
  g_free (job->title);
  job->title = g_strdup ("Edited under a fault");
  return job;
}

static void
run_armed (FaultFixture *fixture, Round *round)
{
  g_autoptr (RcStore) store = round->work->needs_store ? rc_store_maker_open (fixture->path) : NULL;
  g_autoptr (GError) error = NULL;

  if (store != NULL)
    fixture->job = dup_edited_job (fixture, store);
  fault_layer_arm (round->kind, round->number, round->once);
  round->done = round->work->run (fixture, store, &error);
  round->n_failed = fault_layer_disarm ();
  if (round->done)
    g_assert_no_error (error);
  else if (error == NULL || error->message[0] == '\0')
    g_error ("%s, %s fault %u: no word of it", round->work->name, fault_kind_get_name (round->kind), round->number);
  g_clear_pointer (&fixture->job, rc_job_free);
}

static void
run_round (FaultFixture *fixture, Round *round)
{
  put_base (fixture);
  run_armed (fixture, round);
  round->contents = dup_contents (fixture->path);
}

/* There when the work was done, and then holds what the store held before. A work that failed leaves none, unless the
 * copy was made first, to be safe: then it is whole all the same. */
static void
assert_copy_is_whole (FaultFixture *fixture, const Round *round, const char *before)
{
  gboolean         found = g_file_test (fixture->copy, G_FILE_TEST_EXISTS);
  g_autofree char *contents = NULL;

  g_assert_true (round->done ? found : round->work->version > 0 || !found);
  if (!found)
    return;
  contents = dup_contents (fixture->copy);
  g_assert_cmpstr (contents, ==, before);
}

/* Everything but the store and its copies is gone: no half-written file is left about. */
static void
assert_no_rest (FaultFixture *fixture)
{
  g_autoptr (GDir) folder = g_dir_open (fixture->folder, 0, NULL);
  g_autofree char *copy = g_path_get_basename (fixture->copy);
  const char      *name;

  while ((name = g_dir_read_name (folder)) != NULL)
    if (!g_str_equal (name, "shop.db") && !g_str_equal (name, "earlier.db") && !g_str_equal (name, copy))
      g_error ("%s was left behind", name);
}

static void
assert_all_or_nothing (FaultFixture *fixture, const Round *round, const char *before, const char *after)
{
  const char *what = round->work->name;
  const char *kind = fault_kind_get_name (round->kind);

  if (!g_str_equal (round->contents, before) && !g_str_equal (round->contents, after))
    g_error ("%s, %s fault %u: half of it is in the file", what, kind, round->number);
  if (round->done && !g_str_equal (round->contents, after))
    g_error ("%s, %s fault %u: said to be done and is not in the file", what, kind, round->number);
  if (round->n_failed == 0 && !round->done)
    g_error ("%s, %s fault %u: failed without a fault", what, kind, round->number);
  if (round->work->copy != NULL)
    assert_copy_is_whole (fixture, round, before);
  assert_no_rest (fixture);
}

/* The full check, with the search index. */
static void
assert_sound (FaultFixture *fixture)
{
  g_autoptr (RcStore) store = rc_store_maker_open (fixture->path);

  rc_store_maker_assert_sound (store);
}

static void
run_fault (FaultFixture *fixture, const Round *whole, guint number, gboolean once, const char *before)
{
  Round round = { whole->work, whole->kind, number, once };

  run_round (fixture, &round);
  g_assert_cmpuint (round.n_failed, >, 0);
  assert_all_or_nothing (fixture, &round, before, whole->contents);
  if (number % 16 == 0)
    assert_sound (fixture);
  g_free (round.contents);
}

/* The faults of one kind: each call, or some spread over all, fails once, and from then on; and one from then on at
 * each place in the program that none was at before. Returns how many there were. */
static guint
run_kind (FaultFixture *fixture, const FaultWork *work, FaultKind kind, const char *before)
{
  const guint most = scale_rounds (g_test_slow () ? N_SLOW : N_ROUNDS);
  Round       whole = { work, kind, G_MAXUINT, FALSE };
  g_autoptr (GArray) places = NULL;
  guint n_calls, n_spread;

  run_round (fixture, &whole);
  g_assert_true (whole.done);
  n_calls = fault_layer_get_n_calls ();
  n_spread = MIN (n_calls, most);
  places = fault_calls_take_new_places ();
  if (n_spread == n_calls)
    g_array_set_size (places, 0); /* all are tried anyway */
  for (guint i = 0; i < n_spread; i++)
    for (guint once = 0; once < 2; once++)
      run_fault (fixture, &whole, (guint)((guint64)i * n_calls / n_spread), once != 0, before);
  for (guint i = 0; i < places->len; i++)
    run_fault (fixture, &whole, g_array_index (places, guint, i), FALSE, before);
  g_free (whole.contents);
  return 2 * n_spread + places->len;
}

static void
test_work (FaultFixture *fixture, gconstpointer data)
{
  const FaultWork *work = data;
  g_autofree char *before = dup_contents (fixture->path);
  guint            n_faults = 0;

  for (guint kind = 0; kind < FAULT_N_KINDS; kind++)
    n_faults += run_kind (fixture, work, (FaultKind)kind, before);
  g_test_message ("%s: %u faults", work->name, n_faults);
}

void
fault_rounds_add (const char *suite, const FaultWork *works, guint n_works)
{
  for (guint i = 0; i < n_works; i++)
    {
      g_autofree char *path = g_strdup_printf ("/%s/%s", suite, works[i].name);

      g_test_add (path, FaultFixture, &works[i], set_up, test_work, tear_down);
    }
}
