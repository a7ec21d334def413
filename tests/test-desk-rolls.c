/* Rolls in stock as the office works with them, on a virtual display: received, kept for the job, cut, corrected. */
#include "cut-proposal.h"
#include "desk-fixture.h"
#include "length-rows.h"
#include "roll-form.h"
#include "roll-window.h"
#include "rowcut-error.h"
#include "stock-ribbon.h"

#define FT(n) ((n)*RC_TICKS_PER_FOOT)

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

static void
put_roll (DeskFixture *fixture, const char *id, const char *goods, RcLength length, const char *place)
{
  g_autoptr (RcRoll) roll = rc_roll_new (id, goods, length);
  g_autoptr (GError) error = NULL;

  roll->lot = g_strdup ("F-9");
  roll->place = g_strdup (place);
  g_autofree char *ticket = rc_store_receive_roll (fixture->store, roll, NULL, "2026-03-02T08:00:00Z", &error);
  g_assert_no_error (error);
  g_assert_cmpstr (ticket, ==, id);
}

static RcRollWindow *
open_window (DeskFixture *fixture)
{
  GListModel *windows = gtk_window_get_toplevels ();

  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (fixture->window), "win.rolls", NULL));
  desk_fixture_settle ();
  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (windows, i);
      if (RC_IS_ROLL_WINDOW (window))
        return RC_ROLL_WINDOW (window);
    }
  g_assert_not_reached ();
}

/* Opens the form for `doing` on the roll. */
static RcRollForm *
open_form (RcRollWindow *window, const char *roll, const char *doing)
{
  if (roll != NULL)
    g_assert_true (rc_roll_window_choose (window, roll));
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), doing, NULL));
  desk_fixture_settle ();
  return RC_ROLL_FORM (desk_fixture_find (GTK_WIDGET (window), RC_TYPE_ROLL_FORM, NULL));
}

static RcLength
get_length (DeskFixture *fixture, const char *id)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) rolls = rc_store_load_rolls (fixture->store, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < rolls->len; i++)
    {
      const RcRoll *roll = g_ptr_array_index (rolls, i);
      if (g_str_equal (roll->id, id))
        return roll->length;
    }
  return -1;
}

/* Found by the beginnings of any of its words, as they are typed. */
static void
test_found (DeskFixture *fixture, gconstpointer data)
{
  static const struct
  {
    const char *words;
    guint       n;
  } cases[]
      = { { "", 2 }, { "fennel", 1 }, { "rack", 2 }, { "rack 4", 1 }, { "R-92", 1 }, { "f-9 quill", 1 }, { "oak", 0 } };

  put_roll (fixture, "R-91", "fennel-twist-oat", FT (30), "rack 3");
  put_roll (fixture, "R-92", "quillstone-saxony-slate", FT (12), "rack 4");
  RcRollWindow *window = open_window (fixture);
  GtkWidget    *search = desk_fixture_find (GTK_WIDGET (window), GTK_TYPE_SEARCH_ENTRY, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      gtk_editable_set_text (GTK_EDITABLE (search), cases[i].words);
      desk_fixture_settle ();
      g_assert_cmpuint (rc_roll_window_get_n_rolls (window), ==, cases[i].n);
    }
}

static void
test_received_by_typing (DeskFixture *fixture, gconstpointer data)
{
  RcRollWindow *window = open_window (fixture);

  g_assert_cmpuint (rc_roll_window_get_n_rolls (window), ==, 0);
  RcRollForm *form = open_form (window, NULL, "roll.receive");
  GtkWidget  *length = desk_fixture_find (GTK_WIDGET (form), RC_TYPE_LENGTH_ENTRY, NULL);
  /* Without a length nothing comes in, and it is said. */
  g_assert_false (rc_roll_form_do (form));
  g_assert_cmpstr (rc_roll_window_get_told (window), !=, "");
  gtk_widget_grab_focus (length);
  desk_fixture_type (GTK_WINDOW (window), "40' 6\"");
  desk_fixture_press_return (GTK_WINDOW (window));
  g_assert_cmpuint (rc_roll_window_get_n_rolls (window), ==, 1);
  g_assert_cmpint (rc_roll_window_get_chosen (window)->roll->length, ==, FT (40) + 6 * RC_TICKS_PER_INCH);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (length), GTK_ACCESSIBLE_PROPERTY_LABEL, "Length");
}

