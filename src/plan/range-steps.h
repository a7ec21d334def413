/* How wide the parts of a strip are from height to height, over a range of positions of the strip lines. */
#pragma once

#include "chord.h"
#include "line-range.h"

/* The floor and its corners. */
typedef struct
{
  const RcSite   *site;
  const RcRegion *floor; /* walls that are out of square by a hair made straight, unless others slope */
  RcBox           box;
  GArray         *corners; /* of RcPoint */
  gboolean        sloping; /* some wall runs neither along the pile nor square to it */
} RcFloorLook;

/* How an extent changes that a strip's lines end at its left, its right, both or neither. */
int rc_range_get_slope (gboolean reaches_left, gboolean reaches_right);

/* Adds the part's steps to the range, and sets where they are and its joins; none where it is as wide all along.
 * `chords` (of RcChord): of the strip that begins at `middle_x0` with the lines at the range's middle. */
void rc_range_add_steps (const RcFloorLook *look, RcLineRange *range, RcLength middle_x0, RcLength middle,
                         const GArray *chords, RcRangePart *part);
