/* The price book as a table, in and out, and what is wrong with one. */
#include <string.h>

#include "price-csv.h"
#include "rowcut-error.h"
#include "shipped.h"

static const RcCurrency usd = { "USD", 2 };

static RcPriceBook *
parse_well (const char *csv)
{
  g_autoptr (GError) error = NULL;
  RcPriceBook *book = rc_price_csv_parse (csv, "prices.csv", &usd, &error);

  g_assert_no_error (error);
  return book;
}

static void
assert_round_trip (const RcPriceBook *book)
{
  g_autofree char *csv = rc_price_csv_format (book), *again = NULL;
  g_autoptr (RcPriceBook) back = parse_well (csv);

  again = rc_price_csv_format (back);
  g_assert_cmpstr (csv, ==, again);
  g_assert_cmpuint (book->goods->len, ==, back->goods->len);
  g_assert_cmpuint (book->prices->len, ==, back->prices->len);
}

/* The shipped book has a price for each of its goods and each kind of work, and goods of each kind. */
static void
test_shipped_book (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPriceBook) book = rc_shipped_load_price_book (&error);
  gboolean has_kind[RC_N_GOODS_KINDS] = { FALSE };

  g_assert_no_error (error);
  for (guint i = 0; i < book->goods->len; i++)
    {
      const RcGoods *goods = book->goods->pdata[i];
      const RcPrice *price = rc_price_book_find (book, goods->id, "2026-03-02");

      g_assert_nonnull (price);
      g_assert_cmpint (price->sale, >, price->cost);
      g_assert_cmpint (price->cost, >, 0);
      has_kind[goods->kind] = TRUE;
    }
  for (guint i = 0; i < RC_N_GOODS_KINDS; i++)
    g_assert_true (has_kind[i]);
  for (RcWork work = RC_WORK_NONE + 1; work < RC_N_WORKS; work++)
    g_assert_nonnull (rc_price_book_find (book, rc_work_get_name (work), NULL));
  g_assert_cmpint (book->tax_ppm, ==, 70000);
  g_assert_cmpint (book->deposit_ppm, ==, 400000);
  g_assert_cmpint (book->valid_days, ==, 30);
  g_assert_nonnull (strchr (book->shop_address, '\n'));
  assert_round_trip (book);
}

/* Text that a spreadsheet would run goes out with an apostrophe and comes back without. */
static void
test_formulas (void)
{
  static const char *const names[] = { "=1+1", "+1", "-1", "@x", "'=1", "''=1", "'quoted'", "plain" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (RcPriceBook) book = rc_price_book_new (&usd);
      g_autoptr (RcPriceBook) back = NULL;
      g_autofree char *csv = NULL;

      g_ptr_array_add (book->goods, rc_goods_new ("=id", RC_GOODS_TAPE, names[i]));
      csv = rc_price_csv_format (book);
      g_assert_null (strstr (csv, ",="));
      g_assert_null (strstr (csv, "\n="));
      back = parse_well (csv);
      g_assert_cmpstr (((RcGoods *)back->goods->pdata[0])->name, ==, names[i]);
      g_assert_cmpstr (((RcGoods *)back->goods->pdata[0])->id, ==, "=id");
    }
}

/* Quotation marks, commas and line ends within a field; any order of columns; LF and CR LF; a byte order mark. */
static void
test_quoting (void)
{
  g_autoptr (RcPriceBook) book = parse_well ("\xEF\xBB\xBFsale,name,kind,item,roll_width\r\n"
                                             "1.50,\"a \"\"b\"\", c\nd\",carpet,x,12' 6\"\n\n"
                                             "2,,,x,\n");
  const RcGoods *goods = book->goods->pdata[0];

  g_assert_cmpstr (goods->name, ==, "a \"b\", c\nd");
  g_assert_cmpint (goods->roll_width, ==, 150 * RC_TICKS_PER_INCH);
  g_assert_cmpuint (book->prices->len, ==, 2);
  assert_round_trip (book);
}

