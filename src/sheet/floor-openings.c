#include "floor-openings.h"

#include <math.h>

#include "floor-rooms.h"

#define N_FACE 9

/* An opening on the page: its ends on the room's face, and how far the gap goes through the wall. */
typedef struct
{
  RcSpot from, to;
  RcSpot face[N_FACE]; /* along the room's face from `from` to `to`: bent where the wall is curved */
  double out_x, out_y; /* unit step away from the room */
  double depth;
  double width;
} Gap;

/* The unit step out of the room through an opening, in the house. */
static RcSpot
find_way_out (const RcPlacedOpening *placed)
{
  RcPoint step = { 0, 0 };
  double  length;

  if (!rc_room_get_outward_step (placed->room, placed->opening->wall, RC_TICKS_PER_M, &step))
    return (RcSpot){ 0, 1 };
  length = hypot ((double)step.x, (double)step.y);

  return (RcSpot){ (double)step.x / length, (double)step.y / length };
}

/* How far out of the chord of a curved wall its face lies at a point of the chord; below 0 where it bulges in. */
static double
find_rise (const RcRing *ring, double x, double y, RcSpot out, double most)
{
  double rise = 0;

  for (guint i = 0; i < ring->len; i++)
    {
      const RcPoint *a = rc_ring_get (ring, i), *b = rc_ring_get (ring, (i + 1) % ring->len);
      double         ax = (double)a->x - x, ay = (double)a->y - y, bx = (double)b->x - x, by = (double)b->y - y;
      double         a_aside = ax * out.y - ay * out.x, b_aside = bx * out.y - by * out.x, share, at;

      if ((a_aside < 0) == (b_aside < 0))
        continue;
      share = a_aside / (a_aside - b_aside);
      at = (ax + share * (bx - ax)) * out.x + (ay + share * (by - ay)) * out.y;
      if (fabs (at) < fabs (most))
        rise = most = at;
    }

  return rise;
}

/* The face of the wall along the opening. */
static void
find_face (const RcPen *pen, const RcHouse *house, const RcPlacedOpening *placed, RcSpot out, Gap *gap)
{
  const RcPlacedRoom *room = rc_house_find_room (house, placed->room->id);
  const RcWall       *wall = NULL;

  if (room && placed->opening->wall < placed->room->walls->len)
    wall = &g_array_index (placed->room->walls, RcWall, placed->opening->wall);
  for (int i = 0; i < N_FACE; i++)
    {
      double share = i / (N_FACE - 1.0), rise = 0;

      gap->face[i].x = gap->from.x + share * (gap->to.x - gap->from.x);
      gap->face[i].y = gap->from.y + share * (gap->to.y - gap->from.y);
      if (wall == NULL || wall->bow == 0)
        continue;
      rise = find_rise (room->polygon->outer, (double)placed->from.x + share * (double)(placed->to.x - placed->from.x),
                        (double)placed->from.y + share * (double)(placed->to.y - placed->from.y), out,
                        2.0 * (double)ABS (wall->bow))
             * pen->view.scale;
      gap->face[i].x += out.x * rise;
      gap->face[i].y -= out.y * rise;
    }
  gap->from = gap->face[0];
  gap->to = gap->face[N_FACE - 1];
  gap->width = hypot (gap->to.x - gap->from.x, gap->to.y - gap->from.y);
}

/* A line along the face, `aside` into the wall; goes on from the current point with `joined`, backwards with `back`. */
static void
add_face_path (cairo_t *cr, const Gap *gap, double aside, gboolean joined, gboolean back)
{
  for (int i = 0; i < N_FACE; i++)
    {
      RcSpot at = gap->face[back ? N_FACE - 1 - i : i];

      if (i == 0 && !joined)
        cairo_move_to (cr, at.x + gap->out_x * aside, at.y + gap->out_y * aside);
      else
        cairo_line_to (cr, at.x + gap->out_x * aside, at.y + gap->out_y * aside);
    }
}

