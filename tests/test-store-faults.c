/* Every call of SQLite to a file, and every allocation it makes, fails in turn, once or from then on, while the store
   is opened, read, changed and copied: nothing crashes, the fault is told in words, and all of the change or none of it
   is in the file. */
#include <glib/gstdio.h>
#include <sqlite3.h>
#include <string.h>

#include "fault-layer.h"
#include "rounds.h"
#include "rowcut-error.h"
#include "store-maker.h"

#define SEED 20

typedef struct
{
  char   *folder, *path, *backup, *earlier, *kept;
  GBytes *base;   /* the store that every round begins with */
  char   *stored; /* the text of J-1 in it */
  RcJob  *job;    /* as loaded from it, with an edit */
} Fixture;

typedef gboolean (*RunFunc) (Fixture *fixture, RcStore *store, GError **error);

static gboolean
save (RcStore *store, const RcJob *job, GError **error)
{
  return rc_store_save_job (store, job, "Edit", NOW, error);
}

/* Two jobs with steps, one of them undone, prices, a roll and an issued quotation. */
static void
make_base (Fixture *fixture)
{
  g_autoptr (RcStore) store = rc_store_maker_open (fixture->path);
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  g_autoptr (RcJob) other = rc_store_maker_new_job (rand, "J-2", 2);
  g_autoptr (RcJob) job = rc_store_maker_new_job (rand, "J-1", 3);
  g_autoptr (RcPriceBook) book = rc_store_maker_new_price_book (rand, 3);
  g_autoptr (RcQuote) quote = rc_store_maker_new_quote (rand, 3);
  g_autoptr (GError) error = NULL;
  g_autofree char *number = NULL;

  save (store, other, &error);
  g_assert_true (rc_store_backup (store, fixture->earlier, &error));
  for (guint i = 0; i < 4; i++)
    {
      save (store, job, &error);
      g_assert_no_error (error);
      rc_store_maker_edit_job (rand, job);
    }
  g_assert_true (rc_store_undo (store, "J-1", NULL, &error));
  rc_store_save_price_book (store, book, &error);
  g_assert_no_error (error);
  number = rc_store_issue_quote (store, job, quote, "2025-03-04", &error);
  g_assert_no_error (error);
}

static void
set_up (Fixture *fixture, gconstpointer data)
{
  char *contents;
  gsize size;

  fixture->folder = rc_store_maker_new_folder ();
  fixture->path = g_build_filename (fixture->folder, "shop.db", NULL);
  fixture->backup = g_build_filename (fixture->folder, "copy.db", NULL);
  fixture->earlier = g_build_filename (fixture->folder, "earlier.db", NULL);
  fixture->kept = g_strconcat (fixture->path, ".before-restore", NULL);
  make_base (fixture);
  g_assert_true (g_file_get_contents (fixture->path, &contents, &size, NULL));
  fixture->base = g_bytes_new_take (contents, size);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  rc_store_maker_remove_folder (fixture->folder);
  g_free (fixture->path);
  g_free (fixture->backup);
  g_free (fixture->earlier);
  g_free (fixture->kept);
  g_free (fixture->stored);
  g_bytes_unref (fixture->base);
}

static gboolean
run_open (Fixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (RcStore) opened = rc_store_open (fixture->path, NULL, error);

  return opened != NULL;
}

static gboolean
run_load (Fixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (RcJob) job = rc_store_load_job (store, "J-1", error);
  g_autofree char *dump = job != NULL ? rc_store_maker_dump_job (job) : NULL;

  if (job != NULL)
    g_assert_cmpstr (dump, ==, fixture->stored);
  return job != NULL;
}

static gboolean
run_find (Fixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (GPtrArray) jobs = rc_store_find_jobs (store, NULL, error);

  g_assert_true (jobs == NULL || jobs->len == 2);
  return jobs != NULL;
}

static gboolean
run_save (Fixture *fixture, RcStore *store, GError **error)
{
  return save (store, fixture->job, error);
}

