/* Drawings: scales that are true, hatching, what lies under a point, labels, tables. */
#include <math.h>

#include "fitters-area.h"
#include "fitters-words.h"
#include "floor-drawing.h"
#include "floor-pins.h"
#include "hatch.h"
#include "option-facts.h"
#include "page.h"
#include "scale.h"
#include "sheet-fixture.h"
#include "table.h"

#define FT(feet) ((RcLength)((feet)*RC_TICKS_PER_FOOT))

/* 12 ft at a quarter inch to the foot are 3 in on paper, 216 pt; 5 m at 1 : 50 are 100 mm. Arithmetic. */
static void
test_scale_is_true (void)
{
  g_assert_cmpfloat_with_epsilon ((double)FT (12) * rc_scale_to_points_per_tick (48), 216, 1e-9);
  g_assert_cmpfloat_with_epsilon (5.0 * RC_TICKS_PER_M * rc_scale_to_points_per_tick (50), 100 / 25.4 * 72, 1e-9);
}

static void
test_scale_steps (void)
{
  static const struct
  {
    RcUnitSystem units;
    RcLength     width, height;
    guint        ratio;
    const char  *text;
  } rows[] = {
    { RC_UNITS_IMPERIAL, FT (20), FT (20), 48, "1/4\" = 1' (1:48)" },
    { RC_UNITS_IMPERIAL, FT (30), FT (10), 64, "3/16\" = 1' (1:64)" },
    { RC_UNITS_IMPERIAL, FT (48), FT (10), 96, "1/8\" = 1' (1:96)" },
    { RC_UNITS_IMPERIAL, FT (49), FT (10), 128, "3/32\" = 1' (1:128)" },
    { RC_UNITS_METRIC, 7 * RC_TICKS_PER_M, 1, 50, "1:50" },
    { RC_UNITS_METRIC, 15 * RC_TICKS_PER_M, 1, 100, "1:100" },
    { RC_UNITS_METRIC, 0, 0, 10, "1:10" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      guint            ratio = rc_scale_choose (rows[i].units, rows[i].width, rows[i].height, 432, 432);
      g_autofree char *text = rc_scale_format (rows[i].units, ratio);

      g_assert_cmpuint (ratio, ==, rows[i].ratio);
      g_assert_cmpstr (text, ==, rows[i].text);
    }
  /* Anything fits at last. */
  g_assert_cmpuint (rc_scale_choose (RC_UNITS_METRIC, RC_LENGTH_MAX, 1, 432, 432), >, 100000);
  g_assert_cmpint (rc_scale_choose_step (RC_UNITS_IMPERIAL, FT (3)), ==, FT (5));
  g_assert_cmpint (rc_scale_choose_step (RC_UNITS_METRIC, RC_TICKS_PER_M * 3 / 2), ==, 2 * RC_TICKS_PER_M);
}

/* The view of a figure on paper keeps the scale that is stated beside it: the wall's ends are that far apart. */
static void
test_view_fits (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  RcView view = rc_view_fit (fixture->plan->house, 1, 10, 20, 300, 200, 15);
  double left = view.x0, top = view.y0 - (double)FT (20) * view.scale;

  /* Upper floor: x from 0 to 27 ft 1/2 in, y from 0 to 20 ft. The height decides: 170 units for 20 ft. */
  g_assert_cmpfloat_with_epsilon (view.scale * (double)FT (20), 170, 1e-6);
  g_assert_cmpfloat_with_epsilon (top, 35, 1e-6);
  g_assert_cmpfloat (left, >, 10);
  view = rc_view_fit (fixture->plan->house, 7, 0, 0, 100, 100, 0);
  g_assert_cmpfloat_with_epsilon (view.scale * RC_TICKS_PER_M, 100, 1e-6);
}

static void
test_find (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  const RcPlan *plan = fixture->plan;
  RcView        view = { 0, 1000, 0.001 };

  g_assert_cmpstr (rc_floor_drawing_find_room (plan->house, 0, &view, FT (3) * 0.001, 1000 - FT (3) * 0.001), ==,
                   "living");
  g_assert_cmpstr (rc_floor_drawing_find_room (plan->house, 1, &view, FT (3) * 0.001, 1000 - FT (3) * 0.001), ==,
                   "bed1");
  g_assert_null (rc_floor_drawing_find_room (plan->house, 0, &view, -500, -500));
  g_assert_cmpuint (rc_floor_drawing_find_piece (plan, 0, &view, -500, -500), ==, 0);
  g_assert_cmpuint (rc_floor_drawing_find_piece (plan, 7, &view, 1, 999), ==, 0);
  /* A point in the middle of each piece's box that the piece holds finds that piece. */
  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (plan->pieces, i);
      RcBox          box;
      RcPoint        middle;
      int            floor;

      if (!piece->outline || piece->outline->len == 0)
        continue;
      box = rc_region_compute_box (piece->outline);
      middle = (RcPoint){ (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 };
      if (rc_region_locate (piece->outline, middle) <= 0)
        continue;
      floor = rc_house_find_room (plan->house, piece->room)->room->floor;
      g_assert_cmpuint (rc_floor_drawing_find_piece (plan, floor, &view, middle.x * 0.001, 1000 - middle.y * 0.001), ==,
                        piece->number);
    }
}

/* Each cut is found on its roll where the cut list says it lies. */
static void
test_find_on_roll (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  const double scale = 0.0005, size = 10;
  guint        found = 0;

  for (guint c = 0; c < fixture->plan->cuttings->len; c++)
    {
      const RcCutting *cutting = g_ptr_array_index (fixture->plan->cuttings, c);
      double title = rc_roll_drawing_get_height (cutting, size, scale) - (double)cutting->problem->roll_width * scale
                     - size * 1.9;

      for (guint i = 0; i < cutting->answer->placements->len; i++)
        {
          const RcNestPlacement *placement = &g_array_index (cutting->answer->placements, RcNestPlacement, i);
          double                 x = 7 + (placement->along + placement->length / 2) * scale;
          double                 y = 9 + title + (placement->across + placement->width / 2) * scale;

          g_assert_cmpuint (
              rc_roll_drawing_find_piece (fixture->plan, cutting, placement->roll, 7, 9, scale, size, x, y), ==,
              g_array_index (cutting->piece_numbers, guint, placement->cut));
          found++;
        }
      g_assert_cmpuint (rc_roll_drawing_find_piece (fixture->plan, cutting, 0, 7, 9, scale, size, 0, 0), ==, 0);
    }
  g_assert_cmpuint (found, ==, fixture->plan->pieces->len);
}

static double
measure_path (cairo_t *cr)
{
  cairo_path_t *path = cairo_copy_path (cr);
  double        x = 0, y = 0, length = 0;

  for (int i = 0; i < path->num_data; i += path->data[i].header.length)
    {
      const cairo_path_data_t *data = &path->data[i];

      if (data->header.type == CAIRO_PATH_LINE_TO)
        length += hypot (data[1].point.x - x, data[1].point.y - y);
      if (data->header.type != CAIRO_PATH_CLOSE_PATH)
        {
          x = data[1].point.x;
          y = data[1].point.y;
        }
    }
  cairo_path_destroy (path);

  return length;
}

/* Lines `spacing` apart are, in all, as long as area over spacing: 100 x 60 less a hole of 20 x 10, at any turn. */
static void
test_hatch (void)
{
  RcSpot           outer[] = { { 0, 0 }, { 100, 0 }, { 100, 60 }, { 0, 60 } };
  RcSpot           hole[] = { { 30, 20 }, { 30, 30 }, { 50, 30 }, { 50, 20 } };
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_ALPHA, NULL);
  cairo_t         *cr = cairo_create (surface);
  g_autoptr (GPtrArray) rings = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  GArray *ring = g_array_new (FALSE, FALSE, sizeof (RcSpot));

  g_array_append_vals (ring, outer, 4);
  g_ptr_array_add (rings, ring);
  ring = g_array_new (FALSE, FALSE, sizeof (RcSpot));
  g_array_append_vals (ring, hole, 4);
  g_ptr_array_add (rings, ring);
  for (int degrees = 5; degrees < 180; degrees += 20)
    {
      cairo_new_path (cr);
      rc_hatch_add_path (cr, rings, degrees, 0.5, NULL);
      g_assert_cmpfloat_with_epsilon (measure_path (cr) * 0.5, 5800, 20);
    }
  cairo_new_path (cr);
  rc_hatch_add_path (cr, rings, 45, 0, NULL);
  rc_hatch_add_path (cr, rings, 45, 1e-9, NULL);
  g_assert_false (cairo_has_current_point (cr));
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static double
draw_and_measure_ink (const RcSheetFixture *fixture, const RcFloorDrawing *drawing, const RcView *view)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 400, 300);
  cairo_t         *cr = cairo_create (surface);
  double           ink = 0;

  rc_floor_drawing_draw (drawing, view, cr);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  for (int y = 0; y < 300; y++)
    for (int x = 0; x < 400; x++)
      ink += cairo_image_surface_get_data (surface)[y * cairo_image_surface_get_stride (surface) + x] / 255.0;
  cairo_surface_destroy (surface);

  return ink;
}

