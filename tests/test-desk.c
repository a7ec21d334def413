/* The desk without a display: what is typed, moved, chosen and edited, each as a function from old to new. */
#include <math.h>

#include "bearing.h"
#include "choice.h"
#include "job-edit.h"
#include "measure-edit.h"
#include "room-edit.h"
#include "rowcut-error.h"
#include "viewport.h"

/* Directions. */

static void
test_bearing_reads (void)
{
  static const struct
  {
    const char *text;
    double      before, degrees;
  } CASES[] = {
    { "N", 0, 0 },       { "e", 0, 90 },     { " S ", 0, 180 },    { "W", 0, 270 },        { "O", 0, 270 },
    { "ne", 0, 45 },     { "NO", 0, 315 },   { "37.5", 0, 37.5 },  { "37,5°", 0, 37.5 },   { "360", 0, 0 },
    { "R", 90, 180 },    { "L", 0, 270 },    { "R45", 90, 135 },   { "l 22.5", 90, 67.5 }, { "r", 270, 0 },
    { "N 30 E", 0, 30 }, { "N30W", 0, 330 }, { "S 30 E", 0, 150 }, { "S 45° W", 0, 225 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (CASES); i++)
    {
      double degrees = -1;
      g_autoptr (GError) error = NULL;
      g_assert_true (rc_bearing_parse (CASES[i].text, CASES[i].before, &degrees, &error));
      g_assert_no_error (error);
      g_assert_cmpfloat_with_epsilon (degrees, CASES[i].degrees, 1e-9);
    }
}

static void
test_bearing_refuses (void)
{
  static const char *const CASES[] = { "", "X", "N 91 E", "361", "-5", "R400", "N E S", "1.2.3", "\xff" };

  for (guint i = 0; i < G_N_ELEMENTS (CASES); i++)
    {
      double degrees = 12.5;
      g_autoptr (GError) error = NULL;
      g_assert_false (rc_bearing_parse (CASES[i], 0, &degrees, &error));
      g_assert_error (error, RC_ERROR, RC_ERROR_PARSE);
      g_assert_cmpfloat (degrees, ==, 12.5);
    }
}

static void
test_bearing_prints_what_it_reads (void)
{
  for (int i = 0; i < 5000; i++)
    {
      double           degrees = g_test_rand_int_range (0, 360000) / 1000.0, again = -1;
      g_autofree char *text = rc_bearing_format (degrees);
      g_assert_true (rc_bearing_parse (text, 0, &again, NULL));
      g_assert_cmpfloat_with_epsilon (again, degrees, 1e-6);
    }
  g_autofree char *west = rc_bearing_format (-90), *odd = rc_bearing_format (22.5);
  g_assert_cmpstr (west, ==, "W");
  g_assert_cmpstr (odd, ==, "22.5°");
}

/* The view. */

static void
test_viewport_zoom_keeps_the_point (void)
{
  for (int i = 0; i < 2000; i++)
    {
      RcView  view = { g_test_rand_double_range (-500, 500), g_test_rand_double_range (-500, 500),
                       g_test_rand_double_range (1e-4, 1e-2) };
      double  at_x = g_test_rand_double_range (0, 800), at_y = g_test_rand_double_range (0, 600);
      RcPoint before = rc_viewport_to_house (view, at_x, at_y);
      RcView  after = rc_viewport_zoom (view, g_test_rand_double_range (0.1, 10), at_x, at_y);
      double  x = 0, y = 0;
      rc_viewport_from_house (after, before, &x, &y);
      /* The point of the house is rounded to a tick. */
      g_assert_cmpfloat_with_epsilon (x, at_x, after.scale);
      g_assert_cmpfloat_with_epsilon (y, at_y, after.scale);
    }
}

static void
test_viewport_limits (void)
{
  RcView view = { 10, 20, 0.001 };

  g_assert_cmpfloat (rc_viewport_zoom (view, 1e9, 0, 0).scale, ==, RC_VIEWPORT_SCALE_MAX);
  g_assert_cmpfloat (rc_viewport_zoom (view, 1e-9, 0, 0).scale, ==, RC_VIEWPORT_SCALE_MIN);
  RcView there = rc_viewport_pan (view, 7, -3), back = rc_viewport_pan (there, -7, 3);
  g_assert_cmpfloat (back.x0, ==, view.x0);
  g_assert_cmpfloat (back.y0, ==, view.y0);
  RcPoint middle = rc_viewport_to_house (view, 200, 100);
  RcPoint kept = rc_viewport_to_house (rc_viewport_resize (view, 400, 200, 640, 360), 320, 180);
  g_assert_cmpint (middle.x, ==, kept.x);
  g_assert_cmpint (middle.y, ==, kept.y);
}

/* Rooms. */

static RcMeasure *
get_measure (RcJob *job)
{
  return rc_job_get_measure (job, NULL);
}

static RcJob *
new_job (void)
{
  RcCurrency usd = { "USD", 2 };
  return rc_job_new ("J-1", &usd);
}

static const RcLength FT = RC_TICKS_PER_FOOT;

static void
test_room_new_is_a_rectangle (void)
{
  g_autoptr (RcJob) job = new_job ();
  RcRoom *room = rc_measure_edit_add_room (get_measure (job), "Back bedroom", 0, 10 * FT, 12 * FT);
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPolygon) polygon = rc_room_compute_polygon (room, &job->settings.closure, &error);

  g_assert_no_error (error);
  g_assert_cmpstr (room->id, ==, "back-bedroom");
  g_assert_cmpint (rc_polygon_compute_area (polygon), ==, rc_area_from_rectangle (10 * FT, 12 * FT));
  RcRoom *second = rc_measure_edit_add_room (get_measure (job), "Back bedroom", 0, 10 * FT, 12 * FT);
  g_assert_cmpstr (second->id, ==, "back-bedroom-2");
}

