/* The open job as it stands, and each other way to do it that its offer names: planned and priced by a thread after
 * each change. Signal "changed": there is something new.
 */
#pragma once

#include "document.h"

typedef struct
{
  char      *id, *name; /* of the alternative; both NULL: the job as it stands */
  RcOutcome *outcome;   /* NULL: it cannot be planned */
  char      *fault;     /* why it cannot be planned or priced; NULL: it can */
} RcOfferPlan;

void rc_offer_plan_free (RcOfferPlan *plan);

#define RC_TYPE_OFFER_PLANS (rc_offer_plans_get_type ())
G_DECLARE_FINAL_TYPE (RcOfferPlans, rc_offer_plans, RC, OFFER_PLANS, GObject)

/* The document's, made when they are first asked for: all windows show, print and issue the same. (transfer none) */
RcOfferPlans *rc_offer_plans_of (RcDocument *document);

/* Of RcOfferPlan, the job as it stands first; empty until there is a plan. Good until "changed". */
const GPtrArray *rc_offer_plans_get (RcOfferPlans *self);
/* FALSE while ways are being planned that the job's state has, or the first is not the document's outcome. */
gboolean rc_offer_plans_are_current (RcOfferPlans *self);
/* The quotations of the alternatives (of RcQuote, borrowed); those without a price are left out. (transfer container)
 */
GPtrArray *rc_offer_plans_list_alternatives (const GPtrArray *plans);
