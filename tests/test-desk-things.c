/* What stands on the floor, as it is put there: by the pointer, and by lengths from a corner. */
#include <math.h>
#include <string.h>

#include "cutout-edit.h"
#include "gesture-hand.h"
#include "measure-edit.h"
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

/* The key h goes round the room; arrows move what it has come to, by whole steps or fine ones. */
static void
test_held (Hand *hand, gconstpointer data)
{
  draw_room (hand); /* clockwise from 0,0: wall 1 north, wall 2 east, ... */
  hand_take (hand, "choose", "room-1");
  hand_arrow (hand, 0);
  hand_assert_corners (hand, "room-1", "0,0 0,120 144,120 144,0"); /* nothing is held yet */
  hand_type (hand, "hh");
  g_assert_cmpint (hand->gesture.held, ==, RC_GRIP_WALL);
  hand_arrow (hand, 2);
  g_assert_cmpstr (hand->step, ==, "Move a wall");
  hand_assert_corners (hand, "room-1", "-1,0 -1,120 144,120 144,0");
  hand_send (hand, (RcGestureEvent){ .kind = RC_EVENT_ARROW, .arrow = 0, .is_free = TRUE });
  hand_assert_corners (hand, "room-1", "-0.875,0 -0.875,120 144,120 144,0");
  hand_arrow (hand, 1); /* along the wall */
  hand_assert_corners (hand, "room-1", "-0.875,0 -0.875,120 144,120 144,0");
  hand_type (hand, "h");
  g_assert_cmpint (hand->gesture.held, ==, RC_GRIP_CORNER);
  g_assert_cmpuint (hand->gesture.held_index, ==, 1);
  hand_arrow (hand, 1);
  g_assert_cmpstr (hand->step, ==, "Move a corner");
  hand_assert_corners (hand, "room-1", "-0.875,0 -0.875,121 144,121 144,0");
  /* The other way round from the first corner is the turn; it stays held, for degrees typed too. */
  hand_type (hand, "HHH");
  g_assert_cmpint (hand->gesture.held, ==, RC_GRIP_TURN);
  hand_arrow (hand, 2);
  g_assert_cmpstr (hand->step, ==, "Turn a room");
  double bearing = g_array_index (hand_get_room (hand, "room-1")->walls, RcWall, 0).bearing_degrees;
  g_assert_cmpfloat (bearing, ==, 345);
  hand_type (hand, "-15");
  hand_key (hand, RC_EVENT_ENTER);
  g_assert_cmpfloat (g_array_index (hand_get_room (hand, "room-1")->walls, RcWall, 0).bearing_degrees, ==, 0);
  hand_type (hand, "1x");
  hand_key (hand, RC_EVENT_ENTER);
  g_assert_nonnull (strstr (hand->fault, "degrees"));
  hand_key (hand, RC_EVENT_ESCAPE);
  hand_assert_sound (hand);
}

