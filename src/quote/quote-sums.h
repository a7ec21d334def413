/* The rule of sums. Used inside this folder only. */
#pragma once

#include "quote.h"

/* RC_ERROR_RANGE: "Tax of 12 % is not between 0 and 10 %". */
gboolean rc_quote_check_rate (gint64 rate_ppm, gint64 most_ppm, const char *what, GError **error);

/* Sums a quotation whose lines and discount rate are set: sum, discount, net, taxes, total, cost, margin. */
gboolean rc_quote_sum_lines (RcQuote *quote, RcMoney further_discount, GError **error);

/* Parts the total into steps (of RcPayment), and what is left; none: nothing. */
gboolean rc_quote_add_payments (RcQuote *quote, const GPtrArray *payments, GError **error);
