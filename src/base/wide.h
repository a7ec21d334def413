/* Whole numbers of 128 bits, for products and quotients that must not lose anything on the way. */
#pragma once

#include <glib.h>

typedef __int128          RcWide;
typedef unsigned __int128 RcUWide;

/* numerator / denominator to the nearest whole number, halves away from zero; denominator > 0. */
RcWide rc_wide_divide_round (RcWide numerator, RcWide denominator);

/* The whole number below (above), denominator > 0. */
RcWide rc_wide_divide_floor (RcWide numerator, RcWide denominator);
RcWide rc_wide_divide_ceil (RcWide numerator, RcWide denominator);

/* The greatest common divisor of two numbers that are not below 0; of 0 and another, that other. */
RcWide rc_wide_find_divisor (RcWide a, RcWide b);

gboolean rc_wide_fits_int64 (RcWide value);

/* 10 to the power of `exponent`, 0 to 18. */
gint64 rc_power_of_ten (int exponent);

/* Appends value / 10^decimals as decimal text with exactly `decimals` digits after the point (0 to 18), and with
 * `group` a comma between each three digits before it. */
void rc_wide_append_decimal (GString *text, RcWide value, int decimals, gboolean group);

/* Drops zeros at the end of the part after the point, and the point if nothing is left behind it; text without a point
 * stays as it is. */
void rc_decimal_trim (GString *text);
