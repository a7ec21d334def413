/* Fuzz target of the length parser.
 *
 * Alone it runs a fixed corpus and sixty thousand mutations of it, the same ones at every run, as part of the
 * suite. Built with -DRC_FUZZER and a fuzzing engine (clang -fsanitize=fuzzer) the engine brings main and the inputs.
 */
#include "length.h"

#include "rounds.h"
#include "rowcut-error.h"

#include <string.h>

int LLVMFuzzerTestOneInput (const guint8 *data, gsize size);

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

#ifndef RC_FUZZER

#define N_MUTATIONS 60000

static const char *corpus[] = {
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

static const char *snippets[] = {
  "'", "\"",       "''",   "′",  "″",  "’",  "”",  "½", "⅞", "⁄", "/", "-",  "–",   ".",         ",",
  " ", "\302\240", "ft",   "in", "yd", "mm", "cm", "m", "0", "1", "9", "12", "000", "999999999", "18446744073709551615",
  "e", "\xe2",     "\x80", "\n", "٣",
};

/* Puts in, takes out or changes something at one place. */
static void
mutate (GRand *random, GString *text)
{
  gsize at = text->len > 0 ? (gsize)g_rand_int_range (random, 0, (gint32)text->len + 1) : 0;

  switch (g_rand_int_range (random, 0, 4))
    {
    case 0:
      g_string_insert (text, (gssize)at, snippets[g_rand_int_range (random, 0, G_N_ELEMENTS (snippets))]);
      break;
    case 1:
      g_string_insert (text, (gssize)at, corpus[g_rand_int_range (random, 0, G_N_ELEMENTS (corpus))]);
      break;
    case 2:
      if (at < text->len)
        g_string_erase (text, (gssize)at, 1 + g_rand_int_range (random, 0, (gint32)(text->len - at)));
      break;
    default:
      if (at < text->len)
        text->str[at] = (char)g_rand_int_range (random, 1, 256);
      break;
    }
}

static void
test_mutations (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (1);

  for (guint i = 0; i < G_N_ELEMENTS (corpus); i++)
    LLVMFuzzerTestOneInput ((const guint8 *)corpus[i], strlen (corpus[i]));

  for (guint i = 0; i < scale_rounds (N_MUTATIONS); i++)
    {
      g_autoptr (GString) text = g_string_new (corpus[g_rand_int_range (random, 0, G_N_ELEMENTS (corpus))]);

      for (int n = g_rand_int_range (random, 1, 5); n > 0; n--)
        mutate (random, text);
      LLVMFuzzerTestOneInput ((const guint8 *)text->str, text->len);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fuzz/length/stands any text", test_mutations);
  return g_test_run ();
}

#endif
