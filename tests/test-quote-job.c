/* From planned jobs to quotations: what must hold whatever the plan, and what a re-measure changes. */
#include <string.h>

#include "plan-builder.h"
#include "quote.h"
#include "rowcut-error.h"

static const RcCurrency dollars = { "USD", 2 };

/* A book with a price for everything; packs large enough to matter. */
static RcPriceBook *
build_book (void)
{
  static const struct
  {
    const char *item;
    RcUnit      unit;
    RcMoney     cost, sale;
  } prices[] = {
    { "twist", RC_UNIT_SQ_YD, 1200, 2195 },    { "pad", RC_UNIT_SQ_YD, 300, 550 },
    { "tape", RC_UNIT_ROLL, 700, 1250 },       { "sealer", RC_UNIT_EACH, 600, 995 },
    { "strip", RC_UNIT_CARTON, 4500, 7000 },   { "bar", RC_UNIT_FT, 200, 425 },
    { "lay", RC_UNIT_SQ_YD, 450, 795 },        { "side-seam", RC_UNIT_FT, 100, 185 },
    { "cross-seam", RC_UNIT_EACH, 900, 1500 }, { "stair", RC_UNIT_EACH, 600, 1100 },
    { "fixed", RC_UNIT_EACH, 2000, 4500 },
  };
  RcPriceBook *book = rc_price_book_new (&dollars);
  RcGoods     *goods;

  goods = build_goods (book->goods, RC_GOODS_TAPE, "tape", RC_UNIT_FT, 66 * RC_MICRO, RC_UNIT_ROLL);
  goods->tape_width = 3 * RC_TICKS_PER_INCH;
  goods = build_goods (book->goods, RC_GOODS_SEALER, "sealer", RC_UNIT_EACH, 0, RC_UNIT_EACH);
  goods->pack_covers_length = FT (60);
  build_goods (book->goods, RC_GOODS_STRIP, "strip", RC_UNIT_FT, 400 * RC_MICRO, RC_UNIT_CARTON);
  build_goods (book->goods, RC_GOODS_TRANSITION, "bar", RC_UNIT_FT, 6 * RC_MICRO, RC_UNIT_EACH);
  for (gsize i = 0; i < G_N_ELEMENTS (prices); i++)
    g_ptr_array_add (book->prices, rc_price_new (prices[i].item, prices[i].unit, prices[i].cost, prices[i].sale));
  book->tax_ppm = 82500;
  return book;
}

static RcPlan *
make_plan (const RcJob *job, const char *measure, RcPriceBook *book)
{
  RcPlanParams params = { 0 };
  g_autoptr (GError) error = NULL;
  RcPlan *plan = rc_plan_new (job, rc_job_get_measure (job, measure), rc_price_book_get_weights, book, &params, &error);

  g_assert_no_error (error);
  return plan;
}

static GPtrArray *
make_quantities (const RcPlan *plan, const RcPriceBook *book)
{
  g_autoptr (GError) error = NULL;
  GPtrArray *quantities = rc_quantity_compute (plan, book->goods, &error);

  g_assert_no_error (error);
  return quantities;
}

static RcQuote *
make_quote (const RcPlan *plan, const RcPriceBook *book)
{
  g_autoptr (GPtrArray) quantities = make_quantities (plan, book);
  g_autoptr (GError) error = NULL;
  RcQuote *quote = rc_quote_new (plan->job, quantities, book, NULL, &error);

  g_assert_no_error (error);
  return quote;
}

/* A job with its carpet and cushion. */
static RcJob *
build_carpet_job (void)
{
  RcJob *job = build_job (RC_UNITS_IMPERIAL);

  job->tax_ppm = -1;
  build_carpet (job, "twist", FT (12), RC_UNIT_SQ_YD);
  build_goods (job->goods, RC_GOODS_CUSHION, "pad", RC_UNIT_SQ_YD, 30 * RC_MICRO, RC_UNIT_ROLL);
  return job;
}

/* A room of its own area, up to twice the roll wide. */
static void
add_random_room (RcJob *job, guint number)
{
  g_autofree char *id = g_strdup_printf ("r%u", number), *area = g_strdup_printf ("A%u", number);
  RcLength         width = RC_TICKS_PER_INCH * g_test_rand_int_range (60, 280);
  RcLength         length = RC_TICKS_PER_INCH * g_test_rand_int_range (60, 400);

  build_room (job, id, id, width, length, FT (40) * number);
  build_area (job, area, "twist", id, NULL)->cushion = g_strdup ("pad");
}

