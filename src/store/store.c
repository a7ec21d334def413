#include "store-private.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

#include "query.h"
#include "schema.h"

/* How long to wait for another program that is writing. */
#define BUSY_WAIT_MS 5000

/* A store up to this size is looked through at every opening: some 3 ms of processor a MB. A larger one only when it
 * was not closed properly; the rest of the time its daily backup, which is made in a thread, looks through every page.
 */
#define QUICK_CHECK_MAX_BYTES (G_GINT64_CONSTANT (16) * 1024 * 1024)

char *
rc_store_dup_default_path (void)
{
  return g_build_filename (g_get_user_data_dir (), "rowcut", "rowcut.db", NULL);
}

static gboolean
refuse (GError **error, const char *message, const char *path)
{
  g_set_error (error, RC_ERROR, RC_ERROR_STORE, message, path);
  return FALSE;
}

/* What SQLite would only call "unable to open". */
static gboolean
check_file (const char *path, GError **error)
{
  g_autofree char *folder = g_path_get_dirname (path);
  g_autofree char *default_path = rc_store_dup_default_path ();

  if (g_str_equal (path, default_path) && g_mkdir_with_parents (folder, 0700) != 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_STORE, _ ("The folder %s for the store cannot be made: %s"), folder,
                   g_strerror (errno));
      return FALSE;
    }
  if (!g_file_test (folder, G_FILE_TEST_IS_DIR))
    return refuse (error, _ ("There is no folder %s to keep the store in; make it, or name another."), folder);
  if (g_file_test (path, G_FILE_TEST_IS_DIR))
    return refuse (error, _ ("%s is a folder; name the store's file in it, such as rowcut.db."), path);
  if (g_access (folder, W_OK | X_OK) != 0)
    return refuse (error,
                   _ ("The folder %s cannot be written in, and a store needs to: copy the store to a folder of yours, "
                      "or get the right to write there."),
                   folder);
  if (g_file_test (path, G_FILE_TEST_EXISTS) && g_access (path, R_OK | W_OK) != 0)
    return refuse (error,
                   _ ("%s may not be read and written by you: copy the store to a folder of yours, or get the right to "
                      "write it."),
                   path);
  return TRUE;
}

/* SQLite takes a file of less than one page for an empty one and would write over it. Read through SQLite's own handle:
 * opening the file once more and closing it would let go of the locks that this program holds on it elsewhere, and
 * another program would then take away the log under it. */
static gboolean
check_mark (RcStore *store, GError **error)
{
  static const char mark[16] = "SQLite format 3";
  char              found[512] = "";
  sqlite3_file     *file = NULL;
  GStatBuf          status;

  if (g_stat (store->path, &status) != 0 || status.st_size == 0
      || sqlite3_file_control (store->db, "main", SQLITE_FCNTL_FILE_POINTER, &file) != SQLITE_OK
      || file->pMethods == NULL)
    return TRUE;
  if (status.st_size >= (goffset)sizeof found
      && (file->pMethods->xRead (file, found, sizeof found, 0) != SQLITE_OK || memcmp (found, mark, sizeof mark) == 0))
    return TRUE;
  return rc_store_fail_with (NULL, SQLITE_NOTADB, store->path, _ ("opening"), error);
}

static gboolean
run_pragma (RcStore *store, const char *sql, GError **error)
{
  if (sqlite3_exec (store->db, sql, NULL, NULL, NULL) != SQLITE_OK)
    return rc_store_fail (store, _ ("opening"), error);
  return TRUE;
}

/* The file may come from anywhere: its schema is not trusted to do more than hold tables. */
static gboolean
configure (RcStore *store, GError **error)
{
  sqlite3_extended_result_codes (store->db, 1);
  sqlite3_busy_timeout (store->db, BUSY_WAIT_MS);
  sqlite3_db_config (store->db, SQLITE_DBCONFIG_DEFENSIVE, 1, NULL);
  sqlite3_db_config (store->db, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, NULL);
  return run_pragma (store, "PRAGMA foreign_keys = ON", error)
         && run_pragma (store, "PRAGMA cell_size_check = ON", error)
         && run_pragma (store, "PRAGMA synchronous = FULL", error);
}

/* The change to a write-ahead log takes a lock for which SQLite does not wait by itself. */
static gboolean
set_write_ahead_log (RcStore *store, GError **error)
{
  int waited_ms = 0;

  while (sqlite3_exec (store->db, "PRAGMA journal_mode = WAL", NULL, NULL, NULL) != SQLITE_OK)
    {
      if ((sqlite3_errcode (store->db) & 0xff) != SQLITE_BUSY || waited_ms >= BUSY_WAIT_MS)
        return rc_store_fail (store, _ ("opening"), error);
      waited_ms += sqlite3_sleep (20);
    }
  return TRUE;
}

static gboolean
check_pages (RcStore *store, GError **error)
{
  g_auto (RcQuery) query = { 0 };
  g_autofree char *fault = NULL;

  if (!rc_query_start (&query, store, "PRAGMA quick_check (1)", NULL, 0, error))
    return FALSE;
  if (rc_query_next (&query, error))
    fault = rc_query_dup_text (&query, 0);
  if (query.failed)
    return FALSE;
  if (g_strcmp0 (fault, "ok") == 0)
    return TRUE;
  g_set_error (error, RC_ERROR, RC_ERROR_STORE,
               _ ("%s is damaged (%s). Keep this file, and go on with the latest backup."), store->path, fault);
  return FALSE;
}