static void
test_room_outline_becomes_walls (void)
{
  g_autoptr (RcJob) job = new_job ();
  RcRoom       *room = rc_measure_edit_add_room (get_measure (job), "L", 0, 0, 0);
  const RcPoint L[] = { { 2 * FT, FT },     { 12 * FT, FT },     { 12 * FT, 9 * FT },
                        { 7 * FT, 9 * FT }, { 7 * FT, 15 * FT }, { 2 * FT, 15 * FT } };
  RcPoint       from, to;

  g_array_append_vals (room->outline, L, G_N_ELEMENTS (L));
  room->placed = TRUE;
  g_autoptr (RcPolygon) before = rc_room_compute_polygon (room, &job->settings.closure, NULL);
  rc_room_edit_make_walls (room);
  g_autoptr (RcPolygon) after = rc_room_compute_polygon (room, &job->settings.closure, NULL);

  g_assert_cmpuint (room->walls->len, ==, 6);
  g_assert_cmpuint (room->outline->len, ==, 0);
  g_assert_cmpint (rc_polygon_compute_area (before), ==, rc_polygon_compute_area (after));
  g_assert_true (rc_room_get_wall_ends (room, 3, &from, &to));
  /* Nothing moved in the house: the wall lies where the outline's edge lay. */
  g_assert_cmpint (room->at.x + from.x, ==, L[3].x);
  g_assert_cmpint (room->at.y + to.y, ==, L[4].y);
}

static void
test_room_openings_follow_walls (void)
{
  g_autoptr (RcJob) job = new_job ();
  RcRoom    *room = rc_measure_edit_add_room (get_measure (job), "Room", 0, 10 * FT, 12 * FT);
  RcOpening *door = rc_room_edit_add_opening (room, RC_OPENING_DOOR, 2, RC_UNITS_IMPERIAL);
  RcOpening *window = rc_room_edit_add_opening (room, RC_OPENING_WINDOW, 1, RC_UNITS_IMPERIAL);

  g_assert_cmpstr (door->id, ==, "D1");
  g_assert_cmpint (2 * door->offset + door->width, ==, 12 * FT);
  g_assert_true (rc_room_edit_insert_wall (room, 1, 90, FT));
  g_assert_cmpuint (door->wall, ==, 3);
  g_assert_cmpuint (window->wall, ==, 2);
  g_assert_true (rc_room_edit_remove_wall (room, 2));
  g_assert_null (rc_room_edit_find_opening (room, "W1"));
  g_assert_cmpuint (rc_room_edit_find_opening (room, "D1")->wall, ==, 2);
  g_assert_false (rc_room_edit_remove_wall (room, 9));
  g_assert_false (rc_room_edit_insert_wall (room, 9, 0, FT));
  g_assert_null (rc_room_edit_add_opening (room, RC_OPENING_DOOR, 9, RC_UNITS_IMPERIAL));
  RcOpening *second = rc_room_edit_add_opening (room, RC_OPENING_DOOR, 0, RC_UNITS_METRIC);
  g_assert_cmpstr (second->id, ==, "D2");
}

static void
test_room_guesses_the_next_wall (void)
{
  g_autoptr (RcJob) job = new_job ();
  RcRoom *room = rc_measure_edit_add_room (get_measure (job), "Room", 0, 0, 0);

  g_assert_cmpfloat (rc_room_edit_guess_bearing (room), ==, 0);
  rc_room_edit_insert_wall (room, 0, 90, 15 * FT);
  g_assert_cmpfloat (rc_room_edit_guess_bearing (room), ==, 180);
  rc_room_edit_insert_wall (room, 1, 0, 20 * FT);
  rc_room_edit_insert_wall (room, 2, 270, 15 * FT);
  /* One wall going south would close it. */
  g_assert_cmpfloat (rc_room_edit_guess_bearing (room), ==, 180);
}

