/* The short list of options: what is in it, what the options are called, which is taken. */
#include <string.h>

#include "option-list.h"
#include "option.h"
#include "plan-maker.h"

typedef struct
{
  RcMoney  cost;
  RcLength carpet, seams;
  guint    joins;
  double   pile;
  guint    merits; /* expected; 0: not in the list */
} Case;

static GPtrArray *
make_options (const Case *cases, guint n)
{
  GPtrArray *options = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_option_free);
  for (guint i = 0; i < n; i++)
    {
      RcOption *option = rc_option_new ("");
      option->cost = cases[i].cost;
      option->carpet_length = cases[i].carpet;
      option->side_seam = cases[i].seams;
      option->joins = cases[i].joins;
      option->pile_degrees = cases[i].pile;
      g_ptr_array_add (options, option);
    }
  return options;
}

static void
check_list (const Case *cases, guint n)
{
  g_autoptr (GPtrArray) options = make_options (cases, n);
  guint expected = 0;
  rc_option_list_settle (options);
  for (guint i = 0; i < n; i++)
    {
      gboolean found = FALSE;
      for (guint k = 0; k < options->len; k++)
        {
          const RcOption *option = g_ptr_array_index (options, k);
          if (option->cost == cases[i].cost && option->carpet_length == cases[i].carpet)
            {
              g_assert_cmphex (option->merits, ==, cases[i].merits);
              found = TRUE;
            }
        }
      g_assert_true (found == (cases[i].merits != 0));
      expected += cases[i].merits != 0;
    }
  g_assert_cmpuint (options->len, ==, expected);
}

static void
test_list (void)
{
  const guint all = RC_MERIT_LEAST_COST | RC_MERIT_FEWEST_SEAMS | RC_MERIT_FEWEST_JOINS | RC_MERIT_LEAST_CARPET;
  const Case  one_best[] = { { 200, 40, 9, 2, 0, 0 }, { 100, 30, 5, 1, 0, all }, { 101, 30, 5, 1, 90, 0 } };
  const Case  each_best_by_one[] = {
     { 100, 30, 20, 2, 90, RC_MERIT_LEAST_COST },
     { 120, 40, 10, 1, 90, RC_MERIT_FEWEST_SEAMS },
     { 130, 41, 15, 0, 90, RC_MERIT_FEWEST_JOINS },
     { 140, 25, 30, 4, 90, RC_MERIT_LEAST_CARPET },
     { 110, 29, 25, 3, 90, 0 }, /* best by nothing, and the one below turns the pile */
     { 125, 28, 22, 3, 180, RC_MERIT_OTHER_DIRECTION },
     { 126, 29, 22, 3, 0, 0 }, /* beaten by the one above */
  };
  const Case between[] = {
    { 100, 30, 20, 2, 90, RC_MERIT_LEAST_COST },
    { 120, 40, 10, 0, 90, RC_MERIT_FEWEST_SEAMS | RC_MERIT_FEWEST_JOINS },
    { 140, 25, 30, 4, 90, RC_MERIT_LEAST_CARPET },
    { 110, 35, 15, 1, 270, RC_MERIT_IN_BETWEEN }, /* the other way along the same axis */
  };
  check_list (one_best, G_N_ELEMENTS (one_best));
  check_list (each_best_by_one, G_N_ELEMENTS (each_best_by_one));
  check_list (between, G_N_ELEMENTS (between));
}

/* Carpet saved by breaking rules worth more than half of the cheapest plan is no option. */
static void
test_not_worth_it (void)
{
  for (RcMoney rules = 50; rules <= 51; rules++)
    {
      const Case cases[] = { { 100, 30, 20, 2, 90, 0 }, { 200, 25, 30, 4, 90, 0 } };
      g_autoptr (GPtrArray) options = make_options (cases, 2);
      RcOption *other = g_ptr_array_index (options, 1);
      other->rule_cost = rules;
      rc_option_list_settle (options);
      g_assert_cmpuint (options->len, ==, rules == 50 ? 2 : 1);
    }
}

