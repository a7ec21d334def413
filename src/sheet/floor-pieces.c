#include "floor-pieces.h"

#include <math.h>

gboolean
rc_house_get_room_floor (const RcHouse *house, const char *room_id, int *floor)
{
  const RcPlacedRoom *placed = room_id ? rc_house_find_room (house, room_id) : NULL;

  if (!placed)
    return FALSE;
  *floor = placed->room->floor;

  return TRUE;
}

/* Room ids to storeys, for drawings of many pieces. */
static GHashTable *
dup_floors (const RcHouse *house)
{
  GHashTable *floors = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < house->rooms->len; i++)
    {
      const RcPlacedRoom *placed = g_ptr_array_index (house->rooms, i);

      g_hash_table_insert (floors, placed->room->id, GINT_TO_POINTER (placed->room->floor));
    }

  return floors;
}

static gboolean
is_on_floor (GHashTable *floors, const char *room, int floor)
{
  gpointer value;

  return room && g_hash_table_lookup_extended (floors, room, NULL, &value) && GPOINTER_TO_INT (value) == floor;
}

RcHatch
rc_piece_get_hatch (const RcPiece *piece)
{
  if (piece->kind != RC_PIECE_FILL)
    return RC_HATCH_PLAIN;

  return piece->fill ? RC_HATCH_CROSSED : RC_HATCH_LINES;
}

void
rc_piece_draw_rings (RcPen *pen, const GPtrArray *rings, RcHatch hatch, gboolean selected)
{
  RcExtent extent = rc_rings_get_extent (rings);
  double   spacing = pen->font_size * 0.85;

  rc_pen_add_path (pen, rings);
  rc_pen_set_colour (pen, selected ? pen->palette->accent : pen->palette->paper, selected ? 0.22 : 1);
  cairo_fill (pen->cr);
  if (hatch != RC_HATCH_PLAIN && MIN (extent.x1 - extent.x0, extent.y1 - extent.y0) > 2 * pen->line)
    {
      rc_hatch_add_path (pen->cr, rings, 45, spacing, &pen->visible);
      if (hatch == RC_HATCH_CROSSED)
        rc_hatch_add_path (pen->cr, rings, -45, spacing, &pen->visible);
      rc_pen_set_colour (pen, pen->palette->ink, 0.42);
      cairo_set_line_width (pen->cr, pen->line * 0.5);
      cairo_stroke (pen->cr);
    }
  rc_pen_add_path (pen, rings);
  rc_pen_set_colour (pen, selected ? pen->palette->accent : pen->palette->ink, 1);
  cairo_set_line_width (pen->cr, pen->line * (selected ? 2.2 : 0.6));
  cairo_stroke (pen->cr);
}

/* Pieces of the storey in sight, with the rings of their parts. */
typedef void (*PieceFunc) (RcPen *pen, const RcPlan *plan, const RcPiece *piece, const GPtrArray *rings,
                           guint selected);

static void
for_each_part (RcPen *pen, const RcPlan *plan, int floor, guint selected, gboolean largest_only, PieceFunc func)
{
  g_autoptr (GHashTable) floors = dup_floors (plan->house);

  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const RcPiece   *piece = g_ptr_array_index (plan->pieces, i);
      const RcPolygon *largest = NULL;

      if (!piece->outline || !is_on_floor (floors, piece->room, floor))
        continue;
      for (guint p = 0; p < piece->outline->len; p++)
        {
          const RcPolygon *part = g_ptr_array_index (piece->outline, p);

          if (!largest || rc_polygon_compute_area (part) > rc_polygon_compute_area (largest))
            largest = part;
        }
      for (guint p = 0; p < piece->outline->len; p++)
        {
          const RcPolygon *part = g_ptr_array_index (piece->outline, p);
          RcExtent         extent;
          g_autoptr (GPtrArray) rings = NULL;

          if (part->outer->len == 0 || (largest_only && part != largest))
            continue;
          extent = rc_pen_get_box_extent (pen, rc_ring_compute_box (part->outer));
          if (!rc_pen_sees (pen, &extent))
            continue;
          rings = rc_pen_dup_rings (pen, part);
          func (pen, plan, piece, rings, selected);
        }
    }
}

