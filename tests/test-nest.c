#include <string.h>
#include <time.h>

#include "nest-cases.h"
#include "nest.h"

/* For searches that end by their effort: parts of this no busy machine uses up before. */
#define AMPLE_S 2000

static RcNestCut *
add_cut (RcNestProblem *problem, RcLength width, RcLength length, guint quantity)
{
  RcNestCut *cut = rc_nest_cut_new ("cut", width, length, quantity);

  g_ptr_array_add (problem->cuts, cut);
  return cut;
}

static RcNestRoll *
add_roll (RcNestProblem *problem, const char *lot, RcLength length, guint count, gint64 cost_per_m)
{
  RcNestRoll *roll = rc_nest_roll_new (length > 0 ? "R" : NULL, lot, length, count);

  roll->cost_per_m = cost_per_m;
  g_ptr_array_add (problem->rolls, roll);
  return roll;
}

static void
assert_holds (const RcNestProblem *problem, const RcNestAnswer *answer)
{
  g_autoptr (GError) error = NULL;

  rc_nest_check (problem, answer, &error);
  g_assert_no_error (error);
}

static void
test_nothing (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (1000);
  g_autoptr (RcNestAnswer) answer = rc_nest_solve (problem, NULL);

  assert_holds (problem, answer);
  g_assert_cmpint (answer->used_length, ==, 0);
  g_assert_cmpint (answer->status, ==, RC_NEST_OPTIMAL);
  g_assert_cmpint (rc_nest_compute_quick_length (problem), ==, 0);
  g_assert_cmpint (rc_nest_compute_quick_bound (problem), ==, 0);
}

/* A joined fill as in the published room of 15 x 20 ft: three short pieces lie side by side in one roll width. */
static void
test_joined_fill (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (12 * RC_TICKS_PER_FOOT);
  g_autoptr (RcNestAnswer) answer = NULL;

  add_cut (problem, 12 * RC_TICKS_PER_FOOT, 20 * RC_TICKS_PER_FOOT, 1);
  add_cut (problem, 3 * RC_TICKS_PER_FOOT, 20 * RC_TICKS_PER_FOOT / 3, 3);
  answer = rc_nest_solve (problem, NULL);
  assert_holds (problem, answer);
  g_assert_cmpint (answer->used_length, ==, 20 * RC_TICKS_PER_FOOT + 20 * RC_TICKS_PER_FOOT / 3);
  g_assert_cmpint (rc_nest_compute_quick_length (problem), ==, answer->used_length);
}

/* Phase rule for the cutter, own arithmetic: need 176 in, repeat 36 in. Set match: starts 0 and 180, roll used
 * 356 in; half-drop: starts 0 and 198, roll used 374 in. */
static void
test_pattern_phases (void)
{
  for (int half_drop = 0; half_drop < 2; half_drop++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_problem_new (12 * RC_TICKS_PER_FOOT);
      g_autoptr (RcNestAnswer) answer = NULL;

      add_cut (problem, 12 * RC_TICKS_PER_FOOT, 176 * RC_TICKS_PER_INCH, 1)->repeat = 36 * RC_TICKS_PER_INCH;
      add_cut (problem, 12 * RC_TICKS_PER_FOOT, 176 * RC_TICKS_PER_INCH, 1)->repeat = 36 * RC_TICKS_PER_INCH;
      if (half_drop)
        ((RcNestCut *)problem->cuts->pdata[1])->phase = 18 * RC_TICKS_PER_INCH;
      answer = rc_nest_solve (problem, NULL);
      assert_holds (problem, answer);
      g_assert_cmpint (answer->used_length, ==, (half_drop ? 374 : 356) * RC_TICKS_PER_INCH);
    }
}

static void
test_remnants_first (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4000);
  g_autoptr (RcNestAnswer) answer = NULL;

  add_cut (problem, 4000, 3000, 2);
  add_roll (problem, "a", 9000, 1, 10);
  add_roll (problem, "a", 6500, 1, 10);
  add_roll (problem, NULL, 0, 1, 50);
  answer = rc_nest_solve (problem, NULL);
  assert_holds (problem, answer);
  g_assert_cmpuint (answer->rolls->len, ==, 1);
  g_assert_cmpint (((RcNestUse *)answer->rolls->pdata[0])->length, ==, 6500);
}

