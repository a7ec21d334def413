/* The window as a person uses it, on a virtual display. */
#include "action-list.h"
#include "area-panel.h"
#include "compare-window.h"
#include "desk-fixture.h"
#include "fold-box.h"
#include "item-list.h"
#include "palette.h"
#include "price-window.h"
#include "roll-view.h"
#include "sheet-window.h"
#include "stair-panel.h"

static RcBench *
get_bench (DeskFixture *fixture)
{
  return rc_window_get_bench (fixture->window);
}

static char *
dup_total (DeskFixture *fixture)
{
  return g_strdup (rc_figure_bar_get_text (rc_bench_get_figure_bar (get_bench (fixture)), RC_FIGURE_TOTAL));
}

static void
set_up (DeskFixture *fixture, gconstpointer data)
{
  desk_fixture_open (fixture, GPOINTER_TO_INT (data));
}

static void
tear_down (DeskFixture *fixture, gconstpointer data)
{
  desk_fixture_close (fixture);
}

static void
choose_room (DeskFixture *fixture, const char *id)
{
  rc_document_choose (rc_window_get_document (fixture->window), rc_choice_of_thing (RC_THING_ROOM, id));
  desk_fixture_settle ();
}

static void
act (DeskFixture *fixture, const char *action, const char *format, ...)
{
  GVariant *parameter = NULL;

  if (format)
    {
      va_list args;
      va_start (args, format);
      parameter = g_variant_new_va (format, NULL, &args);
      va_end (args);
    }
  g_assert_true (gtk_widget_activate_action_variant (GTK_WIDGET (fixture->window), action, parameter));
  desk_fixture_settle ();
}

static void
test_first_opening_offers_the_demo (DeskFixture *fixture, gconstpointer data)
{
  GtkWidget *button = desk_fixture_find (GTK_WIDGET (fixture->window), GTK_TYPE_BUTTON, "demo_button");

  g_assert_null (rc_window_get_document (fixture->window));
  g_assert_cmpuint (rc_job_list_get_n_jobs (rc_window_get_job_list (fixture->window)), ==, 0);
  g_assert_true (gtk_widget_get_mapped (button));
  desk_fixture_type (GTK_WINDOW (fixture->window), " "); /* into the search for jobs: no button is pressed by it */
  g_assert_null (rc_window_get_document (fixture->window));
  g_signal_emit_by_name (button, "clicked");
  desk_fixture_settle ();
  g_assert_nonnull (rc_window_get_document (fixture->window));
  g_assert_cmpuint (rc_job_list_get_n_jobs (rc_window_get_job_list (fixture->window)), ==, 1);
  g_autofree char *total = dup_total (fixture);
  g_assert_nonnull (strstr (total, "USD"));
}

/* Opens the demo job, makes the dining room 6 in wider by typing two walls, and sees plan and total follow. */
static void
test_typing_a_wall_changes_the_total (DeskFixture *fixture, gconstpointer data)
{
  GtkWindow       *window = GTK_WINDOW (fixture->window);
  g_autofree char *before = dup_total (fixture);

  choose_room (fixture, "dining");
  act (fixture, "win.focus", "s", "walls");
  desk_fixture_type (window, "12'6");
  /* The room is open now: the fault is said above and below, the last plan stays. */
  g_assert_nonnull (strstr (rc_bench_get_fault (get_bench (fixture)), "Dining room"));
  g_assert_true (rc_document_is_stale (rc_window_get_document (fixture->window)));
  /* Return goes on to the next wall's length; the wall opposite is the seventh. */
  desk_fixture_press_return (window);
  rc_wall_table_focus_wall (rc_bench_get_wall_table (get_bench (fixture)), 6);
  desk_fixture_type (window, "12' 6\"");
  g_assert_cmpstr (rc_bench_get_fault (get_bench (fixture)), ==, "");
  g_autofree char *after = dup_total (fixture);
  g_assert_cmpstr (before, !=, after);
  /* Two fields, two steps. */
  act (fixture, "win.undo", NULL);
  act (fixture, "win.undo", NULL);
  g_autofree char *back = dup_total (fixture);
  g_assert_cmpstr (back, ==, before);
  act (fixture, "win.redo", NULL);
  act (fixture, "win.redo", NULL);
  g_autofree char *again = dup_total (fixture);
  g_assert_cmpstr (again, ==, after);
}

