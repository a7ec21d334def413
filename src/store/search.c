#include "search.h"

#include <glib/gi18n-lib.h>

#define N_TEXTS 5

/* Phone and mail are looked for with the customer's name. */
#define TEXTS_OF_JOB                                                                                                   \
  "SELECT coalesce (j.number, ''), coalesce (j.title, ''),"                                                            \
  " coalesce (c.name, '') || char (10) || coalesce (c.phone, '') || char (10) || coalesce (c.email, ''),"              \
  " coalesce (c.address, ''), coalesce (j.notes, '')"                                                                  \
  " FROM jobs j LEFT JOIN customers c ON c.job = j.job WHERE j.job = ?"
#define TEXTS_OF_INDEX "SELECT number, title, customer, address, notes FROM search WHERE rowid = ?"

static gboolean
is_same (RcQuery *job, RcQuery *index)
{
  for (int i = 0; i < N_TEXTS; i++)
    if (g_strcmp0 (rc_query_get_text (job, i), rc_query_get_text (index, i)) != 0)
      return FALSE;
  return TRUE;
}

/* *job_is and *index_is tell which of the two is there. */
static gboolean
compare (RcStore *store, gint64 job, RcQuery *texts, gboolean *job_is, gboolean *index_is, gboolean *same,
         GError **error)
{
  g_auto (RcQuery) index = { 0 };

  if (!rc_query_start (texts, store, TEXTS_OF_JOB, RC_VALUES (rc_value_integer (job)), error)
      || !rc_query_start (&index, store, TEXTS_OF_INDEX, RC_VALUES (rc_value_integer (job)), error))
    return FALSE;
  *job_is = rc_query_next (texts, error);
  if (texts->failed)
    return FALSE;
  *index_is = rc_query_next (&index, error);
  if (index.failed)
    return FALSE;
  *same = *job_is == *index_is && (!*job_is || is_same (texts, &index));
  return TRUE;
}

gboolean
rc_search_is_fresh (RcStore *store, gint64 job, gboolean *fresh, GError **error)
{
  g_auto (RcQuery) texts = { 0 };
  gboolean job_is, index_is;

  return compare (store, job, &texts, &job_is, &index_is, fresh, error);
}

gboolean
rc_search_refresh (RcStore *store, gint64 job, GError **error)
{
  g_auto (RcQuery) texts = { 0 };
  gboolean job_is, index_is, same;

  if (!compare (store, job, &texts, &job_is, &index_is, &same, error))
    return FALSE;
  if (same)
    return TRUE;
  if (index_is
      && !rc_query_run (store, "DELETE FROM search WHERE rowid = ?", RC_VALUES (rc_value_integer (job)), error))
    return FALSE;
  return !job_is
         || rc_query_run (
             store, "INSERT INTO search (rowid, number, title, customer, address, notes) VALUES (?, ?, ?, ?, ?, ?)",
             RC_VALUES (rc_value_integer (job), rc_query_get_value (&texts, 0), rc_query_get_value (&texts, 1),
                        rc_query_get_value (&texts, 2), rc_query_get_value (&texts, 3), rc_query_get_value (&texts, 4)),
             error);
}

/* More words than anybody types; the rest is not looked at. */
#define MAX_WORDS 32

static gboolean
can_be_looked_for (const char *word, const char *end)
{
  for (; word < end; word = g_utf8_next_char (word))
    if (g_unichar_isalnum (g_utf8_get_char (word)))
      return TRUE;
  return FALSE;
}

/* Within quotes nothing has a meaning for the index, and a quote is written twice; the star asks for beginnings. */
static void
append_word (GString *expression, const char *word, const char *end)
{
  g_string_append (expression, expression->len > 0 ? " \"" : "\"");
  for (; word < end; word++)
    g_string_append (expression, *word == '"' ? "\"\"" : (char[]){ *word, 0 });
  g_string_append (expression, "\"*");
}

static const char *
skip (const char *text, gboolean spaces)
{
  while (*text != '\0' && (g_unichar_isspace (g_utf8_get_char (text)) != 0) == spaces)
    text = g_utf8_next_char (text);
  return text;
}

char *
rc_search_dup_expression (const char *words)
{
  g_autofree char *valid = words != NULL ? g_utf8_make_valid (words, -1) : g_strdup ("");
  GString         *expression = g_string_new (NULL);
  guint            n_words = 0;

  for (const char *word = skip (valid, TRUE); *word != '\0' && n_words < MAX_WORDS;)
    {
      const char *end = skip (word, FALSE);

      if (can_be_looked_for (word, end))
        {
          append_word (expression, word, end);
          n_words++;
        }
      word = skip (end, TRUE);
    }
  return g_string_free (expression, n_words == 0);
}

