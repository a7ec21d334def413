/* Lengths as people write them. */
#include "length.h"

#include "rowcut-error.h"

#include <string.h>

typedef struct
{
  const char  *text;
  RcLengthUnit bare_unit;
  RcLength     ticks;
} Reading;

#define INCH RC_TICKS_PER_INCH
#define FOOT RC_TICKS_PER_FOOT
#define YARD RC_TICKS_PER_YARD
#define MM   RC_TICKS_PER_MM
#define M    RC_TICKS_PER_M

/* clang-format off */
static const Reading readings[] = {
  /* feet and inches, however joined */
  { "12'6 1/2\"", RC_LENGTH_UNIT_M, 12 * FOOT + 6 * INCH + INCH / 2 },
  { "12' 6 1/2\"", RC_LENGTH_UNIT_M, 12 * FOOT + 6 * INCH + INCH / 2 },
  { "12'6 1/2", RC_LENGTH_UNIT_M, 12 * FOOT + 6 * INCH + INCH / 2 },
  { "12' 6.5\"", RC_LENGTH_UNIT_FOOT_INCH, 12 * FOOT + 6 * INCH + INCH / 2 },
  { "12' 6,5\"", RC_LENGTH_UNIT_FOOT_INCH, 12 * FOOT + 6 * INCH + INCH / 2 },
  { "12-6", RC_LENGTH_UNIT_FOOT_INCH, 12 * FOOT + 6 * INCH },
  { "12-6", RC_LENGTH_UNIT_M, 12 * FOOT + 6 * INCH },
  { "12 - 6 1/2", RC_LENGTH_UNIT_FOOT_INCH, 12 * FOOT + 6 * INCH + INCH / 2 },
  { "12-6\"", RC_LENGTH_UNIT_FOOT_INCH, 12 * FOOT + 6 * INCH },
  { "12-6-1/2", RC_LENGTH_UNIT_FOOT_INCH, 12 * FOOT + 6 * INCH + INCH / 2 },
  { "12'-6 1/2\"", RC_LENGTH_UNIT_FOOT_INCH, 12 * FOOT + 6 * INCH + INCH / 2 },
  { "12'-6-1/2\"", RC_LENGTH_UNIT_FOOT_INCH, 12 * FOOT + 6 * INCH + INCH / 2 },
  { "12'-1/2\"", RC_LENGTH_UNIT_FOOT_INCH, 12 * FOOT + INCH / 2 },
  { "12' 1/2\"", RC_LENGTH_UNIT_FOOT_INCH, 12 * FOOT + INCH / 2 },
  { "12'", RC_LENGTH_UNIT_FOOT_INCH, 12 * FOOT },
  { "12' 0\"", RC_LENGTH_UNIT_FOOT_INCH, 12 * FOOT },
  { "12.5'", RC_LENGTH_UNIT_FOOT_INCH, 12 * FOOT + 6 * INCH },
  { "12 1/2'", RC_LENGTH_UNIT_FOOT_INCH, 12 * FOOT + 6 * INCH },
  { "12 ft 6 in", RC_LENGTH_UNIT_MM, 12 * FOOT + 6 * INCH },
  { "12ft6in", RC_LENGTH_UNIT_MM, 12 * FOOT + 6 * INCH },
  { "12 FEET 6 INCHES", RC_LENGTH_UNIT_MM, 12 * FOOT + 6 * INCH },
  { "12 ft. 6 in.", RC_LENGTH_UNIT_MM, 12 * FOOT + 6 * INCH },
  { "3 yd 1 ft 2 in", RC_LENGTH_UNIT_M, 3 * YARD + FOOT + 2 * INCH },
  { "3 yd 7 in", RC_LENGTH_UNIT_M, 3 * YARD + 7 * INCH },
  { "2 1/3 yards", RC_LENGTH_UNIT_M, 7 * FOOT },
  /* marks that typographers and telephones put in */
  { "12’6½”", RC_LENGTH_UNIT_M, 12 * FOOT + 6 * INCH + INCH / 2 },
  { "12‘ 6“", RC_LENGTH_UNIT_M, 12 * FOOT + 6 * INCH },
  { "12′ 6″", RC_LENGTH_UNIT_M, 12 * FOOT + 6 * INCH },
  { "12′6′′", RC_LENGTH_UNIT_M, 12 * FOOT + 6 * INCH },
  { "12'6''", RC_LENGTH_UNIT_M, 12 * FOOT + 6 * INCH },
  { "6''", RC_LENGTH_UNIT_M, 6 * INCH },
  { "12´6´´", RC_LENGTH_UNIT_M, 12 * FOOT + 6 * INCH },
  { "12' 6 1⁄2\"", RC_LENGTH_UNIT_M, 12 * FOOT + 6 * INCH + INCH / 2 },
  { "12–6", RC_LENGTH_UNIT_M, 12 * FOOT + 6 * INCH },
  { "\302\240" "12'\302\240" "6\" ", RC_LENGTH_UNIT_M, 12 * FOOT + 6 * INCH },
  { "3\342\200\257" "660\302\240mm", RC_LENGTH_UNIT_M, -1 }, /* two numbers */
  { "⅞\"", RC_LENGTH_UNIT_M, 7 * INCH / 8 },
  /* inches */
  { "150 1/2", RC_LENGTH_UNIT_FOOT_INCH, 150 * INCH + INCH / 2 },
  { "150 1/2 in", RC_LENGTH_UNIT_M, 150 * INCH + INCH / 2 },
  { "150.5", RC_LENGTH_UNIT_INCH, 150 * INCH + INCH / 2 },
  { "150", RC_LENGTH_UNIT_FOOT_INCH, 150 * INCH },
  { "1/2", RC_LENGTH_UNIT_FOOT_INCH, INCH / 2 },
  { "3/2\"", RC_LENGTH_UNIT_FOOT_INCH, 3 * INCH / 2 },
  { "1 / 2\"", RC_LENGTH_UNIT_FOOT_INCH, INCH / 2 },
  { "1/32\"", RC_LENGTH_UNIT_FOOT_INCH, RC_TICKS_PER_32ND },
  { "1/3\"", RC_LENGTH_UNIT_FOOT_INCH, 1355 }, /* 1354.67 ticks */
  { ".5\"", RC_LENGTH_UNIT_FOOT_INCH, INCH / 2 },
  /* metric */
  { "3.66 m", RC_LENGTH_UNIT_FOOT_INCH, 366 * M / 100 },
  { "3,66 m", RC_LENGTH_UNIT_FOOT_INCH, 366 * M / 100 },
  { "3.66m", RC_LENGTH_UNIT_FOOT_INCH, 366 * M / 100 },
  { "366 cm", RC_LENGTH_UNIT_FOOT_INCH, 366 * M / 100 },
  { "366cm.", RC_LENGTH_UNIT_FOOT_INCH, 366 * M / 100 },
  { "3660 MM", RC_LENGTH_UNIT_FOOT_INCH, 366 * M / 100 },
  { "3 m 66 cm", RC_LENGTH_UNIT_FOOT_INCH, 366 * M / 100 },
  { "3 metres 660 mm", RC_LENGTH_UNIT_FOOT_INCH, 366 * M / 100 },
  { "3.66", RC_LENGTH_UNIT_M, 366 * M / 100 },
  { "3,66", RC_LENGTH_UNIT_M, 366 * M / 100 },
  { "3.660", RC_LENGTH_UNIT_M, 366 * M / 100 },
  { "0,660 m", RC_LENGTH_UNIT_M, 660 * MM },
  { "1234,567 mm", RC_LENGTH_UNIT_M, 197531 }, /* 197 530.72 ticks */
  { "366", RC_LENGTH_UNIT_CM, 366 * M / 100 },
  { "3660", RC_LENGTH_UNIT_MM, 366 * M / 100 },
  { "2", RC_LENGTH_UNIT_YARD, 2 * YARD },
  { "2", RC_LENGTH_UNIT_FOOT, 2 * FOOT },
  { "0", RC_LENGTH_UNIT_M, 0 },
  { "0\"", RC_LENGTH_UNIT_M, 0 },
  { "000012", RC_LENGTH_UNIT_MM, 12 * MM },
  /* between ticks: to the nearer, halves up */
  { "0.00625 mm", RC_LENGTH_UNIT_M, 1 },
  { "0.003125 mm", RC_LENGTH_UNIT_M, 1 },
  { "0.003124999999 mm", RC_LENGTH_UNIT_M, 0 },
  /* the longest */
  { "100000 m", RC_LENGTH_UNIT_M, RC_LENGTH_MAX },
};
/* clang-format on */