static void
test_room_closing_length (void)
{
  g_autoptr (RcJob) job = new_job ();
  RcRoom  *room = rc_measure_edit_add_room (get_measure (job), "Room", 0, 10 * FT, 12 * FT);
  RcLength length = 0;

  rc_room_edit_set_length (room, 1, 11 * FT);
  g_assert_true (rc_room_edit_find_closing_length (room, 3, 0, &length));
  g_assert_cmpint (length, ==, 11 * FT);
  g_assert_true (rc_room_edit_find_closing_length (room, 1, 0, &length));
  g_assert_cmpint (length, ==, 10 * FT);
  /* A wall square to the gap cannot close it. */
  g_assert_false (rc_room_edit_find_closing_length (room, 0, FT / 2, &length));
}

/* A closed walk of random walls with one length mistaken: giving that wall its closing length mends it exactly. */
static void
test_room_closing_length_random (void)
{
  for (int round = 0; round < 500; round++)
    {
      g_autoptr (RcJob) job = new_job ();
      RcRoom  *room = rc_measure_edit_add_room (get_measure (job), "Room", 0, 0, 0);
      RcLength a = g_test_rand_int_range (100, 1000) * 127, b = g_test_rand_int_range (100, 1000) * 127,
               c = g_test_rand_int_range (100, 1000) * 127, d = g_test_rand_int_range (100, 1000) * 127, found = 0;
      RcLength lengths[] = { a + c, b + d, a, b, c, d };
      double   bearings[] = { 90, 0, 270, 180, 270, 180 };

      for (guint i = 0; i < 6; i++)
        rc_room_edit_insert_wall (room, i, bearings[i], lengths[i]);
      guint wrong = g_test_rand_int_range (0, 6);
      rc_room_edit_set_length (room, wrong, lengths[wrong] + g_test_rand_int_range (1, 90000));
      g_assert_true (rc_room_edit_find_closing_length (room, wrong, 0, &found));
      g_assert_cmpint (found, ==, lengths[wrong]);
    }
}

/* Things of a measure. */

static void
test_measure_room_leaves_no_trace (void)
{
  g_autoptr (RcJob) job = new_job ();
  RcMeasure   *measure = get_measure (job);
  RcRoom      *hall = rc_measure_edit_add_room (measure, "Hall", 0, 4 * FT, 12 * FT);
  RcRoom      *den = rc_measure_edit_add_room (measure, "Den", 0, 10 * FT, 12 * FT);
  RcFloorArea *one = rc_measure_edit_add_area (measure, "One"), *two = rc_measure_edit_add_area (measure, "Two");
  RcOpening   *door = rc_room_edit_add_opening (hall, RC_OPENING_DOOR, 1, RC_UNITS_IMPERIAL);

  door->to_room = g_strdup (den->id);
  g_assert_true (rc_measure_edit_put_room_in_area (measure, "den", "one"));
  g_assert_true (rc_measure_edit_put_room_in_area (measure, "den", "two"));
  g_assert_cmpuint (one->rooms->len, ==, 0);
  g_assert_cmpuint (two->rooms->len, ==, 1);
  g_assert_false (rc_measure_edit_put_room_in_area (measure, "den", "three"));
  g_assert_true (rc_choice_find_area_of_room (measure, "den") == two);

  RcRoom *again = rc_measure_edit_duplicate_room (measure, "hall", "Hall, again");
  g_assert_cmpuint (again->openings->len, ==, 1);
  g_assert_null (((RcOpening *)g_ptr_array_index (again->openings, 0))->to_room);

  g_assert_true (rc_measure_edit_remove_room (measure, "den"));
  g_assert_cmpuint (two->rooms->len, ==, 0);
  g_assert_null (door->to_room);
  g_assert_false (rc_measure_edit_remove_room (measure, "den"));
  g_assert_true (rc_measure_edit_remove_area (measure, "two"));
  g_assert_false (rc_measure_edit_remove_area (measure, "two"));
}

static void
test_measure_ids_differ (void)
{
  g_autoptr (RcJob) job = new_job ();
  RcMeasure *measure = get_measure (job);

  g_assert_cmpstr (rc_measure_edit_add_room (measure, "Über 1", 0, 0, 0)->id, !=, "");
  g_assert_cmpstr (rc_measure_edit_add_room (measure, "階段", 0, 0, 0)->id, ==, "room");
  g_assert_cmpstr (rc_measure_edit_add_stair (measure, "Room", RC_UNITS_METRIC)->id, ==, "room-2");
  g_assert_cmpstr (rc_measure_edit_add_area (measure, "room")->id, ==, "room-3");
  g_assert_true (rc_measure_edit_remove_stair (measure, "room-2"));
}