/* Every zoom, far out to far in, draws without a fault; far away there is nothing. */
static void
test_zooms (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  RcFloorDrawing drawing = { .layers = RC_FLOOR_LAYER_ALL,
                             .palette = &RC_PALETTE_DARK,
                             .font_size = 11,
                             .selected_piece = 1,
                             .selected_room = "living",
                             .plan = fixture->plan };
  RcView         view = rc_view_fit (fixture->plan->house, 0, 0, 0, 400, 300, 10);

  g_assert_cmpfloat (draw_and_measure_ink (fixture, &drawing, &view), >, 1000);
  for (double zoom = 1e-4; zoom < 1e4; zoom *= 10)
    {
      RcView near_or_far = { 200 + (view.x0 - 200) * zoom, 150 + (view.y0 - 150) * zoom, view.scale * zoom };

      draw_and_measure_ink (fixture, &drawing, &near_or_far);
    }
  view.x0 += 1e6;
  g_assert_cmpfloat (draw_and_measure_ink (fixture, &drawing, &view), ==, 0);
}

/* Drawing changes nothing, and twice the same is the same. */
static void
test_draws_the_same (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_METRIC);
  RcFloorDrawing drawing
      = { .layers = RC_FLOOR_LAYER_ALL, .palette = &RC_PALETTE_PAPER, .font_size = 8, .plan = fixture->plan };
  RcView view = rc_view_fit (fixture->plan->house, 0, 0, 0, 400, 300, 20);

  g_assert_cmpfloat (draw_and_measure_ink (fixture, &drawing, &view), ==,
                     draw_and_measure_ink (fixture, &drawing, &view));
}

