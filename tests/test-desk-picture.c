/* Plan pictures: where they lie, what is kept of them, and files that are damaged or made to do harm. */
#include <glib/gstdio.h>
#include <string.h>

#include "gesture-hand.h"
#include "job-file.h"
#include "picture-decode.h"
#include "picture-edit.h"
#include "picture-maker.h"
#include "rowcut-error.h"
#include "store.h"

static const RcLength FT = RC_TICKS_PER_FOOT;

static guint
get_grey (cairo_surface_t *image, int x, int y)
{
  const guint8 *row = cairo_image_surface_get_data (image) + y * cairo_image_surface_get_stride (image);
  return row[4 * x];
}

static void
test_reads (void)
{
  GBytes *(*const MAKERS[]) (void)
      = { rc_picture_maker_make_png, rc_picture_maker_make_jpeg, rc_picture_maker_make_pdf };
  const int SCALES[] = { 1, 1, 2 };

  for (guint i = 0; i < G_N_ELEMENTS (MAKERS); i++)
    {
      g_autoptr (GBytes) bytes = MAKERS[i]();
      g_autoptr (GError) error = NULL;
      int              scale = SCALES[i];
      cairo_surface_t *image = rc_picture_decode (bytes, 1, &error);
      g_assert_no_error (error);
      g_assert_cmpint (cairo_image_surface_get_width (image), ==, 100 * scale);
      g_assert_cmpint (cairo_image_surface_get_height (image), ==, 80 * scale);
      g_assert_cmpuint (get_grey (image, 40 * scale, 25 * scale), <, 30);
      g_assert_cmpuint (get_grey (image, 90 * scale, 25 * scale), >, 225);
      cairo_surface_destroy (image);
    }
}

static void
test_refuses (void)
{
  g_autoptr (GBytes) pdf = rc_picture_maker_make_pdf (), png = rc_picture_maker_make_png ();
  g_autoptr (GBytes) text = g_bytes_new_static ("<svg/>", 6), empty = g_bytes_new_static ("", 0);
  g_autoptr (GBytes) half = g_bytes_new_from_bytes (png, 0, 20);
  const struct
  {
    GBytes *bytes;
    guint   page;
    int     code;
  } CASES[] = { { text, 1, RC_ERROR_FORMAT },
                { empty, 1, RC_ERROR_FORMAT },
                { half, 1, RC_ERROR_FORMAT },
                { pdf, 3, RC_ERROR_RANGE },
                { pdf, 0, RC_ERROR_RANGE } };

  for (guint i = 0; i < G_N_ELEMENTS (CASES); i++)
    {
      g_autoptr (GError) error = NULL;
      g_assert_null (rc_picture_decode (CASES[i].bytes, CASES[i].page, &error));
      g_assert_error (error, RC_ERROR, CASES[i].code);
    }
}

/* Wider than what is shown: made smaller while it is read. */
static void
test_large_is_bounded (void)
{
  g_autoptr (GByteArray) all = g_byte_array_new ();
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 6000, 300);
  g_autoptr (GError) error = NULL;

  cairo_surface_write_to_png_stream (surface, rc_picture_maker_append, all);
  cairo_surface_destroy (surface);
  g_autoptr (GBytes) bytes = g_bytes_new (all->data, all->len);
  surface = rc_picture_decode (bytes, 1, &error);
  g_assert_no_error (error);
  g_assert_cmpint (cairo_image_surface_get_width (surface), ==, RC_PICTURE_MAX_SIDE);
  g_assert_cmpint (cairo_image_surface_get_height (surface), ==, 300 * RC_PICTURE_MAX_SIDE / 6000);
  cairo_surface_destroy (surface);
}