static gboolean
run_amend (Fixture *fixture, RcStore *store, GError **error)
{
  return rc_store_amend_job (store, fixture->job, "Edit", NOW, NULL, error);
}

static gboolean
run_undo (Fixture *fixture, RcStore *store, GError **error)
{
  return rc_store_undo (store, "J-1", NULL, error);
}

static gboolean
run_redo (Fixture *fixture, RcStore *store, GError **error)
{
  return rc_store_redo (store, "J-1", NULL, error);
}

static gboolean
run_delete (Fixture *fixture, RcStore *store, GError **error)
{
  return rc_store_delete_job (store, "J-1", error);
}

static gboolean
run_save_prices (Fixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED + 1);
  g_autoptr (RcPriceBook) book = rc_store_maker_new_price_book (rand, 5);

  return rc_store_save_price_book (store, book, error);
}

static gboolean
run_issue (Fixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED + 2);
  g_autoptr (RcQuote) quote = rc_store_maker_new_quote (rand, 4);
  g_autofree char *number = rc_store_issue_quote (store, fixture->job, quote, "2025-03-05", error);

  return number != NULL;
}

static gboolean
run_check (Fixture *fixture, RcStore *store, GError **error)
{
  g_autofree char *report = NULL;
  g_autoptr (GError) fault = NULL;
  gboolean sound = rc_store_check (store, &report, &fault);

  /* That the disk cannot be read may be told as a fault of the store, too. */
  if (!sound && fault == NULL)
    fault = g_error_new_literal (RC_ERROR, RC_ERROR_STORE, report);
  if (!sound)
    g_propagate_error (error, g_steal_pointer (&fault));
  return sound;
}

static gboolean
run_backup (Fixture *fixture, RcStore *store, GError **error)
{
  return rc_store_backup (store, fixture->backup, error);
}

static gboolean
run_restore (Fixture *fixture, RcStore *store, GError **error)
{
  g_autofree char *kept = rc_store_restore (fixture->path, fixture->earlier, error);

  return kept != NULL;
}

typedef struct
{
  const char *name;
  RunFunc     run;
  gboolean    needs_store; /* open before anything fails */
} Work;

static const Work works[] = {
  { "opening", run_open, FALSE },
  { "loading-a-job", run_load, TRUE },
  { "finding-jobs", run_find, TRUE },
  { "saving-a-job", run_save, TRUE },
  { "amending-a-step", run_amend, TRUE },
  { "undo", run_undo, TRUE },
  { "redo", run_redo, TRUE },
  { "deleting-a-job", run_delete, TRUE },
  { "saving-prices", run_save_prices, TRUE },
  { "issuing-a-quotation", run_issue, TRUE },
  { "checking", run_check, TRUE },
  { "a-backup", run_backup, TRUE },
  { "restoring", run_restore, FALSE },
};

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
  const Work *work;
  FaultKind   kind;
  guint       number;
  gboolean    once;
  gboolean    done;
  guint       n_failed;
  char       *contents; /* of the file afterwards */
} Round;

static void
put_base (Fixture *fixture)
{
  g_autofree char *log = g_strconcat (fixture->path, "-wal", NULL);
  g_autofree char *index = g_strconcat (fixture->path, "-shm", NULL);
  FILE            *file;

  g_unlink (log);
  g_unlink (index);
  g_unlink (fixture->backup);
  g_unlink (fixture->kept);
  file = g_fopen (fixture->path, "wb");
  g_assert_cmpuint (fwrite (g_bytes_get_data (fixture->base, NULL), 1, g_bytes_get_size (fixture->base), file), ==,
                    g_bytes_get_size (fixture->base));
  fclose (file);
}

static RcJob *
dup_edited_job (Fixture *fixture, RcStore *store)
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
run_armed (Fixture *fixture, Round *round)
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
run_round (Fixture *fixture, Round *round)
{
  put_base (fixture);
  run_armed (fixture, round);
  round->contents = dup_contents (fixture->path);
}