/* Ink of a 12 by 14 px patch. */
static double
measure_mark (gboolean is_kept)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 12, 14);
  cairo_t         *cr = cairo_create (surface);
  RcView           view = { 0, 0, 1 };
  RcPen            pen;
  double           ink = 0;

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  rc_pen_init (&pen, cr, &view, &RC_PALETTE_PAPER, 11);
  rc_pin_draw_mark (&pen, (RcSpot){ 6, 13 }, is_kept);
  rc_pen_clear (&pen);
  cairo_surface_flush (surface);
  for (int y = 0; y < 14; y++)
    for (int x = 0; x < 12; x++)
      ink += 1
             - (cairo_image_surface_get_data (surface)[y * cairo_image_surface_get_stride (surface) + 4 * x + 1])
                   / 255.0;
  cairo_destroy (cr);
  cairo_surface_destroy (surface);

  return ink;
}

static void
add_pin (const RcPlan *plan, const char *room, RcPinKind kind, guint n, const RcPoint *points)
{
  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);
      RcPin            *pin = rc_pin_new (kind, room);

      g_array_append_vals (pin->points, points, n);
      if (g_ptr_array_find_with_equal_func (area_plan->area->rooms, room, g_str_equal, NULL))
        g_ptr_array_add (area_plan->area->pins, g_steal_pointer (&pin));
      rc_pin_free (pin);
    }
}

