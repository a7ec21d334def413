/* Regions laid over one another. */
#include "polygon.h"

#include "rowcut-error.h"

#define RING(...)                                                                                                      \
  rc_ring_new_from_points ((const RcPoint[]){ __VA_ARGS__ },                                                           \
                           sizeof ((const RcPoint[]){ __VA_ARGS__ }) / sizeof (RcPoint))

static RcRegion *
region_take (RcRing *ring)
{
  RcRegion *region = rc_region_new ();

  g_ptr_array_add (region, rc_polygon_new_take (ring));
  return region;
}

static RcRegion *
region_from_box (RcLength x0, RcLength y0, RcLength x1, RcLength y1)
{
  RcRegion *region = rc_region_new ();

  g_ptr_array_add (region, rc_polygon_new_from_box ((RcBox){ x0, y0, x1, y1 }));
  return region;
}

/* Takes the region over. */
static void
assert_region (RcRegion *region, guint n_polygons, guint n_corners, guint n_holes, RcArea area)
{
  guint corners = 0;
  guint holes = 0;

  g_assert_nonnull (region);
  g_assert_cmpuint (region->len, ==, n_polygons);
  for (guint i = 0; i < region->len; i++)
    {
      const RcPolygon *polygon = g_ptr_array_index (region, i);

      g_assert_cmpint (rc_ring_compute_area (polygon->outer), >, 0);
      g_assert_true (rc_polygon_check (polygon, NULL));
      corners += polygon->outer->len;
      holes += polygon->holes->len;
      for (guint h = 0; h < polygon->holes->len; h++)
        g_assert_cmpint (rc_ring_compute_area (g_ptr_array_index (polygon->holes, h)), <, 0);
    }
  g_assert_cmpuint (corners, ==, n_corners);
  g_assert_cmpuint (holes, ==, n_holes);
  g_assert_cmpint (rc_region_compute_area (region), ==, area);
  g_ptr_array_unref (region);
}

static void
test_rectangles (void)
{
  g_autoptr (GPtrArray) a = region_from_box (0, 0, 100, 100);
  g_autoptr (GPtrArray) b = region_from_box (50, 50, 150, 150);
  g_autoptr (GPtrArray) inside = region_from_box (40, 40, 60, 60);

  assert_region (rc_region_union (a, b, NULL), 1, 8, 0, 2 * 17500);
  assert_region (rc_region_intersect (a, b, NULL), 1, 4, 0, 2 * 2500);
  assert_region (rc_region_difference (a, b, NULL), 1, 6, 0, 2 * 7500);
  assert_region (rc_region_difference (a, inside, NULL), 1, 4, 1, 2 * 9600);
  assert_region (rc_region_union (a, inside, NULL), 1, 4, 0, 2 * 10000);
  assert_region (rc_region_difference (a, a, NULL), 0, 0, 0, 0);
}

static void
test_neighbours (void)
{
  g_autoptr (GPtrArray) room = region_from_box (0, 0, 100, 100);
  g_autoptr (GPtrArray) next = region_from_box (100, 0, 200, 100);
  g_autoptr (GPtrArray) corner = region_from_box (100, 100, 200, 200);
  g_autoptr (GPtrArray) door = region_from_box (100, 40, 110, 60);

  assert_region (rc_region_union (room, next, NULL), 1, 4, 0, 2 * 20000);   /* the shared wall leaves no corners */
  assert_region (rc_region_union (room, corner, NULL), 2, 8, 0, 2 * 20000); /* touching is not joining */
  assert_region (rc_region_union (room, door, NULL), 1, 8, 0, 2 * 10200);
  assert_region (rc_region_intersect (room, next, NULL), 0, 0, 0, 0); /* a line has no area */
  assert_region (rc_region_intersect (room, corner, NULL), 0, 0, 0, 0);
}

static void
test_merge (void)
{
  g_autoptr (GPtrArray) cells = rc_region_new ();

  for (int i = 0; i < 9; i++)
    {
      RcBox box = { i % 3 * 10, i / 3 * 10, i % 3 * 10 + 10, i / 3 * 10 + 10 };

      if (i != 4)
        g_ptr_array_add (cells, rc_polygon_new_from_box (box));
    }
  assert_region (rc_region_merge (cells, NULL), 1, 4, 1, 2 * 800);
}

