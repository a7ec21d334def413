#include "roll-drawing.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "floor-pieces.h"
#include "held.h"
#include "order.h"
#include "scale.h"

static const RcNestUse *
get_use (const RcCutting *cutting, guint use)
{
  return g_ptr_array_index (cutting->answer->rolls, use);
}

const RcRoll *
rc_roll_find_stock (const RcPlan *plan, const RcCutting *cutting, guint use)
{
  const char *id = rc_cutting_get_roll_id (cutting, get_use (cutting, use));

  return id != NULL ? rc_rolls_find (plan->job->rolls, id) : NULL;
}

static const char *
get_kind (const RcRoll *roll)
{
  if (rc_ticket_is_on_order (roll->id))
    return _ ("On its way, %s");
  if (roll->cut)
    return _ ("Ready: %s");
  return roll->remnant ? _ ("Remnant %s") : _ ("Roll %s");
}

char *
rc_roll_dup_name (const RcPlan *plan, const RcCutting *cutting, guint use)
{
  const RcRoll    *roll = rc_roll_find_stock (plan, cutting, use);
  g_autofree char *bought = rc_order_dup_length_name (cutting, use);
  GString         *name;
  g_autofree char *ticket = NULL;

  if (!roll && bought)
    return g_strdup_printf (_ ("To be bought, %s, all of one dye lot"), bought);
  if (!roll)
    return g_strdup (_ ("To be bought, in one length and one dye lot"));
  name = g_string_new (NULL);
  ticket = rc_ticket_format_bare (roll->id);
  g_string_append_printf (name, get_kind (roll), ticket);
  if (roll->lot && *roll->lot)
    g_string_append_printf (name, _ (", dye lot %s"), roll->lot);
  if (roll->place && *roll->place)
    g_string_append_printf (name, ", %s", roll->place);

  return g_string_free (name, FALSE);
}

static RcLength
get_width (const RcCutting *cutting)
{
  return cutting->problem->roll_width;
}

static double
get_ruler_height (double font_size)
{
  return font_size * 1.9;
}

static double
get_title_height (double font_size)
{
  return font_size * 1.8;
}

double
rc_roll_get_stretch_height (const RcCutting *cutting, double font_size, double scale)
{
  return (double)get_width (cutting) * scale + get_ruler_height (font_size);
}

double
rc_roll_drawing_get_height (const RcCutting *cutting, double font_size, double scale)
{
  return get_title_height (font_size) + rc_roll_get_stretch_height (cutting, font_size, scale);
}

/* Where the ribbon's parts fall on the page. */
typedef struct
{
  RcPen               *pen;
  const RcRollStretch *stretch;
  double               x, y, scale;
} Ribbon;

static RcExtent
ribbon_get_extent (const Ribbon *ribbon, RcLength across, RcLength along, RcLength width, RcLength length)
{
  double x0 = ribbon->x + (double)(along - ribbon->stretch->from) * ribbon->scale;
  double y0 = ribbon->y + (double)across * ribbon->scale;

  return (RcExtent){ x0, y0, x0 + (double)length * ribbon->scale, y0 + (double)width * ribbon->scale };
}

static void
add_rectangle (RcPen *pen, const RcExtent *box)
{
  cairo_rectangle (pen->cr, box->x0, box->y0, box->x1 - box->x0, box->y1 - box->y0);
}

