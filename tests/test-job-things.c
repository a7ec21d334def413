/* What stands on floors: cut-outs with corners and round ones, stairs, openings; and what checks a room's walls:
 * diagonals. */
#include <math.h>
#include <string.h>

#include "diagonal.h"
#include "room.h"
#include "rowcut-error.h"
#include "stair-figure.h"
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

/* --- stairs --- */

static RcStair
new_stair (GArray *turns, int bearing)
{
  return (RcStair){ .steps = 9,
                    .going = 10 * RC_TICKS_PER_INCH,
                    .width = 3 * FT,
                    .turns = turns,
                    .at = { 7 * FT, -2 * FT },
                    .bearing_degrees = bearing };
}

static RcStairTurn
make_turn (RcTurnKind kind, RcBend bend, guint after)
{
  gboolean back = bend == RC_BEND_BACK_LEFT || bend == RC_BEND_BACK_RIGHT;

  return (RcStairTurn){ kind, bend, after, back ? 6 : 3, 3 * FT, back ? 6 * FT + FT / 2 : 3 * FT };
}

static RcRegion *
new_region (const RcRing *ring)
{
  RcRegion  *region = rc_region_new ();
  RcPolygon *polygon = rc_polygon_new_take (rc_ring_copy (ring));

  rc_polygon_normalize (polygon);
  g_ptr_array_add (region, polygon);
  return region;
}

static void
test_straight_stair (void)
{
  g_autoptr (GArray) turns = g_array_new (FALSE, FALSE, sizeof (RcStairTurn));
  RcStair stair = new_stair (turns, 90);
  g_autoptr (GPtrArray) treads = rc_stair_compute_treads (&stair);
  g_autoptr (GArray) walk = rc_stair_compute_walk (&stair);

  g_assert_cmpuint (treads->len, ==, 9);
  RcBox first = rc_ring_compute_box (g_ptr_array_index (treads, 0));
  RcBox last = rc_ring_compute_box (g_ptr_array_index (treads, 8));
  g_assert_cmpint (first.x0, ==, 7 * FT);
  g_assert_cmpint (first.y0, ==, -2 * FT - 18 * RC_TICKS_PER_INCH);
  g_assert_cmpint (first.y1, ==, -2 * FT + 18 * RC_TICKS_PER_INCH);
  g_assert_cmpint (last.x1, ==, 7 * FT + 90 * RC_TICKS_PER_INCH);
  g_assert_cmpuint (walk->len, ==, 2);
  g_assert_cmpint (rc_ring_get (walk, 1)->x, ==, 7 * FT + 90 * RC_TICKS_PER_INCH);
  g_assert_cmpint (rc_ring_get (walk, 1)->y, ==, -2 * FT);
  g_assert_cmpuint (rc_stair_find_step (&stair, (RcPoint){ 7 * FT + 15 * RC_TICKS_PER_INCH, -2 * FT }), ==, 2);
  g_assert_cmpuint (rc_stair_find_step (&stair, (RcPoint){ 6 * FT, -2 * FT }), ==, 0);
}

/* What a turn takes of the floor, doubled. */
static double
get_zone (const RcStair *stair, const RcStairTurn *turn)
{
  gboolean back = turn->bend == RC_BEND_BACK_LEFT || turn->bend == RC_BEND_BACK_RIGHT;
  double   width = (double)stair->width;

  return 2
         * (turn->kind == RC_TURN_LANDING ? (double)turn->going * (double)turn->width : width * width * (back ? 2 : 1));
}

/* As many steps as are counted, none over another, all of one piece where the stair stands square. */
static void
assert_treads (const RcStair *stair)
{
  g_autoptr (GPtrArray) treads = rc_stair_compute_treads (stair);
  g_autoptr (GPtrArray) all = new_region (g_ptr_array_index (treads, 0));
  double sum = 0, breadth = 6 * 40.0 * FT; /* a tick of rounding along all edges */
  double wanted = 2.0 * stair->steps * (double)stair->going * (double)stair->width;

  g_assert_cmpuint (treads->len, ==, rc_stair_count_steps (stair));
  for (guint i = 0; i < treads->len; i++)
    {
      g_autoptr (GPtrArray) one = new_region (g_ptr_array_index (treads, i));
      RcRegion *wider = rc_region_union (all, one, NULL);
      sum += (double)rc_region_compute_area (one);
      g_ptr_array_unref (all);
      all = wider;
    }
  g_assert_cmpfloat (fabs ((double)rc_region_compute_area (all) - sum), <, stair->bearing_degrees % 90 ? breadth : 1);
  if (stair->bearing_degrees % 90 == 0)
    g_assert_cmpuint (all->len, ==, 1);
  for (guint i = 0; i < stair->turns->len; i++)
    wanted += get_zone (stair, rc_stair_get_turn (stair, i));
  g_assert_cmpfloat (fabs (sum - wanted), <, breadth);
}