static void
draw_part (RcPen *pen, const RcPlan *plan, const RcPiece *piece, const GPtrArray *rings, guint selected)
{
  rc_piece_draw_rings (pen, rings, rc_piece_get_hatch (piece), selected && selected == piece->number);
}

void
rc_floor_draw_pieces (RcPen *pen, const RcPlan *plan, int floor, guint selected)
{
  for_each_part (pen, plan, floor, selected, FALSE, draw_part);
}

void
rc_seam_set_line (RcPen *pen, RcSeamKind kind)
{
  double dashes[] = { 4.5 * pen->line, 2 * pen->line };

  rc_pen_set_colour (pen, pen->palette->seam, 1);
  cairo_set_line_cap (pen->cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_width (pen->cr, pen->line * 2.6);
  cairo_set_dash (pen->cr, dashes, kind == RC_SEAM_CROSS ? 2 : 0, 0);
}

/* A seam's place is taken in short steps, so that a slanting one does not block a whole room. */
static void
take_segment (RcPen *pen, RcSpot from, RcSpot to)
{
  double around = pen->line * 2, dx = to.x - from.x, dy = to.y - from.y;
  int    steps = fabs (dx) < around || fabs (dy) < around ? 1 : CLAMP ((int)(hypot (dx, dy) / pen->font_size), 1, 200);

  for (int i = 0; i < steps; i++)
    {
      double   x0 = from.x + dx * i / steps, x1 = from.x + dx * (i + 1) / steps;
      double   y0 = from.y + dy * i / steps, y1 = from.y + dy * (i + 1) / steps;
      RcExtent extent = { MIN (x0, x1) - around, MIN (y0, y1) - around, MAX (x0, x1) + around, MAX (y0, y1) + around };

      rc_pen_take (pen, &extent);
    }
}

void
rc_floor_draw_seams (RcPen *pen, const RcPlan *plan, int floor)
{
  g_autoptr (GHashTable) floors = dup_floors (plan->house);

  for (guint i = 0; i < plan->seams->len; i++)
    {
      const RcSeam *seam = g_ptr_array_index (plan->seams, i);
      RcSpot        from = rc_pen_get_spot (pen, seam->from), to = rc_pen_get_spot (pen, seam->to);
      RcExtent      extent = { MIN (from.x, to.x), MIN (from.y, to.y), MAX (from.x, to.x), MAX (from.y, to.y) };

      if (!is_on_floor (floors, seam->room, floor) || !rc_pen_sees (pen, &extent))
        continue;
      cairo_save (pen->cr);
      if (seam->kind == RC_SEAM_CROSS)
        {
          /* Paper under the dashes: the gaps must not look like hatch. */
          rc_pen_set_colour (pen, pen->palette->paper, 1);
          cairo_set_line_width (pen->cr, pen->line * 4);
          cairo_move_to (pen->cr, from.x, from.y);
          cairo_line_to (pen->cr, to.x, to.y);
          cairo_stroke (pen->cr);
        }
      rc_seam_set_line (pen, seam->kind);
      cairo_move_to (pen->cr, from.x, from.y);
      cairo_line_to (pen->cr, to.x, to.y);
      cairo_stroke (pen->cr);
      cairo_restore (pen->cr);
      take_segment (pen, from, to);
    }
}

double
rc_piece_get_number_radius (RcPen *pen, guint number)
{
  char   text[16];
  double width, height;

  g_snprintf (text, sizeof text, "%u", number);
  rc_pen_measure_text (pen, text, pen->font_size, TRUE, &width, &height);

  return MAX (pen->font_size * 0.85, width / 2 + pen->font_size * 0.3);
}

void
rc_piece_draw_number (RcPen *pen, RcSpot middle, guint number, gboolean selected)
{
  double radius = rc_piece_get_number_radius (pen, number);
  char   text[16];

  g_snprintf (text, sizeof text, "%u", number);
  cairo_new_path (pen->cr);
  cairo_arc (pen->cr, middle.x, middle.y, radius, 0, 2 * G_PI);
  rc_pen_set_colour (pen, selected ? pen->palette->accent : pen->palette->paper, 1);
  cairo_fill_preserve (pen->cr);
  rc_pen_set_colour (pen, selected ? pen->palette->accent : pen->palette->ink, 1);
  cairo_set_line_width (pen->cr, pen->line * 0.9);
  cairo_stroke (pen->cr);
  rc_pen_set_colour (pen, selected ? pen->palette->paper : pen->palette->ink, 1);
  rc_pen_draw_text (pen, text, pen->font_size, TRUE, middle, 0, FALSE);
}

void
rc_rule_draw_mark (RcPen *pen, RcSpot middle, guint number)
{
  double side = pen->font_size * 1.1;
  char   text[16];

  g_snprintf (text, sizeof text, "%u", number);
  cairo_new_path (pen->cr);
  cairo_move_to (pen->cr, middle.x, middle.y - side * 1.05);
  cairo_line_to (pen->cr, middle.x + side, middle.y + side * 0.75);
  cairo_line_to (pen->cr, middle.x - side, middle.y + side * 0.75);
  cairo_close_path (pen->cr);
  rc_pen_set_colour (pen, pen->palette->paper, 1);
  cairo_fill_preserve (pen->cr);
  rc_pen_set_colour (pen, pen->palette->warn, 1);
  cairo_set_line_width (pen->cr, pen->line * 1.6);
  cairo_stroke (pen->cr);
  rc_pen_draw_text (pen, text, pen->font_size * (number > 9 ? 0.68 : 0.85), TRUE,
                    (RcSpot){ middle.x, middle.y + side * 0.16 }, 0, FALSE);
}

/* The number with its pile arrow beside or under it; the number alone where that does not fit. */
static void
draw_part_number (RcPen *pen, const RcPlan *plan, const RcPiece *piece, const GPtrArray *rings, guint selected)
{
  RcExtent extent = rc_rings_get_extent (rings);
  double   radius = rc_piece_get_number_radius (pen, piece->number), arrow = pen->font_size * 2.8;
  double   thick = pen->font_size * 0.9, gap = pen->font_size * 0.35;
  double   radians = piece->pile_degrees * G_PI / 180;
  double   arrow_x = MAX (thick, fabs (cos (radians)) * arrow), arrow_y = MAX (thick, fabs (sin (radians)) * arrow);
  gboolean lying = arrow_x > arrow_y, chosen = selected && selected == piece->number;
  RcSpot   at;
  char     text[16];

  if (MIN (extent.x1 - extent.x0, extent.y1 - extent.y0) < pen->font_size * 0.8)
    return;
  if (lying && rc_pen_claim_inside (pen, rings, MAX (arrow_x, 2 * radius) + gap, 2 * radius + gap + arrow_y + gap, &at))
    {
      rc_piece_draw_number (pen, (RcSpot){ at.x, at.y - (gap + arrow_y) / 2 }, piece->number, chosen);
      at.y += radius + gap / 2;
    }
  else if (!lying
           && rc_pen_claim_inside (pen, rings, 2 * radius + gap + arrow_x + gap, MAX (arrow_y, 2 * radius) + gap, &at))
    {
      rc_piece_draw_number (pen, (RcSpot){ at.x - (gap + arrow_x) / 2, at.y }, piece->number, chosen);
      at.x += radius + gap / 2;
    }
  else
    {
      if (rc_pen_claim_inside (pen, rings, 2 * radius + gap, 2 * radius + gap, &at))
        {
          rc_piece_draw_number (pen, at, piece->number, chosen);
          return;
        }
      g_snprintf (text, sizeof text, "%u", piece->number);
      at = (RcSpot){ (extent.x0 + extent.x1) / 2, (extent.y0 + extent.y1) / 2 };
      rc_pen_claim_inside (pen, rings, pen->font_size * 0.9, pen->font_size, &at);
      rc_pen_set_colour (pen, pen->palette->ink, 1);
      rc_pen_draw_text (pen, text, pen->font_size * 0.8, TRUE, at, 0, TRUE);
      return;
    }
  rc_pen_set_colour (pen, pen->palette->paper, 1);
  cairo_rectangle (pen->cr, at.x - arrow_x / 2, at.y - arrow_y / 2, arrow_x, arrow_y);
  cairo_fill (pen->cr);
  rc_pen_set_colour (pen, pen->palette->ink, 1);
  rc_pen_draw_arrow (pen, at, piece->pile_degrees, arrow);
}

void
rc_floor_draw_numbers (RcPen *pen, const RcPlan *plan, int floor, guint selected)
{
  for_each_part (pen, plan, floor, selected, TRUE, draw_part_number);
}

static void
draw_part_size (RcPen *pen, const RcPlan *plan, const RcPiece *piece, const GPtrArray *rings, guint selected)
{
  const RcLengthStyle *style = rc_job_get_length_style (plan->job);
  double               size = pen->font_size * 0.78, width, height;
  g_autofree char     *across = NULL, *along = NULL, *text = NULL;
  RcExtent             extent = rc_rings_get_extent (rings);
  RcSpot               at;

  if (MAX (extent.x1 - extent.x0, extent.y1 - extent.y0) < size * 6)
    return;
  across = rc_length_format (piece->cut_width, style);
  along = rc_length_format (piece->cut_length, style);
  text = g_strdup_printf ("%s × %s", across, along);
  rc_pen_measure_text (pen, text, size, FALSE, &width, &height);
  rc_pen_set_colour (pen, pen->palette->ink, 0.85);
  if (rc_pen_claim_inside (pen, rings, width + size * 0.6, height, &at))
    rc_pen_draw_text (pen, text, size, FALSE, at, 0, TRUE);
  else if (rc_pen_claim_inside (pen, rings, height, width + size * 0.6, &at))
    rc_pen_draw_text (pen, text, size, FALSE, at, -G_PI_2, TRUE);
}

void
rc_floor_draw_sizes (RcPen *pen, const RcPlan *plan, int floor)
{
  for_each_part (pen, plan, floor, 0, TRUE, draw_part_size);
}

/* The storey a point of an area lies on: the one of the area's room that holds it, else of its first room. */
static int
area_get_floor (const RcHouse *house, const RcFloorArea *area, RcPoint place)
{
  int floor = 0;

  for (guint i = area->rooms->len; i-- > 0;)
    {
      const RcPlacedRoom *placed = rc_house_find_room (house, g_ptr_array_index (area->rooms, i));

      if (!placed)
        continue;
      floor = placed->room->floor;
      if (rc_polygon_locate (placed->polygon, place) >= 0)
        return floor;
    }

  return floor;
}

GPtrArray *
rc_plan_dup_broken (const RcPlan *plan, GArray **floors)
{
  GPtrArray *all = g_ptr_array_new ();

  if (floors)
    *floors = g_array_new (FALSE, FALSE, sizeof (int));
  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);
      const RcOption   *option = rc_area_plan_get_chosen (area_plan);

      for (guint b = 0; option && b < option->broken->len; b++)
        {
          RcBrokenRule *broken = g_ptr_array_index (option->broken, b);
          int           floor = floors ? area_get_floor (plan->house, area_plan->area, broken->place) : 0;

          g_ptr_array_add (all, broken);
          if (floors)
            g_array_append_val (*floors, floor);
        }
    }

  return all;
}

