/* Putting things in, splitting, merging, joining, turning: gestures without a display. */
#include "gesture-hand.h"
#include "gesture-room.h"
#include "measure-edit.h"
#include "room-shape-kind.h"

static const RcLength FT = RC_TICKS_PER_FOOT;
static const RcLength IN = RC_TICKS_PER_INCH;

/* Two rooms side by side, a wall of 4 1/2 in between. */
static void
draw_two_rooms (Hand *hand)
{
  hand_take (hand, "room", NULL);
  hand_drag (hand, 0, 0, 12 * FT, 10 * FT);
  hand_drag (hand, 12 * FT + 5 * IN, 2 * IN, 20 * FT, 10 * FT + 2 * IN);
}

static RcOpening *
get_opening (Hand *hand, const char *room, guint i)
{
  RcRoom *found = hand_get_room (hand, room);
  g_assert_cmpuint (i, <, found->openings->len);
  return g_ptr_array_index (found->openings, i);
}

/* A door in the shared wall stands in both rooms, and one of them is placed by it from then on. */
static void
test_put_door_between_rooms (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  hand_take (hand, "door", NULL);
  hand_move (hand, 12 * FT - IN, 4 * FT);
  hand_send (hand, (RcGestureEvent){ .kind = RC_EVENT_LETTER, .letter = ' ' });
  hand_type (hand, "2'");
  hand_key (hand, RC_EVENT_ENTER);
  g_assert_cmpstr (hand->step, ==, "Put an opening in");
  const RcOpening *door = get_opening (hand, "room-1", 0), *back = get_opening (hand, "room-2", 0);
  g_assert_cmpuint (door->wall, ==, 2);
  g_assert_cmpint (door->offset, ==, 2 * FT);
  g_assert_cmpint (door->width, ==, 32 * IN);
  g_assert_cmpint (door->depth, ==, 9 * IN / 2);
  g_assert_cmpstr (door->to_room, ==, "room-2");
  g_assert_cmpstr (door->to_opening, ==, back->id);
  g_assert_cmpint (door->swing, ==, RC_SWING_IN);
  g_assert_true (door->hinge_at_end);
  g_assert_cmpint (back->swing, ==, RC_SWING_OUT);
  g_assert_false (back->hinge_at_end);
  g_assert_cmpint (back->offset, ==, 10 * FT - 2 * FT - 32 * IN);
  g_assert_false (hand_get_room (hand, "room-2")->placed);
  hand_assert_corners (hand, "room-2", "148.5,0 148.5,120 240.5,120 240.5,0");
  hand_assert_sound (hand);
}

static void
test_put_window_by_pointer (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  hand_take (hand, "window", NULL);
  hand_click (hand, IN, 5 * FT + IN / 4);
  const RcOpening *window = get_opening (hand, "room-1", 0);
  g_assert_cmpint (window->kind, ==, RC_OPENING_WINDOW);
  g_assert_cmpint (window->offset, ==, 3 * FT);
  g_assert_null (window->to_room);
  hand_move (hand, 6 * FT, 10 * FT);
  hand_key (hand, RC_EVENT_NEXT);
  hand_key (hand, RC_EVENT_NEXT);
  hand_type (hand, "30");
  hand_key (hand, RC_EVENT_NEXT);
  hand_key (hand, RC_EVENT_NEXT);
  hand_type (hand, "6");
  hand_key (hand, RC_EVENT_ENTER);
  window = get_opening (hand, "room-1", 1);
  g_assert_cmpint (window->width, ==, 30 * IN);
  g_assert_cmpint (window->offset, ==, 12 * FT - 36 * IN);
}

static void
test_put_opening_refuses (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  hand_take (hand, "door", NULL);
  hand_click (hand, 6 * FT, 5 * FT);
  g_assert_nonnull (strstr (hand->fault, "wall"));
  hand_click (hand, 0, 5 * FT);
  hand_click (hand, 0, 5 * FT + 6 * IN);
  g_assert_nonnull (strstr (hand->fault, "lie over each other"));
  g_assert_cmpuint (hand_get_room (hand, "room-1")->openings->len, ==, 1);
}

