/* What it costs at least to lay cells with nothing else beside them on the roll: their strip lines somewhere in given
 * stretches, each part whole or joined of pieces, each piece met once by a slice right across the roll
 * (nest/slice-few.h).
 */
#pragma once

#include "area-choice.h"
#include "line-range.h"

/* Positions of a cell's strip lines: so far from the range's first, both ends among them. */
typedef struct
{
  const RcSite      *site;
  const RcLineRange *range;
  RcLength           from, to;
} RcLineStretch;

/* What so long a piece of the roll costs at least, in the units of RcNestChoice; not falling. G_MAXINT64: there is
 * none. */
typedef gint64 (*RcLengthCost) (gconstpointer user_data, RcLength length);

typedef struct
{
  gint64   beside; /* in the units of RcNestChoice: seams, what they break, fills too narrow */
  __int128 area;   /* of the cuts */
} RcLayLook;

/* What a cell asks for at a glance. */
RcLayLook rc_lay_look (const RcLineStretch *stretch);

/* The least cost of `n` cells together, one at least, and of `cuts` (of RcNestChoiceCut) beside them: of carpet, joins
 * and `beside`. */
gint64 rc_lay_bound_compute (const RcLineStretch *cells, guint n, const GArray *cuts, gint64 beside, RcLengthCost cost,
                             gconstpointer user_data);
