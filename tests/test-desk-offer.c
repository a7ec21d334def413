/* The quotation of the open job while it is made, on a virtual display: figures that open, terms, options side by side.
 */
#include "desk-fixture.h"
#include "offer-edit.h"
#include "offer-window.h"
#include "quote-issue.h"
#include "quote-window.h"
#include "sheet-set.h"

static const RcCurrency dollars = { "USD", 2 };

/* --- edits, no display --- */

static void
check_field (RcOffer *offer, RcOfferField field, const char *item, const char *typed, const char *reads)
{
  const RcOfferSpot spot = { field, item, 0 };
  g_autoptr (GError) error = NULL;
  gboolean         done = rc_offer_edit_set_text (offer, &spot, typed, &dollars, &error);
  g_autofree char *text = rc_offer_edit_dup_text (offer, &spot, &dollars);

  if (reads != NULL)
    {
      g_assert_no_error (error);
      g_assert_true (done);
      g_assert_cmpstr (text, ==, reads);
      return;
    }
  g_assert_false (done);
  g_assert_nonnull (error);
}

static void
test_fields (void)
{
  g_autoptr (RcOffer) offer = rc_offer_new ();

  check_field (offer, RC_OFFER_DISCOUNT_RATE, NULL, "7.25 %", "7.25");
  g_assert_cmpint (offer->discount_ppm, ==, 72500);
  check_field (offer, RC_OFFER_DISCOUNT_RATE, NULL, "100.01", NULL);
  check_field (offer, RC_OFFER_DISCOUNT_RATE, NULL, "7.12345", NULL);
  check_field (offer, RC_OFFER_DISCOUNT_RATE, NULL, "-1", NULL);
  g_assert_cmpint (offer->discount_ppm, ==, 72500);
  check_field (offer, RC_OFFER_DISCOUNT_SUM, NULL, "1,050.5", "1050.50");
  check_field (offer, RC_OFFER_DISCOUNT_SUM, NULL, "-3", NULL);
  check_field (offer, RC_OFFER_DISCOUNT_SUM, NULL, "", "");
  check_field (offer, RC_OFFER_VALID_DAYS, NULL, "30", "30");
  check_field (offer, RC_OFFER_VALID_DAYS, NULL, "soon", NULL);
  check_field (offer, RC_OFFER_TERMS, NULL, "Paid when fitted.", "Paid when fitted.");
  check_field (offer, RC_OFFER_TERMS, NULL, "", "");
  g_assert_null (offer->terms);
  /* A tax of nothing is said; a field left blank is the tax area's. */
  check_field (offer, RC_OFFER_LINE_TAX, "tape", "0", "0");
  check_field (offer, RC_OFFER_LINE_DISCOUNT, "tape", "10", "10");
  check_field (offer, RC_OFFER_LINE_TAX, "tape", "", "");
  check_field (offer, RC_OFFER_LINE_DISCOUNT, "tape", "", "");
  g_assert_cmpuint (offer->lines->len, ==, 0);
}

