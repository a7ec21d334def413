#include "picture-dialog.h"

#include <glib/gi18n-lib.h>

#define HELD_KEY "rowcut-picture-chooser"

static void
on_response (GtkNativeDialog *chooser, int response, RcFloorView *floor)
{
  g_autoptr (GFile) file
      = response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser)) : NULL;

  if (file)
    rc_floor_view_add_picture (floor, file);
  g_object_set_data (G_OBJECT (floor), HELD_KEY, NULL);
}

void
rc_picture_dialog_open (RcFloorView *floor)
{
  static const char *const PATTERNS[] = { "*.png", "*.jpg", "*.jpeg", "*.pdf", "*.PNG", "*.JPG", "*.JPEG", "*.PDF" };
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  if (g_object_get_data (G_OBJECT (floor), HELD_KEY))
    return;
  GtkFileChooserNative *chooser
      = gtk_file_chooser_native_new (_ ("Plan picture"), GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (floor))),
                                     GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Open"), _ ("_Cancel"));
  gtk_file_filter_set_name (filter, _ ("Pictures and PDF"));
  for (guint i = 0; i < G_N_ELEMENTS (PATTERNS); i++)
    gtk_file_filter_add_pattern (filter, PATTERNS[i]);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), filter);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  g_signal_connect_object (chooser, "response", G_CALLBACK (on_response), floor, 0);
  g_object_set_data_full (G_OBJECT (floor), HELD_KEY, chooser, g_object_unref);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}
