#include "blocks.h"
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
  const RcNestCaseStyle small = { 2, 4, 20 * 160, 160, 0, 0, FALSE, 3 };
  const RcNestCaseStyle larger = { 5, 7, 20 * 160, 160, 0, 0, FALSE, 3 };

  compare_with_oracle (&small, 250, 31);
  compare_with_oracle (&larger, 60, 33);
}

static void
test_repeats (void)
{
  const RcNestCaseStyle small = { 2, 3, 20 * 160, 160, 0, 0, TRUE, 3 };
  const RcNestCaseStyle larger = { 4, 4, 20 * 160, 160, 0, 0, TRUE, 3 };

  compare_with_oracle (&small, 60, 32);
  compare_with_oracle (&larger, 20, 34);
}

/* Matches, patterns across and pins on rolls: found and proved, or proved to be impossible. */
static void
compare_ties (const RcNestCaseStyle *style, guint n_cases, guint32 seed, guint n_rolls)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);
  guint n_infeasible = 0;

  for (guint k = 0; k < n_cases;)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, style);
      RcNestParams params = { .seconds = 30, .seed = 1, .effort = 2000 };
      g_autoptr (RcNestAnswer) answer = NULL;
      g_autoptr (GError) error = NULL;
      RcLength least = 0;

      if (n_rolls > 0)
        put_rolls (rand, problem, n_rolls);
      if (!rc_nest_oracle_solve_tied (problem, &least))
        continue;
      k++;
      answer = rc_nest_solve (problem, &params);
      rc_nest_check (problem, answer, &error);
      g_assert_no_error (error);
      n_infeasible += least < 0;
      g_assert_cmpint (answer->status, ==, least < 0 ? RC_NEST_INFEASIBLE : RC_NEST_OPTIMAL);
      if (least >= 0)
        g_assert_cmpint (answer->used_length, ==, least);
    }
  g_test_message ("%u cases, %u without any cutting", n_cases, n_infeasible);
}

/* Drops of one pattern: a single match is searched and proved like a phase counted from the roll. */
static void
test_only_match (void)
{
  const RcNestCaseStyle style = { 2, 4, 20 * 160, 160, 0, 0, FALSE, 3, FALSE, FALSE };
  g_autoptr (GRand) rand = g_rand_new_with_seed (37);

  for (guint k = 0; k < 30; k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &style);
      RcNestParams params = { .seconds = 30, .seed = 1 };
      g_autoptr (RcNestAnswer) answer = NULL;
      RcLength least = 0;

      for (guint c = 0; c < problem->cuts->len; c++)
        {
          RcNestCut *cut = problem->cuts->pdata[c];

          cut->repeat = 7 * 160;
          cut->phase = 3 * 160;
          cut->match = g_strdup ("room");
        }
      if (!rc_nest_oracle_solve_tied (problem, &least))
        continue;
      answer = rc_nest_solve (problem, &params);
      g_assert_cmpint (answer->status, ==, RC_NEST_OPTIMAL);
      g_assert_cmpint (answer->used_length, ==, least);
    }
}

static void
test_ties (void)
{
  const RcNestCaseStyle one = { 2, 4, 20 * 160, 160, 0, 0, TRUE, 3, FALSE, TRUE };

  compare_ties (&one, g_test_slow () ? 200 : 40, 35, 0);
  compare_ties (&one, g_test_slow () ? 100 : 24, 36, 2);
}

static void
prove_all (const RcNestCaseStyle *style, guint n_cases, guint32 seed)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);
  gint64 longest_us = 0;

  for (guint k = 0; k < n_cases; k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, style);
      RcNestParams params = { .seconds = 10, .seed = 1 };
      gint64       begin_us = g_get_monotonic_time ();
      g_autoptr (RcNestAnswer) answer = rc_nest_solve (problem, &params);

      longest_us = MAX (longest_us, g_get_monotonic_time () - begin_us);
      g_assert_cmpint (answer->status, ==, RC_NEST_OPTIMAL);
    }
  g_test_message ("the longest proof took %.3f s", (double)longest_us * 1e-6);
}

static void
test_ten_cuts (void)
{
  const RcNestCaseStyle three = { 10, 10, 40 * 160, 160, 0, 0, TRUE, 3, FALSE };
  const RcNestCaseStyle any = { 10, 10, 40 * 160, 160, 0, 0, FALSE, 0, FALSE };

  prove_all (&three, 40, 41);
  prove_all (&any, 20, 42);
}

/* The least length of some of the cuts, each of quantity 1, on a roll bought to measure. */
static RcLength
measure_some (const RcNestProblem *problem, guint32 chosen)
{
  g_autoptr (RcNestProblem) part = rc_nest_problem_new (problem->roll_width);

  for (guint c = 0; c < problem->cuts->len; c++)
    if ((chosen >> c & 1) != 0)
      {
        const RcNestCut *cut = problem->cuts->pdata[c];

        g_ptr_array_add (part->cuts, rc_nest_cut_new (cut->label, cut->width, cut->length, 1));
      }
  return part->cuts->len == 0 ? 0 : rc_nest_compute_exact_length (part, 10);
}

