/* Moving and scaling the view of a drawing: pure functions from an old view to a new one.
 */
#pragma once

#include "floor-drawing.h"

/* Least and greatest scale in drawing units (pixels) per tick: 1 km and 5 mm over some hundred pixels. */
#define RC_VIEWPORT_SCALE_MIN (1e-6)
#define RC_VIEWPORT_SCALE_MAX (0.5)

/* Shifts the drawing by dx, dy drawing units. */
RcView rc_viewport_pan (RcView view, double dx, double dy);

/* Scales by `factor` (> 0), the point of the floor under (at_x, at_y) staying where it is. The scale stays within its
 * limits. */
RcView rc_viewport_zoom (RcView view, double factor, double at_x, double at_y);

/* Drawing units to the house's ticks, rounded to the nearest. */
RcPoint rc_viewport_to_house (RcView view, double x, double y);
void    rc_viewport_from_house (RcView view, RcPoint point, double *x, double *y);

/* The view for a drawing area of another size: what lay in the middle stays in the middle. */
RcView rc_viewport_resize (RcView view, double old_width, double old_height, double width, double height);