/* Terms that say nothing leave nothing behind; ids are never given twice at a time. */
static void
test_lines_and_options (void)
{
  g_autoptr (RcOffer) offer = rc_offer_new ();
  g_autoptr (GPtrArray) usual = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_payment_free);

  rc_offer_edit_set_optional (offer, "tape", TRUE);
  rc_offer_edit_set_hidden (offer, "tape", TRUE);
  rc_offer_edit_set_optional (offer, "tape", FALSE);
  g_assert_true (rc_offer_find_line (offer, "tape")->hidden);
  rc_offer_edit_set_hidden (offer, "tape", FALSE);
  g_assert_null (rc_offer_find_line (offer, "tape"));

  g_assert_cmpstr (rc_offer_edit_add_extra (offer, NULL, RC_UNIT_EACH)->id, ==, "X1");
  g_assert_cmpstr (rc_offer_edit_add_extra (offer, "lay", RC_UNIT_SQ_YD)->id, ==, "X2");
  check_field (offer, RC_OFFER_EXTRA_PRICE, "X1", "45", "45.00");
  check_field (offer, RC_OFFER_EXTRA_QUANTITY, "X1", "1.5", "1.5");
  check_field (offer, RC_OFFER_EXTRA_QUANTITY, "X1", "", NULL);
  rc_offer_edit_set_optional (offer, "X1", TRUE);
  rc_offer_edit_remove_extra (offer, "X1");
  g_assert_null (rc_offer_find_line (offer, "X1"));
  check_field (offer, RC_OFFER_EXTRA_PRICE, "X1", "45", NULL);
  check_field (offer, RC_OFFER_OPTION_NAME, "B", "Loop", NULL);
  check_field (offer, RC_OFFER_PAYMENT_PART, NULL, "30", NULL);
  g_assert_cmpstr (rc_offer_edit_add_extra (offer, NULL, RC_UNIT_EACH)->id, ==, "X1");

  /* The shop's own steps become the job's, then one more with what is left. */
  g_ptr_array_add (usual, rc_payment_new ("With the order", 300000));
  rc_offer_edit_add_payment (offer, usual);
  g_assert_cmpuint (offer->payments->len, ==, 2);
  g_assert_cmpint (((const RcPayment *)offer->payments->pdata[1])->part_ppm, ==, 700000);
  rc_offer_edit_remove_payment (offer, 0);
  g_assert_cmpuint (offer->payments->len, ==, 1);

  g_assert_cmpstr (rc_offer_edit_add_option (offer, "Saxony")->id, ==, "B");
  g_assert_cmpstr (rc_offer_edit_add_option (offer, NULL)->id, ==, "C");
  rc_offer_edit_swap (rc_offer_edit_find_option (offer, "C"), "hall", "saxony", NULL);
  rc_offer_edit_swap (rc_offer_edit_find_option (offer, "C"), "hall", "saxony", "least-carpet");
  g_assert_cmpuint (rc_offer_edit_find_option (offer, "C")->swaps->len, ==, 1);
  rc_offer_edit_swap (rc_offer_edit_find_option (offer, "C"), "hall", NULL, NULL);
  g_assert_cmpuint (rc_offer_edit_find_option (offer, "C")->swaps->len, ==, 0);
  rc_offer_edit_remove_option (offer, "B");
  g_assert_null (rc_offer_edit_find_option (offer, "B"));
}

/* --- the window --- */

static void
set_up (DeskFixture *fixture, gconstpointer data)
{
  desk_fixture_open (fixture, TRUE);
  rc_document_set_improve_seconds (rc_window_get_document (fixture->window), 0);
  desk_fixture_settle ();
}

static void
tear_down (DeskFixture *fixture, gconstpointer data)
{
  desk_fixture_close (fixture);
}

static void
wait_for_plans (RcDocument *document)
{
  desk_fixture_settle ();
  while (!rc_offer_plans_are_current (rc_offer_plans_of (document)))
    g_main_context_iteration (NULL, TRUE);
  desk_fixture_settle ();
}

static RcOfferWindow *
open_offer (DeskFixture *fixture)
{
  GtkWidget *window = rc_offer_window_new (fixture->window);

  gtk_window_present (GTK_WINDOW (window));
  wait_for_plans (rc_window_get_document (fixture->window));
  return RC_OFFER_WINDOW (window);
}

static const RcQuote *
get_quote (DeskFixture *fixture)
{
  return rc_document_get_outcome (rc_window_get_document (fixture->window))->quote;
}

static void
type (GtkWidget *entry, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  desk_fixture_settle ();
}

/* Each piece of the carpet stands there with its room, its width and its length. */
static void
check_pieces (const RcPlan *plan, const char *goods, const char *said)
{
  guint n = 0;

  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (plan->pieces, i);
      const RcRoom  *room = rc_measure_find_room (plan->measure, piece->room);

      if (!g_str_equal (piece->goods, goods) || room == NULL)
        continue;
      g_autofree char *width = rc_length_format (piece->cut_width, &RC_LENGTH_STYLE_IMPERIAL);
      g_autofree char *length = rc_length_format (piece->cut_length, &RC_LENGTH_STYLE_IMPERIAL);
      g_autofree char *sentence = g_strdup_printf ("Piece %u, %s: %s × %s", piece->number, room->name, width, length);
      g_assert_nonnull (strstr (said, sentence));
      n++;
    }
  g_assert_cmpuint (n, >, 0);
}

