#include "stair-drawing.h"

#include <glib/gi18n-lib.h>

#include "pen.h"

#define HIGHEST   96.0 /* of the stair itself */
#define ABOVE     14.0 /* kept for the pile's arrow */
#define BELOW     12.0 /* kept for the steps' numbers */
#define FONT      7.0
#define LARGEST   (2.4 / RC_TICKS_PER_INCH) /* points a tick */
#define LEAST_GAP 11.0                      /* between numbers of steps */

typedef struct
{
  const RcPlan  *plan;
  const RcStair *stair;
} Data;

typedef struct
{
  RcPen         *pen;
  const RcStair *stair;
  double         x, middle, scale; /* the bottom edge; the middle line; points a tick */
} Drawing;

static RcLength
get_length (const RcStair *stair, guint step)
{
  return rc_stair_get_step (stair, step).going + stair->rise + stair->nose_extra;
}

static double
get_scale (const RcStair *stair, double width)
{
  RcLength length = 0, widest = 1;
  for (guint i = 1; i <= rc_stair_count_steps (stair); i++)
    {
      length += get_length (stair, i);
      widest = MAX (widest, MAX (rc_stair_get_step (stair, i).width, stair->width));
    }
  return MIN (LARGEST, MIN (width / (double)MAX (1, length), HIGHEST / (double)widest));
}

double
rc_stair_drawing_get_height (const RcStair *stair, double width)
{
  RcLength widest = stair->width;
  for (guint i = 1; i <= rc_stair_count_steps (stair); i++)
    widest = MAX (widest, rc_stair_get_step (stair, i).width);
  return (double)widest * get_scale (stair, width) + ABOVE + BELOW;
}

static void
draw_line (const Drawing *d, double x0, double y0, double x1, double y1, double width)
{
  cairo_set_line_width (d->pen->cr, width);
  cairo_move_to (d->pen->cr, x0, y0);
  cairo_line_to (d->pen->cr, x1, y1);
  cairo_stroke (d->pen->cr);
}

/* The wedge of a winder in the rectangle that it is cut from; which way it turns is for the template on site. */
static void
draw_wedge (const Drawing *d, double x, double going, double half)
{
  cairo_t     *cr = d->pen->cr;
  const double dashes[] = { 2, 2 };
  cairo_save (cr);
  cairo_set_dash (cr, dashes, 2, 0);
  draw_line (d, x, d->middle + half, x + going * 0.4, d->middle - half, 0.5);
  draw_line (d, x + going, d->middle + half, x + going * 0.6, d->middle - half, 0.5);
  cairo_restore (cr);
}

/* One step: the riser grey, the tread white. */
static void
draw_step (const Drawing *d, guint step, double x)
{
  cairo_t    *cr = d->pen->cr;
  RcStairStep here = rc_stair_get_step (d->stair, step);
  double      half = (double)here.width * d->scale / 2, rise = (double)d->stair->rise * d->scale;
  double      length = (double)get_length (d->stair, step) * d->scale;

  rc_pen_set_colour (d->pen, d->pen->palette->ink, 0.13);
  cairo_rectangle (cr, x, d->middle - half, rise, 2 * half);
  cairo_fill (cr);
  rc_pen_set_colour (d->pen, d->pen->palette->ink, 0.6);
  cairo_set_line_width (cr, 0.5);
  cairo_rectangle (cr, x, d->middle - half, length, 2 * half);
  cairo_stroke (cr);
  draw_line (d, x + rise, d->middle - half, x + rise, d->middle + half, 0.35);
  if (here.turn != NULL && here.turn->kind == RC_TURN_WINDERS)
    draw_wedge (d, x + rise, length - rise, half);
}

/* The walls or strings beside a runner. */
static void
draw_sides (const Drawing *d, double length)
{
  double half = (double)d->stair->width * d->scale / 2;
  if (d->stair->runner_width == 0)
    return;
  rc_pen_set_colour (d->pen, d->pen->palette->ink, 0.6);
  draw_line (d, d->x, d->middle - half, d->x + length, d->middle - half, 0.5);
  draw_line (d, d->x, d->middle + half, d->x + length, d->middle + half, 0.5);
}

