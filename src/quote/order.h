/* Orders to suppliers: what a job has to buy. */
#pragma once

#include "held.h"

/* One order to one supplier: the goods lines at cost. Goods for resale are ordered net: a supplier's tax, where there
 * is one, comes with the supplier's invoice, so tax is 0 and total = net. */
typedef struct
{
  char      *supplier; /* "" when the goods name none */
  RcCurrency currency;
  GPtrArray *lines;       /* of RcQuoteLine with price = cost price, amount at cost */
  GPtrArray *notes;       /* of char*, translated: the orders before it, lengths to deliver, cuts, dye lot, pile */
  char      *supplements; /* the numbers of earlier orders to this supplier, which stand; NULL: it is the first */
  RcMoney    net, tax, total;
} RcOrder;

void rc_order_free (RcOrder *order);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcOrder, rc_order_free)

/* What is to be bought, by supplier in the order of first appearance; carpet taken from stock and work are not ordered.
 * `plan` (nullable: no notes) is the one the quantities were computed from. Errors as rc_quote_lines_add_cost, and
 * RC_ERROR_RANGE. (transfer full) GPtrArray of RcOrder; empty when nothing is to be bought. */
GPtrArray *rc_order_new_all (const RcJob *job, const RcPlan *plan, const GPtrArray *quantities, const RcPriceBook *book,
                             const char *date, GError **error);

/* The same of what is still to be bought beside what `held` says is ordered: `plan` and `quantities` are of the whole
 * job (rc_held_dup_whole_job). Each order says which ones it supplements. Errors also as rc_held_list_missing. */
GPtrArray *rc_order_new_supplement (const RcJob *job, const RcPlan *plan, const GPtrArray *quantities,
                                    const RcHeld *held, const RcPriceBook *book, const char *date, GError **error);

/* Makes orders in the language of the moment; `data` is the caller's. (transfer full) GPtrArray of RcOrder. */
typedef GPtrArray *(*RcOrdersFunc) (gpointer data, GError **error);

/* The orders that `make` makes, each in the language of its supplier. It makes the same ones in every language, and is
 * called once for each. For the main thread, with no language begun. Errors are those of `make`. (transfer full) */
GPtrArray *rc_orders_new_worded (const RcPriceBook *book, RcOrdersFunc make, gpointer data, GError **error);

/* Which of a carpet's lengths to buy this roll of the cutting is, on every paper alike: "length 2 of 3". NULL: it is
 * the only one, or comes from stock. Translated. (transfer full) */
char *rc_order_dup_length_name (const RcCutting *cutting, guint use);

/* What the plan takes from rolls in stock, from what is cut already and what is on its way, instead of buying it.
 * Translated. (transfer full) GPtrArray of char*. */
GPtrArray *rc_order_list_stock (const RcPlan *plan);

/* Adds the orders of one more job (of RcOrder, as rc_order_new_all gives them) to `orders`, so that each supplier gets
 * one for all jobs. Each line and note then begins with `job`, as the office writes its number. RC_ERROR_RANGE when a
 * sum is too large, RC_ERROR_REFERENCE when currencies differ; `orders` is then of no use. */
gboolean rc_orders_add (GPtrArray *orders, const GPtrArray *more, const char *job, GError **error);
