/* Rooms as measured: shapes, closing, curved walls, cut-outs, openings; and what is refused, by name. */
#include <math.h>
#include <string.h>

#include "job.h"
#include "rowcut-error.h"

#define IN RC_TICKS_PER_INCH
#define FT RC_TICKS_PER_FOOT

static const RcClosureLimits limits = { 3 * IN, IN / 4 };

static void
add_wall (RcRoom *room, double bearing_degrees, RcLength length)
{
  RcWall wall = { bearing_degrees, length, 0 };

  g_array_append_val (room->walls, wall);
}

/* Walked counter-clockwise from its lower left corner: walls 1 east, 2 north, 3 west, 4 south. */
static RcRoom *
new_rectangle (const char *id, RcLength width, RcLength depth)
{
  RcRoom *room = rc_room_new (id, id);

  add_wall (room, 90, width);
  add_wall (room, 0, depth);
  add_wall (room, 270, width);
  add_wall (room, 180, depth);
  return room;
}

static RcOpening *
add_opening (RcRoom *room, RcOpeningKind kind, const char *id, guint wall, RcLength offset, RcLength width)
{
  RcOpening *opening = rc_opening_new (id, kind);

  opening->wall = wall;
  opening->offset = offset;
  opening->width = width;
  g_ptr_array_add (room->openings, opening);
  return opening;
}

static void
add_cutout (RcRoom *room, RcLength x0, RcLength y0, RcLength x1, RcLength y1)
{
  RcPoint points[] = { { x0, y0 }, { x1, y0 }, { x1, y1 }, { x0, y1 } };

  g_ptr_array_add (room->cutouts,
                   rc_cutout_new_take (RC_CUTOUT_OTHER, rc_ring_new_from_points (points, G_N_ELEMENTS (points))));
}

static RcArea
compute_area (const RcRoom *room)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPolygon) polygon = rc_room_compute_polygon (room, &limits, &error);

  g_assert_no_error (error);
  g_assert_true (rc_polygon_check (polygon, NULL));
  return rc_polygon_compute_area (polygon);
}

static void
assert_refused (const RcRoom *room, const char *const *words)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPolygon) polygon = rc_room_compute_polygon (room, &limits, &error);

  g_assert_null (polygon);
  g_assert_error (error, RC_ERROR, RC_ERROR_GEOMETRY);
  g_test_message ("%s", error->message);
  for (; *words != NULL; words++)
    if (strstr (error->message, *words) == NULL)
      g_error ("“%s” does not name “%s”", error->message, *words);
}

#define ASSERT_REFUSED(room, ...) assert_refused (room, (const char *const[]){ __VA_ARGS__, NULL })

/* --- shapes --- */

/* Two ways round, walls or outline: the same floor. 12 x 18 ft and 3 x 3 ft make 225 sq ft (maths lesson, 25 sq yd). */
static void
test_l_shape (void)
{
  g_autoptr (RcRoom) walked = rc_room_new ("l", "L"), back = rc_room_new ("l", "L"), drawn = rc_room_new ("l", "L");
  RcPoint points[]
      = { { 0, 0 }, { 15 * FT, 0 }, { 15 * FT, 3 * FT }, { 12 * FT, 3 * FT }, { 12 * FT, 18 * FT }, { 0, 18 * FT } };
  RcArea expected = rc_area_from_rectangle (225 * FT, FT);

  add_wall (walked, 90, 15 * FT);
  add_wall (walked, 0, 3 * FT);
  add_wall (walked, 270, 3 * FT);
  add_wall (walked, 0, 15 * FT);
  add_wall (walked, 270, 12 * FT);
  add_wall (walked, 180, 18 * FT);
  for (guint i = walked->walls->len; i > 0; i--)
    {
      const RcWall *wall = &g_array_index (walked->walls, RcWall, i - 1);

      add_wall (back, fmod (wall->bearing_degrees + 180, 360), wall->length);
    }
  g_array_append_vals (drawn->outline, points, G_N_ELEMENTS (points));
  g_assert_cmpint (compute_area (walked), ==, expected);
  g_assert_cmpint (compute_area (back), ==, expected);
  g_assert_cmpint (compute_area (drawn), ==, expected);
}

