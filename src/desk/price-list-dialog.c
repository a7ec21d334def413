#include "price-list-dialog.h"

#include <glib/gi18n-lib.h>

#include "file-dialog.h"
#include "price-csv.h"

void
rc_price_list_dialog_open (GtkWindow *window, gboolean saves, void (*take) (gpointer window, GFile *file))
{
  static const char *const PATTERNS[] = { "*.csv", NULL };
  const RcFileDialog       dialog = { saves ? _ ("Write a price list") : _ ("Take a price list"), saves,
                                saves ? "prices.csv" : NULL, _ ("Price lists (CSV)"), PATTERNS };

  rc_file_dialog_open (window, &dialog, take);
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
