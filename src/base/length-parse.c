#include "length.h"

#include "rowcut-error.h"
#include "wide.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define MAX_DECIMALS    12      /* digits read after a decimal point */
#define MAX_DENOMINATOR 1000000 /* of a written fraction */

typedef enum
{
  PART_NONE,
  PART_MM,
  PART_CM,
  PART_M,
  PART_INCH,
  PART_FOOT,
  PART_YARD,
} PartUnit;

static const gint64 part_ticks[]
    = { 0, RC_TICKS_PER_MM, RC_TICKS_PER_CM, RC_TICKS_PER_M, RC_TICKS_PER_INCH, RC_TICKS_PER_FOOT, RC_TICKS_PER_YARD };

/* clang-format off */
static const struct { const char *word; PartUnit unit; } part_words[] = {
  { "mm", PART_MM }, { "millimetre", PART_MM }, { "millimetres", PART_MM }, { "millimeter", PART_MM },
  { "millimeters", PART_MM },
  { "cm", PART_CM }, { "centimetre", PART_CM }, { "centimetres", PART_CM }, { "centimeter", PART_CM },
  { "centimeters", PART_CM },
  { "m", PART_M }, { "metre", PART_M }, { "metres", PART_M }, { "meter", PART_M }, { "meters", PART_M },
  { "in", PART_INCH }, { "ins", PART_INCH }, { "inch", PART_INCH }, { "inches", PART_INCH },
  { "ft", PART_FOOT }, { "foot", PART_FOOT }, { "feet", PART_FOOT },
  { "yd", PART_YARD }, { "yds", PART_YARD }, { "yard", PART_YARD }, { "yards", PART_YARD },
};

static const struct { gunichar character; int numerator, denominator; } written_fractions[] = {
  { 0x00bd, 1, 2 }, { 0x00bc, 1, 4 }, { 0x00be, 3, 4 }, { 0x215b, 1, 8 }, { 0x215c, 3, 8 }, { 0x215d, 5, 8 },
  { 0x215e, 7, 8 }, { 0x2153, 1, 3 }, { 0x2154, 2, 3 }, { 0x2155, 1, 5 }, { 0x2156, 2, 5 }, { 0x2157, 3, 5 },
  { 0x2158, 4, 5 }, { 0x2159, 1, 6 }, { 0x215a, 5, 6 },
};
/* clang-format on */

/* The text and how far it has been read. */
typedef struct
{
  const char *text;
  const char *at;
  gboolean    metric; /* show a metric example in messages */
} Reader;

/* whole + numerator / denominator */
typedef struct
{
  gint64   whole;
  gint64   numerator, denominator;
  gboolean is_whole; /* written without fraction or decimals */
} Number;

G_GNUC_PRINTF (4, 5)
static gboolean
refuse (const Reader *reader, const char *where, GError **error, const char *format, ...)
{
  g_autofree char *why = NULL;
  g_autofree char *quoted = NULL;
  va_list          arguments;

  va_start (arguments, format);
  why = g_strdup_vprintf (format, arguments);
  va_end (arguments);

  quoted = rc_error_quote (reader->text);
  g_set_error (error, RC_ERROR, RC_ERROR_PARSE,
               /* Translators: the text typed, what is wrong with it, the place counted from 1, an example */
               _ ("“%s” is not a length: %s (character %ld). Write it like %s."), quoted, why,
               g_utf8_pointer_to_offset (reader->text, where) + 1, reader->metric ? "3.66 m" : "12' 6 1/2\"");
  return FALSE;
}

static gunichar
peek (const Reader *reader)
{
  return g_utf8_get_char (reader->at);
}

static void
advance (Reader *reader)
{
  reader->at = g_utf8_next_char (reader->at);
}

static void
skip_spaces (Reader *reader)
{
  while (g_unichar_isspace (peek (reader)) || peek (reader) == 0x2009 || peek (reader) == 0x202f)
    advance (reader);
}

