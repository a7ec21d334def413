/* Small drawings that tell things apart at a glance: an option of an area, a whole plan. Each is
 * fitted into width by height at the origin.
 */
#pragma once

#include <cairo.h>

#include "floor-drawing.h"

/* Its pieces, its seams, the way its pile leans. */
void rc_small_picture_draw_option (const RcAreaPlan *area_plan, const RcOption *option, const RcPalette *palette,
                                   double width, double height, cairo_t *cr);
/* All areas of the lowest storey that has rooms. */
void rc_small_picture_draw_plan (const RcPlan *plan, const RcPalette *palette, double width, double height,
                                 cairo_t *cr);
