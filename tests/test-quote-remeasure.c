/* A job measured again after its carpet was cut: what the pieces still cover, and what it costs to go on. */
#include <string.h>

#include "plan-maker.h"
#include "remeasure.h"
#include "rowcut-error.h"

static const RcCurrency dollars = { "USD", 2 };

/* A room of 10 by 12 ft and one of 9 by 8 ft from a roll of 12 ft, both cut. */
typedef struct
{
  RcJob       *job;
  RcPlan      *before;
  RcPriceBook *book;
  GPtrArray   *cut;
} Shop;

static void
add_price (RcPriceBook *book, const char *item, RcUnit unit, RcMoney cost)
{
  g_ptr_array_add (book->prices, rc_price_new (item, unit, cost, 2 * cost));
}

static void
set_up (Shop *shop, gconstpointer data)
{
  RcGoods *tape, *sealer, *strip;

  shop->job = make_job (FT (12));
  add_rectangle (shop->job, "den", 0, 0, FT (10), FT (12), "A");
  add_rectangle (shop->job, "study", FT (20), 0, FT (9), FT (8), "B");
  shop->book = rc_price_book_new (&dollars);
  tape = rc_goods_new ("tape", RC_GOODS_TAPE, "Tape");
  tape->unit = RC_UNIT_FT;
  sealer = rc_goods_new ("sealer", RC_GOODS_SEALER, "Sealer");
  sealer->pack_covers_length = FT (60);
  strip = rc_goods_new ("strip", RC_GOODS_STRIP, "Strip");
  strip->unit = RC_UNIT_FT;
  g_ptr_array_add (shop->book->goods, tape);
  g_ptr_array_add (shop->book->goods, sealer);
  g_ptr_array_add (shop->book->goods, strip);
  add_price (shop->book, "carpet", RC_UNIT_M, 3000);
  add_price (shop->book, "tape", RC_UNIT_FT, 10);
  add_price (shop->book, "sealer", RC_UNIT_EACH, 600);
  add_price (shop->book, "strip", RC_UNIT_FT, 20);
  add_price (shop->book, "lay", RC_UNIT_M2, 400);
  add_price (shop->book, "side-seam", RC_UNIT_FT, 100);
  add_price (shop->book, "cross-seam", RC_UNIT_EACH, 800);
  shop->before = make_plan (shop->job);
  shop->cut = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_cut_goods_free);
  for (guint i = 0; i < shop->before->pieces->len; i++)
    {
      const RcPiece   *piece = shop->before->pieces->pdata[i];
      g_autofree char *number = g_strdup_printf ("%u", piece->number);

      g_ptr_array_add (shop->cut, rc_cut_goods_new (number, piece->goods, "L-1", piece->cut_width, piece->cut_length));
    }
  g_assert_cmpuint (shop->cut->len, ==, 2);
}

static void
tear_down (Shop *shop, gconstpointer data)
{
  rc_plan_free (shop->before);
  rc_job_free (shop->job);
  rc_price_book_free (shop->book);
  g_ptr_array_unref (shop->cut);
}

/* The same rooms a second time, to be changed; where their outlines lie stays as it is. */
static RcMeasure *
measure_again (Shop *shop)
{
  RcMeasure *again = rc_measure_copy (rc_job_get_measure (shop->job, NULL));

  g_free (again->id);
  again->id = g_strdup ("M2");
  g_ptr_array_add (shop->job->measures, again);
  return again;
}

static RcRemeasure *
look (Shop *shop, GError **error)
{
  return rc_remeasure_new (shop->job, "M2", shop->before, shop->cut, shop->book, NULL, 0, error);
}

static void
assert_in_order (const RcRemeasure *remeasure)
{
  g_assert_cmpuint (remeasure->cures->len, >, 0);
  for (guint i = 0; i < remeasure->cures->len; i++)
    {
      const RcCure *cure = remeasure->cures->pdata[i];

      g_assert_nonnull (cure->plan);
      g_assert_cmpstr (cure->name, !=, "");
      if (i > 0)
        g_assert_cmpint (((const RcCure *)remeasure->cures->pdata[i - 1])->cost, <=, cure->cost);
    }
}

