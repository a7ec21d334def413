/* What has come in of an order, line by line; carpet goes into stock as a roll as it is measured. */
#pragma once

#include <gtk/gtk.h>

#include "store.h"

#define RC_TYPE_ORDER_ARRIVAL (rc_order_arrival_get_type ())
G_DECLARE_FINAL_TYPE (RcOrderArrival, rc_order_arrival, RC, ORDER_ARRIVAL, GtkBox)

/* Shows what is open of the order, all of it proposed as come. `job` (nullable) gives the units and goods that the book
 * lacks. */
void rc_order_arrival_open (RcOrderArrival *self, const RcPurchase *order, const RcPriceBook *book, const RcJob *job);

/* Writes down what is in the fields. (transfer full) what was done; NULL with an error, after which the lines before
 * the one at fault are written down. */
char *rc_order_arrival_do (RcOrderArrival *self, RcStore *store, GError **error);
