/* What the office settles beside what is measured: freight, further lines, tax areas, steps of payment; several jobs'
 * orders as one; the difference between quotations; margins. The figures are worked by hand in the rows. */
#include <string.h>

#include "plan-builder.h"
#include "quote.h"
#include "rowcut-error.h"

static const RcCurrency dollars = { "USD", 2 }, pounds = { "GBP", 2 };

/* Carpet of Low Mill, 30 sq yd at 10.00 to the shop and 15.00 to the customer; tape of Sundry House, two rolls at 5.00
 * and 8.00; laying at 4.00 and 6.00. 4 x 30 + 10 + 300 at cost; 450 + 16 + 180 = 646.00 to the customer. */
typedef struct
{
  RcJob       *job;
  RcPriceBook *book;
  RcGoods     *carpet, *tape;
  GPtrArray   *quantities;
} Shop;

static RcQuantityLine *
add_quantity (Shop *shop, RcWork work, const RcGoods *goods, const char *item, gint64 quantity_micro, RcUnit unit)
{
  RcQuantityLine *line = g_new0 (RcQuantityLine, 1);

  line->work = work;
  line->goods = goods;
  line->item = g_strdup (item);
  line->name = g_strdup (item);
  line->quantity_micro = line->net_micro = quantity_micro;
  line->unit = unit;
  line->because = g_strdup ("");
  g_ptr_array_add (shop->quantities, line);
  return line;
}

static void
add_price (Shop *shop, const char *item, RcUnit unit, RcMoney cost, RcMoney sale)
{
  g_ptr_array_add (shop->book->prices, rc_price_new (item, unit, cost, sale));
}

static void
set_up (Shop *shop, gconstpointer data)
{
  shop->job = build_job (RC_UNITS_IMPERIAL);
  shop->book = rc_price_book_new (&dollars);
  shop->carpet = build_carpet (shop->job, "twist", FT (12), RC_UNIT_SQ_YD);
  shop->carpet->supplier = g_strdup ("Low Mill");
  shop->tape = build_goods (shop->book->goods, RC_GOODS_TAPE, "tape", RC_UNIT_ROLL, 0, RC_UNIT_ROLL);
  shop->tape->supplier = g_strdup ("Sundry House");
  shop->quantities = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quantity_line_free);
  add_quantity (shop, RC_WORK_NONE, shop->carpet, "twist", 30 * RC_MICRO, RC_UNIT_SQ_YD);
  add_quantity (shop, RC_WORK_NONE, shop->tape, "tape", 2 * RC_MICRO, RC_UNIT_ROLL);
  add_quantity (shop, RC_WORK_LAY, NULL, "lay", 30 * RC_MICRO, RC_UNIT_SQ_YD);
  add_price (shop, "twist", RC_UNIT_SQ_YD, 1000, 1500);
  add_price (shop, "tape", RC_UNIT_ROLL, 500, 800);
  add_price (shop, "lay", RC_UNIT_SQ_YD, 400, 600);
  shop->job->tax_ppm = -1;
}

static void
tear_down (Shop *shop, gconstpointer data)
{
  g_ptr_array_unref (shop->quantities);
  rc_price_book_free (shop->book);
  rc_job_free (shop->job);
}

static RcQuote *
price (const Shop *shop)
{
  g_autoptr (GError) error = NULL;
  RcQuote *quote = rc_quote_new (shop->job, shop->quantities, shop->book, "2026-03-02", &error);

  g_assert_no_error (error);
  g_assert_true (rc_quote_check (quote, &error));
  g_assert_no_error (error);
  return quote;
}

static void
assert_refused (const Shop *shop, RcErrorCode code, const char *words)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcQuote) quote = rc_quote_new (shop->job, shop->quantities, shop->book, "2026-03-02", &error);

  g_assert_null (quote);
  g_assert_error (error, RC_ERROR, (int)code);
  if (strstr (error->message, words) == NULL)
    g_error ("“%s” does not say “%s”", error->message, words);
}

