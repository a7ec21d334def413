/* The price book: the goods a shop sells, and dated prices for goods and work.
 *
 * Dates are ISO 8601 text (YYYY-MM-DD; a time after it is not looked at), which sorts as it reads.
 */
#pragma once

#include "quantity.h"

/* One price. Several for one item may hold on one day when they begin at different quantities: carpet by the cut from
 * 0, by the roll from a full roll's quantity. */
typedef struct
{
  char   *item;       /* goods id or work name */
  RcUnit  unit;       /* unit that cost and sale are for */
  RcMoney cost;       /* what the shop pays */
  RcMoney sale;       /* what the customer pays */
  char   *valid_from; /* ISO 8601 date, nullable: always */
  char   *valid_to;   /* inclusive, nullable */
  gint64  from_micro; /* holds from this quantity on, in millionths of `unit`; 0: any quantity */
} RcPrice;

typedef struct
{
  RcCurrency currency;
  gint64     tax_ppm;
  gint64     deposit_ppm;              /* of the total */
  GPtrArray *goods;                    /* of RcGoods: the catalogue */
  GPtrArray *prices;                   /* of RcPrice */
  char      *shop_name, *shop_address; /* letterhead; nullable */
  char      *terms;                    /* nullable */
} RcPriceBook;

RcPriceBook *rc_price_book_new (const RcCurrency *currency);
RcPriceBook *rc_price_book_copy (const RcPriceBook *book);
void         rc_price_book_free (RcPriceBook *book);
RcPrice     *rc_price_new (const char *item, RcUnit unit, RcMoney cost, RcMoney sale);
RcPrice     *rc_price_copy (const RcPrice *price);
void         rc_price_free (RcPrice *price);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcPriceBook, rc_price_book_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcPrice, rc_price_free)

/* The catalogue's goods with that id; NULL when there are none. */
const RcGoods *rc_price_book_find_goods (const RcPriceBook *book, const char *id);

/* The price for a small quantity of `item` valid on `date` (NULL: on any day). Of several, the one that holds from the
 * least quantity; of those the one valid since the latest day; of those the first in the book. With `date` NULL the day
 * is not weighed. NULL when there is none. */
const RcPrice *rc_price_book_find (const RcPriceBook *book, const char *item, const char *date);

/* The price for `quantity_micro` of `item`, counted in `unit`: as above, but the one that holds from the greatest
 * quantity not above it. `goods` (nullable) tells how its units convert. NULL when every price begins above that
 * quantity, or none is valid on the date. */
const RcPrice *rc_price_book_find_for (const RcPriceBook *book, const RcGoods *goods, const char *item,
                                       const char *date, gint64 quantity_micro, RcUnit unit);

/* The planner's weights from the price book at what the shop pays: matches RcPlanWeightsFunc, user_data is the
 * RcPriceBook. Carpet: the price by the cut of one metre of roll. Side seam: labour, tape, and sealer on both edges.
 * Cross seam: tape and sealer by length, labour each; so the planner weighs what the quotation charges. Tape and
 * sealer are the catalogue's first that have a price, at what the length takes of a pack. Items without a price weigh
 * 0, except a carpet without one: 1 major unit a metre, so that carpet still counts. */
void rc_price_book_get_weights (const RcGoods *carpet, RcPlanWeights *weights, gpointer user_data);

/* The same on one day: user_data is an RcPriceDay. */
typedef struct
{
  const RcPriceBook *book;
  const char        *date; /* nullable */
} RcPriceDay;

void rc_price_day_get_weights (const RcGoods *carpet, RcPlanWeights *weights, gpointer user_data);
