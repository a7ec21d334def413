#include "wide.h"

#include <string.h>

RcWide
rc_wide_divide_round (RcWide numerator, RcWide denominator)
{
  RcWide quotient = numerator / denominator;
  RcWide rest = numerator % denominator;

  if (rest < 0)
    return -rest >= denominator + rest ? quotient - 1 : quotient;

  return rest >= denominator - rest ? quotient + 1 : quotient;
}

RcWide
rc_wide_divide_floor (RcWide numerator, RcWide denominator)
{
  RcWide quotient = numerator / denominator;

  return numerator % denominator < 0 ? quotient - 1 : quotient;
}

RcWide
rc_wide_divide_ceil (RcWide numerator, RcWide denominator)
{
  RcWide quotient = numerator / denominator;

  return numerator % denominator > 0 ? quotient + 1 : quotient;
}

RcWide
rc_wide_find_divisor (RcWide a, RcWide b)
{
  while (b != 0)
    {
      RcWide rest = a % b;

      a = b;
      b = rest;
    }
  return a;
}

gboolean
rc_wide_fits_int64 (RcWide value)
{
  return value >= G_MININT64 && value <= G_MAXINT64;
}

gint64
rc_power_of_ten (int exponent)
{
  gint64 power = 1;

  g_assert (exponent >= 0 && exponent <= 18);

  while (exponent-- > 0)
    power *= 10;

  return power;
}

void
rc_wide_append_decimal (GString *text, RcWide value, int decimals, gboolean group)
{
  char    backwards[96];
  int     n = 0;
  int     digits = 0;
  RcUWide rest = value < 0 ? -(RcUWide)value : (RcUWide)value;

  g_assert (decimals >= 0 && decimals <= 18);

  do
    {
      if (decimals > 0 && digits == decimals)
        backwards[n++] = '.';
      else if (group && digits > decimals && (digits - decimals) % 3 == 0)
        backwards[n++] = ',';

      backwards[n++] = (char)('0' + (int)(rest % 10));
      rest /= 10;
      digits++;
    }
  while (rest > 0 || digits <= decimals);

  if (value < 0)
    backwards[n++] = '-';
  while (n > 0)
    g_string_append_c (text, backwards[--n]);
}

void
rc_decimal_trim (GString *text)
{
  if (strchr (text->str, '.') == NULL)
    return;

  while (text->str[text->len - 1] == '0')
    g_string_truncate (text, text->len - 1);
  if (text->str[text->len - 1] == '.')
    g_string_truncate (text, text->len - 1);
}
