/* Edits of the price book's suppliers as pure functions: the old book and what was written give the new one. */
#pragma once

#include "price-book.h"

/* Suppliers whose name, address, phone, e-mail or account hold every word of `words` (letter case does not count), by
 * name; those that goods only name are among them, with nothing but their name. (transfer full) of RcSupplier */
GPtrArray *rc_supplier_edit_find (const RcPriceBook *book, const char *words);

/* How many goods of the book come from the supplier. *one (nullable; borrowed) is the first of them. */
guint rc_supplier_edit_count_goods (const RcPriceBook *book, const char *name, const RcGoods **one);

/* The book with this supplier: in place of `before`, as it was when it was opened, or added. Goods that name it by its
 * old name go along. Errors: RC_ERROR_CONFLICT when the book has it otherwise than `before`; RC_ERROR_RANGE when the
 * name is blank or another's. (transfer full) */
RcPriceBook *rc_supplier_edit_put (const RcPriceBook *book, const RcSupplier *before, const RcSupplier *supplier,
                                   GError **error);

/* The book without that supplier. RC_ERROR_REFERENCE, naming them, when goods come from it. (transfer full) */
RcPriceBook *rc_supplier_edit_remove (const RcPriceBook *book, const char *name, GError **error);
