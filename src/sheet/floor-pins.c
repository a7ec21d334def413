#include "floor-pins.h"

#include <glib/gi18n-lib.h>

void
rc_pin_draw_mark (RcPen *pen, RcSpot tip, gboolean is_kept)
{
  double        radius = pen->font_size * 0.34, lift = radius * 2.2;
  const double *colour = is_kept ? pen->palette->seam : pen->palette->warn;

  cairo_save (pen->cr);
  cairo_new_path (pen->cr);
  cairo_move_to (pen->cr, tip.x, tip.y);
  cairo_arc (pen->cr, tip.x, tip.y - lift, radius, G_PI * 5 / 6, G_PI * 13 / 6);
  cairo_close_path (pen->cr);
  /* Paper around and inside it: it stands on lines of its own colour. */
  rc_pen_set_colour (pen, pen->palette->paper, 1);
  cairo_set_line_width (pen->cr, pen->line * 3);
  cairo_stroke_preserve (pen->cr);
  cairo_fill_preserve (pen->cr);
  rc_pen_set_colour (pen, colour, 1);
  if (is_kept)
    cairo_fill_preserve (pen->cr);
  cairo_set_line_width (pen->cr, pen->line * 0.9);
  cairo_stroke (pen->cr);
  cairo_restore (pen->cr);
}

void
rc_pin_draw_kept_floor (RcPen *pen, const GPtrArray *rings)
{
  double dashes[] = { 3 * pen->line, 2.5 * pen->line };

  cairo_save (pen->cr);
  cairo_new_path (pen->cr);
  rc_hatch_add_path (pen->cr, rings, 0, pen->font_size * 0.7, &pen->visible);
  rc_pen_set_colour (pen, pen->palette->ink, 0.38);
  cairo_set_line_width (pen->cr, pen->line * 0.4);
  cairo_stroke (pen->cr);
  rc_pen_add_path (pen, rings);
  rc_pen_set_colour (pen, pen->palette->ink, 0.9);
  cairo_set_line_cap (pen->cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_dash (pen->cr, dashes, G_N_ELEMENTS (dashes), 0);
  cairo_set_line_width (pen->cr, pen->line * 0.9);
  cairo_stroke (pen->cr);
  cairo_restore (pen->cr);
}

/* The pins of the storey, each with the place of its room and whether the plan keeps it. */
typedef void (*PinFunc) (RcPen *pen, const RcPin *pin, RcPoint at, gboolean is_kept);

static gboolean
is_kept (const RcAreaPlan *area_plan, guint index)
{
  return area_plan->pins == NULL || index >= area_plan->pins->len
         || g_array_index (area_plan->pins, RcPinResult, index).unmet == NULL;
}

/* How many there are; func nullable. */
static guint
for_each_pin (RcPen *pen, const RcPlan *plan, int floor, PinFunc func)
{
  guint n = 0;

  for (guint a = 0; a < plan->areas->len; a++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, a);

      for (guint i = 0; i < area_plan->area->pins->len; i++)
        {
          const RcPin        *pin = g_ptr_array_index (area_plan->area->pins, i);
          const RcPlacedRoom *placed = rc_house_find_room (plan->house, pin->room);

          if (placed == NULL || placed->room->floor != floor)
            continue;
          n++;
          if (func)
            func (pen, pin, placed->at, is_kept (area_plan, i));
        }
    }

  return n;
}

gboolean
rc_floor_has_pins (const RcPlan *plan, int floor)
{
  return for_each_pin (NULL, plan, floor, NULL) > 0;
}

static RcSpot
get_spot (const RcPen *pen, const RcPin *pin, guint index, RcPoint at)
{
  const RcPoint *own = rc_ring_get (pin->points, index);

  return rc_pen_get_spot (pen, (RcPoint){ own->x + at.x, own->y + at.y });
}

