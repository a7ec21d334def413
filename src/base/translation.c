#include "translation.h"

#include <glib.h>
#include <libintl.h>
#include <locale.h>

void
rc_translation_init (void)
{
  const char *folder = g_getenv ("ROWCUT_LOCALE_DIR");

  setlocale (LC_CTYPE, "");
  setlocale (LC_MESSAGES, "");
  bindtextdomain (GETTEXT_PACKAGE, folder != NULL ? folder : LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
}
