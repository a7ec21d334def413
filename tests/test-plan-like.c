/* Areas that are alike are planned once: what each has is as good as what it would have had by itself.
 */
#include "like.h"
#include "plan-building.h"
#include "plan-maker.h"

static RcPlan *
plan_with (const RcJob *job, const RcPlanParams *params)
{
  g_autoptr (GError) error = NULL;
  RcPlan *plan = rc_plan_new (job, rc_job_get_measure (job, NULL), building_weights, NULL, params, &error);
  g_assert_no_error (error);
  return plan;
}

static RcPlan *
plan_first (const RcJob *job)
{
  RcPlanParams params = { .seed = 1, .steady = TRUE };
  return plan_with (job, &params);
}

/* Area `index` of the building, all rooms there but nothing else laid. */
static RcPlan *
plan_by_itself (const RcJob *job, guint index)
{
  RcJob     *alone = rc_job_copy (job); /* outlives the plan: freed by the caller through plan->job */
  RcMeasure *measure = rc_job_get_measure (alone, NULL);
  for (guint a = measure->areas->len; a-- > 0;)
    if (a != index)
      g_ptr_array_remove_index (measure->areas, a);
  return plan_first (alone);
}

static void
free_with_job (RcPlan *plan)
{
  RcJob *job = (RcJob *)plan->job;
  rc_plan_free (plan);
  rc_job_free (job);
}

/* Where two layouts are as good, which is taken depends on where the area lies. */
static void
check_as_good (const RcOption *a, const RcOption *b)
{
  g_assert_cmpstr (a->name, ==, b->name);
  g_assert_cmpint (a->cost, ==, b->cost);
  g_assert_cmpint (a->carpet_length, ==, b->carpet_length);
  g_assert_cmpint (a->side_seam + a->cross_seam, ==, b->side_seam + b->cross_seam);
  g_assert_cmpint (a->rule_cost, ==, b->rule_cost);
  g_assert_cmpuint (a->joins, ==, b->joins);
  g_assert_cmpuint (a->pieces->len, ==, b->pieces->len);
  g_assert_cmpuint (a->broken->len, ==, b->broken->len);
  g_assert_cmpfloat (a->pile_degrees, ==, b->pile_degrees);
}

/* TRUE if some room but those of the area is called that. */
static gboolean
is_another_room (const RcPlan *plan, const RcFloorArea *area, const char *name)
{
  for (guint i = 0; i < plan->measure->rooms->len; i++)
    {
      const RcRoom *room = g_ptr_array_index (plan->measure->rooms, i);
      if (rc_floor_area_find_room (area, room->id) == 0 && g_str_equal (room->name, name))
        return TRUE;
    }
  return FALSE;
}

/* Pieces and seams lie in the area's own rooms, the pieces cover its floor, and the reasons tell of its rooms. */
static void
check_own (const RcPlan *plan, const RcAreaPlan *area_plan, const RcOption *option)
{
  const RcFloorArea *area = area_plan->area;
  RcArea             covered = 0;
  g_autoptr (GError) error = NULL;
  for (guint i = 0; i < option->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (option->pieces, i);
      g_autoptr (GPtrArray) within = rc_region_intersect (piece->outline, area_plan->floor, &error);
      g_assert_no_error (error);
      covered += rc_region_compute_area (within);
      g_assert_cmpstr (piece->area, ==, area->id);
      g_assert_cmpuint (rc_floor_area_find_room (area, piece->room), >, 0);
    }
  g_assert_cmpint (covered, ==, area_plan->floor_area);
  for (guint i = 0; i < option->seams->len; i++)
    {
      const RcSeam *seam = g_ptr_array_index (option->seams, i);
      g_assert_cmpstr (seam->area, ==, area->id);
      g_assert_cmpuint (rc_floor_area_find_room (area, seam->room), >, 0);
    }
  for (guint i = 0; i < option->broken->len; i++)
    for (char **arg = ((RcBrokenRule *)g_ptr_array_index (option->broken, i))->args; *arg != NULL; arg++)
      g_assert_false (is_another_room (plan, area, *arg));
}

