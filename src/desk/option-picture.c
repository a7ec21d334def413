#include "option-picture.h"

#include <math.h>

#define MARGIN   3
#define SEAM     1.8
#define DASH     3.0
#define FILL_INK 0.30
#define DROP_INK 0.10

static void
set_ink (cairo_t *cr, const double color[3], double alpha)
{
  cairo_set_source_rgba (cr, color[0], color[1], color[2], alpha);
}

static void
trace_ring (const RcRing *ring, const RcView *view, cairo_t *cr)
{
  for (guint i = 0; i < ring->len; i++)
    cairo_line_to (cr, view->x0 + rc_ring_get (ring, i)->x * view->scale,
                   view->y0 - rc_ring_get (ring, i)->y * view->scale);
  cairo_close_path (cr);
}

static void
trace_region (const RcRegion *region, const RcView *view, cairo_t *cr)
{
  cairo_new_path (cr);
  for (guint p = 0; p < region->len; p++)
    {
      const RcPolygon *polygon = g_ptr_array_index (region, p);
      cairo_new_sub_path (cr);
      trace_ring (polygon->outer, view, cr);
      for (guint h = 0; h < polygon->holes->len; h++)
        {
          cairo_new_sub_path (cr);
          trace_ring (g_ptr_array_index (polygon->holes, h), view, cr);
        }
    }
}

static void
draw_pieces (const RcOption *option, const RcPalette *palette, const RcView *view, cairo_t *cr)
{
  for (guint i = 0; i < option->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (option->pieces, i);
      trace_region (piece->outline, view, cr);
      set_ink (cr, palette->ink, piece->kind == RC_PIECE_FILL ? FILL_INK : DROP_INK);
      cairo_fill (cr);
    }
}

static void
draw_seams (const RcOption *option, const RcPalette *palette, const RcView *view, cairo_t *cr)
{
  static const double DASHES[] = { DASH, DASH };

  cairo_set_line_width (cr, SEAM);
  set_ink (cr, palette->seam, 1);
  for (guint i = 0; i < option->seams->len; i++)
    {
      const RcSeam *seam = g_ptr_array_index (option->seams, i);
      cairo_set_dash (cr, DASHES, seam->kind == RC_SEAM_CROSS ? 2 : 0, 0);
      cairo_move_to (cr, view->x0 + seam->from.x * view->scale, view->y0 - seam->from.y * view->scale);
      cairo_line_to (cr, view->x0 + seam->to.x * view->scale, view->y0 - seam->to.y * view->scale);
      cairo_stroke (cr);
    }
  cairo_set_dash (cr, NULL, 0, 0);
}

static void
draw_pile_arrow (double degrees, const RcPalette *palette, double x, double y, double size, cairo_t *cr)
{
  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_rotate (cr, -degrees * G_PI / 180);
  cairo_set_line_width (cr, 1.4);
  set_ink (cr, palette->accent, 1);
  cairo_move_to (cr, -size, 0);
  cairo_line_to (cr, size, 0);
  cairo_move_to (cr, size - 4, -3.5);
  cairo_line_to (cr, size, 0);
  cairo_line_to (cr, size - 4, 3.5);
  cairo_stroke (cr);
  cairo_restore (cr);
}

void
rc_option_picture_draw (const RcAreaPlan *area_plan, const RcOption *option, const RcPalette *palette, double width,
                        double height, cairo_t *cr)
{
  RcBox  box = rc_region_compute_box (area_plan->floor);
  double across = MAX (box.x1 - box.x0, 1), up = MAX (box.y1 - box.y0, 1);
  double scale = MIN ((width - 2 * MARGIN) / across, (height - 2 * MARGIN) / up);
  RcView view = { width / 2 - (box.x0 + box.x1) / 2.0 * scale, height / 2 + (box.y0 + box.y1) / 2.0 * scale, scale };

  draw_pieces (option, palette, &view, cr);
  trace_region (area_plan->floor, &view, cr);
  cairo_set_line_width (cr, 1);
  set_ink (cr, palette->ink, 1);
  cairo_stroke (cr);
  draw_seams (option, palette, &view, cr);
  draw_pile_arrow (option->pile_degrees, palette, width - 11, 11, 8, cr);
}
