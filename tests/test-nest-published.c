/* Known values of the published sets (read from the folder RC_SHARED names; skipped without it), cuttings planted
 * without waste, and what must stay the same when a problem is put differently. */
#include <stdlib.h>
#include <string.h>

#include "bound.h"
#include "nest-cases.h"
#include "nest.h"

static RcNestAnswer *
solve (const RcNestProblem *problem, double seconds, guint64 effort)
{
  RcNestParams  params = { .seconds = seconds, .seed = 1, .effort = effort };
  RcNestAnswer *answer = rc_nest_solve (problem, &params);
  g_autoptr (GError) error = NULL;

  rc_nest_check (problem, answer, &error);
  g_assert_no_error (error);
  return answer;
}

typedef struct
{
  const char *set, *name;
  int         three_stages; /* optimum, in units of 10 mm; 0: not known */
  int         bound;        /* of the linear program over slices; 0: not known */
} Known;

/* targets.csv of the published sets: three_stage_optimum, strip_lp_bound. */
static const Known KNOWN[] = {
  { "hopper_turton_C", "C1_1", 20, 0 }, { "cgcut", "cgcut1", 25, 23 },    { "gcut", "gcut01", 1016, 1016 },
  { "gcut", "gcut05", 1297, 1222 },     { "gcut", "gcut09", 2362, 2236 }, { "gcut", "gcut02", 0, 1184 },
  { "gcut", "gcut06", 0, 2595 },        { "gcut", "gcut10", 0, 5910 },    { "gcut", "gcut11", 0, 6820 },
  { "gcut", "gcut04", 0, 2991 },        { "gcut", "gcut08", 0, 5809 },    { "cgcut", "cgcut3", 0, 652 },
};

static void
test_known_optima (void)
{
  for (guint k = 0; k < G_N_ELEMENTS (KNOWN); k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_read (KNOWN[k].set, KNOWN[k].name);
      g_autoptr (RcNestAnswer) answer = NULL;

      if (problem == NULL)
        {
          g_test_skip ("RC_SHARED names no folder with the published sets");
          return;
        }
      problem->stages = KNOWN[k].three_stages > 0 ? 3 : 0;
      answer = solve (problem, 60, 2000);
      if (KNOWN[k].three_stages > 0)
        {
          g_assert_cmpint (answer->used_length, ==, 1600 * KNOWN[k].three_stages);
          g_assert_cmpint (answer->status, ==, RC_NEST_OPTIMAL);
        }
      else
        g_assert_cmpint (answer->lower_bound, ==, 1600 * KNOWN[k].bound);
    }
}

/* Cuts a roll of `length` into levels, these into columns and these into pieces, without waste. */
static RcNestProblem *
plant (GRand *rand, RcLength width, RcLength length)
{
  RcNestProblem *problem = rc_nest_problem_new (width);

  for (RcLength along = 0; along < length;)
    {
      RcLength wanted = 160 * g_rand_int_range (rand, 20, 60), level = MIN (length - along, wanted);

      for (RcLength across = 0; across < width;)
        {
          RcLength broad = 160 * g_rand_int_range (rand, 20, 100), column = MIN (width - across, broad);
          RcLength first = g_rand_boolean (rand) ? level : 160 * (level / 160 * g_rand_int_range (rand, 30, 70) / 100);

          if (first > 0 && first < level)
            g_ptr_array_add (problem->cuts, rc_nest_cut_new ("upper", column, level - first, 1));
          g_ptr_array_add (problem->cuts, rc_nest_cut_new ("lower", column, first > 0 ? first : level, 1));
          across += column;
        }
      along += level;
    }
  return problem;
}

static void
test_planted (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (21);

  for (guint k = 0; k < 5; k++)
    {
      RcLength length = 160 * 150;
      g_autoptr (RcNestProblem) problem = plant (rand, 160 * 200, length);
      g_autoptr (RcNestAnswer) answer = solve (problem, 60, 150000);

      g_test_message ("%u pieces: %.2f %% above the planted optimum", problem->cuts->len,
                      100 * ((double)answer->used_length / (double)length - 1));
      g_assert_cmpint (answer->lower_bound, ==, length);
      g_assert_cmpint (answer->used_length * 100, <=, length * 106);
    }
}

