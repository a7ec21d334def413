/* The cuts of pieces on the rolls of their carpet. */
#pragma once

#include "plan.h"

/* The cuts of the pieces (of RcPiece, all of one carpet) on one roll bought to measure. Cut i is piece i. (transfer
 * full) */
RcNestProblem *rc_cutting_new_problem (const RcGoods *carpet, const GPtrArray *pieces);

/* The rolls that the carpet can be cut from: stock rolls of the job first, then one to buy. `ids` (nullable, of char*)
 * gets the stock roll's id for each, NULL to buy. (transfer full) GPtrArray of RcNestRoll. */
GPtrArray *rc_cutting_new_rolls (const RcJob *job, const RcGoods *carpet, gint64 carpet_per_m, GPtrArray *ids);

/* The pieces' roll length by the trade's safe rule for patterns: RcOption's safe_length. */
RcLength rc_cutting_compute_safe_length (const RcGoods *carpet, const GPtrArray *pieces);

/* The cutting of those of `pieces` that are of the carpet: stock rolls of the job first, then goods to buy. An area's
 * cuts come out of one dye lot. NULL and RC_ERROR_INFEASIBLE with the nester's reason when they cannot be cut.
 * (transfer full) */
RcCutting *rc_cutting_new (const RcJob *job, const RcGoods *carpet, const GPtrArray *pieces, gint64 carpet_per_m,
                           const RcPlanParams *params, GError **error);
void       rc_cutting_free (RcCutting *cutting);

/* Cuts as the plan before (nullable) did, where that cuts these pieces too and costs less. */
void rc_cutting_keep (RcCutting *cutting, const RcPlan *previous);

/* What its carpet counts: lengths bought, in the supplier's steps, and those taken from stock at their own value. */
RcMoney rc_cutting_get_cost (const RcCutting *cutting);
