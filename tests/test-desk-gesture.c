/* Gestures on the floor, without a display: each event a function from old to new. */
#include "gesture.h"
#include "job-edit.h"
#include "measure-edit.h"
#include "room-edit.h"

static const RcLength FT = RC_TICKS_PER_FOOT;
static const RcLength IN = RC_TICKS_PER_INCH;

/* A hand over a job: each event is handled, and what comes of it becomes the job. */
typedef struct
{
  RcJob      *job;
  RcGesture   gesture;
  char       *step;
  char       *fault;
  const char *room;
} Hand;

static void
hand_set_up (Hand *hand, gconstpointer data)
{
  RcCurrency usd = { "USD", 2 };

  hand->job = rc_job_new ("J-1", &usd);
  hand->gesture = rc_gesture_start (RC_TOOL_CHOOSE, NULL);
}

static void
hand_tear_down (Hand *hand, gconstpointer data)
{
  rc_job_free (hand->job);
  g_free (hand->step);
  g_free (hand->fault);
}

static void
take (Hand *hand, const char *tool, const char *room)
{
  RcTool kind = RC_TOOL_CHOOSE;

  g_assert_true (rc_tool_parse (tool, &kind));
  hand->gesture = rc_gesture_start (kind, room);
}

static RcMeasure *
get_measure (Hand *hand)
{
  return rc_job_get_measure (hand->job, NULL);
}

static RcRoom *
get_room (Hand *hand, const char *id)
{
  RcRoom *room = rc_measure_find_room (get_measure (hand), id);
  g_assert_nonnull (room);
  return room;
}

static void
send (Hand *hand, RcGestureEvent event)
{
  RcGestureResult result = { 0 };
  g_autoptr (RcHouse) house = rc_house_new_rooms (get_measure (hand), &hand->job->settings.closure, NULL);
  g_autoptr (RcScene) scene = rc_scene_new (hand->job, get_measure (hand), house, 0);

  event.reach = 6 * IN;
  hand->gesture = rc_gesture_handle (hand->gesture, scene, &event, &result);
  g_autoptr (RcSketch) sketch = rc_gesture_sketch (&hand->gesture, scene);
  g_assert_nonnull (sketch->rings);
  g_clear_pointer (&hand->fault, g_free);
  hand->fault = g_strdup (result.fault);
  if (result.job)
    {
      g_free (hand->step);
      hand->step = g_strdup (result.step);
      hand->room = result.room;
      rc_job_free (hand->job);
      hand->job = g_steal_pointer (&result.job);
    }
  rc_gesture_result_clear (&result);
}

static void
press (Hand *hand, RcLength x, RcLength y)
{
  send (hand, (RcGestureEvent){ .kind = RC_EVENT_PRESS, .at = { x, y } });
}

static void
move (Hand *hand, RcLength x, RcLength y)
{
  send (hand, (RcGestureEvent){ .kind = RC_EVENT_MOTION, .at = { x, y } });
}

static void
release (Hand *hand, RcLength x, RcLength y)
{
  send (hand, (RcGestureEvent){ .kind = RC_EVENT_RELEASE, .at = { x, y } });
}

static void
drag (Hand *hand, RcLength x0, RcLength y0, RcLength x1, RcLength y1)
{
  press (hand, x0, y0);
  move (hand, (x0 + x1) / 2, (y0 + y1) / 2);
  move (hand, x1, y1);
  release (hand, x1, y1);
}

static void
click (Hand *hand, RcLength x, RcLength y)
{
  press (hand, x, y);
  release (hand, x, y);
}

static void
key (Hand *hand, RcEventKind kind)
{
  send (hand, (RcGestureEvent){ .kind = kind });
}

static void
arrow (Hand *hand, int direction)
{
  send (hand, (RcGestureEvent){ .kind = RC_EVENT_ARROW, .arrow = direction });
}

static void
type (Hand *hand, const char *text)
{
  for (const char *p = text; *p; p = g_utf8_next_char (p))
    send (hand, (RcGestureEvent){ .kind = RC_EVENT_LETTER, .letter = g_utf8_get_char (p) });
}

/* The room's corners in the house, as "x,y x,y" in inches. */
static char *
dup_corners (Hand *hand, const char *id)
{
  g_autoptr (RcHouse) house = rc_house_new_rooms (get_measure (hand), &hand->job->settings.closure, NULL);
  g_autoptr (RcScene) scene = rc_scene_new (hand->job, get_measure (hand), house, 0);
  const RcSceneRoom *room = rc_scene_find_room (scene, id);
  GString           *text = g_string_new (NULL);

  g_assert_nonnull (room);
  for (guint i = 0; i < room->corners->len; i++)
    {
      RcPoint point = *rc_ring_get (room->corners, i);
      char    x[G_ASCII_DTOSTR_BUF_SIZE], y[G_ASCII_DTOSTR_BUF_SIZE];
      g_ascii_formatd (x, sizeof x, "%g", (double)point.x / (double)IN);
      g_ascii_formatd (y, sizeof y, "%g", (double)point.y / (double)IN);
      g_string_append_printf (text, "%s%s,%s", i ? " " : "", x, y);
    }
  return g_string_free (text, FALSE);
}

