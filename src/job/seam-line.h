/* A seam as job files and stores held it once: by one number, its place in the house, across the pile. Now it is a pin.
 */
#pragma once

#include "job.h"

/* Pins the seam in the first of the area's rooms that the line crosses, along the longest run of it there: `line` is
 * its x where the pile is pinned to lean north or south, else its y. FALSE and the area as it was where the rooms
 * cannot be placed (errors as rc_house_new_rooms), or none is crossed (RC_ERROR_GEOMETRY). */
gboolean rc_seam_line_pin (const RcMeasure *measure, const RcClosureLimits *limits, RcFloorArea *area, RcLength line,
                           GError **error);
