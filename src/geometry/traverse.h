/* Closing a traverse: walls walked one after another with a bearing and a length each.
 *
 * Sources: compass (Bowditch) rule as in open surveying texts (Mahun; NAVEDTRA 14071): the correction of a leg's
 * latitude (departure) is minus the closure in latitude (departure) times the leg's length over the perimeter.
 */
#pragma once

#include "polygon.h"

typedef struct
{
  double   bearing_degrees; /* clockwise from north (+y): N 0, E 90, S 180, W 270 */
  RcLength length;          /* as measured */
} RcLeg;

/* How the walk fails to close. A leg is the more suspect the less would stay open after the best change of its length
 * alone (a length never falls below nothing); of legs that leave the same, to the tick, the one that needs the smaller
 * change; of those, the first. Two parallel legs explain an error equally well, so they stand together. */
typedef struct
{
  RcLength dx, dy; /* sum of the legs: end minus start (departure, latitude) */
  RcLength error;  /* distance from end to start */
  RcLength perimeter;
  double   ratio;    /* perimeter / error: "1 part in ratio"; 0 when error == 0 */
  GArray  *suspects; /* of guint, every leg in order of suspicion, most likely first; empty when closed */
} RcClosure;

void rc_closure_clear (RcClosure *closure);

/* Steps of one leg; exact for bearings that are multiples of 90 degrees, else rounded to the nearest tick. */
RcPoint rc_leg_get_step (const RcLeg *leg);

void rc_traverse_compute_closure (const RcLeg *legs, guint n_legs, RcClosure *closure);

/* Corners of the walk from `start`, n_legs points (the end is not repeated). With `spread` the misclosure is spread by
 * the compass rule, rounded so that the walk closes exactly; without, the last wall simply runs back to the start.
 * (transfer full) */
RcRing *rc_traverse_compute_ring (const RcLeg *legs, guint n_legs, RcPoint start, gboolean spread);
