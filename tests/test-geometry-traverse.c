/* Closing a walk round a room or a field. */
#include "traverse.h"

#include <math.h>

#define FOOT RC_TICKS_PER_FOOT
#define INCH RC_TICKS_PER_INCH

/* "Sample Traverse Computations", scribd 279716815: six legs. The printed latitudes and departures have four decimals,
 * the printed lengths two; legs are made here from latitude and departure, so lengths agree to half a hundredth. The
 * source's unit is taken as feet. All sums, corrections and adjusted legs agree within 0.0001 of the printed, the area
 * within 0.02, when recomputed from the printed legs. */
typedef struct
{
  double length, latitude, departure;
  double latitude_correction, departure_correction;
  double adjusted_latitude, adjusted_departure, adjusted_length;
} FieldLeg;

static const FieldLeg field[] = {
  { 495.85, 493.5672, 47.5251, -1.6677, -1.7923, 491.8995, 45.7328, 494.0208 },
  { 850.62, 590.5342, 612.2285, -2.8609, -3.0747, 587.6733, 609.1538, 846.4208 },
  { 855.45, -325.5265, 791.0924, -2.8772, -3.0922, -328.4036, 788.0003, 853.6940 },
  { 1020.87, -996.9916, 219.5069, -3.4335, -3.6901, -1000.4252, 215.8168, 1023.4390 },
  { 1117.26, -121.9557, -1110.5840, -3.7577, -4.0385, -125.7134, -1114.6225, 1121.6894 },
  { 660.08, 377.1895, -541.6952, -2.2201, -2.3860, 374.9694, -544.0812, 660.7771 },
};

#define N_FIELD G_N_ELEMENTS (field)

static double
to_feet (RcLength length)
{
  return (double)length / (double)FOOT;
}

static void
make_field_legs (RcLeg legs[N_FIELD])
{
  for (guint i = 0; i < N_FIELD; i++)
    {
      legs[i].bearing_degrees = atan2 (field[i].departure, field[i].latitude) * 180.0 / G_PI;
      legs[i].length = llround (hypot (field[i].latitude, field[i].departure) * (double)FOOT);
    }
}

static void
test_published_closure (void)
{
  RcLeg     legs[N_FIELD];
  RcClosure closure;

  make_field_legs (legs);
  rc_traverse_compute_closure (legs, N_FIELD, &closure);

  g_assert_cmpfloat_with_epsilon (to_feet (closure.perimeter), 5000.13, 0.03);
  g_assert_cmpfloat_with_epsilon (to_feet (closure.dy), 16.8171, 0.0001);
  g_assert_cmpfloat_with_epsilon (to_feet (closure.dx), 18.0737, 0.0001);
  g_assert_cmpfloat_with_epsilon (to_feet (closure.error), 24.6876, 0.0002);
  g_assert_cmpfloat_with_epsilon (closure.ratio, 202.5, 0.1); /* printed as 1/200 */
  rc_closure_clear (&closure);
}

static void
test_published_adjustment (void)
{
  RcLeg legs[N_FIELD];
  g_autoptr (GArray) ring = NULL;
  g_autofree char *area = NULL;

  make_field_legs (legs);
  ring = rc_traverse_compute_ring (legs, N_FIELD, (RcPoint){ 0, 0 }, TRUE);
  g_assert_cmpuint (ring->len, ==, N_FIELD);

  for (guint i = 0; i < N_FIELD; i++)
    {
      const RcPoint *from = rc_ring_get (ring, i);
      const RcPoint *to = rc_ring_get (ring, (i + 1) % N_FIELD);
      double         latitude = to_feet (to->y - from->y);
      double         departure = to_feet (to->x - from->x);

      /* rounded to ticks at both ends: 0.00002 ft each */
      g_assert_cmpfloat_with_epsilon (latitude, field[i].adjusted_latitude, 0.0002);
      g_assert_cmpfloat_with_epsilon (departure, field[i].adjusted_departure, 0.0002);
      g_assert_cmpfloat_with_epsilon (latitude - field[i].latitude, field[i].latitude_correction, 0.0002);
      g_assert_cmpfloat_with_epsilon (departure - field[i].departure, field[i].departure_correction, 0.0002);
      g_assert_cmpfloat_with_epsilon (to_feet (rc_point_distance (*from, *to)), field[i].adjusted_length, 0.0002);
    }

  /* printed 1,715,250.05, recomputed 1,715,250.06; a tick in each corner is worth 0.02 */
  g_assert_cmpfloat_with_epsilon (fabs ((double)rc_ring_compute_area (ring)) / (2.0 * (double)FOOT * (double)FOOT),
                                  1715250.05, 0.05);
}

