/* What several plans take off the same rolls of stock: each plan alone believes that it may have all of a roll.
 */
#pragma once

#include "plan.h"

typedef struct _RcRollClaims RcRollClaims;

RcRollClaims *rc_roll_claims_new (void);
void          rc_roll_claims_free (RcRollClaims *claims);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcRollClaims, rc_roll_claims_free)

/* Takes in what the plan of `job` (as people write it) takes off stock. FALSE and RC_ERROR_CONFLICT naming the roll,
 * the jobs and the lengths, when a roll is too short for all of them. */
gboolean rc_roll_claims_add (RcRollClaims *claims, const RcPlan *plan, const char *job, GError **error);
