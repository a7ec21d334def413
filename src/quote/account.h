/* One document as the accounts want to know it: a quotation that was accepted, or an order to a supplier. */
#pragma once

#include "quote.h"

typedef struct
{
  char      *number, *day;
  char      *party;       /* the customer, or the supplier */
  char      *job, *title; /* nullable */
  RcQuote   *sale;        /* as it was issued; NULL: an order */
  RcCurrency currency;
  RcMoney    net, tax, total;
} RcAccount;

void rc_account_free (RcAccount *account);
