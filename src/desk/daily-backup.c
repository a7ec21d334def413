#include "daily-backup.h"

#include <glib/gi18n-lib.h>

#include "clock.h"
#include "desk.h"
#include "store.h"
#include "window.h"

#define INTERVAL_S (30 * 60)

typedef struct
{
  GtkApplication *application; /* unowned: it removes the timer */
  char           *path;
} Backup;

static void
backup_free (gpointer data)
{
  Backup *backup = data;

  g_free (backup->path);
  g_free (backup);
}

/* A store of its own, as one belongs to one thread. */
static void
run_in_thread (GTask *task, gpointer source, gpointer path, GCancellable *cancellable)
{
  g_autofree char *day = rc_clock_dup_today ();
  g_autoptr (GError) error = NULL;
  g_autoptr (RcStore) store = rc_store_open (path, NULL, &error);

  if (store != NULL && rc_store_back_up_daily (store, day, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, g_steal_pointer (&error));
}

static void
on_done (GObject *source, GAsyncResult *result, gpointer data)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (source));
  g_autoptr (GError) error = NULL;

  g_application_release (G_APPLICATION (source));
  if (g_task_propagate_boolean (G_TASK (result), &error) || !RC_IS_WINDOW (window)
      || g_object_get_data (source, "backup-fault-told") != NULL)
    return;
  g_object_set_data (source, "backup-fault-told", GINT_TO_POINTER (TRUE));
  g_autofree char *message = g_strdup_printf (_ ("Today's backup was not made. %s"), error->message);
  rc_window_tell (RC_WINDOW (window), message);
}

static gboolean
back_up (gpointer data)
{
  Backup          *backup = data;
  g_autofree char *day = rc_clock_dup_today ();

  if (rc_store_is_backed_up (backup->path, day))
    return G_SOURCE_CONTINUE;
  g_autoptr (GTask) task = g_task_new (backup->application, NULL, on_done, NULL);
  /* The program ends when the backup is whole. */
  g_application_hold (G_APPLICATION (backup->application));
  g_task_set_task_data (task, g_strdup (backup->path), g_free);
  g_task_run_in_thread (task, run_in_thread);
  return G_SOURCE_CONTINUE;
}

guint
rc_daily_backup_start (GtkApplication *application, const char *path)
{
  Backup *backup;

  if (g_str_equal (path, ":memory:"))
    return 0;
  backup = g_new0 (Backup, 1);
  backup->application = application;
  backup->path = g_strdup (path);
  back_up (backup);
  return g_timeout_add_seconds_full (G_PRIORITY_LOW, INTERVAL_S, back_up, backup, backup_free);
}
