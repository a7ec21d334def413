/* Quotation lines, tax, totals, orders by supplier. No floating point between a price and a total.
 */
#pragma once

#include "price-book.h"

typedef struct
{
  char    *item, *name, *because;
  gint64   quantity_micro;
  RcUnit   unit;
  gint64   packs;
  RcUnit   pack_unit;
  RcMoney  price;  /* per unit */
  RcMoney  amount; /* price x quantity, rounded once */
  RcMoney  cost;   /* what the shop pays for the line, rounded once */
  gboolean is_work;
} RcQuoteLine;

typedef struct
{
  RcCurrency currency;
  GPtrArray *lines; /* of RcQuoteLine */
  gint64     tax_ppm;
  RcMoney    net, tax, total; /* net = sum of amounts; tax = net x rate, rounded once; total = net + tax */
  RcMoney    deposit;
  RcMoney    cost, margin; /* margin = net - cost */
} RcQuote;

void rc_quote_free (RcQuote *quote);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcQuote, rc_quote_free)

/* Prices quantity lines (of RcQuantityLine). A price in another unit of the same kind (ft and m, sq yd and m2) converts
 * the quantity, exactly then rounded once to a millionth. Errors: RC_ERROR_REFERENCE naming the item without a price
 * and the date, or the unit that cannot be converted; RC_ERROR_RANGE. */
RcQuote *rc_quote_new (const RcJob *job, const GPtrArray *quantities, const RcPriceBook *book, const char *date,
                       GError **error);

/* One order to one supplier: the goods lines at cost. */
typedef struct
{
  char      *supplier; /* "" when the goods name none */
  RcCurrency currency;
  GPtrArray *lines; /* of RcQuoteLine with price = cost price, amount at cost */
  GPtrArray *notes; /* of char*: lengths to cut, dye lot in one piece, stock that is used instead */
  RcMoney    net, tax, total;
} RcOrder;

void rc_order_free (RcOrder *order);

/* What is to be bought, by supplier in the order of first appearance; carpet taken from stock is not ordered.
 * (transfer full) GPtrArray of RcOrder. */
GPtrArray *rc_order_new_all (const RcJob *job, const RcPlan *plan, const GPtrArray *quantities, const RcPriceBook *book,
                             const char *date, GError **error);

/* What changes between two plans of one job, for a re-measure. */
typedef enum
{
  RC_CHANGE_ADDED,
  RC_CHANGE_REMOVED,
  RC_CHANGE_CHANGED,
} RcChangeKind;

typedef struct
{
  RcChangeKind kind;
  char        *what;   /* "room", "cut", "item", "total" */
  char        *name;   /* "Living room", "piece 3", "Seam tape" */
  char        *before; /* nullable, printed */
  char        *after;
} RcChange;

/* (transfer full) GPtrArray of RcChange. Either side's plan and quote belong together. */
GPtrArray *rc_compare (const RcPlan *before, const RcQuote *quote_before, const RcPlan *after,
                       const RcQuote *quote_after);
void       rc_change_free (RcChange *change);
