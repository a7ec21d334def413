/* The jobs of the store with a search that answers at once. Signal "open" (id) when one is taken.
 */
#pragma once

#include "job-pictures.h"

#define RC_TYPE_JOB_LIST (rc_job_list_get_type ())
G_DECLARE_FINAL_TYPE (RcJobList, rc_job_list, RC, JOB_LIST, GtkBox)

/* The store must outlive the list. */
void rc_job_list_set_store (RcJobList *self, RcStore *store);
/* Asks the store again: a job is new, gone or changed. */
void rc_job_list_refresh (RcJobList *self);
void rc_job_list_focus (RcJobList *self);
/* Only jobs that are in this state; -1: in any. */
void rc_job_list_show_state (RcJobList *self, int state);
/* Where the jobs' floors are drawn from; NULL without a store. (transfer none) */
RcJobPictures *rc_job_list_get_pictures (RcJobList *self);
guint          rc_job_list_get_n_jobs (RcJobList *self); /* found with the words as they stand */
