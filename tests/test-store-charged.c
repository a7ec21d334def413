/* What a job pays that is measured again: nothing changed, nothing more, wherever its goods have come to; more floor,
 * only what is added; less, nothing back. */
#include <string.h>

#include "plan-maker.h"
#include "rounds.h"
#include "store.h"

#define NOW   "2026-03-02T10:00:00Z"
#define LATER "2026-03-09T10:00:00Z"
#define DAY   "2026-03-02"

static const RcCurrency dollars = { "USD", 2 };

/* How far the goods have come when the rooms are measured again. */
typedef enum
{
  AS_ACCEPTED,
  AS_ORDERED,
  AS_HALF_RECEIVED,
  AS_RECEIVED,
  AS_CUT,
  AS_CUT_UNNOTED, /* nobody has written down the pieces */
  N_STAGES
} Stage;

typedef struct
{
  RcStore     *store;
  RcJob       *job;
  RcPriceBook *book;
  RcPlan      *plan; /* of the first measure */
  GPtrArray   *quantities;
  RcQuote     *quote;
} Shop;

static void
add_goods (RcPriceBook *book, const char *id, RcGoodsKind kind, RcUnit unit, gint64 pack_micro)
{
  RcGoods *goods = rc_goods_new (id, kind, id);

  goods->unit = unit;
  goods->pack_micro = pack_micro;
  goods->pack_unit = pack_micro > 0 ? RC_UNIT_CARTON : unit;
  goods->supplier = g_strdup ("Mill");
  if (kind == RC_GOODS_SEALER)
    goods->pack_covers_length = FT (60);
  g_ptr_array_add (book->goods, goods);
}

static void
add_price (RcPriceBook *book, const char *item, RcUnit unit, RcMoney cost)
{
  g_ptr_array_add (book->prices, rc_price_new (item, unit, cost, 2 * cost + 37));
}

static RcPriceBook *
new_book (void)
{
  RcPriceBook *book = rc_price_book_new (&dollars);
  RcSupplier  *mill = rc_supplier_new ("Mill");

  add_goods (book, "tape", RC_GOODS_TAPE, RC_UNIT_FT, 66 * RC_MICRO);
  add_goods (book, "sealer", RC_GOODS_SEALER, RC_UNIT_EACH, 0);
  add_goods (book, "strip", RC_GOODS_STRIP, RC_UNIT_FT, 40 * RC_MICRO);
  add_price (book, "carpet", RC_UNIT_SQ_YD, 2311);
  add_price (book, "tape", RC_UNIT_FT, 11);
  add_price (book, "sealer", RC_UNIT_EACH, 601);
  add_price (book, "strip", RC_UNIT_FT, 23);
  add_price (book, "lay", RC_UNIT_SQ_YD, 407);
  add_price (book, "side-seam", RC_UNIT_FT, 103);
  add_price (book, "cross-seam", RC_UNIT_EACH, 811);
  mill->freight_cost = 4500;
  mill->freight_sale = 6000;
  g_ptr_array_add (book->suppliers, mill);
  book->tax_ppm = 82500;
  return book;
}

static void
make_rooms (RcJob *job)
{
  guint n = (guint)g_test_rand_int_range (1, 4);

  for (guint i = 0; i < n; i++)
    {
      g_autofree char *room = g_strdup_printf ("room-%u", i + 1), *area = g_strdup_printf ("area-%u", i + 1);

      add_rectangle (job, room, FT (40 * i), 0, IN (g_test_rand_int_range (60, 260)),
                     IN (g_test_rand_int_range (60, 260)), area);
    }
}

static RcQuote *
price (const Shop *shop, const RcCharged *charged, const RcJob *job, const RcPlan *plan)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) quantities = rc_quantity_compute (plan, shop->book->goods, &error);
  RcQuote *quote;

  g_assert_no_error (error);
  quote = rc_quote_new_after (charged, job, quantities, shop->book, DAY, &error);
  g_assert_no_error (error);
  return quote;
}

static RcPlan *
plan_laid (const Shop *shop, const RcJob *job, const RcPlan *laid)
{
  g_autoptr (GError) error = NULL;
  RcPriceDay   day = { shop->book, DAY };
  RcPlanParams params = { .steady = TRUE, .laid = laid };
  RcPlan *plan = rc_plan_new (job, rc_job_get_measure (job, NULL), rc_price_day_get_weights, &day, &params, &error);

  g_assert_no_error (error);
  return plan;
}