static gboolean
is_digit (const char *at)
{
  return g_ascii_isdigit (*at);
}

static gboolean
is_dash (gunichar c)
{
  return c == '-' || (c >= 0x2010 && c <= 0x2014) || c == 0x2212;
}

static gboolean
is_slash (gunichar c)
{
  return c == '/' || c == 0x2044;
}

static gboolean
is_single_quote (gunichar c)
{
  return c == '\'' || c == 0x2032 || c == 0x2018 || c == 0x2019 || c == '`' || c == 0x00b4;
}

static gboolean
is_double_quote (gunichar c)
{
  return c == '"' || c == 0x2033 || c == 0x201c || c == 0x201d;
}

/* Digits as a number; past what any length needs it stays at a number that is refused as too long later on. */
static gint64
read_digits (Reader *reader)
{
  gint64 value = 0;

  while (is_digit (reader->at))
    {
      if (value <= RC_LENGTH_MAX)
        value = value * 10 + (*reader->at - '0');
      reader->at++;
    }

  return value;
}

static gboolean
read_decimals (Reader *reader, const char *digits_start, Number *number, GError **error)
{
  const char *mark = reader->at;
  gboolean    comma = *mark == ',';
  int         n = 0;

  reader->at++;
  if (!is_digit (reader->at))
    return refuse (reader, reader->at, error, _ ("a digit is missing after “%c”"), *mark);

  number->denominator = 1;
  for (; is_digit (reader->at); reader->at++, n++)
    {
      if (n == MAX_DECIMALS)
        return refuse (reader, reader->at, error, _ ("there are more than %d decimals"), MAX_DECIMALS);
      number->numerator = number->numerator * 10 + (*reader->at - '0');
      number->denominator *= 10;
    }

  if (comma && n == 3 && mark - digits_start >= 1 && mark - digits_start <= 3 && *digits_start != '0')
    return refuse (reader, mark, error, _ ("the comma could stand for a decimal point or for thousands"));
  if (*reader->at == ',' || *reader->at == '.')
    return refuse (reader, reader->at, error, _ ("a number has only one decimal point or comma"));

  number->is_whole = FALSE;
  return TRUE;
}

static gboolean
set_fraction (Reader *reader, const char *where, gint64 numerator, gint64 denominator, gboolean has_whole,
              Number *number, GError **error)
{
  if (denominator == 0)
    return refuse (reader, where, error, _ ("a fraction cannot be over 0"));
  if (denominator > MAX_DENOMINATOR)
    return refuse (reader, where, error, _ ("the fraction is too fine"));
  if (has_whole && numerator >= denominator)
    return refuse (reader, where, error, _ ("the fraction after a whole number must be less than one"));

  number->numerator = numerator;
  number->denominator = denominator;
  number->is_whole = FALSE;
  return TRUE;
}

static gboolean
is_written_fraction (gunichar c, int *numerator, int *denominator)
{
  for (guint i = 0; i < G_N_ELEMENTS (written_fractions); i++)
    {
      if (written_fractions[i].character != c)
        continue;
      *numerator = written_fractions[i].numerator;
      *denominator = written_fractions[i].denominator;
      return TRUE;
    }

  return FALSE;
}

/* Whether digits, a slash and a digit come next, as in 1/2. */
static gboolean
is_fraction_next (Reader reader)
{
  if (!is_digit (reader.at))
    return FALSE;
  while (is_digit (reader.at))
    reader.at++;
  skip_spaces (&reader);

  return is_slash (peek (&reader));
}

/* The part from the numerator on; has_whole when a whole number stands before it. */
static gboolean
read_fraction (Reader *reader, gboolean has_whole, Number *number, GError **error)
{
  const char *start = reader->at;
  gint64      numerator = read_digits (reader);

  skip_spaces (reader);
  advance (reader);
  skip_spaces (reader);
  if (!is_digit (reader->at))
    return refuse (reader, reader->at, error, _ ("a digit is missing after the fraction stroke"));

  return set_fraction (reader, start, numerator, read_digits (reader), has_whole, number, error);
}

