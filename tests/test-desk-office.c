/* The office as people work in it, on a virtual display: quotations, states, papers, orders for many jobs. */
#include "attachment-list.h"
#include "document-things.h"
#include "order-window.h"
#include "paper-window.h"
#include "office-hand.h"
#include "quote-window.h"
#include "rowcut-error.h"

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

/* What was accepted is held against the plan: carpet out of stock in place of bought is the same plan, a room that was
 * changed is not, and what differs is said. */
static void
test_departure (DeskFixture *fixture, gconstpointer data)
{
  RcDocument    *document = rc_window_get_document (fixture->window);
  RcQuoteWindow *quotes = office_hand_open_window (fixture, "win.quotes", RC_TYPE_QUOTE_WINDOW);
  g_autoptr (RcRoll) roll = rc_roll_new ("R-9", "fennel-twist-oat", 40 * RC_TICKS_PER_FOOT);
  g_autoptr (GError) error = NULL;

  office_hand_act (quotes, "quote.issue");
  office_hand_act (quotes, "quote.accept");
  g_assert_null (rc_document_dup_departure (document));
  g_autofree char *ticket = rc_store_receive_roll (fixture->store, roll, NULL, "2026-03-02T08:00:00Z", &error);
  g_assert_true (rc_store_reserve_roll (fixture->store, ticket, rc_document_get_job (document)->id,
                                        20 * RC_TICKS_PER_FOOT, "2026-03-02T08:00:00Z", &error));
  rc_window_note_change (fixture->window);
  desk_fixture_settle ();
  g_assert_cmpuint (rc_document_get_outcome (document)->job->rolls->len, ==, 1);
  g_assert_null (rc_document_dup_departure (document));
  office_hand_widen (fixture);
  desk_fixture_settle ();
  g_autofree char *departure = rc_document_dup_departure (document);
  g_assert_nonnull (strstr (departure, "not the one accepted with Q-1:\nFennel Twist, oat: "));
  g_assert_nonnull (strstr (departure, "\nTotal: "));
  g_assert_nonnull (desk_fixture_find (GTK_WIDGET (fixture->window), GTK_TYPE_LABEL, departure));
  for (guint wall = 0; wall < 2; wall++)
    g_assert_true (gtk_widget_activate_action (GTK_WIDGET (fixture->window), "win.undo", NULL));
  desk_fixture_settle ();
  g_assert_null (rc_document_dup_departure (document));
}

int
main (int argc, char **argv)
{
  static const struct
  {
    const char *path;
    void (*test) (DeskFixture *, gconstpointer);
  } TESTS[] = { { "quotations are issued, revised and accepted", test_quotations },
                { "a plan that is not the one accepted", test_departure },
                { "jobs are found by their states", test_states },
                { "floors are drawn in the list", test_floors_in_the_list },
                { "papers are kept with the job", test_papers },
                { "one order per supplier for many jobs", test_orders_for_many_jobs } };

  gtk_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (TESTS); i++)
    {
      g_autofree char *path = g_strdup_printf ("/desk-office/%s", TESTS[i].path);
      g_test_add (path, DeskFixture, NULL, office_hand_set_up, TESTS[i].test, office_hand_tear_down);
    }
  return g_test_run ();
}
