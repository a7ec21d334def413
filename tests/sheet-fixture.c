#include "sheet-fixture.h"

#include <glib/gstdio.h>

#include <fontconfig/fontconfig.h>
#include <pango/pangocairo.h>
#include <string.h>
#include <unistd.h>

#define FT(feet)            ((RcLength)((feet)*RC_TICKS_PER_FOOT))
#define FT_IN(feet, inches) (FT (feet) + (RcLength)((inches)*RC_TICKS_PER_INCH))

static RcGoods *
add_goods (GPtrArray *list, RcGoodsKind kind, const char *id, const char *name, RcUnit unit, const char *supplier)
{
  RcGoods *goods = rc_goods_new (id, kind, name);

  goods->unit = unit;
  goods->supplier = g_strdup (supplier);
  g_ptr_array_add (list, goods);

  return goods;
}

static void
add_price (RcPriceBook *book, const char *item, RcUnit unit, RcMoney cost, RcMoney sale)
{
  g_ptr_array_add (book->prices, rc_price_new (item, unit, cost, sale));
}

RcPriceBook *
rc_sheet_fixture_make_book (void)
{
  RcCurrency   currency = { "USD", 2 };
  RcPriceBook *book = rc_price_book_new (&currency);
  RcGoods     *goods;

  book->tax_ppm = 82500;
  book->deposit_ppm = 300000;
  book->shop_name = g_strdup ("Larch Lane Floors");
  book->shop_address = g_strdup ("14 Larch Lane, Millbrook\n555 0100, floors@larchlane.example");
  book->terms = g_strdup ("Valid for 30 days. Furniture is moved by the customer unless a line above says otherwise. "
                          "Goods cut to the measured rooms cannot be taken back.\nThe balance is due when the carpet "
                          "is down.");
  goods = add_goods (book->goods, RC_GOODS_CARPET, "twist", "Harbour Twist, slate", RC_UNIT_SQ_YD, "Northwater Mills");
  goods->roll_width = FT (12);
  goods = add_goods (book->goods, RC_GOODS_CARPET, "loop", "Meadow Loop, oat", RC_UNIT_SQ_YD, "Northwater Mills");
  goods->roll_width = FT (12);
  goods = add_goods (book->goods, RC_GOODS_CUSHION, "pad", "Bonded cushion 7/16 in", RC_UNIT_SQ_YD, "Brae Supplies");
  goods->pack_micro = 30 * RC_MICRO;
  goods->pack_unit = RC_UNIT_ROLL;
  goods = add_goods (book->goods, RC_GOODS_TAPE, "tape", "Seam tape 3 in", RC_UNIT_FT, "Brae Supplies");
  goods->tape_width = 3 * RC_TICKS_PER_INCH;
  goods->pack_micro = 66 * RC_MICRO;
  goods->pack_unit = RC_UNIT_ROLL;
  goods = add_goods (book->goods, RC_GOODS_SEALER, "sealer", "Seam sealer", RC_UNIT_EACH, "Brae Supplies");
  goods->pack_covers_length = FT (60);
  goods = add_goods (book->goods, RC_GOODS_STRIP, "strip", "Tack strip 1 in", RC_UNIT_FT, "Brae Supplies");
  goods->pack_micro = 400 * RC_MICRO;
  goods->pack_unit = RC_UNIT_CARTON;
  goods = add_goods (book->goods, RC_GOODS_ADHESIVE, "glue", "Carpet adhesive", RC_UNIT_GALLON, "Brae Supplies");
  goods->pack_micro = 4 * RC_MICRO;
  goods->pack_unit = RC_UNIT_TUB;
  goods->pack_covers_area = rc_area_from_rectangle (FT (18), FT (18));
  goods = add_goods (book->goods, RC_GOODS_TRANSITION, "bar", "Transition, flat", RC_UNIT_FT, "Brae Supplies");
  goods->pack_micro = 6 * RC_MICRO;
  goods->pack_unit = RC_UNIT_EACH;
  add_price (book, "twist", RC_UNIT_SQ_YD, 1450, 2895);
  add_price (book, "loop", RC_UNIT_SQ_YD, 1180, 2350);
  add_price (book, "pad", RC_UNIT_SQ_YD, 310, 595);
  add_price (book, "tape", RC_UNIT_FT, 14, 30);
  add_price (book, "sealer", RC_UNIT_EACH, 690, 1150);
  add_price (book, "strip", RC_UNIT_FT, 19, 45);
  add_price (book, "glue", RC_UNIT_GALLON, 1900, 3200);
  add_price (book, "bar", RC_UNIT_FT, 160, 340);
  add_price (book, "lay", RC_UNIT_SQ_YD, 450, 800);
  add_price (book, "side-seam", RC_UNIT_FT, 110, 225);
  add_price (book, "cross-seam", RC_UNIT_EACH, 900, 1800);
  add_price (book, "stair", RC_UNIT_EACH, 700, 1400);
  add_price (book, "fixed", RC_UNIT_EACH, 4000, 7500);

  return book;
}

