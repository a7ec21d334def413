/* The edges of a region as a sweep from left to right sees them: each runs from its left to its right end and knows on
 * which side the region lies. Private to this folder.
 *
 * Where an edge crosses an upright line is a fraction; it is compared by cross products in 128 bits and never rounded.
 * Coordinates up to RC_LENGTH_MAX either way of zero leave room to spare.
 */
#pragma once

#include "polygon.h"

#include "wide.h"

typedef struct
{
  gint64 xl, yl, xr, yr; /* xl < xr: upright edges are no use to the sweep */
  int    depth;          /* +1 when the region lies above the edge, -1 below */
} RcStripEdge;

/* Below and above which edge a stretch of the region lies. */
typedef struct
{
  const RcStripEdge *lower, *upper;
  guint              part; /* free for the caller */
} RcStripSpan;

guint rc_region_count_points (const RcRegion *region);

/* Collects the edges of the region that have a point in x0 <= x <= x1, with x and y changed over when `transposed` (the
 * limits then are limits of y). `edges` has room for rc_region_count_points (). Returns how many. */
guint rc_strip_collect_edges (const RcRegion *region, gboolean transposed, RcLength x0, RcLength x1,
                              RcStripEdge *edges);

/* < 0, 0, > 0 as edge a is below, at, above edge b at the upright line x = twice_x / 2. */
int rc_strip_edge_compare (const RcStripEdge *a, const RcStripEdge *b, gint64 twice_x);

/* Where the edge crosses x, rounded down or up to whole ticks. */
RcLength rc_strip_edge_get_floor (const RcStripEdge *edge, gint64 x);
RcLength rc_strip_edge_get_ceil (const RcStripEdge *edge, gint64 x);

/* From edges in order from below to above to the spans of the region between them; a span that has no height at
 * twice_x / 2 is left out. `spans` has room for half as many as there are edges. Returns how many. */
guint rc_strip_find_spans (RcStripEdge *const *edges, guint n_edges, gint64 twice_x, RcStripSpan *spans);
