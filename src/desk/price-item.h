/* A line of the list of prices, for GTK's list models. */
#pragma once

#include <gio/gio.h>

#include "price-edit.h"

#define RC_TYPE_PRICE_ITEM (rc_price_item_get_type ())
G_DECLARE_FINAL_TYPE (RcPriceItem, rc_price_item, RC, PRICE_ITEM, GObject)

RcPriceItem *rc_price_item_new (RcPriceLine line);
/* `item` is kept by the row, so that it outlives the book it came from. */
RcPriceLine rc_price_item_get_line (RcPriceItem *self);
/* The line has got its first price. */
void rc_price_item_set_price (RcPriceItem *self, int price);