/* A room turned against the compass has the area it would have square to it, but for rounding of its corners. */
static void
test_turned_room (void)
{
  RcArea straight = rc_area_from_rectangle (15 * FT, 20 * FT);

  for (double turn = 7.5; turn < 360; turn += 37)
    {
      g_autoptr (RcRoom) room = new_rectangle ("r", 15 * FT, 20 * FT);

      for (guint i = 0; i < 4; i++)
        g_array_index (room->walls, RcWall, i).bearing_degrees += turn;
      g_assert_cmpint (ABS (compute_area (room) - straight), <, 4 * 70 * FT);
    }
}

/* --- closing --- */

/* A measured rectangle (own arithmetic): 12'0", 15'0", 12'1", 15'2" walked E, N, W, S misses by dx -1,
 * dy -2 in, error 2.236 in, perimeter 651 in, 1 part in 291. */
static RcRoom *
new_unclosed (void)
{
  RcRoom *room = new_rectangle ("parlour", 12 * FT, 15 * FT);

  room->name = (g_free (room->name), g_strdup ("Parlour"));
  g_array_index (room->walls, RcWall, 2).length = 12 * FT + IN;
  g_array_index (room->walls, RcWall, 3).length = 15 * FT + 2 * IN;
  return room;
}

static void
test_closure_is_reported (void)
{
  g_autoptr (RcRoom) room = new_unclosed ();
  RcClosure closure;

  rc_room_compute_closure (room, &closure);
  g_assert_cmpint (closure.dx, ==, -IN);
  g_assert_cmpint (closure.dy, ==, -2 * IN);
  g_assert_cmpint (closure.error, ==, llround (sqrt (5) * IN));
  g_assert_cmpint (closure.perimeter, ==, 651 * IN);
  g_assert_cmpfloat_with_epsilon (closure.ratio, 291.1, 0.1);
  rc_closure_clear (&closure);
}

/* Spread by the compass rule the first corner after wall 1 moves by its share, 144/651 of the misclosure. */
static void
test_closure_is_spread (void)
{
  g_autoptr (RcRoom) room = new_unclosed ();
  g_autoptr (GArray) corners = NULL;
  RcPoint from, to;

  room->spread = TRUE;
  g_assert_cmpint (compute_area (room), >, 0);
  g_assert_true (rc_room_get_wall_ends (room, 0, &from, &to));
  g_assert_cmpint (ABS (to.x - (12 * FT + llround (IN * 144.0 / 651))), <=, 1);
  g_assert_cmpint (ABS (to.y - llround (2 * IN * 144.0 / 651)), <=, 1);
  corners = rc_room_compute_corners (room);
  g_assert_cmpuint (corners->len, ==, 4);
}

/* Without spreading, the last wall takes up what is missing. */
static void
test_closure_on_last_wall (void)
{
  g_autoptr (RcRoom) room = new_unclosed ();
  RcPoint from, to;

  g_assert_cmpint (compute_area (room), >, 0);
  g_assert_true (rc_room_get_wall_ends (room, 3, &from, &to));
  g_assert_cmpint (from.x, ==, -IN);
  g_assert_cmpint (from.y, ==, 15 * FT);
  g_assert_cmpint (to.x, ==, 0);
  g_assert_cmpint (to.y, ==, 0);
  g_assert_false (rc_room_get_wall_ends (room, 4, &from, &to));
}

/* A wall misread by a foot is refused, spread or not, and named first. */
static void
test_closure_over_limit (void)
{
  g_autoptr (RcRoom) room = new_rectangle ("Parlour", 12 * FT, 15 * FT);

  g_array_index (room->walls, RcWall, 1).length = 14 * FT;
  ASSERT_REFUSED (room, "Parlour", "miss closing by 1' 0\"", "1 part in 53", "3\"");
  room->spread = TRUE;
  ASSERT_REFUSED (room, "measure again wall 2 (14' 0\" going north), then wall 4 (15' 0\" going south)");
}

/* --- curved walls --- */

