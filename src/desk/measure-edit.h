/* Edits of a measure: rooms, openings, stairs and areas, each a change in place on a copy that the caller owns.
 *
 * No screen, no store: every gesture and every typed field ends in one of these. Each leaves the measure consistent
 * in itself: openings follow their walls, areas and doors never name what is gone, no room is in two areas. Whether the
 * walls close is not their business. Functions with an id do nothing and return FALSE (NULL) when there is no such
 * thing.
 */
#pragma once

#include "job.h"

/* A room with four walls walked clockwise from its south-west corner: north along `length`, east along `width`; with
 * both 0 a room without walls yet. The id is made from the name and is free. (transfer none) */
RcRoom *rc_measure_edit_add_room (RcMeasure *measure, const char *name, int floor, RcLength width, RcLength length);
/* The same walls, cut-outs and openings under a new name; its doors lead nowhere. */
RcRoom  *rc_measure_edit_duplicate_room (RcMeasure *measure, const char *id, const char *name);
gboolean rc_measure_edit_remove_room (RcMeasure *measure, const char *id);

/* Puts the room in the area and takes it out of any other; area NULL: in none. */
gboolean rc_measure_edit_put_room_in_area (RcMeasure *measure, const char *room, const char *area);

RcFloorArea *rc_measure_edit_add_area (RcMeasure *measure, const char *name);
gboolean     rc_measure_edit_remove_area (RcMeasure *measure, const char *id);

RcStair *rc_measure_edit_add_stair (RcMeasure *measure, const char *name, RcUnitSystem units);
/* A turn above those there are, in the middle of the highest flight: a square landing to the left until it is measured.
 */
void rc_measure_edit_add_turn (RcStair *stair);
/* The flight above goes on from the one below. */
void     rc_measure_edit_remove_turn (RcStair *stair, guint index);
gboolean rc_measure_edit_remove_stair (RcMeasure *measure, const char *id);

/* The opening leads to that room, and is the same as `to_opening` there; either NULL: to none measured. Both sides say
 * so afterwards, and no third. */
gboolean rc_measure_edit_lead (RcMeasure *measure, const char *room, const char *opening, const char *to_room,
                               const char *to_opening);

/* Takes away the opening of another room that is the same one as this. */
void rc_measure_edit_remove_other_side (RcMeasure *measure, const char *room, const char *opening);
