/* Polygons: areas, lengths, normal order, turning. */
#include "polygon.h"

#define FOOT RC_TICKS_PER_FOOT
#define INCH RC_TICKS_PER_INCH
#define M    RC_TICKS_PER_M

#define RING(...)                                                                                                      \
  rc_ring_new_from_points ((const RcPoint[]){ __VA_ARGS__ },                                                           \
                           sizeof ((const RcPoint[]){ __VA_ARGS__ }) / sizeof (RcPoint))

static RcPolygon *
make_rectangle (RcLength width, RcLength length)
{
  return rc_polygon_new_from_box ((RcBox){ 0, 0, width, length });
}

static void
assert_area (RcArea area, RcAreaUnit unit, int decimals, const char *expected)
{
  g_autofree char *text = rc_area_format (area, unit, decimals, FALSE);

  g_assert_cmpstr (text, ==, expected);
}

static void
test_published_rooms (void)
{
  /* ASVAB practice item: bedrooms 12 x 14, 12 x 10 and 8 x 12 ft are 384 sq ft, 42 2/3 sq yd */
  g_autoptr (GPtrArray) bedrooms = rc_region_new ();
  /* a maths lesson: an L of 12 x 18 and 3 x 3 ft is 225 sq ft, 25 sq yd */
  g_autoptr (RcPolygon) angle
      = rc_polygon_new_take (RING ({ 0, 0 }, { 15 * FOOT, 0 }, { 15 * FOOT, 3 * FOOT }, { 12 * FOOT, 3 * FOOT },
                                   { 12 * FOOT, 18 * FOOT }, { 0, 18 * FOOT }));
  /* jiskha 1232497269: 13 x 13 ft is 169 sq ft, 18 7/9 sq yd */
  g_autoptr (RcPolygon) square = make_rectangle (13 * FOOT, 13 * FOOT);
  /* Math Central: a roll of 12 x 100 ft is 1,200 sq ft, 133.33 sq yd, 111.483648 m2 */
  g_autoptr (RcPolygon) roll = make_rectangle (12 * FOOT, 100 * FOOT);
  /* megaelecciones.com: 16 x 16 ft; exact 28.444 sq yd, printed there as 28.41 from 5.33 squared */
  g_autoptr (RcPolygon) trap = make_rectangle (16 * FOOT, 16 * FOOT);
  /* daltoncarpet.com: 132 sq ft from rounded sides where 9 ft 8 in x 11 ft 2 in is really 107.94 */
  g_autoptr (RcPolygon) measured = make_rectangle (9 * FOOT + 8 * INCH, 11 * FOOT + 2 * INCH);

  g_ptr_array_add (bedrooms, make_rectangle (12 * FOOT, 14 * FOOT));
  g_ptr_array_add (bedrooms, make_rectangle (12 * FOOT, 10 * FOOT));
  g_ptr_array_add (bedrooms, make_rectangle (8 * FOOT, 12 * FOOT));

  assert_area (rc_region_compute_area (bedrooms), RC_AREA_UNIT_SQ_FT, 2, "384.00");
  assert_area (rc_region_compute_area (bedrooms), RC_AREA_UNIT_SQ_YD, 4, "42.6667");
  assert_area (rc_polygon_compute_area (angle), RC_AREA_UNIT_SQ_FT, 2, "225.00");
  assert_area (rc_polygon_compute_area (angle), RC_AREA_UNIT_SQ_YD, 2, "25.00");
  assert_area (rc_polygon_compute_area (square), RC_AREA_UNIT_SQ_YD, 4, "18.7778");
  assert_area (rc_polygon_compute_area (roll), RC_AREA_UNIT_M2, 6, "111.483648");
  assert_area (rc_polygon_compute_area (roll), RC_AREA_UNIT_SQ_YD, 2, "133.33");
  assert_area (rc_polygon_compute_area (trap), RC_AREA_UNIT_SQ_YD, 3, "28.444");
  assert_area (rc_polygon_compute_area (measured), RC_AREA_UNIT_SQ_FT, 2, "107.94");
}