static void
test_read (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (readings); i++)
    {
      g_autoptr (GError) error = NULL;
      RcLength length = -7;
      gboolean ok = rc_length_parse (readings[i].text, readings[i].bare_unit, &length, &error);

      g_test_message ("%s", readings[i].text);
      if (readings[i].ticks < 0)
        {
          g_assert_false (ok);
          g_assert_error (error, RC_ERROR, RC_ERROR_PARSE);
          g_assert_cmpint (length, ==, -7);
          continue;
        }
      g_assert_no_error (error);
      g_assert_true (ok);
      g_assert_cmpint (length, ==, readings[i].ticks);
    }
}

typedef struct
{
  const char  *text;
  RcLengthUnit bare_unit;
  const char  *why; /* part of the message that says what is wrong */
  int          at;  /* character the message points to, 0 for none */
} Refusal;

static const Refusal refusals[] = {
  { "", RC_LENGTH_UNIT_M, "nothing is written", 1 },
  { "   ", RC_LENGTH_UNIT_M, "nothing is written", 4 },
  { "abc", RC_LENGTH_UNIT_M, "a number is missing", 1 },
  { "12 6", RC_LENGTH_UNIT_FOOT_INCH, "the unit is missing between the two numbers", 4 },
  { "12'6x", RC_LENGTH_UNIT_FOOT_INCH, "“x” is not a unit", 5 },
  { "12 furlongs", RC_LENGTH_UNIT_FOOT_INCH, "“furlongs” is not a unit", 4 },
  { "1e5", RC_LENGTH_UNIT_MM, "“e” is not a unit", 2 },
  { "0x10", RC_LENGTH_UNIT_MM, "“x” is not a unit", 2 },
  { "inf", RC_LENGTH_UNIT_MM, "a number is missing", 1 },
  { "-3 m", RC_LENGTH_UNIT_M, "cannot be negative", 1 },
  { "−3 m", RC_LENGTH_UNIT_M, "cannot be negative", 1 },
  { "+3 m", RC_LENGTH_UNIT_M, "a number is missing", 1 },
  { "12'14\"", RC_LENGTH_UNIT_M, "must be less than 12", 4 },
  { "12-66", RC_LENGTH_UNIT_M, "must be less than 12", 4 },
  { "3-66", RC_LENGTH_UNIT_M, "must be less than 12", 3 },
  { "3 yd 3 ft", RC_LENGTH_UNIT_M, "must be less than 3", 6 },
  { "3 m 100 cm", RC_LENGTH_UNIT_M, "must be less than 100", 5 },
  { "6\" 12'", RC_LENGTH_UNIT_M, "a smaller unit must follow", 4 },
  { "12' 6'", RC_LENGTH_UNIT_M, "a smaller unit must follow", 5 },
  { "3 m 6\"", RC_LENGTH_UNIT_M, "do not mix", 5 },
  { "12' 66 mm", RC_LENGTH_UNIT_M, "do not mix", 5 },
  { "12.5' 6\"", RC_LENGTH_UNIT_M, "nothing can follow a fraction", 7 },
  { "6 1/2 7", RC_LENGTH_UNIT_FOOT_INCH, "the unit is missing between", 7 },
  { "3 m 66", RC_LENGTH_UNIT_M, "the unit of the last number is missing", 5 },
  { "3 yd 1", RC_LENGTH_UNIT_YARD, "the unit of the last number is missing", 6 },
  { "6-1/2", RC_LENGTH_UNIT_FOOT_INCH, "could stand for feet or join a fraction", 2 },
  { "12-", RC_LENGTH_UNIT_FOOT_INCH, "a number is missing", 4 },
  { "12--6", RC_LENGTH_UNIT_FOOT_INCH, "a number is missing", 4 },
  { "3,660 m", RC_LENGTH_UNIT_M, "could stand for a decimal point or for thousands", 2 },
  { "3,660", RC_LENGTH_UNIT_MM, "could stand for a decimal point or for thousands", 2 },
  { "1,234.5 mm", RC_LENGTH_UNIT_MM, "could stand for", 2 },
  { "1.234,5 mm", RC_LENGTH_UNIT_MM, "only one decimal point", 6 },
  { "1.2.3", RC_LENGTH_UNIT_MM, "only one decimal point", 4 },
  { "3. m", RC_LENGTH_UNIT_M, "a digit is missing after “.”", 3 },
  { ".", RC_LENGTH_UNIT_M, "a number is missing", 1 },
  { "1/0", RC_LENGTH_UNIT_FOOT_INCH, "cannot be over 0", 1 },
  { "1/", RC_LENGTH_UNIT_FOOT_INCH, "a digit is missing after the fraction stroke", 3 },
  { "1/2/3", RC_LENGTH_UNIT_FOOT_INCH, "“/” has no place here", 4 },
  { "6 3/2\"", RC_LENGTH_UNIT_FOOT_INCH, "must be less than one", 3 },
  { "6½½\"", RC_LENGTH_UNIT_FOOT_INCH, "½", 3 },
  { "1/9999999 in", RC_LENGTH_UNIT_FOOT_INCH, "too fine", 1 },
  { "0.1234567890123 m", RC_LENGTH_UNIT_M, "more than 12 decimals", 15 },
  { "12'6\"\"", RC_LENGTH_UNIT_M, "a number is missing", 6 },
  { "12' 6\" x", RC_LENGTH_UNIT_M, "a number is missing", 8 },
  { "(3 m)", RC_LENGTH_UNIT_M, "a number is missing", 1 },
  { "3 m;", RC_LENGTH_UNIT_M, "a number is missing", 4 },
  { "3;", RC_LENGTH_UNIT_M, "“;” has no place here", 2 },
  { "٣ m", RC_LENGTH_UNIT_M, "a number is missing", 1 },
  { "\xff", RC_LENGTH_UNIT_M, "not UTF-8", 1 },
};

