#include "walk-drawing.h"

#include "viewport.h"

#define WALK_WIDTH 2.5
#define WALL_WIDTH 6
#define DASH       5.0

static void
set_colour (cairo_t *cr, const double colour[3], double alpha)
{
  cairo_set_source_rgba (cr, colour[0], colour[1], colour[2], alpha);
}

static void
line_to (cairo_t *cr, const RcView *view, RcPoint at, RcPoint point)
{
  double x = 0, y = 0;

  rc_viewport_from_house (*view, (RcPoint){ at.x + point.x, at.y + point.y }, &x, &y);
  cairo_line_to (cr, x, y);
}

/* Corners of the walk as typed, the end not drawn to the start: one more than there are walls. */
static RcRing *
compute_corners (const RcRoom *room)
{
  RcRing *corners = rc_ring_new ();
  RcPoint at = { 0, 0 };

  g_array_append_val (corners, at);
  for (guint i = 0; i < room->walls->len; i++)
    {
      const RcWall *wall = &g_array_index (room->walls, RcWall, i);
      RcLeg         leg = { wall->bearing_degrees, wall->length };
      RcPoint       step = rc_leg_get_step (&leg);
      at.x += step.x;
      at.y += step.y;
      g_array_append_val (corners, at);
    }
  return corners;
}

static void
draw_walk (const RcRing *corners, RcPoint at, const RcPalette *palette, const RcView *view, cairo_t *cr)
{
  static const double DASHES[] = { DASH, DASH };

  set_colour (cr, palette->ink, 1);
  cairo_set_line_width (cr, WALK_WIDTH);
  for (guint i = 0; i < corners->len; i++)
    line_to (cr, view, at, *rc_ring_get (corners, i));
  cairo_stroke (cr);
  set_colour (cr, palette->warn, 1);
  cairo_set_dash (cr, DASHES, 2, 0);
  line_to (cr, view, at, *rc_ring_get (corners, corners->len - 1));
  line_to (cr, view, at, *rc_ring_get (corners, 0));
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

void
rc_walk_drawing_draw (const RcRoom *room, RcPoint at, guint wall, gboolean is_open, const RcPalette *palette,
                      const RcView *view, cairo_t *cr)
{
  g_autoptr (GArray) corners = room->walls->len > 0 ? compute_corners (room) : rc_ring_copy (room->outline);
  RcPoint from, to;

  if (corners->len == 0)
    return;
  cairo_save (cr);
  cairo_new_path (cr);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  if (is_open)
    draw_walk (corners, at, palette, view, cr);
  gboolean has_wall = FALSE;
  if (wall >= 1 && is_open && wall < corners->len)
    {
      from = *rc_ring_get (corners, wall - 1);
      to = *rc_ring_get (corners, wall);
      has_wall = TRUE;
    }
  else if (wall >= 1)
    has_wall = rc_room_get_wall_ends (room, wall - 1, &from, &to);
  if (has_wall)
    {
      set_colour (cr, palette->accent, 0.75);
      cairo_set_line_width (cr, WALL_WIDTH);
      line_to (cr, view, at, from);
      line_to (cr, view, at, to);
      cairo_stroke (cr);
    }
  cairo_restore (cr);
}
