/* One option of an area as a small drawing: its pieces, its seams, the way its pile leans.
 */
#pragma once

#include <cairo.h>

#include "floor-drawing.h"

/* Fits the drawing into width by height at the origin. */
void rc_option_picture_draw (const RcAreaPlan *area_plan, const RcOption *option, const RcPalette *palette,
                             double width, double height, cairo_t *cr);
