#include "offer-plans.h"

struct _RcOfferPlans
{
  GObject parent_instance;

  RcDocument   *document; /* borrowed: it owns this */
  GPtrArray    *plans;    /* of RcOfferPlan */
  RcOutcome    *followed; /* what they are, or are being, planned for */
  GCancellable *cancellable;
};

G_DEFINE_FINAL_TYPE (RcOfferPlans, rc_offer_plans, G_TYPE_OBJECT)

static guint changed_signal;

void
rc_offer_plan_free (RcOfferPlan *plan)
{
  g_free (plan->id);
  g_free (plan->name);
  g_free (plan->fault);
  g_clear_pointer (&plan->outcome, rc_outcome_unref);
  g_free (plan);
}

/* Takes the outcome (transfer full, nullable). */
static RcOfferPlan *
plan_new (const RcAlternative *alternative, RcOutcome *outcome, const GError *error)
{
  RcOfferPlan *plan = g_new0 (RcOfferPlan, 1);

  g_assert (outcome != NULL || error != NULL); /* what was not planned has its reason */
  if (alternative != NULL)
    {
      plan->id = g_strdup (alternative->id);
      plan->name = g_strdup (alternative->name != NULL ? alternative->name : alternative->id);
    }
  plan->outcome = outcome;
  if (outcome == NULL)
    plan->fault = g_strdup (error->message);
  else if (outcome->quote == NULL)
    plan->fault = g_strdup (outcome->price_fault->message);
  else if (alternative != NULL)
    outcome->quote->option = g_strdup (plan->name);
  return plan;
}

static const RcOutcome *
find_previous (const GPtrArray *previous, const char *id, const RcOutcome *otherwise)
{
  for (guint i = 0; previous != NULL && i < previous->len; i++)
    {
      const RcOfferPlan *plan = g_ptr_array_index (previous, i);

      if (plan->outcome != NULL && g_strcmp0 (plan->id, id) == 0)
        return plan->outcome;
    }
  return otherwise;
}

/* All ways at once, in this thread; the first is `outcome` itself. `previous` (of RcOfferPlan): areas that are as they
 * were there keep what was found for them. (transfer full) GPtrArray of RcOfferPlan. */
static GPtrArray *
plan_all (RcOutcome *outcome, const GPtrArray *previous, double seconds, GCancellable *cancellable)
{
  GPtrArray       *plans = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_offer_plan_free);
  const GPtrArray *alternatives = outcome->job->offer->alternatives;

  g_ptr_array_add (plans, plan_new (NULL, rc_outcome_ref (outcome), NULL));
  for (guint i = 0; i < alternatives->len && !g_cancellable_is_cancelled (cancellable); i++)
    {
      const RcAlternative *alternative = g_ptr_array_index (alternatives, i);
      g_autoptr (GError) error = NULL;
      g_autoptr (RcJob) job = rc_job_new_alternative (outcome->job, outcome->measure->id, alternative, &error);
      RcOutcome *other = job != NULL ? rc_outcome_new (job, outcome->measure->id, NULL, outcome->book, outcome->date,
                                                       seconds, find_previous (previous, alternative->id, outcome),
                                                       NULL, NULL, cancellable, &error)
                                     : NULL;

      g_ptr_array_add (plans, plan_new (alternative, other, error));
    }
  return plans;
}

/* --- in a thread --- */

typedef struct
{
  RcOutcome *outcome;
  GPtrArray *previous;
  double     seconds;
} Work;

static void
work_free (Work *work)
{
  rc_outcome_unref (work->outcome);
  g_ptr_array_unref (work->previous);
  g_free (work);
}

static void
plan_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const Work *work = data;

  g_task_return_pointer (task, plan_all (work->outcome, work->previous, work->seconds, cancellable),
                         (GDestroyNotify)g_ptr_array_unref);
}

static void
stop (RcOfferPlans *self)
{
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
}

static void start (RcOfferPlans *self, double seconds);

