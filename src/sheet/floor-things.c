#include "floor-things.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "stair-figure.h"

#define SHADE 0.10 /* of a cut-out: ink on paper */

static gboolean
is_here (const RcStair *stair, int floor)
{
  return stair->placed && stair->floor == floor && rc_stair_count_steps (stair) > 0;
}

/* The path of a ring moved by `at`; what it covers on the page. */
static RcExtent
add_ring (RcPen *pen, const RcRing *ring, RcPoint at)
{
  RcExtent extent = { INFINITY, INFINITY, -INFINITY, -INFINITY };

  cairo_new_path (pen->cr);
  for (guint i = 0; i < ring->len; i++)
    {
      const RcPoint *point = rc_ring_get (ring, i);
      RcSpot         spot = rc_pen_get_spot (pen, (RcPoint){ point->x + at.x, point->y + at.y });

      cairo_line_to (pen->cr, spot.x, spot.y);
      extent = (RcExtent){ MIN (extent.x0, spot.x), MIN (extent.y0, spot.y), MAX (extent.x1, spot.x),
                           MAX (extent.y1, spot.y) };
    }
  cairo_close_path (pen->cr);
  return extent;
}

/* The label in the middle, lying or standing, where it fits. */
static void
draw_label (RcPen *pen, const char *text, const RcExtent *extent, double size)
{
  double   width, height;
  RcSpot   middle = { (extent->x0 + extent->x1) / 2, (extent->y0 + extent->y1) / 2 };
  gboolean stands;
  RcExtent place;

  rc_pen_measure_text (pen, text, size, FALSE, &width, &height);
  stands = width > extent->x1 - extent->x0;
  if (stands ? width > extent->y1 - extent->y0 || height > extent->x1 - extent->x0 : height > extent->y1 - extent->y0)
    return;
  place = stands
              ? (RcExtent){ middle.x - height / 2, middle.y - width / 2, middle.x + height / 2, middle.y + width / 2 }
              : (RcExtent){ middle.x - width / 2, middle.y - height / 2, middle.x + width / 2, middle.y + height / 2 };
  if (rc_pen_claim (pen, &place))
    rc_pen_draw_text (pen, text, size, FALSE, middle, stands ? -G_PI_2 : 0, FALSE);
}

static void
draw_cutout (RcPen *pen, const RcCutout *cutout, RcPoint at)
{
  g_autoptr (GArray) ring = rc_cutout_compute_ring (cutout);
  RcExtent extent;

  if (ring->len < 3)
    return;
  extent = add_ring (pen, ring, at);
  if (!rc_pen_sees (pen, &extent))
    return;
  rc_pen_set_colour (pen, pen->palette->ink, SHADE);
  cairo_fill_preserve (pen->cr);
  rc_pen_set_colour (pen, pen->palette->ink, 1);
  cairo_set_line_width (pen->cr, pen->line);
  cairo_stroke (pen->cr);
  if (cutout->kind == RC_CUTOUT_STAIR_OPENING && cutout->diameter == 0)
    for (guint i = 0; i < ring->len / 2; i++)
      {
        RcPoint a = *rc_ring_get (ring, i), b = *rc_ring_get (ring, i + ring->len / 2);
        RcSpot  from = rc_pen_get_spot (pen, (RcPoint){ a.x + at.x, a.y + at.y });
        RcSpot  to = rc_pen_get_spot (pen, (RcPoint){ b.x + at.x, b.y + at.y });

        cairo_move_to (pen->cr, from.x, from.y);
        cairo_line_to (pen->cr, to.x, to.y);
        cairo_set_line_width (pen->cr, pen->line * 0.6);
        cairo_stroke (pen->cr);
      }
  if (cutout->kind != RC_CUTOUT_OTHER || (cutout->name && *cutout->name))
    draw_label (pen, rc_cutout_get_label (cutout), &extent, pen->font_size * 0.75);
}

void
rc_floor_draw_cutouts (RcPen *pen, const RcHouse *house, int floor)
{
  for (guint i = 0; i < house->rooms->len; i++)
    {
      const RcPlacedRoom *placed = g_ptr_array_index (house->rooms, i);

      for (guint k = 0; placed->room->floor == floor && k < placed->room->cutouts->len; k++)
        draw_cutout (pen, g_ptr_array_index (placed->room->cutouts, k), placed->at);
    }
}

/* The way up: along the middle, with an arrow at the top. */
static void
draw_walk (RcPen *pen, const RcStair *stair)
{
  g_autoptr (GArray) walk = rc_stair_compute_walk (stair);
  RcSpot from, to;
  double length, size = pen->font_size * 0.55, wx, wy;

  cairo_new_path (pen->cr);
  for (guint i = 0; i < walk->len; i++)
    {
      RcSpot spot = rc_pen_get_spot (pen, *rc_ring_get (walk, i));
      cairo_line_to (pen->cr, spot.x, spot.y);
    }
  rc_pen_set_colour (pen, pen->palette->ink, 1);
  cairo_set_line_width (pen->cr, pen->line);
  cairo_stroke (pen->cr);
  from = rc_pen_get_spot (pen, *rc_ring_get (walk, walk->len - 2));
  to = rc_pen_get_spot (pen, *rc_ring_get (walk, walk->len - 1));
  length = hypot (to.x - from.x, to.y - from.y);
  if (length <= 0)
    return;
  wx = (to.x - from.x) / length * size;
  wy = (to.y - from.y) / length * size;
  cairo_move_to (pen->cr, to.x, to.y);
  cairo_line_to (pen->cr, to.x - wx - wy * 0.45, to.y - wy + wx * 0.45);
  cairo_line_to (pen->cr, to.x - wx + wy * 0.45, to.y - wy - wx * 0.45);
  cairo_close_path (pen->cr);
  cairo_fill (pen->cr);
}

