#include "revision.h"

#include <glib/gi18n-lib.h>

#define COUNTER "revision"

gboolean
rc_revision_find_job (RcStore *store, const char *id, gint64 *job, GError **error)
{
  return rc_query_find_integer (store, "SELECT job FROM jobs WHERE id = ?", RC_VALUES (rc_value_text (id)), 0, job,
                                error);
}

gboolean
rc_revision_find (RcStore *store, gint64 job, gint64 *revision, GError **error)
{
  return rc_query_find_integer (store, "SELECT revision FROM revisions WHERE job = ?",
                                RC_VALUES (rc_value_integer (job)), 0, revision, error);
}

gboolean
rc_revision_check (RcStore *store, const char *id, gint64 job, gboolean must_know, GError **error)
{
  const gint64 *seen = g_hash_table_lookup (store->seen, id);
  gint64        revision = 0;

  if (job != 0 && !rc_revision_find (store, job, &revision, error))
    return FALSE;
  if (seen != NULL && *seen == revision)
    return TRUE;
  if (seen == NULL && (job == 0 || !must_know))
    return TRUE;
  if (job == 0)
    g_set_error (
        error, RC_ERROR, RC_ERROR_CONFLICT,
        _ ("Job %s was deleted by somebody else while it was open here; nothing was changed. Take the deletion "
           "back, or keep this one under a new number."),
        id);
  else if (seen == NULL)
    g_set_error (error, RC_ERROR, RC_ERROR_CONFLICT,
                 _ ("There is a job %s in the store already; nothing was changed. Open that one to work on it, or give "
                    "this one another number."),
                 id);
  else
    g_set_error (error, RC_ERROR, RC_ERROR_CONFLICT,
                 _ ("Job %s was changed by somebody else since it was opened here; nothing was changed. Load it anew, "
                    "then make the change again."),
                 id);
  return FALSE;
}

gboolean
rc_revision_touch (RcStore *store, gint64 job, const char *changed, gint64 *revision, GError **error)
{
  return rc_store_count (store, COUNTER, revision, error)
         && rc_query_run (store,
                          "INSERT INTO revisions (job, revision, changed) VALUES (?1, ?2, coalesce (?3, ''))"
                          " ON CONFLICT (job) DO UPDATE SET revision = ?2, changed = coalesce (?3, changed)",
                          RC_VALUES (rc_value_integer (job), rc_value_integer (*revision), rc_value_text (changed)),
                          error);
}

void
rc_revision_set_seen (RcStore *store, const char *id, gint64 revision)
{
  if (revision == 0)
    g_hash_table_remove (store->seen, id);
  else
    g_hash_table_replace (store->seen, g_strdup (id), g_memdup2 (&revision, sizeof revision));
}

gboolean
rc_store_get_revision (RcStore *store, const char *job_id, gint64 *revision, GError **error)
{
  gint64 job;

  g_return_val_if_fail (store != NULL && job_id != NULL && revision != NULL, FALSE);

  *revision = 0;
  return rc_revision_find_job (store, job_id, &job, error)
         && (job == 0 || rc_revision_find (store, job, revision, error));
}

gboolean
rc_store_is_current (RcStore *store, const char *job_id, gboolean *is_current, GError **error)
{
  const gint64 *seen;
  gint64        revision;

  g_return_val_if_fail (store != NULL && job_id != NULL && is_current != NULL, FALSE);

  seen = g_hash_table_lookup (store->seen, job_id);
  if (!rc_store_get_revision (store, job_id, &revision, error))
    return FALSE;
  *is_current = seen != NULL && revision == *seen;
  return TRUE;
}
