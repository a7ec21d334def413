#include "share-bar.h"

#include <math.h>

#include "floor-pieces.h"

#define HATCH_SIZE 4.6 /* of a font whose hatching suits a bar */
#define DARK       0.32

typedef struct
{
  RcShare shares[RC_MOST_SHARES];
  guint   n;
} Bar;

static void
draw_part (RcPen *pen, const RcExtent *part, RcShareFill fill)
{
  static const RcHatch hatches[]
      = { [RC_SHARE_LINES] = RC_HATCH_LINES, [RC_SHARE_CROSSED] = RC_HATCH_CROSSED, [RC_SHARE_OPEN] = RC_HATCH_PLAIN };
  g_autoptr (GPtrArray) rings = NULL;

  if (fill != RC_SHARE_FULL)
    {
      rings = rc_extent_dup_rings (part);
      rc_piece_draw_rings (pen, rings, hatches[fill], FALSE);
      return;
    }
  cairo_set_source_rgb (pen->cr, DARK, DARK, DARK);
  cairo_rectangle (pen->cr, part->x0, part->y0, part->x1 - part->x0, part->y1 - part->y0);
  cairo_fill (pen->cr);
}

static void
draw_bar (cairo_t *cr, double x, double y, double width, double height, gconstpointer data)
{
  const Bar *bar = data;
  RcView     view = { 0, 0, 1 };
  RcPen      pen;
  double     whole = 0, at = x;

  for (guint i = 0; i < bar->n; i++)
    whole += MAX (0, bar->shares[i].amount);
  rc_pen_init (&pen, cr, &view, &RC_PALETTE_PAPER, HATCH_SIZE);
  for (guint i = 0; i < bar->n && whole > 0; i++)
    {
      double   part = width * MAX (0, bar->shares[i].amount) / whole;
      RcExtent extent = { at, y, at + part, y + height };

      if (part > 0)
        draw_part (&pen, &extent, bar->shares[i].fill);
      at += part;
    }
  rc_pen_clear (&pen);
}

void
rc_share_bar_add (RcPage *page, double x, double y, double width, double height, const RcShare *shares, guint n)
{
  Bar *bar;

  g_return_if_fail (n <= RC_MOST_SHARES);

  bar = g_new0 (Bar, 1);
  for (guint i = 0; i < n; i++)
    bar->shares[i] = shares[i];
  bar->n = n;
  rc_page_add_drawing (page, x, y, width, height, draw_bar, bar, g_free);
  rc_page_add_frame (page, x, y, width, height, 0.6, 0.2);
}

typedef struct
{
  guint n_steps, reached;
} Steps;

static void
draw_steps (cairo_t *cr, double x, double y, double width, double height, gconstpointer data)
{
  const Steps *steps = data;
  double       radius = height / 2 - 1, column = width / steps->n_steps, middle = y + height / 2;

  for (guint i = 0; i < steps->n_steps; i++)
    {
      double left = x + i * column + radius + 1;

      cairo_set_source_rgb (cr, 0.2, 0.2, 0.2);
      if (i + 1 < steps->n_steps)
        {
          cairo_set_line_width (cr, i < steps->reached ? 1.6 : 0.5);
          cairo_move_to (cr, left + radius, middle);
          cairo_line_to (cr, left + column - radius, middle);
          cairo_stroke (cr);
        }
      cairo_set_line_width (cr, 0.9);
      cairo_arc (cr, left, middle, radius, 0, 2 * G_PI);
      if (i <= steps->reached)
        cairo_fill_preserve (cr);
      cairo_stroke (cr);
    }
}

void
rc_step_row_add (RcPage *page, double x, double y, double width, double height, guint n_steps, guint reached)
{
  Steps *steps;

  g_return_if_fail (n_steps > 0);

  steps = g_new0 (Steps, 1);
  steps->n_steps = n_steps;
  steps->reached = reached;
  rc_page_add_drawing (page, x, y, width, height, draw_steps, steps, g_free);
}
