/* The cards of a panel as a person uses them, on a virtual display: one for each turn of a stair, opening, cut-out;
 * and the rows of rules. */
#include "desk-fixture.h"
#include "turn-card.h"

static void
set_up (DeskFixture *fixture, gconstpointer data)
{
  desk_fixture_open (fixture, TRUE);
}

static void
tear_down (DeskFixture *fixture, gconstpointer data)
{
  desk_fixture_close (fixture);
}

static GtkWidget *
find (DeskFixture *fixture, GType type, const char *name)
{
  GtkWidget *found = desk_fixture_find (GTK_WIDGET (fixture->window), type, name);

  g_assert_nonnull (found);
  return found;
}

static void
choose (DeskFixture *fixture, RcThing thing, const char *id)
{
  rc_document_choose (rc_window_get_document (fixture->window), rc_choice_of_thing (thing, id));
  desk_fixture_settle ();
}

static void
act (DeskFixture *fixture, const char *action)
{
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (fixture->window), action, NULL));
  desk_fixture_settle ();
}

/* --- turns --- */

static const RcStair *
get_stair (DeskFixture *fixture)
{
  return rc_measure_find_stair (rc_document_get_measure (rc_window_get_document (fixture->window)), "attic-stair");
}

static GtkWidget *
get_turns (DeskFixture *fixture)
{
  return find (fixture, GTK_TYPE_BOX, "turns_box");
}

static guint
count_cards (DeskFixture *fixture)
{
  guint n = 0;

  for (GtkWidget *card = gtk_widget_get_first_child (get_turns (fixture)); card;
       card = gtk_widget_get_next_sibling (card))
    n++;
  return n;
}

/* The buildable id of what has the focus, or has a part of it that has. */
static void
assert_focus (DeskFixture *fixture, GtkWidget *wanted)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (fixture->window));

  g_assert_nonnull (focus);
  g_assert_true (focus == wanted || gtk_widget_is_ancestor (focus, wanted));
}

static void
click (GtkWidget *button)
{
  g_assert_true (gtk_widget_grab_focus (button));
  g_signal_emit_by_name (button, "clicked");
  desk_fixture_settle ();
}

/* What is typed after a turn is added goes into it; each is a step, and the cards follow undo and redo. */
static void
test_turn_is_added (DeskFixture *fixture, gconstpointer data)
{
  choose (fixture, RC_THING_STAIR, "attic-stair");
  g_assert_cmpuint (count_cards (fixture), ==, 1);
  click (find (fixture, GTK_TYPE_BUTTON, "add_turn_button"));
  g_assert_cmpuint (get_stair (fixture)->turns->len, ==, 2);
  g_assert_cmpuint (rc_stair_get_turn (get_stair (fixture), 1)->after, ==, 1);
  g_assert_cmpuint (count_cards (fixture), ==, 2);
  GtkWidget *card = gtk_widget_get_last_child (get_turns (fixture));
  assert_focus (fixture, desk_fixture_find (card, GTK_TYPE_DROP_DOWN, "kind_drop"));
  g_assert_false (gtk_widget_get_visible (desk_fixture_find (card, GTK_TYPE_SPIN_BUTTON, "winders_spin")));

  gtk_widget_grab_focus (desk_fixture_find (card, RC_TYPE_LENGTH_ENTRY, "width_entry"));
  desk_fixture_type (GTK_WINDOW (fixture->window), "6'");
  g_assert_cmpint (rc_stair_get_turn (get_stair (fixture), 1)->width, ==, 72 * RC_TICKS_PER_INCH);
  desk_fixture_settle ();
  g_assert_null (rc_document_get_fault (rc_window_get_document (fixture->window)));
  act (fixture, "win.undo");
  g_assert_cmpint (rc_stair_get_turn (get_stair (fixture), 1)->width, ==, 33 * RC_TICKS_PER_INCH);
  act (fixture, "win.undo");
  g_assert_cmpuint (count_cards (fixture), ==, 1);
  act (fixture, "win.redo");
  g_assert_cmpuint (count_cards (fixture), ==, 2);
}

static GtkWidget *
find_remove_button (GtkWidget *card)
{
  GtkWidget *button = desk_fixture_find (card, GTK_TYPE_BUTTON, "Take the turn away");

  g_assert_nonnull (button);
  return button;
}