static RcRoom *
add_room (RcJob *job, const char *id, const char *name, int floor, const RcPoint *points, guint n_points)
{
  RcRoom *room = rc_room_new (id, name);

  room->floor = floor;
  room->placed = TRUE;
  g_array_append_vals (room->outline, points, n_points);
  g_ptr_array_add (rc_job_get_measure (job, NULL)->rooms, room);

  return room;
}

static RcRoom *
add_box (RcJob *job, const char *id, const char *name, int floor, RcLength x, RcLength y, RcLength width,
         RcLength length)
{
  RcPoint points[] = { { x, y }, { x + width, y }, { x + width, y + length }, { x, y + length } };

  return add_room (job, id, name, floor, points, G_N_ELEMENTS (points));
}

static RcOpening *
add_opening (RcRoom *room, const char *id, RcOpeningKind kind, guint wall, RcLength offset, RcLength width,
             const char *to_room)
{
  RcOpening *opening = rc_opening_new (id, kind);

  opening->wall = wall;
  opening->offset = offset;
  opening->width = width;
  opening->depth = FT_IN (0, 4.5);
  opening->swing = kind == RC_OPENING_DOOR ? RC_SWING_IN : RC_SWING_NONE;
  opening->to_room = g_strdup (to_room);
  g_ptr_array_add (room->openings, opening);

  return opening;
}

static RcFloorArea *
add_area (RcJob *job, const char *id, const char *name, const char *carpet, const char *const *rooms)
{
  RcFloorArea *area = rc_floor_area_new (id, name);

  area->carpet = g_strdup (carpet);
  area->cushion = g_strdup ("pad");
  for (; *rooms; rooms++)
    g_ptr_array_add (area->rooms, g_strdup (*rooms));
  g_ptr_array_add (rc_job_get_measure (job, NULL)->areas, area);

  return area;
}

static RcJob *
make_job (RcUnitSystem units)
{
  RcCurrency currency = { "USD", 2 };
  RcJob     *job = rc_job_new ("J-7", &currency);
  RcMeasure *measure = rc_job_get_measure (job, NULL);

  job->number = g_strdup ("J-7");
  job->title = g_strdup ("Gull Cottage");
  job->units = units;
  job->tax_ppm = -1;
  job->customer.name = g_strdup ("R. Aldersey");
  job->customer.address = g_strdup ("3 Saltmarsh Road\nEllerby");
  job->customer.phone = g_strdup ("555 0142");
  measure->date = g_strdup ("2026-03-02");
  measure->taken_by = g_strdup ("P. Venn");

  return job;
}

static void
add_ground_floor (RcJob *job)
{
  /* Counter-clockwise from the lower left: an L with an angled bay in its lower wall. */
  RcPoint  living[] = { { 0, 0 },
                        { FT (5), 0 },
                        { FT (7), -FT (2) },
                        { FT (13), -FT (2) },
                        { FT (15), 0 },
                        { FT_IN (19, 6), 0 },
                        { FT_IN (19, 6), FT (14) },
                        { FT_IN (11, 3.5), FT (14) },
                        { FT_IN (11, 3.5), FT_IN (20, 2) },
                        { 0, FT_IN (20, 2) } };
  RcRoom  *room = add_room (job, "living", "Living room", 0, living, G_N_ELEMENTS (living));
  RcLength wall = FT_IN (0, 4.5);

  add_opening (room, "W1", RC_OPENING_WINDOW, 2, FT (1), FT (4), NULL);
  add_opening (room, "A1", RC_OPENING_ARCHWAY, 5, FT (6), FT (5), "hall");
  room = add_box (job, "hall", "Hall", 0, FT_IN (19, 6) + wall, FT_IN (0, 6), FT_IN (5, 3), FT (18));
  add_opening (room, "D1", RC_OPENING_DOOR, 0, FT_IN (1, 2), FT (3), NULL)->transition = g_strdup ("bar");
  add_opening (room, "D2", RC_OPENING_DOOR, 1, FT (4), FT_IN (2, 8), "dining")->hinge_at_end = TRUE;
  add_opening (room, "D3", RC_OPENING_DOOR, 1, FT (15), FT_IN (2, 4), "closet")->swing = RC_SWING_OUT;
  room = add_box (job, "dining", "Dining room", 0, FT_IN (24, 9) + 2 * wall, 0, FT_IN (13, 2), FT_IN (14, 7));
  add_opening (room, "W2", RC_OPENING_WINDOW, 1, FT (4), FT (5), NULL);
  add_box (job, "closet", "Closet", 0, FT_IN (24, 9) + 2 * wall, FT_IN (14, 11.5), FT (6), FT_IN (4, 3));
}