/* Every figure opens to rooms, pieces, packs, price and rule; the total to its sums. */
static void
test_figures_open (DeskFixture *fixture, gconstpointer data)
{
  RcOfferWindow *window = open_offer (fixture);
  RcQuoteView   *view = rc_offer_window_get_view (window);
  const RcQuote *quote = get_quote (fixture);

  g_assert_cmpuint (rc_quote_view_get_n_lines (view), ==, quote->lines->len);
  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (quote->lines, i);
      g_autofree char   *amount = rc_money_format (line->gross, &quote->currency), *said = NULL;

      g_assert_null (rc_quote_view_dup_said (view, i));
      rc_quote_view_open (view, i);
      said = rc_quote_view_dup_said (view, i);
      g_assert_nonnull (strstr (said, amount));
      g_assert_nonnull (strstr (said, "halves away from zero"));
      if (i == 0)
        check_pieces (rc_document_get_outcome (rc_window_get_document (fixture->window))->plan, line->item, said);
      if (line->packs > 0)
        g_assert_nonnull (strstr (said, "In whole packs: "));
    }
  rc_quote_view_open (view, quote->lines->len);
  g_autofree char *total = rc_money_format (quote->total, &quote->currency);
  g_autofree char *said = rc_quote_view_dup_said (view, quote->lines->len);
  g_assert_nonnull (strstr (said, total));
  g_assert_nonnull (strstr (said, "Tax of 7 % on "));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* What is settled for a line and for the whole is in the total at once, the line stays open, and undo takes it back. */
static void
test_terms (DeskFixture *fixture, gconstpointer data)
{
  RcOfferWindow     *window = open_offer (fixture);
  RcQuoteView       *view = rc_offer_window_get_view (window);
  RcDocument        *document = rc_window_get_document (fixture->window);
  const RcQuote     *quote = get_quote (fixture);
  const RcMoney      total = quote->total, sum = quote->sum;
  const RcQuoteLine *line = g_ptr_array_index (quote->lines, 0);
  const RcMoney      amount = line->amount;

  rc_quote_view_open (view, 0);
  GtkWidget *check = desk_fixture_find (GTK_WIDGET (view), GTK_TYPE_CHECK_BUTTON, NULL);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), TRUE);
  wait_for_plans (document);
  g_assert_cmpint (get_quote (fixture)->sum, ==, sum - amount);
  g_autofree char *said = rc_quote_view_dup_said (view, 0);
  g_assert_nonnull (strstr (said, "Optional: not in the total"));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), FALSE);
  wait_for_plans (document);
  g_assert_cmpint (get_quote (fixture)->total, ==, total);

  GtkWidget *discount = desk_fixture_find (GTK_WIDGET (window), GTK_TYPE_ENTRY, "Discount, %");
  type (desk_fixture_find (GTK_WIDGET (view), GTK_TYPE_ENTRY, "Discount, %"), "10");
  wait_for_plans (document);
  g_assert_cmpint (get_quote (fixture)->sum, ==, sum - rc_money_part (amount, 100000));
  g_assert_nonnull (discount);
  while (rc_document_undo (document, NULL, NULL))
    wait_for_plans (document);
  g_assert_cmpint (get_quote (fixture)->total, ==, total);
  g_assert_cmpuint (rc_document_get_job (document)->offer->lines->len, ==, 0);

  GtkWidget *detail = desk_fixture_find (GTK_WIDGET (window), GTK_TYPE_DROP_DOWN, "Customer sees");
  gtk_drop_down_set_selected (GTK_DROP_DOWN (detail), RC_DETAIL_GROUPS);
  wait_for_plans (document);
  g_assert_cmpint (get_quote (fixture)->detail, ==, RC_DETAIL_GROUPS);
  g_assert_cmpint (get_quote (fixture)->total, ==, total);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Options side by side: priced, issued under one number, on the sheet. */
