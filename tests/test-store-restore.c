/* Daily backups, which of them stay, and how one comes back. */
#include <glib/gstdio.h>
#include <string.h>

#include "rota.h"
#include "rowcut-error.h"
#include "store-maker.h"

typedef struct
{
  char  *folder, *path, *copy;
  GRand *rand;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->folder = rc_store_maker_new_folder ();
  fixture->path = g_build_filename (fixture->folder, "shop.db", NULL);
  fixture->copy = g_build_filename (fixture->folder, "copy.db", NULL);
  fixture->rand = g_rand_new_with_seed ((guint32)g_test_rand_int ());
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  rc_store_maker_remove_folder (fixture->folder);
  g_free (fixture->path);
  g_free (fixture->copy);
  g_rand_free (fixture->rand);
}

/* Saves the job with this title, new or changed. Its text. (transfer full) */
static char *
save_titled (Fixture *fixture, RcStore *store, const char *id, const char *title)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcJob) job = rc_store_load_job (store, id, NULL);

  if (job == NULL)
    job = rc_store_maker_new_job (fixture->rand, id, 3);
  g_free (job->title);
  job->title = g_strdup (title);
  rc_store_save_job (store, job, title, NOW, &error);
  g_assert_no_error (error);
  return rc_store_maker_dump_job (job);
}

static char *
restore (Fixture *fixture)
{
  g_autoptr (GError) error = NULL;
  char *kept = rc_store_restore (fixture->path, fixture->copy, &error);

  g_assert_no_error (error);
  g_assert_nonnull (kept);
  return kept;
}

/* Ten years of days: a week of days stays, and two years of month ends. */
static void
test_rota (void)
{
  g_autoptr (GPtrArray) days = g_ptr_array_new_with_free_func (g_free);
  GDate date;

  g_date_set_dmy (&date, 1, G_DATE_JANUARY, 2020);
  for (guint i = 0; i < 3653; i++, g_date_add_days (&date, 1))
    {
      g_autoptr (GPtrArray) superseded = NULL;
      char day[sizeof "YYYY-MM-DD"];

      g_date_strftime (day, sizeof day, "%Y-%m-%d", &date);
      g_ptr_array_add (days, g_strdup (day));
      superseded = rc_rota_find_superseded (days);
      g_assert_cmpuint (superseded->len, <=, 2); /* one that is older than a week, one that is older than two years */
      for (guint j = 0; j < superseded->len; j++)
        {
          guint at;

          g_assert_true (g_ptr_array_find_with_equal_func (days, superseded->pdata[j], g_str_equal, &at));
          g_ptr_array_remove_index (days, at);
        }
    }
  g_assert_cmpuint (days->len, ==, RC_ROTA_N_DAYS + RC_ROTA_N_MONTHS);
  g_assert_cmpstr (days->pdata[days->len - 1], ==, "2029-12-31");
  g_assert_cmpstr (days->pdata[days->len - RC_ROTA_N_DAYS], ==, "2029-12-25");
  g_assert_cmpstr (days->pdata[days->len - RC_ROTA_N_DAYS - 1], ==, "2029-12-24"); /* the last of its month yet */
  g_assert_cmpstr (days->pdata[days->len - RC_ROTA_N_DAYS - 2], ==, "2029-11-30");
  g_assert_cmpstr (days->pdata[0], ==, "2028-01-31");
}

static void
test_daily (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcStore) store = rc_store_maker_open (fixture->path);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) backups = NULL;
  g_autofree char *folder = rc_store_dup_backup_folder (fixture->path);
  g_autofree char *notes = g_build_filename (folder, "notes.txt", NULL);
  g_autofree char *rest = g_build_filename (folder, "2026-02-28.db.A1b2C3", NULL);
  g_autofree char *first = save_titled (fixture, store, "J-1", "First");
  g_autofree char *later = NULL;

  g_assert_false (rc_store_is_backed_up (fixture->path, "2026-03-01"));
  g_assert_true (rc_store_back_up_daily (store, "2026-03-01", &error));
  g_assert_true (rc_store_is_backed_up (fixture->path, "2026-03-01"));
  g_assert_true (g_file_set_contents (notes, "mine", -1, NULL));
  g_assert_true (g_file_set_contents (rest, "half of it", -1, NULL));
  later = save_titled (fixture, store, "J-1", "Later");
  g_assert_true (rc_store_back_up_daily (store, "2026-03-01", &error)); /* there already: stays as it was */
  for (guint day = 2; day < 12; day++)
    {
      g_autofree char *date = g_strdup_printf ("2026-03-%02u", day);

      g_assert_true (rc_store_back_up_daily (store, date, &error));
    }
  g_assert_no_error (error);
  backups = rc_store_find_backups (fixture->path);
  g_assert_cmpuint (backups->len, ==, RC_ROTA_N_DAYS + 1);
  g_assert_true (g_str_has_suffix (backups->pdata[0], "/shop.db.backups/2026-03-11.db"));
  g_assert_true (g_str_has_suffix (backups->pdata[RC_ROTA_N_DAYS], "/2026-03-04.db"));
  g_assert_true (g_file_test (notes, G_FILE_TEST_EXISTS));
  g_assert_false (g_file_test (rest, G_FILE_TEST_EXISTS));
  g_unlink (notes);
  for (guint i = 0; i < backups->len; i++)
    {
      g_autoptr (RcStore) backup = rc_store_maker_open (backups->pdata[i]);

      rc_store_maker_assert_stored (backup, "J-1", later);
      rc_store_close (g_steal_pointer (&backup));
      g_unlink (backups->pdata[i]);
    }
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