/* The quotation is issued and accepted. */
static void
accept_quote (const Shop *shop, const RcQuote *quote)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *number = rc_store_issue_quote (shop->store, shop->job, quote, DAY, &error);

  g_assert_no_error (error);
  g_assert_true (rc_store_mark_quote (shop->store, number, RC_QUOTE_ACCEPTED, DAY, NULL, &error));
}

static void
shop_init (Shop *shop)
{
  RcGoods *carpet;

  shop->store = rc_store_open (":memory:", NULL, NULL);
  shop->job = make_job (FT (12));
  carpet = shop->job->goods->pdata[0];
  carpet->supplier = g_strdup ("Mill");
  carpet->length_step = g_test_rand_bit () ? IN (6) : 0;
  carpet->full_roll = FT (100);
  shop->job->settings.trim_length = shop->job->settings.trim_width = IN (3);
  make_rooms (shop->job);
  shop->book = new_book ();
  if (g_test_rand_bit ())
    {
      RcRoll *roll = rc_roll_new ("S-1", "carpet", FT (g_test_rand_int_range (5, 30)));

      roll->lot = g_strdup ("old");
      g_free (rc_store_receive_roll (shop->store, roll, NULL, NOW, NULL));
      g_ptr_array_add (shop->job->rolls, roll);
    }
  shop->plan = plan_laid (shop, shop->job, NULL);
  shop->quantities = rc_quantity_compute (shop->plan, shop->book->goods, NULL);
  shop->quote = price (shop, NULL, shop->job, shop->plan);
  accept_quote (shop, shop->quote);
}

static void
shop_clear (Shop *shop)
{
  rc_quote_free (shop->quote);
  g_ptr_array_unref (shop->quantities);
  rc_plan_free (shop->plan);
  rc_price_book_free (shop->book);
  rc_job_free (shop->job);
  rc_store_close (shop->store);
}

/* --- what the office does --- */

static void
order (const Shop *shop)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) orders = rc_order_new_all (shop->job, shop->plan, shop->quantities, shop->book, DAY, &error);
  g_autoptr (GPtrArray) jobs = g_ptr_array_new ();
  g_autoptr (GPtrArray) numbers = NULL;

  g_assert_no_error (error);
  g_ptr_array_add (jobs, shop->job->id);
  numbers = rc_store_make_purchases (shop->store, orders, jobs, NULL, DAY, &error);
  g_assert_no_error (error);
}

static const RcGoods *
find_carpet (const Shop *shop, const RcQuoteLine *line)
{
  return g_strcmp0 (line->item, "carpet") == 0 ? shop->job->goods->pdata[0] : NULL;
}

/* All that is open, or every other line of it; rolls come in at their length and are kept for the job. */
static void
receive (const Shop *shop, gboolean half)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) heads = rc_store_find_purchases (shop->store, shop->job->id, &error);

  for (guint i = 0; i < heads->len; i++)
    {
      const RcPurchase *head = heads->pdata[i];
      g_autoptr (RcPurchase) one = rc_store_load_purchase (shop->store, head->number, &error);
      g_autoptr (GArray) arrivals = g_array_new (FALSE, FALSE, sizeof (RcArrival));
      g_autoptr (GPtrArray) rolls = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_roll_free);

      for (guint k = 0; k < one->lines->len; k++)
        {
          const RcQuoteLine *line = one->lines->pdata[k];
          const RcGoods     *carpet = find_carpet (shop, line);
          RcArrival          arrival = { .line = k, .quantity_micro = line->quantity_micro };

          if (half && k % 2 == 1)
            continue;
          if (carpet != NULL)
            {
              RcLength length = rc_conversion_get_length (carpet, line->quantity_micro, line->unit);

              arrival.roll = rc_roll_new (NULL, "carpet", length);
              arrival.roll->lot = g_strdup ("new");
              arrival.kept = length;
              g_ptr_array_add (rolls, arrival.roll);
            }
          g_array_append_val (arrivals, arrival);
        }
      g_assert_true (rc_store_receive_order (shop->store, head->number, arrivals, DAY, NOW, &error));
      g_assert_no_error (error);
    }
}