static void
test_put_cutout (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  hand_take (hand, "cut-out", NULL);
  hand_drag (hand, 2 * IN, 3 * FT, 2 * FT, 7 * FT);
  g_assert_cmpstr (hand->step, ==, "Put a cut-out in");
  const RcRing *ring = ((RcCutout *)g_ptr_array_index (hand_get_room (hand, "room-1")->cutouts, 0))->points;
  g_assert_cmpint (rc_ring_compute_area (ring), ==, rc_area_from_rectangle (2 * FT, 4 * FT));
  hand_click (hand, 15 * FT, 5 * FT);
  hand_type (hand, "3'");
  hand_key (hand, RC_EVENT_NEXT);
  hand_type (hand, "2'");
  hand_key (hand, RC_EVENT_ENTER);
  ring = ((RcCutout *)g_ptr_array_index (hand_get_room (hand, "room-2")->cutouts, 0))->points;
  g_assert_cmpint (ABS (rc_ring_compute_area (ring)), ==, rc_area_from_rectangle (3 * FT, 2 * FT));
  hand_drag (hand, 4 * FT, 4 * FT, 13 * FT, 6 * FT);
  g_assert_nonnull (strstr (hand->fault, "outside"));
  hand_assert_sound (hand);
}

static RcArea
compute_area (Hand *hand, const char *id)
{
  g_autoptr (RcPolygon) floor = rc_room_compute_polygon (hand_get_room (hand, id), &hand->job->settings.closure, NULL);
  g_assert_nonnull (floor);
  return rc_polygon_compute_area (floor);
}

/* Parts have the whole's floor; the door stays with the part it is in; put together again it is as before. */
static void
test_split_and_merge (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  rc_measure_edit_put_room_in_area (hand_get_measure (hand), "room-1",
                                    rc_measure_edit_add_area (hand_get_measure (hand), "Area")->id);
  hand_take (hand, "door", NULL);
  hand_click (hand, 12 * FT, 4 * FT);
  hand_take (hand, "cut-out", NULL);
  hand_drag (hand, FT, FT, 2 * FT, 2 * FT);
  RcArea whole = compute_area (hand, "room-1");
  hand_take (hand, "split", NULL);
  hand_drag (hand, 5 * FT + 2 * IN, 9 * FT, 5 * FT + 2 * IN, 2 * FT);
  g_assert_null (hand->fault);
  g_assert_cmpstr (hand->step, ==, "Split a room");
  hand_assert_corners (hand, "room-1", "62,0 0,0 0,120 62,120");
  hand_assert_corners (hand, "room-1-other-part", "62,120 144,120 144,0 62,0");
  g_assert_cmpint (compute_area (hand, "room-1") + compute_area (hand, "room-1-other-part"), ==, whole);
  g_assert_cmpuint (hand_get_room (hand, "room-1")->openings->len, ==, 0);
  g_assert_cmpuint (hand_get_room (hand, "room-1")->cutouts->len, ==, 1);
  g_assert_cmpstr (get_opening (hand, "room-2", 0)->to_room, ==, "room-1-other-part");
  g_assert_cmpuint (((RcFloorArea *)hand_get_measure (hand)->areas->pdata[0])->rooms->len, ==, 2);
  hand_assert_sound (hand);

  hand_take (hand, "merge", NULL);
  hand_move (hand, 62 * IN, 5 * FT);
  hand_click (hand, 62 * IN, 5 * FT);
  g_assert_null (hand->fault);
  g_assert_cmpstr (hand->step, ==, "Make one room of two");
  const char *left = hand->room;
  g_assert_cmpint (compute_area (hand, left), ==, whole);
  g_assert_cmpuint (rc_room_get_n_walls (hand_get_room (hand, left)), ==, 4);
  g_assert_cmpuint (hand_get_room (hand, left)->openings->len, ==, 1);
  g_assert_cmpstr (get_opening (hand, "room-2", 0)->to_room, ==, left);
  hand_assert_sound (hand);
  /* With the wall between, the door goes too. */
  hand_click (hand, 12 * FT, 8 * FT);
  g_assert_null (hand->fault);
  g_assert_cmpuint (hand_get_measure (hand)->rooms->len, ==, 1);
  g_assert_cmpint (compute_area (hand, hand->room), ==, whole + rc_area_from_rectangle (193 * IN / 2, 10 * FT));
  g_assert_cmpuint (hand_get_room (hand, hand->room)->openings->len, ==, 0);
}

