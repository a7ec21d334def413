/* Edits of one room: its walls and the openings in them, in place on a copy that the caller owns.
 *
 * A room given by an outline becomes one given by walls with the first edit of a wall. Indices count from 0; an index
 * past the end does nothing and returns FALSE.
 */
#pragma once

#include "job.h"

/* Walls for an outline: its edges in order, the room's origin moved to the first corner so that nothing moves in the
 * house. Nothing happens to a room of walls. */
void rc_room_edit_make_walls (RcRoom *room);

gboolean rc_room_edit_set_length (RcRoom *room, guint wall, RcLength length);
gboolean rc_room_edit_set_bearing (RcRoom *room, guint wall, double degrees);
gboolean rc_room_edit_set_bow (RcRoom *room, guint wall, RcLength bow);

/* Diagonals go with their corners when walls are put in (by `more` 1 before wall `at`) and lose those that are gone
 * (`more` -1: corner `at` is). */
void rc_room_edit_shift_diagonals (RcRoom *room, guint at, int more);

/* A new wall before `wall` (the number of walls: after the last). Openings stay in their walls. */
gboolean rc_room_edit_insert_wall (RcRoom *room, guint wall, double degrees, RcLength length);
/* Takes the wall and its openings away. */
gboolean rc_room_edit_remove_wall (RcRoom *room, guint wall);

/* The bearing a wall after the last is likely to have: a right turn from it, or the way back to the start when the walk
 * has three walls or more and can be closed by one wall within half a degree of square; north for the first. */
double rc_room_edit_guess_bearing (const RcRoom *room);

/* The length of one wall with which the walk closes best, all others being right. FALSE when that is no length above
 * 0, or would still leave more than `left_max` open. */
gboolean rc_room_edit_find_closing_length (const RcRoom *room, guint wall, RcLength left_max, RcLength *length);

/* A wall between two rooms: 4 1/2 in, metric 115 mm (common practice, no source). */
RcLength rc_room_edit_get_usual_wall (RcUnitSystem units);

RcLength rc_room_edit_get_usual_width (RcOpeningKind kind, RcUnitSystem units);

/* An opening of a usual size in the middle of the wall, no wider than it: a door 2 ft 8 in, an archway 4 ft, a window
 * 4 ft (800, 1200 and 1200 mm metric), in a wall of the usual thickness (common practice, no source). NULL when there
 * is no such wall. The id is free in the room. (transfer none) */
RcOpening *rc_room_edit_add_opening (RcRoom *room, RcOpeningKind kind, guint wall, RcUnitSystem units);
gboolean   rc_room_edit_remove_opening (RcRoom *room, const char *id);
RcOpening *rc_room_edit_find_opening (RcRoom *room, const char *id);
