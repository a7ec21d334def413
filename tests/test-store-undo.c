/* Undo and redo: the steps of a job, kept in the store. */
#define SQLITE_ENABLE_SESSION        1
#define SQLITE_ENABLE_PREUPDATE_HOOK 1
#include <sqlite3.h>

#include "changeset.h"
#include "row-table.h"
#include "rowcut-error.h"
#include "store-maker.h"

typedef struct
{
  char    *folder, *path;
  RcStore *store;
  GRand   *rand;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  fixture->folder = rc_store_maker_new_folder ();
  fixture->path = g_build_filename (fixture->folder, "shop.db", NULL);
  fixture->store = rc_store_open (fixture->path, NULL, &error);
  g_assert_no_error (error);
  fixture->rand = g_rand_new_with_seed ((guint32)g_test_rand_int ());
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  rc_store_close (fixture->store);
  rc_store_maker_remove_folder (fixture->folder);
  g_free (fixture->path);
  g_rand_free (fixture->rand);
}

static void
reopen (Fixture *fixture)
{
  g_autoptr (GError) error = NULL;

  rc_store_close (fixture->store);
  fixture->store = rc_store_open (fixture->path, NULL, &error);
  g_assert_no_error (error);
}

static void
save (Fixture *fixture, const RcJob *job, const char *step)
{
  g_autoptr (GError) error = NULL;

  rc_store_save_job (fixture->store, job, step, NOW, &error);
  g_assert_no_error (error);
}

/* Every state of a job, from the first save on, and the names of the steps between. */
typedef struct
{
  GPtrArray *dumps, *steps;
} Story;

static void
start_story (Story *story, const RcJob *job)
{
  story->dumps = g_ptr_array_new_with_free_func (g_free);
  story->steps = g_ptr_array_new_with_free_func (g_free);
  g_ptr_array_add (story->dumps, rc_store_maker_dump_job (job));
}

static void
clear_story (Story *story)
{
  g_ptr_array_unref (story->dumps);
  g_ptr_array_unref (story->steps);
}

/* Edits until something is changed, and saves. */
static void
add_step (Fixture *fixture, RcJob *job, Story *story)
{
  for (;;)
    {
      const char      *step = rc_store_maker_edit_job (fixture->rand, job);
      g_autofree char *dump = rc_store_maker_dump_job (job);

      save (fixture, job, step);
      if (g_str_equal (dump, story->dumps->pdata[story->dumps->len - 1]))
        continue;
      g_ptr_array_add (story->dumps, g_steal_pointer (&dump));
      g_ptr_array_add (story->steps, g_strdup (step));
      return;
    }
}

static void
move (Fixture *fixture, const char *id, const Story *story, guint *at, gboolean back)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *step = NULL, *announced = NULL;

  announced = back ? rc_store_dup_undo_name (fixture->store, id) : rc_store_dup_redo_name (fixture->store, id);
  g_assert_true (back ? rc_store_undo (fixture->store, id, &step, &error)
                      : rc_store_redo (fixture->store, id, &step, &error));
  g_assert_no_error (error);
  if (back)
    *at -= 1;
  g_assert_cmpstr (step, ==, story->steps->pdata[*at]);
  g_assert_cmpstr (announced, ==, step);
  if (!back)
    *at += 1;
  rc_store_maker_assert_stored (fixture->store, id, story->dumps->pdata[*at]);
}

