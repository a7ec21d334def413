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
  g_autoptr (RcHouse) house = rc_house_new (get_measure (hand), &hand->job->settings.closure, NULL);
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
  g_autoptr (RcHouse) house = rc_house_new (get_measure (hand), &hand->job->settings.closure, NULL);
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
  return g_test_run ();
}