/* A roll with a damaged stretch: every choice of what lies before it is tried. */
static void
test_damaged (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (45);

  for (guint k = 0; k < 30; k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_problem_new (40 * 160);
      RcNestParams params = { .seconds = 60, .seed = 1, .effort = 1 };
      RcNestRoll  *roll = rc_nest_roll_new ("damaged", "A", 400 * 160, 1);
      RcLength     from = 160 * g_rand_int_range (rand, 10, 60), to = from + 160 * g_rand_int_range (rand, 1, 20);
      RcLength     least = G_MAXINT64;
      g_autoptr (RcNestAnswer) answer = NULL;
      g_autoptr (GError) error = NULL;

      for (guint c = 0; c < 6; c++)
        g_ptr_array_add (problem->cuts, rc_nest_cut_new ("cut", 160 * g_rand_int_range (rand, 5, 40),
                                                         160 * g_rand_int_range (rand, 5, 30), 1));
      rc_nest_roll_add_flaw (roll, from, to);
      g_ptr_array_add (problem->rolls, roll);
      answer = rc_nest_solve (problem, &params);
      g_assert_true (rc_nest_check (problem, answer, &error));
      for (guint32 before = 0; before < 64; before++)
        {
          RcLength first = measure_some (problem, before), rest = measure_some (problem, 63 & ~before);

          if (first <= from)
            least = MIN (least, rest > 0 ? to + rest : first);
        }
      g_assert_cmpint (answer->used_length, ==, least);
      g_assert_cmpint (answer->status, ==, RC_NEST_OPTIMAL);
    }
}

/* FALSE: two of the items overlap, or one is not inside. */
static gboolean
are_apart (const RcNestBlockItem *items, guint n, RcLength width, RcLength length)
{
  for (guint i = 0; i < n; i++)
    {
      const RcNestBlockItem *a = &items[i];

      if (a->across < 0 || a->along < 0 || a->across + a->w > width || a->along + a->h > length)
        return FALSE;
      for (guint j = 0; j < i; j++)
        if (a->across < items[j].across + items[j].w && items[j].across < a->across + a->w
            && a->along < items[j].along + items[j].h && items[j].along < a->along + a->h)
          return FALSE;
    }
  return TRUE;
}

/* Blocks built up to a waste against the search over all subsets. */
static void
test_blocks (void)
{
  const RcNestCaseStyle style = { 2, 9, 40 * 160, 160, 0, 0, FALSE, 0, FALSE };
  const RcNestClock     clock = { G_MAXINT64, G_MAXUINT64, NULL, FALSE };
  g_autoptr (GRand) rand = g_rand_new_with_seed (44);

  for (guint k = 0; k < 200; k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &style);
      RcLength          least = rc_nest_compute_exact_length (problem, 9);
      RcNestBlockItem   items[RC_NEST_MOST_BLOCK_ITEMS];
      RcNestBlocksLimit limit = { G_MAXUINT64, G_MAXUINT, &clock };
      guint             n = 0;

      for (guint c = 0; c < problem->cuts->len; c++)
        {
          const RcNestCut *cut = problem->cuts->pdata[c];

          for (guint copy = 0; copy < cut->quantity; copy++)
            items[n++] = (RcNestBlockItem){ cut->width, cut->length, 0, 0 };
        }
      g_assert_cmpint (rc_nest_blocks_fit (items, n, problem->roll_width, least - 160, &limit), ==,
                       RC_NEST_BLOCKS_CANNOT_FIT);
      g_assert_cmpint (rc_nest_blocks_fit (items, n, problem->roll_width, least, &limit), ==, RC_NEST_BLOCKS_FIT);
      g_assert_true (are_apart (items, n, problem->roll_width, least));
    }
}

/* What is reported on the way: the bound never falls, the answer never grows, and they never cross. */
typedef struct
{
  RcLength used, bound;
  guint    n;
} Progress;

static void
watch_progress (RcLength used, RcLength bound, gpointer user_data)
{
  Progress *progress = user_data;

  g_assert_cmpint (used, <=, progress->used);
  g_assert_cmpint (bound, >=, progress->bound);
  g_assert_cmpint (bound, <=, used);
  *progress = (Progress){ used, bound, progress->n + 1 };
}

static void
test_progress (void)
{
  const RcNestCaseStyle style = { 40, 40, 40 * 160, 160, 0, 0, FALSE, 3, FALSE };
  g_autoptr (GRand) rand = g_rand_new_with_seed (43);

  for (guint k = 0; k < 5; k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &style);
      Progress     progress = { G_MAXINT64, 0, 0 };
      RcNestParams params
          = { .seconds = 20, .seed = k, .effort = 3000, .progress = watch_progress, .user_data = &progress };
      g_autoptr (RcNestAnswer) answer = rc_nest_solve (problem, &params);

      g_assert_cmpuint (progress.n, >, 0);
      g_assert_cmpint (answer->used_length, ==, progress.used);
      g_assert_cmpint (answer->lower_bound, ==, progress.bound);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/nest/exact/as the integer program says, on one and two rolls", test_plain);
  g_test_add_func ("/nest/exact/as the integer program says, with repeats", test_repeats);
  g_test_add_func ("/nest/exact/as the integer program says, with matches and pins", test_ties);
  g_test_add_func ("/nest/exact/a single match is proved", test_only_match);
  g_test_add_func ("/nest/exact/ten cuts are always proved", test_ten_cuts);
  g_test_add_func ("/nest/exact/a damaged roll is cut as well as can be", test_damaged);
  g_test_add_func ("/nest/exact/blocks fit into the least length and no shorter one", test_blocks);
  g_test_add_func ("/nest/exact/progress never goes back", test_progress);
  return g_test_run ();
}