/* 1000 pixels over 40 ft; a stretch 10 ft long as shown is really 12 ft 6 in, and slopes by a little. */
static void
test_scale_by_two_points (void)
{
  RcPlanPicture picture = { .strength_percent = 100 };
  RcBox         box = { 0, 0, 40 * FT, 30 * FT };
  RcPoint       from = { 5 * FT, 5 * FT }, to = { 5 * FT + 10 * FT, 5 * FT };

  rc_picture_edit_fit (&picture, 1000, box);
  g_assert_cmpint (picture.ticks_per_1000px, ==, 40 * FT);
  g_assert_cmpint (picture.at.y, ==, 30 * FT);
  g_assert_true (rc_picture_edit_scale (&picture, from, to, 25 * FT / 2));
  g_assert_cmpint (picture.ticks_per_1000px, ==, 50 * FT);
  g_assert_cmpint (picture.at.x, ==, 5 * FT - 25 * FT / 4);
  g_assert_cmpint (picture.turn_millidegrees, ==, 0);
  to.y += 10 * FT * 0.05;
  g_assert_true (rc_picture_edit_scale (&picture, from, to, 10 * FT));
  g_assert_cmpint (picture.turn_millidegrees, ==, -2862); /* atan 0.05, from memory */
  g_assert_false (rc_picture_edit_scale (&picture, from, from, FT));
  for (guint i = 0; i < 4; i++)
    rc_picture_edit_turn (&picture, from, 90000);
  g_assert_cmpint ((picture.turn_millidegrees + 360000) % 360000, ==, 360000 - 2862);
  rc_picture_edit_lighten (&picture);
  g_assert_cmpuint (picture.strength_percent, ==, 50);
  rc_picture_edit_lighten (&picture);
  rc_picture_edit_lighten (&picture);
  g_assert_cmpuint (picture.strength_percent, ==, 0);
  rc_picture_edit_lighten (&picture);
  g_assert_cmpuint (picture.strength_percent, ==, 100);
}

static void
test_gesture_gives_the_scale (void)
{
  RcCurrency usd = { "USD", 2 };
  g_autoptr (RcJob) job = rc_job_new ("J-1", &usd);
  g_autoptr (RcScene) scene = rc_scene_new (job, rc_job_get_measure (job, NULL), NULL, 0);
  RcGesture       gesture = rc_gesture_start (RC_TOOL_SCALE, NULL);
  RcGestureResult result = { 0 };
  RcGestureEvent  events[] = { { .kind = RC_EVENT_PRESS, .at = { FT, FT }, .reach = FT / 8 },
                               { .kind = RC_EVENT_RELEASE, .at = { FT, FT }, .reach = FT / 8 },
                               { .kind = RC_EVENT_ENTER },
                               { .kind = RC_EVENT_PRESS, .at = { 9 * FT, FT }, .reach = FT / 8 },
                               { .kind = RC_EVENT_LETTER, .letter = '9' },
                               { .kind = RC_EVENT_LETTER, .letter = '\'' },
                               { .kind = RC_EVENT_ENTER } };

  for (guint i = 0; i < G_N_ELEMENTS (events); i++)
    {
      rc_gesture_result_clear (&result);
      gesture = rc_gesture_handle (gesture, scene, &events[i], &result);
      g_assert_cmpint (result.fault != NULL, ==, i == 2);
    }
  g_assert_cmpint (result.picture.kind, ==, RC_PICTURE_SCALE);
  g_assert_cmpint (result.picture.length, ==, 9 * FT);
  g_assert_cmpint (result.picture.to.x, ==, 9 * FT);
  g_assert_false (gesture.is_active);
}

/* A picture is of the job: saved with it, its changes steps that are undone by name, one a storey, kept when another
 * program opens the store, and told in the job file. */
