/* Whole jobs in the store. */
#pragma once

#include "store-private.h"

/* The job with that number, as it is now. (transfer full) */
RcJob *rc_job_store_load (RcStore *store, gint64 job, GError **error);