/* Cuts a roll of `length` by straight cuts into n pieces, the largest next, without waste. */
static RcNestProblem *
plant_any (GRand *rand, RcLength width, RcLength length, guint n)
{
  RcNestProblem *problem = rc_nest_problem_new (width);

  problem->stages = 0;
  g_ptr_array_add (problem->cuts, rc_nest_cut_new ("piece", width, length, 1));
  while (problem->cuts->len < n)
    {
      RcNestCut *largest = problem->cuts->pdata[0], *part;
      gboolean   along;
      RcLength  *side, first;

      for (guint c = 1; c < problem->cuts->len; c++)
        {
          RcNestCut *cut = problem->cuts->pdata[c];

          if (cut->width * cut->length > largest->width * largest->length)
            largest = cut;
        }
      along = g_rand_int_range (rand, 0, (gint32)(largest->width + largest->length)) < largest->width;
      side = along ? &largest->width : &largest->length;
      first = *side / 160 * g_rand_int_range (rand, 20, 80) / 100 * 160;
      if (first == 0)
        continue;
      part = rc_nest_cut_new ("piece", largest->width, largest->length, 1);
      *(along ? &part->width : &part->length) -= first;
      *side = first;
      g_ptr_array_add (problem->cuts, part);
    }
  return problem;
}

/* Straight cuts in any order, so many that they are not tried exhaustively. */
static void
test_planted_bands (void)
{
  guint n_met = 0;

  for (guint32 k = 0; k < 6; k++)
    {
      g_autoptr (GRand) rand = g_rand_new_with_seed (30 + k);
      g_autoptr (RcNestProblem) problem = plant_any (rand, 160 * 50, 160 * 50, 48);
      g_autoptr (RcNestAnswer) answer = solve (problem, 60, 100000);

      g_assert_cmpint (answer->lower_bound, ==, 160 * 50);
      n_met += answer->used_length == 160 * 50;
      if (k == 0)
        {
          g_autoptr (RcNestAnswer) again = solve (problem, 60, 100000);

          g_assert_cmpint (again->used_length, ==, answer->used_length);
        }
    }
  g_test_message ("%u of 6 planted cuttings without waste are met", n_met);
  g_assert_cmpuint (n_met, >=, 4);
}

/* The same cuts in another order, or all lengths times `times`. */
static RcNestProblem *
put_differently (const RcNestProblem *problem, GRand *rand, RcLength times)
{
  RcNestProblem *other = rc_nest_problem_new (problem->roll_width * times);

  for (guint c = 0; c < problem->cuts->len; c++)
    {
      const RcNestCut *cut = problem->cuts->pdata[c];
      RcNestCut       *copy = rc_nest_cut_new (cut->label, cut->width * times, cut->length * times, cut->quantity);
      gint             at = rand != NULL ? g_rand_int_range (rand, 0, (gint32)other->cuts->len + 1) : -1;

      copy->repeat = cut->repeat * times;
      copy->phase = cut->phase * times;
      g_ptr_array_insert (other->cuts, at, copy);
    }
  return other;
}

static void
test_order_and_scale (void)
{
  const RcNestCaseStyle style = { 2, 9, 40 * 160, 160, 0, 0, TRUE, 3, FALSE };
  g_autoptr (GRand) rand = g_rand_new_with_seed (22);

  for (guint k = 0; k < 60; k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &style);
      g_autoptr (RcNestProblem) shuffled = put_differently (problem, rand, 1);
      g_autoptr (RcNestProblem) scaled = put_differently (problem, NULL, 7);
      g_autoptr (RcNestAnswer) a = solve (problem, 60, 0);
      g_autoptr (RcNestAnswer) b = solve (shuffled, 60, 0);
      g_autoptr (RcNestAnswer) c = solve (scaled, 60, 0);

      g_assert_cmpint (a->used_length, ==, b->used_length);
      g_assert_cmpint (7 * a->used_length, ==, c->used_length);
      g_assert_cmpint (rc_nest_compute_quick_length (problem), ==, rc_nest_compute_quick_length (shuffled));
      g_assert_cmpint (7 * rc_nest_compute_quick_bound (problem), ==, rc_nest_compute_quick_bound (scaled));
    }
}

