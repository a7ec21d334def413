#include "money.h"

#include "decimal.h"
#include "rowcut-error.h"
#include "unit.h"
#include "wide.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* Digits after the point by ISO 4217, from memory: two for most. */
static const char currencies_with_2_digits[]
    = "AED ARS AUD BBD BDT BMD BND BOB BRL BSD BWP BZD CAD CHF CNY COP CRC CZK DKK DOP EGP EUR FJD GBP GEL GHS GTQ HKD "
      "HNL HUF IDR ILS INR JMD KES KYD LKR MAD MUR MXN MYR NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD "
      "SAR SEK SGD THB TRY TTD TWD UAH USD UYU XCD ZAR ZMW ";
static const char currencies_with_0_digits[] = "CLP ISK JPY KRW PYG RWF UGX VND XAF XOF XPF ";
static const char currencies_with_3_digits[] = "BHD IQD JOD KWD LYD OMR TND ";

static gboolean
list_has (const char *list, const char *code)
{
  const char *found = strstr (list, code);

  return found != NULL && found[3] == ' ' && (found - list) % 4 == 0;
}

gboolean
rc_currency_parse (const char *code, RcCurrency *currency, GError **error)
{
  int digits = -1;

  if (code != NULL && strlen (code) == 3)
    {
      if (list_has (currencies_with_2_digits, code))
        digits = 2;
      else if (list_has (currencies_with_0_digits, code))
        digits = 0;
      else if (list_has (currencies_with_3_digits, code))
        digits = 3;
    }
  if (digits < 0)
    {
      g_autofree char *quoted = rc_error_quote (code);

      g_set_error (error, RC_ERROR, RC_ERROR_PARSE,
                   _ ("“%s” is not a known currency. Write its three capital letters, like USD or EUR."), quoted);
      return FALSE;
    }

  memcpy (currency->code, code, 4);
  currency->digits = digits;
  return TRUE;
}

/* The text without spaces around it and without the currency's code before or after it. (transfer full) */
static char *
strip_code (const char *text, const RcCurrency *currency)
{
  g_autofree char *bare = g_strstrip (g_strdup (text));

  if (g_str_has_prefix (bare, currency->code))
    memmove (bare, bare + 3, strlen (bare + 3) + 1);
  else if (g_str_has_suffix (bare, currency->code))
    bare[strlen (bare) - 3] = 0;

  return g_strstrip (g_steal_pointer (&bare));
}

gboolean
rc_money_parse (const char *text, const RcCurrency *currency, RcMoney *money, GError **error)
{
  g_autofree char *bare = NULL;
  g_autofree char *quoted = NULL;
  RcDecimalStatus  status;

  g_return_val_if_fail (text != NULL && currency != NULL && money != NULL, FALSE);

  bare = strip_code (text, currency);
  status = rc_decimal_scan (bare, currency->digits, TRUE, money);
  if (status == RC_DECIMAL_OK)
    return TRUE;

  quoted = rc_error_quote (text);
  if (status == RC_DECIMAL_TOO_LARGE)
    g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("“%s” is more money than can be handled."), quoted);
  else if (status == RC_DECIMAL_TOO_FINE)
    g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("“%s” has more than the %d decimals that %s has."), quoted,
                 currency->digits, currency->code);
  else
    g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("“%s” is not an amount in %s. Write it like %s."), quoted,
                 currency->code,
                 currency->digits == 0   ? "1234"
                 : currency->digits == 2 ? "1234.50"
                                         : "1234.500");
  return FALSE;
}

char *
rc_money_format_plain (RcMoney money, const RcCurrency *currency)
{
  GString *text = g_string_new (NULL);

  rc_wide_append_decimal (text, money, currency->digits, FALSE);
  return g_string_free (text, FALSE);
}

char *
rc_money_format (RcMoney money, const RcCurrency *currency)
{
  GString *text = g_string_new (NULL);

  rc_wide_append_decimal (text, money, currency->digits, TRUE);
  g_string_append_printf (text, " %s", currency->code);
  return g_string_free (text, FALSE);
}

gboolean
rc_money_multiply (RcMoney price, gint64 quantity_micro, RcMoney *amount, GError **error)
{
  RcWide result = rc_wide_divide_round ((RcWide)price * quantity_micro, RC_MICRO);

  if (!rc_wide_fits_int64 (result))
    {
      g_autofree char *quantity = rc_quantity_format (quantity_micro, 6);

      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("%s times this price is more money than can be handled."),
                   quantity);
      return FALSE;
    }

  *amount = (RcMoney)result;
  return TRUE;
}

RcMoney
rc_money_part (RcMoney money, gint64 rate_ppm)
{
  RcWide result = rc_wide_divide_round ((RcWide)money * rate_ppm, 1000000);

  g_return_val_if_fail (rc_wide_fits_int64 (result), result > 0 ? G_MAXINT64 : G_MININT64);

  return (RcMoney)result;
}

gboolean
rc_money_add (RcMoney a, RcMoney b, RcMoney *sum)
{
  RcMoney result;

  if (__builtin_add_overflow (a, b, &result))
    return FALSE;

  *sum = result;
  return TRUE;
}
