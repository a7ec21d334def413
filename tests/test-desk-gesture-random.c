/* Thousands of random gestures, each saved as a step: the model stays sound in itself, undoing them all gives the bytes
 * from before, doing them again those from after. */
#include <glib/gstdio.h>

#include "door-links.h"
#include "gesture-hand.h"
#include "gesture-room.h"
#include "job-file.h"
#include "measure-edit.h"
#include "rounds.h"
#include "store.h"

#define N_STEPS    500
#define N_SLOW     10000
#define MAX_ROOMS  9
#define MAX_STAIRS 4

static const RcLength IN = RC_TICKS_PER_INCH;

static RcLength
choose_place (void)
{
  return g_test_rand_int_range (-60, 500) * IN + g_test_rand_int_range (0, 4) * IN / 4;
}

static const char *
choose_room (Hand *hand)
{
  const GPtrArray *rooms = hand_get_measure (hand)->rooms;

  if (rooms->len == 0)
    return NULL;
  return ((const RcRoom *)rooms->pdata[g_test_rand_int_range (0, (int)rooms->len)])->id;
}

/* On a wall of a room, where gestures begin. */
static RcPoint
choose_spot (Hand *hand, const char *room)
{
  g_autoptr (RcScene) scene = rc_scene_new_noted (hand->job, hand_get_measure (hand), 0);
  const RcSceneRoom *seen = rc_scene_find_room (scene, room);
  RcPoint            from, to;

  if (seen == NULL)
    return (RcPoint){ choose_place (), choose_place () };
  rc_scene_get_wall (seen, (guint)g_test_rand_int_range (0, (int)seen->corners->len), &from, &to);
  double share = g_test_rand_double ();
  return (RcPoint){ from.x + (RcLength)((double)(to.x - from.x) * share),
                    from.y + (RcLength)((double)(to.y - from.y) * share) };
}

static const char *
choose_stair (Hand *hand)
{
  const GPtrArray *stairs = hand_get_measure (hand)->stairs;

  if (stairs->len == 0)
    return NULL;
  return g_intern_string (((const RcStair *)stairs->pdata[g_test_rand_int_range (0, (int)stairs->len)])->id);
}

/* On a stair, where it is held. */
static RcPoint
choose_step (Hand *hand, RcPoint otherwise)
{
  const char    *id = choose_stair (hand);
  const RcStair *stair = id ? rc_measure_find_stair (hand_get_measure (hand), id) : NULL;

  return stair && stair->placed && g_test_rand_bit () ? stair->at : otherwise;
}

static void
remove_something (Hand *hand)
{
  static const char *const TOOLS[] = { "choose", "stair", "no-seams" };
  g_autofree char         *room = g_strdup (choose_room (hand));
  RcPoint                  spot = choose_step (hand, choose_spot (hand, room));

  hand_take (hand, TOOLS[g_test_rand_int_range (0, G_N_ELEMENTS (TOOLS))], room);
  hand_send (hand, (RcGestureEvent){ .kind = RC_EVENT_REMOVE, .at = spot });
}

/* By keys alone: a corner, a wall or what else the room has, moved by arrows. */
static void
nudge_something (Hand *hand)
{
  g_autofree char *room = g_strdup (choose_room (hand));

  hand_take (hand, "choose", room);
  for (int i = g_test_rand_int_range (1, 16); i > 0; i--)
    hand_type (hand, g_test_rand_int_range (0, 5) ? "h" : "H");
  for (int i = g_test_rand_int_range (1, 5); i > 0; i--)
    hand_send (hand, (RcGestureEvent){ .kind = RC_EVENT_ARROW,
                                       .arrow = g_test_rand_int_range (0, 4),
                                       .is_free = g_test_rand_bit () });
}

static void
check_a_room (Hand *hand)
{
  RcRoom    *room = rc_measure_find_room (hand_get_measure (hand), choose_room (hand));
  guint      n = rc_room_get_n_walls (room);
  RcDiagonal diagonal
      = { (guint)g_test_rand_int_range (0, (int)n), (guint)g_test_rand_int_range (0, (int)n), ABS (choose_place ()) };

  if (room->diagonals->len < 3)
    g_array_append_val (room->diagonals, diagonal);
}

static void
make_gesture (Hand *hand)
{
  static const char *const TEXTS[] = { "12'6", "3' 1/2\"", "30", "x", "144", "0" };
  RcTool                   tool = (RcTool)g_test_rand_int_range (0, RC_N_TOOLS);
  g_autofree char         *room = g_strdup (choose_room (hand));
  RcPoint                  spot = choose_spot (hand, room);

  if (tool == RC_TOOL_STAIR || tool == RC_TOOL_CHOOSE)
    spot = choose_step (hand, spot);
  hand_take (hand, rc_tool_get_name (tool), room);
  hand->gesture.stair = tool == RC_TOOL_CHOOSE || g_test_rand_bit () ? choose_stair (hand) : NULL;
  hand_move (hand, spot.x, spot.y);
  if (g_test_rand_int_range (0, 3) == 0)
    hand_type (hand, " ");
  hand_send (hand, (RcGestureEvent){ .kind = RC_EVENT_PRESS, .at = spot, .is_bow = g_test_rand_bit () });
  for (int i = g_test_rand_int_range (1, 4); i > 0; i--)
    hand_move (hand, choose_place (), choose_place ());
  if (g_test_rand_int_range (0, 3) == 0)
    hand_type (hand, TEXTS[g_test_rand_int_range (0, G_N_ELEMENTS (TEXTS))]);
  if (g_test_rand_int_range (0, 4) == 0)
    hand_key (hand, RC_EVENT_NEXT);
  hand_release (hand, hand->gesture.raw.x, hand->gesture.raw.y);
  if (tool == RC_TOOL_OUTLINE)
    for (int i = 0; i < 3; i++)
      hand_press (hand, choose_place (), choose_place ());
  hand_key (hand, g_test_rand_int_range (0, 8) == 0 ? RC_EVENT_ESCAPE : RC_EVENT_ENTER);
}

