#include "floor-figure.h"

#include <glib/gi18n-lib.h>

#include "floor-openings.h"
#include "floor-pieces.h"
#include "floor-pins.h"
#include "floor-rooms.h"
#include "scale.h"

double
rc_figure_get_font_size (guint ratio)
{
  if (ratio <= 50)
    return 7.5;

  return ratio <= 100 ? 6.75 : 6;
}

RcBox
rc_figure_compute_box (const RcHouse *house, int floor)
{
  RcBox box = rc_floor_compute_box (house, floor);

  rc_floor_add_leaves (house, floor, &box);

  return box;
}

guint
rc_figure_choose_ratio (RcUnitSystem units, RcBox box, double width, double height, double pad)
{
  return rc_scale_choose (units, box.x1 - box.x0, box.y1 - box.y0, width - 2 * pad, height - 2 * pad);
}

double
rc_figure_get_height (RcBox box, guint ratio, double pad)
{
  return (double)(box.y1 - box.y0) * rc_scale_to_points_per_tick (ratio) + 2 * pad;
}

static void
figure_free (gpointer data)
{
  RcFigure *figure = data;

  if (figure->destroy)
    figure->destroy (figure->plan);
  g_free (figure);
}

static void
draw_figure (cairo_t *cr, double x, double y, double width, double height, gconstpointer data)
{
  const RcFigure      *figure = data;
  const RcFloorDrawing drawing = {
    .layers = figure->layers,
    .palette = &RC_PALETTE_PAPER,
    .font_size = figure->font_size,
    .floor = figure->floor,
    .plan = figure->plan,
  };
  RcView view;

  view.scale = figure->scale;
  view.x0 = x + width / 2 - ((double)figure->box.x0 + (double)figure->box.x1) / 2 * view.scale;
  view.y0 = y + height / 2 + ((double)figure->box.y0 + (double)figure->box.y1) / 2 * view.scale;
  cairo_rectangle (cr, x, y, width, height);
  cairo_clip (cr);
  rc_floor_drawing_draw (&drawing, &view, cr);
}

void
rc_figure_add (RcPage *page, double x, double y, double width, double height, const RcFigure *figure)
{
  RcFigure *own = g_new (RcFigure, 1);

  *own = *figure;
  rc_page_add_drawing (page, x, y, width, height, draw_figure, own, figure_free);
}

typedef struct
{
  RcUnitSystem units;
  guint        ratio;
  gboolean     with_pins;
} Legend;

/* Text that begins at x. */
static double
draw_words (RcPen *pen, double x, double y, const char *text, double size, gboolean bold)
{
  double width, height;

  rc_pen_measure_text (pen, text, size, bold, &width, &height);
  rc_pen_set_colour (pen, pen->palette->ink, 1);
  rc_pen_draw_text (pen, text, size, bold, (RcSpot){ x + width / 2, y }, 0, FALSE);

  return width;
}

static void
draw_north (RcPen *pen, double x, double y)
{
  double radius = 13;

  rc_pen_set_colour (pen, pen->palette->ink, 1);
  cairo_set_line_width (pen->cr, 0.7);
  cairo_arc (pen->cr, x, y, radius, 0, 2 * G_PI);
  cairo_stroke (pen->cr);
  /* One half black, one half white, pointing up: y of the house is north. */
  cairo_move_to (pen->cr, x, y - radius - 4);
  cairo_line_to (pen->cr, x + 5, y + radius - 4);
  cairo_line_to (pen->cr, x, y + radius - 8);
  cairo_close_path (pen->cr);
  cairo_fill (pen->cr);
  cairo_move_to (pen->cr, x, y - radius - 4);
  cairo_line_to (pen->cr, x - 5, y + radius - 4);
  cairo_line_to (pen->cr, x, y + radius - 8);
  cairo_close_path (pen->cr);
  cairo_stroke (pen->cr);
  rc_pen_draw_text (pen, C_ ("the compass point", "N"), 8, TRUE, (RcSpot){ x, y + radius + 7 }, 0, FALSE);
}

