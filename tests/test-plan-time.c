/* A plan ends in the seconds that it is given, and soon after it is cancelled: a building of many areas and carpets,
 * where what each of them may take more adds up. Its clock counts the work of this program, so that it does not matter
 * how busy the machine is.
 */
#include <time.h>

#include "plan-building.h"

/* Seconds of a first answer, of which others take less than one: a sanitizer's build. */
#define SLOW_BUILD 2

/* In place of GLib's. */
gint64
g_get_monotonic_time (void)
{
  struct timespec time;
  g_assert_cmpint (clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &time), ==, 0);
  return (gint64)time.tv_sec * G_USEC_PER_SEC + time.tv_nsec / 1000;
}

/* Plans it and returns how long that took. */
static double
time_plan (const RcJob *job, const RcPlanParams *params)
{
  g_autoptr (GError) error = NULL;
  gint64 start = g_get_monotonic_time ();
  g_autoptr (RcPlan) plan = rc_plan_new (job, rc_job_get_measure (job, NULL), building_weights, NULL, params, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (plan->cuttings->len, ==, 6);
  for (guint c = 0; c < plan->cuttings->len; c++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, c);
      g_assert_true (rc_nest_check (cutting->problem, cutting->answer, &error));
      g_assert_no_error (error);
    }
  g_assert_cmpint (plan->cost_lower_bound, <=, plan->cost);
  return (double)(g_get_monotonic_time () - start) / G_USEC_PER_SEC;
}

/* The least that it can take is a first answer. Then again with the pile pinned everywhere, of which the price is
 * asked.
 */
static void
test_ends_in_time (void)
{
  g_autoptr (RcJob) job = make_building (90);
  RcPlanParams params = { .seed = 1 };
  double       first = time_plan (job, &params);
  RcMeasure   *measure = rc_job_get_measure (job, NULL);
  for (int i = 1; i <= 2; i++)
    {
      params.seconds = 0.5 * i;
      for (guint a = 0; i == 2 && a < measure->areas->len; a++)
        ((RcFloorArea *)g_ptr_array_index (measure->areas, a))->pile_degrees = 0;
      double taken = time_plan (job, &params);
      g_test_message ("%g s: %.2f s, first answer %.2f s", params.seconds, taken, first);
      g_assert_cmpfloat (taken, <, 1.1 * params.seconds + first);
    }
}

/* Threads share out what is to be planned, and one tells of what it has taken: not what is told, but how many of a kind
 * says how far it is. */
typedef struct
{
  const char *kind; /* how the names of areas or carpets begin; NULL: before it began */
  guint       nth;
} Place;

typedef struct
{
  Place         at;
  guint         n_told;
  gint64        cancelled_us;
  GCancellable *cancellable;
} Canceller;

static void
cancel_there (const RcPlanProgress *progress, gpointer user_data)
{
  Canceller *canceller = user_data;
  if (canceller->at.kind == NULL || progress->what == NULL || !g_str_has_prefix (progress->what, canceller->at.kind)
      || ++canceller->n_told != canceller->at.nth)
    return;
  canceller->cancelled_us = g_get_monotonic_time ();
  g_cancellable_cancel (canceller->cancellable);
}

static void
test_is_cancelled_soon (void)
{
  static const Place places[] = { { NULL, 0 }, { "flat-", 10 }, { "carpet-", 1 } };
  g_autoptr (RcJob) job = make_building (150);
  RcPlanParams first_answer = { .seed = 1 };
  double       first = time_plan (job, &first_answer);
  if (first > SLOW_BUILD)
    {
      g_test_skip ("this build is too slow to come to every place in its seconds");
      return;
    }
  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    {
      g_autoptr (GCancellable) cancellable = g_cancellable_new ();
      Canceller    canceller = { places[i], 0, 0, cancellable };
      RcPlanParams params = {
        .seconds = 8, .seed = 1, .cancellable = cancellable, .progress = cancel_there, .progress_data = &canceller
      };
      gint64 start = g_get_monotonic_time ();
      if (places[i].kind == NULL)
        {
          g_cancellable_cancel (cancellable);
          canceller.cancelled_us = start;
        }
      double taken = time_plan (job, &params), before = (double)(canceller.cancelled_us - start) / G_USEC_PER_SEC;
      g_test_message ("%s: %.3f s after it was cancelled, first answer %.2f s",
                      places[i].kind != NULL ? places[i].kind : "at once", taken - before, first);
      g_assert_cmpint (canceller.cancelled_us, >, 0);
      g_assert_cmpfloat (taken - before, <, 0.6 * first);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/time/ends-in-its-seconds", test_ends_in_time);
  g_test_add_func ("/plan/time/is-cancelled-soon", test_is_cancelled_soon);
  return g_test_run ();
}
