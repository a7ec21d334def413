/* Whether a changeset is what it should be, before it is given to SQLite, which reads past the end of a damaged one.
 *
 * Format: sqlite.org, "sqlite3session" (session/sqlite3session.c, "Changeset format").
 */
#pragma once

#include <glib.h>

/* The number of the job that every row of the changeset belongs to. FALSE when it is damaged, names a table that is
 * no job's or has other keys, holds rows of two jobs, or none at all. */
gboolean rc_changeset_find_job (gconstpointer bytes, gsize size, gint64 *job);