/* Adding a room never lowers the net; said of the plans whose roll length does not shrink either, for a search that
 * is stopped at once may cut more pieces from less by luck. */
static void
test_adding_a_room (void)
{
  g_autoptr (RcPriceBook) book = build_book ();
  guint n_compared = 0;

  for (int i = 0; i < 60; i++)
    {
      g_autoptr (RcJob) job = build_carpet_job ();
      RcLength length = 0;
      RcMoney  net = 0;

      for (guint n = 0; n < 5; n++)
        {
          g_autoptr (RcPlan) plan = NULL;
          g_autoptr (RcQuote) quote = NULL;

          add_random_room (job, n);
          plan = make_plan (job, NULL, book);
          quote = make_quote (plan, book);
          if (plan->carpet_length >= length)
            {
              g_assert_cmpint (quote->net, >=, net);
              n_compared++;
            }
          length = plan->carpet_length;
          net = quote->net;
        }
    }
  g_assert_cmpuint (n_compared, >, 250);
}

/* The sums hold in any order of the lines, and are the lines'. */
static void
test_order_of_lines (void)
{
  g_autoptr (RcPriceBook) book = build_book ();

  for (int i = 0; i < 40; i++)
    {
      g_autoptr (RcJob) job = build_carpet_job ();
      g_autoptr (RcPlan) plan = NULL;
      g_autoptr (GPtrArray) quantities = NULL;
      g_autoptr (RcQuote) quote = NULL, turned = NULL;
      RcMoney sum = 0;

      for (guint n = 0; n < 3; n++)
        add_random_room (job, n);
      plan = make_plan (job, NULL, book);
      quantities = make_quantities (plan, book);
      quote = rc_quote_new (job, quantities, book, NULL, NULL);
      for (guint n = quantities->len; n > 1; n--)
        {
          guint    other = g_test_rand_int_range (0, n);
          gpointer line = quantities->pdata[n - 1];

          quantities->pdata[n - 1] = quantities->pdata[other];
          quantities->pdata[other] = line;
        }
      turned = rc_quote_new (job, quantities, book, NULL, NULL);
      g_assert_cmpint (quote->net, ==, turned->net);
      g_assert_cmpint (quote->tax, ==, turned->tax);
      g_assert_cmpint (quote->total, ==, turned->total);
      g_assert_cmpint (quote->cost, ==, turned->cost);
      for (guint n = 0; n < quote->lines->len; n++)
        sum += ((const RcQuoteLine *)g_ptr_array_index (quote->lines, n))->amount;
      g_assert_cmpint (sum, ==, quote->net);
      g_assert_cmpint (quote->net + quote->tax, ==, quote->total);
    }
}

/* The planner's own figures are the ones charged: roll length, side seams and joins of a planned room 15 by 20 ft from
 * a 12 ft roll, no trim (hasslefreeflooring.com: 27 running feet with a fill of three). */
static void
test_planned_joined_fill (void)
{
  g_autoptr (RcPriceBook) book = build_book ();
  g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
  g_autoptr (RcPlan) plan = NULL;
  g_autoptr (GPtrArray) quantities = NULL;

  job->settings.trim_length = job->settings.trim_width = 0;
  job->settings.least_piece_length = job->settings.least_fill_width = 0;
  memset (job->settings.rule_cost, 0, sizeof job->settings.rule_cost);
  build_carpet (job, "twist", FT (12), RC_UNIT_SQ_YD);
  build_room (job, "living", "Living room", FT (15), FT (20), 0);
  build_area (job, "A", "twist", "living", NULL)->option = g_strdup ("least-carpet");
  plan = make_plan (job, NULL, book);
  quantities = make_quantities (plan, book);

  g_assert_cmpint (plan->carpet_length, <=, FT (27));
  for (guint i = 0; i < quantities->len; i++)
    {
      const RcQuantityLine *line = g_ptr_array_index (quantities, i);
      const RcOption       *option = rc_area_plan_get_chosen (g_ptr_array_index (plan->areas, 0));

      if (g_str_equal (line->item, "twist"))
        {
          g_assert_cmpint (line->roll_length, ==, plan->carpet_length);
          g_assert_cmpint (line->quantity_micro, ==, rc_unit_from_area (plan->carpet_area, RC_UNIT_SQ_YD));
        }
      if (g_str_equal (line->item, "side-seam"))
        g_assert_cmpint (line->quantity_micro, ==, rc_unit_from_length (option->side_seam, RC_UNIT_FT));
      if (g_str_equal (line->item, "cross-seam"))
        g_assert_cmpint (line->quantity_micro, ==, option->joins * RC_MICRO);
      if (g_str_equal (line->item, "lay"))
        g_assert_cmpint (line->quantity_micro, ==, 33333333);
    }
  g_assert_cmpint (rc_quantity_compute_seam_edges (plan), ==, 2 * (rc_quantity_compute_tape (plan, 0)));
}

