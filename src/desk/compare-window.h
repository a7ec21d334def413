/* What changed between two measures of a job: rooms, cuts, goods, total.
 */
#pragma once

#include <gtk/gtk.h>

#include "cure-list.h"

#define RC_TYPE_COMPARE_WINDOW (rc_compare_window_get_type ())
G_DECLARE_FINAL_TYPE (RcCompareWindow, rc_compare_window, RC, COMPARE_WINDOW, GtkWindow)

/* The measure looked at against the one before it; both can be chosen in the window. */
RcCompareWindow *rc_compare_window_new (GtkWindow *parent, RcDocument *document);
guint            rc_compare_window_get_n_changes (RcCompareWindow *self);
/* What the goods cut already no longer cover, and the ways to go on. */
RcCureList *rc_compare_window_get_cures (RcCompareWindow *self);
