/* What a job has already: rolls kept for it, goods ordered and cut, and what is planned from them. */
#include <string.h>

#include "held.h"
#include "plan-maker.h"
#include "rounds.h"
#include "rowcut-error.h"

static RcRoll *
add_stock (GPtrArray *rolls, const char *id, RcLength length, RcLength kept)
{
  RcRoll *roll = rc_roll_new (id, "carpet", length);

  roll->lot = g_strdup (id);
  roll->kept = kept;
  g_ptr_array_add (rolls, roll);
  return roll;
}

static GPtrArray *
new_stock (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify)rc_roll_free);
}

static RcHeld *
held_new (GPtrArray *rolls, const char *order)
{
  GPtrArray *all = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_ordered_free);

  if (order != NULL)
    g_ptr_array_add (
        all, rc_ordered_new (order, "Mill", g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quote_line_free)));
  return rc_held_new (rolls, g_ptr_array_new_with_free_func ((GDestroyNotify)rc_cut_goods_free), all);
}

static void
add_measure (RcJob *job)
{
  RcMeasure *again = rc_measure_copy (rc_job_get_measure (job, NULL));

  g_free (again->id);
  again->id = g_strdup ("M2");
  g_ptr_array_add (job->measures, again);
}

static const RcRoll *
find_roll (const RcJob *job, const char *id)
{
  for (guint i = 0; i < job->rolls->len; i++)
    if (g_str_equal (((const RcRoll *)job->rolls->pdata[i])->id, id))
      return job->rolls->pdata[i];
  return NULL;
}

/* The rolls a plan cuts from: "R-1 R-2"; what is bought is "+". */
static char *
list_used (const RcPlan *plan)
{
  GString *list = g_string_new (NULL);

  for (guint c = 0; c < plan->cuttings->len; c++)
    {
      const RcCutting *cutting = plan->cuttings->pdata[c];

      for (guint i = 0; i < cutting->answer->rolls->len; i++)
        {
          const char *id = rc_cutting_get_roll_id (cutting, cutting->answer->rolls->pdata[i]);

          g_string_append_printf (list, "%s%s", list->len > 0 ? " " : "", id != NULL ? id : "+");
        }
    }
  return g_string_free (list, FALSE);
}

static void
assert_used (const RcJob *job, const char *used)
{
  g_autoptr (RcPlan) plan = make_plan (job);
  g_autofree char *list = list_used (plan);

  g_assert_cmpstr (list, ==, used);
}

/* Without anything kept a remnant goes first, then a roll, then goods to be bought; a kept roll goes before all of
 * them, also before a narrow remnant, a metre of which is little carpet. */
static void
test_kept_goes_first (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  RcRoll *narrow, *roll;

  add_rectangle (job, "den", 0, 0, FT (5), FT (9), "A");
  assert_used (job, "+");
  roll = add_stock (job->rolls, "R-1", FT (40), 0);
  assert_used (job, "R-1");
  add_stock (job->rolls, "R-2", FT (30), 0)->remnant = TRUE;
  assert_used (job, "R-2");
  narrow = add_stock (job->rolls, "R-3", FT (20), 0);
  narrow->remnant = TRUE;
  narrow->width = FT (6);
  assert_used (job, "R-3");
  roll->kept = FT (9);
  assert_used (job, "R-1");
  /* Too short for the whole: one dye lot for an area, so it comes from elsewhere. */
  roll->length = FT (3);
  roll->kept = FT (3);
  assert_used (job, "R-3");
}