/* While two windows have the store open. */
static void
test_restored_in_use (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcStore) store = rc_store_maker_open (fixture->path);
  g_autoptr (RcStore) other = rc_store_maker_open (fixture->path);
  g_autofree char *before = save_titled (fixture, store, "J-1", "Before");
  g_autofree char *after = NULL, *kept = NULL, *stale_dump = NULL;
  g_autoptr (RcJob) stale = NULL;
  g_autoptr (RcStore) aside = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (rc_store_backup (store, fixture->copy, NULL));
  after = save_titled (fixture, store, "J-1", "After");
  g_free (save_titled (fixture, other, "J-2", "After"));
  stale = rc_store_load_job (other, "J-1", NULL);
  kept = restore (fixture);

  rc_store_maker_assert_stored (store, "J-1", before);
  rc_store_maker_assert_stored (other, "J-1", before);
  rc_store_maker_assert_sound (other);
  aside = rc_store_maker_open (kept);
  rc_store_maker_assert_stored (aside, "J-1", after);
  rc_store_maker_assert_sound (aside);
  g_assert_null (rc_store_load_job (other, "J-2", NULL));
}

/* A window that had the job open before cannot write over what was restored, however many edits come in between. */
static void
test_restored_under_an_edit (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcStore) store = rc_store_maker_open (fixture->path);
  g_autoptr (RcStore) window = rc_store_maker_open (fixture->path);
  g_autoptr (RcJob) open = NULL;
  g_autoptr (GError) error = NULL;

  g_free (save_titled (fixture, store, "J-1", "Before"));
  g_assert_true (rc_store_backup (store, fixture->copy, NULL));
  for (guint i = 0; i < 5; i++)
    g_free (save_titled (fixture, store, "J-1", i % 2 == 0 ? "One" : "Other"));
  open = rc_store_load_job (window, "J-1", NULL);
  g_free (restore (fixture));
  for (guint i = 0; i < 8; i++)
    {
      g_assert_false (rc_store_save_job (window, open, "Edit", NOW, &error));
      g_assert_error (error, RC_ERROR, RC_ERROR_CONFLICT);
      g_clear_error (&error);
      g_free (save_titled (fixture, store, "J-1", i % 2 == 0 ? "Once more" : "And again"));
    }
}

/* A number that was on a paper is never on another. */
static void
test_numbers_go_on (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcStore) store = rc_store_maker_open (fixture->path);
  g_autoptr (RcQuote) quote = rc_store_maker_new_quote (fixture->rand, 2);
  g_autoptr (RcJob) job = NULL;
  g_autofree char *first = NULL, *second = NULL;

  g_free (save_titled (fixture, store, "J-1", "Job"));
  job = rc_store_load_job (store, "J-1", NULL);
  g_assert_true (rc_store_backup (store, fixture->copy, NULL));
  first = rc_store_issue_quote (store, job, quote, "2026-03-01", NULL);
  g_free (restore (fixture));
  second = rc_store_issue_quote (store, job, quote, "2026-03-02", NULL);
  g_assert_nonnull (first);
  g_assert_nonnull (second);
  g_assert_cmpstr (first, !=, second);
}