/* What is used of the roll is grey until a cut lies on it; the balance stays white with a dotted grain. */
static void
draw_ground (const Ribbon *ribbon)
{
  RcPen           *pen = ribbon->pen;
  const RcNestUse *use = get_use (ribbon->stretch->cutting, ribbon->stretch->use);
  RcLength         width = get_width (ribbon->stretch->cutting);
  RcExtent         used = ribbon_get_extent (ribbon, 0, 0, width, use->used);
  RcExtent         rest = ribbon_get_extent (ribbon, 0, use->used, width, MAX (0, use->length - use->used));
  double           dots[] = { pen->line * 0.8, pen->line * 4 };

  rc_pen_set_colour (pen, pen->palette->ink, 0.17);
  add_rectangle (pen, &used);
  cairo_fill (pen->cr);
  if (rest.x1 <= rest.x0)
    return;
  rc_pen_set_colour (pen, pen->palette->paper, 1);
  add_rectangle (pen, &rest);
  cairo_fill (pen->cr);
  cairo_save (pen->cr);
  rc_pen_set_colour (pen, pen->palette->ink, 0.5);
  cairo_set_line_width (pen->cr, pen->line * 0.6);
  cairo_set_dash (pen->cr, dots, 2, 0);
  for (int line = 0; rest.y0 + pen->font_size * (line + 0.5) < rest.y1; line++)
    {
      double y = rest.y0 + pen->font_size * (line + 0.5);

      cairo_move_to (pen->cr, MAX (rest.x0, pen->visible.x0), y);
      cairo_line_to (pen->cr, MIN (rest.x1, pen->visible.x1), y);
    }
  cairo_stroke (pen->cr);
  cairo_restore (pen->cr);
}

static void
draw_lines_of_words (RcPen *pen, const RcExtent *box, const char *const *lines)
{
  g_autoptr (GPtrArray) rings = rc_extent_dup_rings (box);
  double size = pen->font_size * 0.8;

  for (; *lines; lines++)
    {
      double width, height;
      RcSpot at;

      if ((double)g_utf8_strlen (*lines, -1) * size * 0.3 > MAX (box->x1 - box->x0, box->y1 - box->y0))
        continue;
      rc_pen_measure_text (pen, *lines, size, FALSE, &width, &height);
      rc_pen_set_colour (pen, pen->palette->ink, 0.9);
      if (rc_pen_claim_inside (pen, rings, width + size * 0.6, height, &at))
        rc_pen_draw_text (pen, *lines, size, FALSE, at, 0, TRUE);
      else if (rc_pen_claim_inside (pen, rings, height, width + size * 0.6, &at))
        rc_pen_draw_text (pen, *lines, size, FALSE, at, -G_PI_2, TRUE);
    }
}

static const char *
piece_get_room_name (const RcPlan *plan, const RcPiece *piece)
{
  const RcRoom *room = piece->room ? rc_measure_find_room (plan->measure, piece->room) : NULL;

  if (room)
    return room->name ? room->name : room->id;
  for (guint i = 0; piece->room && i < plan->measure->stairs->len; i++)
    {
      const RcStair *stair = g_ptr_array_index (plan->measure->stairs, i);

      if (g_strcmp0 (stair->id, piece->room) == 0)
        return stair->name ? stair->name : stair->id;
    }

  return piece->room;
}

static void
draw_cut_words (RcPen *pen, const RcPlan *plan, const RcPiece *piece, const RcExtent *box, gboolean selected)
{
  g_autoptr (GPtrArray) rings = rc_extent_dup_rings (box);
  double radius = rc_piece_get_number_radius (pen, piece->number);
  RcSpot at = { (box->x0 + box->x1) / 2, (box->y0 + box->y1) / 2 };

  if (MIN (box->x1 - box->x0, box->y1 - box->y0) < pen->font_size * 0.8)
    return;
  if (rc_pen_claim_inside (pen, rings, 2 * radius + 2 * pen->line, 2 * radius + 2 * pen->line, &at))
    rc_piece_draw_number (pen, at, piece->number, selected);
  else
    {
      char text[16];

      g_snprintf (text, sizeof text, "%u", piece->number);
      rc_pen_set_colour (pen, pen->palette->ink, 1);
      rc_pen_draw_text (pen, text, pen->font_size * 0.8, TRUE, at, 0, TRUE);
      return;
    }
  {
    const RcLengthStyle *style = rc_job_get_length_style (plan->job);
    g_autofree char     *across = rc_length_format (piece->cut_width, style);
    g_autofree char     *along = rc_length_format (piece->cut_length, style);
    g_autofree char     *size = g_strdup_printf ("%s × %s", across, along);
    const char          *lines[] = { size, piece_get_room_name (plan, piece), NULL };

    draw_lines_of_words (pen, box, lines);
  }
}

