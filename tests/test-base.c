/* Areas, units and quantities; what the trade publishes about units. */
#include "area.h"
#include "day.h"
#include "rowcut-error.h"
#include "unit.h"
#include "wide.h"

#include <string.h>

#define FOOT RC_TICKS_PER_FOOT
#define INCH RC_TICKS_PER_INCH
#define YARD RC_TICKS_PER_YARD
#define M    RC_TICKS_PER_M

static void
test_error_domain (void)
{
  g_assert_cmpstr (g_quark_to_string (RC_ERROR), ==, "rc-error-quark");
}

static void
test_quote (void)
{
  g_autofree char *nothing = rc_error_quote (NULL);
  g_autofree char *damaged = rc_error_quote ("a\xff");
  g_autofree char *long_text = g_strnfill (200, 'x');
  g_autofree char *cut = rc_error_quote (long_text);

  g_assert_cmpstr (nothing, ==, "");
  g_assert_true (g_utf8_validate (damaged, -1, NULL));
  g_assert_cmpint (g_utf8_strlen (cut, -1), ==, 48);
}

/* Exact definitions: NIST SP 811 App. B (recalled); yard and foot: Federal Register, 1 July 1959. */
static void
test_unit_facts (void)
{
  g_assert_cmpint (10 * INCH, ==, 254 * RC_TICKS_PER_MM); /* 1 in = 25.4 mm */
  g_assert_cmpint (10000 * FOOT, ==, 3048 * M);           /* 1 ft = 0.3048 m */
  g_assert_cmpint (10000 * YARD, ==, 9144 * M);           /* 1 yd = 0.9144 m */
  g_assert_cmpint (32 * RC_TICKS_PER_32ND, ==, INCH);     /* the finest fraction on a tape */
  g_assert_cmpint (12 * INCH, ==, FOOT);
  g_assert_cmpint (3 * FOOT, ==, YARD);
}

static void
assert_area (RcLength width, RcLength length, RcAreaUnit unit, int decimals, const char *expected)
{
  g_autofree char *text = rc_area_format (rc_area_from_rectangle (width, length), unit, decimals, TRUE);

  g_assert_cmpstr (text, ==, expected);
}

static void
test_area_facts (void)
{
  /* 1 sq ft = 0.09290304 m2 exactly, sciences360 and SP 811; 1 sq yd = 0.83612736 m2 by squaring the yard */
  assert_area (10000 * FOOT, FOOT, RC_AREA_UNIT_M2, 4, "929.0304 m²");
  assert_area (10000 * YARD, YARD, RC_AREA_UNIT_M2, 4, "8361.2736 m²");
  assert_area (YARD, YARD, RC_AREA_UNIT_SQ_FT, 6, "9.000000 sq ft");

  /* a 12 ft roll and a 3.66 m roll are not the same: 3.66 m is 12.0079 ft, 2.4 mm more (arithmetic) */
  g_assert_cmpint (366 * M / 100 - 12 * FOOT, ==, 24 * RC_TICKS_PER_MM / 10);
  g_assert_cmpint (rc_unit_from_length (366 * M / 100, RC_UNIT_FT), ==, 12007874);
  g_assert_cmpint (rc_unit_from_length (12 * FOOT, RC_UNIT_M), ==, 3657600); /* Math Central: 3.6576 m */
}

/* Square yards in a running foot: retailers' charts, 12 ft 1.33, 15 ft 1.67; the others by arithmetic. */
static void
test_square_yards_per_running_foot (void)
{
  assert_area (12 * FOOT, FOOT, RC_AREA_UNIT_SQ_YD, 4, "1.3333 sq yd");
  assert_area (12 * FOOT, FOOT, RC_AREA_UNIT_SQ_YD, 2, "1.33 sq yd");
  assert_area (13 * FOOT + 6 * INCH, FOOT, RC_AREA_UNIT_SQ_YD, 4, "1.5000 sq yd");
  assert_area (15 * FOOT, FOOT, RC_AREA_UNIT_SQ_YD, 4, "1.6667 sq yd");
  assert_area (15 * FOOT, FOOT, RC_AREA_UNIT_SQ_YD, 2, "1.67 sq yd");
  assert_area (9 * FOOT, FOOT, RC_AREA_UNIT_SQ_YD, 4, "1.0000 sq yd");
}