static void
add_upper_floor (RcJob *job)
{
  RcRoom  *room = add_box (job, "bed1", "Bedroom 1", 1, 0, 0, FT (15), FT (20));
  RcLength wall = FT_IN (0, 4.5);

  add_opening (room, "D1", RC_OPENING_DOOR, 1, FT (8), FT_IN (2, 8), "bed2");
  add_opening (room, "W1", RC_OPENING_WINDOW, 0, FT (4), FT (6), NULL);
  add_box (job, "bed2", "Bedroom 2", 1, FT (15) + wall, FT (3), FT_IN (11, 8), FT_IN (13, 9));
}

static void
add_stair (RcJob *job)
{
  RcStair *stair = rc_stair_new ("stair", "Main stair");

  stair->steps = 13;
  stair->rise = FT_IN (0, 7.5);
  stair->going = FT_IN (0, 10);
  stair->width = FT (3);
  stair->style = RC_STAIR_WATERFALL;
  stair->carpet = g_strdup ("twist");
  stair->cushion = g_strdup ("pad");
  g_ptr_array_add (rc_job_get_measure (job, NULL)->stairs, stair);
}

RcSheetFixture *
rc_sheet_fixture_new_of (RcJob *job, RcPriceBook *book)
{
  RcSheetFixture *fixture = g_new0 (RcSheetFixture, 1);
  g_autoptr (GError) error = NULL;

  fixture->job = job;
  fixture->book = book;
  rc_job_adopt_goods (job, fixture->book->goods);
  fixture->plan
      = rc_plan_new (job, rc_job_get_measure (job, NULL), rc_price_book_get_weights, fixture->book, NULL, &error);
  g_assert_no_error (error);
  fixture->quantities = rc_quantity_compute (fixture->plan, fixture->book->goods, &error);
  g_assert_no_error (error);
  fixture->quote = rc_quote_new (job, fixture->quantities, fixture->book, "2026-03-04", &error);
  g_assert_no_error (error);
  fixture->orders = rc_order_new_all (job, fixture->plan, fixture->quantities, fixture->book, "2026-03-04", &error);
  g_assert_no_error (error);

  return fixture;
}

static RcSheetFixture *
finish (RcJob *job)
{
  return rc_sheet_fixture_new_of (job, rc_sheet_fixture_make_book ());
}

RcJob *
rc_sheet_fixture_make_house (RcUnitSystem units)
{
  RcJob  *job = make_job (units);
  RcRoll *remnant = rc_roll_new ("R-1041", "twist", FT (22)), *roll = rc_roll_new ("R-1057", "loop", FT (96));

  add_ground_floor (job);
  add_upper_floor (job);
  add_stair (job);
  add_area (job, "down", "Ground floor", "twist", (const char *[]){ "living", "hall", "closet", NULL });
  add_area (job, "dining", "Dining room", "loop", (const char *[]){ "dining", NULL })->fixing = RC_FIXING_GLUE;
  add_area (job, "up", "Bedrooms", "loop", (const char *[]){ "bed1", "bed2", NULL });
  g_clear_pointer (&rc_measure_find_area (rc_job_get_measure (job, NULL), "dining")->cushion, g_free);
  remnant->remnant = TRUE;
  remnant->lot = g_strdup ("B7");
  remnant->place = g_strdup ("rack 3");
  roll->lot = g_strdup ("C2");
  g_ptr_array_add (job->rolls, remnant);
  g_ptr_array_add (job->rolls, roll);

  return job;
}

