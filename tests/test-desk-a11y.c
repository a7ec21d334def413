/* What an assistive tool is told of every screen, and where Tab goes: roles, names, states, the focus. The rules are
 * those of WAI-ARIA 1.2 (w3.org/TR/wai-aria-1.2): whatever takes the focus has a role and a name (section 5.2.8), a
 * field with a fault says that it is invalid and why. */
#include "action-list.h"
#include "compare-window.h"
#include "desk-fixture.h"
#include "item-list.h"
#include "price-window.h"
#include "roll-view.h"
#include "shape-window.h"

#define MAX_STOPS 400

/* Every type of widget that takes the focus on our screens, with its role. */
static GtkAccessibleRole
get_wanted_role (GtkWidget *widget)
{
  const struct
  {
    GType             type;
    GtkAccessibleRole role;
  } ROLES[] = {
    { GTK_TYPE_SEARCH_ENTRY, GTK_ACCESSIBLE_ROLE_SEARCH_BOX },
    { GTK_TYPE_SPIN_BUTTON, GTK_ACCESSIBLE_ROLE_SPIN_BUTTON },
    { GTK_TYPE_DROP_DOWN, GTK_ACCESSIBLE_ROLE_COMBO_BOX },
    { GTK_TYPE_ENTRY, GTK_ACCESSIBLE_ROLE_TEXT_BOX },
    { GTK_TYPE_EDITABLE_LABEL, GTK_ACCESSIBLE_ROLE_TEXT_BOX },
    { GTK_TYPE_TEXT_VIEW, GTK_ACCESSIBLE_ROLE_TEXT_BOX },
    { GTK_TYPE_CHECK_BUTTON, GTK_ACCESSIBLE_ROLE_CHECKBOX },
    { GTK_TYPE_BUTTON, GTK_ACCESSIBLE_ROLE_BUTTON },
    { GTK_TYPE_MENU_BUTTON, GTK_ACCESSIBLE_ROLE_BUTTON },
    { GTK_TYPE_LIST_VIEW, GTK_ACCESSIBLE_ROLE_LIST },
    { GTK_TYPE_COLUMN_VIEW, GTK_ACCESSIBLE_ROLE_TABLE },
    { GTK_TYPE_LIST_BOX, GTK_ACCESSIBLE_ROLE_LIST },
    { GTK_TYPE_LIST_BOX_ROW, GTK_ACCESSIBLE_ROLE_LIST_ITEM },
    { RC_TYPE_FLOOR_VIEW, GTK_ACCESSIBLE_ROLE_IMG },
    { RC_TYPE_ROLL_VIEW, GTK_ACCESSIBLE_ROLE_IMG },
  };

  for (guint i = 0; i < G_N_ELEMENTS (ROLES); i++)
    if (g_type_is_a (G_OBJECT_TYPE (widget), ROLES[i].type))
      return ROLES[i].role;
  return (GtkAccessibleRole)-1;
}

/* The widget that tools see for one that has the focus: of an entry the entry, of a drop-down's button the drop-down.
 */
static GtkWidget *
find_told (GtkWidget *widget)
{
  static GType (*const OWNERS[]) (void)
      = { gtk_spin_button_get_type,    gtk_search_entry_get_type, gtk_entry_get_type,
          gtk_editable_label_get_type, gtk_drop_down_get_type,    gtk_menu_button_get_type };

  for (guint i = 0; i < G_N_ELEMENTS (OWNERS); i++)
    {
      GtkWidget *owner = gtk_widget_get_ancestor (widget, OWNERS[i]());
      if (owner)
        return owner;
    }
  return widget;
}

static gboolean
has_text (GtkWidget *widget)
{
  if (GTK_IS_LABEL (widget) && *gtk_label_get_text (GTK_LABEL (widget)) != '\0')
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child; child = gtk_widget_get_next_sibling (child))
    if (has_text (child))
      return TRUE;
  return FALSE;
}

