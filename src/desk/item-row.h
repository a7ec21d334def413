/* A row of an item list: tells the list over which item the pointer is.
 */
#pragma once

#include "item.h"
#include <gtk/gtk.h>

#define RC_TYPE_ITEM_ROW (rc_item_row_get_type ())
G_DECLARE_FINAL_TYPE (RcItemRow, rc_item_row, RC, ITEM_ROW, GtkBox)

/* Property: the RcItem "item" (nullable), bound by the row's template. */
