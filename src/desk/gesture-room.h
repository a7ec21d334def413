/* What is done to a whole room at once, without the pointer: pure functions from an old job to a new one. */
#pragma once

#include "gesture-scene.h"

/* The room mirrored left to right, or turned counter-clockwise, about its middle; its doors that no longer meet others
 * lead nowhere. NULL when the storey has no such room. (transfer full) */
RcJob *rc_gesture_room_mirror (const RcScene *scene, const char *room);
RcJob *rc_gesture_room_turn (const RcScene *scene, const char *room, double degrees);

/* Two openings become one, and the second room is turned and put where they meet. NULL when the storey has no such
 * openings. (transfer full) */
RcJob *rc_gesture_room_join (const RcScene *scene, const char *first, const char *first_opening, const char *room,
                             const char *opening);
