/* Gestures on the floor, without a display: each event a function from old to new. */
#include "gesture-hand.h"
#include "measure-edit.h"
#include "room-edit.h"

static const RcLength FT = RC_TICKS_PER_FOOT;
static const RcLength IN = RC_TICKS_PER_INCH;

/* Drawing. */

static void
test_draw_by_dragging (Hand *hand, gconstpointer data)
{
  hand_take (hand, "room", NULL);
  hand_drag (hand, 0, 0, 12 * FT + IN / 3, 10 * FT - IN / 3);
  hand_assert_corners (hand, "room-1", "0,0 0,120 144,120 144,0");
  g_assert_cmpstr (hand->step, ==, "Draw a room");
  g_assert_cmpstr (hand->room, ==, "room-1");
  g_assert_true (hand_get_room (hand, "room-1")->placed);
}

static void
test_draw_by_two_clicks_and_typing (Hand *hand, gconstpointer data)
{
  hand_take (hand, "room", NULL);
  hand_click (hand, 0, 0);
  hand_move (hand, -5 * FT, 3 * FT);
  hand_type (hand, "12'6");
  hand_key (hand, RC_EVENT_NEXT);
  hand_type (hand, "10'");
  hand_key (hand, RC_EVENT_ENTER);
  hand_assert_corners (hand, "room-1", "-150,0 -150,120 0,120 0,0");
}

static void
test_draw_says_what_does_not_read (Hand *hand, gconstpointer data)
{
  hand_take (hand, "room", NULL);
  hand_click (hand, 0, 0);
  hand_type (hand, "1x");
  hand_key (hand, RC_EVENT_ENTER);
  g_assert_nonnull (strstr (hand->fault, "1x"));
  hand_key (hand, RC_EVENT_RUBOUT);
  hand_key (hand, RC_EVENT_RUBOUT);
  hand_key (hand, RC_EVENT_ENTER);
  g_assert_nonnull (strstr (hand->fault, "width"));
  g_assert_cmpuint (hand_get_measure (hand)->rooms->len, ==, 0);
  hand_key (hand, RC_EVENT_ESCAPE);
  g_assert_false (hand->gesture.is_active);
  g_assert_cmpint (hand->gesture.tool, ==, RC_TOOL_ROOM);
  hand_key (hand, RC_EVENT_ESCAPE);
  g_assert_cmpint (hand->gesture.tool, ==, RC_TOOL_CHOOSE);
}

/* The second room begins a wall's thickness behind the first and ends in line with it. */
static void
test_draw_behind_another_room (Hand *hand, gconstpointer data)
{
  hand_take (hand, "room", NULL);
  hand_drag (hand, 0, 0, 12 * FT, 10 * FT);
  hand_drag (hand, 12 * FT + 5 * IN, 2 * IN, 20 * FT, 10 * FT + 2 * IN);
  hand_assert_corners (hand, "room-2", "148.5,0 148.5,120 240.5,120 240.5,0");
  hand_assert_sound (hand);
}

/* Likewise behind a wall that was measured an inch out of square in 10 ft: where the new corner is. */
static void
test_draw_behind_a_wall_out_of_square (Hand *hand, gconstpointer data)
{
  hand_take (hand, "outline", NULL);
  hand_click (hand, 0, 0);
  hand_click (hand, 0, 10 * FT);
  hand_click (hand, 12 * FT, 10 * FT);
  hand_send (hand, (RcGestureEvent){ .kind = RC_EVENT_PRESS, .at = { 12 * FT + IN, 0 }, .reach = 1, .is_free = TRUE });
  hand_key (hand, RC_EVENT_ENTER);
  hand_assert_corners (hand, "room-1", "0,0 0,120 144,120 145,0");
  hand_take (hand, "room", NULL);
  hand_drag (hand, 12 * FT + 6 * IN, 5 * FT, 20 * FT, 12 * FT);
  hand_assert_corners (hand, "room-2", "149,60 149,144 240,144 240,60");
}

static void
test_draw_outline_by_clicks (Hand *hand, gconstpointer data)
{
  hand_take (hand, "outline", NULL);
  hand_click (hand, 0, 0);
  hand_click (hand, 3 * IN, 10 * FT); /* nearly north: exactly so */
  hand_click (hand, 6 * FT, 10 * FT + 2 * IN);
  hand_click (hand, 8 * FT + IN, 8 * FT); /* nearly south-east */
  hand_click (hand, 8 * FT + 3 * IN, 2 * IN);
  hand_click (hand, 0, 0);
  g_assert_null (hand->fault);
  hand_assert_corners (hand, "room-1", "0,0 0,120 72,120 97,95 97,0");
}

