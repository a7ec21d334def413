/* The job summary, for the office alone; and that nothing of it is on a paper that goes out. */
#include <glib/gstdio.h>
#include <string.h>

#include "sheet-fixture.h"
#include "text.h"

static RcQuoteLine *
get_line (const RcSheetFixture *fixture, guint index)
{
  return g_ptr_array_index (fixture->quote->lines, index);
}

/* What the shop pays becomes another, everywhere. */
static void
change_costs (RcSheetFixture *fixture)
{
  RcQuote *quote = fixture->quote;

  for (guint i = 0; i < quote->lines->len; i++)
    get_line (fixture, i)->cost = 3 * get_line (fixture, i)->cost + 77;
  quote->cost = 3 * quote->cost + 77;
  quote->margin = quote->net - quote->cost;
  for (guint i = 0; i < fixture->book->prices->len; i++)
    ((RcPrice *)g_ptr_array_index (fixture->book->prices, i))->cost *= 5;
}

static char *
make_pdf (RcSheetKind kind, const RcSheetData *data, gsize *length)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = NULL;
  char            *bytes = NULL;
  int              file = g_file_open_tmp ("rowcut-sheet-XXXXXX.pdf", &path, &error);

  g_assert_no_error (error);
  g_assert_true (g_close (file, NULL));
  g_assert_true (rc_sheet_write_pdf (kind, data, path, &error));
  g_assert_true (g_file_get_contents (path, &bytes, length, &error));
  g_unlink (path);
  return bytes;
}

/* To the last byte, whatever the goods cost; the office's own sheet changes. */
static void
test_costs_stay_inside (void)
{
  static const struct
  {
    RcSheetKind kind;
    gboolean    same;
  } rows[] = { { RC_SHEET_QUOTATION, TRUE },   { RC_SHEET_ALTERNATIVES, TRUE }, { RC_SHEET_OPTIONS, TRUE },
               { RC_SHEET_SEAM_PLAN, TRUE },   { RC_SHEET_FITTERS, TRUE },      { RC_SHEET_CUT_LIST, TRUE },
               { RC_SHEET_ROLL_LABELS, TRUE }, { RC_SHEET_JOB_SUMMARY, FALSE } };
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  g_autoptr (GPtrArray) alternatives = g_ptr_array_new ();
  RcSheetData data = rc_sheet_fixture_get_data (fixture, RC_PAPER_LETTER);
  char       *before[G_N_ELEMENTS (rows)];
  gsize       lengths[G_N_ELEMENTS (rows)], length;

  g_ptr_array_add (alternatives, fixture->quote);
  data.alternatives = alternatives;
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    before[i] = make_pdf (rows[i].kind, &data, &lengths[i]);
  change_costs (fixture);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *after = make_pdf (rows[i].kind, &data, &length);
      gboolean         same = length == lengths[i] && memcmp (before[i], after, length) == 0;

      g_test_message ("%s", rc_sheet_kind_get_name (rows[i].kind));
      g_assert_cmpint (same, ==, rows[i].same);
      g_free (before[i]);
    }
}

/* 1,000.00 net that cost 700.00 leave 300.00, 30 % of the net. */
static void
test_figures (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  RcSheetData      data = rc_sheet_fixture_get_data (fixture, RC_PAPER_LETTER);
  g_autofree char *words = NULL, *waste = rc_text_format_tenths (fixture->plan->waste_ppm);

  fixture->quote->net = 100000;
  fixture->quote->cost = 70000;
  fixture->quote->margin = 30000;
  words = rc_sheet_fixture_dup_words (RC_SHEET_JOB_SUMMARY, &data);
  if (!words)
    {
      g_test_skip ("pdftotext is not here");
      return;
    }
  g_assert_nonnull (strstr (words, "For the office only"));
  g_assert_nonnull (strstr (words, "30.0 %"));
  g_assert_nonnull (strstr (words, "300.00 of 1,000.00 USD net"));
  g_assert_nonnull (strstr (words, waste));
  g_assert_null (strstr (words, "less than it costs"));
}

