/* Exact lengths: reading and writing them as people do.
 *
 * One tick is 1/160 mm, so millimetres and 1/32 inch are both whole numbers of ticks:
 * 1 mm = 160, 1/32 in = 127, 1 in = 4064, 1 ft = 48768, 1 yd = 146304 (1 in = 25.4 mm exactly).
 */
#pragma once

#include <glib.h>

typedef gint64 RcLength; /* ticks */

#define RC_TICKS_PER_MM   G_GINT64_CONSTANT (160)
#define RC_TICKS_PER_CM   G_GINT64_CONSTANT (1600)
#define RC_TICKS_PER_M    G_GINT64_CONSTANT (160000)
#define RC_TICKS_PER_32ND G_GINT64_CONSTANT (127)
#define RC_TICKS_PER_INCH G_GINT64_CONSTANT (4064)
#define RC_TICKS_PER_FOOT G_GINT64_CONSTANT (48768)
#define RC_TICKS_PER_YARD G_GINT64_CONSTANT (146304)

/* The longest length that is read or stored: 100 km. Its square, doubled, fits an int64 area with room to spare
 * only up to RC_LENGTH_MAX_SIDE, so areas are checked on their own. */
#define RC_LENGTH_MAX (G_GINT64_CONSTANT (100000) * RC_TICKS_PER_M)

typedef enum
{
  RC_LENGTH_UNIT_FOOT_INCH, /* a bare number is inches; printed as 12' 6 1/2" */
  RC_LENGTH_UNIT_INCH,
  RC_LENGTH_UNIT_FOOT,
  RC_LENGTH_UNIT_YARD,
  RC_LENGTH_UNIT_MM,
  RC_LENGTH_UNIT_CM,
  RC_LENGTH_UNIT_M,
} RcLengthUnit;

/* One tick is 0.00000625 m: eight decimals of a metre print every length exactly. */
#define RC_LENGTH_MAX_DECIMALS 8

/* Ticks in one of the unit; for FOOT_INCH in one inch, the unit of a bare number. */
gint64 rc_length_unit_get_ticks (RcLengthUnit unit);

/* How a length is printed. */
typedef struct
{
  RcLengthUnit unit;
  int          denominator; /* FOOT_INCH and INCH: finest fraction of an inch, 1, 2, 4, 8, 16 or 32 */
  int          decimals;    /* the others: digits after the decimal point, 0 to RC_LENGTH_MAX_DECIMALS */
  gboolean     with_unit;   /* false leaves the unit out, for columns that carry it in their head */
} RcLengthStyle;

extern const RcLengthStyle RC_LENGTH_STYLE_IMPERIAL; /* 12' 6 1/2", to 1/16 in */
extern const RcLengthStyle RC_LENGTH_STYLE_METRIC;   /* 3.660 m */

/* Reads text such as  12'6 1/2"  12-6  12' 6.5"  150 1/2 in  3.66 m  3,66 m  366 cm  3 yd 1 ft  with ASCII or
 * typographic quotes and primes (also '' for inches), in any mix of spaces.
 *
 * - A bare number is in `bare_unit` (FOOT_INCH: "150" is 150 in, "12 6" is refused); after feet it is inches.
 * - 12-6 is 12 ft 6 in whatever the bare unit. 6-1/2 alone is refused, it could be 6 1/2 or 6 ft 1/2 in.
 * - Parts go from large to small, each less than one of the part before it (no 3' 14"), feet and metres do not mix, and
 *   only the last may have a fraction or decimals.
 * - A comma is a decimal comma, but for one with three digits behind it and one to three before, the first not 0:
 *   3,660 is refused, it could mean either.
 * - Negative lengths are refused. A value between two ticks is rounded to the nearer, halves up.
 *
 * Errors: RC_ERROR_PARSE (the message quotes the text, says what is wrong, at which character, counted from 1, and
 * shows what would be right), RC_ERROR_RANGE (longer than RC_LENGTH_MAX). On error *length is untouched. */
gboolean rc_length_parse (const char *text, RcLengthUnit bare_unit, RcLength *length, GError **error);

/* Prints a length rounded to the style's fraction or decimals, halves away from zero. Eight decimals of a metre, five
 * of a millimetre are exact; six decimals of any unit, or 1/32 in where the length is a multiple of it, read back to
 * the same ticks. Feet and inches without their marks are joined by a dash, 12-6 1/2, and read back too. Locale is
 * never used: the point is always '.'. (transfer full) */
char *rc_length_format (RcLength length, const RcLengthStyle *style);

/* Millimetres as decimal text with no more digits than needed, exact ("3657.6"; 1 tick = 0.00625 mm), for JSON and
 * XML. (transfer full) */
char *rc_length_format_mm (RcLength length);

/* Sum and product that stop the program's author, not the customer, on overflow: return FALSE instead of wrapping. */
gboolean rc_length_add (RcLength a, RcLength b, RcLength *sum);
gboolean rc_length_multiply (RcLength a, gint64 n, RcLength *product);

/* Smallest multiple of `step` (> 0) at least `length`; step 0 returns the length itself. */
RcLength rc_length_round_up (RcLength length, RcLength step);

double rc_length_to_mm (RcLength length);

/* A GCompareFunc for arrays of RcLength, shortest first. */
int rc_length_compare (gconstpointer a, gconstpointer b);