static const RcQuoteLine *
find_line (const GPtrArray *lines, const char *item)
{
  for (guint i = 0; i < lines->len; i++)
    if (g_str_equal (((const RcQuoteLine *)lines->pdata[i])->item, item))
      return lines->pdata[i];
  return NULL;
}

static RcSupplier *
add_supplier (Shop *shop, const char *name, RcMoney cost, RcMoney sale, RcMoney free_from)
{
  RcSupplier *supplier = rc_supplier_new (name);

  supplier->freight_cost = cost;
  supplier->freight_sale = sale;
  supplier->freight_free_from = free_from;
  g_ptr_array_add (shop->book->suppliers, supplier);
  return supplier;
}

/* --- freight --- */

/* Once for each supplier something is bought of; free from what is bought at cost: 300.00 of Low Mill. */
static void
test_freight (Shop *shop, gconstpointer data)
{
  RcSupplier *mill = add_supplier (shop, "Low Mill", 4000, 5500, 30001);
  g_autoptr (RcQuote) with = NULL;
  g_autoptr (RcQuote) without = NULL;
  const RcQuoteLine *line;

  add_supplier (shop, "Sundry House", 0, 0, 0);         /* none */
  add_supplier (shop, "Nobody buys here", 700, 900, 0); /* nothing is bought */
  with = price (shop);
  g_assert_cmpuint (with->lines->len, ==, 4);
  line = find_line (with->lines, "freight/Low Mill");
  g_assert_cmpint (line->amount, ==, 5500);
  g_assert_cmpint (line->cost, ==, 4000);
  g_assert_false (line->is_work);
  g_assert_nonnull (strstr (line->name, "Low Mill"));
  g_assert_cmpint (with->sum, ==, 64600 + 5500);
  g_assert_cmpint (with->cost, ==, 43000 + 4000);

  mill->freight_free_from = 30000; /* reached just so */
  without = price (shop);
  g_assert_null (find_line (without->lines, "freight/Low Mill"));
  g_assert_cmpint (without->sum, ==, 64600);
}

/* Carpet from stock is not brought by anybody, nor is what is used of nothing; freight that costs the customer nothing
 * costs the shop. */
static void
test_freight_of_what_is_bought (Shop *shop, gconstpointer data)
{
  RcQuantityLine *carpet = shop->quantities->pdata[0], *tape = shop->quantities->pdata[1];
  g_autoptr (RcQuote) quote = NULL;
  g_autoptr (RcQuote) bought = NULL;

  add_supplier (shop, "Low Mill", 4000, 5500, 0);
  add_supplier (shop, "Sundry House", 1500, 0, 0);
  carpet->from_stock = TRUE;
  quote = price (shop);
  g_assert_null (find_line (quote->lines, "freight/Low Mill"));
  g_assert_cmpint (find_line (quote->lines, "freight/Sundry House")->cost, ==, 1500);
  g_assert_cmpint (find_line (quote->lines, "freight/Sundry House")->amount, ==, 0);

  carpet->from_stock = FALSE;
  tape->quantity_micro = tape->net_micro = 0;
  bought = price (shop);
  g_assert_nonnull (find_line (bought->lines, "freight/Low Mill"));
  g_assert_null (find_line (bought->lines, "freight/Sundry House"));
}

/* --- further lines --- */

static RcExtraLine *
add_extra (Shop *shop, const char *item, const char *name, gint64 quantity_micro, RcUnit unit)
{
  RcExtraLine *extra = rc_extra_line_new ("X1");

  extra->item = g_strdup (item);
  extra->name = g_strdup (name);
  extra->quantity_micro = quantity_micro;
  extra->unit = unit;
  g_ptr_array_add (shop->job->offer->extras, extra);
  return extra;
}