static void
test_refuse (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (refusals); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *place = g_strdup_printf ("(character %d)", refusals[i].at);
      RcLength         length = -7;

      g_test_message ("refusal %u", i);
      g_assert_false (rc_length_parse (refusals[i].text, refusals[i].bare_unit, &length, &error));
      g_assert_error (error, RC_ERROR, RC_ERROR_PARSE);
      g_test_message ("%s", error->message);
      g_assert_cmpint (length, ==, -7);
      g_assert_nonnull (strstr (error->message, refusals[i].why));
      g_assert_nonnull (strstr (error->message, place));
    }
}

static void
test_too_long (void)
{
  static const char *texts[] = {
    "100000.00001 m",
    "100001 m",
    "99999999999999999999999999999999999999999999999999 m",
    "9223372036854775807 yd",
    "18446744073709551616 mm",
    "99999999999999999999-6",
    "99999999999999999999/1 m",
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GError) error = NULL;
      RcLength length = -7;

      g_test_message ("%s", texts[i]);
      g_assert_false (rc_length_parse (texts[i], RC_LENGTH_UNIT_M, &length, &error));
      g_assert_error (error, RC_ERROR, RC_ERROR_RANGE);
      g_assert_cmpint (length, ==, -7);
    }
}

static void
test_message_stays_short (void)
{
  g_autofree char *text = g_strnfill (100000, 'x');
  g_autoptr (GError) error = NULL;
  RcLength length;

  g_assert_false (rc_length_parse (text, RC_LENGTH_UNIT_M, &length, &error));
  g_assert_cmpuint (strlen (error->message), <, 300);
}

