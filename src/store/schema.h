/* What makes a file a store of ours: its mark, its version, its tables; and how older ones are brought up to date. */
#pragma once

#include "store-private.h"

/* SQLite's application_id of a store: "RwCt". */
#define RC_SCHEMA_APPLICATION_ID 0x52774374

/* The version that data/schema.sql makes. */
#define RC_SCHEMA_VERSION        6
#define RC_SCHEMA_MAX_MIGRATIONS 8

/* migrations[0] turns a store of version 1 into one of version 2, and so on (data/migrate-1.sql, ...); NULL: no way.
 * Foreign keys are off while one runs and checked after. Changesets of earlier steps must still fit: add columns at the
 * end of a job's tables, with a default, and keep their keys, or empty `steps`. Rows of such a table are stored anew in
 * the same migration (data/migrate-4.sql says why). */
typedef struct
{
  int         version; /* as `sql` makes it */
  const char *sql;     /* makes a new store */
  const char *migrations[RC_SCHEMA_MAX_MIGRATIONS];
} RcSchema;

/* The schema that this program works with. */
void rc_schema_init_current (RcSchema *schema);

/* Tells what the file is before anything is changed. *version gets its version, 0 for an empty file. FALSE with an
 * error for a file that is no database, somebody else's database, or a store of a newer program. */
gboolean rc_schema_identify (sqlite3 *db, const char *path, const RcSchema *schema, int *version, GError **error);

/* Makes the tables in an empty file, whole or not at all; a store that another program has made meanwhile stays. */
gboolean rc_schema_create (sqlite3 *db, const char *path, const RcSchema *schema, GError **error);

/* Brings an older store up to date, whole or not at all, after a backup beside it ("rowcut.db.version-1.backup", the
 * first such name that is free; none where one of them is the same already). */
gboolean rc_schema_migrate (RcStore *store, const RcSchema *schema, GError **error);

/* Tables, columns, keys, indexes and triggers, one to a line in a fixed order. Two stores with the same description
 * work the same. (transfer full) NULL on error. */
char *rc_schema_describe (sqlite3 *db, const char *path, GError **error);

/* The store's tables are those of `schema`. On FALSE the error names the first that is not. */
gboolean rc_schema_check (sqlite3 *db, const char *path, const RcSchema *schema, GError **error);

/* One number from a PRAGMA or SELECT that gives a single row. */
gboolean rc_schema_get_integer (sqlite3 *db, const char *path, const char *sql, gint64 *number, GError **error);

/* rc_store_open with a given schema; tests open older and newer ones. */
RcStore *rc_store_open_schema (const char *path, const RcSchema *schema, gboolean *created, GError **error);