static void
test_split_refuses (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  hand_take (hand, "door", NULL);
  hand_click (hand, 6 * FT, 10 * FT);
  hand_take (hand, "split", NULL);
  hand_drag (hand, 6 * FT, 9 * FT, 6 * FT, FT);
  g_assert_nonnull (strstr (hand->fault, "openings"));
  hand_drag (hand, 30 * FT, 9 * FT, 30 * FT, FT);
  g_assert_nonnull (strstr (hand->fault, "across"));
  hand_take (hand, "cut-out", NULL);
  hand_drag (hand, 2 * FT, 2 * FT, 4 * FT, 4 * FT);
  hand_take (hand, "split", NULL);
  hand_drag (hand, FT, 3 * FT, 11 * FT, 3 * FT);
  g_assert_nonnull (strstr (hand->fault, "cut-out"));
  g_assert_cmpuint (hand_get_measure (hand)->rooms->len, ==, 2);
}

/* By a typed distance the line begins so far from the start of its wall. */
static void
test_split_at_a_typed_distance (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  hand_take (hand, "split", NULL);
  hand_press (hand, 5 * FT, 10 * FT);
  hand_move (hand, 5 * FT, 0);
  hand_type (hand, "4' 1/2\"");
  hand_key (hand, RC_EVENT_ENTER);
  hand_assert_corners (hand, "room-1", "48.5,0 0,0 0,120 48.5,120");
}

/* A room drawn elsewhere, its door on the wrong side, is turned and put where the doors meet. */
static void
test_join_at_doors (Hand *hand, gconstpointer data)
{
  hand_take (hand, "room", NULL);
  hand_drag (hand, 0, 0, 12 * FT, 10 * FT);
  hand_drag (hand, 30 * FT, 0, 38 * FT, 6 * FT);
  hand_take (hand, "door", NULL);
  hand_click (hand, 12 * FT, 5 * FT);
  hand_click (hand, 34 * FT, 6 * FT);
  hand_take (hand, "join", NULL);
  hand_click (hand, 12 * FT, 5 * FT);
  hand_click (hand, 34 * FT, 6 * FT);
  g_assert_null (hand->fault);
  g_assert_cmpstr (hand->step, ==, "Join two rooms at a door");
  hand_assert_corners (hand, "room-2", "220.5,12 148.5,12 148.5,108 220.5,108");
  g_assert_false (hand_get_room (hand, "room-2")->placed);
  hand_assert_sound (hand);
}

static void
test_turn_and_mirror (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  hand_take (hand, "door", NULL);
  hand_click (hand, 12 * FT, 4 * FT);
  RcArea area = compute_area (hand, "room-1");
  for (int quarter = 0; quarter < 4; quarter++)
    {
      g_autoptr (RcScene) scene = rc_scene_new_noted (hand->job, hand_get_measure (hand), 0);
      RcJob *turned = rc_gesture_room_turn (scene, "room-1", 90);
      rc_job_free (hand->job);
      hand->job = turned;
      g_assert_cmpint (compute_area (hand, "room-1"), ==, area);
    }
  hand_assert_corners (hand, "room-1", "0,0 0,120 144,120 144,0");
  g_assert_null (get_opening (hand, "room-1", 0)->to_room);
  g_autoptr (RcScene) scene = rc_scene_new_noted (hand->job, hand_get_measure (hand), 0);
  RcJob *mirrored = rc_gesture_room_mirror (scene, "room-1");
  rc_job_free (hand->job);
  hand->job = mirrored;
  hand_assert_corners (hand, "room-1", "144,0 144,120 0,120 0,0");
  g_assert_cmpint (get_opening (hand, "room-1", 0)->wall, ==, 2);
}

static void
remove_at (Hand *hand, RcLength x, RcLength y)
{
  hand_send (hand, (RcGestureEvent){ .kind = RC_EVENT_REMOVE, .at = { x, y } });
}