static void
test_published_areas (void)
{
  /* Math Central: a roll of 12 x 100 ft is 1,200 sq ft, 133.33 sq yd, 3.6576 x 30.48 = 111.483648 m2 (printed cut off
   * after five decimals, 111.48364) */
  assert_area (12 * FOOT, 100 * FOOT, RC_AREA_UNIT_SQ_FT, 0, "1200 sq ft");
  assert_area (12 * FOOT, 100 * FOOT, RC_AREA_UNIT_SQ_YD, 2, "133.33 sq yd");
  assert_area (12 * FOOT, 100 * FOOT, RC_AREA_UNIT_M2, 6, "111.483648 m²");

  /* UK ordering guide: 6.00 x 4.00 m is 24 m2 */
  assert_area (6 * M, 4 * M, RC_AREA_UNIT_M2, 2, "24.00 m²");

  /* jiskha 1232497269: 13 x 13 ft, 169 sq ft, 18 7/9 sq yd (misprinted 18 7/8 there) */
  assert_area (13 * FOOT, 13 * FOOT, RC_AREA_UNIT_SQ_FT, 0, "169 sq ft");
  assert_area (13 * FOOT, 13 * FOOT, RC_AREA_UNIT_SQ_YD, 4, "18.7778 sq yd");

  /* jiskha 1331782851: 15 x 21 ft, 35 sq yd */
  assert_area (15 * FOOT, 21 * FOOT, RC_AREA_UNIT_SQ_YD, 2, "35.00 sq yd");
}

/* Sources that round on the way get another answer: megaelecciones.com prints 28.41 sq yd for 16 x 16 ft (5.33 squared)
 * where 28.444 is exact; daltoncarpet.com prints 14.7 sq yd for 132 sq ft where 14.667 is exact. */
static void
test_rounding_traps (void)
{
  assert_area (16 * FOOT, 16 * FOOT, RC_AREA_UNIT_SQ_YD, 2, "28.44 sq yd");
  assert_area (16 * FOOT, 16 * FOOT, RC_AREA_UNIT_SQ_YD, 3, "28.444 sq yd");
  assert_area (12 * FOOT, 11 * FOOT, RC_AREA_UNIT_SQ_YD, 3, "14.667 sq yd");
  assert_area (12 * FOOT, 11 * FOOT, RC_AREA_UNIT_SQ_YD, 1, "14.7 sq yd");
}

static void
test_area_limits (void)
{
  RcLength         side = 2147483647; /* 13.4 km */
  g_autofree char *largest = rc_area_format (G_MAXINT64, RC_AREA_UNIT_M2, 6, FALSE);
  g_autofree char *smallest = rc_area_format (-G_MAXINT64, RC_AREA_UNIT_SQ_YD, 0, FALSE);

  g_assert_cmpint (rc_area_from_rectangle (side, side), ==, 2 * side * side);
  g_assert_cmpint (rc_area_from_rectangle (side + 1, side + 1), ==, -1);
  g_assert_cmpint (rc_area_from_rectangle (RC_LENGTH_MAX, RC_LENGTH_MAX), ==, -1);
  g_assert_cmpint (rc_area_from_rectangle (0, RC_LENGTH_MAX), ==, 0);
  g_assert_cmpstr (largest, ==, "180143985.094820");
  g_assert_cmpstr (smallest, ==, "-215450413");
}

static void
test_area_rounds_once (void)
{
  /* half a hundredth of a m2, and one unit less */
  RcArea           half = rc_area_unit_get_size (RC_AREA_UNIT_M2) / 200;
  g_autofree char *up = rc_area_format (half, RC_AREA_UNIT_M2, 2, FALSE);
  g_autofree char *down = rc_area_format (half - 1, RC_AREA_UNIT_M2, 2, FALSE);
  g_autofree char *below = rc_area_format (-half, RC_AREA_UNIT_M2, 2, FALSE);

  g_assert_cmpstr (up, ==, "0.01");
  g_assert_cmpstr (down, ==, "0.00");
  g_assert_cmpstr (below, ==, "-0.01");
}

static void
test_length_arithmetic (void)
{
  RcLength result = -7;

  g_assert_true (rc_length_add (3, 4, &result));
  g_assert_cmpint (result, ==, 7);
  g_assert_false (rc_length_add (G_MAXINT64, 1, &result));
  g_assert_false (rc_length_add (G_MININT64, -1, &result));
  g_assert_cmpint (result, ==, 7);
  g_assert_true (rc_length_multiply (-3, 4, &result));
  g_assert_cmpint (result, ==, -12);
  g_assert_false (rc_length_multiply (G_MAXINT64 / 2, 3, &result));
  g_assert_cmpint (result, ==, -12);

  g_assert_cmpint (rc_length_round_up (0, 5), ==, 0);
  g_assert_cmpint (rc_length_round_up (1, 5), ==, 5);
  g_assert_cmpint (rc_length_round_up (5, 5), ==, 5);
  g_assert_cmpint (rc_length_round_up (6, 5), ==, 10);
  g_assert_cmpint (rc_length_round_up (-6, 5), ==, -5);
  g_assert_cmpint (rc_length_round_up (6, 0), ==, 6);

  /* retailer's "ABC of measuring": up to the next half foot, 15'3" to 15.5 and 15'8" to 16 */
  g_assert_cmpint (rc_length_round_up (15 * FOOT + 3 * INCH, FOOT / 2), ==, 15 * FOOT + FOOT / 2);
  g_assert_cmpint (rc_length_round_up (15 * FOOT + 8 * INCH, FOOT / 2), ==, 16 * FOOT);
}

