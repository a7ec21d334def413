/* Small drawings that tell things apart at a glance: an option of an area, a whole plan, a floor. Each is
 * fitted into width by height at the origin.
 */
#pragma once

#include <cairo.h>

#include "floor-drawing.h"

/* Its pieces, its seams, the way its pile leans. */
void rc_small_picture_draw_option (const RcAreaPlan *area_plan, const RcOption *option, const RcPalette *palette,
                                   double width, double height, cairo_t *cr);
/* Rooms alone, as little as can be kept of them. */
typedef struct
{
  GPtrArray *rings;    /* of RcRing: the rooms' outlines */
  GArray    *carpeted; /* of gboolean: each is in an area */
} RcFloorSmall;

/* The lowest storey that has rooms; of a house without any, or NULL, nothing. */
void rc_floor_small_init (RcFloorSmall *floor, const RcHouse *house);
void rc_floor_small_clear (RcFloorSmall *floor);
/* Rooms that get carpet are darker. */
void rc_small_picture_draw_floor (const RcFloorSmall *floor, const RcPalette *palette, double width, double height,
                                  cairo_t *cr);

/* All areas of the lowest storey that has rooms. */
void rc_small_picture_draw_plan (const RcPlan *plan, const RcPalette *palette, double width, double height,
                                 cairo_t *cr);