/* The flight above goes on from the one below; the focus stays on the card in its place, or goes to the button. */
static void
test_turn_is_taken_away (DeskFixture *fixture, gconstpointer data)
{
  choose (fixture, RC_THING_STAIR, "attic-stair");
  click (find (fixture, GTK_TYPE_BUTTON, "add_turn_button"));
  GtkWidget *first = gtk_widget_get_first_child (get_turns (fixture));
  click (find_remove_button (first));
  g_assert_cmpuint (get_stair (fixture)->turns->len, ==, 1);
  g_assert_cmpuint (rc_stair_get_turn (get_stair (fixture), 0)->kind, ==, RC_TURN_LANDING);
  g_assert_cmpuint (rc_stair_get_turn (get_stair (fixture), 0)->after, ==, 7);
  assert_focus (fixture, first);
  click (find_remove_button (first));
  g_assert_cmpuint (get_stair (fixture)->turns->len, ==, 0);
  g_assert_cmpuint (count_cards (fixture), ==, 0);
  assert_focus (fixture, find (fixture, GTK_TYPE_BUTTON, "add_turn_button"));
  act (fixture, "win.undo");
  act (fixture, "win.undo");
  g_assert_cmpuint (count_cards (fixture), ==, 2);
  g_assert_cmpuint (rc_stair_get_turn (get_stair (fixture), 0)->winders, ==, 3);
}

/* --- prices of rules --- */

static RcMoney
get_light_cost (DeskFixture *fixture)
{
  return rc_document_get_job (rc_window_get_document (fixture->window))->settings.rule_cost[RC_RULE_SEAM_ACROSS_LIGHT];
}

/* Letters typed into a price are one step; what does not read is marked, changes nothing and goes when it is left. */
static void
test_rule_prices (DeskFixture *fixture, gconstpointer data)
{
  choose (fixture, RC_THING_JOB, NULL);
  GtkWidget *light = find (fixture, GTK_TYPE_ENTRY, "Seam across the light");
  GtkWidget *traffic = find (fixture, GTK_TYPE_ENTRY, "Seam across the traffic");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (light)), ==, "60.00");

  gtk_widget_grab_focus (light);
  desk_fixture_type (GTK_WINDOW (fixture->window), "450");
  g_assert_cmpint (get_light_cost (fixture), ==, 45000);
  gtk_editable_set_text (GTK_EDITABLE (light), "-1");
  g_assert_true (gtk_widget_has_css_class (light, "error"));
  g_assert_cmpint (get_light_cost (fixture), ==, 45000);
  gtk_widget_grab_focus (traffic);
  desk_fixture_settle ();
  g_assert_false (gtk_widget_has_css_class (light, "error"));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (light)), ==, "450.00");
  act (fixture, "win.undo");
  g_assert_cmpint (get_light_cost (fixture), ==, 6000);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (light)), ==, "60.00");
}

/* --- another job --- */

static guint
assert_panels_of (GtkWidget *widget, RcDocument *document)
{
  RcDocument *own = RC_IS_PANEL (widget) ? rc_panel_get_document (RC_PANEL (widget)) : NULL;
  guint       n = own != NULL;

  if (own != NULL && own != document)
    g_error ("%s still edits the job that was open before", G_OBJECT_TYPE_NAME (widget));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child; child = gtk_widget_get_next_sibling (child))
    n += assert_panels_of (child, document);
  return n;
}

/* A job made from another has the same rooms by the same names: its cards are not those of the other. */
static void
test_cards_follow_the_job (DeskFixture *fixture, gconstpointer data)
{
  static const struct
  {
    RcThing     thing;
    const char *id;
  } THINGS[] = { { RC_THING_ROOM, "living" }, { RC_THING_STAIR, "attic-stair" } };

  for (guint i = 0; i < G_N_ELEMENTS (THINGS); i++)
    {
      choose (fixture, THINGS[i].thing, THINGS[i].id);
      act (fixture, "win.duplicate-job");
      choose (fixture, THINGS[i].thing, THINGS[i].id);
      g_assert_cmpuint (assert_panels_of (GTK_WIDGET (fixture->window), rc_window_get_document (fixture->window)), >,
                        4);
    }
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
#define ADD(path, function) g_test_add (path, DeskFixture, NULL, set_up, function, tear_down)
  ADD ("/cards/a turn is added", test_turn_is_added);
  ADD ("/cards/a turn is taken away", test_turn_is_taken_away);
  ADD ("/cards/rules have prices", test_rule_prices);
  ADD ("/cards/cards follow the job", test_cards_follow_the_job);
  return g_test_run ();
}