static const RcChange *
find_change (const GPtrArray *changes, const char *what, const char *name)
{
  for (guint i = 0; i < changes->len; i++)
    {
      const RcChange *change = g_ptr_array_index (changes, i);

      if (g_str_equal (change->what, what) && g_str_equal (change->name, name))
        return change;
    }
  return NULL;
}

static void
assert_change (const GPtrArray *changes, const char *what, const char *name, RcChangeKind kind, const char *before,
               const char *after)
{
  const RcChange *change = find_change (changes, what, name);

  if (change == NULL)
    g_error ("no change of %s “%s”", what, name);
  g_assert_cmpint (change->kind, ==, kind);
  g_assert_cmpstr (change->before, ==, before);
  g_assert_cmpstr (change->after, ==, after);
}

/* A den, a hall and a stair; then the den 4 in wider with its door moved, the hall gone, a study added, the stair one
 * step longer. */
static RcJob *
build_remeasured_job (void)
{
  RcJob     *job = build_job (RC_UNITS_IMPERIAL);
  RcRoom    *den;
  RcMeasure *again;
  RcStair   *stair;

  job->tax_ppm = -1;
  build_carpet (job, "twist", FT (12), RC_UNIT_SQ_YD);
  den = build_room (job, "den", "Den", FT_IN (11, 4), FT (10), 0);
  build_opening (den, "D1", RC_OPENING_DOOR, 0, FT (1), FT_IN (2, 8));
  build_room (job, "hall", "Hall", FT (4), FT (12), FT (40));
  build_area (job, "A", "twist", "den", NULL);
  build_area (job, "B", "twist", "hall", NULL);
  stair = build_stair (job, "S", 12, RC_TICKS_PER_INCH * 15 / 2, 10 * RC_TICKS_PER_INCH, FT (3), RC_STAIR_WATERFALL);
  stair->carpet = g_strdup ("twist");

  again = rc_measure_copy (rc_job_get_measure (job, NULL));
  g_free (again->id);
  again->id = g_strdup ("M2");
  g_ptr_array_add (job->measures, again);
  den = rc_measure_find_room (again, "den");
  g_array_index (den->walls, RcWall, 1).length = FT_IN (11, 8);
  g_array_index (den->walls, RcWall, 3).length = FT_IN (11, 8);
  ((RcOpening *)g_ptr_array_index (den->openings, 0))->offset = FT (2);
  g_ptr_array_remove (again->rooms, rc_measure_find_room (again, "hall"));
  g_ptr_array_remove (again->areas, rc_measure_find_area (again, "B"));
  build_room (job, "study", "Study", FT (8), FT (9), FT (60));
  build_area (job, "C", "twist", "study", NULL);
  ((RcStair *)g_ptr_array_index (again->stairs, 0))->steps = 13;
  return job;
}

