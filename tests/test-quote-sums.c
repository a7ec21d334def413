/* Prices, conversions and sums: published figures, and random quotations against an independent decimal arithmetic. */
#include <gio/gio.h>
#include <glib/gstdio.h>
#include <string.h>

#include "quote.h"
#include "rowcut-error.h"

static const RcCurrency dollars = { "USD", 2 };

/* One line of goods, counted in `unit`. */
static RcQuantityLine *
line_new (const RcGoods *goods, gint64 quantity_micro)
{
  RcQuantityLine *line = g_new0 (RcQuantityLine, 1);

  line->goods = goods;
  line->item = g_strdup (goods->id);
  line->name = g_strdup (goods->name);
  line->because = g_strdup ("x");
  line->unit = goods->unit;
  line->quantity_micro = line->net_micro = quantity_micro;
  return line;
}

static GPtrArray *
lines_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quantity_line_free);
}

static gint64
parse_quantity (const char *text)
{
  gint64 micro;

  g_assert_true (rc_quantity_parse (text, &micro, NULL));
  return micro;
}

static RcMoney
parse_money (const char *text, const RcCurrency *currency)
{
  RcMoney money;

  g_assert_true (rc_money_parse (text, currency, &money, NULL));
  return money;
}

/* Published sums: quantity, its unit, price a unit (of price_unit), amount. */
static void
test_published_amounts (void)
{
  static const struct
  {
    const char *source, *quantity;
    RcUnit      unit;
    const char *price;
    RcUnit      price_unit;
    const char *amount;
  } rows[] = {
    { "floor of 35 sq yd at 17.95 (jiskha 1326255360)", "315", RC_UNIT_SQ_FT, "17.95", RC_UNIT_SQ_YD, "628.25" },
    { "layout of 12 x 28 ft at 17.95 (jiskha 1326255360)", "336", RC_UNIT_SQ_FT, "17.95", RC_UNIT_SQ_YD, "670.13" },
    { "132 sq ft at 11.99, unrounded (daltoncarpet.com)", "132", RC_UNIT_SQ_FT, "11.99", RC_UNIT_SQ_YD, "175.85" },
    { "14.7 sq yd as printed (daltoncarpet.com)", "14.7", RC_UNIT_SQ_YD, "11.99", RC_UNIT_SQ_YD, "176.25" },
    { "45.6 sq yd as printed at 5.99 (rusticgirls.com)", "45.6", RC_UNIT_SQ_YD, "5.99", RC_UNIT_SQ_YD, "273.14" },
    { "410 sq ft, unrounded (rusticgirls.com)", "410", RC_UNIT_SQ_FT, "5.99", RC_UNIT_SQ_YD, "272.88" },
    { "268 ft of yard-wide goods at 0.75 a yd (same textbook, recomputed)", "268", RC_UNIT_FT, "0.75", RC_UNIT_YD,
      "67.00" },
    { "34 1/6 yd (102 1/2 ft) at 1.25 (Gifford q. 51, recomputed)", "102.5", RC_UNIT_FT, "1.25", RC_UNIT_YD, "42.71" },
    { "44 1/3 yd (133 ft) at 1.50 (Gifford q. 55, recomputed)", "133", RC_UNIT_FT, "1.50", RC_UNIT_YD, "66.50" },
    { "39 m at 25 (UK maths worksheet)", "39", RC_UNIT_M, "25", RC_UNIT_M, "975.00" },
    { "40 m at 25 (UK maths worksheet)", "40", RC_UNIT_M, "25", RC_UNIT_M, "1000.00" },
    { "225 sq ft at 32.50 a sq yd (a maths lesson)", "225", RC_UNIT_SQ_FT, "32.50", RC_UNIT_SQ_YD, "812.50" },
    { "169 sq ft at 21.50 a sq yd (jiskha 1232497269)", "169", RC_UNIT_SQ_FT, "21.50", RC_UNIT_SQ_YD, "403.72" },
    { "315 sq ft at 14.50 a sq yd (jiskha 1331782851)", "315", RC_UNIT_SQ_FT, "14.50", RC_UNIT_SQ_YD, "507.50" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (RcPriceBook) book = rc_price_book_new (&dollars);
      g_autoptr (RcJob) job = rc_job_new ("J", &dollars);
      g_autoptr (RcGoods) goods = rc_goods_new ("twist", RC_GOODS_CARPET, "Twist");
      g_autoptr (GPtrArray) lines = lines_new ();
      g_autoptr (RcQuote) quote = NULL;
      RcMoney price = parse_money (rows[i].price, &dollars);

      g_test_message ("%s", rows[i].source);
      job->tax_ppm = 0;
      goods->unit = rows[i].unit;
      g_ptr_array_add (book->prices, rc_price_new ("twist", rows[i].price_unit, 0, price));
      g_ptr_array_add (lines, line_new (goods, parse_quantity (rows[i].quantity)));
      quote = rc_quote_new (job, lines, book, NULL, NULL);
      g_assert_nonnull (quote);
      g_assert_cmpint (quote->net, ==, parse_money (rows[i].amount, &dollars));
      g_assert_cmpint (quote->total, ==, quote->net);
    }
}

/* The rule of sums by hand: 3 x 0.335 each rounded: 3 lines of 0.34; 8.25 % of 1.02 is 0.08415, 0.08. */
static void
test_rule_of_sums (void)
{
  g_autoptr (RcPriceBook) book = rc_price_book_new (&dollars);
  g_autoptr (RcJob) job = rc_job_new ("J", &dollars);
  g_autoptr (RcGoods) goods = rc_goods_new ("g", RC_GOODS_STRIP, "G");
  g_autoptr (GPtrArray) lines = lines_new ();
  g_autoptr (RcQuote) quote = NULL;

  goods->unit = RC_UNIT_FT;
  book->tax_ppm = 82500;
  book->deposit_ppm = 500000;
  job->tax_ppm = -1;
  g_ptr_array_add (book->prices, rc_price_new ("g", RC_UNIT_FT, 50, 67));
  for (int i = 0; i < 3; i++)
    g_ptr_array_add (lines, line_new (goods, RC_MICRO / 2));
  quote = rc_quote_new (job, lines, book, NULL, NULL);
  g_assert_cmpint (quote->net, ==, 102);
  g_assert_cmpint (quote->tax, ==, 8);
  g_assert_cmpint (quote->total, ==, 110);
  g_assert_cmpint (quote->deposit, ==, 55);
  g_assert_cmpint (quote->cost, ==, 75);
  g_assert_cmpint (quote->margin, ==, 27);

  /* The job's own rate goes before the book's. */
  g_clear_pointer (&quote, rc_quote_free);
  job->tax_ppm = 0;
  quote = rc_quote_new (job, lines, book, NULL, NULL);
  g_assert_cmpint (quote->tax_ppm, ==, 0);
  g_assert_cmpint (quote->total, ==, 102);
}

static void
assert_refused (RcJob *job, GPtrArray *lines, RcPriceBook *book, const char *date, RcErrorCode code,
                const char *const *words)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (rc_quote_new (job, lines, book, date, &error));
  g_assert_error (error, RC_ERROR, (int)code);
  for (; *words != NULL; words++)
    if (strstr (error->message, *words) == NULL)
      g_error ("“%s” does not say “%s”", error->message, *words);
}

