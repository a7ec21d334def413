/* A new room by its sizes: a shape chosen by one key, its sizes typed one after another, Return adds it.
 */
#pragma once

#include "document.h"
#include "room-shape-kind.h"

#include <gtk/gtk.h>

#define RC_TYPE_SHAPE_WINDOW (rc_shape_window_get_type ())
G_DECLARE_FINAL_TYPE (RcShapeWindow, rc_shape_window, RC, SHAPE_WINDOW, GtkWindow)

/* The room goes to the storey `floor`. Signal "added" when it has been. */
GtkWidget *rc_shape_window_new (GtkWindow *parent, RcDocument *document, int floor);