static void
on_done (GObject *source, GAsyncResult *result, gpointer data)
{
  RcOfferPlans *self = RC_OFFER_PLANS (source);
  const Work   *work = g_task_get_task_data (G_TASK (result));
  GPtrArray    *plans = g_task_propagate_pointer (G_TASK (result), NULL);
  double        improve_seconds;

  if (plans == NULL)
    return;
  g_ptr_array_unref (self->plans);
  self->plans = plans;
  g_clear_object (&self->cancellable);
  g_signal_emit (self, changed_signal, 0);
  improve_seconds = self->document != NULL ? rc_document_get_improve_seconds (self->document) : 0;
  if (work->seconds == 0 && improve_seconds > 0)
    start (self, improve_seconds);
}

static void
start (RcOfferPlans *self, double seconds)
{
  Work *work = g_new0 (Work, 1);

  work->outcome = rc_outcome_ref (rc_document_get_outcome (self->document));
  work->previous = g_ptr_array_ref (self->plans);
  work->seconds = seconds;
  self->cancellable = g_cancellable_new ();
  g_autoptr (GTask) task = g_task_new (self, self->cancellable, on_done, NULL);
  g_task_set_task_data (task, work, (GDestroyNotify)work_free);
  g_task_run_in_thread (task, plan_in_thread);
}

/* --- following the document --- */

gboolean
rc_offer_plans_are_current (RcOfferPlans *self)
{
  RcOutcome         *outcome = rc_document_get_outcome (self->document);
  const RcOfferPlan *first = self->plans->len > 0 ? g_ptr_array_index (self->plans, 0) : NULL;

  return first != NULL && first->outcome == outcome && self->cancellable == NULL;
}

/* Without alternatives there is nothing to wait for. */
static void
follow (RcOfferPlans *self)
{
  RcOutcome *outcome = rc_document_get_outcome (self->document);

  if (outcome == NULL || outcome == self->followed)
    return;
  stop (self);
  g_clear_pointer (&self->followed, rc_outcome_unref);
  self->followed = rc_outcome_ref (outcome);
  if (outcome->job->offer->alternatives->len > 0)
    {
      start (self, 0);
      return;
    }
  g_ptr_array_unref (self->plans);
  self->plans = plan_all (outcome, NULL, 0, NULL);
  g_signal_emit (self, changed_signal, 0);
}

const GPtrArray *
rc_offer_plans_get (RcOfferPlans *self)
{
  return self->plans;
}

GPtrArray *
rc_offer_plans_list_alternatives (const GPtrArray *plans)
{
  GPtrArray *quotes = g_ptr_array_new ();

  for (guint i = 1; i < plans->len; i++)
    {
      const RcOfferPlan *plan = g_ptr_array_index (plans, i);

      if (plan->fault == NULL)
        g_ptr_array_add (quotes, plan->outcome->quote);
    }
  return quotes;
}

/* The document goes. */
static void
let_go (RcOfferPlans *self)
{
  stop (self);
  self->document = NULL;
  g_object_unref (self);
}

RcOfferPlans *
rc_offer_plans_of (RcDocument *document)
{
  RcOfferPlans *self = g_object_get_data (G_OBJECT (document), "rowcut-offer-plans");

  if (self != NULL)
    return self;
  self = g_object_new (RC_TYPE_OFFER_PLANS, NULL);
  self->document = document;
  g_signal_connect_object (document, "planned", G_CALLBACK (follow), self, G_CONNECT_SWAPPED);
  g_object_set_data_full (G_OBJECT (document), "rowcut-offer-plans", self, (GDestroyNotify)let_go);
  follow (self);
  return self;
}

static void
rc_offer_plans_finalize (GObject *object)
{
  g_ptr_array_unref (RC_OFFER_PLANS (object)->plans);
  g_clear_pointer (&RC_OFFER_PLANS (object)->followed, rc_outcome_unref);
  G_OBJECT_CLASS (rc_offer_plans_parent_class)->finalize (object);
}

static void
rc_offer_plans_class_init (RcOfferPlansClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rc_offer_plans_finalize;
  changed_signal
      = g_signal_new ("changed", RC_TYPE_OFFER_PLANS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
rc_offer_plans_init (RcOfferPlans *self)
{
  self->plans = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_offer_plan_free);
}
