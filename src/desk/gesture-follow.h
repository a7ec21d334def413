/* Moving a wall with what lies behind it.
 */
#pragma once

#include "gesture-scene.h"

/* Walls farther apart than this are not two faces of one: 12 in, 300 mm (common practice, no source). */
RcLength rc_follow_get_thickness_max (RcUnitSystem units);

/* Moves wall *wall of the room `out` of it (negative: into it), in a job whose places are noted. Rooms that share the
 * wall follow, each along the stretch it shares: as a whole where that is all of their wall, else in a jog. *wall is
 * its index afterwards. FALSE: the room's own wall cannot move so, and nothing has changed. */
gboolean rc_follow_move_wall (const RcScene *scene, RcJob *job, const char *room, guint *wall, RcLength out);