/* What is pinned on a storey adds ink to that storey's drawing and to no other; a pin that is kept is full, one that is
 * not is hollow, so that black and white tells them apart. */
static void
test_pins (void)
{
  static const RcPoint zone[] = { { FT (1), FT (1) }, { FT (5), FT (1) }, { FT (5), FT (4) }, { FT (1), FT (4) } };
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  RcFloorDrawing drawing
      = { .layers = RC_FLOOR_LAYER_SEAMS, .palette = &RC_PALETTE_PAPER, .font_size = 9, .plan = fixture->plan };
  RcView view = rc_view_fit (fixture->plan->house, 0, 0, 0, 400, 300, 20);
  double plain = draw_and_measure_ink (fixture, &drawing, &view), with_seam, with_floor, upper;

  drawing.floor = 1;
  upper = draw_and_measure_ink (fixture, &drawing, &view);
  drawing.floor = 0;
  g_assert_false (rc_floor_has_pins (fixture->plan, 0));
  add_pin (fixture->plan, "living", RC_PIN_SEAM, 2, zone);
  with_seam = draw_and_measure_ink (fixture, &drawing, &view);
  g_assert_cmpfloat (with_seam, >, plain + 5);
  add_pin (fixture->plan, "living", RC_PIN_NO_SEAMS, 4, zone);
  with_floor = draw_and_measure_ink (fixture, &drawing, &view);
  g_assert_cmpfloat (with_floor, >, with_seam + 50);
  g_assert_true (rc_floor_has_pins (fixture->plan, 0));
  g_assert_false (rc_floor_has_pins (fixture->plan, 1));
  drawing.floor = 1;
  g_assert_cmpfloat (draw_and_measure_ink (fixture, &drawing, &view), ==, upper);
  g_assert_cmpfloat (measure_mark (TRUE), >, 1.3 * measure_mark (FALSE));
  g_assert_cmpfloat (measure_mark (FALSE), >, 2);
}

/* Common practice, no source: at a cross seam the piece whose pile leans out over the seam is cut first. */
static void
test_first_cut (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new_joined_fills ();
  guint checked = 0;

  for (guint i = 0; i < fixture->plan->seams->len; i++)
    {
      const RcSeam  *seam = g_ptr_array_index (fixture->plan->seams, i);
      const RcPiece *first, *second;
      RcBox          one, other;
      double         along;

      if (seam->kind != RC_SEAM_CROSS)
        continue;
      first = rc_plan_find_piece (fixture->plan, rc_seam_find_first_cut (fixture->plan, seam));
      g_assert_nonnull (first);
      second = rc_plan_find_piece (fixture->plan, first->number == seam->piece_a ? seam->piece_b : seam->piece_a);
      one = rc_region_compute_box (first->outline);
      other = rc_region_compute_box (second->outline);
      /* From the first to the second runs the way the pile leans. */
      along = (double)(other.x0 + other.x1 - one.x0 - one.x1) * cos (first->pile_degrees * G_PI / 180)
              + (double)(other.y0 + other.y1 - one.y0 - one.y1) * sin (first->pile_degrees * G_PI / 180);
      g_assert_cmpfloat (along, >, 0);
      checked++;
    }
  g_assert_cmpuint (checked, >, 2);
}

/* Common practice, no source: 2 marks about 1 1/2 ft wide, 3 about 4 ft. */
static void
test_marks (void)
{
  g_assert_cmpuint (rc_fitters_get_n_marks (FT (1.5)), ==, 2);
  g_assert_cmpuint (rc_fitters_get_n_marks (FT (4)), ==, 3);
  g_assert_cmpuint (rc_fitters_get_n_marks (FT (6.5)), ==, 4);
  g_assert_cmpuint (rc_fitters_get_n_marks (0), ==, 2);
}

