/* What one state of a job comes to: plan, quantities, quotation. Made on any thread, then never changed, shared by
 * reference. It owns copies of the job and the price book that its parts point into.
 */
#pragma once

#include "quote.h"

typedef struct
{
  RcJob           *job;
  const RcMeasure *measure;
  RcPriceBook     *book;
  char            *date;
  RcPlan          *plan;
  GPtrArray       *quantities;  /* of RcQuantityLine; NULL when they cannot be told */
  RcQuote         *quote;       /* NULL when it cannot be priced */
  GError          *price_fault; /* why not; NULL when it can */
  gatomicrefcount  refs;
} RcOutcome;

/* `measure` NULL: the last. seconds 0: the first answer. `previous` (nullable): areas that are as they were there keep
 * what was found for them. `progress` (nullable) is told how far the plan is, in this thread. NULL and the planner's
 * error when there is no plan. */
RcOutcome *rc_outcome_new (const RcJob *job, const char *measure, const RcPriceBook *book, const char *date,
                           double seconds, const RcOutcome *previous, RcPlanProgressFunc progress,
                           gpointer progress_data, GCancellable *cancellable, GError **error);
RcOutcome *rc_outcome_ref (RcOutcome *outcome);
void       rc_outcome_unref (RcOutcome *outcome);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcOutcome, rc_outcome_unref)

/* TRUE when `a` is the better plan of the same job: it costs the shop less, broken rules counted, or as much with less
 * carpet, or it is as good and knows what more of the pins cost. */
gboolean rc_outcome_is_better (const RcOutcome *a, const RcOutcome *b);
