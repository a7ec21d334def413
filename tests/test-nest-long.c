/* A roll that is bought is no longer than the mill rolls it: more than that comes from several.
 */
#include "nest-cases.h"
#include "nest-oracle.h"
#include "nest.h"
#include "rounds.h"

/* Longest rolls that mills send are some 30 m. Common practice, no source. */
#define LONGEST (30 * RC_TICKS_PER_M)

static RcLength
find_longest (const RcNestProblem *problem)
{
  RcLength longest = 0;

  for (guint c = 0; c < problem->cuts->len; c++)
    longest = MAX (longest, ((RcNestCut *)problem->cuts->pdata[c])->length);
  return longest;
}

static guint
count_bought (const RcNestProblem *problem, const RcNestAnswer *answer)
{
  guint n = 0;

  for (guint r = 0; r < answer->rolls->len; r++)
    {
      const RcNestUse *use = answer->rolls->pdata[r];

      n += problem->rolls->len == 0 || ((RcNestRoll *)problem->rolls->pdata[use->source])->length == 0;
    }
  return n;
}

/* The independent model has as many rolls of stock, each as long as one that is bought may be. */
static void
test_exact (void)
{
  const RcNestCaseStyle style = { 2, 6, 20 * 160, 160, 0, 0, FALSE, 3 };
  g_autoptr (GRand) rand = g_rand_new_with_seed (71);
  guint n_by_rolls[4] = { 0 };

  for (guint k = 0; k < 40;)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &style);
      g_autoptr (RcNestAnswer) answer = NULL;
      g_autoptr (GError) error = NULL;
      RcNestParams params = { .seconds = 30, .seed = 1 };
      RcLength     least = 0, most = 160 * (find_longest (problem) / 160 * g_rand_int_range (rand, 100, 250) / 100);

      for (guint r = 0; r < 3; r++)
        {
          RcNestRoll *roll = rc_nest_roll_new ("stock", "one", most, 1);

          roll->cost_per_m = 1;
          g_ptr_array_add (problem->rolls, roll);
        }
      if (!rc_nest_oracle_solve (problem, &least))
        continue;
      k++;
      g_ptr_array_set_size (problem->rolls, 0);
      problem->buy_most = most;
      answer = rc_nest_solve (problem, &params);
      g_assert_true (rc_nest_check (problem, answer, &error));
      g_assert_no_error (error);
      if (least < 0)
        {
          g_assert_cmpuint (answer->rolls->len, >, 3);
          continue;
        }
      g_assert_cmpint (answer->status, ==, RC_NEST_OPTIMAL);
      g_assert_cmpint (answer->used_length, ==, least);
      n_by_rolls[MIN (answer->rolls->len, 3)]++;
    }
  g_test_message ("%u, %u and %u cases with 1, 2 and 3 rolls", n_by_rolls[1], n_by_rolls[2], n_by_rolls[3]);
  for (guint n = 1; n <= 3; n++)
    g_assert_cmpuint (n_by_rolls[n], >, 0);
}

/* Random jobs with stock, dye lots, patterns, trims, steps and pins: whatever can be cut is cut, from rolls that are
 * sold. */
static void
test_random (void)
{
  const RcNestCaseStyle styles[] = { { 1, 40, RC_TICKS_PER_M * 4, 160, 0, 0, TRUE, 3 },
                                     { 1, 40, RC_TICKS_PER_M * 4, 160, 3, 3, FALSE, 3 },
                                     { 1, 25, RC_TICKS_PER_M * 4, 160, 3, 2, TRUE, 0, TRUE },
                                     { 1, 15, RC_TICKS_PER_M * 4, 160, 3, 2, TRUE, 3, TRUE, TRUE } };
  guint                 n_several = 0, n_cut = 0;

  for (guint k = 0; k < scale_rounds (240); k++)
    {
      g_autoptr (GRand) rand = g_rand_new_with_seed (1000 + k);
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &styles[k % G_N_ELEMENTS (styles)]);
      g_autoptr (RcNestAnswer) answer = NULL;
      g_autoptr (GError) error = NULL;
      RcNestParams params = { .seconds = k % 8 == 0 ? 0 : 30, .effort = 200, .seed = k };
      RcLength     longest = find_longest (problem);

      problem->buy_step = g_rand_boolean (rand) ? 0 : g_rand_int_range (rand, 1, 40) * 160;
      problem->buy_least = g_rand_boolean (rand) ? 0 : longest / 2;
      problem->buy_most = longest * g_rand_int_range (rand, 90, 300) / 100 + 160;
      answer = rc_nest_solve (problem, &params);
      g_assert_true (rc_nest_check (problem, answer, &error));
      g_assert_no_error (error);
      n_cut += answer->status != RC_NEST_INFEASIBLE;
      n_several += count_bought (problem, answer) > 1;
    }
  g_test_message ("%u cut, %u of them from several rolls bought", n_cut, n_several);
  g_assert_cmpuint (n_several, >, scale_rounds (240) / 20);
}