static void
test_all_back_and_again (Fixture *fixture, gconstpointer data)
{
  for (guint round = 1; round <= 3; round++)
    {
      g_autofree char *id = g_strdup_printf ("J-%u", round);
      g_autoptr (RcJob) job = rc_store_maker_new_job (fixture->rand, id, round * 2);
      g_autoptr (GError) error = NULL;
      Story story;
      guint at = 0;

      start_story (&story, job);
      save (fixture, job, "New job");
      for (guint i = 0; i < 60; i++)
        add_step (fixture, job, &story);
      for (at = 60; at > 0;)
        {
          move (fixture, id, &story, &at, TRUE);
          if (at == 30)
            reopen (fixture);
        }
      g_assert_false (rc_store_can_undo (fixture->store, id));
      g_assert_false (rc_store_undo (fixture->store, id, NULL, &error));
      g_assert_no_error (error);
      while (at < 60)
        {
          move (fixture, id, &story, &at, FALSE);
          if (at == 30)
            reopen (fixture);
        }
      g_assert_false (rc_store_can_redo (fixture->store, id));
      g_assert_false (rc_store_redo (fixture->store, id, NULL, &error));
      g_assert_no_error (error);
      clear_story (&story);
    }
  rc_store_maker_assert_sound (fixture->store);
}

/* Back, again, and new edits in any order, over three jobs at once: the others stay as they are. */
static void
test_any_order_over_several_jobs (Fixture *fixture, gconstpointer data)
{
  const char *ids[] = { "J-1", "J-2", "J-3" };
  Story       stories[3];
  guint       at[3] = { 0, 0, 0 };

  for (guint i = 0; i < 3; i++)
    {
      g_autoptr (RcJob) job = rc_store_maker_new_job (fixture->rand, ids[i], 3);

      start_story (&stories[i], job);
      save (fixture, job, "New job");
    }
  for (guint round = 0; round < 200; round++)
    {
      guint i = (guint)g_rand_int_range (fixture->rand, 0, 3);
      int   what = g_rand_int_range (fixture->rand, 0, 3);

      if (what == 0 && at[i] > 0)
        {
          move (fixture, ids[i], &stories[i], &at[i], TRUE);
        }
      else if (what == 1 && at[i] < stories[i].steps->len)
        {
          move (fixture, ids[i], &stories[i], &at[i], FALSE);
        }
      else
        {
          g_autoptr (RcJob) job = rc_store_load_job (fixture->store, ids[i], NULL);

          g_ptr_array_set_size (stories[i].dumps, (int)at[i] + 1);
          g_ptr_array_set_size (stories[i].steps, (int)at[i]);
          add_step (fixture, job, &stories[i]);
          at[i]++;
          g_assert_false (rc_store_can_redo (fixture->store, ids[i]));
        }
      for (guint j = 0; j < 3; j++)
        rc_store_maker_assert_stored (fixture->store, ids[j], stories[j].dumps->pdata[at[j]]);
      if (round % 60 == 0)
        reopen (fixture);
    }
  rc_store_maker_assert_sound (fixture->store);
  for (guint i = 0; i < 3; i++)
    clear_story (&stories[i]);
}

static void
execute (Fixture *fixture, const char *sql)
{
  sqlite3 *db = NULL;
  char    *message = NULL;

  g_assert_cmpint (sqlite3_open (fixture->path, &db), ==, SQLITE_OK);
  sqlite3_exec (db, sql, NULL, NULL, &message);
  g_assert_cmpstr (message, ==, NULL);
  sqlite3_close (db);
}

