/* The jobs found in the store as a list model; rows are made only when they are looked at.
 */
#pragma once

#include "job-pictures.h"

#define RC_TYPE_JOB_ROW (rc_job_row_get_type ())
G_DECLARE_FINAL_TYPE (RcJobRow, rc_job_row, RC, JOB_ROW, GObject)

/* Properties: "id", "title", "detail" and "state" (strings), "step" (double: how far the job has come, 0 to 7),
 * "pictures" (RcJobPictures, where its floor is drawn from). */

#define RC_TYPE_JOB_MODEL (rc_job_model_get_type ())
G_DECLARE_FINAL_TYPE (RcJobModel, rc_job_model, RC, JOB_MODEL, GObject)

/* `summaries` (transfer full) of RcJobSummary, from rc_store_find_jobs. The store, which says their states, outlives
 * the model. */
RcJobModel *rc_job_model_new (RcStore *store, RcJobPictures *pictures, GPtrArray *summaries);
const char *rc_job_model_get_id (RcJobModel *self, guint position);
