/* Edits of the price book as pure functions: the old book and what was typed give the new one. */
#pragma once

#include "price-book.h"

/* A line of the list of prices: a price, or goods that have none yet. */
typedef struct
{
  const char *item;  /* goods id or name of work; borrowed from the book */
  int         price; /* index into the book's prices; -1: none yet */
} RcPriceLine;

typedef enum
{
  RC_PRICE_NAME,
  RC_PRICE_KIND,
  RC_PRICE_SUPPLIER,
  RC_PRICE_UNIT,
  RC_PRICE_COST,
  RC_PRICE_SALE,
  RC_PRICE_MARGIN, /* typed, it sets the sale price */
  RC_PRICE_QUANTITY_FROM,
  RC_PRICE_DAY_FROM,
  RC_PRICE_DAY_TO,
  RC_N_PRICE_FIELDS
} RcPriceField;

/* The lines whose name, kind, id or supplier hold every word of `words` (letter case does not count): goods in the
 * order of the catalogue with their prices as they stand, then work. (transfer full) of RcPriceLine */
GArray *rc_price_edit_find_lines (const RcPriceBook *book, const char *words);

/* What a field shows; "" for what is not there. (transfer full) */
char *rc_price_edit_dup_text (const RcPriceBook *book, RcPriceLine line, RcPriceField field);

/* Whether the field can be typed into the list: what the goods are is written in their form. */
gboolean rc_price_field_is_editable (RcPriceField field);

/* A price, which is not below 0. RC_ERROR_PARSE, RC_ERROR_RANGE. */
gboolean rc_price_edit_read_money (const char *text, const RcCurrency *currency, RcMoney *money, GError **error);
/* The book with that text typed into a field; a price is made where there was none, the book's last. Errors say what
 * would be right. A copy of the same book when nothing changes. (transfer full) */
RcPriceBook *rc_price_edit_set (const RcPriceBook *book, RcPriceLine line, RcPriceField field, const char *text,
                                GError **error);

/* The same price once more, valid from `day` on, while the old one ends the day before. An error when the old one
 * begins on that day or later. *price gets the index of the new one. (transfer full) */
RcPriceBook *rc_price_edit_renew (const RcPriceBook *book, guint price, const char *day, guint *new_price,
                                  GError **error);

/* The book without that price; the goods stay. (transfer full) */
RcPriceBook *rc_price_edit_remove (const RcPriceBook *book, guint price);

/* The book with these goods: those of the same id replaced, or added at the end with an id made of their name where
 * they have none. `before` is what the goods were when they were opened; NULL: they are new. Prices stay as they are.
 * Errors: RC_ERROR_CONFLICT when the book has them otherwise than `before`; RC_ERROR_RANGE naming the field that is
 * wrong; then nothing is edited. *id (transfer full) is that of the goods. (transfer full) */
RcPriceBook *rc_price_edit_put_goods (const RcPriceBook *book, const RcGoods *before, const RcGoods *goods, char **id,
                                      GError **error);

/* The book without those goods, which are in it. (transfer full) */
RcPriceBook *rc_price_edit_remove_goods (const RcPriceBook *book, const char *id);

/* Translated: what a kind of goods is called. */
const char *rc_price_edit_get_kind_label (RcGoodsKind kind);
