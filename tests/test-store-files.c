/* Files that are opened as a store: others', damaged, older, newer, not to be written; backups; a full disk. */
#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "schema.h"
#include "store-maker.h"

typedef struct
{
  char  *folder, *path;
  GRand *rand;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->folder = rc_store_maker_new_folder ();
  fixture->path = g_build_filename (fixture->folder, "shop.db", NULL);
  fixture->rand = g_rand_new_with_seed ((guint32)g_test_rand_int ());
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_chmod (fixture->folder, 0700);
  rc_store_maker_remove_folder (fixture->folder);
  g_free (fixture->path);
  g_rand_free (fixture->rand);
}

static void
save (RcStore *store, const RcJob *job)
{
  g_autoptr (GError) error = NULL;

  rc_store_save_job (store, job, "Edit", NOW, &error);
  g_assert_no_error (error);
}

/* A store with two jobs, closed. The text of J-1. (transfer full) */
static char *
make_store (Fixture *fixture)
{
  g_autoptr (RcStore) store = rc_store_maker_open (fixture->path);
  g_autoptr (RcJob) one = rc_store_maker_new_job (fixture->rand, "J-1", 8);
  g_autoptr (RcJob) two = rc_store_maker_new_job (fixture->rand, "J-2", 8);

  save (store, one);
  save (store, two);
  for (guint i = 0; i < 5; i++)
    {
      rc_store_maker_edit_job (fixture->rand, one);
      save (store, one);
    }
  return rc_store_maker_dump_job (one);
}

static GBytes *
read_bytes (const char *path)
{
  char *data;
  gsize size;

  g_assert_true (g_file_get_contents (path, &data, &size, NULL));
  return g_bytes_new_take (data, size);
}

static void
write_bytes (const char *path, gconstpointer data, gsize size)
{
  g_assert_true (g_file_set_contents (path, data, (gssize)size, NULL));
}

