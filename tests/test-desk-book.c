/* The price book and the shop as the office writes them, on a virtual display: prices, goods, suppliers, letterhead. */
#include "document-things.h"
#include "office-hand.h"
#include "price-window.h"
#include "rowcut-error.h"
#include "shop-rows.h"
#include "shop-window.h"
#include "supplier-page.h"

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
  GtkWidget *window = rc_price_window_new (fixture->window);
  guint      n_changes = 0;

  g_assert_no_error (error);
  g_signal_connect_swapped (rc_window_get_book_keeper (fixture->window), "changed", G_CALLBACK (count_change),
                            &n_changes);
  rc_window_note_change (fixture->window);
  g_assert_cmpuint (n_changes, ==, 0); /* nobody has changed anything */
  ((RcPrice *)g_ptr_array_index (book->prices, 0))->sale += 100;
  g_assert_true (rc_store_save_price_book (other, book, &error));
  rc_window_note_change (fixture->window);
  g_assert_cmpuint (n_changes, ==, 1);
  g_signal_handlers_disconnect_by_data (rc_window_get_book_keeper (fixture->window), &n_changes);
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
  GtkWidget *window = rc_price_window_new (fixture->window);
  g_autoptr (GError) error = NULL;

  gtk_window_present (GTK_WINDOW (window));
  desk_fixture_settle ();
  office_hand_act (window, "price.add-goods");
  desk_fixture_type (GTK_WINDOW (window), "Otter Berber, sand");
  desk_fixture_press_return (GTK_WINDOW (window));
  g_assert_nonnull (strstr (rc_price_window_get_told (RC_PRICE_WINDOW (window)), "has no roll width"));
  desk_fixture_type (GTK_WINDOW (window), "12"); /* the keyboard is in the field that was wrong */
  write_into (window, "Match: a drop of", "2/7");
  desk_fixture_press_return (GTK_WINDOW (window));
  g_assert_nonnull (strstr (rc_price_window_get_told (RC_PRICE_WINDOW (window)), "no repeat length"));
  desk_fixture_type (GTK_WINDOW (window), "3'");
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
  g_assert_cmpint (goods->match, ==, RC_MATCH (2, 7));
  g_assert_cmpstr (goods->supplier, ==, "Skerrow Mills");
  g_assert_cmpint (rc_price_book_find (book, goods->id, NULL)->sale, ==, 3150);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
find_by (gpointer window, const char *label, const char *words)
{
  gtk_editable_set_text (GTK_EDITABLE (desk_fixture_find (GTK_WIDGET (window), GTK_TYPE_SEARCH_ENTRY, label)), words);
  desk_fixture_settle ();
}

static gpointer
open_suppliers (DeskFixture *fixture, GtkWidget **page)
{
  gpointer  window = office_hand_open_window (fixture, "win.prices", RC_TYPE_PRICE_WINDOW);
  GtkStack *pages = GTK_STACK (desk_fixture_find (window, GTK_TYPE_STACK, "pages"));

  gtk_stack_set_visible_child_name (pages, "suppliers");
  *page = gtk_stack_get_visible_child (pages);
  desk_fixture_settle ();
  return window;
}

/* A supplier is written by keys, and taken away when nothing comes from there; each can be taken back. */
static void
test_suppliers (DeskFixture *fixture, gconstpointer data)
{
  GtkWidget *page;
  gpointer   window = open_suppliers (fixture, &page);
  guint      n = rc_supplier_page_get_n (RC_SUPPLIER_PAGE (page));
  g_autoptr (GError) error = NULL;

  office_hand_act (window, "price.add-goods");
  desk_fixture_type (window, "Otter Supplies");
  write_into (page, "Delivers in, days", "soon");
  desk_fixture_press_return (window);
  g_assert_nonnull (strstr (rc_price_window_get_told (window), "Delivers in, days: “soon”"));
  desk_fixture_type (window, "9"); /* the keyboard is in the field that was wrong */
  write_into (page, "Freight charged, USD", "45");
  write_into (page, "E-mail", "orders@otter.example");
  gtk_drop_down_set_selected (GTK_DROP_DOWN (desk_fixture_find (page, GTK_TYPE_DROP_DOWN, NULL)), 3);
  desk_fixture_press_return (window);
  g_assert_cmpuint (rc_supplier_page_get_n (RC_SUPPLIER_PAGE (page)), ==, n + 1);
  g_autoptr (RcPriceBook) book = rc_store_load_price_book (fixture->store, &error);
  const RcSupplier *otter = rc_price_book_find_supplier (book, "Otter Supplies");
  g_assert_cmpint (otter->lead_days, ==, 9);
  g_assert_cmpint (otter->freight_sale, ==, 4500);
  g_assert_cmpstr (otter->email, ==, "orders@otter.example");
  g_assert_cmpstr (otter->language, ==, "fr");
  find_by (page, "Find a supplier", "otter");
  office_hand_click (page, "_Take away");
  g_assert_cmpuint (rc_supplier_page_get_n (RC_SUPPLIER_PAGE (page)), ==, 0);
  office_hand_act (window, "price.undo");
  g_assert_cmpuint (rc_supplier_page_get_n (RC_SUPPLIER_PAGE (page)), ==, 1);
  office_hand_act (window, "price.redo");
  g_autoptr (RcPriceBook) after = rc_store_load_price_book (fixture->store, &error);
  g_assert_null (rc_price_book_find_supplier (after, "Otter Supplies"));
  gtk_window_destroy (window);
}

