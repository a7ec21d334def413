/* Many cuts that leave hardly any waste, by any number of straight cuts: bands, lengths of the whole width that waste
 * nothing, are cut off until what is left are so few that it can be tried exhaustively whether they fit.
 *
 * Which bands there are is looked for among some of the cuts, chosen at random. Of the bands those are tried first that
 * leave the cuts with the most sides in common, as these have the most ways to lie together. */
#pragma once

#include "blocks.h"
#include "layout.h"

enum
{
  RC_NEST_MOST_BAND_ITEMS = 400
};

/* Whether items 0 .. n-1 in `items`, n <= RC_NEST_MOST_BAND_ITEMS, have been found to fit into width x length before
 * the clock is over and `work` pairs of blocks have been tried; spots get their places in bin 0, across and along from
 * the rectangle's corner, or are spoilt. */
gboolean rc_nest_bands_fit (const RcNestItem *items, guint n, RcLength width, RcLength length, guint64 seed,
                            guint64 work, const RcNestClock *clock, RcNestSpot *spots);