/* Mahun, open-access surveying, COGO chapter H: five corners in feet, northing and easting; printed 140,494 sq ft from
 * cross-product sums rounded to whole numbers, 140,493.11 with full precision. */
static void
test_area_by_coordinates (void)
{
  static const struct
  {
    int northing, easting; /* hundredths of a foot */
  } corners[] = { { 40631, 125997 }, { 23512, 148947 }, { 6581, 112640 }, { 31789, 94204 }, { 67532, 128254 } };
  g_autoptr (GArray) ring = rc_ring_new ();
  g_autofree char *text = NULL;
  RcArea           area;

  for (guint i = 0; i < G_N_ELEMENTS (corners); i++)
    {
      RcPoint point = { (corners[i].easting * FOOT + 50) / 100, (corners[i].northing * FOOT + 50) / 100 };

      g_array_append_val (ring, point);
    }

  area = rc_ring_compute_area (ring);
  text = rc_area_format (area, RC_AREA_UNIT_SQ_FT, 2, FALSE);
  g_assert_cmpstr (text, ==, "-140493.11"); /* clockwise as printed */

  rc_ring_reverse (ring);
  g_assert_cmpint (rc_ring_compute_area (ring), ==, -area);
}

static void
test_area_of_nothing (void)
{
  g_autoptr (GArray) none = rc_ring_new ();
  g_autoptr (GArray) point = RING ({ 5, 5 });
  g_autoptr (GArray) line = RING ({ 0, 0 }, { 5, 5 });
  g_autoptr (GArray) flat = RING ({ 0, 0 }, { 5, 5 }, { 10, 10 });
  g_autoptr (RcPolygon) polygon = rc_polygon_new ();
  g_autoptr (GPtrArray) region = rc_region_new ();

  g_assert_cmpint (rc_ring_compute_area (none), ==, 0);
  g_assert_cmpint (rc_ring_compute_area (point), ==, 0);
  g_assert_cmpint (rc_ring_compute_area (line), ==, 0);
  g_assert_cmpint (rc_ring_compute_area (flat), ==, 0);
  g_assert_cmpint (rc_polygon_compute_area (polygon), ==, 0);
  g_assert_cmpint (rc_region_compute_area (region), ==, 0);
  g_assert_cmpint (rc_ring_compute_length (none), ==, 0);
  g_assert_cmpint (rc_ring_compute_length (point), ==, 0);
  g_assert_cmpint (rc_region_compute_box (region).x1, ==, 0);
  rc_polygon_normalize (polygon);
  g_assert_cmpint (rc_polygon_locate (polygon, (RcPoint){ 0, 0 }), <, 0);
  rc_polygon_free (NULL);
}

static void
test_area_less_holes (void)
{
  g_autoptr (RcPolygon) polygon = make_rectangle (100, 50);

  /* a hole counts whichever way round it is written */
  g_ptr_array_add (polygon->holes, RING ({ 10, 10 }, { 20, 10 }, { 20, 20 }, { 10, 20 }));
  g_ptr_array_add (polygon->holes, RING ({ 30, 10 }, { 30, 20 }, { 40, 20 }, { 40, 10 }));
  g_assert_cmpint (rc_polygon_compute_area (polygon), ==, 2 * (5000 - 200));
  rc_ring_reverse (polygon->outer);
  g_assert_cmpint (rc_polygon_compute_area (polygon), ==, 2 * (5000 - 200));
}

/* Sums beyond an int64 on the way, within it at the end: a small room 100 km from the origin. */
static void
test_area_far_away (void)
{
  RcLength far = RC_LENGTH_MAX;
  g_autoptr (GArray) ring = RING ({ far, far }, { far + 3, far }, { far + 3, far + 2 }, { far, far + 2 });
  g_autoptr (GArray) across = RING ({ -far, -3 }, { far, 3 }, { -far, 3 });

  g_assert_cmpint (rc_ring_compute_area (ring), ==, 12);
  g_assert_cmpint (rc_ring_compute_area (across), ==, 12 * far);
}

