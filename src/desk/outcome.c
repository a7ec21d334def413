#include "outcome.h"

static void
price (RcOutcome *self)
{
  g_autoptr (GError) error = NULL;

  self->quantities = rc_quantity_compute (self->plan, self->book->goods, &error);
  if (self->quantities)
    self->quote = rc_quote_new (self->job, self->quantities, self->book, self->date, &error);
  self->price_fault = g_steal_pointer (&error);
}

/* The measure before is planned as it was: by that the goods were cut, and their pile stays. Where that cannot be
 * planned any more there is nothing to hold to. */
static void
count_on_held (RcOutcome *self, const RcJob *job, const RcOutcome *previous, GCancellable *cancellable)
{
  const RcMeasure *before = NULL;

  for (guint i = 1; i < job->measures->len; i++)
    if (g_str_equal (((const RcMeasure *)g_ptr_array_index (job->measures, i))->id, self->measure->id))
      before = g_ptr_array_index (job->measures, i - 1);
  g_return_if_fail (before != NULL); /* what is counted on was cut by an earlier measure */
  self->before = rc_outcome_new (job, before->id, NULL, self->book, self->date, 0, previous ? previous->before : NULL,
                                 NULL, NULL, cancellable, NULL);
  if (self->before)
    rc_remeasure_hold_pile (self->measure, self->before->plan);
}

RcOutcome *
rc_outcome_new (const RcJob *job, const char *measure, RcHeld *held, const RcPriceBook *book, const char *date,
                double seconds, const RcOutcome *previous, RcPlanProgressFunc progress, gpointer progress_data,
                GCancellable *cancellable, GError **error)
{
  g_return_val_if_fail (job != NULL && book != NULL, NULL);

  g_autoptr (RcOutcome) self = g_new0 (RcOutcome, 1);
  RcPlanParams params = {
    .seconds = seconds, .seed = 1, .cancellable = cancellable, .progress = progress, .progress_data = progress_data
  };
  if (previous)
    params.previous = previous->plan;

  g_atomic_ref_count_init (&self->refs);
  self->held = held ? rc_held_ref (held) : NULL;
  self->job = held ? rc_held_dup_job (held, job, measure) : rc_job_copy (job);
  self->book = rc_price_book_copy (book);
  self->date = g_strdup (date);
  self->measure = rc_job_get_measure (self->job, measure);
  g_return_val_if_fail (self->measure != NULL, NULL);
  if (rc_held_is_counted_on (held, job, measure))
    count_on_held (self, job, previous, cancellable);
  RcPriceDay day = { self->book, self->date };
  self->plan = rc_plan_new (self->job, self->measure, rc_price_day_get_weights, &day, &params, error);
  if (self->plan == NULL)
    return NULL;
  price (self);
  return g_steal_pointer (&self);
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
