/* What stands on the floor, as it is put there: by the pointer, and by lengths from a corner. */
#include <string.h>

#include "cutout-edit.h"
#include "gesture-hand.h"
#include "room-edit.h"

static const RcLength IN = RC_TICKS_PER_INCH, FT = 12 * RC_TICKS_PER_INCH;

static void
draw_room (Hand *hand)
{
  hand_take (hand, "room", NULL);
  hand_drag (hand, 0, 0, 12 * FT, 10 * FT);
}

static RcCutout *
get_cutout (Hand *hand, guint index)
{
  return g_ptr_array_index (hand_get_room (hand, "room-1")->cutouts, index);
}

static void
test_kinds_by_space (Hand *hand, gconstpointer data)
{
  draw_room (hand);
  hand_take (hand, "cut-out", NULL);
  hand_type (hand, " ");
  hand_drag (hand, 4 * FT, 0, 8 * FT, 18 * IN);
  g_assert_cmpstr (hand->step, ==, "Put a cut-out in");
  g_assert_cmpint (get_cutout (hand, 0)->kind, ==, RC_CUTOUT_HEARTH);
  g_assert_true (get_cutout (hand, 0)->strip);
  /* The same again for the next; two more give a column, which is drawn from its middle. */
  hand_type (hand, "  ");
  hand_press (hand, 6 * FT, 6 * FT);
  hand_type (hand, "18\"");
  hand_key (hand, RC_EVENT_ENTER);
  RcCutout *column = get_cutout (hand, 1);
  g_assert_cmpint (column->kind, ==, RC_CUTOUT_COLUMN);
  g_assert_cmpint (column->diameter, ==, 18 * IN);
  g_assert_cmpuint (column->points->len, ==, 1);
  g_assert_cmpint (rc_ring_get (column->points, 0)->x, ==, 6 * FT);
  hand_drag (hand, 3 * FT, 6 * FT, 3 * FT + 7 * IN, 6 * FT);
  g_assert_cmpint (get_cutout (hand, 2)->diameter, ==, 14 * IN);
  hand_drag (hand, 11 * FT, 8 * FT, 9 * FT, 8 * FT);
  g_assert_nonnull (strstr (hand->fault, "outside"));
  hand_assert_sound (hand);
  /* Round ones are gripped, moved and taken out like others. */
  hand_take (hand, "choose", "room-1");
  hand_drag (hand, 6 * FT, 6 * FT, 7 * FT, 6 * FT);
  g_assert_cmpstr (hand->step, ==, "Move a cut-out");
  g_assert_cmpint (rc_ring_get (get_cutout (hand, 1)->points, 0)->x, ==, 7 * FT);
  hand_send (hand, (RcGestureEvent){ .kind = RC_EVENT_REMOVE, .at = { 7 * FT, 6 * FT } });
  g_assert_cmpuint (hand_get_room (hand, "room-1")->cutouts->len, ==, 2);
}

