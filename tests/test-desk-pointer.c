/* The floor drawn by a person's hand: real events of a pointer and a keyboard, made by xdotool on the virtual display,
 * through the real widgets. Counts what the hand does. Skipped, and says so, without xdotool. */
#include "document-things.h"
#include "gesture-scene.h"
#include "pointer-hand.h"
#include "shape-window.h"

static const RcLength FT = RC_TICKS_PER_FOOT;
static const RcLength IN = RC_TICKS_PER_INCH;

typedef PointerHand User;

typedef struct
{
  User *user;
  guint n_rooms, n_openings;
} Things;

static gboolean
are_there (gpointer data)
{
  const Things    *things = data;
  const RcMeasure *measure = pointer_hand_get_measure (things->user);
  guint            n = 0;

  for (guint r = 0; r < measure->rooms->len; r++)
    n += ((const RcRoom *)g_ptr_array_index (measure->rooms, r))->openings->len;
  return measure->rooms->len >= things->n_rooms && n >= things->n_openings;
}

/* Handles events until there are so many rooms and openings. */
static void
wait_for_things (User *user, guint n_rooms, guint n_openings)
{
  Things things = { user, n_rooms, n_openings };

  pointer_hand_wait (are_there, &things);
}

static const RcRoom *
get_room (User *user, guint i)
{
  wait_for_things (user, i + 1, 0);
  const RcMeasure *measure = pointer_hand_get_measure (user);
  g_assert_cmpuint (i, <, measure->rooms->len);
  return g_ptr_array_index (measure->rooms, i);
}

static void
set_up (User *user, gconstpointer data)
{
  desk_fixture_open (&user->desk, FALSE);
  gtk_widget_activate_action (GTK_WIDGET (user->desk.window), "win.new-job", NULL);
  desk_fixture_settle ();
  rc_document_set_improve_seconds (pointer_hand_get_document (user), 0);
  desk_fixture_paint (GTK_WIDGET (user->desk.window));
}

static void
tear_down (User *user, gconstpointer data)
{
  desk_fixture_close (&user->desk);
}

static void
make_imperial (User *user)
{
  g_autoptr (GError) error = NULL;
  RcJob *job = rc_document_dup_job (pointer_hand_get_document (user));

  job->units = RC_UNITS_IMPERIAL;
  rc_document_commit (pointer_hand_get_document (user), job, "Units", NULL, &error);
  g_assert_no_error (error);
  rc_floor_view_fit (pointer_hand_get_floor (user));
  desk_fixture_paint (GTK_WIDGET (user->desk.window));
}

static void
assert_size (const RcRoom *room, RcLength width, RcLength length)
{
  g_autoptr (GArray) corners = rc_room_compute_corners (room);
  RcBox box = rc_ring_compute_box (corners);

  g_assert_cmpint (box.x1 - box.x0, ==, width);
  g_assert_cmpint (box.y1 - box.y0, ==, length);
}

static void
wait_for_plan (User *user)
{
  desk_fixture_wait (pointer_hand_get_document (user));
  g_assert_null (rc_document_get_fault (pointer_hand_get_document (user)));
}

static gboolean
is_empty (gpointer data)
{
  return pointer_hand_get_measure (data)->rooms->len == 0;
}