/* A cutting looked at from the roll's other edge is a cutting of the same cuts. */
static void
test_mirror (void)
{
  const RcNestCaseStyle style = { 5, 40, 40 * 160, 160, 0, 0, TRUE, 3, FALSE };
  g_autoptr (GRand) rand = g_rand_new_with_seed (23);

  for (guint k = 0; k < 40; k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &style);
      g_autoptr (RcNestAnswer) answer = solve (problem, 0, 0);
      g_autoptr (GError) error = NULL;

      for (guint p = 0; p < answer->placements->len; p++)
        {
          RcNestPlacement *placement = &g_array_index (answer->placements, RcNestPlacement, p);
          placement->across = problem->roll_width - placement->across - placement->width;
        }
      for (guint s = 0; s < answer->strokes->len; s++)
        {
          RcNestStroke *stroke = &g_array_index (answer->strokes, RcNestStroke, s);

          if (stroke->along_roll)
            stroke->at = problem->roll_width - stroke->at;
          else
            {
              RcLength from = stroke->from;
              stroke->from = problem->roll_width - stroke->to;
              stroke->to = problem->roll_width - from;
            }
        }
      for (guint l = 0; l < answer->leftovers->len; l++)
        {
          RcNestLeftover *leftover = &g_array_index (answer->leftovers, RcNestLeftover, l);
          leftover->across = problem->roll_width - leftover->across - leftover->width;
        }
      rc_nest_check (problem, answer, &error);
      g_assert_no_error (error);
    }
}

static RcLength
bound_levels (const RcNestProblem *problem)
{
  RcNestClock clock = { G_MAXINT64, G_MAXUINT64, NULL, FALSE };
  g_autoptr (RcNestTask) task = rc_nest_task_new_endless (problem);
  RcLength sum = 0;

  for (guint i = 0; i < task->items->n; i++)
    sum += task->items->items[i].h + task->items->items[i].repeat;
  return rc_nest_bound_by_levels (task, sum, 0, &clock);
}

static RcLength
bound_slices (const RcNestProblem *problem)
{
  RcNestClock clock = { G_MAXINT64, G_MAXUINT64, NULL, FALSE };
  g_autoptr (RcNestTask) task = rc_nest_task_new_endless (problem);

  return rc_nest_bound_by_slices (task, 0, &clock);
}

/* Takes one cut after the other away. */
static void
assert_never_rises (RcNestProblem *problem, RcLength (*compute) (const RcNestProblem *problem))
{
  g_autoptr (GPtrArray) taken = g_ptr_array_new ();
  RcLength bound = 0;

  /* All lengths are multiples of one grid already, so a further cut cannot make the grid coarser but finer: the bound
   * without rounding is what must not fall. */
  g_ptr_array_insert (problem->cuts, 0, rc_nest_cut_new ("grid", 160, 160, 1));
  while (problem->cuts->len > 1)
    {
      RcLength now = compute (problem);

      g_assert_true (bound == 0 || now <= bound);
      bound = now;
      g_ptr_array_add (taken, g_ptr_array_steal_index (problem->cuts, problem->cuts->len - 1));
    }
  for (guint k = taken->len; k-- > 0;)
    g_ptr_array_add (problem->cuts, taken->pdata[k]);
  g_ptr_array_remove_index (problem->cuts, 0);
}

static void
test_more_cuts_never_lower_the_bound (void)
{
  const RcNestCaseStyle style = { 2, 30, 40 * 160, 160, 0, 0, FALSE, 3, FALSE };
  g_autoptr (GRand) rand = g_rand_new_with_seed (24);

  for (guint k = 0; k < 200; k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &style);

      assert_never_rises (problem, rc_nest_compute_quick_bound);
    }
}

/* Both linear programs, which at this size are solved to the end. */
static void
test_more_cuts_never_lower_the_programs (void)
{
  const RcNestCaseStyle style = { 2, 12, 40 * 160, 160, 0, 0, FALSE, 3, FALSE };
  g_autoptr (GRand) rand = g_rand_new_with_seed (77);

  for (guint k = 0; k < (g_test_slow () ? 2000 : 150); k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &style);

      assert_never_rises (problem, bound_slices);
      assert_never_rises (problem, bound_levels);
    }
}

/* A thread that waits is not at work; a part is never more than the whole. */
static void
test_clock (void)
{
  RcNestParams params = { .seconds = 0.02, .counts_work = TRUE };
  RcNestClock  work = rc_nest_clock_start (&params), part = rc_nest_clock_take_part (&work, 1), passing;

  params.counts_work = FALSE;
  passing = rc_nest_clock_start (&params);
  g_usleep (30000);
  g_assert_true (rc_nest_clock_is_over (&passing));
  g_assert_false (rc_nest_clock_is_over (&work));
  g_assert_cmpint (part.end_us, ==, work.end_us);
  while (!rc_nest_clock_is_over (&work))
    continue;
  g_assert_true (rc_nest_clock_is_over (&part));
}