static void
test_measured_again (void)
{
  g_autoptr (RcPriceBook) book = build_book ();
  g_autoptr (RcJob) job = build_remeasured_job ();
  g_autoptr (RcPlan) before = make_plan (job, "M1", book), after = make_plan (job, "M2", book);
  g_autoptr (RcQuote) quote_before = make_quote (before, book), quote_after = make_quote (after, book);
  g_autoptr (GPtrArray) changes = rc_compare (before, quote_before, after, quote_after);
  g_autofree char *total_before = rc_money_format (quote_before->total, &dollars);
  g_autofree char *total_after = rc_money_format (quote_after->total, &dollars);

  for (guint i = 0; i < changes->len; i++)
    {
      const RcChange *change = g_ptr_array_index (changes, i);

      g_test_message ("%s %s %s: %s -> %s", rc_change_kind_get_name (change->kind), change->what, change->name,
                      change->before, change->after);
    }
  assert_change (changes, "room", "Den", RC_CHANGE_CHANGED, "113.33 sq ft", "116.67 sq ft");
  assert_change (changes, "room", "Hall", RC_CHANGE_REMOVED, "48.00 sq ft", NULL);
  assert_change (changes, "room", "Study", RC_CHANGE_ADDED, NULL, "72.00 sq ft");
  assert_change (changes, "wall", "Den, wall 2", RC_CHANGE_CHANGED, "11' 4\"", "11' 8\"");
  assert_change (changes, "wall", "Den, wall 4", RC_CHANGE_CHANGED, "11' 4\"", "11' 8\"");
  g_assert_null (find_change (changes, "wall", "Den, wall 1"));
  assert_change (changes, "opening", "Den, D1", RC_CHANGE_CHANGED, "door 2' 8\" wide, 1' 0\" along wall 1",
                 "door 2' 8\" wide, 2' 0\" along wall 1");
  assert_change (changes, "stair", "S", RC_CHANGE_CHANGED, "12 steps, rise 7 1/2\", tread 10\", 3' 0\" wide",
                 "13 steps, rise 7 1/2\", tread 10\", 3' 0\" wide");
  assert_change (changes, "item", "Stairs, each step", RC_CHANGE_CHANGED, "12 each, 132.00 USD", "13 each, 143.00 USD");
  assert_change (changes, "total", "Total", RC_CHANGE_CHANGED, total_before, total_after);
}

static void
test_nothing_changed (void)
{
  g_autoptr (RcPriceBook) book = build_book ();
  g_autoptr (RcJob) job = build_remeasured_job ();
  g_autoptr (RcPlan) plan = make_plan (job, "M1", book), same = make_plan (job, "M1", book);
  g_autoptr (RcQuote) quote = make_quote (plan, book);
  g_autoptr (GPtrArray) changes = rc_compare (plan, quote, same, quote);

  g_assert_cmpuint (changes->len, ==, 0);
}

/* Compared the other way round, what was added is removed and before and after change places. */
static void
test_compared_backwards (void)
{
  g_autoptr (RcPriceBook) book = build_book ();
  g_autoptr (RcJob) job = build_remeasured_job ();
  g_autoptr (RcPlan) before = make_plan (job, "M1", book), after = make_plan (job, "M2", book);
  g_autoptr (GPtrArray) forth = rc_compare (before, NULL, after, NULL), back = rc_compare (after, NULL, before, NULL);

  g_assert_cmpuint (forth->len, ==, back->len);
  for (guint i = 0; i < forth->len; i++)
    {
      const RcChange *change = g_ptr_array_index (forth, i);
      gboolean        found = FALSE;

      for (guint j = 0; j < back->len && !found; j++)
        {
          const RcChange *other = g_ptr_array_index (back, j);

          found = g_str_equal (change->what, other->what) && g_strcmp0 (change->before, other->after) == 0
                  && g_strcmp0 (change->after, other->before) == 0;
        }
      g_assert_true (found);
    }
}

/* Cuts are told apart by their size: numbers that move are no change. */
static void
test_cuts_renumbered (void)
{
  g_autoptr (RcJob) job = build_job (RC_UNITS_METRIC);
  RcPlan *before, *after;
  g_autoptr (GPtrArray) changes = NULL;

  build_room (job, "den", "Den", M (400), M (500), 0);
  before = build_plan (job);
  after = build_plan (job);
  build_piece (before, RC_PIECE_DROP, NULL, "den", "twist", M (400), M (500));
  build_piece (before, RC_PIECE_FILL, NULL, "den", "twist", M (100), M (250));
  build_piece (before, RC_PIECE_FILL, NULL, "den", "twist", M (100), M (200));
  build_piece (after, RC_PIECE_FILL, NULL, "den", "twist", M (100), M (250));
  build_piece (after, RC_PIECE_FILL, NULL, "den", "twist", M (100), M (210));
  build_piece (after, RC_PIECE_DROP, NULL, "den", "twist", M (400), M (500));
  build_piece (after, RC_PIECE_DROP, NULL, "den", "twist", M (400), M (90));
  changes = rc_compare (before, NULL, after, NULL);
  g_assert_cmpuint (changes->len, ==, 2);
  assert_change (changes, "cut", "piece 2, Den", RC_CHANGE_CHANGED, "1.000 m × 2.000 m", "1.000 m × 2.100 m");
  assert_change (changes, "cut", "piece 4, Den", RC_CHANGE_ADDED, NULL, "4.000 m × 0.900 m");
  build_plan_free (before);
  build_plan_free (after);
}

