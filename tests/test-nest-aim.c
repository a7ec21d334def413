/* What a cutting aims at, in order: cost, the largest leftover of use, the fewest cuts right across. */
#include "nest.h"

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

/* The area of the largest leftover of the rolls that are cut into. */
static gint64
find_largest (const RcNestAnswer *answer)
{
  gint64 largest = 0;

  for (guint k = 0; k < answer->leftovers->len; k++)
    {
      const RcNestLeftover *rest = &g_array_index (answer->leftovers, RcNestLeftover, k);
      largest = MAX (largest, rest->width * rest->length);
    }
  return largest;
}

/* Cost before balance: the dear roll would leave the larger piece, the cheap one is cut all the same. */
static void
test_cost_comes_first (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4000);
  g_autoptr (RcNestAnswer) answer = NULL;

  add_cut (problem, 4000, 3000, 1);
  add_roll (problem, "a", 3500, 1, 10);
  add_roll (problem, "a", 9000, 1, 11);
  answer = rc_nest_solve (problem, NULL);
  assert_holds (problem, answer);
  g_assert_cmpint (((RcNestUse *)answer->rolls->pdata[0])->source, ==, 0);
}

/* Balance before cross cuts. Two rolls of 10 m at one value; full widths of 6, 5 and 3 m, 14 m in all. 6 + 3 beside 5
 * leaves 1 and 5 m, 5 + 3 beside 6 leaves 2 and 4 m: own arithmetic. */
static void
test_largest_balance (void)
{
  RcLength lengths[] = { 3, 5, 6 };

  for (guint turn = 0; turn < 3; turn++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4000);
      g_autoptr (RcNestAnswer) answer = NULL;

      for (guint k = 0; k < 3; k++)
        add_cut (problem, 4000, 1000 * lengths[(k + turn) % 3], 1);
      add_roll (problem, "a", 10000, 2, 1);
      answer = rc_nest_solve (problem, NULL);
      assert_holds (problem, answer);
      g_assert_cmpint (find_largest (answer), ==, G_GINT64_CONSTANT (4000) * 5000);
    }
}

/* What is too short or too narrow is waste and counts for nothing: beside a cut of 3 m in 4 m is 1 m, and the roll's
 * end of 500 counts only as long as no more is asked of a leftover. */
static void
test_leftovers_of_use (void)
{
  const struct
  {
    RcLength least_length, least_width;
    guint    n;
    gint64   largest;
  } cases[] = {
    { 0, 0, 2, G_GINT64_CONSTANT (1000) * 9000 },
    { 501, 0, 1, G_GINT64_CONSTANT (1000) * 9000 },
    { 0, 1001, 1, G_GINT64_CONSTANT (4000) * 500 },
    { 501, 1001, 0, 0 },
  };

  for (guint k = 0; k < G_N_ELEMENTS (cases); k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4000);
      g_autoptr (RcNestAnswer) answer = NULL;

      problem->least_balance = cases[k].least_length;
      problem->least_balance_width = cases[k].least_width;
      add_cut (problem, 3000, 9000, 1);
      add_roll (problem, "a", 9500, 1, 1);
      answer = rc_nest_solve (problem, NULL);
      assert_holds (problem, answer);
      g_assert_cmpuint (answer->leftovers->len, ==, cases[k].n);
      g_assert_cmpint (find_largest (answer), ==, cases[k].largest);
    }
}

/* At one cost and balance the fewest cuts right across: two of 2 x 2 and two of 2 x 1 go into one length of 3, not one
 * of 2 and one of 1; own arithmetic. */
static void
test_fewest_cross_cuts (void)
{
  for (int stages = 0; stages <= 3; stages += 3)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4000);
      g_autoptr (RcNestAnswer) answer = NULL;
      guint n_across = 0;

      problem->stages = stages;
      add_cut (problem, 2000, 2000, 2);
      add_cut (problem, 2000, 1000, 2);
      answer = rc_nest_solve (problem, NULL);
      assert_holds (problem, answer);
      g_assert_cmpint (answer->used_length, ==, 3000);
      for (guint s = 0; s < answer->strokes->len; s++)
        {
          const RcNestStroke *stroke = &g_array_index (answer->strokes, RcNestStroke, s);
          n_across += !stroke->along_roll && stroke->to - stroke->from == 4000;
        }
      g_assert_cmpuint (n_across, ==, 0);
    }
}

/* Both ends trimmed: of 5 m 4.6 m can be cut, and what is bought has its end added before it is rounded up. */
static void
test_trims_at_both_ends (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4000);
  g_autoptr (RcNestAnswer) answer = NULL;
  RcNestRoll *stock = add_roll (problem, NULL, 5000, 1, 1), *bought = add_roll (problem, NULL, 0, 1, 2);

  stock->trim = bought->trim = 100;
  stock->trim_end = bought->trim_end = 300;
  problem->buy_step = 500;
  add_cut (problem, 4000, 4600, 1);
  add_cut (problem, 4000, 4601, 1);
  answer = rc_nest_solve (problem, NULL);
  assert_holds (problem, answer);
  g_assert_cmpuint (answer->rolls->len, ==, 2);
  g_assert_cmpint (((RcNestUse *)answer->rolls->pdata[0])->used, ==, 4700);
  g_assert_cmpint (((RcNestUse *)answer->rolls->pdata[1])->used, ==, 4701);
  g_assert_cmpint (((RcNestUse *)answer->rolls->pdata[1])->length, ==, 5500);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/nest/aim/cost comes before balance", test_cost_comes_first);
  g_test_add_func ("/nest/aim/the largest balance is kept in one", test_largest_balance);
  g_test_add_func ("/nest/aim/leftovers too small are waste", test_leftovers_of_use);
  g_test_add_func ("/nest/aim/the fewest cuts go right across", test_fewest_cross_cuts);
  g_test_add_func ("/nest/both ends are trimmed", test_trims_at_both_ends);
  return g_test_run ();
}
