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

/* A jurisdiction, and what it takes of a sale: goods and work may be taxed at different rates. */
typedef struct
{
  char  *id;   /* unique in the book: "thorrin" */
  char  *name; /* what the tax is called on paper: "Sales tax, Isle of Thorrin" */
  gint64 goods_ppm, work_ppm;
} RcTaxArea;

/* Whom goods are ordered from. Goods name it by its name. */
typedef struct
{
  char   *name;                    /* unique in the book */
  char   *address, *phone, *email; /* nullable */
  char   *account;                 /* the shop's number there; nullable */
  char   *language;                /* of what is written to them, a code of rc_translation_list; NULL: the program's */
  RcMoney freight_cost;            /* for each order; 0: none */
  RcMoney freight_sale;            /* what the customer is charged for it */
  RcMoney freight_free_from;       /* an order of this much or more is delivered free; 0: never */
  int     lead_days;               /* from order to delivery; 0: not known */
} RcSupplier;

typedef struct
{
  RcCurrency currency;
  gint64     tax_ppm;                  /* where no tax area is named */
  gint64     deposit_ppm;              /* of the total; where no steps of payment are named */
  GPtrArray *goods;                    /* of RcGoods: the catalogue */
  GPtrArray *prices;                   /* of RcPrice */
  char      *shop_name, *shop_address; /* letterhead; nullable */
  GBytes    *logo;                     /* PNG, for the letterhead; nullable */
  char      *terms;                    /* nullable */
  char      *job_numbers;              /* pattern (job-number.h); NULL: the usual one */
  int        valid_days;               /* a quotation holds so long; 0: not said */
  GPtrArray *payments;                 /* of RcPayment */
  GPtrArray *tax_areas;                /* of RcTaxArea */
  GPtrArray *suppliers;                /* of RcSupplier */
  gint64     revision;                 /* that a store has it as; 0: it comes from none */
} RcPriceBook;

RcPriceBook *rc_price_book_new (const RcCurrency *currency);
RcPriceBook *rc_price_book_copy (const RcPriceBook *book);
void         rc_price_book_free (RcPriceBook *book);
RcPrice     *rc_price_new (const char *item, RcUnit unit, RcMoney cost, RcMoney sale);
RcPrice     *rc_price_copy (const RcPrice *price);
void         rc_price_free (RcPrice *price);

RcTaxArea  *rc_tax_area_new (const char *id, const char *name, gint64 goods_ppm, gint64 work_ppm);
RcTaxArea  *rc_tax_area_copy (const RcTaxArea *area);
void        rc_tax_area_free (RcTaxArea *area);
RcSupplier *rc_supplier_new (const char *name);
RcSupplier *rc_supplier_copy (const RcSupplier *supplier);
void        rc_supplier_free (RcSupplier *supplier);
#define RC_FREIGHT_PREFIX "freight/"
/* The item under which a quotation charges the supplier's freight. (transfer full) */
char *rc_supplier_dup_freight_item (const char *name);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcPriceBook, rc_price_book_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcPrice, rc_price_free)

/* Goods and prices of a list take the place of the book's; so do suppliers, tax areas and steps of payment where it has
 * any. Letterhead, rates and terms stay the shop's. */
void rc_price_book_take_list (RcPriceBook *book, const RcPriceBook *list);

/* The catalogue's goods with that id; NULL when there are none. */
const RcGoods *rc_price_book_find_goods (const RcPriceBook *book, const char *id);

/* NULL when there is none of that id (name). */
const RcTaxArea  *rc_price_book_find_tax_area (const RcPriceBook *book, const char *id);
const RcSupplier *rc_price_book_find_supplier (const RcPriceBook *book, const char *name);
/* Of what is written to that supplier, borrowed; NULL: the program's. */
const char *rc_price_book_get_language (const RcPriceBook *book, const char *supplier);

/* The sale price that leaves `margin_ppm` of itself over the cost, rounded up to the minor unit: cost / (1 - margin).
 * FALSE and RC_ERROR_RANGE for a margin that is not below 100 %, or below -100 %. */
gboolean rc_price_sale_from_margin (RcMoney cost, gint64 margin_ppm, RcMoney *sale, GError **error);
/* What is left over the cost as a part of the sale price, rounded; 0 for a sale price of 0. */
gint64 rc_price_get_margin_ppm (RcMoney cost, RcMoney sale);

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