/* Walls 12'0", 15'0", 12'1", 15'2" walked east, north, west, south; arithmetic from the rule. */
static const RcLeg rectangle[] = {
  { 90.0, 144 * INCH },
  { 0.0, 180 * INCH },
  { 270.0, 145 * INCH },
  { 180.0, 182 * INCH },
};

static void
test_rectangle_closure (void)
{
  RcClosure closure;

  rc_traverse_compute_closure (rectangle, 4, &closure);
  g_assert_cmpint (closure.dx, ==, -INCH);
  g_assert_cmpint (closure.dy, ==, -2 * INCH);
  g_assert_cmpint (closure.perimeter, ==, 651 * INCH);
  g_assert_cmpint (closure.error, ==, rc_point_distance ((RcPoint){ 0, 0 }, (RcPoint){ INCH, 2 * INCH }));
  g_assert_cmpfloat_with_epsilon ((double)closure.error / (double)INCH, 2.236, 0.0005);
  g_assert_cmpfloat_with_epsilon (closure.ratio, 291.1, 0.05);

  /* a changed north or south wall leaves 1 in open, an east or west wall 2 in */
  g_assert_cmpuint (closure.suspects->len, ==, 4);
  g_assert_cmpuint (g_array_index (closure.suspects, guint, 0), ==, 1);
  g_assert_cmpuint (g_array_index (closure.suspects, guint, 1), ==, 3);
  g_assert_cmpuint (g_array_index (closure.suspects, guint, 2), ==, 0);
  g_assert_cmpuint (g_array_index (closure.suspects, guint, 3), ==, 2);
  rc_closure_clear (&closure);
}

static void
test_rectangle_adjustment (void)
{
  static const double corrections[4][2] = { { 0.221, 0.442 }, { 0.276, 0.553 }, { 0.223, 0.445 }, { 0.280, 0.559 } };
  g_autoptr (GArray) ring = rc_traverse_compute_ring (rectangle, 4, (RcPoint){ 7, 9 }, TRUE);

  g_assert_cmpuint (ring->len, ==, 4);
  g_assert_cmpint (rc_ring_get (ring, 0)->x, ==, 7);
  g_assert_cmpint (rc_ring_get (ring, 0)->y, ==, 9);
  for (guint i = 0; i < 4; i++)
    {
      const RcPoint *from = rc_ring_get (ring, i);
      const RcPoint *to = rc_ring_get (ring, (i + 1) % 4);
      RcPoint        step = rc_leg_get_step (&rectangle[i]);

      /* three decimals printed, corners on ticks of 0.00025 in */

      g_assert_cmpfloat_with_epsilon ((double)(to->x - from->x - step.x) / (double)INCH, corrections[i][0], 0.00075);
      g_assert_cmpfloat_with_epsilon ((double)(to->y - from->y - step.y) / (double)INCH, corrections[i][1], 0.00075);
    }
}

static void
test_without_spreading (void)
{
  g_autoptr (GArray) ring = rc_traverse_compute_ring (rectangle, 4, (RcPoint){ 0, 0 }, FALSE);

  g_assert_cmpuint (ring->len, ==, 4);
  g_assert_cmpint (rc_ring_get (ring, 1)->x, ==, 144 * INCH);
  g_assert_cmpint (rc_ring_get (ring, 2)->y, ==, 180 * INCH);
  g_assert_cmpint (rc_ring_get (ring, 3)->x, ==, -INCH);
  g_assert_cmpint (rc_ring_get (ring, 3)->y, ==, 180 * INCH); /* the last wall runs from here to the start */
}

/* 12 in too far north: a wall of 6 in cannot be 12 in too long, the long one on the same hand can. */
static void
test_short_wall_cannot_shrink_away (void)
{
  static const RcLeg legs[] = {
    { 0.0, 6 * INCH },   { 90.0, 100 * INCH }, { 0.0, 90 * INCH },
    { 90.0, 50 * INCH }, { 180.0, 84 * INCH }, { 270.0, 150 * INCH },
  };
  RcClosure closure;

  rc_traverse_compute_closure (legs, G_N_ELEMENTS (legs), &closure);
  g_assert_cmpint (closure.dx, ==, 0);
  g_assert_cmpint (closure.dy, ==, 12 * INCH);
  g_assert_cmpuint (g_array_index (closure.suspects, guint, 0), ==, 2);
  g_assert_cmpuint (g_array_index (closure.suspects, guint, 1), ==, 4);
  g_assert_cmpuint (g_array_index (closure.suspects, guint, 2), ==, 0);
  rc_closure_clear (&closure);
}