/* Whatever rooms and whatever other rolls: what fits on a roll kept for the job comes off it. */
static void
test_kept_on_random_rooms (void)
{
  for (guint round = 0; round < scale_rounds (40); round++)
    {
      g_autoptr (RcJob) job = make_job (FT (12));
      guint n_others = (guint)g_test_rand_int_range (0, 4), at = (guint)g_test_rand_int_range (0, (gint32)n_others + 1);

      add_rectangle (job, "den", 0, 0, IN (g_test_rand_int_range (40, 240)), IN (g_test_rand_int_range (40, 240)), "A");
      for (guint i = 0; i <= n_others; i++)
        {
          g_autofree char *id = g_strdup_printf ("R-%u", i + 1);
          RcRoll *roll = add_stock (job->rolls, id, i == at ? FT (120) : IN (g_test_rand_int_range (100, 700)), 0);

          if (i == at)
            roll->kept = IN (g_test_rand_int_range (1, 500));
          else if (g_test_rand_bit ())
            roll->remnant = TRUE;
          if (roll->remnant && g_test_rand_bit ())
            roll->width = IN (g_test_rand_int_range (24, 144));
        }
      assert_used (job, ((const RcRoll *)job->rolls->pdata[at])->id);
    }
}

/* Keeping the roll that is planned with leaves the pieces as they are: its carpet is not wasted for being kept. */
static void
test_kept_keeps_the_plan (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  g_autoptr (RcPlan) before = NULL;
  g_autoptr (RcPlan) after = NULL;

  add_rectangle (job, "den", 0, 0, FT (15), FT (14), "A");
  add_stock (job->rolls, "R-1", FT (90), 0)->remnant = TRUE;
  before = make_plan (job);
  ((RcRoll *)job->rolls->pdata[0])->kept = FT (30);
  after = make_plan (job);
  g_assert_cmpuint (before->pieces->len, ==, after->pieces->len);
  for (guint i = 0; i < before->pieces->len; i++)
    {
      const RcPiece *a = before->pieces->pdata[i], *b = after->pieces->pdata[i];

      g_assert_cmpint (a->cut_width, ==, b->cut_width);
      g_assert_cmpint (a->cut_length, ==, b->cut_length);
    }
}

/* Before anything is ordered the job's rolls are what the stock has for it: less what others were promised, none that
 * is theirs altogether, those kept for it besides; what the stock does not know stays. */
static void
test_stock_is_followed (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  GPtrArray *stock = new_stock ();
  g_autoptr (RcHeld) held = NULL;
  g_autoptr (RcJob) planned = NULL;

  add_rectangle (job, "den", 0, 0, FT (5), FT (9), "A");
  add_stock (job->rolls, "R-1", FT (40), 0);
  add_stock (job->rolls, "R-2", FT (40), 0);
  add_stock (job->rolls, "F-9", FT (7), 0);
  add_stock (stock, "R-1", FT (12), 0);
  add_stock (stock, "R-2", 0, 0);
  add_stock (stock, "R-3", FT (50), FT (20));
  add_stock (stock, "R-4", FT (60), 0);
  held = held_new (stock, NULL);
  planned = rc_held_dup_job (held, job, NULL);
  g_assert_cmpuint (planned->rolls->len, ==, 3);
  g_assert_cmpint (find_roll (planned, "R-1")->length, ==, FT (12));
  g_assert_cmpint (find_roll (planned, "R-3")->kept, ==, FT (20));
  g_assert_nonnull (find_roll (planned, "F-9"));
  assert_used (planned, "R-3");
  g_assert_cmpuint (job->rolls->len, ==, 3); /* the job itself is as it was */
}

/* Once it is ordered the first measure stays planned as it was; measured again it has the stock, what is cut, and what
 * is on its way. */
static void
test_measured_again (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  GPtrArray *stock = new_stock ();
  g_autoptr (RcHeld) held = NULL;
  g_autoptr (RcJob) first = NULL;
  g_autoptr (RcJob) again = NULL;

  add_rectangle (job, "den", 0, 0, FT (11), FT (9), "A");
  add_stock (stock, "R-1", FT (20), FT (20));
  add_stock (stock, "R-2", 0, 0);
  held = held_new (stock, "O-1");
  g_assert_false (rc_held_is_counted_on (held, job, NULL));
  g_ptr_array_add (held->goods, rc_cut_goods_new ("1", "carpet", "R-1", FT (11), FT (9)));
  g_ptr_array_add (held->goods, rc_cut_goods_new_ordered ("O-1", "carpet", FT (3)));
  first = rc_held_dup_job (held, job, NULL);
  assert_used (first, "+");
  add_measure (job);
  g_assert_true (rc_held_is_counted_on (held, job, NULL));
  g_assert_false (rc_held_is_counted_on (held, job, "M1"));
  again = rc_held_dup_job (held, job, NULL);
  g_assert_cmpuint (again->rolls->len, ==, 3);
  assert_used (again, "cut/1/1/");
  g_assert_false (rc_job_has_taken_cut_goods (job, held->goods));
  g_assert_true (rc_job_has_taken_cut_goods (again, held->goods));
  ((RcCutGoods *)held->goods->pdata[0])->length -= 1;
  g_assert_false (rc_job_has_taken_cut_goods (again, held->goods));
}

