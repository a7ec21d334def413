/* Price lists (CSV): choosing one, reading and writing it. */
#pragma once

#include <gtk/gtk.h>

#include "price-book.h"

/* To write one, or to read it. One dialog at a time for a window (rc_file_dialog_open). */
void rc_price_list_dialog_open (GtkWindow *window, gboolean saves, void (*take) (gpointer window, GFile *file));

/* The book with the goods and prices of the list at `path` in place of its own. The error tells every fault of the
 * list. (transfer full) */
RcPriceBook *rc_price_list_read (const RcPriceBook *book, const char *path, GError **error);
gboolean     rc_price_list_write (const RcPriceBook *book, const char *path, GError **error);
