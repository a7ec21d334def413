/* The price book as it is typed into, without a display. */
#include "price-edit.h"
#include "rowcut-error.h"
#include "supplier-edit.h"

#include <string.h>

static RcPriceBook *
new_book (void)
{
  const RcCurrency currency = { "USD", 2 };
  RcPriceBook     *book = rc_price_book_new (&currency);
  RcGoods         *twist = rc_goods_new ("twist", RC_GOODS_CARPET, "Harbour Twist");
  RcGoods         *tape = rc_goods_new ("tape", RC_GOODS_TAPE, "Seam tape, 3 in");

  twist->unit = RC_UNIT_SQ_YD;
  twist->supplier = g_strdup ("Quay Mills");
  tape->unit = RC_UNIT_FT;
  g_ptr_array_add (book->goods, twist);
  g_ptr_array_add (book->goods, tape);
  g_ptr_array_add (book->prices, rc_price_new ("lay", RC_UNIT_SQ_YD, 400, 650));
  g_ptr_array_add (book->prices, rc_price_new ("twist", RC_UNIT_SQ_YD, 2000, 3500));
  return book;
}

static void
test_lines (void)
{
  static const struct
  {
    const char *words;
    guint       n;
    const char *first;
    int         price;
  } cases[] = {
    { NULL, 3, "twist", 1 },
    { "", 3, "twist", 1 },
    { "TAPE", 1, "tape", -1 },
    { "quay", 1, "twist", 1 },
    { "harbour carpet", 1, "twist", 1 },
    { "laying", 1, "lay", 0 },
    { "oak", 0, NULL, 0 },
  };
  g_autoptr (RcPriceBook) book = new_book ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GArray) lines = rc_price_edit_find_lines (book, cases[i].words);

      g_assert_cmpuint (lines->len, ==, cases[i].n);
      if (cases[i].first == NULL)
        continue;
      g_assert_cmpstr (g_array_index (lines, RcPriceLine, 0).item, ==, cases[i].first);
      g_assert_cmpint (g_array_index (lines, RcPriceLine, 0).price, ==, cases[i].price);
    }
}

static void
test_fields (void)
{
  static const struct
  {
    RcPriceField field;
    const char  *typed, *shown; /* shown NULL: refused */
  } cases[] = {
    { RC_PRICE_COST, "21", "21.00" },
    { RC_PRICE_COST, "-1", NULL },
    { RC_PRICE_COST, "dear", NULL },
    { RC_PRICE_SALE, "35.5", "35.50" },
    { RC_PRICE_SALE, "35.555", NULL },
    { RC_PRICE_MARGIN, "50", "50 %" },
    { RC_PRICE_MARGIN, "50 %", "50 %" },
    { RC_PRICE_MARGIN, "100", NULL },
    { RC_PRICE_QUANTITY_FROM, "160", "160" },
    { RC_PRICE_QUANTITY_FROM, "", "" },
    { RC_PRICE_QUANTITY_FROM, "some", NULL },
    { RC_PRICE_DAY_FROM, "2026-03-01", "2026-03-01" },
    { RC_PRICE_DAY_FROM, "", "" },
    { RC_PRICE_DAY_FROM, "2026-02-29", NULL },
    { RC_PRICE_DAY_FROM, "tomorrow", NULL },
    { RC_PRICE_DAY_TO, " 2026-03-31 ", "2026-03-31" },
  };
  g_autoptr (RcPriceBook) book = new_book ();
  const RcPriceLine line = { "twist", 1 };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (RcPriceBook) edited = rc_price_edit_set (book, line, cases[i].field, cases[i].typed, &error);
      g_autofree char *shown = edited != NULL ? rc_price_edit_dup_text (edited, line, cases[i].field) : NULL;

      g_assert_cmpstr (shown, ==, cases[i].shown);
      g_assert_true ((error != NULL) == (cases[i].shown == NULL));
      /* The book that was edited stays as it was. */
      g_assert_cmpint (((const RcPrice *)book->prices->pdata[1])->cost, ==, 2000);
    }
}