static void
draw_bar (RcPen *pen, const Legend *legend, double x, double y, double room)
{
  double           scale = rc_scale_to_points_per_tick (legend->ratio), height = 4;
  RcLength         step = rc_scale_choose_step (legend->units, (RcLength)(24 / scale));
  int              parts = CLAMP ((int)(room / ((double)step * scale)), 1, 4);
  g_autofree char *words = rc_scale_format (legend->units, legend->ratio);
  g_autofree char *said = g_strdup_printf (_ ("Scale %s"), words);

  draw_words (pen, x, y - 15, said, 8, TRUE);
  cairo_set_line_width (pen->cr, 0.6);
  for (int i = 0; i <= parts; i++)
    {
      double           at = x + (double)(i * step) * scale;
      g_autofree char *text = NULL;

      if (i < parts)
        {
          cairo_rectangle (pen->cr, at, y - height / 2, (double)step * scale, height);
          if (i % 2 == 0)
            cairo_fill_preserve (pen->cr);
          cairo_stroke (pen->cr);
        }
      if (legend->units == RC_UNITS_METRIC)
        {
          g_autofree char *number = rc_quantity_format (i * step * RC_MICRO / RC_TICKS_PER_M, 1);

          text = g_strdup_printf (i == parts ? _ ("%s m") : "%s", number);
        }
      else
        text = g_strdup_printf (i == parts ? _ ("%d ft") : "%d", (int)(i * step / RC_TICKS_PER_FOOT));
      rc_pen_draw_text (pen, text, 6.5, FALSE, (RcSpot){ at, y + 9 }, 0, FALSE);
    }
  {
    const char *note = _ ("Print at full size to measure from the drawing.");

    draw_words (pen, x, y + 20, note, 6, FALSE);
  }
}

static GPtrArray *
dup_box (double x, double y, double width, double height)
{
  GPtrArray *rings = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  GArray    *ring = g_array_new (FALSE, FALSE, sizeof (RcSpot));
  RcSpot     corners[4] = { { x, y }, { x + width, y }, { x + width, y + height }, { x, y + height } };

  g_array_append_vals (ring, corners, 4);
  g_ptr_array_add (rings, ring);

  return rings;
}

static void
draw_swatch (RcPen *pen, double x, double y, RcHatch hatch)
{
  g_autoptr (GPtrArray) rings = dup_box (x, y - 5, 22, 10);

  rc_piece_draw_rings (pen, rings, hatch, FALSE);
}

static void
draw_seam_sample (RcPen *pen, double x, double y, RcSeamKind kind)
{
  cairo_save (pen->cr);
  rc_seam_set_line (pen, kind);
  cairo_move_to (pen->cr, x, y);
  cairo_line_to (pen->cr, x + 22, y);
  cairo_stroke (pen->cr);
  cairo_restore (pen->cr);
}

static void
draw_kept_floor_sample (RcPen *pen, double x, double y)
{
  g_autoptr (GPtrArray) rings = dup_box (x, y - 5, 22, 10);

  rc_pin_draw_kept_floor (pen, rings);
}

#define KEY_SIZE  7.0
#define KEY_WORDS 28.0 /* where the words of a key begin, past its mark */
#define KEY_GAP   12.0 /* to the next column */

/* The mark of a key, its place counted as draw_keys' words are. */
static void
draw_key (RcPen *pen, guint i, double x, double y)
{
  switch (i)
    {
    case 0:
    case 1:
    case 2:
      draw_swatch (pen, x, y, (RcHatch)i);
      break;
    case 3:
      draw_seam_sample (pen, x, y, RC_SEAM_SIDE);
      break;
    case 4:
      draw_seam_sample (pen, x, y, RC_SEAM_CROSS);
      break;
    case 5:
      rc_pen_set_colour (pen, pen->palette->ink, 1);
      rc_pen_draw_arrow (pen, (RcSpot){ x + 11, y }, 0, 20);
      break;
    case 6:
      rc_rule_draw_mark (pen, (RcSpot){ x + 11, y }, 1);
      break;
    case 7:
      rc_piece_draw_number (pen, (RcSpot){ x + 11, y }, 1, FALSE);
      break;
    case 8:
    case 9:
      rc_pin_draw_mark (pen, (RcSpot){ x + 11, y + 5 }, i == 8);
      break;
    default:
      draw_kept_floor_sample (pen, x, y);
      break;
    }
}

#define MAX_KEYS       11
#define KEYS_UNPINNED  8
#define KEY_STEP       15.5 /* from row to row */
#define KEY_STEP_CLOSE 12.5

/* Columns of `n_rows` keys, each as wide as its words; the last ends at `right`. Returns where the first begins. Pins
 * have keys only where there are any. */