static void
test_wide_division (void)
{
  static const struct
  {
    int numerator, denominator, round, floor, ceil;
  } cases[] = {
    { 7, 2, 4, 3, 4 },   { -7, 2, -4, -4, -3 }, { 6, 2, 3, 3, 3 },    { -6, 2, -3, -3, -3 }, { 1, 3, 0, 0, 1 },
    { -1, 3, 0, -1, 0 }, { 2, 3, 1, 0, 1 },     { -2, 3, -1, -1, 0 }, { 0, 9, 0, 0, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_assert_cmpint ((int)rc_wide_divide_round (cases[i].numerator, cases[i].denominator), ==, cases[i].round);
      g_assert_cmpint ((int)rc_wide_divide_floor (cases[i].numerator, cases[i].denominator), ==, cases[i].floor);
      g_assert_cmpint ((int)rc_wide_divide_ceil (cases[i].numerator, cases[i].denominator), ==, cases[i].ceil);
    }
}

static void
test_units (void)
{
  /* UN/ECE Recommendation 20, packages Recommendation 21 */
  static const char *codes[RC_N_UNITS]
      = { "C62", "MTR", "FOT", "YRD", "MTK", "FTK", "YDK", "LTR", "GLL", "HUR", "XRO", "XCT", "XBX", "XTB" };

  for (RcUnit unit = 0; unit < RC_N_UNITS; unit++)
    {
      RcUnit back;

      g_assert_cmpstr (rc_unit_get_unece (unit), ==, codes[unit]);
      g_assert_true (rc_unit_parse (rc_unit_get_name (unit), &back, NULL));
      g_assert_cmpint (back, ==, unit);
    }
}

static void
test_unknown_unit (void)
{
  static const char *names[] = { "", "furlong", "M2", "sqft", "\xff", NULL };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (GError) error = NULL;
      RcUnit unit;

      g_assert_false (rc_unit_parse (names[i], &unit, &error));
      g_assert_error (error, RC_ERROR, RC_ERROR_PARSE);
      g_assert_nonnull (strstr (error->message, "sq yd"));
    }
}

static void
test_quantities_of (void)
{
  g_assert_cmpint (rc_unit_from_length (27 * FOOT, RC_UNIT_FT), ==, 27000000);
  g_assert_cmpint (rc_unit_from_length (27 * FOOT, RC_UNIT_YD), ==, 9000000);
  g_assert_cmpint (rc_unit_from_length (FOOT, RC_UNIT_YD), ==, 333333);
  g_assert_cmpint (rc_unit_from_length (2 * FOOT, RC_UNIT_YD), ==, 666667);
  g_assert_cmpint (rc_unit_from_length (RC_LENGTH_MAX, RC_UNIT_M), ==, G_GINT64_CONSTANT (100000000000));
  /* hasslefreeflooring.com: 27 running feet of 12 ft roll are 324 sq ft, 36 sq yd */
  g_assert_cmpint (rc_unit_from_area (rc_area_from_rectangle (12 * FOOT, 27 * FOOT), RC_UNIT_SQ_FT), ==, 324000000);
  g_assert_cmpint (rc_unit_from_area (rc_area_from_rectangle (12 * FOOT, 27 * FOOT), RC_UNIT_SQ_YD), ==, 36000000);
  g_assert_cmpint (rc_unit_from_area (rc_area_from_rectangle (6 * M, 4 * M), RC_UNIT_M2), ==, 24000000);
}

