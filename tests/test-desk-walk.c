/* A clerk's whole walk by the windows, on a virtual display: from the job that is found to measuring again, and two who
 * work on one job. Nothing waits by the clock, but until what is waited for is there. */
#include <glib/gi18n-lib.h>

#include "accounts-window.h"
#include "attachment-list.h"
#include "compare-window.h"
#include "document-things.h"
#include "glance-window.h"
#include "length-entry.h"
#include "length-rows.h"
#include "office-hand.h"
#include "order-window.h"
#include "pick.h"
#include "quote-window.h"
#include "roll-form.h"
#include "roll-window.h"
#include "sheet-set.h"
#include "translation.h"

#define FT(n) ((n)*RC_TICKS_PER_FOOT)

/* In place of what stands in the focused field. That it is selected there the window has seen to, but another that asks
 * for the display's selection meanwhile takes it away. */
static void
type_over (RcOrderWindow *orders, const char *text)
{
  gtk_editable_select_region (GTK_EDITABLE (gtk_window_get_focus (GTK_WINDOW (orders))), 0, -1);
  desk_fixture_type (GTK_WINDOW (orders), text);
}

/* Of the sundries half a carton's strip comes first; the rest stays open until it comes. */
static void
receive_in_part (DeskFixture *fixture, RcOrderWindow *orders)
{
  g_autoptr (GPtrArray) found = rc_store_find_purchases (fixture->store, "J-7", NULL);

  for (guint i = 0; i < found->len; i++)
    if (g_str_equal (((const RcPurchase *)g_ptr_array_index (found, i))->supplier, "Brindle Trade Supply"))
      g_assert_true (rc_order_window_choose (orders, ((const RcPurchase *)g_ptr_array_index (found, i))->number));
  desk_fixture_settle ();
  office_hand_act (orders, "order.send");
  office_hand_act (orders, "order.receive");
  type_over (orders, "150");
  office_hand_click (orders, "do_button");
  g_assert_cmpint (rc_order_window_get_chosen (orders)->state, ==, RC_PURCHASE_PARTLY);
  g_assert_cmpuint (rc_order_window_get_chosen (orders)->n_open, ==, 1);
  office_hand_act (orders, "order.receive"); /* what is open is proposed */
  office_hand_click (orders, "do_button");
  g_assert_cmpint (rc_order_window_get_chosen (orders)->state, ==, RC_PURCHASE_RECEIVED);
  g_assert_cmpuint (rc_order_window_get_chosen (orders)->n_open, ==, 0);
}

/* The order for carpet among those made. */
static void
choose_carpet_order (DeskFixture *fixture, RcOrderWindow *orders)
{
  g_autoptr (GPtrArray) found = rc_store_find_purchases (fixture->store, "J-7", NULL);

  for (guint i = 0; i < found->len; i++)
    {
      const RcPurchase *order = g_ptr_array_index (found, i);
      if (g_str_equal (order->supplier, "Skerrow Mills"))
        g_assert_true (rc_order_window_choose (orders, order->number));
    }
  desk_fixture_settle ();
}

/* What comes in of the carpet is measured as 30 ft. */
static void
order_and_receive (DeskFixture *fixture)
{
  RcOrderWindow *orders = office_hand_open_window (fixture, "win.orders", RC_TYPE_ORDER_WINDOW);

  office_hand_act (orders, "order.make");
  receive_in_part (fixture, orders);
  choose_carpet_order (fixture, orders);
  office_hand_act (orders, "order.send");
  office_hand_act (orders, "order.confirm");
  desk_fixture_type (GTK_WINDOW (orders), "SM-4711");
  office_hand_click (orders, "do_button");
  g_assert_cmpstr (rc_order_window_get_chosen (orders)->reference, ==, "SM-4711");
  office_hand_act (orders, "order.receive");
  GtkWidget *length = desk_fixture_find (GTK_WIDGET (orders), RC_TYPE_LENGTH_ENTRY, NULL);
  gtk_widget_grab_focus (length);
  type_over (orders, "30'");
  office_hand_click (orders, "do_button");
  g_assert_cmpint (rc_order_window_get_chosen (orders)->state, ==, RC_PURCHASE_RECEIVED);
  g_assert_nonnull (strstr (rc_order_window_get_told (orders), "R-1"));
  /* What was ordered of it is kept for the job, and the rest is the shop's. */
  g_autoptr (GPtrArray) kept = rc_store_find_reservations (fixture->store, "R-1", "J-7", NULL);
  g_assert_cmpuint (kept->len, ==, 1);
  g_assert_cmpint (((const RcReservation *)g_ptr_array_index (kept, 0))->length, ==, FT (15));
}