static void
test_distances (void)
{
  RcPoint origin = { 0, 0 };

  g_assert_cmpint (rc_point_distance (origin, (RcPoint){ 3, 4 }), ==, 5);
  g_assert_cmpint (rc_point_distance (origin, (RcPoint){ -5, 12 }), ==, 13);
  g_assert_cmpint (rc_point_distance (origin, origin), ==, 0);
  g_assert_cmpint (rc_point_distance (origin, (RcPoint){ 1, 1 }), ==, 1); /* 1.414 */
  g_assert_cmpint (rc_point_distance (origin, (RcPoint){ 1, 2 }), ==, 2); /* 2.236 */
  g_assert_cmpint (rc_point_distance (origin, (RcPoint){ 2, 2 }), ==, 3); /* 2.828 */
  g_assert_cmpint (rc_point_distance ((RcPoint){ -RC_LENGTH_MAX, 0 }, (RcPoint){ RC_LENGTH_MAX, 1 }), ==,
                   2 * RC_LENGTH_MAX);
  g_assert_cmpint (rc_point_distance ((RcPoint){ 0, 0 }, (RcPoint){ 3 * RC_LENGTH_MAX / 10, 4 * RC_LENGTH_MAX / 10 }),
                   ==, RC_LENGTH_MAX / 2);
}

static void
test_boundary (void)
{
  g_autoptr (RcPolygon) room = make_rectangle (15 * FOOT, 20 * FOOT);
  g_autoptr (GArray) triangle = RING ({ 0, 0 }, { 300, 0 }, { 0, 400 });
  RcBox box = rc_ring_compute_box (triangle);

  g_assert_cmpint (rc_ring_compute_length (room->outer), ==, 70 * FOOT);
  g_assert_cmpint (rc_ring_compute_length (triangle), ==, 1200);
  g_assert_cmpint (box.x0, ==, 0);
  g_assert_cmpint (box.y0, ==, 0);
  g_assert_cmpint (box.x1, ==, 300);
  g_assert_cmpint (box.y1, ==, 400);
}

static void
test_region_box (void)
{
  g_autoptr (GPtrArray) region = rc_region_new ();
  RcBox box;

  g_ptr_array_add (region, rc_polygon_new ()); /* an empty polygon has no place */
  g_ptr_array_add (region, rc_polygon_new_from_box ((RcBox){ 5, 6, 7, 8 }));
  g_ptr_array_add (region, rc_polygon_new_from_box ((RcBox){ -1, 7, 6, 20 }));
  box = rc_region_compute_box (region);
  g_assert_cmpint (box.x0, ==, -1);
  g_assert_cmpint (box.y0, ==, 6);
  g_assert_cmpint (box.x1, ==, 7);
  g_assert_cmpint (box.y1, ==, 20);
}

static void
assert_ring (const RcRing *ring, const RcRing *expected)
{
  g_assert_cmpuint (ring->len, ==, expected->len);
  for (guint i = 0; i < ring->len; i++)
    {
      g_assert_cmpint (rc_ring_get (ring, i)->x, ==, rc_ring_get (expected, i)->x);
      g_assert_cmpint (rc_ring_get (ring, i)->y, ==, rc_ring_get (expected, i)->y);
    }
}

static void
test_simplify (void)
{
  g_autoptr (GArray) square = RING ({ 0, 0 }, { 10, 0 }, { 10, 10 }, { 0, 10 });
  g_autoptr (GArray) between = RING ({ 0, 0 }, { 0, 0 }, { 5, 0 }, { 7, 0 }, { 10, 0 }, { 10, 10 }, { 10, 10 },
                                     { 5, 10 }, { 0, 10 }, { 0, 5 }, { 0, 0 });
  g_autoptr (GArray) start_between = RING ({ 5, 0 }, { 10, 0 }, { 10, 10 }, { 0, 10 }, { 0, 0 }, { 3, 0 });
  g_autoptr (GArray) turned_square = RING ({ 10, 0 }, { 10, 10 }, { 0, 10 }, { 0, 0 });
  g_autoptr (GArray) spike = RING ({ 0, 0 }, { 10, 0 }, { 20, 0 }, { 10, 0 }, { 10, 10 });
  g_autoptr (GArray) same = RING ({ 3, 3 }, { 3, 3 }, { 3, 3 });

  rc_ring_simplify (between);
  assert_ring (between, square);
  rc_ring_simplify (start_between);
  assert_ring (start_between, turned_square);
  rc_ring_simplify (same);
  g_assert_cmpuint (same->len, ==, 1);

  /* a spike is a fault to report, not a point to drop */
  rc_ring_simplify (spike);
  g_assert_cmpuint (spike->len, ==, 4);
}

