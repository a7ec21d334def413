#include "decimal.h"

#include "wide.h"

#include <string.h>

static gsize
count_digits (const char *at)
{
  gsize n = 0;

  while (g_ascii_isdigit (at[n]))
    n++;

  return n;
}

/* Length of "1,234,567" at `at`, 0 when there is no well-formed group. */
static gsize
measure_groups (const char *at)
{
  gsize n = count_digits (at);

  if (n < 1 || n > 3 || at[0] == '0')
    return 0;
  if (at[n] != ',' || count_digits (at + n + 1) != 3)
    return 0;
  while (at[n] == ',' && count_digits (at + n + 1) == 3)
    n += 4;

  return n;
}

/* Adds the digits of `n` characters to *value; FALSE past an int64. */
static gboolean
add_digits (const char *at, gsize n, RcWide *value)
{
  for (gsize i = 0; i < n; i++)
    {
      if (at[i] == ',')
        continue;
      *value = *value * 10 + (at[i] - '0');
      if (*value > (RcWide)G_MAXINT64 + 1)
        return FALSE;
    }

  return TRUE;
}

RcDecimalStatus
rc_decimal_scan (const char *text, int decimals, gboolean grouped, gint64 *value)
{
  gboolean    negative = *text == '-';
  const char *whole = text + (*text == '-' || *text == '+');
  gsize       n_groups = measure_groups (whole);
  gsize       n_whole = n_groups > 0 ? n_groups : count_digits (whole);
  const char *fraction = whole + n_whole;
  gsize       n_fraction = 0;
  RcWide      sum = 0;

  if (n_groups > 0 && !grouped)
    return RC_DECIMAL_NOT_A_NUMBER;
  if (*fraction == '.' || (*fraction == ',' && n_groups == 0))
    {
      fraction++;
      n_fraction = count_digits (fraction);
      if (n_fraction == 0)
        return RC_DECIMAL_NOT_A_NUMBER;
    }
  if (n_whole + n_fraction == 0 || fraction[n_fraction] != 0)
    return RC_DECIMAL_NOT_A_NUMBER;

  while (n_fraction > (gsize)decimals && fraction[n_fraction - 1] == '0')
    n_fraction--;
  if (n_fraction > (gsize)decimals)
    return RC_DECIMAL_TOO_FINE;

  if (!add_digits (whole, n_whole, &sum) || !add_digits (fraction, n_fraction, &sum))
    return RC_DECIMAL_TOO_LARGE;
  sum *= rc_power_of_ten (decimals - (int)n_fraction);
  if (negative)
    sum = -sum;
  if (!rc_wide_fits_int64 (sum))
    return RC_DECIMAL_TOO_LARGE;

  *value = (gint64)sum;
  return RC_DECIMAL_OK;
}
