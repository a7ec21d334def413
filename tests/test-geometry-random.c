/* Ten thousand shapes by chance: areas, faults, slices, lines and overlays against GEOS. */
#include "random-shapes.h"
#include "rounds.h"

#include "chord.h"
#include "strip.h"

#include <math.h>

#define N_REGIONS scale_rounds (10000)
#define SEED      20

typedef void (*Judge) (GEOSContextHandle_t geos, GRand *random, const RcRegion *region, const GEOSGeometry *geometry);

static GPtrArray *regions; /* of RcRegion, made once */

static void
for_each_region (Judge judge)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);
  GEOSContextHandle_t geos = GEOS_init_r ();

  for (guint i = 0; i < regions->len; i++)
    {
      const RcRegion *region = g_ptr_array_index (regions, i);
      GEOSGeometry   *geometry = region_to_geos (geos, region);

      judge (geos, random, region, geometry);
      GEOSGeom_destroy_r (geos, geometry);
    }

  GEOS_finish_r (geos);
}

static void
make_regions (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);

  regions = g_ptr_array_new_with_free_func ((GDestroyNotify)g_ptr_array_unref);
  for (guint i = 0; i < N_REGIONS; i++)
    g_ptr_array_add (regions, make_random_region (random, i % N_SHAPES));
}

static double
get_area (GEOSContextHandle_t geos, const GEOSGeometry *geometry)
{
  double area = 0.0;

  g_assert_cmpint (GEOSArea_r (geos, geometry, &area), ==, 1);
  return area;
}

static double
get_length (GEOSContextHandle_t geos, const GEOSGeometry *geometry)
{
  double length = 0.0;

  g_assert_cmpint (GEOSLength_r (geos, geometry, &length), ==, 1);
  return length;
}

static void
judge_area (GEOSContextHandle_t geos, GRand *random, const RcRegion *region, const GEOSGeometry *geometry)
{
  double area = (double)rc_region_compute_area (region) / 2.0;

  g_assert_cmpint (GEOSisValid_r (geos, geometry), ==, 1);
  g_assert_cmpfloat_with_epsilon (area, get_area (geos, geometry), 1e-9 * area + 1e-9);
}

static void
test_areas (void)
{
  for_each_region (judge_area);
}

/* Slices */

typedef struct
{
  double x0, y0, x1, y1;
} Extent;

static Extent
get_extent (GEOSContextHandle_t geos, const GEOSGeometry *geometry)
{
  Extent extent;

  GEOSGeom_getXMin_r (geos, geometry, &extent.x0);
  GEOSGeom_getYMin_r (geos, geometry, &extent.y0);
  GEOSGeom_getXMax_r (geos, geometry, &extent.x1);
  GEOSGeom_getYMax_r (geos, geometry, &extent.y1);
  return extent;
}

/* The box holds the extent and is less than a tick larger, save for what doubles lose. */
static gboolean
box_fits (RcBox box, Extent extent, double slack)
{
  return fabs ((double)box.x0 - extent.x0) <= slack && fabs ((double)box.x1 - extent.x1) <= slack
         && (double)box.y0 <= extent.y0 + slack && (double)box.y0 > extent.y0 - 1.0 - slack
         && (double)box.y1 >= extent.y1 - slack && (double)box.y1 < extent.y1 + 1.0 + slack;
}

/* The same number of parts, and a part for each box. */
static void
judge_parts (GEOSContextHandle_t geos, const GArray *parts, const GEOSGeometry *clipped, double slack)
{
  int      n = GEOSGetNumGeometries_r (geos, clipped);
  guint    n_polygons = 0;
  gboolean taken[256] = { FALSE };

  g_assert_cmpuint (parts->len, <, G_N_ELEMENTS (taken));
  for (int i = 0; i < n; i++)
    {
      const GEOSGeometry *part = GEOSGetGeometryN_r (geos, clipped, i);
      gboolean            found = FALSE;

      if (GEOSGeomTypeId_r (geos, part) != GEOS_POLYGON || GEOSisEmpty_r (geos, part) == 1)
        continue;
      n_polygons++;
      for (guint j = 0; j < parts->len && !found; j++)
        {
          found = !taken[j] && box_fits (g_array_index (parts, RcStripPart, j).box, get_extent (geos, part), slack);
          taken[j] |= found;
        }
      g_assert_true (found);
    }
  g_assert_cmpuint (parts->len, ==, n_polygons);
}