static void
assert_corners (Hand *hand, const char *id, const char *expected)
{
  g_autofree char *corners = dup_corners (hand, id);
  g_assert_cmpstr (corners, ==, expected);
}

static void
assert_sound (Hand *hand)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcHouse) house = rc_house_new (get_measure (hand), &hand->job->settings.closure, &error);

  g_assert_no_error (error);
  g_assert_nonnull (house);
}

/* Drawing. */

static void
test_draw_by_dragging (Hand *hand, gconstpointer data)
{
  take (hand, "room", NULL);
  drag (hand, 0, 0, 12 * FT + IN / 3, 10 * FT - IN / 3);
  assert_corners (hand, "room-1", "0,0 0,120 144,120 144,0");
  g_assert_cmpstr (hand->step, ==, "Draw a room");
  g_assert_cmpstr (hand->room, ==, "room-1");
  g_assert_true (get_room (hand, "room-1")->placed);
}

static void
test_draw_by_two_clicks_and_typing (Hand *hand, gconstpointer data)
{
  take (hand, "room", NULL);
  click (hand, 0, 0);
  move (hand, -5 * FT, 3 * FT);
  type (hand, "12'6");
  key (hand, RC_EVENT_NEXT);
  type (hand, "10'");
  key (hand, RC_EVENT_ENTER);
  assert_corners (hand, "room-1", "-150,0 -150,120 0,120 0,0");
}

static void
test_draw_says_what_does_not_read (Hand *hand, gconstpointer data)
{
  take (hand, "room", NULL);
  click (hand, 0, 0);
  type (hand, "1x");
  key (hand, RC_EVENT_ENTER);
  g_assert_nonnull (strstr (hand->fault, "1x"));
  key (hand, RC_EVENT_RUBOUT);
  key (hand, RC_EVENT_RUBOUT);
  key (hand, RC_EVENT_ENTER);
  g_assert_nonnull (strstr (hand->fault, "width"));
  g_assert_cmpuint (get_measure (hand)->rooms->len, ==, 0);
  key (hand, RC_EVENT_ESCAPE);
  g_assert_false (hand->gesture.is_active);
  g_assert_cmpint (hand->gesture.tool, ==, RC_TOOL_ROOM);
  key (hand, RC_EVENT_ESCAPE);
  g_assert_cmpint (hand->gesture.tool, ==, RC_TOOL_CHOOSE);
}

/* The second room begins a wall's thickness behind the first and ends in line with it. */
static void
test_draw_behind_another_room (Hand *hand, gconstpointer data)
{
  take (hand, "room", NULL);
  drag (hand, 0, 0, 12 * FT, 10 * FT);
  drag (hand, 12 * FT + 5 * IN, 2 * IN, 20 * FT, 10 * FT + 2 * IN);
  assert_corners (hand, "room-2", "148.5,0 148.5,120 240.5,120 240.5,0");
  assert_sound (hand);
}

static void
test_draw_outline_by_clicks (Hand *hand, gconstpointer data)
{
  take (hand, "outline", NULL);
  click (hand, 0, 0);
  click (hand, 3 * IN, 10 * FT); /* nearly north: exactly so */
  click (hand, 6 * FT, 10 * FT + 2 * IN);
  click (hand, 8 * FT + IN, 8 * FT); /* nearly south-east */
  click (hand, 8 * FT + 3 * IN, 2 * IN);
  click (hand, 0, 0);
  g_assert_null (hand->fault);
  assert_corners (hand, "room-1", "0,0 0,120 72,120 97,95 97,0");
}

static void
test_draw_outline_by_arrows (Hand *hand, gconstpointer data)
{
  static const struct
  {
    int         direction;
    const char *length;
  } WALLS[] = { { 1, "10'" }, { 0, "12'6" }, { 3, "4'" }, { 2, "5'" }, { 3, "6'" } };

  take (hand, "outline", NULL);
  key (hand, RC_EVENT_ENTER);
  for (guint i = 0; i < G_N_ELEMENTS (WALLS); i++)
    {
      arrow (hand, WALLS[i].direction);
      type (hand, WALLS[i].length);
      key (hand, RC_EVENT_ENTER);
    }
  key (hand, RC_EVENT_ENTER);
  assert_corners (hand, "room-1", "0,0 0,120 150,120 150,72 90,72 90,0");
}

