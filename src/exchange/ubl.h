/* Quotation and order as OASIS UBL 2.1 documents with UN/ECE Recommendation 20 units. The same input gives the same
 * bytes.
 *
 * One tax total for the document; lines carry no tax of their own, as the quotation rounds it once over the net. UBL
 * asks for at least one line: an empty quotation gives a document without, which its schema refuses. `number` is the
 * document's; `date` ISO 8601, of which the day is used.
 */
#pragma once

#include "quote.h"

/* (transfer full) */
char *rc_ubl_format_quote (const RcJob *job, const RcPriceBook *book, const RcQuote *quote, const char *number,
                           const char *date);
char *rc_ubl_format_order (const RcJob *job, const RcPriceBook *book, const RcOrder *order, const char *number,
                           const char *date);
