/* What it costs to lay a cell with its strip lines in a range, when carpet is paid for by the width and length of each
 * cut. What is counted says area-choice.h.
 */
#pragma once

#include "choice-lp.h"
#include "line-range.h"

/* One minor unit of money in the units of RcNestChoice. */
#define RC_RANGE_UNIT ((gint64)RC_NEST_PRICE_PARTS * RC_TICKS_PER_M)

typedef struct
{
  const RcSite       *site;
  const RcNestPrices *prices;
  gboolean            likely, carpet_only;
  GArray             *cuts;     /* nullable */
  GArray             *turns;    /* of RcLength: where in a range something changes its price */
  RcLength            from, to; /* that are looked at of it */
} RcRangePricing;

/* How wide the cut for a part is: the whole roll where little is left of it. */
RcLength rc_range_get_cut_width (const RcSite *site, RcLength width);
/* A seam inside a part at least, and a part no wider than `width`, in minor units. */
RcMoney rc_range_weigh_join (const RcSite *site);
RcMoney rc_range_weigh_narrow (const RcSite *site, RcLength width);
/* With the strip lines so far moved; 0 where it has come to nothing, as a wall's end that is out of square may. */
RcLength rc_range_get_step_width (const RcRangeStep *step, RcLength moved);

/* A price for a length, rounded down: as little as any sum of rounded seams may come to. */
gint64 rc_range_weigh_down (RcLength length, gint64 per_m);

/* With the strip lines `moved` from the range's first position, in the units of RcNestChoice; no more than at any
 * position before `until` up to which all prices stay. The cuts go to pricing->cuts. */
gint64 rc_range_weigh_at (RcRangePricing *pricing, const RcLineRange *range, RcLength moved, RcLength until);

/* The least with the lines moved by `from` to `to`, both among them, and where. */
gint64 rc_range_find_least (RcRangePricing *pricing, const RcLineRange *range, RcLength from, RcLength to,
                            RcLength *moved);