static void
test_draw_outline_by_arrows (Hand *hand, gconstpointer data)
{
  static const struct
  {
    int         direction;
    const char *length;
  } WALLS[] = { { 1, "10'" }, { 0, "12'6" }, { 3, "4'" }, { 2, "5'" }, { 3, "6'" } };

  hand_take (hand, "outline", NULL);
  hand_key (hand, RC_EVENT_ENTER);
  for (guint i = 0; i < G_N_ELEMENTS (WALLS); i++)
    {
      hand_arrow (hand, WALLS[i].direction);
      hand_type (hand, WALLS[i].length);
      hand_key (hand, RC_EVENT_ENTER);
    }
  hand_key (hand, RC_EVENT_ENTER);
  hand_assert_corners (hand, "room-1", "0,0 0,120 150,120 150,72 90,72 90,0");
}

static void
test_draw_outline_takes_back (Hand *hand, gconstpointer data)
{
  hand_take (hand, "outline", NULL);
  hand_click (hand, 0, 0);
  hand_click (hand, 0, 10 * FT);
  hand_key (hand, RC_EVENT_ENTER);
  g_assert_nonnull (strstr (hand->fault, "three"));
  hand_click (hand, 10 * FT, 10 * FT);
  hand_key (hand, RC_EVENT_RUBOUT);
  g_assert_cmpuint (hand->gesture.n_points, ==, 2);
  hand_key (hand, RC_EVENT_RUBOUT);
  hand_key (hand, RC_EVENT_RUBOUT);
  g_assert_false (hand->gesture.is_active);
}

static void
test_draw_refuses_crossing_walls (Hand *hand, gconstpointer data)
{
  hand_take (hand, "outline", NULL);
  hand_click (hand, 0, 0);
  hand_click (hand, 10 * FT, 10 * FT);
  hand_click (hand, 10 * FT, 0);
  hand_click (hand, 0, 10 * FT);
  hand_key (hand, RC_EVENT_ENTER);
  g_assert_nonnull (strstr (hand->fault, "meets"));
  g_assert_true (hand->gesture.is_active);
  g_assert_cmpuint (hand_get_measure (hand)->rooms->len, ==, 0);
}

/* Moving. Two rooms side by side, a wall of 4 1/2 in between: room-1 at the left, room-2 at the right. */

static void
draw_two_rooms (Hand *hand)
{
  hand_take (hand, "room", NULL);
  hand_drag (hand, 0, 0, 12 * FT, 10 * FT);
  hand_drag (hand, 12 * FT + 5 * IN, 2 * IN, 20 * FT, 10 * FT + 2 * IN);
  hand_take (hand, "choose", "room-1");
}

static void
test_move_wall_outside (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  hand_drag (hand, 0, 4 * FT, -2 * FT - IN / 4, 5 * FT);
  hand_assert_corners (hand, "room-1", "-24,0 -24,120 144,120 144,0");
  g_assert_cmpstr (hand->step, ==, "Move a wall");
  hand_assert_corners (hand, "room-2", "148.5,0 148.5,120 240.5,120 240.5,0");
}

static void
test_move_shared_wall (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  hand_drag (hand, 12 * FT, 4 * FT, 14 * FT, 4 * FT);
  hand_assert_corners (hand, "room-1", "0,0 0,120 168,120 168,0");
  hand_assert_corners (hand, "room-2", "172.5,0 172.5,120 240.5,120 240.5,0");
  hand_assert_sound (hand);
}

static void
test_move_wall_to_typed_length (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  hand_press (hand, 12 * FT, 4 * FT);
  hand_move (hand, 13 * FT, 4 * FT);
  hand_type (hand, "11'6 1/2");
  hand_release (hand, 13 * FT, 4 * FT);
  hand_assert_corners (hand, "room-1", "0,0 0,120 138.5,120 138.5,0");
  hand_assert_corners (hand, "room-2", "143,0 143,120 240.5,120 240.5,0");
}

/* The room behind is wider: it gives way with a jog, and the wall takes its thickness along. */
static void
test_move_wall_into_a_longer_one (Hand *hand, gconstpointer data)
{
  hand_take (hand, "room", NULL);
  hand_drag (hand, 0, 0, 10 * FT, 10 * FT);
  hand_drag (hand, -10 * FT, 10 * FT + 4.5 * IN, 20 * FT, 20 * FT);
  hand_take (hand, "choose", "room-1");
  hand_drag (hand, 5 * FT, 10 * FT, 5 * FT, 11 * FT);
  hand_assert_corners (hand, "room-1", "0,0 0,132 120,132 120,0");
  hand_assert_corners (hand, "room-2",
                       "-120,124.5 -120,240.5 240,240.5 240,124.5 124.5,124.5 124.5,136.5 -4.5,136.5 -4.5,124.5");
  hand_assert_sound (hand);
  hand_drag (hand, 5 * FT, 11 * FT, 5 * FT, 10 * FT);
  hand_assert_corners (hand, "room-1", "0,0 0,120 120,120 120,0");
  hand_assert_sound (hand);
}