/* The window of that title is there; closes it. */
static void
close_window (const char *title)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (windows, i);

      if (g_strcmp0 (gtk_window_get_title (window), title) == 0)
        {
          gtk_window_destroy (window);
          desk_fixture_settle ();
          return;
        }
    }
  g_assert_not_reached ();
}

/* The piece as planned, off 18 ft, of which 3' 9" are kept. */
static void
cut (DeskFixture *fixture)
{
  RcRollWindow *rolls = office_hand_open_window (fixture, "win.rolls", RC_TYPE_ROLL_WINDOW);
  GtkWidget    *remnants = NULL;

  g_assert_true (rc_roll_window_choose (rolls, "R-1"));
  office_hand_act (rolls, "roll.cut");
  RcRollForm *form = RC_ROLL_FORM (desk_fixture_find (GTK_WIDGET (rolls), RC_TYPE_ROLL_FORM, NULL));
  desk_fixture_type (GTK_WINDOW (rolls), "18'");
  for (GtkWidget *child = gtk_widget_get_last_child (desk_fixture_find (GTK_WIDGET (form), GTK_TYPE_GRID, "grid"));
       child != NULL && remnants == NULL; child = gtk_widget_get_prev_sibling (child))
    remnants = desk_fixture_find (child, RC_TYPE_LENGTH_ROWS, NULL);
  rc_length_rows_add (RC_LENGTH_ROWS (remnants), NULL, FT (12), FT (3) + 9 * RC_TICKS_PER_INCH);
  g_assert_true (rc_roll_form_do (form));
  desk_fixture_settle ();
  g_autoptr (GPtrArray) pieces = rc_store_find_cut_pieces (fixture->store, "J-7", NULL);
  g_assert_cmpuint (pieces->len, ==, 1);
  g_assert_cmpint (((const RcCutPiece *)g_ptr_array_index (pieces, 0))->width, ==, FT (11) + 11 * RC_TICKS_PER_INCH);
  g_assert_cmpint (office_hand_get_state (fixture), ==, RC_JOB_CUT);
  g_assert_cmpuint (rc_roll_window_get_n_rolls (rolls), ==, 2);
  /* The remnant's own label, with its ticket. */
  g_assert_true (rc_roll_window_choose (rolls, "R-2"));
  office_hand_act (rolls, "roll.label");
  close_window ("Label of roll R-2");
}

/* As long as nothing has changed in the rooms there is nothing to charge: what is cut stays charged whole. */
static void
check_nothing_to_vary (DeskFixture *fixture)
{
  RcQuoteWindow *quotes = office_hand_open_window (fixture, "win.quotes", RC_TYPE_QUOTE_WINDOW);
  RcOutcome     *outcome = rc_document_get_outcome (rc_window_get_document (fixture->window));
  g_autoptr (RcQuote) first = rc_store_load_quote (fixture->store, "Q-1", NULL);

  g_assert_cmpstr (outcome->measure->id, ==, "M2");
  g_assert_cmpint (outcome->quote->total, ==, first->total);
  g_assert_true (rc_quote_window_choose (quotes, "Q-1"));
  office_hand_act (quotes, "quote.vary");
  g_assert_nonnull (strstr (rc_quote_window_get_told (quotes), "Nothing differs"));
}

