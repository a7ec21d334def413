/* What a job's plan cuts off a roll: proposed when the roll lies on the floor to be cut, then corrected by hand. */
#pragma once

#include "plan.h"
#include "stock.h"

typedef struct
{
  RcLength   length;   /* off the roll's start; 0: the plan takes nothing from it */
  GPtrArray *pieces;   /* of RcCutPiece */
  GPtrArray *remnants; /* of RcRoll: what is left of that length beside the pieces and worth keeping */
} RcCutProposal;

/* The cuts that `plan` (nullable) has on the roll; where it has none, those it has on goods to be bought of its kind,
 * as the roll may be what was bought. `roll` is as it lies there now. (transfer full) */
RcCutProposal *rc_cut_proposal_new (const RcPlan *plan, const RcRoll *roll);
void           rc_cut_proposal_free (RcCutProposal *proposal);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcCutProposal, rc_cut_proposal_free)
