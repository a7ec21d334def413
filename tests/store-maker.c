#include "store-maker.h"

#include <glib/gstdio.h>

#include "office-maker.h"

#define CHANCE(rand, n) (g_rand_int_range (rand, 0, n) == 0)

static const char *const texts[] = {
  "",
  "Gull Cottage",
  "O'Shea & Sons; DROP TABLE jobs; --",
  "\"quoted\" and 'quoted'",
  "two\nlines\tand a tab",
  "Señora Ibáñez, C/ Mayor 3, 2º izq.",
  "地毯店",
  "½ in % _ * ? [x] \\",
  "0012",
};

/* NULL now and then: the model leaves texts open. */
static char *
make_text (GRand *rand)
{
  guint i = (guint)g_rand_int_range (rand, 0, (gint32)G_N_ELEMENTS (texts) + 1);

  return i == G_N_ELEMENTS (texts) ? NULL : g_strdup (texts[i]);
}

static void
change_text (GRand *rand, char **text)
{
  g_free (*text);
  *text = make_text (rand);
}

static RcLength
make_length (GRand *rand)
{
  if (CHANCE (rand, 20))
    return CHANCE (rand, 2) ? 0 : RC_LENGTH_MAX;
  return g_rand_int_range (rand, 1, 2000000);
}

static char *
make_id (GRand *rand, const char *prefix)
{
  return g_strdup_printf ("%s %08x", prefix, g_rand_int (rand));
}

static RcRing *
make_ring (GRand *rand)
{
  RcRing *ring = rc_ring_new ();
  guint   n = (guint)g_rand_int_range (rand, 0, 8);

  for (guint i = 0; i < n; i++)
    {
      RcPoint point = { g_rand_int_range (rand, -1000000, 1000000), g_rand_int_range (rand, -1000000, 1000000) };

      g_array_append_val (ring, point);
    }
  return ring;
}

static RcOpening *
make_opening (GRand *rand)
{
  g_autofree char *id = make_id (rand, "D");
  RcOpening       *opening = rc_opening_new (id, (RcOpeningKind)g_rand_int_range (rand, 0, 3));

  opening->wall = (guint)g_rand_int_range (rand, 0, 8);
  opening->offset = make_length (rand);
  opening->width = make_length (rand);
  opening->depth = make_length (rand);
  opening->swing = (RcSwing)g_rand_int_range (rand, 0, 3);
  opening->hinge_at_end = CHANCE (rand, 2);
  change_text (rand, &opening->to_room);
  change_text (rand, &opening->to_opening);
  change_text (rand, &opening->transition);
  return opening;
}

static void
add_wall (GRand *rand, RcRoom *room)
{
  RcWall wall = { g_rand_double_range (rand, 0, 360), make_length (rand), g_rand_int_range (rand, -1000, 1000) };

  if (CHANCE (rand, 2))
    wall.bearing_degrees = 90 * g_rand_int_range (rand, 0, 4);
  g_array_append_val (room->walls, wall);
}

static RcCutout *
make_cutout (GRand *rand)
{
  RcCutout *cutout = rc_cutout_new_take (g_rand_int_range (rand, 0, RC_N_CUTOUT_KINDS), make_ring (rand));

  change_text (rand, &cutout->name);
  cutout->diameter = CHANCE (rand, 2) ? make_length (rand) : 0;
  cutout->strip = CHANCE (rand, 2);
  cutout->counted = CHANCE (rand, 2);
  return cutout;
}

static RcRoom *
make_room (GRand *rand)
{
  g_autofree char *id = make_id (rand, "room"), *name = make_text (rand);
  RcRoom          *room = rc_room_new (id, name);
  guint            n_walls = (guint)g_rand_int_range (rand, 0, 9);

  room->floor = g_rand_int_range (rand, -1, 3);
  room->spread = CHANCE (rand, 2);
  room->placed = CHANCE (rand, 2);
  room->at = (RcPoint){ g_rand_int_range (rand, -100, 100), make_length (rand) };
  change_text (rand, &room->notes);
  for (guint i = 0; i < n_walls; i++)
    add_wall (rand, room);
  if (n_walls == 0)
    {
      g_array_unref (room->outline);
      room->outline = make_ring (rand);
    }
  for (gint i = g_rand_int_range (rand, 0, 3); i > 0; i--)
    g_ptr_array_add (room->cutouts, make_cutout (rand));
  for (gint i = g_rand_int_range (rand, 0, 5); i > 0; i--)
    g_ptr_array_add (room->openings, make_opening (rand));
  for (gint i = g_rand_int_range (rand, 0, 3); i > 0; i--)
    {
      RcDiagonal diagonal
          = { (guint)g_rand_int_range (rand, 0, 9), (guint)g_rand_int_range (rand, 0, 9), make_length (rand) };
      g_array_append_val (room->diagonals, diagonal);
    }
  return room;
}

