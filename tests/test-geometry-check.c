/* Polygons: faults, and which points lie inside. */
#include "polygon.h"

#include "rowcut-error.h"

#include <string.h>

#define RING(...)                                                                                                      \
  rc_ring_new_from_points ((const RcPoint[]){ __VA_ARGS__ },                                                           \
                           sizeof ((const RcPoint[]){ __VA_ARGS__ }) / sizeof (RcPoint))

static RcPolygon *
make_rectangle (RcLength width, RcLength length)
{
  return rc_polygon_new_from_box ((RcBox){ 0, 0, width, length });
}

typedef struct
{
  RcPoint            points[8];
  guint              n_points;
  RcPoint            hole[5];
  guint              n_hole;
  gboolean           is_faulty;
  RcPolygonFaultKind kind;
  const char        *message;
} FaultCase;

static const FaultCase fault_cases[] = {
  { { { 0, 0 }, { 9, 0 }, { 9, 9 } }, 3, { { 0 } }, 0, FALSE, 0, NULL },
  { { { 0, 0 }, { 9, 0 } }, 2, { { 0 } }, 0, TRUE, RC_POLYGON_FAULT_FEW_CORNERS, "fewer than three corners" },
  { { { 0, 0 }, { 9, 0 }, { 9, 0 }, { 9, 9 } },
    4,
    { { 0 } },
    0,
    TRUE,
    RC_POLYGON_FAULT_NO_LENGTH,
    "edge 2 has no length" },
  /* a bow tie crosses in the middle */
  { { { 0, 0 }, { 3200, 3200 }, { 3200, 0 }, { 0, 3200 } },
    4,
    { { 0 } },
    0,
    TRUE,
    RC_POLYGON_FAULT_EDGES_MEET,
    "edge 1 meets edge 3 at x 10 mm, y 10 mm" },
  /* a corner on another edge */
  { { { 0, 0 }, { 1600, 0 }, { 1600, 1600 }, { 800, 0 }, { 0, 1600 } },
    5,
    { { 0 } },
    0,
    TRUE,
    RC_POLYGON_FAULT_EDGES_MEET,
    "edge 1 meets edge 3 at x 5 mm, y 0 mm" },
  /* two corners at one point */
  { { { 0, 0 }, { 8, 0 }, { 4, 4 }, { 8, 8 }, { 0, 8 }, { 4, 4 } },
    6,
    { { 0 } },
    0,
    TRUE,
    RC_POLYGON_FAULT_EDGES_MEET,
    "edge 2 meets edge 5" },
  /* a wall walked back over the one before it */
  { { { 0, 0 }, { 9, 0 }, { 4, 0 }, { 4, 9 } },
    4,
    { { 0 } },
    0,
    TRUE,
    RC_POLYGON_FAULT_EDGES_MEET,
    "edge 1 meets edge 2" },
  /* the first wall along the last */
  { { { 0, 0 }, { 4, 0 }, { 4, 9 }, { 9, 5 }, { 9, 0 } },
    5,
    { { 0 } },
    0,
    TRUE,
    RC_POLYGON_FAULT_EDGES_MEET,
    "edge 1 meets edge 5" },
  /* flat */
  { { { 0, 0 }, { 5, 0 }, { 9, 0 } }, 3, { { 0 } }, 0, TRUE, RC_POLYGON_FAULT_EDGES_MEET, "meets" },
  /* edges along one another */
  { { { 0, 0 }, { 9, 0 }, { 9, 4 }, { 6, 4 }, { 6, 0 }, { 3, 0 }, { 3, 4 }, { 0, 4 } },
    8,
    { { 0 } },
    0,
    TRUE,
    RC_POLYGON_FAULT_EDGES_MEET,
    "edge 1 meets edge 4" },
  /* holes: good, crossing, touching, outside */
  { { { 0, 0 }, { 9, 0 }, { 9, 9 }, { 0, 9 } }, 4, { { 2, 2 }, { 2, 4 }, { 4, 4 } }, 3, FALSE, 0, NULL },
  { { { 0, 0 }, { 9, 0 }, { 9, 9 }, { 0, 9 } },
    4,
    { { 2, 2 }, { 2, 4 }, { 14, 4 } },
    3,
    TRUE,
    RC_POLYGON_FAULT_EDGES_MEET,
    "edge 2 meets edge 2 of hole 1" },
  { { { 0, 0 }, { 9, 0 }, { 9, 9 }, { 0, 9 } },
    4,
    { { 2, 2 }, { 2, 4 }, { 9, 4 } },
    3,
    TRUE,
    RC_POLYGON_FAULT_EDGES_MEET,
    "edge 2 meets edge 2 of hole 1" },
  { { { 0, 0 }, { 9, 0 }, { 9, 9 }, { 0, 9 } },
    4,
    { { 12, 2 }, { 12, 4 }, { 14, 4 } },
    3,
    TRUE,
    RC_POLYGON_FAULT_HOLE_OUTSIDE,
    "hole 1 lies outside" },
  { { { 0, 0 }, { 9, 0 }, { 9, 9 }, { 0, 9 } },
    4,
    { { 2, 2 }, { 4, 4 } },
    2,
    TRUE,
    RC_POLYGON_FAULT_FEW_CORNERS,
    "hole 1 has fewer than three" },
};