static RcJobSummary *
dup_summary (const RcQuery *query)
{
  RcJobSummary *summary = g_new0 (RcJobSummary, 1);

  summary->id = rc_query_dup_text (query, 0);
  summary->number = rc_query_dup_text (query, 1);
  summary->title = rc_query_dup_text (query, 2);
  summary->customer = rc_query_dup_text (query, 3);
  summary->address = rc_query_dup_text (query, 4);
  summary->date = rc_query_dup_text (query, 5);
  summary->changed = rc_query_dup_text (query, 6);
  return summary;
}

void
rc_job_summary_free (RcJobSummary *summary)
{
  if (summary == NULL)
    return;
  g_free (summary->id);
  g_free (summary->number);
  g_free (summary->title);
  g_free (summary->customer);
  g_free (summary->address);
  g_free (summary->date);
  g_free (summary->changed);
  g_free (summary);
}

/* The latest are found first, along the index of changes, and only those are joined with what a summary tells: so it
 * takes a few milliseconds also where a letter finds half of 50,000 jobs (tests/bench-store.c). */
#define LATEST                                                                                                         \
  "SELECT j.id, j.number, j.title, c.name, c.address, j.opened, r.changed FROM"                                        \
  " (SELECT r.job, r.changed, r.revision FROM revisions r INDEXED BY revisions_by_change WHERE "
#define OF_WORDS "r.job IN (SELECT rowid FROM search WHERE search MATCH ?1)"
#define OF_STATE                                                                                                       \
  "(?3 = 'enquiry' OR EXISTS (SELECT 1 FROM job_states s WHERE s.job = r.job AND s.state = ?3))"                       \
  " AND NOT EXISTS (SELECT 1 FROM job_states s WHERE s.job = r.job AND instr (?4, ',' || s.state || ',') > 0)"
#define SUMMARIES                                                                                                      \
  " ORDER BY r.changed DESC, r.revision DESC LIMIT ?2) r"                                                              \
  " JOIN jobs j ON j.job = r.job LEFT JOIN customers c ON c.job = r.job"                                               \
  " ORDER BY r.changed DESC, r.revision DESC"

/* ",cut,fitted,closed,": a job that has come to one of these is no longer in `state`. (transfer full) */
static char *
dup_later_states (RcJobState state)
{
  GString *later = g_string_new (",");

  for (guint i = state + 1; i < RC_N_JOB_STATES; i++)
    g_string_append_printf (later, "%s,", rc_job_state_get_name (i));
  return g_string_free (later, FALSE);
}

static GPtrArray *
find (RcStore *store, const char *words, int state, guint most, GError **error)
{
  g_autoptr (GPtrArray) found = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_job_summary_free);
  g_auto (RcQuery) query = { 0 };
  g_autofree char *expression = rc_search_dup_expression (words);
  g_autofree char *later = state >= 0 ? dup_later_states (state) : NULL;
  g_autofree char *sql = g_strconcat (LATEST, expression != NULL ? OF_WORDS : "?1 IS NULL",
                                      state >= 0 ? " AND " OF_STATE : "", SUMMARIES, NULL);
  RcValue          values[] = { rc_value_text (expression), rc_value_integer (most > 0 ? (gint64)most : -1),
                                rc_value_text (state >= 0 ? rc_job_state_get_name (state) : NULL), rc_value_text (later) };

  g_return_val_if_fail (store != NULL, NULL);

  if (rc_query_start (&query, store, sql, values, state >= 0 ? 4 : 2, error))
    while (rc_query_next (&query, error))
      g_ptr_array_add (found, dup_summary (&query));
  return query.failed ? NULL : g_steal_pointer (&found);
}

GPtrArray *
rc_store_find_latest_jobs (RcStore *store, const char *words, guint most, GError **error)
{
  return find (store, words, -1, most, error);
}

GPtrArray *
rc_store_find_jobs_in_state (RcStore *store, const char *words, RcJobState state, guint most, GError **error)
{
  return find (store, words, (int)state, most, error);
}

gboolean
rc_store_find_state (RcStore *store, const char *job_id, RcJobState *state, char **reached, GError **error)
{
  g_auto (RcQuery) query = { 0 };

  g_return_val_if_fail (store != NULL && job_id != NULL, FALSE);

  *state = RC_JOB_ENQUIRY;
  g_clear_pointer (reached, g_free);
  if (!rc_query_start (&query, store,
                       "SELECT s.state, s.reached FROM jobs j JOIN job_states s ON s.job = j.job WHERE j.id = ?",
                       RC_VALUES (rc_value_text (job_id)), error))
    return FALSE;
  while (rc_query_next (&query, error))
    {
      RcJobState one;

      if (!rc_job_state_parse (rc_query_get_text (&query, 0), &one, NULL) || one < *state)
        continue;
      *state = one;
      g_free (*reached);
      *reached = rc_query_dup_text (&query, 1);
    }
  return !query.failed;
}

GPtrArray *
rc_store_find_jobs (RcStore *store, const char *words, GError **error)
{
  return rc_store_find_latest_jobs (store, words, 0, error);
}
