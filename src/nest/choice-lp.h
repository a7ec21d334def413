/* The linear program over slices where the cuts are still to be chosen: each group may be cut in one of many ways, each
 * way with a cost of its own and cuts of its own; all of them come out of one width of goods bought by length. A slice
 * right across the goods meets cuts side by side (slice-lp.h).
 *
 * Its answer is a price for every width such that no slice of goods is worth more than it costs. With such prices the
 * cheapest way of each group, its cuts paid for by width and length, adds up to a bound: whatever is cut beside what.
 * The ways are the caller's, who finds the cheapest at given prices; they are never listed (column generation, as in
 * column-lp.h).
 */
#pragma once

#include "clock.h"

enum
{
  RC_NEST_PRICE_PARTS = 1024 /* prices are in these parts of a minor unit for each metre of length */
};

/* What a length of cut costs by its width. */
typedef struct
{
  RcLength unit;  /* widths are rounded down to these, which only lowers a bound */
  guint    n;     /* the roll's width in units */
  gint64  *price; /* by units of width, 0 to n; not falling */
  GArray  *turns; /* of RcLength: widths from which on the price is another, rising */
} RcNestPrices;

typedef struct
{
  RcLength w, h;
} RcNestChoiceCut;

/* Costs are in minor units x RC_NEST_PRICE_PARTS x RC_TICKS_PER_M: length in ticks x price. */
typedef struct
{
  guint    n_groups;
  RcLength roll_width;
  gint64   goods_per_m; /* a metre of the whole width, in minor units */

  /* The least that the group costs at these prices, or less; with `likely` the least of some of its ways, quickly.
   * `cuts` gets the cuts of the way that was found, *own what it costs beside them, *way the caller's own number for
   * it.
   */
  gint64 (*find) (gpointer user_data, guint group, const RcNestPrices *prices, gboolean likely, GArray *cuts,
                  gint64 *own, guint *way);
  gpointer user_data;
} RcNestChoice;

/* The part that a way of a group has in the program's answer; over the ways of a group they add up to 1. */
typedef struct
{
  guint  group, way;
  double share;
} RcNestShare;

void   rc_nest_prices_clear (RcNestPrices *prices);
gint64 rc_nest_prices_get (const RcNestPrices *prices, RcLength width);

/* The prices of goods that cost numerator / denominator of these. (transfer full) */
RcNestPrices rc_nest_prices_scale (const RcNestPrices *prices, gint64 numerator, gint64 denominator);

/* The prices that give the highest bound found until the clock is over, in as many rounds as it has steps; valid ones
 * in any case. `shares` (of RcNestShare) gets the ways that have a part in the best answer found. */
void rc_nest_choice_solve (const RcNestChoice *choice, const RcNestClock *clock, RcNestPrices *prices, GArray *shares);