static void
test_options (DeskFixture *fixture, gconstpointer data)
{
  RcOfferWindow   *window = open_offer (fixture);
  RcDocument      *document = rc_window_get_document (fixture->window);
  const GPtrArray *plans;
  const RcMoney    total = get_quote (fixture)->total;
  g_autoptr (GError) error = NULL;

  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "offer.add-option", NULL));
  wait_for_plans (document);
  plans = rc_offer_plans_get (rc_offer_plans_of (document));
  g_assert_cmpuint (plans->len, ==, 2);
  g_assert_cmpstr (((const RcOfferPlan *)plans->pdata[1])->id, ==, "B");
  /* Nothing is swapped yet. */
  g_assert_cmpint (((const RcOfferPlan *)plans->pdata[1])->outcome->quote->total, ==, total);

  RcJob             *job = rc_document_dup_job (document);
  const RcFloorArea *area = g_ptr_array_index (rc_document_get_measure_of (document, job)->areas, 1);
  const char        *other
      = g_strcmp0 (area->carpet, "quillstone-saxony-slate") == 0 ? "fennel-twist-oat" : "quillstone-saxony-slate";
  rc_offer_edit_swap (rc_offer_edit_find_option (job->offer, "B"), area->id, other, NULL);
  g_assert_true (rc_document_commit (document, job, "swap", NULL, &error));
  wait_for_plans (document);
  plans = rc_offer_plans_get (rc_offer_plans_of (document));
  const RcOfferPlan *b = g_ptr_array_index (plans, 1);
  g_assert_null (b->fault);
  g_assert_cmpint (b->outcome->quote->total, !=, total);
  g_assert_cmpint (get_quote (fixture)->total, ==, total);
  RcMoney other_total = b->outcome->quote->total;

  g_autoptr (RcSheetSet) set = rc_sheet_set_new (rc_document_get_outcome (document), plans, NULL);
  g_assert_cmpint (rc_sheet_set_find (set, RC_SHEET_ALTERNATIVES), >=, 0);
  g_autofree char *number = rc_quote_issue (fixture->store, plans, NULL, RC_PAPER_A4, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (number, ==, "Q-1");
  g_autoptr (RcQuote) issued = rc_store_load_quote (fixture->store, "Q-1-B", &error);
  g_assert_no_error (error);
  g_assert_cmpint (issued->total, ==, other_total);
  g_assert_cmpstr (issued->option, ==, "Option B");
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "offer.remove-option", NULL));
  wait_for_plans (document);
  g_assert_cmpuint (rc_offer_plans_get (rc_offer_plans_of (document))->len, ==, 1);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* A further line: added, named, priced, taken away; an issued quotation opens to its figures. */
static void
test_further_line (DeskFixture *fixture, gconstpointer data)
{
  RcOfferWindow *window = open_offer (fixture);
  RcQuoteView   *view = rc_offer_window_get_view (window);
  RcDocument    *document = rc_window_get_document (fixture->window);
  RcMoney        sum = get_quote (fixture)->sum;
  guint          n = rc_quote_view_get_n_lines (view);

  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "offer.add-line", NULL));
  wait_for_plans (document);
  g_assert_cmpuint (rc_quote_view_get_n_lines (view), ==, n + 1);
  rc_quote_view_open (view, n);
  type (desk_fixture_find (GTK_WIDGET (view), GTK_TYPE_ENTRY, "Price"), "120.5");
  type (desk_fixture_find (GTK_WIDGET (view), GTK_TYPE_ENTRY, "Quantity"), "2");
  wait_for_plans (document);
  g_assert_cmpint (get_quote (fixture)->sum, ==, sum + 24100);

  GtkWidget *quotes = rc_quote_window_new (fixture->window);
  gtk_window_present (GTK_WINDOW (quotes));
  g_assert_true (gtk_widget_activate_action (quotes, "quote.issue", NULL));
  desk_fixture_settle ();
  RcQuoteView *frozen = rc_quote_window_get_view (RC_QUOTE_WINDOW (quotes));
  g_assert_cmpuint (rc_quote_view_get_n_lines (frozen), ==, n + 1);
  rc_quote_view_open (frozen, n);
  g_autofree char *said = rc_quote_view_dup_said (frozen, n);
  g_assert_nonnull (strstr (said, "2 × 120.50 = 241.00 USD"));
  gtk_window_destroy (GTK_WINDOW (quotes));

  g_signal_emit_by_name (desk_fixture_find (GTK_WIDGET (view), GTK_TYPE_BUTTON, "Take away"), "clicked");
  wait_for_plans (document);
  g_assert_cmpint (get_quote (fixture)->sum, ==, sum);
  gtk_window_destroy (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);

  g_test_add_func ("/offer/fields", test_fields);
  g_test_add_func ("/offer/lines and options", test_lines_and_options);
  g_test_add ("/offer/every figure opens", DeskFixture, NULL, set_up, test_figures_open, tear_down);
  g_test_add ("/offer/terms", DeskFixture, NULL, set_up, test_terms, tear_down);
  g_test_add ("/offer/options side by side", DeskFixture, NULL, set_up, test_options, tear_down);
  g_test_add ("/offer/a further line", DeskFixture, NULL, set_up, test_further_line, tear_down);
  return g_test_run ();
}
