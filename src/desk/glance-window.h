/* The shop at a glance: quotations that wait, orders to place, rolls to use up; and the open job's waste, margin,
 * seams. */
#pragma once

#include "window.h"

#define RC_TYPE_GLANCE_WINDOW (rc_glance_window_get_type ())
G_DECLARE_FINAL_TYPE (RcGlanceWindow, rc_glance_window, RC, GLANCE_WINDOW, GtkWindow)

GtkWidget *rc_glance_window_new (RcWindow *parent);

typedef enum
{
  RC_GLANCE_QUOTES,
  RC_GLANCE_ORDERS,
  RC_GLANCE_ROLLS,
  RC_N_GLANCES
} RcGlance;

guint rc_glance_window_get_n (RcGlanceWindow *self, RcGlance list);