static void
test_refusals (void)
{
  g_autoptr (RcPriceBook) book = rc_price_book_new (&dollars);
  g_autoptr (RcJob) job = rc_job_new ("J", &dollars);
  g_autoptr (RcGoods) goods = rc_goods_new ("twist", RC_GOODS_CARPET, "Harbour Twist");
  g_autoptr (GPtrArray) lines = lines_new ();
  RcPrice *price;

  goods->unit = RC_UNIT_SQ_YD;
  g_ptr_array_add (lines, line_new (goods, 30 * RC_MICRO));
  assert_refused (job, lines, book, "2026-03-01", RC_ERROR_REFERENCE,
                  (const char *[]){ "Harbour Twist", "twist", "2026-03-01", NULL });

  price = rc_price_new ("twist", RC_UNIT_SQ_YD, 1000, 1500);
  price->valid_to = g_strdup ("2026-02-28");
  g_ptr_array_add (book->prices, price);
  assert_refused (job, lines, book, "2026-03-01", RC_ERROR_REFERENCE,
                  (const char *[]){ "Harbour Twist", "2026-03-01", "other days", NULL });

  g_clear_pointer (&price->valid_to, g_free);
  price->from_micro = 100 * RC_MICRO;
  assert_refused (job, lines, book, "2026-03-01", RC_ERROR_REFERENCE,
                  (const char *[]){ "Harbour Twist", "30 sq yd", NULL });

  price->from_micro = 0;
  price->unit = RC_UNIT_LITRE;
  assert_refused (job, lines, book, NULL, RC_ERROR_REFERENCE,
                  (const char *[]){ "Harbour Twist", "sq yd", "1 L", NULL });

  price->unit = RC_UNIT_FT; /* by the roll, but the roll has no width */
  assert_refused (job, lines, book, NULL, RC_ERROR_REFERENCE, (const char *[]){ "Harbour Twist", "1 ft", NULL });

  price->unit = RC_UNIT_SQ_YD;
  price->sale = G_MAXINT64 / 2;
  assert_refused (job, lines, book, NULL, RC_ERROR_RANGE, (const char *[]){ "Harbour Twist", NULL });

  price->sale = G_MAXINT64 / 100;
  assert_refused (job, lines, book, NULL, RC_ERROR_RANGE, (const char *[]){ "Tax", NULL });

  price->sale = 1500;
  job->tax_ppm = 10000001;
  assert_refused (job, lines, book, NULL, RC_ERROR_RANGE, (const char *[]){ "1000.0001 %", NULL });

  memcpy (job->currency.code, "GBP", 4);
  assert_refused (job, lines, book, NULL, RC_ERROR_REFERENCE, (const char *[]){ "GBP", "USD", NULL });
}