/* UP at the bottom, on the line walked. */
static void
draw_word (RcPen *pen, const RcStair *stair)
{
  g_autoptr (GArray) walk = rc_stair_compute_walk (stair);
  RcSpot   from = rc_pen_get_spot (pen, *rc_ring_get (walk, 0)), to = rc_pen_get_spot (pen, *rc_ring_get (walk, 1));
  double   length = hypot (to.x - from.x, to.y - from.y), width, height, away;
  double   size = pen->font_size * 0.8;
  RcSpot   middle;
  RcExtent place;

  /* Translators: at the foot of a stair on a plan: the way up. */
  rc_pen_measure_text (pen, _ ("UP"), size, TRUE, &width, &height);
  if (length < 2 * height || (double)stair->width * pen->view.scale < width * 1.2)
    return;
  away = MIN (length / 2, MAX (width, height));
  middle = (RcSpot){ from.x + (to.x - from.x) / length * away, from.y + (to.y - from.y) / length * away };
  place = (RcExtent){ middle.x - width / 2, middle.y - height / 2, middle.x + width / 2, middle.y + height / 2 };
  rc_pen_take (pen, &place);
  rc_pen_set_colour (pen, pen->palette->ink, 1);
  rc_pen_draw_text (pen, _ ("UP"), size, TRUE, middle, 0, TRUE);
}

static void
draw_stair (RcPen *pen, const RcStair *stair)
{
  g_autoptr (GPtrArray) treads = rc_stair_compute_treads (stair);
  RcExtent all = { INFINITY, INFINITY, -INFINITY, -INFINITY };

  for (guint i = 0; i < treads->len; i++)
    {
      const RcRing *ring = g_ptr_array_index (treads, i);
      RcExtent      extent;

      if (ring->len < 3)
        continue;
      extent = add_ring (pen, ring, (RcPoint){ 0, 0 });
      rc_pen_set_colour (pen, pen->palette->paper, 1);
      cairo_fill_preserve (pen->cr);
      rc_pen_set_colour (pen, pen->palette->ink, 0.8);
      cairo_set_line_width (pen->cr, pen->line * 0.8);
      cairo_stroke (pen->cr);
      rc_pen_take (pen, &extent); /* no name, number or size over it */
      all = (RcExtent){ MIN (all.x0, extent.x0), MIN (all.y0, extent.y0), MAX (all.x1, extent.x1),
                        MAX (all.y1, extent.y1) };
    }
  if (!rc_pen_sees (pen, &all))
    return;
  draw_walk (pen, stair);
  draw_word (pen, stair);
}

void
rc_floor_draw_stairs (RcPen *pen, const RcHouse *house, int floor)
{
  for (guint i = 0; i < house->measure->stairs->len; i++)
    {
      const RcStair *stair = g_ptr_array_index (house->measure->stairs, i);

      if (is_here (stair, floor))
        draw_stair (pen, stair);
    }
}

void
rc_floor_tint_stair (RcPen *pen, const RcStair *stair, guint first, guint last)
{
  g_autoptr (GPtrArray) treads = rc_stair_compute_treads (stair);
  const double *accent = pen->palette->accent;

  for (guint i = MAX (first, 1); i <= last && i <= treads->len; i++)
    {
      const RcRing *ring = g_ptr_array_index (treads, i - 1);

      if (ring->len < 3)
        continue;
      add_ring (pen, ring, (RcPoint){ 0, 0 });
      cairo_set_source_rgba (pen->cr, accent[0], accent[1], accent[2], 0.22);
      cairo_fill_preserve (pen->cr);
      rc_pen_set_colour (pen, accent, 1);
      cairo_set_line_width (pen->cr, pen->line * 1.6);
      cairo_stroke (pen->cr);
    }
}

gboolean
rc_floor_compute_stair_box (const RcMeasure *measure, int floor, RcBox *box)
{
  gboolean any = FALSE;

  for (guint i = 0; i < measure->stairs->len; i++)
    {
      const RcStair *stair = g_ptr_array_index (measure->stairs, i);
      g_autoptr (GPtrArray) treads = is_here (stair, floor) ? rc_stair_compute_treads (stair) : NULL;

      for (guint k = 0; treads && k < treads->len; k++)
        {
          const RcRing *ring = g_ptr_array_index (treads, k);
          RcBox         own;

          if (ring->len == 0)
            continue;
          own = rc_ring_compute_box (ring);
          *box = any ? (RcBox){ MIN (box->x0, own.x0), MIN (box->y0, own.y0), MAX (box->x1, own.x1),
                                MAX (box->y1, own.y1) }
                     : own;
          any = TRUE;
        }
    }
  return any;
}

const RcStair *
rc_floor_find_stair (const RcMeasure *measure, int floor, RcPoint point)
{
  for (guint i = measure->stairs->len; i-- > 0;)
    {
      const RcStair *stair = g_ptr_array_index (measure->stairs, i);

      if (is_here (stair, floor) && rc_stair_find_step (stair, point) > 0)
        return stair;
    }
  return NULL;
}
