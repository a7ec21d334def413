#include "floor-drawing.h"

#include "floor-openings.h"
#include "floor-pieces.h"
#include "floor-pins.h"
#include "floor-rooms.h"
#include "floor-things.h"
#include "stair-figure.h"

const RcPalette RC_PALETTE_PAPER = {
  .ink = { 0.10, 0.11, 0.12 },
  .paper = { 1.0, 1.0, 1.0 },
  .accent = { 0.05, 0.37, 0.45 },
  .seam = { 0.58, 0.06, 0.16 },
  .warn = { 0.72, 0.33, 0.0 },
};

const RcPalette RC_PALETTE_DARK = {
  .ink = { 0.90, 0.91, 0.92 },
  .paper = { 0.13, 0.13, 0.15 },
  .accent = { 0.40, 0.80, 0.88 },
  .seam = { 1.0, 0.52, 0.50 },
  .warn = { 1.0, 0.74, 0.30 },
};

RcView
rc_view_fit_box (RcBox box, double x, double y, double width, double height, double margin)
{
  RcView view;
  double inner_width = MAX (1, width - 2 * margin), inner_height = MAX (1, height - 2 * margin);

  if (box.x1 <= box.x0 || box.y1 <= box.y0)
    box = (RcBox){ 0, 0, RC_TICKS_PER_M, RC_TICKS_PER_M };
  view.scale = MIN (inner_width / (double)(box.x1 - box.x0), inner_height / (double)(box.y1 - box.y0));
  view.x0 = x + width / 2 - ((double)box.x0 + (double)box.x1) / 2 * view.scale;
  view.y0 = y + height / 2 + ((double)box.y0 + (double)box.y1) / 2 * view.scale;

  return view;
}

RcView
rc_view_fit (const RcHouse *house, int floor, double x, double y, double width, double height, double margin)
{
  return rc_view_fit_box (rc_floor_compute_box (house, floor), x, y, width, height, margin);
}

static RcAreaUnit
units_get_area_unit (RcUnitSystem units)
{
  return units == RC_UNITS_METRIC ? RC_AREA_UNIT_M2 : RC_AREA_UNIT_SQ_FT;
}

void
rc_floor_drawing_draw (const RcFloorDrawing *drawing, const RcView *view, cairo_t *cr)
{
  const RcPlan        *plan = drawing->plan;
  const RcHouse       *house = plan->house;
  const RcLengthStyle *style = rc_job_get_length_style (plan->job);
  int                  floor = drawing->floor;
  RcPen                pen;

  g_return_if_fail (drawing->font_size > 0 && view->scale > 0);

  cairo_save (cr);
  cairo_new_path (cr);
  rc_pen_init (&pen, cr, view, drawing->palette, drawing->font_size);
  if (drawing->layouts)
    pen.layouts = drawing->layouts;
  if (drawing->focus.x1 > drawing->focus.x0)
    pen.focus = drawing->focus;
  if (drawing->layers & RC_FLOOR_LAYER_ROOMS)
    {
      rc_floor_draw_walls (&pen, house, floor, drawing->selected_room);
      rc_floor_draw_gaps (&pen, house, floor);
    }
  if (drawing->layers & RC_FLOOR_LAYER_PIECES)
    rc_floor_draw_pieces (&pen, plan, floor, drawing->selected_piece);
  if (drawing->layers & RC_FLOOR_LAYER_SEAMS)
    {
      rc_floor_draw_kept_floors (&pen, plan, floor);
      rc_floor_draw_seams (&pen, plan, floor);
      rc_floor_draw_pins (&pen, plan, floor);
    }
  if (drawing->layers & RC_FLOOR_LAYER_ROOMS)
    {
      rc_floor_draw_cutouts (&pen, house, floor);
      rc_floor_draw_stairs (&pen, house, floor);
    }
  /* From here on labels, the ones that matter most first: each takes its place. */
  if (drawing->layers & RC_FLOOR_LAYER_ROOMS)
    rc_floor_draw_leaves (&pen, house, floor);
  if (drawing->layers & RC_FLOOR_LAYER_RULES)
    rc_floor_draw_marks (&pen, plan, floor);
  if (drawing->layers & RC_FLOOR_LAYER_PIECES)
    rc_floor_draw_numbers (&pen, plan, floor, drawing->selected_piece);
  if (drawing->layers & RC_FLOOR_LAYER_ROOMS)
    rc_floor_draw_opening_marks (&pen, house, floor);
  if (drawing->layers & RC_FLOOR_LAYER_DIMENSIONS)
    rc_floor_draw_dimensions (&pen, house, floor, style);
  if (drawing->layers & RC_FLOOR_LAYER_ROOMS)
    rc_floor_draw_names (&pen, house, floor, drawing->selected_room, units_get_area_unit (plan->job->units));
  if (drawing->layers & RC_FLOOR_LAYER_SEAMS)
    rc_floor_draw_kept_floor_words (&pen, plan, floor);
  if (drawing->layers & RC_FLOOR_LAYER_PIECES)
    rc_floor_draw_sizes (&pen, plan, floor);
  if (drawing->layers & RC_FLOOR_LAYER_DIMENSIONS)
    rc_floor_draw_overall (&pen, house, floor, style);
  rc_pen_clear (&pen);
  cairo_restore (cr);
}

