/* Which job is meant, and whether it is still as it was loaded. */
#pragma once

#include "query.h"

/* The number of the job with that id, 0 when there is none. */
gboolean rc_revision_find_job (RcStore *store, const char *id, gint64 *job, GError **error);

/* FALSE and RC_ERROR_CONFLICT when the store holds another revision than was last loaded or saved here: somebody else
 * has changed, made or deleted the job since. `job` as found, 0 for none. With `must_know`, a job that is there and was
 * never loaded here is a conflict, too. */
gboolean rc_revision_check (RcStore *store, const char *id, gint64 job, gboolean must_know, GError **error);

/* Notes the change under a new revision, within a transaction. `changed` NULL leaves the time as it is. */
gboolean rc_revision_touch (RcStore *store, gint64 job, const char *changed, gint64 *revision, GError **error);
gboolean rc_revision_find (RcStore *store, gint64 job, gint64 *revision, GError **error);

/* What is known here from now on; revision 0 forgets the job. */
void rc_revision_set_seen (RcStore *store, const char *id, gint64 revision);