/* The roll that a use of the plan is cut from: its own, or for what was bought one that has come in and is as long. */
static char *
dup_source (const Shop *shop, const RcCutting *cutting, const RcNestUse *use)
{
  const char *id = rc_cutting_get_roll_id (cutting, use);
  g_autoptr (GPtrArray) rolls = rc_store_load_rolls (shop->store, NULL);

  for (guint i = 0; id == NULL && i < rolls->len; i++)
    {
      const RcRoll *roll = rolls->pdata[i];

      if (g_strcmp0 (roll->lot, "new") == 0 && !roll->remnant && roll->length >= use->used)
        id = roll->id;
    }
  g_assert_nonnull (id);
  return g_strdup (id);
}

static void
cut_use (const Shop *shop, const RcCutting *cutting, guint index, gboolean noted)
{
  const RcNestUse *use = cutting->answer->rolls->pdata[index];
  g_autofree char *roll = dup_source (shop, cutting, use);
  g_autoptr (GPtrArray) pieces = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_cut_piece_free);
  g_autoptr (GPtrArray) remnants = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_roll_free);
  g_autoptr (GError) error = NULL;

  for (guint i = 0; noted && i < cutting->answer->placements->len; i++)
    {
      const RcNestPlacement *place = &g_array_index (cutting->answer->placements, RcNestPlacement, i);
      g_autofree char       *number = g_strdup_printf ("%u", g_array_index (cutting->piece_numbers, guint, place->cut));

      if (place->roll == index)
        g_ptr_array_add (pieces, rc_cut_piece_new (number, place->width, place->length));
    }
  for (guint i = 0; noted && i < cutting->answer->leftovers->len; i++)
    {
      const RcNestLeftover *left = &g_array_index (cutting->answer->leftovers, RcNestLeftover, i);

      if (left->roll == index && left->along + left->length <= use->used && left->width >= FT (1)
          && left->length >= FT (1))
        {
          RcRoll *remnant = rc_roll_new (NULL, NULL, left->length);

          remnant->width = left->width;
          g_ptr_array_add (remnants, remnant);
        }
    }
  g_assert_true (rc_store_cut_roll (shop->store, roll, shop->job->id, use->used, pieces, remnants, -1, NOW, &error));
  g_assert_no_error (error);
}

static void
cut (const Shop *shop, gboolean noted)
{
  for (guint c = 0; c < shop->plan->cuttings->len; c++)
    {
      const RcCutting *cutting = shop->plan->cuttings->pdata[c];

      for (guint i = 0; i < cutting->answer->rolls->len; i++)
        cut_use (shop, cutting, i, noted);
    }
}

static void
bring_to (const Shop *shop, Stage stage)
{
  if (stage >= AS_ORDERED)
    order (shop);
  if (stage >= AS_HALF_RECEIVED)
    receive (shop, stage == AS_HALF_RECEIVED);
  if (stage >= AS_CUT)
    cut (shop, stage == AS_CUT);
}

/* --- measured again --- */

static RcMeasure *
measure_again (const Shop *shop)
{
  RcMeasure *again = rc_measure_copy (rc_job_get_measure (shop->job, NULL));

  g_free (again->id);
  again->id = g_strdup_printf ("M%u", shop->job->measures->len + 1);
  g_ptr_array_add (shop->job->measures, again);
  return again;
}

static void
resize (RcMeasure *measure, guint room, RcLength more_wide)
{
  RcPoint *points = (RcPoint *)((RcRoom *)measure->rooms->pdata[room])->outline->data;

  points[1].x += more_wide;
  points[2].x += more_wide;
}

/* From what was accepted to what the last measure comes to. */
static RcQuote *
new_variation (const Shop *shop)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcHeld) held = rc_store_load_held (shop->store, shop->job, &error);
  g_autoptr (RcJob) whole = NULL;
  g_autoptr (RcPlan) plan = NULL;
  g_autoptr (RcQuote) now = NULL;
  RcPriceDay day = { shop->book, DAY };
  RcQuote   *variation;

  g_assert_no_error (error);
  whole = rc_held_dup_whole_job (held, shop->job);
  rc_plan_hold_pile (whole, rc_job_get_measure (whole, NULL), shop->plan, rc_price_day_get_weights, &day);
  plan = plan_laid (shop, whole, shop->plan);
  const RcCharged charged = { held, plan, shop->plan, held->accepted };
  now = price (shop, &charged, whole, plan);
  variation = rc_quote_new_variation (held->accepted, now, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < variation->lines->len; i++)
    {
      const RcQuoteLine *line = variation->lines->pdata[i];

      g_test_message ("%s: %" G_GINT64_FORMAT " at %" G_GINT64_FORMAT "; %s", line->name, line->quantity_micro,
                      line->amount, line->because);
    }
  return variation;
}