static void
test_window (void)
{
  g_autoptr (GPtrArray) u_shape
      = region_take (RING ({ 0, 0 }, { 30, 0 }, { 30, 20 }, { 20, 20 }, { 20, 10 }, { 10, 10 }, { 10, 20 }, { 0, 20 }));

  assert_region (rc_region_intersect_box (u_shape, (RcBox){ 5, 5, 25, 15 }, NULL), 1, 8, 0, 2 * 150);
  assert_region (rc_region_intersect_box (u_shape, (RcBox){ 5, 12, 25, 15 }, NULL), 2, 8, 0, 2 * 30);
  assert_region (rc_region_intersect_box (u_shape, (RcBox){ -5, -5, 50, 50 }, NULL), 1, 8, 0, 2 * 500);
  assert_region (rc_region_intersect_box (u_shape, (RcBox){ 2, 2, 5, 9 }, NULL), 1, 4, 0, 2 * 21);
  assert_region (rc_region_intersect_box (u_shape, (RcBox){ 12, 12, 18, 20 }, NULL), 0, 0, 0, 0);
  assert_region (rc_region_intersect_box (u_shape, (RcBox){ 10, 10, 20, 20 }, NULL), 0, 0, 0, 0);
  assert_region (rc_region_intersect_box (u_shape, (RcBox){ 5, 5, 5, 15 }, NULL), 0, 0, 0, 0);
  assert_region (rc_region_intersect_box (u_shape, (RcBox){ 5, 15, 9, 5 }, NULL), 0, 0, 0, 0);
}

static void
test_nothing (void)
{
  g_autoptr (GPtrArray) nothing = rc_region_new ();
  g_autoptr (GPtrArray) empty = rc_region_new ();
  g_autoptr (GPtrArray) room = region_from_box (0, 0, 10, 10);

  g_ptr_array_add (empty, rc_polygon_new ());
  assert_region (rc_region_union (nothing, nothing, NULL), 0, 0, 0, 0);
  assert_region (rc_region_union (nothing, room, NULL), 1, 4, 0, 200);
  assert_region (rc_region_union (room, nothing, NULL), 1, 4, 0, 200);
  assert_region (rc_region_union (empty, room, NULL), 1, 4, 0, 200);
  assert_region (rc_region_intersect (nothing, room, NULL), 0, 0, 0, 0);
  assert_region (rc_region_difference (nothing, room, NULL), 0, 0, 0, 0);
  assert_region (rc_region_difference (room, nothing, NULL), 1, 4, 0, 200);
  assert_region (rc_region_intersect_box (nothing, (RcBox){ 0, 0, 9, 9 }, NULL), 0, 0, 0, 0);
}

static void
test_rounding (void)
{
  g_autoptr (GPtrArray) slope = region_take (RING ({ 0, 0 }, { 9, 0 }, { 9, 4 }));
  g_autoptr (GPtrArray) cut = rc_region_intersect_box (slope, (RcBox){ 0, 0, 5, 9 }, NULL);
  const RcPolygon *polygon = g_ptr_array_index (cut, 0);
  gboolean         found = FALSE;

  /* the slope crosses x = 5 at 20/9 = 2.22 */
  for (guint i = 0; i < polygon->outer->len; i++)
    found |= rc_ring_get (polygon->outer, i)->x == 5 && rc_ring_get (polygon->outer, i)->y == 2;
  g_assert_true (found);

  /* what is thinner than half a tick rounds away */
  assert_region (rc_region_intersect_box (slope, (RcBox){ 0, 0, 1, 9 }, NULL), 0, 0, 0, 0);
}

