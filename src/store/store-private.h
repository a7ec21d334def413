/* What the files of this folder share: the open store, its transactions and its errors. */
#pragma once

/* The session extension's part of sqlite3.h. */
#define SQLITE_ENABLE_SESSION        1
#define SQLITE_ENABLE_PREUPDATE_HOOK 1
#include <sqlite3.h>

#include "rowcut-error.h"
#include "store.h"

struct _RcStore
{
  sqlite3    *db;
  char       *path;
  GHashTable *statements; /* SQL text -> sqlite3_stmt, prepared once */
  GHashTable *seen;       /* job id -> gint64, the revision last loaded or saved here */
};

/* Every error of SQLite in words for people: `doing` says what was being done ("saving job J-1"). Always FALSE. */
gboolean rc_store_fail (RcStore *store, const char *doing, GError **error);
gboolean rc_store_fail_with (sqlite3 *db, int code, const char *path, const char *doing, GError **error);

/* BEGIN IMMEDIATE: from here on nobody else writes. FALSE when another program holds the store for longer than the
 * wait. Foreign keys are looked at when the transaction ends. */
gboolean rc_store_begin (RcStore *store, const char *doing, GError **error);

/* Ends the transaction: on disk when TRUE. On FALSE everything is as it was before. */
gboolean rc_store_commit (RcStore *store, const char *doing, GError **error);

/* Takes the transaction back, if there is one. Always FALSE. */
gboolean rc_store_rollback (RcStore *store);

/* Gives out the next number of a kind, within a transaction. */
gboolean rc_store_count (RcStore *store, const char *counter, gint64 *number, GError **error);
/* Raises the counter to `number` when it is below. */
gboolean rc_store_count_at_least (RcStore *store, const char *counter, gint64 number, GError **error);
/* 0 when nothing was given out yet. */
gboolean rc_store_get_count (RcStore *store, const char *counter, gint64 *number, GError **error);