static const RcPiece *
placement_find_piece (const RcRollStretch *stretch, const RcNestPlacement *placement)
{
  if (placement->cut >= stretch->cutting->piece_numbers->len)
    return NULL;

  return rc_plan_find_piece (stretch->plan, g_array_index (stretch->cutting->piece_numbers, guint, placement->cut));
}

static gboolean
is_selected (const GArray *selected, guint piece)
{
  for (guint i = 0; selected && i < selected->len; i++)
    if (g_array_index (selected, guint, i) == piece)
      return TRUE;
  return FALSE;
}

static void
draw_cuts (const Ribbon *ribbon, gboolean words)
{
  const RcRollStretch *stretch = ribbon->stretch;
  const GArray        *placements = stretch->cutting->answer->placements;

  for (guint i = 0; i < placements->len; i++)
    {
      const RcNestPlacement *placement = &g_array_index (placements, RcNestPlacement, i);
      const RcPiece         *piece = placement_find_piece (stretch, placement);
      RcExtent               box
          = ribbon_get_extent (ribbon, placement->across, placement->along, placement->width, placement->length);
      gboolean selected = piece && is_selected (stretch->selected, piece->number);
      g_autoptr (GPtrArray) rings = NULL;

      if (placement->roll != stretch->use || !piece || !rc_pen_sees (ribbon->pen, &box))
        continue;
      if (words)
        {
          /* Of a piece that goes on in another stretch the words stand in what is seen of it. */
          box = rc_extent_clip (&box, &ribbon->pen->visible);
          draw_cut_words (ribbon->pen, stretch->plan, piece, &box, selected);
          continue;
        }
      rings = rc_extent_dup_rings (&box);
      rc_piece_draw_rings (ribbon->pen, rings, rc_piece_get_hatch (piece), selected);
    }
}

static void
draw_ruler (const Ribbon *ribbon, RcLength from, RcLength to)
{
  RcPen       *pen = ribbon->pen;
  RcUnitSystem units = ribbon->stretch->plan->job->units;
  double       top = ribbon->y + (double)get_width (ribbon->stretch->cutting) * ribbon->scale;
  double       size = pen->font_size * 0.75;
  RcLength     step = rc_scale_choose_step (units, (RcLength)(4 * size / ribbon->scale));

  rc_pen_set_colour (pen, pen->palette->ink, 0.8);
  cairo_set_line_width (pen->cr, pen->line * 0.6);
  for (RcLength at = (from + step - 1) / step * step; at <= to; at += step)
    {
      double           x = ribbon->x + (double)(at - ribbon->stretch->from) * ribbon->scale;
      RcExtent         extent = { x - 3 * size, top, x + 3 * size, top + get_ruler_height (pen->font_size) };
      g_autofree char *text = NULL;

      if (!rc_pen_sees (pen, &extent))
        continue;
      cairo_move_to (pen->cr, x, top);
      cairo_line_to (pen->cr, x, top + pen->font_size * 0.4);
      cairo_stroke (pen->cr);
      if (units == RC_UNITS_METRIC)
        {
          g_autofree char *number = rc_quantity_format (at * RC_MICRO / RC_TICKS_PER_M, 1);

          text = g_strdup_printf (at == 0 ? "%s" : _ ("%s m"), number);
        }
      else
        text = g_strdup_printf (at == 0 ? "%" G_GINT64_FORMAT : "%" G_GINT64_FORMAT "'", at / RC_TICKS_PER_FOOT);
      rc_pen_draw_text (pen, text, size, FALSE, (RcSpot){ x, top + pen->font_size * 0.4 + size * 0.75 }, 0, FALSE);
    }
}