static RcMoney
sum_item (const RcQuote *quote, const char *item)
{
  RcMoney sum = 0;

  for (guint i = 0; i < quote->lines->len; i++)
    if (g_strcmp0 (((const RcQuoteLine *)quote->lines->pdata[i])->item, item) == 0)
      sum += ((const RcQuoteLine *)quote->lines->pdata[i])->amount;
  return sum;
}

/* Nothing changed: not a line, not a cent, wherever the goods are; not even where the prices have gone up. */
static void
test_the_same (void)
{
  for (guint round = 0; round < scale_rounds (10 * N_STAGES); round++)
    {
      Shop shop;
      g_autoptr (RcQuote) variation = NULL;

      shop_init (&shop);
      bring_to (&shop, round % N_STAGES);
      measure_again (&shop);
      g_test_message ("stage %u", round % N_STAGES);
      if (round % 3 == 1)
        for (guint i = 0; i < shop.book->prices->len; i++)
          if (!g_str_equal (((RcPrice *)shop.book->prices->pdata[i])->item, "carpet")) /* the planner weighs it */
            ((RcPrice *)shop.book->prices->pdata[i])->sale += 11;
      variation = new_variation (&shop);
      g_assert_cmpuint (variation->lines->len, ==, 0);
      g_assert_cmpint (variation->total, ==, 0);
      g_assert_cmpint (variation->cost, ==, 0);
      shop_clear (&shop);
    }
}

/* No goods are taken off again. Carpet that lies in stock, neither ordered nor cut, is planned anew. */
static void
assert_nothing_back (const RcQuote *variation, Stage stage)
{
  for (guint i = 0; i < variation->lines->len; i++)
    {
      const RcQuoteLine *line = variation->lines->pdata[i];

      g_assert_true (line->is_work || line->amount >= 0 || (line->from_stock && stage < AS_CUT));
    }
}

/* A room 4 in wider: what is added, and none of what is there; once it is accepted nothing more, however the added
 * carpet comes. */
static void
test_wider (void)
{
  const guint n = scale_rounds (6 * N_STAGES);
  guint       n_added = 0;

  for (guint round = 0; round < n; round++)
    {
      Stage stage = AS_ORDERED + round % (N_STAGES - 1);
      Shop  shop;
      g_autoptr (RcQuote) variation = NULL, later = NULL;

      shop_init (&shop);
      bring_to (&shop, stage);
      resize (measure_again (&shop), 0, IN (4));
      g_test_message ("stage %u", stage);
      variation = new_variation (&shop);
      assert_nothing_back (variation, stage);
      n_added += sum_item (variation, "carpet") > 0;
      /* More of the same floor, and so never less to pay for laying it. */
      g_assert_cmpint (sum_item (variation, "lay"), >, 0);
      accept_quote (&shop, variation);
      later = new_variation (&shop);
      g_assert_cmpuint (later->lines->len, ==, 0);
      g_assert_cmpint (later->total, ==, 0);
      shop_clear (&shop);
    }
  if (n >= 30) /* what is wider is often cut out of what there is: of three rooms it may be all */
    g_assert_cmpuint (n_added, >, 0);
}

/* What is missing is ordered. */
static void
order_more (const Shop *shop)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcHeld) held = rc_store_load_held (shop->store, shop->job, &error);
  g_autoptr (RcJob) whole = rc_held_dup_whole_job (held, shop->job);
  RcPriceDay day = { shop->book, DAY };
  rc_plan_hold_pile (whole, rc_job_get_measure (whole, NULL), shop->plan, rc_price_day_get_weights, &day);
  g_autoptr (RcPlan) plan = plan_laid (shop, whole, shop->plan);
  g_autoptr (GPtrArray) quantities = rc_quantity_compute (plan, shop->book->goods, &error);
  g_autoptr (GPtrArray) orders = rc_order_new_supplement (whole, plan, quantities, held, shop->book, DAY, &error);
  g_autoptr (GPtrArray) jobs = g_ptr_array_new (), numbers = NULL;

  g_assert_no_error (error);
  g_ptr_array_add (jobs, shop->job->id);
  numbers = rc_store_make_purchases (shop->store, orders, jobs, NULL, DAY, &error);
  g_assert_no_error (error);
}

