/* Every sheet in every language on both papers with the longest names and many lines: all words are inside the margins,
 * none lies on another, nothing that the reader needs is cut.
 *
 * Words and their places are read back out of the PDF by poppler's pdftotext, which shares no code with the sheets.
 * ROWCUT_KEEP_SHEETS names a folder in which the PDFs stay, to be looked at. */
#include <glib/gstdio.h>
#include <string.h>

#include "sheet-fixture.h"
#include "translation.h"

#define FT(feet)     ((RcLength)((feet)*RC_TICKS_PER_FOOT))
#define MARGIN       36.0 /* points; printers keep at most 18 to themselves */
#define N_MORE_ROOMS 14
#define N_EXTRAS     45

static const char customer[]
    = "The Honourable Bartholomew Ignatius Featherstonehaugh-Cholmondeley-Wolfeschlegelsteinhausen "
      "and Daughters, Executors";
static const char carpet_name[]
    = "Skerrow and Tolland Vale Reserve Collection, Harbour Twist Heavy Domestic, 50 oz, colour "
      "4711 Slate with a Fleck of Oat";

static void
set_text (char **field, const char *text)
{
  g_free (*field);
  *field = g_strdup (text);
}

static void
add_rooms (RcJob *job)
{
  RcMeasure *measure = rc_job_get_measure (job, NULL);

  for (int i = 0; i < N_MORE_ROOMS; i++)
    {
      g_autofree char *id = g_strdup_printf ("g%d", i + 1);
      g_autofree char *name
          = g_strdup_printf ("Guest bedroom %d with the dressing room and the window over the kitchen garden", i + 1);
      RcRoom      *room = rc_room_new (id, name);
      RcFloorArea *area = rc_floor_area_new (id, name);
      RcLength     x = (i % 5) * FT (15), y = (i / 5) * FT (16);
      RcPoint      corners[] = { { x, y }, { x + FT (14), y }, { x + FT (14), y + FT (15) }, { x, y + FT (15) } };

      room->floor = 2;
      room->placed = TRUE;
      g_array_append_vals (room->outline, corners, G_N_ELEMENTS (corners));
      g_ptr_array_add (measure->rooms, room);
      area->carpet = g_strdup (i % 2 ? "twist" : "loop");
      area->cushion = g_strdup ("pad");
      g_ptr_array_add (area->rooms, g_strdup (id));
      g_ptr_array_add (measure->areas, area);
    }
}

static void
add_offer (RcJob *job)
{
  RcOffer *offer = job->offer;

  for (int i = 0; i < N_EXTRAS; i++)
    {
      g_autofree char *id = g_strdup_printf ("X%d", i + 1);
      RcExtraLine     *extra = rc_extra_line_new (id);

      extra->name = g_strdup_printf ("Moving and setting back the furniture of room %d, the piano on the first landing "
                                     "and both longcase clocks included",
                                     i + 1);
      extra->quantity_micro = (i + 1) * RC_MICRO + 250000;
      extra->unit = RC_UNIT_EACH;
      extra->price = 123456 + i * 1000;
      extra->cost = 100000;
      extra->is_work = i % 3 != 0;
      g_ptr_array_add (offer->extras, extra);
      if (i % 7 == 0)
        {
          RcLineTerms *terms = rc_line_terms_new (id);

          terms->optional = i % 2 == 0;
          terms->discount_ppm = 123456;
          terms->tax_ppm = 200000;
          g_ptr_array_add (offer->lines, terms);
        }
    }
  offer->discount_ppm = 75000;
  offer->valid_days = 30;
  g_ptr_array_add (offer->payments,
                   rc_payment_new ("With the order, before anything is cut or any room is cleared", 400000));
  g_ptr_array_add (offer->payments,
                   rc_payment_new ("When the last room has been fitted and walked with the customer", 600000));
}

