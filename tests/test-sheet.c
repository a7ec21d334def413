/* Sheets: pages, margins, words on them, the same bytes each time. */
#include <glib/gstdio.h>
#include <string.h>

#include "rowcut-error.h"
#include "sheet-fixture.h"

static char *
make_folder (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("rowcut-sheet-XXXXXX", &error);

  g_assert_no_error (error);

  return folder;
}

static void
remove_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)))
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      g_remove (path);
    }
  g_rmdir (folder);
}

static void
test_paper (void)
{
  double width, height;

  /* ANSI Letter 8 1/2 by 11 in; ISO 216 A4 210 by 297 mm (from memory). */
  rc_paper_get_size (RC_PAPER_LETTER, &width, &height);
  g_assert_cmpfloat (width, ==, 612);
  g_assert_cmpfloat (height, ==, 792);
  rc_paper_get_size (RC_PAPER_A4, &width, &height);
  g_assert_cmpfloat_with_epsilon (width, 595.276, 0.001);
  g_assert_cmpfloat_with_epsilon (height, 841.890, 0.001);
}

static void
test_names (void)
{
  const char *names[] = { "seam-plan", "fitters-sheet", "cut-list",    "quotation",  "order",
                          "options",   "alternatives",  "roll-labels", "job-summary" };

  for (int kind = 0; kind < RC_N_SHEETS; kind++)
    {
      g_assert_cmpstr (rc_sheet_kind_get_name (kind), ==, names[kind]);
      g_assert_cmpstr (rc_sheet_kind_get_label (kind), !=, "");
    }
}

/* Everything a page draws lies inside its margins: 36 pt, more than printers keep to themselves. */
static void
assert_inside (const RcSheet *sheet, guint page)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t         *cr = cairo_create (surface);
  double           width, height, x, y, ink_width, ink_height;

  rc_sheet_get_page_size (sheet, page, &width, &height);
  rc_sheet_draw (sheet, page, cr);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_recording_surface_ink_extents (surface, &x, &y, &ink_width, &ink_height);
  cairo_surface_destroy (surface);
  g_assert_cmpfloat (ink_width, >, 0);
  g_assert_cmpfloat (x, >=, 36);
  g_assert_cmpfloat (y, >=, 36);
  g_assert_cmpfloat (x + ink_width, <=, width - 36);
  g_assert_cmpfloat (y + ink_height, <=, height - 36);
}

static void
check_all_sheets (const RcSheetFixture *fixture)
{
  for (RcPaper paper = RC_PAPER_LETTER; paper <= RC_PAPER_A4; paper++)
    {
      RcSheetData data = rc_sheet_fixture_get_data (fixture, paper);

      for (int kind = 0; kind < RC_N_SHEETS; kind++)
        {
          g_autoptr (RcSheet) sheet = NULL;

          if (kind == RC_SHEET_ORDER && !data.order)
            continue;
          sheet = rc_sheet_new (kind, &data);
          g_assert_cmpuint (rc_sheet_get_n_pages (sheet), >=, 1);
          g_assert_cmpuint (rc_sheet_get_n_pages (sheet), ==, rc_sheet_count_pages (kind, &data));
          for (guint page = 0; page < rc_sheet_get_n_pages (sheet); page++)
            assert_inside (sheet, page);
        }
    }
}

static void
test_margins_house (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);

  check_all_sheets (fixture);
}

static void
test_margins_metric (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_METRIC);

  check_all_sheets (fixture);
}

static void
test_margins_long_names (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new_long_names ();

  check_all_sheets (fixture);
}

static void
test_margins_large (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new_large ();

  check_all_sheets (fixture);
}

static void
test_margins_empty (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new_empty ();
  RcSheetData data = rc_sheet_fixture_get_data (fixture, RC_PAPER_LETTER);

  check_all_sheets (fixture);
  g_assert_cmpuint (rc_sheet_count_pages (RC_SHEET_SEAM_PLAN, &data), ==, 1);
  g_assert_cmpuint (rc_sheet_count_pages (RC_SHEET_CUT_LIST, &data), ==, 1);
}

/* A storey has a page, tables have theirs; many rooms make many pages. */
static void
test_pages (void)
{
  g_autoptr (RcSheetFixture) house = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  g_autoptr (RcSheetFixture) building = rc_sheet_fixture_new_building (40);
  RcSheetData data = rc_sheet_fixture_get_data (house, RC_PAPER_LETTER);
  RcSheetData many = rc_sheet_fixture_get_data (building, RC_PAPER_LETTER);

  g_assert_cmpuint (rc_sheet_count_pages (RC_SHEET_SEAM_PLAN, &data), >=, 3);
  for (int kind = 0; kind < RC_N_SHEETS; kind++)
    if (kind != RC_SHEET_ORDER && kind != RC_SHEET_ALTERNATIVES && kind != RC_SHEET_ROLL_LABELS)
      g_assert_cmpuint (rc_sheet_count_pages (kind, &many), >, rc_sheet_count_pages (kind, &data));
  /* The storey is too large for a page at a scale that reads: each of the 40 areas is drawn again. */
  g_assert_cmpuint (rc_sheet_count_pages (RC_SHEET_SEAM_PLAN, &many), >, 40);
}

