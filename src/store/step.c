#include "step.h"

#include <glib/gi18n-lib.h>

#include "changeset.h"
#include "row-table.h"

void
rc_step_clear (RcStep *step)
{
  g_free (step->name);
  g_free (step->made);
  g_clear_pointer (&step->changeset, g_bytes_unref);
}

sqlite3_session *
rc_step_start (RcStore *store, GError **error)
{
  sqlite3_session *session = NULL;
  int              code = sqlite3session_create (store->db, "main", &session);

  for (RcTableId table = 0; code == SQLITE_OK && table < RC_N_JOB_TABLES; table++)
    code = sqlite3session_attach (session, rc_row_table_get (table)->name);
  if (code == SQLITE_OK)
    return session;
  rc_store_fail_with (store->db, code, store->path, _ ("recording a step"), error);
  if (session != NULL)
    sqlite3session_delete (session);
  return NULL;
}

static gboolean
insert_step (RcStore *store, const char *job_id, const char *name, const char *made, gboolean deletes,
             gconstpointer changeset, gsize size, GError **error)
{
  return rc_query_run (store, "DELETE FROM steps WHERE job_id = ? AND undone = 1", RC_VALUES (rc_value_text (job_id)),
                       error)
         && rc_query_run (store,
                          "INSERT INTO steps (job_id, number, name, made, deletes, changeset) VALUES"
                          " (?1, (SELECT coalesce (max (number), 0) + 1 FROM steps WHERE job_id = ?1), ?2, ?3, ?4, ?5)",
                          RC_VALUES (rc_value_text (job_id), rc_value_text (name), rc_value_text (made),
                                     rc_value_integer (deletes != FALSE), rc_value_blob (changeset, size)),
                          error);
}

gboolean
rc_step_finish (RcStore *store, sqlite3_session *session, const char *job_id, const char *name, const char *made,
                gboolean deletes, gboolean *changed, GError **error)
{
  void    *changeset = NULL;
  int      size = 0;
  int      code = sqlite3session_changeset (session, &size, &changeset);
  gboolean done;

  sqlite3session_delete (session);
  *changed = size > 0;
  if (code != SQLITE_OK)
    done = rc_store_fail_with (store->db, code, store->path, _ ("recording a step"), error);
  else
    done = size == 0 || insert_step (store, job_id, name, made, deletes, changeset, (gsize)size, error);
  sqlite3_free (changeset);
  return done;
}

gboolean
rc_step_find (RcStore *store, const char *job_id, gboolean undone, RcStep *step, GError **error)
{
  g_auto (RcQuery) query = { 0 };
  const char *sql = undone ? "SELECT number, name, made, deletes, changeset FROM steps WHERE job_id = ? AND undone = 1"
                             " ORDER BY number LIMIT 1"
                           : "SELECT number, name, made, deletes, changeset FROM steps WHERE job_id = ? AND undone = 0"
                             " ORDER BY number DESC LIMIT 1";
  RcValue     changeset;

  *step = (RcStep){ 0 };
  if (!rc_query_start (&query, store, sql, RC_VALUES (rc_value_text (job_id)), error))
    return FALSE;
  if (!rc_query_next (&query, error))
    return !query.failed;
  changeset = rc_query_get_value (&query, 4);
  step->number = rc_query_get_integer (&query, 0);
  step->name = rc_query_dup_text (&query, 1);
  step->made = rc_query_dup_text (&query, 2);
  step->deletes = rc_query_get_integer (&query, 3) != 0;
  step->changeset = g_bytes_new (changeset.bytes, changeset.size);
  return TRUE;
}

/* Steps follow one another without a gap, so whatever does not fit is damage. */
static int
on_conflict (gpointer data, int conflict, sqlite3_changeset_iter *changes)
{
  return SQLITE_CHANGESET_ABORT;
}

static int
apply (RcStore *store, GBytes *changeset, gboolean back)
{
  gsize    size;
  gpointer bytes = (gpointer)g_bytes_get_data (changeset, &size);

  return sqlite3changeset_apply_v2 (store->db, (int)size, bytes, NULL, on_conflict, NULL, NULL, NULL,
                                    back ? SQLITE_CHANGESETAPPLY_INVERT : 0);
}

gboolean
rc_step_apply (RcStore *store, const RcStep *step, gboolean back, gint64 *job, GError **error)
{
  gsize         size;
  gconstpointer bytes = g_bytes_get_data (step->changeset, &size);
  g_autoptr (GBytes) completed = NULL;
  gint64 owner = 0;
  int    code = rc_changeset_find_job (bytes, size, &owner) ? SQLITE_OK : SQLITE_CORRUPT;

  if (*job != 0 && *job != owner)
    code = SQLITE_CORRUPT;
  if (code == SQLITE_OK)
    code = apply (store, step->changeset, back);
  if (code == SQLITE_ABORT && !rc_changeset_complete (store, bytes, size, &completed, error))
    return FALSE;
  if (completed != NULL)
    code = apply (store, completed, back);
  *job = owner;
  /* Applying has ended the waiting of foreign keys for the end of the transaction. */
  if (code == SQLITE_OK)
    code = sqlite3_exec (store->db, "PRAGMA defer_foreign_keys = ON", NULL, NULL, NULL);
  if (code == SQLITE_OK)
    return TRUE;
  if (code != SQLITE_ABORT && code != SQLITE_CORRUPT)
    return rc_store_fail_with (store->db, code, store->path, step->name, error);
  g_set_error (error, RC_ERROR, RC_ERROR_STORE,
               _ ("The step “%s” does not fit the job as it is stored: the record of its steps is damaged. The job "
                  "itself was not touched."),
               step->name);
  return FALSE;
}

gboolean
rc_step_mark (RcStore *store, const char *job_id, const RcStep *step, gboolean undone, GError **error)
{
  return rc_query_run (
      store, "UPDATE steps SET undone = ? WHERE job_id = ? AND number = ?",
      RC_VALUES (rc_value_integer (undone != FALSE), rc_value_text (job_id), rc_value_integer (step->number)), error);
}

gboolean
rc_step_forget (RcStore *store, const char *job_id, const RcStep *step, GError **error)
{
  return rc_query_run (store, "DELETE FROM steps WHERE job_id = ? AND number = ?",
                       RC_VALUES (rc_value_text (job_id), rc_value_integer (step->number)), error);
}