/* The parlour is 12' 3": 4 in more than the piece. Typed into the wall table. */
static void
measure_again (DeskFixture *fixture)
{
  office_hand_act (fixture->window, "win.new-measure");
  g_assert_nonnull (strstr (rc_window_get_told (fixture->window), "1 piece is cut"));
  check_nothing_to_vary (fixture);
  office_hand_widen (fixture);
  const RcMeasure *measure = rc_document_get_measure (rc_window_get_document (fixture->window));
  g_assert_cmpstr (measure->id, ==, "M2");
  g_assert_null (rc_document_get_fault (rc_window_get_document (fixture->window)));
}

/* The customer reads Spanish, the office English. */
static void
set_language (DeskFixture *fixture, const char *language)
{
  RcDocument *document = rc_window_get_document (fixture->window);
  g_autoptr (GError) error = NULL;
  RcJob *job = rc_document_dup_job (document);

  job->customer.language = g_strdup (language);
  rc_document_commit (document, job, "Language", NULL, &error);
  g_assert_no_error (error);
  desk_fixture_settle ();
}

/* All that is issued speaks the customer's language: what is taken off, and what comes in its place. */
static void
check_variation_words (DeskFixture *fixture, const char *number)
{
  g_autoptr (RcQuote) variation = rc_store_load_quote (fixture->store, number, NULL);
  guint n_gone = 0;

  for (guint i = 0; i < variation->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (variation->lines, i);

      g_test_message ("%s", line->name);
      n_gone += g_str_has_prefix (line->name, "Menos, según el presupuesto: ") ? 1 : 0;
      g_assert_null (strstr (line->name, "Laying"));
      if (g_str_equal (line->item, "lay"))
        g_assert_nonnull (strstr (line->name, "Colocación"));
    }
  g_assert_cmpuint (n_gone, >, 0);
  g_assert_cmpstr (_ ("Laying"), ==, "Laying");
}

/* The bench plans with what is cut and with the rest of its roll at once, and says over the floor what no longer fits.
 */
static void
check_bench (DeskFixture *fixture)
{
  RcBench   *bench = rc_window_get_bench (fixture->window);
  RcOutcome *outcome = rc_document_get_outcome (rc_window_get_document (fixture->window));
  guint      n_cut = 0;

  g_assert_nonnull (strstr (rc_bench_get_fault (bench), "Parlour: piece 1, cut 11' 11\" × 14' 3\""));
  g_assert_nonnull (strstr (rc_bench_get_fault (bench), "4\" too narrow"));
  for (guint i = 0; i < outcome->quantities->len; i++)
    {
      const RcQuantityLine *line = g_ptr_array_index (outcome->quantities, i);

      if (g_str_equal (line->item, "fennel-twist-oat"))
        {
          g_assert_true (line->from_stock);
          g_assert_nonnull (strstr (line->because, "piece 1, cut from roll R-1"));
          n_cut++;
        }
    }
  g_assert_cmpuint (n_cut, ==, 1);
}

static void
choose_everything (GtkWidget *accounts)
{
  GtkWidget *periods = desk_fixture_find (accounts, GTK_TYPE_BOX, "periods_box");

  g_signal_emit_by_name (gtk_widget_get_last_child (periods), "clicked");
  desk_fixture_settle ();
}