static void
test_one_lot_a_group (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4000);
  g_autoptr (RcNestAnswer) answer = NULL;

  add_cut (problem, 4000, 3000, 2)->group = g_strdup ("hall");
  add_roll (problem, "a", 4000, 1, 1);
  add_roll (problem, "b", 7000, 1, 10);
  answer = rc_nest_solve (problem, NULL);
  assert_holds (problem, answer);
  g_assert_cmpuint (answer->rolls->len, ==, 1);
  g_assert_cmpint (answer->used_length, ==, 6000);
}

static void
test_bought_in_steps (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4000);
  g_autoptr (RcNestAnswer) answer = NULL;

  add_cut (problem, 4000, 3100, 1);
  problem->buy_step = 500;
  answer = rc_nest_solve (problem, NULL);
  assert_holds (problem, answer);
  g_assert_cmpint (((RcNestUse *)answer->rolls->pdata[0])->length, ==, 3500);
  g_assert_cmpint (answer->used_length, ==, 3100);
}

/* A short length is bought as long as it is sold, in whole steps; a longer one as without. */
static void
test_bought_not_below_the_least (void)
{
  static const struct
  {
    RcLength length, step, bought;
  } rows[] = { { 3100, 0, 6000 }, { 3100, 2500, 7500 }, { 6000, 0, 6000 }, { 6100, 0, 6100 }, { 6100, 2500, 7500 } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4000);
      g_autoptr (RcNestAnswer) answer = NULL;

      add_cut (problem, 4000, rows[i].length, 1);
      problem->buy_least = 6000;
      problem->buy_step = rows[i].step;
      answer = rc_nest_solve (problem, NULL);
      assert_holds (problem, answer);
      g_assert_cmpint (((RcNestUse *)answer->rolls->pdata[0])->length, ==, rows[i].bought);
      g_assert_cmpint (answer->used_length, ==, rows[i].length);
    }
}

static void
assert_infeasible (const RcNestProblem *problem, const char *said)
{
  g_autoptr (RcNestAnswer) answer = rc_nest_solve (problem, NULL);

  assert_holds (problem, answer);
  g_assert_cmpint (answer->status, ==, RC_NEST_INFEASIBLE);
  if (strstr (answer->reason, said) == NULL)
    g_error ("“%s” does not say “%s”", answer->reason, said);
}

static void
test_too_wide (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4 * RC_TICKS_PER_M);

  add_cut (problem, 5 * RC_TICKS_PER_M, 1 * RC_TICKS_PER_M, 1);
  g_free (((RcNestCut *)problem->cuts->pdata[0])->label);
  ((RcNestCut *)problem->cuts->pdata[0])->label = g_strdup ("Hall 3");
  assert_infeasible (problem, "Hall 3 is 5.000 m");
}

static void
test_stock_too_short (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4 * RC_TICKS_PER_M);

  add_cut (problem, 3 * RC_TICKS_PER_M, 2 * RC_TICKS_PER_M, 3);
  add_roll (problem, "a", 5 * RC_TICKS_PER_M, 1, 1);
  assert_infeasible (problem, "1.000 m");
}

static void
test_no_lot_holds_group (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4 * RC_TICKS_PER_M);

  add_cut (problem, 3 * RC_TICKS_PER_M, 2 * RC_TICKS_PER_M, 3)->group = g_strdup ("Stairs");
  add_roll (problem, "a", 5 * RC_TICKS_PER_M, 1, 1);
  add_roll (problem, "b", 4 * RC_TICKS_PER_M, 1, 1);
  assert_infeasible (problem, "Stairs");
  assert_infeasible (problem, "1.000 m");
}

/* Each full width but the last takes a whole number of repeats; the one that then takes most beyond its own length goes
 * last, and nothing is shorter. */
static void
test_last_loses_nothing (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4 * RC_TICKS_PER_M);
  g_autoptr (GRand) rand = g_rand_new_with_seed (9);
  g_autoptr (RcNestAnswer) answer = NULL;
  RcLength repeat = 64 * RC_TICKS_PER_CM, sum = 0, most = 0;

  for (guint k = 0; k < 60; k++)
    {
      RcLength length = RC_TICKS_PER_CM * g_rand_int_range (rand, 200, 700),
               whole = rc_length_round_up (length, repeat);

      add_cut (problem, problem->roll_width, length, 1)->repeat = repeat;
      sum += whole;
      most = MAX (most, whole - length);
    }
  answer = rc_nest_solve (problem, NULL);
  assert_holds (problem, answer);
  g_assert_cmpint (answer->used_length, ==, sum - most);
  g_assert_cmpint (answer->status, ==, RC_NEST_OPTIMAL);
}