/* By a label of its own or another's, or, of what is named by its content, by its text. */
static gboolean
has_name (GtkWidget *widget)
{
  GtkAccessible *accessible = GTK_ACCESSIBLE (widget);
  gboolean       is_content = GTK_IS_BUTTON (widget) || GTK_IS_MENU_BUTTON (widget) || GTK_IS_CHECK_BUTTON (widget)
                        || GTK_IS_LIST_BOX_ROW (widget);

  return gtk_test_accessible_has_property (accessible, GTK_ACCESSIBLE_PROPERTY_LABEL)
         || gtk_test_accessible_has_relation (accessible, GTK_ACCESSIBLE_RELATION_LABELLED_BY)
         || (is_content && has_text (widget));
}

/* "RcLengthEntry seam_entry in RcAreaPanel": to be found again. */
static char *
describe (GtkWidget *widget)
{
  GString *text = g_string_new (G_OBJECT_TYPE_NAME (widget));

  for (GtkWidget *at = widget; at; at = gtk_widget_get_parent (at))
    {
      const char *id = gtk_buildable_get_buildable_id (GTK_BUILDABLE (at));
      if (at != widget && g_str_has_prefix (G_OBJECT_TYPE_NAME (at), "Rc"))
        g_string_append_printf (text, " in %s", G_OBJECT_TYPE_NAME (at));
      if (id && !g_str_has_prefix (id, "___"))
        g_string_append_printf (text, " %s", id);
    }
  return g_string_free (text, FALSE);
}

static guint n_faults;

static void
tell_fault (const char *screen, GtkWidget *widget, const char *fault)
{
  g_autofree char *what = describe (widget);
  g_printerr ("# %s: %s: %s\n", screen, what, fault);
  n_faults++;
}

/* Holds others, and is passed over by Tab for them. */
static gboolean
is_frame (GtkWidget *widget)
{
  return GTK_IS_SCROLLED_WINDOW (widget) || GTK_IS_PANED (widget);
}

static gboolean
is_row (GtkWidget *widget)
{
  return gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (widget)) == GTK_ACCESSIBLE_ROLE_LIST_ITEM
         || gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (widget)) == GTK_ACCESSIBLE_ROLE_ROW;
}

static void
check_told (const char *screen, GtkWidget *widget)
{
  GtkWidget        *told = find_told (widget);
  GtkAccessibleRole role = gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (told));
  GtkAccessibleRole wanted = get_wanted_role (told);

  if (is_row (told) || is_frame (told))
    return;
  if (wanted == (GtkAccessibleRole)-1)
    tell_fault (screen, told, "takes the focus, and no role is known for it");
  else if (role != wanted && !(GTK_IS_CHECK_BUTTON (told) && role == GTK_ACCESSIBLE_ROLE_RADIO)
           && !(GTK_IS_STACK_SWITCHER (gtk_widget_get_parent (told)) && role == GTK_ACCESSIBLE_ROLE_TAB))
    tell_fault (screen, told, "has another role than its type should");
  if (!has_name (told))
    tell_fault (screen, told, "has no name");
  if (GTK_IS_CHECK_BUTTON (told)
      && !gtk_test_accessible_has_state (GTK_ACCESSIBLE (told), GTK_ACCESSIBLE_STATE_CHECKED))
    tell_fault (screen, told, "does not say whether it is checked");
}

/* A place where the keys go. */
static gboolean
is_stop (GtkWidget *widget)
{
  return gtk_widget_get_focusable (widget) && gtk_widget_get_mapped (widget) && gtk_widget_is_sensitive (widget)
         && gtk_widget_get_can_focus (widget);
}

/* All that can take the focus, in the order of the tree; of a list only itself: the arrows go through its rows. */
static void
collect (GtkWidget *widget, GPtrArray *stops)
{
  if (!gtk_widget_get_mapped (widget) || GTK_IS_POPOVER (widget))
    return;
  if (is_stop (widget) && !is_row (widget))
    g_ptr_array_add (stops, widget);
  if (GTK_IS_LIST_VIEW (widget) || GTK_IS_COLUMN_VIEW (widget) || GTK_IS_LIST_BOX (widget))
    return;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child; child = gtk_widget_get_next_sibling (child))
    collect (child, stops);
}

