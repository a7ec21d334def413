/* The price book by date and quantity, the planner's weights, lines and orders. */
#include <string.h>

#include "plan-builder.h"
#include "quote.h"
#include "rowcut-error.h"

static const RcCurrency dollars = { "USD", 2 };

static RcPrice *
add_price (RcPriceBook *book, const char *item, RcUnit unit, RcMoney cost, RcMoney sale)
{
  RcPrice *price = rc_price_new (item, unit, cost, sale);

  g_ptr_array_add (book->prices, price);
  return price;
}

static RcPrice *
add_dated_price (RcPriceBook *book, const char *item, const char *from, const char *to, RcMoney sale)
{
  RcPrice *price = add_price (book, item, RC_UNIT_SQ_YD, 0, sale);

  price->valid_from = g_strdup (from);
  price->valid_to = g_strdup (to);
  return price;
}

static RcMoney
find_sale (const RcPriceBook *book, const char *item, const char *date)
{
  const RcPrice *price = rc_price_book_find (book, item, date);

  return price != NULL ? price->sale : -1;
}

static void
test_prices_by_date (void)
{
  g_autoptr (RcPriceBook) book = rc_price_book_new (&dollars);

  add_dated_price (book, "twist", NULL, "2025-12-31", 1);
  add_dated_price (book, "twist", "2026-01-01", NULL, 2);
  add_dated_price (book, "twist", "2026-03-01", "2026-03-31", 3); /* a month's offer */
  add_dated_price (book, "loop", "2026-02-01", NULL, 4);

  g_assert_cmpint (find_sale (book, "twist", "2025-06-15"), ==, 1);
  g_assert_cmpint (find_sale (book, "twist", "2025-12-31"), ==, 1);
  g_assert_cmpint (find_sale (book, "twist", "2026-01-01"), ==, 2);
  g_assert_cmpint (find_sale (book, "twist", "2026-02-28"), ==, 2);
  g_assert_cmpint (find_sale (book, "twist", "2026-03-01"), ==, 3);
  g_assert_cmpint (find_sale (book, "twist", "2026-03-31T17:45:00Z"), ==, 3);
  g_assert_cmpint (find_sale (book, "twist", "2026-04-01"), ==, 2);
  g_assert_cmpint (find_sale (book, "loop", "2026-01-31"), ==, -1);
  g_assert_cmpint (find_sale (book, "plush", "2026-03-01"), ==, -1);
  g_assert_cmpint (find_sale (book, "twist", NULL), ==, 1);
}

/* Carpet by the cut and by the roll. */
static void
test_prices_by_quantity (void)
{
  g_autoptr (RcPriceBook) book = rc_price_book_new (&dollars);
  g_autoptr (RcGoods) carpet = rc_goods_new ("twist", RC_GOODS_CARPET, "Twist");
  const RcPrice *cut = add_price (book, "twist", RC_UNIT_SQ_YD, 1200, 2000);
  RcPrice       *roll = add_price (book, "twist", RC_UNIT_FT, 1333, 2400); /* 9.9975 a sq yd of a 12 ft roll */

  carpet->roll_width = FT (12);
  roll->from_micro = 100 * RC_MICRO;
  g_assert_true (rc_price_book_find (book, "twist", NULL) == cut);
  g_assert_true (rc_price_book_find_for (book, carpet, "twist", NULL, 0, RC_UNIT_SQ_YD) == cut);
  g_assert_true (rc_price_book_find_for (book, carpet, "twist", NULL, 133333332, RC_UNIT_SQ_YD) == cut);
  g_assert_true (rc_price_book_find_for (book, carpet, "twist", NULL, 133333333, RC_UNIT_SQ_YD) == roll);
  g_assert_true (rc_price_book_find_for (book, carpet, "twist", NULL, 100 * RC_MICRO, RC_UNIT_FT) == roll);
  /* Without the roll's width the two units cannot be compared: the price by the roll is not used. */
  g_assert_true (rc_price_book_find_for (book, NULL, "twist", NULL, 200 * RC_MICRO, RC_UNIT_SQ_YD) == cut);
}

