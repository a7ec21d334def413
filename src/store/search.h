/* The words that jobs are found by. */
#pragma once

#include "query.h"

/* Brings the words of one job up to date, within a transaction; of one that is gone, away. */
gboolean rc_search_refresh (RcStore *store, gint64 job, GError **error);

/* Whether the words are those of the job. */
gboolean rc_search_is_fresh (RcStore *store, gint64 job, gboolean *fresh, GError **error);

/* What the typed words ask of the index: every word, or its beginning. NULL when there is no letter or digit in them.
 * (transfer full) */
char *rc_search_dup_expression (const char *words);
