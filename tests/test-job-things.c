/* What stands on the floor of a room: cut-outs with corners and round ones. */
#include <math.h>
#include <string.h>

#include "room.h"
#include "wall-arc.h"

#define FT (12 * RC_TICKS_PER_INCH)

static const RcClosureLimits limits = { 3 * RC_TICKS_PER_INCH, RC_TICKS_PER_INCH / 4 };

static RcRoom *
new_square (RcLength side)
{
  RcRoom       *room = rc_room_new ("r", "Room");
  const RcPoint points[] = { { 0, 0 }, { 0, side }, { side, side }, { side, 0 } };

  g_array_append_vals (room->outline, points, G_N_ELEMENTS (points));
  return room;
}

static RcPolygon *
new_floor (const RcRoom *room)
{
  g_autoptr (GError) error = NULL;
  RcPolygon *floor = rc_room_compute_polygon (room, &limits, &error);

  g_assert_no_error (error);
  return floor;
}

static RcCutout *
new_box (RcCutoutKind kind, RcLength x0, RcLength y0, RcLength x1, RcLength y1)
{
  const RcPoint points[] = { { x0, y0 }, { x1, y0 }, { x1, y1 }, { x0, y1 } };

  return rc_cutout_new_take (kind, rc_ring_new_from_points (points, G_N_ELEMENTS (points)));
}

/* The circle's own area and length (Archimedes, Measurement of a Circle: 3 10/71 < pi < 3 1/7, and M_PI between). */
static void
test_round (void)
{
  static const RcLength DIAMETERS[] = { 6 * RC_TICKS_PER_INCH, 457 * RC_TICKS_PER_MM + 1, 10 * FT };

  for (guint d = 0; d < G_N_ELEMENTS (DIAMETERS); d++)
    {
      g_autoptr (RcRoom) room = new_square (12 * FT);
      double radius = (double)DIAMETERS[d] / 2;
      g_ptr_array_add (room->cutouts,
                       rc_cutout_new_round (RC_CUTOUT_COLUMN, (RcPoint){ 6 * FT, 6 * FT }, DIAMETERS[d]));
      g_autoptr (RcPolygon) floor = new_floor (room);
      g_assert_cmpuint (floor->holes->len, ==, 1);
      const RcRing *hole = g_ptr_array_index (floor->holes, 0);
      for (guint i = 0; i < hole->len; i++)
        {
          RcPoint a = *rc_ring_get (hole, i), b = *rc_ring_get (hole, (i + 1) % hole->len);
          double  off = hypot ((double)a.x - 6 * FT, (double)a.y - 6 * FT) - radius;
          double  sag = radius - hypot ((double)(a.x + b.x) / 2 - 6 * FT, (double)(a.y + b.y) / 2 - 6 * FT);
          g_assert_cmpfloat (fabs (off), <=, 1.5); /* on the circle, to the tick */
          g_assert_cmpfloat (sag, <=, (double)RC_WALL_ARC_MAX_OFF);
        }
      /* No floor is lost, and at most 1 mm all round is laid too much. Areas are doubled square ticks. */
      double all = 2 * pow (12 * FT, 2), taken = all - (double)rc_polygon_compute_area (floor);
      double circle = 2 * G_PI * radius * radius, breadth = 2 * 2 * G_PI * radius;
      g_assert_cmpfloat (taken, <=, circle + 2 * breadth);
      g_assert_cmpfloat (taken, >=, circle - breadth * (double)RC_WALL_ARC_MAX_OFF);
      g_assert_cmpfloat (taken / 2, >, (3 + 10.0 / 71) * radius * radius * 0.97);
    }
}

static void
test_round_at_a_wall (void)
{
  g_autoptr (RcRoom) room = new_square (12 * FT);
  RcCutout *column = rc_cutout_new_round (RC_CUTOUT_COLUMN, (RcPoint){ FT / 2, 6 * FT }, FT);

  /* It touches the wall: cut off the outline or a hole, but no fault. */
  g_ptr_array_add (room->cutouts, column);
  g_autoptr (RcPolygon) floor = new_floor (room);
  g_assert_cmpint (rc_polygon_compute_area (floor), <, 2 * 12 * FT * 12 * FT);
  rc_cutout_move (column, (RcPoint){ -RC_TICKS_PER_INCH, 0 });
  g_autoptr (GError) error = NULL;
  g_assert_null (rc_room_compute_polygon (room, &limits, &error));
  g_assert_nonnull (strstr (error->message, "cut-out 1"));
  g_assert_nonnull (strstr (error->message, "outside the room"));
}

static void
test_edge (void)
{
  g_autoptr (RcRoom) room = new_square (12 * FT);
  RcCutout *island = new_box (RC_CUTOUT_ISLAND, 4 * FT, 4 * FT, 6 * FT, 7 * FT);
  RcCutout *hearth = new_box (RC_CUTOUT_HEARTH, 0, 5 * FT, FT, 9 * FT);
  RcCutout *corner = new_box (RC_CUTOUT_FIXTURE, 11 * FT, 11 * FT, 12 * FT, 12 * FT);

  g_ptr_array_add (room->cutouts, island);
  g_ptr_array_add (room->cutouts, hearth);
  g_ptr_array_add (room->cutouts, corner);
  g_autoptr (RcPolygon) floor = new_floor (room);
  g_assert_cmpint (rc_cutout_compute_edge (island, floor, (RcPoint){ 0, 0 }), ==, 10 * FT);
  g_assert_cmpint (rc_cutout_compute_edge (hearth, floor, (RcPoint){ 0, 0 }), ==, 6 * FT);
  g_assert_cmpint (rc_cutout_compute_edge (corner, floor, (RcPoint){ 0, 0 }), ==, 2 * FT);
  /* The edges of the floor are the walls without what stands at them, and these. */
  RcLength around = rc_ring_compute_length (floor->outer);
  for (guint i = 0; i < floor->holes->len; i++)
    around += rc_ring_compute_length (g_ptr_array_index (floor->holes, i));
  g_assert_cmpint (around, ==, 48 * FT - 4 * FT - 2 * FT + 18 * FT);
}

static void
test_kinds (void)
{
  for (int kind = 0; kind < RC_N_CUTOUT_KINDS; kind++)
    {
      RcCutoutKind read = RC_N_CUTOUT_KINDS;
      g_autoptr (RcCutout) cutout = rc_cutout_new (kind);
      g_assert_true (rc_cutout_kind_parse (rc_cutout_kind_get_name (kind), &read, NULL));
      g_assert_cmpint (read, ==, kind);
      g_assert_cmpstr (rc_cutout_get_label (cutout), ==, rc_cutout_kind_get_label (kind));
      g_assert_true (cutout->counted);
      g_assert_cmpint (cutout->strip, ==, kind != RC_CUTOUT_STAIR_OPENING);
    }
  RcCutoutKind unread = RC_CUTOUT_HEARTH;
  g_autoptr (GError) error = NULL;
  g_assert_false (rc_cutout_kind_parse ("pond", &unread, &error));
  g_assert_nonnull (strstr (error->message, "pond"));
  g_assert_cmpint (unread, ==, RC_CUTOUT_HEARTH);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job-things/a round cut-out holds the floor", test_round);
  g_test_add_func ("/job-things/a round one at a wall", test_round_at_a_wall);
  g_test_add_func ("/job-things/edges on the floor", test_edge);
  g_test_add_func ("/job-things/kinds of cut-outs", test_kinds);
  return g_test_run ();
}