/* What another program promises shows itself, and what it leaves is all that can be kept. */
static void
test_refused_with_a_reason (DeskFixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  put_roll (fixture, "R-91", "fennel-twist-oat", FT (30), "rack 3");
  RcRollWindow    *window = open_window (fixture);
  g_autofree char *path = g_build_filename (fixture->folder, "store.db", NULL);
  g_autoptr (RcStore) other = rc_store_open (path, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (rc_store_reserve_roll (other, "R-91", "J-8", FT (20), "2026-03-02T08:00:00Z", &error));
  for (gint64 until = g_get_monotonic_time () + 60 * G_USEC_PER_SEC;
       rc_roll_window_get_chosen (window)->kept == 0 && g_get_monotonic_time () < until;)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpint (rc_roll_window_get_chosen (window)->kept, ==, FT (20));

  RcRollForm *form = open_form (window, "R-91", "roll.reserve");
  desk_fixture_type (GTK_WINDOW (window), "11'");
  g_assert_false (rc_roll_form_do (form));
  g_assert_nonnull (strstr (rc_roll_window_get_told (window), "20' 0\""));
  gtk_widget_grab_focus (desk_fixture_find (GTK_WIDGET (form), RC_TYPE_LENGTH_ENTRY, NULL));
  desk_fixture_type (GTK_WINDOW (window), "10'");
  g_assert_true (rc_roll_form_do (form));
  desk_fixture_settle ();
  g_assert_cmpint (rc_roll_window_get_chosen (window)->kept_here, ==, FT (10));
  g_assert_cmpuint (rc_roll_window_get_chosen (window)->stretches->len, ==, 2); /* nothing is free */
}

/* The roll kept for the job is one that its plan may use. */
static void
test_kept_roll_is_planned_with (DeskFixture *fixture, gconstpointer data)
{
  put_roll (fixture, "R-91", "fennel-twist-oat", FT (60), "rack 3");
  RcRollWindow *window = open_window (fixture);
  RcRollForm   *form = open_form (window, "R-91", "roll.reserve");
  desk_fixture_type (GTK_WINDOW (window), "60'");
  g_assert_true (rc_roll_form_do (form));
  desk_fixture_settle ();
  const RcJob *job = rc_document_get_job (rc_window_get_document (fixture->window));
  gboolean     has_roll = FALSE;
  for (guint i = 0; i < job->rolls->len; i++)
    has_roll = has_roll || g_str_equal (((const RcRoll *)g_ptr_array_index (job->rolls, i))->id, "R-91");
  g_assert_true (has_roll);

  /* And what the plan takes from it is what is proposed to be cut. */
  RcOutcome *outcome = rc_document_get_outcome (rc_window_get_document (fixture->window));
  g_autoptr (RcCutProposal) proposal = rc_cut_proposal_new (outcome->plan, rc_roll_window_get_chosen (window)->roll);
  g_assert_cmpint (proposal->length, >, 0);
  form = open_form (window, "R-91", "roll.cut");
  RcLength before = get_length (fixture, "R-91");
  g_assert_true (rc_roll_form_do (form));
  g_assert_cmpint (get_length (fixture, "R-91"), ==, before - proposal->length);
  g_autoptr (GPtrArray) cut = rc_store_find_cut_pieces (fixture->store, "demo", NULL);
  g_assert_cmpuint (cut->len, ==, proposal->pieces->len);
}

/* Cut by hand: the balance is what was measured, the remnant has a ticket of its own, the history tells. */
static void
test_cut_and_remnant (DeskFixture *fixture, gconstpointer data)
{
  put_roll (fixture, "R-91", "quillstone-saxony-slate", FT (30), "rack 3");
  RcRollWindow *window = open_window (fixture);
  RcRollForm   *form = open_form (window, "R-91", "roll.cut");
  GtkWidget    *remnants = NULL;
  desk_fixture_type (GTK_WINDOW (window), "12'");
  for (GtkWidget *child = gtk_widget_get_last_child (desk_fixture_find (GTK_WIDGET (form), GTK_TYPE_GRID, "grid"));
       child != NULL && remnants == NULL; child = gtk_widget_get_prev_sibling (child))
    remnants = desk_fixture_find (child, RC_TYPE_LENGTH_ROWS, NULL);
  rc_length_rows_clear (RC_LENGTH_ROWS (remnants), RC_LENGTH_UNIT_FOOT_INCH, &RC_LENGTH_STYLE_IMPERIAL);
  rc_length_rows_add (RC_LENGTH_ROWS (remnants), NULL, FT (4), FT (9));
  g_assert_true (rc_roll_form_do (form));
  desk_fixture_settle ();
  g_assert_cmpint (get_length (fixture, "R-91"), ==, FT (18));
  g_assert_cmpuint (rc_roll_window_get_n_rolls (window), ==, 2);
  g_assert_nonnull (strstr (rc_roll_window_get_told (window), "R-"));
  g_autoptr (GPtrArray) moves = rc_store_find_moves (fixture->store, "R-91", NULL);
  g_autoptr (GArray) stretches = rc_stock_line_list_stretches (rc_roll_window_get_chosen (window), moves);
  g_assert_cmpint (g_array_index (stretches, RcStretch, 0).kind, ==, RC_STRETCH_GONE);
  g_assert_cmpint (g_array_index (stretches, RcStretch, 0).length, ==, FT (12));
}

static void
test_corrected (DeskFixture *fixture, gconstpointer data)
{
  put_roll (fixture, "R-91", "fennel-twist-oat", FT (30), "rack 3");
  RcRollWindow *window = open_window (fixture);
  RcRollForm   *form = open_form (window, "R-91", "roll.correct");
  RcLengthRows *damage = RC_LENGTH_ROWS (desk_fixture_find (GTK_WIDGET (form), RC_TYPE_LENGTH_ROWS, NULL));

  /* Beyond the roll's end: refused, and the roll stays as it was. */
  rc_length_rows_add (damage, NULL, FT (29), FT (31));
  g_assert_false (rc_roll_form_do (form));
  g_assert_nonnull (strstr (rc_roll_window_get_told (window), "31' 0\""));
  form = open_form (window, "R-91", "roll.correct");
  rc_length_rows_add (damage, NULL, FT (3), FT (4));
  gtk_widget_grab_focus (desk_fixture_find (GTK_WIDGET (form), RC_TYPE_LENGTH_ENTRY, NULL));
  desk_fixture_type (GTK_WINDOW (window), "29'");
  g_assert_true (rc_roll_form_do (form));
  desk_fixture_settle ();
  const RcStockLine *line = rc_roll_window_get_chosen (window);
  g_assert_cmpint (line->roll->length, ==, FT (29));
  g_assert_cmpuint (line->roll->flaws->len, ==, 1);
  GtkWidget *ribbon = desk_fixture_find (GTK_WIDGET (window), RC_TYPE_STOCK_RIBBON, NULL);
  gtk_test_accessible_assert_role (GTK_ACCESSIBLE (ribbon), GTK_ACCESSIBLE_ROLE_IMG);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (ribbon), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "Roll R-91: 29' 0\" left, 0\" promised, damaged 3' 0\" to 4' 0\"");
}

int
main (int argc, char **argv)
{
  static const struct
  {
    const char *path;
    void (*test) (DeskFixture *, gconstpointer);
  } TESTS[] = { { "rolls are found by their words", test_found },
                { "a roll is received by typing", test_received_by_typing },
                { "what is promised to others is refused with a reason", test_refused_with_a_reason },
                { "a roll kept for the job is planned with and cut as planned", test_kept_roll_is_planned_with },
                { "a cut leaves balance and remnant", test_cut_and_remnant },
                { "length and damage are corrected", test_corrected } };

  gtk_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (TESTS); i++)
    {
      g_autofree char *path = g_strdup_printf ("/desk-rolls/%s", TESTS[i].path);
      g_test_add (path, DeskFixture, NULL, set_up, TESTS[i].test, tear_down);
    }
  return g_test_run ();
}