static void
turn_a_room (Hand *hand)
{
  g_autoptr (RcScene) scene = rc_scene_new_noted (hand->job, hand_get_measure (hand), 0);
  const char *room = choose_room (hand);
  RcJob      *job = g_test_rand_bit () ? rc_gesture_room_mirror (scene, room)
                                       : rc_gesture_room_turn (scene, room, g_test_rand_int_range (0, 24) * 15);

  if (job == NULL)
    return;
  rc_job_free (hand->job);
  hand->job = job;
}

/* What holds after any gesture, also where the rooms cannot be planned. */
static void
assert_consistent (Hand *hand)
{
  const RcMeasure *measure = hand_get_measure (hand);
  g_autoptr (GError) error = NULL;
  g_autoptr (GHashTable) links = rc_door_links_new (measure, &error);

  g_assert_no_error (error);
  for (guint r = 0; r < measure->rooms->len; r++)
    {
      const RcRoom *room = g_ptr_array_index (measure->rooms, r);
      guint         n = rc_room_get_n_walls (room);
      g_assert_cmpuint (n, >=, 3);
      for (guint i = 0; i < room->openings->len; i++)
        g_assert_cmpuint (((const RcOpening *)room->openings->pdata[i])->wall, <, n);
      for (guint i = 0; i < room->diagonals->len; i++)
        {
          g_assert_cmpuint (g_array_index (room->diagonals, RcDiagonal, i).from, <, n);
          g_assert_cmpuint (g_array_index (room->diagonals, RcDiagonal, i).to, <, n);
        }
      for (guint w = 0; w < room->walls->len; w++)
        g_assert_cmpint (g_array_index (room->walls, RcWall, w).length, >, 0);
      g_assert_true (rc_measure_find_room (measure, room->id) == room);
    }
}

static char *
dup_bytes (const RcJob *job)
{
  return rc_job_file_format (job, NULL);
}

static void
save (RcStore *store, const RcJob *job, const char *step)
{
  g_autoptr (GError) error = NULL;

  rc_store_save_job (store, job, step, "2026-01-01T00:00:00Z", &error);
  g_assert_no_error (error);
}

static char *
walk (RcStore *store, const char *id, gboolean (*go) (RcStore *, const char *, char **, GError **), guint *n)
{
  g_autoptr (GError) error = NULL;

  for (*n = 0; go (store, id, NULL, &error); ++*n)
    ;
  g_assert_no_error (error);
  g_autoptr (RcJob) job = rc_store_load_job (store, id, &error);
  g_assert_no_error (error);
  return dup_bytes (job);
}

static void
test_all_undone (Hand *hand, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("rowcut-gesture-XXXXXX", &error);
  g_autofree char *path = g_build_filename (folder, "store.db", NULL);
  RcStore         *store = rc_store_open (path, NULL, &error);
  g_assert_no_error (error);
  guint n_steps = g_test_slow () ? N_SLOW : scale_rounds (N_STEPS), n_saved = 0, n = 0;

  hand_take (hand, "room", NULL);
  hand_drag (hand, 0, 0, 144 * IN, 120 * IN);
  save (store, hand->job, "Begin");
  g_autofree char *before = dup_bytes (hand->job), *last = g_strdup (before);
  for (guint tries = 0; n_saved < n_steps; tries++)
    {
      g_assert_cmpuint (tries, <, 40 * n_steps);
      if (g_test_rand_int_range (0, 12) == 0)
        turn_a_room (hand);
      else if (g_test_rand_int_range (0, 12) == 0)
        remove_something (hand);
      else if (g_test_rand_int_range (0, 20) == 0)
        check_a_room (hand);
      else if (g_test_rand_int_range (0, 10) == 0)
        nudge_something (hand);
      else
        make_gesture (hand);
      if (hand_get_measure (hand)->rooms->len > MAX_ROOMS)
        rc_measure_edit_remove_room (hand_get_measure (hand), choose_room (hand));
      if (hand_get_measure (hand)->stairs->len > MAX_STAIRS)
        rc_measure_edit_remove_stair (hand_get_measure (hand), choose_stair (hand));
      assert_consistent (hand);
      char *now = dup_bytes (hand->job);
      if (!g_str_equal (now, last))
        {
          save (store, hand->job, hand->step ? hand->step : "Gesture");
          n_saved++;
        }
      g_free (last);
      last = now;
    }
  g_autofree char *undone = walk (store, hand->job->id, rc_store_undo, &n);
  g_assert_cmpuint (n, ==, n_saved);
  g_assert_cmpstr (undone, ==, before);
  g_autofree char *redone = walk (store, hand->job->id, rc_store_redo, &n);
  g_assert_cmpuint (n, ==, n_saved);
  g_assert_cmpstr (redone, ==, last);
  g_test_message ("%u gestures undone and done again", n_saved);
  rc_store_close (store);
  g_remove (path);
  g_rmdir (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/gesture/random/all-undone", Hand, NULL, hand_set_up, test_all_undone, hand_tear_down);
  return g_test_run ();
}
