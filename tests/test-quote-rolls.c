/* Least cuts, and full rolls with the rest by the cut. How a supplier charges them is common practice, no source; the
 * figures are worked by hand in the rows. */
#include <string.h>

#include "plan-builder.h"
#include "quote.h"
#include "rowcut-error.h"

static const RcCurrency dollars = { "USD", 2 };

/* 12 ft wide, 10.00 to the shop and 20.00 to the customer for a square yard by the cut; full rolls of 90 ft are 120 sq
 * yd, at 8.00 and 15.00. */
typedef struct
{
  RcPriceBook *book;
  RcJob       *job;
  RcGoods     *carpet;
  RcPlan      *plan;
  RcCutting   *cutting;
} Shop;

static void
shop_init (Shop *shop)
{
  RcPrice *roll = rc_price_new ("twist", RC_UNIT_SQ_YD, 800, 1500);

  shop->book = rc_price_book_new (&dollars);
  g_ptr_array_add (shop->book->prices, rc_price_new ("twist", RC_UNIT_SQ_YD, 1000, 2000));
  g_ptr_array_add (shop->book->prices, roll);
  roll->from_micro = 120 * RC_MICRO;
  shop->job = build_job (RC_UNITS_IMPERIAL);
  shop->carpet = build_carpet (shop->job, "twist", FT (12), RC_UNIT_SQ_YD);
  shop->carpet->full_roll = FT (90);
  shop->carpet->supplier = g_strdup ("Low Mill");
  shop->plan = build_plan (shop->job);
  shop->cutting = build_cutting (shop->plan, shop->carpet);
}

static void
shop_clear (Shop *shop)
{
  build_plan_free (shop->plan);
  rc_job_free (shop->job);
  rc_price_book_free (shop->book);
}

static RcQuote *
quote (const Shop *shop, GPtrArray **orders)
{
  g_autoptr (GPtrArray) quantities = rc_quantity_compute (shop->plan, NULL, NULL);
  g_autoptr (GError) error = NULL;
  RcQuote *made = rc_quote_new (shop->job, quantities, shop->book, NULL, &error);

  g_assert_no_error (error);
  g_assert_true (rc_quote_check (made, NULL));
  *orders = rc_order_new_all (shop->job, shop->plan, quantities, shop->book, NULL, &error);
  g_assert_no_error (error);
  return made;
}

static const RcQuoteLine *
get_line (const GPtrArray *lines, guint index)
{
  g_assert_cmpuint (lines->len, >, index);
  return g_ptr_array_index (lines, index);
}