/* Hall, living room and dining room of the demo house, with their doors, from nothing. */
static void
test_house_by_pointer (User *user, gconstpointer data)
{
  if (pointer_hand_is_missing ())
    return;
  make_imperial (user);
  pointer_hand_click (user, 2 * FT, 30 * FT);
  user->n_clicks = 0;
  /* The hall, 4' 6" by 24'. */
  pointer_hand_key (user, "r");
  pointer_hand_click (user, 20 * FT, 2 * FT);
  pointer_hand_type (user, "4'6");
  pointer_hand_key (user, "Tab");
  pointer_hand_type (user, "24'");
  pointer_hand_key (user, "Return");
  assert_size (get_room (user, 0), 54 * IN, 24 * FT);
  g_test_message ("a rectangle by a click and %u keys", user->n_keys);
  g_assert_cmpuint (user->n_keys, <, 12);
  /* The living room behind its left wall, in line below; the dining room behind the right one. */
  RcPoint at = get_room (user, 0)->at;
  pointer_hand_point (user, at.x - 5 * IN, at.y);
  pointer_hand_click (user, at.x - 5 * IN, at.y);
  pointer_hand_point (user, at.x - 10 * FT, at.y + 10 * FT);
  pointer_hand_type (user, "13'7");
  pointer_hand_key (user, "Tab");
  pointer_hand_type (user, "19'6");
  pointer_hand_key (user, "Return");
  assert_size (get_room (user, 1), 163 * IN, 234 * IN);
  pointer_hand_drag (user, at.x + 54 * IN + 5 * IN, at.y, at.x + 54 * IN + 5 * IN + 12 * FT, at.y + 13 * FT);
  /* Doors: one typed, one by the pointer alone. */
  pointer_hand_key (user, "d");
  pointer_hand_point (user, at.x, at.y + 8 * FT);
  pointer_hand_type (user, "9'");
  pointer_hand_key (user, "Return");
  pointer_hand_click (user, at.x + 54 * IN, at.y + 5 * FT);
  wait_for_things (user, 3, 4);
  guint n_doors = 0;
  for (guint i = 0; i < 3; i++)
    n_doors += get_room (user, i)->openings->len;
  g_assert_cmpuint (n_doors, ==, 4);
  g_assert_cmpstr (((RcOpening *)get_room (user, 1)->openings->pdata[0])->to_room, ==, get_room (user, 0)->id);
  wait_for_plan (user);
  g_test_message ("three rooms and two doors by %u clicks and drags and %u keys", user->n_clicks, user->n_keys);
  /* A wall dragged, its neighbour following; then all undone. */
  pointer_hand_key (user, "Escape");
  pointer_hand_drag (user, at.x, at.y + 3 * FT, at.x - 2 * FT, at.y + 3 * FT);
  for (guint i = 0; i < 8; i++)
    pointer_hand_key (user, "ctrl+z");
  pointer_hand_wait (is_empty, user);
}

/* As the toolkit does when the button is up already as it looks again where the pointer is. */
static void
reset_drag (GtkWidget *floor)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (floor);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);
      if (GTK_IS_GESTURE_DRAG (controller))
        gtk_event_controller_reset (controller);
    }
}

/* The floor heeds the pointer after a press too whose end the toolkit never told: the room lies to the left, where the
 * pointer went then. */
static void
test_press_without_an_end (User *user, gconstpointer data)
{
  if (pointer_hand_is_missing ())
    return;
  make_imperial (user);
  pointer_hand_click (user, 2 * FT, 30 * FT);
  pointer_hand_key (user, "r");
  pointer_hand_point (user, 20 * FT, 2 * FT);
  pointer_hand_do ("xdotool mousedown 1");
  reset_drag (GTK_WIDGET (pointer_hand_get_floor (user)));
  pointer_hand_do ("xdotool mouseup 1");
  pointer_hand_point (user, 10 * FT, 8 * FT);
  pointer_hand_type (user, "5'");
  pointer_hand_key (user, "Tab");
  pointer_hand_type (user, "8'");
  pointer_hand_key (user, "Return");
  assert_size (get_room (user, 0), 5 * FT, 8 * FT);
  g_autoptr (RcScene) scene = rc_document_new_scene (pointer_hand_get_document (user), 0);
  const RcSceneRoom *room = g_ptr_array_index (scene->rooms, 0);
  g_assert_cmpint (rc_ring_compute_box (room->corners).x1, <, 20 * FT + 2 * IN);
}

static gboolean
is_asking (gpointer data)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWidget) window = g_list_model_get_item (windows, i);
      if (RC_IS_SHAPE_WINDOW (window) && gtk_widget_get_mapped (window))
        return TRUE;
    }
  return FALSE;
}

/* Opens the window of sizes and waits for it, as a person does. Without a window manager the keys go where the pointer
 * is: it is put there. */
static void
ask_for_sizes (User *user)
{
  pointer_hand_key (user, "F8");
  pointer_hand_wait (is_asking, NULL);
  pointer_hand_do ("xdotool mousemove 300 120");
}