/* What is ordered besides before the customer has accepted it is charged all the same, and once. */
static void
test_supplement (void)
{
  for (guint round = 0; round < scale_rounds (20); round++)
    {
      Shop shop;
      g_autoptr (RcQuote) variation = NULL, ordered = NULL, accepted = NULL;

      shop_init (&shop);
      bring_to (&shop, AS_ORDERED + round % (N_STAGES - 1));
      resize (measure_again (&shop), 0, IN (40));
      variation = new_variation (&shop);
      order_more (&shop);
      ordered = new_variation (&shop);
      /* With what is on its way the rest may be laid otherwise. */
      if (sum_item (variation, "carpet") > 0)
        g_assert_cmpint (sum_item (ordered, "carpet"), >, 0);
      accept_quote (&shop, ordered);
      accepted = new_variation (&shop);
      g_assert_cmpint (accepted->total, ==, 0);
      shop_clear (&shop);
    }
}

/* A room a foot narrower: less work, and all the goods as before. */
static void
test_narrower (void)
{
  for (guint round = 0; round < scale_rounds (3 * N_STAGES); round++)
    {
      Shop shop;
      g_autoptr (RcQuote) variation = NULL;

      shop_init (&shop);
      Stage stage = AS_ORDERED + round % (N_STAGES - 1);
      bring_to (&shop, stage);
      resize (measure_again (&shop), 0, -IN (12));
      variation = new_variation (&shop);
      assert_nothing_back (variation, stage);
      g_assert_cmpint (sum_item (variation, "lay"), <, 0);
      shop_clear (&shop);
    }
}

/* A length that was cut without anybody noting its pieces is had all the same: nothing of it is ordered again. */
static void
test_unnoted (void)
{
  Shop shop;
  g_autoptr (GError) error = NULL;
  g_autoptr (RcHeld) held = NULL;
  g_autoptr (RcJob) whole = NULL;
  g_autoptr (RcPlan) plan = NULL;
  g_autoptr (GPtrArray) quantities = NULL, missing = NULL;
  RcLength taken = 0, had = 0;

  shop_init (&shop);
  bring_to (&shop, AS_CUT_UNNOTED);
  held = rc_store_load_held (shop.store, shop.job, &error);
  for (guint c = 0; c < shop.plan->cuttings->len; c++)
    for (guint i = 0; i < ((RcCutting *)shop.plan->cuttings->pdata[c])->answer->rolls->len; i++)
      taken += ((RcNestUse *)((RcCutting *)shop.plan->cuttings->pdata[c])->answer->rolls->pdata[i])->used;
  for (guint i = 0; i < held->goods->len; i++)
    {
      const RcCutGoods *one = held->goods->pdata[i];
      g_autofree char  *ticket = rc_cut_goods_dup_ticket (one, i), *words = rc_ticket_format (ticket);
      g_autofree char  *expected = g_strdup_printf ("a piece cut from roll %s", one->roll);

      g_assert_cmpint (one->width, ==, FT (12));
      g_assert_cmpstr (words, ==, expected);
      had += one->length;
    }
  g_assert_cmpint (had, ==, taken);
  whole = rc_held_dup_whole_job (held, shop.job);
  plan = plan_laid (&shop, whole, shop.plan);
  quantities = rc_quantity_compute (plan, shop.book->goods, &error);
  missing = rc_held_list_missing (held, quantities, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < missing->len; i++)
    g_assert_cmpint (((RcQuantityLine *)missing->pdata[i])->quantity_micro, ==, 0);
  shop_clear (&shop);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store-charged/the same again", test_the_same);
  g_test_add_func ("/store-charged/a room 4 in wider", test_wider);
  g_test_add_func ("/store-charged/ordered besides", test_supplement);
  g_test_add_func ("/store-charged/a room narrower", test_narrower);
  g_test_add_func ("/store-charged/cut, and no piece noted", test_unnoted);
  return g_test_run ();
}
