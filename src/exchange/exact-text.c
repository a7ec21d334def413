#include "exact-text.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"
#include "unit.h"

static const RcLengthStyle exact_imperial = { RC_LENGTH_UNIT_FOOT_INCH, 32, 0, TRUE };

char *
rc_exact_length_format (RcLength length, gboolean imperial)
{
  RcLength         size = ABS (length);
  g_autofree char *text = NULL;

  if (imperial && size % RC_TICKS_PER_32ND == 0)
    text = rc_length_format (size, &exact_imperial);
  else
    {
      g_autofree char *mm = rc_length_format_mm (size);

      text = g_strconcat (mm, " mm", NULL);
    }
  return length < 0 ? g_strconcat ("-", text, NULL) : g_steal_pointer (&text);
}

gboolean
rc_signed_length_parse (const char *text, RcLengthUnit bare_unit, RcLength *length, GError **error)
{
  gboolean negative;

  while (g_ascii_isspace (*text))
    text++;
  negative = *text == '-';
  if (!rc_length_parse (negative ? text + 1 : text, bare_unit, length, error))
    return FALSE;
  if (negative)
    *length = -*length;
  return TRUE;
}

/* --- areas --- */

#define RAW_UNIT "area units"

static const struct
{
  const char *word;
  RcAreaUnit  unit;
} area_words[] = {
  { "sq yd", RC_AREA_UNIT_SQ_YD }, { "sq ft", RC_AREA_UNIT_SQ_FT }, { "m2", RC_AREA_UNIT_M2 }, { "m²", RC_AREA_UNIT_M2 }
};

/* The area of a quantity in millionths of a unit, rounded to the nearest. FALSE when it does not fit. */
static gboolean
area_from_micro (gint64 micro, RcAreaUnit unit, RcArea *area)
{
  __int128 exact = (__int128)micro * rc_area_unit_get_size (unit);

  exact = (exact + RC_MICRO / 2) / RC_MICRO;
  if (exact > G_MAXINT64)
    return FALSE;
  *area = exact;
  return TRUE;
}

char *
rc_exact_area_format (RcArea area)
{
  for (guint i = 0; i < 3; i++)
    {
      __int128 size = rc_area_unit_get_size (area_words[i].unit);
      __int128 micro = ((__int128)area * RC_MICRO + size / 2) / size;
      RcArea   back;

      if (micro <= G_MAXINT64 && area_from_micro (micro, area_words[i].unit, &back) && back == area)
        {
          g_autofree char *number = rc_quantity_format (micro, 6);

          return g_strdup_printf ("%s %s", number, area_words[i].word);
        }
    }
  return g_strdup_printf ("%" G_GINT64_FORMAT " " RAW_UNIT, area);
}

gboolean
rc_area_parse (const char *text, RcArea *area, GError **error)
{
  g_autofree char *stripped = g_strstrip (g_strdup (text));
  gint64           micro;

  if (g_str_has_suffix (stripped, RAW_UNIT))
    {
      stripped[strlen (stripped) - strlen (RAW_UNIT)] = '\0';
      return g_ascii_string_to_signed (g_strstrip (stripped), 10, 0, G_MAXINT64, area, error);
    }
  for (guint i = 0; i < G_N_ELEMENTS (area_words); i++)
    {
      if (!g_str_has_suffix (stripped, area_words[i].word))
        continue;
      stripped[strlen (stripped) - strlen (area_words[i].word)] = '\0';
      if (!rc_quantity_parse (g_strstrip (stripped), &micro, error))
        return FALSE;
      if (micro >= 0 && area_from_micro (micro, area_words[i].unit, area))
        return TRUE;
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("“%s” is no area that a pack could cover"), text);
      return FALSE;
    }
  g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("“%s” is no area; it should read like 90 sq yd, 81 sq ft or 7.5 m2"),
               text);
  return FALSE;
}

/* --- rates --- */

#define PPM_PER_PERCENT 10000

char *
rc_percent_format (gint64 ppm)
{
  return rc_quantity_format (ppm * (RC_MICRO / PPM_PER_PERCENT), 4);
}

gboolean
rc_percent_parse (const char *text, gint64 *ppm, GError **error)
{
  g_autofree char *number = g_strstrip (g_strdup (text));
  gint64           micro;

  if (g_str_has_suffix (number, "%"))
    number[strlen (number) - 1] = '\0';
  if (!rc_quantity_parse (g_strstrip (number), &micro, error))
    return FALSE;
  if (micro < 0 || micro > 1000 * RC_MICRO || micro % (RC_MICRO / PPM_PER_PERCENT) != 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE,
                   _ ("“%s” should be from 0 to 1000 percent with at most four decimals, as 7.25"), text);
      return FALSE;
    }
  *ppm = micro / (RC_MICRO / PPM_PER_PERCENT);
  return TRUE;
}

char *
rc_exact_double_format (double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  for (int digits = 1; digits <= 17; digits++)
    {
      char format[8];

      g_snprintf (format, sizeof format, "%%.%dg", digits);
      g_ascii_formatd (text, sizeof text, format, value);
      if (g_ascii_strtod (text, NULL) == value)
        break;
    }
  return g_strdup (text);
}