static RcLength
pick_between (GRand *random, RcLength from, RcLength to)
{
  return from + (RcLength)(g_rand_double (random) * (double)(to - from + 1));
}

/* A place by chance, or right at a corner. */
static RcLength
pick_x (GRand *random, const RcRegion *region)
{
  RcBox            box = rc_region_compute_box (region);
  const RcPolygon *polygon;

  if (region->len == 0 || g_rand_boolean (random))
    return pick_between (random, box.x0 - 2, box.x1 + 2);

  polygon = g_ptr_array_index (region, g_rand_int_range (random, 0, (gint32)region->len));
  return rc_ring_get (polygon->outer, g_rand_int_range (random, 0, (gint32)polygon->outer->len))->x;
}

static void
judge_slice (GEOSContextHandle_t geos, GRand *random, const RcRegion *region, const GEOSGeometry *geometry)
{
  RcBox    box = rc_region_compute_box (region);
  RcLength a = pick_x (random, region);
  RcLength b = pick_x (random, region);
  RcLength x0 = MIN (a, b);
  RcLength x1 = MAX (a, b) + (a == b);
  g_autoptr (GArray) parts = rc_region_slice (region, x0, x1);
  GEOSGeometry *strip = box_to_geos (geos, (double)x0, (double)box.y0 - 1, (double)x1, (double)box.y1 + 1);
  GEOSGeometry *clipped = GEOSIntersection_r (geos, geometry, strip);

  judge_parts (geos, parts, clipped, 1e-12 * (double)MAX (ABS (box.y0), ABS (box.y1)) + 1e-9);
  GEOSGeom_destroy_r (geos, clipped);
  GEOSGeom_destroy_r (geos, strip);
}

static void
test_slices (void)
{
  for_each_region (judge_slice);
}

/* Lines */

/* Length of the line from (x0, y0) to (x1, y1) inside the geometry, not along its edges, and the pieces it is in. */
static double
measure_inside (GEOSContextHandle_t geos, const GEOSGeometry *geometry, double x0, double y0, double x1, double y1,
                int *n_pieces)
{
  GEOSCoordSequence *points = GEOSCoordSeq_create_r (geos, 2, 2);
  GEOSGeometry      *line, *within, *edges, *inside;
  double             length;

  *n_pieces = 0;
  if (GEOSisEmpty_r (geos, geometry) == 1)
    {
      GEOSCoordSeq_destroy_r (geos, points);
      return 0.0;
    }

  GEOSCoordSeq_setXY_r (geos, points, 0, x0, y0);
  GEOSCoordSeq_setXY_r (geos, points, 1, x1, y1);
  line = GEOSGeom_createLineString_r (geos, points);
  within = GEOSIntersection_r (geos, line, geometry);
  edges = GEOSBoundary_r (geos, geometry);
  inside = GEOSDifference_r (geos, within, edges);
  length = get_length (geos, inside);
  *n_pieces = GEOSGetNumGeometries_r (geos, inside);

  GEOSGeom_destroy_r (geos, line);
  GEOSGeom_destroy_r (geos, within);
  GEOSGeom_destroy_r (geos, edges);
  GEOSGeom_destroy_r (geos, inside);
  return length;
}

static void
judge_intervals (const GArray *intervals, double inside, int n_pieces)
{
  RcLength sum = 0;

  for (guint i = 0; i < intervals->len; i++)
    {
      const RcInterval *interval = &g_array_index (intervals, RcInterval, i);

      g_assert_cmpint (interval->from, <, interval->to);
      if (i > 0)
        g_assert_cmpint (interval[-1].to, <, interval->from);
      sum += interval->to - interval->from;
    }

  /* each end is rounded out by less than a tick; gaps of less than two ticks are closed by that */
  g_assert_cmpfloat ((double)sum, >=, inside - 1e-6 * (inside + 1.0));
  g_assert_cmpfloat ((double)sum, <=, inside + 4.0 * n_pieces + 1e-6 * inside);
}