static void
test_kept_in_the_store (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("rowcut-picture-XXXXXX", &error);
  g_autofree char *path = g_build_filename (folder, "store.db", NULL);
  g_autoptr (GBytes) bytes = rc_picture_maker_make_png ();
  RcCurrency usd = { "USD", 2 };
  g_autoptr (RcJob) job = rc_job_new ("J-1", &usd);
  RcStore *store = rc_store_open (path, NULL, &error);
  g_assert_no_error (error);
  g_autofree char *digest = rc_store_add_file (store, bytes, &error);
  RcPlanPicture    picture = { 1, (char *)"plan.png", digest, 2, { -5, 7 }, 40 * FT, -1500, 50 };

  rc_job_take_picture (job, rc_plan_picture_copy (&picture));
  picture.storey = 0;
  rc_job_take_picture (job, rc_plan_picture_copy (&picture));
  g_assert_true (rc_store_save_job (store, job, "Begin", "2026-01-01T00:00:00Z", &error));
  picture.at.x = 9;
  rc_job_take_picture (job, rc_plan_picture_copy (&picture));
  g_assert_true (rc_store_save_job (store, job, "Move the plan picture", "2026-01-01T00:00:00Z", &error));
  rc_store_close (store);
  store = rc_store_open (path, NULL, &error);
  g_autoptr (RcJob) again = rc_store_load_job (store, "J-1", &error);
  g_assert_no_error (error);
  g_assert_cmpuint (again->pictures->len, ==, 2);
  const RcPlanPicture *first = again->pictures->pdata[0], *second = again->pictures->pdata[1];
  g_assert_cmpint (first->at.x, ==, 9);
  g_assert_cmpint (second->storey, ==, 1);
  g_assert_cmpstr (second->name, ==, "plan.png");
  g_assert_cmpuint (second->page, ==, 2);
  g_assert_cmpint (second->turn_millidegrees, ==, -1500);
  g_autoptr (GBytes) kept = rc_store_load_file (store, second->digest, &error);
  g_assert_true (g_bytes_equal (kept, bytes));
  g_autofree char *step = NULL, *file = rc_job_file_format (again, NULL);
  g_assert_true (rc_store_undo (store, "J-1", &step, &error));
  g_assert_cmpstr (step, ==, "Move the plan picture");
  g_autoptr (RcJob) undone = rc_store_load_job (store, "J-1", &error);
  g_assert_cmpint (rc_job_find_picture (undone, 0)->at.x, ==, -5);
  g_assert_null (rc_job_find_picture (undone, 2));
  rc_store_close (store);
  g_assert_nonnull (strstr (file, digest));
  g_autoptr (RcJob) read = rc_job_file_parse (file, strlen (file), "plan.xml", NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (read->pictures->len, ==, 2);
  g_assert_cmpint (rc_job_find_picture (read, 0)->at.x, ==, 9);
  g_assert_cmpint (rc_job_find_picture (read, 1)->ticks_per_1000px, ==, 40 * FT);
  g_remove (path);
  g_rmdir (folder);
}

static RcGestureResult
handle_all (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *events, guint n)
{
  RcGestureResult result = { 0 };

  for (guint i = 0; i < n; i++)
    *gesture = rc_gesture_handle (*gesture, scene, &events[i], &result);
  return result;
}

/* About a point: by a drag round it, and by degrees typed. */
static void
test_gesture_gives_the_turn (void)
{
  RcCurrency usd = { "USD", 2 };
  g_autoptr (RcJob) job = rc_job_new ("J-1", &usd);
  g_autoptr (RcScene) scene = rc_scene_new (job, rc_job_get_measure (job, NULL), NULL, 0);
  RcGesture            gesture = rc_gesture_start (RC_TOOL_SWIVEL, NULL);
  const RcGestureEvent dragged[] = { { .kind = RC_EVENT_PRESS, .at = { FT, FT }, .reach = FT / 8 },
                                     { .kind = RC_EVENT_RELEASE, .at = { FT, FT }, .reach = FT / 8 },
                                     { .kind = RC_EVENT_PRESS, .at = { 11 * FT, FT }, .reach = FT / 8 },
                                     { .kind = RC_EVENT_MOTION, .at = { 11 * FT, 11 * FT }, .reach = FT / 8 },
                                     { .kind = RC_EVENT_RELEASE, .at = { 11 * FT, 11 * FT }, .reach = FT / 8 } };
  const RcGestureEvent typed[] = { { .kind = RC_EVENT_PRESS, .at = { FT, FT }, .reach = FT / 8 },
                                   { .kind = RC_EVENT_RELEASE, .at = { FT, FT }, .reach = FT / 8 },
                                   { .kind = RC_EVENT_LETTER, .letter = '-' },
                                   { .kind = RC_EVENT_LETTER, .letter = '0' },
                                   { .kind = RC_EVENT_LETTER, .letter = ',' },
                                   { .kind = RC_EVENT_LETTER, .letter = '7' },
                                   { .kind = RC_EVENT_ENTER } };
  RcGestureResult      result = handle_all (&gesture, scene, dragged, G_N_ELEMENTS (dragged));

  g_assert_cmpint (result.picture.kind, ==, RC_PICTURE_TURN);
  g_assert_cmpint (result.picture.from.x, ==, FT);
  g_assert_cmpint (result.picture.millidegrees, ==, 45000);
  g_assert_false (gesture.is_active);
  result = handle_all (&gesture, scene, typed, G_N_ELEMENTS (typed));
  g_assert_cmpint (result.picture.millidegrees, ==, -700);
  result = handle_all (&gesture, scene, typed + 2, 1);
  result = handle_all (&gesture, scene, typed + 6, 1);
  g_assert_nonnull (result.fault);
  rc_gesture_result_clear (&result);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/picture/reads", test_reads);
  g_test_add_func ("/picture/refuses", test_refuses);
  g_test_add_func ("/picture/large-is-bounded", test_large_is_bounded);
  g_test_add_func ("/picture/scale-by-two-points", test_scale_by_two_points);
  g_test_add_func ("/picture/gesture-gives-the-scale", test_gesture_gives_the_scale);
  g_test_add_func ("/picture/gesture-gives-the-turn", test_gesture_gives_the_turn);
  g_test_add_func ("/picture/kept-in-the-store", test_kept_in_the_store);
  return g_test_run ();
}
