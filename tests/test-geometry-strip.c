/* Strips and lines through regions. */
#include "strip.h"

#include <stdlib.h>
#include <time.h>

#define FAR RC_LENGTH_MAX

static RcRegion *
region_from_rings (const RcPoint *outer, guint n_outer, const RcPoint *hole, guint n_hole)
{
  RcRegion  *region = rc_region_new ();
  RcPolygon *polygon = rc_polygon_new_take (rc_ring_new_from_points (outer, n_outer));

  if (n_hole > 0)
    g_ptr_array_add (polygon->holes, rc_ring_new_from_points (hole, n_hole));
  g_ptr_array_add (region, polygon);
  return region;
}

static RcRegion *
region_from_boxes (const RcBox *boxes, guint n_boxes)
{
  RcRegion *region = rc_region_new ();

  for (guint i = 0; i < n_boxes; i++)
    g_ptr_array_add (region, rc_polygon_new_from_box (boxes[i]));
  return region;
}

static void
assert_parts (const RcRegion *region, RcLength x0, RcLength x1, const RcBox *expected, guint n_expected)
{
  g_autoptr (GArray) parts = rc_region_slice (region, x0, x1);

  g_assert_cmpuint (parts->len, ==, n_expected);
  for (guint i = 0; i < n_expected; i++)
    {
      const RcBox *box = &g_array_index (parts, RcStripPart, i).box;

      g_assert_cmpint (box->x0, ==, expected[i].x0);
      g_assert_cmpint (box->y0, ==, expected[i].y0);
      g_assert_cmpint (box->x1, ==, expected[i].x1);
      g_assert_cmpint (box->y1, ==, expected[i].y1);
    }
}

static void
assert_intervals (GArray *intervals, const RcInterval *expected, guint n_expected)
{
  g_assert_cmpuint (intervals->len, ==, n_expected);
  for (guint i = 0; i < n_expected; i++)
    {
      g_assert_cmpint (g_array_index (intervals, RcInterval, i).from, ==, expected[i].from);
      g_assert_cmpint (g_array_index (intervals, RcInterval, i).to, ==, expected[i].to);
    }
  g_array_unref (intervals);
}

#define ASSERT_PARTS(region, x0, x1, ...)                                                                              \
  assert_parts (region, x0, x1, (const RcBox[]){ __VA_ARGS__ },                                                        \
                sizeof ((const RcBox[]){ __VA_ARGS__ }) / sizeof (RcBox))
#define ASSERT_NO_PARTS(region, x0, x1) assert_parts (region, x0, x1, NULL, 0)
#define ASSERT_INTERVALS(intervals, ...)                                                                               \
  assert_intervals (intervals, (const RcInterval[]){ __VA_ARGS__ },                                                    \
                    sizeof ((const RcInterval[]){ __VA_ARGS__ }) / sizeof (RcInterval))
#define ASSERT_NO_INTERVALS(intervals) assert_intervals (intervals, NULL, 0)

/* A U with its foot at the bottom and a column in the foot. */
static const RcPoint u_shape[]
    = { { 0, 0 }, { 30, 0 }, { 30, 20 }, { 20, 20 }, { 20, 10 }, { 10, 10 }, { 10, 20 }, { 0, 20 } };
static const RcPoint column[] = { { 12, 2 }, { 12, 8 }, { 18, 8 }, { 18, 2 } };

static RcRegion *
make_u (gboolean with_column)
{
  return region_from_rings (u_shape, G_N_ELEMENTS (u_shape), column, with_column ? G_N_ELEMENTS (column) : 0);
}

static void
test_one_part (void)
{
  g_autoptr (GPtrArray) region = make_u (FALSE);

  ASSERT_PARTS (region, 0, 30, { 0, 0, 30, 20 });
  ASSERT_PARTS (region, -5, 40, { 0, 0, 30, 20 }); /* the box is of the part, not of the strip */
  ASSERT_PARTS (region, 0, 10, { 0, 0, 10, 20 });
  ASSERT_PARTS (region, 10, 20, { 10, 0, 20, 10 }); /* the arms only touch the strip's sides */
  ASSERT_PARTS (region, 5, 25, { 5, 0, 25, 20 });
}

static void
test_outside (void)
{
  g_autoptr (GPtrArray) region = make_u (FALSE);
  g_autoptr (GPtrArray) nothing = rc_region_new ();

  ASSERT_NO_PARTS (region, 30, 40);
  ASSERT_NO_PARTS (region, -9, 0);
  ASSERT_NO_PARTS (nothing, 0, 9);
}

