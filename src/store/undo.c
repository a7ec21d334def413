#include <glib/gi18n-lib.h>

#include "revision.h"
#include "search.h"
#include "step.h"

/* Takes back the latest step, or does again the first that was taken back. *done is FALSE when there is none. */
static gboolean
move_within (RcStore *store, const char *job_id, gboolean back, RcStep *step, gint64 *revision, gboolean *done,
             GError **error)
{
  gint64 key;

  *done = FALSE;
  if (!rc_revision_find_job (store, job_id, &key, error) || !rc_step_find (store, job_id, !back, step, error))
    return FALSE;
  if (step->number == 0)
    return TRUE;
  if (!rc_revision_check (store, job_id, key, FALSE, error) || !rc_step_apply (store, step, back, &key, error))
    return FALSE;
  /* The deletion of a job, taken back, is forgotten: it is not a thing to be done again by one key too many. */
  if (!(step->deletes ? rc_step_forget (store, job_id, step, error) : rc_step_mark (store, job_id, step, back, error)))
    return FALSE;
  *done = TRUE;
  return rc_revision_touch (store, key, step->deletes ? step->made : NULL, revision, error)
         && rc_search_refresh (store, key, error);
}

static gboolean
move (RcStore *store, const char *job_id, gboolean back, char **name, GError **error)
{
  g_auto (RcStep) step = { 0 };
  const char *doing = back ? _ ("Undo") : _ ("Redo");
  gboolean    done;
  gint64      revision;

  if (!rc_store_begin (store, doing, error))
    return FALSE;
  if (!move_within (store, job_id, back, &step, &revision, &done, error) || !done)
    return rc_store_rollback (store);
  if (!rc_store_commit (store, doing, error))
    return FALSE;
  rc_revision_set_seen (store, job_id, revision);
  if (name != NULL)
    *name = g_steal_pointer (&step.name);
  return TRUE;
}

gboolean
rc_store_undo (RcStore *store, const char *job_id, char **step, GError **error)
{
  g_return_val_if_fail (store != NULL && job_id != NULL, FALSE);

  return move (store, job_id, TRUE, step, error);
}

gboolean
rc_store_redo (RcStore *store, const char *job_id, char **step, GError **error)
{
  g_return_val_if_fail (store != NULL && job_id != NULL, FALSE);

  return move (store, job_id, FALSE, step, error);
}

static char *
dup_name (RcStore *store, const char *job_id, gboolean undone)
{
  g_auto (RcStep) step = { 0 };

  if (!rc_step_find (store, job_id, undone, &step, NULL) || step.number == 0)
    return NULL;
  return g_steal_pointer (&step.name);
}

char *
rc_store_dup_undo_name (RcStore *store, const char *job_id)
{
  g_return_val_if_fail (store != NULL && job_id != NULL, NULL);

  return dup_name (store, job_id, FALSE);
}

char *
rc_store_dup_redo_name (RcStore *store, const char *job_id)
{
  g_return_val_if_fail (store != NULL && job_id != NULL, NULL);

  return dup_name (store, job_id, TRUE);
}

gboolean
rc_store_can_undo (RcStore *store, const char *job_id)
{
  g_autofree char *name = rc_store_dup_undo_name (store, job_id);

  return name != NULL;
}

gboolean
rc_store_can_redo (RcStore *store, const char *job_id)
{
  g_autofree char *name = rc_store_dup_redo_name (store, job_id);

  return name != NULL;
}