static void
test_wrong_text_is_said_and_kept (DeskFixture *fixture, gconstpointer data)
{
  GtkWindow *window = GTK_WINDOW (fixture->window);

  choose_room (fixture, "dining");
  act (fixture, "win.focus", "s", "walls");
  desk_fixture_type (window, "12 apples");
  RcWallTable *table = rc_bench_get_wall_table (get_bench (fixture));
  GtkWidget   *fault = desk_fixture_find (GTK_WIDGET (table), GTK_TYPE_LABEL, "fault_label");
  g_assert_true (gtk_widget_get_visible (fault));
  g_assert_nonnull (strstr (gtk_label_get_text (GTK_LABEL (fault)), "apples"));
  GtkWidget *entry = gtk_widget_get_ancestor (gtk_window_get_focus (window), RC_TYPE_LENGTH_ENTRY);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, "12 apples");
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE);
  desk_fixture_type (window, "");
  gtk_editable_set_text (GTK_EDITABLE (entry), "12'");
  desk_fixture_settle ();
  g_assert_false (gtk_widget_get_visible (fault));
}

/* The choice goes to another room while a length has the focus, then the focus goes elsewhere: the text is the other
 * room's, once. */
static void
test_focus_stays_through_another_choice (DeskFixture *fixture, gconstpointer data)
{
  choose_room (fixture, "dining");
  act (fixture, "win.focus", "s", "walls");
  RcWallTable *table = rc_bench_get_wall_table (get_bench (fixture));
  GtkWidget   *entry = desk_fixture_find (GTK_WIDGET (table), RC_TYPE_LENGTH_ENTRY, NULL);
  choose_room (fixture, "hall");
  g_autofree char *text = g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry)));
  act (fixture, "win.focus", "s", "floor");
  desk_fixture_paint (GTK_WIDGET (fixture->window));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, text);
  g_assert_null (rc_length_entry_get_fault (RC_LENGTH_ENTRY (entry)));
}

/* A new room by keyboard: its length typed, the proposal to close it taken. */
static void
test_new_room_by_keyboard (DeskFixture *fixture, gconstpointer data)
{
  RcDocument      *document = rc_window_get_document (fixture->window);
  guint            n = rc_document_get_measure (document)->rooms->len;
  g_autofree char *before = dup_total (fixture);

  act (fixture, "win.new-room", NULL);
  g_assert_cmpuint (rc_document_get_measure (document)->rooms->len, ==, n + 1);
  desk_fixture_type (GTK_WINDOW (fixture->window), "15'");
  g_assert_true (rc_document_is_stale (document));
  gtk_widget_activate_action (GTK_WIDGET (rc_bench_get_wall_table (get_bench (fixture))), "walls.close", NULL);
  desk_fixture_settle ();
  g_assert_false (rc_document_is_stale (document));
  g_autofree char *after = dup_total (fixture);
  g_assert_cmpstr (before, !=, after);
  gtk_widget_activate_action (GTK_WIDGET (rc_bench_get_wall_table (get_bench (fixture))), "room.add-opening", "i", 0);
  desk_fixture_settle ();
  RcChoice choice = rc_document_get_choice (document);
  g_assert_cmpuint (rc_measure_find_room (rc_document_get_measure (document), choice.id)->openings->len, ==, 1);
}

static guint
get_selected (GtkWidget *list)
{
  GtkWidget *view = desk_fixture_find (list, GTK_TYPE_LIST_VIEW, NULL);
  return gtk_single_selection_get_selected (GTK_SINGLE_SELECTION (gtk_list_view_get_model (GTK_LIST_VIEW (view))));
}

static void
test_choice_is_the_same_everywhere (DeskFixture *fixture, gconstpointer data)
{
  RcDocument *document = rc_window_get_document (fixture->window);
  GtkWidget  *things = desk_fixture_find (GTK_WIDGET (fixture->window), RC_TYPE_ITEM_LIST, "things_list");
  GtkWidget  *pieces = desk_fixture_find (GTK_WIDGET (fixture->window), RC_TYPE_ITEM_LIST, "pieces_list");
  GtkWidget  *view = desk_fixture_find (pieces, GTK_TYPE_LIST_VIEW, NULL);

  act (fixture, "win.step-piece", "i", 1);
  g_assert_cmpuint (rc_document_get_choice (document).piece, ==, 1);
  g_assert_cmpuint (get_selected (pieces), ==, 0);
  guint was = get_selected (things);
  g_assert_cmpuint (was, !=, GTK_INVALID_LIST_POSITION);

  /* And from the list to the document. */
  gtk_single_selection_set_selected (GTK_SINGLE_SELECTION (gtk_list_view_get_model (GTK_LIST_VIEW (view))), 2);
  desk_fixture_settle ();
  g_assert_cmpuint (rc_document_get_choice (document).piece, ==, 3);
  choose_room (fixture, "study");
  g_assert_cmpuint (get_selected (things), !=, was);
  g_assert_cmpuint (get_selected (pieces), ==, GTK_INVALID_LIST_POSITION);
}

