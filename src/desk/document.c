#include "document.h"

#include <glib/gi18n-lib.h>

#include "clock.h"
#include "job-edit.h"
#include "planner.h"
#include "rowcut-error.h"

#define IMPROVE_SECONDS 1.0

struct _RcDocument
{
  GObject      parent_instance;
  RcStore     *store; /* borrowed */
  RcPriceBook *book;
  RcHeld      *held; /* what the job has already, as the store last told */
  RcJob       *job;
  char        *measure;  /* id of the one looked at */
  char        *key;      /* of the last edit, while it may still grow */
  gboolean     has_step; /* the last edit made a step in the store: one that changes nothing makes none */
  gint64       version;  /* of the store's data when the job was last known to be as it is there */

  RcOutcome *outcome;
  GError    *fault;
  RcFigures  figures, before;
  gboolean   has_before;

  RcChoice choice;

  GArray    *pointed; /* of guint: pieces' numbers */
  RcPlanner *planner;
};

G_DEFINE_FINAL_TYPE (RcDocument, rc_document, G_TYPE_OBJECT)

enum
{
  EDITED,
  PLANNED,
  CHOSEN,
  POINTED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
rc_document_dispose (GObject *object)
{
  rc_planner_stop (RC_DOCUMENT (object)->planner);
  G_OBJECT_CLASS (rc_document_parent_class)->dispose (object);
}

static void
rc_document_finalize (GObject *object)
{
  RcDocument *self = RC_DOCUMENT (object);

  g_clear_object (&self->planner);
  g_clear_pointer (&self->outcome, rc_outcome_unref);
  g_clear_pointer (&self->book, rc_price_book_free);
  g_clear_pointer (&self->held, rc_held_unref);
  g_clear_pointer (&self->job, rc_job_free);
  g_clear_pointer (&self->measure, g_free);
  g_clear_pointer (&self->key, g_free);
  g_clear_error (&self->fault);
  g_array_unref (self->pointed);
  G_OBJECT_CLASS (rc_document_parent_class)->finalize (object);
}

static void
rc_document_class_init (RcDocumentClass *klass)
{
  static const char *const NAMES[N_SIGNALS] = { "edited", "planned", "chosen", "pointed" };

  G_OBJECT_CLASS (klass)->dispose = rc_document_dispose;
  G_OBJECT_CLASS (klass)->finalize = rc_document_finalize;
  for (guint i = 0; i < N_SIGNALS; i++)
    signals[i] = g_signal_new (NAMES[i], RC_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

/* A plan found by a thread: the first answer of this state or of one before it, or a better one. */
static void
on_told (RcOutcome *outcome, const GError *fault, gpointer data)
{
  RcDocument *self = data;

  if (outcome || fault)
    g_clear_error (&self->fault);
  if (fault)
    self->fault = g_error_copy (fault);
  if (outcome)
    {
      g_clear_pointer (&self->outcome, rc_outcome_unref);
      self->outcome = rc_outcome_ref (outcome);
      rc_figures_compute (self->outcome, &self->figures);
      rc_document_choose (self, rc_choice_mend (self->choice, rc_document_get_measure (self), self->outcome->plan));
    }
  g_signal_emit (self, signals[PLANNED], 0);
}

static void
rc_document_init (RcDocument *self)
{
  self->choice = rc_choice_of_thing (RC_THING_JOB, NULL);
  self->pointed = g_array_new (FALSE, FALSE, sizeof (guint));
  self->planner = rc_planner_new (on_told, self);
  rc_planner_set_improve_seconds (self->planner, IMPROVE_SECONDS);
}

static void
plan (RcDocument *self)
{
  rc_planner_plan (self->planner, self->job, self->measure, self->held, self->book);
}

static void
show_state (RcDocument *self)
{
  RcChoice mended
      = rc_choice_mend (self->choice, rc_document_get_measure (self), self->outcome ? self->outcome->plan : NULL);
  gboolean is_other = !rc_choice_equal (mended, self->choice);
  self->choice = mended;
  g_signal_emit (self, signals[EDITED], 0);
  g_signal_emit (self, signals[PLANNED], 0);
  if (is_other)
    g_signal_emit (self, signals[CHOSEN], 0);
}

RcDocument *
rc_document_new (RcStore *store, const char *job_id, GError **error)
{
  g_autoptr (RcDocument) self = g_object_new (RC_TYPE_DOCUMENT, NULL);

  self->store = store;
  if (!rc_store_get_data_version (store, &self->version, error))
    return NULL;
  self->job = rc_store_load_job (store, job_id, error);
  if (self->job == NULL)
    return NULL;
  self->book = rc_store_load_price_book (store, error);
  if (self->book == NULL)
    return NULL;
  self->held = rc_store_load_held (store, self->job, error);
  if (self->held == NULL)
    return NULL;
  self->measure = g_strdup (rc_job_get_measure (self->job, NULL)->id);
  plan (self);
  return g_steal_pointer (&self);
}

const RcJob *
rc_document_get_job (RcDocument *self)
{
  return self->job;
}

const RcMeasure *
rc_document_get_measure (RcDocument *self)
{
  return rc_job_get_measure (self->job, self->measure);
}

RcStore *
rc_document_get_store (RcDocument *self)
{
  return self->store;
}

RcOutcome *
rc_document_get_outcome (RcDocument *self)
{
  return self->outcome;
}

gboolean
rc_document_is_stale (RcDocument *self)
{
  return self->fault != NULL || rc_planner_is_late (self->planner);
}

gboolean
rc_document_is_planned (RcDocument *self)
{
  return !rc_planner_is_planning (self->planner);
}

const GError *
rc_document_get_fault (RcDocument *self)
{
  return self->fault;
}

const RcFigures *
rc_document_get_figures (RcDocument *self)
{
  return self->outcome ? &self->figures : NULL;
}

const RcFigures *
rc_document_get_figures_before (RcDocument *self)
{
  return self->has_before ? &self->before : NULL;
}

gboolean
rc_document_is_settled (RcDocument *self)
{
  return rc_planner_is_settled (self->planner);
}

gboolean
rc_document_is_busy (RcDocument *self)
{
  return rc_planner_is_late (self->planner) || rc_planner_is_improving (self->planner);
}

double
rc_document_get_progress (RcDocument *self, const char **what)
{
  gboolean is_improving = rc_planner_is_improving (self->planner);

  *what = is_improving ? rc_planner_get_what (self->planner) : NULL;
  return is_improving ? rc_planner_get_share (self->planner) : -1;
}

const RcPriceBook *
rc_document_get_price_book (RcDocument *self)
{
  return self->book;
}

RcHeld *
rc_document_get_held (RcDocument *self)
{
  return self->held;
}

void
rc_document_set_improve_seconds (RcDocument *self, double seconds)
{
  rc_planner_set_improve_seconds (self->planner, seconds);
}

double
rc_document_get_improve_seconds (RcDocument *self)
{
  return rc_planner_get_improve_seconds (self->planner);
}

static void
note_before (RcDocument *self)
{
  if (self->outcome == NULL)
    return;
  self->before = self->figures;
  self->has_before = TRUE;
}

static void
replace_job (RcDocument *self, RcJob *job)
{
  rc_job_free (self->job);
  self->job = job;
  if (rc_job_get_measure (job, self->measure) == NULL)
    {
      g_free (self->measure);
      self->measure = g_strdup (rc_job_get_measure (job, NULL)->id);
    }
}

gboolean
rc_document_set_measure (RcDocument *self, const char *id)
{
  const RcMeasure *measure = rc_job_get_measure (self->job, id);

  if (measure == NULL)
    return FALSE;
  if (g_str_equal (measure->id, self->measure))
    return TRUE;
  rc_document_end_step (self);
  note_before (self);
  g_free (self->measure);
  self->measure = g_strdup (measure->id);
  plan (self);
  show_state (self);
  return TRUE;
}

/* Saves the state as one step; *has_step tells whether there was anything to save. `amends`: in place of the last. */
static gboolean
save (RcDocument *self, const RcJob *job, const char *step, gboolean amends, gboolean *has_step, GError **error)
{
  g_autofree char *now = rc_clock_dup_now ();
  gint64           before = 0, after = 0;

  if (amends)
    return rc_store_amend_job (self->store, job, step, now, has_step, error);
  if (!rc_store_get_revision (self->store, job->id, &before, error)
      || !rc_store_save_job (self->store, job, step, now, error)
      || !rc_store_get_revision (self->store, job->id, &after, error))
    return FALSE;
  *has_step = before != after;
  return TRUE;
}

/* The job as it is in the store now. */
static gboolean
load_anew (RcDocument *self, GError **error)
{
  g_autoptr (RcJob) job = rc_store_load_job (self->store, self->job->id, error);

  if (job == NULL)
    return FALSE;
  g_autoptr (RcHeld) held = rc_store_load_held (self->store, job, error);

  if (held == NULL)
    return FALSE;
  gboolean is_planned = rc_held_equal (held, self->held) && rc_job_edit_plans_alike (job, self->job);
  rc_document_end_step (self);
  if (!is_planned)
    note_before (self);
  replace_job (self, g_steal_pointer (&job));
  g_clear_pointer (&self->held, rc_held_unref);
  self->held = g_steal_pointer (&held);
  if (!is_planned)
    plan (self);
  show_state (self);
  return TRUE;
}

/* Takes the store's `fault`. Over somebody else's edit the job is loaded anew, and the fault says so. */
static gboolean
refuse (RcDocument *self, GError *fault, GError **error)
{
  if (g_error_matches (fault, RC_ERROR, RC_ERROR_CONFLICT) && load_anew (self, NULL))
    {
      g_clear_error (&fault);
      g_set_error_literal (error, RC_ERROR, RC_ERROR_CONFLICT,
                           _ ("The job was changed by another program. It is shown as it is now, without your last "
                              "change: make that again."));
    }
  else if (fault)
    g_propagate_error (error, fault);
  return FALSE;
}

gboolean
rc_document_refresh (RcDocument *self, GError **error)
{
  gint64   version = 0;
  gboolean is_current = TRUE;
  GError  *fault = NULL;

  if (!rc_store_get_data_version (self->store, &version, error) || version == self->version
      || !rc_store_is_current (self->store, self->job->id, &is_current, error))
    return FALSE;
  self->version = version;
  if (is_current || load_anew (self, &fault))
    return !is_current;
  if (!g_error_matches (fault, RC_ERROR, RC_ERROR_REFERENCE))
    {
      g_propagate_error (error, fault);
      return FALSE;
    }
  g_clear_error (&fault);
  g_set_error_literal (error, RC_ERROR, RC_ERROR_REFERENCE,
                       _ ("The job was deleted by another program. Undo brings it back, and so does the next change."));
  return FALSE;
}

gboolean
rc_document_follow_prices (RcDocument *self, GError **error)
{
  RcPriceBook *book = rc_store_load_price_book (self->store, error);

  if (book == NULL)
    return FALSE;
  g_clear_pointer (&self->book, rc_price_book_free);
  self->book = book;
  plan (self);
  g_signal_emit (self, signals[PLANNED], 0);
  return TRUE;
}

gboolean
rc_document_follow_stock (RcDocument *self, GError **error)
{
  g_autoptr (RcHeld) held = rc_store_load_held (self->store, self->job, error);

  if (held == NULL)
    return FALSE;
  if (rc_held_equal (held, self->held))
    return TRUE;
  g_clear_pointer (&self->held, rc_held_unref);
  self->held = g_steal_pointer (&held);
  plan (self);
  g_signal_emit (self, signals[PLANNED], 0);
  return TRUE;
}

/* `is_planned`: the plan is not asked for anew. */
static gboolean
commit (RcDocument *self, RcJob *job, const char *step, const char *key, gboolean is_planned, GError **error)
{
  g_autoptr (RcJob) taken = job;
  gboolean grows = key != NULL && g_strcmp0 (key, self->key) == 0, has_step = FALSE;
  GError  *fault = NULL;

  if (!save (self, taken, step, grows && self->has_step, &has_step, &fault))
    return refuse (self, fault, error);
  if (!grows && !is_planned)
    note_before (self);
  g_free (self->key);
  self->key = g_strdup (key);
  self->has_step = has_step;
  replace_job (self, g_steal_pointer (&taken));
  if (!is_planned)
    plan (self);
  show_state (self);
  return TRUE;
}

gboolean
rc_document_commit (RcDocument *self, RcJob *job, const char *step, const char *key, GError **error)
{
  return commit (self, job, step, key, FALSE, error);
}

gboolean
rc_document_commit_picture (RcDocument *self, RcJob *job, const char *step, GError **error)
{
  return commit (self, job, step, NULL, TRUE, error);
}

void
rc_document_end_step (RcDocument *self)
{
  g_clear_pointer (&self->key, g_free);
}

static gboolean
step_through (RcDocument *self, gboolean (*go) (RcStore *, const char *, char **, GError **), char **step,
              GError **error)
{
  GError *fault = NULL;

  rc_document_end_step (self);
  if (!go (self->store, self->job->id, step, &fault))
    return refuse (self, fault, error);
  return load_anew (self, error);
}

gboolean
rc_document_undo (RcDocument *self, char **step, GError **error)
{
  return step_through (self, rc_store_undo, step, error);
}

gboolean
rc_document_redo (RcDocument *self, char **step, GError **error)
{
  return step_through (self, rc_store_redo, step, error);
}

RcChoice
rc_document_get_choice (RcDocument *self)
{
  return self->choice;
}

void
rc_document_choose (RcDocument *self, RcChoice choice)
{
  if (rc_choice_equal (choice, self->choice))
    return;
  self->choice = choice;
  g_signal_emit (self, signals[CHOSEN], 0);
}

const GArray *
rc_document_get_pointed (RcDocument *self)
{
  return self->pointed;
}

void
rc_document_point_all (RcDocument *self, const GArray *pieces)
{
  guint n = pieces ? pieces->len : 0;

  if (n == self->pointed->len && (n == 0 || memcmp (pieces->data, self->pointed->data, n * sizeof (guint)) == 0))
    return;
  g_array_set_size (self->pointed, 0);
  if (n > 0)
    g_array_append_vals (self->pointed, pieces->data, n);
  g_signal_emit (self, signals[POINTED], 0);
}