/* Bound and search together take the work they were given, however little of the processor they get. */
static void
test_counted_work (void)
{
  const RcNestCaseStyle style = { 200, 200, 400 * 160, 160, 0, 0, FALSE, 3 };
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &style);
  RcNestParams params = { .seconds = 0.2, .counts_work = TRUE, .seed = 1 };
  RcNestClock  clock = { G_MAXINT64, G_MAXUINT64, NULL, TRUE };
  gint64       begin_us = rc_nest_clock_get_us (&clock), taken_us;
  g_autoptr (RcNestAnswer) answer = rc_nest_solve (problem, &params);

  taken_us = rc_nest_clock_get_us (&clock) - begin_us;
  g_test_message ("200 ms of work took %" G_GINT64_FORMAT " us", taken_us);
  g_assert_cmpint (answer->status, ==, RC_NEST_TIME_LIMIT);
  g_assert_cmpint (taken_us, >=, 200000);
  g_assert_cmpint (taken_us, <, 260000);
}

/* Against the exact search, which shares nothing with the linear program. */
static void
test_level_bound (void)
{
  const RcNestCaseStyle style = { 3, 10, 40 * 160, 160, 0, 0, TRUE, 3, FALSE };
  g_autoptr (GRand) rand = g_rand_new_with_seed (26);
  guint n_met = 0;

  for (guint k = 0; k < 300; k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &style);
      g_autoptr (RcNestAnswer) answer = solve (problem, 60, 0);
      RcLength bound = bound_levels (problem);

      g_assert_cmpint (answer->status, ==, RC_NEST_OPTIMAL);
      g_assert_cmpint (bound, <=, answer->used_length);
      n_met += bound == answer->used_length;
    }
  g_test_message ("met by %u of 300", n_met);
  g_assert_cmpuint (n_met, >=, 150);
}

/* The checker must find what is wrong. */
static void
test_checker_finds_faults (void)
{
  const RcNestCaseStyle style = { 5, 20, 40 * 160, 160, 0, 0, FALSE, 3, FALSE };
  g_autoptr (GRand) rand = g_rand_new_with_seed (25);

  for (guint k = 0; k < 200; k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_case_new (rand, &style);
      g_autoptr (RcNestAnswer) answer = solve (problem, 0, 0);
      RcNestPlacement *placement = &g_array_index (answer->placements, RcNestPlacement, 0);
      g_autoptr (GError) error = NULL;

      switch (k % 9)
        {
        case 0:
          g_array_remove_index (answer->placements, 0);
          break;
        case 1:
          placement->across = problem->roll_width - placement->width + 1;
          break;
        case 2:
          answer->used_length += 1;
          break;
        case 3:
          answer->lower_bound = answer->used_length + 1;
          break;
        case 4: /* onto another piece */
          *placement
              = (RcNestPlacement){ placement->cut,   placement->copy,  0, placement[1].across, placement[1].along,
                                   placement->width, placement->length };
          break;
        case 5: /* an edge that no stroke makes */
          g_array_set_size (answer->strokes, answer->strokes->len - 1);
          break;
        case 6:
          g_array_index (answer->strokes, RcNestStroke, answer->strokes->len / 2).at += 1;
          break;
        case 7: /* left over where a piece is cut */
          {
            RcNestLeftover rest
                = { placement->roll, placement->across, placement->along, placement->width, placement->length };

            g_array_append_val (answer->leftovers, rest);
          }
          break;
        default:
          placement->length += 160;
        }
      g_assert_false (rc_nest_check (problem, answer, &error));
      g_assert_nonnull (error);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/nest/published/known optima and bounds are met", test_known_optima);
  g_test_add_func ("/nest/planted/cuttings without waste are nearly found", test_planted);
  g_test_add_func ("/nest/planted/cuttings without waste of many cuts are met", test_planted_bands);
  g_test_add_func ("/nest/alike/order and scale change nothing", test_order_and_scale);
  g_test_add_func ("/nest/alike/a cutting holds in the mirror", test_mirror);
  g_test_add_func ("/nest/alike/more cuts never lower the bound", test_more_cuts_never_lower_the_bound);
  g_test_add_func ("/nest/alike/more cuts never lower the linear programs", test_more_cuts_never_lower_the_programs);
  g_test_add_func ("/nest/bound/no cutting is shorter than its levels", test_level_bound);
  g_test_add_func ("/nest/clock/a part of the work is counted as the whole is", test_clock);
  g_test_add_func ("/nest/clock/a search ends by its work", test_counted_work);
  g_test_add_func ("/nest/check/faults are found", test_checker_finds_faults);
  return g_test_run ();
}
