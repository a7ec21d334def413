#include "outcome.h"

/* What is charged already, where that counts. */
static gboolean
find_charged (const RcOutcome *self, RcCharged *charged)
{
  *charged = (RcCharged){ .held = self->held, .plan = self->plan };
  if (self->before == NULL || self->held == NULL)
    return FALSE;
  charged->laid = self->before->plan;
  charged->before = self->held->accepted != NULL ? self->held->accepted : self->before->quote;
  return charged->before != NULL;
}

RcQuote *
rc_outcome_new_quote (const RcOutcome *self, const GPtrArray *quantities, GError **error)
{
  RcCharged charged;
  gboolean  is_charged = find_charged (self, &charged);

  return rc_quote_new_after (is_charged ? &charged : NULL, self->job, quantities, self->book, self->date, error);
}

static void
price (RcOutcome *self)
{
  g_autoptr (GError) error = NULL;

  self->quantities = rc_quantity_compute (self->plan, self->book->goods, &error);
  if (self->quantities)
    self->quote = rc_outcome_new_quote (self, self->quantities, &error);
  self->price_fault = g_steal_pointer (&error);
}

/* Plans and prices it. */
static gboolean
fill (RcOutcome *self, RcPlanParams *params, GError **error)
{
  RcPriceDay day = { self->book, self->date };

  if (params->laid != NULL)
    rc_plan_hold_pile (self->job, self->measure, params->laid, rc_price_day_get_weights, &day);
  self->plan = rc_plan_new (self->job, self->measure, rc_price_day_get_weights, &day, params, error);
  if (self->plan == NULL)
    return FALSE;
  price (self);
  return TRUE;
}

/* An earlier measure, planned as it was, in as much time. NULL where it cannot be planned any more. */
static RcOutcome *
plan_earlier (const RcOutcome *self, const RcJob *job, const RcMeasure *measure, double seconds,
              const RcOutcome *previous, GCancellable *cancellable)
{
  const RcOutcome *known = previous;

  if (previous != NULL && previous->before != NULL && g_str_equal (previous->before->measure->id, measure->id))
    known = previous->before;
  return rc_outcome_new (job, measure->id, NULL, self->book, self->date, seconds, known, NULL, NULL, cancellable, NULL);
}

/* What an earlier measure is planned with, and the last that was. */
typedef struct
{
  const RcOutcome *of, *previous;
  const RcJob     *job;
  double           seconds;
  GCancellable    *cancellable;
  RcOutcome       *found;
} Earlier;

static const RcPlan *
find_plan (const RcMeasure *measure, gpointer data)
{
  Earlier *self = data;

  if (self->found == NULL || !g_str_equal (self->found->measure->id, measure->id))
    {
      g_clear_pointer (&self->found, rc_outcome_unref);
      self->found = plan_earlier (self->of, self->job, measure, self->seconds, self->previous, self->cancellable);
    }
  return self->found != NULL ? self->found->plan : NULL;
}

static void
count_on_held (RcOutcome *self, const RcJob *job, double seconds, const RcOutcome *previous, GCancellable *cancellable)
{
  Earlier earlier = { self, previous, job, seconds, cancellable, NULL };

  rc_held_find_begun_by (self->held, job, self->measure, find_plan, &earlier);
  self->before = earlier.found;
}

static RcOutcome *
outcome_new (RcJob *job, const char *measure, RcHeld *held, const RcPriceBook *book, const char *date)
{
  RcOutcome *self = g_new0 (RcOutcome, 1);

  g_atomic_ref_count_init (&self->refs);
  self->held = held ? rc_held_ref (held) : NULL;
  self->job = job;
  self->book = rc_price_book_copy (book);
  self->date = g_strdup (date);
  self->measure = rc_job_get_measure (self->job, measure);
  return self;
}