/* Square yards by the roll and by the cut, 3/4 ft of roll each. */
static void
test_whichever_is_less (void)
{
  static const struct
  {
    int         sq_yd, sold_by_roll, sold_by_cut, bought_by_roll, bought_by_cut;
    const char *said;
  } rows[] = {
    { 89, 0, 89, 0, 89, "" }, /* 1780 is less than the roll's 1800 */
    { 90, 0, 90, 0, 90, "" }, /* as much: no more is sold than is needed */
    { 93, 120, 0, 0, 93, "1 full roll for 1800.00: less than with the rest by the cut, 1860.00" }, /* the shop: 930 */
    { 110, 120, 0, 120, 0, "1 full roll for 1800.00: less than with the rest by the cut, 2200.00" },
    { 120, 120, 0, 120, 0, "1 full roll for 1800.00" },
    { 150, 120, 30, 120, 30,
      "1 full roll for 1800.00, the rest by the cut for 600.00: less than with one roll more, 3600.00" },
    { 230, 240, 0, 240, 0, "2 full rolls for 3600.00: less than with the rest by the cut, 4000.00" },
    { 240, 240, 0, 240, 0, "2 full rolls for 3600.00" },
    { 241, 240, 1, 240, 1, /* 3620 */
      "2 full rolls for 3600.00, the rest by the cut for 20.00: less than with one roll more, 5400.00" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (RcQuote) made = NULL;
      g_autoptr (GPtrArray) orders = NULL;
      Shop           shop;
      const RcOrder *order;

      shop_init (&shop);
      build_roll (shop.cutting, NULL, FT (rows[i].sq_yd) * 3 / 4, FT (rows[i].sq_yd) * 3 / 4);
      made = quote (&shop, &orders);
      g_assert_cmpint (made->net, ==, rows[i].sold_by_roll * 1500 + rows[i].sold_by_cut * 2000);
      g_assert_cmpint (made->cost, ==, rows[i].bought_by_roll * 800 + rows[i].bought_by_cut * 1000);
      g_assert_cmpuint (made->lines->len, ==, (rows[i].sold_by_roll > 0) + (rows[i].sold_by_cut > 0));
      g_assert_nonnull (strstr (get_line (made->lines, 0)->because, rows[i].said));
      g_assert_cmpint (get_line (made->lines, 0)->packs, ==, rows[i].sold_by_roll / 120);

      order = g_ptr_array_index (orders, 0);
      g_assert_cmpint (order->net, ==, made->cost);
      g_assert_cmpuint (order->lines->len, ==, (rows[i].bought_by_roll > 0) + (rows[i].bought_by_cut > 0));
      g_assert_cmpint (get_line (order->lines, 0)->packs, ==, rows[i].bought_by_roll / 120);
      shop_clear (&shop);
    }
}

/* 40 sq yd from stock, 110 bought: the customer pays for one roll and 30 by the cut, wherever it lies; the shop buys a
 * roll, 960.00, of which the two lines are 80/110 and 30/110. */
static void
test_part_from_stock (void)
{
  g_autoptr (RcQuote) made = NULL;
  g_autoptr (GPtrArray) orders = NULL;
  Shop shop;

  shop_init (&shop);
  build_roll (shop.cutting, "R-1", FT (30), FT (60));
  build_roll (shop.cutting, NULL, FT (165) / 2, FT (165) / 2);
  made = quote (&shop, &orders);
  g_assert_cmpuint (made->lines->len, ==, 3);
  g_assert_true (get_line (made->lines, 0)->from_stock);
  g_assert_cmpint (get_line (made->lines, 0)->amount, ==, 40 * 1500);
  g_assert_cmpint (get_line (made->lines, 0)->cost, ==, 40 * 1000);
  g_assert_cmpint (get_line (made->lines, 1)->amount, ==, 80 * 1500);
  g_assert_cmpint (get_line (made->lines, 1)->cost, ==, 69818);
  g_assert_cmpint (get_line (made->lines, 2)->amount, ==, 30 * 2000);
  g_assert_cmpint (get_line (made->lines, 2)->cost, ==, 96000 - 69818);
  g_assert_cmpint (((const RcOrder *)g_ptr_array_index (orders, 0))->net, ==, 96000);
  shop_clear (&shop);
}

/* A price that begins elsewhere than at a full roll is one for quantity: it holds for all. */
static void
test_price_for_quantity (void)
{
  g_autoptr (RcQuote) made = NULL;
  g_autoptr (GPtrArray) orders = NULL;
  Shop shop;

  shop_init (&shop);
  ((RcPrice *)g_ptr_array_index (shop.book->prices, 1))->from_micro = 100 * RC_MICRO;
  build_roll (shop.cutting, NULL, FT (450) / 4, FT (450) / 4);
  made = quote (&shop, &orders);
  g_assert_cmpuint (made->lines->len, ==, 1);
  g_assert_cmpint (made->net, ==, 150 * 1500);
  shop_clear (&shop);
}

/* A list that has no price by the cut sells whole rolls. */
static void
test_whole_rolls_only (void)
{
  g_autoptr (RcQuote) made = NULL;
  g_autoptr (GPtrArray) orders = NULL;
  Shop shop;

  shop_init (&shop);
  g_ptr_array_remove_index (shop.book->prices, 0);
  build_roll (shop.cutting, NULL, FT (45), FT (45));
  made = quote (&shop, &orders);
  g_assert_cmpuint (made->lines->len, ==, 1);
  g_assert_cmpint (made->net, ==, 120 * 1500);
  g_assert_nonnull (strstr (get_line (made->lines, 0)->because, "sold by whole rolls only"));
  shop_clear (&shop);
}

/* Goods sold by the running yard: a full roll of 90 ft is 30. 25 by the cut are 500.00, the roll 450.00. */
static void
test_by_running_length (void)
{
  g_autoptr (RcQuote) made = NULL;
  g_autoptr (GPtrArray) orders = NULL;
  Shop shop;

  shop_init (&shop);
  shop.carpet->unit = RC_UNIT_YD;
  for (guint i = 0; i < shop.book->prices->len; i++)
    ((RcPrice *)g_ptr_array_index (shop.book->prices, i))->unit = RC_UNIT_YD;
  ((RcPrice *)g_ptr_array_index (shop.book->prices, 1))->from_micro = 30 * RC_MICRO;
  build_roll (shop.cutting, NULL, FT (75), FT (75));
  made = quote (&shop, &orders);
  g_assert_cmpuint (made->lines->len, ==, 1);
  g_assert_cmpint (get_line (made->lines, 0)->packs, ==, 1);
  g_assert_cmpint (made->net, ==, 30 * 1500);
  shop_clear (&shop);
}

/* Of 150 sq yd from stock the shop buys none: a roll and the rest, with no roll more to compare with. */
static void
test_all_from_stock (void)
{
  g_autoptr (RcQuote) made = NULL;
  g_autoptr (GPtrArray) orders = NULL;
  Shop shop;

  shop_init (&shop);
  build_roll (shop.cutting, "R-1", FT (450) / 4, FT (120));
  made = quote (&shop, &orders);
  g_assert_cmpuint (made->lines->len, ==, 2);
  g_assert_cmpint (made->net, ==, 120 * 1500 + 30 * 2000);
  g_assert_true (
      g_str_has_suffix (get_line (made->lines, 0)->because, "1 full roll for 1800.00, the rest by the cut for 600.00"));
  g_assert_cmpuint (orders->len, ==, 0);
  shop_clear (&shop);
}

/* 4 ft needed, no less than 6 ft sold: 8 sq yd at 20.00. The nester buys the length (test-nest.c); here it is told. */
static void
test_least_cut (void)
{
  g_autoptr (RcQuote) made = NULL;
  g_autoptr (GPtrArray) orders = NULL;
  Shop               shop;
  const RcQuoteLine *line;

  shop_init (&shop);
  shop.carpet->least_cut = FT (6);
  g_assert_cmpint (rc_goods_compute_bought (shop.carpet, FT (4)), ==, FT (6));
  g_assert_cmpint (rc_goods_compute_bought (shop.carpet, 0), ==, 0);
  build_roll (shop.cutting, NULL, FT (4), FT (6));
  made = quote (&shop, &orders);
  line = get_line (made->lines, 0);
  g_assert_cmpint (line->amount, ==, 16000);
  g_assert_cmpint (line->needed_micro, ==, 5333333);
  g_assert_nonnull (strstr (line->because, "4' 0\" is cut from it, the supplier sells no less than 6' 0\""));
  shop_clear (&shop);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/quote/rolls/whichever is less", test_whichever_is_less);
  g_test_add_func ("/quote/rolls/part from stock", test_part_from_stock);
  g_test_add_func ("/quote/rolls/a price for quantity", test_price_for_quantity);
  g_test_add_func ("/quote/rolls/whole rolls only", test_whole_rolls_only);
  g_test_add_func ("/quote/rolls/by running length", test_by_running_length);
  g_test_add_func ("/quote/rolls/all from stock", test_all_from_stock);
  g_test_add_func ("/quote/rolls/the least cut", test_least_cut);
  return g_test_run ();
}
