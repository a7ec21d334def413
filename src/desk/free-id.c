#include "free-id.h"

char *
rc_free_id_new (const char *name, const char *blank, gboolean (*is_taken) (const char *id, gconstpointer data),
                gconstpointer data)
{
  g_autofree char *ascii = g_str_to_ascii (name, "C");
  g_autoptr (GString) base = g_string_new (NULL);

  for (const char *c = ascii; *c != '\0'; c++)
    if (g_ascii_isalnum (*c))
      g_string_append_c (base, g_ascii_tolower (*c));
    else if (base->len > 0 && base->str[base->len - 1] != '-')
      g_string_append_c (base, '-');
  if (base->len > 0 && base->str[base->len - 1] == '-')
    g_string_truncate (base, base->len - 1);
  if (base->len == 0)
    g_string_assign (base, blank);
  if (!is_taken (base->str, data))
    return g_strdup (base->str);
  for (guint n = 2;; n++)
    {
      g_autofree char *id = g_strdup_printf ("%s-%u", base->str, n);

      if (!is_taken (id, data))
        return g_steal_pointer (&id);
    }
}