static RcStair *
make_stair (GRand *rand)
{
  g_autofree char *id = make_id (rand, "stair"), *name = make_text (rand);
  RcStair         *stair = rc_stair_new (id, name);

  stair->steps = (guint)g_rand_int_range (rand, 0, 20);
  stair->rise = make_length (rand);
  stair->going = make_length (rand);
  stair->width = make_length (rand);
  stair->style = (RcStairStyle)g_rand_int_range (rand, 0, 2);
  stair->nose_extra = make_length (rand);
  stair->end_extra = make_length (rand);
  stair->width_extra = make_length (rand);
  stair->cutting = (RcStairCutting)g_rand_int_range (rand, 0, 2);
  stair->runner_width = make_length (rand);
  stair->curved_width = make_length (rand);
  for (int n = g_rand_int_range (rand, 0, 3); n > 0; n--)
    {
      RcStairTurn turn = { .kind = (RcTurnKind)g_rand_int_range (rand, 0, 2),
                           .bend = (RcBend)g_rand_int_range (rand, 0, 5),
                           .after = (guint)g_rand_int_range (rand, 0, 20),
                           .winders = (guint)g_rand_int_range (rand, 0, 5),
                           .going = make_length (rand),
                           .width = make_length (rand) };
      g_array_append_val (stair->turns, turn);
    }
  stair->piece_extra = make_length (rand);
  stair->placed = CHANCE (rand, 2);
  stair->floor = g_rand_int_range (rand, -1, 3);
  stair->at = (RcPoint){ make_length (rand), make_length (rand) };
  stair->bearing_degrees = g_rand_int_range (rand, 0, 360);
  change_text (rand, &stair->carpet);
  change_text (rand, &stair->cushion);
  change_text (rand, &stair->notes);
  return stair;
}

static RcFloorArea *
make_area (GRand *rand, const RcMeasure *measure)
{
  g_autofree char *id = make_id (rand, "area"), *name = make_text (rand);
  RcFloorArea     *area = rc_floor_area_new (id, name);

  for (guint i = 0; i < measure->rooms->len; i++)
    if (CHANCE (rand, 2))
      g_ptr_array_add (area->rooms, g_strdup (((RcRoom *)measure->rooms->pdata[i])->id));
  change_text (rand, &area->carpet);
  change_text (rand, &area->cushion);
  change_text (rand, &area->option);
  area->fixing = (RcFixing)g_rand_int_range (rand, 0, 2);
  area->pile_degrees = g_rand_int_range (rand, -1, 360);
  for (int n = g_rand_int_range (rand, 0, 4); n > 0; n--)
    {
      RcPin *pin = rc_pin_new ((RcPinKind)g_rand_int_range (rand, 0, RC_N_PIN_KINDS), NULL);
      change_text (rand, &pin->room);
      change_text (rand, &pin->roll);
      for (int k = g_rand_int_range (rand, 0, 5); k > 0; k--)
        {
          RcPoint point = { make_length (rand), make_length (rand) };
          g_array_append_val (pin->points, point);
        }
      g_ptr_array_add (area->pins, pin);
    }
  return area;
}

static RcGoods *
make_goods (GRand *rand)
{
  g_autofree char *id = make_id (rand, "goods"), *name = make_text (rand);
  RcGoods         *goods = rc_goods_new (id, (RcGoodsKind)g_rand_int_range (rand, 0, RC_N_GOODS_KINDS), name);

  change_text (rand, &goods->supplier);
  goods->unit = (RcUnit)g_rand_int_range (rand, 0, RC_N_UNITS);
  goods->roll_width = make_length (rand);
  goods->usable_width = make_length (rand);
  goods->repeat_length = make_length (rand);
  goods->repeat_width = make_length (rand);
  static const RcMatch matches[] = { RC_MATCH_SET, RC_MATCH_HALF_DROP, RC_MATCH_QUARTER_DROP, RC_MATCH (3, 7) };
  goods->match = matches[g_rand_int_range (rand, 0, G_N_ELEMENTS (matches))];
  goods->length_step = make_length (rand);
  goods->full_roll = make_length (rand);
  goods->least_cut = make_length (rand);
  goods->pack_micro = (gint64)g_rand_int (rand) << 20;
  goods->pack_unit = (RcUnit)g_rand_int_range (rand, 0, RC_N_UNITS);
  goods->tape_width = make_length (rand);
  goods->pack_covers_area = CHANCE (rand, 4) ? G_MAXINT64 : (RcArea)g_rand_int (rand);
  goods->pack_covers_length = make_length (rand);
  return goods;
}

