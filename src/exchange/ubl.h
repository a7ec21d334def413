/* Quotation and order as OASIS UBL 2.1 documents with UN/ECE Recommendation 20 units. The same input gives the same
 * bytes.
 */
#pragma once

#include "quote.h"

/* (transfer full) */
char *rc_ubl_format_quote (const RcJob *job, const RcPriceBook *book, const RcQuote *quote, const char *number,
                           const char *date);
char *rc_ubl_format_order (const RcJob *job, const RcPriceBook *book, const RcOrder *order, const char *number,
                           const char *date);
