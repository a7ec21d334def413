#include "store-private.h"

#include <glib/gi18n-lib.h>

#include "query.h"

/* What went wrong, in words, and what can be done. NULL where SQLite's own words are the best there are. */
static const char *
explain (int code)
{
  switch (code & 0xff)
    {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return _ ("another program is writing to the store; nothing was changed, try again in a moment");
    case SQLITE_FULL:
      return _ ("there is no room left on the disk; nothing was changed, make room and try again");
    case SQLITE_READONLY:
      return _ ("the store can only be read; nothing was changed");
    case SQLITE_IOERR:
      return _ ("the disk could not be read or written; nothing was changed, look at the disk before going on");
    case SQLITE_CORRUPT:
      return _ ("the store is damaged; keep this file, and go on with the latest backup");
    case SQLITE_NOTADB:
      return _ ("this is not a Rowcut store (it is no database); name another file: a new store is made when there is "
                "none");
    case SQLITE_CANTOPEN:
      return _ ("the file cannot be opened");
    case SQLITE_NOMEM:
      return _ ("there is not enough memory; nothing was changed");
    default:
      return NULL;
    }
}

gboolean
rc_store_fail_with (sqlite3 *db, int code, const char *path, const char *doing, GError **error)
{
  const char *words = explain (code);

  g_set_error (error, RC_ERROR, RC_ERROR_STORE, "%s (%s): %s", path, doing,
               words != NULL ? words : (db != NULL ? sqlite3_errmsg (db) : sqlite3_errstr (code)));
  return FALSE;
}

gboolean
rc_store_fail (RcStore *store, const char *doing, GError **error)
{
  return rc_store_fail_with (store->db, sqlite3_extended_errcode (store->db), store->path, doing, error);
}

gboolean
rc_store_begin (RcStore *store, const char *doing, GError **error)
{
  /* One that could not be taken back when it was to be. */
  rc_store_rollback (store);
  if (!rc_query_run (store, "BEGIN IMMEDIATE", NULL, 0, error))
    {
      g_prefix_error (error, "%s: ", doing);
      return FALSE;
    }
  /* Holds until the end of this transaction. It acts when it is prepared, so it must not come from the statements that
   * are prepared once. */
  if (sqlite3_exec (store->db, "PRAGMA defer_foreign_keys = ON", NULL, NULL, NULL) == SQLITE_OK)
    return TRUE;
  rc_store_fail (store, doing, error);
  return rc_store_rollback (store);
}

gboolean
rc_store_commit (RcStore *store, const char *doing, GError **error)
{
  if (rc_query_run (store, "COMMIT", NULL, 0, error))
    return TRUE;
  g_prefix_error (error, "%s: ", doing);
  return rc_store_rollback (store);
}

gboolean
rc_store_rollback (RcStore *store)
{
  /* SQLite has taken some failed transactions back by itself. */
  if (!sqlite3_get_autocommit (store->db))
    rc_query_run (store, "ROLLBACK", NULL, 0, NULL);
  return FALSE;
}

gboolean
rc_store_get_count (RcStore *store, const char *counter, gint64 *number, GError **error)
{
  return rc_query_find_integer (store, "SELECT value FROM counters WHERE name = ?", RC_VALUES (rc_value_text (counter)),
                                0, number, error);
}

gboolean
rc_store_count_at_least (RcStore *store, const char *counter, gint64 number, GError **error)
{
  return rc_query_run (store,
                       "INSERT INTO counters (name, value) VALUES (?, ?)"
                       " ON CONFLICT (name) DO UPDATE SET value = excluded.value WHERE excluded.value > value",
                       RC_VALUES (rc_value_text (counter), rc_value_integer (number)), error);
}

gboolean
rc_store_count (RcStore *store, const char *counter, gint64 *number, GError **error)
{
  gint64 last;

  if (!rc_store_get_count (store, counter, &last, error))
    return FALSE;
  *number = last + 1;
  return rc_store_count_at_least (store, counter, *number, error);
}
