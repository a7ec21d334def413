/* The figures that decide, each with what it was before the last change.
 */
#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define RC_TYPE_FIGURE_BAR (rc_figure_bar_get_type ())
G_DECLARE_FINAL_TYPE (RcFigureBar, rc_figure_bar, RC, FIGURE_BAR, GtkBox)

void rc_figure_bar_set_document (RcFigureBar *self, RcDocument *document);
/* The text of a figure as it stands. */
const char *rc_figure_bar_get_text (RcFigureBar *self, RcFigure which);
