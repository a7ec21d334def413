/* What the accounts want to know, as CSV: a line for each tax rate of each accepted quotation, and one for each order
 * to a supplier.
 *
 * Columns: kind (sale, purchase), number, day, party, job, title, currency, net, tax_percent, tax, total. Money is
 * plain decimals with a point; the lines of one number add up to its document.
 */
#pragma once

#include "account.h"

/* Of RcAccount. (transfer full) */
char *rc_accounts_csv_format (const GPtrArray *accounts);