/* A break of last year's list does not outlive the new one at the same quantity. */
static void
test_prices_by_quantity_and_date (void)
{
  g_autoptr (RcPriceBook) book = rc_price_book_new (&dollars);
  const RcPrice *price;

  add_dated_price (book, "twist", "2025-01-01", NULL, 20);
  add_dated_price (book, "twist", "2025-01-01", NULL, 18)->from_micro = 100 * RC_MICRO;
  add_dated_price (book, "twist", "2026-01-01", NULL, 22);
  add_dated_price (book, "twist", "2026-01-01", NULL, 19)->from_micro = 100 * RC_MICRO;
  price = rc_price_book_find_for (book, NULL, "twist", "2026-02-01", 99 * RC_MICRO, RC_UNIT_SQ_YD);
  g_assert_cmpint (price->sale, ==, 22);
  price = rc_price_book_find_for (book, NULL, "twist", "2026-02-01", 100 * RC_MICRO, RC_UNIT_SQ_YD);
  g_assert_cmpint (price->sale, ==, 19);
  price = rc_price_book_find_for (book, NULL, "twist", "2025-02-01", 100 * RC_MICRO, RC_UNIT_SQ_YD);
  g_assert_cmpint (price->sale, ==, 18);

  /* whatever order they stand in, and with no day the first of its kind */
  for (guint i = 0; i < 2; i++)
    {
      gpointer moved = g_ptr_array_steal_index (book->prices, 3 - i);
      g_ptr_array_insert (book->prices, (int)i, moved);
    }
  g_assert_cmpint (find_sale (book, "twist", "2026-02-01"), ==, 22);
  g_assert_cmpint (find_sale (book, "twist", "2025-02-01"), ==, 20);
  price = rc_price_book_find_for (book, NULL, "twist", "2026-02-01", 99 * RC_MICRO, RC_UNIT_SQ_YD);
  g_assert_cmpint (price->sale, ==, 22);
  price = rc_price_book_find_for (book, NULL, "twist", NULL, 100 * RC_MICRO, RC_UNIT_SQ_YD);
  g_assert_cmpint (price->sale, ==, 19);
}

static void
test_copy (void)
{
  g_autoptr (RcPriceBook) book = rc_price_book_new (&dollars);
  g_autoptr (RcPriceBook) copy = NULL;

  add_dated_price (book, "twist", "2026-01-01", "2026-12-31", 2)->from_micro = 5;
  build_goods (book->goods, RC_GOODS_TAPE, "tape", RC_UNIT_FT, 66 * RC_MICRO, RC_UNIT_ROLL);
  book->tax_ppm = 82500;
  book->shop_name = g_strdup ("Estuary Floors");
  copy = rc_price_book_copy (book);
  g_clear_pointer (&book, rc_price_book_free);

  g_assert_cmpint (find_sale (copy, "twist", "2026-12-31"), ==, 2);
  g_assert_cmpint (rc_price_book_find (copy, "twist", NULL)->from_micro, ==, 5);
  g_assert_cmpstr (rc_price_book_find_goods (copy, "tape")->id, ==, "tape");
  g_assert_null (rc_price_book_find_goods (copy, "strip"));
  g_assert_cmpstr (copy->shop_name, ==, "Estuary Floors");
  g_assert_cmpint (copy->tax_ppm, ==, 82500);
}

/* A book with a price for everything the joined fill takes. */
static RcPriceBook *
build_book (void)
{
  RcPriceBook *book = rc_price_book_new (&dollars);
  RcGoods     *goods;

  goods = build_goods (book->goods, RC_GOODS_TAPE, "tape", RC_UNIT_FT, 66 * RC_MICRO, RC_UNIT_ROLL);
  goods->tape_width = 3 * RC_TICKS_PER_INCH;
  goods->supplier = g_strdup ("Sundry House");
  goods = build_goods (book->goods, RC_GOODS_SEALER, "sealer", RC_UNIT_EACH, 0, RC_UNIT_EACH);
  goods->pack_covers_length = FT (60);
  goods = build_goods (book->goods, RC_GOODS_STRIP, "strip", RC_UNIT_FT, 400 * RC_MICRO, RC_UNIT_CARTON);
  goods->supplier = g_strdup ("Sundry House");
  add_price (book, "twist", RC_UNIT_SQ_YD, 1000, 1795);
  add_price (book, "tape", RC_UNIT_ROLL, 660, 1100);
  add_price (book, "sealer", RC_UNIT_EACH, 600, 900);
  add_price (book, "strip", RC_UNIT_CARTON, 4000, 6000);
  add_price (book, "lay", RC_UNIT_SQ_YD, 400, 700);
  add_price (book, "side-seam", RC_UNIT_FT, 100, 150);
  add_price (book, "cross-seam", RC_UNIT_EACH, 800, 1200);
  add_price (book, "stair", RC_UNIT_EACH, 500, 900);
  return book;
}