/* A line of its own, and one at the price book's price, counted in another unit: 18 sq ft of laying are 2 sq yd. */
static void
test_extras (Shop *shop, gconstpointer data)
{
  RcExtraLine *own = add_extra (shop, NULL, "Moving furniture", 3 * RC_MICRO, RC_UNIT_EACH);
  g_autoptr (RcQuote) quote = NULL;
  const RcQuoteLine *line;

  own->price = 4000;
  own->cost = 2500;
  own->is_work = TRUE;
  add_extra (shop, "lay", NULL, 18 * RC_MICRO, RC_UNIT_SQ_FT);
  add_extra (shop, "tape", "Tape for later", RC_MICRO, RC_UNIT_ROLL);
  add_extra (shop, "tape", NULL, RC_MICRO, RC_UNIT_ROLL);
  ((RcPrice *)shop->book->prices->pdata[2])->valid_from = g_strdup ("2026-01-01");
  quote = price (shop);
  g_assert_cmpuint (quote->lines->len, ==, 7);
  line = quote->lines->pdata[3];
  g_assert_cmpint (line->amount, ==, 12000);
  g_assert_cmpint (line->cost, ==, 7500);
  g_assert_true (line->is_work);
  line = quote->lines->pdata[4];
  g_assert_cmpstr (line->name, ==, "lay");
  g_assert_cmpint (line->quantity_micro, ==, 2 * RC_MICRO);
  g_assert_cmpint (line->unit, ==, RC_UNIT_SQ_YD);
  g_assert_cmpint (line->amount, ==, 1200);
  g_assert_cmpstr (line->price_since, ==, "2026-01-01");
  g_assert_true (line->is_work);
  line = quote->lines->pdata[5];
  g_assert_cmpstr (line->name, ==, "Tape for later");
  g_assert_false (line->is_work);
  line = quote->lines->pdata[6];
  g_assert_cmpstr (line->name, ==, shop->tape->name);
  g_assert_cmpint (quote->sum, ==, 64600 + 12000 + 1200 + 800 + 800);
}

static void
test_extras_refused (Shop *shop, gconstpointer data)
{
  RcExtraLine *extra = add_extra (shop, "polish", "Polish", RC_MICRO, RC_UNIT_EACH);

  assert_refused (shop, RC_ERROR_REFERENCE, "Line X1: the price book has no price for Polish");
  g_clear_pointer (&extra->name, g_free);
  assert_refused (shop, RC_ERROR_REFERENCE, "for polish (item “polish”)");
  g_free (extra->item);
  extra->item = g_strdup ("lay");
  extra->unit = RC_UNIT_LITRE;
  assert_refused (shop, RC_ERROR_REFERENCE, "Line X1 is counted in L, but its price is for 1 sq yd");
  extra->unit = RC_UNIT_SQ_YD;
  extra->quantity_micro = 1000 * G_GINT64_CONSTANT (1000000000000000);
  ((RcPrice *)shop->book->prices->pdata[2])->sale
      = G_GINT64_CONSTANT (1000000000000000); /* 30 sq yd are no fault yet */
  assert_refused (shop, RC_ERROR_RANGE, "");
  g_clear_pointer (&extra->item, g_free);
  extra->price = G_MAXINT64;
  assert_refused (shop, RC_ERROR_RANGE, "");
}

/* --- tax, discounts, payments --- */

/* Goods 466.00 at 8.25 %: 38.445, so 38.45; work 180.00 at 2 %: 3.60; a line's own rate goes before both. */
static void
test_tax_area (Shop *shop, gconstpointer data)
{
  g_autoptr (RcQuote) quote = NULL;
  g_autoptr (RcQuote) own = NULL;
  RcLineTerms *terms;

  g_ptr_array_add (shop->book->tax_areas, rc_tax_area_new ("thorrin", "Sales tax, Isle of Thorrin", 82500, 20000));
  shop->job->offer->tax_area = g_strdup ("thorrin");
  shop->job->tax_ppm = 500000; /* of no account where there is a tax area */
  quote = price (shop);
  g_assert_cmpuint (quote->taxes->len, ==, 2);
  g_assert_cmpint (g_array_index (quote->taxes, RcTaxPart, 0).tax, ==, 360);
  g_assert_cmpint (g_array_index (quote->taxes, RcTaxPart, 1).tax, ==, 3845);
  g_assert_cmpstr (quote->tax_name, ==, "Sales tax, Isle of Thorrin");
  g_assert_cmpint (quote->tax_ppm, ==, 82500);

  terms = rc_line_terms_new ("tape");
  terms->tax_ppm = 0;
  g_ptr_array_add (shop->job->offer->lines, terms);
  own = price (shop);
  g_assert_cmpuint (own->taxes->len, ==, 3);
  g_assert_cmpint (g_array_index (own->taxes, RcTaxPart, 0).net, ==, 1600);
  g_assert_cmpint (g_array_index (own->taxes, RcTaxPart, 0).tax, ==, 0);

  g_free (shop->job->offer->tax_area);
  shop->job->offer->tax_area = g_strdup ("elsewhere");
  assert_refused (shop, RC_ERROR_REFERENCE, "elsewhere");
}

