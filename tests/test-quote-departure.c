/* What a plan takes otherwise than the quotation that was accepted. */
#include "quote.h"
#include "work.h"

static const RcCurrency USD = { "USD", 2 };

typedef struct
{
  RcJob   *job;
  RcQuote *accepted, *now;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  RcGoods *twist = rc_goods_new ("twist", RC_GOODS_CARPET, "Harbour Twist");
  RcGoods *tape = rc_goods_new ("tape", RC_GOODS_TAPE, "Tape");

  fixture->job = rc_job_new ("J-1", &USD);
  g_ptr_array_add (fixture->job->goods, twist);
  g_ptr_array_add (fixture->job->goods, tape);
  fixture->accepted = rc_quote_new_empty (&USD);
  fixture->now = rc_quote_new_empty (&USD);
  fixture->accepted->total = 100000;
  fixture->now->total = 123450;
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  rc_quote_free (fixture->accepted);
  rc_quote_free (fixture->now);
  rc_job_free (fixture->job);
}

static RcQuoteLine *
add_line (RcQuote *quote, const char *item, gint64 needed, RcUnit unit)
{
  g_autoptr (GError) error = NULL;
  RcQuoteLine *line = rc_quote_line_new_plain (item, item, 1000000, unit, 100, 50, FALSE, &error);

  g_assert_no_error (error);
  line->needed_micro = needed * 1000000;
  line->needed_unit = unit;
  g_ptr_array_add (quote->lines, line);
  return line;
}

static void
assert_departures (Fixture *fixture, gboolean totals, const char *wanted)
{
  g_autoptr (GPtrArray) found = rc_quote_list_departures (fixture->accepted, fixture->now, fixture->job, totals);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < found->len; i++)
    g_string_append_printf (text, "%s\n", (const char *)g_ptr_array_index (found, i));
  g_assert_cmpstr (text->str, ==, wanted);
}

/* Bought or from stock, in one line or two; optional lines, other goods and the total by itself do not count. */
static void
test_the_same (Fixture *fixture, gconstpointer data)
{
  add_line (fixture->accepted, "twist", 80, RC_UNIT_SQ_YD);
  add_line (fixture->now, "twist", 50, RC_UNIT_SQ_YD);
  add_line (fixture->now, "twist", 30, RC_UNIT_SQ_YD)->from_stock = TRUE;
  add_line (fixture->now, "twist", 7, RC_UNIT_SQ_YD)->optional = TRUE;
  add_line (fixture->accepted, "tape", 40, RC_UNIT_FT);
  add_line (fixture->now, "tape", 60, RC_UNIT_FT);
  assert_departures (fixture, TRUE, "");
}

static void
test_more_and_less (Fixture *fixture, gconstpointer data)
{
  const char      *cross = rc_work_get_name (RC_WORK_CROSS_SEAM), *side = rc_work_get_name (RC_WORK_SIDE_SEAM);
  g_autofree char *wanted = g_strdup_printf ("Harbour Twist: 82 sq yd in place of 80 sq yd\n%s: 6 ft in place of 0 ft\n"
                                             "%s: 0 ft in place of 12 ft\n",
                                             cross, side);
  g_autofree char *with_total = g_strconcat (wanted, "Total: 1,234.50 USD in place of 1,000.00 USD\n", NULL);

  add_line (fixture->accepted, "twist", 80, RC_UNIT_SQ_YD);
  add_line (fixture->now, "twist", 82, RC_UNIT_SQ_YD);
  add_line (fixture->now, cross, 6, RC_UNIT_FT);
  add_line (fixture->accepted, side, 12, RC_UNIT_FT);
  assert_departures (fixture, FALSE, wanted);
  assert_departures (fixture, TRUE, with_total);
}

/* Square yards and square metres, as after a change of the goods' unit, are not set side by side. */
static void
test_other_units (Fixture *fixture, gconstpointer data)
{
  add_line (fixture->accepted, "twist", 80, RC_UNIT_SQ_YD);
  add_line (fixture->now, "twist", 67, RC_UNIT_M2);
  assert_departures (fixture, TRUE, "");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(path, function) g_test_add (path, Fixture, NULL, set_up, function, tear_down)
  ADD ("/quote-departure/the-same", test_the_same);
  ADD ("/quote-departure/more-and-less", test_more_and_less);
  ADD ("/quote-departure/other-units", test_other_units);
  return g_test_run ();
}