typedef struct
{
  RcLength      length;
  RcLengthStyle style;
  const char   *text;
} Printing;

/* clang-format off */
static const Printing printings[] = {
  { 12 * FOOT + 6 * INCH + INCH / 2, { RC_LENGTH_UNIT_FOOT_INCH, 16, 0, TRUE }, "12' 6 1/2\"" },
  { 12 * FOOT + 6 * INCH + INCH / 2, { RC_LENGTH_UNIT_FOOT_INCH, 16, 0, FALSE }, "12-6 1/2" },
  { 12 * FOOT, { RC_LENGTH_UNIT_FOOT_INCH, 16, 0, TRUE }, "12' 0\"" },
  { 12 * FOOT + INCH / 2, { RC_LENGTH_UNIT_FOOT_INCH, 16, 0, TRUE }, "12' 0 1/2\"" },
  { 12 * FOOT - 1, { RC_LENGTH_UNIT_FOOT_INCH, 16, 0, TRUE }, "12' 0\"" }, /* carried over */
  { INCH / 2, { RC_LENGTH_UNIT_FOOT_INCH, 16, 0, TRUE }, "1/2\"" },
  { INCH / 2, { RC_LENGTH_UNIT_FOOT_INCH, 16, 0, FALSE }, "0-0 1/2" },
  { INCH / 2, { RC_LENGTH_UNIT_FOOT_INCH, 1, 0, TRUE }, "1\"" },
  { 6 * INCH, { RC_LENGTH_UNIT_FOOT_INCH, 8, 0, TRUE }, "6\"" },
  { 0, { RC_LENGTH_UNIT_FOOT_INCH, 16, 0, TRUE }, "0\"" },
  { -(12 * FOOT + 6 * INCH), { RC_LENGTH_UNIT_FOOT_INCH, 16, 0, TRUE }, "-12' 6\"" },
  { -1, { RC_LENGTH_UNIT_FOOT_INCH, 16, 0, TRUE }, "0\"" },
  { 150 * INCH + INCH / 2, { RC_LENGTH_UNIT_INCH, 2, 0, TRUE }, "150 1/2\"" },
  { 150 * INCH + INCH / 2, { RC_LENGTH_UNIT_INCH, 2, 0, FALSE }, "150 1/2" },
  { 12 * FOOT + 6 * INCH, { RC_LENGTH_UNIT_FOOT, 0, 2, TRUE }, "12.50 ft" },
  { 12 * FOOT, { RC_LENGTH_UNIT_YARD, 0, 1, TRUE }, "4.0 yd" },
  { 12 * FOOT, { RC_LENGTH_UNIT_M, 0, 3, TRUE }, "3.658 m" },
  { 12 * FOOT, { RC_LENGTH_UNIT_M, 0, 4, TRUE }, "3.6576 m" },
  { 12 * FOOT, { RC_LENGTH_UNIT_CM, 0, 1, FALSE }, "365.8" },
  { 12 * FOOT, { RC_LENGTH_UNIT_MM, 0, 0, TRUE }, "3658 mm" },
  { 1, { RC_LENGTH_UNIT_M, 0, 8, TRUE }, "0.00000625 m" },
  { -1, { RC_LENGTH_UNIT_MM, 0, 5, FALSE }, "-0.00625" },
  { G_MAXINT64, { RC_LENGTH_UNIT_M, 0, 8, FALSE }, "57646075230342.34879375" },
  { G_MININT64, { RC_LENGTH_UNIT_M, 0, 8, FALSE }, "-57646075230342.34880000" },
};
/* clang-format on */

