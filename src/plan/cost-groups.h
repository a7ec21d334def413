/* What is to be laid in one carpet and what it can come out of: groups, each out of one lot, and lots of rolls. */
#pragma once

#include "area-choice.h"

/* Rolls of one dye lot; the first lot has goods to buy as well. */
typedef struct
{
  GPtrArray *rolls;    /* of RcNestRoll, borrowed: those in stock, the cheapest first */
  RcLength   capacity; /* all of their lengths */
  gint64     per_m;    /* what a metre out of it is taken to cost, at least what its cheapest roll does */
} RcCostLot;

/* Groups are the areas, then the stairs. Costs are in the units of RcNestChoice. */
typedef struct
{
  const RcGoods   *carpet;
  gint64           goods_per_m;
  const GPtrArray *choices; /* of RcAreaChoice */
  GPtrArray       *stairs;  /* of GArray of RcNestChoiceCut */
  GArray          *lots;    /* of RcCostLot */
  guint            n_groups;
  RcNestPrices     prices; /* at goods_per_m */
} RcCostGroups;

/* Arguments as of rc_cost_bound_compute; the prices are still to be set. */
void rc_cost_groups_init (RcCostGroups *groups, const RcGoods *carpet, const GPtrArray *rolls, const GPtrArray *choices,
                          const GPtrArray *pieces);
void rc_cost_groups_clear (RcCostGroups *groups);
RcCostLot *rc_cost_groups_get_lot (const RcCostGroups *groups, guint lot);

/* What the group costs at least at these prices; the rest as of rc_area_choice_find. */
gint64 rc_cost_groups_find (const RcCostGroups *groups, guint group, const RcNestPrices *prices, RcChoiceScope scope,
                            GArray *cuts, gint64 *own, RcAreaWay **way);
/* What it costs at least out of goods at that price a metre. */
gint64 rc_cost_groups_find_at (const RcCostGroups *groups, guint group, gint64 per_m);

/* Prices of a metre of goods to buy that bounds are formed at, in per cent of what it costs; the more telling first. */
#define RC_COST_PERCENTS                                                                                               \
  {                                                                                                                    \
    100, 150, 90, 200, 110, 75, 125, 50, 300, 25, 0, 600                                                               \
  }
#define RC_COST_N_PERCENTS 12

/* Raises a bound of what comes out of goods to buy, as they are bought in steps. `at_price`: bounds of the same were
 * they to cost the first n of so many per cent. */
gint64 rc_cost_groups_round (const RcCostGroups *groups, gint64 bound, const gint64 *at_price, guint n);