/* The floor does not move under the hand by what is chosen: with few options, many, or none. */
static void
test_options_keep_their_place (DeskFixture *fixture, gconstpointer data)
{
  const RcMeasure *measure = rc_document_get_measure (rc_window_get_document (fixture->window));
  GtkWidget       *box = desk_fixture_find (GTK_WIDGET (get_bench (fixture)), RC_TYPE_FOLD_BOX, NULL);
  RcOptionRow     *row = rc_bench_get_option_row (get_bench (fixture));
  guint            least = G_MAXUINT, most = 0;
  int              height = 0;

  gtk_window_set_default_size (GTK_WINDOW (fixture->window), 900, 700); /* the figures and one option, not three */
  desk_fixture_settle ();

  for (guint i = 0; i < measure->rooms->len; i++)
    {
      choose_room (fixture, ((const RcRoom *)g_ptr_array_index (measure->rooms, i))->id);
      desk_fixture_paint (GTK_WIDGET (fixture->window));
      least = MIN (least, rc_option_row_get_n_options (row));
      most = MAX (most, rc_option_row_get_n_options (row));
      if (i == 0)
        height = gtk_widget_get_height (box);
      g_assert_cmpint (gtk_widget_get_height (box), ==, height);
    }
  g_assert_cmpuint (least, <, most);
  gtk_widget_set_visible (GTK_WIDGET (row), FALSE);
  desk_fixture_paint (GTK_WIDGET (fixture->window));
  g_assert_cmpint (gtk_widget_get_height (box), ==, height);
}

static void
test_one_key_takes_an_option (DeskFixture *fixture, gconstpointer data)
{
  RcDocument *document = rc_window_get_document (fixture->window);

  choose_room (fixture, "hall");
  g_assert_cmpuint (rc_option_row_get_n_options (rc_bench_get_option_row (get_bench (fixture))), >=, 2);
  const RcFloorArea *area = rc_choice_find_area (rc_document_get_choice (document), rc_document_get_measure (document));
  g_autofree char   *was = g_strdup (area->option);
  act (fixture, "win.take-option", "i", 2);
  area = rc_choice_find_area (rc_document_get_choice (document), rc_document_get_measure (document));
  g_assert_nonnull (area->option);
  g_assert_cmpstr (area->option, !=, was);
  act (fixture, "win.take-option", "i", 9); /* there is none: nothing happens */
}

static char *
run_pdftotext (const char *path)
{
  g_autofree char *text = NULL, *program = g_find_program_in_path ("pdftotext");
  g_autoptr (GError) error = NULL;
  const char *argv[] = { program, "-layout", path, "-", NULL };
  int         status = 0;

  if (program == NULL)
    return NULL;
  g_spawn_sync (NULL, (char **)argv, NULL, G_SPAWN_DEFAULT, NULL, NULL, &text, NULL, &status, &error);
  g_assert_no_error (error);
  g_assert_true (g_spawn_check_wait_status (status, NULL));
  return g_steal_pointer (&text);
}

/* The quotation as PDF holds the total that stands on the bench. */
static void
test_quotation_holds_the_total (DeskFixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, "quotation.pdf", NULL);
  g_autoptr (GError) error = NULL;

  act (fixture, "win.sheet", "s", "quotation");
  RcSheetWindow *sheets = rc_window_show_sheet (fixture->window, RC_SHEET_QUOTATION);
  desk_fixture_paint (GTK_WIDGET (sheets));
  g_assert_cmpuint (rc_sheet_window_get_n_pages (sheets), >, 0);
  g_assert_true (rc_sheet_window_write_pdf (sheets, path, &error));
  g_assert_no_error (error);

  g_autofree char *text = run_pdftotext (path);
  if (text == NULL)
    {
      g_test_skip ("pdftotext is not installed");
      return;
    }
  g_autofree char *total = dup_total (fixture);
  g_auto (GStrv) parts = g_strsplit (total, " ", 2); /* "6,886.36 USD" */
  g_assert_nonnull (strstr (text, parts[0]));
}