static RcSheetFixture *
make_longest (void)
{
  RcJob       *job = rc_sheet_fixture_make_house (RC_UNITS_IMPERIAL);
  RcPriceBook *book = rc_sheet_fixture_make_book ();
  RcMeasure   *measure = rc_job_get_measure (job, NULL);

  g_assert_cmpuint (strlen (customer), >=, 115);
  set_text (&job->customer.name, customer);
  set_text (&job->customer.address,
            "Saltmarsh-under-Edge House, the West Wing\nGreat North Avenue, entrance by the second "
            "gate\nLittle Wittering-on-the-Water\nAbercrombie-and-Northern-Marches");
  set_text (&job->customer.email, "accounts.department.for.household.expenditure@saltmarsh-under-edge-house.example");
  set_text (&job->title, "Refurbishment of the principal reception rooms, staircases, corridors and all bedrooms");
  set_text (&job->number, "2026-EXTENSION-0000000042");
  set_text (&book->shop_name, "Wherry, Wherry, Daughter & Grandsons, Floors and Stairs since 1887");
  for (guint i = 0; i < measure->rooms->len; i++)
    {
      RcRoom          *room = g_ptr_array_index (measure->rooms, i);
      g_autofree char *name
          = g_strdup_printf ("%s beside the Conservatory, formerly the Housekeeper’s Parlour", room->name);

      set_text (&room->name, name);
    }
  for (guint i = 0; i < book->goods->len; i++)
    {
      RcGoods         *goods = g_ptr_array_index (book->goods, i);
      g_autofree char *name = g_strdup_printf ("%s (%s)", carpet_name, goods->id);

      set_text (&goods->name, name);
      set_text (&goods->supplier, "Northwater and Skerrow Carpet Mills, Trade Counter and Remnant Warehouse");
    }
  add_rooms (job);
  add_offer (job);
  return rc_sheet_fixture_new_of (job, book);
}

/* --- words and where they stand --- */

typedef struct
{
  guint  page;
  double x0, y0, x1, y1;
  char  *text;
} Word;

typedef struct
{
  GArray *words;
  GArray *sizes; /* width, height of each page */
} Words;

static void
word_clear (gpointer data)
{
  g_free (((Word *)data)->text);
}

static double
read_number (const char *line, const char *name)
{
  const char *at = strstr (line, name);

  g_assert_nonnull (at);
  return g_ascii_strtod (at + strlen (name) + 2, NULL);
}

static char *
read_text (const char *line)
{
  static const char *const entities[][2]
      = { { "&lt;", "<" }, { "&gt;", ">" }, { "&quot;", "\"" }, { "&apos;", "'" }, { "&amp;", "&" } };
  const char *begin = strchr (line, '>') + 1;
  GString    *text = g_string_new_len (begin, strstr (begin, "</word>") - begin);

  for (guint i = 0; i < G_N_ELEMENTS (entities); i++)
    g_string_replace (text, entities[i][0], entities[i][1], 0);
  return g_string_free (text, FALSE);
}

static Words
read_words (const char *path)
{
  const char      *arguments[] = { "pdftotext", "-bbox", "-raw", path, "-", NULL };
  g_autofree char *out = NULL;
  g_auto (GStrv) lines = NULL;
  g_autoptr (GError) error = NULL;
  Words words = { g_array_new (FALSE, FALSE, sizeof (Word)), g_array_new (FALSE, FALSE, 2 * sizeof (double)) };

  g_array_set_clear_func (words.words, word_clear);
  g_spawn_sync (NULL, (char **)arguments, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &out, NULL, NULL, &error);
  g_assert_no_error (error);
  lines = g_strsplit (out, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    if (strstr (lines[i], "<page ") != NULL)
      {
        double size[2] = { read_number (lines[i], "width"), read_number (lines[i], "height") };

        g_array_append_val (words.sizes, size);
      }
    else if (strstr (lines[i], "<word ") != NULL)
      {
        Word word = { words.sizes->len - 1,           read_number (lines[i], "xMin"), read_number (lines[i], "yMin"),
                      read_number (lines[i], "xMax"), read_number (lines[i], "yMax"), read_text (lines[i]) };

        g_array_append_val (words.words, word);
      }
  return words;
}

static void
words_clear (Words *words)
{
  g_array_unref (words->words);
  g_array_unref (words->sizes);
}

/* --- what may be wrong --- */

static void fault (const char *format, ...) G_GNUC_PRINTF (1, 2);

/* All faults are told, not only the first. */
static void
fault (const char *format, ...)
{
  g_autofree char *text = NULL;
  va_list          args;

  va_start (args, format);
  text = g_strdup_vprintf (format, args);
  va_end (args);
  g_test_message ("%s", text);
  g_test_fail ();
}

static void
check_margins (const Words *words, const char *name)
{
  for (guint i = 0; i < words->words->len; i++)
    {
      const Word   *word = &g_array_index (words->words, Word, i);
      const double *size = (const double *)(gconstpointer)(words->sizes->data + word->page * 2 * sizeof (double));

      if (word->x0 < MARGIN || word->y0 < MARGIN || word->x1 > size[0] - MARGIN || word->y1 > size[1] - MARGIN)
        fault ("%s, page %u: “%.60s” passes a margin (%.1f %.1f %.1f %.1f)", name, word->page + 1, word->text, word->x0,
               word->y0, word->x1, word->y1);
    }
}

/* Boxes are as high as the font's ascent and descent, so lines set solid touch: a quarter of the height must be shared.
 */
static gboolean
lie_on_each_other (const Word *a, const Word *b)
{
  double across = MIN (a->x1, b->x1) - MAX (a->x0, b->x0), up = MIN (a->y1, b->y1) - MAX (a->y0, b->y0);

  return across > 1 && up > 0.25 * MIN (a->y1 - a->y0, b->y1 - b->y0);
}

static void
check_overlaps (const Words *words, const char *name)
{
  for (guint i = 0; i < words->words->len; i++)
    for (guint k = i + 1; k < words->words->len; k++)
      {
        const Word *a = &g_array_index (words->words, Word, i), *b = &g_array_index (words->words, Word, k);

        if (b->page != a->page)
          break;
        if (lie_on_each_other (a, b))
          fault ("%s, page %u: “%s” and “%s” lie on each other (%.1f %.1f %.1f %.1f, %.1f %.1f %.1f %.1f)", name,
                 a->page + 1, a->text, b->text, a->x0, a->y0, a->x1, a->y1, b->x0, b->y0, b->x1, b->y1);
      }
}

/* All words of a page run together, without the running header and footer. */
static char *
join_words (const Words *words)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < words->words->len; i++)
    {
      const Word   *word = &g_array_index (words->words, Word, i);
      const double *size = (const double *)(gconstpointer)(words->sizes->data + word->page * 2 * sizeof (double));

      if ((word->page == 0 || word->y0 > 56) && word->y1 < size[1] - 52 + 14)
        g_string_append (text, word->text);
    }
  return g_string_free (text, FALSE);
}