static void
test_closed_walk (void)
{
  static const RcLeg legs[] = { { 90.0, 12 * FOOT }, { 0.0, 9 * FOOT }, { 270.0, 12 * FOOT }, { 180.0, 9 * FOOT } };
  g_autoptr (GArray) spread = rc_traverse_compute_ring (legs, 4, (RcPoint){ 0, 0 }, TRUE);
  g_autoptr (GArray) plain = rc_traverse_compute_ring (legs, 4, (RcPoint){ 0, 0 }, FALSE);
  RcClosure closure;

  rc_traverse_compute_closure (legs, 4, &closure);
  g_assert_cmpint (closure.error, ==, 0);
  g_assert_cmpfloat (closure.ratio, ==, 0.0);
  g_assert_cmpuint (closure.suspects->len, ==, 0);
  g_assert_cmpmem (spread->data, 4 * sizeof (RcPoint), plain->data, 4 * sizeof (RcPoint));
  g_assert_cmpint (rc_ring_compute_area (plain), ==, 2 * 108 * FOOT * FOOT);
  rc_closure_clear (&closure);
  rc_closure_clear (&closure); /* twice does no harm */
}

static void
test_degenerate_walks (void)
{
  static const RcLeg one[] = { { 30.0, FOOT } };
  static const RcLeg nothing[] = { { 30.0, 0 }, { 60.0, 0 } };
  g_autoptr (GArray) empty = rc_traverse_compute_ring (NULL, 0, (RcPoint){ 0, 0 }, TRUE);
  g_autoptr (GArray) single = rc_traverse_compute_ring (one, 1, (RcPoint){ 5, 6 }, TRUE);
  g_autoptr (GArray) still = rc_traverse_compute_ring (nothing, 2, (RcPoint){ 5, 6 }, TRUE);
  RcClosure closure;

  g_assert_cmpuint (empty->len, ==, 0);
  g_assert_cmpuint (single->len, ==, 1);
  g_assert_cmpuint (still->len, ==, 2);
  rc_traverse_compute_closure (one, 1, &closure);
  g_assert_cmpint (closure.error, ==, FOOT);
  g_assert_cmpuint (closure.suspects->len, ==, 1);
  rc_closure_clear (&closure);
}