static RcGoods *
goods_new (RcUnit unit, gint64 pack_micro)
{
  RcGoods *goods = rc_goods_new ("pad", RC_GOODS_CUSHION, "Pad");

  goods->unit = unit;
  goods->pack_micro = pack_micro;
  goods->pack_unit = RC_UNIT_ROLL;
  goods->roll_width = FT (6);
  return goods;
}

static RcQuantityLine *
quantity_new (const RcGoods *goods, gint64 need_micro)
{
  RcQuantityLine *line = g_new0 (RcQuantityLine, 1);
  RcPacking       packing = { 0 };

  /* A unit's size cancels out: so much of the unit is needed. */
  g_assert_true (rc_packing_from_area (goods, 2 * rc_unit_get_square_ticks (goods->unit) * (need_micro / RC_MICRO),
                                       &packing, NULL));
  line->goods = goods;
  line->item = g_strdup (goods->id);
  line->name = g_strdup (goods->name);
  line->because = g_strdup ("");
  line->unit = goods->unit;
  line->quantity_micro = packing.quantity_micro;
  line->net_micro = packing.net_micro;
  line->packs = packing.packs;
  line->pack_unit = packing.pack_unit;
  return line;
}

static void
add_ordered (RcHeld *held, const char *item, gint64 quantity_micro, RcUnit unit, gint64 packs)
{
  GPtrArray   *lines = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quote_line_free);
  RcQuoteLine *line = rc_quote_line_new_plain (item, NULL, quantity_micro, unit, 100, 100, FALSE, NULL);

  line->packs = packs;
  line->pack_unit = RC_UNIT_ROLL;
  g_ptr_array_add (lines, line);
  g_ptr_array_add (held->orders, rc_ordered_new ("O-1", "Mill", lines));
}

/* Ordered and missing together are enough, and one pack less would not be; loose goods come out to the last bit. */
static void
test_missing_of_random_needs (void)
{
  for (guint round = 0; round < scale_rounds (300); round++)
    {
      gint64 pack = (round % 2) * g_test_rand_int_range (1, 40) * RC_MICRO;
      gint64 first = g_test_rand_int_range (0, 500) * RC_MICRO, now = g_test_rand_int_range (1, 500) * RC_MICRO;
      g_autoptr (RcGoods) goods = goods_new (RC_UNIT_SQ_YD, pack);
      g_autoptr (RcHeld) held = held_new (new_stock (), NULL);
      g_autoptr (GPtrArray) need = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quantity_line_free);
      g_autoptr (GPtrArray) missing = NULL;
      g_autoptr (GError) error = NULL;
      RcQuantityLine       *before = quantity_new (goods, first);
      const RcQuantityLine *left;

      /* What was ordered is kept in the unit of its price. */
      if (first > 0)
        add_ordered (held, "pad", 9 * before->quantity_micro, RC_UNIT_SQ_FT, before->packs);
      g_ptr_array_add (need, quantity_new (goods, now));
      missing = rc_held_list_missing (held, need, &error);
      g_assert_no_error (error);
      left = missing->pdata[0];
      g_assert_cmpint (before->quantity_micro + left->quantity_micro, >=, now);
      if (left->quantity_micro > 0)
        g_assert_cmpint (before->quantity_micro + left->quantity_micro - MAX (pack, 1), <, now);
      g_assert_cmpint (left->packs * pack, ==, pack > 0 ? left->quantity_micro : 0);
      rc_quantity_line_free (before);
    }
}

