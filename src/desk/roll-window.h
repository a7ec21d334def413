/* Rolls and remnants in stock: found by words, drawn as ribbons, received, corrected, kept for the open job, cut. */
#pragma once

#include "stock-line.h"
#include "window.h"

#define RC_TYPE_ROLL_WINDOW (rc_roll_window_get_type ())
G_DECLARE_FINAL_TYPE (RcRollWindow, rc_roll_window, RC, ROLL_WINDOW, GtkWindow)

/* Works on the parent's store and its open job. What it does and what other windows do shows itself at once. */
GtkWidget *rc_roll_window_new (RcWindow *parent);

guint              rc_roll_window_get_n_rolls (RcRollWindow *self);
const RcStockLine *rc_roll_window_get_chosen (RcRollWindow *self); /* nullable */
gboolean           rc_roll_window_choose (RcRollWindow *self, const char *roll_id);
const char        *rc_roll_window_get_told (RcRollWindow *self); /* "" when nothing is told */
