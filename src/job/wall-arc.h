/* Curved walls as chords.
 */
#pragma once

#include "polygon.h"

/* How far a chord may lie off the arc. */
#define RC_WALL_ARC_MAX_OFF (RC_TICKS_PER_MM)

/* Appends to `ring` the points strictly between the ends of a curved wall that runs from `from` to `to` and rises by
 * `bow` over that chord, to the right of the walk when `right` is TRUE and `bow` > 0. `bow` is positive where the wall
 * bulges out of the room: then the points lie on tangents and the polygon holds the arc; negative where it bulges in:
 * then the points lie on the arc, and again nothing of the floor is outside the polygon. Points are rounded to the
 * nearest tick and lie at most RC_WALL_ARC_MAX_OFF from the arc. |bow| must be at most half of the chord; a bow or
 * chord of 0 appends nothing. */
void rc_wall_arc_append (RcRing *ring, RcPoint from, RcPoint to, RcLength bow, gboolean right);