/* From every corner the same thing: told and put back, nothing moves; put elsewhere, it stands there. */
static void
test_places (Hand *hand, gconstpointer data)
{
  draw_room (hand);
  RcRoom *room = hand_get_room (hand, "room-1");
  rc_cutout_edit_add (room, RC_CUTOUT_HEARTH, 0, RC_UNITS_IMPERIAL);
  rc_cutout_edit_add (room, RC_CUTOUT_COLUMN, 1, RC_UNITS_IMPERIAL);
  for (guint c = 0; c < 2; c++)
    for (guint corner = 0; corner < 4; corner++)
      {
        RcCutout     *cutout = get_cutout (hand, c);
        RcCutoutPlace place, again;
        g_autoptr (RcCutout) before = rc_cutout_copy (cutout);
        g_assert_true (rc_cutout_edit_get_place (room, cutout, corner, &place));
        g_assert_true (rc_cutout_edit_set_place (room, cutout, corner, &place));
        g_assert_cmpmem (before->points->data, before->points->len * sizeof (RcPoint), cutout->points->data,
                         cutout->points->len * sizeof (RcPoint));
        place.along = 2 * FT;
        place.off = 3 * FT;
        place.width = 4 * FT;
        g_assert_true (rc_cutout_edit_set_place (room, cutout, corner, &place));
        g_assert_true (rc_cutout_edit_get_place (room, cutout, corner, &again));
        g_assert_cmpint (again.along, ==, 2 * FT);
        g_assert_cmpint (again.off, ==, 3 * FT);
        g_assert_cmpint (again.width, ==, 4 * FT);
        g_assert_cmpint (again.length, ==, cutout->diameter > 0 ? 4 * FT : place.length);
        place.width = 0;
        g_assert_false (rc_cutout_edit_set_place (room, cutout, corner, &place));
        g_assert_false (rc_cutout_edit_get_place (room, cutout, 9, &place));
        g_array_set_size (cutout->points, 0);
        g_array_append_vals (cutout->points, before->points->data, before->points->len);
        cutout->diameter = before->diameter;
      }
  /* The hearth stands against the middle of wall 1, 10 ft long: 5 ft by 18 in. */
  RcCutoutPlace place;
  rc_cutout_edit_get_place (room, get_cutout (hand, 0), 0, &place);
  g_assert_cmpint (place.along, ==, 30 * IN);
  g_assert_cmpint (place.off, ==, 0);
  g_assert_cmpint (place.width, ==, 60 * IN);
  g_assert_cmpint (place.length, ==, 18 * IN);
  g_assert_true (rc_cutout_edit_set_round (room, get_cutout (hand, 1), 1, FALSE));
  g_assert_cmpuint (get_cutout (hand, 1)->points->len, ==, 4);
  g_assert_true (rc_cutout_edit_set_round (room, get_cutout (hand, 1), 1, TRUE));
  g_assert_cmpint (get_cutout (hand, 1)->diameter, ==, 12 * IN);
  g_assert_null (rc_cutout_edit_add (room, RC_CUTOUT_ISLAND, 4, RC_UNITS_METRIC));
  hand_assert_sound (hand);
}

static RcStair *
get_stair (Hand *hand, guint index)
{
  return g_ptr_array_index (hand_get_measure (hand)->stairs, index);
}

static void
test_stair (Hand *hand, gconstpointer data)
{
  draw_room (hand);
  hand_take (hand, "stair", NULL);
  hand_drag (hand, 5 * FT, 2 * FT, 5 * FT + 3 * IN, 6 * FT);
  g_assert_cmpstr (hand->step, ==, "Put a stair on the drawing");
  RcStair *stair = get_stair (hand, 0);
  g_assert_true (stair->placed);
  g_assert_cmpint (stair->at.x, ==, 5 * FT);
  g_assert_cmpint (stair->at.y, ==, 2 * FT);
  g_assert_cmpint (stair->bearing_degrees, ==, 0);
  /* Held on a step and dragged it moves, by whole inches. */
  hand_drag (hand, 5 * FT, 4 * FT, 7 * FT + IN / 3, 4 * FT);
  g_assert_cmpstr (hand->step, ==, "Move a stair");
  g_assert_cmpint (get_stair (hand, 0)->at.x, ==, 7 * FT);
  g_assert_cmpint (get_stair (hand, 0)->at.y, ==, 2 * FT);
  /* With Ctrl it turns about its foot; Space turns it a quarter. */
  hand_send (hand, (RcGestureEvent){ .kind = RC_EVENT_PRESS, .at = { 7 * FT, 4 * FT }, .is_bow = TRUE });
  hand_send (hand, (RcGestureEvent){ .kind = RC_EVENT_MOTION, .at = { 10 * FT, 2 * FT + 2 * IN }, .is_bow = TRUE });
  hand_release (hand, 10 * FT, 2 * FT + 2 * IN);
  g_assert_cmpstr (hand->step, ==, "Turn a stair");
  g_assert_cmpint (get_stair (hand, 0)->bearing_degrees, ==, 90);
  hand_press (hand, 8 * FT, 2 * FT);
  hand_type (hand, " ");
  hand_release (hand, 8 * FT, 2 * FT);
  g_assert_cmpint (get_stair (hand, 0)->bearing_degrees, ==, 180);
  /* A click changes nothing; Delete takes it off, and the next press puts the same one back. */
  g_autofree char *step = g_strdup (hand->step);
  hand_click (hand, 7 * FT, FT);
  g_assert_cmpstr (hand->step, ==, step);
  hand_send (hand, (RcGestureEvent){ .kind = RC_EVENT_REMOVE, .at = { 7 * FT, FT } });
  g_assert_false (get_stair (hand, 0)->placed);
  hand_take (hand, "stair", NULL);
  hand_click (hand, 3 * FT, 3 * FT);
  g_assert_cmpuint (hand_get_measure (hand)->stairs->len, ==, 1);
  g_assert_true (get_stair (hand, 0)->placed);
  g_assert_cmpint (get_stair (hand, 0)->at.x, ==, 3 * FT);
}

