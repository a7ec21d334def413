#include "planner.h"

#include "clock.h"

#define IMPROVE_AFTER_MS 150
#define LET_END_MS       150 /* what a first answer that a newer state has overtaken may take in all */
#define LATE_AFTER_MS    250
#define TELL_EACH        0.05 /* of a search's time */

/* What is to be planned: never changed, shared with the threads. */
typedef struct
{
  RcJob       *job;
  char        *measure;
  RcHeld      *held; /* nullable */
  RcPriceBook *book;
} State;

typedef struct
{
  State        *state;
  RcOutcome    *previous; /* nullable */
  double        seconds;  /* 0: the first answer */
  gint64        began_us;
  double        told;    /* how far it was when it last told so; its thread's own */
  RcPlanner    *planner; /* only to be passed on to the main thread */
  GCancellable *cancellable;
} Search;

/* How far a search is, on the way to the main thread. */
typedef struct
{
  RcPlanner    *planner;
  const Search *search; /* only to be compared */
  char         *what;
  double        share;
} Report;

struct _RcPlanner
{
  GObject parent_instance;

  RcPlannerTold told; /* NULL: stopped */
  gpointer      data;
  State        *state;    /* the latest; NULL: none yet */
  RcOutcome    *previous; /* nullable: what a search may begin from */
  Search       *running;  /* borrowed from its task; NULL: none that is still of use */
  gboolean      is_answered, is_late;
  double        share; /* of the search's time that has passed */
  char         *what;  /* nullable: what it looks at */
  double        improve_seconds;
  guint         improve_source, hurry_source, late_source;
};

G_DEFINE_FINAL_TYPE (RcPlanner, rc_planner, G_TYPE_OBJECT)

static void
state_clear (gpointer data)
{
  State *state = data;

  rc_job_free (state->job);
  rc_price_book_free (state->book);
  g_free (state->measure);
  g_clear_pointer (&state->held, rc_held_unref);
}

static void
state_unref (State *state)
{
  g_atomic_rc_box_release_full (state, state_clear);
}

static void
search_free (Search *search)
{
  state_unref (search->state);
  g_clear_pointer (&search->previous, rc_outcome_unref);
  g_object_unref (search->cancellable);
  g_free (search);
}

static void
report_free (gpointer data)
{
  Report *report = data;

  g_object_unref (report->planner);
  g_free (report->what);
  g_free (report);
}

static void tell (RcPlanner *self, RcOutcome *outcome, const GError *fault);

static gboolean
take_report (gpointer data)
{
  Report    *report = data;
  RcPlanner *self = report->planner;

  if (report->search != self->running)
    return G_SOURCE_REMOVE;
  self->share = report->share;
  g_free (self->what);
  self->what = g_steal_pointer (&report->what);
  tell (self, NULL, NULL);
  return G_SOURCE_REMOVE;
}

static void
report (const RcPlanProgress *progress, gpointer data)
{
  Search *search = data;

  if (search->seconds == 0 || progress->share - search->told < TELL_EACH)
    return;
  search->told = progress->share;
  const Report sent = { g_object_ref (search->planner), search, g_strdup (progress->what), progress->share };
  g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, take_report, g_memdup2 (&sent, sizeof sent), report_free);
}

static void
search_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Search          *search = data;
  const State     *state = search->state;
  GError          *error = NULL;
  g_autofree char *today = rc_clock_dup_today ();
  RcOutcome *outcome = rc_outcome_new (state->job, state->measure, state->held, state->book, today, search->seconds,
                                       search->previous, report, search, search->cancellable, &error);

  if (outcome)
    g_task_return_pointer (task, outcome, (GDestroyNotify)rc_outcome_unref);
  else
    g_task_return_error (task, error);
}

/* The search under way is of no use any more: its thread ends by itself. */
static void
abandon (RcPlanner *self)
{
  if (self->running)
    g_cancellable_cancel (self->running->cancellable);
  self->running = NULL;
  g_clear_handle_id (&self->hurry_source, g_source_remove);
}

static void
tell (RcPlanner *self, RcOutcome *outcome, const GError *fault)
{
  if (self->told)
    self->told (outcome, fault, self->data);
}

static void on_searched (GObject *source, GAsyncResult *result, gpointer data);

static void
start (RcPlanner *self, double seconds)
{
  Search *search = g_new0 (Search, 1);

  abandon (self);
  search->state = g_atomic_rc_box_acquire (self->state);
  search->previous = self->previous ? rc_outcome_ref (self->previous) : NULL;
  search->seconds = seconds;
  search->planner = self; /* the task holds it */
  search->began_us = g_get_monotonic_time ();
  search->cancellable = g_cancellable_new ();
  self->running = search;
  self->share = 0;
  g_clear_pointer (&self->what, g_free);

  g_autoptr (GTask) task = g_task_new (self, NULL, on_searched, NULL);
  g_task_set_task_data (task, search, (GDestroyNotify)search_free);
  g_task_run_in_thread (task, search_thread);
}

static gboolean
improve (gpointer data)
{
  RcPlanner *self = data;

  self->improve_source = 0;
  start (self, self->improve_seconds);
  tell (self, NULL, NULL);
  return G_SOURCE_REMOVE;
}

