#include "day.h"

#include <stdio.h>
#include <string.h>

#define LAST_YEAR 9999

static gboolean
parse (const char *text, GDate *date)
{
  int  year, month, day;
  char rest;

  if (text == NULL || strlen (text) != strlen ("YYYY-MM-DD") || !g_ascii_isdigit (text[0]) || !g_ascii_isdigit (text[5])
      || !g_ascii_isdigit (text[8]) || sscanf (text, "%4d-%2d-%2d%c", &year, &month, &day, &rest) != 3
      || !g_date_valid_dmy ((GDateDay)day, (GDateMonth)month, (GDateYear)year))
    return FALSE;
  g_date_clear (date, 1);
  g_date_set_dmy (date, (GDateDay)day, (GDateMonth)month, (GDateYear)year);
  return TRUE;
}

gboolean
rc_day_is_valid (const char *text)
{
  GDate date;

  return parse (text, &date);
}

char *
rc_day_add (const char *day, int n_days)
{
  GDate date;

  if (!parse (day, &date))
    return NULL;
  if (n_days < 0 && (guint)-n_days >= g_date_get_julian (&date))
    return NULL;
  if (n_days < 0)
    g_date_subtract_days (&date, (guint)-n_days);
  else
    g_date_add_days (&date, (guint)n_days);
  if (g_date_get_year (&date) > LAST_YEAR)
    return NULL;
  return g_strdup_printf ("%04d-%02d-%02d", g_date_get_year (&date), g_date_get_month (&date), g_date_get_day (&date));
}

gboolean
rc_day_count (const char *from, const char *to, int *n_days)
{
  GDate first, last;

  if (!parse (from, &first) || !parse (to, &last))
    return FALSE;
  *n_days = g_date_days_between (&first, &last);
  return TRUE;
}