/* It may be all there is of the shop's jobs: it stays where it is, and one is told to move it. */
static void
test_damaged_store (Fixture *fixture, gconstpointer data)
{
  static const char damage[] = "this was a store once";
  g_autofree char  *dump = NULL, *moved = g_strconcat (fixture->path, ".damaged", NULL), *contents = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (RcStore) restored = NULL;

  {
    g_autoptr (RcStore) store = rc_store_maker_open (fixture->path);

    dump = save_titled (fixture, store, "J-1", "Job");
    g_assert_true (rc_store_backup (store, fixture->copy, NULL));
  }
  g_assert_true (g_file_set_contents (fixture->path, damage, -1, NULL));
  g_assert_null (rc_store_restore (fixture->path, fixture->copy, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
  g_assert_nonnull (strstr (error->message, "move it"));
  g_assert_true (g_file_get_contents (fixture->path, &contents, NULL, NULL));
  g_assert_cmpstr (contents, ==, damage);

  g_assert_cmpint (g_rename (fixture->path, moved), ==, 0);
  g_free (restore (fixture));
  restored = rc_store_maker_open (fixture->path);
  rc_store_maker_assert_stored (restored, "J-1", dump);
  rc_store_maker_assert_sound (restored);
}

/* The log of a store whose file is gone must not become that of the restored one. */
static void
test_log_without_a_store (Fixture *fixture, gconstpointer data)
{
  g_autofree char *log = g_strconcat (fixture->path, "-wal", NULL), *dump = NULL, *bytes = NULL;
  g_autoptr (RcStore) restored = NULL;
  gsize size;

  {
    g_autoptr (RcStore) store = rc_store_maker_open (fixture->path);

    dump = save_titled (fixture, store, "J-1", "Job");
    g_assert_true (rc_store_backup (store, fixture->copy, NULL));
    g_free (save_titled (fixture, store, "J-1", "In the log"));
    g_assert_true (g_file_get_contents (log, &bytes, &size, NULL));
  }
  g_assert_cmpint (g_unlink (fixture->path), ==, 0);
  g_assert_true (g_file_set_contents (log, bytes, (gssize)size, NULL));
  g_free (restore (fixture));
  restored = rc_store_maker_open (fixture->path);
  rc_store_maker_assert_stored (restored, "J-1", dump);
}

static void
test_restored_to_nothing (Fixture *fixture, gconstpointer data)
{
  g_autofree char *dump = NULL, *kept = NULL;
  g_autoptr (RcStore) restored = NULL;

  {
    g_autoptr (RcStore) store = rc_store_maker_open (fixture->copy);

    dump = save_titled (fixture, store, "J-1", "Job");
  }
  kept = restore (fixture);
  g_assert_false (g_file_test (kept, G_FILE_TEST_EXISTS));
  restored = rc_store_maker_open (fixture->path);
  rc_store_maker_assert_stored (restored, "J-1", dump);
}

static void
test_bad_backups (Fixture *fixture, gconstpointer data)
{
  static const char *const contents[] = { "not a store", "", NULL };
  g_autoptr (RcStore) store = rc_store_maker_open (fixture->path);
  g_autofree char *dump = save_titled (fixture, store, "J-1", "Job");

  for (guint i = 0; i < G_N_ELEMENTS (contents); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GDir) dir = NULL;
      const char *name;

      g_unlink (fixture->copy);
      if (contents[i] != NULL)
        g_assert_true (g_file_set_contents (fixture->copy, contents[i], -1, NULL));
      g_assert_null (rc_store_restore (fixture->path, fixture->copy, &error));
      g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
      g_assert_nonnull (strstr (error->message, "copy.db"));
      rc_store_maker_assert_stored (store, "J-1", dump);
      dir = g_dir_open (fixture->folder, 0, NULL);
      while ((name = g_dir_read_name (dir)) != NULL)
        g_assert_null (strstr (name, "restore")); /* nothing is left behind */
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(path, function) g_test_add (path, Fixture, NULL, set_up, function, tear_down)
  g_test_add_func ("/store-restore/the-rota-keeps-a-week-and-two-years-of-months", test_rota);
  ADD ("/store-restore/a-backup-a-day", test_daily);
  ADD ("/store-restore/while-the-store-is-in-use", test_restored_in_use);
  ADD ("/store-restore/a-window-sees-that-its-job-changed", test_restored_under_an_edit);
  ADD ("/store-restore/numbers-given-out-stay-given-out", test_numbers_go_on);
  ADD ("/store-restore/a-damaged-store-stays-where-it-is", test_damaged_store);
  ADD ("/store-restore/a-log-without-its-store-is-put-aside", test_log_without_a_store);
  ADD ("/store-restore/where-there-was-none", test_restored_to_nothing);
  ADD ("/store-restore/what-is-no-sound-backup-changes-nothing", test_bad_backups);
  return g_test_run ();
}
