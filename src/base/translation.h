/* The reader's language, for programs at their start; nothing else in the core knows it. */
#pragma once

/* Takes the language of messages and the reading of letters from the environment, and finds the translations: where
 * ROWCUT_LOCALE_DIR says, else where the program was installed. Numbers, dates and sorting stay as in the C locale. */
void rc_translation_init (void);