/* Diagonals go with their corners, and with a corner that goes. */
static void
test_diagonals_follow (Hand *hand, gconstpointer data)
{
  draw_room (hand);
  RcRoom    *room = hand_get_room (hand, "room-1");
  RcDiagonal one = { 0, 2, 15 * FT }, two = { 1, 3, 15 * FT };
  g_array_append_val (room->diagonals, one);
  g_array_append_val (room->diagonals, two);
  g_assert_true (rc_room_edit_insert_wall (room, 1, 90, FT));
  g_assert_cmpuint (g_array_index (room->diagonals, RcDiagonal, 0).to, ==, 3);
  g_assert_cmpuint (g_array_index (room->diagonals, RcDiagonal, 1).from, ==, 2);
  g_assert_true (rc_room_edit_remove_wall (room, 2));
  g_assert_cmpuint (room->diagonals->len, ==, 1);
  g_assert_cmpuint (g_array_index (room->diagonals, RcDiagonal, 0).to, ==, 2);
}

static gboolean
wants (const char *tool, RcEventKind kind, gunichar letter, guint n_points)
{
  RcCurrency usd = { "USD", 2 };
  g_autoptr (RcJob) job = rc_job_new ("J-1", &usd);
  g_autoptr (RcScene) scene = rc_scene_new_noted (job, rc_job_get_measure (job, NULL), 0);
  RcTool         kind_of = RC_TOOL_CHOOSE;
  RcGestureEvent event = { .kind = kind, .letter = letter };
  g_assert_true (rc_tool_parse (tool, &kind_of));
  RcGesture gesture = rc_gesture_start (kind_of, NULL);
  gesture.n_points = n_points;
  return rc_gesture_wants_key (&gesture, scene, &event);
}

/* Keys that begin something, and those left to the floor. */
static void
test_keys_at_rest (void)
{
  g_assert_true (wants ("room", RC_EVENT_LETTER, '1', 0));
  g_assert_false (wants ("room", RC_EVENT_LETTER, 'd', 0));
  g_assert_true (wants ("door", RC_EVENT_LETTER, ' ', 0));
  g_assert_true (wants ("door", RC_EVENT_LETTER, '3', 1));
  g_assert_false (wants ("door", RC_EVENT_LETTER, '3', 0));
  g_assert_true (wants ("cut-out", RC_EVENT_LETTER, ' ', 0));
  g_assert_true (wants ("no-seams", RC_EVENT_REMOVE, 0, 0));
  g_assert_true (wants ("stair", RC_EVENT_REMOVE, 0, 0));
  g_assert_false (wants ("choose", RC_EVENT_REMOVE, 0, 0));
  g_assert_false (wants ("choose", RC_EVENT_ESCAPE, 0, 0));
  g_assert_true (wants ("split", RC_EVENT_ESCAPE, 0, 0));
}

#define TEST(path, function) g_test_add (path, Hand, NULL, hand_set_up, function, hand_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  TEST ("/things/kinds by Space", test_kinds_by_space);
  TEST ("/things/places from corners", test_places);
  TEST ("/things/stairs on the drawing", test_stair);
  TEST ("/things/diagonals follow their corners", test_diagonals_follow);
  g_test_add_func ("/things/keys at rest", test_keys_at_rest);
  return g_test_run ();
}
