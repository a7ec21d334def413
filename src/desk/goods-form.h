/* What goods of the price book are: their name, supplier, widths, repeats and packs, written or changed. */
#pragma once

#include <gtk/gtk.h>

#include "price-book.h"

#define RC_TYPE_GOODS_FORM (rc_goods_form_get_type ())
G_DECLARE_FINAL_TYPE (RcGoodsForm, rc_goods_form, RC, GOODS_FORM, GtkBox)

/* Signals "keep", when the goods are to be kept as they are written, and "left", when nothing is. */

/* Shows goods to be changed; NULL: new ones, of any kind. Suppliers of the book are proposed. */
void rc_goods_form_open (RcGoodsForm *self, const RcPriceBook *book, const RcGoods *goods);
/* What was opened; NULL: new goods. */
const RcGoods *rc_goods_form_get_before (RcGoodsForm *self);
/* The goods as written; fields that their kind does not show stay as they were. NULL with an error that names the
 * field, which then has the focus. (transfer full) */
RcGoods *rc_goods_form_read (RcGoodsForm *self, GError **error);
/* The keyboard goes to the field at fault in goods that were read and refused (rc_goods_find_fault; else the name). */
void rc_goods_form_focus_fault (RcGoodsForm *self, RcGoods *goods);
