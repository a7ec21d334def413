#include "job-store.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "job-rows.h"
#include "revision.h"
#include "search.h"
#include "step.h"

#define ID_COUNTER  "job id"
#define KEY_COUNTER "job"
#define ID_PREFIX   "J-"

char *
rc_store_dup_new_job_id (RcStore *store, GError **error)
{
  gint64 last, n_taken = 1;

  g_return_val_if_fail (store != NULL, NULL);

  if (!rc_store_get_count (store, ID_COUNTER, &last, error))
    return NULL;
  for (;;)
    {
      g_autofree char *id = g_strdup_printf (ID_PREFIX "%" G_GINT64_FORMAT, ++last);

      if (!rc_query_find_integer (store, "SELECT count (*) FROM jobs WHERE id = ?1 OR number = ?1",
                                  RC_VALUES (rc_value_text (id)), 0, &n_taken, error))
        return NULL;
      if (n_taken == 0)
        return g_steal_pointer (&id);
    }
}

/* An id once given out is not given again, even when its job is gone: quotations may carry it. */
static gboolean
note_id (RcStore *store, const char *id, GError **error)
{
  guint64 number;

  if (!g_str_has_prefix (id, ID_PREFIX)
      || !g_ascii_string_to_unsigned (id + strlen (ID_PREFIX), 10, 1, G_MAXINT32, &number, NULL))
    return TRUE;
  return rc_store_count_at_least (store, ID_COUNTER, (gint64)number, error);
}

RcJob *
rc_job_store_load (RcStore *store, gint64 job, GError **error)
{
  g_autoptr (RcRowSet) rows = rc_row_set_new (job);

  if (!rc_row_set_read (rows, store, 0, RC_N_JOB_TABLES, FALSE, error))
    return NULL;
  return rc_job_rows_build (rows, error);
}

static RcJob *
load_within (RcStore *store, const char *id, gint64 *revision, GError **error)
{
  gint64 key;

  if (!rc_revision_find_job (store, id, &key, error))
    return NULL;
  if (key == 0)
    {
      *revision = 0;
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("There is no job %s in the store."), id);
      return NULL;
    }
  if (!rc_revision_find (store, key, revision, error))
    return NULL;
  return rc_job_store_load (store, key, error);
}

/* One transaction, so that all tables are read as of one moment. *revision: 0: there is none; -1: not known. */
static RcJob *
load (RcStore *store, const char *id, gint64 *revision, GError **error)
{
  RcJob *job;

  *revision = -1;
  if (!rc_query_run (store, "BEGIN", NULL, 0, error))
    return NULL;
  job = load_within (store, id, revision, error);
  rc_store_rollback (store);
  return job;
}

RcJob *
rc_store_read_job (RcStore *store, const char *id, GError **error)
{
  gint64 revision;

  g_return_val_if_fail (store != NULL && id != NULL, NULL);

  return load (store, id, &revision, error);
}

RcJob *
rc_store_load_job (RcStore *store, const char *id, GError **error)
{
  gint64 revision;
  RcJob *job;

  g_return_val_if_fail (store != NULL && id != NULL, NULL);

  job = load (store, id, &revision, error);
  /* That it is gone is known, too: its deletion can be taken back then. */
  if (job != NULL || revision == 0)
    rc_revision_set_seen (store, id, revision);
  return job;
}

/* A job that was deleted comes back first, so that its steps go on from there. */
static gboolean
find_or_restore (RcStore *store, const char *id, gint64 *key, GError **error)
{
  g_auto (RcStep) step = { 0 };

  if (!rc_revision_find_job (store, id, key, error))
    return FALSE;
  if (*key != 0)
    return TRUE;
  if (!rc_step_find (store, id, FALSE, &step, error))
    return FALSE;
  if (step.number == 0 || !step.deletes)
    return TRUE;
  return rc_step_apply (store, &step, TRUE, key, error) && rc_step_forget (store, id, &step, error);
}

