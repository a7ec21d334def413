#include "small-picture.h"

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
draw_pieces (const GPtrArray *pieces, const RcPalette *palette, const RcView *view, cairo_t *cr)
{
  for (guint i = 0; i < pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (pieces, i);
      trace_region (piece->outline, view, cr);
      set_ink (cr, palette->ink, piece->kind == RC_PIECE_FILL ? FILL_INK : DROP_INK);
      cairo_fill (cr);
    }
}

static void
draw_seams (const GPtrArray *seams, const RcPalette *palette, const RcView *view, cairo_t *cr)
{
  static const double DASHES[] = { DASH, DASH };

  cairo_set_line_width (cr, SEAM);
  set_ink (cr, palette->seam, 1);
  for (guint i = 0; i < seams->len; i++)
    {
      const RcSeam *seam = g_ptr_array_index (seams, i);
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

static void
draw_outline (const RcRegion *region, const RcPalette *palette, const RcView *view, cairo_t *cr)
{
  trace_region (region, view, cr);
  cairo_set_line_width (cr, 1);
  set_ink (cr, palette->ink, 1);
  cairo_stroke (cr);
}

void
rc_small_picture_draw_option (const RcAreaPlan *area_plan, const RcOption *option, const RcPalette *palette,
                              double width, double height, cairo_t *cr)
{
  RcView view = rc_view_fit_box (rc_region_compute_box (area_plan->floor), 0, 0, width, height, MARGIN);

  draw_pieces (option->pieces, palette, &view, cr);
  draw_outline (area_plan->floor, palette, &view, cr);
  draw_seams (option->seams, palette, &view, cr);
  draw_pile_arrow (option->pile_degrees, palette, width - 11, 11, 8, cr);
}

/* The lowest storey that has rooms. */
static int
find_floor (const RcHouse *house)
{
  int floor = 0;

  for (guint i = 0; i < house->rooms->len; i++)
    {
      const RcPlacedRoom *placed = g_ptr_array_index (house->rooms, i);

      floor = i == 0 ? placed->room->floor : MIN (floor, placed->room->floor);
    }
  return floor;
}

static void
draw_room (const RcRing *outline, double ink, const RcPalette *palette, const RcView *view, cairo_t *cr)
{
  cairo_new_path (cr);
  trace_ring (outline, view, cr);
  set_ink (cr, palette->ink, ink);
  cairo_fill_preserve (cr);
  cairo_set_line_width (cr, 1);
  set_ink (cr, palette->ink, 1);
  cairo_stroke (cr);
}

static void
draw_rooms (const RcHouse *house, int floor, const RcPalette *palette, const RcView *view, cairo_t *cr)
{
  for (guint i = 0; i < house->rooms->len; i++)
    {
      const RcPlacedRoom *placed = g_ptr_array_index (house->rooms, i);

      if (placed->room->floor == floor)
        draw_room (placed->polygon->outer, DROP_INK, palette, view, cr);
    }
}

static gboolean
is_on_floor (const RcHouse *house, const char *room, int floor)
{
  const RcPlacedRoom *placed = room != NULL ? rc_house_find_room (house, room) : NULL;

  return placed != NULL && placed->room->floor == floor;
}

void
rc_small_picture_draw_plan (const RcPlan *plan, const RcPalette *palette, double width, double height, cairo_t *cr)
{
  int    floor = find_floor (plan->house);
  RcView view = rc_view_fit (plan->house, floor, 0, 0, width, height, MARGIN);
  g_autoptr (GPtrArray) pieces = g_ptr_array_new (), seams = g_ptr_array_new ();

  for (guint i = 0; i < plan->pieces->len; i++)
    if (is_on_floor (plan->house, ((const RcPiece *)g_ptr_array_index (plan->pieces, i))->room, floor))
      g_ptr_array_add (pieces, g_ptr_array_index (plan->pieces, i));
  for (guint i = 0; i < plan->seams->len; i++)
    if (is_on_floor (plan->house, ((const RcSeam *)g_ptr_array_index (plan->seams, i))->room, floor))
      g_ptr_array_add (seams, g_ptr_array_index (plan->seams, i));
  draw_pieces (pieces, palette, &view, cr);
  draw_rooms (plan->house, floor, palette, &view, cr);
  draw_seams (seams, palette, &view, cr);
}

static gboolean
is_carpeted (const RcMeasure *measure, const RcRoom *room)
{
  for (guint i = 0; i < measure->areas->len; i++)
    {
      const RcFloorArea *area = g_ptr_array_index (measure->areas, i);

      if (g_ptr_array_find_with_equal_func (area->rooms, room->id, g_str_equal, NULL))
        return TRUE;
    }
  return FALSE;
}

void
rc_floor_small_init (RcFloorSmall *floor, const RcHouse *house)
{
  int storey = house != NULL ? find_floor (house) : 0;

  floor->rings = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  floor->carpeted = g_array_new (FALSE, FALSE, sizeof (gboolean));
  for (guint i = 0; house != NULL && i < house->rooms->len; i++)
    {
      const RcPlacedRoom *placed = g_ptr_array_index (house->rooms, i);
      gboolean            carpeted = is_carpeted (house->measure, placed->room);

      if (placed->room->floor != storey)
        continue;
      g_ptr_array_add (floor->rings, rc_ring_copy (placed->polygon->outer));
      g_array_append_val (floor->carpeted, carpeted);
    }
}

void
rc_floor_small_clear (RcFloorSmall *floor)
{
  g_clear_pointer (&floor->rings, g_ptr_array_unref);
  g_clear_pointer (&floor->carpeted, g_array_unref);
}

void
rc_small_picture_draw_floor (const RcFloorSmall *floor, const RcPalette *palette, double width, double height,
                             cairo_t *cr)
{
  RcBox  box;
  RcView view;

  if (floor->rings->len == 0)
    return;
  box = rc_ring_compute_box (g_ptr_array_index (floor->rings, 0));
  for (guint i = 1; i < floor->rings->len; i++)
    {
      RcBox other = rc_ring_compute_box (g_ptr_array_index (floor->rings, i));

      box = (RcBox){ MIN (box.x0, other.x0), MIN (box.y0, other.y0), MAX (box.x1, other.x1), MAX (box.y1, other.y1) };
    }
  view = rc_view_fit_box (box, 0, 0, width, height, MARGIN);
  for (guint i = 0; i < floor->rings->len; i++)
    draw_room (g_ptr_array_index (floor->rings, i), g_array_index (floor->carpeted, gboolean, i) ? FILL_INK : DROP_INK,
               palette, &view, cr);
}