static gboolean
says (const GPtrArray *texts, const char *words)
{
  for (guint i = 0; i < texts->len; i++)
    if (strstr (texts->pdata[i], words) != NULL)
      return TRUE;
  for (guint i = 0; i < texts->len; i++)
    g_test_message ("said: %s", (const char *)texts->pdata[i]);
  return FALSE;
}

static void
resize (RcMeasure *measure, const char *id, RcLength width, RcLength length)
{
  RcRoom  *room = rc_measure_find_room (measure, id);
  RcPoint *points = (RcPoint *)room->outline->data;
  RcLength x = points[0].x, y = points[0].y;

  g_assert_cmpuint (room->outline->len, ==, 4);
  points[1].x = points[2].x = x + width;
  points[2].y = points[3].y = y + length;
}

/* Nothing changed: the pieces that lie there are all the carpet it takes. */
static void
test_the_same (Shop *shop, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcRemeasure) remeasure = NULL;
  const RcCure *cure;

  measure_again (shop);
  remeasure = look (shop, &error);
  g_assert_no_error (error);
  assert_in_order (remeasure);
  g_assert_cmpuint (remeasure->cures->len, ==, 1); /* every goal comes to the same */
  g_assert_cmpuint (remeasure->shortfalls->len, ==, 0);
  cure = remeasure->cures->pdata[0];
  g_assert_cmpuint (cure->extra->len, ==, 0);
  g_assert_cmpuint (((const RcCutting *)cure->plan->cuttings->pdata[0])->answer->rolls->len, ==, 2); /* both pieces */
  g_assert_cmpuint (cure->job->rolls->len, ==, 2);
  g_assert_true (((const RcRoll *)cure->job->rolls->pdata[0])->cut);
}

/* 3 in wider and 2 in longer, of a room whose carpet lies across it: both are said of the piece, and what there is to
 * be cut besides is named. */
static void
test_larger (Shop *shop, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcRemeasure) remeasure = NULL;

  resize (measure_again (shop), "den", FT (10) + IN (3), FT (12) + IN (2));
  remeasure = look (shop, &error);
  g_assert_no_error (error);
  assert_in_order (remeasure);
  g_assert_true (says (remeasure->shortfalls, "2\" too narrow"));
  g_assert_true (says (remeasure->shortfalls, "3\" too short"));
  g_assert_false (says (remeasure->shortfalls, "study"));
  g_assert_cmpuint (((const RcCure *)remeasure->cures->pdata[0])->extra->len, >, 0);
  g_assert_true (says (((const RcCure *)remeasure->cures->pdata[0])->extra, "to be bought"));
}

/* What is missing comes from the shop's own roll when it has one; and then that is said. */
static void
test_from_stock (Shop *shop, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcRemeasure) remeasure = NULL;
  RcRoll *roll = rc_roll_new ("R-7", "carpet", FT (50));

  roll->lot = g_strdup ("L-1");
  g_ptr_array_add (shop->job->rolls, roll);
  resize (measure_again (shop), "den", FT (11) + IN (6), FT (14));
  remeasure = look (shop, &error);
  g_assert_no_error (error);
  g_assert_true (says (((const RcCure *)remeasure->cures->pdata[0])->extra, "from roll R-7"));
}

/* Nothing is cut yet, but 30 ft are on their way: they are laid before anything is bought, and what is too much of them
 * is said while the order can still be changed. */
static void
test_on_order (Shop *shop, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcRemeasure) remeasure = NULL;

  g_ptr_array_set_size (shop->cut, 0);
  g_ptr_array_add (shop->cut, rc_cut_goods_new_ordered ("O-3", "carpet", FT (30)));
  resize (measure_again (shop), "den", FT (10) + IN (6), FT (11) + IN (6));
  remeasure = look (shop, &error);
  g_assert_no_error (error);
  assert_in_order (remeasure);
  const RcCure *cure = remeasure->cures->pdata[0];
  g_assert_cmpuint (cure->extra->len, ==, cure->plan->pieces->len);
  for (guint i = 0; i < cure->extra->len; i++)
    g_assert_nonnull (strstr (cure->extra->pdata[i], "of what is on order"));
  g_assert_true (says (remeasure->shortfalls, "Order O-3: of 30' 0\" of "));
}