/* The sheets follow the bench while they are open. */
static void
test_every_sheet_is_drawn (DeskFixture *fixture, gconstpointer data)
{
  for (RcSheetKind kind = 0; kind < RC_N_SHEETS; kind++)
    {
      act (fixture, "win.sheet", "s", rc_sheet_kind_get_name (kind));
      RcSheetWindow *sheets = rc_window_show_sheet (fixture->window, kind);
      desk_fixture_paint (GTK_WIDGET (sheets));
      g_assert_cmpuint (rc_sheet_window_get_n_pages (sheets), >, 0);
    }
  act (fixture, "win.new-room", NULL);
  act (fixture, "win.undo", NULL);
}

static void
test_search_answers_at_once (DeskFixture *fixture, gconstpointer data)
{
  RcJobList *jobs = rc_window_get_job_list (fixture->window);
  GtkWidget *search = desk_fixture_find (GTK_WIDGET (jobs), GTK_TYPE_SEARCH_ENTRY, "search");

  act (fixture, "win.new-job", NULL);
  g_assert_cmpuint (rc_job_list_get_n_jobs (jobs), ==, 2);
  gtk_editable_set_text (GTK_EDITABLE (search), "oddleb gull");
  desk_fixture_settle ();
  g_assert_cmpuint (rc_job_list_get_n_jobs (jobs), ==, 1);
  gtk_editable_set_text (GTK_EDITABLE (search), "nobody of that name");
  desk_fixture_settle ();
  g_assert_cmpuint (rc_job_list_get_n_jobs (jobs), ==, 0);
}

/* The copy is opened, has an id and a number of its own and the same rooms; the job it was made from stays. */
static void
test_job_is_duplicated (DeskFixture *fixture, gconstpointer data)
{
  RcJobList       *jobs = rc_window_get_job_list (fixture->window);
  const RcJob     *job = rc_document_get_job (rc_window_get_document (fixture->window));
  g_autofree char *id = g_strdup (job->id), *number = g_strdup (job->number);
  guint            n_measures = job->measures->len;
  g_autoptr (RcJob) first = NULL;

  act (fixture, "win.duplicate-job", NULL);
  job = rc_document_get_job (rc_window_get_document (fixture->window));
  g_assert_cmpstr (job->id, !=, id);
  g_assert_cmpstr (job->number, !=, number);
  g_assert_cmpuint (job->measures->len, >=, 1);
  g_assert_cmpuint (job->measures->len, <=, n_measures);
  g_assert_cmpuint (rc_job_list_get_n_jobs (jobs), ==, 2);
  first = rc_store_load_job (rc_window_get_store (fixture->window), id, NULL);
  g_assert_nonnull (first);
  g_assert_cmpstr (first->number, ==, number);
}

static void
test_new_job_can_be_filled (DeskFixture *fixture, gconstpointer data)
{
  act (fixture, "win.new-job", NULL);
  RcDocument *document = rc_window_get_document (fixture->window);
  desk_fixture_type (GTK_WINDOW (fixture->window), "Mill house");
  g_assert_cmpstr (rc_document_get_job (document)->title, ==, "Mill house");
  act (fixture, "win.new-room", NULL);
  g_assert_null (rc_document_get_fault (document));
  g_assert_cmpint (rc_document_get_figures (document)->total, >, 0);
  act (fixture, "win.new-stair", NULL);
  g_assert_null (rc_document_get_fault (document));
  act (fixture, "win.undo", NULL);
  act (fixture, "win.undo", NULL);
  act (fixture, "win.undo", NULL);
  g_assert_cmpstr (rc_document_get_job (document)->title, !=, "Mill house");
}

static void
test_measures_compared (DeskFixture *fixture, gconstpointer data)
{
  RcDocument *document = rc_window_get_document (fixture->window);
  g_autoptr (GError) error = NULL;

  RcCompareWindow *compare = rc_compare_window_new (GTK_WINDOW (fixture->window), document);
  g_assert_cmpuint (rc_compare_window_get_n_changes (compare), >, 0);
  gtk_window_destroy (GTK_WINDOW (compare));
}