static void
test_rates_refused (Shop *shop, gconstpointer data)
{
  RcLineTerms *terms = rc_line_terms_new ("tape");

  terms->discount_ppm = RC_MICRO + 1;
  g_ptr_array_add (shop->job->offer->lines, terms);
  assert_refused (shop, RC_ERROR_RANGE, "tape: ");
  terms->discount_ppm = -1;
  assert_refused (shop, RC_ERROR_RANGE, "A discount");
  terms->discount_ppm = 0;
  shop->job->offer->discount_ppm = RC_MICRO + 1;
  assert_refused (shop, RC_ERROR_RANGE, "A discount");
  shop->job->offer->discount_ppm = 0;
  shop->job->offer->discount = 64601; /* a cent more than all there is */
  assert_refused (shop, RC_ERROR_RANGE, "more than what it is taken off");
  shop->job->offer->discount = -1;
  assert_refused (shop, RC_ERROR_RANGE, "more than what it is taken off");
  shop->job->offer->discount = 0;
  shop->book->deposit_ppm = -1;
  assert_refused (shop, RC_ERROR_RANGE, "A deposit");
  shop->book->deposit_ppm = 0;
  g_ptr_array_add (shop->job->offer->payments, rc_payment_new ("First", -1));
  assert_refused (shop, RC_ERROR_RANGE, "A payment");
  ((RcPayment *)shop->job->offer->payments->pdata[0])->part_ppm = 600000;
  g_ptr_array_add (shop->job->offer->payments, rc_payment_new ("Second", 400001));
  assert_refused (shop, RC_ERROR_RANGE, "All payments together");
}

/* The steps of the offer go before the shop's; what is left over is due last. 646.00: 40 % is 258.40. */
static void
test_payments (Shop *shop, gconstpointer data)
{
  g_autoptr (RcQuote) shops = NULL;
  g_autoptr (RcQuote) own = NULL;

  g_ptr_array_add (shop->book->payments, rc_payment_new ("In advance", RC_MICRO));
  shops = price (shop);
  g_assert_cmpuint (shops->payments->len, ==, 1);
  g_assert_cmpint (((const RcPaymentStep *)shops->payments->pdata[0])->amount, ==, shops->total);
  g_ptr_array_add (shop->job->offer->payments, rc_payment_new ("With the order", 400000));
  own = price (shop);
  g_assert_cmpuint (own->payments->len, ==, 2);
  g_assert_cmpint (((const RcPaymentStep *)own->payments->pdata[0])->amount, ==, 25840);
  g_assert_cmpint (((const RcPaymentStep *)own->payments->pdata[1])->amount, ==, 38760);
}

