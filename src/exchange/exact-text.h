/* Lengths, areas and rates as text in files: read back, each gives exactly what was written.
 */
#pragma once

#include "area.h"

/* Feet and inches to 1/32 in where `imperial` and that is exact, else millimetres: 12' 6 1/2"; 3657.6 mm; -40 mm.
 * (transfer full) */
char *rc_exact_length_format (RcLength length, gboolean imperial);

/* rc_length_parse with a minus sign allowed before the text. */
gboolean rc_signed_length_parse (const char *text, RcLengthUnit bare_unit, RcLength *length, GError **error);

/* "90 sq yd", "81 sq ft", "7.5 m2"; an area that is exact in none of them in half square ticks, "12345 area units".
 * (transfer full) */
char    *rc_exact_area_format (RcArea area);
gboolean rc_area_parse (const char *text, RcArea *area, GError **error);

/* Percent with at most four decimals, a percent sign allowed: 7.25 is 72500 parts per million. */
char    *rc_percent_format (gint64 ppm);
gboolean rc_percent_parse (const char *text, gint64 *ppm, GError **error);

/* The shortest decimal text that reads back as the same number; never in a locale. (transfer full) */
char *rc_exact_double_format (double value);