/* The larger lot has length enough, but in rolls too short for one of the cuts. */
static void
test_no_roll_of_lot_takes_cut (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4 * RC_TICKS_PER_M);
  RcNestCut *drop = add_cut (problem, 4 * RC_TICKS_PER_M, 5 * RC_TICKS_PER_M, 1);

  drop->group = g_strdup ("Hall");
  add_cut (problem, 4 * RC_TICKS_PER_M, 2 * RC_TICKS_PER_M, 1)->group = g_strdup ("Hall");
  add_roll (problem, "a", 3 * RC_TICKS_PER_M, 4, 1);
  add_roll (problem, "b", 6 * RC_TICKS_PER_M, 1, 1);
  assert_infeasible (problem, "Hall");
  assert_infeasible (problem, "2.000 m");
  assert_infeasible (problem, "largest, a");
}

/* Four drops of 2.1 m, each beginning where the pattern does: 3 x 2.5 m + 2.1 m = 9.6 m. */
static void
test_repeats_need_more_of_a_lot (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4 * RC_TICKS_PER_M);
  RcNestCut *drop = add_cut (problem, 4 * RC_TICKS_PER_M, 21 * RC_TICKS_PER_M / 10, 4);

  drop->group = g_strdup ("Hall");
  drop->repeat = RC_TICKS_PER_M / 2;
  add_roll (problem, "a", 9 * RC_TICKS_PER_M, 1, 1);
  add_roll (problem, "b", 3 * RC_TICKS_PER_M, 1, 1);
  assert_infeasible (problem, "Hall");
  assert_infeasible (problem, "0.600 m");
}

static void
check_many (const RcNestCaseStyle *style, guint n_cases, double seconds, guint64 effort, guint32 seed)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);
  guint n_infeasible = 0;

  for (guint k = 0; k < n_cases; k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, style);
      RcNestParams params = { .seconds = seconds, .seed = k, .effort = effort };
      g_autoptr (RcNestAnswer) answer = rc_nest_solve (problem, &params);

      assert_holds (problem, answer);
      n_infeasible += answer->status == RC_NEST_INFEASIBLE;
      if (problem->rolls->len == 0 && !style->tied)
        {
          g_assert_cmpint (answer->status, !=, RC_NEST_INFEASIBLE);
          g_assert_cmpint (rc_nest_compute_quick_bound (problem), <=, answer->used_length);
        }
    }
  g_test_message ("%u of %u cannot be cut", n_infeasible, n_cases);
}

static void
test_random_first_answers (void)
{
  const RcNestCaseStyle style = { 1, 60, 40 * 160, 160, 6, 3, TRUE, 3 };

  check_many (&style, 400, 0, 0, 11);
}

static void
test_random_searched (void)
{
  const RcNestCaseStyle style = { 1, 40, 40 * 160, 160, 6, 3, TRUE, 3 };

  check_many (&style, 100, 20, 500, 12);
}

static void
test_random_searched_any_stages (void)
{
  const RcNestCaseStyle style = { 1, 40, 40 * 160, 160, 6, 3, TRUE, 0 };

  check_many (&style, 100, 20, 500, 13);
}

static void
test_random_rough_rolls (void)
{
  const RcNestCaseStyle first = { 1, 30, 40 * 160, 160, 6, 2, TRUE, 3, TRUE };
  const RcNestCaseStyle any = { 1, 30, 40 * 160, 160, 6, 0, TRUE, 0, TRUE };

  check_many (&first, 300, 0, 0, 14);
  check_many (&first, 60, 20, 500, 15);
  check_many (&any, 60, 20, 500, 16);
}

static void
test_random_ties (void)
{
  const RcNestCaseStyle first = { 1, 30, 40 * 160, 160, 4, 2, TRUE, 3, TRUE, TRUE };
  const RcNestCaseStyle any = { 1, 30, 40 * 160, 160, 0, 0, TRUE, 0, FALSE, TRUE };

  check_many (&first, 300, 0, 0, 17);
  check_many (&first, 60, 20, 300, 18);
  check_many (&any, 100, 20, 300, 19);
}

static void
test_flaw_and_trim (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4000);
  g_autoptr (RcNestAnswer) answer = NULL;
  RcNestRoll *roll = add_roll (problem, "a", 10000, 1, 1);

  roll->trim = 100;
  rc_nest_roll_add_flaw (roll, 3500, 3600);
  add_cut (problem, 4000, 3000, 3);
  answer = rc_nest_solve (problem, NULL);
  assert_holds (problem, answer);
  g_assert_cmpint (answer->used_length, ==, 3600 + 2 * 3000);
}

