#include "file-dialog.h"

#include <glib/gi18n-lib.h>

#define HELD_KEY "rowcut-file-dialog"

/* A dialog that is open. */
typedef struct
{
  GtkFileChooserNative *chooser;
  void (*take) (gpointer owner, GFile *file);
} Held;

static void
held_free (gpointer data)
{
  Held *held = data;

  g_object_unref (held->chooser);
  g_free (held);
}

static void
on_response (GtkNativeDialog *dialog, int response, gpointer owner)
{
  g_autoptr (GFile) file
      = response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog)) : NULL;
  const Held held = *(const Held *)g_object_get_data (owner, HELD_KEY);

  g_object_set_data (owner, HELD_KEY, NULL);
  if (file != NULL)
    held.take (owner, file);
}

static void
show_only (GtkFileChooser *chooser, const RcFileDialog *dialog)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, dialog->kind);
  for (const char *const *pattern = dialog->patterns; *pattern != NULL; pattern++)
    gtk_file_filter_add_pattern (filter, *pattern);
  gtk_file_chooser_add_filter (chooser, filter);
}

/* The dialog lives as long as the owner holds it: until its response. */
void
rc_file_dialog_open (gpointer owner, const RcFileDialog *dialog, void (*take) (gpointer owner, GFile *file))
{
  Held *held;

  if (g_object_get_data (owner, HELD_KEY) != NULL)
    return;
  held = g_new0 (Held, 1);
  held->take = take;
  held->chooser
      = gtk_file_chooser_native_new (dialog->title, GTK_WINDOW (gtk_widget_get_root (owner)),
                                     dialog->saves ? GTK_FILE_CHOOSER_ACTION_SAVE : GTK_FILE_CHOOSER_ACTION_OPEN,
                                     dialog->saves ? _ ("_Save") : _ ("_Open"), _ ("_Cancel"));
  if (dialog->kind != NULL)
    show_only (GTK_FILE_CHOOSER (held->chooser), dialog);
  if (dialog->name != NULL)
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (held->chooser), dialog->name);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (held->chooser), TRUE);
  g_object_set_data_full (owner, HELD_KEY, held, held_free);
  g_signal_connect_object (held->chooser, "response", G_CALLBACK (on_response), owner, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (held->chooser));
}