/* 20.00 at a margin of 50 % of the sale price is 40.00. */
static void
test_margin (void)
{
  const RcPriceLine line = { "twist", 1 };
  g_autoptr (RcPriceBook) book = new_book ();
  g_autoptr (RcPriceBook) edited = rc_price_edit_set (book, line, RC_PRICE_MARGIN, "50", NULL);

  g_assert_cmpint (((const RcPrice *)edited->prices->pdata[1])->sale, ==, 4000);
}

static void
test_first_price (void)
{
  const RcPriceLine none = { "tape", -1 };
  g_autoptr (RcPriceBook) book = new_book ();
  g_autoptr (RcPriceBook) edited = rc_price_edit_set (book, none, RC_PRICE_SALE, "0.30", NULL);
  const RcPrice *price = rc_price_book_find (edited, "tape", "2026-03-01");

  g_assert_nonnull (price);
  g_assert_cmpint (price->sale, ==, 30);
  g_assert_cmpint (price->unit, ==, RC_UNIT_FT);
}

static void
test_days_in_order (void)
{
  const RcPriceLine line = { "twist", 1 };
  g_autoptr (RcPriceBook) book = new_book ();
  g_autoptr (RcPriceBook) from = rc_price_edit_set (book, line, RC_PRICE_DAY_FROM, "2026-03-10", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_null (rc_price_edit_set (from, line, RC_PRICE_DAY_TO, "2026-03-09", &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_RANGE);
}

/* From today the new price, until yesterday the old one. */
static void
test_renewed (void)
{
  g_autoptr (RcPriceBook) book = new_book ();
  g_autoptr (GError) error = NULL;
  guint new_price = 0;
  g_autoptr (RcPriceBook) renewed = rc_price_edit_renew (book, 1, "2026-03-01", &new_price, &error);
  g_autoptr (RcPriceBook) dearer = NULL;

  g_assert_no_error (error);
  dearer = rc_price_edit_set (renewed, (RcPriceLine){ "twist", (int)new_price }, RC_PRICE_SALE, "36", &error);
  g_assert_no_error (error);
  g_assert_cmpint (rc_price_book_find (dearer, "twist", "2026-02-28")->sale, ==, 3500);
  g_assert_cmpint (rc_price_book_find (dearer, "twist", "2026-03-01")->sale, ==, 3600);
  g_assert_null (rc_price_edit_renew (dearer, new_price, "2026-03-01", &new_price, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_RANGE);
}

static void
test_removed (void)
{
  g_autoptr (RcPriceBook) book = new_book ();
  g_autoptr (RcPriceBook) edited = rc_price_edit_remove (book, 1);
  g_autoptr (GArray) lines = rc_price_edit_find_lines (edited, "twist");

  g_assert_null (rc_price_book_find (edited, "twist", NULL));
  g_assert_cmpuint (lines->len, ==, 1); /* the goods are there to be priced again */
}

static RcGoods *
new_berber (void)
{
  RcGoods *berber = rc_goods_new ("", RC_GOODS_CARPET, " Lay ");

  berber->roll_width = 12 * RC_TICKS_PER_FOOT;
  berber->supplier = g_strdup ("  ");
  return berber;
}

/* New goods come last, with an id of their own, which is that of no work and of no other goods. */
static void
test_goods_added (void)
{
  g_autoptr (RcPriceBook) book = new_book ();
  g_autoptr (RcGoods) berber = new_berber ();
  g_autoptr (GError) error = NULL;
  g_autofree char *id = NULL, *other_id = NULL, *greek_id = NULL;
  g_autoptr (RcPriceBook) edited = rc_price_edit_put_goods (book, NULL, berber, &id, &error);
  g_autoptr (RcPriceBook) twice = rc_price_edit_put_goods (edited, NULL, berber, &other_id, &error);
  const RcGoods *put;

  g_assert_no_error (error);
  g_assert_cmpstr (id, ==, "lay-2"); /* laying is work, and has a price */
  g_assert_cmpstr (other_id, ==, "lay-3");
  put = rc_price_book_find_goods (edited, id);
  g_assert_true (put == g_ptr_array_index (edited->goods, 2));
  g_assert_cmpstr (put->name, ==, "Lay");
  g_assert_null (put->supplier);
  g_assert_cmpuint (book->goods->len, ==, 2);
  g_free (berber->name);
  berber->name = g_strdup ("Café Crème, 5 m");
  g_free (id);
  g_autoptr (RcPriceBook) cafe = rc_price_edit_put_goods (book, NULL, berber, &id, &error);
  g_assert_cmpstr (id, ==, "cafe-creme-5-m");
  g_free (berber->name);
  berber->name = g_strdup ("Χαλί");
  g_autoptr (RcPriceBook) greek = rc_price_edit_put_goods (book, NULL, berber, &greek_id, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (rc_price_book_find_goods (greek, greek_id)->name, ==, "Χαλί");
  g_assert_nonnull (cafe);
}

/* They stay where they stand, under their id and with their prices; who changed them meanwhile is not overwritten. */
static void
test_goods_changed (void)
{
  g_autoptr (RcPriceBook) book = new_book ();
  g_autoptr (RcGoods) twist = rc_goods_copy (g_ptr_array_index (book->goods, 0));
  g_autoptr (RcGoods) before = rc_goods_copy (twist);
  g_autoptr (GError) error = NULL;
  g_autofree char *id = NULL, *no_id = NULL;
  g_autoptr (RcPriceBook) edited = NULL, again = NULL;

  twist->roll_width = 4 * RC_TICKS_PER_M;
  twist->supplier = (g_free (twist->supplier), g_strdup ("Tern Yarns"));
  edited = rc_price_edit_put_goods (book, before, twist, &id, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (id, ==, "twist");
  g_assert_true (rc_goods_equal (g_ptr_array_index (edited->goods, 0), twist));
  g_assert_cmpuint (edited->goods->len, ==, 2);
  g_assert_cmpint (rc_price_book_find (edited, "twist", NULL)->sale, ==, 3500);
  again = rc_price_edit_put_goods (edited, before, twist, &no_id, &error);
  g_assert_null (again);
  g_assert_error (error, RC_ERROR, RC_ERROR_CONFLICT);
}

static void
test_goods_refused (void)
{
  static const struct
  {
    RcLength    roll, usable;
    RcMatch     match;
    const char *name, *said;
  } cases[] = {
    { 0, 0, RC_MATCH_SET, "Berber", "“berber” has no roll width; it must be more than 0, as 12 ft or 4 m" },
    { 100, 101, RC_MATCH_SET, "Berber", "the usable width must not be more than the roll width" },
    { 100, 0, RC_MATCH_HALF_DROP, "Berber", "has a half-drop match but no repeat length" },
    { 100, 0, RC_MATCH_SET, " ", "Name: is blank" },
  };
  g_autoptr (RcPriceBook) book = new_book ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (RcGoods) goods = rc_goods_new ("", RC_GOODS_CARPET, cases[i].name);
      g_autoptr (GError) error = NULL;
      g_autofree char *id = NULL;

      goods->roll_width = cases[i].roll;
      goods->usable_width = cases[i].usable;
      goods->match = cases[i].match;
      g_assert_null (rc_price_edit_put_goods (book, NULL, goods, &id, &error));
      g_assert_error (error, RC_ERROR, RC_ERROR_RANGE);
      g_assert_nonnull (strstr (error->message, cases[i].said));
      g_assert_null (id);
    }
}

static void
test_goods_removed (void)
{
  g_autoptr (RcPriceBook) book = new_book ();
  g_autoptr (RcPriceBook) edited = rc_price_edit_remove_goods (book, "tape");

  g_assert_null (rc_price_book_find_goods (edited, "tape"));
  g_assert_cmpuint (edited->goods->len, ==, 1);
}

/* --- suppliers --- */

static void
test_suppliers_found (void)
{
  static const struct
  {
    const char *words;
    guint       n;
    const char *first;
  } cases[] = {
    { NULL, 2, "Otter Supplies" },
    { "QUAY", 1, "Quay Mills" }, /* goods name it, and nobody has written more of it */
    { "0199 otter", 1, "Otter Supplies" },
    { "rope", 0, NULL },
  };
  g_autoptr (RcPriceBook) book = new_book ();
  RcSupplier *otter = rc_supplier_new ("Otter Supplies");

  otter->phone = g_strdup ("01632 960199");
  g_ptr_array_add (book->suppliers, otter);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GPtrArray) found = rc_supplier_edit_find (book, cases[i].words);

      g_assert_cmpuint (found->len, ==, cases[i].n);
      if (cases[i].first != NULL)
        g_assert_cmpstr (((const RcSupplier *)found->pdata[0])->name, ==, cases[i].first);
    }
}

static RcPriceBook *
put_supplier (const RcPriceBook *book, const RcSupplier *before, const char *name, const char *email, GError **error)
{
  RcSupplier  *supplier = rc_supplier_new (name);
  RcPriceBook *edited;

  supplier->email = g_strdup (email);
  edited = rc_supplier_edit_put (book, before, supplier, error);
  rc_supplier_free (supplier);
  return edited;
}

/* Goods go along with a new name; who changed it meanwhile is not overwritten. */
static void
test_supplier_renamed (void)
{
  g_autoptr (RcPriceBook) book = new_book ();
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPriceBook) added = put_supplier (book, NULL, " Quay Mills ", "orders@quay.example", &error);
  g_assert_no_error (error);
  const RcSupplier *kept = rc_price_book_find_supplier (added, "Quay Mills");
  g_autoptr (RcPriceBook) renamed = put_supplier (added, kept, "Quay & Sons", "orders@quay.example", &error);

  g_assert_no_error (error);
  g_assert_cmpstr (kept->email, ==, "orders@quay.example");
  g_assert_cmpstr (rc_price_book_find_goods (renamed, "twist")->supplier, ==, "Quay & Sons");
  g_assert_null (rc_price_book_find_supplier (renamed, "Quay Mills"));
  g_assert_cmpstr (rc_price_book_find_goods (added, "twist")->supplier, ==, "Quay Mills");
  g_assert_null (put_supplier (renamed, kept, "Quay Mills", NULL, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_CONFLICT);
}

static void
test_supplier_refused (void)
{
  g_autoptr (RcPriceBook) book = new_book ();
  g_autoptr (GError) blank = NULL, twice = NULL, used = NULL;
  g_autoptr (RcPriceBook) added = put_supplier (book, NULL, "Quay Mills", NULL, NULL);
  g_autoptr (RcPriceBook) other = put_supplier (added, NULL, "Otter Supplies", NULL, NULL);
  g_autoptr (RcPriceBook) fewer = NULL;

  g_assert_null (put_supplier (added, NULL, "  ", NULL, &blank));
  g_assert_error (blank, RC_ERROR, RC_ERROR_RANGE);
  g_assert_null (
      put_supplier (other, rc_price_book_find_supplier (other, "Otter Supplies"), "Quay Mills", NULL, &twice));
  g_assert_error (twice, RC_ERROR, RC_ERROR_RANGE);
  g_assert_null (rc_supplier_edit_remove (other, "Quay Mills", &used));
  g_assert_error (used, RC_ERROR, RC_ERROR_REFERENCE);
  g_assert_nonnull (strstr (used->message, "Harbour Twist"));
  fewer = rc_supplier_edit_remove (other, "Otter Supplies", NULL);
  g_assert_cmpuint (fewer->suppliers->len, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/desk-prices/are found by every word", test_lines);
  g_test_add_func ("/desk-prices/fields read back what was typed", test_fields);
  g_test_add_func ("/desk-prices/a margin sets the price", test_margin);
  g_test_add_func ("/desk-prices/goods get their first price", test_first_price);
  g_test_add_func ("/desk-prices/days are in order", test_days_in_order);
  g_test_add_func ("/desk-prices/a new price ends the old one", test_renewed);
  g_test_add_func ("/desk-prices/a price is taken away", test_removed);
  g_test_add_func ("/desk-prices/goods are added", test_goods_added);
  g_test_add_func ("/desk-prices/goods are changed where they stand", test_goods_changed);
  g_test_add_func ("/desk-prices/goods that no job could take are refused", test_goods_refused);
  g_test_add_func ("/desk-prices/goods are taken away", test_goods_removed);
  g_test_add_func ("/desk-prices/suppliers are found by every word", test_suppliers_found);
  g_test_add_func ("/desk-prices/goods follow a supplier's name", test_supplier_renamed);
  g_test_add_func ("/desk-prices/suppliers that goods need stay", test_supplier_refused);
  return g_test_run ();
}
