/* The lines and sums that quotations and orders share.
 */
#pragma once

#include "sheet-head.h"

typedef struct
{
  RcDetail detail;
  gboolean reasons; /* what each is for, in small print */
} RcLinesShown;

/* Lines (of RcQuoteLine) that are in the total: goods first, then work; those that are not shown by themselves as one
 * sum of goods and one of work. */
void rc_quote_table_flow (RcSheetWork *work, const GPtrArray *lines, const RcLinesShown *shown,
                          const RcCurrency *currency);

/* Optional lines, under a heading; nothing when there are none. */
void rc_quote_optional_flow (RcSheetWork *work, const GPtrArray *lines, const RcLinesShown *shown,
                             const RcCurrency *currency);

/* Discount, net, taxes by rate, total, steps of payment, the rule of rounding; kept together. */
void rc_quote_sums_flow (RcSheetWork *work, const RcQuote *quote);

/* Net, tax, total. */
void rc_order_sums_flow (RcSheetWork *work, const RcOrder *order);
