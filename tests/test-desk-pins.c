/* What the desk pins and unpins, without a display. The layouts are our own. */
#include <string.h>

#include "pin-edit.h"
#include "plan-maker.h"

/* A room 15 ft by 20 ft, pile along its length, 12 ft carpet, a seam 12 ft from its left wall: a drop and a fill of 3
 * ft, which is joined of pieces (the room of hasslefreeflooring.com's "Carpet seams"). Carpet from one roll of stock.
 */
static RcJob *
make_room (void)
{
  static const RcPoint SEAM[] = { { FT (112), FT (54) }, { FT (112), FT (66) } };
  RcJob               *job = make_job (FT (12));
  RcRoll              *roll = rc_roll_new ("R-1", "carpet", FT (60));
  RcPin               *pin = rc_pin_new (RC_PIN_SEAM, "room");

  rc_settings_init (&job->settings, &job->currency);
  add_rectangle (job, "room", FT (100), FT (50), FT (15), FT (20), "area");
  RcFloorArea *area = get_area (job, "area");
  area->pile_degrees = 90;
  /* The room's outline stands in the house, so its own coordinates are the house's. */
  g_array_append_vals (pin->points, SEAM, 2);
  g_ptr_array_add (area->pins, pin);
  g_ptr_array_add (job->rolls, roll);
  return job;
}

static const RcAreaPlan *
get_area_plan (const RcPlan *plan)
{
  return g_ptr_array_index (plan->areas, 0);
}

static guint
find_joined_piece (const RcPlan *plan)
{
  for (guint i = 0; i < plan->pieces->len; i++)
    if (((RcPiece *)g_ptr_array_index (plan->pieces, i))->fill > 0)
      return ((RcPiece *)g_ptr_array_index (plan->pieces, i))->number;
  return 0;
}

static guint
count_joins (const RcPlan *plan)
{
  return rc_area_plan_get_chosen (get_area_plan (plan))->joins;
}

/* What is pinned of a piece as it lies is kept by the next plan, to the last join; unpinned, all is as before. */
static void
test_piece (void)
{
  g_autoptr (RcJob) job = make_room ();
  g_autoptr (RcPlan) plan = make_plan_within (job, 0.05);
  RcFloorArea *area = get_area (job, "area");
  guint        number = find_joined_piece (plan), joins = count_joins (plan);
  const char  *roll = NULL;

  g_assert_cmpuint (number, >, 0);
  g_assert_cmpuint (joins, >, 0);
  g_assert_false (rc_pin_edit_unpin_piece (plan, number, area));
  g_assert_true (rc_pin_edit_pin_piece (plan, number, area, &roll));
  g_assert_cmpstr (roll, ==, "R-1");
  g_assert_cmpuint (area->pins->len, ==, 3);
  const RcPin *split = g_ptr_array_index (area->pins, 1), *held = g_ptr_array_index (area->pins, 2);
  g_assert_cmpint (split->kind, ==, RC_PIN_SPLIT);
  g_assert_cmpuint (split->points->len, ==, 1 + joins);
  g_assert_cmpint (held->kind, ==, RC_PIN_ROLL);
  g_assert_cmpstr (held->roll, ==, "R-1");
  /* Once more is no more. */
  g_assert_true (rc_pin_edit_pin_piece (plan, number, area, NULL));
  g_assert_cmpuint (area->pins->len, ==, 3);

  g_autoptr (RcPlan) again = make_plan_within (job, 0.05);
  g_assert_cmpuint (count_joins (again), ==, joins);
  for (guint i = 0; i < area->pins->len; i++)
    {
      g_assert_true (rc_pin_check (g_ptr_array_index (area->pins, i), NULL));
      g_assert_null (g_array_index (get_area_plan (again)->pins, RcPinResult, i).unmet);
    }
  g_assert_true (rc_pin_edit_unpin_piece (again, find_joined_piece (again), area));
  g_assert_cmpuint (area->pins->len, ==, 1);
}

/* Another area's piece, a piece that is not there: nothing is changed. */
static void
test_no_piece (void)
{
  g_autoptr (RcJob) job = make_room ();
  g_autoptr (RcPlan) plan = make_plan (job);
  RcFloorArea *area = get_area (job, "area"), *other = rc_floor_area_new ("other", "Other");

  g_assert_false (rc_pin_edit_pin_piece (plan, 99, area, NULL));
  g_assert_false (rc_pin_edit_pin_piece (plan, 1, other, NULL));
  g_assert_false (rc_pin_edit_unpin_piece (plan, 99, area));
  g_assert_cmpuint (area->pins->len, ==, 1);
  g_assert_cmpuint (other->pins->len, ==, 0);
  rc_floor_area_free (other);
}

static void
test_remove (void)
{
  g_autoptr (RcJob) job = make_room ();
  RcFloorArea *area = get_area (job, "area");

  g_assert_cmpuint (rc_pin_edit_get_n (area), ==, 2);
  g_assert_true (rc_pin_edit_remove (area, 0));
  g_assert_true (rc_pin_edit_remove (area, 0)); /* the pile direction */
  g_assert_cmpint (area->pile_degrees, ==, -1);
  for (guint i = 0; i < 4; i++)
    g_assert_false (rc_pin_edit_remove (area, i));
}

static void
test_words (void)
{
  g_autoptr (RcJob) job = make_room ();
  const RcMeasure *measure = rc_job_get_measure (job, NULL);
  RcFloorArea     *area = get_area (job, "area");
  RcPinResult      free_of_cost = { .cost_known = TRUE }, dear = { .cost_known = TRUE, .cost = 1234 };
  RcPinResult      unmet = { .unmet = (char *)"Pin 1 is not kept: it contradicts pin 2" };
  g_autofree char *plain = rc_pin_edit_dup_words (measure, area, 0, NULL, &job->currency);
  g_autofree char *nothing = rc_pin_edit_dup_words (measure, area, 1, &free_of_cost, &job->currency);
  g_autofree char *costs = rc_pin_edit_dup_words (measure, area, 0, &dear, &job->currency);
  g_autofree char *not_kept = rc_pin_edit_dup_words (measure, area, 0, &unmet, &job->currency);
  g_autofree char *money = rc_money_format (1234, &job->currency);

  g_assert_nonnull (strstr (plain, "seam line"));
  g_assert_null (strstr (plain, "costs"));
  g_assert_cmpstr (nothing, ==, "Pile direction: costs nothing");
  g_assert_nonnull (strstr (costs, money));
  g_assert_cmpstr (not_kept, ==, unmet.unmet);
  area->pile_degrees = -1;
  g_assert_null (rc_pin_edit_dup_words (measure, area, 1, NULL, &job->currency));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/desk-pins/a piece is pinned as it lies", test_piece);
  g_test_add_func ("/desk-pins/no piece, no pin", test_no_piece);
  g_test_add_func ("/desk-pins/unpinning", test_remove);
  g_test_add_func ("/desk-pins/words", test_words);
  return g_test_run ();
}