static RcRoll *
make_roll (GRand *rand)
{
  g_autofree char *id = make_id (rand, "R"), *goods = make_text (rand);
  RcRoll          *roll = rc_roll_new (id, goods, make_length (rand));

  change_text (rand, &roll->lot);
  change_text (rand, &roll->place);
  roll->remnant = CHANCE (rand, 2);
  office_maker_fill_roll (rand, roll);
  return roll;
}

static void
fill_measure (GRand *rand, RcMeasure *measure, guint n_rooms)
{
  change_text (rand, &measure->date);
  change_text (rand, &measure->taken_by);
  change_text (rand, &measure->notes);
  for (guint i = 0; i < n_rooms; i++)
    g_ptr_array_add (measure->rooms, make_room (rand));
  for (gint i = g_rand_int_range (rand, 0, 3); i > 0; i--)
    g_ptr_array_add (measure->stairs, make_stair (rand));
  for (gint i = g_rand_int_range (rand, 0, 4); i > 0; i--)
    g_ptr_array_add (measure->areas, make_area (rand, measure));
}

static void
change_settings (GRand *rand, RcSettings *settings)
{
  settings->trim_length = make_length (rand);
  settings->trim_width = make_length (rand);
  settings->least_fill_width = make_length (rand);
  settings->least_piece_length = make_length (rand);
  settings->most_joins = (guint)g_rand_int_range (rand, 0, 5);
  settings->door_distance = make_length (rand);
  settings->stagger = make_length (rand);
  for (guint i = 0; i < RC_N_RULES; i++)
    settings->rule_cost[i] = g_rand_int_range (rand, 0, 100000);
  settings->strip_double_from = make_length (rand);
  settings->closure.error_max = make_length (rand);
  settings->closure.close_max = make_length (rand);
}

static void
change_head (GRand *rand, RcJob *job)
{
  change_text (rand, &job->number);
  change_text (rand, &job->title);
  change_text (rand, &job->date);
  change_text (rand, &job->notes);
  change_text (rand, &job->customer.name);
  change_text (rand, &job->customer.address);
  change_text (rand, &job->customer.phone);
  change_text (rand, &job->customer.email);
  change_text (rand, &job->customer.language);
  job->units = CHANCE (rand, 2) ? RC_UNITS_METRIC : RC_UNITS_IMPERIAL;
  job->tax_ppm = g_rand_int_range (rand, -1, 300000);
}

RcJob *
rc_store_maker_new_job (GRand *rand, const char *id, guint n_rooms)
{
  RcCurrency currency = { "USD", 2 };
  RcJob     *job = rc_job_new (id, &currency);

  change_head (rand, job);
  change_settings (rand, &job->settings);
  for (gint i = g_rand_int_range (rand, 0, 6); i > 0; i--)
    g_ptr_array_add (job->goods, make_goods (rand));
  for (gint i = g_rand_int_range (rand, 0, 4); i > 0; i--)
    g_ptr_array_add (job->rolls, make_roll (rand));
  fill_measure (rand, job->measures->pdata[0], n_rooms);
  office_maker_fill_job (rand, job);
  return job;
}

static RcRoom *
pick_room (GRand *rand, const RcMeasure *measure)
{
  if (measure->rooms->len == 0)
    return NULL;
  return measure->rooms->pdata[g_rand_int_range (rand, 0, (gint32)measure->rooms->len)];
}

static const char *
edit_room (GRand *rand, RcRoom *room)
{
  switch (g_rand_int_range (rand, 0, 7))
    {
    case 0:
      g_free (room->id);
      room->id = make_id (rand, "room");
      return "Rename room";
    case 1:
      add_wall (rand, room);
      return "Add wall";
    case 2:
      if (room->walls->len > 0)
        g_array_remove_index (room->walls, (guint)g_rand_int_range (rand, 0, (gint32)room->walls->len));
      return "Remove wall";
    case 3:
      g_ptr_array_add (room->openings, make_opening (rand));
      return "Add door";
    case 4:
      if (room->openings->len > 0)
        g_ptr_array_remove_index (room->openings, (guint)g_rand_int_range (rand, 0, (gint32)room->openings->len));
      return "Remove door";
    case 5:
      if (room->cutouts->len > 0 && CHANCE (rand, 2))
        g_ptr_array_remove_index (room->cutouts, 0);
      else
        g_ptr_array_insert (room->cutouts, 0, make_cutout (rand));
      return "Change cut-out";
    default:
      for (guint i = 0; i < room->walls->len; i++)
        g_array_index (room->walls, RcWall, i).length = make_length (rand);
      return "Measure walls";
    }
}