/* Whatever the turn, and the one after it, which leads on to the other side. */
static void
test_turned_stairs (void)
{
  static const RcBend others[] = { RC_BEND_RIGHT, RC_BEND_LEFT, RC_BEND_RIGHT, RC_BEND_LEFT, RC_BEND_BACK_RIGHT };

  for (int kind = RC_TURN_LANDING; kind <= RC_TURN_WINDERS; kind++)
    for (int bend = RC_BEND_LEFT; bend <= (kind == RC_TURN_LANDING ? RC_BEND_AHEAD : RC_BEND_BACK_RIGHT); bend++)
      for (int bearing = 0; bearing < 360; bearing += 45)
        {
          g_autoptr (GArray) turns = g_array_new (FALSE, FALSE, sizeof (RcStairTurn));
          RcStair     stair = new_stair (turns, bearing);
          RcStairTurn first = make_turn (kind, bend, 4), second = make_turn (1 - kind, others[bend], 3);

          g_array_append_val (turns, first);
          assert_treads (&stair);
          g_array_append_val (turns, second);
          assert_treads (&stair);
        }
}

/* A half turn by two quarter landings: up 4 steps, over to the left, back down the drawing beside the flight below. */
static void
test_two_quarter_landings (void)
{
  g_autoptr (GArray) turns = g_array_new (FALSE, FALSE, sizeof (RcStairTurn));
  RcStair     stair = new_stair (turns, 0);
  RcStairTurn turn = make_turn (RC_TURN_LANDING, RC_BEND_LEFT, 4), next = make_turn (RC_TURN_LANDING, RC_BEND_LEFT, 0);

  g_array_append_val (turns, turn);
  g_array_append_val (turns, next);
  g_autoptr (GPtrArray) treads = rc_stair_compute_treads (&stair);
  g_autoptr (GArray) walk = rc_stair_compute_walk (&stair);
  RcBox upper = rc_ring_compute_box (g_ptr_array_index (treads, 5));
  g_assert_cmpint (upper.x0, ==, 7 * FT - 9 * FT / 2);
  g_assert_cmpint (upper.x1, ==, 7 * FT - 3 * FT / 2);
  g_assert_cmpint (upper.y0, ==, -2 * FT + 40 * RC_TICKS_PER_INCH);
  g_assert_cmpint (rc_ring_get (walk, walk->len - 1)->x, ==, 7 * FT - 3 * FT);
  g_assert_cmpint (rc_ring_get (walk, walk->len - 1)->y, ==, -2 * FT - 10 * RC_TICKS_PER_INCH);
  assert_treads (&stair);
}

/* --- openings --- */

static void
assert_opening_refused (const RcRoom *room, const char *part)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (rc_room_check_openings (room, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_GEOMETRY);
  if (strstr (error->message, part) == NULL || strstr (error->message, "Room") == NULL)
    g_error ("“%s” does not say “%s”", error->message, part);
}

