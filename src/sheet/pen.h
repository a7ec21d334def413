/* What a drawing of a floor or a roll needs at hand: where things lie, colours, words already laid out, and which
 * places are taken by a label.
 */
#pragma once

#include <pango/pangocairo.h>

#include "floor-drawing.h"
#include "layouts.h"

typedef struct
{
  cairo_t         *cr;
  RcView           view;
  const RcPalette *palette;
  double           font_size;
  double           line;    /* the ordinary line width */
  RcExtent         visible; /* what the clip lets through */
  RcExtent         focus;   /* where labels are wanted most; all that is visible unless set */
  RcLayouts       *layouts; /* its own, or borrowed from drawings before */
  RcLayouts       *own_layouts;
  GHashTable      *taken; /* cell number -> GArray of RcExtent: places taken, by cells of a coarse grid */
} RcPen;

void rc_pen_init (RcPen *pen, cairo_t *cr, const RcView *view, const RcPalette *palette, double font_size);
void rc_pen_clear (RcPen *pen);

/* Colours: `share` 1 is the colour itself, 0 the paper's; mixed, not transparent, so that print stays simple. */
void rc_pen_set_colour (RcPen *pen, const double colour[3], double share);

RcSpot   rc_pen_get_spot (const RcPen *pen, RcPoint point);
gboolean rc_pen_sees (const RcPen *pen, const RcExtent *extent);
RcExtent rc_pen_get_box_extent (const RcPen *pen, RcBox box);

/* A polygon's rings as spots: GPtrArray of GArray of RcSpot. (transfer full) */
GPtrArray *rc_pen_dup_rings (const RcPen *pen, const RcPolygon *polygon);
RcExtent   rc_rings_get_extent (const GPtrArray *rings);
RcExtent   rc_extent_clip (const RcExtent *extent, const RcExtent *to); /* what they share; x0 > x1: nothing */
GPtrArray *rc_extent_dup_rings (const RcExtent *extent);                /* likewise, of a rectangle of the drawing */
void       rc_pen_add_path (RcPen *pen, const GPtrArray *rings);

/* Text around a middle point; turned by `turn` radians clockwise. Cleared: the paper shows behind it. */
void rc_pen_measure_text (RcPen *pen, const char *text, double size, gboolean bold, double *width, double *height);
void rc_pen_draw_text (RcPen *pen, const char *text, double size, gboolean bold, RcSpot middle, double turn,
                       gboolean cleared);

/* A place for labels. claim: FALSE when something else is there already. */
gboolean rc_pen_is_free (const RcPen *pen, const RcExtent *extent);
void     rc_pen_take (RcPen *pen, const RcExtent *extent);
gboolean rc_pen_claim (RcPen *pen, const RcExtent *extent);
/* Claims the free place of that size inside the rings that lies nearest the middle of their part in focus, else of
 * their visible part. */
gboolean rc_pen_claim_inside (RcPen *pen, const GPtrArray *rings, double width, double height, RcSpot *middle);

/* An arrow through `middle`, `length` long, pointing `degrees` counter-clockwise from the drawing's right. */
void rc_pen_draw_arrow (RcPen *pen, RcSpot middle, double degrees, double length);
