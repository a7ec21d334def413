/* Price lists (CSV): choosing one, reading and writing it. */
#pragma once

#include <gtk/gtk.h>

#include "price-book.h"

/* To open or to save. `take` gets the window and the path that was chosen, if any is. One dialog at a time for a
 * window. */
void rc_price_list_dialog_open (GtkWindow *window, GtkFileChooserAction action,
                                void (*take) (gpointer window, const char *path));

/* The book with the goods and prices of the list at `path` in place of its own. The error tells every fault of the
 * list. (transfer full) */
RcPriceBook *rc_price_list_read (const RcPriceBook *book, const char *path, GError **error);
gboolean     rc_price_list_write (const RcPriceBook *book, const char *path, GError **error);