static void
assert_damaged (Fixture *fixture, const char *id)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *report = NULL;

  g_assert_false (rc_store_undo (fixture->store, id, NULL, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
  g_assert_nonnull (strstr (error->message, "damaged"));
  g_clear_error (&error);
  g_assert_false (rc_store_check (fixture->store, &report, &error));
  g_assert_no_error (error);
  g_assert_nonnull (strstr (report, id));
}

/* A record that is cut off, empty, or belongs to another job is refused, and the job stays as it is. */
static void
test_damaged_steps_are_refused (Fixture *fixture, gconstpointer data)
{
  const char *const damages[] = {
    "UPDATE steps SET changeset = substr (changeset, 1, length (changeset) - 7) WHERE job_id = 'J-1'",
    "UPDATE steps SET changeset = x'' WHERE job_id = 'J-1'",
    "UPDATE steps SET changeset = x'54' WHERE job_id = 'J-1'", /* SQLite alone would never return */
    "UPDATE steps SET changeset = x'00112233445566778899' WHERE job_id = 'J-1'",
    "UPDATE steps SET changeset = (SELECT changeset FROM steps WHERE job_id = 'J-2') WHERE job_id = 'J-1'",
  };
  g_autoptr (RcJob) one = rc_store_maker_new_job (fixture->rand, "J-1", 2);
  g_autoptr (RcJob) two = rc_store_maker_new_job (fixture->rand, "J-2", 2);
  g_autofree char *one_dump = NULL, *two_dump = NULL;

  save (fixture, one, "New job");
  save (fixture, two, "New job");
  g_free (one->title);
  one->title = g_strdup ("One more");
  g_free (two->title);
  two->title = g_strdup ("Two more");
  save (fixture, one, "Title");
  save (fixture, two, "Title");
  one_dump = rc_store_maker_dump_job (one);
  two_dump = rc_store_maker_dump_job (two);
  for (guint i = 0; i < G_N_ELEMENTS (damages); i++)
    {
      execute (fixture, damages[i]);
      reopen (fixture);
      assert_damaged (fixture, "J-1");
      rc_store_maker_assert_stored (fixture->store, "J-1", one_dump);
      rc_store_maker_assert_stored (fixture->store, "J-2", two_dump);
    }
}

/* A changeset can name any table; only a job's own are touched. */
static void
test_steps_touch_only_the_job (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcJob) job = rc_store_maker_new_job (fixture->rand, "J-1", 2);
  g_autoptr (GPtrArray) rolls = NULL;
  sqlite3         *db = NULL;
  sqlite3_session *session = NULL;
  sqlite3_stmt    *statement = NULL;
  void            *changeset = NULL;
  int              size;

  save (fixture, job, "New job");
  g_free (job->title);
  job->title = g_strdup ("One more");
  save (fixture, job, "Title");

  g_assert_cmpint (sqlite3_open (fixture->path, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3session_create (db, "main", &session), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3session_attach (session, NULL), ==, SQLITE_OK);
  g_assert_cmpint (
      sqlite3_exec (db, "INSERT INTO rolls (id, length_ticks, remnant) VALUES ('R-1', 5, 0)", NULL, NULL, NULL), ==,
      SQLITE_OK);
  g_assert_cmpint (sqlite3session_changeset (session, &size, &changeset), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_prepare_v2 (db, "UPDATE steps SET changeset = ?", -1, &statement, NULL), ==, SQLITE_OK);
  sqlite3_bind_blob (statement, 1, changeset, size, SQLITE_TRANSIENT);
  g_assert_cmpint (sqlite3_step (statement), ==, SQLITE_DONE);
  sqlite3_finalize (statement);
  sqlite3session_delete (session);
  sqlite3_free (changeset);
  sqlite3_close (db);

  assert_damaged (fixture, "J-1");
  rolls = rc_store_load_rolls (fixture->store, NULL);
  g_assert_cmpuint (rolls->len, ==, 1);
}

/* What SQLite makes of a changeset that ours accepts: it reads it to its end, every row is of a table of jobs, and
 * every row that is named in full is this job's. */
static void
assert_one_job (const guint8 *bytes, gsize size, gint64 job)
{
  g_autofree guint8      *copy = g_memdup2 (bytes, size);
  sqlite3_changeset_iter *iter;
  int                     code;

  g_assert_cmpint (sqlite3changeset_start (&iter, (int)size, copy), ==, SQLITE_OK);
  while ((code = sqlite3changeset_next (iter)) == SQLITE_ROW)
    {
      const char    *table;
      int            n_columns, operation, indirect;
      sqlite3_value *owner = NULL;
      gboolean       known = FALSE;

      g_assert_cmpint (sqlite3changeset_op (iter, &table, &n_columns, &operation, &indirect), ==, SQLITE_OK);
      for (RcTableId id = 0; id < RC_N_JOB_TABLES; id++)
        known |= g_str_equal (rc_row_table_get (id)->name, table);
      g_assert_true (known);
      if (operation == SQLITE_INSERT)
        g_assert_cmpint (sqlite3changeset_new (iter, 0, &owner), ==, SQLITE_OK);
      else
        g_assert_cmpint (sqlite3changeset_old (iter, 0, &owner), ==, SQLITE_OK);
      g_assert_cmpint (sqlite3_value_int64 (owner), ==, job);
    }
  sqlite3changeset_finalize (iter);
  g_assert_cmpint (code, ==, SQLITE_DONE);
}

/* The changesets of all steps, one of them a deletion, in the store's order. (transfer full) */
static GPtrArray *
make_changesets (Fixture *fixture)
{
  g_autoptr (RcJob) job = rc_store_maker_new_job (fixture->rand, "J-1", 2);
  GPtrArray    *found = g_ptr_array_new_with_free_func ((GDestroyNotify)g_bytes_unref);
  sqlite3      *db = NULL;
  sqlite3_stmt *statement = NULL;

  save (fixture, job, "New job");
  for (guint i = 0; i < 8; i++)
    save (fixture, job, rc_store_maker_edit_job (fixture->rand, job));
  g_assert_true (rc_store_delete_job (fixture->store, "J-1", NULL));
  g_assert_cmpint (sqlite3_open (fixture->path, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_prepare_v2 (db, "SELECT changeset FROM steps ORDER BY number", -1, &statement, NULL), ==,
                   SQLITE_OK);
  while (sqlite3_step (statement) == SQLITE_ROW)
    g_ptr_array_add (found,
                     g_bytes_new (sqlite3_column_blob (statement, 0), (gsize)sqlite3_column_bytes (statement, 0)));
  sqlite3_finalize (statement);
  sqlite3_close (db);
  g_assert_cmpuint (found->len, >, 3);
  return found;
}

/* Cut off after each byte, and with each byte another: refused, or as good to SQLite as to us. */
static void
test_any_record_is_examined (Fixture *fixture, gconstpointer data)
{
  static const guint8 others[] = { 0, 1, 2, 3, 4, 5, 9, 18, 23, 'T', 0x7f, 0x80, 0xff };
  g_autoptr (GPtrArray) changesets = make_changesets (fixture);
  guint n_accepted = 0, n_refused = 0;

  for (guint i = 0; i < changesets->len; i++)
    {
      gsize         size;
      const guint8 *bytes = g_bytes_get_data (changesets->pdata[i], &size);
      gint64        owner, job;

      g_assert_true (rc_changeset_find_job (bytes, size, &owner));
      assert_one_job (bytes, size, owner);
      for (gsize at = 0; at < MIN (size, 3000); at++)
        {
          g_autofree guint8 *changed = g_memdup2 (bytes, size);

          changed[at] = others[g_rand_int_range (fixture->rand, 0, G_N_ELEMENTS (others))];
          for (guint cut = 0; cut < 2; cut++)
            if (rc_changeset_find_job (cut ? bytes : changed, cut ? at : size, &job))
              {
                assert_one_job (cut ? bytes : changed, cut ? at : size, job);
                n_accepted++;
              }
            else
              n_refused++;
        }
    }
  g_test_message ("%u accepted, %u refused", n_accepted, n_refused);
  g_assert_cmpuint (n_accepted, >, 100);
  g_assert_cmpuint (n_refused, >, 1000);
}

static void
amend (Fixture *fixture, RcJob *job, const char *title, gboolean expected)
{
  g_autoptr (GError) error = NULL;
  gboolean has_step = !expected;

  g_free (job->title);
  job->title = g_strdup (title);
  g_assert_true (rc_store_amend_job (fixture->store, job, "Title", NOW, &has_step, &error));
  g_assert_no_error (error);
  g_assert_cmpint (has_step, ==, expected);
}

/* A word typed letter by letter: undo goes back to before the first, redo to the last. */
static void
test_amended_steps_are_one (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcJob) job = rc_store_maker_new_job (fixture->rand, "J-1", 3);
  g_autofree char *before = NULL, *after = NULL;
  g_autoptr (GError) error = NULL;

  save (fixture, job, "New job");
  before = rc_store_maker_dump_job (job);
  amend (fixture, job, "M", TRUE); /* nothing to replace yet */
  g_ptr_array_set_size (rc_job_get_measure (job, NULL)->rooms, 1);
  amend (fixture, job, "Mi", TRUE);
  amend (fixture, job, "Mill", TRUE);
  after = rc_store_maker_dump_job (job);
  reopen (fixture);
  g_assert_true (rc_store_undo (fixture->store, "J-1", NULL, &error));
  rc_store_maker_assert_stored (fixture->store, "J-1", before);
  g_assert_false (rc_store_can_undo (fixture->store, "J-1"));
  g_assert_true (rc_store_redo (fixture->store, "J-1", NULL, &error));
  rc_store_maker_assert_stored (fixture->store, "J-1", after);
  rc_store_maker_assert_sound (fixture->store);
}

/* The letters come back to what was there: no step is left; and after an undo, amending replaces nothing. */
static void
test_amending_to_nothing (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcJob) job = rc_store_maker_new_job (fixture->rand, "J-1", 3);
  g_autofree char *title = g_strdup (job->title), *two = NULL, *step = NULL;
  g_autoptr (RcJob) loaded = NULL;

  save (fixture, job, "New job");
  amend (fixture, job, "Mill", TRUE);
  amend (fixture, job, title, FALSE);
  g_assert_false (rc_store_can_undo (fixture->store, "J-1"));
  amend (fixture, job, "One", TRUE);
  two = rc_store_maker_dump_job (job);
  g_free (job->title);
  job->title = g_strdup ("Two");
  save (fixture, job, "Title");
  g_assert_true (rc_store_undo (fixture->store, "J-1", NULL, NULL));
  amend (fixture, job, "Three", TRUE);
  g_assert_true (rc_store_undo (fixture->store, "J-1", &step, NULL));
  rc_store_maker_assert_stored (fixture->store, "J-1", two);
  rc_store_maker_assert_sound (fixture->store);
}