static void
check_whole (const char *joined, const char *wanted, const char *name)
{
  g_auto (GStrv) parts = g_strsplit (wanted, " ", -1);
  g_autofree char *together = g_strjoinv ("", parts);

  if (strstr (joined, together) == NULL)
    fault ("%s: “%s” is not there whole", name, wanted);
}

/* A name in a drawing may be cut where its room is small: the tables beside it have it whole. */
static void
check_not_cut (const char *joined, RcSheetKind kind, const char *name)
{
  const char *cut = strstr (joined, "…");

  if (cut != NULL
      && (kind == RC_SHEET_QUOTATION || kind == RC_SHEET_ORDER || kind == RC_SHEET_ALTERNATIVES
          || kind == RC_SHEET_ROLL_LABELS))
    fault ("%s: cut after “%.60s”", name, MAX (joined, cut - 60));
}

/* What the reader of each sheet must find. */
static void
check_names (const RcSheetFixture *fixture, RcSheetKind kind, const Words *words, const char *name)
{
  g_autofree char *joined = join_words (words);
  const GPtrArray *rooms = fixture->plan->measure->rooms, *lines = fixture->quote->lines;

  check_not_cut (joined, kind, name);
  if (kind != RC_SHEET_ORDER)
    check_whole (joined, customer, name);
  if (kind != RC_SHEET_ALTERNATIVES && kind != RC_SHEET_OPTIONS)
    check_whole (joined, carpet_name, name);
  for (guint i = 0;
       (kind == RC_SHEET_SEAM_PLAN || kind == RC_SHEET_FITTERS || kind == RC_SHEET_CUT_LIST) && i < rooms->len; i++)
    check_whole (joined, ((const RcRoom *)g_ptr_array_index (rooms, i))->name, name);
  for (guint i = 0; kind == RC_SHEET_QUOTATION && i < lines->len; i++)
    check_whole (joined, ((const RcQuoteLine *)g_ptr_array_index (lines, i))->name, name);
}

static void
check_sheet (const RcSheetFixture *fixture, RcSheetKind kind, const RcSheetData *data, const char *called)
{
  const char      *keep = g_getenv ("ROWCUT_KEEP_SHEETS");
  g_autofree char *name
      = g_strdup_printf ("%s-%s-%s", called, data->language, data->paper == RC_PAPER_A4 ? "a4" : "letter");
  g_autofree char *file = g_strconcat (name, ".pdf", NULL);
  g_autofree char *path = g_build_filename (keep != NULL ? keep : g_get_tmp_dir (), file, NULL);
  g_autoptr (GError) error = NULL;
  Words words;

  if (keep == NULL)
    {
      int descriptor;

      g_free (path);
      descriptor = g_file_open_tmp ("rowcut-fit-XXXXXX.pdf", &path, &error);
      g_assert_no_error (error);
      g_close (descriptor, NULL);
    }
  g_assert_true (rc_sheet_write_pdf (kind, data, path, &error));
  g_assert_no_error (error);
  words = read_words (path);
  if (keep == NULL)
    g_unlink (path);
  g_assert_cmpuint (words.words->len, >, 20);
  check_margins (&words, name);
  check_overlaps (&words, name);
  check_names (fixture, kind, &words, name);
  words_clear (&words);
}