static void
test_bow_outward (void)
{
  g_autoptr (RcRoom) room = new_rectangle ("r", 4 * RC_TICKS_PER_M, 3 * RC_TICKS_PER_M);
  g_autoptr (RcPolygon) polygon = NULL;
  /* Half a circle of 1.5 m on the east wall. */
  double exact = 2 * (12 + G_PI * 1.5 * 1.5 / 2) * pow (RC_TICKS_PER_M, 2), area;

  g_array_index (room->walls, RcWall, 1).bow = 1500 * RC_TICKS_PER_MM;
  area = compute_area (room);
  g_assert_cmpfloat (area, >=, exact * (1 - 1e-9));
  /* At most 1 mm over the length of the arc. */
  g_assert_cmpfloat (area - exact, <=, 2 * G_PI * 1.5 * RC_TICKS_PER_M * RC_TICKS_PER_MM);
  polygon = rc_room_compute_polygon (room, &limits, NULL);
  for (int i = 0; i <= 1000; i++)
    {
      double  angle = G_PI * (i / 1000.0 - 0.5);
      RcPoint point = { floor (4 * RC_TICKS_PER_M + 1.5 * RC_TICKS_PER_M * cos (angle) - 1),
                        llround (1.5 * RC_TICKS_PER_M * (1 + sin (angle) * 0.99999)) };

      g_assert_cmpint (rc_polygon_locate (polygon, point), >=, 0);
    }
}

static void
test_bow_inward (void)
{
  g_autoptr (RcRoom) room = new_rectangle ("r", 4 * RC_TICKS_PER_M, 3 * RC_TICKS_PER_M);
  double radius = (1.5 * 1.5 + 0.5 * 0.5) / (2 * 0.5), half = asin (1.5 / radius);
  double segment = radius * radius * (half - sin (half) * cos (half));
  double exact = 2 * (12 - segment) * pow (RC_TICKS_PER_M, 2), area;

  g_array_index (room->walls, RcWall, 1).bow = -500 * RC_TICKS_PER_MM;
  area = compute_area (room);
  /* Never less floor than there is, at most 1 mm along the arc more. */
  g_assert_cmpfloat (area, >=, exact * (1 - 1e-9));
  g_assert_cmpfloat (area - exact, <=, 2 * 2 * half * radius * RC_TICKS_PER_M * RC_TICKS_PER_MM);
}

static void
test_bow_same_both_ways_round (void)
{
  g_autoptr (RcRoom) room = new_rectangle ("r", 4 * RC_TICKS_PER_M, 3 * RC_TICKS_PER_M);
  g_autoptr (RcRoom) back = rc_room_new ("b", "b");

  g_array_index (room->walls, RcWall, 1).bow = 700 * RC_TICKS_PER_MM;
  add_wall (back, 0, 3 * RC_TICKS_PER_M);
  add_wall (back, 90, 4 * RC_TICKS_PER_M);
  add_wall (back, 180, 3 * RC_TICKS_PER_M);
  add_wall (back, 270, 4 * RC_TICKS_PER_M);
  g_array_index (back->walls, RcWall, 2).bow = 700 * RC_TICKS_PER_MM;
  g_assert_cmpint (compute_area (room), ==, compute_area (back));
}

/* --- cut-outs --- */

static void
test_cutouts (void)
{
  g_autoptr (RcRoom) room = new_rectangle ("r", 12 * FT, 12 * FT);

  add_cutout (room, 4 * FT, 4 * FT, 6 * FT, 7 * FT);
  g_assert_cmpint (compute_area (room), ==, rc_area_from_rectangle (138 * FT, FT));
  /* A hearth at the wall is cut off the outline; a column in a corner too. */
  add_cutout (room, 0, 5 * FT, FT, 9 * FT);
  g_assert_cmpint (compute_area (room), ==, rc_area_from_rectangle (134 * FT, FT));
  add_cutout (room, 11 * FT, 11 * FT, 12 * FT, 12 * FT);
  g_assert_cmpint (compute_area (room), ==, rc_area_from_rectangle (133 * FT, FT));
}

static void
test_cutouts_refused (void)
{
  g_autoptr (RcRoom) outside = new_rectangle ("Parlour", 12 * FT, 12 * FT), parting = rc_room_copy (outside),
                     twice = rc_room_copy (outside), line = rc_room_copy (outside);

  add_cutout (outside, 4 * FT, 4 * FT, 13 * FT, 7 * FT);
  ASSERT_REFUSED (outside, "Parlour", "cut-out 1", "outside the room");
  add_cutout (parting, 4 * FT, 0, 6 * FT, 12 * FT);
  ASSERT_REFUSED (parting, "Parlour", "cut-out 1", "parts the floor");
  add_cutout (twice, 4 * FT, 4 * FT, 6 * FT, 6 * FT);
  add_cutout (twice, 5 * FT, 5 * FT, 7 * FT, 7 * FT);
  ASSERT_REFUSED (twice, "Parlour", "cut-out 2", "over another cut-out");
  add_cutout (line, 4 * FT, 4 * FT, 6 * FT, 4 * FT);
  ASSERT_REFUSED (line, "Parlour", "cut-out 1", "no shape");
}

