#include "rowcut-error.h"

/* clang-format off: the name is a word with dashes, not a subtraction */
G_DEFINE_QUARK (rc - error - quark, rc_error)
/* clang-format on */

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
