#include "cover-check.h"

#include "option.h"

static RcArea
sum_outlines (const RcOption *option, RcRegion **together)
{
  RcArea    sum = 0;
  GError   *error = NULL;
  RcRegion *all = rc_region_new ();
  for (guint i = 0; i < option->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (option->pieces, i);
      sum += rc_region_compute_area (piece->outline);
      RcRegion *more = rc_region_union (all, piece->outline, &error);
      g_assert_no_error (error);
      g_ptr_array_unref (all);
      all = more;
    }
  *together = all;
  return sum;
}

/* Square ticks, doubled, that a floor may be off by: slivers (1 mm) and corners rounded to ticks along its walls. */
static RcArea
get_tolerance (const RcRegion *floor)
{
  RcLength length = 0;
  for (guint i = 0; i < floor->len; i++)
    length += rc_ring_compute_length (((RcPolygon *)g_ptr_array_index (floor, i))->outer);
  return 2 * length * RC_SLIVER;
}

static void
check_option (const RcAreaPlan *area_plan, const RcOption *option)
{
  g_autoptr (GPtrArray) together = NULL;
  g_autoptr (GError) error = NULL;
  RcArea sum = sum_outlines (option, &together);
  RcArea tolerance = get_tolerance (area_plan->floor);
  g_assert_cmpint (ABS (sum - area_plan->floor_area), <=, tolerance);
  g_assert_cmpint (ABS (sum - rc_region_compute_area (together)), <=, tolerance); /* no overlaps */
  g_autoptr (GPtrArray) bare = rc_region_difference (area_plan->floor, together, &error);
  g_assert_no_error (error);
  g_assert_cmpint (rc_region_compute_area (bare), <=, tolerance);
  g_assert_cmpint (option->length_lower_bound, <=, option->carpet_length);
  g_assert_cmpint (option->cost_lower_bound, <=, option->cost);
  for (guint i = 0; i < option->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (option->pieces, i);
      RcBox          box = rc_region_compute_box (piece->outline), cut = piece->cut_box;
      g_assert_cmpuint (piece->number, ==, i + 1);
      g_assert_cmpfloat (piece->pile_degrees, ==, option->pile_degrees);
      g_assert_cmpint (box.x0, >=, cut.x0 - RC_SLIVER);
      g_assert_cmpint (box.x1, <=, cut.x1 + RC_SLIVER);
      g_assert_cmpint (box.y0, >=, cut.y0 - RC_SLIVER);
      g_assert_cmpint (box.y1, <=, cut.y1 + RC_SLIVER);
    }
}

void
check_plan (const RcPlan *plan)
{
  for (guint a = 0; a < plan->areas->len; a++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, a);
      for (guint o = 0; o < area_plan->options->len; o++)
        check_option (area_plan, g_ptr_array_index (area_plan->options, o));
    }
  g_assert_cmpint (plan->cost_lower_bound, <=, plan->cost);
  for (guint c = 0; c < plan->cuttings->len; c++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, c);
      g_autoptr (GError) error = NULL;
      g_assert_true (rc_nest_check (cutting->problem, cutting->answer, &error));
      g_assert_no_error (error);
    }
}
