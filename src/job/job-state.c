#include "job-state.h"

#include <glib/gi18n-lib.h>

#include "words.h"

static const char *const names[]
    = { "enquiry", "measured", "quoted", "accepted", "ordered", "cut", "fitted", "closed" };
G_STATIC_ASSERT (G_N_ELEMENTS (names) == RC_N_JOB_STATES);

static const char *const labels[] = { N_ ("Enquiry"), N_ ("Measured"), N_ ("Quoted"), N_ ("Accepted"),
                                      N_ ("Ordered"), N_ ("Cut"),      N_ ("Fitted"), N_ ("Closed") };
G_STATIC_ASSERT (G_N_ELEMENTS (labels) == RC_N_JOB_STATES);

const char *
rc_job_state_get_name (RcJobState state)
{
  g_return_val_if_fail ((guint)state < RC_N_JOB_STATES, "");
  return names[state];
}

gboolean
rc_job_state_parse (const char *name, RcJobState *state, GError **error)
{
  guint index;

  if (!rc_words_parse (names, G_N_ELEMENTS (names), _ ("state of a job"), name, &index, error))
    return FALSE;
  *state = index;
  return TRUE;
}

const char *
rc_job_state_get_label (RcJobState state)
{
  g_return_val_if_fail ((guint)state < RC_N_JOB_STATES, "");
  return _ (labels[state]);
}
