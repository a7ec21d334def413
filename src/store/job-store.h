/* Whole jobs in the store. */
#pragma once

#include "store-private.h"

/* The job with that number, as it is now. (transfer full) */
RcJob *rc_job_store_load (RcStore *store, gint64 job, GError **error);

/* Saves a new job under the next number on `date`: in one transaction, so that no number is used up by a job that could
 * not be saved. */
gboolean rc_job_store_save_numbered (RcStore *store, RcJob *job, const char *step, const char *date, const char *now,
                                     GError **error);

/* The next number, within a transaction that is open. (transfer full) */
char *rc_new_job_take_number (RcStore *store, const char *date, GError **error);
