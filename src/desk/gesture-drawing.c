#include "gesture-drawing.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "pen.h"
#include "viewport.h"

#define OUTLINE_WIDTH 2.5
#define STRONG_WIDTH  5.0
#define ROOM_WIDTH    2.0
#define GUIDE_DASH    4.0
#define BELOW_ALPHA   0.45
#define FILL_ALPHA    0.12
#define LABEL_PAD     4.0
#define LABEL_AWAY    0.9 /* of the label's height, off the line it measures */
#define GRIP_SIZE     3.5

static void
set_colour (cairo_t *cr, const double colour[3], double alpha)
{
  cairo_set_source_rgba (cr, colour[0], colour[1], colour[2], alpha);
}

static void
add_line (cairo_t *cr, const RcView *view, RcPoint point)
{
  double x = 0, y = 0;

  rc_viewport_from_house (*view, point, &x, &y);
  cairo_line_to (cr, x, y);
}

static void
draw_pairs (cairo_t *cr, const RcView *view, const GArray *lines)
{
  for (guint i = 0; i + 1 < lines->len; i += 2)
    {
      cairo_new_sub_path (cr);
      add_line (cr, view, g_array_index (lines, RcPoint, i));
      add_line (cr, view, g_array_index (lines, RcPoint, i + 1));
    }
  cairo_stroke (cr);
}

static void
draw_rings (cairo_t *cr, const RcView *view, const RcSketch *sketch, const RcPalette *palette)
{
  for (guint r = 0; r < sketch->rings->len; r++)
    {
      const RcRing *ring = g_ptr_array_index (sketch->rings, r);
      gboolean      is_open = sketch->is_open && r + 1 == sketch->rings->len;
      cairo_new_path (cr);
      for (guint i = 0; i < ring->len; i++)
        add_line (cr, view, *rc_ring_get (ring, i));
      if (!is_open)
        cairo_close_path (cr);
      set_colour (cr, palette->accent, FILL_ALPHA);
      cairo_fill_preserve (cr);
      set_colour (cr, palette->accent, 1);
      cairo_stroke (cr);
    }
}

/* The length beside the middle of its line, in a box of its own; the one that typing changes is framed. */
static void
draw_length (RcPen *pen, const RcSketchLength *length, const RcJob *job, const RcView *view)
{
  g_autofree char *shown = length->text ? g_strdup_printf ("%s|", length->text)
                                        : rc_length_format (length->value, rc_job_get_length_style (job));
  double           x0 = 0, y0 = 0, x1 = 0, y1 = 0, width = 0, height = 0;

  rc_viewport_from_house (*view, length->from, &x0, &y0);
  rc_viewport_from_house (*view, length->to, &x1, &y1);
  rc_pen_measure_text (pen, shown, pen->font_size, TRUE, &width, &height);
  double along = hypot (x1 - x0, y1 - y0);
  double nx = along > 0 ? (y1 - y0) / along : 0, ny = along > 0 ? -(x1 - x0) / along : -1;
  double away = LABEL_AWAY * (fabs (nx) * width + fabs (ny) * height) + LABEL_PAD;
  RcSpot middle = { (x0 + x1) / 2 + nx * away, (y0 + y1) / 2 + ny * away };

  cairo_rectangle (pen->cr, middle.x - width / 2 - LABEL_PAD, middle.y - height / 2 - LABEL_PAD / 2,
                   width + 2 * LABEL_PAD, height + LABEL_PAD);
  set_colour (pen->cr, pen->palette->paper, 0.92);
  cairo_fill_preserve (pen->cr);
  set_colour (pen->cr, length->is_bad ? pen->palette->warn : pen->palette->accent, length->is_active ? 1 : 0.35);
  cairo_set_line_width (pen->cr, length->is_active ? 1.5 : 0.75);
  cairo_stroke (pen->cr);
  rc_pen_set_colour (pen, length->is_bad ? pen->palette->warn : pen->palette->ink, 1);
  rc_pen_draw_text (pen, shown, pen->font_size, TRUE, middle, 0, FALSE);
}

