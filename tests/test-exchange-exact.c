/* Lengths, areas and rates as text: what is written reads back as itself; what is none is refused. */
#include <string.h>

#include "exact-text.h"
#include "rowcut-error.h"

static void
test_lengths (void)
{
  static const RcLength lengths[] = { 0, 1, -1, 160, 4064, 12 * RC_TICKS_PER_FOOT, -5 * RC_TICKS_PER_INCH, 9999999 };
  RcLength              back = 7;

  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    for (guint imperial = 0; imperial < 2; imperial++)
      {
        g_autofree char *text = rc_exact_length_format (lengths[i], imperial != 0);

        g_assert_true (rc_signed_length_parse (text, RC_LENGTH_UNIT_MM, &back, NULL));
        g_assert_cmpint (back, ==, lengths[i]);
      }
  g_assert_true (rc_signed_length_parse ("  -3 ft", RC_LENGTH_UNIT_MM, &back, NULL));
  g_assert_cmpint (back, ==, -3 * RC_TICKS_PER_FOOT);
  g_assert_false (rc_signed_length_parse ("--3 ft", RC_LENGTH_UNIT_MM, &back, NULL));
  g_assert_false (rc_signed_length_parse ("-", RC_LENGTH_UNIT_MM, &back, NULL));
}

/* 1 sq yd is 9 sq ft. */
static void
test_areas (void)
{
  static const char *const refused[] = { "",
                                         "9",
                                         "9 acres",
                                         "sq yd",
                                         "-3 sq yd",
                                         "9223372036854 sq yd",
                                         "x area units",
                                         "-5 area units",
                                         "99999999999999999999 area units" };
  RcArea                   yard, feet, back;

  g_assert_true (rc_area_parse ("1 sq yd", &yard, NULL));
  g_assert_true (rc_area_parse (" 9 sq ft ", &feet, NULL));
  g_assert_cmpint (yard, ==, feet);
  for (RcArea area = 0; area < G_MAXINT64 / 11; area = area * 11 + 1)
    {
      g_autofree char *text = rc_exact_area_format (area);

      g_assert_true (rc_area_parse (text, &back, NULL));
      g_assert_cmpint (back, ==, area);
    }
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_false (rc_area_parse (refused[i], &back, &error));
      g_assert_nonnull (error);
    }
}

static void
test_rates (void)
{
  static const struct
  {
    const char *text;
    gint64      ppm; /* -1: refused */
  } rows[] = { { "7.25", 72500 },   { "7.25 %", 72500 }, { "0", 0 },   { "1000%", 10000000 },
               { "1000.0001", -1 }, { "7.25001", -1 },   { "-1", -1 }, { "seven", -1 },
               { "", -1 },          { "0.0001", 1 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      gint64   ppm = -1;
      gboolean read = rc_percent_parse (rows[i].text, &ppm, NULL);

      g_assert_true (read == (rows[i].ppm >= 0));
      g_assert_cmpint (ppm, ==, rows[i].ppm);
      if (read)
        {
          g_autofree char *text = rc_percent_format (ppm);

          g_assert_true (rc_percent_parse (text, &ppm, NULL));
          g_assert_cmpint (ppm, ==, rows[i].ppm);
        }
    }
}

static void
test_doubles (void)
{
  static const double values[] = { 0, 1, -1, 0.1, 1.0 / 3, 1e300, 2.5e-10, 123456789.125 };

  for (guint i = 0; i < G_N_ELEMENTS (values); i++)
    {
      g_autofree char *text = rc_exact_double_format (values[i]);

      g_assert_true (g_ascii_strtod (text, NULL) == values[i]);
      g_assert_null (strchr (text, ','));
    }
  g_autofree char *tenth = rc_exact_double_format (0.1);
  g_assert_cmpstr (tenth, ==, "0.1");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange-exact/lengths", test_lengths);
  g_test_add_func ("/exchange-exact/areas", test_areas);
  g_test_add_func ("/exchange-exact/rates", test_rates);
  g_test_add_func ("/exchange-exact/doubles", test_doubles);
  return g_test_run ();
}