/* A wide house lies on its side; drawn for upright paper it is turned and still inside the margins. */
static void
test_lying_page (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new_wide ();
  RcSheetData data = rc_sheet_fixture_get_data (fixture, RC_PAPER_LETTER);
  g_autoptr (RcSheet) sheet = rc_sheet_new (RC_SHEET_SEAM_PLAN, &data);
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t         *cr = cairo_create (surface);
  double           width, height, x, y, ink_width, ink_height;

  check_all_sheets (fixture);
  rc_sheet_get_page_size (sheet, 0, &width, &height);
  g_assert_cmpfloat (width, ==, 792);
  g_assert_cmpfloat (height, ==, 612);
  rc_sheet_draw_page (RC_SHEET_SEAM_PLAN, &data, 0, cr);
  cairo_destroy (cr);
  cairo_recording_surface_ink_extents (surface, &x, &y, &ink_width, &ink_height);
  cairo_surface_destroy (surface);
  g_assert_cmpfloat (x, >=, 36);
  g_assert_cmpfloat (y, >=, 36);
  g_assert_cmpfloat (x + ink_width, <=, 612 - 36);
  g_assert_cmpfloat (y + ink_height, <=, 792 - 36);
  g_assert_cmpfloat (ink_height, >, 650);
}

static void
test_pdf_same_bytes (void)
{
  g_autoptr (RcSheetFixture) one = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  g_autoptr (RcSheetFixture) other = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  RcSheetData data = rc_sheet_fixture_get_data (one, RC_PAPER_A4),
              again = rc_sheet_fixture_get_data (other, RC_PAPER_A4);
  g_autofree char *folder = make_folder ();
  g_autofree char *first = g_build_filename (folder, "a.pdf", NULL), *second = g_build_filename (folder, "b.pdf", NULL);

  for (int kind = 0; kind < RC_N_SHEETS; kind++)
    {
      g_autofree char *a = NULL, *b = NULL;
      gsize            a_length, b_length;

      g_assert_true (rc_sheet_write_pdf (kind, &data, first, NULL));
      g_assert_true (rc_sheet_write_pdf (kind, &again, second, NULL));
      g_assert_true (g_file_get_contents (first, &a, &a_length, NULL));
      g_assert_true (g_file_get_contents (second, &b, &b_length, NULL));
      g_assert_cmpmem (a, a_length, b, b_length);
      g_assert_true (g_str_has_prefix (a, "%PDF-"));
    }
  remove_folder (folder);
}