/* The accounts hear of what was accepted and of what is ordered, once each. */
static void
check_accounts (DeskFixture *fixture)
{
  g_autofree char *path = g_build_filename (fixture->folder, "accounts.csv", NULL), *text = NULL;
  g_autoptr (GPtrArray) orders = rc_store_find_purchases (fixture->store, NULL, NULL);
  g_autoptr (GError) error = NULL;
  RcAccountsWindow *accounts = office_hand_open_window (fixture, "win.export-accounts", RC_TYPE_ACCOUNTS_WINDOW);

  g_assert_cmpstr (rc_accounts_window_get_told (accounts), ==, "Nothing was accepted or ordered in these days.");
  desk_fixture_type (GTK_WINDOW (accounts), "2026-02-30"); /* in place of the day before today's month */
  g_assert_nonnull (strstr (rc_accounts_window_get_told (accounts), "“2026-02-30” is not a day"));
  g_assert_false (rc_accounts_window_write (accounts, path, &error));
  g_clear_error (&error);
  choose_everything (GTK_WIDGET (accounts));
  g_assert_nonnull (strstr (rc_accounts_window_get_told (accounts), "1 quotation accepted"));
  g_assert_true (rc_accounts_window_write (accounts, path, &error));
  g_assert_true (g_file_get_contents (path, &text, NULL, &error));
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  g_assert_cmpuint (g_strv_length (lines), ==,
                    3 + orders->len); /* the head, the sale at one rate, after the last nothing */
  g_assert_true (g_str_has_prefix (lines[1], "sale,Q-1,"));
  g_assert_nonnull (strstr (lines[1], "Tamsin Oddlebury"));
  for (guint i = 0; i < orders->len; i++)
    {
      const RcPurchase *order = g_ptr_array_index (orders, i);
      g_autofree char  *begin = g_strdup_printf ("purchase,%s,", order->number);
      g_autofree char  *total = rc_money_format_plain (order->total, &order->currency);
      g_assert_true (g_str_has_prefix (lines[2 + i], begin));
      g_assert_true (g_str_has_suffix (lines[2 + i], total));
    }
  g_assert_false (rc_accounts_window_write (accounts, "/no/such/folder/accounts.csv", &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
  gtk_window_destroy (GTK_WINDOW (accounts));
}

/* Another job is open; the one looked for is found by letters of the customer's name, and Return opens it. */
static void
find_job (DeskFixture *fixture)
{
  RcJobList *jobs = rc_window_get_job_list (fixture->window);
  g_autoptr (GError) error = NULL;

  g_assert_true (rc_window_open_demo (fixture->window, &error));
  rc_document_set_improve_seconds (rc_window_get_document (fixture->window), 0);
  desk_fixture_settle ();
  office_hand_act (fixture->window, "win.find-job");
  desk_fixture_type (GTK_WINDOW (fixture->window), "parl odd");
  g_assert_cmpuint (rc_job_list_get_n_jobs (jobs), ==, 1);
  desk_fixture_press_return (GTK_WINDOW (fixture->window));
  g_assert_cmpstr (rc_document_get_job (rc_window_get_document (fixture->window))->id, ==, "J-7");
  rc_document_set_improve_seconds (rc_window_get_document (fixture->window), 0);
  desk_fixture_settle ();
}

/* What is tied to the rolls, ready to be printed. */
static void
print_labels (DeskFixture *fixture)
{
  RcOutcome *outcome = rc_document_get_outcome (rc_window_get_document (fixture->window));
  g_autoptr (RcSheetSet) set = rc_sheet_set_new (outcome, NULL, NULL);
  g_autoptr (GError) error = NULL;
  RcSheetData data;

  rc_sheet_set_get_data (set, (guint)rc_sheet_set_find (set, RC_SHEET_ROLL_LABELS), RC_PAPER_LETTER, NULL, &data);
  g_autoptr (GBytes) pdf = rc_sheet_make_pdf (RC_SHEET_ROLL_LABELS, &data, &error);
  g_assert_no_error (error);
  g_assert_true (g_str_has_prefix (g_bytes_get_data (pdf, NULL), "%PDF-"));
  g_assert_nonnull (rc_window_show_sheet (fixture->window, RC_SHEET_ROLL_LABELS));
  desk_fixture_settle ();
}

static void
test_from_quotation_to_measuring_again (DeskFixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  find_job (fixture);
  set_language (fixture, "es");
  RcQuoteWindow  *quotes = office_hand_open_window (fixture, "win.quotes", RC_TYPE_QUOTE_WINDOW);
  RcGlanceWindow *glance = office_hand_open_window (fixture, "win.glance", RC_TYPE_GLANCE_WINDOW);
  office_hand_act (quotes, "quote.issue");
  g_assert_cmpuint (rc_glance_window_get_n (glance, RC_GLANCE_QUOTES), ==, 1);
  office_hand_act (quotes, "quote.accept");
  g_assert_cmpuint (rc_glance_window_get_n (glance, RC_GLANCE_QUOTES), ==, 0);
  g_assert_cmpuint (rc_glance_window_get_n (glance, RC_GLANCE_ORDERS), ==, 1); /* to be placed */
  order_and_receive (fixture);
  cut (fixture);
  g_assert_cmpuint (rc_glance_window_get_n (glance, RC_GLANCE_ROLLS), >, 0); /* the remnant */
  print_labels (fixture);
  check_accounts (fixture);
  measure_again (fixture);
  check_bench (fixture);
  /* Measured a third time: what was cut by the first measure is still what does not fit. */
  office_hand_act (fixture->window, "win.new-measure");
  check_bench (fixture);

  RcCompareWindow   *compare = office_hand_open_window (fixture, "win.compare", RC_TYPE_COMPARE_WINDOW);
  RcCureList        *cures = rc_compare_window_get_cures (compare);
  const RcRemeasure *found = rc_cure_list_get (cures);
  g_assert_nonnull (found);
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (cures)));
  g_assert_cmpuint (found->shortfalls->len, >, 0);
  const char *shortfall = g_ptr_array_index (found->shortfalls, 0);
  g_assert_nonnull (strstr (shortfall, "Parlour"));
  g_assert_nonnull (strstr (shortfall, "4\" too narrow"));
  for (guint i = 1; i < found->cures->len; i++)
    g_assert_cmpint (((const RcCure *)g_ptr_array_index (found->cures, i - 1))->cost, <=,
                     ((const RcCure *)g_ptr_array_index (found->cures, i))->cost);
  const RcCure *cheapest = g_ptr_array_index (found->cures, 0);
  g_assert_cmpuint (cheapest->extra->len, >, 0);
  for (guint i = 0; i < cheapest->extra->len; i++) /* out of what lies there, and nothing is bought */
    g_assert_nonnull (strstr (g_ptr_array_index (cheapest->extra, i), "R-"));

  /* It is taken; then the customer is quoted the difference, and only that. */
  g_assert_true (rc_cure_list_take (cures, 0, &error));
  desk_fixture_settle ();
  g_assert_cmpstr (rc_bench_get_fault (rc_window_get_bench (fixture->window)), ==, ""); /* it is decided */
  quotes = office_hand_open_window (fixture, "win.quotes", RC_TYPE_QUOTE_WINDOW);
  g_assert_true (rc_quote_window_choose (quotes, "Q-1"));
  office_hand_act (quotes, "quote.vary");
  g_assert_true (rc_quote_window_get_chosen (quotes)->variation);
  check_variation_words (fixture, rc_quote_window_get_chosen (quotes)->number);
  RcOutcome *outcome = rc_document_get_outcome (rc_window_get_document (fixture->window));
  g_autoptr (RcQuote) first = rc_store_load_quote (fixture->store, "Q-1", &error);
  g_assert_no_error (error);
  g_assert_cmpint (first->total + rc_quote_window_get_chosen (quotes)->total, ==, outcome->quote->total);
  g_autofree char *report = NULL;
  g_assert_true (rc_store_check (fixture->store, &report, &error));
}