static gboolean
holds (const GPtrArray *stops, GtkWidget *widget)
{
  for (guint i = 0; i < stops->len; i++)
    {
      GtkWidget *stop = g_ptr_array_index (stops, i);
      if (stop == widget || gtk_widget_is_ancestor (stop, widget) || find_told (stop) == find_told (widget))
        return TRUE;
    }
  return FALSE;
}

/* Where Tab goes from the first place on, until it is there again. (transfer full) */
static GPtrArray *
walk (GtkWindow *window)
{
  GPtrArray *visited = g_ptr_array_new ();

  gtk_window_set_focus (window, NULL);
  for (guint i = 0; i < MAX_STOPS; i++)
    {
      gtk_widget_child_focus (GTK_WIDGET (window), GTK_DIR_TAB_FORWARD);
      GtkWidget *focus = gtk_window_get_focus (window);
      if (focus == NULL || g_ptr_array_find (visited, focus, NULL))
        break;
      g_ptr_array_add (visited, focus);
    }
  return visited;
}

/* In one panel the stops go down, or along a line. */
static void
check_order (const char *screen, GtkWidget *a, GtkWidget *b)
{
  GtkWidget      *panel = gtk_widget_get_ancestor (a, RC_TYPE_PANEL);
  graphene_rect_t one, two;

  if (panel == NULL || !gtk_widget_is_ancestor (b, panel) || !gtk_widget_compute_bounds (a, panel, &one)
      || !gtk_widget_compute_bounds (b, panel, &two))
    return;
  float    middle_one = one.origin.y + one.size.height / 2, middle_two = two.origin.y + two.size.height / 2;
  gboolean is_below = middle_two > middle_one + one.size.height / 4;
  gboolean is_along = two.origin.y < one.origin.y + one.size.height && one.origin.y < two.origin.y + two.size.height
                      && two.origin.x >= one.origin.x;
  if (!is_below && !is_along)
    tell_fault (screen, b, "Tab comes to it from what lies below or behind it");
}

static void
check_screen (const char *screen, GtkWindow *window)
{
  g_autoptr (GPtrArray) stops = g_ptr_array_new ();

  desk_fixture_settle ();
  desk_fixture_paint (GTK_WIDGET (window));
  collect (GTK_WIDGET (window), stops);
  g_autoptr (GPtrArray) visited = walk (window);
  for (guint i = 0; i < stops->len; i++)
    {
      GtkWidget *stop = g_ptr_array_index (stops, i);
      check_told (screen, stop);
      if (!is_frame (stop) && !holds (visited, stop))
        tell_fault (screen, stop, "Tab does not come to it");
    }
  for (guint i = 0; i < visited->len; i++)
    check_told (screen, g_ptr_array_index (visited, i));
  for (guint i = 1; i < visited->len; i++)
    if (is_row (g_ptr_array_index (visited, i)) && is_row (g_ptr_array_index (visited, i - 1))
        && gtk_widget_get_parent (g_ptr_array_index (visited, i))
               == gtk_widget_get_parent (g_ptr_array_index (visited, i - 1)))
      {
        tell_fault (screen, g_ptr_array_index (visited, i), "Tab goes through the rows one by one");
        break;
      }
  for (guint i = 0; i < visited->len; i++)
    if (GTK_IS_SCROLLED_WINDOW (g_ptr_array_index (visited, i)) && !has_name (g_ptr_array_index (visited, i)))
      tell_fault (screen, g_ptr_array_index (visited, i), "takes the focus without a name");
  for (guint i = 1; i < visited->len; i++)
    check_order (screen, g_ptr_array_index (visited, i - 1), g_ptr_array_index (visited, i));
  g_test_message ("%s: %u places for the focus, Tab comes to %u", screen, stops->len, visited->len);
  g_assert_cmpuint (visited->len, >, 0);
}