/* Weights are what a metre costs the shop: 12 ft carpet at 10.00 a sq yd is 43.744532 a metre of roll; tape at 6.60 for
 * 66 ft is 0.328084 a metre, sealer on both edges at 6.00 for 60 ft 0.656168, seaming at 1.00 a foot 3.28084. */
static void
test_weights (void)
{
  g_autoptr (RcPriceBook) book = build_book ();
  g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
  const RcGoods *carpet = build_carpet (job, "twist", FT (12), RC_UNIT_SQ_YD);
  const RcGoods *unknown = build_carpet (job, "loop", FT (12), RC_UNIT_SQ_YD);
  RcPlanWeights  weights;

  rc_price_book_get_weights (carpet, &weights, book);
  g_assert_cmpint (weights.carpet_per_m, ==, 4374);
  g_assert_cmpint (weights.side_seam_per_m, ==, 33 + 66 + 328);
  g_assert_cmpint (weights.cross_seam_per_m, ==, 33 + 66);
  g_assert_cmpint (weights.cross_seam_each, ==, 800);

  rc_price_book_get_weights (unknown, &weights, book);
  g_assert_cmpint (weights.carpet_per_m, ==, 100);

  g_ptr_array_set_size (book->prices, 0);
  rc_price_book_get_weights (carpet, &weights, book);
  g_assert_cmpint (weights.carpet_per_m, ==, 100);
  g_assert_cmpint (weights.side_seam_per_m, ==, 0);
  g_assert_cmpint (weights.cross_seam_each, ==, 0);
}

static void
test_weights_on_a_day (void)
{
  g_autoptr (RcPriceBook) book = rc_price_book_new (&dollars);
  g_autoptr (RcJob) job = build_job (RC_UNITS_METRIC);
  const RcGoods *carpet = build_carpet (job, "twist", M (400), RC_UNIT_M2);
  RcPriceDay     day = { book, "2026-05-01" };
  RcPlanWeights  weights;

  add_price (book, "twist", RC_UNIT_M2, 1000, 2000)->valid_to = g_strdup ("2026-04-30");
  add_price (book, "twist", RC_UNIT_M2, 1100, 2200)->valid_from = g_strdup ("2026-05-01");
  rc_price_day_get_weights (carpet, &weights, &day);
  g_assert_cmpint (weights.carpet_per_m, ==, 4400);
  day.date = "2026-04-30";
  rc_price_day_get_weights (carpet, &weights, &day);
  g_assert_cmpint (weights.carpet_per_m, ==, 4000);

  /* tape that is priced by what cannot be made of a length weighs nothing */
  build_goods (book->goods, RC_GOODS_TAPE, "tape", RC_UNIT_FT, 66 * RC_MICRO, RC_UNIT_ROLL);
  RcPrice *tape = add_price (book, "tape", RC_UNIT_SQ_YD, 500, 900);
  rc_price_day_get_weights (carpet, &weights, &day);
  g_assert_cmpint (weights.side_seam_per_m, ==, 0);
  tape->unit = RC_UNIT_FT;
  rc_price_day_get_weights (carpet, &weights, &day);
  g_assert_cmpint (weights.side_seam_per_m, >, 0);
}

static const RcQuoteLine *
find_line (const GPtrArray *lines, const char *item)
{
  for (guint i = 0; i < lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (lines, i);

      if (g_str_equal (line->item, item))
        return line;
    }
  g_assert_not_reached ();
}

static RcQuote *
quote_plan (const RcPlan *plan, const RcPriceBook *book)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) lines = rc_quantity_compute (plan, book->goods, &error);
  RcQuote *quote;

  g_assert_no_error (error);
  quote = rc_quote_new (plan->job, lines, book, "2026-05-01", &error);
  g_assert_no_error (error);
  return quote;
}

