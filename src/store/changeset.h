/* Whether a changeset is what it should be, before it is given to SQLite, which reads past the end of a damaged one;
 * and what older programs left out of theirs.
 *
 * Format: sqlite.org, "sqlite3session" (session/sqlite3session.c, "Changeset format").
 */
#pragma once

#include "store-private.h"

/* The number of the job that every row of the changeset belongs to. FALSE when it is damaged, names a table that is
 * no job's or has other keys, holds rows of two jobs, or none at all. */
gboolean rc_changeset_find_job (gconstpointer bytes, gsize size, gint64 *job);

/* A row that was stored before its table got a column has none, and it was recorded as NULL there. *completed (transfer
 * full) gets what it stands for, the column's default, wherever the column must have a value; NULL when none is
 * missing. `bytes` are examined already. FALSE with an error when the store cannot be read. */
gboolean rc_changeset_complete (RcStore *store, gconstpointer bytes, gsize size, GBytes **completed, GError **error);
