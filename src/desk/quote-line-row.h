/* One line of a quotation, or its total, that opens to what it is made of and what can be settled about it.
 */
#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define RC_TYPE_QUOTE_LINE_ROW (rc_quote_line_row_get_type ())
G_DECLARE_FINAL_TYPE (RcQuoteLineRow, rc_quote_line_row, RC, QUOTE_LINE_ROW, GtkBox)

GtkWidget *rc_quote_line_row_new (void);

/* As for rc_quote_view_show. */
void rc_quote_line_row_show_line (RcQuoteLineRow *self, const RcQuoteLine *line, const RcCurrency *currency,
                                  const RcPlan *plan, RcDocument *document);
void rc_quote_line_row_show_total (RcQuoteLineRow *self, const RcQuote *quote);

void     rc_quote_line_row_set_open (RcQuoteLineRow *self, gboolean is_open);
gboolean rc_quote_line_row_is_open (RcQuoteLineRow *self);
/* What it is made of, a sentence each line. (transfer full) */
char *rc_quote_line_row_dup_said (RcQuoteLineRow *self);

/* The widths of the columns, for a head above the lines. */
#define RC_QUOTE_QUANTITY_CHARS 12
#define RC_QUOTE_PRICE_CHARS    8
#define RC_QUOTE_AMOUNT_CHARS   12
/* A name is not broken into narrower lines. */
#define RC_QUOTE_NAME_CHARS 16
