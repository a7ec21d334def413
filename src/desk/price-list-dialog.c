#include "price-list-dialog.h"

#include <glib/gi18n-lib.h>

#include "price-csv.h"

#define HELD_KEY "rowcut-price-list-chooser"

typedef struct
{
  void (*take) (gpointer window, const char *path);
} Task;

static void
on_response (GtkNativeDialog *chooser, int response, GtkWindow *window)
{
  g_autoptr (GFile) file
      = response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser)) : NULL;
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;
  Task             task = *(Task *)g_object_get_data (G_OBJECT (chooser), HELD_KEY);

  g_object_set_data (G_OBJECT (window), HELD_KEY, NULL);
  if (path != NULL)
    task.take (window, path);
}

/* The dialog lives as long as the window holds it: until its response. */
void
rc_price_list_dialog_open (GtkWindow *window, GtkFileChooserAction action,
                           void (*take) (gpointer window, const char *path))
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();
  const Task task = { take };
  gboolean   reads = action == GTK_FILE_CHOOSER_ACTION_OPEN;

  if (g_object_get_data (G_OBJECT (window), HELD_KEY) != NULL)
    return;
  GtkFileChooserNative *chooser
      = gtk_file_chooser_native_new (reads ? _ ("Take a price list") : _ ("Write a price list"), window, action,
                                     reads ? _ ("_Open") : _ ("_Save"), _ ("_Cancel"));
  gtk_file_filter_set_name (filter, _ ("Price lists (CSV)"));
  gtk_file_filter_add_pattern (filter, "*.csv");
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), filter);
  if (!reads)
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), "prices.csv");
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  g_object_set_data_full (G_OBJECT (chooser), HELD_KEY, g_memdup2 (&task, sizeof task), g_free);
  g_object_set_data_full (G_OBJECT (window), HELD_KEY, chooser, g_object_unref);
  g_signal_connect_object (chooser, "response", G_CALLBACK (on_response), window, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

RcPriceBook *
rc_price_list_read (const RcPriceBook *book, const char *path, GError **error)
{
  g_autofree char *csv = NULL, *name = g_path_get_basename (path);
  g_autoptr (RcPriceBook) read = NULL;
  RcPriceBook *edited;

  if (!g_file_get_contents (path, &csv, NULL, error)
      || (read = rc_price_csv_parse (csv, name, &book->currency, error)) == NULL)
    return NULL;
  edited = rc_price_book_copy (book);
  rc_price_book_take_list (edited, read);
  return edited;
}

gboolean
rc_price_list_write (const RcPriceBook *book, const char *path, GError **error)
{
  g_autofree char *csv = rc_price_csv_format (book);

  return g_file_set_contents (path, csv, -1, error);
}
