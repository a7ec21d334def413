#include "rowcut-error.h"

GQuark
rc_error_quark (void)
{
  return g_quark_from_static_string ("rc-error-quark");
}

#define MAX_QUOTED 48

char *
rc_error_quote (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text != NULL ? text : "", -1);
  g_autofree char *start = NULL;

  if (g_utf8_strlen (valid, -1) <= MAX_QUOTED)
    return g_steal_pointer (&valid);

  start = g_utf8_substring (valid, 0, MAX_QUOTED - 1);
  return g_strconcat (start, "…", NULL);
}