/* A wall that runs another way, a curved wall, a room of more walls, a corner moved, openings come and gone, a stair
 * added; quantities in packs, an item more. */
static void
test_other_changes (void)
{
  g_autoptr (RcPriceBook) book = build_book ();
  g_autoptr (RcJob) job = build_carpet_job ();
  g_autoptr (GPtrArray) changes = NULL;
  g_autoptr (RcQuote) quote_before = NULL, quote_after = NULL;
  RcPoint corners[] = { { 0, 0 }, { FT (10), 0 }, { FT (10), FT (10) }, { 0, FT (10) } };
  RcPoint six[]
      = { { 0, 0 }, { FT (10), 0 }, { FT (10), FT (5) }, { FT (8), FT (5) }, { FT (8), FT (10) }, { 0, FT (10) } };
  RcRoom    *den, *nook, *attic;
  RcMeasure *again;
  RcPlan    *before, *after;

  den = build_room (job, "den", "Den", FT (10), FT (10), 0);
  build_opening (den, "W1", RC_OPENING_WINDOW, 0, FT (1), FT (2));
  build_opening (den, "A1", RC_OPENING_ARCHWAY, 1, FT (1), FT (2));
  build_area (job, "A", "twist", "den", NULL)->cushion = g_strdup ("pad");
  nook = build_outline_room (job, "nook", "Nook", corners, 4);
  nook->placed = TRUE;
  nook->at.x = FT (40);
  attic = build_outline_room (job, "attic", "Attic", corners, 4);
  attic->placed = TRUE;
  attic->at.x = FT (80);
  before = build_plan (job);
  quote_before = make_quote (before, book);

  again = rc_measure_copy (before->measure);
  g_ptr_array_add (job->measures, again);
  den = rc_measure_find_room (again, "den");
  g_array_index (den->walls, RcWall, 0).bearing_degrees = 0.25;
  g_array_index (den->walls, RcWall, 2).bow = FT (1);
  ((RcOpening *)g_ptr_array_index (den->openings, 0))->width = FT (3);
  g_ptr_array_remove_index (den->openings, 1);
  build_opening (den, "D2", RC_OPENING_DOOR, 1, FT (1), FT (3))->transition = g_strdup ("bar");
  rc_ring_get (rc_measure_find_room (again, "nook")->outline, 2)->x = FT (11);
  rc_ring_get (rc_measure_find_room (again, "nook")->outline, 1)->x = FT (11);
  g_array_set_size (rc_measure_find_room (again, "attic")->outline, 0);
  g_array_append_vals (rc_measure_find_room (again, "attic")->outline, six, G_N_ELEMENTS (six));
  build_area (job, "B", "twist", "attic", NULL)->cushion = g_strdup ("pad");
  build_area (job, "C", "twist", "nook", NULL)->cushion = g_strdup ("pad");
  build_stair (job, "S", 12, RC_TICKS_PER_INCH * 15 / 2, 10 * RC_TICKS_PER_INCH, FT (3), RC_STAIR_WATERFALL);
  after = build_plan (job);
  quote_after = make_quote (after, book);

  changes = rc_compare (before, quote_before, after, quote_after);
  assert_change (changes, "wall", "Den, wall 1", RC_CHANGE_CHANGED, "10' 0\" at 0°", "10' 0\" at 0.25°");
  assert_change (changes, "wall", "Den, bow of wall 3", RC_CHANGE_CHANGED, "0\"", "1' 0\"");
  assert_change (changes, "opening", "Den, W1", RC_CHANGE_CHANGED, "window 2' 0\" wide, 1' 0\" along wall 1",
                 "window 3' 0\" wide, 1' 0\" along wall 1");
  assert_change (changes, "opening", "Den, A1", RC_CHANGE_REMOVED, "archway 2' 0\" wide, 1' 0\" along wall 2", NULL);
  assert_change (changes, "opening", "Den, D2", RC_CHANGE_ADDED, NULL, "door 3' 0\" wide, 1' 0\" along wall 2");
  assert_change (changes, "wall", "Nook, wall 1", RC_CHANGE_CHANGED, "10' 0\"", "11' 0\"");
  assert_change (changes, "wall", "Attic", RC_CHANGE_CHANGED, "4 walls", "6 walls");
  assert_change (changes, "stair", "S", RC_CHANGE_ADDED, NULL, "12 steps, rise 7 1/2\", tread 10\", 3' 0\" wide");
  assert_change (changes, "item", "bar", RC_CHANGE_ADDED, NULL, "6 ft (1 each), 25.50 USD");
  assert_change (changes, "item", "pad", RC_CHANGE_CHANGED, "30 sq yd (1 roll), 165.00 USD",
                 "60 sq yd (2 roll), 330.00 USD");
  build_plan_free (before);
  build_plan_free (after);
}

