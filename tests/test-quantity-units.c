/* From one unit to another, exactly, and where there is no way or no room for the number. */
#include <string.h>

#include "goods.h"
#include "conversion.h"
#include "quantity.h"
#include "unit.h"

#define NO_WAY (-1)

/* 1 in = 25.4 mm (agreement of 1959), so 1 yd = 0.9144 m, 1 sq yd = 0.83612736 m2; 1 US gal = 3.785411784 L (Handbook
 * 44, appendix C, recalled). In millionths, worked by hand from these. */
static const struct
{
  gint64 quantity;
  RcUnit from, to;
  gint64 result;
} plain[] = {
  { 1000000, RC_UNIT_YD, RC_UNIT_M, 914400 },
  { 1000000, RC_UNIT_M, RC_UNIT_FT, 3280840 }, /* 3.2808399 */
  { 9000000, RC_UNIT_SQ_FT, RC_UNIT_SQ_YD, 1000000 },
  { 1000000, RC_UNIT_SQ_YD, RC_UNIT_M2, 836127 },
  { 1000000, RC_UNIT_GALLON, RC_UNIT_LITRE, 3785412 },
  { 0, RC_UNIT_YD, RC_UNIT_M, 0 },
  { 5, RC_UNIT_EACH, RC_UNIT_EACH, 5 },
  { 5, RC_UNIT_EACH, RC_UNIT_M, NO_WAY },
  { 5, RC_UNIT_M, RC_UNIT_HOUR, NO_WAY },
  { 5, RC_UNIT_M, RC_UNIT_LITRE, NO_WAY },
  { 5, RC_UNIT_LITRE, RC_UNIT_M2, NO_WAY },
  { 5, RC_UNIT_M, RC_UNIT_M2, NO_WAY }, /* without a roll width */
  { 5, RC_UNIT_M2, RC_UNIT_M, NO_WAY },
  { -1, RC_UNIT_M, RC_UNIT_FT, NO_WAY },
  { G_MAXINT64, RC_UNIT_M, RC_UNIT_FT, NO_WAY },
  { G_MAXINT64, RC_UNIT_M, RC_UNIT_M, G_MAXINT64 },
};

static gint64
convert (const RcGoods *goods, gint64 quantity, RcUnit from, RcUnit to)
{
  gint64 result = NO_WAY;

  if (!rc_conversion_apply (goods, quantity, from, to, &result))
    g_assert_cmpint (result, ==, NO_WAY); /* left alone */
  return result;
}

static void
test_plain (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (plain); i++)
    g_assert_cmpint (convert (NULL, plain[i].quantity, plain[i].from, plain[i].to), ==, plain[i].result);
}

/* Tubs of 4 gal that are sold by the gallon; full rolls of 120 sq yd, 90 ft of 12 ft. */
static void
test_goods (void)
{
  g_autoptr (RcGoods) glue = rc_goods_new ("glue", RC_GOODS_ADHESIVE, "Glue");
  g_autoptr (RcGoods) carpet = rc_goods_new ("twist", RC_GOODS_CARPET, "Twist");

  glue->unit = RC_UNIT_GALLON;
  glue->pack_micro = 4 * RC_MICRO;
  glue->pack_unit = RC_UNIT_TUB;
  g_assert_cmpint (convert (glue, 2 * RC_MICRO, RC_UNIT_TUB, RC_UNIT_GALLON), ==, 8 * RC_MICRO);
  g_assert_cmpint (convert (glue, 2 * RC_MICRO, RC_UNIT_TUB, RC_UNIT_TUB), ==, 2 * RC_MICRO);
  g_assert_cmpint (convert (glue, 2 * RC_MICRO, RC_UNIT_TUB, RC_UNIT_LITRE), ==, 30283294); /* 8 x 3.785411784 */
  g_assert_cmpint (convert (glue, 10 * RC_MICRO, RC_UNIT_GALLON, RC_UNIT_TUB), ==, 2500000);
  g_assert_cmpint (convert (glue, RC_MICRO, RC_UNIT_TUB, RC_UNIT_M), ==, NO_WAY);
  g_assert_cmpint (convert (glue, RC_MICRO, RC_UNIT_M, RC_UNIT_TUB), ==, NO_WAY);
  g_assert_cmpint (convert (glue, RC_MICRO, RC_UNIT_CARTON, RC_UNIT_GALLON), ==, NO_WAY);
  g_assert_cmpint (convert (glue, G_MAXINT64, RC_UNIT_TUB, RC_UNIT_GALLON), ==, NO_WAY);

  carpet->unit = RC_UNIT_SQ_YD;
  carpet->roll_width = 12 * RC_TICKS_PER_FOOT;
  g_assert_cmpint (convert (carpet, 3 * RC_MICRO, RC_UNIT_FT, RC_UNIT_SQ_YD), ==, 4 * RC_MICRO);
  g_assert_cmpint (convert (carpet, 4 * RC_MICRO, RC_UNIT_SQ_YD, RC_UNIT_FT), ==, 3 * RC_MICRO);
  g_assert_cmpint (convert (carpet, RC_MICRO, RC_UNIT_FT, RC_UNIT_LITRE), ==, NO_WAY);
  carpet->pack_micro = 120 * RC_MICRO; /* a full roll of 90 ft */
  carpet->pack_unit = RC_UNIT_ROLL;
  g_assert_cmpint (convert (carpet, RC_MICRO, RC_UNIT_ROLL, RC_UNIT_FT), ==, 90 * RC_MICRO);
  g_assert_cmpint (convert (carpet, 45 * RC_MICRO, RC_UNIT_FT, RC_UNIT_ROLL), ==, 500000);
}