static const char *
edit_rooms (GRand *rand, RcMeasure *measure)
{
  guint n = measure->rooms->len;

  switch (g_rand_int_range (rand, 0, 4))
    {
    case 0:
      g_ptr_array_insert (measure->rooms, g_rand_int_range (rand, 0, (gint32)n + 1), make_room (rand));
      return "Add room";
    case 1:
      if (n > 0)
        g_ptr_array_remove_index (measure->rooms, (guint)g_rand_int_range (rand, 0, (gint32)n));
      return "Remove room";
    case 2:
      if (n > 1)
        g_ptr_array_add (measure->rooms, g_ptr_array_steal_index (measure->rooms, 0));
      return "Move room";
    default:
      return n > 0 ? edit_room (rand, pick_room (rand, measure)) : "Nothing";
    }
}

static const char *
edit_list (GRand *rand, GPtrArray *list, gpointer new_item)
{
  if (list->len > 0 && CHANCE (rand, 2))
    g_ptr_array_remove_index (list, (guint)g_rand_int_range (rand, 0, (gint32)list->len));
  g_ptr_array_insert (list, g_rand_int_range (rand, 0, (gint32)list->len + 1), new_item);
  return "Change list";
}

static const char *
add_measure (GRand *rand, RcJob *job)
{
  RcMeasure *measure = rc_measure_copy (rc_job_get_measure (job, NULL));

  g_free (measure->id);
  measure->id = make_id (rand, "M");
  g_ptr_array_add (job->measures, measure);
  if (job->measures->len > 4)
    g_ptr_array_remove_index (job->measures, 0);
  return "Measure again";
}

const char *
rc_store_maker_edit_job (GRand *rand, RcJob *job)
{
  RcMeasure *measure = rc_job_get_measure (job, NULL);

  switch (g_rand_int_range (rand, 0, 12))
    {
    case 0:
      change_head (rand, job);
      return "Change customer";
    case 1:
      change_settings (rand, &job->settings);
      return "Change settings";
    case 2:
      return edit_list (rand, job->goods, make_goods (rand));
    case 3:
      return edit_list (rand, job->rolls, make_roll (rand));
    case 4:
      return edit_list (rand, measure->stairs, make_stair (rand));
    case 5:
      return edit_list (rand, measure->areas, make_area (rand, measure));
    case 6:
      return add_measure (rand, job);
    case 7:
      rc_offer_free (job->offer);
      job->offer = rc_offer_new ();
      g_ptr_array_set_size (job->attachments, 0);
      g_ptr_array_set_size (job->pictures, 0);
      for (guint i = 0; i < RC_N_JOB_STATES; i++)
        g_clear_pointer (&job->reached[i], g_free);
      office_maker_fill_job (rand, job);
      return "Change offer";
    default:
      return edit_rooms (rand, measure);
    }
}

RcPriceBook *
rc_store_maker_new_price_book (GRand *rand, guint n_goods)
{
  RcCurrency   currency = { "EUR", 2 };
  RcPriceBook *book = rc_price_book_new (&currency);

  book->tax_ppm = g_rand_int_range (rand, 0, 300000);
  book->deposit_ppm = g_rand_int_range (rand, 0, 1000000);
  change_text (rand, &book->shop_name);
  change_text (rand, &book->shop_address);
  change_text (rand, &book->terms);
  office_maker_fill_book (rand, book);
  for (guint i = 0; i < n_goods; i++)
    {
      RcGoods *goods = make_goods (rand);
      RcPrice *price = rc_price_new (goods->id, goods->unit, g_rand_int_range (rand, 0, 100000),
                                     g_rand_int_range (rand, -5, 100000));

      change_text (rand, &price->valid_from);
      change_text (rand, &price->valid_to);
      price->from_micro = g_rand_int_range (rand, 0, 1000);
      g_ptr_array_add (book->goods, goods);
      g_ptr_array_add (book->prices, price);
    }
  return book;
}