static void
test_take_away (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  hand_take (hand, "door", NULL);
  hand_click (hand, 12 * FT, 4 * FT);
  hand_take (hand, "cut-out", NULL);
  hand_drag (hand, FT, FT, 2 * FT, 2 * FT);
  hand_take (hand, "choose", "room-1");
  remove_at (hand, 12 * FT, 4 * FT);
  g_assert_cmpstr (hand->step, ==, "Take an opening out");
  g_assert_cmpuint (hand_get_room (hand, "room-1")->openings->len, ==, 0);
  g_assert_cmpuint (hand_get_room (hand, "room-2")->openings->len, ==, 0);
  hand_assert_corners (hand, "room-2", "148.5,0 148.5,120 240.5,120 240.5,0");
  remove_at (hand, 3 * FT / 2, 3 * FT / 2);
  g_assert_cmpuint (hand_get_room (hand, "room-1")->cutouts->len, ==, 0);
  remove_at (hand, 0, 0);
  hand_assert_corners (hand, "room-1", "0,120 144,120 144,0");
  remove_at (hand, 0, 10 * FT);
  g_assert_nonnull (strstr (hand->fault, "three"));
}

static void
test_pile_and_seam (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  RcFloorArea *area = rc_measure_edit_add_area (hand_get_measure (hand), "Area");
  rc_measure_edit_put_room_in_area (hand_get_measure (hand), "room-1", area->id);
  hand_take (hand, "pile", NULL);
  hand_drag (hand, 4 * FT, 4 * FT, 8 * FT, 5 * FT);
  area = g_ptr_array_index (hand_get_measure (hand)->areas, 0);
  g_assert_cmpint (area->pile_degrees, ==, 0);
  hand_drag (hand, 15 * FT, 4 * FT, 18 * FT, 5 * FT);
  g_assert_nonnull (strstr (hand->fault, "carpeted"));
  hand_take (hand, "seam", NULL);
  hand_drag (hand, 3 * FT + IN / 3, 8 * FT, 3 * FT, 2 * FT);
  area = g_ptr_array_index (hand_get_measure (hand)->areas, 0);
  const RcPin *seam = g_ptr_array_index (area->pins, 0);
  g_assert_cmpint (seam->kind, ==, RC_PIN_SEAM);
  g_assert_cmpstr (seam->room, ==, "room-1");
  g_assert_cmpint (rc_ring_get (seam->points, 0)->x, ==, 3 * FT);
  g_assert_true (rc_pin_check (seam, NULL));
  g_assert_cmpint (area->pile_degrees, ==, 270);
  g_assert_cmpuint (area->pins->len, ==, 1);
  /* Floor without seams, and both stay where they are in the house when the room's first corner moves. */
  hand_take (hand, "no-seams", NULL);
  hand_drag (hand, 6 * FT, 4 * FT, 8 * FT, 7 * FT);
  g_assert_cmpstr (hand->step, ==, "Keep floor free of seams");
  hand_take (hand, "choose", "room-1");
  hand_drag (hand, 0, 5 * FT, -FT, 5 * FT);
  area = g_ptr_array_index (hand_get_measure (hand)->areas, 0);
  const RcPin *zone = g_ptr_array_index (area->pins, 1);
  g_assert_cmpint (zone->kind, ==, RC_PIN_NO_SEAMS);
  g_assert_true (rc_pin_check (zone, NULL));
  g_assert_cmpint (rc_ring_get (zone->points, 0)->x, ==, 7 * FT);
  g_assert_cmpint (rc_ring_get (((RcPin *)area->pins->pdata[0])->points, 0)->x, ==, 4 * FT);
  hand_take (hand, "no-seams", NULL);
  hand_send (hand, (RcGestureEvent){ .kind = RC_EVENT_REMOVE, .at = { 7 * FT, 5 * FT } });
  hand_take (hand, "seam", NULL);
  hand_click (hand, 3 * FT, 5 * FT);
  area = g_ptr_array_index (hand_get_measure (hand)->areas, 0);
  g_assert_cmpuint (area->pins->len, ==, 0);
  hand_take (hand, "pile", NULL);
  hand_click (hand, 3 * FT, 5 * FT);
  area = g_ptr_array_index (hand_get_measure (hand)->areas, 0);
  g_assert_cmpint (area->pile_degrees, ==, -1);
}

static void
test_bend_wall (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  hand_take (hand, "choose", "room-1");
  hand_press (hand, 0, 5 * FT);
  hand_send (hand, (RcGestureEvent){ .kind = RC_EVENT_MOTION, .at = { -2 * FT, 5 * FT }, .is_bow = TRUE });
  hand_release (hand, -2 * FT, 5 * FT);
  g_assert_cmpstr (hand->step, ==, "Wall bow");
  g_assert_cmpint (g_array_index (hand_get_room (hand, "room-1")->walls, RcWall, 0).bow, ==, 2 * FT);
  hand_assert_corners (hand, "room-1", "0,0 0,120 144,120 144,0");
  hand_assert_sound (hand);
}

