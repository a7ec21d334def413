/* A box that Tab enters and leaves in one step, whatever is in it: GTK 4.8 takes Tab through a list row by row.
 */
#pragma once

#include <gtk/gtk.h>

#define RC_TYPE_STOP (rc_stop_get_type ())
G_DECLARE_FINAL_TYPE (RcStop, rc_stop, RC, STOP, GtkBox)