/* A random line: goods that can be priced in one of several units. */
typedef struct
{
  RcUnit   unit, price_unit;
  RcLength roll_width;
  gint64   pack_micro;
  RcUnit   pack_unit;
} Shape;

static Shape
random_shape (void)
{
  static const RcUnit lengths[] = { RC_UNIT_M, RC_UNIT_FT, RC_UNIT_YD };
  static const RcUnit areas[] = { RC_UNIT_M2, RC_UNIT_SQ_FT, RC_UNIT_SQ_YD };
  static const RcUnit volumes[] = { RC_UNIT_LITRE, RC_UNIT_GALLON };
  Shape               shape = { .roll_width = g_test_rand_int_range (100000, 900000), .pack_unit = RC_UNIT_EACH };

  switch (g_test_rand_int_range (0, 5))
    {
    case 0:
      shape.unit = lengths[g_test_rand_int_range (0, 3)];
      shape.price_unit = lengths[g_test_rand_int_range (0, 3)];
      break;
    case 1:
      shape.unit = areas[g_test_rand_int_range (0, 3)];
      shape.price_unit = areas[g_test_rand_int_range (0, 3)];
      break;
    case 2:
      shape.unit = areas[g_test_rand_int_range (0, 3)];
      shape.price_unit = lengths[g_test_rand_int_range (0, 3)];
      break;
    case 3:
      shape.unit = volumes[g_test_rand_int_range (0, 2)];
      shape.price_unit = volumes[g_test_rand_int_range (0, 2)];
      break;
    default:
      shape.unit = lengths[g_test_rand_int_range (0, 3)];
      shape.pack_micro = g_test_rand_int_range (1, 500000000);
      shape.price_unit = shape.pack_unit = RC_UNIT_ROLL;
      break;
    }
  return shape;
}

static RcGoods *
goods_from_shape (const Shape *shape, guint number)
{
  g_autofree char *id = g_strdup_printf ("g%u", number);
  RcGoods         *goods = rc_goods_new (id, RC_GOODS_CARPET, id);

  goods->unit = shape->unit;
  goods->roll_width = shape->roll_width;
  goods->pack_micro = shape->pack_micro;
  goods->pack_unit = shape->pack_unit;
  return goods;
}

static char *
format_micro (gint64 micro)
{
  return rc_quantity_format (micro, 6);
}

