/* A stair seen from above, where it stands in the house. */
#pragma once

#include "polygon.h"
#include "stair.h"

/* Its steps from the bottom up, with those of the turns, as rings in the house: straight steps `going` by `width`; a
 * landing its going along the way up by its width across; winders fanned round the corner that both flights share. The
 * flight above goes on where the turn leads. Steps of no size are empty rings. Rounded to the tick where the
 * stair does not stand square. (transfer full) GPtrArray of RcRing, at most RC_STAIR_MAX_STEPS. */
GPtrArray *rc_stair_compute_treads (const RcStair *stair);

/* The line people walk, from the edge of the bottom step to that of the top: its corners. (transfer full) */
RcRing *rc_stair_compute_walk (const RcStair *stair);

/* The step at a point of the house, from 1 at the bottom; 0 for none. */
guint rc_stair_find_step (const RcStair *stair, RcPoint point);
