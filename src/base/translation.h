/* The reader's language, for programs at their start; nothing else in the core knows it. */
#pragma once

#include <glib.h>

/* Takes the language of messages and the reading of letters from the environment, and finds the translations: where
 * ROWCUT_LOCALE_DIR says, else where the program was installed. Numbers, dates and sorting stay as in the C locale. */
void rc_translation_init (void);

/* Takes another language than the environment's, after rc_translation_init and before other threads start. Errors:
 * RC_ERROR_PARSE naming the languages there are. */
gboolean rc_translation_set_language (const char *code, GError **error);
