/* Hatching that prints: straight lines across polygons, computed rather than clipped, so that a page stays small and
 * the lines of neighbouring pieces run on.
 */
#pragma once

#include <cairo.h>
#include <glib.h>

typedef struct
{
  double x, y;
} RcSpot; /* a point of the drawing */

typedef struct
{
  double x0, y0, x1, y1;
} RcExtent; /* a rectangle of the drawing */

/* Adds to cr's path the parts inside the rings of lines at `degrees` (counter-clockwise on the page, 45 rises to the
 * right), `spacing` units apart, all measured from the drawing's origin. `rings`: GPtrArray of GArray of RcSpot, holes
 * by the even-odd rule. Lines that miss `visible` (nullable) are left out. Nothing for a spacing that is not above 0,
 * or for more than 20000 lines. */
void rc_hatch_add_path (cairo_t *cr, const GPtrArray *rings, double degrees, double spacing, const RcExtent *visible);