static void
judge_lines (GEOSContextHandle_t geos, GRand *random, const RcRegion *region, const GEOSGeometry *geometry)
{
  RcBox    box = rc_region_compute_box (region);
  RcLength x = pick_x (random, region);
  RcLength y = pick_between (random, box.y0, box.y1);
  g_autoptr (GArray) upright = rc_region_cross_line_x (region, x);
  g_autoptr (GArray) level = rc_region_cross_line_y (region, y, box.x0, box.x1);
  double inside;
  int    n_pieces;

  inside = measure_inside (geos, geometry, (double)x, (double)box.y0 - 1, (double)x, (double)box.y1 + 1, &n_pieces);
  judge_intervals (upright, inside, n_pieces);
  inside = measure_inside (geos, geometry, (double)box.x0 - 1, (double)y, (double)box.x1 + 1, (double)y, &n_pieces);
  judge_intervals (level, inside, n_pieces);
}

static void
test_lines (void)
{
  for_each_region (judge_lines);
}

/* Overlays */

static void
assert_free_of_crossings (GEOSContextHandle_t geos, const RcRegion *region)
{
  RcArea        sum = rc_region_compute_area (region);
  GEOSGeometry *geometry;

  if (region->len == 0)
    return;

  for (guint i = 0; i < region->len; i++)
    {
      g_autoptr (GPtrArray) one = rc_region_new ();
      GEOSGeometry *polygon;

      g_ptr_array_add (one, rc_polygon_copy (g_ptr_array_index (region, i)));
      polygon = region_to_geos (geos, one);
      g_assert_cmpint (GEOSisValid_r (geos, polygon), ==, 1);
      GEOSGeom_destroy_r (geos, polygon);
    }

  /* and no two of them overlap */
  geometry = region_to_geos (geos, region);
  g_assert_cmpfloat_with_epsilon (get_area (geos, geometry), (double)sum / 2.0, 1e-9 * (double)sum + 1e-9);
  GEOSGeom_destroy_r (geos, geometry);
}

/* Rounding corners by half a tick moves the area by less than half a tick along the edges. */
static void
judge_overlay (GEOSContextHandle_t geos, RcRegion *ours, GEOSGeometry *theirs)
{
  double slack = get_length (geos, theirs) + 4.0;

  g_assert_nonnull (ours);
  assert_free_of_crossings (geos, ours);
  g_assert_cmpfloat_with_epsilon ((double)rc_region_compute_area (ours) / 2.0, get_area (geos, theirs), slack);
  GEOSGeom_destroy_r (geos, theirs);
  g_ptr_array_unref (ours);
}

static RcRegion *
make_partner (GRand *random, const RcRegion *region)
{
  const RcRegion *plain = g_ptr_array_index (regions, g_rand_int_range (random, 0, (int)regions->len));
  RcBox           box = rc_region_compute_box (region);

  return rc_region_move (plain, (box.x1 - box.x0) / 3, (box.y1 - box.y0) / 4);
}

static void
judge_overlays (GEOSContextHandle_t geos, GRand *random, const RcRegion *region, const GEOSGeometry *geometry)
{
  g_autoptr (GPtrArray) partner = make_partner (random, region);
  g_autoptr (GError) error = NULL;
  GEOSGeometry *other = region_to_geos (geos, partner);

  judge_overlay (geos, rc_region_union (region, partner, &error), GEOSUnion_r (geos, geometry, other));
  g_assert_no_error (error);
  if (g_rand_boolean (random))
    judge_overlay (geos, rc_region_intersect (region, partner, &error), GEOSIntersection_r (geos, geometry, other));
  else
    judge_overlay (geos, rc_region_difference (region, partner, &error), GEOSDifference_r (geos, geometry, other));
  g_assert_no_error (error);
  GEOSGeom_destroy_r (geos, other);
}

static void
test_overlays (void)
{
  for_each_region (judge_overlays);
}

static void
judge_window (GEOSContextHandle_t geos, GRand *random, const RcRegion *region, const GEOSGeometry *geometry)
{
  RcBox         box = rc_region_compute_box (region);
  RcLength      x = pick_between (random, box.x0, box.x1);
  RcLength      y = pick_between (random, box.y0, box.y1);
  RcBox         window = { x, y, pick_between (random, x, box.x1) + 1, pick_between (random, y, box.y1) + 1 };
  GEOSGeometry *rectangle
      = box_to_geos (geos, (double)window.x0, (double)window.y0, (double)window.x1, (double)window.y1);

  judge_overlay (geos, rc_region_intersect_box (region, window, NULL), GEOSIntersection_r (geos, geometry, rectangle));
  GEOSGeom_destroy_r (geos, rectangle);
}

