/* The prices of the book as a table to type into.
 *
 * Signals: "chosen", when the line the keyboard is in, or its price, may be another; "told" (string, nullable), what
 * became of what was typed: why it was refused, or nothing.
 */
#pragma once

#include "book-keeper.h"
#include "price-edit.h"

#include <gtk/gtk.h>

#define RC_TYPE_PRICE_TABLE (rc_price_table_get_type ())
G_DECLARE_FINAL_TYPE (RcPriceTable, rc_price_table, RC, PRICE_TABLE, GtkBox)

/* Call once. */
void rc_price_table_set_keeper (RcPriceTable *self, RcBookKeeper *keeper);
/* Shows the lines that have all these words. */
void rc_price_table_show (RcPriceTable *self, const char *words);

guint rc_price_table_get_n_lines (RcPriceTable *self);
/* Its item is borrowed from the table; NULL: none is chosen. */
RcPriceLine rc_price_table_get_chosen (RcPriceTable *self);
/* The line `by` lines below the chosen one. */
void rc_price_table_step (RcPriceTable *self, guint by);
void rc_price_table_focus (RcPriceTable *self);
/* As Return does in the field of the line at `position`. FALSE when it was refused. */
gboolean rc_price_table_type (RcPriceTable *self, guint position, RcPriceField field, const char *text);
