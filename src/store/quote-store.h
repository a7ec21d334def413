/* Issued quotations in the store. */
#pragma once

#include "store-private.h"

/* net = sum of the amounts, tax and total by the rate, margin = net - cost. On FALSE the error (RC_ERROR_RANGE) says
 * what does not add up. */
gboolean rc_quote_store_check_sums (const RcQuote *quote, GError **error);
