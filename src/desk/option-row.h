/* The planner's options for the area at hand: a short row of small drawings with their cost. One key takes one.
 */
#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define RC_TYPE_OPTION_ROW (rc_option_row_get_type ())
G_DECLARE_FINAL_TYPE (RcOptionRow, rc_option_row, RC, OPTION_ROW, GtkBox)

void rc_option_row_set_document (RcOptionRow *self, RcDocument *document);

/* Takes the option with the row's number (from 1). Does nothing when there is none. */
void  rc_option_row_take (RcOptionRow *self, guint number);
guint rc_option_row_get_n_options (RcOptionRow *self);
