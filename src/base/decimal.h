/* Reading decimal numbers into whole numbers of their last digit. */
#pragma once

#include <glib.h>

typedef enum
{
  RC_DECIMAL_OK,
  RC_DECIMAL_NOT_A_NUMBER,
  RC_DECIMAL_TOO_FINE,  /* more digits after the point than asked for */
  RC_DECIMAL_TOO_LARGE, /* does not fit an int64 */
} RcDecimalStatus;

/* Reads "-1234.5" as -123450 for `decimals` 2 (0 to 18): an optional sign, digits, and at most one decimal point or
 * comma. With `grouped`, commas between groups of three digits before the point as in "1,234.50" are read over; a comma
 * is then a decimal comma only where it cannot be one of those ("12,5"). Without it, a comma is refused where it could
 * be one. Never uses the locale, never rounds: zeros alone may go beyond `decimals`. Leaves *value alone on failure. */
RcDecimalStatus rc_decimal_scan (const char *text, int decimals, gboolean grouped, gint64 *value);
