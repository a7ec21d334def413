/* The office as people work in it, on a virtual display: quotations, states, papers, orders for many jobs. */
#include "attachment-list.h"
#include "document-things.h"
#include "order-window.h"
#include "price-window.h"
#include "paper-window.h"
#include "office-hand.h"
#include "quote-window.h"
#include "rowcut-error.h"
#include "shop-window.h"

/* Issued, revised, one accepted; each kept as it was printed, and the job says how far it has come. */
static void
test_quotations (DeskFixture *fixture, gconstpointer data)
{
  RcQuoteWindow *quotes = office_hand_open_window (fixture, "win.quotes", RC_TYPE_QUOTE_WINDOW);
  g_autoptr (GError) error = NULL;

  g_assert_cmpuint (rc_quote_window_get_n_quotes (quotes), ==, 0);
  office_hand_act (quotes, "quote.issue");
  g_assert_cmpstr (rc_quote_window_get_chosen (quotes)->number, ==, "Q-1");
  g_assert_cmpint (office_hand_get_state (fixture), ==, RC_JOB_QUOTED);
  /* Nothing differs from it: no variation, and why is said. */
  office_hand_act (quotes, "quote.vary");
  g_assert_cmpuint (rc_quote_window_get_n_quotes (quotes), ==, 1);
  g_assert_nonnull (strstr (rc_quote_window_get_told (quotes), "Q-1"));
  office_hand_act (quotes, "quote.revise");
  g_assert_cmpuint (rc_quote_window_get_n_quotes (quotes), ==, 2);
  g_assert_cmpstr (rc_quote_window_get_chosen (quotes)->revises, ==, "Q-1");
  office_hand_act (quotes, "quote.accept");
  g_assert_cmpint (rc_quote_window_get_chosen (quotes)->state, ==, RC_QUOTE_ACCEPTED);
  g_assert_cmpint (office_hand_get_state (fixture), ==, RC_JOB_ACCEPTED);
  g_assert_true (rc_quote_window_choose (quotes, "Q-1"));
  g_assert_cmpint (rc_quote_window_get_chosen (quotes)->state, ==, RC_QUOTE_SUPERSEDED);
  g_autoptr (GBytes) paper = rc_store_load_paper (fixture->store, "Q-1", &error);
  g_assert_no_error (error);
  g_assert_true (g_str_has_prefix (g_bytes_get_data (paper, NULL), "%PDF-"));
}

/* The list of jobs shows those in a state; the panel changes it, and undo takes it back. */
static void
test_states (DeskFixture *fixture, gconstpointer data)
{
  RcJobList  *jobs = rc_window_get_job_list (fixture->window);
  RcDocument *document = rc_window_get_document (fixture->window);
  GtkWidget  *drop = desk_fixture_find (GTK_WIDGET (fixture->window), GTK_TYPE_DROP_DOWN, "state_drop");

  rc_job_list_show_state (jobs, RC_JOB_MEASURED);
  g_assert_cmpuint (rc_job_list_get_n_jobs (jobs), ==, 0);
  drop = desk_fixture_find (GTK_WIDGET (rc_window_get_bench (fixture->window)), GTK_TYPE_DROP_DOWN, "state_drop");
  g_assert_nonnull (drop);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (drop), RC_JOB_MEASURED);
  desk_fixture_settle ();
  g_assert_cmpint (office_hand_get_state (fixture), ==, RC_JOB_MEASURED);
  g_assert_cmpuint (rc_job_list_get_n_jobs (jobs), ==, 1);
  GtkWidget *day
      = desk_fixture_find (GTK_WIDGET (rc_window_get_bench (fixture->window)), GTK_TYPE_ENTRY, "state_entry");
  gtk_editable_set_text (GTK_EDITABLE (day), "2026-02-30"); /* no such day */
  desk_fixture_settle ();
  g_assert_cmpstr (rc_document_get_job (document)->reached[RC_JOB_MEASURED], !=, "2026-02-30");
  gtk_editable_set_text (GTK_EDITABLE (day), "2026-03-02");
  desk_fixture_settle ();
  g_assert_cmpstr (rc_document_get_job (document)->reached[RC_JOB_MEASURED], ==, "2026-03-02");
  rc_job_list_show_state (jobs, RC_JOB_ENQUIRY);
  g_assert_cmpuint (rc_job_list_get_n_jobs (jobs), ==, 0);
}

