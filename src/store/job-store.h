/* Whole jobs in the store. */
#pragma once

#include "store-private.h"

/* The job with that number, as it is now. (transfer full) */
RcJob *rc_job_store_load (RcStore *store, gint64 job, GError **error);

/* The next number by the price book's pattern, within a transaction that is open: none is used up by a job that could
 * not be saved. (transfer full) */
char *rc_new_job_take_number (RcStore *store, const char *date, GError **error);
