/* Money: reading, writing, products rounded once. */
#include "money.h"

#include "area.h"
#include "rowcut-error.h"
#include "unit.h"

#define FOOT RC_TICKS_PER_FOOT

static void
test_currencies (void)
{
  /* codes: Debian iso-codes 4.15; digits from memory: two for most, JPY none, KWD three */
  static const struct
  {
    const char *code;
    int         digits;
  } known[] = { { "USD", 2 }, { "CAD", 2 }, { "GBP", 2 }, { "EUR", 2 }, { "AUD", 2 }, { "NZD", 2 },
                { "ZAR", 2 }, { "INR", 2 }, { "CHF", 2 }, { "MXN", 2 }, { "JPY", 0 }, { "KWD", 3 } };
  static const char *unknown[] = { "", "US", "usd", "USDX", "XYZ", "US ", "D G", "\xff\xff\xff", "SD " };

  for (guint i = 0; i < G_N_ELEMENTS (known); i++)
    {
      RcCurrency currency;

      g_assert_true (rc_currency_parse (known[i].code, &currency, NULL));
      g_assert_cmpstr (currency.code, ==, known[i].code);
      g_assert_cmpint (currency.digits, ==, known[i].digits);
    }
  for (guint i = 0; i < G_N_ELEMENTS (unknown); i++)
    {
      g_autoptr (GError) error = NULL;
      RcCurrency currency;

      g_assert_false (rc_currency_parse (unknown[i], &currency, &error));
      g_assert_error (error, RC_ERROR, RC_ERROR_PARSE);
    }
  g_assert_false (rc_currency_parse (NULL, &(RcCurrency){ 0 }, NULL));
}

static const RcCurrency dollars = { "USD", 2 };
static const RcCurrency yen = { "JPY", 0 };
static const RcCurrency dinars = { "KWD", 3 };

