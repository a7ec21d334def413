/* The store's daily backup, made in a thread while the desk is open. */
#pragma once

#include <gtk/gtk.h>

/* Looks now and then, by the clock of this machine, whether today's backup of the store `path` is there, and makes it
 * when it is not. What goes wrong is told in the active window of `application`, once. (transfer full) a timer for
 * g_source_remove; 0 for a store in memory. */
guint rc_daily_backup_start (GtkApplication *application, const char *path);
