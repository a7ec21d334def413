#include "nest-cases.h"
#include "nest-oracle.h"
#include "nest.h"

/* Rolls that are all stock, at one cost, so that the cheapest cutting is the one that uses least. */
static void
put_rolls (GRand *rand, RcNestProblem *problem, guint n)
{
  RcLength need = rc_nest_compute_quick_length (problem);

  for (guint r = 0; r < n; r++)
    {
      RcLength    length = 160 * (need / 160 * g_rand_int_range (rand, 30, 110) / 100 + 1);
      RcNestRoll *roll = rc_nest_roll_new ("stock", "one", length, 1);

      roll->cost_per_m = 1;
      g_ptr_array_add (problem->rolls, roll);
    }
}

static void
compare_with_oracle (const RcNestCaseStyle *style, guint n_cases, guint32 seed)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);
  guint n_infeasible = 0, n_repeats = 0;

  for (guint k = 0; k < n_cases;)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, style);
      RcNestParams params = { .seconds = 30, .seed = 1 };
      g_autoptr (RcNestAnswer) answer = NULL;
      g_autoptr (GError) error = NULL;
      RcLength least = 0;
      gboolean repeats = ((RcNestCut *)problem->cuts->pdata[0])->repeat > 0;

      if (repeats != style->repeats)
        continue;
      if (k % 2 == 1)
        put_rolls (rand, problem, 2);
      if (!rc_nest_oracle_solve (problem, &least))
        continue;
      k++;
      n_infeasible += least < 0;
      n_repeats += repeats;
      answer = rc_nest_solve (problem, &params);
      rc_nest_check (problem, answer, &error);
      g_assert_no_error (error);
      if (least < 0)
        g_assert_cmpint (answer->status, ==, RC_NEST_INFEASIBLE);
      else
        {
          g_assert_cmpint (answer->status, ==, RC_NEST_OPTIMAL);
          g_assert_cmpint (answer->used_length, ==, least);
        }
    }
  g_test_message ("%u cases, %u of them with repeats, %u without any cutting", n_cases, n_repeats, n_infeasible);
}

static void
test_plain (void)
{
  const RcNestCaseStyle small = { 2, 5, 20 * 160, 160, 0, 0, FALSE, 3 };

  compare_with_oracle (&small, 250, 31);
}

static void
test_repeats (void)
{
  const RcNestCaseStyle small = { 2, 3, 20 * 160, 160, 0, 0, TRUE, 3 };
  const RcNestCaseStyle larger = { 4, 4, 20 * 160, 160, 0, 0, TRUE, 3 };

  compare_with_oracle (&small, 46, 32);
  compare_with_oracle (&larger, 4, 34);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/nest/exact/as the integer program says, on one and two rolls", test_plain);
  g_test_add_func ("/nest/exact/as the integer program says, with repeats", test_repeats);
  return g_test_run ();
}
