#include "translation.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <string.h>

#include "rowcut-error.h"

static char    *own_language; /* what LANGUAGE said before another was begun; NULL: nothing */
static char    *own_locale;   /* of messages then */
static gboolean is_begun;

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
  textdomain (GETTEXT_PACKAGE); /* for ngettext, which names no domain */
}

const char *const *
rc_translation_list (void)
{
  static gsize  once;
  static char **languages;

  if (g_once_init_enter (&once))
    {
      languages = g_strsplit (LANGUAGES, " ", 0);
      g_once_init_leave (&once, 1);
    }
  return (const char *const *)languages;
}

gboolean
rc_translation_has (const char *code)
{
  return code != NULL && g_strv_contains (rc_translation_list (), code);
}

const char *
rc_translation_get_name (const char *code)
{
  static const struct
  {
    const char *code, *name;
  } names[] = { { "en", "English" }, { "es", "Español" }, { "fr", "Français" } };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (g_strcmp0 (code, names[i].code) == 0)
      return names[i].name;
  return code;
}

/* NULL: what the environment says. */
static void
use (const char *language)
{
  const char *locale;

  if (language != NULL)
    g_setenv ("LANGUAGE", language, TRUE);
  else
    g_unsetenv ("LANGUAGE");
  /* Only a change of the locale makes the library look for a catalogue again. In the C locale it translates nothing. */
  setlocale (LC_MESSAGES, "C");
  locale = setlocale (LC_MESSAGES, "");
  if (language != NULL && (locale == NULL || strcmp (locale, "C") == 0 || strcmp (locale, "POSIX") == 0))
    setlocale (LC_MESSAGES, "C.UTF-8");
}

/* The head of a catalogue, which stands for the empty text, names its language. English needs none. */
static gboolean
is_in_use (const char *code)
{
  g_autofree char *line = g_strdup_printf ("Language: %s\n", code);

  return strcmp (code, "en") == 0 || strstr (dgettext (GETTEXT_PACKAGE, ""), line) != NULL;
}

/* "en, es": those whose words are installed. */
static char *
dup_installed (void)
{
  const char *folder = bindtextdomain (GETTEXT_PACKAGE, NULL);
  GString    *list = g_string_new ("en");

  for (const char *const *code = rc_translation_list (); *code != NULL; code++)
    {
      g_autofree char *file = g_strconcat (GETTEXT_PACKAGE, ".mo", NULL);
      g_autofree char *path = g_build_filename (folder != NULL ? folder : "", *code, "LC_MESSAGES", file, NULL);

      if (g_file_test (path, G_FILE_TEST_EXISTS))
        g_string_append_printf (list, ", %s", *code);
    }
  return g_string_free (list, FALSE);
}

gboolean
rc_translation_set_language (const char *code, GError **error)
{
  g_autofree char *before = g_strdup (g_getenv ("LANGUAGE"));
  g_autofree char *list = NULL;

  if (!rc_translation_has (code))
    {
      list = g_strjoinv (", ", (char **)rc_translation_list ());
      g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("“%s” is not a language of this program; there are %s"), code,
                   list);
      return FALSE;
    }
  use (code);
  if (is_in_use (code))
    return TRUE;
  use (before);
  list = dup_installed ();
  g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE,
               _ ("the words of “%s” are not installed (looked for in %s); there are %s"), code,
               bindtextdomain (GETTEXT_PACKAGE, NULL), list);
  return FALSE;
}

void
rc_translation_begin (const char *code)
{
  if (!rc_translation_has (code))
    return;
  g_free (own_language);
  g_free (own_locale);
  own_language = g_strdup (g_getenv ("LANGUAGE"));
  own_locale = g_strdup (setlocale (LC_MESSAGES, NULL));
  is_begun = rc_translation_set_language (code, NULL);
}

void
rc_translation_end (void)
{
  if (is_begun)
    {
      use (own_language);
      setlocale (LC_MESSAGES, own_locale);
    }
  is_begun = FALSE;
}
