/* The open job's quotation while it is made: its lines, what the office settles about them, and other ways to do the
 * job side by side.
 */
#pragma once

#include "quote-view.h"
#include "window.h"

#define RC_TYPE_OFFER_WINDOW (rc_offer_window_get_type ())
G_DECLARE_FINAL_TYPE (RcOfferWindow, rc_offer_window, RC, OFFER_WINDOW, GtkWindow)

GtkWidget *rc_offer_window_new (RcWindow *parent);

RcQuoteView *rc_offer_window_get_view (RcOfferWindow *self);
/* Looks at the alternative of that id; NULL: at the job as it stands. */
void rc_offer_window_choose (RcOfferWindow *self, const char *id);