/* Sizes that none has, as of a slip of the pen or a damaged file; each refused by what is wrong with it. */
static void
test_openings_of_no_sense (void)
{
  static const struct
  {
    guint       wall;
    RcLength    offset, width, depth;
    const char *part; /* of the message; NULL: as it should be */
  } cases[] = {
    { 0, FT, 3 * FT, FT / 2, NULL },
    { 0, 9 * FT, 3 * FT, FT / 2, NULL }, /* up to the corner */
    { 4, FT, 3 * FT, 0, "wall 5, but the room has 4 walls" },
    { G_MAXUINT, FT, 3 * FT, 0, "walls" },
    { 0, FT, 0, 0, "no width" },
    { 0, FT, -FT, 0, "no width" },
    { 0, -1, FT, 0, "less than 0" },
    { 0, FT, FT, -1, "less than 0" },
    { 0, FT, FT, RC_ROOM_MAX_SIDE + 1, "1 km" },
    { 0, FT, 13 * FT, 0, "wider than" },
    { 0, 9 * FT + 1, 3 * FT, 0, "past the wall's end" },
    { 0, G_MAXINT64, 3 * FT, 0, "past the wall's end" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (RcRoom) room = new_square (12 * FT);
      RcOpening *opening = rc_opening_new ("D1", RC_OPENING_DOOR);

      opening->wall = cases[i].wall;
      opening->offset = cases[i].offset;
      opening->width = cases[i].width;
      opening->depth = cases[i].depth;
      g_ptr_array_add (room->openings, opening);
      if (cases[i].part == NULL)
        g_assert_true (rc_room_check_openings (room, NULL));
      else
        assert_opening_refused (room, cases[i].part);
    }
}

static void
test_most_openings (void)
{
  g_autoptr (RcRoom) room = new_square (2000 * FT);

  for (guint i = 0; i <= RC_ROOM_MAX_OPENINGS; i++)
    {
      RcOpening *opening = rc_opening_new ("D", RC_OPENING_DOOR);

      opening->offset = i * FT;
      opening->width = FT;
      if (i == RC_ROOM_MAX_OPENINGS)
        g_assert_true (rc_room_check_openings (room, NULL));
      g_ptr_array_add (room->openings, opening);
    }
  assert_opening_refused (room, "more than a room may have, 1000");
}

/* --- diagonals --- */

static RcRoom *
new_walk (const RcWall *walls, guint n)
{
  RcRoom *room = rc_room_new ("r", "Den");

  g_array_append_vals (room->walls, walls, n);
  return room;
}

static void
add_diagonal (RcRoom *room, guint from, guint to, RcLength length)
{
  RcDiagonal diagonal = { from, to, length };

  g_array_append_val (room->diagonals, diagonal);
}

/* Euclid, Elements I.47, in the proportion 3 : 4 : 5. */
static void
test_diagonal_of_a_rectangle (void)
{
  const RcWall walls[] = { { 0, 12 * FT, 0 }, { 90, 16 * FT, 0 }, { 180, 12 * FT, 0 }, { 270, 16 * FT, 0 } };
  g_autoptr (RcRoom) room = new_walk (walls, 4);
  RcLength computed = 0;

  add_diagonal (room, 0, 2, 20 * FT);
  g_assert_true (rc_diagonal_compute (room, &g_array_index (room->diagonals, RcDiagonal, 0), &computed));
  g_assert_cmpint (computed, ==, 20 * FT);
  g_assert_cmpint (rc_room_judge_diagonals (room, FT / 48).verdict, ==, RC_DIAGONALS_AGREE);
  /* The long walls were 16 ft and are entered as 15: they are suspected, both. */
  g_array_index (room->walls, RcWall, 1).length = g_array_index (room->walls, RcWall, 3).length = 15 * FT;
  RcDiagonalsFinding finding = rc_room_judge_diagonals (room, FT / 48);
  g_assert_cmpint (finding.verdict, ==, RC_DIAGONALS_WALL);
  g_assert_cmpuint (finding.wall, ==, 1);
  g_assert_cmpuint (finding.partner, ==, 3);
  g_assert_cmpint (ABS (finding.length - 16 * FT), <=, 2);
  /* One diagonal long and the other short: no wall makes them so, the corners are not square. */
  add_diagonal (room, 1, 3, 18 * FT);
  g_assert_cmpint (rc_room_judge_diagonals (room, FT / 48).verdict, ==, RC_DIAGONALS_ANGLES);
  RcDiagonal none = { 0, 7, FT };
  g_assert_false (rc_diagonal_compute (room, &none, &computed));
}

/* A wall of an L entered a foot too long: it does not close, and of the walls that could close it only one makes the
 * diagonals right. */
static void
test_diagonals_point_at_the_wall (void)
{
  static const RcWall L[] = { { 0, 20 * FT, 0 }, { 90, 8 * FT, 0 },   { 180, 8 * FT, 0 },
                              { 90, 9 * FT, 0 }, { 180, 12 * FT, 0 }, { 270, 17 * FT, 0 } };
  g_autoptr (RcRoom) right = new_walk (L, 6);

  for (guint wrong = 0; wrong < 6; wrong++)
    {
      g_autoptr (RcRoom) room = rc_room_copy (right);
      RcLength computed = 0;
      for (guint from = 0; from < 3; from++)
        {
          RcDiagonal d = { from, from + 3, 0 };
          rc_diagonal_compute (right, &d, &computed);
          add_diagonal (room, from, from + 3, computed);
        }
      g_array_index (room->walls, RcWall, wrong).length += FT;
      RcDiagonalsFinding finding = rc_room_judge_diagonals (room, FT / 48);
      g_assert_cmpint (finding.verdict, ==, RC_DIAGONALS_WALL);
      g_assert_cmpuint (finding.wall, ==, wrong);
      g_assert_cmpint (ABS (finding.length - L[wrong].length), <=, 3);
    }
}

/* A parallelogram's sides squared are together its diagonals squared (parallelogram law; from memory): a rhombus of
 * 10 ft with one diagonal of 12 ft has another of 16. */
static void
test_shape_by_diagonals (void)
{
  const RcWall walls[] = { { 0, 10 * FT, 0 }, { 90, 10 * FT, 0 }, { 180, 10 * FT, 0 }, { 270, 10 * FT, 0 } };
  g_autoptr (RcRoom) room = new_walk (walls, 4);
  g_autoptr (GError) error = NULL;
  RcDiagonal other = { 1, 3, 0 };
  RcLength   computed = 0;

  g_assert_false (rc_room_fit_diagonals (room, &error));
  g_assert_nonnull (strstr (error->message, "Den"));
  g_assert_nonnull (strstr (error->message, "takes 1 diagonals"));
  g_clear_error (&error);
  add_diagonal (room, 0, 2, 12 * FT);
  g_assert_true (rc_room_fit_diagonals (room, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (g_array_index (room->walls, RcWall, 0).bearing_degrees, ==, 0);
  rc_diagonal_compute (room, &other, &computed);
  g_assert_cmpint (ABS (computed - 16 * FT), <=, 4);
  g_autoptr (RcPolygon) floor = new_floor (room);
  g_assert_cmpfloat (fabs ((double)rc_polygon_compute_area (floor) / (2.0 * FT * FT) - 96), <, 0.01);
  /* Square already: nothing moves. */
  g_autoptr (RcRoom) square = new_walk (walls, 4);
  rc_diagonal_compute (square, &other, &computed);
  add_diagonal (square, 1, 3, computed);
  g_assert_true (rc_room_fit_diagonals (square, &error));
  for (guint i = 0; i < 4; i++)
    g_assert_cmpfloat (fabs (g_array_index (square->walls, RcWall, i).bearing_degrees - 90.0 * i), <, 0.001);
  /* No triangle has sides of 10, 10 and 21. */
  g_array_index (square->diagonals, RcDiagonal, 0).length = 21 * FT;
  g_assert_false (rc_room_fit_diagonals (square, &error));
  g_assert_nonnull (strstr (error->message, "no triangle"));
}

/* Between corners that are not there, from a corner to itself, of no length: said of by no judgement. */
static void
test_diagonals_that_say_nothing (void)
{
  static const RcWall     walls[] = { { 0, 12 * FT, 0 }, { 90, 16 * FT, 0 }, { 180, 12 * FT, 0 }, { 270, 16 * FT, 0 } };
  static const RcDiagonal none[] = { { 0, 9, FT }, { 9, 0, FT }, { 2, 2, FT }, { 0, 2, 0 } };
  g_autoptr (RcRoom) room = new_walk (walls, 4);
  g_autoptr (RcRoom) triangle = new_walk (walls, 2);
  RcLength computed;

  for (guint i = 0; i < G_N_ELEMENTS (none); i++)
    {
      g_assert_cmpint (rc_diagonal_compute (room, &none[i], &computed), ==, none[i].length == 0);
      g_array_append_val (room->diagonals, none[i]);
    }
  g_assert_cmpint (rc_room_judge_diagonals (room, FT / 48).verdict, ==, RC_DIAGONALS_AGREE);
  add_diagonal (triangle, 0, 1, FT); /* of two walls, that is none */
  g_assert_cmpint (rc_room_judge_diagonals (triangle, FT / 48).verdict, ==, RC_DIAGONALS_AGREE);
  g_assert_true (rc_room_fit_diagonals (triangle, NULL));

  /* The wall at fault is found among more that run back, whatever their order. */
  add_diagonal (room, 2, 0, 20 * FT);
  g_array_index (room->walls, RcWall, 0).length = g_array_index (room->walls, RcWall, 2).length = 13 * FT;
  RcDiagonalsFinding finding = rc_room_judge_diagonals (room, FT / 48);
  g_assert_cmpint (finding.verdict, ==, RC_DIAGONALS_WALL);
  g_assert_cmpint (finding.partner, ==, (finding.wall + 2) % 4);
}

/* In a room of very many walls they are not tried one by one. */
static void
test_diagonals_of_many_walls (void)
{
  g_autoptr (RcRoom) room = rc_room_new ("r", "Round tower");
  RcDiagonal across = { 0, 150, 5 * FT };

  for (guint i = 0; i < 300; i++)
    {
      RcWall wall = { i * 360.0 / 300, FT, 0 };

      g_array_append_val (room->walls, wall);
    }
  g_array_append_val (room->diagonals, across);
  g_assert_cmpint (rc_room_judge_diagonals (room, FT / 48).verdict, ==, RC_DIAGONALS_ANGLES);
}

/* The corners stay on their side when the room is walked the other way about, and a diagonal may be given from either
 * end; two corners that coincide fix no third. */
static void
test_shape_walked_the_other_way (void)
{
  static const RcWall walls[] = { { 0, 10 * FT, 0 }, { 270, 10 * FT, 0 }, { 180, 10 * FT, 0 }, { 90, 10 * FT, 0 } };
  g_autoptr (RcRoom) room = new_walk (walls, 4);
  g_autoptr (RcRoom) folded = new_walk (walls, 4);
  g_autoptr (GError) error = NULL;
  const RcDiagonal other = { 1, 3, 0 };
  RcLength         computed;

  add_diagonal (room, 2, 0, 12 * FT);
  g_assert_true (rc_room_fit_diagonals (room, &error));
  g_assert_no_error (error);
  g_assert_true (rc_diagonal_compute (room, &other, &computed));
  g_assert_cmpint (ABS (computed - 16 * FT), <=, 2); /* the parallelogram law again, to the ticks of the walls */
  g_assert_cmpfloat (g_array_index (room->walls, RcWall, 1).bearing_degrees, >, 180); /* still to the left */

  g_array_index (folded->walls, RcWall, 0).length = 0;
  add_diagonal (folded, 0, 2, 12 * FT);
  g_assert_false (rc_room_fit_diagonals (folded, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_GEOMETRY);
  g_assert_nonnull (strstr (error->message, "make no triangle"));
  g_assert_cmpfloat (g_array_index (folded->walls, RcWall, 1).bearing_degrees, ==, 270);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job-things/a round cut-out holds the floor", test_round);
  g_test_add_func ("/job-things/a round one at a wall", test_round_at_a_wall);
  g_test_add_func ("/job-things/edges on the floor", test_edge);
  g_test_add_func ("/job-things/kinds of cut-outs", test_kinds);
  g_test_add_func ("/job-things/a straight stair", test_straight_stair);
  g_test_add_func ("/job-things/stairs that turn", test_turned_stairs);
  g_test_add_func ("/job-things/two quarter landings", test_two_quarter_landings);
  g_test_add_func ("/job-things/openings of no sense", test_openings_of_no_sense);
  g_test_add_func ("/job-things/most openings", test_most_openings);
  g_test_add_func ("/job-things/the diagonal of a rectangle", test_diagonal_of_a_rectangle);
  g_test_add_func ("/job-things/diagonals point at the wall", test_diagonals_point_at_the_wall);
  g_test_add_func ("/job-things/the shape by diagonals", test_shape_by_diagonals);
  g_test_add_func ("/job-things/diagonals that say nothing", test_diagonals_that_say_nothing);
  g_test_add_func ("/job-things/diagonals of many walls", test_diagonals_of_many_walls);
  g_test_add_func ("/job-things/a shape walked the other way", test_shape_walked_the_other_way);
  return g_test_run ();
}
