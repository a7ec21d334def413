#include "words.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

gboolean
rc_words_parse (const char *const *words, guint n_words, const char *what, const char *word, guint *index,
                GError **error)
{
  g_autoptr (GString) allowed = g_string_new (NULL);

  for (guint i = 0; i < n_words; i++)
    {
      if (g_strcmp0 (words[i], word) == 0)
        {
          *index = i;
          return TRUE;
        }
      g_string_append_printf (allowed, "%s%s", i == 0 ? "" : ", ", words[i]);
    }
  g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("“%s” is no %s; it should be one of: %s"), word ? word : "", what,
               allowed->str);
  return FALSE;
}
