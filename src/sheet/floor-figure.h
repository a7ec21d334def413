/* A floor drawn to a true scale in a frame of a page, with scale bar, north arrow and legend.
 */
#pragma once

#include "page.h"

#include "floor-drawing.h"

/* Kept free around the floor: for walls and the overall dimensions, or for walls alone. */
#define RC_FIGURE_PAD      26.0
#define RC_FIGURE_BARE_PAD 13.0

/* The font that suits a scale: smaller drawings get smaller words. */
double rc_figure_get_font_size (guint ratio);

/* What of a storey a figure shows: its floor, and the leaves of doors that stand open beyond it. */
RcBox rc_figure_compute_box (const RcHouse *house, int floor);

/* The largest scale at which `box` of the house fits a frame of that size. */
guint rc_figure_choose_ratio (RcUnitSystem units, RcBox box, double width, double height, double pad);

/* The height a figure of `box` at that scale takes. */
double rc_figure_get_height (RcBox box, guint ratio, double pad);

/* A drawing of a storey in a frame. */
typedef struct
{
  RcPlan        *plan;
  GDestroyNotify destroy; /* of the plan when the page is done with it; NULL: borrowed, outlives the page */
  int            floor;
  RcBox          box;   /* what of the house stands in the middle of the frame */
  double         scale; /* points for a tick */
  double         font_size;
  RcFloorLayers  layers;
} RcFigure;

/* Adds the figure; everything outside the frame is clipped away. */
void rc_figure_add (RcPage *page, double x, double y, double width, double height, const RcFigure *figure);

#define RC_LEGEND_HEIGHT 52.0

/* North arrow and keys alone, for a screen: text `font_size` high, all else in proportion, in as many rows as the width
 * wants. */
double rc_legend_get_height (double font_size, double width);
void   rc_legend_draw (cairo_t *cr, const RcPalette *palette, double font_size, double x, double y, double width);

/* North arrow, scale bar with the scale in words, and what the marks mean, those of pins only `with_pins`: a band
 * `width` wide. */
void rc_legend_add (RcPage *page, double x, double y, double width, RcUnitSystem units, guint ratio,
                    gboolean with_pins);
