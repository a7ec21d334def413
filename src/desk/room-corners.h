/* Edits of a room by its corners: what the pointer does to a shape, in place on a copy that the caller owns.
 *
 * Corner i is where wall i starts. A room given by an outline becomes one of walls. Openings stay where they are in the
 * house as far as their wall lets them, cut-outs always. `at` follows the first corner, also where the room is not
 * placed: the caller says what that means. FALSE: nothing has changed.
 */
#pragma once

#include "job.h"

/* New places of all corners, as many as there are. Walls whose two ends move alike, or not at all, keep what was
 * measured. FALSE when a wall would have no length or be shorter than an opening in it. */
gboolean rc_room_edit_set_corners (RcRoom *room, const RcRing *corners);

/* A corner in a straight wall, `along` from its start; both parts run on straight. FALSE at the wall's ends, in a
 * curved wall, or inside an opening. */
gboolean rc_room_edit_insert_corner (RcRoom *room, guint wall, RcLength along);

/* Takes a corner out: one straight wall between the corners beside it, with the openings of both walls where the corner
 * was no corner. FALSE where only three are left, a wall is curved, or a real corner's walls have openings. */
gboolean rc_room_edit_remove_corner (RcRoom *room, guint corner);

/* Moves a wall square to itself, `out` of the room (negative: into it); its neighbours get longer or shorter along
 * their own lines. Where one runs straight on, a wall of `out` is put between, and *wall (the index) follows. */
gboolean rc_room_edit_move_wall (RcRoom *room, guint *wall, RcLength out);

/* How much longer wall `neighbour` (the one before, or the one after) gets when `wall` moves out by 1; 0 where it runs
 * straight on. */
double rc_room_edit_get_stretch (const RcRoom *room, guint wall, gboolean after);

/* The shape, openings and place that a copy had; the copy is of no use afterwards but to be freed. */
void rc_room_edit_restore (RcRoom *room, RcRoom *kept);

/* Everything about the middle of what the room covers: mirrored left to right, or turned counter-clockwise. The middle
 * stays where it is (for odd angles, to the tick). */
void rc_room_edit_mirror (RcRoom *room);
void rc_room_edit_turn (RcRoom *room, double degrees);
