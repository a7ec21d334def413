/* The rolls on the screen: long ribbons under one another to one scale, each cut where it comes off.
 *
 * Keys when it has the focus: Left and Right (or p and n) step through the pieces, Return goes to what is chosen, plus,
 * minus and 0 scale.
 */
#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define RC_TYPE_ROLL_VIEW (rc_roll_view_get_type ())
G_DECLARE_FINAL_TYPE (RcRollView, rc_roll_view, RC, ROLL_VIEW, GtkWidget)

void rc_roll_view_set_document (RcRollView *self, RcDocument *document);
