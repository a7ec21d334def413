/* The steps of a job: recorded as changesets of its rows, taken back and done again. Everything here happens within a
 * transaction of the caller's. */
#pragma once

#include "query.h"

typedef struct
{
  gint64   number; /* 0: none */
  char    *name;
  char    *made;
  GBytes  *changeset;
  gboolean deletes; /* the step that deleted the job */
} RcStep;

void rc_step_clear (RcStep *step);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (RcStep, rc_step_clear)

/* Records every change of a job's tables from now on. NULL on error. */
sqlite3_session *rc_step_start (RcStore *store, GError **error);

/* Ends the recording (`session` is freed) and keeps it as the job's latest step; steps that were undone are forgotten.
 * When nothing has changed no step is made and *changed is FALSE. */
gboolean rc_step_finish (RcStore *store, sqlite3_session *session, const char *job_id, const char *name,
                         const char *made, gboolean deletes, gboolean *changed, GError **error);

/* The step that undo would take back, or redo would do again; number 0 when there is none. */
gboolean rc_step_find (RcStore *store, const char *job_id, gboolean undone, RcStep *step, GError **error);

/* Takes the step back, or does it again. *job is the number of the job it belongs to; going in, the one it must belong
 * to, or 0. FALSE when it does not fit the rows or touches another job, which only a damaged store can show. */
gboolean rc_step_apply (RcStore *store, const RcStep *step, gboolean back, gint64 *job, GError **error);
gboolean rc_step_mark (RcStore *store, const char *job_id, const RcStep *step, gboolean undone, GError **error);
gboolean rc_step_forget (RcStore *store, const char *job_id, const RcStep *step, GError **error);