/* The roll's outline; the end torn where it goes on. */
static void
draw_outline (const Ribbon *ribbon, RcLength to)
{
  RcPen   *pen = ribbon->pen;
  RcExtent box = ribbon_get_extent (ribbon, 0, ribbon->stretch->from, get_width (ribbon->stretch->cutting),
                                    to - ribbon->stretch->from);
  double   tooth = pen->font_size * 0.4;

  rc_pen_set_colour (pen, pen->palette->ink, 1);
  cairo_set_line_width (pen->cr, pen->line);
  if (!ribbon->stretch->torn)
    {
      add_rectangle (pen, &box);
      cairo_stroke (pen->cr);
      return;
    }
  cairo_move_to (pen->cr, box.x1, box.y0);
  cairo_line_to (pen->cr, box.x0, box.y0);
  cairo_line_to (pen->cr, box.x0, box.y1);
  cairo_line_to (pen->cr, box.x1, box.y1);
  cairo_stroke (pen->cr);
  cairo_move_to (pen->cr, box.x1, box.y0);
  for (int i = 1; box.y0 + i * tooth < box.y1; i++)
    cairo_line_to (pen->cr, box.x1 + (i % 2 ? -tooth : tooth) * 0.6, box.y0 + i * tooth);
  cairo_line_to (pen->cr, box.x1, box.y1);
  cairo_set_line_width (pen->cr, pen->line * 0.6);
  cairo_stroke (pen->cr);
}

static void
draw_balance_words (const Ribbon *ribbon, RcLength to)
{
  const RcRollStretch *stretch = ribbon->stretch;
  const RcNestUse     *use = get_use (stretch->cutting, stretch->use);
  RcLength             from = MAX (use->used, stretch->from);
  g_autofree char     *length = NULL, *text = NULL;
  RcExtent             box;
  const char          *lines[2] = { NULL, NULL };

  if (use->length <= use->used || from >= to)
    return;
  length = rc_length_format (use->length - use->used, rc_job_get_length_style (stretch->plan->job));
  text = g_strdup_printf (_ ("balance %s"), length);
  lines[0] = text;
  box = ribbon_get_extent (ribbon, 0, from, get_width (stretch->cutting), to - from);
  draw_lines_of_words (ribbon->pen, &box, lines);
}

void
rc_roll_draw_stretch (RcPen *pen, const RcRollStretch *stretch, double x, double y, double scale)
{
  const RcNestUse *use = get_use (stretch->cutting, stretch->use);
  RcLength         to = MIN (stretch->to, MAX (use->length, use->used));
  Ribbon           ribbon = { pen, stretch, x, y, scale };
  RcExtent         old = pen->visible;
  RcExtent box = ribbon_get_extent (&ribbon, 0, stretch->from, get_width (stretch->cutting), to - stretch->from);

  cairo_save (pen->cr);
  cairo_rectangle (pen->cr, box.x0 - pen->line, box.y0 - pen->line, box.x1 - box.x0 + 2 * pen->line,
                   box.y1 - box.y0 + 2 * pen->line);
  cairo_clip (pen->cr);
  pen->visible = (RcExtent){ MAX (old.x0, box.x0), MAX (old.y0, box.y0), MIN (old.x1, box.x1), MIN (old.y1, box.y1) };
  if (pen->visible.x0 < pen->visible.x1 && pen->visible.y0 < pen->visible.y1)
    {
      draw_ground (&ribbon);
      draw_cuts (&ribbon, FALSE);
      draw_cuts (&ribbon, TRUE);
      draw_balance_words (&ribbon, to);
    }
  cairo_restore (pen->cr);
  pen->visible = old;
  draw_outline (&ribbon, to);
  draw_ruler (&ribbon, stretch->from, to);
}