static void
test_job_measures_again (void)
{
  g_autoptr (RcJob) job = new_job ();

  rc_measure_edit_add_room (get_measure (job), "Hall", 0, 4 * FT, 12 * FT);
  RcMeasure *second = rc_job_edit_add_measure (job, NULL, "2026-05-01");
  g_assert_cmpstr (second->id, ==, "M2");
  g_assert_cmpstr (second->date, ==, "2026-05-01");
  rc_room_edit_set_length (rc_measure_find_room (second, "hall"), 0, 13 * FT);
  const RcRoom *old = rc_measure_find_room (rc_job_get_measure (job, "M1"), "hall");
  g_assert_cmpint (g_array_index (old->walls, RcWall, 0).length, ==, 12 * FT);
  g_assert_true (rc_job_edit_remove_measure (job, "M1"));
  g_assert_false (rc_job_edit_remove_measure (job, "M2"));
}

static void
test_job_takes_goods_with_their_rolls (void)
{
  g_autoptr (RcJob) job = new_job ();
  RcCurrency usd = { "USD", 2 };
  g_autoptr (RcPriceBook) book = rc_price_book_new (&usd);
  g_autoptr (GPtrArray) stock = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_roll_free);

  g_ptr_array_add (book->goods, rc_goods_new ("sand", RC_GOODS_CARPET, "Sand"));
  g_ptr_array_add (stock, rc_roll_new ("R-1", "sand", 30 * FT));
  g_ptr_array_add (stock, rc_roll_new ("R-2", "slate", 30 * FT));
  g_assert_true (rc_job_edit_take_goods (job, book, stock, "sand"));
  g_assert_true (rc_job_edit_take_goods (job, book, stock, "sand"));
  g_assert_cmpuint (job->goods->len, ==, 1);
  g_assert_cmpuint (job->rolls->len, ==, 1);
  g_assert_false (rc_job_edit_take_goods (job, book, stock, "slate"));
}

/* The choice. */

static void
test_choice_mends (void)
{
  g_autoptr (RcJob) job = new_job ();
  RcMeasure *measure = get_measure (job);

  rc_measure_edit_add_room (measure, "Hall", 0, 4 * FT, 12 * FT);
  rc_measure_edit_add_area (measure, "One");
  RcChoice hall = rc_choice_of_thing (RC_THING_ROOM, "hall");
  hall.wall = 4;
  hall.piece = 7;
  RcChoice mended = rc_choice_mend (hall, measure, NULL);
  g_assert_cmpuint (mended.wall, ==, 4);
  g_assert_cmpuint (mended.piece, ==, 0);
  rc_room_edit_remove_wall (rc_measure_find_room (measure, "hall"), 0);
  g_assert_cmpuint (rc_choice_mend (mended, measure, NULL).wall, ==, 0);
  g_assert_cmpstr (rc_choice_find_area (hall, measure)->id, ==, "one");
  rc_measure_edit_remove_room (measure, "hall");
  g_assert_true (rc_choice_equal (rc_choice_mend (hall, measure, NULL), rc_choice_of_thing (RC_THING_JOB, NULL)));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/desk/bearing/reads", test_bearing_reads);
  g_test_add_func ("/desk/bearing/refuses", test_bearing_refuses);
  g_test_add_func ("/desk/bearing/prints-what-it-reads", test_bearing_prints_what_it_reads);
  g_test_add_func ("/desk/viewport/zoom-keeps-the-point", test_viewport_zoom_keeps_the_point);
  g_test_add_func ("/desk/viewport/limits", test_viewport_limits);
  g_test_add_func ("/desk/room/new-is-a-rectangle", test_room_new_is_a_rectangle);
  g_test_add_func ("/desk/room/outline-becomes-walls", test_room_outline_becomes_walls);
  g_test_add_func ("/desk/room/openings-follow-walls", test_room_openings_follow_walls);
  g_test_add_func ("/desk/room/guesses-the-next-wall", test_room_guesses_the_next_wall);
  g_test_add_func ("/desk/room/closing-length", test_room_closing_length);
  g_test_add_func ("/desk/room/closing-length-random", test_room_closing_length_random);
  g_test_add_func ("/desk/measure/room-leaves-no-trace", test_measure_room_leaves_no_trace);
  g_test_add_func ("/desk/measure/ids-differ", test_measure_ids_differ);
  g_test_add_func ("/desk/job/measures-again", test_job_measures_again);
  g_test_add_func ("/desk/job/takes-goods-with-their-rolls", test_job_takes_goods_with_their_rolls);
  g_test_add_func ("/desk/choice/mends", test_choice_mends);
  return g_test_run ();
}
