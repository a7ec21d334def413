#include "floor-rooms.h"

#include <math.h>
#include <string.h>

#include "dimension.h"
#include "floor-things.h"

#define WALL_TICKS (115 * RC_TICKS_PER_MM) /* how thick walls are drawn: a stud wall; doors carry the true depth */

RcBox
rc_floor_compute_box (const RcHouse *house, int floor)
{
  RcBox    box = { 0, 0, 0, 0 };
  gboolean any = rc_floor_compute_stair_box (house->measure, floor, &box);

  for (guint i = 0; i < house->rooms->len; i++)
    {
      const RcPlacedRoom *placed = g_ptr_array_index (house->rooms, i);
      RcBox               own;

      if (placed->room->floor != floor || placed->polygon->outer->len == 0)
        continue;
      own = rc_ring_compute_box (placed->polygon->outer);
      if (!any)
        box = own;
      box = (RcBox){ MIN (box.x0, own.x0), MIN (box.y0, own.y0), MAX (box.x1, own.x1), MAX (box.y1, own.y1) };
      any = TRUE;
    }

  return box;
}

double
rc_floor_get_wall_width (const RcPen *pen)
{
  return MAX (2.5 * pen->line, (double)WALL_TICKS * pen->view.scale);
}

/* The rooms of the storey that are in sight: GPtrArray of RcPlacedRoom (borrowed). */
static GPtrArray *
dup_visible_rooms (const RcPen *pen, const RcHouse *house, int floor)
{
  GPtrArray *rooms = g_ptr_array_new ();
  double     around = rc_floor_get_wall_width (pen);

  for (guint i = 0; i < house->rooms->len; i++)
    {
      RcPlacedRoom *placed = g_ptr_array_index (house->rooms, i);
      RcExtent      extent;

      if (placed->room->floor != floor || placed->polygon->outer->len == 0)
        continue;
      extent = rc_pen_get_box_extent (pen, rc_ring_compute_box (placed->polygon->outer));
      extent = (RcExtent){ extent.x0 - around, extent.y0 - around, extent.x1 + around, extent.y1 + around };
      if (rc_pen_sees (pen, &extent))
        g_ptr_array_add (rooms, placed);
    }

  return rooms;
}

void
rc_floor_draw_walls (RcPen *pen, const RcHouse *house, int floor, const char *selected_room)
{
  g_autoptr (GPtrArray) rooms = dup_visible_rooms (pen, house, floor);
  double width = rc_floor_get_wall_width (pen);

  /* All walls first, then all floors over them: what is left is the wall outside each room. */
  cairo_set_line_join (pen->cr, CAIRO_LINE_JOIN_MITER);
  for (guint i = 0; i < rooms->len; i++)
    {
      const RcPlacedRoom *placed = g_ptr_array_index (rooms, i);
      g_autoptr (GPtrArray) rings = rc_pen_dup_rings (pen, placed->polygon);

      rc_pen_add_path (pen, rings);
      rc_pen_set_colour (pen, pen->palette->ink, 0.62);
      cairo_set_line_width (pen->cr, 2 * width);
      cairo_stroke (pen->cr);
    }
  for (guint i = 0; i < rooms->len; i++)
    {
      const RcPlacedRoom *placed = g_ptr_array_index (rooms, i);
      g_autoptr (GPtrArray) rings = rc_pen_dup_rings (pen, placed->polygon);
      gboolean selected = g_strcmp0 (selected_room, placed->room->id) == 0;

      rc_pen_add_path (pen, rings);
      rc_pen_set_colour (pen, selected ? pen->palette->accent : pen->palette->paper, selected ? 0.16 : 1);
      cairo_fill_preserve (pen->cr);
      rc_pen_set_colour (pen, pen->palette->ink, 1);
      cairo_set_line_width (pen->cr, pen->line * 0.8);
      cairo_stroke (pen->cr);
    }
  cairo_set_line_join (pen->cr, CAIRO_LINE_JOIN_MITER);
}

/* FALSE when a text is too long for a room by any measure: laying it out to find that is dear on a floor of many rooms.
 */
static gboolean
could_fit (const char *text, double size, double room)
{
  return (double)g_utf8_strlen (text, -1) * size * 0.25 < room;
}

/* Draws the name where it fits, lying or standing; FALSE when it does not. */
static gboolean
draw_name_at_size (RcPen *pen, const GPtrArray *rings, const char *name, double size)
{
  double   width, height;
  RcExtent extent = rc_rings_get_extent (rings);
  RcSpot   middle;

  if (!could_fit (name, size, MAX (extent.x1 - extent.x0, extent.y1 - extent.y0)))
    return FALSE;
  rc_pen_measure_text (pen, name, size, TRUE, &width, &height);
  if (rc_pen_claim_inside (pen, rings, width + size * 0.3, height, &middle))
    rc_pen_draw_text (pen, name, size, TRUE, middle, 0, TRUE);
  else if (rc_pen_claim_inside (pen, rings, height, width + size * 0.3, &middle))
    rc_pen_draw_text (pen, name, size, TRUE, middle, -G_PI_2, TRUE);
  else
    return FALSE;

  return TRUE;
}