/* Where rounding corners alone would make edges cross, the result still has no fault. */
static void
test_rounding_never_crosses (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (3);

  for (int i = 0; i < 3000; i++)
    {
      g_autoptr (GPtrArray) a = rc_region_new ();
      g_autoptr (GPtrArray) b = rc_region_new ();
      g_autoptr (GPtrArray) both = NULL;
      g_autoptr (GError) error = NULL;

      for (int side = 0; side < 2; side++)
        {
          RcRing *ring = rc_ring_new ();

          for (int corner = 0; corner < 3; corner++)
            {
              RcPoint point = { g_rand_int_range (random, 0, 9), g_rand_int_range (random, 0, 9) };

              g_array_append_val (ring, point);
            }
          g_ptr_array_add (side == 0 ? a : b, rc_polygon_new_take (ring));
        }
      if (!rc_polygon_check (g_ptr_array_index (a, 0), NULL) || !rc_polygon_check (g_ptr_array_index (b, 0), NULL))
        continue;

      both = rc_region_union (a, b, &error);
      g_assert_no_error (error);
      for (guint p = 0; p < both->len; p++)
        {
          RcPolygonFault fault;

          /* holes may touch the outline in a point */
          if (rc_polygon_find_fault (g_ptr_array_index (both, p), &fault))
            g_assert_true (fault.kind == RC_POLYGON_FAULT_EDGES_MEET && fault.ring != fault.other_ring);
        }
    }
}

static void
test_refusal (void)
{
  g_autoptr (GPtrArray) bow_tie = region_take (RING ({ 0, 0 }, { 10, 10 }, { 10, 0 }, { 0, 10 }));
  g_autoptr (GPtrArray) room = region_from_box (0, 0, 30, 5);
  g_autoptr (GError) error = NULL;

  g_assert_null (rc_region_union (bow_tie, room, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_GEOMETRY);
  g_assert_null (rc_region_union (bow_tie, room, NULL));
}

static RcArea
compute_area_and_free (RcRegion *region)
{
  RcArea area = rc_region_compute_area (region);

  g_ptr_array_unref (region);
  return area;
}

/* Turned by quarters and moved, what is square stays the same to the tick; whole is the sum of its parts. */
static void
test_metamorphic (void)
{
  g_autoptr (GPtrArray) hall
      = region_take (RING ({ 0, 0 }, { 1234, 0 }, { 1234, 777 }, { 500, 777 }, { 500, 400 }, { 0, 400 }));
  g_autoptr (GPtrArray) room = region_from_box (400, 300, 2000, 900);
  RcArea whole = compute_area_and_free (rc_region_union (hall, room, NULL));
  RcArea common = compute_area_and_free (rc_region_intersect (hall, room, NULL));

  g_assert_cmpint (rc_region_compute_area (hall) + rc_region_compute_area (room), ==, whole + common);
  g_assert_cmpint (compute_area_and_free (rc_region_difference (hall, room, NULL)) + rc_region_compute_area (room), ==,
                   whole);

  for (int quarter = 0; quarter < 4; quarter++)
    {
      g_autoptr (GPtrArray) turned_hall = rc_region_rotate (hall, 90.0 * quarter);
      g_autoptr (GPtrArray) turned_room = rc_region_rotate (room, 90.0 * quarter);
      g_autoptr (GPtrArray) far_hall = rc_region_move (turned_hall, RC_LENGTH_MAX, -RC_LENGTH_MAX);
      g_autoptr (GPtrArray) far_room = rc_region_move (turned_room, RC_LENGTH_MAX, -RC_LENGTH_MAX);

      g_assert_cmpint (compute_area_and_free (rc_region_union (turned_hall, turned_room, NULL)), ==, whole);
      g_assert_cmpint (compute_area_and_free (rc_region_union (far_hall, far_room, NULL)), ==, whole);
    }
}

static gpointer
overlay_many (gpointer data)
{
  for (int i = 0; i < 200; i++)
    test_rectangles ();
  return NULL;
}

static void
test_threads (void)
{
  GThread *threads[4];

  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    threads[i] = g_thread_new ("overlay", overlay_many, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    g_thread_join (threads[i]);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/overlay/rectangles", test_rectangles);
  g_test_add_func ("/overlay/neighbours", test_neighbours);
  g_test_add_func ("/overlay/merge", test_merge);
  g_test_add_func ("/overlay/window", test_window);
  g_test_add_func ("/overlay/nothing", test_nothing);
  g_test_add_func ("/overlay/corners are rounded to ticks", test_rounding);
  g_test_add_func ("/overlay/rounding never makes edges cross", test_rounding_never_crosses);
  g_test_add_func ("/overlay/refuses an outline that crosses itself", test_refusal);
  g_test_add_func ("/overlay/turned and moved", test_metamorphic);
  g_test_add_func ("/overlay/in threads", test_threads);

  return g_test_run ();
}
