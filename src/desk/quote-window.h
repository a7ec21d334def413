/* Quotations as they were issued, of the open job or of all: issued, revised, accepted, seen as they were printed. */
#pragma once

#include "quote-view.h"
#include "window.h"

#define RC_TYPE_QUOTE_WINDOW (rc_quote_window_get_type ())
G_DECLARE_FINAL_TYPE (RcQuoteWindow, rc_quote_window, RC, QUOTE_WINDOW, GtkWindow)

GtkWidget *rc_quote_window_new (RcWindow *parent);

guint                rc_quote_window_get_n_quotes (RcQuoteWindow *self);
const RcIssuedQuote *rc_quote_window_get_chosen (RcQuoteWindow *self); /* nullable */
gboolean             rc_quote_window_choose (RcQuoteWindow *self, const char *number);
const char          *rc_quote_window_get_told (RcQuoteWindow *self);
RcQuoteView         *rc_quote_window_get_view (RcQuoteWindow *self); /* of the chosen one */
