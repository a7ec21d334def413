#include "roll-claims.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

typedef struct
{
  RcLength length; /* of the roll */
  RcLength taken;
  GString *jobs;
} Claim;

struct _RcRollClaims
{
  GHashTable *claims; /* roll id -> Claim */
};

static void
claim_free (gpointer data)
{
  Claim *claim = data;

  g_string_free (claim->jobs, TRUE);
  g_free (claim);
}

RcRollClaims *
rc_roll_claims_new (void)
{
  RcRollClaims *claims = g_new0 (RcRollClaims, 1);

  claims->claims = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, claim_free);
  return claims;
}

void
rc_roll_claims_free (RcRollClaims *claims)
{
  g_hash_table_unref (claims->claims);
  g_free (claims);
}

static gboolean
claim_roll (RcRollClaims *claims, const RcPlan *plan, const char *roll, const RcNestUse *use, const char *job,
            GError **error)
{
  const RcLengthStyle *style = rc_job_get_length_style (plan->job);
  Claim               *claim = g_hash_table_lookup (claims->claims, roll);
  g_autofree char     *taken = NULL, *length = NULL;

  if (claim == NULL)
    {
      claim = g_new0 (Claim, 1);
      claim->jobs = g_string_new (NULL);
      g_hash_table_insert (claims->claims, g_strdup (roll), claim);
    }
  claim->length = MAX (claim->length, use->length); /* less for a job where others are promised some of it */
  claim->taken += use->used;
  g_string_append_printf (claim->jobs, "%s%s", claim->jobs->len > 0 ? ", " : "", job);
  if (claim->taken <= claim->length)
    return TRUE;
  taken = rc_length_format (claim->taken, style);
  length = rc_length_format (claim->length, style);
  g_set_error (
      error, RC_ERROR, RC_ERROR_CONFLICT,
      _ ("Roll %s is wanted for jobs %s: %s together, and it has %s. Keep it for one of them, and plan the other "
         "without it."),
      roll, claim->jobs->str, taken, length);
  return FALSE;
}

/* What is cut for the job, or on its way to it, nobody else can want. */
static gboolean
is_own (const RcPlan *plan, const char *roll)
{
  for (guint i = 0; i < plan->job->rolls->len; i++)
    {
      const RcRoll *stock = g_ptr_array_index (plan->job->rolls, i);

      if (g_strcmp0 (stock->id, roll) == 0)
        return stock->cut;
    }
  return FALSE;
}

gboolean
rc_roll_claims_add (RcRollClaims *claims, const RcPlan *plan, const char *job, GError **error)
{
  for (guint c = 0; c < plan->cuttings->len; c++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, c);

      for (guint u = 0; u < cutting->answer->rolls->len; u++)
        {
          const RcNestUse *use = g_ptr_array_index (cutting->answer->rolls, u);
          const char      *roll = rc_cutting_get_roll_id (cutting, use);

          if (roll != NULL && !is_own (plan, roll) && !claim_roll (claims, plan, roll, use, job, error))
            return FALSE;
        }
    }
  return TRUE;
}