/* Where goods come from it, the reason is said and it stays. */
static void
test_supplier_stays (DeskFixture *fixture, gconstpointer data)
{
  GtkWidget *page;
  gpointer   window = open_suppliers (fixture, &page);
  guint      n = rc_supplier_page_get_n (RC_SUPPLIER_PAGE (page));

  office_hand_click (page, "_Take away");
  g_assert_cmpuint (rc_supplier_page_get_n (RC_SUPPLIER_PAGE (page)), ==, n);
  g_assert_nonnull (strstr (rc_price_window_get_told (window), "articles come from there"));
  gtk_window_destroy (window);
}

/* Goods taken away are back with a press of the button beside what is said of it. */
static void
test_goods_come_back (DeskFixture *fixture, gconstpointer data)
{
  gpointer window = office_hand_open_window (fixture, "win.prices", RC_TYPE_PRICE_WINDOW);
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPriceBook) before = rc_store_load_price_book (fixture->store, &error);

  find_by (window, "Find a price", "fennel oat");
  while (rc_price_window_get_n_lines (window) > 0) /* its prices, then the goods */
    office_hand_click (window, "_Take away");
  g_autoptr (RcPriceBook) without = rc_store_load_price_book (fixture->store, &error);
  g_assert_null (rc_price_book_find_goods (without, "fennel-twist-oat"));
  g_assert_nonnull (strstr (rc_price_window_get_told (window), "is taken away"));
  office_hand_click (window, "_Undo");
  g_autoptr (RcPriceBook) back = rc_store_load_price_book (fixture->store, &error);
  g_assert_true (rc_goods_equal (rc_price_book_find_goods (back, "fennel-twist-oat"),
                                 rc_price_book_find_goods (before, "fennel-twist-oat")));
  g_assert_cmpuint (rc_price_window_get_n_lines (window), ==, 1);
  gtk_window_destroy (window);
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
  GtkWidget *window = rc_price_window_new (fixture->window);

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

static const char *
get_shop_name (RcShopWindow *shop)
{
  return gtk_editable_get_text (GTK_EDITABLE (desk_fixture_find (GTK_WIDGET (shop), GTK_TYPE_ENTRY, "Name")));
}

/* Taken back in the window of prices, the shop's shows what it was; a change of a price leaves what is written there.
 */