/* A quotation that was tampered with is told by the figure that is wrong. */
static void
test_check_names_the_figure (Shop *shop, gconstpointer data)
{
  g_autoptr (RcQuote) quote = NULL;
  const struct
  {
    gsize       offset;
    const char *words;
  } figures[] = {
    { G_STRUCT_OFFSET (RcQuote, sum), "sum" },       { G_STRUCT_OFFSET (RcQuote, discount), "net" },
    { G_STRUCT_OFFSET (RcQuote, net), "net" },       { G_STRUCT_OFFSET (RcQuote, tax), "tax" },
    { G_STRUCT_OFFSET (RcQuote, total), "total" },   { G_STRUCT_OFFSET (RcQuote, cost), "cost" },
    { G_STRUCT_OFFSET (RcQuote, margin), "margin" },
  };

  shop->book->tax_ppm = 82500;
  g_ptr_array_add (shop->book->payments, rc_payment_new ("In advance", RC_MICRO));
  quote = price (shop);
  for (guint i = 0; i < G_N_ELEMENTS (figures); i++)
    {
      RcMoney *figure = G_STRUCT_MEMBER_P (quote, figures[i].offset);
      g_autoptr (GError) error = NULL;

      *figure += 1;
      g_assert_false (rc_quote_check (quote, &error));
      g_assert_error (error, RC_ERROR, RC_ERROR_RANGE);
      if (strstr (error->message, figures[i].words) == NULL)
        g_error ("“%s” does not say “%s”", error->message, figures[i].words);
      *figure -= 1;
    }
  for (guint i = 0; i < G_N_ELEMENTS (figures); i++)
    {
      RcMoney *figure = G_STRUCT_MEMBER_P (quote, figures[i].offset), was = *figure;

      *figure = i % 2 == 0 ? G_MAXINT64 : G_MININT64;
      g_assert_false (rc_quote_check (quote, NULL));
      *figure = was;
    }
  for (guint i = 0; i < 3; i++)
    {
      RcTaxPart     *part = &g_array_index (quote->taxes, RcTaxPart, 0);
      RcPaymentStep *step = quote->payments->pdata[0];
      RcQuoteLine   *line = quote->lines->pdata[0];
      RcMoney       *figure = i == 0 ? &part->net : i == 1 ? &step->amount : &line->gross;

      *figure += 1;
      g_assert_false (rc_quote_check (quote, NULL));
      *figure -= 1;
      if (i < 2)
        {
          RcMoney was = *figure;

          *figure = G_MAXINT64;
          g_assert_false (rc_quote_check (quote, NULL));
          *figure = was;
        }
    }
  g_array_set_size (quote->taxes, 0);
  g_assert_false (rc_quote_check (quote, NULL));
}

/* --- orders of several jobs --- */

static GPtrArray *
make_orders (const Shop *shop)
{
  g_autoptr (GError) error = NULL;
  GPtrArray *orders = rc_order_new_all (shop->job, NULL, shop->quantities, shop->book, "2026-03-02", &error);

  g_assert_no_error (error);
  return orders;
}