static gboolean
is_inked (GtkWidget *picture)
{
  int          width = gtk_widget_get_width (picture), height = gtk_widget_get_height (picture);
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  g_autoptr (GdkPaintable) paintable = gtk_widget_paintable_new (picture);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_t         *cr = cairo_create (surface);
  gboolean         inked = FALSE;

  gdk_paintable_snapshot (paintable, snapshot, width, height);
  GskRenderNode *node = gtk_snapshot_free_to_node (snapshot);
  if (node != NULL)
    gsk_render_node_draw (node, cr);
  cairo_surface_flush (surface);
  for (int i = 0; i < height * cairo_image_surface_get_stride (surface) && !inked; i++)
    inked = cairo_image_surface_get_data (surface)[i] != 0;
  g_clear_pointer (&node, gsk_render_node_unref);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return inked;
}

/* A row of the list shows the job's floor once there was a moment to read it, and reading it takes nothing from whoever
 * is told of others' changes. */
static void
test_floors_in_the_list (DeskFixture *fixture, gconstpointer data)
{
  RcJobList       *jobs = rc_window_get_job_list (fixture->window);
  RcDocument      *document = rc_window_get_document (fixture->window);
  RcJobPictures   *pictures = rc_job_list_get_pictures (jobs);
  g_autofree char *path = g_build_filename (fixture->folder, "store.db", NULL);
  g_autoptr (GError) error = NULL;
  RcStore *other = rc_store_open (path, NULL, &error);
  g_autoptr (RcJob) job = rc_store_load_job (other, "J-7", &error);

  g_assert_no_error (error);
  office_hand_act (fixture->window, "win.find-job");
  desk_fixture_paint (GTK_WIDGET (fixture->window));
  desk_fixture_settle ();
  GtkWidget *picture = desk_fixture_find (GTK_WIDGET (jobs), RC_TYPE_JOB_PICTURE, NULL);
  g_assert_nonnull (picture);
  g_assert_cmpuint (rc_job_pictures_get_n_waiting (pictures), ==, 0);
  desk_fixture_paint (GTK_WIDGET (fixture->window));
  g_assert_true (is_inked (picture));
  /* Another program changes the job, the list draws it anew; the job open here is still refused. */
  g_free (job->title);
  job->title = g_strdup ("Parlour and hall");
  g_assert_true (rc_store_save_job (other, job, "Title", "2026-03-02T08:00:00Z", &error));
  gtk_widget_queue_draw (picture);
  desk_fixture_paint (GTK_WIDGET (fixture->window));
  desk_fixture_settle ();
  g_assert_cmpuint (rc_job_pictures_get_n_waiting (pictures), ==, 0);
  g_assert_false (rc_document_set_state (document, RC_JOB_MEASURED, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_CONFLICT);
  g_assert_cmpstr (rc_document_get_job (document)->title, ==, "Parlour and hall");
  rc_store_close (other);
}

/* A file's bytes are kept in the store, in the job's steps; undo takes it away again. */
static void
test_papers (DeskFixture *fixture, gconstpointer data)
{
  RcDocument       *document = rc_window_get_document (fixture->window);
  RcAttachmentList *papers = RC_ATTACHMENT_LIST (
      desk_fixture_find (GTK_WIDGET (rc_window_get_bench (fixture->window)), RC_TYPE_ATTACHMENT_LIST, NULL));
  g_autofree char *path = g_build_filename (fixture->folder, "parlour.xml", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_true (rc_attachment_list_add_file (papers, path, &error));
  desk_fixture_settle ();
  g_assert_cmpuint (rc_attachment_list_get_n (papers), ==, 1);
  const RcAttachment *paper = g_ptr_array_index (rc_document_get_job (document)->attachments, 0);
  g_assert_cmpstr (paper->name, ==, "parlour.xml");
  g_autoptr (GBytes) bytes = rc_store_load_file (fixture->store, paper->digest, &error);
  g_assert_cmpuint (g_bytes_get_size (bytes), ==, strlen (OFFICE_HAND_PARLOUR));
  g_assert_true (rc_document_undo (document, NULL, &error));
  desk_fixture_settle ();
  g_assert_cmpuint (rc_attachment_list_get_n (papers), ==, 0);
  g_assert_false (rc_attachment_list_add_file (papers, "/no/such/file", &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
}

/* The kept order on paper: its number and its jobs', ways to print, save and mail it. */
static void
check_order_paper (RcOrderWindow *orders, const char *number)
{
  g_autofree char *title = g_strdup_printf ("Order %s to ", number);
  GListModel      *windows = gtk_window_get_toplevels ();
  GtkWindow       *paper = NULL;

  office_hand_act (orders, "order.paper");
  desk_fixture_settle ();
  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (windows, i);
      const char *its = gtk_window_get_title (window);

      if (its != NULL && g_str_has_prefix (its, title))
        paper = window;
    }
  g_assert_nonnull (paper);
  g_assert_nonnull (desk_fixture_find (GTK_WIDGET (paper), GTK_TYPE_BUTTON, NULL));
  g_assert_cmpstr (rc_paper_window_get_told (GTK_WIDGET (paper)), ==, "");
  gtk_window_destroy (paper);
}

static gint64
sum_carpet (const RcPurchase *order, const char *job)
{
  gint64 sum = 0;

  for (guint i = 0; i < order->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (order->lines, i);
      if (g_str_equal (line->item, "fennel-twist-oat") && g_str_has_prefix (line->name, job))
        sum += line->quantity_micro;
    }
  return sum;
}

/* Measured again while the first order stands: what is missing is ordered beside it, and says so. */
static void
check_supplement (DeskFixture *fixture, RcOrderWindow *orders, const RcPurchase *first)
{
  guint n = rc_order_window_get_n_orders (orders);

  office_hand_act (fixture->window, "win.new-measure");
  office_hand_act (orders, "order.make"); /* the same rooms */
  g_assert_cmpuint (rc_order_window_get_n_orders (orders), ==, n);
  office_hand_widen (fixture);
  office_hand_act (orders, "order.make");
  g_assert_cmpuint (rc_order_window_get_n_orders (orders), >, n);
  const RcPurchase *chosen = rc_order_window_get_chosen (orders);
  g_assert_cmpstr (chosen->supplier, ==, first->supplier);
  g_assert_cmpstr (chosen->jobs, ==, "J-7");
  g_assert_nonnull (strstr (chosen->notes, first->number));
  g_autoptr (RcPurchase) whole = rc_store_load_purchase (fixture->store, chosen->number, NULL);
  g_assert_cmpint (sum_carpet (whole, "J-7"), >, 0);
  g_assert_cmpint (sum_carpet (whole, "J-7"), <, sum_carpet (first, "J-7"));
  n = rc_order_window_get_n_orders (orders);
  office_hand_act (orders, "order.make");
  g_assert_cmpuint (rc_order_window_get_n_orders (orders), ==, n); /* ordered once */
}

/* One order per supplier for two jobs; not a second time. */
static void
test_orders_for_many_jobs (DeskFixture *fixture, gconstpointer data)
{
  RcDocument *document = rc_window_get_document (fixture->window);
  g_autoptr (GError) error = NULL;
  g_autoptr (RcJob) other = rc_document_dup_job (document);

  g_free (other->id);
  other->id = g_strdup ("J-8");
  rc_job_set_state (other, RC_JOB_ACCEPTED, "2026-03-02");
  g_assert_true (rc_store_save_job (fixture->store, other, "Job", "2026-03-02T08:00:00Z", &error));
  g_assert_true (rc_document_set_state (document, RC_JOB_ACCEPTED, &error));
  desk_fixture_settle ();
  RcOrderWindow *orders = office_hand_open_window (fixture, "win.orders", RC_TYPE_ORDER_WINDOW);
  office_hand_act (orders, "order.make-all");
  const RcPurchase *order = rc_order_window_get_chosen (orders);
  g_assert_nonnull (order);
  g_assert_cmpstr (order->jobs, ==, "J-7, J-8");
  check_order_paper (orders, order->number);
  g_assert_cmpint (office_hand_get_state (fixture), ==, RC_JOB_ORDERED);
  g_autoptr (RcPurchase) whole = rc_store_load_purchase (fixture->store, order->number, &error);
  RcMoney sum = 0;
  for (guint i = 0; i < whole->lines->len; i++)
    sum += ((const RcQuoteLine *)g_ptr_array_index (whole->lines, i))->amount;
  g_assert_cmpint (sum, ==, whole->total);
  guint n = rc_order_window_get_n_orders (orders);
  office_hand_act (orders, "order.make");
  g_assert_cmpuint (rc_order_window_get_n_orders (orders), ==, n);
  g_assert_nonnull (strstr (rc_order_window_get_told (orders), whole->number));
  check_supplement (fixture, orders, whole);
}

static void
count_change (guint *n)
{
  ++*n;
}

/* Another program changes a price: the list shows it, and the job takes it. */
static void
test_prices_are_followed (DeskFixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, "store.db", NULL);
  g_autoptr (GError) error = NULL;
  RcStore *other = rc_store_open (path, NULL, &error);
  g_autoptr (RcPriceBook) book = other != NULL ? rc_store_load_price_book (other, &error) : NULL;
  GtkWidget *window = rc_price_window_new (GTK_WINDOW (fixture->window), fixture->store);
  guint      n_changes = 0;

  g_assert_no_error (error);
  g_signal_connect_swapped (window, "changed", G_CALLBACK (count_change), &n_changes);
  rc_price_window_follow (RC_PRICE_WINDOW (window));
  g_assert_cmpuint (n_changes, ==, 0); /* nobody has changed anything */
  ((RcPrice *)g_ptr_array_index (book->prices, 0))->sale += 100;
  g_assert_true (rc_store_save_price_book (other, book, &error));
  rc_price_window_follow (RC_PRICE_WINDOW (window));
  g_assert_cmpuint (n_changes, ==, 1);
  /* What is typed next is no conflict. */
  g_assert_true (rc_price_window_type (RC_PRICE_WINDOW (window), 0, RC_PRICE_DAY_TO, "2031-01-31"));
  rc_store_close (other);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
write_into (gpointer window, const char *label, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (desk_fixture_find (GTK_WIDGET (window), GTK_TYPE_ENTRY, label)), text);
}

/* Goods are written in the price window by keys alone; a fault names its field. */
static void
test_goods_are_typed (DeskFixture *fixture, gconstpointer data)
{
  GtkWidget *window = rc_price_window_new (GTK_WINDOW (fixture->window), fixture->store);
  g_autoptr (GError) error = NULL;

  gtk_window_present (GTK_WINDOW (window));
  desk_fixture_settle ();
  office_hand_act (window, "price.add-goods");
  desk_fixture_type (GTK_WINDOW (window), "Otter Berber, sand");
  desk_fixture_press_return (GTK_WINDOW (window));
  g_assert_nonnull (strstr (rc_price_window_get_told (RC_PRICE_WINDOW (window)), "has no roll width"));
  write_into (window, "Supplier", "Skerrow Mills");
  write_into (window, "Roll width", "12 parsecs");
  desk_fixture_press_return (GTK_WINDOW (window));
  g_assert_nonnull (strstr (rc_price_window_get_told (RC_PRICE_WINDOW (window)), "Roll width: “12 parsecs”"));
  desk_fixture_type (GTK_WINDOW (window), "12'"); /* the keyboard is in the field that was wrong */
  write_into (window, "Sold in steps of", "1 ft");
  desk_fixture_press_return (GTK_WINDOW (window));
  g_assert_cmpuint (rc_price_window_get_n_lines (RC_PRICE_WINDOW (window)), ==, 1); /* there to be priced */
  g_assert_true (rc_price_window_type (RC_PRICE_WINDOW (window), 0, RC_PRICE_SALE, "31.50"));
  g_autoptr (RcPriceBook) book = rc_store_load_price_book (fixture->store, &error);
  const RcGoods *goods = rc_price_book_find_goods (book, "otter-berber-sand");
  g_assert_cmpint (goods->roll_width, ==, 12 * RC_TICKS_PER_FOOT);
  g_assert_cmpint (goods->length_step, ==, RC_TICKS_PER_FOOT);
  g_assert_cmpstr (goods->supplier, ==, "Skerrow Mills");
  g_assert_cmpint (rc_price_book_find (book, goods->id, NULL)->sale, ==, 3150);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* What is issued stays, whatever becomes of the goods; so does the job that has them. */
static void
test_issued_stays (DeskFixture *fixture, gconstpointer data)
{
  RcDocument *document = rc_window_get_document (fixture->window);
  g_autoptr (GError) error = NULL;
  g_autofree char *number = rc_store_issue_quote (fixture->store, rc_document_get_job (document),
                                                  rc_document_get_outcome (document)->quote, "2026-03-02", &error);
  g_autoptr (RcQuote) before = rc_store_load_quote (fixture->store, number, &error);
  GtkWidget *window = rc_price_window_new (GTK_WINDOW (fixture->window), fixture->store);

  g_assert_no_error (error);
  gtk_window_present (GTK_WINDOW (window));
  desk_fixture_settle ();
  gtk_widget_grab_focus (desk_fixture_find (window, GTK_TYPE_ENTRY, "Cost"));
  office_hand_act (window, "price.goods");
  write_into (window, "Name", "Fennel Twist, rye");
  write_into (window, "Roll width", "15 ft");
  office_hand_click (window, "_Keep in the price book");
  g_autoptr (RcPriceBook) book = rc_store_load_price_book (fixture->store, &error);
  g_assert_cmpint (rc_price_book_find_goods (book, "fennel-twist-oat")->roll_width, ==, 15 * RC_TICKS_PER_FOOT);
  g_autoptr (RcQuote) after = rc_store_load_quote (fixture->store, number, &error);
  g_assert_cmpint (after->total, ==, before->total);
  g_assert_cmpuint (after->lines->len, ==, before->lines->len);
  for (guint i = 0; i < after->lines->len; i++)
    g_assert_cmpstr (((const RcQuoteLine *)g_ptr_array_index (after->lines, i))->name, ==,
                     ((const RcQuoteLine *)g_ptr_array_index (before->lines, i))->name);
  g_assert_cmpint (rc_job_find_goods (rc_document_get_job (document), "fennel-twist-oat")->roll_width, ==,
                   12 * RC_TICKS_PER_FOOT);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* The letterhead, the logo and what holds for all jobs are set here; a fault names its field, and nothing is kept. */
static void
test_shop (DeskFixture *fixture, gconstpointer data)
{
  RcShopWindow    *shop = office_hand_open_window (fixture, "win.shop", RC_TYPE_SHOP_WINDOW);
  g_autofree char *png = g_build_filename (fixture->folder, "logo.png", NULL);
  g_autofree char *other = g_build_filename (fixture->folder, "parlour.xml", NULL);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 40, 20);
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (cairo_surface_write_to_png (surface, png), ==, CAIRO_STATUS_SUCCESS);
  cairo_surface_destroy (surface);
  g_assert_false (rc_shop_window_take_logo (shop, other, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_PARSE);
  g_clear_error (&error);
  g_assert_true (rc_shop_window_take_logo (shop, png, &error));
  write_into (shop, "Name", "Ropewalk Floors");
  write_into (shop, "Tax, %", "107");
  g_assert_false (rc_shop_window_keep (shop));
  g_assert_nonnull (strstr (rc_shop_window_get_told (shop), "Tax, %: “107” is not between 0 and 100"));
  write_into (shop, "Tax, %", "8.25");
  write_into (shop, "Job numbers", "no number");
  g_assert_false (rc_shop_window_keep (shop));
  write_into (shop, "Job numbers", "YY-####");
  write_into (shop, "Quotations hold, days", "x");
  g_assert_false (rc_shop_window_keep (shop));
  write_into (shop, "Quotations hold, days", "45");
  g_assert_true (rc_shop_window_keep (shop));
  g_autoptr (RcPriceBook) book = rc_store_load_price_book (fixture->store, &error);
  g_assert_cmpstr (book->shop_name, ==, "Ropewalk Floors");
  g_assert_cmpint (book->tax_ppm, ==, 82500);
  g_assert_cmpint (book->valid_days, ==, 45);
  g_assert_cmpstr (book->job_numbers, ==, "YY-####");
  g_assert_nonnull (book->logo);
  g_assert_cmpuint (book->prices->len, >, 0); /* all else as it was */
  desk_fixture_settle ();
  RcOutcome *outcome = rc_document_get_outcome (rc_window_get_document (fixture->window));
  g_assert_cmpint (outcome->quote->tax_ppm, ==, 82500); /* and the open job is priced by it at once */
  gtk_window_destroy (GTK_WINDOW (shop));
}

int
main (int argc, char **argv)
{
  static const struct
  {
    const char *path;
    void (*test) (DeskFixture *, gconstpointer);
  } TESTS[] = { { "quotations are issued, revised and accepted", test_quotations },
                { "jobs are found by their states", test_states },
                { "floors are drawn in the list", test_floors_in_the_list },
                { "papers are kept with the job", test_papers },
                { "prices are followed", test_prices_are_followed },
                { "goods are typed", test_goods_are_typed },
                { "an issued quotation stays when goods change", test_issued_stays },
                { "one order per supplier for many jobs", test_orders_for_many_jobs },
                { "the shop's letterhead and terms", test_shop } };

  gtk_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (TESTS); i++)
    {
      g_autofree char *path = g_strdup_printf ("/desk-office/%s", TESTS[i].path);
      g_test_add (path, DeskFixture, NULL, office_hand_set_up, TESTS[i].test, office_hand_tear_down);
    }
  return g_test_run ();
}
