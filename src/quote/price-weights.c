/* What the planner weighs, from the price book: what a metre of carpet and of seam costs the shop. */
#include "price-book.h"

/* A seam has two edges, both sealed (CRI 2015 13.7). */
#define SEAM_EDGES 2

/* What `quantity_micro` of an item costs the shop, 0 without a price or a way to convert to its unit. */
static RcMoney
get_cost (const RcPriceDay *day, const RcGoods *goods, const char *item, gint64 quantity_micro, RcUnit unit)
{
  const RcPrice *price = rc_price_book_find (day->book, item, day->date);
  gint64         priced_micro;
  RcMoney        cost;

  if (price == NULL || !rc_conversion_apply (goods, quantity_micro, unit, price->unit, &priced_micro)
      || !rc_money_multiply (price->cost, priced_micro, &cost, NULL))
    return 0;
  return cost;
}

/* The catalogue's first goods of a kind that have a price on the day. */
static const RcGoods *
find_priced (const RcPriceDay *day, RcGoodsKind kind)
{
  for (guint i = 0; i < day->book->goods->len; i++)
    {
      const RcGoods *goods = g_ptr_array_index (day->book->goods, i);

      if (goods->kind == kind && rc_price_book_find (day->book, goods->id, day->date) != NULL)
        return goods;
    }
  return NULL;
}

static RcMoney
get_cost_of_length (const RcPriceDay *day, RcGoodsKind kind, RcLength length)
{
  const RcGoods *goods = find_priced (day, kind);
  RcPacking      packing;

  if (goods == NULL || !rc_packing_from_length (goods, length, &packing, NULL))
    return 0;
  return get_cost (day, goods, goods->id, packing.net_micro, goods->unit);
}

static RcMoney
get_major_unit (const RcCurrency *currency)
{
  RcMoney major = 1;

  for (int i = 0; i < currency->digits; i++)
    major *= 10;
  return major;
}

void
rc_price_day_get_weights (const RcGoods *carpet, RcPlanWeights *weights, gpointer user_data)
{
  const RcPriceDay *day = user_data;
  const char       *side = rc_work_get_name (RC_WORK_SIDE_SEAM), *cross = rc_work_get_name (RC_WORK_CROSS_SEAM);
  RcMoney           goods_per_m;

  *weights = (RcPlanWeights){ 0 };
  weights->carpet_per_m = get_cost (day, carpet, carpet->id, RC_MICRO, RC_UNIT_M);
  if (weights->carpet_per_m == 0)
    weights->carpet_per_m = get_major_unit (&day->book->currency);

  goods_per_m = get_cost_of_length (day, RC_GOODS_TAPE, RC_TICKS_PER_M)
                + get_cost_of_length (day, RC_GOODS_SEALER, SEAM_EDGES * RC_TICKS_PER_M);
  weights->side_seam_per_m = goods_per_m + get_cost (day, NULL, side, RC_MICRO, RC_UNIT_M);
  weights->cross_seam_per_m = goods_per_m;
  weights->cross_seam_each = get_cost (day, NULL, cross, RC_MICRO, RC_UNIT_EACH);
}

void
rc_price_book_get_weights (const RcGoods *carpet, RcPlanWeights *weights, gpointer user_data)
{
  RcPriceDay day = { user_data, NULL };

  rc_price_day_get_weights (carpet, weights, &day);
}