static gboolean
get_gap (const RcPen *pen, const RcHouse *house, const RcPlacedOpening *placed, Gap *gap)
{
  double   around;
  RcSpot   out;
  RcExtent extent;

  gap->from = rc_pen_get_spot (pen, placed->from);
  gap->to = rc_pen_get_spot (pen, placed->to);
  gap->width = hypot (gap->to.x - gap->from.x, gap->to.y - gap->from.y);
  if (gap->width <= 0)
    return FALSE;
  gap->depth = hypot ((double)placed->outward.x, (double)placed->outward.y) * pen->view.scale;
  out = find_way_out (placed);
  gap->out_x = out.x;
  gap->out_y = -out.y; /* y of the page runs down */
  find_face (pen, house, placed, out, gap);
  if (!placed->other)
    gap->depth = MAX (gap->depth, rc_floor_get_wall_width (pen));

  around = gap->width + gap->depth;
  extent = (RcExtent){ MIN (gap->from.x, gap->to.x) - around, MIN (gap->from.y, gap->to.y) - around,
                       MAX (gap->from.x, gap->to.x) + around, MAX (gap->from.y, gap->to.y) + around };

  return rc_pen_sees (pen, &extent);
}

static void
add_gap_path (RcPen *pen, const Gap *gap)
{
  add_face_path (pen->cr, gap, 0, FALSE, FALSE);
  add_face_path (pen->cr, gap, gap->depth, TRUE, TRUE);
  cairo_close_path (pen->cr);
}

void
rc_floor_draw_gaps (RcPen *pen, const RcHouse *house, int floor)
{
  for (guint i = 0; i < house->openings->len; i++)
    {
      const RcPlacedOpening *placed = g_ptr_array_index (house->openings, i);
      Gap                    gap;

      if (placed->room->floor != floor || !get_gap (pen, house, placed, &gap))
        continue;
      add_gap_path (pen, &gap);
      rc_pen_set_colour (pen, pen->palette->paper, 1);
      cairo_fill_preserve (pen->cr);
      cairo_set_line_width (pen->cr, pen->line);
      cairo_stroke (pen->cr);
    }
}

/* The jambs: the wall's ends on both sides of the gap. */
static void
draw_jambs (RcPen *pen, const Gap *gap)
{
  rc_pen_set_colour (pen, pen->palette->ink, 1);
  cairo_set_line_width (pen->cr, pen->line * 0.8);
  cairo_move_to (pen->cr, gap->from.x, gap->from.y);
  cairo_rel_line_to (pen->cr, gap->out_x * gap->depth, gap->out_y * gap->depth);
  cairo_move_to (pen->cr, gap->to.x, gap->to.y);
  cairo_rel_line_to (pen->cr, gap->out_x * gap->depth, gap->out_y * gap->depth);
  cairo_stroke (pen->cr);
}

static void
draw_glass (RcPen *pen, const Gap *gap)
{
  static const double shares[] = { 0, 0.5, 1 };

  for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
    add_face_path (pen->cr, gap, gap->depth * shares[i], FALSE, FALSE);
  cairo_set_line_width (pen->cr, pen->line * 0.6);
  cairo_stroke (pen->cr);
}

/* A leaf standing open at right angles, and the quarter circle that it sweeps. */
static void
draw_leaf (RcPen *pen, const Gap *gap, const RcOpening *opening)
{
  gboolean inward = opening->swing == RC_SWING_IN;
  double   aside = inward ? 0 : gap->depth;
  double   sign = inward ? -1 : 1;
  RcSpot   hinge = opening->hinge_at_end ? gap->to : gap->from, latch = opening->hinge_at_end ? gap->from : gap->to;
  double   open_angle = atan2 (gap->out_y * sign, gap->out_x * sign);
  double   shut_angle = atan2 (latch.y - hinge.y, latch.x - hinge.x);
  double   turn = remainder (open_angle - shut_angle, 2 * G_PI);

  hinge.x += gap->out_x * aside;
  hinge.y += gap->out_y * aside;
  cairo_set_line_width (pen->cr, pen->line);
  cairo_move_to (pen->cr, hinge.x, hinge.y);
  cairo_line_to (pen->cr, hinge.x + cos (open_angle) * gap->width, hinge.y + sin (open_angle) * gap->width);
  cairo_stroke (pen->cr);
  rc_pen_set_colour (pen, pen->palette->ink, 0.55);
  cairo_set_line_width (pen->cr, pen->line * 0.5);
  if (turn > 0)
    cairo_arc (pen->cr, hinge.x, hinge.y, gap->width, shut_angle, open_angle);
  else
    cairo_arc_negative (pen->cr, hinge.x, hinge.y, gap->width, shut_angle, open_angle);
  cairo_stroke (pen->cr);
}

static gboolean
has_leaf (const RcOpening *opening)
{
  return opening->kind == RC_OPENING_DOOR && opening->swing != RC_SWING_NONE;
}

