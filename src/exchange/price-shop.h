/* The shop's own rows of a price book's table: settings, tax areas, suppliers, steps of payment; private to the folder.
 */
#pragma once

#include "price-columns.h"

#define RC_PRICE_KIND_SETTING  "setting"
#define RC_PRICE_KIND_TAX_AREA "tax-area"
#define RC_PRICE_KIND_SUPPLIER "supplier"
#define RC_PRICE_KIND_PAYMENT  "payment"

void rc_price_read_setting (RcPriceRow *row, RcPriceBook *book);
void rc_price_read_tax_area (RcPriceRow *row, RcPriceBook *book);
void rc_price_read_supplier (RcPriceRow *row, RcPriceBook *book);
void rc_price_read_payment (RcPriceRow *row, RcPriceBook *book);

/* Appends all such rows of the book. The logo does not go into a table. */
void rc_price_append_shop (GString *csv, const RcPriceBook *book);
