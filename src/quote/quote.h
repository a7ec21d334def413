/* The quotation: priced lines, tax, total. No floating point between a price and a total.
 *
 * The rule of sums: each line's amount is price x quantity rounded once to the minor unit, halves away from zero; the
 * net is the sum of the amounts as printed; the tax is net x rate rounded once; the total is net + tax; the deposit is
 * total x rate rounded once. So the printed figures add up to the last digit.
 */
#pragma once

#include "compare.h"
#include "order.h"
#include "price-book.h"
#include "quote-line.h"

struct _RcQuote
{
  RcCurrency currency;
  GPtrArray *lines; /* of RcQuoteLine, in the order of the quantities */
  gint64     tax_ppm;
  RcMoney    net, tax, total;
  RcMoney    deposit;
  RcMoney    cost, margin; /* margin = net - cost */
};

void rc_quote_free (RcQuote *quote);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcQuote, rc_quote_free)

/* Prices quantity lines (of RcQuantityLine) on `date` (ISO 8601; NULL: whatever the day). The tax rate is the job's, or
 * the book's where the job leaves it open (-1). The fixed charge is left out where the book has no price for it; every
 * other line must have one. Errors: as rc_quote_line_new_sale; RC_ERROR_REFERENCE when the job's currency is not the
 * book's; RC_ERROR_RANGE for sums and rates that are too large. (transfer full) */
RcQuote *rc_quote_new (const RcJob *job, const GPtrArray *quantities, const RcPriceBook *book, const char *date,
                       GError **error);
