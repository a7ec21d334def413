#include "roll-rows.h"

char *
rc_roll_rows_format_flaws (const GArray *flaws)
{
  GString *text = flaws->len > 0 ? g_string_new (NULL) : NULL;

  for (guint i = 0; i < flaws->len; i++)
    {
      const RcFlaw *flaw = &g_array_index (flaws, RcFlaw, i);

      g_string_append_printf (text, "%s%" G_GINT64_FORMAT "-%" G_GINT64_FORMAT, i > 0 ? " " : "", flaw->from, flaw->to);
    }
  return text != NULL ? g_string_free (text, FALSE) : NULL;
}

void
rc_roll_rows_parse_flaws (const char *text, GArray *flaws)
{
  g_auto (GStrv) parts = text != NULL ? g_strsplit (text, " ", -1) : NULL;

  for (guint i = 0; parts != NULL && parts[i] != NULL; i++)
    {
      char  *end;
      RcFlaw flaw = { .from = g_ascii_strtoll (parts[i], &end, 10) };

      if (*end != '-')
        continue;
      flaw.to = g_ascii_strtoll (end + 1, NULL, 10);
      g_array_append_val (flaws, flaw);
    }
}

RcRoll *
rc_roll_rows_read (const RcQuery *query)
{
  RcRoll *roll
      = rc_roll_new (rc_query_get_text (query, 0), rc_query_get_text (query, 1), rc_query_get_integer (query, 3));

  roll->lot = rc_query_dup_text (query, 2);
  roll->remnant = rc_query_get_integer (query, 4) != 0;
  roll->place = rc_query_dup_text (query, 5);
  roll->width = rc_query_get_integer (query, 6);
  rc_roll_rows_parse_flaws (rc_query_get_text (query, 7), roll->flaws);
  return roll;
}