static gboolean
says (const GPtrArray *parts, const char *words)
{
  for (guint i = 0; i < parts->len; i++)
    if (strstr (parts->pdata[i], words) != NULL)
      return TRUE;
  return FALSE;
}

/* Every figure says what it is made of. */
static void
test_explained (void)
{
  g_autoptr (RcPriceBook) book = build_book ();
  g_autoptr (RcJob) job = build_carpet_job ();
  build_room (job, "den", "Den", FT (10), FT (12), 0);
  build_area (job, "A", "twist", "den", NULL)->cushion = g_strdup ("pad");
  g_autoptr (RcPlan) plan = make_plan (job, NULL, book);
  g_autoptr (RcQuote) quote = make_quote (plan, book);
  RcQuoteLine *carpet = NULL;
  for (guint i = 0; i < quote->lines->len; i++)
    {
      RcQuoteLine *line = g_ptr_array_index (quote->lines, i);
      g_autoptr (GPtrArray) parts = rc_quote_line_explain (line, &quote->currency);
      g_autoptr (GPtrArray) pieces = rc_quote_line_explain_pieces (line, plan);
      carpet = g_str_equal (line->item, "twist") ? line : carpet;
      g_assert_true (says (parts, "Needed: ") && says (parts, "Charged: ") && says (parts, "Taxed at 8.25 %"));
      g_assert_cmpint (says (parts, "In whole packs: "), ==, line->packs > 0);
      g_assert_cmpuint (pieces->len, ==, line == carpet ? plan->pieces->len : 0);
    }
  g_assert_nonnull (carpet);
  g_autoptr (GPtrArray) plain = rc_quote_line_explain (carpet, &quote->currency);
  g_autoptr (GPtrArray) pieces = rc_quote_line_explain_pieces (carpet, plan);
  g_assert_true (says (plain, "Price: 21.95 USD for 1 sq yd"));
  g_assert_false (says (plain, "Less ") || says (plain, "Optional") || says (plain, "holds"));
  g_assert_true (says (pieces, "Piece 1, Den: "));

  carpet->optional = TRUE;
  carpet->discount_ppm = 100000;
  carpet->from_micro = 20 * RC_MICRO;
  g_free (carpet->price_since);
  carpet->price_since = g_strdup ("2026-01-01");
  g_autoptr (GPtrArray) parts = rc_quote_line_explain (carpet, &quote->currency);
  g_assert_true (says (parts, "Less 10 %") && says (parts, "Optional: not in the total"));
  g_assert_true (says (parts, "holds from 20 sq yd on") && says (parts, "holds since 2026-01-01"));
}

/* Behind a line are the pieces that it charges: from stock or bought; and what is charged as it was, whatever it is cut
 * from, while what is added has none of what is ready. */