void
rc_floor_add_leaves (const RcHouse *house, int floor, RcBox *box)
{
  for (guint i = 0; i < house->openings->len; i++)
    {
      const RcPlacedOpening *placed = g_ptr_array_index (house->openings, i);
      const RcOpening       *opening = placed->opening;
      gboolean               inward = opening->swing == RC_SWING_IN;
      RcPoint                hinge = opening->hinge_at_end ? placed->to : placed->from;
      double  width = hypot ((double)(placed->to.x - placed->from.x), (double)(placed->to.y - placed->from.y));
      RcSpot  out;
      RcPoint tip;

      if (placed->room->floor != floor || !has_leaf (opening) || width <= 0)
        continue;
      out = find_way_out (placed);
      tip.x = hinge.x + (inward ? 0 : placed->outward.x) + (RcLength)(out.x * (inward ? -width : width));
      tip.y = hinge.y + (inward ? 0 : placed->outward.y) + (RcLength)(out.y * (inward ? -width : width));
      *box = (RcBox){ MIN (box->x0, tip.x), MIN (box->y0, tip.y), MAX (box->x1, tip.x), MAX (box->y1, tip.y) };
    }
}

/* An archway, or a door without a leaf: a dashed line on both faces of the wall. */
static void
draw_lintel (RcPen *pen, const Gap *gap)
{
  double dashes[] = { 3 * pen->line, 2.5 * pen->line };

  cairo_save (pen->cr);
  rc_pen_set_colour (pen, pen->palette->ink, 0.7);
  cairo_set_line_width (pen->cr, pen->line * 0.6);
  cairo_set_dash (pen->cr, dashes, 2, 0);
  add_face_path (pen->cr, gap, 0, FALSE, FALSE);
  add_face_path (pen->cr, gap, gap->depth, FALSE, FALSE);
  cairo_stroke (pen->cr);
  cairo_restore (pen->cr);
}

/* The opening's mark ("D2"): in the wall when it is thick enough on the page, else outside it, else inside the room. */
static void
draw_mark (RcPen *pen, const Gap *gap, const RcPlacedOpening *placed)
{
  double      size = pen->font_size * 0.72, width, height, half;
  RcSpot      face = gap->face[N_FACE / 2];
  const char *text = placed->opening->id;
  double      asides[3];

  if (!text || gap->width < size * 0.6 * (double)g_utf8_strlen (text, -1))
    return;
  rc_pen_measure_text (pen, text, size, FALSE, &width, &height);
  half = (fabs (gap->out_x) * width + fabs (gap->out_y) * height) / 2 + size * 0.15;
  asides[0] = gap->depth / 2;
  asides[1] = placed->other ? -half : gap->depth + half;
  asides[2] = placed->other ? gap->depth + half : -half;
  for (guint i = gap->depth < height * 0.8 ? 1 : 0; i < G_N_ELEMENTS (asides); i++)
    {
      RcSpot   at = { face.x + gap->out_x * asides[i], face.y + gap->out_y * asides[i] };
      RcExtent extent = { at.x - width / 2, at.y - height * 0.4, at.x + width / 2, at.y + height * 0.4 };

      if (!rc_pen_claim (pen, &extent))
        continue;
      rc_pen_set_colour (pen, pen->palette->ink, 0.8);
      rc_pen_draw_text (pen, text, size, FALSE, at, 0, FALSE);
      return;
    }
}

void
rc_floor_draw_leaves (RcPen *pen, const RcHouse *house, int floor)
{
  for (guint i = 0; i < house->openings->len; i++)
    {
      const RcPlacedOpening *placed = g_ptr_array_index (house->openings, i);
      Gap                    gap;

      if (placed->room->floor != floor || !get_gap (pen, house, placed, &gap))
        continue;
      draw_jambs (pen, &gap);
      if (placed->opening->kind == RC_OPENING_WINDOW)
        draw_glass (pen, &gap);
      else if (has_leaf (placed->opening))
        draw_leaf (pen, &gap, placed->opening);
      else
        draw_lintel (pen, &gap);
    }
}

void
rc_floor_draw_opening_marks (RcPen *pen, const RcHouse *house, int floor)
{
  for (guint i = 0; i < house->openings->len; i++)
    {
      const RcPlacedOpening *placed = g_ptr_array_index (house->openings, i);
      Gap                    gap;

      if (placed->room->floor == floor && get_gap (pen, house, placed, &gap))
        draw_mark (pen, &gap, placed);
    }
}