/* The joined fill (hasslefreeflooring.com) priced by hand: 36 sq yd at 17.95 = 646.20; tape one roll 11.00; sealer
 * one 9.00; strip one carton 60.00; laying 33 1/3 sq yd at 7.00 = 233.33; side seam 20 ft at 1.50 = 30.00; cross seams
 * 2 at 12.00 = 24.00; no fixed charge in the book. Net 1013.53; tax 8.25 % = 83.616, 83.62. */
static void
test_joined_fill (void)
{
  g_autoptr (RcPriceBook) book = build_book ();
  g_autoptr (RcQuote) quote = NULL;
  RcJob  *job;
  RcPlan *plan = build_joined_fill (&job);

  job->tax_ppm = 82500;
  quote = quote_plan (plan, book);
  g_assert_cmpuint (quote->lines->len, ==, 7);
  g_assert_cmpint (find_line (quote->lines, "twist")->amount, ==, 64620);
  g_assert_cmpint (find_line (quote->lines, "tape")->amount, ==, 1100);
  g_assert_cmpint (find_line (quote->lines, "tape")->quantity_micro, ==, RC_MICRO);
  g_assert_cmpint (find_line (quote->lines, "tape")->unit, ==, RC_UNIT_ROLL);
  g_assert_cmpint (find_line (quote->lines, "sealer")->amount, ==, 900);
  g_assert_cmpint (find_line (quote->lines, "strip")->amount, ==, 6000);
  g_assert_cmpint (find_line (quote->lines, "lay")->amount, ==, 23333);
  g_assert_cmpint (find_line (quote->lines, "side-seam")->amount, ==, 3000);
  g_assert_cmpint (find_line (quote->lines, "cross-seam")->amount, ==, 2400);
  g_assert_cmpint (quote->net, ==, 101353);
  g_assert_cmpint (quote->tax, ==, 8362);
  g_assert_cmpint (quote->total, ==, 109715);
  g_assert_cmpint (quote->cost, ==, 36000 + 660 + 600 + 4000 + 13333 + 2000 + 1600);
  g_assert_cmpint (quote->margin, ==, quote->net - quote->cost);

  add_price (book, "fixed", RC_UNIT_EACH, 0, 5000);
  g_clear_pointer (&quote, rc_quote_free);
  quote = quote_plan (plan, book);
  g_assert_cmpint (quote->net, ==, 106353);

  build_plan_free (plan);
  rc_job_free (job);
}

/* Part of a carpet in stock: the customer pays the price of the whole quantity, the shop that of each part. */
static void
test_stock_and_price_by_the_roll (void)
{
  g_autoptr (RcPriceBook) book = build_book ();
  g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
  g_autoptr (RcQuote) quote = NULL;
  RcPrice           *roll = add_price (book, "twist", RC_UNIT_SQ_YD, 800, 1500);
  RcGoods           *carpet = build_carpet (job, "twist", FT (12), RC_UNIT_SQ_YD);
  RcPlan            *plan = build_plan (job);
  RcCutting         *cutting = build_cutting (plan, carpet);
  const RcQuoteLine *line;

  roll->from_micro = 100 * RC_MICRO;
  build_roll (cutting, "R-1", FT (30), FT (60)); /* 40 sq yd */
  build_roll (cutting, NULL, FT (60), FT (60));  /* 80 sq yd */
  quote = quote_plan (plan, book);
  g_assert_cmpuint (quote->lines->len, ==, 2);
  line = g_ptr_array_index (quote->lines, 0);
  g_assert_true (line->from_stock);
  g_assert_cmpint (line->amount, ==, 40 * 1500);
  g_assert_cmpint (line->cost, ==, 40 * 1000);
  line = g_ptr_array_index (quote->lines, 1);
  g_assert_false (line->from_stock);
  g_assert_cmpint (line->amount, ==, 80 * 1500);
  g_assert_cmpint (line->cost, ==, 80 * 1000);
  build_plan_free (plan);
}

static gboolean
has_note (const RcOrder *order, const char *words)
{
  for (guint i = 0; i < order->notes->len; i++)
    if (strstr (g_ptr_array_index (order->notes, i), words) != NULL)
      return TRUE;
  return FALSE;
}

