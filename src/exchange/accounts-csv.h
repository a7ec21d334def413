/* What the accounts want to know, as CSV: a line for each tax rate of each accepted quotation, and one for each order
 * to a supplier.
 *
 * Columns: kind (sale, purchase), number, day, party, job, title, currency, net, tax_percent, tax, total. Money is
 * plain decimals with a point; the lines of one number add up to its document.
 */
#pragma once

#include "quote.h"

typedef struct
{
  const char *number, *day;
  const char *party;       /* the customer, or the supplier */
  const char *job, *title; /* nullable */
} RcAccountsHead;

void rc_accounts_csv_begin (GString *csv);
void rc_accounts_csv_add_sale (GString *csv, const RcAccountsHead *head, const RcQuote *quote);
void rc_accounts_csv_add_purchase (GString *csv, const RcAccountsHead *head, const RcCurrency *currency, RcMoney net,
                                   RcMoney tax, RcMoney total);
