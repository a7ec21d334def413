#include "job-file-dialog.h"

#include <glib/gi18n-lib.h>

#include "job-file.h"

#define HELD_KEY "rowcut-file-chooser"

/* The dialog lives as long as the window holds it: until its response. */
static void
hold (RcWindow *window, GtkFileChooserNative *chooser)
{
  g_object_set_data_full (G_OBJECT (window), HELD_KEY, chooser, g_object_unref);
}

static void
let_go (RcWindow *window)
{
  g_object_set_data (G_OBJECT (window), HELD_KEY, NULL);
}

/* What files it is about. */
typedef struct
{
  const char *name, *pattern;
} Kind;

static void
show (RcWindow *window, const char *title, GtkFileChooserAction action, const char *accept, const char *name,
      const Kind *kind, GCallback response)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  if (g_object_get_data (G_OBJECT (window), HELD_KEY))
    return;
  GtkFileChooserNative *chooser
      = gtk_file_chooser_native_new (title, GTK_WINDOW (window), action, accept, _ ("_Cancel"));
  gtk_file_filter_set_name (filter, kind->name);
  gtk_file_filter_add_pattern (filter, kind->pattern);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), filter);
  if (name)
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  g_signal_connect_object (chooser, "response", response, window, 0);
  hold (window, chooser);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

static char *
dup_path (GtkNativeDialog *dialog, int response)
{
  g_autoptr (GFile) file
      = response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog)) : NULL;
  return file ? g_file_get_path (file) : NULL;
}

static void
on_open_response (GtkNativeDialog *dialog, int response, RcWindow *window)
{
  g_autofree char *path = dup_path (dialog, response);
  g_autoptr (GError) error = NULL;

  let_go (window);
  if (path && !rc_window_import (window, path, &error))
    rc_window_tell (window, error->message);
}

static void
on_save_response (GtkNativeDialog *dialog, int response, RcWindow *window)
{
  g_autofree char *path = dup_path (dialog, response);
  RcDocument      *document = rc_window_get_document (window);
  g_autoptr (GError) error = NULL;

  let_go (window);
  if (path == NULL || document == NULL)
    return;
  if (rc_job_file_write (rc_document_get_job (document), rc_document_get_price_book (document), path, &error))
    {
      g_autofree char *text = g_strdup_printf (_ ("Written to %s"), path);
      rc_window_tell (window, text);
    }
  else
    rc_window_tell (window, error->message);
}

void
rc_job_file_dialog_open (RcWindow *window)
{
  show (window, _ ("Open a job file"), GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Open"), NULL,
        &(Kind){ _ ("Job files"), "*.xml" }, G_CALLBACK (on_open_response));
}

void
rc_job_file_dialog_save (RcWindow *window)
{
  RcDocument *document = rc_window_get_document (window);

  if (document == NULL)
    return;
  g_autofree char *name = g_strdup_printf ("%s.xml", rc_document_get_job (document)->id);
  show (window, _ ("Write a job file"), GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), name,
        &(Kind){ _ ("Job files"), "*.xml" }, G_CALLBACK (on_save_response));
}
