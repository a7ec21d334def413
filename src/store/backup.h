/* A copy of a database in use, as one file complete by itself. */
#pragma once

#include "store-private.h"

/* Copies what is committed now, checks the copy, and only then gives it its name. Refuses a file that exists. `source`
 * is the path for messages. */
gboolean rc_backup_write (sqlite3 *db, const char *source, const char *path, GError **error);
