/* What the shop's window writes in rows: the book's tax areas and its steps of payment. */
#pragma once

#include "price-book.h"
#include "text-rows.h"

GtkWidget *rc_shop_rows_new_tax_areas (void);
GtkWidget *rc_shop_rows_new_payments (void);

void rc_shop_rows_show_tax_areas (RcTextRows *rows, const RcPriceBook *book);
void rc_shop_rows_show_payments (RcTextRows *rows, const RcPriceBook *book);

/* Put what is written in place of the book's; rows left blank count for nothing. FALSE: the error names the row and its
 * field, which the keyboard goes to, and the book is not changed. */
gboolean rc_shop_rows_read_tax_areas (RcTextRows *rows, RcPriceBook *book, GError **error);
gboolean rc_shop_rows_read_payments (RcTextRows *rows, RcPriceBook *book, GError **error);