/* Somebody else's edit is not what is replaced. */
static void
test_amending_meets_a_conflict (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcJob) job = rc_store_maker_new_job (fixture->rand, "J-1", 3);
  g_autoptr (RcStore) other = rc_store_open (fixture->path, NULL, NULL);
  g_autoptr (RcJob) theirs = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *dump = NULL;

  save (fixture, job, "New job");
  amend (fixture, job, "Mine", TRUE);
  theirs = rc_store_load_job (other, "J-1", NULL);
  g_free (theirs->title);
  theirs->title = g_strdup ("Theirs");
  g_assert_true (rc_store_save_job (other, theirs, "Title", NOW, NULL));
  dump = rc_store_maker_dump_job (theirs);
  g_assert_false (rc_store_amend_job (fixture->store, job, "Title", NOW, NULL, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_CONFLICT);
  rc_store_maker_assert_stored (other, "J-1", dump);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(path, function) g_test_add (path, Fixture, NULL, set_up, function, tear_down)
  ADD ("/store-undo/all-steps-back-and-again-give-every-state", test_all_back_and_again);
  ADD ("/store-undo/in-any-order-over-several-jobs", test_any_order_over_several_jobs);
  ADD ("/store-undo/damaged-steps-are-refused", test_damaged_steps_are_refused);
  ADD ("/store-undo/steps-touch-only-the-job", test_steps_touch_only_the_job);
  ADD ("/store-undo/any-record-is-examined", test_any_record_is_examined);
  ADD ("/store-undo/amended-steps-are-one", test_amended_steps_are_one);
  ADD ("/store-undo/amending-to-nothing-leaves-no-step", test_amending_to_nothing);
  ADD ("/store-undo/amending-meets-a-conflict", test_amending_meets_a_conflict);
  return g_test_run ();
}
