/* The office as people work in it, on a virtual display: from a quotation to orders, rolls, cuts and measuring again.
 */
#include <glib/gi18n-lib.h>

#include "attachment-list.h"
#include "compare-window.h"
#include "desk-fixture.h"
#include "document-things.h"
#include "glance-window.h"
#include "job-file-dialog.h"
#include "length-rows.h"
#include "order-window.h"
#include "price-window.h"
#include "paper-window.h"
#include "quote-window.h"
#include "roll-form.h"
#include "roll-window.h"
#include "rowcut-error.h"
#include "translation.h"

#define FT(n) ((n)*RC_TICKS_PER_FOOT)

/* Cut 11' 11" wide with its trim. */
static const char PARLOUR[]
    = "<job xmlns=\"urn:rowcut:job:1\" id=\"J-7\" title=\"Parlour\">\n"
      "  <customer name=\"Tamsin Oddlebury\"/>\n"
      "  <goods><carpet id=\"fennel-twist-oat\" name=\"Fennel Twist, oat\" supplier=\"Skerrow Mills\" unit=\"sq yd\""
      " roll-width=\"12 ft\" length-step=\"1 ft\" full-roll=\"120 ft\"/></goods>\n"
      "  <measure id=\"M1\"><room id=\"parlour\" name=\"Parlour\">"
      "<wall bearing=\"E\" length=\"11 ft 8 in\"/><wall bearing=\"N\" length=\"14 ft\"/>"
      "<wall bearing=\"W\" length=\"11 ft 8 in\"/><wall bearing=\"S\" length=\"14 ft\"/></room>"
      "<area id=\"a\" rooms=\"parlour\" carpet=\"fennel-twist-oat\"/></measure>\n</job>\n";

static void
set_up (DeskFixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  desk_fixture_open (fixture, FALSE);
  g_autofree char *path = g_build_filename (fixture->folder, "parlour.xml", NULL);
  g_assert_true (g_file_set_contents (path, PARLOUR, -1, &error));
  rc_window_import (fixture->window, path, &error);
  g_assert_no_error (error);
  rc_document_set_improve_seconds (rc_window_get_document (fixture->window), 0);
  desk_fixture_settle ();
}

static void
tear_down (DeskFixture *fixture, gconstpointer data)
{
  desk_fixture_close (fixture);
}

/* Opens a window by the action and finds it. */
static gpointer
open_window (DeskFixture *fixture, const char *action, GType type)
{
  GListModel *windows = gtk_window_get_toplevels ();

  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (fixture->window), action, NULL));
  desk_fixture_settle ();
  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (windows, i);
      if (G_OBJECT_TYPE (window) == type)
        return window;
    }
  g_assert_not_reached ();
}

static void
act (gpointer window, const char *action)
{
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), action, NULL));
  desk_fixture_settle ();
}

static void
click (gpointer window, const char *button)
{
  g_signal_emit_by_name (desk_fixture_find (GTK_WIDGET (window), GTK_TYPE_BUTTON, button), "clicked");
  desk_fixture_settle ();
}

static RcJobState
get_state (DeskFixture *fixture)
{
  return rc_job_get_state (rc_document_get_job (rc_window_get_document (fixture->window)));
}