/* On its side the U is open to the right: its arms are two parts of a strip that misses the foot. */
static void
test_two_arms (void)
{
  g_autoptr (GPtrArray) upright = make_u (FALSE);
  g_autoptr (GPtrArray) region = rc_region_rotate (upright, 270.0);

  ASSERT_PARTS (region, 12, 18, { 12, -30, 18, -20 }, { 12, -10, 18, 0 });
  ASSERT_PARTS (region, 10, 18, { 10, -30, 18, -20 }, { 10, -10, 18, 0 });
  ASSERT_PARTS (region, 9, 18, { 9, -30, 18, 0 });
}

static void
test_round_a_hole (void)
{
  g_autoptr (GPtrArray) region = make_u (TRUE);

  ASSERT_PARTS (region, 13, 17, { 13, 0, 17, 2 }, { 13, 8, 17, 10 });
  ASSERT_PARTS (region, 12, 18, { 12, 0, 18, 2 }, { 12, 8, 18, 10 });
  ASSERT_PARTS (region, 11, 17, { 11, 0, 17, 10 });
  ASSERT_PARTS (region, 13, 19, { 13, 0, 19, 10 });
  ASSERT_PARTS (region, 0, 30, { 0, 0, 30, 20 });
}

static void
test_sloping_walls (void)
{
  /* at x = 1: 3/7 to 9/2; at x = 5: 15/7 to 27/5 */
  const RcPoint triangle[] = { { 0, 0 }, { 7, 3 }, { 2, 9 } };
  g_autoptr (GPtrArray) region = region_from_rings (triangle, 3, NULL, 0);

  ASSERT_PARTS (region, 1, 5, { 1, 0, 5, 9 });
  ASSERT_PARTS (region, 5, 6, { 5, 2, 6, 6 });
  ASSERT_PARTS (region, 6, 9, { 6, 2, 7, 5 }); /* 18/7 and 21/5 */
  ASSERT_PARTS (region, 0, 1, { 0, 0, 1, 5 });
}

/* Below zero, outwards still means away from the part. */
static void
test_sloping_walls_below_zero (void)
{
  const RcPoint triangle[] = { { 0, 0 }, { -2, -9 }, { -7, -3 } };
  g_autoptr (GPtrArray) region = region_from_rings (triangle, 3, NULL, 0);

  ASSERT_PARTS (region, -6, -5, { -6, -6, -5, -2 });
  ASSERT_PARTS (region, -9, -6, { -7, -5, -6, -2 });
}

static void
test_touching_corners (void)
{
  const RcBox   diagonal[] = { { 0, 0, 10, 10 }, { 10, 10, 20, 20 } };
  const RcBox   falling[] = { { 0, 10, 10, 20 }, { 10, 0, 20, 10 } };
  const RcPoint hourglass_left[] = { { 0, 0 }, { 10, 5 }, { 0, 10 } };
  const RcPoint hourglass_right[] = { { 10, 5 }, { 20, 0 }, { 20, 10 } };
  g_autoptr (GPtrArray) boxes = region_from_boxes (diagonal, 2);
  g_autoptr (GPtrArray) falling_boxes = region_from_boxes (falling, 2);
  g_autoptr (GPtrArray) hourglass = region_from_rings (hourglass_left, 3, NULL, 0);
  /* the hole's corner touches the wall on either side: what is left of it and right of it meets in a point only */
  const RcPoint room[] = { { 0, 0 }, { 20, 0 }, { 20, 10 }, { 0, 10 } };
  const RcPoint diamond[] = { { 10, 0 }, { 8, 5 }, { 10, 10 }, { 12, 5 } };
  g_autoptr (GPtrArray) pinched = region_from_rings (room, 4, diamond, 4);

  ASSERT_PARTS (boxes, 0, 20, { 0, 0, 10, 10 }, { 10, 10, 20, 20 });
  ASSERT_PARTS (falling_boxes, 0, 20, { 10, 0, 20, 10 }, { 0, 10, 10, 20 });
  g_ptr_array_add (hourglass, rc_polygon_new_take (rc_ring_new_from_points (hourglass_right, 3)));
  ASSERT_PARTS (hourglass, 0, 20, { 0, 0, 10, 10 }, { 10, 0, 20, 10 });
  ASSERT_PARTS (pinched, 0, 20, { 0, 0, 10, 10 }, { 10, 0, 20, 10 });
  ASSERT_PARTS (pinched, 9, 11, { 9, 0, 10, 3 }, { 10, 0, 11, 3 }, { 9, 7, 10, 10 }, { 10, 7, 11, 10 });
}