/* What may follow the digits of a whole number: decimals, or a fraction after a space, a dash or nothing. */
static gboolean
read_after_whole (Reader *reader, const char *digits_start, PartUnit before, Number *number, GError **error)
{
  Reader ahead = *reader;
  int    numerator, denominator;

  if (*reader->at == '.' || *reader->at == ',')
    return read_decimals (reader, digits_start, number, error);

  skip_spaces (&ahead);
  if (is_dash (peek (&ahead)))
    {
      const char *dash = ahead.at;

      advance (&ahead);
      skip_spaces (&ahead);
      if (!is_fraction_next (ahead))
        return TRUE;
      if (before == PART_NONE)
        return refuse (reader, dash, error, _ ("the dash could stand for feet or join a fraction"));
    }

  if (is_fraction_next (ahead))
    {
      reader->at = ahead.at;
      return read_fraction (reader, TRUE, number, error);
    }
  if (is_written_fraction (peek (&ahead), &numerator, &denominator))
    {
      const char *start = ahead.at;

      advance (&ahead);
      reader->at = ahead.at;
      return set_fraction (reader, start, numerator, denominator, TRUE, number, error);
    }

  return TRUE;
}

static gboolean
read_number (Reader *reader, PartUnit before, Number *number, GError **error)
{
  const char *start = reader->at;
  int         numerator, denominator;

  *number = (Number){ .denominator = 1, .is_whole = TRUE };

  if (is_written_fraction (peek (reader), &numerator, &denominator))
    {
      advance (reader);
      return set_fraction (reader, start, numerator, denominator, FALSE, number, error);
    }
  if ((*start == '.' || *start == ',') && is_digit (start + 1))
    return read_decimals (reader, start, number, error);
  if (is_dash (peek (reader)))
    return refuse (reader, start, error,
                   before == PART_NONE ? _ ("a length cannot be negative") : _ ("a number is missing here"));
  if (!is_digit (start))
    return refuse (reader, start, error, _ ("a number is missing here"));
  if (is_fraction_next (*reader))
    return read_fraction (reader, FALSE, number, error);

  number->whole = read_digits (reader);
  return read_after_whole (reader, start, before, number, error);
}

/* The unit after a number, PART_NONE when none stands there. */
static gboolean
read_unit (Reader *reader, PartUnit *unit, GError **error)
{
  const char      *start = reader->at;
  g_autofree char *word = NULL;

  *unit = PART_NONE;
  if (is_double_quote (peek (reader)))
    {
      *unit = PART_INCH;
      advance (reader);
      return TRUE;
    }
  if (is_single_quote (peek (reader)))
    {
      advance (reader);
      *unit = is_single_quote (peek (reader)) ? PART_INCH : PART_FOOT;
      if (*unit == PART_INCH)
        advance (reader);
      return TRUE;
    }
  if (!g_unichar_isalpha (peek (reader)))
    return TRUE;

  while (g_unichar_isalpha (peek (reader)))
    advance (reader);
  word = g_strndup (start, reader->at - start);
  if (*reader->at == '.')
    reader->at++;

  for (guint i = 0; i < G_N_ELEMENTS (part_words); i++)
    {
      if (g_ascii_strcasecmp (word, part_words[i].word) == 0)
        *unit = part_words[i].unit;
    }
  if (*unit == PART_NONE)
    {
      g_autofree char *quoted = rc_error_quote (word);

      return refuse (reader, start, error, _ ("“%s” is not a unit of length"), quoted);
    }

  return TRUE;
}

