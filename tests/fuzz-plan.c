/* Fuzz target of the planner: jobs read out of the bytes, with walls, doors, goods, stock and pins as awkward as they
 * may be, are refused in words or planned with a little work, and then hold what every plan holds. */
#include "fuzz-run.h"

#include "cover-check.h"
#include "job-from-bytes.h"
#include "rowcut-error.h"

static guint n_tried, n_planned;

static void
give_weights (const RcGoods *carpet, RcPlanWeights *weights, gpointer user_data)
{
  *weights = *(const RcPlanWeights *)user_data;
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  RcPlanWeights weights;
  RcPlanParams  params = { .steady = TRUE };
  g_autoptr (GError) error = NULL;
  g_autoptr (RcJob) job = make_job_from_bytes (data, size, &weights, &params.effort);
  g_autoptr (RcPlan) plan = NULL;

  /* What the planner warns of, as a bound above the cost, is a fault of its own. */
  g_log_set_always_fatal (G_LOG_LEVEL_ERROR | G_LOG_LEVEL_CRITICAL | G_LOG_LEVEL_WARNING);
  plan = rc_plan_new (job, rc_job_get_measure (job, NULL), give_weights, &weights, &params, &error);
  n_tried++;
  if (plan == NULL)
    {
      g_assert_nonnull (error);
      g_assert_true (error->domain == RC_ERROR);
      g_assert_true (g_utf8_validate (error->message, -1, NULL));
      return 0;
    }
  check_plan (plan);
  n_planned++;
  return 0;
}

#define N_SAMPLES   16
#define SAMPLE_SIZE 400

static void
add_samples (GPtrArray *into)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20);

  for (guint i = 0; i < N_SAMPLES; i++)
    {
      guint8 *sample = g_malloc (SAMPLE_SIZE);

      for (guint k = 0; k < SAMPLE_SIZE; k++)
        sample[k] = (guint8)g_rand_int_range (rand, 0, 256);
      g_ptr_array_add (into, g_bytes_new_take (sample, SAMPLE_SIZE));
    }
}

static void
check_outcomes (void)
{
  g_test_message ("%u of %u jobs planned", n_planned, n_tried);
  g_assert_cmpuint (n_planned, >=, n_tried / 3);
}

static const char *const words[] = { "\x01", "\x03\x05", "\xff", NULL };

const FuzzTarget fuzz_target = { "plan", words, 30, 3, add_samples, NULL, check_outcomes };