static void
write_line (FILE *file, const Shape *shape, const RcQuantityLine *quantity, const RcPrice *price,
            const RcQuoteLine *line, const RcCurrency *currency)
{
  g_autofree char *before = format_micro (quantity->quantity_micro), *after = format_micro (line->quantity_micro);
  g_autofree char *pack = format_micro (shape->pack_micro), *width = rc_length_format_mm (shape->roll_width);
  g_autofree char *sale = rc_money_format_plain (price->sale, currency);
  g_autofree char *cost = rc_money_format_plain (price->cost, currency);
  g_autofree char *amount = rc_money_format_plain (line->amount, currency);
  g_autofree char *line_cost = rc_money_format_plain (line->cost, currency);

  fprintf (file, "line\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s", before, rc_unit_get_name (shape->unit),
           rc_unit_get_name (shape->price_unit), width, pack, rc_unit_get_name (shape->pack_unit),
           rc_unit_get_name (shape->unit), sale, cost, after, amount, line_cost);
  fprintf (file, "\t%" G_GINT64_FORMAT "\t%" G_GINT64_FORMAT "\t%d\n", line->discount_ppm, line->tax_ppm,
           line->optional);
}

static void
write_sums (FILE *file, const char *record, const RcMoney *sums, guint n_sums, const RcCurrency *currency)
{
  fputs (record, file);
  for (guint i = 0; i < n_sums; i++)
    {
      g_autofree char *text = rc_money_format_plain (sums[i], currency);

      fprintf (file, "\t%s", text);
    }
  fputs ("\n", file);
}

static void
write_total (FILE *file, const RcQuote *quote)
{
  const RcMoney sums[] = { quote->sum,   quote->discount, quote->net,  quote->tax,
                           quote->total, quote->deposit,  quote->cost, quote->margin };

  for (guint i = 0; i < quote->taxes->len; i++)
    {
      const RcTaxPart *part = &g_array_index (quote->taxes, RcTaxPart, i);
      const RcMoney    figures[] = { part->net, part->tax };
      g_autofree char *record = g_strdup_printf ("tax\t%" G_GINT64_FORMAT, part->ppm);

      write_sums (file, record, figures, G_N_ELEMENTS (figures), &quote->currency);
    }
  for (guint i = 0; i < quote->payments->len; i++)
    {
      const RcPaymentStep *step = g_ptr_array_index (quote->payments, i);
      g_autofree char     *record = g_strdup_printf ("payment\t%" G_GINT64_FORMAT, step->part_ppm);

      write_sums (file, record, &step->amount, 1, &quote->currency);
    }
  write_sums (file, "total", sums, G_N_ELEMENTS (sums), &quote->currency);
}

/* Discounts, rates, optional lines and payments at random. */
static void
randomize_offer (RcOffer *offer, RcPriceBook *book, guint n_lines)
{
  static const gint64 rates[] = { -1, 0, 50000, 70000, 82500, 200000 };
  gint64              rest_ppm = RC_MICRO;

  if (g_test_rand_bit ())
    {
      g_ptr_array_add (book->tax_areas, rc_tax_area_new ("here", "Tax", g_test_rand_int_range (0, 300000), 0));
      offer->tax_area = g_strdup ("here");
    }
  for (guint i = 0; i < n_lines; i++)
    if (g_test_rand_bit ())
      {
        g_autofree char *item = g_strdup_printf ("g%u", i);
        RcLineTerms     *terms = rc_line_terms_new (item);

        terms->discount_ppm = g_test_rand_bit () ? g_test_rand_int_range (0, 1000001) : 0;
        terms->tax_ppm = rates[g_test_rand_int_range (0, G_N_ELEMENTS (rates))];
        terms->optional = g_test_rand_int_range (0, 4) == 0;
        g_ptr_array_add (offer->lines, terms);
      }
  offer->discount_ppm = g_test_rand_bit () ? g_test_rand_int_range (0, 1000001) : 0;
  for (int n = g_test_rand_int_range (0, 4); n > 0; n--)
    {
      gint64 part_ppm = g_test_rand_int_range (0, (gint32)rest_ppm + 1);

      rest_ppm -= part_ppm;
      g_ptr_array_add (offer->payments, rc_payment_new ("step", part_ppm));
    }
}

