/* What a job goes through in the shop, from the first call to the closed file. */
#pragma once

#include <glib.h>

typedef enum
{
  RC_JOB_ENQUIRY,
  RC_JOB_MEASURED,
  RC_JOB_QUOTED,
  RC_JOB_ACCEPTED,
  RC_JOB_ORDERED,
  RC_JOB_CUT,
  RC_JOB_FITTED,
  RC_JOB_CLOSED,
  RC_N_JOB_STATES
} RcJobState;

/* Stable word: "enquiry", "measured", "quoted", "accepted", "ordered", "cut", "fitted", "closed". */
const char *rc_job_state_get_name (RcJobState state);
/* FALSE and RC_ERROR_PARSE naming the words allowed; *state is then untouched. */
gboolean    rc_job_state_parse (const char *name, RcJobState *state, GError **error);
const char *rc_job_state_get_label (RcJobState state); /* translated, for people */