static void
test_move_square_corner (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  hand_drag (hand, 0, 10 * FT, -FT, 12 * FT);
  hand_assert_corners (hand, "room-1", "-12,0 -12,144 144,144 144,0");
  g_assert_cmpstr (hand->step, ==, "Move a corner");
  hand_drag (hand, 12 * FT, 0, 12 * FT, FT);
  hand_assert_corners (hand, "room-1", "-12,12 -12,144 144,144 144,12");
}

static void
test_move_corner_alone (Hand *hand, gconstpointer data)
{
  hand_take (hand, "outline", NULL);
  hand_click (hand, 0, 0);
  hand_click (hand, 0, 10 * FT);
  hand_click (hand, 10 * FT, 10 * FT);
  hand_click (hand, 0, 0);
  hand_take (hand, "choose", "room-1");
  hand_drag (hand, 10 * FT, 10 * FT, 12 * FT, 8 * FT);
  hand_assert_corners (hand, "room-1", "0,0 0,120 144,96");
}

static void
test_move_is_refused_where_it_cannot_be (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  hand_drag (hand, 0, 4 * FT, 12 * FT, 4 * FT);
  g_assert_nonnull (hand->fault);
  hand_assert_corners (hand, "room-1", "0,0 0,120 144,120 144,0");
  hand_press (hand, 0, 4 * FT);
  hand_move (hand, 2 * FT, 4 * FT);
  hand_key (hand, RC_EVENT_ESCAPE);
  hand_release (hand, 2 * FT, 4 * FT);
  hand_assert_corners (hand, "room-1", "0,0 0,120 144,120 144,0");
}

/* Doors stay where they are in the house while the wall before them gets longer. */
static void
test_move_keeps_doors_in_place (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  RcOpening *door = rc_room_edit_add_opening (hand_get_room (hand, "room-1"), RC_OPENING_DOOR, 1, RC_UNITS_IMPERIAL);
  door->offset = 2 * FT;
  hand_drag (hand, 0, 4 * FT, -FT, 4 * FT);
  const RcOpening *moved = g_ptr_array_index (hand_get_room (hand, "room-1")->openings, 0);
  g_assert_cmpint (moved->offset, ==, 3 * FT);
  hand_drag (hand, 3 * FT + 4 * IN, 10 * FT, 5 * FT + 4 * IN, 10 * FT);
  g_assert_cmpstr (hand->step, ==, "Place of an opening");
  moved = g_ptr_array_index (hand_get_room (hand, "room-1")->openings, 0);
  g_assert_cmpint (moved->offset, ==, 5 * FT);
  hand_press (hand, 5 * FT + 4 * IN, 10 * FT);
  hand_type (hand, "6 1/2");
  hand_key (hand, RC_EVENT_ENTER);
  moved = g_ptr_array_index (hand_get_room (hand, "room-1")->openings, 0);
  g_assert_cmpint (moved->offset, ==, 13 * IN / 2);
}

static void
test_move_room_and_cutout (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  static const RcPoint HEARTH[] = { { 0, 0 }, { 48, 0 }, { 48, 24 }, { 0, 24 } };
  RcRing              *ring = rc_ring_new ();
  for (guint i = 0; i < 4; i++)
    {
      RcPoint point = { 3 * FT + HEARTH[i].x * IN, 3 * FT + HEARTH[i].y * IN };
      g_array_append_val (ring, point);
    }
  RcCutout *island = rc_cutout_new_take (RC_CUTOUT_ISLAND, ring);
  g_ptr_array_add (hand_get_room (hand, "room-1")->cutouts, island);
  hand_drag (hand, 4 * FT, 4 * FT, 5 * FT + IN / 3, 4 * FT);
  g_assert_cmpstr (hand->step, ==, "Move a cut-out");
  g_assert_cmpint (rc_ring_get (((RcCutout *)hand_get_room (hand, "room-1")->cutouts->pdata[0])->points, 0)->x, ==,
                   4 * FT);
  /* The cut-out stays when the first corner moves. */
  hand_drag (hand, 0, 4 * FT, -FT, 4 * FT);
  g_assert_cmpint (rc_ring_get (((RcCutout *)hand_get_room (hand, "room-1")->cutouts->pdata[0])->points, 0)->x, ==,
                   5 * FT);
  hand_take (hand, "move", NULL);
  hand_drag (hand, 2 * FT, 2 * FT, 2 * FT, 12 * FT + IN);
  hand_assert_corners (hand, "room-1", "-12,120 -12,240 144,240 144,120");
}