static void
test_shared_edges (void)
{
  const RcBox beside[] = { { 0, 0, 10, 10 }, { 10, 5, 20, 20 } };
  const RcBox above[] = { { 0, 0, 10, 10 }, { 3, 10, 7, 20 } };
  const RcBox corner[] = { { 0, 0, 10, 10 }, { 10, 10, 20, 20 }, { 10, 0, 20, 10 } };
  g_autoptr (GPtrArray) side = region_from_boxes (beside, 2);
  g_autoptr (GPtrArray) top = region_from_boxes (above, 2);
  g_autoptr (GPtrArray) three = region_from_boxes (corner, 3);

  ASSERT_PARTS (side, 0, 20, { 0, 0, 20, 20 });
  ASSERT_PARTS (side, 5, 10, { 5, 0, 10, 10 });
  ASSERT_PARTS (top, 0, 10, { 0, 0, 10, 20 });
  ASSERT_PARTS (top, 4, 6, { 4, 0, 6, 20 });
  ASSERT_PARTS (top, 7, 9, { 7, 0, 9, 10 });
  ASSERT_PARTS (three, 0, 20, { 0, 0, 20, 20 });
}

/* Rings written the wrong way round, and a shape with a cut only one tick wide. */
static void
test_any_orientation (void)
{
  g_autoptr (GPtrArray) region = make_u (TRUE);
  RcPolygon *polygon = g_ptr_array_index (region, 0);

  rc_ring_reverse (polygon->outer);
  ASSERT_PARTS (region, 13, 17, { 13, 0, 17, 2 }, { 13, 8, 17, 10 });
  rc_ring_reverse (g_ptr_array_index (polygon->holes, 0));
  ASSERT_PARTS (region, 13, 17, { 13, 0, 17, 2 }, { 13, 8, 17, 10 });
}

static void
test_one_tick_apart (void)
{
  const RcBox boxes[] = { { 0, 0, 100, 50 }, { 0, 51, 100, 90 } };
  const RcBox overlapping[] = { { 0, 0, 100, 51 }, { 0, 50, 100, 90 } };
  g_autoptr (GPtrArray) apart = region_from_boxes (boxes, 2);
  g_autoptr (GPtrArray) over = region_from_boxes (overlapping, 2);

  ASSERT_PARTS (apart, 10, 11, { 10, 0, 11, 50 }, { 10, 51, 11, 90 });
  ASSERT_PARTS (over, 10, 11, { 10, 0, 11, 90 }); /* corners rounded to ticks may overlap by one */
}

static void
test_largest (void)
{
  const RcPoint triangle[] = { { -FAR, -FAR }, { FAR, -FAR + 1 }, { -FAR + 1, FAR } };
  g_autoptr (GPtrArray) region = region_from_rings (triangle, 3, NULL, 0);

  ASSERT_PARTS (region, -FAR, FAR, { -FAR, -FAR, FAR, FAR });
  ASSERT_PARTS (region, 0, 1, { 0, -FAR, 1, 1 });
}

static void
test_degenerate_polygons (void)
{
  const RcPoint flat[] = { { 0, 0 }, { 10, 5 }, { 20, 10 } };
  const RcPoint upright[] = { { 5, 0 }, { 5, 10 }, { 5, 5 } };
  g_autoptr (GPtrArray) region = region_from_rings (flat, 3, upright, 3);

  g_ptr_array_add (region, rc_polygon_new ());
  g_ptr_array_add (region, rc_polygon_new_take (rc_ring_new_from_points (flat, 1)));
  ASSERT_NO_PARTS (region, 0, 20);
  ASSERT_NO_INTERVALS (rc_region_cross_line_x (region, 5));
  ASSERT_NO_INTERVALS (rc_region_cross_line_y (region, 5, 0, 20));
}

/* Lines */

static void
test_line_along_pile (void)
{
  g_autoptr (GPtrArray) region = make_u (TRUE);

  ASSERT_INTERVALS (rc_region_cross_line_x (region, 5), { 0, 20 });
  ASSERT_INTERVALS (rc_region_cross_line_x (region, 10), { 0, 10 });           /* the arm's wall is no seam */
  ASSERT_INTERVALS (rc_region_cross_line_x (region, 12), { 0, 2 }, { 8, 10 }); /* nor is the column's side */
  ASSERT_INTERVALS (rc_region_cross_line_x (region, 15), { 0, 2 }, { 8, 10 });
  ASSERT_NO_INTERVALS (rc_region_cross_line_x (region, 0));
  ASSERT_NO_INTERVALS (rc_region_cross_line_x (region, 30));
  ASSERT_NO_INTERVALS (rc_region_cross_line_x (region, 31));
}