static void
test_money_reads (void)
{
  static const struct
  {
    const char       *text;
    const RcCurrency *currency;
    RcMoney           money;
  } cases[] = {
    { "1234.50", &dollars, 123450 },
    { "1,234.50", &dollars, 123450 },
    { "-3.2", &dollars, -320 },
    { "+3", &dollars, 300 },
    { "USD 12.00", &dollars, 1200 },
    { "12.00 USD", &dollars, 1200 },
    { " 12.00USD ", &dollars, 1200 },
    { "USD -12", &dollars, -1200 },
    { "12,50", &dollars, 1250 }, /* can only be a decimal comma */
    { "12,345", &dollars, 1234500 },
    { "1,234,567", &dollars, 123456700 },
    { "12.5000", &dollars, 1250 }, /* nothing is lost */
    { ".5", &dollars, 50 },
    { "0", &dollars, 0 },
    { "1,234", &yen, 1234 },
    { "1.234", &dinars, 1234 },
    { "1,234", &dinars, 1234000 },
    { "92233720368547758.07", &dollars, G_MAXINT64 },
    { "-92233720368547758.08", &dollars, G_MININT64 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      RcMoney money = -7;

      rc_money_parse (cases[i].text, cases[i].currency, &money, &error);
      g_assert_no_error (error);
      g_assert_cmpint (money, ==, cases[i].money);
    }
}

static void
test_money_refuses (void)
{
  static const struct
  {
    const char       *text;
    const RcCurrency *currency;
    int               code;
  } cases[] = {
    { "", &dollars, RC_ERROR_PARSE },
    { "USD", &dollars, RC_ERROR_PARSE },
    { "12.345", &dollars, RC_ERROR_PARSE },
    { "12.5", &yen, RC_ERROR_PARSE },
    { "EUR 12", &dollars, RC_ERROR_PARSE },
    { "1,23,4", &dollars, RC_ERROR_PARSE },
    { "1,234,5", &dollars, RC_ERROR_PARSE },
    { "12.", &dollars, RC_ERROR_PARSE },
    { "1.2.3", &dollars, RC_ERROR_PARSE },
    { "--1", &dollars, RC_ERROR_PARSE },
    { "1e3", &dollars, RC_ERROR_PARSE },
    { "$12", &dollars, RC_ERROR_PARSE },
    { "12 34", &dollars, RC_ERROR_PARSE },
    { "\xff", &dollars, RC_ERROR_PARSE },
    { "92233720368547758.08", &dollars, RC_ERROR_RANGE },
    { "100000000000000000000000000000000000000000000", &dollars, RC_ERROR_RANGE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      RcMoney money = -7;

      g_assert_false (rc_money_parse (cases[i].text, cases[i].currency, &money, &error));
      g_assert_error (error, RC_ERROR, cases[i].code);
      g_assert_cmpint (money, ==, -7);
    }
}

static void
test_money_prints (void)
{
  static const struct
  {
    RcMoney           money;
    const RcCurrency *currency;
    const char       *plain, *grouped;
  } cases[] = {
    { 123450, &dollars, "1234.50", "1,234.50 USD" },
    { 100, &dollars, "1.00", "1.00 USD" },
    { -5, &dollars, "-0.05", "-0.05 USD" },
    { 0, &dollars, "0.00", "0.00 USD" },
    { 99999, &dollars, "999.99", "999.99 USD" },
    { 1234567, &yen, "1234567", "1,234,567 JPY" },
    { 1234567, &dinars, "1234.567", "1,234.567 KWD" },
    { G_MININT64, &dollars, "-92233720368547758.08", "-92,233,720,368,547,758.08 USD" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *plain = rc_money_format_plain (cases[i].money, cases[i].currency);
      g_autofree char *grouped = rc_money_format (cases[i].money, cases[i].currency);
      RcMoney          back;

      g_assert_cmpstr (plain, ==, cases[i].plain);
      g_assert_cmpstr (grouped, ==, cases[i].grouped);
      g_assert_true (rc_money_parse (plain, cases[i].currency, &back, NULL));
      g_assert_cmpint (back, ==, cases[i].money);
      g_assert_true (rc_money_parse (grouped, cases[i].currency, &back, NULL));
      g_assert_cmpint (back, ==, cases[i].money);
    }
}

static void
test_money_arithmetic (void)
{
  g_autoptr (GError) error = NULL;
  RcMoney amount = -7;

  /* halves away from zero */
  g_assert_true (rc_money_multiply (1, 500000, &amount, NULL));
  g_assert_cmpint (amount, ==, 1);
  g_assert_true (rc_money_multiply (1, 499999, &amount, NULL));
  g_assert_cmpint (amount, ==, 0);
  g_assert_true (rc_money_multiply (-1, 500000, &amount, NULL));
  g_assert_cmpint (amount, ==, -1);

  /* the product needs more than 64 bits, the amount does not */
  g_assert_true (rc_money_multiply (G_MAXINT64, RC_MICRO, &amount, NULL));
  g_assert_cmpint (amount, ==, G_MAXINT64);
  g_assert_false (rc_money_multiply (G_MAXINT64, RC_MICRO + 1, &amount, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_RANGE);
  g_assert_cmpint (amount, ==, G_MAXINT64);

  g_assert_cmpint (rc_money_part (10000, 82500), ==, 825); /* 8.25 % of 100.00 */
  g_assert_cmpint (rc_money_part (6, 82500), ==, 0);       /* 0.495 */
  g_assert_cmpint (rc_money_part (200, 2500), ==, 1);      /* 0.5 */
  g_assert_cmpint (rc_money_part (-200, 2500), ==, -1);

  g_assert_true (rc_money_add (2, 3, &amount));
  g_assert_cmpint (amount, ==, 5);
  g_assert_false (rc_money_add (G_MAXINT64, 1, &amount));
  g_assert_cmpint (amount, ==, 5);
}

static void
test_published_prices (void)
{
  RcMoney amount;

  /* daltoncarpet.com: 132 sq ft at 11.99 the sq yd: 175.85 (14.666667 x 11.99 = 175.853) */
  g_assert_true (rc_money_multiply (1199, rc_unit_from_area (2 * 132 * FOOT * FOOT, RC_UNIT_SQ_YD), &amount, NULL));
  g_assert_cmpint (amount, ==, 17585);

  /* jiskha 1232497269: 18 7/9 sq yd at 21.50: 403.72 */
  g_assert_true (rc_money_multiply (2150, rc_unit_from_area (2 * 169 * FOOT * FOOT, RC_UNIT_SQ_YD), &amount, NULL));
  g_assert_cmpint (amount, ==, 40372);

  /* jiskha 1331782851: 35 sq yd at 14.50: 507.50 */
  g_assert_true (rc_money_multiply (1450, rc_unit_from_area (2 * 315 * FOOT * FOOT, RC_UNIT_SQ_YD), &amount, NULL));
  g_assert_cmpint (amount, ==, 50750);

  /* maths lesson: an L of 225 sq ft, 25 sq yd, at 32.50: 812.50 */
  g_assert_true (rc_money_multiply (3250, rc_unit_from_area (2 * 225 * FOOT * FOOT, RC_UNIT_SQ_YD), &amount, NULL));
  g_assert_cmpint (amount, ==, 81250);

  /* jiskha 1326255360: 12 x 28 ft = 37.33 sq yd at 17.95: 670.13 */
  g_assert_true (rc_money_multiply (1795, rc_unit_from_area (2 * 336 * FOOT * FOOT, RC_UNIT_SQ_YD), &amount, NULL));
  g_assert_cmpint (amount, ==, 67013);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/money/knows currencies and their digits", test_currencies);
  g_test_add_func ("/money/reads amounts", test_money_reads);
  g_test_add_func ("/money/refuses what is no amount", test_money_refuses);
  g_test_add_func ("/money/prints plain and grouped, and reads both back", test_money_prints);
  g_test_add_func ("/money/rounds once and never wraps", test_money_arithmetic);
  g_test_add_func ("/money/published prices", test_published_prices);

  return g_test_run ();
}
