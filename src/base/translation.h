/* The reader's language: the program's own, from the environment, or another for what is written to somebody.
 */
#pragma once

#include <glib.h>

/* Takes the language of messages and the reading of letters from the environment, and finds the translations: where
 * ROWCUT_LOCALE_DIR says, else where the program was installed. Numbers, dates and sorting stay as in the C locale. */
void rc_translation_init (void);

/* The languages there are, as codes of ISO 639: "en" first. NULL-terminated, lives as long as the program. */
const char *const *rc_translation_list (void);
gboolean           rc_translation_has (const char *code); /* nullable */
/* A language's own name: "Français"; the code where there is none. */
const char *rc_translation_get_name (const char *code);

/* Takes another language than the environment's, after rc_translation_init and before other threads start. Errors:
 * RC_ERROR_PARSE naming the languages there are; RC_ERROR_REFERENCE where its words are not installed, naming those
 * that are. On an error the language stays as it was. */
gboolean rc_translation_set_language (const char *code, GError **error);

/* Words come in `code` (NULL, "" or without its words installed: the program's own) until rc_translation_end. For the
 * main thread; what other threads word meanwhile may come in either. Not nested. */
void rc_translation_begin (const char *code);
void rc_translation_end (void);
