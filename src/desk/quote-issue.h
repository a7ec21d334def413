/* Issuing quotations: frozen under a number, with the paper as the customer gets it and in the customer's words. */
#pragma once

#include "outcome.h"
#include "sheet.h"
#include "store.h"

/* Issues the quotations of all ways to do the job (of RcOfferPlan) under one number; `revises` (nullable) is the number
 * of the one they take the place of. Each one's paper is kept. NULL and the store's error, or
 * RC_ERROR_REFERENCE when the job has no price. (transfer full) the first number. */
char *rc_quote_issue (RcStore *store, const GPtrArray *plans, const char *revises, RcPaper paper, GError **error);
/* Issues what changes from the quotation `number` to the outcome's, and nothing else. (transfer full) its number. */
char *rc_quote_issue_variation (RcStore *store, RcOutcome *outcome, const char *number, RcPaper paper, GError **error);
