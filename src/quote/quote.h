/* The quotation: priced lines, tax, total. No floating point between a price and a total.
 *
 * The rule of sums, halves away from zero at every rounding:
 *   a line's gross is price x quantity rounded once; its discount gross x rate rounded once; its amount the difference
 *   the sum is the sum of the amounts as printed, without optional lines
 *   the discount on the whole is sum x rate rounded once, and the sum of money taken off besides
 *   the net is sum - discount
 *   the net is parted by tax rate: the discount is spread over the rates, from the lowest up, so that up to each rate
 * it is discount x (sum up to there) / sum, rounded; each rate's tax is its net x rate rounded once the tax is the sum
 * of the taxes, the total net + tax up to each step of payment total x (parts up to there) is due, rounded; a last step
 * takes what is left So the printed figures add up to the last digit.
 */
#pragma once

#include "compare.h"
#include "order.h"
#include "price-book.h"
#include "quote-line.h"

/* What is taxed at one rate. */
typedef struct
{
  gint64  ppm;
  RcMoney net, tax;
} RcTaxPart;

/* A step of payment and what is due then. */
typedef struct
{
  char   *name; /* nullable */
  gint64  part_ppm;
  int     days; /* after what the name says */
  RcMoney amount;
} RcPaymentStep;

void rc_payment_step_free (RcPaymentStep *step);

struct _RcQuote
{
  RcCurrency currency;
  GPtrArray *lines;   /* of RcQuoteLine, in the order of the quantities; then freight, then what the office adds */
  gint64     tax_ppm; /* the only rate; where there are several, that of goods */
  RcMoney    net, tax, total;
  RcMoney    deposit;      /* the first step of payment */
  RcMoney    cost, margin; /* margin = net - cost; optional lines are in neither */

  RcMoney    sum;          /* of the amounts, before the discount on the whole */
  gint64     discount_ppm; /* of the sum */
  RcMoney    discount;     /* in all, what was taken off besides included */
  GArray    *taxes;        /* of RcTaxPart, lowest rate first; rates that nothing has are left out */
  char      *tax_name;     /* what the tax area calls it; nullable */
  GPtrArray *payments;     /* of RcPaymentStep; empty: the whole when done */
  RcDetail   detail;
  int        valid_days; /* 0: not said */
  char      *terms;      /* nullable */
  char      *option;     /* name of the alternative; NULL: the job as it stands */
  gboolean   variation;  /* the difference between two quotations: its taxes are differences, not products */
};

RcQuote *rc_quote_new_empty (const RcCurrency *currency);

void rc_quote_free (RcQuote *quote);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcQuote, rc_quote_free)

/* The figures of `quote` add up by the rule of sums; for a variation, whose taxes are differences, all but the products
 * of the taxes. FALSE and RC_ERROR_RANGE naming the figure, what it is and what it should be. */
gboolean rc_quote_check (const RcQuote *quote, GError **error);

/* From one quotation to another: the lines that changed, first as they were, taken off, then as they are; so that
 * `before` and the variation together are `after` to the last digit, net, tax and total. Optional lines are left out.
 * NULL and RC_ERROR_REFERENCE when the currencies differ. (transfer full) */
RcQuote *rc_quote_new_variation (const RcQuote *before, const RcQuote *after, GError **error);

/* What the job's plan, which `now` is priced from, takes otherwise than the quotation accepted: each carpet, bought or
 * from stock, and the seams; then, with `totals`, what both come to. A sentence each, in the reader's language; empty
 * where all that is the same, whatever prices and packs have become. (transfer full) GPtrArray of char*. */
GPtrArray *rc_quote_list_departures (const RcQuote *accepted, const RcQuote *now, const RcJob *job, gboolean totals);

/* `quote` as the variation of it leaves it: the lines that it takes off are gone, those that it brings are there, and
 * every sum is theirs. (transfer full) */
RcQuote *rc_quote_new_varied (const RcQuote *quote, const RcQuote *variation);

/* What the total is made of, and what it leaves the shop, a sentence each, in the reader's language. (transfer full)
 * GPtrArray of char*. */
GPtrArray *rc_quote_explain_total (const RcQuote *quote);

/* Prices quantity lines (of RcQuantityLine) on `date` (ISO 8601; NULL: whatever the day) by the job's offer: discounts,
 * optional lines, further lines, steps of payment. Each supplier something is bought from adds its freight. The tax
 * rate of a line is its own, else that of the offer's tax area, else the job's, or the book's where the job leaves it
 * open
 * (-1). The fixed charge is left out where the book has no price for it; every
 * other line must have one. Errors: as rc_quote_lines_add_sale; RC_ERROR_REFERENCE when the job's currency is not the
 * book's; RC_ERROR_RANGE for sums and rates that are too large. (transfer full) */
RcQuote *rc_quote_new (const RcJob *job, const GPtrArray *quantities, const RcPriceBook *book, const char *date,
                       GError **error);

/* What a job that is measured again has been quoted, and what it has already. */
typedef struct
{
  const RcHeld  *held;
  const RcPlan  *plan;   /* made with what is held among the job's rolls (rc_held_dup_whole_job) */
  const RcPlan  *laid;   /* that the goods were ordered and cut by; nullable */
  const RcQuote *before; /* as accepted, or where nothing was, by the plan the goods were ordered by */
} RcCharged;

/* The same for such a job (`charged` NULL: it is none). What is ordered or cut for it stays charged as it was quoted,
 * in the same steps and packs at the same price, however much of it the new plan takes; what the job takes beyond that
 * is added, and nothing is given back unless the shop says so by a discount (charged.h). So measuring the same again
 * changes nothing. (transfer full) */
RcQuote *rc_quote_new_after (const RcCharged *charged, const RcJob *job, const GPtrArray *quantities,
                             const RcPriceBook *book, const char *date, GError **error);