/* One random quotation with its records. */
static void
write_random_quote (FILE *file)
{
  static const RcCurrency currencies[] = { { "USD", 2 }, { "JPY", 0 }, { "KWD", 3 } };
  const RcCurrency       *currency = &currencies[g_test_rand_int_range (0, 3)];
  guint                   n_lines = g_test_rand_int_range (1, 9);
  g_autoptr (RcPriceBook) book = rc_price_book_new (currency);
  g_autoptr (RcJob) job = rc_job_new ("J", currency);
  g_autoptr (GPtrArray) lines = lines_new ();
  g_autoptr (RcQuote) quote = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *further = NULL;
  Shape            shapes[8];

  book->tax_ppm = g_test_rand_bit () ? g_test_rand_int_range (0, 300000) : g_test_rand_int_range (0, 100) * 2500;
  book->deposit_ppm = g_test_rand_int_range (0, 1000001);
  job->tax_ppm = -1;
  for (guint i = 0; i < n_lines; i++)
    {
      RcGoods *goods;
      RcMoney  sale = g_test_rand_int_range (0, 100000);

      shapes[i] = random_shape ();
      goods = goods_from_shape (&shapes[i], i);
      g_ptr_array_add (book->goods, goods);
      g_ptr_array_add (book->prices, rc_price_new (goods->id, shapes[i].price_unit, sale * 6 / 10, sale));
      g_ptr_array_add (lines, line_new (goods, (gint64)(guint32)g_test_rand_int () * g_test_rand_int_range (1, 4)));
    }
  randomize_offer (job->offer, book, n_lines);
  quote = rc_quote_new (job, lines, book, NULL, &error);
  g_assert_no_error (error);
  if (g_test_rand_bit () && quote->net > 0)
    {
      job->offer->discount = g_test_rand_int_range (0, (gint32)MIN (quote->net, 1000000) + 1);
      g_clear_pointer (&quote, rc_quote_free);
      quote = rc_quote_new (job, lines, book, NULL, &error);
      g_assert_no_error (error);
    }
  g_assert_true (rc_quote_check (quote, &error));
  further = rc_money_format_plain (job->offer->discount, currency);

  fprintf (file, "book\t%d\t%" G_GINT64_FORMAT "\t%" G_GINT64_FORMAT "\t%s\n", currency->digits, book->deposit_ppm,
           job->offer->discount_ppm, further);
  for (guint i = 0; i < n_lines; i++)
    write_line (file, &shapes[i], g_ptr_array_index (lines, i), g_ptr_array_index (book->prices, i),
                g_ptr_array_index (quote->lines, i), currency);
  write_total (file, quote);
}

/* Random quotations (a hundred thousand with -m slow) equal Python's decimal arithmetic to the last digit. */
static void
test_against_decimal_arithmetic (void)
{
  const guint      n_quotes = g_test_slow () ? 100000 : 4000;
  g_autofree char *python = g_find_program_in_path ("python3");
  g_autofree char *script = g_test_build_filename (G_TEST_DIST, "check-quotes.py", NULL);
  g_autofree char *path = NULL, *output = NULL, *errors = NULL;
  g_autoptr (GError) error = NULL;
  FILE *file;
  int   status, descriptor;

  if (python == NULL)
    {
      g_test_skip ("python3 is not there to check against");
      return;
    }
  g_assert_true (g_file_test (script, G_FILE_TEST_EXISTS));
  descriptor = g_file_open_tmp ("quotes-XXXXXX.txt", &path, &error);
  g_assert_no_error (error);
  file = fdopen (descriptor, "w");
  for (guint i = 0; i < n_quotes; i++)
    write_random_quote (file);
  fclose (file);

  g_spawn_sync (NULL, (char *[]){ python, script, path, NULL }, NULL, G_SPAWN_DEFAULT, NULL, NULL, &output, &errors,
                &status, &error);
  g_unlink (path);
  g_assert_no_error (error);
  g_test_message ("quotations and lines: %s%s", output, errors);
  g_assert_cmpint (status, ==, 0);
  g_assert_cmpint (g_ascii_strtoll (output, NULL, 10), ==, n_quotes);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/quote-sums/published-amounts", test_published_amounts);
  g_test_add_func ("/quote-sums/rule-of-sums", test_rule_of_sums);
  g_test_add_func ("/quote-sums/refusals", test_refusals);
  g_test_add_func ("/quote-sums/against-decimal-arithmetic", test_against_decimal_arithmetic);
  return g_test_run ();
}
