/* What one state of a job comes to: plan, quantities, quotation. Made on any thread, then never changed, shared by
 * reference. It owns copies of the job and the price book that its parts point into.
 */
#pragma once

#include "quote.h"
#include "remeasure.h"

typedef struct _RcOutcome RcOutcome;

struct _RcOutcome
{
  RcJob          *job; /* with the rolls it is planned from (rc_held_dup_job) */
  RcMeasure      *measure;
  RcHeld         *held;   /* what it has already; nullable */
  RcOutcome      *before; /* where that counts, the measure by which it was ordered and cut; else NULL */
  RcPriceBook    *book;
  char           *date;
  RcPlan         *plan;
  GPtrArray      *quantities;  /* of RcQuantityLine; NULL when they cannot be told */
  RcQuote        *quote;       /* NULL when it cannot be priced */
  GError         *price_fault; /* why not; NULL when it can */
  gatomicrefcount refs;
};

/* `measure` NULL: the last. `held` (nullable) is what the job has already. seconds 0: the first answer. `previous`
 * (nullable): areas that are as they were there keep what was found for them. `progress` (nullable) is told how far the
 * plan is, in this thread. NULL and the planner's error when there is no plan. */
RcOutcome *rc_outcome_new (const RcJob *job, const char *measure, RcHeld *held, const RcPriceBook *book,
                           const char *date, double seconds, const RcOutcome *previous, RcPlanProgressFunc progress,
                           gpointer progress_data, GCancellable *cancellable, GError **error);
/* The same measure with all that the job has (rc_held_dup_whole_job), laid as in `outcome`: what is still to be bought
 * is then what is missing. */
RcOutcome *rc_outcome_new_whole (const RcOutcome *outcome, const RcJob *job, RcHeld *held, GError **error);
RcOutcome *rc_outcome_ref (RcOutcome *outcome);
void       rc_outcome_unref (RcOutcome *outcome);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcOutcome, rc_outcome_unref)

/* Its quotation by these quantities, which may be worded in another language; what is ordered or cut for the job is
 * charged as it was (rc_quote_new_after). (transfer full) */
RcQuote *rc_outcome_new_quote (const RcOutcome *outcome, const GPtrArray *quantities, GError **error);

/* What is cut or on its way and no longer fits, as rc_remeasure_list_shortfalls; empty where nothing is, or the job has
 * not been measured again. In the reader's language. (transfer full) GPtrArray of char*. */
GPtrArray *rc_outcome_list_shortfalls (const RcOutcome *outcome);

/* TRUE when `a` is the better plan of the same job: it costs the shop less, broken rules counted, or as much with less
 * carpet, or it is as good and knows what more of the pins cost. */
gboolean rc_outcome_is_better (const RcOutcome *a, const RcOutcome *b);