static void
check_undo (DeskFixture *fixture, RcShopWindow *shop)
{
  gpointer prices = office_hand_open_window (fixture, "win.prices", RC_TYPE_PRICE_WINDOW);

  g_assert_cmpstr (get_shop_name (shop), ==, "Ropewalk Floors");
  office_hand_act (prices, "price.undo");
  g_assert_cmpstr (get_shop_name (shop), !=, "Ropewalk Floors");
  office_hand_act (prices, "price.redo");
  g_assert_cmpstr (get_shop_name (shop), ==, "Ropewalk Floors");
  write_into (shop, "Name", "Ropewalk and more");
  find_by (prices, "Find a price", "fennel oat");
  office_hand_click (prices, "_Take away");
  g_assert_cmpstr (get_shop_name (shop), ==, "Ropewalk and more");
  office_hand_act (prices, "price.undo");
  g_assert_cmpstr (get_shop_name (shop), ==, "Ropewalk and more");
  gtk_window_destroy (prices);
  write_into (shop, "Name", "Ropewalk Floors");
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
  check_undo (fixture, shop);
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

/* Rows as they are read; `said` NULL: they are taken. */
typedef struct
{
  const char *first[RC_TEXT_ROWS_COLUMNS], *second[RC_TEXT_ROWS_COLUMNS], *said;
} RowsCase;

static void
check_rows (GtkWidget *(*make) (void), gboolean (*read) (RcTextRows *, RcPriceBook *, GError **), const RowsCase *one)
{
  const RcCurrency currency = { "USD", 2 };
  g_autoptr (RcPriceBook) book = rc_price_book_new (&currency);
  RcTextRows *rows = RC_TEXT_ROWS (g_object_ref_sink (make ()));
  g_autoptr (GError) error = NULL;

  rc_text_rows_add (rows, NULL, one->first);
  rc_text_rows_add (rows, NULL, one->second);
  g_assert_true (read (rows, book, &error) == (one->said == NULL));
  g_assert_cmpuint (book->tax_areas->len + book->payments->len, ==, one->said == NULL ? 2 : 0);
  if (one->said != NULL)
    g_assert_nonnull (strstr (error->message, one->said));
  g_assert_finalize_object (rows);
}

static void
test_rows (DeskFixture *fixture, gconstpointer data)
{
  static const RowsCase AREAS[] = {
    { { "Sales tax", "8.25", "0" }, { "Sales tax", "6", "" }, NULL },
    { { "Sales tax", "8.25", "0" }, { "", "6", "" }, "Tax area 2, Name on paper: nothing is written" },
    { { "Sales tax", "", "0" }, { "Port levy", "6", "" }, "Tax area 1, On goods, %: nothing is written" },
    { { "Sales tax", "1", "101" }, { "Port levy", "6", "" }, "Tax area 1, On work, %: “101” is not between" },
  };
  static const RowsCase PAYMENTS[] = {
    { { "With the order", "40", "" }, { "When fitted", "60", "14" }, NULL },
    { { "With the order", "40", "" }, { "When fitted", "61", "" }, "Step of payment 2, Part, %: with it" },
    { { "With the order", "40", "" }, { "When fitted", "60", "soon" }, "Step of payment 2, Days later: “soon”" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (AREAS); i++)
    check_rows (rc_shop_rows_new_tax_areas, rc_shop_rows_read_tax_areas, &AREAS[i]);
  for (guint i = 0; i < G_N_ELEMENTS (PAYMENTS); i++)
    check_rows (rc_shop_rows_new_payments, rc_shop_rows_read_payments, &PAYMENTS[i]);
}

/* A tax area and a step of payment are written in the shop's window and taken by a job's quotation; the area keeps its
 * id under another name, and a second of its name has another. */
static void
test_shop_rows (DeskFixture *fixture, gconstpointer data)
{
  RcShopWindow *shop = office_hand_open_window (fixture, "win.shop", RC_TYPE_SHOP_WINDOW);
  g_autoptr (GError) error = NULL;

  office_hand_click (shop, "Add a ta_x area");
  desk_fixture_type (GTK_WINDOW (shop), "Port levy");
  write_into (shop, "On goods, %", "6.5");
  office_hand_click (shop, "Add a step of _payment");
  desk_fixture_type (GTK_WINDOW (shop), "With the order");
  write_into (shop, "Part, %", "40");
  g_assert_true (rc_shop_window_keep (shop));
  write_into (shop, "Name on paper", "Harbour levy");
  office_hand_click (shop, "_Keep");
  g_autoptr (RcPriceBook) book = rc_store_load_price_book (fixture->store, &error);
  const RcTaxArea *area = rc_price_book_find_tax_area (book, "port-levy");
  g_assert_cmpstr (area->name, ==, "Harbour levy");
  g_assert_cmpint (area->work_ppm, ==, 65000);
  g_assert_cmpint (((const RcPayment *)book->payments->pdata[0])->part_ppm, ==, 400000);
  RcDocument *document = rc_window_get_document (fixture->window);
  RcJob      *job = rc_document_dup_job (document);
  job->offer->tax_area = g_strdup ("port-levy");
  g_assert_true (rc_document_commit (document, job, "Tax area", NULL, &error));
  desk_fixture_settle ();
  g_assert_no_error (rc_document_get_outcome (document)->price_fault);
  const RcQuote *quote = rc_document_get_outcome (document)->quote;
  g_assert_cmpstr (quote->tax_name, ==, "Harbour levy");
  g_assert_cmpint (quote->tax_ppm, ==, 65000);
  g_assert_cmpuint (quote->payments->len, ==, 2); /* and the rest */
  gtk_window_destroy (GTK_WINDOW (shop));
}

int
main (int argc, char **argv)
{
  static const struct
  {
    const char *path;
    void (*test) (DeskFixture *, gconstpointer);
  } TESTS[] = { { "prices are followed", test_prices_are_followed },
                { "goods are typed", test_goods_are_typed },
                { "goods come back", test_goods_come_back },
                { "suppliers are written and taken away", test_suppliers },
                { "a supplier stays where goods need it", test_supplier_stays },
                { "an issued quotation stays when goods change", test_issued_stays },
                { "the shop's letterhead and terms", test_shop },
                { "rows of the shop say what is wrong with them", test_rows },
                { "tax areas and steps of payment", test_shop_rows } };

  gtk_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (TESTS); i++)
    {
      g_autofree char *path = g_strdup_printf ("/desk-book/%s", TESTS[i].path);
      g_test_add (path, DeskFixture, NULL, office_hand_set_up, TESTS[i].test, office_hand_tear_down);
    }
  return g_test_run ();
}