static void
test_pieces_behind (void)
{
  enum
  {
    BOUGHT,
    STOCK,
    CUT,
    ORDERED
  };
  static const struct
  {
    RcCharge after;
    gboolean from_stock;
    guint    behind; /* bits */
  } rows[] = {
    { RC_CHARGE_PLAIN, FALSE, 1 << BOUGHT },
    { RC_CHARGE_PLAIN, TRUE, 1 << STOCK | 1 << CUT | 1 << ORDERED },
    { RC_CHARGE_KEPT, FALSE, 1 << BOUGHT | 1 << STOCK | 1 << CUT | 1 << ORDERED },
    { RC_CHARGE_ADDED, FALSE, 1 << BOUGHT },
    { RC_CHARGE_ADDED, TRUE, 1 << STOCK },
  };
  g_autofree char  *cut = rc_ticket_new_cut (1, "4", "R-7"), *ordered = rc_ticket_new_on_order (1, "O-1");
  const char *const tickets[] = { NULL, "R-1", cut, ordered };
  const char *const said[]
      = { "Piece 1, Den: 12' 0\" × 10' 3\"", "(roll R-1)", "(piece 4, cut from roll R-7)", "(order O-1)" };

  for (guint t = 0; t < G_N_ELEMENTS (tickets); t++)
    {
      g_autoptr (RcPriceBook) book = build_book ();
      g_autoptr (RcJob) job = build_carpet_job ();
      build_room (job, "den", "Den", FT (10), FT (12), 0);
      build_area (job, "A", "twist", "den", NULL);
      if (tickets[t] != NULL)
        g_ptr_array_add (job->rolls, rc_roll_new (tickets[t], "twist", FT (30)));
      g_autoptr (RcPlan) plan = make_plan (job, NULL, book);

      for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
        {
          RcQuoteLine line = { .item = (char *)"twist", .after = rows[i].after, .from_stock = rows[i].from_stock };
          g_autoptr (GPtrArray) pieces = rc_quote_line_explain_pieces (&line, plan);

          g_assert_cmpuint (pieces->len, ==, rows[i].behind >> t & 1);
          if (pieces->len > 0)
            g_assert_true (g_str_has_suffix (pieces->pdata[0], said[t]));
        }
    }
}

/* A discount by rate, by sum, by both; payments; and of a variation. */
static void
test_total_explained (void)
{
  g_autoptr (RcPriceBook) book = build_book ();
  g_autoptr (RcJob) job = build_carpet_job ();
  add_random_room (job, 0);
  g_autoptr (RcPlan) plan = make_plan (job, NULL, book);
  g_autoptr (RcQuote) quote = make_quote (plan, book);
  RcQuoteLine *first = g_ptr_array_index (quote->lines, 0);
  RcMoney      tenth = rc_money_part (quote->sum, 100000);
  static const struct
  {
    gint64      ppm, more;
    gboolean    variation;
    const char *words;
  } cases[] = { { 100000, 0, FALSE, "Discount: 10 % of the sum, " },
                { 100000, 500, FALSE, ", and 5.00 USD besides" },
                { 0, 500, FALSE, "Discount: " },
                { 100000, 0, TRUE, "the difference of two quotations" } };
  g_autoptr (GPtrArray) plain = rc_quote_explain_total (quote);
  g_assert_true (says (plain, "Sum of the lines: ") && says (plain, "Margin: ") && says (plain, "rounded once"));
  g_assert_false (says (plain, "Discount: ") || says (plain, "left out"));
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      quote->discount_ppm = cases[i].ppm;
      quote->discount = (cases[i].ppm > 0 ? tenth : 0) + cases[i].more;
      quote->variation = cases[i].variation;
      g_autoptr (GPtrArray) parts = rc_quote_explain_total (quote);
      g_assert_true (says (parts, cases[i].words));
    }
  first->optional = TRUE;
  for (guint i = 0; i < 2; i++)
    {
      RcPaymentStep *step = g_new0 (RcPaymentStep, 1);
      step->name = i == 0 ? g_strdup ("Deposit") : NULL;
      step->part_ppm = 500000;
      step->amount = 4050;
      g_ptr_array_add (quote->payments, step);
    }
  g_autoptr (GPtrArray) parts = rc_quote_explain_total (quote);
  g_assert_true (says (parts, "Optional lines, left out: "));
  g_assert_true (says (parts, "To be paid: Deposit, 50 %: 40.50 USD")
                 && says (parts, "To be paid: –, 50 %: 40.50 USD"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/quote-job/adding-a-room", test_adding_a_room);
  g_test_add_func ("/quote-job/order-of-lines", test_order_of_lines);
  g_test_add_func ("/quote-job/planned-joined-fill", test_planned_joined_fill);
  g_test_add_func ("/quote-job/measured-again", test_measured_again);
  g_test_add_func ("/quote-job/pieces-behind-a-line", test_pieces_behind);
  g_test_add_func ("/quote-job/nothing-changed", test_nothing_changed);
  g_test_add_func ("/quote-job/compared-backwards", test_compared_backwards);
  g_test_add_func ("/quote-job/cuts-renumbered", test_cuts_renumbered);
  g_test_add_func ("/quote-job/other-changes", test_other_changes);
  g_test_add_func ("/quote-job/explained", test_explained);
  g_test_add_func ("/quote-job/total-explained", test_total_explained);
  return g_test_run ();
}
