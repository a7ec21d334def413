/* Joining shapes that lie edge to edge, without any rounding.
 */
#pragma once

#include "polygon.h"

/* One region out of rings whose insides do not overlap (outer rings counter-clockwise, holes clockwise): edges that run
 * both ways cancel, the rest is walked round with the inside on the left. Shapes join where they share an edge corner
 * to corner; shapes that merely touch stay apart. NULL when more than one way leads on from a corner, so that a shape
 * would touch itself: then an overlay must decide. (transfer full) */
RcRegion *rc_edge_merge (const GPtrArray *rings);