static void
test_print (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (printings); i++)
    {
      g_autofree char *text = rc_length_format (printings[i].length, &printings[i].style);

      g_assert_cmpstr (text, ==, printings[i].text);
    }
}

static void
test_print_mm (void)
{
  static const struct
  {
    RcLength    length;
    const char *text;
  } cases[] = { { 12 * FOOT, "3657.6" },   { 1, "0.00625" },   { 0, "0" },
                { 366 * M / 100, "3660" }, { -INCH, "-25.4" }, { G_MAXINT64, "57646075230342348.79375" } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = rc_length_format_mm (cases[i].length);

      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

static void
assert_reads_back (RcLength length, const RcLengthStyle *style)
{
  g_autofree char *text = rc_length_format (length, style);
  g_autoptr (GError) error = NULL;
  RcLength back;

  rc_length_parse (text, style->unit, &back, &error);
  g_assert_no_error (error);
  if (back != length)
    g_error ("%" G_GINT64_FORMAT " was printed as %s and read back as %" G_GINT64_FORMAT, length, text, back);
}

/* parse (format (x)) = x for every multiple of 1/32 in up to 100 ft, and for lengths of every size. */
static void
test_imperial_reads_back (void)
{
  for (gint64 n = 0; n <= 100 * 12 * 32; n++)
    {
      for (int with_unit = 0; with_unit <= 1; with_unit++)
        {
          assert_reads_back (n * RC_TICKS_PER_32ND, &(RcLengthStyle){ RC_LENGTH_UNIT_FOOT_INCH, 32, 0, with_unit });
          assert_reads_back (n * RC_TICKS_PER_32ND, &(RcLengthStyle){ RC_LENGTH_UNIT_INCH, 32, 0, with_unit });
        }
    }

  for (int i = 0; i < 20000; i++)
    {
      gint64 n = (gint64)(g_test_rand_double () * (double)(RC_LENGTH_MAX / RC_TICKS_PER_32ND));

      assert_reads_back (n * RC_TICKS_PER_32ND, &(RcLengthStyle){ RC_LENGTH_UNIT_FOOT_INCH, 32, 0, TRUE });
    }
}

/* Every single tick up to 1 m and lengths of every size, in every decimal unit. */
static void
test_decimals_read_back (void)
{
  static const RcLengthStyle styles[] = {
    { RC_LENGTH_UNIT_M, 0, 6, TRUE },  { RC_LENGTH_UNIT_M, 0, 8, FALSE },   { RC_LENGTH_UNIT_CM, 0, 6, TRUE },
    { RC_LENGTH_UNIT_MM, 0, 5, TRUE }, { RC_LENGTH_UNIT_FOOT, 0, 6, TRUE }, { RC_LENGTH_UNIT_YARD, 0, 6, FALSE },
  };

  for (guint s = 0; s < G_N_ELEMENTS (styles); s++)
    {
      for (RcLength length = 0; length <= RC_TICKS_PER_M; length++)
        assert_reads_back (length, &styles[s]);
      for (int i = 0; i < 20000; i++)
        assert_reads_back ((RcLength)(g_test_rand_double () * (double)RC_LENGTH_MAX), &styles[s]);
    }
}

static void
test_mm_reads_back (void)
{
  for (int i = 0; i < 100000; i++)
    {
      RcLength         length = (RcLength)(g_test_rand_double () * (double)RC_LENGTH_MAX);
      g_autofree char *text = rc_length_format_mm (length);
      RcLength         back;

      g_assert_true (rc_length_parse (text, RC_LENGTH_UNIT_MM, &back, NULL));
      g_assert_cmpint (back, ==, length);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/length/parse/reads what people write", test_read);
  g_test_add_func ("/length/parse/says what is wrong and where", test_refuse);
  g_test_add_func ("/length/parse/refuses what is too long", test_too_long);
  g_test_add_func ("/length/parse/repeats only the start of a long text", test_message_stays_short);
  g_test_add_func ("/length/format/prints to a fraction or to decimals", test_print);
  g_test_add_func ("/length/format/prints millimetres exactly", test_print_mm);
  g_test_add_func ("/length/property/32nds of an inch read back", test_imperial_reads_back);
  g_test_add_func ("/length/property/decimals read back", test_decimals_read_back);
  g_test_add_func ("/length/property/millimetres read back", test_mm_reads_back);

  return g_test_run ();
}