/* One order a supplier: what is bought, at cost; no labour, nothing from stock, but a note of it. */
static void
test_orders (void)
{
  g_autoptr (RcPriceBook) book = build_book ();
  g_autoptr (GPtrArray) quantities = NULL, orders = NULL;
  g_autoptr (GError) error = NULL;
  RcJob         *job;
  RcPlan        *plan = build_joined_fill (&job);
  const RcOrder *order;

  ((RcGoods *)rc_job_find_goods (job, "twist"))->supplier = g_strdup ("Low Mill");
  build_roll (g_ptr_array_index (plan->cuttings, 0), "R-9", FT (8), FT (10));
  quantities = rc_quantity_compute (plan, book->goods, &error);
  g_assert_no_error (error);
  orders = rc_order_new_all (job, plan, quantities, book, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (orders->len, ==, 3);

  order = g_ptr_array_index (orders, 0);
  g_assert_cmpstr (order->supplier, ==, "Low Mill");
  g_assert_cmpuint (order->lines->len, ==, 1);
  g_assert_cmpint (find_line (order->lines, "twist")->quantity_micro, ==, 36 * RC_MICRO);
  g_assert_cmpint (find_line (order->lines, "twist")->price, ==, 1000);
  g_assert_cmpint (order->net, ==, 36000);
  g_assert_cmpint (order->total, ==, 36000);
  g_assert_true (has_note (order, "one length of 27' 0\", 12' 0\" wide, in one piece"));
  g_assert_true (has_note (order, "1: 12' 0\" × 20' 0\"; 2: 4' 0\" × 7' 0\"; 3: 4' 0\" × 7' 0\"; 4: 4' 0\" × 7' 0\""));
  g_assert_true (has_note (order, "one dye lot; pile one way"));
  g_assert_false (has_note (order, "R-9")); /* our stock is not the supplier's business */

  order = g_ptr_array_index (orders, 1);
  g_assert_cmpstr (order->supplier, ==, "Sundry House");
  g_assert_cmpuint (order->lines->len, ==, 2);
  g_assert_cmpint (order->net, ==, 4660);
  g_assert_cmpuint (order->notes->len, ==, 0);

  order = g_ptr_array_index (orders, 2);
  g_assert_cmpstr (order->supplier, ==, "");
  g_assert_cmpint (order->net, ==, 600);

  build_plan_free (plan);
  rc_job_free (job);
}

/* Everything from stock: nothing is ordered from the mill. */
static void
test_nothing_to_order (void)
{
  g_autoptr (RcPriceBook) book = build_book ();
  g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
  g_autoptr (GPtrArray) quantities = NULL, orders = NULL, stock = NULL;
  RcPlan *plan = build_plan (job);

  build_roll (build_cutting (plan, build_carpet (job, "twist", FT (12), RC_UNIT_SQ_YD)), "R-1", FT (9), FT (9));
  stock = rc_order_list_stock (plan);
  g_assert_cmpuint (stock->len, ==, 1);
  g_assert_nonnull (strstr (g_ptr_array_index (stock, 0), "9' 0\" of roll R-1"));
  quantities = rc_quantity_compute (plan, book->goods, NULL);
  orders = rc_order_new_all (job, plan, quantities, book, NULL, NULL);
  g_assert_cmpuint (orders->len, ==, 0);
  build_plan_free (plan);
}

/* An order needs its prices too, and says which is missing. */
static void
test_order_without_a_price (void)
{
  g_autoptr (RcPriceBook) book = build_book ();
  g_autoptr (GPtrArray) quantities = NULL;
  g_autoptr (GError) error = NULL;
  RcJob  *job;
  RcPlan *plan = build_joined_fill (&job);

  quantities = rc_quantity_compute (plan, book->goods, NULL);
  g_ptr_array_remove_index (book->prices, 0);
  g_assert_null (rc_order_new_all (job, plan, quantities, book, "2026-05-01", &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_REFERENCE);
  g_assert_nonnull (strstr (error->message, "twist"));
  g_assert_nonnull (strstr (error->message, "2026-05-01"));
  build_plan_free (plan);
  rc_job_free (job);
}

/* What the mill must know of the pattern; three fifths is a drop of our own. */
static void
test_order_of_patterned_goods (void)
{
  static const struct
  {
    RcMatch     match;
    const char *said;
  } rows[] = {
    { RC_MATCH_SET, "pattern repeat 3' 0\", set match" },
    { RC_MATCH_HALF_DROP, "pattern repeat 3' 0\", half-drop match" },
    { RC_MATCH_QUARTER_DROP, "pattern repeat 3' 0\", quarter-drop match" },
    { RC_MATCH (3, 5), "pattern repeat 3' 0\", match with a drop of 3/5 of the repeat" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (RcPriceBook) book = build_book ();
      g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
      g_autoptr (GPtrArray) quantities = NULL, orders = NULL;
      RcGoods   *carpet = build_carpet (job, "twist", FT (12), RC_UNIT_SQ_YD);
      RcPlan    *plan = build_plan (job);
      RcCutting *cutting = build_cutting (plan, carpet);

      carpet->repeat_length = FT (3);
      carpet->match = rows[i].match;
      build_roll (cutting, NULL, FT (30), FT (30));
      build_roll (cutting, NULL, FT (20), FT (20));
      quantities = rc_quantity_compute (plan, book->goods, NULL);
      orders = rc_order_new_all (job, plan, quantities, book, NULL, NULL);
      g_assert_cmpuint (orders->len, ==, 1);
      g_assert_true (has_note (g_ptr_array_index (orders, 0), "all 2 lengths from one dye lot"));
      g_assert_true (has_note (g_ptr_array_index (orders, 0), rows[i].said));
      build_plan_free (plan);
    }
}

/* Goods sold by the metre are ordered by the metre, also for a job in feet: 4.7 m is not 15' 5 1/16". */
static void
test_order_in_the_measure_sold (void)
{
  g_autoptr (RcPriceBook) book = build_book ();
  g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
  g_autoptr (GPtrArray) quantities = NULL, orders = NULL;
  RcGoods   *carpet = build_carpet (job, "twist", M (400), RC_UNIT_M2);
  RcPlan    *plan = build_plan (job);
  RcCutting *cutting = build_cutting (plan, carpet);

  build_roll (cutting, NULL, FT_IN (15, 4), M (470));
  build_placement (cutting, build_piece (plan, RC_PIECE_DROP, NULL, "den", "twist", FT (12), FT_IN (15, 4)), 0, 0);
  quantities = rc_quantity_compute (plan, book->goods, NULL);
  g_assert_cmpstr (
      ((const RcQuantityLine *)g_ptr_array_index (quantities, 0))->because, ==,
      "den: piece 1; 15' 5 1/16\" (4.700 m) of roll × 13' 1 1/2\" (4.000 m) wide; 15' 4\" (4.674 m) is cut "
      "from it, the rest is the supplier's step");
  orders = rc_order_new_all (job, plan, quantities, book, NULL, NULL);
  g_assert_true (has_note (g_ptr_array_index (orders, 0), "one length of 4.700 m, 4.000 m wide"));
  g_assert_true (has_note (g_ptr_array_index (orders, 0), "1: 3.658 m × 4.674 m"));
  build_plan_free (plan);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/quote/prices-by-date", test_prices_by_date);
  g_test_add_func ("/quote/prices-by-quantity", test_prices_by_quantity);
  g_test_add_func ("/quote/prices-by-quantity-and-date", test_prices_by_quantity_and_date);
  g_test_add_func ("/quote/copy", test_copy);
  g_test_add_func ("/quote/weights", test_weights);
  g_test_add_func ("/quote/weights-on-a-day", test_weights_on_a_day);
  g_test_add_func ("/quote/joined-fill", test_joined_fill);
  g_test_add_func ("/quote/stock-and-price-by-the-roll", test_stock_and_price_by_the_roll);
  g_test_add_func ("/quote/orders", test_orders);
  g_test_add_func ("/quote/nothing-to-order", test_nothing_to_order);
  g_test_add_func ("/quote/order-without-a-price", test_order_without_a_price);
  g_test_add_func ("/quote/order-of-patterned-goods", test_order_of_patterned_goods);
  g_test_add_func ("/quote/order-in-the-measure-sold", test_order_in_the_measure_sold);
  return g_test_run ();
}