/* Moves a mark aside until it stands clear of those before it. */
static RcSpot
stand_clear (const GArray *spots, RcSpot at, double side)
{
  for (guint i = 0; i < spots->len; i++)
    {
      const RcSpot *other = &g_array_index (spots, RcSpot, i);

      if (fabs (other->x - at.x) < 2 * side && fabs (other->y - at.y) < 1.8 * side)
        {
          at.x = other->x + 2.05 * side;
          i = G_MAXUINT; /* from the first again */
        }
    }

  return at;
}

void
rc_floor_draw_marks (RcPen *pen, const RcPlan *plan, int floor)
{
  g_autoptr (GArray) floors = NULL;
  g_autoptr (GPtrArray) broken = rc_plan_dup_broken (plan, &floors);
  g_autoptr (GArray) spots = g_array_new (FALSE, FALSE, sizeof (RcSpot));
  double side = pen->font_size * 1.15;

  for (guint i = 0; i < broken->len; i++)
    {
      const RcBrokenRule *rule = g_ptr_array_index (broken, i);
      RcSpot              at;
      RcExtent            extent;

      if (g_array_index (floors, int, i) != floor)
        continue;
      at = stand_clear (spots, rc_pen_get_spot (pen, rule->place), side);
      g_array_append_val (spots, at);
      extent = (RcExtent){ at.x - side, at.y - side, at.x + side, at.y + side };
      if (!rc_pen_sees (pen, &extent))
        continue;
      rc_pen_take (pen, &extent);
      rc_rule_draw_mark (pen, at, i + 1);
    }
}