static void
set_up (DeskFixture *fixture, gconstpointer data)
{
  n_faults = 0;
  desk_fixture_open (fixture, TRUE);
}

static void
tear_down (DeskFixture *fixture, gconstpointer data)
{
  desk_fixture_close (fixture);
  g_assert_cmpuint (n_faults, ==, 0);
}

static RcDocument *
get_document (DeskFixture *fixture)
{
  return rc_window_get_document (fixture->window);
}

static void
choose (DeskFixture *fixture, RcThing thing, const char *id)
{
  rc_document_choose (get_document (fixture), rc_choice_of_thing (thing, id));
  desk_fixture_settle ();
}

static void
act (DeskFixture *fixture, const char *action)
{
  g_autofree char *name = NULL;
  g_autoptr (GVariant) target = NULL;

  g_assert_true (g_action_parse_detailed_name (action, &name, &target, NULL));
  g_assert_true (gtk_widget_activate_action_variant (GTK_WIDGET (fixture->window), name, target));
  desk_fixture_settle ();
}

/* The bench with each panel at its side. */
static void
test_bench (DeskFixture *fixture, gconstpointer data)
{
  static const struct
  {
    const char *screen;
    RcThing     thing;
    const char *id;
  } PANELS[] = { { "job panel", RC_THING_JOB, NULL },
                 { "area panel", RC_THING_AREA, "ground" },
                 { "room panel", RC_THING_ROOM, "dining" },
                 { "stair panel", RC_THING_STAIR, "attic-stair" } };

  for (guint i = 0; i < G_N_ELEMENTS (PANELS); i++)
    {
      choose (fixture, PANELS[i].thing, PANELS[i].id);
      check_screen (PANELS[i].screen, GTK_WINDOW (fixture->window));
    }
}

static void
test_jobs (DeskFixture *fixture, gconstpointer data)
{
  act (fixture, "win.show-jobs");
  check_screen ("jobs", GTK_WINDOW (fixture->window));
}

/* The newest window that is not the bench. */
static GtkWindow *
find_other_window (DeskFixture *fixture)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (windows, i);
      if (window != GTK_WINDOW (fixture->window) && gtk_widget_get_visible (GTK_WIDGET (window)))
        return window;
    }
  return NULL;
}

/* Each window that an action opens; closed again, the keys go where they went before. */
static void
test_window (DeskFixture *fixture, gconstpointer data)
{
  const char *action = data;

  choose (fixture, RC_THING_ROOM, "dining");
  act (fixture, "win.focus('walls')");
  GtkWidget *before = gtk_window_get_focus (GTK_WINDOW (fixture->window));
  act (fixture, action);
  GtkWindow *window = find_other_window (fixture);
  g_assert_nonnull (window);
  check_screen (action, window);
  gtk_window_destroy (window);
  desk_fixture_settle ();
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (fixture->window)) == before);
}

/* The keys go somewhere that is seen. */
static void
assert_focus (DeskFixture *fixture)
{
  desk_fixture_paint (GTK_WIDGET (fixture->window));
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (fixture->window));

  g_assert_nonnull (focus);
  g_assert_true (gtk_widget_get_mapped (focus));
  g_assert_true (gtk_widget_get_root (focus) == GTK_ROOT (fixture->window));
}

