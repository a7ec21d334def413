#include "gesture-hand.h"

#include "measure-edit.h"

static const RcLength IN = RC_TICKS_PER_INCH;

void
hand_set_up (Hand *hand, gconstpointer data)
{
  RcCurrency usd = { "USD", 2 };

  hand->job = rc_job_new ("J-1", &usd);
  hand->gesture = rc_gesture_start (RC_TOOL_CHOOSE, NULL);
}

void
hand_tear_down (Hand *hand, gconstpointer data)
{
  rc_job_free (hand->job);
  g_free (hand->step);
  g_free (hand->fault);
}

void
hand_take (Hand *hand, const char *tool, const char *room)
{
  RcTool kind = RC_TOOL_CHOOSE;

  g_assert_true (rc_tool_parse (tool, &kind));
  hand->gesture = rc_gesture_start (kind, room);
}

RcMeasure *
hand_get_measure (Hand *hand)
{
  return rc_job_get_measure (hand->job, NULL);
}

RcRoom *
hand_get_room (Hand *hand, const char *id)
{
  RcRoom *room = rc_measure_find_room (hand_get_measure (hand), id);
  g_assert_nonnull (room);
  return room;
}

void
hand_send (Hand *hand, RcGestureEvent event)
{
  RcGestureResult result = { 0 };
  g_autoptr (RcHouse) house = rc_house_new_rooms (hand_get_measure (hand), &hand->job->settings.closure, NULL);
  g_autoptr (RcScene) scene = rc_scene_new (hand->job, hand_get_measure (hand), house, 0);

  event.reach = 6 * IN;
  hand->gesture = rc_gesture_handle (hand->gesture, scene, &event, &result);
  g_autoptr (RcSketch) sketch = rc_gesture_sketch (&hand->gesture, scene);
  g_assert_nonnull (sketch->rings);
  /* As on the desk, it is seen until the next gesture begins. */
  if (result.fault != NULL || event.kind == RC_EVENT_PRESS)
    {
      g_free (hand->fault);
      hand->fault = g_strdup (result.fault);
    }
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

void
hand_press (Hand *hand, RcLength x, RcLength y)
{
  hand_send (hand, (RcGestureEvent){ .kind = RC_EVENT_PRESS, .at = { x, y } });
}

void
hand_move (Hand *hand, RcLength x, RcLength y)
{
  hand_send (hand, (RcGestureEvent){ .kind = RC_EVENT_MOTION, .at = { x, y } });
}

void
hand_release (Hand *hand, RcLength x, RcLength y)
{
  hand_send (hand, (RcGestureEvent){ .kind = RC_EVENT_RELEASE, .at = { x, y } });
}

void
hand_drag (Hand *hand, RcLength x0, RcLength y0, RcLength x1, RcLength y1)
{
  hand_press (hand, x0, y0);
  hand_move (hand, (x0 + x1) / 2, (y0 + y1) / 2);
  hand_move (hand, x1, y1);
  hand_release (hand, x1, y1);
}

void
hand_click (Hand *hand, RcLength x, RcLength y)
{
  hand_press (hand, x, y);
  hand_release (hand, x, y);
}

void
hand_key (Hand *hand, RcEventKind kind)
{
  hand_send (hand, (RcGestureEvent){ .kind = kind });
}

void
hand_arrow (Hand *hand, int direction)
{
  hand_send (hand, (RcGestureEvent){ .kind = RC_EVENT_ARROW, .arrow = direction });
}

void
hand_type (Hand *hand, const char *text)
{
  for (const char *p = text; *p; p = g_utf8_next_char (p))
    hand_send (hand, (RcGestureEvent){ .kind = RC_EVENT_LETTER, .letter = g_utf8_get_char (p) });
}

/* The room's corners in the house, as "x,y x,y" in inches. */
char *
hand_dup_corners (Hand *hand, const char *id)
{
  g_autoptr (RcHouse) house = rc_house_new_rooms (hand_get_measure (hand), &hand->job->settings.closure, NULL);
  g_autoptr (RcScene) scene = rc_scene_new (hand->job, hand_get_measure (hand), house, 0);
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

void
hand_assert_corners (Hand *hand, const char *id, const char *expected)
{
  g_autofree char *corners = hand_dup_corners (hand, id);
  g_assert_cmpstr (corners, ==, expected);
}

void
hand_assert_sound (Hand *hand)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcHouse) house = rc_house_new (hand_get_measure (hand), &hand->job->settings.closure, &error);

  g_assert_no_error (error);
  g_assert_nonnull (house);
}
