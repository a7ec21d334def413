/* A copy of a database in use, as one file complete by itself. */
#pragma once

#include "store-private.h"

/* Copies what is committed now, checks the copy, and only then gives it its name. Refuses a file that exists. `source`
 * is the path for messages. */
gboolean rc_backup_write (sqlite3 *db, const char *source, const char *path, GError **error);

/* Puts what `from` holds in the place of all that `to` holds, in one transaction. `path` is that of `to`, for messages.
 */
gboolean rc_backup_replace (sqlite3 *from, sqlite3 *to, const char *path, GError **error);

/* A copy that is not wanted, with what SQLite may have left beside it. */
void rc_backup_remove (const char *copy);