void
rc_gesture_drawing_draw (const RcSketch *sketch, const RcJob *job, const RcPalette *palette, double font_size,
                         const RcView *view, cairo_t *cr)
{
  static const double DASHES[] = { GUIDE_DASH, GUIDE_DASH };
  RcPen               pen;

  cairo_save (cr);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_width (cr, 1);
  cairo_set_dash (cr, DASHES, 2, 0);
  set_colour (cr, palette->accent, 0.8);
  draw_pairs (cr, view, sketch->guides);
  cairo_set_dash (cr, NULL, 0, 0);
  cairo_set_line_width (cr, OUTLINE_WIDTH);
  draw_rings (cr, view, sketch, palette);
  cairo_set_line_width (cr, STRONG_WIDTH);
  set_colour (cr, palette->accent, 1);
  draw_pairs (cr, view, sketch->lines);
  rc_pen_init (&pen, cr, view, palette, font_size);
  for (guint i = 0; i < sketch->lengths->len; i++)
    draw_length (&pen, &g_array_index (sketch->lengths, RcSketchLength, i), job, view);
  if (sketch->word)
    {
      RcSpot spot = rc_pen_get_spot (&pen, sketch->word_at);
      rc_pen_set_colour (&pen, palette->accent, 1);
      rc_pen_draw_text (&pen, sketch->word, font_size, TRUE, (RcSpot){ spot.x, spot.y + 1.8 * font_size }, 0, TRUE);
    }
  rc_pen_clear (&pen);
  cairo_restore (cr);
}

