#include "translation.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <string.h>

#include "rowcut-error.h"

void
rc_translation_init (void)
{
  const char *folder = g_getenv ("ROWCUT_LOCALE_DIR");

  /* GLib decides at its first message, for good, whether a language without a catalogue is translated: it is to, as
   * another language may still be asked for. */
  (void)g_dgettext (GETTEXT_PACKAGE, "Job");
  setlocale (LC_CTYPE, "");
  setlocale (LC_MESSAGES, "");
  bindtextdomain (GETTEXT_PACKAGE, folder != NULL ? folder : LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
}

gboolean
rc_translation_set_language (const char *code, GError **error)
{
  g_auto (GStrv) languages = g_strsplit (LANGUAGES, " ", 0);
  g_autofree char *list = NULL;
  const char      *locale;

  if (!g_strv_contains ((const char *const *)languages, code))
    {
      list = g_strjoinv (", ", languages);
      g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("“%s” is not a language of this program; there are %s"), code,
                   list);
      return FALSE;
    }
  g_setenv ("LANGUAGE", code, TRUE);
  /* Only a change of the locale makes the library look for a catalogue again. In the C locale it translates nothing. */
  setlocale (LC_MESSAGES, "C");
  locale = setlocale (LC_MESSAGES, "");
  if (locale == NULL || strcmp (locale, "C") == 0 || strcmp (locale, "POSIX") == 0)
    setlocale (LC_MESSAGES, "C.UTF-8");
  return TRUE;
}