RcOutcome *
rc_outcome_new (const RcJob *job, const char *measure, RcHeld *held, const RcPriceBook *book, const char *date,
                double seconds, const RcOutcome *previous, RcPlanProgressFunc progress, gpointer progress_data,
                GCancellable *cancellable, GError **error)
{
  g_return_val_if_fail (job != NULL && book != NULL, NULL);

  g_autoptr (RcOutcome) self
      = outcome_new (held ? rc_held_dup_job (held, job, measure) : rc_job_copy (job), measure, held, book, date);
  RcPlanParams params = {
    .seconds = seconds, .seed = 1, .cancellable = cancellable, .progress = progress, .progress_data = progress_data
  };
  if (previous)
    params.previous = previous->plan;

  g_return_val_if_fail (self->measure != NULL, NULL);
  if (rc_held_is_counted_on (held, job, measure))
    count_on_held (self, job, seconds, previous, cancellable);
  if (self->before != NULL)
    params.laid = self->before->plan;
  return fill (self, &params, error) ? g_steal_pointer (&self) : NULL;
}

RcOutcome *
rc_outcome_new_whole (const RcOutcome *outcome, const RcJob *job, RcHeld *held, GError **error)
{
  g_autoptr (RcOutcome) self
      = outcome_new (rc_held_dup_whole_job (held, job), outcome->measure->id, held, outcome->book, outcome->date);
  RcPlanParams params = { .seed = 1, .laid = outcome->plan };

  return fill (self, &params, error) ? g_steal_pointer (&self) : NULL;
}

RcOutcome *
rc_outcome_ref (RcOutcome *outcome)
{
  g_atomic_ref_count_inc (&outcome->refs);
  return outcome;
}

void
rc_outcome_unref (RcOutcome *outcome)
{
  if (!g_atomic_ref_count_dec (&outcome->refs))
    return;
  /* The parts first, then what they point into. */
  g_clear_pointer (&outcome->quote, rc_quote_free);
  g_clear_pointer (&outcome->quantities, g_ptr_array_unref);
  g_clear_pointer (&outcome->plan, rc_plan_free);
  g_clear_pointer (&outcome->book, rc_price_book_free);
  g_clear_pointer (&outcome->job, rc_job_free);
  g_clear_pointer (&outcome->held, rc_held_unref);
  g_clear_pointer (&outcome->before, rc_outcome_unref);
  g_clear_error (&outcome->price_fault);
  g_free (outcome->date);
  g_free (outcome);
}

GPtrArray *
rc_outcome_list_shortfalls (const RcOutcome *outcome)
{
  return outcome->before ? rc_remeasure_list_shortfalls (outcome->plan, outcome->before->plan, outcome->held->goods)
                         : g_ptr_array_new_with_free_func (g_free);
}

static RcMoney
compute_weight (const RcOutcome *outcome)
{
  RcMoney weight = 0;

  for (guint i = 0; i < outcome->plan->areas->len; i++)
    {
      const RcOption *option = rc_area_plan_get_chosen (g_ptr_array_index (outcome->plan->areas, i));
      weight += outcome->quote == NULL ? option->cost : option->rule_cost;
    }
  return weight + (outcome->quote ? outcome->quote->cost : 0);
}

/* How many pins it knows the cost of. */
static guint
count_pin_costs (const RcPlan *plan)
{
  guint n = 0;

  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);
      for (guint k = 0; area_plan->pins != NULL && k < area_plan->pins->len; k++)
        n += g_array_index (area_plan->pins, RcPinResult, k).cost_known ? 1 : 0;
    }
  return n;
}

gboolean
rc_outcome_is_better (const RcOutcome *a, const RcOutcome *b)
{
  if ((a->quote == NULL) != (b->quote == NULL))
    return a->quote != NULL;
  RcMoney weight_a = compute_weight (a), weight_b = compute_weight (b);
  if (weight_a != weight_b)
    return weight_a < weight_b;
  if (a->plan->carpet_length != b->plan->carpet_length)
    return a->plan->carpet_length < b->plan->carpet_length;
  return count_pin_costs (a->plan) > count_pin_costs (b->plan);
}
