#include "job-actions.h"

#include <glib/gi18n-lib.h>

#include "accounts-window.h"
#include "clock.h"
#include "job-edit.h"
#include "job-file-dialog.h"
#include "shop-window.h"
#include "usual-units.h"
#include "window-actions.h"

void
rc_job_action_new (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcWindow *self = RC_WINDOW (widget);
  RcStore  *store = rc_window_get_store (self);
  g_autoptr (GError) error = NULL;
  g_autofree char *today = rc_clock_dup_today (), *now = rc_clock_dup_now ();
  g_autoptr (RcPriceBook) book = rc_store_load_price_book (store, &error);
  g_autoptr (GPtrArray) stock = book ? rc_store_load_rolls_for_job (store, NULL, &error) : NULL;

  if (stock)
    {
      g_autoptr (RcJob) job = rc_job_edit_new_job (NULL, _ ("New job"), today, book, stock, rc_usual_units_find ());

      if (rc_store_save_new_job (store, job, _ ("New job"), today, now, &error))
        rc_job_list_refresh (rc_window_get_job_list (self));
      if (error == NULL && rc_window_open_job (self, job->id, &error))
        rc_bench_edit_chosen (rc_window_get_bench (self));
    }
  rc_window_tell_error (self, error);
}

void
rc_job_action_duplicate (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcWindow        *self = RC_WINDOW (widget);
  RcDocument      *document = rc_window_get_document (self);
  g_autofree char *today = rc_clock_dup_today (), *now = rc_clock_dup_now (), *id = NULL;
  g_autoptr (GError) error = NULL;

  if (document == NULL)
    return;
  id = rc_store_duplicate_job (rc_window_get_store (self), rc_document_get_job (document)->id, NULL, today, now,
                               &error);
  if (id == NULL || !rc_window_open_job (self, id, &error))
    rc_window_tell_error (self, error);
  rc_job_list_refresh (rc_window_get_job_list (self));
}

void
rc_job_action_open_demo (GtkWidget *widget, const char *name, GVariant *parameter)
{
  g_autoptr (GError) error = NULL;

  if (!rc_window_open_demo (RC_WINDOW (widget), &error))
    rc_window_tell_error (RC_WINDOW (widget), error);
}

void
rc_job_action_show_list (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcWindow *self = RC_WINDOW (widget);
  rc_window_show_jobs (self, !rc_window_are_jobs_shown (self));
}

void
rc_job_action_find (GtkWidget *widget, const char *name, GVariant *parameter)
{
  rc_window_show_jobs (RC_WINDOW (widget), TRUE);
}

static void
on_delete_response (GtkDialog *dialog, int response, RcWindow *self)
{
  RcDocument *document = rc_window_get_document (self);
  g_autoptr (GError) error = NULL;

  gtk_window_destroy (GTK_WINDOW (dialog));
  if (response != GTK_RESPONSE_OK || document == NULL)
    return;
  g_autofree char *id = g_strdup (rc_document_get_job (document)->id);
  rc_window_close_job (self);
  if (!rc_store_delete_job (rc_window_get_store (self), id, &error))
    rc_window_tell_error (self, error);
  rc_job_list_refresh (rc_window_get_job_list (self));
}

void
rc_job_action_delete (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcDocument *document = rc_window_get_document (RC_WINDOW (widget));

  if (document == NULL)
    return;
  GtkWidget *dialog = gtk_message_dialog_new (GTK_WINDOW (widget), GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT,
                                              GTK_MESSAGE_QUESTION, GTK_BUTTONS_CANCEL, _ ("Delete the job “%s”?"),
                                              rc_document_get_job (document)->title);
  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog),
                                            _ ("All its measures go with it. This cannot be undone."));
  gtk_dialog_add_button (GTK_DIALOG (dialog), _ ("_Delete"), GTK_RESPONSE_OK);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), GTK_RESPONSE_CANCEL);
  g_signal_connect_object (dialog, "response", G_CALLBACK (on_delete_response), widget, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

void
rc_job_action_open_file (GtkWidget *widget, const char *name, GVariant *parameter)
{
  rc_job_file_dialog_open (RC_WINDOW (widget));
}

void
rc_job_action_export_accounts (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gtk_window_present (GTK_WINDOW (rc_accounts_window_new (RC_WINDOW (widget))));
}

void
rc_job_action_show_shop (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gtk_window_present (GTK_WINDOW (rc_shop_window_new (RC_WINDOW (widget))));
}

void
rc_job_action_export_file (GtkWidget *widget, const char *name, GVariant *parameter)
{
  rc_job_file_dialog_save (RC_WINDOW (widget));
}