static void
test_line_across_pile (void)
{
  g_autoptr (GPtrArray) region = make_u (TRUE);

  ASSERT_INTERVALS (rc_region_cross_line_y (region, 5, 0, 30), { 0, 12 }, { 18, 30 });
  ASSERT_INTERVALS (rc_region_cross_line_y (region, 10, 0, 30), { 0, 10 }, { 20, 30 });
  ASSERT_INTERVALS (rc_region_cross_line_y (region, 15, 3, 25), { 3, 10 }, { 20, 25 });
  ASSERT_INTERVALS (rc_region_cross_line_y (region, 15, 10, 25), { 20, 25 });
  ASSERT_NO_INTERVALS (rc_region_cross_line_y (region, 15, 10, 20));
  ASSERT_NO_INTERVALS (rc_region_cross_line_y (region, 0, 0, 30));
  ASSERT_NO_INTERVALS (rc_region_cross_line_y (region, 20, 0, 30));
}

static void
test_line_rounds_outwards (void)
{
  const RcPoint triangle[] = { { 0, 0 }, { 7, 3 }, { 2, 9 } };
  g_autoptr (GPtrArray) region = region_from_rings (triangle, 3, NULL, 0);

  ASSERT_INTERVALS (rc_region_cross_line_x (region, 5), { 2, 6 });        /* 15/7 to 27/5 */
  ASSERT_INTERVALS (rc_region_cross_line_y (region, 6, -9, 9), { 1, 5 }); /* 12/9 to 9/2 */
  ASSERT_INTERVALS (rc_region_cross_line_y (region, 6, 2, 4), { 2, 4 });
}

static void
test_line_through_shared_edge (void)
{
  const RcBox boxes[] = { { 0, 0, 10, 10 }, { 10, 5, 20, 20 } };
  g_autoptr (GPtrArray) region = region_from_boxes (boxes, 2);

  ASSERT_INTERVALS (rc_region_cross_line_x (region, 10), { 5, 10 }); /* the region lies on both sides there only */
  ASSERT_INTERVALS (rc_region_cross_line_y (region, 7, 0, 20), { 0, 20 });
}

static void
test_line_through_corner (void)
{
  const RcPoint diamond[] = { { 0, 10 }, { 10, 0 }, { 20, 10 }, { 10, 20 } };
  const RcPoint hole[] = { { 10, 10 }, { 12, 12 }, { 14, 10 }, { 12, 8 } };
  g_autoptr (GPtrArray) region = region_from_rings (diamond, 4, hole, 4);

  ASSERT_INTERVALS (rc_region_cross_line_x (region, 10), { 0, 20 }); /* the hole only touches the line */
  ASSERT_INTERVALS (rc_region_cross_line_x (region, 12), { 2, 8 }, { 12, 18 });
  ASSERT_NO_INTERVALS (rc_region_cross_line_x (region, 20));
}

/* A comb of slanting teeth: the many corners of a curved wall. */
static RcRegion *
make_comb (int n)
{
  g_autoptr (GArray) ring = rc_ring_new ();
  RcRegion *region = rc_region_new ();

  for (int i = 0; i < n / 2; i++)
    {
      RcPoint point = { i * 1000, (i * 7919) % 500 };

      g_array_append_val (ring, point);
    }
  for (int i = n / 2 - 1; i >= 0; i--)
    {
      RcPoint point = { i * 1000 + 3, 20000 + (i * 104729) % 5000 };

      g_array_append_val (ring, point);
    }
  g_ptr_array_add (region, rc_polygon_new_take (g_steal_pointer (&ring)));
  return region;
}

static int
compare_boxes (const void *a, const void *b)
{
  const RcBox *box = a;
  const RcBox *other = b;

  if (box->y0 != other->y0)
    return box->y0 < other->y0 ? -1 : 1;
  if (box->x0 != other->x0)
    return box->x0 < other->x0 ? -1 : 1;
  if (box->y1 != other->y1)
    return box->y1 < other->y1 ? -1 : 1;

  return (box->x1 > other->x1) - (box->x1 < other->x1);
}

static void
mirror (RcRegion *region)
{
  RcPolygon *polygon = g_ptr_array_index (region, 0);

  for (guint i = 0; i < polygon->outer->len; i++)
    rc_ring_get (polygon->outer, i)->x *= -1;
}

/* Moved, mirrored or turned half round, the parts are the same moved, mirrored, turned; a line along is a line across
 * after a quarter turn. */
