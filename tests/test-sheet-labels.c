/* Labels to tie to what is cut off the rolls and to what stays on them. */
#include <string.h>

#include "sheet-fixture.h"

static guint
count (const char *words, const char *what)
{
  guint n = 0;

  for (const char *at = words; (at = strstr (at, what)); at++)
    n++;
  return n;
}

/* How many labels the nester's answers ask for: one a roll that is cut, one a leftover of 2 ft or more both ways. */
static guint
count_rolls (const RcPlan *plan)
{
  guint n = 0;

  for (guint i = 0; i < plan->cuttings->len; i++)
    n += ((const RcCutting *)g_ptr_array_index (plan->cuttings, i))->answer->rolls->len;
  return n;
}

static guint
count_kept (const RcPlan *plan)
{
  guint n = 0;

  for (guint i = 0; i < plan->cuttings->len; i++)
    {
      const GArray *leftovers = ((const RcCutting *)g_ptr_array_index (plan->cuttings, i))->answer->leftovers;

      for (guint k = 0; k < leftovers->len; k++)
        {
          const RcNestLeftover *left = &g_array_index (leftovers, RcNestLeftover, k);

          n += left->width >= 2 * RC_TICKS_PER_FOOT && left->length >= 2 * RC_TICKS_PER_FOOT;
        }
    }
  return n;
}

/* A leftover of use said to be there besides what the nester found. */
static void
add_leftover (const RcPlan *plan, RcLength across, RcLength along, RcLength width, RcLength length)
{
  const RcCutting *cutting = g_ptr_array_index (plan->cuttings, 0);
  RcNestLeftover   left = { 0, across, along, width, length };

  g_array_append_val (cutting->answer->leftovers, left);
}

static void
test_words (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  RcSheetData      data = rc_sheet_fixture_get_data (fixture, RC_PAPER_LETTER);
  g_autofree char *words = NULL;

  add_leftover (fixture->plan, 0, 0, 3 * RC_TICKS_PER_FOOT, 7 * RC_TICKS_PER_FOOT);
  add_leftover (fixture->plan, 0, 0, RC_TICKS_PER_FOOT, 31 * RC_TICKS_PER_FOOT);
  add_leftover (fixture->plan, 0, 900 * RC_TICKS_PER_FOOT, 11 * RC_TICKS_PER_FOOT, 5 * RC_TICKS_PER_FOOT);
  words = rc_sheet_fixture_dup_words (RC_SHEET_ROLL_LABELS, &data);
  if (!words)
    {
      g_test_skip ("pdftotext is not here");
      return;
    }
  g_assert_cmpuint (count (words, "CUT FOR THE JOB"), ==, count_rolls (fixture->plan));
  g_assert_cmpuint (count (words, "REMNANT") + count (words, "BALANCE"), ==, count_kept (fixture->plan));
  g_assert_cmpuint (count (words, "R-1057"), >=, 1);
  g_assert_cmpuint (count (words, "Dye lot: C2"), >=, 1);
  g_assert_cmpuint (count (words, "3' 0\" × 7' 0\""), ==, 1);
  g_assert_cmpuint (count (words, "11' 0\" × 5' 0\""), ==, 1);
  g_assert_cmpuint (count (words, "31' 0\""), ==, 0); /* a foot wide: into the bin */
}