/* A line sold at a loss, one without a cost, and a job that loses as a whole are told. */
static void
test_faults (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  RcSheetData      data = rc_sheet_fixture_get_data (fixture, RC_PAPER_LETTER);
  g_autofree char *words = NULL, *loss = NULL, *unknown = NULL;

  get_line (fixture, 0)->cost = get_line (fixture, 0)->amount + 1234;
  get_line (fixture, 1)->cost = 0;
  fixture->quote->cost = fixture->quote->net * 5 / 4;
  fixture->quote->margin = fixture->quote->net - fixture->quote->cost;
  loss = g_strdup_printf ("%s is sold at 12.34 USD less than it costs.", get_line (fixture, 0)->name);
  unknown = g_strdup_printf ("%s has no cost", get_line (fixture, 1)->name);
  words = rc_sheet_fixture_dup_words (RC_SHEET_JOB_SUMMARY, &data);
  if (!words)
    {
      g_test_skip ("pdftotext is not here");
      return;
    }
  g_assert_nonnull (strstr (words, loss));
  g_assert_nonnull (strstr (words, unknown));
  g_assert_nonnull (strstr (words, "-25.0 %"));
}

static void
test_without_price (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_METRIC);
  RcSheetData      data = rc_sheet_fixture_get_data (fixture, RC_PAPER_A4);
  g_autofree char *words = NULL;

  data.quote = NULL;
  words = rc_sheet_fixture_dup_words (RC_SHEET_JOB_SUMMARY, &data);
  if (!words)
    {
      g_test_skip ("pdftotext is not here");
      return;
    }
  g_assert_nonnull (strstr (words, "no price"));
  g_assert_nonnull (strstr (words, "Area by area"));
  g_assert_null (strstr (words, "Where the money goes"));
}

static void
test_tenths (void)
{
  static const struct
  {
    gint64      ppm;
    const char *text;
  } rows[] = { { 0, "0.0 %" },        { 499, "0.0 %" },  { 500, "0.1 %" },      { 123456, "12.3 %" },
               { 999999, "100.0 %" }, { -499, "0.0 %" }, { -250000, "-25.0 %" } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = rc_text_format_tenths (rows[i].ppm);

      g_assert_cmpstr (text, ==, rows[i].text);
    }
}

/* What the plan takes otherwise than was accepted is said to the fitters, without prices; as long as nothing does,
 * nothing is. */
static void
test_departures (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  RcSheetData data = rc_sheet_fixture_get_data (fixture, RC_PAPER_A4);
  g_autoptr (RcQuote) accepted = rc_quote_new (fixture->job, fixture->quantities, fixture->book, NULL, NULL);

  for (guint i = 0; i < accepted->lines->len; i++)
    ((RcQuoteLine *)g_ptr_array_index (accepted->lines, i))->amount += 7; /* prices may change */
  data.accepted = accepted;
  data.accepted_as = "Q-12";
  g_autofree char *same = rc_sheet_fixture_dup_words (RC_SHEET_FITTERS, &data);
  if (same == NULL)
    {
      g_test_skip ("pdftotext is not here");
      return;
    }
  g_assert_null (strstr (same, "not the one accepted"));
  for (guint i = 0; i < accepted->lines->len; i++)
    {
      RcQuoteLine *line = g_ptr_array_index (accepted->lines, i);

      line->needed_micro += line->is_work || line->from_stock ? 0 : 1500000;
    }
  g_autofree char *other = rc_sheet_fixture_dup_words (RC_SHEET_FITTERS, &data);
  g_assert_nonnull (strstr (other, "The plan is not the one accepted with Q-12: 1 "));
  g_assert_nonnull (strstr (other, " in place of "));
  g_assert_null (strstr (other, "Total:"));
}

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheet-summary/costs stay inside", test_costs_stay_inside);
  g_test_add_func ("/sheet-summary/figures", test_figures);
  g_test_add_func ("/sheet-summary/faults", test_faults);
  g_test_add_func ("/sheet-summary/without a price", test_without_price);
  g_test_add_func ("/sheet-summary/tenths", test_tenths);
  g_test_add_func ("/sheet-summary/a plan that is not the one accepted", test_departures);
  status = g_test_run ();
  rc_sheet_fixture_forget_fonts ();

  return status;
}
