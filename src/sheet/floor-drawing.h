/* The floor plan and the rolls as drawings, shared by the sheets and the screen.
 */
#pragma once

#include <cairo.h>

#include "hatch.h"
#include "layouts.h"
#include "plan.h"

typedef enum
{
  RC_FLOOR_LAYER_ROOMS = 1 << 0,      /* walls, openings, cut-outs, stairs, names */
  RC_FLOOR_LAYER_PIECES = 1 << 1,     /* hatch by kind, piece numbers, pile arrows */
  RC_FLOOR_LAYER_SEAMS = 1 << 2,      /* and what is pinned of the plan */
  RC_FLOOR_LAYER_DIMENSIONS = 1 << 3, /* wall lengths */
  RC_FLOOR_LAYER_RULES = 1 << 4,      /* marks where a placement rule is broken */
  RC_FLOOR_LAYER_ALL = 0x1f,
} RcFloorLayers;

/* Colours follow the page (paper) or the screen's style. */
typedef struct
{
  double ink[3], paper[3], accent[3], seam[3], warn[3];
} RcPalette;

extern const RcPalette RC_PALETTE_PAPER;
extern const RcPalette RC_PALETTE_DARK;

/* House coordinates to drawing units: X = x0 + x * scale, Y = y0 - y * scale. */
typedef struct
{
  double x0, y0;
  double scale; /* units per tick */
} RcView;

typedef struct
{
  RcFloorLayers    layers;
  const RcPalette *palette;
  double           font_size;      /* in drawing units */
  guint            selected_piece; /* 0: none */
  const char      *selected_room;  /* nullable */
  const char      *selected_stair; /* nullable; with a piece of it: the steps that it covers */
  int              floor;          /* storey to draw */
  const RcPlan    *plan;
  RcLayouts       *layouts; /* nullable: words kept from one drawing to the next */
  RcExtent         focus;   /* labels of what lies partly in it stand in it; empty: all that is seen */
} RcFloorDrawing;

/* The view that shows the whole floor of `house` inside the rectangle with a margin. An empty house gives 1 m across.
 */
RcView rc_view_fit (const RcHouse *house, int floor, double x, double y, double width, double height, double margin);
RcView rc_view_fit_box (RcBox box, double x, double y, double width, double height, double margin);

void rc_floor_drawing_draw (const RcFloorDrawing *drawing, const RcView *view, cairo_t *cr);

/* The selected room and piece alone, tinted so that what was drawn there before shows through. */
void rc_floor_drawing_draw_selected (const RcFloorDrawing *drawing, const RcView *view, cairo_t *cr);

/* House without a plan (nothing can be planned yet): rooms only. Lengths are written in `units`. */
void rc_floor_drawing_draw_house (const RcHouse *house, int floor, RcUnitSystem units, const RcPalette *palette,
                                  double font_size, const char *selected_room, const RcView *view, cairo_t *cr);

/* The piece at a point of the drawing, 0 for none; the room's id, NULL for none. */
guint       rc_floor_drawing_find_piece (const RcPlan *plan, int floor, const RcView *view, double x, double y);
const char *rc_floor_drawing_find_stair (const RcMeasure *measure, int floor, const RcView *view, double x, double y);
const char *rc_floor_drawing_find_room (const RcHouse *house, int floor, const RcView *view, double x, double y);

/* One roll as a ribbon lying on its side, its start at the left and its left edge at the top, cuts numbered and hatched
 * as on the floor, waste grey, the balance empty with a dotted grain, a ruler under it. `use` is an index in
 * cutting->answer->rolls. `scale`: units per tick, the same along and across. */
void rc_roll_drawing_draw (const RcPlan *plan, const RcCutting *cutting, guint use, const RcPalette *palette,
                           double font_size, const GArray *selected, double x, double y, double scale, cairo_t *cr);
/* Height it needs, ruler and title included. */
double rc_roll_drawing_get_height (const RcCutting *cutting, double font_size, double scale);
guint  rc_roll_drawing_find_piece (const RcPlan *plan, const RcCutting *cutting, guint use, double x, double y,
                                   double scale, double font_size, double at_x, double at_y);