/* There when the work was done, and then holds what the store held before; not there otherwise. */
static void
assert_copy_is_whole (const char *copy, gboolean done, const char *before)
{
  g_autofree char *contents = NULL;

  g_assert_true (done == g_file_test (copy, G_FILE_TEST_EXISTS));
  if (!done)
    return;
  contents = dup_contents (copy);
  g_assert_cmpstr (contents, ==, before);
}

/* Everything but the store and its copies is gone: no half-written file is left about. */
static void
assert_no_rest (Fixture *fixture)
{
  g_autoptr (GDir) folder = g_dir_open (fixture->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (folder)) != NULL)
    if (!g_str_equal (name, "shop.db") && !g_str_equal (name, "copy.db") && !g_str_equal (name, "earlier.db")
        && !g_str_equal (name, "shop.db.before-restore"))
      g_error ("%s was left behind", name);
}

static void
assert_all_or_nothing (Fixture *fixture, const Round *round, const char *before, const char *after)
{
  const char *what = round->work->name;
  const char *kind = fault_kind_get_name (round->kind);

  if (!g_str_equal (round->contents, before) && !g_str_equal (round->contents, after))
    g_error ("%s, %s fault %u: half of it is in the file", what, kind, round->number);
  if (round->done && !g_str_equal (round->contents, after))
    g_error ("%s, %s fault %u: said to be done and is not in the file", what, kind, round->number);
  if (round->n_failed == 0 && !round->done)
    g_error ("%s, %s fault %u: failed without a fault", what, kind, round->number);
  if (round->work->run == run_backup)
    assert_copy_is_whole (fixture->backup, round->done, before);
  if (round->work->run == run_restore)
    assert_copy_is_whole (fixture->kept, round->done, before);
  assert_no_rest (fixture);
}

/* The full check, with the search index. */
static void
assert_sound (Fixture *fixture)
{
  g_autoptr (RcStore) store = rc_store_maker_open (fixture->path);

  rc_store_maker_assert_sound (store);
}

/* The faults of one kind, all of them or spread over all. Returns how many rounds had one. */
static guint
run_kind (Fixture *fixture, const Work *work, FaultKind kind, gboolean once, const char *before)
{
  const guint most = scale_rounds (g_test_slow () ? 1000 : 25);
  Round       whole = { work, kind, G_MAXUINT, FALSE };
  guint       n_calls = 0, n_faults = 0;

  run_round (fixture, &whole);
  g_assert_true (whole.done);
  n_calls = fault_layer_get_n_calls ();
  for (guint i = 0; i < MIN (n_calls, most); i++)
    {
      Round round = { work, kind, n_calls <= most ? i : (guint)((guint64)i * n_calls / most), once };

      run_round (fixture, &round);
      g_assert_cmpuint (round.n_failed, >, 0);
      assert_all_or_nothing (fixture, &round, before, whole.contents);
      if (n_faults++ % 16 == 0)
        assert_sound (fixture);
      g_free (round.contents);
    }
  g_free (whole.contents);
  return n_faults;
}

static void
test_work (Fixture *fixture, gconstpointer data)
{
  const Work      *work = data;
  g_autofree char *before = dup_contents (fixture->path);
  guint            n_faults = 0;

  for (guint kind = 0; kind < FAULT_N_KINDS; kind++)
    for (guint once = 0; once < 2; once++)
      n_faults += run_kind (fixture, work, (FaultKind)kind, once != 0, before);
  g_test_message ("%s: %u faults", work->name, n_faults);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  fault_layer_install ();
  for (guint i = 0; i < G_N_ELEMENTS (works); i++)
    {
      g_autofree char *path = g_strconcat ("/store-faults/", works[i].name, NULL);

      g_test_add (path, Fixture, &works[i], set_up, test_work, tear_down);
    }
  return g_test_run ();
}