static void
test_labels (void)
{
  static const struct
  {
    guint       merits;
    const char *name, *label;
  } cases[] = {
    { RC_MERIT_LEAST_COST, "least-cost", "Least cost" },
    { RC_MERIT_LEAST_COST | RC_MERIT_FEWEST_SEAMS | RC_MERIT_FEWEST_JOINS, "least-cost", "Least cost, fewest seams" },
    { RC_MERIT_FEWEST_JOINS | RC_MERIT_LEAST_CARPET, "fewest-joins", "Fewest joins, least carpet" },
    { RC_MERIT_LEAST_COST | RC_MERIT_FEWEST_SEAMS | RC_MERIT_FEWEST_JOINS | RC_MERIT_LEAST_CARPET, "least-cost",
      "Best in every way" },
    { RC_MERIT_WITH_THE_JOB, "with-the-job", "Best beside the rest of the job" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      RcOption *option = rc_option_new ("");
      rc_option_set_merits (option, cases[i].merits);
      g_autofree char *label = rc_option_dup_label (option);
      g_assert_cmpstr (option->name, ==, cases[i].name);
      g_assert_cmpstr (label, ==, cases[i].label);
      rc_option_free (option);
    }
}

/* Of random rooms: no option of a list beats another; costs are the sum of their parts; taken by any of its merits. */
static void
test_random_rooms (void)
{
  for (guint round = 0; round < 40; round++)
    {
      g_autoptr (RcJob) job = make_job (FT (12));
      rc_settings_init (&job->settings, &job->currency);
      RcLength width = FT (g_test_rand_int_range (8, 30)), length = FT (g_test_rand_int_range (8, 30));
      RcRoom  *room = add_rectangle (job, "room", 0, 0, width, length, "area");
      add_door (room, "D1", 0, FT (1), FT (3), IN (4), NULL)->swing = RC_SWING_IN;
      RcOpening *window = add_door (room, "W1", 1, FT (1), FT (6), 0, NULL);
      window->kind = RC_OPENING_WINDOW;
      g_autoptr (RcPlan) plan = make_plan (job);
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, 0);
      guint             index;
      for (guint i = 0; i < area_plan->options->len; i++)
        {
          const RcOption *option = g_ptr_array_index (area_plan->options, i);
          g_assert_cmpint (option->cost, ==, option->carpet_cost + option->seam_cost + option->rule_cost);
          g_assert_cmpint (option->cost, >=, option->cost_lower_bound);
          g_assert_cmpint (option->carpet_length, >=, option->length_lower_bound);
          g_assert_true (rc_area_plan_find_option (area_plan, option->name, &index));
          g_assert_cmpuint (index, ==, i);
          for (guint k = 0; k < area_plan->options->len; k++)
            g_assert_false (rc_option_beats (g_ptr_array_index (area_plan->options, k), option));
        }
      g_assert_false (rc_area_plan_find_option (area_plan, "no-such-merit", &index));
      static const char *const merits[] = { "least-cost", "fewest-seams", "fewest-joins", "least-carpet" };
      for (guint m = 0; m < G_N_ELEMENTS (merits); m++)
        g_assert_true (rc_area_plan_find_option (area_plan, merits[m], &index));

      /* What was taken before and is no longer among the options does not keep the job from being planned. */
      get_area (job, "area")->option = g_strdup ("no-such-merit");
      g_autoptr (RcPlan) again = make_plan (job);
      g_assert_cmpint (again->carpet_length, ==, plan->carpet_length);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan-options/none of the list beats another", test_list);
  g_test_add_func ("/plan-options/carpet bought with broken rules", test_not_worth_it);
  g_test_add_func ("/plan-options/called by what is good about them", test_labels);
  g_test_add_func ("/plan-options/random rooms", test_random_rooms);
  return g_test_run ();
}