RcSheetFixture *
rc_sheet_fixture_new (RcUnitSystem units)
{
  return finish (rc_sheet_fixture_make_house (units));
}

static void
set_text (char **field, const char *text)
{
  g_free (*field);
  *field = g_strdup (text);
}

RcSheetFixture *
rc_sheet_fixture_new_long_names (void)
{
  RcJob      *job = rc_sheet_fixture_make_house (RC_UNITS_IMPERIAL);
  RcMeasure  *measure = rc_job_get_measure (job, NULL);
  const char *long_name = "The Reading Room beside the Conservatory, formerly the Housekeeper’s Parlour and Pantry";

  set_text (&job->title, "Refurbishment of the principal reception rooms, staircases, corridors and all family "
                         "bedrooms at Saltmarsh-under-Edge House");
  set_text (&job->number, "2026-EXTENSION-0000000000000000000000000000000000042");
  set_text (&job->customer.name, "The Honourable Bartholomew Featherstonehaugh-Cholmondeley & Daughters");
  set_text (&job->customer.address,
            "Saltmarsh-under-Edge House\nGreat North Avenue, entrance by the second gate\nLittle Wittering-on-the-"
            "Water\nAbercrombie-and-Northern-Marches\nPostal district 000000");
  set_text (&job->customer.email,
            "accounts.department.for.household.expenditure@saltmarsh-under-edge-house.long-domain-name.example");
  set_text (&measure->taken_by, "Maximiliana Wolfeschlegelsteinhausen");
  for (guint i = 0; i < measure->rooms->len; i++)
    set_text (&((RcRoom *)g_ptr_array_index (measure->rooms, i))->name, long_name);
  for (guint i = 0; i < measure->areas->len; i++)
    set_text (&((RcFloorArea *)g_ptr_array_index (measure->areas, i))->name, long_name);
  set_text (&((RcStair *)g_ptr_array_index (measure->stairs, 0))->name, long_name);
  for (guint i = 0; i < job->rolls->len; i++)
    {
      RcRoll *roll = g_ptr_array_index (job->rolls, i);

      set_text (&roll->lot, "LOT-000000000000000000-WINTER-DYEING");
      set_text (&roll->place, "warehouse 2, mezzanine, third bay behind the loading dock, upper rack");
    }

  return finish (job);
}

RcSheetFixture *
rc_sheet_fixture_new_building (guint n_rooms)
{
  RcJob *job = make_job (RC_UNITS_IMPERIAL);
  guint  columns = 1;

  while (columns * columns < n_rooms)
    columns++;
  for (guint i = 0; i < n_rooms; i++)
    {
      g_autofree char *id = g_strdup_printf ("r%u", i + 1);
      g_autofree char *name = g_strdup_printf ("Room %u", 100 + i);
      RcRoom          *room
          = add_box (job, id, name, 0, (i % columns) * FT_IN (15, 6), (i / columns) * FT (13), FT (15), FT_IN (12, 6));

      add_opening (room, "D1", RC_OPENING_DOOR, 0, FT (2), FT (3), NULL);
      add_opening (room, "W1", RC_OPENING_WINDOW, 2, FT (4), FT (5), NULL);
      add_area (job, id, name, "twist", (const char *[]){ id, NULL });
    }

  return finish (job);
}

RcSheetFixture *
rc_sheet_fixture_new_empty (void)
{
  return finish (make_job (RC_UNITS_IMPERIAL));
}

RcSheetFixture *
rc_sheet_fixture_new_large (void)
{
  RcJob *job = make_job (RC_UNITS_METRIC);

  add_box (job, "hall", "Exhibition hall", 0, 0, 0, FT (250), FT (180));
  add_area (job, "hall", "Exhibition hall", "twist", (const char *[]){ "hall", NULL });

  return finish (job);
}

RcSheetFixture *
rc_sheet_fixture_new_wide (void)
{
  RcJob *job = make_job (RC_UNITS_IMPERIAL);

  add_box (job, "gallery", "Gallery", 0, 0, 0, FT (60), FT (16));
  add_area (job, "gallery", "Gallery", "twist", (const char *[]){ "gallery", NULL });

  return finish (job);
}