static void
test_metamorphic (void)
{
  g_autoptr (GPtrArray) region = make_comb (60);
  g_autoptr (GPtrArray) moved = rc_region_move (region, -123456, 789);
  g_autoptr (GPtrArray) mirrored = rc_region_copy (region);
  g_autoptr (GPtrArray) half = rc_region_rotate (region, 180.0);
  g_autoptr (GPtrArray) quarter = rc_region_rotate (region, 90.0);

  mirror (mirrored);
  for (RcLength x0 = -500; x0 < 30000; x0 += 777)
    {
      RcLength x1 = x0 + 2500;
      g_autoptr (GArray) parts = rc_region_slice (region, x0, x1);
      g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (RcBox));
      g_autoptr (GArray) across = rc_region_cross_line_y (quarter, x0, -100000, 100000);

      for (int change = 0; change < 3; change++)
        {
          g_array_set_size (boxes, 0);
          for (guint i = 0; i < parts->len; i++)
            {
              RcBox box = g_array_index (parts, RcStripPart, i).box;
              RcBox changed[] = { { box.x0 - 123456, box.y0 + 789, box.x1 - 123456, box.y1 + 789 },
                                  { -box.x1, box.y0, -box.x0, box.y1 },
                                  { -box.x1, -box.y1, -box.x0, -box.y0 } };

              g_array_append_val (boxes, changed[change]);
            }
          if (boxes->len > 0)
            qsort (boxes->data, boxes->len, sizeof (RcBox), compare_boxes);
          assert_parts (change == 0   ? moved
                        : change == 1 ? mirrored
                                      : half,
                        change == 0 ? x0 - 123456 : -x1, change == 0 ? x1 - 123456 : -x0, (const RcBox *)boxes->data,
                        boxes->len);
        }

      /* (x, y) has become (-y, x) */
      for (guint i = 0; i < across->len / 2; i++)
        {
          RcInterval swapped = g_array_index (across, RcInterval, i);

          g_array_index (across, RcInterval, i) = g_array_index (across, RcInterval, across->len - 1 - i);
          g_array_index (across, RcInterval, across->len - 1 - i) = swapped;
        }
      for (guint i = 0; i < across->len; i++)
        {
          RcInterval *interval = &g_array_index (across, RcInterval, i);

          *interval = (RcInterval){ -interval->to, -interval->from };
        }
      assert_intervals (rc_region_cross_line_x (region, x0), (const RcInterval *)across->data, across->len);
    }
}

/* The planner slices thousands of times for one plan. Reported, not judged: machines differ. */
static void
test_speed (void)
{
  for (int n = 50; n <= 400; n *= 2)
    {
      g_autoptr (GPtrArray) region = make_comb (n);
      clock_t start = clock ();
      double  whole_us, strip_us;

      for (int i = 0; i < 1000; i++)
        g_array_unref (rc_region_slice (region, -10, 500 * n));
      whole_us = (double)(clock () - start) / (CLOCKS_PER_SEC / 1000.0);

      start = clock ();
      for (int i = 0; i < 1000; i++)
        g_array_unref (rc_region_slice (region, 5000, 9500));
      strip_us = (double)(clock () - start) / (CLOCKS_PER_SEC / 1000.0);

      g_test_message ("%d corners: the whole %.1f us, a strip %.1f us", n, whole_us, strip_us);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/strip/slice/one part", test_one_part);
  g_test_add_func ("/strip/slice/nothing outside", test_outside);
  g_test_add_func ("/strip/slice/two arms are two parts", test_two_arms);
  g_test_add_func ("/strip/slice/round a hole", test_round_a_hole);
  g_test_add_func ("/strip/slice/sloping walls round outwards", test_sloping_walls);
  g_test_add_func ("/strip/slice/sloping walls below zero", test_sloping_walls_below_zero);
  g_test_add_func ("/strip/slice/corners that touch join nothing", test_touching_corners);
  g_test_add_func ("/strip/slice/shared edges join", test_shared_edges);
  g_test_add_func ("/strip/slice/rings may run either way", test_any_orientation);
  g_test_add_func ("/strip/slice/one tick apart", test_one_tick_apart);
  g_test_add_func ("/strip/slice/the largest coordinates", test_largest);
  g_test_add_func ("/strip/slice/polygons without area", test_degenerate_polygons);
  g_test_add_func ("/strip/line/along the pile", test_line_along_pile);
  g_test_add_func ("/strip/line/across the pile", test_line_across_pile);
  g_test_add_func ("/strip/line/rounds outwards", test_line_rounds_outwards);
  g_test_add_func ("/strip/line/through an edge that two share", test_line_through_shared_edge);
  g_test_add_func ("/strip/line/through corners", test_line_through_corner);
  g_test_add_func ("/strip/moved, mirrored, turned", test_metamorphic);
  g_test_add_func ("/strip/speed", test_speed);

  return g_test_run ();
}
