/* Fuzz target of the length parser. */
#include "length.h"

#include "fuzz-run.h"
#include "rowcut-error.h"

#include <string.h>

static void
check_accepted (RcLength length)
{
  static const RcLengthStyle styles[] = {
    { RC_LENGTH_UNIT_M, 0, 8, TRUE },
    { RC_LENGTH_UNIT_YARD, 0, 6, TRUE },
    { RC_LENGTH_UNIT_MM, 0, 5, FALSE },
  };

  g_assert_cmpint (length, >=, 0);
  g_assert_cmpint (length, <=, RC_LENGTH_MAX);

  for (guint i = 0; i < G_N_ELEMENTS (styles); i++)
    {
      g_autofree char *printed = rc_length_format (length, &styles[i]);
      RcLength         back = -1;

      g_assert_true (rc_length_parse (printed, styles[i].unit, &back, NULL));
      g_assert_cmpint (back, ==, length);
    }
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autofree char *text = g_strndup ((const char *)data, size);

  for (RcLengthUnit unit = RC_LENGTH_UNIT_FOOT_INCH; unit <= RC_LENGTH_UNIT_M; unit++)
    {
      g_autoptr (GError) error = NULL;
      RcLength length = -7;

      if (rc_length_parse (text, unit, &length, &error))
        {
          g_assert_no_error (error);
          check_accepted (length);
        }
      else
        {
          g_assert_nonnull (error);
          g_assert_true (error->domain == RC_ERROR);
          g_assert_true (g_utf8_validate (error->message, -1, NULL));
          g_assert_cmpint (length, ==, -7);
        }
    }

  return 0;
}

static const char *const samples[] = {
  "12'6 1/2\"",
  "12-6-1/2",
  "12' 6.5\"",
  "150 1/2 in",
  "3.66 m",
  "3,66 m",
  "366 cm",
  "3660 mm",
  "3 yd 1 ft 2 in",
  "12’6½”",
  "12′ 6″",
  "12'6''",
  "3 m 66 cm",
  "1/32",
  "100000 m",
  "99999999999999999999 yd",
  "0.123456789012 m",
  "999999/1000000 in",
  "-3",
  "1,234.5",
  "\xff\xfe",
};

static const char *const words[]
    = { "'",  "\"",   "''",   "′",  "″", "’", "”",        "½",   "⅞",         "⁄",
        "/",  "-",    "–",    ".",  ",", " ", "\302\240", "ft",  "in",        "yd",
        "mm", "cm",   "m",    "0",  "1", "9", "12",       "000", "999999999", "18446744073709551615",
        "e",  "\xe2", "\x80", "\n", "٣", NULL };

static void
add_samples (GPtrArray *into)
{
  for (guint i = 0; i < G_N_ELEMENTS (samples); i++)
    g_ptr_array_add (into, g_bytes_new_static (samples[i], strlen (samples[i])));
}

const FuzzTarget fuzz_target = { "length", words, 60000, 4, add_samples };