static const struct
{
  const char *csv;
  const char *names[3];
} faults[] = {
  { "", { "prices.csv", "empty", "" } },
  { "item,sale,colour\n", { "line 1", "“colour”", "roll_width" } },
  { "item,item,sale\n", { "line 1", "twice", "“item”" } },
  { "item,cost\n", { "line 1", "lacks", "“sale”" } },
  { "item,sale\nlay\n", { "line 2", "1 fields", "2" } },
  { "item,sale\nlay,1\nlay,abc\n", { "line 3", "column sale", "abc" } },
  { "item,sale\n\"lay,1\n", { "line 2", "never closed", "" } },
  { "item,sale\n\"lay\"x,1\n", { "line 2", "closing quotation mark", "" } },
  { "item,sale,kind\nx,1,rug\n", { "line 2", "column kind", "“rug”" } },
  { "item,sale,kind\nx,1,carpet\n", { "line 2", "column roll_width", "“x”" } },
  { "item,sale,kind,roll_width\nx,1,carpet,wide\n", { "line 2", "column roll_width", "wide" } },
  { "item,sale,kind,roll_width,usable_width\nx,1,carpet,12 ft,13 ft\n", { "line 2", "“x”", "usable width" } },
  { "item,sale,kind,roll_width,match\nx,1,carpet,12 ft,half-drop\n", { "line 2", "“x”", "no repeat length" } },
  { "item,sale,kind\nt,1,tape\nt,1,tape\n", { "line 3", "column item", "“t”" } },
  { "item,sale,kind\nsweep,1,work\n", { "line 2", "column item", "sweep" } },
  { "item,sale,kind,name\ntax,,setting,7\n", { "line 2", "column item", "tax-percent" } },
  { "item,sale,kind,name\ntax-percent,,setting,a lot\n", { "line 2", "column name", "a lot" } },
  { "item,kind,name,sale\nvalid-days,setting,a month,\n", { "line 2", "column name", "a month" } },
  { "item,kind,name,sale\nvalid-days,setting,-1,\n", { "line 2", "column name", "whole number" } },
  { "item,sale,valid_from\nlay,1,2026-02-30\n", { "line 2", "column valid_from", "2026-02-30" } },
  { "item,sale,cost\nlay,1,-2\n", { "line 2", "column cost", "less than 0" } },
  { "item,sale,roll_width\nlay,1,12ft\n", { "line 2", "column roll_width", "leave it empty" } },
  { "item,sale\n,1\n", { "line 2", "column item", "empty" } },
  { "item,sale\nlay,\n", { "line 2", "column sale", "“lay”" } },
  { "item,sale,unit\nlay,1,furlong\n", { "line 2", "column unit", "furlong" } },
  { "item,sale\nlay,\xff\n", { "prices.csv", "UTF-8", "" } },
};

static void
test_faults (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (faults); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (rc_price_csv_parse (faults[i].csv, "prices.csv", &usd, &error));
      g_assert_nonnull (error);
      g_assert_true (error->domain == RC_ERROR);
      for (guint k = 0; k < G_N_ELEMENTS (faults[i].names); k++)
        if (strstr (error->message, faults[i].names[k]) == NULL)
          g_error ("“%s” does not name “%s”", error->message, faults[i].names[k]);
    }
}

