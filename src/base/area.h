/* Exact areas.
 *
 * An RcArea is TWICE the area in square ticks, so that every polygon with corners on ticks has a whole number.
 * int64 holds a square of 13 km a side.
 */
#pragma once

#include "length.h"

typedef gint64 RcArea; /* 2 x ticks^2 */

typedef enum
{
  RC_AREA_UNIT_M2,
  RC_AREA_UNIT_SQ_FT,
  RC_AREA_UNIT_SQ_YD,
} RcAreaUnit;

/* Area of a rectangle, both sides >= 0; -1 when it would not fit. */
RcArea rc_area_from_rectangle (RcLength width, RcLength length);

#define RC_AREA_MAX_DECIMALS 6

/* One m², sq ft or sq yd (1 ft = 0.3048 m exactly). */
RcArea rc_area_unit_get_size (RcAreaUnit unit);

/* The area as decimal text in `unit`, rounded once, halves away from zero, to `decimals` digits (0 to
 * RC_AREA_MAX_DECIMALS); the unit's symbol follows (m², sq ft, sq yd) when with_unit. (transfer full) */
char *rc_area_format (RcArea area, RcAreaUnit unit, int decimals, gboolean with_unit);

double rc_area_to_m2 (RcArea area);