/* The area's own options, and those found beside the rest of the job. Returns the number of broken rules. */
static guint
check_area (const RcPlan *plan, const RcAreaPlan *a, const RcAreaPlan *alone)
{
  guint n = 0, n_broken = 0;
  for (guint i = 0; i < a->options->len; i++)
    {
      const RcOption *option = g_ptr_array_index (a->options, i);
      check_own (plan, a, option);
      if (option->merits == RC_MERIT_WITH_THE_JOB)
        continue;
      g_assert_cmpuint (n, <, alone->options->len);
      check_as_good (option, g_ptr_array_index (alone->options, n++));
      n_broken += option->broken->len;
    }
  g_assert_cmpuint (n, ==, alone->options->len);
  g_assert_cmpint (a->share_lower_bound, ==, alone->share_lower_bound);
  g_assert_cmpint (a->floor_area, ==, alone->floor_area);
  return n_broken;
}

static void
check_building (RcJob *job)
{
  g_autoptr (RcPlan) plan = plan_first (job);
  guint n_broken = 0;
  for (guint i = 0; i < plan->areas->len; i++)
    {
      RcPlan *alone = plan_by_itself (job, i);
      n_broken += check_area (plan, g_ptr_array_index (plan->areas, i), g_ptr_array_index (alone->areas, 0));
      free_with_job (alone);
    }
  g_assert_cmpuint (n_broken, >, 0); /* their reasons name rooms */
}

/* Rooms that repeat, all with names of their own. */
static void
test_like_areas (void)
{
  g_autoptr (RcJob) job = make_building (60);
  check_building (job);
}

/* Goods with a pattern, which areas of one carpet must not share. */
static void
test_like_areas_in_a_pattern (void)
{
  g_autoptr (RcJob) job = make_building (30);
  for (guint i = 0; i < job->goods->len; i++)
    {
      RcGoods *carpet = g_ptr_array_index (job->goods, i);
      carpet->repeat_length = IN (18);
      carpet->repeat_width = i % 2 ? 0 : IN (36);
    }
  check_building (job);
}

/* A quick look at a building of which nothing has changed loses nothing of what a search found. */
static void
test_as_before (void)
{
  g_autoptr (RcJob) job = make_building (60);
  g_autoptr (RcJob) same = rc_job_copy (job);
  RcPlanParams params = { .seed = 1, .effort = 500 };
  g_autoptr (RcPlan) plan = plan_with (job, &params);
  RcPlanParams quickly = { .seed = 1, .previous = plan };
  g_autoptr (RcPlan) quick = plan_with (same, &quickly);
  g_autoptr (RcPlan) first = plan_first (job);
  g_assert_cmpint (quick->cost, ==, plan->cost);
  g_assert_cmpint (plan->cost, <, first->cost);
}

/* What is told of one area can be told of another only where its names can be exchanged for the other's, and those of
 * doors stay. */
static void
test_names (void)
{
  static const char *const names[][2] = { { "Bed", "Bath" }, { "Bath", "Bed" }, { "Bed", "Bed" }, { "D1", "Bath" } };
  static const gboolean    possible[][4] = {
       { TRUE, TRUE, TRUE, TRUE }, { TRUE, TRUE, TRUE, TRUE }, { FALSE, FALSE, TRUE, FALSE }, { FALSE, FALSE, FALSE, TRUE }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (RcJob) job = make_job (FT (12));
  RcMeasure *measure = rc_job_get_measure (job, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *one = g_strdup_printf ("one-%u", i), *two = g_strdup_printf ("two-%u", i);
      g_autofree char *area = g_strdup_printf ("area-%u", i);
      RcRoom          *left = add_rectangle (job, one, 0, FT (40) * i, FT (15), FT (13), area);
      RcRoom          *right = add_rectangle (job, two, FT (15) + IN (4.5), FT (40) * i, FT (14), FT (17), area);
      add_door (left, "D1", 1, FT (5), IN (30), IN (4.5), two);
      g_free (left->name);
      g_free (right->name);
      left->name = g_strdup (names[i][0]);
      right->name = g_strdup (names[i][1]);
    }
  g_autoptr (RcHouse) house = rc_house_new (measure, &job->settings.closure, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    for (guint k = 0; k < G_N_ELEMENTS (names); k++)
      g_assert_cmpint (
          rc_like_is_possible (house, g_ptr_array_index (measure->areas, i), g_ptr_array_index (measure->areas, k)), ==,
          possible[i][k]);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/like/areas", test_like_areas);
  g_test_add_func ("/plan/like/areas-in-a-pattern", test_like_areas_in_a_pattern);
  g_test_add_func ("/plan/like/as before", test_as_before);
  g_test_add_func ("/plan/like/names", test_names);
  return g_test_run ();
}