void
rc_roll_drawing_draw (const RcPlan *plan, const RcCutting *cutting, guint use, const RcPalette *palette,
                      double font_size, const GArray *selected, double x, double y, double scale, cairo_t *cr)
{
  const RcNestUse     *taken = get_use (cutting, use);
  const RcLengthStyle *style = rc_job_get_length_style (plan->job);
  RcLength             length = MAX (taken->length, taken->used);
  RcRollStretch        stretch = { plan, cutting, use, selected, 0, length, FALSE };
  g_autofree char     *name = rc_roll_dup_name (plan, cutting, use);
  g_autofree char     *used = rc_length_format (taken->used, style);
  g_autofree char     *title = NULL;
  RcView               view = { 0, 0, scale };
  double               width, height, size = font_size;
  RcPen                pen;

  g_return_if_fail (font_size > 0 && scale > 0);

  title = g_strdup_printf (_ ("%s: %s. Used %s"), cutting->goods->name, name, used);
  cairo_save (cr);
  cairo_new_path (cr);
  rc_pen_init (&pen, cr, &view, palette, font_size);
  rc_pen_measure_text (&pen, title, font_size, FALSE, &width, &height);
  if (width > pen.visible.x1 - x && pen.visible.x1 > x) /* with large text: smaller rather than cut off */
    {
      size *= MAX (0.5, (pen.visible.x1 - x) / width);
      rc_pen_measure_text (&pen, title, size, FALSE, &width, &height);
    }
  rc_pen_set_colour (&pen, palette->ink, 0.9);
  rc_pen_draw_text (&pen, title, size, FALSE, (RcSpot){ x + width / 2, y + get_title_height (font_size) / 2 }, 0,
                    FALSE);
  rc_roll_draw_stretch (&pen, &stretch, x, y + get_title_height (font_size), scale);
  rc_pen_clear (&pen);
  cairo_restore (cr);
}

guint
rc_roll_drawing_find_piece (const RcPlan *plan, const RcCutting *cutting, guint use, double x, double y, double scale,
                            double font_size, double at_x, double at_y)
{
  RcRollStretch stretch = { plan, cutting, use, 0, 0, 0, FALSE };
  RcLength      along = (RcLength)floor ((at_x - x) / scale);
  RcLength      across = (RcLength)floor ((at_y - y - get_title_height (font_size)) / scale);
  const GArray *placements = cutting->answer->placements;

  for (guint i = 0; i < placements->len; i++)
    {
      const RcNestPlacement *placement = &g_array_index (placements, RcNestPlacement, i);
      const RcPiece         *piece = placement_find_piece (&stretch, placement);

      if (placement->roll == use && piece && along >= placement->along && along < placement->along + placement->length
          && across >= placement->across && across < placement->across + placement->width)
        return piece->number;
    }

  return 0;
}

/* A stretch as a thing of a page. */
typedef struct
{
  RcRollStretch stretch;
  double        font_size, scale;
} Figure;

static void
draw_figure (cairo_t *cr, double x, double y, double width G_GNUC_UNUSED, double height G_GNUC_UNUSED,
             gconstpointer data)
{
  const Figure *figure = data;
  RcView        view = { 0, 0, figure->scale };
  RcPen         pen;

  rc_pen_init (&pen, cr, &view, &RC_PALETTE_PAPER, figure->font_size);
  rc_roll_draw_stretch (&pen, &figure->stretch, x, y, figure->scale);
  rc_pen_clear (&pen);
}

void
rc_roll_add_stretch (RcPage *page, const RcRollStretch *stretch, double font_size, double x, double y, double scale)
{
  Figure *figure = g_new0 (Figure, 1);

  *figure = (Figure){ *stretch, font_size, scale };
  rc_page_add_drawing (page, x, y, (double)(stretch->to - stretch->from) * scale,
                       rc_roll_get_stretch_height (stretch->cutting, font_size, scale), draw_figure, figure, g_free);
}