/* Carpet is what the plan says: it knows what there is of it. Work and stock are not missing. A unit that says nothing
 * about the goods is not passed over. */
static void
test_missing_by_kind (void)
{
  g_autoptr (RcGoods) pad = goods_new (RC_UNIT_SQ_YD, 0);
  g_autoptr (RcGoods) carpet = goods_new (RC_UNIT_SQ_YD, 0);
  g_autoptr (RcHeld) held = held_new (new_stock (), NULL);
  g_autoptr (GPtrArray) need = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quantity_line_free);
  g_autoptr (GPtrArray) missing = NULL;
  g_autoptr (GError) error = NULL;

  carpet->kind = RC_GOODS_CARPET;
  g_free (carpet->id);
  carpet->id = g_strdup ("carpet");
  add_ordered (held, "carpet", 5 * RC_MICRO, RC_UNIT_SQ_YD, 0);
  g_ptr_array_add (need, quantity_new (carpet, 20 * RC_MICRO));
  g_ptr_array_add (need, quantity_new (carpet, 7 * RC_MICRO));
  ((RcQuantityLine *)need->pdata[1])->from_stock = TRUE;
  missing = rc_held_list_missing (held, need, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (missing->len, ==, 1);
  g_assert_cmpint (((RcQuantityLine *)missing->pdata[0])->quantity_micro, ==, 20 * RC_MICRO);
  add_ordered (held, "pad", 5 * RC_MICRO, RC_UNIT_GALLON, 0);
  g_ptr_array_add (need, quantity_new (pad, 7 * RC_MICRO));
  g_assert_null (rc_held_list_missing (held, need, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_REFERENCE);
  g_assert_nonnull (strstr (error->message, "Pad was ordered in gal with order O-1"));
}

/* Two looks at the store are alike unless something has moved. */
static void
test_equal (void)
{
  g_autoptr (RcHeld) a = held_new (new_stock (), "O-1");
  g_autoptr (RcHeld) b = held_new (new_stock (), "O-1");

  g_assert_true (rc_held_equal (a, b));
  g_assert_true (rc_held_equal (NULL, NULL));
  g_assert_false (rc_held_equal (a, NULL));
  add_stock (a->rolls, "R-1", FT (10), 0);
  g_assert_false (rc_held_equal (a, b));
  add_stock (b->rolls, "R-1", FT (10), 0);
  g_assert_true (rc_held_equal (a, b));
  ((RcRoll *)b->rolls->pdata[0])->kept = 1;
  g_assert_false (rc_held_equal (a, b));
  ((RcRoll *)a->rolls->pdata[0])->kept = 1;
  g_ptr_array_add (a->goods, rc_cut_goods_new ("1", "carpet", NULL, FT (1), FT (1)));
  g_ptr_array_add (b->goods, rc_cut_goods_new ("2", "carpet", NULL, FT (1), FT (1)));
  g_assert_false (rc_held_equal (a, b));
}

/* So is a length spent more, or longer, or of other goods; what was accepted; a remnant; flaws; where a piece is from.
 */
static void
test_more_differences (void)
{
  for (guint i = 0; i < 7; i++)
    {
      g_autoptr (RcHeld) a = held_new (new_stock (), NULL);
      g_autoptr (RcHeld) b = held_new (new_stock (), i == 6 ? "O-1" : NULL);
      const RcFlaw flaw = { FT (1), FT (2) };

      for (guint k = 0; k < 2; k++)
        {
          RcHeld     *held = k == 0 ? a : b;
          RcCutGoods *cut = rc_cut_goods_new ("1", "carpet", NULL, FT (1), FT (2));
          gboolean    other = k == 1;

          add_stock (held->rolls, "R-1", FT (10), 0)->remnant = other && i == 0;
          if (other && i == 1)
            g_array_append_val (((RcRoll *)held->rolls->pdata[0])->flaws, flaw);
          cut->roll = g_strdup (other && i == 2 ? "R-2" : "R-1");
          g_ptr_array_add (held->goods, cut);
          g_ptr_array_add (held->spent,
                           rc_spent_new (other && i == 3 ? "pad" : "carpet", FT (other && i == 4 ? 4 : 3)));
          held->accepted_as = g_strdup (other && i == 5 ? "Q-2" : "Q-1");
        }
      g_assert_false (rc_held_equal (a, b));
      g_assert_true (rc_held_equal (b, b));
      g_ptr_array_add (b->spent, rc_spent_new ("carpet", FT (1)));
      g_assert_false (rc_held_equal (a, b));
    }
}

/* A job counts on what it has from its second measure on, where there is anything at all. */
static void
test_counted_on (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  g_autoptr (RcHeld) empty = held_new (new_stock (), NULL);
  g_autoptr (RcHeld) kept = held_new (new_stock (), NULL);
  g_autoptr (RcHeld) ordered = held_new (new_stock (), "O-1");

  add_measure (job);
  add_stock (empty->rolls, "R-1", FT (10), 0);
  add_stock (kept->rolls, "R-1", FT (10), FT (3));
  g_assert_false (rc_held_is_counted_on (NULL, job, "M2"));
  g_assert_false (rc_held_is_counted_on (empty, job, "M2"));
  g_assert_true (rc_held_is_counted_on (kept, job, "M2"));
  g_assert_true (rc_held_is_counted_on (ordered, job, NULL));
  g_assert_false (rc_held_is_counted_on (ordered, job, "M1"));
}

/* Any one thing that differs is noticed, be it of a roll, of a piece or of an order. */
static void
test_each_difference (void)
{
  for (guint i = 0; i < 15; i++)
    {
      g_autoptr (RcHeld) a = held_new (new_stock (), "O-1");
      g_autoptr (RcHeld) b = held_new (new_stock (), i == 14 ? "O-2" : "O-1");
      const RcFlaw flaws[] = { { FT (1), FT (2) }, { FT (1), FT (3) } };
      RcHeld      *both[] = { a, b };

      for (guint k = 0; k < 2; k++)
        {
          RcRoll     *roll = add_stock (both[k]->rolls, "R-1", FT (10), 0);
          RcCutGoods *cut = rc_cut_goods_new ("1", "carpet", "lot", FT (1), FT (2));
          gboolean    other = k == 1;
          char      **texts[] = { &roll->id,   &roll->goods_id, &roll->lot,     &roll->place,
                                  &cut->piece, &cut->order,     &cut->goods_id, &cut->lot };
          RcLength   *lengths[] = { &roll->length, &roll->width, &roll->kept, &cut->width, &cut->length };

          g_array_append_val (roll->flaws, flaws[other && i == 13]);
          g_ptr_array_add (both[k]->goods, cut);
          if (other && i < G_N_ELEMENTS (texts))
            {
              g_free (*texts[i]);
              *texts[i] = g_strdup ("other");
            }
          else if (other && i < 13)
            (*lengths[i - 8])++;
        }
      g_assert_false (rc_held_equal (a, b));
      g_assert_true (rc_held_equal (a, a));
    }
}

/* The plans of the measures, as far as there are any, and the last that was asked for. */
typedef struct
{
  const RcPlan *plans[3];
  const char   *asked;
} Told;

static const RcPlan *
tell_plan (const RcMeasure *measure, gpointer data)
{
  Told *told = data;

  told->asked = measure->id;
  return told->plans[measure->id[1] - '1'];
}

static const RcMeasure *
find_begun_by (const RcHeld *held, const RcJob *job, const RcMeasure *measure, Told *told)
{
  const RcMeasure *found = rc_held_find_begun_by (held, job, measure, tell_plan, told);

  g_assert_cmpstr (told->asked, ==, found->id); /* its plan is at hand */
  return found;
}

/* A piece tells the plan it was cut by: its number, goods and size. An order tells the measure by its day. */
static void
test_made_by (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  g_autoptr (RcHeld) held = held_new (new_stock (), "O-1");
  const char *days[] = { "2026-03-01", "2026-03-05", "2026-03-09" };
  RcCutGoods *cut;

  add_rectangle (job, "den", 0, 0, FT (10), FT (9), "A");
  g_autoptr (RcPlan) plan = make_plan (job);
  const RcPiece *piece = plan->pieces->pdata[0];
  g_assert_false (rc_held_was_cut_by (held, plan));
  cut = rc_cut_goods_new ("1", "carpet", NULL, piece->cut_width, piece->cut_length + 1);
  g_ptr_array_add (held->goods, cut);
  g_assert_false (rc_held_was_cut_by (held, plan));
  cut->length--;
  g_assert_true (rc_held_was_cut_by (held, plan));
  cut->width++;
  g_assert_false (rc_held_was_cut_by (held, plan));
  cut->width--;
  g_free (cut->piece);
  cut->piece = g_strdup ("7");
  g_assert_false (rc_held_was_cut_by (held, plan));
  g_free (cut->piece);
  cut->piece = g_strdup ("1");
  g_free (cut->goods_id);
  cut->goods_id = g_strdup ("other");
  g_assert_false (rc_held_was_cut_by (held, plan));
  for (guint i = 0; i < G_N_ELEMENTS (days); i++)
    {
      RcMeasure *measure = i == 0 ? job->measures->pdata[0] : rc_measure_new (i == 1 ? "M2" : "M3");

      measure->date = g_strdup (days[i]);
      if (i > 0)
        g_ptr_array_add (job->measures, measure);
    }
  RcOrdered       *order = held->orders->pdata[0];
  const RcMeasure *last = job->measures->pdata[2];
  Told             told = { { NULL } };
  g_assert_cmpstr (find_begun_by (held, job, last, &told)->id, ==, "M2"); /* nobody knows when */
  order->made = g_strdup ("2026-03-04");
  g_assert_cmpstr (find_begun_by (held, job, last, &told)->id, ==, "M1");
  g_free (order->made);
  order->made = g_strdup ("2026-03-10");
  g_assert_cmpstr (find_begun_by (held, job, last, &told)->id, ==, "M2"); /* before the measure itself */
  g_clear_pointer (&((RcMeasure *)job->measures->pdata[1])->date, g_free);
  g_free (order->made);
  order->made = g_strdup ("2026-03-04");
  g_assert_cmpstr (find_begun_by (held, job, last, &told)->id, ==, "M2"); /* nobody knows when it was measured */
  g_ptr_array_set_size (held->orders, 0);
  g_assert_cmpstr (find_begun_by (held, job, last, &told)->id, ==, "M2");
  g_assert_null (rc_held_find_begun_by (held, job, job->measures->pdata[0], tell_plan, &told));
  /* What is cut says more than any day. */
  told.plans[0] = plan;
  g_free (cut->goods_id);
  cut->goods_id = g_strdup ("carpet");
  g_assert_cmpstr (find_begun_by (held, job, last, &told)->id, ==, "M1");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/quote-held/a kept roll goes before all others", test_kept_goes_first);
  g_test_add_func ("/quote-held/on random rooms", test_kept_on_random_rooms);
  g_test_add_func ("/quote-held/keeping a roll keeps the plan", test_kept_keeps_the_plan);
  g_test_add_func ("/quote-held/the stock is followed", test_stock_is_followed);
  g_test_add_func ("/quote-held/measured again", test_measured_again);
  g_test_add_func ("/quote-held/missing of random needs", test_missing_of_random_needs);
  g_test_add_func ("/quote-held/missing by kind of goods", test_missing_by_kind);
  g_test_add_func ("/quote-held/equal", test_equal);
  g_test_add_func ("/quote-held/each difference is noticed", test_each_difference);
  g_test_add_func ("/quote-held/more differences", test_more_differences);
  g_test_add_func ("/quote-held/what is counted on", test_counted_on);
  g_test_add_func ("/quote-held/the measure that goods were made by", test_made_by);
  return g_test_run ();
}