static double
draw_keys (RcPen *pen, double right, double middle, gboolean with_pins, guint n_rows, double step)
{
  const char *words[MAX_KEYS]
      = { _ ("drop"),        _ ("fill"),  _ ("joined fill"), _ ("side seam"),        _ ("cross seam"), _ ("pile leans"),
          _ ("rule broken"), _ ("piece"), _ ("pinned"),      _ ("pinned, not kept"), _ ("no seams") };
  guint  n = with_pins ? MAX_KEYS : KEYS_UNPINNED, n_columns = (n + n_rows - 1) / n_rows;
  double y = middle - step * (n_rows - 1) / 2;
  double columns[MAX_KEYS + 1] = { 0 };
  double x;

  for (guint i = 0; i < n; i++)
    {
      double words_width, height;

      rc_pen_measure_text (pen, words[i], KEY_SIZE, FALSE, &words_width, &height);
      columns[i / n_rows + 1]
          = MAX (columns[i / n_rows + 1], KEY_WORDS + words_width + (i / n_rows + 1 < n_columns ? KEY_GAP : 0));
    }
  for (guint c = 1; c <= n_columns; c++)
    columns[c] += columns[c - 1];
  x = right - columns[n_columns];

  for (guint i = 0; i < n; i++)
    {
      double at_x = x + columns[i / n_rows], at_y = y + (i % n_rows) * step;

      draw_key (pen, i, at_x, at_y);
      draw_words (pen, at_x + KEY_WORDS, at_y, words[i], KEY_SIZE, FALSE);
    }

  return x;
}

static void
draw_legend (cairo_t *cr, double x, double y, double width, double height, gconstpointer data)
{
  const Legend *legend = data;
  RcView        view = { 0, 0, 1 };
  double        middle = y + height / 2, bar = x + 46, keys;
  RcPen         pen;

  rc_pen_init (&pen, cr, &view, &RC_PALETTE_PAPER, 7);
  draw_north (&pen, x + 18, middle - 5);
  keys = draw_keys (&pen, x + width, middle, legend->with_pins, legend->with_pins ? 4 : 3,
                    legend->with_pins ? KEY_STEP_CLOSE : KEY_STEP);
  rc_pen_set_colour (&pen, pen.palette->ink, 1);
  draw_bar (&pen, legend, bar, middle - 1, keys - bar - 22);
  rc_pen_clear (&pen);
}

#define NORTH_WIDTH 42.0
#define LEAST_ROWS  3 /* as high as the north arrow */

static double
measure_keys (guint n_rows)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_ALPHA, NULL);
  cairo_t         *cr = cairo_create (surface);
  RcView           view = { 0, 0, 1 };
  RcPen            pen;

  rc_pen_init (&pen, cr, &view, &RC_PALETTE_PAPER, KEY_SIZE);
  double width = -draw_keys (&pen, 0, 0, TRUE, n_rows, KEY_STEP_CLOSE);
  rc_pen_clear (&pen);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return width;
}

/* In points of the sheets. */
static guint
find_rows (double width)
{
  guint n_rows = LEAST_ROWS;

  while (n_rows < MAX_KEYS && NORTH_WIDTH + measure_keys (n_rows) > width)
    n_rows++;
  return n_rows;
}

double
rc_legend_get_height (double font_size, double width)
{
  double scale = font_size / KEY_SIZE;
  return (find_rows (width / scale) + 0.6) * KEY_STEP_CLOSE * scale;
}

void
rc_legend_draw (cairo_t *cr, const RcPalette *palette, double font_size, double x, double y, double width)
{
  double scale = font_size / KEY_SIZE;
  guint  n_rows = find_rows (width / scale);
  double middle = rc_legend_get_height (font_size, width) / scale / 2;
  RcView view = { 0, 0, 1 };
  RcPen  pen;

  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_scale (cr, scale, scale);
  rc_pen_init (&pen, cr, &view, palette, KEY_SIZE);
  draw_north (&pen, 18, middle - 3);
  draw_keys (&pen, NORTH_WIDTH + measure_keys (n_rows), middle, TRUE, n_rows, KEY_STEP_CLOSE);
  rc_pen_clear (&pen);
  cairo_restore (cr);
}

void
rc_legend_add (RcPage *page, double x, double y, double width, RcUnitSystem units, guint ratio, gboolean with_pins)
{
  Legend *legend = g_new0 (Legend, 1);

  legend->units = units;
  legend->ratio = ratio;
  legend->with_pins = with_pins;
  rc_page_add_line (page, x, y, x + width, y, 0.5, 0.5);
  rc_page_add_drawing (page, x, y + 2, width, RC_LEGEND_HEIGHT - 4, draw_legend, legend, g_free);
  rc_page_add_line (page, x, y + RC_LEGEND_HEIGHT, x + width, y + RC_LEGEND_HEIGHT, 0.5, 0.5);
}