static void
test_draw_outline_takes_back (Hand *hand, gconstpointer data)
{
  take (hand, "outline", NULL);
  click (hand, 0, 0);
  click (hand, 0, 10 * FT);
  key (hand, RC_EVENT_ENTER);
  g_assert_nonnull (strstr (hand->fault, "three"));
  click (hand, 10 * FT, 10 * FT);
  key (hand, RC_EVENT_RUBOUT);
  g_assert_cmpuint (hand->gesture.n_points, ==, 2);
  key (hand, RC_EVENT_RUBOUT);
  key (hand, RC_EVENT_RUBOUT);
  g_assert_false (hand->gesture.is_active);
}

static void
test_draw_refuses_crossing_walls (Hand *hand, gconstpointer data)
{
  take (hand, "outline", NULL);
  click (hand, 0, 0);
  click (hand, 10 * FT, 10 * FT);
  click (hand, 10 * FT, 0);
  click (hand, 0, 10 * FT);
  key (hand, RC_EVENT_ENTER);
  g_assert_nonnull (strstr (hand->fault, "meets"));
  g_assert_true (hand->gesture.is_active);
  g_assert_cmpuint (get_measure (hand)->rooms->len, ==, 0);
}

/* Moving. Two rooms side by side, a wall of 4 1/2 in between: room-1 at the left, room-2 at the right. */

static void
draw_two_rooms (Hand *hand)
{
  take (hand, "room", NULL);
  drag (hand, 0, 0, 12 * FT, 10 * FT);
  drag (hand, 12 * FT + 5 * IN, 2 * IN, 20 * FT, 10 * FT + 2 * IN);
  take (hand, "choose", "room-1");
}

static void
test_move_wall_outside (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  drag (hand, 0, 4 * FT, -2 * FT - IN / 4, 5 * FT);
  assert_corners (hand, "room-1", "-24,0 -24,120 144,120 144,0");
  g_assert_cmpstr (hand->step, ==, "Move a wall");
  assert_corners (hand, "room-2", "148.5,0 148.5,120 240.5,120 240.5,0");
}

static void
test_move_shared_wall (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  drag (hand, 12 * FT, 4 * FT, 14 * FT, 4 * FT);
  assert_corners (hand, "room-1", "0,0 0,120 168,120 168,0");
  assert_corners (hand, "room-2", "172.5,0 172.5,120 240.5,120 240.5,0");
  assert_sound (hand);
}

static void
test_move_wall_to_typed_length (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  press (hand, 12 * FT, 4 * FT);
  move (hand, 13 * FT, 4 * FT);
  type (hand, "11'6 1/2");
  release (hand, 13 * FT, 4 * FT);
  assert_corners (hand, "room-1", "0,0 0,120 138.5,120 138.5,0");
  assert_corners (hand, "room-2", "143,0 143,120 240.5,120 240.5,0");
}

/* The room behind is wider: it gives way with a jog, and the wall takes its thickness along. */
static void
test_move_wall_into_a_longer_one (Hand *hand, gconstpointer data)
{
  take (hand, "room", NULL);
  drag (hand, 0, 0, 10 * FT, 10 * FT);
  drag (hand, -10 * FT, 10 * FT + 4.5 * IN, 20 * FT, 20 * FT);
  take (hand, "choose", "room-1");
  drag (hand, 5 * FT, 10 * FT, 5 * FT, 11 * FT);
  assert_corners (hand, "room-1", "0,0 0,132 120,132 120,0");
  assert_corners (hand, "room-2",
                  "-120,124.5 -120,240.5 240,240.5 240,124.5 124.5,124.5 124.5,136.5 -4.5,136.5 -4.5,124.5");
  assert_sound (hand);
  drag (hand, 5 * FT, 11 * FT, 5 * FT, 10 * FT);
  assert_corners (hand, "room-1", "0,0 0,120 120,120 120,0");
  assert_sound (hand);
}

static void
test_move_square_corner (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  drag (hand, 0, 10 * FT, -FT, 12 * FT);
  assert_corners (hand, "room-1", "-12,0 -12,144 144,144 144,0");
  g_assert_cmpstr (hand->step, ==, "Move a corner");
  drag (hand, 12 * FT, 0, 12 * FT, FT);
  assert_corners (hand, "room-1", "-12,12 -12,144 144,144 144,12");
}

static void
test_move_corner_alone (Hand *hand, gconstpointer data)
{
  take (hand, "outline", NULL);
  click (hand, 0, 0);
  click (hand, 0, 10 * FT);
  click (hand, 10 * FT, 10 * FT);
  click (hand, 0, 0);
  take (hand, "choose", "room-1");
  drag (hand, 10 * FT, 10 * FT, 12 * FT, 8 * FT);
  assert_corners (hand, "room-1", "0,0 0,120 144,96");
}

