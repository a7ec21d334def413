/* Words that stand for the values of an enumeration in files: one lookup and one kind of error for all of them.
 */
#pragma once

#include <glib.h>

/* Finds `word` among `n_words` words and puts its place in *index. FALSE and RC_ERROR_PARSE naming `what` is meant (as
 * "kind of goods"), the word and the words allowed. `word` NULL counts as empty. */
gboolean rc_words_parse (const char *const *words, guint n_words, const char *what, const char *word, guint *index,
                         GError **error);
