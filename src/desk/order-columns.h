/* What the tables of orders and of their lines say, column by column. */
#pragma once

#include <gtk/gtk.h>

#include "store.h"

/* For RcRowItem of RcPurchase, and for those of rc_order_columns_new_lines. */
void rc_order_columns_add (GtkColumnView *orders, GtkColumnView *order_lines);
/* The lines of an order that was loaded whole. (transfer full) */
GListModel *rc_order_columns_new_lines (const RcPurchase *order);