/* A large order is spread over not many more rolls than it would fill, and takes hardly more than on one. */
static void
test_large (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (5);
  g_autoptr (RcNestProblem) problem = rc_nest_case_new_trade (rand, 400);
  g_autoptr (RcNestAnswer) answer = NULL, one = NULL;
  g_autoptr (GError) error = NULL;
  RcNestParams params = { .seconds = 30, .effort = 300, .seed = 1 };

  g_ptr_array_set_size (problem->rolls, 0);
  for (guint c = 0; c < problem->cuts->len; c++)
    {
      RcNestCut *cut = problem->cuts->pdata[c];

      cut->pinned_roll = 0;
      g_clear_pointer (&cut->group, g_free);
    }
  one = rc_nest_solve (problem, &params);
  problem->buy_most = MAX (LONGEST, find_longest (problem));
  answer = rc_nest_solve (problem, &params);
  g_assert_true (rc_nest_check (problem, answer, &error));
  g_assert_no_error (error);
  g_test_message ("%.1f m on one roll, %.1f m on %u", (double)one->used_length / RC_TICKS_PER_M,
                  (double)answer->used_length / RC_TICKS_PER_M, answer->rolls->len);
  g_assert_cmpuint (answer->rolls->len, >=, (guint)(answer->used_length / problem->buy_most));
  g_assert_cmpuint (answer->rolls->len, <=, (guint)(1.15 * (double)(answer->used_length / problem->buy_most)) + 2);
  g_assert_cmpint (answer->used_length, <=, one->used_length + one->used_length / 50);
}

/* Where one roll is enough the limit changes nothing. */
static void
test_enough (void)
{
  const RcNestCaseStyle style = { 3, 6, RC_TICKS_PER_M * 4, 160, 0, 0, TRUE, 3 };
  g_autoptr (GRand) rand = g_rand_new_with_seed (9);

  for (guint k = 0; k < 20; k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &style);
      RcNestParams params = { .seconds = 30, .seed = 1 };
      g_autoptr (RcNestAnswer) free_answer = rc_nest_solve (problem, &params), answer = NULL;

      problem->buy_most = rc_nest_compute_quick_length (problem) * 2;
      answer = rc_nest_solve (problem, &params);
      g_assert_cmpint (answer->status, ==, RC_NEST_OPTIMAL);
      g_assert_cmpint (answer->used_length, ==, free_answer->used_length);
      g_assert_cmpint (answer->lower_bound, ==, free_answer->lower_bound);
      g_assert_cmpuint (answer->rolls->len, ==, 1);
    }
}

/* What no roll is long enough for is named with what would be. */
static void
test_too_long (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (RC_TICKS_PER_M * 4);
  g_autoptr (RcNestAnswer) answer = NULL;
  g_autoptr (GError) error = NULL;

  g_ptr_array_add (problem->cuts, rc_nest_cut_new ("17", RC_TICKS_PER_M * 4, RC_TICKS_PER_M * 5, 1));
  g_ptr_array_add (problem->cuts, rc_nest_cut_new ("18", RC_TICKS_PER_M * 4, LONGEST + RC_TICKS_PER_M, 1));
  problem->buy_most = LONGEST;
  answer = rc_nest_solve (problem, NULL);
  g_assert_true (rc_nest_check (problem, answer, &error));
  g_assert_cmpint (answer->status, ==, RC_NEST_INFEASIBLE);
  g_assert_nonnull (strstr (answer->reason, "18"));
  g_assert_nonnull (strstr (answer->reason, "31.000 m"));
  g_assert_nonnull (strstr (answer->reason, "30.000 m"));
}

/* The check refuses a roll longer than is sold. */
static void
test_check (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (RC_TICKS_PER_M * 4);
  g_autoptr (RcNestAnswer) answer = NULL;
  g_autoptr (GError) error = NULL;

  g_ptr_array_add (problem->cuts, rc_nest_cut_new ("1", RC_TICKS_PER_M * 4, RC_TICKS_PER_M * 10, 4));
  answer = rc_nest_solve (problem, NULL);
  g_assert_true (rc_nest_check (problem, answer, &error));
  problem->buy_most = LONGEST;
  g_assert_false (rc_nest_check (problem, answer, &error));
  g_assert_nonnull (strstr (error->message, "longer than is sold"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/nest/long/as-good-as-a-model-proves", test_exact);
  g_test_add_func ("/nest/long/random-jobs", test_random);
  g_test_add_func ("/nest/long/a-large-order", test_large);
  g_test_add_func ("/nest/long/where-one-is-enough", test_enough);
  g_test_add_func ("/nest/long/a-cut-too-long-is-named", test_too_long);
  g_test_add_func ("/nest/long/the-check-sees-it", test_check);
  return g_test_run ();
}