/* An edge that comes in or goes out lies off by at most half a tick where it does so. */
static void
judge_area_between (GEOSContextHandle_t geos, GRand *random, const RcRegion *region, const GEOSGeometry *geometry)
{
  RcBox         box = rc_region_compute_box (region);
  RcLength      y0 = pick_between (random, box.y0, box.y1), y1 = pick_between (random, y0, box.y1) + 1;
  GEOSGeometry *band = box_to_geos (geos, (double)box.x0 - 1, (double)y0, (double)box.x1 + 1, (double)y1);
  GEOSGeometry *clipped = GEOSIntersection_r (geos, geometry, band);
  double        area = get_area (geos, clipped), found = (double)rc_region_compute_area_between (region, y0, y1) / 2;
  double        edges = 0;

  for (guint i = 0; i < region->len; i++)
    {
      const RcPolygon *polygon = g_ptr_array_index (region, i);

      edges += polygon->outer->len;
      for (guint h = 0; h < polygon->holes->len; h++)
        edges += ((RcRing *)g_ptr_array_index (polygon->holes, h))->len;
    }
  g_assert_cmpfloat (fabs (found - area), <=, edges * (double)(y1 - y0) / 2 + 1e-9 * area);
  GEOSGeom_destroy_r (geos, clipped);
  GEOSGeom_destroy_r (geos, band);
}

static void
test_areas_between (void)
{
  for_each_region (judge_area_between);
}

static void
test_windows (void)
{
  for_each_region (judge_window);
}

/* Faults: rings by chance, most of them crossing themselves. */
static void
test_faults (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);
  GEOSContextHandle_t geos = GEOS_init_r ();
  guint               n_good = 0;

  for (guint i = 0; i < N_REGIONS; i++)
    {
      g_autoptr (GPtrArray) region = rc_region_new ();
      RcRing       *ring = rc_ring_new ();
      GEOSGeometry *geometry;
      gboolean      is_good;

      for (int n = g_rand_int_range (random, 3, 8); n > 0; n--)
        {
          RcPoint point = { g_rand_int_range (random, 0, 12), g_rand_int_range (random, 0, 12) };

          g_array_append_val (ring, point);
        }
      g_ptr_array_add (region, rc_polygon_new_take (ring));
      rc_ring_simplify (ring);
      if (ring->len < 3)
        continue;

      geometry = region_to_geos (geos, region);
      is_good = !rc_polygon_find_fault (g_ptr_array_index (region, 0), NULL);
      g_assert_cmpint (is_good, ==, GEOSisValid_r (geos, geometry) == 1);
      n_good += is_good;
      GEOSGeom_destroy_r (geos, geometry);
    }

  /* both kinds were met */
  g_assert_cmpuint (n_good, >, N_REGIONS / 20);
  g_assert_cmpuint (n_good, <, N_REGIONS * 19 / 20);
  GEOS_finish_r (geos);
}

/* Points on a coarse grid, many of them on corners and edges. */
static void
judge_places (GEOSContextHandle_t geos, GRand *random, const RcRegion *region, const GEOSGeometry *geometry)
{
  RcBox box = rc_region_compute_box (region);

  for (guint i = 0; i < 3; i++)
    {
      RcPoint       point = { pick_x (random, region), pick_between (random, box.y0, box.y1) };
      GEOSGeometry *dot = GEOSGeom_createPointFromXY_r (geos, (double)point.x, (double)point.y);
      int           place = rc_region_locate (region, point);

      if (region->len == 1)
        {
          g_assert_cmpint (place > 0, ==, GEOSContains_r (geos, geometry, dot) == 1);
          g_assert_cmpint (place == 0, ==, GEOSTouches_r (geos, geometry, dot) == 1);
        }
      g_assert_cmpint (place < 0, ==, GEOSDisjoint_r (geos, geometry, dot) == 1);
      GEOSGeom_destroy_r (geos, dot);
    }
}

static void
test_places (void)
{
  for_each_region (judge_places);
}

static int
compare_boxes (gconstpointer a, gconstpointer b)
{
  const RcBox *x = a, *y = b;
  return x->y0 != y->y0 ? (x->y0 > y->y0) - (x->y0 < y->y0) : (x->x0 > y->x0) - (x->x0 < y->x0);
}