/* Issued, revised, one accepted; each kept as it was printed, and the job says how far it has come. */
static void
test_quotations (DeskFixture *fixture, gconstpointer data)
{
  RcQuoteWindow *quotes = open_window (fixture, "win.quotes", RC_TYPE_QUOTE_WINDOW);
  g_autoptr (GError) error = NULL;

  g_assert_cmpuint (rc_quote_window_get_n_quotes (quotes), ==, 0);
  act (quotes, "quote.issue");
  g_assert_cmpstr (rc_quote_window_get_chosen (quotes)->number, ==, "Q-1");
  g_assert_cmpint (get_state (fixture), ==, RC_JOB_QUOTED);
  /* Nothing differs from it: no variation, and why is said. */
  act (quotes, "quote.vary");
  g_assert_cmpuint (rc_quote_window_get_n_quotes (quotes), ==, 1);
  g_assert_nonnull (strstr (rc_quote_window_get_told (quotes), "Q-1"));
  act (quotes, "quote.revise");
  g_assert_cmpuint (rc_quote_window_get_n_quotes (quotes), ==, 2);
  g_assert_cmpstr (rc_quote_window_get_chosen (quotes)->revises, ==, "Q-1");
  act (quotes, "quote.accept");
  g_assert_cmpint (rc_quote_window_get_chosen (quotes)->state, ==, RC_QUOTE_ACCEPTED);
  g_assert_cmpint (get_state (fixture), ==, RC_JOB_ACCEPTED);
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
  g_assert_cmpint (get_state (fixture), ==, RC_JOB_MEASURED);
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
  act (fixture->window, "win.find-job");
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
  g_assert_cmpuint (g_bytes_get_size (bytes), ==, strlen (PARLOUR));
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

  act (orders, "order.paper");
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

/* Types the parlour's width, 4 in more than the piece that is cut or ordered, into the wall table. */
static void
widen (DeskFixture *fixture)
{
  rc_document_choose (rc_window_get_document (fixture->window), rc_choice_of_thing (RC_THING_ROOM, "parlour"));
  desk_fixture_settle ();
  for (guint wall = 0; wall < 4; wall += 2)
    {
      rc_wall_table_focus_wall (rc_bench_get_wall_table (rc_window_get_bench (fixture->window)), wall);
      desk_fixture_type (GTK_WINDOW (fixture->window), "12' 3\"");
    }
}

/* Measured again while the first order stands: what is missing is ordered beside it, and says so. */
static void
check_supplement (DeskFixture *fixture, RcOrderWindow *orders, const RcPurchase *first)
{
  guint n = rc_order_window_get_n_orders (orders);

  act (fixture->window, "win.new-measure");
  act (orders, "order.make"); /* the same rooms */
  g_assert_cmpuint (rc_order_window_get_n_orders (orders), ==, n);
  widen (fixture);
  act (orders, "order.make");
  g_assert_cmpuint (rc_order_window_get_n_orders (orders), >, n);
  const RcPurchase *chosen = rc_order_window_get_chosen (orders);
  g_assert_cmpstr (chosen->supplier, ==, first->supplier);
  g_assert_cmpstr (chosen->jobs, ==, "J-7");
  g_assert_nonnull (strstr (chosen->notes, first->number));
  g_autoptr (RcPurchase) whole = rc_store_load_purchase (fixture->store, chosen->number, NULL);
  g_assert_cmpint (sum_carpet (whole, "J-7"), >, 0);
  g_assert_cmpint (sum_carpet (whole, "J-7"), <, sum_carpet (first, "J-7"));
  n = rc_order_window_get_n_orders (orders);
  act (orders, "order.make");
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
  RcOrderWindow *orders = open_window (fixture, "win.orders", RC_TYPE_ORDER_WINDOW);
  act (orders, "order.make-all");
  const RcPurchase *order = rc_order_window_get_chosen (orders);
  g_assert_nonnull (order);
  g_assert_cmpstr (order->jobs, ==, "J-7, J-8");
  check_order_paper (orders, order->number);
  g_assert_cmpint (get_state (fixture), ==, RC_JOB_ORDERED);
  g_autoptr (RcPurchase) whole = rc_store_load_purchase (fixture->store, order->number, &error);
  RcMoney sum = 0;
  for (guint i = 0; i < whole->lines->len; i++)
    sum += ((const RcQuoteLine *)g_ptr_array_index (whole->lines, i))->amount;
  g_assert_cmpint (sum, ==, whole->total);
  guint n = rc_order_window_get_n_orders (orders);
  act (orders, "order.make");
  g_assert_cmpuint (rc_order_window_get_n_orders (orders), ==, n);
  g_assert_nonnull (strstr (rc_order_window_get_told (orders), whole->number));
  check_supplement (fixture, orders, whole);
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
  RcOrderWindow *orders = open_window (fixture, "win.orders", RC_TYPE_ORDER_WINDOW);

  act (orders, "order.make");
  choose_carpet_order (fixture, orders);
  act (orders, "order.send");
  act (orders, "order.confirm");
  desk_fixture_type (GTK_WINDOW (orders), "SM-4711");
  click (orders, "do_button");
  g_assert_cmpstr (rc_order_window_get_chosen (orders)->reference, ==, "SM-4711");
  act (orders, "order.receive");
  GtkWidget *length = desk_fixture_find (GTK_WIDGET (orders), RC_TYPE_LENGTH_ENTRY, NULL);
  gtk_widget_grab_focus (length);
  desk_fixture_type (GTK_WINDOW (orders), "30'");
  click (orders, "do_button");
  g_assert_cmpint (rc_order_window_get_chosen (orders)->state, ==, RC_PURCHASE_RECEIVED);
  g_assert_nonnull (strstr (rc_order_window_get_told (orders), "R-1"));
  /* What was ordered of it is kept for the job, and the rest is the shop's. */
  g_autoptr (GPtrArray) kept = rc_store_find_reservations (fixture->store, "R-1", "J-7", NULL);
  g_assert_cmpuint (kept->len, ==, 1);
  g_assert_cmpint (((const RcReservation *)g_ptr_array_index (kept, 0))->length, ==, FT (15));
}

/* The piece as planned, off 18 ft, of which 3' 9" are kept. */
static void
cut (DeskFixture *fixture)
{
  RcRollWindow *rolls = open_window (fixture, "win.rolls", RC_TYPE_ROLL_WINDOW);
  GtkWidget    *remnants = NULL;

  g_assert_true (rc_roll_window_choose (rolls, "R-1"));
  act (rolls, "roll.cut");
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
  g_assert_cmpint (get_state (fixture), ==, RC_JOB_CUT);
  g_assert_cmpuint (rc_roll_window_get_n_rolls (rolls), ==, 2);
}

/* The parlour is 12' 3": 4 in more than the piece. Typed into the wall table. */
static void
measure_again (DeskFixture *fixture)
{
  act (fixture->window, "win.new-measure");
  g_assert_nonnull (strstr (rc_window_get_told (fixture->window), "1 piece is cut"));
  widen (fixture);
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
          g_assert_nonnull (strstr (line->because, "cut/1"));
          n_cut++;
        }
    }
  g_assert_cmpuint (n_cut, ==, 1);
}