static void
test_quantity_text (void)
{
  static const struct
  {
    gint64      micro;
    int         decimals;
    const char *text;
  } printed[] = {
    { 36000000, 3, "36" },
    { 37333333, 3, "37.333" },
    { 37333333, 0, "37" },
    { 500000, 0, "1" },
    { 1500, 3, "0.002" },
    { -1500, 3, "-0.002" },
    { 100, 3, "0" },
    { 100000000, 2, "100" },
    { 1, 6, "0.000001" },
    { 2500000, 6, "2.5" },
    { G_MAXINT64, 6, "9223372036854.775807" },
  };
  static const struct
  {
    const char *text;
    gint64      micro;
  } read[] = { { "36", 36000000 }, { "37.333", 37333000 },   { " 0,5 ", 500000 },
               { "-2", -2000000 }, { "1.0000000", 1000000 }, { "9223372036854.775807", G_MAXINT64 } };
  static const char *refused[] = { "", "x", "1.2345678", "1,234", "1 2", "9223372036854.775808", "." };

  for (guint i = 0; i < G_N_ELEMENTS (printed); i++)
    {
      g_autofree char *text = rc_quantity_format (printed[i].micro, printed[i].decimals);

      g_assert_cmpstr (text, ==, printed[i].text);
    }
  for (guint i = 0; i < G_N_ELEMENTS (read); i++)
    {
      gint64 micro;

      g_assert_true (rc_quantity_parse (read[i].text, &micro, NULL));
      g_assert_cmpint (micro, ==, read[i].micro);
    }
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autoptr (GError) error = NULL;
      gint64 micro = -7;

      g_test_message ("%s", refused[i]);
      g_assert_false (rc_quantity_parse (refused[i], &micro, &error));
      g_assert_true (error->domain == RC_ERROR);
      g_assert_cmpint (micro, ==, -7);
    }
}

static void
test_divisors (void)
{
  static const gint64 cases[][3] = { { 12, 18, 6 },
                                     { 18, 12, 6 },
                                     { 7, 5, 1 },
                                     { 0, 4, 4 },
                                     { 4, 0, 4 },
                                     { 0, 0, 0 },
                                     { RC_TICKS_PER_FOOT, RC_TICKS_PER_M, 128 } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpint ((gint64)rc_wide_find_divisor (cases[i][0], cases[i][1]), ==, cases[i][2]);
}

static void
test_days (void)
{
  static const char *const none[]
      = { "",           "2026-02-29",  "2026-13-01", "2026-00-10", "2026-1-01", "2026-01-1x",
          " 026-01-01", "2026-01-01 ", "26-01-01",   "0000-01-01", "2026-01--1" };
  static const struct
  {
    const char *day;
    int         n;
    const char *later;
  } cases[] = {
    { "2026-02-28", 1, "2026-03-01" }, { "2024-02-28", 1, "2024-02-29" },   { "2026-01-01", -1, "2025-12-31" },
    { "2026-03-31", 0, "2026-03-31" }, { "2026-01-01", 365, "2027-01-01" }, { "0001-01-01", -1, NULL },
    { "9999-12-31", 1, NULL },         { "9999-12-31", 0, "9999-12-31" },
  };

  g_assert_false (rc_day_is_valid (NULL));
  for (guint i = 0; i < G_N_ELEMENTS (none); i++)
    {
      g_assert_false (rc_day_is_valid (none[i]));
      g_assert_null (rc_day_add (none[i], 1));
    }
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *later = rc_day_add (cases[i].day, cases[i].n);

      g_assert_true (rc_day_is_valid (cases[i].day));
      g_assert_cmpstr (later, ==, cases[i].later);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/error/has its own domain", test_error_domain);
  g_test_add_func ("/error/repeats text from outside safely", test_quote);
  g_test_add_func ("/day/is one of the calendar", test_days);
  g_test_add_func ("/wide/finds the greatest common divisor", test_divisors);
  g_test_add_func ("/wide/divides to the nearest, down and up", test_wide_division);
  g_test_add_func ("/length/units are exact", test_unit_facts);
  g_test_add_func ("/length/arithmetic never wraps", test_length_arithmetic);
  g_test_add_func ("/area/units are exact", test_area_facts);
  g_test_add_func ("/area/square yards per running foot", test_square_yards_per_running_foot);
  g_test_add_func ("/area/published areas", test_published_areas);
  g_test_add_func ("/area/rounding traps in published examples", test_rounding_traps);
  g_test_add_func ("/area/refuses what does not fit", test_area_limits);
  g_test_add_func ("/area/rounds once, halves away from zero", test_area_rounds_once);
  g_test_add_func ("/unit/names and codes", test_units);
  g_test_add_func ("/unit/lists the known where one is unknown", test_unknown_unit);
  g_test_add_func ("/unit/quantities of lengths and areas", test_quantities_of);
  g_test_add_func ("/unit/quantities as text", test_quantity_text);

  return g_test_run ();
}
