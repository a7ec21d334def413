/* Money: whole minor units of one currency; products formed in 128 bits and rounded once.
 *
 * Rounding rule everywhere: to the nearest minor unit, halves away from zero.
 */
#pragma once

#include <glib.h>

typedef gint64 RcMoney; /* minor units (cents) of the currency at hand */

typedef struct
{
  char code[4]; /* ISO 4217, e.g. "USD" */
  int  digits;  /* digits after the point: USD 2, JPY 0, KWD 3 */
} RcCurrency;

/* Looks an ISO 4217 code up in the built-in list (USD CAD GBP EUR AUD NZD ZAR INR CHF JPY KWD MXN and others).
 * Errors: RC_ERROR_PARSE naming the code. */
gboolean rc_currency_parse (const char *code, RcCurrency *currency, GError **error);

/* Reads "1234.50", "1,234.50", "-3.2", with or without the currency code before or after ("USD 12.00"). More digits
 * after the point than the currency has is an error, never a rounding. */
gboolean rc_money_parse (const char *text, const RcCurrency *currency, RcMoney *money, GError **error);

/* "1234.50": plain decimal text for XML, JSON and CSV. (transfer full) */
char *rc_money_format_plain (RcMoney money, const RcCurrency *currency);

/* "1,234.50 USD": for screens and paper, thousands grouped. (transfer full) */
char *rc_money_format (RcMoney money, const RcCurrency *currency);

/* price x quantity / 1 000 000, the quantity in millionths of the unit that the price is for. Errors: RC_ERROR_RANGE.
 */
gboolean rc_money_multiply (RcMoney price, gint64 quantity_micro, RcMoney *amount, GError **error);

/* money x rate / 1 000 000, e.g. a tax of 8.25 % is 82 500 ppm. */
RcMoney rc_money_part (RcMoney money, gint64 rate_ppm);

gboolean rc_money_add (RcMoney a, RcMoney b, RcMoney *sum);