/* Every bad line is told at once, and each column of it. */
static void
test_all_faults (void)
{
  static const char        csv[] = "item,kind,sale,cost,valid_from,valid_to,margin\n"
                                   "lay,work,1,,,,\n"
                                   "sweep,work,x,-1,,,\n"
                                   "twist,,2,1\n"
                                   "twist,,2,1,2026-03-01,2026-02-01,\n"
                                   "twist,,3,1,,,50\n"
                                   "A,tax-area,7,,,,\n";
  static const char *const said[] = { "line 3, column item: ",
                                      "line 3, column cost: must not be less than 0",
                                      "line 3, column sale: ",
                                      "line 4: 4 fields, but the header row has 7",
                                      "line 5, column valid_to: 2026-02-01 is before the first day, 2026-03-01",
                                      "line 6, column margin: makes a sale price of 2.00",
                                      "line 7, column sale: belongs to another kind of row" };
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) lines = NULL;

  g_assert_null (rc_price_csv_parse (csv, "prices.csv", &usd, &error));
  lines = g_strsplit (error->message, "\n", -1);
  g_assert_cmpuint (g_strv_length (lines), ==, G_N_ELEMENTS (said));
  for (gsize i = 0; i < G_N_ELEMENTS (said); i++)
    if (strstr (lines[i], said[i]) == NULL)
      g_error ("“%s” does not say “%s”", lines[i], said[i]);
}

static void
test_many_faults (void)
{
  g_autoptr (GString) csv = g_string_new ("item,sale\n");
  g_autoptr (GError) error = NULL;

  for (int i = 0; i < 1000; i++)
    g_string_append (csv, "lay,x\n");
  g_assert_null (rc_price_csv_parse (csv->str, "prices.csv", &usd, &error));
  g_assert_nonnull (strstr (error->message, "line 41, "));
  g_assert_null (strstr (error->message, "line 42, "));
  g_assert_true (g_str_has_suffix (error->message, "\nand 960 faults more"));
}

/* 11.40 with 40 % of the sale price left over: 11.40 / 0.6 = 19.00; 11.41: 19.0167, up to 19.02. */
static void
test_margin (void)
{
  g_autoptr (RcPriceBook) book = parse_well ("item,cost,margin,sale\na,11.40,40,\nb,11.41,40,\nc,11.40,40,19\n");
  static const RcMoney sales[] = { 1900, 1902, 1900 };

  for (guint i = 0; i < G_N_ELEMENTS (sales); i++)
    g_assert_cmpint (((RcPrice *)book->prices->pdata[i])->sale, ==, sales[i]);
}

/* A list without the shop's own rows leaves them as they are; one with them brings its own. */
static void
test_take_list (void)
{
  g_autoptr (RcPriceBook) book = rc_price_book_new (&usd);
  g_autoptr (RcPriceBook) plain = parse_well ("item,sale\nlay,1\n");
  g_autoptr (RcPriceBook) full = parse_well ("item,kind,sale,cost,part_percent,language\n"
                                             "Mill,supplier,9,8,,fr\n1,payment,,,40,\n");

  g_ptr_array_add (book->suppliers, rc_supplier_new ("Loom"));
  g_ptr_array_add (book->tax_areas, rc_tax_area_new ("A", "Tax", 1, 2));
  rc_price_book_take_list (book, plain);
  g_assert_nonnull (rc_price_book_find_supplier (book, "Loom"));
  rc_price_book_take_list (book, full);
  g_assert_null (rc_price_book_find_supplier (book, "Loom"));
  g_assert_cmpint (rc_price_book_find_supplier (book, "Mill")->freight_cost, ==, 800);
  g_assert_cmpstr (rc_price_book_get_language (book, "Mill"), ==, "fr");
  g_assert_null (rc_price_book_get_language (book, "Loom"));
  g_assert_nonnull (rc_price_book_find_tax_area (book, "A"));
  g_assert_cmpint (((RcPayment *)book->payments->pdata[0])->part_ppm, ==, 400000);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/prices/shipped book", test_shipped_book);
  g_test_add_func ("/exchange/prices/formulas", test_formulas);
  g_test_add_func ("/exchange/prices/quoting", test_quoting);
  g_test_add_func ("/exchange/prices/faults", test_faults);
  g_test_add_func ("/exchange/prices/all faults", test_all_faults);
  g_test_add_func ("/exchange/prices/many faults", test_many_faults);
  g_test_add_func ("/exchange/prices/margin", test_margin);
  g_test_add_func ("/exchange/prices/take a list", test_take_list);
  return g_test_run ();
}
