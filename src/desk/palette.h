/* Colours of the drawings on the screen: those of paper, or the dark ones where the desktop is dark.
 */
#pragma once

#include <gtk/gtk.h>

#include "floor-drawing.h"

/* By the colour the theme writes text with in this widget. (transfer none) */
const RcPalette *rc_palette_for_widget (GtkWidget *widget);

/* The size of the widget's font in pixels, so that drawings follow the desktop's text size. */
double rc_palette_get_font_size (GtkWidget *widget);
