/* Orders to suppliers: made for the open job or for all that are accepted, sent, confirmed, received in parts. */
#pragma once

#include "order-arrival.h"
#include "window.h"

#define RC_TYPE_ORDER_WINDOW (rc_order_window_get_type ())
G_DECLARE_FINAL_TYPE (RcOrderWindow, rc_order_window, RC, ORDER_WINDOW, GtkWindow)

GtkWidget *rc_order_window_new (RcWindow *parent);

guint             rc_order_window_get_n_orders (RcOrderWindow *self);
const RcPurchase *rc_order_window_get_chosen (RcOrderWindow *self); /* nullable */
gboolean          rc_order_window_choose (RcOrderWindow *self, const char *number);
const char       *rc_order_window_get_told (RcOrderWindow *self);
