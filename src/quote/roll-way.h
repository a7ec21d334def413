/* Goods bought by whole rolls at the price by the roll, and the rest at that by the cut. Used inside this folder only.
 *
 * Where goods have a full roll's length, the price that begins at a full roll's quantity (or less than one of its units
 * below, for lists that round it) is the one by the roll: it holds for whole rolls only, not for all that is beyond
 * (common practice, no source). The rest is paid by the cut, or with one roll more where that is less in all.
 */
#pragma once

#include "price-book.h"

typedef struct
{
  gint64 n_rolls;
  gint64 rolls_micro, cut_micro;     /* in the quantity's unit; together more than asked for where a roll is added */
  const RcPrice *by_roll, *by_cut;   /* by_cut is NULL where nothing is cut */
  RcMoney        rolls_sum, cut_sum; /* each rounded once */
  RcMoney        other_sum;          /* what the other way would come to; 0: there is none */
  gboolean       adds_roll;          /* one roll more than are full, since that is less, or all that is sold */
} RcRollWay;

typedef enum
{
  RC_PRICE_SIDE_COST,
  RC_PRICE_SIDE_SALE,
} RcPriceSide;

RcMoney rc_price_get (const RcPrice *price, RcPriceSide side);

/* How `quantity_micro` of the line's goods, in the line's unit, comes cheapest on that side. FALSE when no whole roll
 * is in it, or the goods have no price by the roll: then one price holds for all of it. */
gboolean rc_roll_way_find (RcRollWay *way, const RcQuantityLine *quantity, gint64 quantity_micro, gboolean may_add_roll,
                           RcPriceSide side, const RcPriceBook *book, const char *date);

/* The way in a sentence with its sums, in the reader's language. (transfer full) */
char *rc_roll_way_explain (const RcRollWay *way, const RcCurrency *currency);
