#include "id-stem.h"

#include <glib.h>

char *
rc_id_stem_new (const char *name)
{
  g_autofree char *ascii = g_str_to_ascii (name, "C");
  GString         *stem = g_string_new (NULL);

  for (const char *c = ascii; *c != '\0'; c++)
    if (g_ascii_isalnum (*c))
      g_string_append_c (stem, g_ascii_tolower (*c));
    else if (stem->len > 0 && stem->str[stem->len - 1] != '-')
      g_string_append_c (stem, '-');
  if (stem->len > 0 && stem->str[stem->len - 1] == '-')
    g_string_truncate (stem, stem->len - 1);
  return g_string_free (stem, FALSE);
}