/* The quotation, quantities and orders are worded anew in each language. */
static void
word_in (RcSheetFixture *fixture, const char *language)
{
  g_autoptr (GError) error = NULL;

  rc_translation_begin (language);
  g_ptr_array_unref (fixture->quantities);
  rc_quote_free (fixture->quote);
  g_ptr_array_unref (fixture->orders);
  fixture->quantities = rc_quantity_compute (fixture->plan, fixture->book->goods, &error);
  g_assert_no_error (error);
  fixture->quote = rc_quote_new (fixture->job, fixture->quantities, fixture->book, "2026-03-04", &error);
  g_assert_no_error (error);
  fixture->orders
      = rc_order_new_all (fixture->job, fixture->plan, fixture->quantities, fixture->book, "2026-03-04", &error);
  g_assert_no_error (error);
  rc_translation_end ();
}

static RcQuote *
make_alternative (const RcSheetFixture *fixture, const char *name)
{
  RcQuote *quote = rc_quote_new (fixture->job, fixture->quantities, fixture->book, "2026-03-04", NULL);

  quote->option = g_strdup (name);
  return quote;
}

/* The same house with every other line at another price. */
static void
check_variation (RcSheetFixture *fixture, RcSheetData data)
{
  const RcQuote *before = fixture->quote;
  g_autoptr (RcQuote) after = make_alternative (fixture, NULL);
  g_autoptr (RcQuote) variation = NULL;
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < after->lines->len; i += 2)
    {
      RcQuoteLine *line = g_ptr_array_index (after->lines, i);

      line->price += 100;
      g_assert_true (rc_money_multiply (line->price, line->quantity_micro, &line->gross, NULL));
      rc_quote_line_set_discount (line, line->discount_ppm);
    }
  variation = rc_quote_new_variation (before, after, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (variation->lines->len, >, 20);
  data.quote = variation;
  data.changes = "Q-2026-000000000011";
  fixture->quote = variation;
  check_sheet (fixture, RC_SHEET_QUOTATION, &data, "variation");
  fixture->quote = (RcQuote *)before;
}

static void
check_all (RcSheetFixture *fixture, const char *language, RcPaper paper)
{
  RcSheetData data;
  g_autoptr (GPtrArray) alternatives = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quote_free);

  word_in (fixture, language);
  for (int i = 0; i < 3; i++)
    g_ptr_array_add (
        alternatives,
        make_alternative (fixture, "The dearest carpet of all throughout, with the fewest seams there can be"));
  data = rc_sheet_fixture_get_data (fixture, paper);
  data.alternatives = alternatives;
  data.language = language;
  data.number = "Q-2026-000000000012";
  for (RcSheetKind kind = 0; kind < RC_N_SHEETS; kind++)
    check_sheet (fixture, kind, &data, rc_sheet_kind_get_name (kind));
  check_variation (fixture, data);
}

/* A language on each paper; in slow mode every language on both. */
static void
test_longest (void)
{
  static const struct
  {
    const char *language;
    RcPaper     paper;
    gboolean    slow;
  } rows[] = { { "en", RC_PAPER_LETTER, FALSE }, { "fr", RC_PAPER_A4, FALSE },    { "es", RC_PAPER_LETTER, FALSE },
               { "en", RC_PAPER_A4, TRUE },      { "fr", RC_PAPER_LETTER, TRUE }, { "es", RC_PAPER_A4, TRUE } };
  g_autoptr (RcSheetFixture) fixture = NULL;
  g_autofree char *program = g_find_program_in_path ("pdftotext");

  if (program == NULL || g_getenv ("ROWCUT_LOCALE_DIR") == NULL)
    {
      g_test_skip ("pdftotext is not here, or ROWCUT_LOCALE_DIR does not name the translations");
      return;
    }
  fixture = make_longest ();
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (!rows[i].slow || g_test_slow ())
      check_all (fixture, rows[i].language, rows[i].paper);
}

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  rc_translation_init ();
  g_test_add_func ("/sheet-fit/longest", test_longest);
  status = g_test_run ();
  rc_sheet_fixture_forget_fonts ();

  return status;
}
