#include "job-file-dialog.h"

#include <glib/gi18n-lib.h>

#include "file-dialog.h"
#include "job-file.h"

static const char *const PATTERNS[] = { "*.xml", NULL };

static void
read_file (gpointer window, GFile *file)
{
  g_autofree char *path = g_file_get_path (file);
  g_autoptr (GError) error = NULL;

  if (path != NULL && !rc_window_import (window, path, &error))
    rc_window_tell (window, error->message);
}

static void
write_file (gpointer window, GFile *file)
{
  g_autofree char *path = g_file_get_path (file);
  RcDocument      *document = rc_window_get_document (window);
  g_autoptr (GError) error = NULL;

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
  const RcFileDialog dialog = { .title = _ ("Open a job file"), .kind = _ ("Job files"), .patterns = PATTERNS };

  rc_file_dialog_open (window, &dialog, read_file);
}

void
rc_job_file_dialog_save (RcWindow *window)
{
  RcDocument *document = rc_window_get_document (window);

  if (document == NULL)
    return;
  g_autofree char   *name = g_strdup_printf ("%s.xml", rc_document_get_job (document)->id);
  const RcFileDialog dialog = { _ ("Write a job file"), TRUE, name, _ ("Job files"), PATTERNS };
  rc_file_dialog_open (window, &dialog, write_file);
}