static void
test_pinned (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4000);
  g_autoptr (RcNestAnswer) answer = NULL;

  add_roll (problem, "a", 5000, 1, 1);
  add_roll (problem, "a", 9000, 1, 1);
  add_cut (problem, 4000, 3000, 1)->pinned_roll = 2;
  answer = rc_nest_solve (problem, NULL);
  assert_holds (problem, answer);
  g_assert_cmpint (((RcNestUse *)answer->rolls->pdata[0])->source, ==, 1);
}

static gboolean
answers_equal (const RcNestAnswer *a, const RcNestAnswer *b)
{
  if (a->placements->len != b->placements->len || a->lower_bound != b->lower_bound)
    return FALSE;
  for (guint i = 0; i < a->placements->len; i++)
    {
      const RcNestPlacement *p = &g_array_index (a->placements, RcNestPlacement, i);
      const RcNestPlacement *q = &g_array_index (b->placements, RcNestPlacement, i);

      if (p->cut != q->cut || p->copy != q->copy || p->roll != q->roll || p->across != q->across
          || p->along != q->along)
        return FALSE;
    }
  return TRUE;
}

static void
test_same_seed_same_answer (void)
{
  const RcNestCaseStyle style = { 20, 60, 40 * 160, 160, 4, 2, TRUE, 3 };
  g_autoptr (GRand) rand = g_rand_new_with_seed (5);

  for (guint k = 0; k < 10; k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &style);
      RcNestParams params = { .seconds = AMPLE_S, .seed = k, .effort = 2000 };
      g_autoptr (RcNestAnswer) a = rc_nest_solve (problem, &params);
      g_autoptr (RcNestAnswer) b = rc_nest_solve (problem, &params);

      g_assert_true (answers_equal (a, b));
    }
}

static void
test_more_effort_is_never_worse (void)
{
  const RcNestCaseStyle style = { 20, 60, 40 * 160, 160, 0, 0, TRUE, 3 };
  g_autoptr (GRand) rand = g_rand_new_with_seed (6);

  for (guint k = 0; k < 10; k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &style);
      g_autoptr (RcNestAnswer) first = rc_nest_solve (problem, NULL);
      RcLength used = first->used_length;

      for (guint64 effort = 100; effort <= 20000; effort *= 4)
        {
          RcNestParams params = { .seconds = AMPLE_S, .seed = k, .effort = effort };
          g_autoptr (RcNestAnswer) answer = rc_nest_solve (problem, &params);

          g_assert_cmpint (answer->used_length, <=, used);
          used = answer->used_length;
        }
    }
}

/* What is paid and taken, by the values of the rolls. */
static gint64
sum_cost (const RcNestProblem *problem, const RcNestAnswer *answer)
{
  gint64 cost = 0;

  for (guint r = 0; r < answer->rolls->len; r++)
    {
      const RcNestUse  *use = answer->rolls->pdata[r];
      const RcNestRoll *roll = problem->rolls->pdata[use->source];

      cost += roll->cost_per_m * (roll->length > 0 ? use->used : use->length);
    }
  return cost;
}

static void
test_more_effort_is_never_dearer (void)
{
  const RcNestCaseStyle style = { 10, 30, 40 * 160, 160, 4, 2, TRUE, 3, TRUE, TRUE };
  g_autoptr (GRand) rand = g_rand_new_with_seed (9);

  for (guint k = 0; k < 20; k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &style);
      gint64 least = G_MAXINT64;

      for (guint64 effort = 50; effort <= 800 && problem->rolls->len > 0; effort *= 4)
        {
          RcNestParams params = { .seconds = AMPLE_S, .seed = k, .effort = effort };
          g_autoptr (RcNestAnswer) answer = rc_nest_solve (problem, &params);

          if (answer->status == RC_NEST_INFEASIBLE)
            {
              g_assert_cmpint (least, ==, G_MAXINT64);
              continue;
            }
          g_assert_cmpint (sum_cost (problem, answer), <=, least);
          least = sum_cost (problem, answer);
        }
    }
}

static gpointer
cancel_soon (gpointer cancellable)
{
  g_usleep (100000);
  g_cancellable_cancel (cancellable);
  return GSIZE_TO_POINTER ((gsize)clock ());
}