/* Shapes by their sizes: corners in inches, floor in square feet by hand. */
static void
test_shapes (Hand *hand, gconstpointer data)
{
  static const struct
  {
    RcShape     shape;
    int         sizes[RC_SHAPE_MAX_SIZES]; /* feet */
    guint       n_walls;
    double      area; /* sq ft */
    const char *fault;
  } CASES[] = {
    { RC_SHAPE_RECTANGLE, { 12, 10 }, 4, 120, NULL },
    { RC_SHAPE_L, { 20, 15, 8, 6 }, 6, 300 - 48, NULL },
    { RC_SHAPE_BAY, { 14, 13, 8, 2, 4 }, 8, 182 + 12, NULL },
    { RC_SHAPE_BAY, { 14, 13, 8, 2, 8 }, 8, 182 + 16, NULL },
    { RC_SHAPE_BAY, { 14, 13, 14, 2, 14 }, 8, 182 + 28, NULL },
    { RC_SHAPE_L_BAY, { 20, 15, 8, 6, 9, 2, 5 }, 10, 252 + 14, NULL },
    { RC_SHAPE_ANGLED, { 12, 10, 3, 4 }, 5, 120 - 6, NULL },
    { RC_SHAPE_L, { 20, 15, 20, 6 }, 0, 0, "less than the width" },
    { RC_SHAPE_BAY, { 14, 13, 15, 2, 4 }, 0, 0, "more than the width" },
    { RC_SHAPE_BAY, { 14, 13, 8, 2, 9 }, 0, 0, "opening" },
    { RC_SHAPE_RECTANGLE, { 12, 0 }, 0, 0, "Length" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (CASES); i++)
    {
      RcRoom  *room = rc_measure_edit_add_room (hand_get_measure (hand), "Shape", 0, 0, 0);
      RcLength sizes[RC_SHAPE_MAX_SIZES];
      g_autoptr (GError) error = NULL;
      for (guint k = 0; k < RC_SHAPE_MAX_SIZES; k++)
        sizes[k] = CASES[i].sizes[k] * FT;
      gboolean built = rc_shape_build (CASES[i].shape, sizes, room, &error);
      g_assert_cmpint (built, ==, CASES[i].fault == NULL);
      if (!built)
        {
          g_assert_nonnull (strstr (error->message, CASES[i].fault));
          continue;
        }
      g_autoptr (RcPolygon) floor = rc_room_compute_polygon (room, &hand->job->settings.closure, &error);
      g_assert_no_error (error);
      double square_feet = (double)rc_polygon_compute_area (floor) / 2 / ((double)FT * (double)FT);
      g_assert_cmpfloat_with_epsilon (square_feet, CASES[i].area, 0.001);
      if (CASES[i].sizes[2] != 14)
        g_assert_cmpuint (rc_room_get_n_walls (room), ==, CASES[i].n_walls);
    }
}

#define TEST(path, function) g_test_add (path, Hand, NULL, hand_set_up, function, hand_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  TEST ("/gesture/put/door-between-rooms", test_put_door_between_rooms);
  TEST ("/gesture/put/window-by-pointer", test_put_window_by_pointer);
  TEST ("/gesture/put/refuses", test_put_opening_refuses);
  TEST ("/gesture/put/cut-out", test_put_cutout);
  TEST ("/gesture/split/and-merge", test_split_and_merge);
  TEST ("/gesture/split/refuses", test_split_refuses);
  TEST ("/gesture/split/at-a-typed-distance", test_split_at_a_typed_distance);
  TEST ("/gesture/join/at-doors", test_join_at_doors);
  TEST ("/gesture/turn/and-mirror", test_turn_and_mirror);
  TEST ("/gesture/take-away", test_take_away);
  TEST ("/gesture/pile-and-seam", test_pile_and_seam);
  TEST ("/gesture/bend-wall", test_bend_wall);
  TEST ("/shape/sizes", test_shapes);
  return g_test_run ();
}