/* Where a piece begins and ends above the bottom edge. A band is the riser alone, a cap the rest of its step. */
static void
find_ends (const Drawing *d, const RcStairPiece *piece, double *from, double *to)
{
  *from = d->x;
  for (guint i = 1; i < piece->first; i++)
    *from += (double)get_length (d->stair, i) * d->scale;
  *to = *from;
  for (guint i = piece->first; i <= piece->last; i++)
    *to += (double)get_length (d->stair, i) * d->scale;
  if (piece->kind == RC_STAIR_PIECE_BAND)
    *to = *from + (double)d->stair->rise * d->scale;
  if (piece->kind == RC_STAIR_PIECE_CAP)
    *from += (double)d->stair->rise * d->scale;
}

static void
draw_piece (const Drawing *d, const RcStairPiece *piece, guint number)
{
  g_autofree char *text = g_strdup_printf ("%u", number);
  double           from, to, half = (double)rc_stair_get_step (d->stair, piece->first).width * d->scale / 2;

  find_ends (d, piece, &from, &to);
  rc_pen_set_colour (d->pen, d->pen->palette->ink, 1);
  cairo_set_line_width (d->pen->cr, 1.3);
  cairo_rectangle (d->pen->cr, from, d->middle - half, to - from, 2 * half);
  cairo_stroke (d->pen->cr);
  rc_pen_draw_text (d->pen, text, FONT * 1.3, TRUE, (RcSpot){ (from + to) / 2, d->middle }, 0, TRUE);
}

static void
draw_pieces (const Drawing *d, const RcPlan *plan)
{
  g_autoptr (GArray) parts = rc_stair_compute_pieces (d->stair);
  for (guint i = 0; parts != NULL && i < plan->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (plan->pieces, i);
      if (piece->kind == RC_PIECE_STAIR && g_strcmp0 (piece->room, d->stair->id) == 0
          && piece->stair_piece < parts->len)
        draw_piece (d, &g_array_index (parts, RcStairPiece, piece->stair_piece), piece->number);
    }
}

static void
draw (cairo_t *cr, double x, double y, double width, double height, gconstpointer data)
{
  const Data *given = data;
  RcPen       pen;
  RcView      view = { x, y, get_scale (given->stair, width) };
  Drawing     d = { &pen, given->stair, x, y + ABOVE + (height - ABOVE - BELOW) / 2, view.scale };
  double      at = x, numbered = x - LEAST_GAP;

  cairo_save (cr);
  rc_pen_init (&pen, cr, &view, &RC_PALETTE_PAPER, FONT);
  for (guint i = 1; i <= rc_stair_count_steps (given->stair); i++)
    {
      double           length = (double)get_length (given->stair, i) * d.scale;
      g_autofree char *number = g_strdup_printf ("%u", i);
      draw_step (&d, i, at);
      rc_pen_set_colour (&pen, pen.palette->ink, 0.7);
      if (at + length / 2 - numbered >= LEAST_GAP)
        {
          numbered = at + length / 2;
          rc_pen_draw_text (&pen, number, FONT, FALSE, (RcSpot){ numbered, y + height - BELOW / 2 }, 0, FALSE);
        }
      at += length;
    }
  draw_sides (&d, at - x);
  draw_pieces (&d, given->plan);
  rc_pen_set_colour (&pen, pen.palette->ink, 1);
  rc_pen_draw_arrow (&pen, (RcSpot){ x + 18, y + ABOVE / 2 - 1 }, 180, 26);
  rc_pen_clear (&pen);
  cairo_restore (cr);
}

void
rc_stair_drawing_add (RcPage *page, double x, double y, double width, const RcPlan *plan, const RcStair *stair)
{
  Data *data = g_new (Data, 1);
  *data = (Data){ plan, stair };
  rc_page_add_drawing (page, x, y, width, rc_stair_drawing_get_height (stair, width), draw, data, g_free);
}