/* The name on two lines, parted at the space nearest its middle. */
static gboolean
draw_parted_name (RcPen *pen, const GPtrArray *rings, const char *name, double size)
{
  gssize           half = (gssize)strlen (name) / 2, best = -1;
  g_autofree char *first = NULL;
  double           width, height, second_width;
  RcExtent         extent;
  RcSpot           middle;

  for (gssize i = 0; name[i]; i++)
    if (name[i] == ' ' && (best < 0 || ABS (i - half) < ABS (best - half)))
      best = i;
  if (best < 0)
    return FALSE;
  first = g_strndup (name, (gsize)best);
  extent = rc_rings_get_extent (rings);
  if (!could_fit (first, size, extent.x1 - extent.x0) || !could_fit (name + best + 1, size, extent.x1 - extent.x0))
    return FALSE;
  rc_pen_measure_text (pen, first, size, TRUE, &width, &height);
  rc_pen_measure_text (pen, name + best + 1, size, TRUE, &second_width, NULL);
  if (!rc_pen_claim_inside (pen, rings, MAX (width, second_width) + size * 0.3, 2 * height, &middle))
    return FALSE;
  rc_pen_draw_text (pen, first, size, TRUE, (RcSpot){ middle.x, middle.y - height / 2 }, 0, TRUE);
  rc_pen_draw_text (pen, name + best + 1, size, TRUE, (RcSpot){ middle.x, middle.y + height / 2 }, 0, TRUE);

  return TRUE;
}

/* As many of the name's words as fit, the rest told by an ellipsis. */
static void
draw_shortened_name (RcPen *pen, const GPtrArray *rings, const char *name)
{
  g_autofree char *start = g_strdup (name);
  char            *space;

  while ((space = strrchr (start, ' ')) != NULL)
    {
      g_autofree char *text = NULL;

      *space = '\0';
      text = g_strdup_printf ("%s…", start);
      if (draw_name_at_size (pen, rings, text, pen->font_size * 0.86))
        return;
    }
}

/* The name with the area under it; FALSE when the two do not fit. */
static gboolean
draw_name_with_area (RcPen *pen, const GPtrArray *rings, const char *name, const char *area)
{
  double   size = pen->font_size, small = size * 0.82, width, height, area_width, area_height;
  RcExtent extent = rc_rings_get_extent (rings);
  RcSpot   middle;

  if (!could_fit (name, size, extent.x1 - extent.x0) || !could_fit (area, small, extent.x1 - extent.x0))
    return FALSE;
  rc_pen_measure_text (pen, name, size, TRUE, &width, &height);
  rc_pen_measure_text (pen, area, small, FALSE, &area_width, &area_height);
  if (!rc_pen_claim_inside (pen, rings, MAX (width, area_width) + size * 0.5, height + area_height, &middle))
    return FALSE;
  rc_pen_draw_text (pen, name, size, TRUE, (RcSpot){ middle.x, middle.y - area_height / 2 }, 0, TRUE);
  rc_pen_draw_text (pen, area, small, FALSE, (RcSpot){ middle.x, middle.y + height / 2 }, 0, TRUE);

  return TRUE;
}

/* The room's name, its area under it where both fit. */
static void
draw_name (RcPen *pen, const RcPlacedRoom *placed, gboolean selected, RcAreaUnit area_unit)
{
  g_autoptr (GPtrArray) rings = NULL;
  const char      *name = placed->room->name ? placed->room->name : placed->room->id;
  RcExtent         extent = rc_pen_get_box_extent (pen, rc_ring_compute_box (placed->polygon->outer));
  g_autofree char *area = NULL;
  double           size = pen->font_size;

  if (!name || extent.x1 - extent.x0 < size * 1.5 || extent.y1 - extent.y0 < size)
    return;
  rings = rc_pen_dup_rings (pen, placed->polygon);
  area = rc_area_format (rc_polygon_compute_area (placed->polygon), area_unit, 1, TRUE);
  rc_pen_set_colour (pen, selected ? pen->palette->accent : pen->palette->ink, 1);
  if (draw_name_with_area (pen, rings, name, area))
    return;
  for (int attempt = 0; attempt < 3; attempt++)
    if (draw_name_at_size (pen, rings, name, size * (1 - 0.14 * attempt))
        || draw_parted_name (pen, rings, name, size * (1 - 0.14 * attempt)))
      return;
  draw_shortened_name (pen, rings, name);
}

