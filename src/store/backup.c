#include "backup.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <unistd.h>

#include "schema.h"

#define BUSY_WAIT_MS 50
#define BUSY_TRIES   100

static int
copy_pages (sqlite3 *from, sqlite3 *to)
{
  sqlite3_backup *backup = sqlite3_backup_init (to, "main", from, "main");
  int             code, tries = 0;

  if (backup == NULL)
    return sqlite3_errcode (to);
  do
    {
      code = sqlite3_backup_step (backup, -1);
      if (code == SQLITE_BUSY || code == SQLITE_LOCKED)
        sqlite3_sleep (BUSY_WAIT_MS);
    }
  while ((code == SQLITE_BUSY || code == SQLITE_LOCKED) && ++tries < BUSY_TRIES);
  sqlite3_backup_finish (backup);
  return code == SQLITE_DONE ? SQLITE_OK : code;
}

/* That it could not is told by the mode that is still there, and not always by an error. */
static gboolean
leave_log (sqlite3 *copy)
{
  sqlite3_stmt *statement = NULL;
  gboolean      done = sqlite3_prepare_v2 (copy, "PRAGMA journal_mode = DELETE", -1, &statement, NULL) == SQLITE_OK
                  && sqlite3_step (statement) == SQLITE_ROW
                  && g_strcmp0 ((const char *)sqlite3_column_text (statement, 0), "delete") == 0;

  return sqlite3_finalize (statement) == SQLITE_OK && done;
}

/* The copy carries the mark of a write-ahead log; without it, it is one file that can be moved about. */
static gboolean
finish_copy (sqlite3 *copy, const char *path, GError **error)
{
  gint64   n_sound = 0;
  gboolean looked;

  if (!leave_log (copy))
    return rc_store_fail_with (copy, sqlite3_extended_errcode (copy), path, _ ("writing the backup"), error);
  looked = rc_schema_get_integer (copy, path, "SELECT count (*) FROM pragma_quick_check WHERE quick_check = 'ok'",
                                  &n_sound, error);
  if (looked && n_sound == 1)
    return TRUE;
  if (!looked && (sqlite3_errcode (copy) & 0xff) != SQLITE_CORRUPT)
    return FALSE;
  g_clear_error (error);
  g_set_error (error, RC_ERROR, RC_ERROR_STORE,
               _ ("%s: the copy is damaged and was thrown away; the store itself may be: see what “rowcut-cli store "
                  "check” says of it, and keep the backups that there are"),
               path);
  return FALSE;
}

static gboolean
write_copy (sqlite3 *db, const char *path, GError **error)
{
  sqlite3 *copy = NULL;
  gboolean done = FALSE;
  int      code = sqlite3_open_v2 (path, &copy, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, NULL);

  if (code == SQLITE_OK)
    code = sqlite3_exec (copy, "PRAGMA synchronous = FULL", NULL, NULL, NULL);
  if (code == SQLITE_OK)
    code = copy_pages (db, copy);
  if (code == SQLITE_OK)
    done = finish_copy (copy, path, error);
  else
    rc_store_fail_with (copy, code, path, _ ("writing the backup"), error);
  sqlite3_close (copy);
  return done;
}

/* A new name in a folder is on disk once the folder is. */
static void
sync_folder (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  int              file = g_open (folder, O_RDONLY | O_CLOEXEC, 0);

  if (file < 0)
    return;
  fsync (file);
  close (file);
}

static gboolean
fail_on_file (const char *path, int number, GError **error)
{
  g_set_error (error, RC_ERROR, RC_ERROR_STORE, _ ("%s: the backup cannot be written: %s"), path, g_strerror (number));
  return FALSE;
}

/* What SQLite may have left beside a copy that is closed: it belongs to nothing any more. */
static void
remove_beside (const char *copy)
{
  static const char *const ends[] = { "-journal", "-wal", "-shm" };

  for (guint i = 0; i < G_N_ELEMENTS (ends); i++)
    {
      g_autofree char *path = g_strconcat (copy, ends[i], NULL);

      g_unlink (path);
    }
}

void
rc_backup_remove (const char *copy)
{
  remove_beside (copy);
  g_unlink (copy);
}

gboolean
rc_backup_write (sqlite3 *db, const char *source, const char *path, GError **error)
{
  g_autofree char *target = g_canonicalize_filename (path, NULL);
  g_autofree char *part = g_strconcat (target, ".XXXXXX", NULL);
  int              file;

  if (g_file_test (target, G_FILE_TEST_EXISTS))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_STORE,
                   _ ("%s is there already and is not written over; name a new file for the backup of %s"), target,
                   source);
      return FALSE;
    }
  file = g_mkstemp (part);
  if (file < 0)
    return fail_on_file (target, errno, error);
  close (file);
  if (!write_copy (db, part, error))
    {
      rc_backup_remove (part);
      return FALSE;
    }
  remove_beside (part);
  if (g_rename (part, target) != 0)
    {
      fail_on_file (target, errno, error);
      rc_backup_remove (part);
      return FALSE;
    }
  sync_folder (target);
  return TRUE;
}

gboolean
rc_backup_replace (sqlite3 *from, sqlite3 *to, const char *path, GError **error)
{
  int code = copy_pages (from, to);

  return code == SQLITE_OK || rc_store_fail_with (to, code, path, _ ("restoring"), error);
}

gboolean
rc_store_backup (RcStore *store, const char *path, GError **error)
{
  g_return_val_if_fail (store != NULL && path != NULL, FALSE);

  return rc_backup_write (store->db, store->path, path, error);
}
