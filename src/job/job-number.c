#include "job-number.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

#define MOST_BYTES 60

gboolean
rc_job_number_check_pattern (const char *pattern, GError **error)
{
  const char *first = strchr (pattern, '#');

  if (first != NULL && strchr (first + strspn (first, "#"), '#') == NULL && strlen (pattern) <= MOST_BYTES)
    return TRUE;
  g_set_error (
      error, RC_ERROR, RC_ERROR_PARSE,
      _ ("“%s” is no pattern for job numbers: it should have one run of # for the running number, and may have "
         "YYYY, YY, MM and DD, as %s; at most %d letters"),
      pattern, RC_JOB_NUMBERS_USUAL, MOST_BYTES);
  return FALSE;
}

/* Parts of an ISO 8601 date, the longest word first. */
static const struct
{
  const char *word;
  guint       at, length;
} parts[] = { { "YYYY", 0, 4 }, { "YY", 2, 2 }, { "MM", 5, 2 }, { "DD", 8, 2 } };

/* Appends what stands for the text's beginning and returns how much of it that is; 0: nothing does. */
static gsize
append_part (GString *number, const char *text, const char *date)
{
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (g_str_has_prefix (text, parts[i].word) && strlen (date) >= parts[i].at + parts[i].length)
      {
        g_string_append_len (number, date + parts[i].at, parts[i].length);
        return strlen (parts[i].word);
      }
  return 0;
}

static char *
fill (const char *pattern, const char *date, gint64 running)
{
  GString *number = g_string_new (NULL);

  for (const char *p = pattern; *p != '\0';)
    {
      gsize n_signs = strspn (p, "#"), length = n_signs > 0 ? 0 : append_part (number, p, date);

      if (n_signs > 0 && running < 0)
        g_string_append_c (number, '#');
      else if (n_signs > 0)
        g_string_append_printf (number, "%0*" G_GINT64_FORMAT, (int)n_signs, running);
      else if (length == 0)
        g_string_append_c (number, *p);
      p += n_signs > 0 ? n_signs : MAX (length, 1);
    }
  return g_string_free (number, FALSE);
}

char *
rc_job_number_format (const char *pattern, const char *date, gint64 number)
{
  return fill (pattern, date, number);
}

char *
rc_job_number_dup_series (const char *pattern, const char *date)
{
  return fill (pattern, date, -1);
}