/* What of the roll is kept for the job. */
static void
assert_kept (DeskFixture *fixture, const char *roll, RcLength length)
{
  g_autoptr (GPtrArray) kept = rc_store_find_reservations (fixture->store, roll, "J-7", NULL);

  g_assert_cmpuint (kept->len, ==, 1);
  g_assert_cmpint (((const RcReservation *)g_ptr_array_index (kept, 0))->length, ==, length);
}

/* What of the carpet is still on its way; 0: all is here. */
static RcLength
find_on_its_way (DeskFixture *fixture)
{
  const RcHeld *held = rc_document_get_held (rc_window_get_document (fixture->window));
  RcLength      sum = 0;

  for (guint i = 0; i < held->goods->len; i++)
    sum += ((const RcCutGoods *)g_ptr_array_index (held->goods, i))->length;
  return sum;
}

/* Of 15 ft of carpet 6 ft come first and the rest later: two rolls, each kept for the job, and the order is open until
 * all of it is here. */
static void
test_carpet_in_parts (DeskFixture *fixture, gconstpointer data)
{
  RcOrderWindow *orders = office_hand_open_window (fixture, "win.orders", RC_TYPE_ORDER_WINDOW);

  office_hand_act (orders, "order.make");
  choose_carpet_order (fixture, orders);
  office_hand_act (orders, "order.send");
  g_assert_cmpint (find_on_its_way (fixture), ==, FT (15));
  office_hand_act (orders, "order.receive");
  type_over (orders, "12"); /* of 20 sq yd */
  GtkWidget *length = desk_fixture_find (GTK_WIDGET (orders), RC_TYPE_LENGTH_ENTRY, NULL);
  g_assert_cmpint (rc_length_entry_get_value (RC_LENGTH_ENTRY (length)), ==, FT (9)); /* 12 ft wide */
  GtkWidget *quantity = gtk_widget_get_prev_sibling (length);
  gtk_editable_set_text (GTK_EDITABLE (quantity), "8");
  g_assert_cmpint (rc_length_entry_get_value (RC_LENGTH_ENTRY (length)), ==, FT (6));
  gtk_widget_grab_focus (length);
  type_over (orders, "5' 11\"");
  gtk_editable_set_text (GTK_EDITABLE (quantity), "8.5");
  g_assert_cmpint (rc_length_entry_get_value (RC_LENGTH_ENTRY (length)), ==, FT (6) - RC_TICKS_PER_INCH); /* measured */
  gtk_editable_set_text (GTK_EDITABLE (quantity), "8");
  gtk_widget_grab_focus (length);
  type_over (orders, "6'");
  office_hand_click (orders, "do_button");
  g_assert_cmpint (rc_order_window_get_chosen (orders)->state, ==, RC_PURCHASE_PARTLY);
  g_assert_cmpuint (rc_order_window_get_chosen (orders)->n_open, ==, 1);
  g_assert_cmpint (find_on_its_way (fixture), ==, FT (9));
  assert_kept (fixture, "R-1", FT (6));
  office_hand_act (orders, "order.receive"); /* what is open is proposed, with its length */
  office_hand_click (orders, "do_button");
  g_assert_cmpint (rc_order_window_get_chosen (orders)->state, ==, RC_PURCHASE_RECEIVED);
  g_assert_cmpint (find_on_its_way (fixture), ==, 0);
  assert_kept (fixture, "R-2", FT (9));
}

