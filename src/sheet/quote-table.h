/* The lines and sums that quotations and orders share.
 */
#pragma once

#include "sheet-head.h"

/* Lines (of RcQuoteLine): goods first, then work, each with what it is for in small print. */
void rc_quote_table_flow (RcSheetWork *work, const GPtrArray *lines, const RcCurrency *currency);

/* Net, tax, total, and the deposit when it is not 0; kept together. tax_ppm < 0: the rate is not printed. */
void rc_quote_sums_flow (RcSheetWork *work, RcMoney net, gint64 tax_ppm, RcMoney tax, RcMoney total, RcMoney deposit,
                         const RcCurrency *currency);