RcSheetFixture *
rc_sheet_fixture_new_joined_fills (void)
{
  RcJob       *job = make_job (RC_UNITS_IMPERIAL);
  RcPriceBook *book = rc_sheet_fixture_make_book ();

  for (int rule = 0; rule < RC_N_RULES; rule++)
    job->settings.rule_cost[rule] = 0;
  for (guint i = 0; i < book->prices->len; i++)
    {
      RcPrice *price = g_ptr_array_index (book->prices, i);

      if (strcmp (price->item, rc_work_get_name (RC_WORK_CROSS_SEAM)) == 0)
        price->cost = 1;
    }
  add_box (job, "long", "Long room", 0, 0, 0, FT (13), FT (20));
  add_area (job, "long", "Long room", "twist", (const char *[]){ "long", NULL });
  add_box (job, "across", "Room across", 0, FT (14), 0, FT (24), FT (13));
  add_area (job, "across", "Room across", "loop", (const char *[]){ "across", NULL });

  return rc_sheet_fixture_new_of (job, book);
}

void
rc_sheet_fixture_free (RcSheetFixture *fixture)
{
  if (!fixture)
    return;
  g_ptr_array_unref (fixture->orders);
  rc_quote_free (fixture->quote);
  g_ptr_array_unref (fixture->quantities);
  rc_plan_free (fixture->plan);
  rc_price_book_free (fixture->book);
  rc_job_free (fixture->job);
  g_free (fixture);
}

RcSheetData
rc_sheet_fixture_get_data (const RcSheetFixture *fixture, RcPaper paper)
{
  RcSheetData data = { 0 };

  data.plan = fixture->plan;
  data.quantities = fixture->quantities;
  data.quote = fixture->quote;
  data.order = fixture->orders->len ? g_ptr_array_index (fixture->orders, 0) : NULL;
  data.book = fixture->book;
  data.number = "Q-12";
  data.date = "2026-03-04";
  data.paper = paper;

  return data;
}

char *
rc_sheet_fixture_dup_words (RcSheetKind kind, const RcSheetData *data)
{
  g_autofree char *program = g_find_program_in_path ("pdftotext"), *path = NULL, *text = NULL;
  g_auto (GStrv) parts = NULL;
  g_autoptr (GError) error = NULL;
  int file;

  if (!program)
    return NULL;
  file = g_file_open_tmp ("rowcut-sheet-XXXXXX.pdf", &path, &error);
  g_assert_no_error (error);
  g_assert_true (g_close (file, NULL));
  g_assert_true (rc_sheet_write_pdf (kind, data, path, &error));
  g_assert_no_error (error);
  {
    const char *arguments[] = { program, "-layout", path, "-", NULL };

    g_assert_true (g_spawn_sync (NULL, (char **)arguments, NULL, G_SPAWN_STDERR_TO_DEV_NULL, NULL, NULL, &text, NULL,
                                 NULL, &error));
  }
  g_unlink (path);
  parts = g_regex_split_simple ("\\s+", text, 0, 0);

  return g_strjoinv (" ", parts);
}

static char *
dup_thread_name (const char *thread)
{
  g_autofree char *path = g_build_filename ("/proc/self/task", thread, "comm", NULL);
  char            *name = NULL;

  return g_file_get_contents (path, &name, NULL, NULL) ? name : g_strdup ("");
}

/* Pango looks for each font in a thread of its own. One that has not begun still has the name of the program. */
static gboolean
is_looking_for_fonts (void)
{
  g_autoptr (GDir) threads = g_dir_open ("/proc/self/task", 0, NULL);
  g_autofree char *own_id = g_strdup_printf ("%d", (int)getpid ());
  g_autofree char *own_name = dup_thread_name (own_id);
  const char      *thread;

  while (threads && (thread = g_dir_read_name (threads)) != NULL)
    {
      g_autofree char *name = dup_thread_name (thread);

      if (g_str_has_prefix (name, "[pango]") || (strcmp (thread, own_id) != 0 && strcmp (name, own_name) == 0))
        return TRUE;
    }
  return FALSE;
}

void
rc_sheet_fixture_forget_fonts (void)
{
  while (is_looking_for_fonts ()) /* or cairo and fontconfig end the program, for what such a thread still holds */
    g_usleep (1000);
  pango_cairo_font_map_set_default (NULL);
  cairo_debug_reset_static_data ();
  FcFini ();
}
