/* One priced line of a quotation or an order. */
#pragma once

#include "price-book.h"

typedef struct
{
  char    *item, *name, *because;
  gint64   quantity_micro; /* in `unit`: what the price is multiplied with */
  RcUnit   unit;           /* the price's unit */
  gint64   packs;          /* 0: loose */
  RcUnit   pack_unit;
  RcMoney  price;  /* per unit */
  RcMoney  amount; /* price x quantity, rounded once */
  RcMoney  cost;   /* what the shop pays for the line, rounded once */
  gboolean is_work;
  gboolean from_stock; /* carpet taken from rolls in stock */
} RcQuoteLine;

RcQuoteLine *rc_quote_line_copy (const RcQuoteLine *line);
void         rc_quote_line_free (RcQuoteLine *line);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcQuoteLine, rc_quote_line_free)

/* The customer's line: at the sale price. A price in another unit (ft and m, sq yd and m2, the pack and what it holds,
 * length and area of a roll) converts the quantity, exactly, then rounded once to a millionth. Where an item has prices
 * for several quantities, the sale price is chosen by `item_micro`, the job's whole quantity of the item in the line's
 * unit, so that customers do not pay more because part of it lies in stock; the cost price by the line's own quantity.
 * NULL and RC_ERROR_REFERENCE naming the item without a price and the date, or the unit that cannot be converted;
 * RC_ERROR_RANGE. (transfer full) */
RcQuoteLine *rc_quote_line_new_sale (const RcQuantityLine *quantity, gint64 item_micro, const RcPriceBook *book,
                                     const char *date, GError **error);

/* The supplier's line: price and amount are what the shop pays for the line's own quantity. (transfer full) */
RcQuoteLine *rc_quote_line_new_cost (const RcQuantityLine *quantity, const RcPriceBook *book, const char *date,
                                     GError **error);
