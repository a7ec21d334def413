/* Joining shapes that lie edge to edge, without any rounding.
 */
#pragma once

#include "polygon.h"

/* One region out of rings whose insides do not overlap (outer rings counter-clockwise, holes clockwise): edges that run
 * both ways cancel, the rest is walked round with the inside on the left. Shapes join where they share an edge corner
 * to corner; shapes that merely touch stay apart. NULL when more than one way leads on from a corner, so that a shape
 * would touch itself: then an overlay must decide. (transfer full) */
RcRegion *rc_edge_merge (const GPtrArray *rings);

/* Makes a point that lies on an edge of the ring, but for its rounding, a corner of it, as an opening's end on a
 * sloping wall, so that what is behind shares an edge with the ring; a point within a rounding of a corner moves to
 * that. One that lies on no edge changes nothing. */
void rc_ring_insert_corner (RcRing *ring, RcPoint *point);