/* Prices our own: the price of a way of laying is carpet and seams at the book's sale prices. */
static void
test_option_price (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  RcSheetData       data = rc_sheet_fixture_get_data (fixture, RC_PAPER_LETTER);
  const RcAreaPlan *area_plan = g_ptr_array_index (fixture->plan->areas, 2);
  const RcOption   *option = rc_area_plan_get_chosen (area_plan);
  RcMoney           price, carpet, seam, carpet_part, seam_part;

  g_assert_true (rc_option_compute_price (&data, area_plan->area, option, &price));
  g_assert_true (rc_money_multiply (2350, rc_unit_from_area (option->carpet_area, RC_UNIT_SQ_YD), &carpet, NULL));
  g_assert_true (rc_money_multiply (225, rc_unit_from_length (option->side_seam, RC_UNIT_FT), &seam, NULL));
  g_assert_cmpint (price, ==, carpet + seam + 1800 * (RcMoney)rc_option_count_cross_seams (option));
  g_assert_true (rc_option_compute_prices (&data, area_plan->area, option, &carpet_part, &seam_part));
  g_assert_cmpint (carpet_part, ==, carpet);
  g_assert_cmpint (seam_part, ==, price - carpet);
  data.book = NULL;
  g_assert_false (rc_option_compute_price (&data, area_plan->area, option, &price));
}

/* A table of many rows takes as many pages as its rows fill, and a paragraph longer than a page runs on. */
static void
test_flow (void)
{
  RcPages *pages = rc_pages_new (300, 400, "Title", "About", "Foot");
  RcFlow   flow;
  g_autoptr (RcTable) table = rc_table_new ();
  GString *text = g_string_new (NULL);
  guint    before;

  rc_flow_start (&flow, pages, FALSE);
  rc_table_add_column (table, "NUMBER", RC_COLUMN_DECIMAL, 0);
  rc_table_add_column (table, "WORDS", RC_COLUMN_TEXT, 1);
  for (int i = 0; i < 60; i++)
    rc_table_add_row (table, i % 10 ? RC_ROW_BODY : RC_ROW_GROUP, i % 10 ? "1234.5" : "A group of rows", "words");
  rc_table_flow (table, &flow);
  g_assert_cmpuint (pages->pages->len, >=, 3);
  before = pages->pages->len;
  for (int i = 0; i < 400; i++)
    g_string_append (text, "one word after another ");
  rc_flow_text (&flow, RC_TEXT_BODY, text->str);
  g_assert_cmpuint (pages->pages->len, >=, before + 2);
  g_assert_cmpfloat (flow.y, <=, flow.bottom);
  g_string_free (text, TRUE);
  rc_pages_free (pages);
}

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheet-drawing/scale/true", test_scale_is_true);
  g_test_add_func ("/sheet-drawing/scale/steps", test_scale_steps);
  g_test_add_func ("/sheet-drawing/view", test_view_fits);
  g_test_add_func ("/sheet-drawing/find", test_find);
  g_test_add_func ("/sheet-drawing/find-on-roll", test_find_on_roll);
  g_test_add_func ("/sheet-drawing/hatch", test_hatch);
  g_test_add_func ("/sheet-drawing/zooms", test_zooms);
  g_test_add_func ("/sheet-drawing/same", test_draws_the_same);
  g_test_add_func ("/sheet-drawing/pins", test_pins);
  g_test_add_func ("/sheet-drawing/first-cut", test_first_cut);
  g_test_add_func ("/sheet-drawing/marks", test_marks);
  g_test_add_func ("/sheet-drawing/option-price", test_option_price);
  g_test_add_func ("/sheet-drawing/flow", test_flow);
  status = g_test_run ();
  rc_sheet_fixture_forget_fonts ();

  return status;
}