/* How long the solver goes on after a cancel, in processor time: a busy machine may keep it from its processor. */
static clock_t
cancel_one (RcNestProblem *problem)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  RcNestParams params = { .seconds = 60, .seed = 1, .cancellable = cancellable };
  GThread     *thread = g_thread_new ("cancel", cancel_soon, cancellable);
  g_autoptr (RcNestAnswer) answer = rc_nest_solve (problem, &params);
  clock_t at_end = clock (), at_cancel = (clock_t)GPOINTER_TO_SIZE (g_thread_join (thread));

  assert_holds (problem, answer);
  g_assert_true (answer->status == RC_NEST_CANCELLED || answer->status == RC_NEST_OPTIMAL);
  return at_end - at_cancel;
}

/* Many cuts, a handful that is searched exactly, several rolls, any stages. */
static void
test_cancel (void)
{
  const RcNestCaseStyle styles[] = {
    { 200, 200, 400 * 160, 160, 0, 0, FALSE, 3 },
    { 17, 17, 400 * 160, 160, 0, 0, FALSE, 3 },
    { 12, 12, 400 * 160, 160, 4, 2, FALSE, 3 },
    { 60, 60, 400 * 160, 160, 0, 0, FALSE, 0 },
  };
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);

  for (guint k = 0; k < G_N_ELEMENTS (styles); k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &styles[k]);
      double after_ms = 1000.0 * (double)cancel_one (problem) / CLOCKS_PER_SEC;

      g_test_message ("cancelled after %.1f ms", after_ms);
      g_assert_cmpfloat (after_ms, <, 20);
    }
}

static gpointer
solve_in_thread (gpointer problem)
{
  RcNestParams params = { .seconds = AMPLE_S, .seed = 3, .effort = 1500 };

  return rc_nest_solve (problem, &params);
}

static void
test_threads (void)
{
  const RcNestCaseStyle style = { 20, 40, 40 * 160, 160, 3, 0, TRUE, 3, FALSE, TRUE };
  g_autoptr (GRand) rand = g_rand_new_with_seed (8);

  for (guint k = 0; k < 6; k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &style);
      GThread *one = g_thread_new ("one", solve_in_thread, problem),
              *two = g_thread_new ("two", solve_in_thread, problem);
      g_autoptr (RcNestAnswer) a = g_thread_join (one);
      g_autoptr (RcNestAnswer) b = g_thread_join (two);

      assert_holds (problem, a);
      g_assert_true (answers_equal (a, b));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/nest/no cuts need no roll", test_nothing);
  g_test_add_func ("/nest/pieces of a fill lie side by side", test_joined_fill);
  g_test_add_func ("/nest/drops start on their pattern phase", test_pattern_phases);
  g_test_add_func ("/nest/behind the last length nothing is lost to the pattern", test_last_loses_nothing);
  g_test_add_func ("/nest/the small remnant is used first", test_remnants_first);
  g_test_add_func ("/nest/a group comes from one dye lot", test_one_lot_a_group);
  g_test_add_func ("/nest/lengths are bought in steps", test_bought_in_steps);
  g_test_add_func ("/nest/bought-not-below-the-least", test_bought_not_below_the_least);
  g_test_add_func ("/nest/infeasible/a cut wider than the roll is named", test_too_wide);
  g_test_add_func ("/nest/infeasible/the missing length of stock is told", test_stock_too_short);
  g_test_add_func ("/nest/infeasible/a group that no lot holds is named", test_no_lot_holds_group);
  g_test_add_func ("/nest/infeasible/a cut too long for every roll of a lot is named", test_no_roll_of_lot_takes_cut);
  g_test_add_func ("/nest/infeasible/repeats need more of a lot", test_repeats_need_more_of_a_lot);
  g_test_add_func ("/nest/random/first answers hold", test_random_first_answers);
  g_test_add_func ("/nest/random/searched answers hold", test_random_searched);
  g_test_add_func ("/nest/random/answers of any stages hold", test_random_searched_any_stages);
  g_test_add_func ("/nest/random/answers on rough rolls hold", test_random_rough_rolls);
  g_test_add_func ("/nest/random/answers with matches and pins hold", test_random_ties);
  g_test_add_func ("/nest/a flaw and the trimmed end are left out", test_flaw_and_trim);
  g_test_add_func ("/nest/a pinned cut comes from its roll", test_pinned);
  g_test_add_func ("/nest/the same seed gives the same answer", test_same_seed_same_answer);
  g_test_add_func ("/nest/more effort never gives a worse answer", test_more_effort_is_never_worse);
  g_test_add_func ("/nest/more effort is never dearer on rough rolls", test_more_effort_is_never_dearer);
  g_test_add_func ("/nest/two threads solve at once", test_threads);
  g_test_add_func ("/nest/a cancel is obeyed at once", test_cancel);
  return g_test_run ();
}
