/* The price book as one list to type into, with search, dated prices, and CSV in and out. */
#pragma once

#include <gtk/gtk.h>

#include "price-edit.h"
#include "window.h"

#define RC_TYPE_PRICE_WINDOW (rc_price_window_get_type ())
G_DECLARE_FINAL_TYPE (RcPriceWindow, rc_price_window, RC, PRICE_WINDOW, GtkWindow)

/* Every change is saved as it is made, through the parent's keeper of the book. Suppliers are on a page of their own.
 */
GtkWidget *rc_price_window_new (RcWindow *parent);

guint rc_price_window_get_n_lines (RcPriceWindow *self);
/* What the window says of the last thing done; "": nothing. */
const char *rc_price_window_get_told (RcPriceWindow *self);
/* Types into a field of the line at `position`, as Return does there. FALSE when it was refused. */
gboolean rc_price_window_type (RcPriceWindow *self, guint position, RcPriceField field, const char *text);