static void
test_faults (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (fault_cases); i++)
    {
      const FaultCase *one = &fault_cases[i];
      g_autoptr (RcPolygon) polygon = rc_polygon_new_take (rc_ring_new_from_points (one->points, one->n_points));
      g_autoptr (GError) error = NULL;
      RcPolygonFault fault = { 0 };

      if (one->n_hole > 0)
        g_ptr_array_add (polygon->holes, rc_ring_new_from_points (one->hole, one->n_hole));

      g_test_message ("case %u", i);
      g_assert_cmpint (rc_polygon_check (polygon, &error), ==, !one->is_faulty);
      g_assert_cmpint (rc_polygon_find_fault (polygon, &fault), ==, one->is_faulty);
      if (!one->is_faulty)
        {
          g_assert_no_error (error);
          continue;
        }
      g_assert_error (error, RC_ERROR, RC_ERROR_GEOMETRY);
      g_assert_nonnull (strstr (error->message, one->message));
      g_assert_cmpint (fault.kind, ==, one->kind);
    }
}

static void
test_hole_in_hole (void)
{
  g_autoptr (RcPolygon) polygon = make_rectangle (100, 100);
  g_autoptr (GError) error = NULL;

  g_ptr_array_add (polygon->holes, RING ({ 10, 10 }, { 10, 60 }, { 60, 60 }, { 60, 10 }));
  g_ptr_array_add (polygon->holes, RING ({ 70, 70 }, { 70, 80 }, { 80, 80 }));
  g_assert_true (rc_polygon_check (polygon, NULL));
  g_ptr_array_add (polygon->holes, RING ({ 20, 20 }, { 20, 30 }, { 30, 30 }));
  g_assert_false (rc_polygon_check (polygon, &error));
  g_assert_nonnull (strstr (error->message, "hole 3 lies inside hole 1"));
}

/* Edges that miss each other by less than doubles can tell. */
static void
test_fault_is_exact (void)
{
  RcLength far = RC_LENGTH_MAX;
  g_autoptr (RcPolygon) misses = rc_polygon_new_take (RING ({ 0, 0 }, { far, far - 1 }, { far, far }, { 1, 1 }));
  g_autoptr (RcPolygon) touches
      = rc_polygon_new_take (RING ({ 0, 0 }, { far, far - 1 }, { far, far }, { 1, 1 }, { 0, 0 }));

  g_assert_true (rc_polygon_check (misses, NULL));
  g_assert_false (rc_polygon_check (touches, NULL));
}

static void
test_locate (void)
{
  g_autoptr (RcPolygon) polygon = make_rectangle (10, 10);
  static const struct
  {
    RcPoint point;
    int     place;
  } cases[] = {
    { { 1, 1 }, 1 },   { { 0, 0 }, 0 },   { { 10, 10 }, 0 }, { { 5, 0 }, 0 },   { { 10, 4 }, 0 },   { { 11, 5 }, -1 },
    { { -1, 0 }, -1 }, { { 5, 11 }, -1 }, { { 5, 5 }, -1 },  { { 4, 4 }, 0 },   { { 5, 4 }, 0 },    { { 6, 5 }, 0 },
    { { 3, 5 }, 1 },   { { 7, 6 }, 1 },   { { 20, 4 }, -1 }, { { -5, 4 }, -1 }, { { -5, 10 }, -1 },
  };

  g_ptr_array_add (polygon->holes, RING ({ 4, 4 }, { 4, 6 }, { 6, 6 }, { 6, 4 }));
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpint (rc_polygon_locate (polygon, cases[i].point), ==, cases[i].place);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/polygon/check/names the edges that meet", test_faults);
  g_test_add_func ("/polygon/check/finds a hole in a hole", test_hole_in_hole);
  g_test_add_func ("/polygon/check/is exact", test_fault_is_exact);
  g_test_add_func ("/polygon/locate/inside, boundary, outside", test_locate);

  return g_test_run ();
}