/* A room that its door places: only what the hand holds moves. */
static void
test_move_keeps_rooms_placed_by_doors (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  RcRoom    *one = hand_get_room (hand, "room-1"), *two = hand_get_room (hand, "room-2");
  RcOpening *door = rc_room_edit_add_opening (one, RC_OPENING_DOOR, 2, RC_UNITS_IMPERIAL);
  RcOpening *back = rc_room_edit_add_opening (two, RC_OPENING_DOOR, 0, RC_UNITS_IMPERIAL);
  door->to_room = g_strdup (two->id);
  back->to_room = g_strdup (one->id);
  two->placed = FALSE;
  two->at = (RcPoint){ 0, 0 };
  hand_assert_corners (hand, "room-2", "148.5,0 148.5,120 240.5,120 240.5,0");
  hand_drag (hand, 12 * FT, 2 * FT, 14 * FT, 2 * FT);
  hand_assert_corners (hand, "room-1", "0,0 0,120 168,120 168,0");
  hand_assert_corners (hand, "room-2", "172.5,0 172.5,120 240.5,120 240.5,0");
  hand_assert_sound (hand);
  g_assert_false (hand_get_room (hand, "room-2")->placed);
  g_assert_cmpint (hand_get_room (hand, "room-2")->at.x, ==, 0);
  /* Dragged away, the door leads nowhere any more. */
  hand_take (hand, "move", NULL);
  hand_drag (hand, 16 * FT, 4 * FT, 20 * FT, 14 * FT);
  g_assert_cmpstr (hand->step, ==, "Move a room");
  g_assert_null (((RcOpening *)hand_get_room (hand, "room-1")->openings->pdata[0])->to_room);
  g_assert_true (hand_get_room (hand, "room-2")->placed);
}

static void
test_click_on_a_grip_chooses (Hand *hand, gconstpointer data)
{
  RcGestureResult result = { 0 };

  draw_two_rooms (hand);
  g_autoptr (RcScene) scene = rc_scene_new (hand->job, hand_get_measure (hand), NULL, 0);
  RcGestureEvent event = { .kind = RC_EVENT_PRESS, .at = { 12 * FT, 4 * FT }, .reach = 6 * IN };
  RcGesture      gesture = rc_gesture_handle (hand->gesture, scene, &event, &result);
  event.kind = RC_EVENT_RELEASE;
  gesture = rc_gesture_handle (gesture, scene, &event, &result);
  g_assert_true (result.is_click);
  g_assert_cmpstr (result.room, ==, "room-1");
  g_assert_cmpuint (result.wall, ==, 3);
  g_assert_false (gesture.is_active);
}

#define TEST(path, function) g_test_add (path, Hand, NULL, hand_set_up, function, hand_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  TEST ("/gesture/draw/by-dragging", test_draw_by_dragging);
  TEST ("/gesture/draw/by-two-clicks-and-typing", test_draw_by_two_clicks_and_typing);
  TEST ("/gesture/draw/says-what-does-not-read", test_draw_says_what_does_not_read);
  TEST ("/gesture/draw/behind-out-of-square", test_draw_behind_a_wall_out_of_square);
  TEST ("/gesture/draw/behind-another-room", test_draw_behind_another_room);
  TEST ("/gesture/draw/outline-by-clicks", test_draw_outline_by_clicks);
  TEST ("/gesture/draw/outline-by-arrows", test_draw_outline_by_arrows);
  TEST ("/gesture/draw/outline-takes-back", test_draw_outline_takes_back);
  TEST ("/gesture/draw/refuses-crossing-walls", test_draw_refuses_crossing_walls);
  TEST ("/gesture/move/wall-outside", test_move_wall_outside);
  TEST ("/gesture/move/shared-wall", test_move_shared_wall);
  TEST ("/gesture/move/wall-to-typed-length", test_move_wall_to_typed_length);
  TEST ("/gesture/move/wall-into-a-longer-one", test_move_wall_into_a_longer_one);
  TEST ("/gesture/move/square-corner", test_move_square_corner);
  TEST ("/gesture/move/corner-alone", test_move_corner_alone);
  TEST ("/gesture/move/is-refused-where-it-cannot-be", test_move_is_refused_where_it_cannot_be);
  TEST ("/gesture/move/keeps-doors-in-place", test_move_keeps_doors_in_place);
  TEST ("/gesture/move/room-and-cutout", test_move_room_and_cutout);
  TEST ("/gesture/move/keeps-rooms-placed-by-doors", test_move_keeps_rooms_placed_by_doors);
  TEST ("/gesture/move/click-on-a-grip-chooses", test_click_on_a_grip_chooses);
  return g_test_run ();
}