static gboolean
check_references (RcStore *store, GError **error)
{
  g_auto (RcQuery) query = { 0 };

  if (!rc_query_start (&query, store, "PRAGMA foreign_key_check", NULL, 0, error))
    return FALSE;
  if (!rc_query_next (&query, error))
    return !query.failed;
  g_set_error (error, RC_ERROR, RC_ERROR_STORE,
               _ ("%s is damaged (a row of %s belongs to no row of %s). Keep this file, and go on with the latest "
                  "backup."),
               store->path, rc_query_get_text (&query, 0), rc_query_get_text (&query, 2));
  return FALSE;
}

/* SQLite fills up a last page that is cut off with zeros, and does not always notice. */
static gboolean
check_length (RcStore *store, goffset size, GError **error)
{
  g_auto (RcQuery) query = { 0 };

  if (!rc_query_start (&query, store, "PRAGMA page_size", NULL, 0, error) || !rc_query_next (&query, error))
    return FALSE;
  if (size % rc_query_get_integer (&query, 0) == 0)
    return TRUE;
  return refuse (error, _ ("%s is damaged (it is cut short). Keep this file, and go on with the latest backup."),
                 store->path);
}

static gboolean
check_whole (RcStore *store, const RcSchema *schema, gboolean left_open, GError **error)
{
  GStatBuf status;

  if (!rc_schema_check (store->db, store->path, schema, error))
    return FALSE;
  if (!left_open && g_stat (store->path, &status) == 0)
    {
      if (!check_length (store, status.st_size, error))
        return FALSE;
      if (status.st_size > QUICK_CHECK_MAX_BYTES)
        return TRUE;
    }
  return check_pages (store, error) && check_references (store, error);
}

/* A log with something in it: another program has the store open, or one stopped without closing it. */
static gboolean
is_left_open (const char *path)
{
  g_autofree char *log = g_strconcat (path, "-wal", NULL);
  GStatBuf         status;

  return g_stat (log, &status) == 0 && status.st_size > 0;
}

/* So that a transaction can be taken back when there is no memory left to prepare that. */
static gboolean
prepare_rollback (RcStore *store, GError **error)
{
  g_auto (RcQuery) query = { 0 };

  return rc_query_start (&query, store, "ROLLBACK", NULL, 0, error);
}

static gboolean
prepare (RcStore *store, const RcSchema *schema, GError **error)
{
  gboolean left_open = is_left_open (store->path);
  int      version;

  if (!configure (store, error) || !prepare_rollback (store, error)
      || !rc_schema_identify (store->db, store->path, schema, &version, error))
    return FALSE;
  if (sqlite3_db_readonly (store->db, "main") == 1)
    return refuse (error, _ ("%s can only be read, not written: copy the store to where it can be."), store->path);
  if (version == 0 && !rc_schema_create (store->db, store->path, schema, error))
    return FALSE;
  if (!set_write_ahead_log (store, error))
    return FALSE;
  if (version != 0 && version < schema->version && !rc_schema_migrate (store, schema, error))
    return FALSE;
  return version == 0 || check_whole (store, schema, left_open, error);
}

/* A store is new until it has a price book, so that a program stopped in between does not leave a store without. */
static gboolean
find_created (RcStore *store, gboolean *created, GError **error)
{
  gint64 n_books;

  if (!rc_query_find_integer (store, "SELECT count (*) FROM price_book", NULL, 0, 0, &n_books, error))
    return FALSE;
  if (created != NULL)
    *created = n_books == 0;
  return TRUE;
}

static void
finalize_statement (gpointer statement)
{
  sqlite3_finalize (statement);
}

/* Names in a foreign or damaged file may be no text at all; what is shown to people must be. */
static void
make_readable (GError **error)
{
  if (error != NULL && *error != NULL && !g_utf8_validate ((*error)->message, -1, NULL))
    {
      char *message = g_utf8_make_valid ((*error)->message, -1);

      g_free ((*error)->message);
      (*error)->message = message;
    }
}

RcStore *
rc_store_open_schema (const char *path, const RcSchema *schema, gboolean *created, GError **error)
{
  g_autoptr (RcStore) store = g_new0 (RcStore, 1);
  gboolean in_memory = g_str_equal (path, ":memory:");
  int      code;

  store->path = in_memory ? g_strdup (path) : g_canonicalize_filename (path, NULL);
  store->statements = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, finalize_statement);
  store->seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  if (!in_memory && !check_file (store->path, error))
    return NULL;
  code = sqlite3_open_v2 (store->path, &store->db, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, NULL);
  if (code != SQLITE_OK)
    {
      rc_store_fail_with (store->db, code, store->path, _ ("opening"), error);
      return NULL;
    }
  if (!in_memory && !check_mark (store, error))
    return NULL;
  if (!prepare (store, schema, error) || !find_created (store, created, error))
    {
      make_readable (error);
      return NULL;
    }
  return g_steal_pointer (&store);
}

RcStore *
rc_store_open (const char *path, gboolean *created, GError **error)
{
  RcSchema schema;

  g_return_val_if_fail (path != NULL, NULL);

  rc_schema_init_current (&schema);
  return rc_store_open_schema (path, &schema, created, error);
}

void
rc_store_close (RcStore *store)
{
  if (store == NULL)
    return;
  g_hash_table_unref (store->statements);
  g_hash_table_unref (store->seen);
  if (sqlite3_close (store->db) != SQLITE_OK)
    g_critical ("a statement was left open in %s", store->path);
  g_free (store->path);
  g_free (store);
}

gboolean
rc_store_get_data_version (RcStore *store, gint64 *version, GError **error)
{
  g_return_val_if_fail (store != NULL && version != NULL, FALSE);

  return rc_query_find_integer (store, "PRAGMA data_version", NULL, 0, 0, version, error);
}