void
rc_floor_draw_names (RcPen *pen, const RcHouse *house, int floor, const char *selected_room, RcAreaUnit area_unit)
{
  g_autoptr (GPtrArray) rooms = dup_visible_rooms (pen, house, floor);

  for (guint i = 0; i < rooms->len; i++)
    {
      const RcPlacedRoom *placed = g_ptr_array_index (rooms, i);

      draw_name (pen, placed, g_strcmp0 (selected_room, placed->room->id) == 0, area_unit);
    }
}

/* One wall: ends in the house, the length to print. */
typedef struct
{
  RcPoint  from, to;
  RcLength length;
} WallLine;

static GArray *
dup_wall_lines (const RcPlacedRoom *placed)
{
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (WallLine));

  for (guint i = 0; i < rc_room_get_n_walls (placed->room); i++)
    {
      WallLine line;

      if (!rc_room_get_wall_ends (placed->room, i, &line.from, &line.to))
        continue;
      line.from = (RcPoint){ line.from.x + placed->at.x, line.from.y + placed->at.y };
      line.to = (RcPoint){ line.to.x + placed->at.x, line.to.y + placed->at.y };
      line.length = placed->room->walls && placed->room->walls->len
                        ? g_array_index (placed->room->walls, RcWall, i).length
                        : rc_point_distance (line.from, line.to);
      g_array_append_val (lines, line);
    }

  return lines;
}

/* TRUE when a wall drawn before in this room runs the same way and is as long: one figure serves both. */
static gboolean
is_said_before (const GArray *lines, guint index)
{
  const WallLine *line = &g_array_index (lines, WallLine, index);

  for (guint i = 0; i < index; i++)
    {
      const WallLine *other = &g_array_index (lines, WallLine, i);
      double          cross = (double)(line->to.x - line->from.x) * (double)(other->to.y - other->from.y)
                     - (double)(line->to.y - line->from.y) * (double)(other->to.x - other->from.x);

      if (other->length == line->length && fabs (cross) < 0.01 * (double)line->length * (double)line->length)
        return TRUE;
    }

  return FALSE;
}

static void
draw_wall_dimension (RcPen *pen, const RcPlacedRoom *placed, const WallLine *line, const RcLengthStyle *style)
{
  RcSpot           from = rc_pen_get_spot (pen, line->from), to = rc_pen_get_spot (pen, line->to);
  double           length = hypot (to.x - from.x, to.y - from.y), size = pen->font_size * 0.8;
  g_autofree char *text = NULL;
  RcPoint          probe;
  double           offset = size * 0.95;

  if (length < 3 * size || line->length <= 0)
    return;
  /* A point a little to the left of the wall, seen on the page: inside the room, or the figure goes to the right. */
  probe.x = (line->from.x + line->to.x) / 2 - (line->to.y - line->from.y) / 64;
  probe.y = (line->from.y + line->to.y) / 2 + (line->to.x - line->from.x) / 64;
  if (rc_polygon_locate (placed->polygon, probe) < 0)
    offset = -offset;
  text = rc_length_format (line->length, style);
  rc_dimension_draw (pen, from, to, offset, text, size);
}

void
rc_floor_draw_dimensions (RcPen *pen, const RcHouse *house, int floor, const RcLengthStyle *style)
{
  g_autoptr (GPtrArray) rooms = dup_visible_rooms (pen, house, floor);

  for (guint i = 0; i < rooms->len; i++)
    {
      const RcPlacedRoom *placed = g_ptr_array_index (rooms, i);
      RcExtent            extent = rc_pen_get_box_extent (pen, rc_ring_compute_box (placed->polygon->outer));
      g_autoptr (GArray) lines = NULL;

      if (MAX (extent.x1 - extent.x0, extent.y1 - extent.y0) < 3 * pen->font_size)
        continue;
      lines = dup_wall_lines (placed);
      for (guint w = 0; w < lines->len; w++)
        if (!is_said_before (lines, w))
          draw_wall_dimension (pen, placed, &g_array_index (lines, WallLine, w), style);
    }
}

void
rc_floor_draw_overall (RcPen *pen, const RcHouse *house, int floor, const RcLengthStyle *style)
{
  RcBox            box = rc_floor_compute_box (house, floor);
  RcExtent         extent = rc_pen_get_box_extent (pen, box);
  double           aside = rc_floor_get_wall_width (pen) + pen->font_size * 1.3;
  g_autofree char *width = rc_length_format (box.x1 - box.x0, style);
  g_autofree char *height = rc_length_format (box.y1 - box.y0, style);

  if (box.x1 <= box.x0 || box.y1 <= box.y0)
    return;
  rc_dimension_draw (pen, (RcSpot){ extent.x0, extent.y1 }, (RcSpot){ extent.x1, extent.y1 }, -aside, width,
                     pen->font_size * 0.9);
  rc_dimension_draw (pen, (RcSpot){ extent.x0, extent.y1 }, (RcSpot){ extent.x0, extent.y0 }, aside, height,
                     pen->font_size * 0.9);
}
