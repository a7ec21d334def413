/* What areas cost at least that come out of one lot, with nothing else in it: all ways to lay them (area-choice.h), the
 * more promising first, strip lines in ever smaller stretches until the cheapest can be told (branch and bound). Ways
 * are listed as they are come to: doorways parted in some way and for each cell a range of its strip lines, by what the
 * cells cost one by one at given prices for the width of a cut.
 */
#pragma once

#include "area-choice.h"
#include "lay-bound.h"

typedef struct _RcTogether RcTogether;

/* A price for a metre of goods, and how much more than their cost any length of them comes to at it at most. */
typedef struct
{
  gint64 per_m, savings; /* in minor units; in those of RcNestChoice */
} RcTogetherPrice;

/* `choices` (of RcAreaChoice, one at least) and `cuts` (of RcNestChoiceCut) together; choices and what `cost` points to
 * are to outlive it, whose prices are not looked at. `prices` at goods of `per_m` a metre are taken at that of `tried`
 * (of RcTogetherPrice, one at least) by which the cells cost most. NULL where doorways can be parted in too many ways.
 * (transfer full) */
RcTogether *rc_together_new (const GPtrArray *choices, const GArray *cuts, const RcLayCost *cost,
                             const RcNestPrices *prices, gint64 per_m, const GArray *tried);
void        rc_together_free (RcTogether *together); /* NULL is fine */

/* The bound so far, in the units of RcNestChoice; G_MAXINT64 where there is not carpet enough. */
gint64 rc_together_get_bound (const RcTogether *together);
/* Looks closer at so many ways. FALSE: the bound cannot be raised any more. */
gboolean rc_together_look (RcTogether *together, guint n, const RcNestClock *clock);