/* The mill reads French, the office and who sends the sundries English. */
static void
test_languages_of_suppliers (DeskFixture *fixture, gconstpointer data)
{
  if (g_getenv ("ROWCUT_LOCALE_DIR") == NULL)
    {
      g_test_skip ("ROWCUT_LOCALE_DIR does not name the translations");
      return;
    }
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPriceBook) book = rc_store_load_price_book (fixture->store, &error);
  RcSupplier *mill = rc_supplier_new ("Skerrow Mills");
  mill->language = g_strdup ("fr");
  g_ptr_array_set_size (book->suppliers, 0);
  g_ptr_array_add (book->suppliers, mill);
  g_assert_true (rc_store_save_price_book (fixture->store, book, &error));
  rc_window_note_change (fixture->window);
  desk_fixture_settle ();

  RcOrderWindow *orders = office_hand_open_window (fixture, "win.orders", RC_TYPE_ORDER_WINDOW);
  office_hand_act (orders, "order.make");
  choose_carpet_order (fixture, orders);
  g_assert_nonnull (strstr (rc_order_window_get_chosen (orders)->notes, "une longueur de 15' 0\""));
  GtkWidget   *sheets = GTK_WIDGET (rc_window_show_sheet (fixture->window, RC_SHEET_ORDER));
  GtkDropDown *drop = GTK_DROP_DOWN (desk_fixture_find (sheets, GTK_TYPE_DROP_DOWN, "language_drop"));
  desk_fixture_settle ();
  g_assert_cmpstr (rc_pick_get_selected (drop), ==, "fr");
  gtk_drop_down_set_selected (drop, 2); /* for this supplier alone */
  g_assert_cmpstr (rc_pick_get_selected (drop), ==, "es");
  g_assert_nonnull (rc_window_show_sheet (fixture->window, RC_SHEET_CUT_LIST));
  desk_fixture_settle ();
  g_assert_null (rc_pick_get_selected (drop));
  g_assert_nonnull (rc_window_show_sheet (fixture->window, RC_SHEET_ORDER));
  desk_fixture_settle ();
  g_assert_cmpstr (rc_pick_get_selected (drop), ==, "es");
  g_assert_cmpstr (rc_order_window_get_chosen (orders)->supplier, ==, "Skerrow Mills");
  g_assert_cmpstr (rc_purchase_state_get_label (RC_PURCHASE_MADE), ==, "To be sent"); /* the office's own again */
}