static void
test_kinds_of_unit (void)
{
  for (guint unit = 0; unit < RC_N_UNITS; unit++)
    {
      gboolean length = unit == RC_UNIT_M || unit == RC_UNIT_FT || unit == RC_UNIT_YD;
      gboolean area = unit == RC_UNIT_M2 || unit == RC_UNIT_SQ_FT || unit == RC_UNIT_SQ_YD;

      g_assert_true (rc_unit_is_length ((RcUnit)unit) == length);
      g_assert_true (rc_unit_is_area ((RcUnit)unit) == area);
    }
  g_assert_false (rc_unit_is_length (RC_N_UNITS));
  g_assert_false (rc_unit_is_area (RC_N_UNITS));
}

/* Rounded up from the exact fraction; refused where the number has no room, and where a pack holds nothing. */
static void
test_packs (void)
{
  gint64 packs = NO_WAY;

  g_assert_true (rc_count_packs (100, 10, 3 * RC_MICRO, &packs)); /* 10 units in packs of 3 */
  g_assert_cmpint (packs, ==, 4);
  g_assert_true (rc_count_packs (90, 10, 3 * RC_MICRO, &packs));
  g_assert_cmpint (packs, ==, 3);
  g_assert_true (rc_count_packs (0, 10, 3 * RC_MICRO, &packs));
  g_assert_cmpint (packs, ==, 0);
  g_assert_false (rc_count_packs (100, 0, 3, &packs));
  g_assert_false (rc_count_packs (100, 10, 0, &packs));
  g_assert_false (rc_count_packs (-1, 10, 3, &packs));
  g_assert_false (rc_count_packs (G_MAXINT64, 1, 1, &packs));
  g_assert_cmpint (packs, ==, 0);
}

static void
test_products (void)
{
  gint64 result = NO_WAY;

  g_assert_true (rc_multiply_divide (7, 3, 2, &result)); /* 10.5 */
  g_assert_cmpint (result, ==, 11);
  g_assert_true (rc_multiply_divide_up (7, 3, 20, &result)); /* 1.05 */
  g_assert_cmpint (result, ==, 2);
  g_assert_true (rc_multiply_divide (G_MAXINT64, G_MAXINT64, G_MAXINT64, &result));
  g_assert_cmpint (result, ==, G_MAXINT64);
  g_assert_false (rc_multiply_divide (G_MAXINT64, 2, 1, &result));
  g_assert_false (rc_multiply_divide_up (G_MAXINT64, G_MAXINT64, 1, &result));
  rc_quantity_line_free (NULL);
}

/* What is left of an order as length of roll: nothing is wrapped. */
static void
test_length_of_roll (void)
{
  g_autoptr (RcGoods) carpet = rc_goods_new ("twist", RC_GOODS_CARPET, "Twist");

  carpet->unit = RC_UNIT_SQ_YD;
  carpet->roll_width = 12 * RC_TICKS_PER_FOOT;
  /* 36 sq yd of a 12 ft roll are 27 ft (hasslefreeflooring.com). */
  g_assert_cmpint (rc_conversion_get_length (carpet, 36 * RC_MICRO, RC_UNIT_SQ_YD), ==, 27 * RC_TICKS_PER_FOOT);
  g_assert_cmpint (rc_conversion_get_length (carpet, 1, RC_UNIT_FT), ==, 0);
  g_assert_cmpint (rc_conversion_get_length (carpet, G_MAXINT64, RC_UNIT_FT), ==,
                   G_MAXINT64 / RC_MICRO * RC_TICKS_PER_FOOT
                       + (G_MAXINT64 % RC_MICRO * RC_TICKS_PER_FOOT + 500000) / RC_MICRO);
  g_assert_cmpint (rc_conversion_get_length (carpet, G_MAXINT64, RC_UNIT_YD), ==, -1);
  g_assert_cmpint (rc_conversion_get_length (carpet, RC_MICRO, RC_UNIT_TUB), ==, -1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/quantity-units/plain", test_plain);
  g_test_add_func ("/quantity-units/of-goods", test_goods);
  g_test_add_func ("/quantity-units/kinds", test_kinds_of_unit);
  g_test_add_func ("/quantity-units/packs", test_packs);
  g_test_add_func ("/quantity-units/products", test_products);
  g_test_add_func ("/quantity-units/length-of-roll", test_length_of_roll);
  return g_test_run ();
}
