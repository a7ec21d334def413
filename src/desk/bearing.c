#include "bearing.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rowcut-error.h"

static const char *const LETTERS[] = { "N", "NE", "E", "SE", "S", "SW", "W", "NW" };

static double
wrap (double degrees)
{
  double wrapped = fmod (degrees, 360);
  return wrapped < 0 ? wrapped + 360 : wrapped;
}

/* Upper case without blanks, degree signs and with a decimal point; west is W. */
static char *
dup_plain (const char *text)
{
  GString *plain = g_string_new (NULL);

  for (const char *p = text; *p; p = g_utf8_next_char (p))
    {
      gunichar c = g_unichar_toupper (g_utf8_get_char (p));
      if (g_unichar_isspace (c) || c == 0x00B0 || c == 0x00BA)
        continue;
      if (c == ',')
        c = '.';
      if (c == 'O')
        c = 'W';
      g_string_append_unichar (plain, c);
    }
  return g_string_free (plain, FALSE);
}

static gboolean
parse_number (const char *text, gsize length, double *number)
{
  g_autofree char *digits = g_strndup (text, length);

  if (*digits == '\0' || strspn (digits, "0123456789.") != strlen (digits))
    return FALSE;
  char *end = NULL;
  *number = g_ascii_strtod (digits, &end);
  return end != digits && *end == '\0' && *number <= 360;
}

static gboolean
parse_turn (const char *plain, double before_degrees, double *degrees)
{
  if (*plain != 'R' && *plain != 'L')
    return FALSE;
  double turn = 90;
  if (plain[1] != '\0' && !parse_number (plain + 1, strlen (plain + 1), &turn))
    return FALSE;
  *degrees = wrap (before_degrees + (*plain == 'R' ? turn : -turn));
  return TRUE;
}

static gboolean
parse_quadrant (const char *plain, double *degrees)
{
  gsize  n = strlen (plain);
  double angle = 0;

  if (n < 3 || (*plain != 'N' && *plain != 'S') || (plain[n - 1] != 'E' && plain[n - 1] != 'W')
      || !parse_number (plain + 1, n - 2, &angle) || angle > 90)
    return FALSE;
  double side = plain[n - 1] == 'E' ? angle : -angle;
  *degrees = wrap (*plain == 'N' ? side : 180 - side);
  return TRUE;
}

gboolean
rc_bearing_parse (const char *text, double before_degrees, double *degrees, GError **error)
{
  g_return_val_if_fail (text != NULL && degrees != NULL, FALSE);

  if (g_utf8_validate (text, -1, NULL))
    {
      g_autofree char *plain = dup_plain (text);
      double           number = 0;

      for (guint i = 0; i < G_N_ELEMENTS (LETTERS); i++)
        if (g_str_equal (plain, LETTERS[i]))
          {
            *degrees = i * 45;
            return TRUE;
          }
      if (parse_turn (plain, before_degrees, degrees) || parse_quadrant (plain, degrees))
        return TRUE;
      if (parse_number (plain, strlen (plain), &number))
        {
          *degrees = wrap (number);
          return TRUE;
        }
    }
  g_set_error (error, RC_ERROR, RC_ERROR_PARSE,
               _ ("“%s” is not a direction: write N, E, S or W, NE, degrees from north such as 37.5, or R or L for a "
                  "turn from the wall before"),
               text);
  return FALSE;
}

char *
rc_bearing_format (double degrees)
{
  double wrapped = wrap (degrees);

  for (guint i = 0; i < G_N_ELEMENTS (LETTERS); i++)
    if (fabs (wrapped - i * 45.0) < 0.0005)
      return g_strdup (LETTERS[i]);

  char             text[G_ASCII_DTOSTR_BUF_SIZE];
  g_autofree char *decimals = g_strdup (g_ascii_formatd (text, sizeof text, "%.3f", wrapped));
  gsize            n = strlen (decimals);
  while (decimals[n - 1] == '0')
    n--;
  if (decimals[n - 1] == '.')
    n--;
  decimals[n] = '\0';
  return g_strconcat (decimals, "°", NULL);
}