static void
test_normalize (void)
{
  g_autoptr (RcPolygon) polygon = rc_polygon_new_take (RING ({ 0, 0 }, { 0, 9 }, { 9, 9 }, { 9, 5 }, { 9, 0 }));
  g_autoptr (RcPolygon) copy = NULL;

  g_ptr_array_add (polygon->holes, RING ({ 2, 2 }, { 4, 2 }, { 4, 4 }));
  rc_polygon_normalize (polygon);
  g_assert_cmpuint (polygon->outer->len, ==, 4);
  g_assert_cmpint (rc_ring_compute_area (polygon->outer), ==, 162);
  g_assert_cmpint (rc_ring_compute_area (g_ptr_array_index (polygon->holes, 0)), ==, -4);

  copy = rc_polygon_copy (polygon);
  rc_polygon_normalize (copy);
  assert_ring (copy->outer, polygon->outer);
  assert_ring (g_ptr_array_index (copy->holes, 0), g_ptr_array_index (polygon->holes, 0));
}

/* A room with a column, every wall off by a little one way or the other: it gets smaller, the column bigger. */
static void
test_straighten (void)
{
  g_autoptr (GPtrArray) floor = rc_region_new ();
  g_autoptr (GArray) square = RING ({ 2, 1 }, { 997, 1 }, { 997, 400 }, { 500, 400 }, { 500, 998 }, { 2, 998 });
  g_autoptr (GArray) around = RING ({ 98, 99 }, { 98, 202 }, { 201, 202 }, { 201, 99 });
  RcPolygon *room = rc_polygon_new_take (
      RING ({ 0, 0 }, { 500, 1 }, { 1000, 0 }, { 997, 401 }, { 502, 400 }, { 500, 1000 }, { 2, 998 }));
  g_ptr_array_add (room->holes, RING ({ 100, 100 }, { 98, 200 }, { 201, 202 }, { 200, 99 }));
  g_ptr_array_add (floor, room);

  g_autoptr (GPtrArray) straight = rc_region_straighten (floor);
  g_autoptr (GPtrArray) again = rc_region_straighten (straight);
  g_assert_cmpuint (straight->len, ==, 1);
  assert_ring (((RcPolygon *)g_ptr_array_index (straight, 0))->outer, square);
  assert_ring (g_ptr_array_index (((RcPolygon *)g_ptr_array_index (straight, 0))->holes, 0), around);
  assert_ring (((RcPolygon *)g_ptr_array_index (again, 0))->outer, square);
}

/* A slit between two walls stays one: the floor is as wide as before on either side of it, and no wider. */
static void
test_straighten_slit (void)
{
  g_autoptr (GPtrArray) floor = rc_region_new ();
  g_autoptr (GArray) slit
      = RING ({ 0, 0 }, { 900, 0 }, { 900, 700 }, { 0, 700 }, { 0, 302 }, { 500, 302 }, { 500, 298 }, { 0, 298 });
  g_ptr_array_add (floor, rc_polygon_new_take (RING ({ 0, 0 }, { 900, 0 }, { 900, 700 }, { 0, 700 }, { 0, 302 },
                                                     { 500, 300 }, { 0, 298 })));
  g_autoptr (GPtrArray) straight = rc_region_straighten (floor);
  assert_ring (((RcPolygon *)g_ptr_array_index (straight, 0))->outer, slit);
}

/* Turning */