/* --- walls that are wrong --- */

static void
test_crossing_walls (void)
{
  g_autoptr (RcRoom) bow_tie = rc_room_new ("bow", "Bow tie"), walked = rc_room_new ("walked", "Snug");
  RcPoint points[] = { { 0, 0 }, { 9 * FT, 9 * FT }, { 9 * FT, 0 }, { 0, 8 * FT } };

  g_array_append_vals (bow_tie->outline, points, G_N_ELEMENTS (points));
  ASSERT_REFUSED (bow_tie, "Bow tie", "wall 1", "wall 3", "meets");
  add_wall (walked, 90, 10 * FT);
  add_wall (walked, 0, 10 * FT);
  add_wall (walked, 270, 5 * FT);
  add_wall (walked, 180, 12 * FT);
  add_wall (walked, 270, 5 * FT);
  add_wall (walked, 0, 2 * FT);
  ASSERT_REFUSED (walked, "Snug", "wall 1 (10' 0\" going east)", "wall 4 (12' 0\" going south)");
}

static void
test_impossible_walls (void)
{
  g_autoptr (RcRoom) two = rc_room_new ("two", "Two"), zero = new_rectangle ("Zero", 12 * FT, 15 * FT),
                     far = new_rectangle ("Far", 12 * FT, 15 * FT), bowed = new_rectangle ("Bowed", 12 * FT, 15 * FT),
                     lost = new_rectangle ("Lost", 12 * FT, 15 * FT), flat = rc_room_new ("flat", "Flat");
  RcPoint points[] = { { 0, 0 }, { 9 * FT, 0 }, { 3 * FT, 0 } };

  add_wall (two, 90, FT);
  add_wall (two, 270, FT);
  ASSERT_REFUSED (two, "Two", "2 walls");
  g_array_index (zero->walls, RcWall, 2).length = 0;
  ASSERT_REFUSED (zero, "Zero", "wall 3", "no length");
  g_array_index (far->walls, RcWall, 2).length = 10 * RC_TICKS_PER_M * 1000;
  ASSERT_REFUSED (far, "Far", "wall 3", "1 km");
  g_array_index (bowed->walls, RcWall, 1).bow = 8 * FT;
  ASSERT_REFUSED (bowed, "Bowed", "wall 2", "8' 0\"", "half");
  g_array_index (lost->walls, RcWall, 1).bearing_degrees = NAN;
  ASSERT_REFUSED (lost, "Lost", "wall 2", "bearing");
  g_array_append_vals (flat->outline, points, G_N_ELEMENTS (points));
  ASSERT_REFUSED (flat, "Flat", "wall");
}

/* --- openings --- */

static void
test_opening_ends (void)
{
  g_autoptr (RcRoom) room = new_rectangle ("r", 12 * FT, 15 * FT);
  const RcOpening *door = add_opening (room, RC_OPENING_DOOR, "D1", 1, 2 * FT, 3 * FT);
  RcPoint          from, to, step;

  g_assert_true (rc_room_get_opening_ends (room, door, &from, &to));
  g_assert_cmpint (from.x, ==, 12 * FT);
  g_assert_cmpint (from.y, ==, 2 * FT);
  g_assert_cmpint (to.y, ==, 5 * FT);
  g_assert_true (rc_room_get_outward_step (room, 1, 4 * IN, &step));
  g_assert_cmpint (step.x, ==, 4 * IN);
  g_assert_cmpint (step.y, ==, 0);
  g_assert_true (rc_room_find_opening (room, "D1") == door);
  g_assert_null (rc_room_find_opening (room, "D2"));
}