/* Of right angles only: chords add up to the area inside the strip, and their parts are the strip's. */
static void
judge_chords (GEOSContextHandle_t geos, GRand *random, const RcRegion *region, const GEOSGeometry *geometry)
{
  RcBox    box = rc_region_compute_box (region);
  RcLength size = box.x1 - box.x0;
  RcLength x0 = box.x0 + (RcLength)(g_rand_double_range (random, -0.2, 1) * (double)size);
  RcLength x1 = x0 + 8 + (RcLength)(g_rand_double_range (random, 0, 0.6) * (double)size);
  x0 -= x0 % 8; /* no neck is narrower */
  x1 -= x1 % 8;
  g_autoptr (GArray) chords = rc_chords_new (region, x0, x1);
  g_autoptr (GArray) parts = rc_region_slice (region, x0, x1);
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (RcBox));
  double area = 0;
  for (guint i = 0; i < chords->len; i++)
    {
      const RcChord *chord = &g_array_index (chords, RcChord, i);
      gboolean       first = TRUE;
      g_assert_true (chord->low.from == chord->high.from && chord->low.to == chord->high.to);
      area += (double)(chord->low.to - chord->low.from) * (double)(chord->y1 - chord->y0);
      for (guint k = 0; k < i; k++)
        first &= g_array_index (chords, RcChord, k).part != chord->part;
      RcBox own = rc_chords_compute_box (chords, chord->part);
      if (first)
        g_array_append_val (boxes, own);
    }
  GEOSGeometry *strip = box_to_geos (geos, (double)x0, (double)box.y0, (double)x1, (double)box.y1);
  GEOSGeometry *inside = GEOSIntersection_r (geos, geometry, strip);
  g_assert_cmpfloat_with_epsilon (area, get_area (geos, inside), 1e-9 * area + 0.5);
  GEOSGeom_destroy_r (geos, inside);
  GEOSGeom_destroy_r (geos, strip);
  g_array_sort (boxes, compare_boxes);
  g_assert_cmpuint (boxes->len, ==, parts->len);
  for (guint i = 0; i < boxes->len; i++)
    g_assert_cmpmem (&g_array_index (boxes, RcBox, i), sizeof (RcBox), &g_array_index (parts, RcStripPart, i).box,
                     sizeof (RcBox));
}

static void
enlarge_ring (RcRing *ring)
{
  for (guint i = 0; i < ring->len; i++)
    {
      rc_ring_get (ring, i)->x *= 8;
      rc_ring_get (ring, i)->y *= 8;
    }
}

/* Eight times as large, so that no slab is too low. (transfer full) */
static RcRegion *
enlarge (const RcRegion *region)
{
  RcRegion *large = rc_region_copy (region);
  for (guint p = 0; p < large->len; p++)
    {
      RcPolygon *polygon = g_ptr_array_index (large, p);
      enlarge_ring (polygon->outer);
      for (guint h = 0; h < polygon->holes->len; h++)
        enlarge_ring (g_ptr_array_index (polygon->holes, h));
    }
  return large;
}

static void
test_chords (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);
  GEOSContextHandle_t geos = GEOS_init_r ();
  for (guint i = SHAPE_SQUARE; i < regions->len; i += N_SHAPES)
    {
      g_autoptr (GPtrArray) region = enlarge (g_ptr_array_index (regions, i));
      GEOSGeometry *geometry = region_to_geos (geos, region);
      judge_chords (geos, random, region, geometry);
      GEOSGeom_destroy_r (geos, geometry);
    }
  GEOS_finish_r (geos);
}

int
main (int argc, char *argv[])
{
  int result;

  g_test_init (&argc, &argv, NULL);
  make_regions ();

  g_test_add_func ("/random/areas agree", test_areas);
  g_test_add_func ("/random/places of points agree", test_places);
  g_test_add_func ("/random/faults agree", test_faults);
  g_test_add_func ("/random/slices agree", test_slices);
  g_test_add_func ("/random/lines agree", test_lines);
  g_test_add_func ("/random/overlays agree", test_overlays);
  g_test_add_func ("/random/windows agree", test_windows);
  g_test_add_func ("/random/areas between heights agree", test_areas_between);
  g_test_add_func ("/random/chords agree", test_chords);

  result = g_test_run ();
  g_ptr_array_unref (regions);
  return result;
}