/* Of carpet that comes in several lengths every paper says which of them, under one number. */
static void
test_lengths_to_buy (void)
{
  static const RcSheetKind papers[]
      = { RC_SHEET_ROLL_LABELS, RC_SHEET_CUT_LIST, RC_SHEET_FITTERS, RC_SHEET_JOB_SUMMARY };
  RcPriceBook *book = rc_sheet_fixture_make_book ();

  ((RcGoods *)rc_price_book_find_goods (book, "twist"))->full_roll = 30 * RC_TICKS_PER_FOOT;
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new_of (rc_sheet_fixture_make_house (RC_UNITS_IMPERIAL), book);
  RcSheetData      data = rc_sheet_fixture_get_data (fixture, RC_PAPER_LETTER);
  const RcCutting *cutting = g_ptr_array_index (fixture->plan->cuttings, 0);
  guint            n_bought = 0;

  g_assert_cmpstr (cutting->goods->id, ==, "twist");
  for (guint use = 0; use < cutting->answer->rolls->len; use++)
    n_bought += rc_cutting_get_roll_id (cutting, g_ptr_array_index (cutting->answer->rolls, use)) == NULL;
  g_assert_cmpuint (n_bought, >, 1);
  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    {
      g_autofree char *words = rc_sheet_fixture_dup_words (papers[i], &data);

      for (guint number = 1; words != NULL && number <= n_bought; number++)
        {
          g_autofree char *name = g_strdup_printf ("length %u of %u", number, n_bought);
          g_assert_cmpuint (count (words, name), >=, 1);
        }
      if (words == NULL)
        g_test_skip ("pdftotext is not here");
    }
  const GPtrArray *notes = ((const RcOrder *)g_ptr_array_index (fixture->orders, 0))->notes;
  guint            n_named = 0;
  for (guint i = 0; i < notes->len; i++)
    n_named += strstr (notes->pdata[i], ", length ") != NULL;
  g_assert_cmpuint (n_named, ==, n_bought);
}

/* Eight to a page. */
static void
test_pages (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_METRIC);
  RcSheetData data = rc_sheet_fixture_get_data (fixture, RC_PAPER_A4);
  guint       n_labels;

  while ((n_labels = count_rolls (fixture->plan) + count_kept (fixture->plan)) < 17)
    {
      g_assert_cmpuint (rc_sheet_count_pages (RC_SHEET_ROLL_LABELS, &data), ==, (n_labels + 7) / 8);
      add_leftover (fixture->plan, 0, 0, 3 * RC_TICKS_PER_FOOT, 7 * RC_TICKS_PER_FOOT);
    }
  g_assert_cmpuint (rc_sheet_count_pages (RC_SHEET_ROLL_LABELS, &data), ==, 3);
}

/* A remnant in stock has a label of its own: its ticket, and no blank but where nothing is known. */
static void
test_of_stock (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  g_autoptr (GPtrArray) stock = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_roll_free);
  RcSheetData      data = rc_sheet_fixture_get_data (fixture, RC_PAPER_A4);
  RcRoll          *remnant = rc_roll_new ("R-2", "twist", 7 * RC_TICKS_PER_FOOT);
  g_autofree char *words = NULL;

  data.lengths = rc_job_get_length_style (data.plan->job);
  data.plan = NULL;
  data.stock = stock;
  remnant->remnant = TRUE;
  remnant->width = 3 * RC_TICKS_PER_FOOT;
  remnant->lot = g_strdup ("C2");
  remnant->place = g_strdup ("Rack 4");
  g_ptr_array_add (stock, remnant);
  g_ptr_array_add (stock, rc_roll_new ("R-9", "gone", 30 * RC_TICKS_PER_FOOT)); /* goods nobody knows any more */
  words = rc_sheet_fixture_dup_words (RC_SHEET_ROLL_LABELS, &data);
  if (!words)
    {
      g_test_skip ("pdftotext is not here");
      return;
    }
  g_assert_cmpuint (count (words, "REMNANT"), ==, 1);
  g_assert_cmpuint (count (words, "R-2"), ==, 1);
  g_assert_cmpuint (count (words, "3' 0\" × 7' 0\""), ==, 1);
  g_assert_cmpuint (count (words, "Dye lot: C2"), ==, 1);
  g_assert_cmpuint (count (words, "Place: Rack 4"), ==, 1);
  g_assert_cmpuint (count (words, "Ticket"), ==, 0);
  g_assert_cmpuint (count (words, "R-9"), ==, 1);
  g_assert_cmpuint (count (words, "gone"), ==, 1);
}

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheet-labels/words", test_words);
  g_test_add_func ("/sheet-labels/lengths to buy", test_lengths_to_buy);
  g_test_add_func ("/sheet-labels/pages", test_pages);
  g_test_add_func ("/sheet-labels/of stock", test_of_stock);
  status = g_test_run ();
  rc_sheet_fixture_forget_fonts ();

  return status;
}