/* What had the focus is gone: the room is taken away, a new one undone, a card of a door taken out. */
static void
test_focus_is_not_lost (DeskFixture *fixture, gconstpointer data)
{
  static const char *const GOING[] = { "win.remove-chosen", "win.undo", "win.new-room", "win.undo",
                                       "win.new-stair",     "win.undo", "win.new-area", "win.undo" };

  choose (fixture, RC_THING_ROOM, "study-closet");
  act (fixture, "win.focus('walls')");
  assert_focus (fixture);
  for (guint i = 0; i < G_N_ELEMENTS (GOING); i++)
    {
      act (fixture, GOING[i]);
      assert_focus (fixture);
    }
  choose (fixture, RC_THING_ROOM, "dining");
  gtk_widget_activate_action (GTK_WIDGET (rc_bench_get_wall_table (rc_window_get_bench (fixture->window))),
                              "room.add-opening", "i", RC_OPENING_DOOR);
  desk_fixture_settle ();
  assert_focus (fixture);
  act (fixture, "win.undo");
  assert_focus (fixture);
}

/* The jobs at the side and the list of actions are closed again. */
static void
test_focus_comes_back (DeskFixture *fixture, gconstpointer data)
{
  act (fixture, "win.focus('floor')");
  act (fixture, "win.find-job");
  assert_focus (fixture);
  act (fixture, "win.show-jobs");
  assert_focus (fixture);
  act (fixture, "win.find-action");
  assert_focus (fixture);
  GtkWidget *popover = gtk_widget_get_ancestor (gtk_window_get_focus (GTK_WINDOW (fixture->window)), GTK_TYPE_POPOVER);
  g_assert_nonnull (popover);
  gtk_popover_popdown (GTK_POPOVER (popover));
  desk_fixture_settle ();
  assert_focus (fixture);
}

/* Text that cannot be read says that it is wrong, and why. */
static void
test_faults_are_told (DeskFixture *fixture, gconstpointer data)
{
  choose (fixture, RC_THING_ROOM, "dining");
  GtkWidget *table = GTK_WIDGET (rc_bench_get_wall_table (rc_window_get_bench (fixture->window)));
  GtkWidget *length = desk_fixture_find (table, RC_TYPE_LENGTH_ENTRY, NULL);
  GtkWidget *way = gtk_widget_get_prev_sibling (length);
  GtkWidget *fields[] = { length, way };

  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    {
      g_autofree char *good = g_strdup (gtk_editable_get_text (GTK_EDITABLE (fields[i])));
      gtk_editable_set_text (GTK_EDITABLE (fields[i]), "12 apples");
      gtk_test_accessible_assert_state (GTK_ACCESSIBLE (fields[i]), GTK_ACCESSIBLE_STATE_INVALID,
                                        GTK_ACCESSIBLE_INVALID_TRUE);
      g_assert_true (
          gtk_test_accessible_has_property (GTK_ACCESSIBLE (fields[i]), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION));
      gtk_editable_set_text (GTK_EDITABLE (fields[i]), good);
      gtk_test_accessible_assert_state (GTK_ACCESSIBLE (fields[i]), GTK_ACCESSIBLE_STATE_INVALID,
                                        GTK_ACCESSIBLE_INVALID_FALSE);
    }
}

int
main (int argc, char **argv)
{
  static const char *const WINDOWS[]
      = { "win.new-shape",  "win.compare",          "win.prices", "win.rolls",
          "win.quotes",     "win.orders",           "win.glance", "win.sheet('quotation')",
          "win.delete-job", "win.show-help-overlay" };

  gtk_test_init (&argc, &argv, NULL);
#define TEST(path, function) g_test_add (path, DeskFixture, NULL, set_up, function, tear_down)
  TEST ("/a11y/bench", test_bench);
  TEST ("/a11y/jobs", test_jobs);
  TEST ("/a11y/focus-is-not-lost", test_focus_is_not_lost);
  TEST ("/a11y/focus-comes-back", test_focus_comes_back);
  TEST ("/a11y/faults-are-told", test_faults_are_told);
  for (guint i = 0; i < G_N_ELEMENTS (WINDOWS); i++)
    {
      g_autofree char *path = g_strdup_printf ("/a11y/window/%s", WINDOWS[i]);
      g_test_add (path, DeskFixture, WINDOWS[i], set_up, test_window, tear_down);
    }
  return g_test_run ();
}