static void
test_png_pages (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  RcSheetData      data = rc_sheet_fixture_get_data (fixture, RC_PAPER_LETTER);
  guint            n_pages = rc_sheet_count_pages (RC_SHEET_SEAM_PLAN, &data);
  g_autofree char *folder = make_folder ();
  g_autofree char *path = g_build_filename (folder, "plan.png", NULL),
                  *order = g_build_filename (folder, "order.png", NULL);
  cairo_surface_t *surface;
  g_autoptr (GError) error = NULL;

  g_assert_true (rc_sheet_write_png (RC_SHEET_SEAM_PLAN, &data, 72, path, &error));
  g_assert_no_error (error);
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
  for (guint page = 1; page <= n_pages; page++)
    {
      g_autofree char *name = g_strdup_printf ("plan-%u.png", page), *page_path = g_build_filename (folder, name, NULL);

      g_assert_true (g_file_test (page_path, G_FILE_TEST_EXISTS));
    }
  /* One page only keeps the name it was given; 72 dots an inch make a dot of each point. */
  g_assert_true (rc_sheet_write_png (RC_SHEET_ORDER, &data, 72, order, &error));
  g_assert_no_error (error);
  surface = cairo_image_surface_create_from_png (order);
  g_assert_cmpint (cairo_image_surface_get_width (surface), ==, 612);
  g_assert_cmpint (cairo_image_surface_get_height (surface), ==, 792);
  cairo_surface_destroy (surface);

  g_assert_false (rc_sheet_write_png (RC_SHEET_ORDER, &data, 5, order, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_RANGE);
  remove_folder (folder);
}

static void
test_cannot_write (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new_empty ();
  RcSheetData      data = rc_sheet_fixture_get_data (fixture, RC_PAPER_LETTER);
  g_autofree char *folder = make_folder ();
  g_autofree char *path = g_build_filename (folder, "missing", "a.pdf", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_false (rc_sheet_write_pdf (RC_SHEET_QUOTATION, &data, path, &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
  g_clear_error (&error);
  g_assert_false (rc_sheet_write_png (RC_SHEET_QUOTATION, &data, 72, path, &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
  remove_folder (folder);
}

static void
assert_says (const char *words, const char *what)
{
  if (!strstr (words, what))
    g_error ("the sheet does not say “%s”: %s", what, words);
}

static void
test_quotation_words (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  RcSheetData      data = rc_sheet_fixture_get_data (fixture, RC_PAPER_LETTER);
  g_autofree char *words = rc_sheet_fixture_dup_words (RC_SHEET_QUOTATION, &data), *total = NULL, *deposit = NULL;

  if (!words)
    {
      g_test_skip ("pdftotext is not here");
      return;
    }
  total = rc_money_format (fixture->quote->total, &fixture->quote->currency);
  deposit = rc_money_format (fixture->quote->deposit, &fixture->quote->currency);
  assert_says (words, total);
  assert_says (words, deposit);
  assert_says (words, "Tax, 8.25 %");
  assert_says (words, "Larch Lane Floors");
  assert_says (words, "R. Aldersey");
  assert_says (words, "Q-12");
  assert_says (words, "1 of 2");
  assert_says (words, "Valid for 30 days.");
  assert_says (words, "Signature");
  assert_says (words, "Fewest seams");
  for (guint i = 0; i < fixture->quote->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (fixture->quote->lines, i);
      g_autofree char   *amount = rc_money_format (line->amount, &fixture->quote->currency);

      assert_says (words, line->name);
      amount[strlen (amount) - strlen (" USD")] = '\0';
      assert_says (words, amount);
    }
}

/* Heads are repeated on each page of a long table, and every page has its number. */
static void
test_long_quotation_words (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new_building (40);
  RcSheetData      data = rc_sheet_fixture_get_data (fixture, RC_PAPER_LETTER);
  g_autofree char *words = rc_sheet_fixture_dup_words (RC_SHEET_CUT_LIST, &data);
  guint            n_pages = rc_sheet_count_pages (RC_SHEET_CUT_LIST, &data), heads = 0;

  if (!words)
    {
      g_test_skip ("pdftotext is not here");
      return;
    }
  for (guint page = 1; page <= n_pages; page++)
    {
      g_autofree char *number = g_strdup_printf ("%u of %u", page, n_pages);

      assert_says (words, number);
    }
  for (const char *at = words; (at = strstr (at, "ORDER CUT AT REACHES")); at++)
    heads++;
  g_assert_cmpuint (heads, >=, 3);
}

static void
test_fitters_words (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  RcSheetData      data = rc_sheet_fixture_get_data (fixture, RC_PAPER_LETTER);
  g_autofree char *words = rc_sheet_fixture_dup_words (RC_SHEET_FITTERS, &data);
  const char      *safety, *work;

  if (!words)
    {
      g_test_skip ("pdftotext is not here");
      return;
    }
  safety = strstr (words, "Safety first");
  work = strstr (words, "How the seams are made");
  g_assert_nonnull (safety);
  g_assert_nonnull (work);
  g_assert_true (safety < work);
  /* Cautions: 29 CFR 1926.1101, EPA 2008, NIOSH 90-104, CPSC 450 (see the list in the program). */
  assert_says (words, "asbestos");
  assert_says (words, "1978");
  assert_says (words, "Wear knee pads");
  assert_says (words, "48 to 72 hours");
  assert_says (words, "Local codes");
  /* CRI 2015 11.1: gully at most 3/8 in; CRI 2015 13.1: cushion joints 6 in beside seams. */
  assert_says (words, "3/8 in (9 mm)");
  assert_says (words, "6 in (150 mm)");
  /* Common practice, no source: cross seams before side seams, the edge over which the pile leans first. */
  assert_says (words, "Cross seams come before side seams");
  assert_says (words, "CUT FIRST");
  /* CRI 2011 16.5: 1 %; 1.8 in on 15 ft, printed up to 1 7/8. */
  assert_says (words, "15' 0\" 1 7/8\"");
  /* CRI 2011 17.2: waterfall has strip on treads and risers; strip 1 1/2 in less than the carpet. */
  assert_says (words, "pins down");
  assert_says (words, "1 1/2 in (38 mm) less");
}

static void
test_plan_words (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  RcSheetData      data = rc_sheet_fixture_get_data (fixture, RC_PAPER_LETTER);
  g_autofree char *words = rc_sheet_fixture_dup_words (RC_SHEET_SEAM_PLAN, &data), *cuts = NULL, *order = NULL;

  if (!words)
    {
      g_test_skip ("pdftotext is not here");
      return;
    }
  assert_says (words, "Ground floor · 1/8\" = 1' (1:96)");
  assert_says (words, "Floor 1 above ground");
  assert_says (words, "Living room");
  assert_says (words, "Closet");
  assert_says (words, "joined fill");
  for (guint i = 0; i < fixture->plan->pieces->len; i++)
    {
      const RcPiece   *piece = g_ptr_array_index (fixture->plan->pieces, i);
      g_autofree char *length = rc_length_format (piece->cut_length, &RC_LENGTH_STYLE_IMPERIAL);

      assert_says (words, length);
    }
  cuts = rc_sheet_fixture_dup_words (RC_SHEET_CUT_LIST, &data);
  assert_says (cuts, "R-1057, dye lot C2");
  assert_says (cuts, "balance");
  order = rc_sheet_fixture_dup_words (RC_SHEET_ORDER, &data);
  assert_says (order, fixture->orders->len ? ((RcOrder *)g_ptr_array_index (fixture->orders, 0))->supplier : "");
}

/* The way taken stands first, also where it is not the cheapest; an area with one way is a row of the last table. */
static void
test_options_words (void)
{
  g_autoptr (RcSheetFixture) fixture = rc_sheet_fixture_new (RC_UNITS_IMPERIAL);
  RcSheetData      data = rc_sheet_fixture_get_data (fixture, RC_PAPER_LETTER);
  RcAreaPlan      *several = NULL, *single = g_ptr_array_index (fixture->plan->areas, 1);
  g_autofree char *words = NULL, *taken = NULL, *proposed = NULL, *other = NULL, *bound = NULL, *line = NULL;
  const RcOption  *option;

  for (guint i = 0; i < fixture->plan->areas->len; i++)
    {
      RcAreaPlan *area_plan = g_ptr_array_index (fixture->plan->areas, i);

      if (area_plan->options->len > 1 && several == NULL)
        several = area_plan;
    }
  g_assert_nonnull (several);
  g_assert_true (several != single);
  several->chosen = several->options->len - 1;
  single->chosen = 0;
  g_ptr_array_set_size (single->options, 1);
  option = rc_area_plan_get_chosen (several);
  taken = rc_option_dup_label (option);
  proposed = g_strdup_printf ("%s (proposed)", taken);
  other = rc_option_dup_label (g_ptr_array_index (several->options, 0));
  words = rc_sheet_fixture_dup_words (RC_SHEET_OPTIONS, &data);
  if (!words)
    {
      g_test_skip ("pdftotext is not here");
      return;
    }
  assert_says (words, proposed);
  assert_says (words, other);
  g_assert_true (strstr (words, proposed) < strstr (words, other));
  bound = rc_length_format (option->length_lower_bound, &RC_LENGTH_STYLE_IMPERIAL);
  line = g_strdup_printf ("No plan of this area can need less than %s off the roll.", bound);
  assert_says (words, line);
  assert_says (words, "Weighed against its seams");
  assert_says (strstr (words, "One way is best in every respect"), single->area->name);
}

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheet/paper", test_paper);
  g_test_add_func ("/sheet/names", test_names);
  g_test_add_func ("/sheet/margins/house", test_margins_house);
  g_test_add_func ("/sheet/margins/metric", test_margins_metric);
  g_test_add_func ("/sheet/margins/long-names", test_margins_long_names);
  g_test_add_func ("/sheet/margins/large", test_margins_large);
  g_test_add_func ("/sheet/margins/empty", test_margins_empty);
  g_test_add_func ("/sheet/pages", test_pages);
  g_test_add_func ("/sheet/lying-page", test_lying_page);
  g_test_add_func ("/sheet/pdf/same-bytes", test_pdf_same_bytes);
  g_test_add_func ("/sheet/png/pages", test_png_pages);
  g_test_add_func ("/sheet/cannot-write", test_cannot_write);
  g_test_add_func ("/sheet/words/quotation", test_quotation_words);
  g_test_add_func ("/sheet/words/long", test_long_quotation_words);
  g_test_add_func ("/sheet/words/fitters", test_fitters_words);
  g_test_add_func ("/sheet/words/plan", test_plan_words);
  g_test_add_func ("/sheet/words/options", test_options_words);
  status = g_test_run ();
  rc_sheet_fixture_forget_fonts ();

  return status;
}
