/* Where in a wall something would be put: the wall under the pointer, how far along, how wide.
 */
#pragma once

#include "gesture.h"

typedef struct
{
  const RcSceneRoom *room;
  guint              wall;
  RcPoint            from, to; /* the wall's ends */
  RcLength           length, offset, width;
} RcWallSpot;

/* Field 0 is how far it stands from the wall's start, 1 from its end, 2 its width, else `usual`; never wider than the
 * wall, never past its ends. FALSE while no wall is pointed at. */
gboolean rc_gesture_find_spot (const RcGesture *gesture, const RcScene *scene, RcLength usual, RcWallSpot *spot);

/* The wall under the pointer is the one worked on, until something is typed. */
void rc_gesture_aim_at_wall (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event);

/* What a tool does that puts something into a wall: it follows the pointer along the walls, puts at a press and at
 * Return. FALSE: the event is a key, which the tool takes. */
typedef void (*RcGesturePut) (RcGesture *gesture, const RcScene *scene, RcGestureResult *result);
gboolean rc_gesture_put_at_wall (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                                 RcGestureResult *result, RcGesturePut put);

/* A point of the wall; how far along it a point lies. */
RcPoint  rc_wall_spot_get_point (const RcWallSpot *spot, RcLength along);
RcLength rc_wall_spot_get_foot (const RcWallSpot *spot, RcPoint point);