static void
test_steps (void)
{
  static const struct
  {
    double  bearing;
    RcPoint step;
  } cases[] = {
    { 0.0, { 0, 1000 } },   { 90.0, { 1000, 0 } },     { 180.0, { 0, -1000 } },  { 270.0, { -1000, 0 } },
    { 360.0, { 0, 1000 } }, { -90.0, { -1000, 0 } },   { 450.0, { 1000, 0 } },   { 45.0, { 707, 707 } },
    { 30.0, { 500, 866 } }, { 210.0, { -500, -866 } }, { -30.0, { -500, 866 } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      RcPoint step = rc_leg_get_step (&(RcLeg){ cases[i].bearing, 1000 });

      g_assert_cmpint (step.x, ==, cases[i].step.x);
      g_assert_cmpint (step.y, ==, cases[i].step.y);
    }
}

/* Walls of a ring as legs. */
static GArray *
ring_to_legs (const RcRing *ring)
{
  GArray *legs = g_array_new (FALSE, FALSE, sizeof (RcLeg));

  for (guint i = 0; i < ring->len; i++)
    {
      const RcPoint *from = rc_ring_get (ring, i);
      const RcPoint *to = rc_ring_get (ring, (i + 1) % ring->len);
      RcLeg          leg = { atan2 ((double)(to->x - from->x), (double)(to->y - from->y)) * 180.0 / G_PI,
                             rc_point_distance (*from, *to) };

      g_array_append_val (legs, leg);
    }

  return legs;
}

/* A room round a middle, corners in order, counter-clockwise. */
static RcRing *
make_room (int n)
{
  RcRing *ring = rc_ring_new ();

  for (int i = 0; i < n; i++)
    {
      double  reach = g_test_rand_double_range (2.0, 5.0) * (double)RC_TICKS_PER_M;
      double  angle = 2.0 * G_PI * (i + g_test_rand_double_range (0.0, 0.4)) / n;
      RcPoint point = { llround (reach * cos (angle)), llround (reach * sin (angle)) };

      g_array_append_val (ring, point);
    }

  return ring;
}

/* Interior angles sum to (n - 2) x 180 degrees: from the bearings of neighbouring walls. */
static void
test_interior_angles (void)
{
  for (int n = 3; n <= 40; n++)
    {
      g_autoptr (GArray) ring = make_room (n);
      g_autoptr (GArray) legs = ring_to_legs (ring);
      double sum = 0.0;

      for (int i = 0; i < n; i++)
        {
          double turn = g_array_index (legs, RcLeg, (i + 1) % n).bearing_degrees
                        - g_array_index (legs, RcLeg, i).bearing_degrees;

          /* a left turn makes the bearing smaller */
          sum += 180.0 + remainder (turn, 360.0);
        }
      g_assert_cmpfloat_with_epsilon (sum, 180.0 * (n - 2), 1e-6);
    }
}

/* One wall of a room measured wrong, at right angles or not: no wall explains the error better than that one. */
static void
test_finds_the_wrong_wall (void)
{
  for (int round = 0; round < 2000; round++)
    {
      int n = g_test_rand_int_range (3, 20);
      g_autoptr (GArray) ring = make_room (n);
      g_autoptr (GArray) legs = ring_to_legs (ring);
      guint     wrong = (guint)g_test_rand_int_range (0, n);
      RcClosure closure;
      guint     first;

      g_array_index (legs, RcLeg, wrong).length += 12 * INCH;
      rc_traverse_compute_closure ((const RcLeg *)legs->data, (guint)n, &closure);
      first = g_array_index (closure.suspects, guint, 0);
      /* rounding alone leaves some ticks open; a wall nearly parallel may by chance take those up too */
      if (first != wrong)
        {
          double apart = remainder (g_array_index (legs, RcLeg, first).bearing_degrees
                                        - g_array_index (legs, RcLeg, wrong).bearing_degrees,
                                    180.0);

          g_assert_cmpfloat (fabs (apart), <, 0.1);
        }
      g_assert_cmpuint (closure.suspects->len, ==, (guint)n);
      rc_closure_clear (&closure);
    }
}

/* Spread or not, a walk with errors everywhere gives a ring that closes, and spreading moves no corner by more than the
 * error. */
static void
test_spreading_is_gentle (void)
{
  for (int round = 0; round < 1000; round++)
    {
      int n = g_test_rand_int_range (3, 20);
      g_autoptr (GArray) room = make_room (n);
      g_autoptr (GArray) legs = ring_to_legs (room);
      g_autoptr (GArray) spread = NULL;
      g_autoptr (GArray) plain = NULL;
      RcClosure closure;

      for (int i = 0; i < n; i++)
        g_array_index (legs, RcLeg, i).length += g_test_rand_int_range (-2000, 2000);
      rc_traverse_compute_closure ((const RcLeg *)legs->data, (guint)n, &closure);
      spread = rc_traverse_compute_ring ((const RcLeg *)legs->data, (guint)n, (RcPoint){ 0, 0 }, TRUE);
      plain = rc_traverse_compute_ring ((const RcLeg *)legs->data, (guint)n, (RcPoint){ 0, 0 }, FALSE);

      for (int i = 0; i < n; i++)
        g_assert_cmpint (rc_point_distance (*rc_ring_get (spread, i), *rc_ring_get (plain, i)), <=, closure.error + 1);
      rc_closure_clear (&closure);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/traverse/closure/published field", test_published_closure);
  g_test_add_func ("/traverse/closure/measured rectangle", test_rectangle_closure);
  g_test_add_func ("/traverse/closure/a short wall cannot shrink away", test_short_wall_cannot_shrink_away);
  g_test_add_func ("/traverse/closure/of a closed walk is nothing", test_closed_walk);
  g_test_add_func ("/traverse/closure/of next to nothing", test_degenerate_walks);
  g_test_add_func ("/traverse/closure/names the wall measured wrong", test_finds_the_wrong_wall);
  g_test_add_func ("/traverse/ring/published field", test_published_adjustment);
  g_test_add_func ("/traverse/ring/measured rectangle", test_rectangle_adjustment);
  g_test_add_func ("/traverse/ring/without spreading", test_without_spreading);
  g_test_add_func ("/traverse/ring/spreading is gentle", test_spreading_is_gentle);
  g_test_add_func ("/traverse/leg/steps", test_steps);
  g_test_add_func ("/traverse/leg/interior angles", test_interior_angles);

  return g_test_run ();
}