static gboolean
write_new (RcStore *store, RcRowSet *rows, GError **error)
{
  gint64 key;

  if (!rc_store_count (store, KEY_COUNTER, &key, error))
    return FALSE;
  rc_row_set_set_job (rows, key);
  return rc_row_set_write (rows, store, 0, RC_N_JOB_TABLES, error);
}

static gboolean
write_step (RcStore *store, const RcRowSet *rows, const char *id, const char *step, const char *made, gboolean deletes,
            gboolean *changed, GError **error)
{
  sqlite3_session *session = rc_step_start (store, error);

  if (session == NULL)
    return FALSE;
  if (!rc_row_set_write (rows, store, 0, RC_N_JOB_TABLES, error))
    {
      sqlite3session_delete (session);
      return FALSE;
    }
  return rc_step_finish (store, session, id, step, made, deletes, changed, error);
}

/* What a save is to do, and what came of it. */
typedef struct
{
  const RcJob *job;
  const char  *step, *now;
  gboolean     amends;   /* in place of the latest step */
  RcJob       *numbered; /* the job itself, where it gets the next number; else NULL */
  const char  *date;     /* of that number */
  gboolean     changed, has_step;
  gint64       revision; /* 0 when there was nothing to change */
} Save;

/* Takes the latest step out of the rows and out of the record, unless there is none, or it has been undone. */
static gboolean
drop_latest_step (RcStore *store, Save *save, gint64 key, GError **error)
{
  g_auto (RcStep) undone = { 0 };
  g_auto (RcStep) step = { 0 };

  if (!rc_step_find (store, save->job->id, TRUE, &undone, error)
      || !rc_step_find (store, save->job->id, FALSE, &step, error))
    return FALSE;
  if (undone.number != 0 || step.number == 0 || step.deletes)
    return TRUE;
  save->changed = TRUE;
  return rc_step_apply (store, &step, TRUE, &key, error) && rc_step_forget (store, save->job->id, &step, error);
}

static gboolean
save_within (RcStore *store, RcRowSet *rows, Save *save, GError **error)
{
  const char *id = save->job->id;
  gint64      key;

  if (!rc_revision_find_job (store, id, &key, error) || !rc_revision_check (store, id, key, TRUE, error))
    return FALSE;
  if (key == 0 && !find_or_restore (store, id, &key, error))
    return FALSE;
  if (key == 0)
    {
      save->changed = TRUE;
      if (!write_new (store, rows, error) || !note_id (store, id, error))
        return FALSE;
    }
  else
    {
      rc_row_set_set_job (rows, key);
      if ((save->amends && !drop_latest_step (store, save, key, error))
          || !write_step (store, rows, id, save->step, save->now, FALSE, &save->has_step, error))
        return FALSE;
      save->changed |= save->has_step;
    }
  if (!rc_revision_find (store, rc_row_set_get_job (rows), &save->revision, error))
    return FALSE;
  if (!save->changed && save->revision != 0)
    return TRUE;
  return rc_revision_touch (store, rc_row_set_get_job (rows), save->now, &save->revision, error)
         && rc_search_refresh (store, rc_row_set_get_job (rows), error);
}

static gboolean
take_number (RcStore *store, const Save *save, GError **error)
{
  char *number;

  if (save->numbered == NULL)
    return TRUE;
  if (save->numbered->id == NULL && (save->numbered->id = rc_store_dup_new_job_id (store, error)) == NULL)
    return FALSE;
  number = rc_new_job_take_number (store, save->date, error);
  if (number == NULL)
    return FALSE;
  g_free (save->numbered->number);
  save->numbered->number = number;
  return TRUE;
}