static void
test_rotate_exactly (void)
{
  RcPoint point = { 1234567, -7654321 };
  static const struct
  {
    double  degrees;
    RcPoint to;
  } cases[] = {
    { 0.0, { 1234567, -7654321 } },    { 90.0, { 7654321, 1234567 } },    { 180.0, { -1234567, 7654321 } },
    { 270.0, { -7654321, -1234567 } }, { 360.0, { 1234567, -7654321 } },  { -90.0, { -7654321, -1234567 } },
    { 450.0, { 7654321, 1234567 } },   { -720.0, { 1234567, -7654321 } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      RcPoint turned = rc_point_rotate (point, cases[i].degrees);

      g_assert_cmpint (turned.x, ==, cases[i].to.x);
      g_assert_cmpint (turned.y, ==, cases[i].to.y);
    }

  /* 3-4-5: sin 53.13 degrees = 0.8 */
  g_assert_cmpint (rc_point_rotate ((RcPoint){ 5000, 0 }, 53.13010235415598).x, ==, 3000);
  g_assert_cmpint (rc_point_rotate ((RcPoint){ 5000, 0 }, 53.13010235415598).y, ==, 4000);
}

/* Turned by quarter turns, moved or mirrored, a region keeps its area and its boundary exactly. */
static void
test_area_stays (void)
{
  g_autoptr (GPtrArray) region = rc_region_new ();
  RcPolygon *polygon = rc_polygon_new_take (RING ({ 3, 1 }, { 977, 12 }, { 801, 503 }, { 411, 222 }, { 17, 660 }));
  RcArea     area;

  g_ptr_array_add (polygon->holes, RING ({ 100, 100 }, { 107, 190 }, { 180, 130 }));
  g_ptr_array_add (region, polygon);
  area = rc_region_compute_area (region);

  for (int quarter = -4; quarter <= 4; quarter++)
    {
      g_autoptr (GPtrArray) turned = rc_region_rotate (region, 90.0 * quarter);
      g_autoptr (GPtrArray) moved = rc_region_move (turned, 1234567, -89);
      const RcPolygon *copy = g_ptr_array_index (moved, 0);

      g_assert_cmpint (rc_region_compute_area (moved), ==, area);
      g_assert_cmpint (rc_ring_compute_length (copy->outer), ==, rc_ring_compute_length (polygon->outer));
      g_assert_true (rc_polygon_check (copy, NULL));
      for (guint i = 0; i < copy->outer->len; i++)
        rc_ring_get (copy->outer, i)->x *= -1;
      g_assert_cmpint (rc_ring_compute_area (copy->outer), ==, -rc_ring_compute_area (polygon->outer));
    }

  /* a turn there and back is within a tick */
  for (int degrees = 1; degrees < 90; degrees++)
    {
      RcPoint point = { 5000000, 3000001 };
      RcPoint back = rc_point_rotate (rc_point_rotate (point, degrees), -degrees);

      g_assert_cmpint (rc_point_distance (point, back), <=, 1);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/polygon/area/published rooms", test_published_rooms);
  g_test_add_func ("/polygon/area/by coordinates", test_area_by_coordinates);
  g_test_add_func ("/polygon/area/of nothing is nothing", test_area_of_nothing);
  g_test_add_func ("/polygon/area/less the holes", test_area_less_holes);
  g_test_add_func ("/polygon/area/far from the origin", test_area_far_away);
  g_test_add_func ("/polygon/length/distances to the nearest tick", test_distances);
  g_test_add_func ("/polygon/length/boundary and box", test_boundary);
  g_test_add_func ("/polygon/length/box of a region", test_region_box);
  g_test_add_func ("/polygon/normalize/drops points that say nothing", test_simplify);
  g_test_add_func ("/polygon/normalize/turns rings the normal way", test_normalize);
  g_test_add_func ("/polygon/straighten/walls out of square", test_straighten);
  g_test_add_func ("/polygon/straighten/a slit stays", test_straighten_slit);
  g_test_add_func ("/polygon/rotate/quarter turns are exact", test_rotate_exactly);
  g_test_add_func ("/polygon/rotate/areas stay", test_area_stays);

  return g_test_run ();
}
