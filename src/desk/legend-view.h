/* What the marks on the floor mean, and where north is: the key of the sheets, as large as the text around it.
 */
#pragma once

#include <gtk/gtk.h>

#define RC_TYPE_LEGEND_VIEW (rc_legend_view_get_type ())
G_DECLARE_FINAL_TYPE (RcLegendView, rc_legend_view, RC, LEGEND_VIEW, GtkWidget)