/* The unit of a number that has none written after it. */
static gboolean
find_implied_unit (const Reader *reader, const Number *number, const char *number_start, PartUnit before,
                   RcLengthUnit bare_unit, PartUnit *unit, GError **error)
{
  static const PartUnit bare[] = { PART_INCH, PART_INCH, PART_FOOT, PART_YARD, PART_MM, PART_CM, PART_M };
  gunichar              next = peek (reader);

  if (next == 0 && before == PART_NONE)
    *unit = bare[bare_unit];
  else if (next == 0 && before == PART_FOOT)
    *unit = PART_INCH;
  else if (next == 0)
    return refuse (reader, number_start, error, _ ("the unit of the last number is missing"));
  else if (is_dash (next) && before == PART_NONE && number->is_whole)
    *unit = PART_FOOT;
  else if (g_unichar_isdigit (next))
    return refuse (reader, reader->at, error, _ ("the unit is missing between the two numbers"));
  else
    {
      char character[7] = { 0 };

      g_unichar_to_utf8 (next, character);
      return refuse (reader, reader->at, error, _ ("“%s” has no place here"), character);
    }

  return TRUE;
}

static gboolean
is_metric (PartUnit unit)
{
  return unit <= PART_M;
}

/* Adds one part to the length, if it may follow the part before it. */
static gboolean
add_part (const Reader *reader, const char *start, const Number *number, PartUnit before, PartUnit unit, RcWide *total,
          GError **error)
{
  RcWide ticks = (RcWide)number->whole * part_ticks[unit]
                 + rc_wide_divide_round ((RcWide)number->numerator * part_ticks[unit], number->denominator);

  if (before != PART_NONE)
    {
      if (is_metric (before) != is_metric (unit))
        return refuse (reader, start, error, _ ("metric and imperial units do not mix"));
      if (part_ticks[unit] >= part_ticks[before])
        return refuse (reader, start, error, _ ("a smaller unit must follow a larger one"));
      if (number->whole >= part_ticks[before] / part_ticks[unit])
        return refuse (reader, start, error, _ ("this number must be less than %d"),
                       (int)(part_ticks[before] / part_ticks[unit]));
    }

  *total += ticks;
  if (*total > RC_LENGTH_MAX)
    {
      g_autofree char *quoted = rc_error_quote (reader->text);

      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("“%s” is longer than 100 km, the longest length handled."),
                   quoted);
      return FALSE;
    }

  return TRUE;
}

static gboolean
read_parts (Reader *reader, RcLengthUnit bare_unit, RcWide *total, GError **error)
{
  PartUnit before = PART_NONE;

  for (;;)
    {
      const char *start = reader->at;
      Number      number;
      PartUnit    unit;

      if (!read_number (reader, before, &number, error))
        return FALSE;
      skip_spaces (reader);
      if (!read_unit (reader, &unit, error))
        return FALSE;
      skip_spaces (reader);
      if (unit == PART_NONE && !find_implied_unit (reader, &number, start, before, bare_unit, &unit, error))
        return FALSE;
      if (!add_part (reader, start, &number, before, unit, total, error))
        return FALSE;

      if (peek (reader) == 0)
        return TRUE;
      if (!number.is_whole)
        return refuse (reader, reader->at, error, _ ("nothing can follow a fraction"));
      if (is_dash (peek (reader)) && unit == PART_FOOT)
        {
          advance (reader);
          skip_spaces (reader);
        }
      before = unit;
    }
}

gboolean
rc_length_parse (const char *text, RcLengthUnit bare_unit, RcLength *length, GError **error)
{
  Reader reader = { text, text, bare_unit >= RC_LENGTH_UNIT_MM };
  RcWide total = 0;

  g_return_val_if_fail (text != NULL && length != NULL, FALSE);
  g_return_val_if_fail (error == NULL || *error == NULL, FALSE);

  if (!g_utf8_validate (text, -1, NULL))
    {
      g_autofree char *valid = g_utf8_make_valid (text, -1);
      reader.text = reader.at = valid;
      return refuse (&reader, valid, error, _ ("the text is not UTF-8"));
    }

  skip_spaces (&reader);
  if (peek (&reader) == 0)
    return refuse (&reader, reader.at, error, _ ("nothing is written"));
  if (!read_parts (&reader, bare_unit, &total, error))
    return FALSE;

  *length = (RcLength)total;
  return TRUE;
}
