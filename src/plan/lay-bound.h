/* What it costs at least to lay cells with nothing else beside them on the roll: their strip lines somewhere in given
 * stretches, each part whole or joined of pieces, each piece met once by a slice right across the roll
 * (nest/slice-few.h).
 */
#pragma once

#include "lay-forms.h"

/* What so long a piece of the roll costs at least, in the units of RcNestChoice; not falling. G_MAXINT64: there is
 * none. */
typedef gint64 (*RcLengthCost) (gconstpointer user_data, RcLength length);

/* What carpet costs, and prices by the width of a cut that are below it: `prices` for all cuts add up to no more than
 * `savings` above `func` of any length that they can come out of. Pieces longer than long_from come out of long_most
 * of it, the rolls that are long enough; 0: there is as much of those as there is of all. */
typedef struct
{
  RcLengthCost        func;
  gconstpointer       user_data;
  RcLength            long_from, long_most;
  const RcNestPrices *prices;
  gint64              savings;
} RcLayCost;

/* Seams beside the strips, what they break, fills too narrow: in the units of RcNestChoice. */
gint64 rc_lay_weigh_beside (const RcLineStretch *stretch);

/* The least cost of `n` cells together, one at least, and of `cuts` (of RcNestChoiceCut) beside them: of carpet, joins
 * and `beside`. `enough` where it is no more than that, and `most` where it is that or more. */
gint64 rc_lay_bound_compute (const RcLineStretch *cells, guint n, const GArray *cuts, gint64 beside,
                             const RcLayCost *cost, gint64 enough, gint64 most);