RcQuote *
rc_store_maker_new_quote (GRand *rand, guint n_lines)
{
  RcCurrency currency = { "USD", 2 };
  RcQuote   *quote = rc_quote_new_empty (&currency);
  RcTaxPart  part = { .ppm = 82500 };

  quote->tax_ppm = 82500;
  for (guint i = 0; i < n_lines; i++)
    {
      RcQuoteLine *line = g_new0 (RcQuoteLine, 1);

      line->item = make_id (rand, "item");
      line->name = make_text (rand);
      line->because = make_text (rand);
      line->quantity_micro = g_rand_int_range (rand, 0, 100000000);
      line->unit = (RcUnit)g_rand_int_range (rand, 0, RC_N_UNITS);
      line->pack_unit = (RcUnit)g_rand_int_range (rand, 0, RC_N_UNITS);
      line->packs = g_rand_int_range (rand, 0, 10);
      line->price = g_rand_int_range (rand, 0, 10000);
      line->cost = g_rand_int_range (rand, 0, 10000);
      line->is_work = CHANCE (rand, 2);
      line->from_stock = CHANCE (rand, 2);
      g_assert_true (rc_money_multiply (line->price, line->quantity_micro, &line->gross, NULL));
      line->tax_ppm = 82500;
      line->optional = CHANCE (rand, 4);
      line->hidden = CHANCE (rand, 4);
      line->needed_micro = g_rand_int_range (rand, 0, 1000000);
      line->needed_unit = (RcUnit)g_rand_int_range (rand, 0, RC_N_UNITS);
      line->from_micro = g_rand_int_range (rand, 0, 1000000);
      line->price_since = make_text (rand);
      rc_quote_line_set_discount (line, CHANCE (rand, 2) ? g_rand_int_range (rand, 0, 500000) : 0);
      part.net += line->optional ? 0 : line->amount;
      quote->cost += line->optional ? 0 : line->cost;
      g_ptr_array_add (quote->lines, line);
    }
  quote->sum = part.net;
  quote->discount = quote->sum / 10;
  quote->net = part.net = quote->sum - quote->discount;
  quote->tax = part.tax = rc_money_part (quote->net, quote->tax_ppm);
  quote->terms = make_text (rand);
  quote->tax_name = make_text (rand);
  quote->detail = g_rand_int_range (rand, 0, RC_N_DETAILS);
  quote->valid_days = g_rand_int_range (rand, 0, 60);
  for (guint i = 0; i < n_lines; i++)
    if (!((RcQuoteLine *)quote->lines->pdata[i])->optional && quote->taxes->len == 0)
      g_array_append_val (quote->taxes, part);
  quote->total = quote->net + quote->tax;
  quote->deposit = quote->total / 2;
  quote->margin = quote->net - quote->cost;
  return quote;
}

char *
rc_store_maker_new_folder (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("rowcut-store-XXXXXX", &error);

  g_assert_no_error (error);
  return folder;
}

void
rc_store_maker_remove_folder (char *folder)
{
  GDir       *dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      g_remove (path);
    }
  g_clear_pointer (&dir, g_dir_close);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
  g_free (folder);
}

void
rc_store_maker_assert_stored (RcStore *store, const char *id, const char *dump)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcJob) job = rc_store_load_job (store, id, &error);
  g_autofree char *found = NULL;

  g_assert_no_error (error);
  found = rc_store_maker_dump_job (job);
  g_assert_cmpstr (found, ==, dump);
}

void
rc_store_maker_assert_sound (RcStore *store)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *report = NULL;
  gboolean         sound = rc_store_check (store, &report, &error);

  g_assert_no_error (error);
  g_assert_cmpstr (report, ==, "");
  g_assert_true (sound);
}

RcStore *
rc_store_maker_open (const char *path)
{
  g_autoptr (GError) error = NULL;
  RcStore *store = rc_store_open (path, NULL, &error);

  g_assert_no_error (error);
  return store;
}

void
rc_store_maker_fill (RcStore *store, GRand *rand)
{
  g_autoptr (RcPriceBook) book = rc_store_maker_new_price_book (rand, 5);

  g_assert_true (rc_store_save_price_book (store, book, NULL));
  for (guint i = 1; i <= 3; i++)
    {
      g_autofree char *id = g_strdup_printf ("J-%u", i);
      g_autoptr (RcJob) job = rc_store_maker_new_job (rand, id, 4);
      g_autoptr (RcQuote) quote = rc_store_maker_new_quote (rand, 4);
      g_autofree char *number = NULL;

      g_assert_true (rc_store_save_job (store, job, "New job", NOW, NULL));
      g_free (job->title);
      job->title = g_strdup ("Harbour House");
      g_array_set_size (((RcRoom *)rc_job_get_measure (job, NULL)->rooms->pdata[0])->walls, 4);
      g_assert_true (rc_store_save_job (store, job, "Edit", NOW, NULL));
      number = rc_store_issue_quote (store, job, quote, "2025-03-04", NULL);
      g_assert_nonnull (number);
    }
  g_assert_true (rc_store_delete_job (store, "J-3", NULL));
}
