/* Letters to the customer: the shop's logo, how the options fill their pages. */
#include <cairo.h>
#include <string.h>

#include "sheet-fixture.h"

static cairo_status_t
append_bytes (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);

  return CAIRO_STATUS_SUCCESS;
}

/* A red picture as a PNG. */
static GByteArray *
make_png (int width, int height)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t         *cr = cairo_create (surface);
  GByteArray      *bytes = g_byte_array_new ();

  cairo_set_source_rgb (cr, 1, 0, 0);
  cairo_paint (cr);
  cairo_destroy (cr);
  g_assert_cmpint (cairo_surface_write_to_png_stream (surface, append_bytes, bytes), ==, CAIRO_STATUS_SUCCESS);
  cairo_surface_destroy (surface);

  return bytes;
}

/* Where the first page of a quotation is red, at a pixel a point; an empty box where nothing is. */
static cairo_rectangle_int_t
find_red (RcSheetFixture *fixture, GBytes *logo)
{
  RcSheetData           data = rc_sheet_fixture_get_data (fixture, RC_PAPER_LETTER);
  cairo_surface_t      *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 612, 792);
  cairo_t              *cr = cairo_create (surface);
  cairo_region_t       *region = cairo_region_create ();
  cairo_rectangle_int_t box;
  RcSheet              *sheet;

  g_clear_pointer (&fixture->book->logo, g_bytes_unref);
  fixture->book->logo = logo;
  sheet = rc_sheet_new (RC_SHEET_QUOTATION, &data);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  rc_sheet_draw (sheet, 0, cr);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  rc_sheet_free (sheet);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  for (int y = 0; y < 792; y++)
    for (int x = 0; x < 612; x++)
      {
        const guchar *row = cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface);

        if ((((const guint32 *)(gconstpointer)row)[x] & 0xffffff) == 0xff0000)
          cairo_region_union_rectangle (region, &(cairo_rectangle_int_t){ x, y, 1, 1 });
      }
  cairo_region_get_extents (region, &box);
  cairo_region_destroy (region);
  cairo_surface_destroy (surface);

  return box;
}

/* In the top left corner, as large as 120 by 48 points allow, neither stretched nor over the margins. */
static void
test_logo (void)
{
  static const struct
  {
    int width, height, drawn_width, drawn_height;
  } cases[] = { { 240, 48, 120, 24 }, { 500, 500, 48, 48 }, { 12, 12, 48, 48 }, { 90, 900, 5, 48 } };
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new_empty ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      GByteArray           *png = make_png (cases[i].width, cases[i].height);
      cairo_rectangle_int_t box = find_red (fixture, g_byte_array_free_to_bytes (png));

      /* An edge may be blended. */
      g_assert_cmpint (box.x, >=, 40);
      g_assert_cmpint (box.y, >=, 40);
      g_assert_cmpint (box.x, <=, 41);
      g_assert_cmpint (box.y, <=, 41);
      g_assert_cmpint (ABS (box.width - cases[i].drawn_width), <=, 1);
      g_assert_cmpint (ABS (box.height - cases[i].drawn_height), <=, 1);
    }
}

/* Whatever is no sound picture is left out. PNG specification (W3C, ISO/IEC 15948), 11.2.2: width and height are the
 * bytes 16 to 23. */
static void
test_bad_logo (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new_empty ();

  g_assert_cmpint (find_red (fixture, NULL).width, ==, 0);
  g_assert_cmpint (find_red (fixture, g_bytes_new_static ("", 0)).width, ==, 0);
  g_assert_cmpint (find_red (fixture, g_bytes_new_static ("GIF89a, not a PNG by any means", 30)).width, ==, 0);
  for (guint cut = 13; cut < 80; cut += 7)
    {
      GByteArray *png = make_png (40, 40);

      /* More is cut off than the last chunk, which holds no picture. */
      g_byte_array_set_size (png, png->len > cut ? png->len - cut : 0);
      g_assert_cmpint (find_red (fixture, g_byte_array_free_to_bytes (png)).width, ==, 0);
    }
  for (guint at = 8; at < 60; at++)
    {
      GByteArray *png = make_png (40, 40);

      png->data[at] ^= 0x55;
      find_red (fixture, g_byte_array_free_to_bytes (png));
    }
  {
    /* 2^31 - 1 pixels square. */
    GByteArray  *png = make_png (40, 40);
    const guchar huge[] = { 0x7f, 0xff, 0xff, 0xff, 0x7f, 0xff, 0xff, 0xff };

    memcpy (png->data + 16, huge, sizeof huge);
    g_assert_cmpint (find_red (fixture, g_byte_array_free_to_bytes (png)).width, ==, 0);
  }
}

