/* Rooms put where they lie in the house, and the floor of an area as one surface.
 *
 * A room with `placed` stands at its `at`. Any other is placed through an opening that meets an opening of a room
 * already placed: the two openings face each other across the wall's thickness (`depth`, the larger of the two sides'
 * values); when nothing is placed, the first room of each floor stands at 0,0. Rooms that no door places stand apart in
 * a row to the right of the rest. Each floor (storey) is placed on its own, in the same coordinates.
 *
 * Two openings are one when either names the other (to_room and to_opening), or when each names the other's room and
 * they are the only two that do. One measured from one side only joins the rooms where the other room's wall lies
 * behind it at the wall's depth.
 */
#pragma once

#include "job.h"

typedef struct
{
  const RcRoom *room;
  RcPoint       at;      /* where its own origin lies */
  RcPolygon    *polygon; /* in house coordinates */
} RcPlacedRoom;

/* An opening in house coordinates. */
typedef struct
{
  const RcRoom    *room;
  const RcOpening *opening;
  RcPoint          from, to;      /* on the room's wall, in the order the wall is walked */
  RcPoint          outward;       /* the step of `depth` square through the wall, away from the room */
  const RcRoom    *other;         /* nullable */
  const RcOpening *other_opening; /* the same opening as measured in the other room; NULL: on this side only */
  gboolean         joins;         /* the other room lies right behind it: the floors are one through it */
  gboolean         blocked;       /* it joins none, but one lies where the carpet would run under the closed door:
                                     none of the wall's depth is carpeted */
  RcPoint other_from, other_to;   /* when it joins: the far sides of `from` and `to`, on the other room's wall */
} RcPlacedOpening;

typedef struct
{
  const RcMeasure *measure;
  GPtrArray       *rooms;       /* of RcPlacedRoom, in the measure's order */
  GPtrArray       *openings;    /* of RcPlacedOpening; one measured from both sides stands once, from its first room */
  GHashTable      *rooms_by_id; /* private: of RcPlacedRoom */
  GHashTable      *links;       /* private: which opening is which on the other side */
} RcHouse;

/* The measure must outlive the house. Errors: as rc_room_compute_polygon; rooms of one floor that overlap (names both);
 * a door that does not face the one it names, or misses it by more than limits->error_max (says by how much); a room or
 * opening named that is not there. */
RcHouse *rc_house_new (const RcMeasure *measure, const RcClosureLimits *limits, GError **error);
/* The rooms alone, without openings and whether or not they overlap or their doors miss each other: to show and mend
 * them. */
RcHouse *rc_house_new_rooms (const RcMeasure *measure, const RcClosureLimits *limits, GError **error);
void     rc_house_free (RcHouse *house);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcHouse, rc_house_free)

const RcPlacedRoom *rc_house_find_room (const RcHouse *house, const char *id);

/* The floor of an area: its rooms and, through each door or archway between two of them, the floor inside the wall.
 * Where one leads out of the area the carpet runs half the depth into it, as it was measured (the seam or moulding lies
 * under the closed door). Rooms not joined by an opening are separate polygons of the region.
 * *area_exact gets the exact doubled area: rooms plus openings, which do not overlap. Corners of the region lie on the
 * rooms' own corners and the openings' ends; only where rooms touch without a wall between them GEOS joins them.
 * Errors: RC_ERROR_REFERENCE naming the area and a room that is not there. (transfer full) */
RcRegion *rc_house_compute_floor (const RcHouse *house, const RcFloorArea *area, RcArea *area_exact, GError **error);
