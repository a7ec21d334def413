/* A quotation as the office looks at it: each line, and the total, open to what they are made of.
 *
 * For the open job's quotation each line opens to what the office settles about it, too.
 */
#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define RC_TYPE_QUOTE_VIEW (rc_quote_view_get_type ())
G_DECLARE_FINAL_TYPE (RcQuoteView, rc_quote_view, RC, QUOTE_VIEW, GtkBox)

GtkWidget *rc_quote_view_new (void);

/* Nothing of it is kept. `plan` (nullable) is what the quotation was computed from: lines of carpet then tell their
 * pieces. `document` (nullable): the job whose offer the lines can be settled in. */
void rc_quote_view_show (RcQuoteView *self, const RcQuote *quote, const RcPlan *plan, RcDocument *document);

guint rc_quote_view_get_n_lines (RcQuoteView *self);
/* Opens a line (n_lines: the total) as a click does. */
void rc_quote_view_open (RcQuoteView *self, guint line);
/* What an open line says, a sentence each line; NULL while it is shut. (transfer full) */
char *rc_quote_view_dup_said (RcQuoteView *self, guint line);