/* The file is refused, the message names it and says `part`, and nothing in it or beside it changes. */
static void
assert_refused (Fixture *fixture, const char *part)
{
  g_autoptr (GBytes) before = read_bytes (fixture->path);
  g_autoptr (GBytes) after = NULL;
  g_autoptr (GError) error = NULL;
  gboolean created = TRUE;

  g_assert_null (rc_store_open (fixture->path, &created, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
  if (strstr (error->message, part) == NULL || strstr (error->message, "shop.db") == NULL)
    g_error ("“%s” does not name shop.db and say “%s”", error->message, part);
  after = read_bytes (fixture->path);
  g_assert_true (g_bytes_equal (before, after));
}

static void
test_no_database (Fixture *fixture, gconstpointer data)
{
  static const char *const contents[] = { "x", "not a database", "SQLite format 3", "\x89PNG\r\n\x1a\n", "<?xml?>" };

  for (guint i = 0; i < G_N_ELEMENTS (contents); i++)
    {
      write_bytes (fixture->path, contents[i], strlen (contents[i]));
      assert_refused (fixture, "not a Rowcut store");
    }
  for (guint i = 0; i < 30; i++)
    {
      gsize              size = (gsize)g_rand_int_range (fixture->rand, 1, 20000);
      g_autofree guint8 *noise = g_malloc (size);

      for (gsize j = 0; j < size; j++)
        noise[j] = (guint8)g_rand_int (fixture->rand);
      write_bytes (fixture->path, noise, size);
      assert_refused (fixture, "not a Rowcut store");
    }
}

static void
execute (const char *path, const char *sql)
{
  sqlite3 *db = NULL;
  char    *message = NULL;

  g_assert_cmpint (sqlite3_open (path, &db), ==, SQLITE_OK);
  sqlite3_exec (db, sql, NULL, NULL, &message);
  g_assert_cmpstr (message, ==, NULL);
  sqlite3_close (db);
}

static void
test_other_databases (Fixture *fixture, gconstpointer data)
{
  execute (fixture->path, "CREATE TABLE jobs (id)");
  assert_refused (fixture, "another program");
  execute (fixture->path, "PRAGMA application_id = 7; PRAGMA user_version = 1");
  assert_refused (fixture, "another program");
  execute (fixture->path, "DROP TABLE jobs");
  assert_refused (fixture, "another program");
}

/* A message is text, whatever the file says. */
static void
test_names_that_are_no_text (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  g_free (make_store (fixture));
  execute (fixture->path, "CREATE TABLE \"\xff\xfe\" (id)");
  g_assert_null (rc_store_open (fixture->path, NULL, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
}

static void
test_newer_store (Fixture *fixture, gconstpointer data)
{
  g_autofree char *newer = g_strdup_printf ("PRAGMA user_version = %d", RC_SCHEMA_VERSION + 1);

  g_free (make_store (fixture));
  execute (fixture->path, newer);
  assert_refused (fixture, "newer");
  execute (fixture->path, "PRAGMA user_version = 2000000000");
  assert_refused (fixture, "newer");
  execute (fixture->path, "PRAGMA user_version = -1");
  assert_refused (fixture, "damaged");
}

static void
test_changed_tables (Fixture *fixture, gconstpointer data)
{
  static const char *const changes[] = {
    "DROP TABLE walls",
    "ALTER TABLE rooms ADD COLUMN colour TEXT",
    "DROP TRIGGER issued_lines_stay",
    "CREATE TRIGGER extra AFTER INSERT ON rooms BEGIN DELETE FROM walls; END",
    "CREATE VIEW extra AS SELECT 1",
    "DROP INDEX revisions_by_change",
  };

  for (guint i = 0; i < G_N_ELEMENTS (changes); i++)
    {
      g_unlink (fixture->path);
      g_free (make_store (fixture));
      execute (fixture->path, changes[i]);
      assert_refused (fixture, "tables");
    }
}

static void
test_empty_file_is_a_new_store (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcPriceBook) book = rc_store_maker_new_price_book (fixture->rand, 2);
  g_autoptr (GError) error = NULL;
  gboolean created = FALSE;
  RcStore *store;

  write_bytes (fixture->path, "", 0);
  store = rc_store_open (fixture->path, &created, &error);
  g_assert_no_error (error);
  g_assert_true (created);
  rc_store_close (store);

  /* Still new: nobody has filled in the price book. */
  store = rc_store_open (fixture->path, &created, &error);
  g_assert_true (created);
  g_assert_true (rc_store_save_price_book (store, book, &error));
  rc_store_close (store);
  store = rc_store_open (fixture->path, &created, &error);
  g_assert_false (created);
  rc_store_close (store);
}

static void
test_store_in_memory (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcStore) store = rc_store_maker_open (":memory:");
  g_autoptr (RcJob) job = rc_store_maker_new_job (fixture->rand, "J-1", 2);
  g_autofree char *dump = rc_store_maker_dump_job (job);

  save (store, job);
  rc_store_maker_assert_stored (store, "J-1", dump);
  rc_store_maker_assert_sound (store);
}

static void
test_missing_folders (Fixture *fixture, gconstpointer data)
{
  g_autofree char *nowhere = g_build_filename (fixture->folder, "nowhere", "shop.db", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_null (rc_store_open (nowhere, NULL, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
  g_assert_nonnull (strstr (error->message, "nowhere"));
  g_clear_error (&error);
  g_assert_null (rc_store_open (fixture->folder, NULL, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
  g_assert_nonnull (strstr (error->message, "is a folder"));
}

/* Root may write anywhere, so the opening happens in a child that is nobody. 0: refused with `part` in the message. */
static int
open_as_nobody (const char *path, const char *part)
{
  pid_t child = fork ();
  int   status;

  if (child == 0)
    {
      g_autoptr (GError) error = NULL;

      if (geteuid () == 0 && (setgid (65534) != 0 || setuid (65534) != 0))
        _exit (77);
      if (rc_store_open (path, NULL, &error) != NULL)
        _exit (1);
      _exit (strstr (error->message, part) != NULL ? 0 : 2);
    }
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  return WIFEXITED (status) ? WEXITSTATUS (status) : -1;
}

static void
test_read_only (Fixture *fixture, gconstpointer data)
{
  int status;

  g_free (make_store (fixture));
  g_chmod (fixture->path, 0666);
  g_chmod (fixture->folder, 0555);
  status = open_as_nobody (fixture->path, "cannot be written in");
  g_chmod (fixture->path, 0444);
  g_chmod (fixture->folder, 0777);
  if (status == 77)
    {
      g_test_skip ("cannot become nobody here");
      return;
    }
  g_assert_cmpint (status, ==, 0);
  g_assert_cmpint (open_as_nobody (fixture->path, "may not be read and written"), ==, 0);
}

/* Whatever is cut off, the store is refused or, cut between two writes, whole; never half a job. */
static void
test_truncated (Fixture *fixture, gconstpointer data)
{
  g_autofree char *dump = make_store (fixture);
  g_autoptr (GBytes) whole = read_bytes (fixture->path);
  gsize       size;
  const char *bytes = g_bytes_get_data (whole, &size);

  for (guint i = 0; i < 60; i++)
    {
      gsize kept = i < 30 ? (gsize)g_rand_int_range (fixture->rand, 1, (gint32)size)
                          : 4096 * (gsize)g_rand_int_range (fixture->rand, 1, (gint32)(size / 4096));
      g_autoptr (RcStore) store = NULL;
      g_autoptr (GError) error = NULL;

      write_bytes (fixture->path, bytes, kept);
      store = rc_store_open (fixture->path, NULL, &error);
      g_assert_null (store);
      g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
    }
}

/* Bytes are changed here and there: an error or the job as it was, and no crash. Text that is changed within itself
 * cannot be told from text that was typed; then the job still loads whole. */
static void
test_corrupted (Fixture *fixture, gconstpointer data)
{
  g_autofree char *dump = make_store (fixture);
  g_autoptr (GBytes) whole = read_bytes (fixture->path);
  gsize size;
  guint n_refused = 0;

  g_bytes_get_data (whole, &size);
  for (guint i = 0; i < 150; i++)
    {
      g_autofree char *bytes = g_memdup2 (g_bytes_get_data (whole, NULL), size);
      g_autoptr (RcStore) store = NULL;
      g_autoptr (GError) error = NULL;

      for (gint j = g_rand_int_range (fixture->rand, 1, 40); j > 0; j--)
        bytes[g_rand_int_range (fixture->rand, 0, (gint32)size)] = (char)g_rand_int (fixture->rand);
      write_bytes (fixture->path, bytes, size);
      store = rc_store_open (fixture->path, NULL, &error);
      n_refused += store == NULL;
      if (store != NULL)
        {
          g_autoptr (RcJob) job = rc_store_load_job (store, "J-1", NULL);
          g_autofree char *report = NULL;

          while (rc_store_undo (store, "J-1", NULL, NULL))
            ;
          rc_store_check (store, &report, NULL);
        }
      else
        {
          g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
        }
    }
  g_test_message ("%u of 150 refused at opening", n_refused);
  g_assert_cmpuint (n_refused, >, 75);
}

/* TRUE when another program would see this one's lock on the file. */
static gboolean
is_locked_for_others (const char *path)
{
  int   status = 0;
  pid_t child = fork ();

  if (child == 0)
    {
      struct flock lock = { .l_type = F_WRLCK, .l_whence = SEEK_SET };
      int          file = open (path, O_RDWR);
      _exit (file >= 0 && fcntl (file, F_GETLK, &lock) == 0 && lock.l_type != F_UNLCK ? 1 : 0);
    }
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  return WIFEXITED (status) && WEXITSTATUS (status) == 1;
}

/* The day's backup opens the store a second time in the same program. When that let go of the first one's locks (POSIX
 * takes a program's locks off a file when it closes any handle to it), another program's closing took the log away
 * under it: what was saved from then on stood nowhere until the end. */
static void
test_opened_twice (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcStore) store = rc_store_maker_open (fixture->path);

  g_assert_true (is_locked_for_others (fixture->path));
  rc_store_close (rc_store_maker_open (fixture->path));
  g_assert_true (is_locked_for_others (fixture->path));
}

static void
test_backup (Fixture *fixture, gconstpointer data)
{
  g_autofree char *dump = make_store (fixture);
  g_autofree char *copy = g_build_filename (fixture->folder, "copy.db", NULL);
  g_autoptr (RcStore) store = rc_store_maker_open (fixture->path);
  g_autoptr (RcStore) other = rc_store_maker_open (fixture->path);
  g_autoptr (RcStore) copied = NULL;
  g_autoptr (RcJob) job = rc_store_load_job (other, "J-2", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (GDir) dir = NULL;
  g_autofree char *edited = NULL;
  const char      *name;

  /* What is only in the log yet belongs to the backup, too. */
  g_free (job->title);
  job->title = g_strdup ("Just now");
  save (other, job);
  edited = rc_store_maker_dump_job (job);
  g_assert_true (rc_store_backup (store, copy, &error));
  g_assert_no_error (error);
  g_assert_false (rc_store_backup (store, copy, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
  g_clear_error (&error);

  dir = g_dir_open (fixture->folder, 0, NULL);
  while ((name = g_dir_read_name (dir)) != NULL)
    if (!g_str_has_prefix (name, "shop.db"))
      g_assert_cmpstr (name, ==, "copy.db");
  copied = rc_store_maker_open (copy);
  rc_store_maker_assert_stored (copied, "J-1", dump);
  rc_store_maker_assert_stored (copied, "J-2", edited);
  rc_store_maker_assert_sound (copied);
}

static void
test_backup_to_nowhere (Fixture *fixture, gconstpointer data)
{
  g_autofree char *nowhere = g_build_filename (fixture->folder, "nowhere", "copy.db", NULL);
  g_autoptr (RcStore) store = rc_store_maker_open (fixture->path);
  g_autoptr (GError) error = NULL;

  g_assert_false (rc_store_backup (store, nowhere, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
  g_assert_nonnull (strstr (error->message, nowhere));
}

static void
test_disk_full (Fixture *fixture, gconstpointer data)
{
  g_autofree char *dump = make_store (fixture);
  g_autoptr (RcStore) store = rc_store_maker_open (fixture->path);
  g_autoptr (RcJob) job = rc_store_load_job (store, "J-1", NULL);
  g_autoptr (RcJob) big = rc_store_maker_new_job (fixture->rand, "J-3", 200);
  g_autoptr (GError) error = NULL;
  g_autofree char *edited = NULL;

  sqlite3_exec (store->db, "PRAGMA max_page_count = 1", NULL, NULL, NULL); /* as many as there are */
  g_assert_false (rc_store_save_job (store, big, "New job", NOW, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
  g_assert_nonnull (strstr (error->message, "no room"));
  g_clear_error (&error);
  g_assert_null (rc_store_load_job (store, "J-3", NULL));
  rc_store_maker_assert_stored (store, "J-1", dump);
  /* The full check walks the steps and takes its walk back: that too wants room. */
  sqlite3_exec (store->db, "PRAGMA max_page_count = 1000000", NULL, NULL, NULL);
  rc_store_maker_assert_sound (store);
  sqlite3_exec (store->db, "PRAGMA max_page_count = 1", NULL, NULL, NULL);

  for (guint i = 0; i < 100; i++)
    g_ptr_array_add (rc_job_get_measure (job, NULL)->rooms,
                     rc_room_copy (rc_job_get_measure (big, NULL)->rooms->pdata[i]));
  g_assert_false (rc_store_save_job (store, job, "Add rooms", NOW, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
  g_clear_error (&error);
  rc_store_maker_assert_stored (store, "J-1", dump);

  sqlite3_exec (store->db, "PRAGMA max_page_count = 1000000", NULL, NULL, NULL);
  save (store, job);
  edited = rc_store_maker_dump_job (job);
  rc_store_maker_assert_stored (store, "J-1", edited);
  rc_store_maker_assert_sound (store);
}

static void
test_busy (Fixture *fixture, gconstpointer data)
{
  g_autofree char *dump = make_store (fixture);
  g_autoptr (RcStore) store = rc_store_maker_open (fixture->path);
  g_autoptr (RcJob) job = rc_store_load_job (store, "J-1", NULL);
  g_autoptr (GError) error = NULL;
  sqlite3 *other = NULL;

  g_free (job->title);
  job->title = g_strdup ("Meanwhile");
  sqlite3_busy_timeout (store->db, 20);
  g_assert_cmpint (sqlite3_open (fixture->path, &other), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (other, "BEGIN IMMEDIATE", NULL, NULL, NULL), ==, SQLITE_OK);
  g_assert_false (rc_store_save_job (store, job, "Edit", NOW, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
  g_assert_nonnull (strstr (error->message, "another program"));
  g_assert_nonnull (strstr (error->message, "J-1"));
  rc_store_maker_assert_stored (store, "J-1", dump); /* reading goes on */
  sqlite3_exec (other, "ROLLBACK", NULL, NULL, NULL);
  sqlite3_close (other);
  save (store, job);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(path, function) g_test_add (path, Fixture, NULL, set_up, function, tear_down)
  ADD ("/store-files/what-is-no-database-is-refused", test_no_database);
  ADD ("/store-files/another-programs-database-is-refused", test_other_databases);
  ADD ("/store-files/names-that-are-no-text", test_names_that_are_no_text);
  ADD ("/store-files/a-newer-store-is-refused", test_newer_store);
  ADD ("/store-files/changed-tables-are-refused", test_changed_tables);
  ADD ("/store-files/an-empty-file-is-a-new-store", test_empty_file_is_a_new_store);
  ADD ("/store-files/a-store-in-memory", test_store_in_memory);
  ADD ("/store-files/a-missing-folder-is-named", test_missing_folders);
  ADD ("/store-files/what-cannot-be-written-is-refused", test_read_only);
  ADD ("/store-files/a-truncated-store-is-refused", test_truncated);
  ADD ("/store-files/a-corrupted-store-does-no-harm", test_corrupted);
  ADD ("/store-files/opened-twice-the-locks-stay", test_opened_twice);
  ADD ("/store-files/a-backup-holds-everything", test_backup);
  ADD ("/store-files/a-backup-to-nowhere-fails", test_backup_to_nowhere);
  ADD ("/store-files/a-full-disk-changes-nothing", test_disk_full);
  ADD ("/store-files/a-busy-store-changes-nothing", test_busy);
  return g_test_run ();
}