static void
test_openings_refused (void)
{
  g_autoptr (RcRoom) wide = new_rectangle ("Hall", 4 * FT, 15 * FT), past = rc_room_copy (wide),
                     over = rc_room_copy (wide), none = rc_room_copy (wide), curved = rc_room_copy (wide);

  add_opening (wide, RC_OPENING_DOOR, "D1", 0, 0, 5 * FT);
  ASSERT_REFUSED (wide, "Hall: door D1 is 5' 0\" wide, wider than its wall 1 (4' 0\" going east)");
  add_opening (past, RC_OPENING_ARCHWAY, "A1", 0, 2 * FT, 3 * FT);
  ASSERT_REFUSED (past, "Hall: archway A1", "5' 0\"", "wall 1");
  add_opening (over, RC_OPENING_DOOR, "D1", 1, 2 * FT, 3 * FT);
  add_opening (over, RC_OPENING_WINDOW, "W1", 1, 2 * FT, 3 * FT);
  add_opening (over, RC_OPENING_DOOR, "D2", 1, 4 * FT, 3 * FT);
  ASSERT_REFUSED (over, "Hall", "D1", "D2", "wall 2");
  add_opening (none, RC_OPENING_DOOR, "D1", 7, 0, 3 * FT);
  ASSERT_REFUSED (none, "Hall: door D1", "wall 8", "4 walls");
  g_array_index (curved->walls, RcWall, 1).bow = FT;
  add_opening (curved, RC_OPENING_DOOR, "D1", 1, 0, 3 * FT);
  ASSERT_REFUSED (curved, "Hall: door D1", "curved");
}

/* --- stairs, goods, settings --- */

static RcStair *
make_stair (guint steps, RcLength rise, RcLength going, RcLength width)
{
  RcStair *stair = rc_stair_new ("s", "Stair");

  stair->steps = steps;
  stair->rise = rise;
  stair->going = going;
  stair->width = width;
  return stair;
}

static void
assert_piece (const GArray *pieces, guint index, RcStairPieceKind kind, guint first, guint last, RcLength cut_width,
              RcLength cut_length)
{
  const RcStairPiece *piece = &g_array_index (pieces, RcStairPiece, index);

  g_assert_cmpuint (index, <, pieces->len);
  g_assert_cmpint (piece->kind, ==, kind);
  g_assert_cmpuint (piece->first, ==, first);
  g_assert_cmpuint (piece->last, ==, last);
  g_assert_cmpint (piece->cut_width, ==, cut_width);
  g_assert_cmpint (piece->cut_length, ==, cut_length);
}