static gboolean
save_job (RcStore *store, Save *save, GError **error)
{
  g_autoptr (RcRowSet) rows = rc_row_set_new (0);
  g_autofree char *doing = save->job->id != NULL ? g_strdup_printf (_ ("Saving job %s"), save->job->id)
                                                 : g_strdup (_ ("Saving a new job"));
  g_autofree char *owner = NULL;

  if (!rc_store_begin (store, doing, error))
    return FALSE;
  if (!take_number (store, save, error))
    return rc_store_rollback (store);
  owner = g_strdup_printf (_ ("Job %s"), save->job->id);
  rc_job_rows_add (save->job, rows);
  if (!rc_row_set_prepare (rows, 0, RC_N_JOB_TABLES, owner, error) || !save_within (store, rows, save, error))
    return rc_store_rollback (store);
  if (!rc_store_commit (store, doing, error))
    return FALSE;
  rc_revision_set_seen (store, save->job->id, save->revision);
  return TRUE;
}

gboolean
rc_store_save_job (RcStore *store, const RcJob *job, const char *step, const char *now, GError **error)
{
  Save save = { .job = job, .step = step, .now = now };

  g_return_val_if_fail (store != NULL && job != NULL && job->id != NULL, FALSE);
  g_return_val_if_fail (step != NULL && now != NULL, FALSE);

  return save_job (store, &save, error);
}

gboolean
rc_store_save_new_job (RcStore *store, RcJob *job, const char *step, const char *date, const char *now, GError **error)
{
  Save save = { .job = job, .step = step, .now = now, .numbered = job, .date = date };

  g_return_val_if_fail (store != NULL && job != NULL, FALSE);
  g_return_val_if_fail (step != NULL && date != NULL && now != NULL, FALSE);

  return save_job (store, &save, error);
}

gboolean
rc_store_amend_job (RcStore *store, const RcJob *job, const char *step, const char *now, gboolean *has_step,
                    GError **error)
{
  Save save = { .job = job, .step = step, .now = now, .amends = TRUE };

  g_return_val_if_fail (store != NULL && job != NULL && job->id != NULL, FALSE);
  g_return_val_if_fail (step != NULL && now != NULL, FALSE);

  if (!save_job (store, &save, error))
    return FALSE;
  if (has_step != NULL)
    *has_step = save.has_step;
  return TRUE;
}

static gboolean
delete_within (RcStore *store, const char *id, GError **error)
{
  g_autoptr (RcRowSet) nothing = NULL;
  g_auto (RcQuery) query = { 0 };
  g_autofree char *changed_at = NULL;
  gboolean         changed;
  gint64           key;

  if (!rc_revision_find_job (store, id, &key, error))
    return FALSE;
  if (key == 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("There is no job %s in the store to delete."), id);
      return FALSE;
    }
  if (!rc_revision_check (store, id, key, FALSE, error)
      || !rc_query_start (&query, store, "SELECT changed FROM revisions WHERE job = ?",
                          RC_VALUES (rc_value_integer (key)), error))
    return FALSE;
  changed_at = rc_query_next (&query, error) ? rc_query_dup_text (&query, 0) : g_strdup ("");
  if (query.failed
      || !rc_query_run (store, "DELETE FROM revisions WHERE job = ?", RC_VALUES (rc_value_integer (key)), error))
    return FALSE;
  nothing = rc_row_set_new (key);
  return write_step (store, nothing, id, _ ("Delete the job"), changed_at, TRUE, &changed, error)
         && rc_search_refresh (store, key, error);
}

gboolean
rc_store_delete_job (RcStore *store, const char *id, GError **error)
{
  g_autofree char *doing = NULL;

  g_return_val_if_fail (store != NULL && id != NULL, FALSE);

  doing = g_strdup_printf (_ ("Deleting job %s"), id);
  if (!rc_store_begin (store, doing, error))
    return FALSE;
  if (!delete_within (store, id, error))
    return rc_store_rollback (store);
  if (!rc_store_commit (store, doing, error))
    return FALSE;
  rc_revision_set_seen (store, id, 0);
  return TRUE;
}