/* Two windows on one store: what the one does shows itself in the other. */
static void
test_two_windows (DeskFixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, "store.db", NULL);
  g_autofree char *sketch = g_build_filename (fixture->folder, "parlour.xml", NULL);
  RcDocument      *document = rc_window_get_document (fixture->window);
  g_autoptr (GError) error = NULL;
  RcStore  *store = rc_store_open (path, NULL, &error);
  RcWindow *other = rc_window_new (fixture->application, store);

  g_assert_no_error (error);
  gtk_window_present (GTK_WINDOW (other));
  g_assert_true (rc_window_open_job (other, "J-7", &error));
  rc_document_set_improve_seconds (rc_window_get_document (other), 0);
  desk_fixture_settle ();
  g_assert_true (rc_document_set_state (document, RC_JOB_MEASURED, &error));
  while (rc_job_get_state (rc_document_get_job (rc_window_get_document (other))) != RC_JOB_MEASURED)
    g_main_context_iteration (NULL, TRUE);
  g_assert_nonnull (strstr (rc_window_get_told (other), "Another program"));
  RcAttachmentList *papers = RC_ATTACHMENT_LIST (
      desk_fixture_find (GTK_WIDGET (rc_window_get_bench (other)), RC_TYPE_ATTACHMENT_LIST, NULL));
  g_assert_true (rc_attachment_list_add_file (papers, sketch, &error));
  while (rc_document_get_job (document)->attachments->len == 0)
    g_main_context_iteration (NULL, TRUE);
  const RcAttachment *paper = g_ptr_array_index (rc_document_get_job (document)->attachments, 0);
  g_assert_cmpstr (paper->name, ==, "parlour.xml");
  g_autoptr (GBytes) bytes = rc_store_load_file (fixture->store, paper->digest, &error);
  g_assert_cmpuint (g_bytes_get_size (bytes), ==, strlen (OFFICE_HAND_PARLOUR));
  desk_fixture_settle ();
  RcDocument *theirs = rc_window_get_document (other);
  g_object_add_weak_pointer (G_OBJECT (theirs), (gpointer *)&theirs);
  gtk_window_destroy (GTK_WINDOW (other));
  while (theirs != NULL)
    g_main_context_iteration (NULL, TRUE);
  rc_store_close (store);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  rc_translation_init ();
#define ADD(path, test)                                                                                                \
  g_test_add ("/desk-walk/" path, DeskFixture, NULL, office_hand_set_up, test, office_hand_tear_down)
  ADD ("from a quotation to measuring again", test_from_quotation_to_measuring_again);
  ADD ("carpet comes in two parts", test_carpet_in_parts);
  ADD ("suppliers have languages of their own", test_languages_of_suppliers);
  ADD ("two windows on one job", test_two_windows);
  return g_test_run ();
}
