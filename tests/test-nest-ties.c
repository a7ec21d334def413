/* Pins, matches, patterns across, damage, trims and lots together: answers by own arithmetic, and why there is none. */
#include <string.h>

#include "nest-cases.h"
#include "nest.h"

#define M  RC_TICKS_PER_M
#define CM RC_TICKS_PER_CM

static RcNestCut *
add_cut (RcNestProblem *problem, const char *label, RcLength width, RcLength length)
{
  RcNestCut *cut = rc_nest_cut_new (label, width, length, 1);

  g_ptr_array_add (problem->cuts, cut);
  return cut;
}

static RcNestCut *
pin (RcNestCut *cut, guint roll, RcLength along, RcLength across)
{
  cut->pinned_roll = roll;
  cut->is_along_pinned = along >= 0;
  cut->is_across_pinned = across >= 0;
  cut->along = along;
  cut->across = across;
  return cut;
}

static RcNestCut *
match (RcNestCut *cut, const char *name, RcLength repeat, RcLength phase)
{
  cut->match = g_strdup (name);
  cut->repeat = repeat;
  cut->phase = phase;
  return cut;
}

static RcNestRoll *
add_roll (RcNestProblem *problem, const char *name, const char *lot, RcLength length)
{
  RcNestRoll *roll = rc_nest_roll_new (name, lot, length, 1);

  roll->cost_per_m = 1;
  g_ptr_array_add (problem->rolls, roll);
  return roll;
}

static RcNestAnswer *
solve (const RcNestProblem *problem)
{
  RcNestParams  params = { .seconds = 5, .seed = 1, .effort = 500 };
  RcNestAnswer *answer = rc_nest_solve (problem, &params);
  g_autoptr (GError) error = NULL;

  rc_nest_check (problem, answer, &error);
  g_assert_no_error (error);
  return answer;
}

static const RcNestPlacement *
find (const RcNestAnswer *answer, guint cut)
{
  for (guint p = 0; p < answer->placements->len; p++)
    if (g_array_index (answer->placements, RcNestPlacement, p).cut == cut)
      return &g_array_index (answer->placements, RcNestPlacement, p);
  g_assert_not_reached ();
}

/* The second drop of a pattern is shifted by 30 cm against the first: 100 + gap to the next place, own arithmetic:
 * 0..100, then the first place from 100 on that is 30 (mod 64) more than 0: 158. */
static void
test_shifted (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4 * M);
  g_autoptr (RcNestAnswer) answer = NULL;

  match (add_cut (problem, "1", 4 * M, 100 * CM), "hall", 64 * CM, 7 * CM);
  match (add_cut (problem, "2", 4 * M, 99 * CM), "hall", 64 * CM, 37 * CM);
  answer = solve (problem);
  /* First 1 then 2: 158 + 99 = 257. First 2 then 1: from 99 on the first place 34 (mod 64): 162, + 100 = 262. */
  g_assert_cmpint (answer->used_length, ==, 257 * CM);
}

/* Two fills that carry a pattern on across: 100 wide at 10 (mod 50) each: at 10 and 110 touch, three fit 4 m. */
static void
test_across (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4 * M);
  g_autoptr (RcNestAnswer) answer = NULL;

  for (guint k = 0; k < 4; k++)
    {
      RcNestCut *cut = add_cut (problem, "fill", 1 * M, 2 * M);

      cut->across_repeat = 50 * CM;
      cut->across_phase = 10 * CM;
    }
  answer = solve (problem);
  g_assert_cmpint (answer->used_length, ==, 4 * M);
  for (guint c = 0; c < 4; c++)
    ((RcNestCut *)problem->cuts->pdata[c])->across_match = g_strdup ("hall");
  rc_nest_answer_free (g_steal_pointer (&answer));
  answer = solve (problem); /* the pattern may begin at the roll's edge now */
  g_assert_cmpint (answer->used_length, ==, 2 * M);
}