/* By keyboard alone: a rectangle with a door under 12 keys, a bay-fronted L under 40. */
static void
test_rooms_by_keyboard (User *user, gconstpointer data)
{
  if (pointer_hand_is_missing ())
    return;
  make_imperial (user);
  pointer_hand_click (user, 2 * FT, 30 * FT);
  ask_for_sizes (user);
  pointer_hand_type (user, "12'");
  pointer_hand_key (user, "Tab");
  pointer_hand_type (user, "10'");
  pointer_hand_key (user, "Return");
  assert_size (get_room (user, 0), 12 * FT, 10 * FT);
  pointer_hand_do ("xdotool mousemove 300 500");
  pointer_hand_key (user, "alt+d");
  wait_for_things (user, 1, 1);
  g_assert_cmpuint (get_room (user, 0)->openings->len, ==, 1);
  g_test_message ("a rectangle with a door by %u keys", user->n_keys);
  g_assert_cmpuint (user->n_keys, <, 12);
  user->n_keys = 0;
  ask_for_sizes (user);
  pointer_hand_key (user, "alt+4");
  static const char *const SIZES[] = { "20'", "15'", "8'", "6'", "9'", "2'", "5'" };
  for (guint i = 0; i < G_N_ELEMENTS (SIZES); i++)
    {
      pointer_hand_type (user, SIZES[i]);
      pointer_hand_key (user, i + 1 < G_N_ELEMENTS (SIZES) ? "Tab" : "Return");
    }
  assert_size (get_room (user, 1), 20 * FT, 17 * FT);
  g_assert_cmpuint (rc_room_get_n_walls (get_room (user, 1)), ==, 10);
  g_test_message ("a bay-fronted L by %u keys", user->n_keys);
  g_assert_cmpuint (user->n_keys, <, 40);
  wait_for_plan (user);
}

static void
set_up_demo (User *user, gconstpointer data)
{
  desk_fixture_open (&user->desk, TRUE);
  desk_fixture_paint (GTK_WIDGET (user->desk.window));
}

static GtkWidget *
find_row (User *user, const char *list, const char *text)
{
  GtkWidget *label = pointer_hand_find_label (pointer_hand_find (GTK_WIDGET (user->desk.window), list), text);
  g_assert_nonnull (label);
  return label;
}

static const RcPiece *
get_pointed (User *user, guint i)
{
  const GArray *pointed = rc_document_get_pointed (pointer_hand_get_document (user));

  g_assert_cmpuint (i, <, pointed->len);
  return rc_plan_find_piece (rc_document_get_outcome (pointer_hand_get_document (user))->plan,
                             g_array_index (pointed, guint, i));
}

/* A row under the pointer lights its pieces on the floor and the rolls; a piece chosen there is chosen in every list.
 */
static void
test_lists_and_floor (User *user, gconstpointer data)
{
  if (pointer_hand_is_missing ())
    return;
  const GArray *pointed = rc_document_get_pointed (pointer_hand_get_document (user));
  pointer_hand_point_widget (find_row (user, "things_list", "Dining room"));
  g_assert_cmpuint (pointed->len, ==, 2);
  g_assert_cmpstr (get_pointed (user, 1)->room, ==, "dining");
  pointer_hand_point_widget (find_row (user, "pieces_list", "Drop"));
  g_assert_cmpuint (pointed->len, ==, 1);
  g_assert_cmpint (get_pointed (user, 0)->kind, ==, RC_PIECE_DROP);
  pointer_hand_click_widget (user, pointer_hand_find_label (GTK_WIDGET (user->desk.window), "Quotation"));
  pointer_hand_point_widget (find_row (user, "lines_list", "Brackenholm Loop"));
  g_assert_cmpuint (pointed->len, ==, 1);
  g_assert_cmpstr (get_pointed (user, 0)->room, ==, "garden");
  pointer_hand_click (user, 2 * FT, 15 * FT);
  g_assert_cmpstr (get_pointed (user, 0)->room, ==, "hall");
  GtkListView *lines
      = GTK_LIST_VIEW (pointer_hand_find (pointer_hand_find (GTK_WIDGET (user->desk.window), "lines_list"), "view"));
  g_autofree char *title = NULL;
  g_object_get (gtk_single_selection_get_selected_item (GTK_SINGLE_SELECTION (gtk_list_view_get_model (lines))),
                "title", &title, NULL);
  g_assert_cmpstr (title, ==, "Fennel Twist, oat");
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add ("/pointer/house", User, NULL, set_up, test_house_by_pointer, tear_down);
  g_test_add ("/pointer/press-without-an-end", User, NULL, set_up, test_press_without_an_end, tear_down);
  g_test_add ("/pointer/rooms-by-keyboard", User, NULL, set_up, test_rooms_by_keyboard, tear_down);
  g_test_add ("/pointer/lists-and-floor", User, NULL, set_up_demo, test_lists_and_floor, tear_down);
  return g_test_run ();
}