static void
test_move_is_refused_where_it_cannot_be (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  drag (hand, 0, 4 * FT, 12 * FT, 4 * FT);
  g_assert_nonnull (hand->fault);
  assert_corners (hand, "room-1", "0,0 0,120 144,120 144,0");
  press (hand, 0, 4 * FT);
  move (hand, 2 * FT, 4 * FT);
  key (hand, RC_EVENT_ESCAPE);
  release (hand, 2 * FT, 4 * FT);
  assert_corners (hand, "room-1", "0,0 0,120 144,120 144,0");
}

/* Doors stay where they are in the house while the wall before them gets longer. */
static void
test_move_keeps_doors_in_place (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  RcOpening *door = rc_room_edit_add_opening (get_room (hand, "room-1"), RC_OPENING_DOOR, 1, RC_UNITS_IMPERIAL);
  door->offset = 2 * FT;
  drag (hand, 0, 4 * FT, -FT, 4 * FT);
  const RcOpening *moved = g_ptr_array_index (get_room (hand, "room-1")->openings, 0);
  g_assert_cmpint (moved->offset, ==, 3 * FT);
  drag (hand, 3 * FT + 4 * IN, 10 * FT, 5 * FT + 4 * IN, 10 * FT);
  g_assert_cmpstr (hand->step, ==, "Place of an opening");
  moved = g_ptr_array_index (get_room (hand, "room-1")->openings, 0);
  g_assert_cmpint (moved->offset, ==, 5 * FT);
  press (hand, 5 * FT + 4 * IN, 10 * FT);
  type (hand, "6 1/2");
  key (hand, RC_EVENT_ENTER);
  moved = g_ptr_array_index (get_room (hand, "room-1")->openings, 0);
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
  g_ptr_array_add (get_room (hand, "room-1")->cutouts, ring);
  drag (hand, 4 * FT, 4 * FT, 5 * FT + IN / 3, 4 * FT);
  g_assert_cmpstr (hand->step, ==, "Move a cut-out");
  g_assert_cmpint (rc_ring_get ((RcRing *)get_room (hand, "room-1")->cutouts->pdata[0], 0)->x, ==, 4 * FT);
  /* The cut-out stays when the first corner moves. */
  drag (hand, 0, 4 * FT, -FT, 4 * FT);
  g_assert_cmpint (rc_ring_get ((RcRing *)get_room (hand, "room-1")->cutouts->pdata[0], 0)->x, ==, 5 * FT);
  take (hand, "move", NULL);
  drag (hand, 2 * FT, 2 * FT, 2 * FT, 12 * FT + IN);
  assert_corners (hand, "room-1", "-12,120 -12,240 144,240 144,120");
}

/* A room that its door places: only what the hand holds moves. */
static void
test_move_keeps_rooms_placed_by_doors (Hand *hand, gconstpointer data)
{
  draw_two_rooms (hand);
  RcRoom    *one = get_room (hand, "room-1"), *two = get_room (hand, "room-2");
  RcOpening *door = rc_room_edit_add_opening (one, RC_OPENING_DOOR, 2, RC_UNITS_IMPERIAL);
  RcOpening *back = rc_room_edit_add_opening (two, RC_OPENING_DOOR, 0, RC_UNITS_IMPERIAL);
  door->to_room = g_strdup (two->id);
  back->to_room = g_strdup (one->id);
  two->placed = FALSE;
  two->at = (RcPoint){ 0, 0 };
  assert_corners (hand, "room-2", "148.5,0 148.5,120 240.5,120 240.5,0");
  drag (hand, 12 * FT, 2 * FT, 14 * FT, 2 * FT);
  assert_corners (hand, "room-1", "0,0 0,120 168,120 168,0");
  assert_corners (hand, "room-2", "172.5,0 172.5,120 240.5,120 240.5,0");
  assert_sound (hand);
  g_assert_false (get_room (hand, "room-2")->placed);
  g_assert_cmpint (get_room (hand, "room-2")->at.x, ==, 0);
  /* Dragged away, the door leads nowhere any more. */
  take (hand, "move", NULL);
  drag (hand, 16 * FT, 4 * FT, 20 * FT, 14 * FT);
  g_assert_cmpstr (hand->step, ==, "Move a room");
  g_assert_null (((RcOpening *)get_room (hand, "room-1")->openings->pdata[0])->to_room);
  g_assert_true (get_room (hand, "room-2")->placed);
}

static void
test_click_on_a_grip_chooses (Hand *hand, gconstpointer data)
{
  RcGestureResult result = { 0 };

  draw_two_rooms (hand);
  g_autoptr (RcScene) scene = rc_scene_new (hand->job, get_measure (hand), NULL, 0);
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
