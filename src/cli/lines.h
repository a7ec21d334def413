/* Lines of quantities, quotations and orders, as JSON and as tables. */
#pragma once

#include "json-out.h"
#include "quote.h"
#include "text-table.h"

void rc_lines_add_quantities_json (RcJson *json, const GPtrArray *quantities); /* of RcQuantityLine, "lines" */
/* of RcQuoteLine, "lines"; `with_cost` adds what the shop pays. */
void rc_lines_add_quote_json (RcJson *json, const GPtrArray *lines, const RcCurrency *currency, gboolean with_cost);

void rc_lines_print_quantities (const GPtrArray *quantities);
void rc_lines_print_quote (const GPtrArray *lines, const RcCurrency *currency);
/* "Net 123.00" and so on, under each other; what the discount is taken off and the discount, unless it is 0. */
void rc_lines_print_sums (RcMoney discount, RcMoney net, RcMoney tax, RcMoney total, const RcCurrency *currency);