static void
draw_name (RcPen *pen, const RcSceneRoom *room)
{
  RcBox  box = rc_ring_compute_box (room->corners);
  RcSpot middle = rc_pen_get_spot (pen, (RcPoint){ (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 });

  rc_pen_set_colour (pen, pen->palette->ink, 1);
  rc_pen_draw_text (pen, rc_room_get_name (room->room), pen->font_size, TRUE, middle, 0, TRUE);
}

static void
add_room (cairo_t *cr, const RcView *view, const RcSceneRoom *room)
{
  cairo_new_path (cr);
  for (guint i = 0; i < room->corners->len; i++)
    add_line (cr, view, *rc_ring_get (room->corners, i));
  cairo_close_path (cr);
}

void
rc_gesture_drawing_draw_below (const RcScene *scene, const RcPalette *palette, const RcView *view, cairo_t *cr)
{
  static const double DASHES[] = { GUIDE_DASH / 2, GUIDE_DASH };

  cairo_save (cr);
  cairo_set_line_width (cr, 1);
  cairo_set_dash (cr, DASHES, 2, 0);
  set_colour (cr, palette->ink, BELOW_ALPHA);
  for (guint r = 0; r < scene->below->len; r++)
    {
      add_room (cr, view, g_ptr_array_index (scene->below, r));
      cairo_stroke (cr);
    }
  cairo_restore (cr);
}

void
rc_gesture_drawing_draw_rooms (const RcScene *scene, const RcPalette *palette, double font_size, const RcView *view,
                               cairo_t *cr)
{
  RcPen pen;

  cairo_save (cr);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_width (cr, ROOM_WIDTH);
  rc_pen_init (&pen, cr, view, palette, font_size);
  for (guint r = 0; r < scene->rooms->len; r++)
    {
      const RcSceneRoom *room = g_ptr_array_index (scene->rooms, r);
      add_room (cr, view, room);
      set_colour (cr, palette->ink, 0.8);
      cairo_stroke (cr);
      draw_name (&pen, room);
    }
  rc_pen_clear (&pen);
  cairo_restore (cr);
}

static void
draw_zone (RcPen *pen, const RcSceneRoom *room, const RcPin *pin)
{
  g_autoptr (GArray) ring = rc_ring_copy (pin->points);

  cairo_new_path (pen->cr);
  for (guint i = 0; i < ring->len; i++)
    {
      rc_ring_get (ring, i)->x += room->at.x;
      rc_ring_get (ring, i)->y += room->at.y;
      add_line (pen->cr, &pen->view, *rc_ring_get (ring, i));
    }
  cairo_close_path (pen->cr);
  set_colour (pen->cr, pen->palette->seam, 1);
  cairo_stroke (pen->cr);
  RcBox  box = rc_ring_compute_box (ring);
  RcSpot top = rc_pen_get_spot (pen, (RcPoint){ (box.x0 + box.x1) / 2, box.y1 });
  rc_pen_draw_text (pen, _ ("no seams"), pen->font_size, FALSE, top, 0, TRUE);
}

void
rc_gesture_drawing_draw_zones (const RcScene *scene, const RcPalette *palette, double font_size, const RcView *view,
                               cairo_t *cr)
{
  static const double DASHES[] = { 2 * GUIDE_DASH, GUIDE_DASH };
  RcPen               pen;

  cairo_save (cr);
  cairo_set_line_width (cr, 1.25);
  cairo_set_dash (cr, DASHES, 2, 0);
  rc_pen_init (&pen, cr, view, palette, font_size);
  for (guint a = 0; a < scene->measure->areas->len; a++)
    {
      const RcFloorArea *area = g_ptr_array_index (scene->measure->areas, a);
      for (guint i = 0; i < area->pins->len; i++)
        {
          const RcPin       *pin = g_ptr_array_index (area->pins, i);
          const RcSceneRoom *room = rc_scene_find_room (scene, pin->room);
          if (room && pin->kind == RC_PIN_NO_SEAMS)
            draw_zone (&pen, room, pin);
        }
    }
  rc_pen_clear (&pen);
  cairo_restore (cr);
}

static void
draw_grip (cairo_t *cr, const RcView *view, RcPoint at, gboolean is_chosen, const RcPalette *palette)
{
  double x = 0, y = 0, size = is_chosen ? GRIP_SIZE + 2 : GRIP_SIZE;

  rc_viewport_from_house (*view, at, &x, &y);
  cairo_rectangle (cr, x - size, y - size, 2 * size, 2 * size);
  set_colour (cr, is_chosen ? palette->accent : palette->paper, 1);
  cairo_fill_preserve (cr);
  set_colour (cr, palette->accent, 1);
  cairo_stroke (cr);
}

/* A ring beside the room. */
static void
draw_turn_grip (cairo_t *cr, const RcView *view, RcPoint at, gboolean is_chosen, const RcPalette *palette)
{
  double x = 0, y = 0;

  rc_viewport_from_house (*view, at, &x, &y);
  cairo_new_sub_path (cr);
  cairo_arc (cr, x, y, is_chosen ? GRIP_SIZE + 3 : GRIP_SIZE + 1.5, 0, 2 * G_PI);
  set_colour (cr, is_chosen ? palette->accent : palette->paper, 1);
  cairo_fill_preserve (cr);
  set_colour (cr, palette->accent, 1);
  cairo_stroke (cr);
}

/* Openings and cut-outs have no grip of their own: the one at hand gets one in its middle. */
static void
draw_held (cairo_t *cr, const RcView *view, const RcSceneRoom *room, RcGrip grip, guint index, const RcPalette *palette)
{
  RcPoint from, to;

  if (grip == RC_GRIP_OPENING && index < room->room->openings->len
      && rc_room_get_opening_ends (room->room, g_ptr_array_index (room->room->openings, index), &from, &to))
    draw_grip (cr, view, (RcPoint){ room->at.x + (from.x + to.x) / 2, room->at.y + (from.y + to.y) / 2 }, TRUE,
               palette);
  else if (grip == RC_GRIP_CUTOUT && index < room->room->cutouts->len)
    {
      g_autoptr (GArray) ring = rc_cutout_compute_ring (g_ptr_array_index (room->room->cutouts, index));
      RcBox box = rc_ring_compute_box (ring);
      draw_grip (cr, view, (RcPoint){ room->at.x + (box.x0 + box.x1) / 2, room->at.y + (box.y0 + box.y1) / 2 }, TRUE,
                 palette);
    }
}

void
rc_gesture_drawing_draw_grips (const RcSceneRoom *room, RcGrip grip, guint index, RcLength reach,
                               const RcPalette *palette, const RcView *view, cairo_t *cr)
{
  cairo_save (cr);
  cairo_set_line_width (cr, 1.25);
  for (guint i = 0; i < room->corners->len; i++)
    {
      RcPoint from, to;
      rc_scene_get_wall (room, i, &from, &to);
      RcPoint middle = { (from.x + to.x) / 2, (from.y + to.y) / 2 };
      draw_grip (cr, view, from, grip == RC_GRIP_CORNER && index == i, palette);
      draw_grip (cr, view, middle, grip == RC_GRIP_WALL && index == i, palette);
    }
  draw_turn_grip (cr, view, rc_gesture_get_turn_grip (room, reach), grip == RC_GRIP_TURN, palette);
  draw_held (cr, view, room, grip, index, palette);
  cairo_restore (cr);
}