/* By the grip: in steps of 15 degrees, sooner along another room's walls, freely with Shift. */
static void
test_turn (Hand *hand, gconstpointer data)
{
  draw_room (hand);
  hand_take (hand, "choose", "room-1");
  /* The grip stands three reaches of 6 in above the middle of the room. */
  RcLength x = 6 * FT, y = 10 * FT + 18 * IN;
  hand_press (hand, x, y);
  g_assert_cmpint (hand->gesture.grip, ==, RC_GRIP_TURN);
  hand_move (hand, x - 4 * FT, y);
  hand_release (hand, x - 4 * FT, y);
  g_assert_cmpstr (hand->step, ==, "Turn a room");
  g_assert_cmpfloat (g_array_index (hand_get_room (hand, "room-1")->walls, RcWall, 0).bearing_degrees, ==, 330);
  hand_assert_sound (hand);
  /* Another room stands at 40 degrees: within four degrees of it, the first comes to lie along it. */
  hand_take (hand, "room", NULL);
  hand_drag (hand, 40 * FT, 0, 52 * FT, 10 * FT);
  hand_get_room (hand, "room-2")->placed = TRUE;
  rc_room_edit_make_walls (hand_get_room (hand, "room-2"));
  for (guint i = 0; i < 4; i++)
    g_array_index (hand_get_room (hand, "room-2")->walls, RcWall, i).bearing_degrees = 40 + 90 * i;
  hand_take (hand, "choose", "room-1");
  g_autoptr (RcScene) scene = rc_scene_new_noted (hand->job, hand_get_measure (hand), 0);
  const RcSceneRoom *room = rc_scene_find_room (scene, "room-1");
  RcBox              box = rc_ring_compute_box (room->corners);
  RcPoint            middle = { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 };
  RcPoint            grip = rc_gesture_get_turn_grip (room, 6 * IN);
  RcPoint            arm = { grip.x - middle.x, grip.y - middle.y };
  RcPoint            to = rc_point_rotate (arm, 22); /* 330 - 22 = 308; 40 and 270 make 310 */
  hand_drag (hand, grip.x, grip.y, middle.x + to.x, middle.y + to.y);
  double bearing = g_array_index (hand_get_room (hand, "room-1")->walls, RcWall, 0).bearing_degrees;
  g_assert_cmpfloat (fabs (bearing - 310), <, 0.001);
}

/* One click: a room behind the wall, joined to this one by an opening without a leaf. */
static void
test_closet (Hand *hand, gconstpointer data)
{
  draw_room (hand);
  rc_measure_edit_put_room_in_area (hand_get_measure (hand), "room-1",
                                    rc_measure_edit_add_area (hand_get_measure (hand), "Area")->id);
  hand_take (hand, "closet", NULL);
  hand_click (hand, 5 * FT, 10 * FT);
  g_assert_null (hand->fault);
  g_assert_cmpstr (hand->step, ==, "Put a closet behind a wall");
  g_autofree char *id = g_strdup (hand->room);
  RcRoom          *closet = hand_get_room (hand, id), *room = hand_get_room (hand, "room-1");
  RcBox            box;
  g_autoptr (GArray) corners = rc_room_compute_corners (closet);
  box = rc_ring_compute_box (corners);
  g_assert_cmpint (box.x1 - box.x0, ==, 6 * FT);
  g_assert_cmpint (box.y1 - box.y0, ==, 2 * FT);
  g_assert_cmpint (closet->at.y + box.y0, ==, 10 * FT + 9 * IN / 2);
  g_assert_cmpuint (room->openings->len, ==, 1);
  const RcOpening *door = g_ptr_array_index (room->openings, 0);
  g_assert_cmpint (door->width, ==, 4 * FT);
  g_assert_cmpint (door->swing, ==, RC_SWING_NONE);
  g_assert_cmpstr (door->to_room, ==, id);
  g_assert_cmpuint (((RcFloorArea *)hand_get_measure (hand)->areas->pdata[0])->rooms->len, ==, 2);
  hand_assert_sound (hand);
  /* Not where a room is. */
  hand_click (hand, 6 * FT, 10 * FT);
  g_assert_nonnull (strstr (hand->fault, "behind that wall"));
  g_clear_pointer (&hand->fault, g_free);
  hand_take (hand, "closet", NULL);
  hand_move (hand, 12 * FT, 5 * FT);
  hand_type (hand, "1'");
  hand_key (hand, RC_EVENT_NEXT);
  hand_key (hand, RC_EVENT_NEXT);
  hand_type (hand, "3'");
  hand_key (hand, RC_EVENT_ENTER);
  g_assert_null (hand->fault);
  g_assert_cmpint (((RcOpening *)g_ptr_array_index (hand_get_room (hand, "room-1")->openings, 1))->width, ==, 2 * FT);
  hand_assert_sound (hand);
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
  TEST ("/things/held and moved by keys", test_held);
  TEST ("/things/turned by the grip", test_turn);
  TEST ("/things/a closet in one click", test_closet);
  g_test_add_func ("/things/keys at rest", test_keys_at_rest);
  return g_test_run ();
}
