/* Stores as the programs of earlier versions wrote them, for the store's tests. */
#pragma once

/* The demo job with its prices and rolls, quotations, steps done and undone, a job deleted; version 2 also orders, one
 * of them received, a roll cut for the job and its remnant. */
void store_older_write (const char *path, int version);

/* That of version 1 as the program of version 4 left it: opened, brought up, nothing else done. Rows of version 1 do
 * not have the columns that came since. */
void store_older_write_version_4 (const char *path);