/* Lengths are sold in steps: what that leaves over of an order was left when it was made, and is no news. */
static void
test_steps_on_order (Shop *shop, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcRemeasure) remeasure = NULL;
  g_autoptr (RcRemeasure) smaller = NULL;
  const RcNestUse *use;

  ((RcGoods *)rc_job_find_goods (shop->job, "carpet"))->length_step = FT (7);
  rc_plan_free (shop->before);
  shop->before = make_plan (shop->job);
  use = g_ptr_array_index (((const RcCutting *)shop->before->cuttings->pdata[0])->answer->rolls, 0);
  g_assert_cmpint (use->length - use->used, >, RC_TICKS_PER_FOOT / 2);
  g_ptr_array_set_size (shop->cut, 0);
  g_ptr_array_add (shop->cut, rc_cut_goods_new_ordered ("O-3", "carpet", use->length));
  RcMeasure *again = measure_again (shop);
  remeasure = look (shop, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (remeasure->shortfalls->len, ==, 0);
  resize (again, "den", FT (7), FT (12));
  smaller = look (shop, &error);
  g_assert_no_error (error);
  g_assert_true (says (smaller->shortfalls, "is not needed any more"));
}

/* Less on order than it takes now: the rest is bought. */
static void
test_too_little_on_order (Shop *shop, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcRemeasure) remeasure = NULL;

  g_ptr_array_set_size (shop->cut, 0);
  g_ptr_array_add (shop->cut, rc_cut_goods_new_ordered ("O-3", "carpet", FT (13)));
  measure_again (shop);
  remeasure = look (shop, &error);
  g_assert_no_error (error);
  g_assert_true (says (((const RcCure *)remeasure->cures->pdata[0])->extra, "of what is on order"));
  g_assert_true (says (((const RcCure *)remeasure->cures->pdata[0])->extra, "to be bought"));
}

/* A room that is there no more, a piece of other goods, one without a number: of no use, and said so. */
static void
test_no_use (Shop *shop, gconstpointer data)
{
  RcMeasure *again = measure_again (shop);
  g_autoptr (GError) error = NULL;
  g_autoptr (RcRemeasure) remeasure = NULL;
  RcGoods *plush = rc_goods_new ("plush", RC_GOODS_CARPET, "Plush");

  plush->roll_width = FT (12);
  g_ptr_array_add (shop->job->goods, plush);
  g_ptr_array_add (shop->cut, rc_cut_goods_new (NULL, "plush", NULL, FT (3), FT (4)));
  g_ptr_array_remove (again->rooms, rc_measure_find_room (again, "study"));
  g_ptr_array_remove (again->areas, rc_measure_find_area (again, "B"));
  remeasure = look (shop, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (remeasure->shortfalls->len, ==, 2);
  g_assert_true (says (remeasure->shortfalls, "Piece –, cut 3' 0\" × 4' 0\", is of no use any more"));
  g_assert_true (says (remeasure->shortfalls, "of no use"));
}

/* What was laid with the pile to the west is not turned by measuring again. */
static void
test_pile_is_held (Shop *shop, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcRemeasure) remeasure = NULL;
  double was = rc_area_plan_get_chosen (shop->before->areas->pdata[0])->pile_degrees;

  resize (measure_again (shop), "den", FT (12), FT (10)); /* lies better the other way round */
  remeasure = look (shop, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < remeasure->cures->len; i++)
    {
      const RcCure *cure = remeasure->cures->pdata[i];

      g_assert_cmpfloat (rc_area_plan_get_chosen (cure->plan->areas->pdata[0])->pile_degrees, ==, was);
    }
}

/* Without a price no way can be told: the first reason is. */
static void
test_refused (Shop *shop, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  measure_again (shop);
  g_ptr_array_set_size (shop->book->prices, 0);
  g_assert_null (look (shop, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_REFERENCE);
  g_assert_nonnull (strstr (error->message, "price"));
  rc_remeasure_free (NULL);
  rc_cut_goods_free (NULL);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, function) g_test_add ("/quote-remeasure/" name, Shop, NULL, set_up, function, tear_down)
  ADD ("the-same", test_the_same);
  ADD ("larger", test_larger);
  ADD ("from-stock", test_from_stock);
  ADD ("no-use", test_no_use);
  ADD ("goods-on-order", test_on_order);
  ADD ("steps-on-order", test_steps_on_order);
  ADD ("too-little-on-order", test_too_little_on_order);
  ADD ("pile-is-held", test_pile_is_held);
  ADD ("refused", test_refused);
  return g_test_run ();
}