/* The accounts hear of what was accepted and of what is ordered, once each. */
static void
check_accounts (DeskFixture *fixture)
{
  g_autofree char *path = g_build_filename (fixture->folder, "accounts.csv", NULL), *text = NULL;
  g_autoptr (GPtrArray) orders = rc_store_find_purchases (fixture->store, NULL, NULL);
  g_autoptr (GError) error = NULL;

  g_assert_true (rc_accounts_write (fixture->store, path, &error));
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
  g_assert_false (rc_accounts_write (fixture->store, "/no/such/folder/accounts.csv", &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
}

static void
test_from_quotation_to_measuring_again (DeskFixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  RcQuoteWindow *quotes = open_window (fixture, "win.quotes", RC_TYPE_QUOTE_WINDOW);

  set_language (fixture, "es");
  RcGlanceWindow *glance = open_window (fixture, "win.glance", RC_TYPE_GLANCE_WINDOW);
  act (quotes, "quote.issue");
  g_assert_cmpuint (rc_glance_window_get_n (glance, RC_GLANCE_QUOTES), ==, 1);
  act (quotes, "quote.accept");
  g_assert_cmpuint (rc_glance_window_get_n (glance, RC_GLANCE_QUOTES), ==, 0);
  g_assert_cmpuint (rc_glance_window_get_n (glance, RC_GLANCE_ORDERS), ==, 1); /* to be placed */
  order_and_receive (fixture);
  cut (fixture);
  g_assert_cmpuint (rc_glance_window_get_n (glance, RC_GLANCE_ROLLS), >, 0); /* the remnant */
  check_accounts (fixture);
  measure_again (fixture);
  check_bench (fixture);

  RcCompareWindow   *compare = open_window (fixture, "win.compare", RC_TYPE_COMPARE_WINDOW);
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
  quotes = open_window (fixture, "win.quotes", RC_TYPE_QUOTE_WINDOW);
  g_assert_true (rc_quote_window_choose (quotes, "Q-1"));
  act (quotes, "quote.vary");
  g_assert_true (rc_quote_window_get_chosen (quotes)->variation);
  check_variation_words (fixture, rc_quote_window_get_chosen (quotes)->number);
  RcOutcome *outcome = rc_document_get_outcome (rc_window_get_document (fixture->window));
  g_autoptr (RcQuote) first = rc_store_load_quote (fixture->store, "Q-1", &error);
  g_assert_no_error (error);
  g_assert_cmpint (first->total + rc_quote_window_get_chosen (quotes)->total, ==, outcome->quote->total);
  g_autofree char *report = NULL;
  g_assert_true (rc_store_check (fixture->store, &report, &error));
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
                { "one order per supplier for many jobs", test_orders_for_many_jobs },
                { "from a quotation to measuring again", test_from_quotation_to_measuring_again } };

  gtk_test_init (&argc, &argv, NULL);
  rc_translation_init ();
  for (guint i = 0; i < G_N_ELEMENTS (TESTS); i++)
    {
      g_autofree char *path = g_strdup_printf ("/desk-office/%s", TESTS[i].path);
      g_test_add (path, DeskFixture, NULL, set_up, TESTS[i].test, tear_down);
    }
  return g_test_run ();
}