static void
note_answered (RcPlanner *self, gboolean is_plan)
{
  self->is_answered = TRUE;
  self->is_late = FALSE;
  g_clear_handle_id (&self->late_source, g_source_remove);
  if (is_plan && self->improve_seconds > 0)
    self->improve_source = g_timeout_add (IMPROVE_AFTER_MS, improve, self);
}

static void
on_searched (GObject *source, GAsyncResult *result, gpointer data)
{
  RcPlanner    *self = RC_PLANNER (source);
  const Search *search = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) fault = NULL;
  g_autoptr (RcOutcome) outcome = g_task_propagate_pointer (G_TASK (result), &fault);

  if (search != self->running || self->told == NULL)
    return;
  gboolean is_latest = search->state == self->state, is_first = search->seconds == 0;
  abandon (self);
  if (outcome && !is_first && !rc_outcome_is_better (outcome, self->previous))
    g_clear_pointer (&outcome, rc_outcome_unref);
  if (outcome)
    {
      g_clear_pointer (&self->previous, rc_outcome_unref);
      self->previous = rc_outcome_ref (outcome);
    }
  if (!is_latest)
    start (self, 0);
  else if (is_first)
    note_answered (self, outcome != NULL);
  tell (self, outcome, is_latest && is_first ? fault : NULL);
}

static gboolean
hurry (gpointer data)
{
  RcPlanner *self = data;

  self->hurry_source = 0;
  start (self, 0);
  return G_SOURCE_REMOVE;
}

static gboolean
note_late (gpointer data)
{
  RcPlanner *self = data;

  self->late_source = 0;
  self->is_late = TRUE;
  tell (self, NULL, NULL);
  return G_SOURCE_REMOVE;
}

void
rc_planner_plan (RcPlanner *self, const RcJob *job, const char *measure, RcHeld *held, const RcPriceBook *book)
{
  g_clear_pointer (&self->state, state_unref);
  self->state = g_atomic_rc_box_new0 (State);
  self->state->job = rc_job_copy (job);
  self->state->measure = g_strdup (measure);
  self->state->held = held ? rc_held_ref (held) : NULL;
  self->state->book = rc_price_book_copy (book);

  self->is_answered = FALSE;
  g_clear_handle_id (&self->improve_source, g_source_remove);
  if (self->late_source == 0 && !self->is_late)
    self->late_source = g_timeout_add (LATE_AFTER_MS, note_late, self);
  if (self->running == NULL || self->running->seconds > 0)
    start (self, 0);
  else if (self->hurry_source == 0)
    {
      gint64 taken_ms = (g_get_monotonic_time () - self->running->began_us) / 1000;
      self->hurry_source = g_timeout_add ((guint)MAX (0, LET_END_MS - taken_ms), hurry, self);
    }
}

double
rc_planner_get_improve_seconds (RcPlanner *self)
{
  return self->improve_seconds;
}

void
rc_planner_set_improve_seconds (RcPlanner *self, double seconds)
{
  self->improve_seconds = seconds;
  if (seconds > 0)
    return;
  g_clear_handle_id (&self->improve_source, g_source_remove);
  if (rc_planner_is_improving (self))
    abandon (self);
}

void
rc_planner_stop (RcPlanner *self)
{
  self->told = NULL;
  abandon (self);
  g_clear_handle_id (&self->improve_source, g_source_remove);
  g_clear_handle_id (&self->late_source, g_source_remove);
}

gboolean
rc_planner_is_planning (RcPlanner *self)
{
  return self->state != NULL && !self->is_answered;
}

gboolean
rc_planner_is_late (RcPlanner *self)
{
  return self->is_late;
}

gboolean
rc_planner_is_settled (RcPlanner *self)
{
  return self->is_answered && self->running == NULL && self->improve_source == 0;
}

gboolean
rc_planner_is_improving (RcPlanner *self)
{
  return self->running != NULL && self->running->seconds > 0;
}

double
rc_planner_get_share (RcPlanner *self)
{
  return self->share;
}

const char *
rc_planner_get_what (RcPlanner *self)
{
  return self->what;
}

RcPlanner *
rc_planner_new (RcPlannerTold told, gpointer data)
{
  RcPlanner *self = g_object_new (RC_TYPE_PLANNER, NULL);

  self->told = told;
  self->data = data;
  return self;
}

static void
rc_planner_dispose (GObject *object)
{
  rc_planner_stop (RC_PLANNER (object));
  G_OBJECT_CLASS (rc_planner_parent_class)->dispose (object);
}

static void
rc_planner_finalize (GObject *object)
{
  g_clear_pointer (&RC_PLANNER (object)->state, state_unref);
  g_clear_pointer (&RC_PLANNER (object)->previous, rc_outcome_unref);
  g_free (RC_PLANNER (object)->what);
  G_OBJECT_CLASS (rc_planner_parent_class)->finalize (object);
}

static void
rc_planner_class_init (RcPlannerClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rc_planner_dispose;
  G_OBJECT_CLASS (klass)->finalize = rc_planner_finalize;
}

static void
rc_planner_init (RcPlanner *self)
{
}
