#include "dimension.h"

#include <math.h>

/* The text's turn, kept between the bottom and the right edge of the page. */
static double
get_reading_turn (double dx, double dy)
{
  double turn = atan2 (dy, dx);

  if (turn > G_PI_2 - 1e-6)
    turn -= G_PI;
  else if (turn <= -G_PI_2 - 1e-6)
    turn += G_PI;

  return turn;
}

static RcExtent
get_turned_extent (RcSpot middle, double width, double height, double turn)
{
  double half_x = (fabs (cos (turn)) * width + fabs (sin (turn)) * height) / 2;
  double half_y = (fabs (sin (turn)) * width + fabs (cos (turn)) * height) / 2;

  return (RcExtent){ middle.x - half_x, middle.y - half_y, middle.x + half_x, middle.y + half_y };
}

static void
draw_tick (RcPen *pen, RcSpot at, double ux, double uy, double size)
{
  /* A stroke at 45 degrees to the line, as on building drawings. */
  double x = (ux - uy) * size, y = (uy + ux) * size;

  cairo_move_to (pen->cr, at.x - x, at.y - y);
  cairo_line_to (pen->cr, at.x + x, at.y + y);
}

gboolean
rc_dimension_draw (RcPen *pen, RcSpot from, RcSpot to, double offset, const char *text, double size)
{
  static const double shares[] = { 0.5, 0.36, 0.64, 0.24, 0.76 };
  double              dx = to.x - from.x, dy = to.y - from.y, length = hypot (dx, dy);
  double              width, height, turn, ux, uy;
  RcSpot              middle = { 0, 0 };
  gboolean            placed = FALSE;

  if (length < size * 0.42 * (double)g_utf8_strlen (text, -1) + size)
    return FALSE;
  ux = dx / length;
  uy = dy / length;
  from.x += uy * offset;
  from.y -= ux * offset;
  to.x += uy * offset;
  to.y -= ux * offset;
  rc_pen_measure_text (pen, text, size, FALSE, &width, &height);
  if (width + 1.6 * size > length)
    return FALSE;
  turn = get_reading_turn (dx, dy);
  for (guint i = 0; i < G_N_ELEMENTS (shares) && !placed; i++)
    {
      RcExtent extent;

      middle = (RcSpot){ from.x + dx * shares[i], from.y + dy * shares[i] };
      extent = get_turned_extent (middle, width + 0.4 * size, height, turn);
      placed = shares[i] * length > width / 2 + size * 0.6 && (1 - shares[i]) * length > width / 2 + size * 0.6
               && rc_pen_claim (pen, &extent);
    }
  if (!placed)
    return FALSE;

  rc_pen_set_colour (pen, pen->palette->ink, 0.55);
  cairo_set_line_width (pen->cr, pen->line * 0.6);
  cairo_move_to (pen->cr, from.x, from.y);
  cairo_line_to (pen->cr, to.x, to.y);
  draw_tick (pen, from, ux, uy, size * 0.22);
  draw_tick (pen, to, ux, uy, size * 0.22);
  cairo_stroke (pen->cr);
  rc_pen_set_colour (pen, pen->palette->ink, 0.85);
  rc_pen_draw_text (pen, text, size, FALSE, middle, turn, TRUE);

  return TRUE;
}