/* 30 sq yd at 10.00 each: 300.00 and 300.00 of one mill, as one order whose lines say whose they are. */
static void
test_orders_together (Shop *shop, gconstpointer data)
{
  g_autoptr (GPtrArray) orders = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_order_free);
  g_autoptr (GPtrArray) first = make_orders (shop), second = make_orders (shop);
  g_autoptr (GError) error = NULL;
  RcOrder *mill;

  g_ptr_array_add (((RcOrder *)second->pdata[0])->notes, g_strdup ("One dye lot"));
  ((RcOrder *)first->pdata[0])->supplements = g_strdup ("O-1");
  ((RcOrder *)second->pdata[0])->supplements = g_strdup ("O-2, O-3");
  g_assert_true (rc_orders_add (orders, first, "J-1", &error));
  g_assert_true (rc_orders_add (orders, second, "J-2", &error));
  g_assert_no_error (error);
  g_assert_cmpuint (orders->len, ==, 2);
  mill = orders->pdata[0];
  g_assert_cmpstr (mill->supplier, ==, "Low Mill");
  g_assert_cmpuint (mill->lines->len, ==, 2);
  g_assert_cmpstr (((const RcQuoteLine *)mill->lines->pdata[1])->name, ==, "J-2: twist");
  g_assert_cmpstr (mill->notes->pdata[0], ==, "J-2: One dye lot");
  g_assert_cmpstr (mill->supplements, ==, "O-1, O-2, O-3");
  g_assert_cmpint (mill->net, ==, 60000);
  g_assert_cmpint (mill->total, ==, 60000);

  ((RcOrder *)second->pdata[0])->net = G_MAXINT64;
  g_assert_false (rc_orders_add (orders, second, "J-3", &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_RANGE);
  g_assert_nonnull (strstr (error->message, "J-3"));
  g_clear_error (&error);
  ((RcOrder *)second->pdata[0])->currency = pounds;
  g_assert_false (rc_orders_add (orders, second, "J-4", &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_REFERENCE);
  g_assert_nonnull (strstr (error->message, "GBP"));
}

static void
test_order_too_large (Shop *shop, gconstpointer data)
{
  RcPrice *twist = shop->book->prices->pdata[0];
  g_autoptr (GError) error = NULL;

  twist->cost = G_MAXINT64 / 60;
  add_quantity (shop, RC_WORK_NONE, shop->carpet, "twist", 30 * RC_MICRO, RC_UNIT_SQ_YD);
  add_quantity (shop, RC_WORK_NONE, shop->carpet, "twist", 30 * RC_MICRO, RC_UNIT_SQ_YD);
  g_assert_null (rc_order_new_all (shop->job, NULL, shop->quantities, shop->book, NULL, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_RANGE);
  g_assert_nonnull (strstr (error->message, "twist"));
}

/* --- the difference between two quotations --- */

/* 2 sq yd of carpet more, the tape gone, another rate for the work: together with the variation it is the second. */
static void
test_variation (Shop *shop, gconstpointer data)
{
  g_autoptr (RcQuote) before = NULL;
  g_autoptr (RcQuote) after = NULL;
  g_autoptr (RcQuote) variation = NULL;
  g_autoptr (RcQuote) nothing = NULL;
  g_autoptr (RcQuote) foreign = NULL;
  g_autoptr (GError) error = NULL;
  RcLineTerms *terms;

  shop->book->tax_ppm = 82500;
  before = price (shop);
  ((RcQuantityLine *)shop->quantities->pdata[0])->quantity_micro += 2 * RC_MICRO;
  g_ptr_array_remove_index (shop->quantities, 1);
  terms = rc_line_terms_new ("lay");
  terms->tax_ppm = 20000;
  g_ptr_array_add (shop->job->offer->lines, terms);
  after = price (shop);
  variation = rc_quote_new_variation (before, after, &error);
  g_assert_no_error (error);
  g_assert_true (rc_quote_check (variation, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (variation->lines->len, ==, 5); /* carpet, tape, laying off; carpet, laying on */
  g_assert_cmpint (variation->net, ==, 3000 - 1600);
  g_assert_cmpint (before->total + variation->total, ==, after->total);
  g_assert_cmpuint (variation->taxes->len, ==, 2);
  g_assert_cmpint (g_array_index (variation->taxes, RcTaxPart, 0).ppm, ==, 20000);

  nothing = rc_quote_new_variation (after, after, &error);
  g_assert_cmpuint (nothing->lines->len, ==, 0);
  g_assert_cmpint (nothing->total, ==, 0);

  foreign = rc_quote_new_empty (&pounds);
  g_assert_null (rc_quote_new_variation (foreign, after, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_REFERENCE);
}

/* A line is the same when all that is charged and paid for it is. */
static void
test_variation_of_one_figure (Shop *shop, gconstpointer data)
{
  shop->book->tax_ppm = 82500;
  for (guint i = 0; i < 6; i++)
    {
      g_autoptr (RcQuote) before = price (shop);
      g_autoptr (RcQuote) after = price (shop);
      g_autoptr (RcQuote) variation = NULL;
      RcQuoteLine *line = after->lines->pdata[0];

      line->from_stock ^= i == 0;
      line->amount += i == 1;
      line->quantity_micro += i == 2;
      line->unit = i == 3 ? RC_UNIT_M2 : line->unit;
      line->tax_ppm += i == 4;
      line->cost += i == 5;
      variation = rc_quote_new_variation (before, after, NULL);
      g_assert_cmpuint (variation->lines->len, ==, 2); /* off and on again */
    }
}

/* Sums that have no room are refused where they are added up. */
static void
test_too_large (Shop *shop, gconstpointer data)
{
  g_autoptr (RcQuote) quote = price (shop);
  RcQuoteLine *line = quote->lines->pdata[0], *other = quote->lines->pdata[1];
  RcTaxPart    part = { 0, G_MAXINT64, 0 };
  g_autoptr (GError) error = NULL;

  g_array_append_val (quote->taxes, part);
  g_assert_false (rc_quote_check (quote, NULL));
  g_array_index (quote->taxes, RcTaxPart, quote->taxes->len - 1) = (RcTaxPart){ 0, 0, G_MAXINT64 };
  g_array_append_val (quote->taxes, part);
  g_assert_false (rc_quote_check (quote, NULL));
  g_array_set_size (quote->taxes, 1);
  line->cost = other->cost = G_MAXINT64;
  g_assert_false (rc_quote_check (quote, NULL));
  for (guint i = 0; i < 2; i++)
    {
      RcPaymentStep *step = g_new0 (RcPaymentStep, 1);

      step->amount = G_MAXINT64;
      g_ptr_array_add (quote->payments, step);
    }
  line->cost = other->cost = 0;
  g_assert_false (rc_quote_check (quote, NULL));
  line->quantity_micro = line->price = G_MAXINT64;
  g_assert_false (rc_quote_check (quote, &error));
  g_assert_nonnull (strstr (error->message, "line 1, twist"));

  /* So much is bought that the freight is free, whatever the sum. */
  ((RcPrice *)shop->book->prices->pdata[0])->cost = G_MAXINT64 / 60;
  add_supplier (shop, "Low Mill", 4000, 5500, 30000);
  assert_refused (shop, RC_ERROR_RANGE, "too large");
}

static void
test_terms (Shop *shop, gconstpointer data)
{
  g_autoptr (RcQuote) shops = NULL;
  g_autoptr (RcQuote) own = NULL;

  shop->book->terms = g_strdup ("Thirty days");
  shop->book->valid_days = 30;
  shops = price (shop);
  g_assert_cmpstr (shops->terms, ==, "Thirty days");
  g_assert_cmpint (shops->valid_days, ==, 30);
  shop->job->offer->terms = g_strdup ("On delivery");
  shop->job->offer->valid_days = 14;
  own = price (shop);
  g_assert_cmpstr (own->terms, ==, "On delivery");
  g_assert_cmpint (own->valid_days, ==, 14);
}

/* --- margins --- */

/* Margin is a part of the sale price: 60.00 at 40 % sells for 100.00. Rounded up to the cent: 1.00 at 1/3 of it. */
static void
test_margins (Shop *shop, gconstpointer data)
{
  static const struct
  {
    RcMoney cost;
    gint64  margin_ppm;
    RcMoney sale; /* -1: refused */
  } rows[] = { { 6000, 400000, 10000 }, { 100, 333333, 150 },          { 6000, 0, 6000 }, { 6000, -500000, 4000 },
               { 6000, RC_MICRO, -1 },  { 6000, -RC_MICRO, -1 },       { -1, 0, -1 },     { 0, 400000, 0 },
               { 101, 500000, 202 },    { G_MAXINT64 / 2, 999999, -1 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;
      RcMoney  sale = -1;
      gboolean done = rc_price_sale_from_margin (rows[i].cost, rows[i].margin_ppm, &sale, &error);

      g_assert_true (done == (rows[i].sale >= 0));
      if (done)
        g_assert_cmpint (sale, ==, rows[i].sale);
      else
        g_assert_error (error, RC_ERROR, RC_ERROR_RANGE);
    }
  g_assert_cmpint (rc_price_get_margin_ppm (6000, 10000), ==, 400000);
  g_assert_cmpint (rc_price_get_margin_ppm (6000, 4000), ==, -500000);
  g_assert_cmpint (rc_price_get_margin_ppm (6000, 0), ==, 0);
  g_assert_cmpint (rc_price_get_margin_ppm (G_MININT64 / 2, 1), ==, 0); /* too large to be told */
}

/* --- the price book --- */

/* A list takes the place of goods, prices, suppliers, tax areas and payments; a copy has all there is. */
static void
test_lists_and_copies (Shop *shop, gconstpointer data)
{
  g_autoptr (RcPriceBook) list = rc_price_book_new (&dollars);
  g_autoptr (RcPriceBook) copy = NULL;

  shop->book->logo = g_bytes_new_static ("png", 3);
  add_supplier (shop, "Low Mill", 1, 2, 3)->phone = g_strdup ("555 0101");
  g_ptr_array_add (shop->book->tax_areas, rc_tax_area_new ("a", "A", 1, 2));
  g_ptr_array_add (shop->book->payments, rc_payment_new ("First", 3));
  copy = rc_price_book_copy (shop->book);
  g_assert_cmpuint (g_bytes_get_size (copy->logo), ==, 3);
  g_assert_cmpstr (rc_price_book_find_supplier (copy, "Low Mill")->phone, ==, "555 0101");
  g_assert_cmpint (rc_price_book_find_tax_area (copy, "a")->work_ppm, ==, 2);
  g_assert_cmpint (((const RcPayment *)copy->payments->pdata[0])->part_ppm, ==, 3);
  g_assert_null (rc_price_book_find_supplier (copy, "High Mill"));
  g_assert_null (rc_price_book_find_tax_area (copy, "b"));

  /* A list without suppliers, areas and payments leaves the shop's. */
  g_ptr_array_add (list->prices, rc_price_new ("plush", RC_UNIT_SQ_YD, 1, 2));
  rc_price_book_take_list (copy, list);
  g_assert_nonnull (rc_price_book_find (copy, "plush", NULL));
  g_assert_null (rc_price_book_find (copy, "twist", NULL));
  g_assert_nonnull (rc_price_book_find_supplier (copy, "Low Mill"));
  g_assert_cmpuint (copy->payments->len, ==, 1);
  g_ptr_array_add (list->suppliers, rc_supplier_new ("High Mill"));
  g_ptr_array_add (list->tax_areas, rc_tax_area_new ("b", "B", 3, 4));
  g_ptr_array_add (list->payments, rc_payment_new ("All", 5));
  rc_price_book_take_list (copy, list);
  g_assert_nonnull (rc_price_book_find_supplier (copy, "High Mill"));
  g_assert_null (rc_price_book_find_supplier (copy, "Low Mill"));
  g_assert_cmpint (rc_price_book_find_tax_area (copy, "b")->goods_ppm, ==, 3);
  g_assert_cmpint (((const RcPayment *)copy->payments->pdata[0])->part_ppm, ==, 5);
}

/* What owns nothing yet can be freed like the rest. */
static void
test_nothing_is_freed (Shop *shop, gconstpointer data)
{
  rc_quote_free (NULL);
  rc_quote_line_free (NULL);
  rc_payment_step_free (NULL);
  rc_order_free (NULL);
  rc_price_free (NULL);
  rc_price_book_free (NULL);
  rc_tax_area_free (NULL);
  rc_supplier_free (NULL);
  rc_change_free (NULL);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, function) g_test_add ("/quote-terms/" name, Shop, NULL, set_up, function, tear_down)
  ADD ("freight", test_freight);
  ADD ("freight-of-what-is-bought", test_freight_of_what_is_bought);
  ADD ("further-lines", test_extras);
  ADD ("further-lines-refused", test_extras_refused);
  ADD ("tax-area", test_tax_area);
  ADD ("rates-refused", test_rates_refused);
  ADD ("payments", test_payments);
  ADD ("a-wrong-figure-is-named", test_check_names_the_figure);
  ADD ("orders-of-several-jobs", test_orders_together);
  ADD ("an-order-too-large", test_order_too_large);
  ADD ("variation", test_variation);
  ADD ("variation-of-one-figure", test_variation_of_one_figure);
  ADD ("too-large", test_too_large);
  ADD ("terms", test_terms);
  ADD ("margins", test_margins);
  ADD ("lists-and-copies", test_lists_and_copies);
  ADD ("nothing-is-freed", test_nothing_is_freed);
  return g_test_run ();
}