/* A pinned cut in the middle of a damaged roll of the lot that its group must come from. */
static void
test_together (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4 * M);
  g_autoptr (RcNestAnswer) answer = NULL;
  RcNestRoll *damaged;

  add_roll (problem, "R1", "a", 8 * M);
  damaged = add_roll (problem, "R2", "b", 12 * M);
  rc_nest_roll_add_flaw (damaged, 3 * M, 4 * M);
  damaged->trim = 10 * CM;
  damaged->trim_end = 40 * CM;
  pin (add_cut (problem, "1", 2 * M, 2 * M), 2, 5 * M, 1 * M)->group = g_strdup ("hall");
  add_cut (problem, "2", 4 * M, 285 * CM)->group = g_strdup ("hall");
  add_cut (problem, "3", 4 * M, 4 * M)->group = g_strdup ("hall");
  answer = solve (problem);
  g_assert_cmpuint (answer->rolls->len, ==, 1);
  g_assert_cmpint (find (answer, 0)->along, ==, 5 * M);
  g_assert_cmpint (find (answer, 1)->along, ==, 10 * CM);
  g_assert_cmpint (find (answer, 2)->along, ==, 7 * M);
  g_assert_cmpint (answer->used_length, ==, 11 * M);
  g_assert_cmpint (answer->lower_bound, <=, 11 * M);
}

/* A match follows the pinned cut of it. */
static void
test_match_follows_pin (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4 * M);
  g_autoptr (RcNestAnswer) answer = NULL;

  pin (match (add_cut (problem, "1", 4 * M, 1 * M), "hall", 60 * CM, 0), 0, 25 * CM, -1);
  match (add_cut (problem, "2", 4 * M, 1 * M), "hall", 60 * CM, 20 * CM);
  answer = solve (problem);
  /* From 125 on the first place 45 (mod 60). */
  g_assert_cmpint (find (answer, 1)->along, ==, 165 * CM);
}

static void
assert_says (const RcNestProblem *problem, const char *const *words)
{
  g_autoptr (RcNestAnswer) answer = rc_nest_solve (problem, NULL);

  g_assert_cmpint (answer->status, ==, RC_NEST_INFEASIBLE);
  for (guint k = 0; words[k] != NULL; k++)
    if (strstr (answer->reason, words[k]) == NULL)
      g_error ("“%s” does not say “%s”", answer->reason, words[k]);
  g_test_message ("%s", answer->reason);
}

#define ASSERT_SAYS(problem, ...) assert_says (problem, (const char *const[]){ __VA_ARGS__, NULL })

static RcNestProblem *
make_stock (void)
{
  RcNestProblem *problem = rc_nest_problem_new (4 * M);
  RcNestRoll    *roll = add_roll (problem, "R1", "a", 10 * M);

  roll->trim = 10 * CM;
  roll->trim_end = 20 * CM;
  rc_nest_roll_add_flaw (roll, 5 * M, 6 * M);
  add_roll (problem, "R2", "b", 6 * M)->width = 3 * M;
  return problem;
}

static void
test_one_pin (void)
{
  static const struct
  {
    guint       roll;
    RcLength    along, across;
    const char *said;
  } cases[] = {
    { 1, 9 * M, -1, "Hall 1 is pinned so far along that it ends 0.200 m" },
    { 1, 4 * M + 50 * CM, -1, "Hall 1 is pinned over a damaged stretch" },
    { 1, 0, -1, "Hall 1 is pinned into the end that is trimmed off" },
    { 2, -1, 210 * CM, "Hall 1 is pinned so far to the right that it leaves its roll by 0.100 m" },
    { 3, -1, -1, "Hall 1 is pinned to roll 3, but there are only 2" },
  };

  for (guint k = 0; k < G_N_ELEMENTS (cases); k++)
    {
      g_autoptr (RcNestProblem) problem = make_stock ();

      pin (add_cut (problem, "Hall 1", 1 * M, 1 * M), cases[k].roll, cases[k].along, cases[k].across);
      ASSERT_SAYS (problem, cases[k].said);
    }
}

static void
test_pin_against_pattern (void)
{
  g_autoptr (RcNestProblem) problem = make_stock ();
  RcNestCut *cut = pin (add_cut (problem, "Hall 1", 1 * M, 1 * M), 1, 1 * M, 1 * M);

  cut->repeat = 64 * CM;
  ASSERT_SAYS (problem, "Hall 1 is pinned at 1.000 m", "0.640 m", "1.280 m");
  cut->repeat = 0;
  cut->across_repeat = 30 * CM;
  ASSERT_SAYS (problem, "across the roll", "0.900 m", "1.200 m");
}