static void
test_floor_moves_by_keys (DeskFixture *fixture, gconstpointer data)
{
  RcFloorView *floor = rc_bench_get_floor_view (get_bench (fixture));
  RcView       fitted = rc_floor_view_get_view (floor);

  act (fixture, "win.zoom-in", NULL);
  g_assert_cmpfloat (rc_floor_view_get_view (floor).scale, >, fitted.scale);
  act (fixture, "win.zoom-out", NULL);
  g_assert_cmpfloat_with_epsilon (rc_floor_view_get_view (floor).scale, fitted.scale, fitted.scale * 1e-9);
  act (fixture, "win.zoom-in", NULL);
  act (fixture, "win.zoom-fit", NULL);
  g_assert_cmpfloat (rc_floor_view_get_view (floor).scale, ==, fitted.scale);
  act (fixture, "win.focus", "s", "floor");
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (fixture->window)) == GTK_WIDGET (floor));
}

static void
test_assistive_tools_find_their_way (DeskFixture *fixture, gconstpointer data)
{
  static const struct
  {
    const char *name, *label;
  } LABELS[] = { { "floor_view", "Floor plan" }, { "roll_view", "Rolls and their cuts" } };

  for (guint i = 0; i < G_N_ELEMENTS (LABELS); i++)
    {
      GtkWidget *widget = desk_fixture_find (GTK_WIDGET (fixture->window), GTK_TYPE_WIDGET, LABELS[i].name);
      g_assert_nonnull (widget);
      gtk_test_accessible_assert_role (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_ROLE_IMG);
      gtk_test_accessible_assert_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, LABELS[i].label);
      g_assert_true (gtk_widget_get_focusable (widget));
    }
  choose_room (fixture, "dining");
  RcWallTable *table = rc_bench_get_wall_table (get_bench (fixture));
  GtkWidget   *entry = desk_fixture_find (GTK_WIDGET (table), RC_TYPE_LENGTH_ENTRY, NULL);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, "Length of wall 1");
}

/* Every action has a key and stands in the keys window, from which the list of actions is made. */
static void
test_actions_are_found_by_their_words (DeskFixture *fixture, gconstpointer data)
{
  RcActionList *actions = RC_ACTION_LIST (desk_fixture_find (GTK_WIDGET (fixture->window), RC_TYPE_ACTION_LIST, NULL));
  GtkWidget    *search = desk_fixture_find (GTK_WIDGET (actions), GTK_TYPE_SEARCH_ENTRY, NULL);

  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (search), GTK_ACCESSIBLE_PROPERTY_LABEL, "Find an action");
  choose_room (fixture, "dining");
  act (fixture, "win.focus", "s", "walls");
  act (fixture, "win.find-action", NULL);
  g_assert_true (gtk_widget_get_mapped (GTK_WIDGET (actions)));
  guint n = rc_action_list_get_n_shown (actions);
  g_assert_cmpuint (n, >, 50);
  gtk_editable_set_text (GTK_EDITABLE (search), "ROOM copy");
  g_assert_cmpuint (rc_action_list_get_n_shown (actions), ==, 1);
  g_assert_cmpstr (rc_action_list_get_first (actions), ==, "win.copy-room");
  gtk_editable_set_text (GTK_EDITABLE (search), "archway in");
  g_signal_emit_by_name (search, "activate");
  desk_fixture_settle ();
  /* An action of the wall table: it is about the wall that had the focus. */
  RcDocument *document = rc_window_get_document (fixture->window);
  GPtrArray  *openings = rc_measure_find_room (rc_document_get_measure (document), "dining")->openings;
  g_assert_true (((RcOpening *)g_ptr_array_index (openings, openings->len - 1))->kind == RC_OPENING_ARCHWAY);
}

static void
test_every_action_has_a_key (DeskFixture *fixture, gconstpointer data)
{
  g_autoptr (GtkBuilder) builder = gtk_builder_new_from_resource ("/org/rowcut/Rowcut/ui/shortcuts.ui");
  GSList *objects = gtk_builder_get_objects (builder);

  for (GSList *item = objects; item; item = item->next)
    {
      g_autofree char *action = NULL, *keys = NULL;
      if (!GTK_IS_SHORTCUTS_SHORTCUT (item->data))
        continue;
      g_object_get (item->data, "action-name", &action, "accelerator", &keys, NULL);
      g_auto (GStrv) accels = action ? gtk_application_get_accels_for_action (fixture->application, action) : NULL;
      if ((accels == NULL || accels[0] == NULL) && (keys == NULL || *keys == '\0'))
        g_error ("no key for %s", action);
    }
  g_slist_free (objects);
  g_auto (GStrv) with_keys = gtk_application_list_action_descriptions (fixture->application);
  for (guint i = 0; with_keys[i]; i++)
    if (!rc_action_list_has (
            RC_ACTION_LIST (desk_fixture_find (GTK_WIDGET (fixture->window), RC_TYPE_ACTION_LIST, NULL)), with_keys[i])
        && !g_str_has_prefix (with_keys[i], "win.take-option"))
      g_error ("%s has keys and is not in the list of actions", with_keys[i]);
}