static void
test_stair_published (void)
{
  static const struct
  {
    guint  steps;
    double rise, going, width, nose, end, turned; /* inches */
    double cut_width, cut_length;
  } cases[] = {
    /* Litchfield's rule, Renovation (recomputed): 246.5 in, and 36 in wide is cut 38 1/2 in */
    { 13, 7.5, 10, 36, 1, 6, 2.5, 38.5, 246.5 },
    /* ehow 7299478: 10 steps of 17 1/2, rounded to 18 in: 15 ft; 34 in rounded to 3 ft */
    { 10, 7.5, 10, 36, 0.5, 0, 0, 36, 180 },
    /* ehow video 4950950: 8 + 11 + 4 in of lip, 15 steps, 39 + 2 in wide: 345 in (recomputed) */
    { 15, 8, 11, 39, 4, 0, 2, 41, 345 },
    /* Mail Tribune, 22 Jul 2007: 8 in rise and 10 in tread, 18 in a step */
    { 1, 8, 10, 36, 0, 0, 0, 36, 18 },
    /* a movable runner (self-sufficiency handbook): (rise + tread) x risers, one rise and 18 in; 12 of 7 and 10 in */
    { 12, 7, 10, 27, 0, 25, 0, 27, 229 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      RcStair *stair = make_stair (cases[i].steps, (RcLength)(cases[i].rise * IN), (RcLength)(cases[i].going * IN),
                                   (RcLength)(cases[i].width * IN));
      stair->nose_extra = (RcLength)(cases[i].nose * IN);
      stair->end_extra = (RcLength)(cases[i].end * IN);
      stair->width_extra = (RcLength)(cases[i].turned * IN);
      g_autoptr (GArray) pieces = rc_stair_compute_pieces (stair);
      g_assert_cmpuint (pieces->len, ==, 1);
      assert_piece (pieces, 0, RC_STAIR_PIECE_FLIGHT, 1, cases[i].steps, (RcLength)(cases[i].cut_width * IN),
                    (RcLength)(cases[i].cut_length * IN));
      rc_stair_free (stair);
    }
}

static void
add_turn (RcStair *stair, RcStairTurn turn)
{
  g_array_append_val (stair->turns, turn);
}

/* A curved bottom step, 3 winders after step 6, two flights; each winder by the rectangle round its template, tread and
 * riser below, 1 in at the nose (Litchfield; the rectangle is common practice, no source). Seams lie only between. */
static void
test_stair_winders (void)
{
  RcStair *stair = make_stair (12, 7 * IN, 10 * IN, 36 * IN);

  stair->curved_width = 48 * IN;
  add_turn (stair, (RcStairTurn){ RC_TURN_WINDERS, RC_BEND_LEFT, 6, 3, 30 * IN, 44 * IN });
  g_assert_cmpuint (rc_stair_count_steps (stair), ==, 15);
  g_autoptr (GArray) pieces = rc_stair_compute_pieces (stair);
  g_assert_cmpuint (pieces->len, ==, 6);
  assert_piece (pieces, 0, RC_STAIR_PIECE_CURVED_STEP, 1, 1, 101 * IN / 2, (18 + 2) * IN);
  assert_piece (pieces, 1, RC_STAIR_PIECE_FLIGHT, 2, 6, 77 * IN / 2, (5 * 18 + 6) * IN);
  assert_piece (pieces, 2, RC_STAIR_PIECE_WINDER, 7, 7, 93 * IN / 2, (38 + 2) * IN);
  assert_piece (pieces, 4, RC_STAIR_PIECE_WINDER, 9, 9, 93 * IN / 2, (38 + 2) * IN);
  assert_piece (pieces, 5, RC_STAIR_PIECE_FLIGHT, 10, 15, 77 * IN / 2, (6 * 18 + 6) * IN);
  g_assert_cmpint (g_array_index (pieces, RcStairPiece, 5).from_top, ==, 0);
  g_assert_cmpint (g_array_index (pieces, RcStairPiece, 0).from_top, ==, (11 * 18 + 3 * 38) * IN);
  rc_stair_free (stair);
}

/* Straight, a quarter landing, straight, winders, straight; the steps counted on through the turns. */
static void
test_stair_two_turns (void)
{
  RcStair *stair = make_stair (10, 7 * IN, 10 * IN, 36 * IN);

  add_turn (stair, (RcStairTurn){ RC_TURN_LANDING, RC_BEND_LEFT, 4, 0, 36 * IN, 40 * IN });
  add_turn (stair, (RcStairTurn){ RC_TURN_WINDERS, RC_BEND_RIGHT, 2, 3, 30 * IN, 44 * IN });
  g_assert_cmpuint (rc_stair_count_steps (stair), ==, 14);
  g_assert_cmpuint (rc_stair_get_plain_step (stair), ==, 14);
  g_autoptr (GArray) pieces = rc_stair_compute_pieces (stair);
  g_assert_cmpuint (pieces->len, ==, 7);
  assert_piece (pieces, 0, RC_STAIR_PIECE_FLIGHT, 1, 4, 77 * IN / 2, (4 * 18 + 6) * IN);
  assert_piece (pieces, 1, RC_STAIR_PIECE_LANDING, 5, 5, 85 * IN / 2, (36 + 8 + 2) * IN);
  assert_piece (pieces, 2, RC_STAIR_PIECE_FLIGHT, 6, 7, 77 * IN / 2, (2 * 18 + 6) * IN);
  assert_piece (pieces, 3, RC_STAIR_PIECE_WINDER, 8, 8, 93 * IN / 2, (38 + 2) * IN);
  assert_piece (pieces, 6, RC_STAIR_PIECE_FLIGHT, 11, 14, 77 * IN / 2, (4 * 18 + 6) * IN);
  g_assert_cmpint (g_array_index (pieces, RcStairPiece, 1).from_top, ==, (4 * 18 + 3 * 38 + 2 * 18) * IN);
  rc_stair_free (stair);
}

/* A half turn by two quarter landings with no step between, then winders at the very top: flights of no step give no
 * piece. */
static void
test_stair_turns_that_meet (void)
{
  RcStair *stair = make_stair (6, 7 * IN, 10 * IN, 36 * IN);

  add_turn (stair, (RcStairTurn){ RC_TURN_LANDING, RC_BEND_LEFT, 2, 0, 36 * IN, 36 * IN });
  add_turn (stair, (RcStairTurn){ RC_TURN_LANDING, RC_BEND_LEFT, 0, 0, 36 * IN, 36 * IN });
  add_turn (stair, (RcStairTurn){ RC_TURN_WINDERS, RC_BEND_LEFT, 4, 3, 30 * IN, 44 * IN });
  g_assert_cmpuint (rc_stair_count_steps (stair), ==, 11);
  g_assert_cmpuint (rc_stair_get_plain_step (stair), ==, 8);
  g_assert_cmpuint (rc_stair_count_flight_steps (stair, 1), ==, 0);
  g_assert_cmpuint (rc_stair_count_flight_steps (stair, 3), ==, 0);
  g_autoptr (GArray) pieces = rc_stair_compute_pieces (stair);
  g_assert_cmpuint (pieces->len, ==, 7);
  assert_piece (pieces, 1, RC_STAIR_PIECE_LANDING, 3, 3, 77 * IN / 2, (36 + 8 + 2) * IN);
  assert_piece (pieces, 2, RC_STAIR_PIECE_LANDING, 4, 4, 77 * IN / 2, (36 + 8 + 2) * IN);
  assert_piece (pieces, 3, RC_STAIR_PIECE_FLIGHT, 5, 8, 77 * IN / 2, (4 * 18 + 6) * IN);
  assert_piece (pieces, 6, RC_STAIR_PIECE_WINDER, 11, 11, 93 * IN / 2, (38 + 2) * IN);
  rc_stair_free (stair);
}

/* Winders at the bottom and at the top. */
static void
test_stair_winders_at_both_ends (void)
{
  RcStair *stair = make_stair (5, 7 * IN, 10 * IN, 36 * IN);

  add_turn (stair, (RcStairTurn){ RC_TURN_WINDERS, RC_BEND_LEFT, 0, 2, 30 * IN, 44 * IN });
  add_turn (stair, (RcStairTurn){ RC_TURN_WINDERS, RC_BEND_RIGHT, 5, 3, 28 * IN, 42 * IN });
  g_assert_cmpuint (rc_stair_get_plain_step (stair), ==, 7);
  g_autoptr (GArray) pieces = rc_stair_compute_pieces (stair);
  g_assert_cmpuint (pieces->len, ==, 6);
  assert_piece (pieces, 0, RC_STAIR_PIECE_WINDER, 1, 1, 93 * IN / 2, (38 + 2) * IN);
  assert_piece (pieces, 2, RC_STAIR_PIECE_FLIGHT, 3, 7, 77 * IN / 2, (5 * 18 + 6) * IN);
  assert_piece (pieces, 3, RC_STAIR_PIECE_WINDER, 8, 8, 89 * IN / 2, (36 + 2) * IN);
  rc_stair_free (stair);
}

/* Cap and band, a cap and a band a step; the landing takes the riser below and goes round its nosing (how-to page). A
 * runner is as wide on the landing as on the steps. */
static void
test_stair_landing (void)
{
  RcStair *stair = make_stair (4, 7 * IN, 10 * IN, 36 * IN);

  stair->style = RC_STAIR_CAP_AND_BAND;
  stair->cutting = RC_STAIR_PER_STEP;
  add_turn (stair, (RcStairTurn){ RC_TURN_LANDING, RC_BEND_LEFT, 2, 0, 38 * IN, 72 * IN });
  g_autoptr (GArray) pieces = rc_stair_compute_pieces (stair);
  g_assert_cmpuint (pieces->len, ==, 9);
  assert_piece (pieces, 0, RC_STAIR_PIECE_BAND, 1, 1, 77 * IN / 2, 9 * IN);
  assert_piece (pieces, 1, RC_STAIR_PIECE_CAP, 1, 1, 77 * IN / 2, 13 * IN);
  assert_piece (pieces, 4, RC_STAIR_PIECE_LANDING, 3, 3, 149 * IN / 2, (38 + 7 + 1 + 2) * IN);
  assert_piece (pieces, 8, RC_STAIR_PIECE_CAP, 5, 5, 77 * IN / 2, 13 * IN);
  stair->runner_width = 27 * IN;
  g_autoptr (GArray) runner = rc_stair_compute_pieces (stair);
  for (guint i = 0; i < runner->len; i++)
    g_assert_cmpint (g_array_index (runner, RcStairPiece, i).cut_width, ==, 59 * IN / 2);
  stair->rise = G_MAXINT64 / 2;
  stair->going = G_MAXINT64 - 1;
  g_assert_null (rc_stair_compute_pieces (stair));
  rc_stair_free (stair);
}

static void
test_words (void)
{
  g_autoptr (GError) error = NULL;
  RcMatch match;
  RcRule  rule;

  for (RcRule r = 0; r < RC_N_RULES; r++)
    {
      g_assert_true (rc_rule_parse (rc_rule_get_name (r), &rule, NULL));
      g_assert_cmpint (rule, ==, r);
      g_assert_cmpstr (rc_rule_get_label (r), !=, "");
    }
  g_assert_true (rc_match_parse ("half-drop", &match, NULL));
  g_assert_cmpint (match, ==, RC_MATCH_HALF_DROP);
  g_assert_true (rc_match_parse ("2/6-drop", &match, NULL));
  g_assert_cmpint (match, ==, RC_MATCH (1, 3));
  g_assert_cmpstr (rc_match_get_name (match), ==, "1/3-drop");
  static const char *const wrong[] = { "3/3-drop", "0/3-drop", "1/1001-drop", "1/3", "/-drop", "-1/3-drop", "" };
  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    g_assert_false (rc_match_parse (wrong[i], &match, NULL));
  g_assert_false (rc_match_parse ("third-drop", &match, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_PARSE);
  g_assert_nonnull (strstr (error->message, "third-drop"));
  g_assert_nonnull (strstr (error->message, "set, half-drop, quarter-drop"));
}

/* Repeat 36 in: half-drop steps 18 in, quarter-drop 9 in (fabric-maker's page; a quarter drop is common practice, no
 * source). */
static void
test_pattern_drop (void)
{
  g_autoptr (RcGoods) goods = rc_goods_new ("g", RC_GOODS_CARPET, "G");

  goods->repeat_length = 36 * IN;
  g_assert_cmpint (rc_goods_compute_drop (goods, 1), ==, 0);
  goods->match = RC_MATCH_HALF_DROP;
  g_assert_cmpint (rc_goods_compute_drop (goods, 1), ==, 18 * IN);
  g_assert_cmpint (rc_goods_compute_drop (goods, 2), ==, 0);
  goods->match = RC_MATCH_QUARTER_DROP;
  g_assert_cmpint (rc_goods_compute_drop (goods, 1), ==, 9 * IN);
  g_assert_cmpint (rc_goods_compute_drop (goods, -1), ==, 27 * IN);
  goods->match = RC_MATCH (2, 3);
  g_assert_cmpint (rc_goods_compute_drop (goods, 2), ==, 12 * IN);
  goods->roll_width = 12 * FT;
  g_assert_cmpint (rc_goods_get_usable_width (goods), ==, 12 * FT);
  goods->usable_width = 142 * IN;
  g_assert_cmpint (rc_goods_get_usable_width (goods), ==, 142 * IN);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/room/l-shape either way round", test_l_shape);
  g_test_add_func ("/job/room/turned room", test_turned_room);
  g_test_add_func ("/job/closing/is reported", test_closure_is_reported);
  g_test_add_func ("/job/closing/is spread", test_closure_is_spread);
  g_test_add_func ("/job/closing/on the last wall", test_closure_on_last_wall);
  g_test_add_func ("/job/closing/over the limit", test_closure_over_limit);
  g_test_add_func ("/job/curved/outward holds the arc", test_bow_outward);
  g_test_add_func ("/job/curved/inward holds the floor", test_bow_inward);
  g_test_add_func ("/job/curved/same both ways round", test_bow_same_both_ways_round);
  g_test_add_func ("/job/cut-outs/are taken off", test_cutouts);
  g_test_add_func ("/job/cut-outs/are refused", test_cutouts_refused);
  g_test_add_func ("/job/walls/that cross", test_crossing_walls);
  g_test_add_func ("/job/walls/that cannot be", test_impossible_walls);
  g_test_add_func ("/job/openings/their ends", test_opening_ends);
  g_test_add_func ("/job/openings/are refused", test_openings_refused);
  g_test_add_func ("/job/stair/cuts as published", test_stair_published);
  g_test_add_func ("/job/stair/winders and a curved bottom step", test_stair_winders);
  g_test_add_func ("/job/stair/two turns", test_stair_two_turns);
  g_test_add_func ("/job/stair/turns that meet", test_stair_turns_that_meet);
  g_test_add_func ("/job/stair/winders at both ends", test_stair_winders_at_both_ends);
  g_test_add_func ("/job/stair/landing, cap and band, runner", test_stair_landing);
  g_test_add_func ("/job/words", test_words);
  g_test_add_func ("/job/goods/pattern drop", test_pattern_drop);
  return g_test_run ();
}