/* The rings of a floor without seams; NULL for another pin, or out of sight. */
static GPtrArray *
dup_kept_floor (RcPen *pen, const RcPin *pin, RcPoint at)
{
  g_autoptr (RcPolygon) polygon = NULL;
  RcExtent extent;

  if (pin->kind != RC_PIN_NO_SEAMS)
    return NULL;
  polygon = rc_polygon_new ();
  for (guint i = 0; i < pin->points->len; i++)
    {
      const RcPoint *own = rc_ring_get (pin->points, i);
      RcPoint        point = { own->x + at.x, own->y + at.y };

      g_array_append_val (polygon->outer, point);
    }
  extent = rc_pen_get_box_extent (pen, rc_ring_compute_box (polygon->outer));

  return rc_pen_sees (pen, &extent) ? rc_pen_dup_rings (pen, polygon) : NULL;
}

static void
draw_kept_floor (RcPen *pen, const RcPin *pin, RcPoint at, gboolean is_kept)
{
  g_autoptr (GPtrArray) rings = dup_kept_floor (pen, pin, at);

  if (rings)
    rc_pin_draw_kept_floor (pen, rings);
}

void
rc_floor_draw_kept_floors (RcPen *pen, const RcPlan *plan, int floor)
{
  for_each_pin (pen, plan, floor, draw_kept_floor);
}

static void
draw_kept_floor_words (RcPen *pen, const RcPin *pin, RcPoint at, gboolean is_kept)
{
  g_autoptr (GPtrArray) rings = dup_kept_floor (pen, pin, at);
  const char *words = _ ("no seams");
  double      size = pen->font_size * 0.78, width, height;
  RcSpot      middle;

  if (rings == NULL)
    return;
  rc_pen_measure_text (pen, words, size, FALSE, &width, &height);
  rc_pen_set_colour (pen, pen->palette->ink, 0.85);
  if (rc_pen_claim_inside (pen, rings, width + size * 0.4, height, &middle))
    rc_pen_draw_text (pen, words, size, FALSE, middle, 0, TRUE);
}

void
rc_floor_draw_kept_floor_words (RcPen *pen, const RcPlan *plan, int floor)
{
  for_each_pin (pen, plan, floor, draw_kept_floor_words);
}

static void
draw_mark (RcPen *pen, RcSpot tip, gboolean is_kept)
{
  double   half = pen->font_size * 0.45, height = pen->font_size * 1.15;
  RcExtent extent = { tip.x - half, tip.y - height, tip.x + half, tip.y };

  if (!rc_pen_sees (pen, &extent))
    return;
  rc_pin_draw_mark (pen, tip, is_kept);
  rc_pen_take (pen, &extent);
}

/* On a seam its middle, on a split each of its cross seams (the fill, where it has none), on a piece the point in it. A
 * floor without seams shows itself, but one that is not kept has the mark in its first corner. */
static void
draw_pin (RcPen *pen, const RcPin *pin, RcPoint at, gboolean is_kept)
{
  RcSpot first = get_spot (pen, pin, 0, at), second;

  switch (pin->kind)
    {
    case RC_PIN_SEAM:
      second = get_spot (pen, pin, 1, at);
      draw_mark (pen, (RcSpot){ (first.x + second.x) / 2, (first.y + second.y) / 2 }, is_kept);
      break;
    case RC_PIN_SPLIT:
      for (guint i = pin->points->len > 1 ? 1 : 0; i < pin->points->len; i++)
        draw_mark (pen, get_spot (pen, pin, i, at), is_kept);
      break;
    case RC_PIN_NO_SEAMS:
      if (!is_kept)
        draw_mark (pen, first, FALSE);
      break;
    case RC_PIN_ROLL:
      draw_mark (pen, first, is_kept);
      break;
    case RC_N_PIN_KINDS:
    default:
      break;
    }
}

void
rc_floor_draw_pins (RcPen *pen, const RcPlan *plan, int floor)
{
  for_each_pin (pen, plan, floor, draw_pin);
}
