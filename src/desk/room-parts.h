/* One room into two, two into one.
 */
#pragma once

#include "job.h"

/* Parts the room along the line from `from` to `to` (in its own coordinates), drawn on to the walls on both sides of
 * its middle. The room keeps its id, its name and the part that its first corner is in; the other part is a new room
 * named `name`, in the same area, placed where it lies (counted from the room's own `at`). The two touch. NULL with an
 * error that says why: the line meets no two walls, runs into an opening or a curved wall, or crosses a cut-out.
 * (transfer none) */
RcRoom *rc_room_parts_split (RcMeasure *measure, const char *room, RcPoint from, RcPoint to, const char *name,
                             GError **error);

/* Puts the second room, whose `at` counts like the first's, into the first, with the floor of the wall between: `gap`,
 * a ring in the house (nullable where they touch). Its openings come along, those between the two go, doors that led to
 * it lead to the first. FALSE with an error where the two do not make one room without a court. */
gboolean rc_room_parts_merge (RcMeasure *measure, const char *first, const char *second, const RcRing *gap,
                              GError **error);