static void
tint_polygon (RcPen *pen, const RcPolygon *polygon, double alpha, double line)
{
  const double *accent = pen->palette->accent;
  g_autoptr (GPtrArray) rings = rc_pen_dup_rings (pen, polygon);

  rc_pen_add_path (pen, rings);
  cairo_set_source_rgba (pen->cr, accent[0], accent[1], accent[2], alpha);
  cairo_fill_preserve (pen->cr);
  rc_pen_set_colour (pen, accent, 1);
  cairo_set_line_width (pen->cr, pen->line * line);
  cairo_stroke (pen->cr);
}

/* The selected stair; of it, the steps of the selected piece. */
static void
tint_stair (RcPen *pen, const RcFloorDrawing *drawing, const RcPiece *piece)
{
  const GPtrArray *stairs = drawing->plan->measure->stairs;

  for (guint i = 0; drawing->selected_stair && i < stairs->len; i++)
    {
      const RcStair *stair = g_ptr_array_index (stairs, i);
      g_autoptr (GArray) parts = NULL;
      guint first = 1, last = RC_STAIR_MAX_STEPS;

      if (!stair->placed || stair->floor != drawing->floor || g_strcmp0 (stair->id, drawing->selected_stair) != 0)
        continue;
      if (piece && piece->kind == RC_PIECE_STAIR)
        parts = rc_stair_compute_pieces (stair);
      if (parts && piece->stair_piece < parts->len)
        {
          first = g_array_index (parts, RcStairPiece, piece->stair_piece).first;
          last = g_array_index (parts, RcStairPiece, piece->stair_piece).last;
        }
      rc_floor_tint_stair (pen, stair, first, last);
    }
}

void
rc_floor_drawing_draw_selected (const RcFloorDrawing *drawing, const RcView *view, cairo_t *cr)
{
  const RcPlan       *plan = drawing->plan;
  const RcPlacedRoom *room = drawing->selected_room ? rc_house_find_room (plan->house, drawing->selected_room) : NULL;
  const RcPiece      *piece = drawing->selected_piece ? rc_plan_find_piece (plan, drawing->selected_piece) : NULL;
  int                 floor;
  RcPen               pen;

  cairo_save (cr);
  cairo_new_path (cr);
  rc_pen_init (&pen, cr, view, drawing->palette, drawing->font_size);
  if (room && room->room->floor == drawing->floor)
    tint_polygon (&pen, room->polygon, 0.10, 1.4);
  tint_stair (&pen, drawing, piece);
  if (piece && piece->outline && rc_house_get_room_floor (plan->house, piece->room, &floor) && floor == drawing->floor)
    for (guint p = 0; p < piece->outline->len; p++)
      tint_polygon (&pen, g_ptr_array_index (piece->outline, p), 0.20, 2.4);
  rc_pen_clear (&pen);
  cairo_restore (cr);
}

void
rc_floor_drawing_draw_house (const RcHouse *house, int floor, RcUnitSystem units, const RcPalette *palette,
                             double font_size, const char *selected_room, const RcView *view, cairo_t *cr)
{
  const RcLengthStyle *style = units == RC_UNITS_METRIC ? &RC_LENGTH_STYLE_METRIC : &RC_LENGTH_STYLE_IMPERIAL;
  RcPen                pen;

  g_return_if_fail (font_size > 0 && view->scale > 0);

  cairo_save (cr);
  cairo_new_path (cr);
  rc_pen_init (&pen, cr, view, palette, font_size);
  rc_floor_draw_walls (&pen, house, floor, selected_room);
  rc_floor_draw_gaps (&pen, house, floor);
  rc_floor_draw_cutouts (&pen, house, floor);
  rc_floor_draw_stairs (&pen, house, floor);
  rc_floor_draw_leaves (&pen, house, floor);
  rc_floor_draw_opening_marks (&pen, house, floor);
  rc_floor_draw_dimensions (&pen, house, floor, style);
  rc_floor_draw_names (&pen, house, floor, selected_room, units_get_area_unit (units));
  rc_pen_clear (&pen);
  cairo_restore (cr);
}

static RcPoint
view_get_point (const RcView *view, double x, double y)
{
  return (RcPoint){ (RcLength)((x - view->x0) / view->scale), (RcLength)((view->y0 - y) / view->scale) };
}

guint
rc_floor_drawing_find_piece (const RcPlan *plan, int floor, const RcView *view, double x, double y)
{
  RcPoint point = view_get_point (view, x, y);

  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (plan->pieces, i);
      int            own_floor;

      if (!piece->outline || !rc_house_get_room_floor (plan->house, piece->room, &own_floor) || own_floor != floor)
        continue;
      for (guint p = 0; p < piece->outline->len; p++)
        if (rc_polygon_locate (g_ptr_array_index (piece->outline, p), point) >= 0)
          return piece->number;
    }

  return 0;
}

const char *
rc_floor_drawing_find_stair (const RcMeasure *measure, int floor, const RcView *view, double x, double y)
{
  const RcStair *stair = rc_floor_find_stair (measure, floor, view_get_point (view, x, y));
  return stair ? stair->id : NULL;
}

const char *
rc_floor_drawing_find_room (const RcHouse *house, int floor, const RcView *view, double x, double y)
{
  RcPoint point = view_get_point (view, x, y);

  for (guint i = 0; i < house->rooms->len; i++)
    {
      const RcPlacedRoom *placed = g_ptr_array_index (house->rooms, i);

      if (placed->room->floor == floor && rc_polygon_locate (placed->polygon, point) >= 0)
        return placed->room->id;
    }

  return NULL;
}
