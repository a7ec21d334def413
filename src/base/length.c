#include "length.h"

#include "wide.h"

const RcLengthStyle RC_LENGTH_STYLE_IMPERIAL
    = { .unit = RC_LENGTH_UNIT_FOOT_INCH, .denominator = 16, .decimals = 0, .with_unit = TRUE };
const RcLengthStyle RC_LENGTH_STYLE_METRIC
    = { .unit = RC_LENGTH_UNIT_M, .denominator = 0, .decimals = 3, .with_unit = TRUE };

gint64
rc_length_unit_get_ticks (RcLengthUnit unit)
{
  switch (unit)
    {
    case RC_LENGTH_UNIT_FOOT_INCH:
    case RC_LENGTH_UNIT_INCH:
      return RC_TICKS_PER_INCH;
    case RC_LENGTH_UNIT_FOOT:
      return RC_TICKS_PER_FOOT;
    case RC_LENGTH_UNIT_YARD:
      return RC_TICKS_PER_YARD;
    case RC_LENGTH_UNIT_MM:
      return RC_TICKS_PER_MM;
    case RC_LENGTH_UNIT_CM:
      return RC_TICKS_PER_CM;
    case RC_LENGTH_UNIT_M:
      return RC_TICKS_PER_M;
    }

  g_assert_not_reached ();
}

static const char *
unit_get_symbol (RcLengthUnit unit)
{
  switch (unit)
    {
    case RC_LENGTH_UNIT_FOOT:
      return "ft";
    case RC_LENGTH_UNIT_YARD:
      return "yd";
    case RC_LENGTH_UNIT_MM:
      return "mm";
    case RC_LENGTH_UNIT_CM:
      return "cm";
    case RC_LENGTH_UNIT_M:
      return "m";
    case RC_LENGTH_UNIT_FOOT_INCH:
    case RC_LENGTH_UNIT_INCH:
      break;
    }

  g_assert_not_reached ();
}

/* Inches in parts of 1/denominator, as whole inches and a fraction in lowest terms: "6 1/2", "1/2", "6", "0". */
static void
append_inches (GString *text, gint64 parts, int denominator, gboolean keep_zero)
{
  gint64 whole = parts / denominator;
  gint64 numerator = parts % denominator;

  while (numerator > 0 && numerator % 2 == 0)
    {
      numerator /= 2;
      denominator /= 2;
    }

  if (whole > 0 || numerator == 0 || keep_zero)
    g_string_append_printf (text, "%" G_GINT64_FORMAT, whole);
  if (numerator > 0)
    g_string_append_printf (text, "%s%" G_GINT64_FORMAT "/%d", whole > 0 || keep_zero ? " " : "", numerator,
                            denominator);
}

static char *
format_inches (RcLength length, const RcLengthStyle *style)
{
  g_autoptr (GString) text = g_string_new (NULL);
  RcWide   magnitude = length < 0 ? -(RcWide)length : (RcWide)length;
  gint64   parts = (gint64)rc_wide_divide_round (magnitude * style->denominator, RC_TICKS_PER_INCH);
  gboolean with_feet = style->unit == RC_LENGTH_UNIT_FOOT_INCH;
  gint64   feet = with_feet ? parts / (12 * style->denominator) : 0;

  if (length < 0 && parts > 0)
    g_string_append_c (text, '-');

  parts -= feet * 12 * style->denominator;
  if (feet > 0 || (with_feet && !style->with_unit))
    {
      g_string_append_printf (text, style->with_unit ? "%" G_GINT64_FORMAT "' " : "%" G_GINT64_FORMAT "-", feet);
      append_inches (text, parts, style->denominator, TRUE);
    }
  else
    {
      append_inches (text, parts, style->denominator, FALSE);
    }

  if (style->with_unit)
    g_string_append_c (text, '"');

  return g_string_free (g_steal_pointer (&text), FALSE);
}

char *
rc_length_format (RcLength length, const RcLengthStyle *style)
{
  g_autoptr (GString) text = NULL;
  RcWide scaled;

  if (style->unit == RC_LENGTH_UNIT_FOOT_INCH || style->unit == RC_LENGTH_UNIT_INCH)
    {
      g_return_val_if_fail (style->denominator >= 1 && style->denominator <= 32, NULL);
      g_return_val_if_fail ((style->denominator & (style->denominator - 1)) == 0, NULL);
      return format_inches (length, style);
    }

  g_return_val_if_fail (style->decimals >= 0 && style->decimals <= RC_LENGTH_MAX_DECIMALS, NULL);

  text = g_string_new (NULL);
  scaled = rc_wide_divide_round ((RcWide)length * rc_power_of_ten (style->decimals),
                                 rc_length_unit_get_ticks (style->unit));
  rc_wide_append_decimal (text, scaled, style->decimals, FALSE);
  if (style->with_unit)
    g_string_append_printf (text, " %s", unit_get_symbol (style->unit));

  return g_string_free (g_steal_pointer (&text), FALSE);
}

char *
rc_length_format_mm (RcLength length)
{
  g_autoptr (GString) text = g_string_new (NULL);

  /* 1 tick = 1/160 mm = 625 / 100 000 mm */
  rc_wide_append_decimal (text, (RcWide)length * 625, 5, FALSE);
  rc_decimal_trim (text);

  return g_string_free (g_steal_pointer (&text), FALSE);
}

gboolean
rc_length_add (RcLength a, RcLength b, RcLength *sum)
{
  RcLength result;

  if (__builtin_add_overflow (a, b, &result))
    return FALSE;

  *sum = result;
  return TRUE;
}

gboolean
rc_length_multiply (RcLength a, gint64 n, RcLength *product)
{
  RcLength result;

  if (__builtin_mul_overflow (a, n, &result))
    return FALSE;

  *product = result;
  return TRUE;
}

RcLength
rc_length_round_up (RcLength length, RcLength step)
{
  RcWide result;

  g_return_val_if_fail (step >= 0, length);

  if (step == 0)
    return length;

  result = rc_wide_divide_ceil (length, step) * step;
  g_return_val_if_fail (rc_wide_fits_int64 (result), length);

  return (RcLength)result;
}

double
rc_length_to_mm (RcLength length)
{
  return (double)length / (double)RC_TICKS_PER_MM;
}

int
rc_length_compare (gconstpointer a, gconstpointer b)
{
  RcLength x = *(const RcLength *)a, y = *(const RcLength *)b;
  return x < y ? -1 : x > y;
}