static void
test_dark_style_is_followed (DeskFixture *fixture, gconstpointer data)
{
  GtkWidget *floor = GTK_WIDGET (rc_bench_get_floor_view (get_bench (fixture)));

  g_assert_true (rc_palette_for_widget (floor) == &RC_PALETTE_PAPER);
  g_object_set (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", TRUE, NULL);
  desk_fixture_paint (GTK_WIDGET (fixture->window));
  g_assert_true (rc_palette_for_widget (floor) == &RC_PALETTE_DARK);
  g_object_set (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", FALSE, NULL);
}

/* A price typed into the price book is in the store, and in the total of the open job. */
static void
test_prices_are_typed (DeskFixture *fixture, gconstpointer data)
{
  RcDocument    *document = rc_window_get_document (fixture->window);
  RcPriceWindow *prices = NULL;
  RcMoney        before = rc_document_get_outcome (document)->quote->total;
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPriceBook) stored = NULL;

  act (fixture, "win.prices", NULL);
  GListModel *toplevels = gtk_window_get_toplevels ();
  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (toplevels, i);

      if (RC_IS_PRICE_WINDOW (window))
        prices = RC_PRICE_WINDOW (window);
    }
  g_assert_nonnull (prices);
  g_assert_cmpuint (rc_price_window_get_n_lines (prices), >, 10);
  g_assert_false (rc_price_window_type (prices, 0, RC_PRICE_SALE, "dear"));
  g_assert_true (rc_price_window_type (prices, 0, RC_PRICE_SALE, "999.00"));
  stored = rc_store_load_price_book (rc_document_get_store (document), &error);
  g_assert_no_error (error);
  g_assert_cmpint (rc_price_book_find (stored, "fennel-twist-oat", NULL)->sale, ==, 99900);
  while (!rc_document_is_planned (document))
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpint (rc_document_get_outcome (document)->quote->total, >, before);
  gtk_window_destroy (GTK_WINDOW (prices));
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
#define ADD(path, demo, function) g_test_add (path, DeskFixture, GINT_TO_POINTER (demo), set_up, function, tear_down)
  ADD ("/desk/window/first-opening-offers-the-demo", FALSE, test_first_opening_offers_the_demo);
  ADD ("/desk/window/options-keep-their-place", TRUE, test_options_keep_their_place);
  ADD ("/desk/window/typing-a-wall-changes-the-total", TRUE, test_typing_a_wall_changes_the_total);
  ADD ("/desk/window/wrong-text-is-said-and-kept", TRUE, test_wrong_text_is_said_and_kept);
  ADD ("/desk/window/focus-stays-through-another-choice", TRUE, test_focus_stays_through_another_choice);
  ADD ("/desk/window/new-room-by-keyboard", TRUE, test_new_room_by_keyboard);
  ADD ("/desk/window/choice-is-the-same-everywhere", TRUE, test_choice_is_the_same_everywhere);
  ADD ("/desk/window/one-key-takes-an-option", TRUE, test_one_key_takes_an_option);
  ADD ("/desk/window/quotation-holds-the-total", TRUE, test_quotation_holds_the_total);
  ADD ("/desk/window/every-sheet-is-drawn", TRUE, test_every_sheet_is_drawn);
  ADD ("/desk/window/search-answers-at-once", TRUE, test_search_answers_at_once);
  ADD ("/desk/window/job-is-duplicated", TRUE, test_job_is_duplicated);
  ADD ("/desk/window/new-job-can-be-filled", FALSE, test_new_job_can_be_filled);
  ADD ("/desk/window/measures-compared", TRUE, test_measures_compared);
  ADD ("/desk/window/prices-are-typed", TRUE, test_prices_are_typed);
  ADD ("/desk/window/floor-moves-by-keys", TRUE, test_floor_moves_by_keys);
  ADD ("/desk/window/assistive-tools-find-their-way", TRUE, test_assistive_tools_find_their_way);
  ADD ("/desk/window/actions-are-found-by-their-words", TRUE, test_actions_are_found_by_their_words);
  ADD ("/desk/window/every-action-has-a-key", TRUE, test_every_action_has_a_key);
  ADD ("/desk/window/dark-style-is-followed", TRUE, test_dark_style_is_followed);
  return g_test_run ();
}