/* Twelve areas with one way each are rows of one table, and the house's three areas leave no page half empty. */
static void
test_options_pages (void)
{
  g_autoptr (RcSheetFixture) house = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  g_autoptr (RcSheetFixture) building = rc_sheet_fixture_new_building (12);
  RcSheetData data = rc_sheet_fixture_get_data (house, RC_PAPER_LETTER);

  g_assert_cmpuint (rc_sheet_count_pages (RC_SHEET_OPTIONS, &data), <=, 3);
  data = rc_sheet_fixture_get_data (building, RC_PAPER_LETTER);
  for (guint i = 0; i < building->plan->areas->len; i++)
    {
      RcAreaPlan *area_plan = g_ptr_array_index (building->plan->areas, i);

      area_plan->chosen = 0;
      g_ptr_array_set_size (area_plan->options, 1);
    }
  g_assert_cmpuint (rc_sheet_count_pages (RC_SHEET_OPTIONS, &data), ==, 1);
}

/* Alternatives stand beside each other on one page; more than six columns begin again beside the first. The longest
 * names of everything may take a second one. */
static void
test_alternatives_pages (void)
{
  static const struct
  {
    guint n, n_pages;
  } rows[] = { { 1, 2 }, { 5, 2 }, { 6, 3 }, { 10, 4 } };
  g_autoptr (RcSheetFixture) house = rc_sheet_fixture_new_long_names ();

  for (guint paper = RC_PAPER_LETTER; paper <= RC_PAPER_A4; paper++)
    for (guint r = 0; r < G_N_ELEMENTS (rows); r++)
      {
        RcSheetData data = rc_sheet_fixture_get_data (house, paper);
        g_autoptr (GPtrArray) alternatives = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quote_free);
        g_autoptr (RcSheet) sheet = NULL;

        for (guint i = 0; i < rows[r].n; i++)
          {
            RcQuote *quote = rc_quote_new (house->job, house->quantities, house->book, NULL, NULL);

            quote->option = g_strdup_printf ("%u: the dearest carpet of all throughout, with the fewest seams", i);
            g_ptr_array_add (alternatives, quote);
          }
        data.alternatives = alternatives;
        sheet = rc_sheet_new (RC_SHEET_ALTERNATIVES, &data);
        g_assert_cmpuint (rc_sheet_get_n_pages (sheet), <=, rows[r].n_pages);
      }
}

/* Quantities and prices that the customer is not to see are nowhere on the paper, whatever the language. */
static void
test_hidden_detail (void)
{
  static const char *const telling[] = { "QUANTITY", "PRICE", "quantity times price", "CARPET", "of roll" };
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  RcSheetData      data = rc_sheet_fixture_get_data (fixture, RC_PAPER_LETTER);
  g_autofree char *total = rc_money_format (fixture->quote->total, &fixture->quote->currency);

  for (RcDetail detail = RC_DETAIL_FULL; detail <= RC_DETAIL_GROUPS; detail++)
    {
      g_autofree char *words = NULL;

      fixture->quote->detail = detail;
      words = rc_sheet_fixture_dup_words (RC_SHEET_QUOTATION, &data);
      if (!words)
        {
          g_test_skip ("pdftotext is not here");
          return;
        }
      for (guint i = 0; i < G_N_ELEMENTS (telling); i++)
        g_assert_cmpint (strstr (words, telling[i]) != NULL, ==, detail == RC_DETAIL_FULL);
      g_assert_cmpint (strstr (words, "All goods") != NULL, ==, detail == RC_DETAIL_GROUPS);
      g_assert_nonnull (strstr (words, total));
    }
}

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheet-letter/hidden detail", test_hidden_detail);
  g_test_add_func ("/sheet-letter/logo", test_logo);
  g_test_add_func ("/sheet-letter/logo/bad", test_bad_logo);
  g_test_add_func ("/sheet-letter/options/pages", test_options_pages);
  g_test_add_func ("/sheet-letter/alternatives/pages", test_alternatives_pages);
  status = g_test_run ();
  rc_sheet_fixture_forget_fonts ();

  return status;
}