static void
test_pins_against_each_other (void)
{
  g_autoptr (RcNestProblem) problem = make_stock ();
  RcNestCut *a = pin (add_cut (problem, "Hall 1", 2 * M, 2 * M), 1, 1 * M, 0);
  RcNestCut *b = pin (add_cut (problem, "Hall 2", 1 * M, 1 * M), 1, 2 * M, 150 * CM);

  ASSERT_SAYS (problem, "Hall 1", "Hall 2", "over each other", "0.500 m", "1.000 m");
  b->along = 3 * M;
  match (a, "pattern", 60 * CM, 0);
  match (b, "pattern", 60 * CM, 0);
  ASSERT_SAYS (problem, "Hall 1", "Hall 2", "pattern", "off by 0.200 m");
  b->repeat = 50 * CM;
  ASSERT_SAYS (problem, "Hall 1", "Hall 2", "one match, pattern", "0.600 m", "0.500 m");
  a->repeat = b->repeat = 0;
  a->group = g_strdup ("Hall");
  b->group = g_strdup ("Hall");
  pin (b, 2, -1, -1);
  ASSERT_SAYS (problem, "The cuts of Hall must come from one dye lot", "Hall 1 is pinned to R1", "Hall 2 to R2");
}

/* Four cuts around a fifth like a pinwheel: no straight cut from edge to edge parts them. */
static void
test_pinwheel (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (3 * M);

  problem->stages = 0;
  pin (add_cut (problem, "1", 2 * M, 1 * M), 0, 0, 0);
  pin (add_cut (problem, "2", 1 * M, 2 * M), 0, 0, 2 * M);
  pin (add_cut (problem, "3", 2 * M, 1 * M), 0, 2 * M, 1 * M);
  pin (add_cut (problem, "4", 1 * M, 2 * M), 0, 1 * M, 0);
  ASSERT_SAYS (problem, "Straight cuts", "part cut 4");
}

static void
test_sizes (void)
{
  g_autoptr (RcNestProblem) wide = make_stock ();
  g_autoptr (RcNestProblem) group = make_stock ();

  add_cut (wide, "Hall 1", 5 * M, 1 * M);
  ASSERT_SAYS (wide, "Hall 1 is 5.000 m", "wider than every roll", "4.000 m");
  for (guint k = 0; k < 3; k++)
    add_cut (group, "Stairs", 3 * M, 3 * M + 50 * CM)->group = g_strdup ("Stairs");
  /* 10.5 m against 10 m less trims and damage: 8.7 m. */
  ASSERT_SAYS (group, "The cuts of Stairs", "10.500 m", "8.700 m", "1.800 m");
}

/* Turned about the roll's middle line, shifted by whole repeats, or in another order, a problem needs the same length.
 */
static void
test_alike (void)
{
  const RcNestCaseStyle style = { 2, 5, 20 * 160, 160, 0, 0, TRUE, 3, FALSE, TRUE };
  g_autoptr (GRand) rand = g_rand_new_with_seed (51);
  guint n_alike = 0, n_cases = 40;

  for (guint k = 0; k < n_cases; k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &style);
      g_autoptr (RcNestAnswer) answer = solve (problem);
      g_autoptr (RcNestAnswer) mirrored = NULL;

      for (guint c = 0; c < problem->cuts->len; c++)
        {
          RcNestCut *cut = problem->cuts->pdata[c];

          cut->across = problem->roll_width - cut->across - cut->width;
          cut->across_phase = problem->roll_width - cut->across_phase - cut->width;
          cut->phase += 3 * cut->repeat;
        }
      mirrored = solve (problem);
      g_assert_cmpint (answer->lower_bound == answer->used_length, ==, mirrored->lower_bound == mirrored->used_length);
      n_alike += answer->used_length == mirrored->used_length;
    }
  g_test_message ("the same length in %u of %u", n_alike, n_cases);
  g_assert_cmpuint (10 * n_alike, >=, 9 * n_cases);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/nest/ties/a drop is shifted against another", test_shifted);
  g_test_add_func ("/nest/ties/a pattern is carried on across", test_across);
  g_test_add_func ("/nest/ties/pins, damage, trims and lots together", test_together);
  g_test_add_func ("/nest/ties/a match follows its pinned cut", test_match_follows_pin);
  g_test_add_func ("/nest/ties/mirrored and shifted, the same length", test_alike);
  g_test_add_func ("/nest/ties/why/a pin off its roll, over damage, in the trim", test_one_pin);
  g_test_add_func ("/nest/ties/why/a pin against its pattern", test_pin_against_pattern);
  g_test_add_func ("/nest/ties/why/pins against each other", test_pins_against_each_other);
  g_test_add_func ("/nest/ties/why/pins that no straight cut parts", test_pinwheel);
  g_test_add_func ("/nest/ties/why/too wide, and too much for a lot", test_sizes);
  return g_test_run ();
}
