/* A roll drawn as a ribbon: what has gone of it, what is promised to the open job and to others, what is free, where it
 * is damaged. */
#pragma once

#include <gtk/gtk.h>

#include "stock-line.h"

#define RC_TYPE_STOCK_RIBBON (rc_stock_ribbon_get_type ())
G_DECLARE_FINAL_TYPE (RcStockRibbon, rc_stock_ribbon, RC, STOCK_RIBBON, GtkWidget)

/* `detailed`: high enough to write in it, with a ruler. */
GtkWidget *rc_stock_ribbon_new (gboolean detailed);

/* Shows the line (nullable) to the scale at which `longest` fills the width. `stretches` (of RcStretch, nullable): with
 * what has gone; else what is on the roll now. */
void rc_stock_ribbon_show (RcStockRibbon *self, const RcStockLine *line, const GArray *stretches, RcLength longest,
                           const RcLengthStyle *style);
