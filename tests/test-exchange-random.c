/* Random jobs keep every field through the job file, whatever their texts and sizes. */
#include <string.h>

#include "job-file.h"
#include "price-csv.h"
#include "office-maker.h"
#include "rounds.h"

static GRand *rand_of_test;

/* --- random things --- */

/* Markup, quotes, spaces, line ends, other scripts, signs of all sorts; never empty. */
static char *
random_text (void)
{
  static const char *const parts[] = { "a", "Z",  " ",    "  ", "&",  "<",     ">", "\"", "'",  "]]>", "<!--",
                                       "é", "漢", "🧶", "\n", "\t", "&amp;", "½", "=1", "%s", "\\",  "0" };
  GString                 *text = g_string_new ("x");

  for (int n = g_test_rand_int_range (0, 12); n > 0; n--)
    g_string_append (text, parts[g_test_rand_int_range (0, G_N_ELEMENTS (parts))]);
  g_string_append_c (text, 'y');
  return g_string_free (text, FALSE);
}

static char *
maybe_text (void)
{
  return g_test_rand_bit () ? random_text () : NULL;
}

static char *
random_id (const char *stem, guint i)
{
  return g_strdup_printf ("%s-%u%s", stem, i, g_test_rand_bit () ? "é" : "");
}

/* Ticks of every kind: whole millimetres, 1/32 in, neither. */
static RcLength
random_length (void)
{
  RcLength n = g_test_rand_int_range (1, 100000);

  switch (g_test_rand_int_range (0, 3))
    {
    case 0:
      return n * RC_TICKS_PER_MM;
    case 1:
      return n * RC_TICKS_PER_32ND;
    default:
      return n * 37 + 1;
    }
}

static RcLength
maybe_length (void)
{
  return g_test_rand_bit () ? random_length () : 0;
}

static RcLength
random_place (void)
{
  return g_test_rand_bit () ? random_length () : -random_length ();
}

static RcRing *
random_ring (void)
{
  RcRing *ring = rc_ring_new ();

  for (int n = g_test_rand_int_range (3, 8); n > 0; n--)
    {
      RcPoint point = { random_place (), random_place () };

      g_array_append_val (ring, point);
    }
  return ring;
}

static RcGoods *
random_goods (guint i)
{
  g_autofree char *id = random_id ("goods", i), *name = maybe_text ();
  RcGoods         *goods = rc_goods_new (id, g_test_rand_int_range (0, RC_N_GOODS_KINDS), name);

  goods->supplier = maybe_text ();
  goods->unit = g_test_rand_int_range (0, RC_N_UNITS);
  goods->roll_width = goods->kind == RC_GOODS_CARPET ? random_length () : maybe_length ();
  goods->usable_width = maybe_length ();
  if (goods->kind == RC_GOODS_CARPET)
    goods->usable_width = MIN (goods->usable_width, goods->roll_width);
  goods->repeat_length = maybe_length ();
  goods->repeat_width = maybe_length ();
  static const RcMatch matches[] = { RC_MATCH_SET, RC_MATCH_HALF_DROP, RC_MATCH_QUARTER_DROP, RC_MATCH (3, 7) };
  goods->match = goods->repeat_length > 0 ? matches[g_test_rand_int_range (0, G_N_ELEMENTS (matches))] : RC_MATCH_SET;
  goods->length_step = maybe_length ();
  goods->full_roll = maybe_length ();
  goods->least_cut = maybe_length ();
  goods->pack_micro = g_test_rand_bit () ? g_test_rand_int_range (1, G_MAXINT) : 0;
  goods->pack_unit = g_test_rand_int_range (0, RC_N_UNITS);
  goods->tape_width = maybe_length ();
  goods->pack_covers_length = maybe_length ();
  goods->pack_covers_area = g_test_rand_bit () ? (RcArea)g_test_rand_int_range (1, G_MAXINT) * 7919 : 0;
  return goods;
}

static RcOpening *
random_opening (guint i)
{
  g_autofree char *id = random_id ("O", i);
  RcOpening       *opening = rc_opening_new (id, g_test_rand_int_range (0, 3));

  opening->wall = g_test_rand_int_range (0, 20);
  opening->offset = maybe_length ();
  opening->width = random_length ();
  opening->depth = maybe_length ();
  opening->swing = g_test_rand_int_range (0, 3);
  opening->hinge_at_end = g_test_rand_bit ();
  opening->to_room = g_test_rand_bit () ? g_strdup ("room-0") : NULL;
  opening->to_opening = g_test_rand_bit () ? g_strdup ("O-0") : NULL;
  opening->transition = g_test_rand_bit () ? g_strdup ("goods-0") : NULL;
  return opening;
}

static RcCutout *
random_cutout (void)
{
  RcCutoutKind kind = g_test_rand_int_range (0, RC_N_CUTOUT_KINDS);
  RcPoint      middle = { random_place (), random_place () };
  RcCutout    *cutout = g_test_rand_bit () ? rc_cutout_new_take (kind, random_ring ())
                                           : rc_cutout_new_round (kind, middle, random_length ());

  cutout->name = maybe_text ();
  cutout->strip = g_test_rand_bit ();
  cutout->counted = g_test_rand_bit ();
  return cutout;
}

static RcRoom *
random_room (guint i)
{
  g_autofree char *id = random_id ("room", i), *name = maybe_text ();
  RcRoom          *room = rc_room_new (id, name);

  room->floor = g_test_rand_int_range (-2, 3);
  room->spread = g_test_rand_bit ();
  room->placed = g_test_rand_bit ();
  if (room->placed)
    room->at = (RcPoint){ random_place (), random_place () };
  if (g_test_rand_bit ())
    {
      g_array_unref (room->outline);
      room->outline = random_ring ();
    }
  else
    for (int n = g_test_rand_int_range (1, 9); n > 0; n--)
      {
        RcWall wall = { g_test_rand_bit () ? g_test_rand_int_range (0, 8) * 45 : g_test_rand_double_range (-360, 720),
                        random_length (), g_test_rand_bit () ? random_place () : 0 };

        g_array_append_val (room->walls, wall);
      }
  for (int n = g_test_rand_int_range (0, 3); n > 0; n--)
    g_ptr_array_add (room->cutouts, random_cutout ());
  for (int n = g_test_rand_int_range (0, 4); n > 0; n--)
    g_ptr_array_add (room->openings, random_opening (n));
  for (int n = g_test_rand_int_range (0, 3); n > 0; n--)
    {
      RcDiagonal diagonal
          = { (guint)g_test_rand_int_range (0, 9), (guint)g_test_rand_int_range (0, 9), random_length () };
      g_array_append_val (room->diagonals, diagonal);
    }
  room->notes = maybe_text ();
  return room;
}

static RcStair *
random_stair (guint i)
{
  g_autofree char *id = random_id ("stair", i), *name = maybe_text ();
  RcStair         *stair = rc_stair_new (id, name);

  stair->steps = g_test_rand_int_range (1, 30);
  stair->rise = random_length ();
  stair->going = random_length ();
  stair->width = random_length ();
  stair->style = g_test_rand_int_range (0, 2);
  stair->nose_extra = maybe_length ();
  stair->end_extra = maybe_length ();
  stair->width_extra = maybe_length ();
  stair->cutting = g_test_rand_int_range (0, 2);
  stair->runner_width = maybe_length ();
  stair->curved_width = maybe_length ();
  for (int n = g_test_rand_int_range (0, 4); n > 0; n--)
    {
      RcStairTurn turn = { .kind = g_test_rand_int_range (0, 2),
                           .bend = g_test_rand_int_range (0, 5),
                           .after = g_test_rand_int_range (0, 20),
                           .winders = g_test_rand_int_range (0, 5),
                           .going = maybe_length (),
                           .width = maybe_length () };
      g_array_append_val (stair->turns, turn);
    }
  stair->piece_extra = maybe_length ();
  stair->placed = g_test_rand_bit ();
  stair->at = stair->placed ? (RcPoint){ random_place (), random_place () } : (RcPoint){ 0, 0 };
  stair->floor = g_test_rand_int_range (-2, 4);
  stair->bearing_degrees = g_test_rand_int_range (0, 360);
  stair->carpet = g_test_rand_bit () ? g_strdup ("goods-1") : NULL;
  stair->cushion = g_test_rand_bit () ? g_strdup ("goods-2") : NULL;
  stair->notes = maybe_text ();
  return stair;
}

static RcFloorArea *
random_area (guint i)
{
  g_autofree char *id = random_id ("area", i), *name = maybe_text ();
  RcFloorArea     *area = rc_floor_area_new (id, name);

  for (int n = g_test_rand_int_range (0, 3); n > 0; n--)
    g_ptr_array_add (area->rooms, g_strdup_printf ("room-%d", n));
  area->carpet = g_test_rand_bit () ? g_strdup ("goods-1") : NULL;
  area->cushion = g_test_rand_bit () ? g_strdup ("goods-2") : NULL;
  area->fixing = g_test_rand_int_range (0, 2);
  area->pile_degrees = g_test_rand_int_range (-1, 360);
  area->option = g_test_rand_bit () ? g_strdup ("fewest-seams") : NULL;
  for (int n = g_test_rand_int_range (0, 4); n > 0; n--)
    {
      RcPin *pin = rc_pin_new (g_test_rand_int_range (0, RC_N_PIN_KINDS), "room-1");

      pin->roll = g_test_rand_bit () ? g_strdup ("R-1") : NULL;
      for (int k = g_test_rand_int_range (1, 5); k > 0; k--)
        {
          RcPoint point = { random_place (), random_place () };

          g_array_append_val (pin->points, point);
        }
      g_ptr_array_add (area->pins, pin);
    }
  return area;
}

static RcMeasure *
random_measure (guint i)
{
  g_autofree char *id = g_strdup_printf ("M%u", i);
  RcMeasure       *measure = rc_measure_new (id);

  measure->date = g_test_rand_bit () ? g_strdup ("2026-03-04") : NULL;
  measure->taken_by = maybe_text ();
  measure->notes = maybe_text ();
  for (int n = g_test_rand_int_range (0, 4); n > 0; n--)
    g_ptr_array_add (measure->rooms, random_room (n));
  for (int n = g_test_rand_int_range (0, 3); n > 0; n--)
    g_ptr_array_add (measure->stairs, random_stair (n));
  for (int n = g_test_rand_int_range (0, 3); n > 0; n--)
    g_ptr_array_add (measure->areas, random_area (n));
  return measure;
}

static void
randomize_settings (RcSettings *settings)
{
  settings->trim_length = maybe_length ();
  settings->trim_width = maybe_length ();
  settings->least_fill_width = maybe_length ();
  settings->least_piece_length = maybe_length ();
  settings->most_joins = g_test_rand_int_range (0, 10);
  settings->door_distance = maybe_length ();
  settings->stagger = maybe_length ();
  settings->strip_double_from = maybe_length ();
  settings->closure.error_max = maybe_length ();
  settings->closure.close_max = maybe_length ();
  for (guint i = 0; i < RC_N_RULES; i++)
    settings->rule_cost[i] = g_test_rand_int_range (0, 100000);
}

static RcJob *
random_job (void)
{
  static const RcCurrency currencies[] = { { "USD", 2 }, { "JPY", 0 }, { "KWD", 3 } };
  RcJob                  *job = rc_job_new ("J-7", &currencies[g_test_rand_int_range (0, G_N_ELEMENTS (currencies))]);

  job->number = maybe_text ();
  job->title = maybe_text ();
  job->date = g_test_rand_bit () ? g_strdup ("2026-03-02") : NULL;
  job->notes = maybe_text ();
  job->customer = (RcCustomer){ maybe_text (), maybe_text (), maybe_text (), maybe_text (),
                                g_test_rand_bit () ? g_strdup ("fr") : NULL };
  job->units = g_test_rand_int_range (0, 2);
  job->tax_ppm = g_test_rand_int_range (-1, 300000);
  randomize_settings (&job->settings);
  for (int n = g_test_rand_int_range (0, 5); n > 0; n--)
    g_ptr_array_add (job->goods, random_goods (n));
  for (int n = g_test_rand_int_range (0, 3); n > 0; n--)
    {
      RcRoll *roll = rc_roll_new ("R-1", "goods-1", random_length ());

      roll->lot = maybe_text ();
      roll->remnant = g_test_rand_bit ();
      roll->place = maybe_text ();
      office_maker_fill_roll (rand_of_test, roll);
      g_ptr_array_add (job->rolls, roll);
    }
  office_maker_fill_job (rand_of_test, job);
  g_ptr_array_set_size (job->measures, 0);
  for (int n = g_test_rand_int_range (1, 4); n > 0; n--)
    g_ptr_array_add (job->measures, random_measure (n));
  return job;
}

static RcPriceBook *
random_book (const RcCurrency *currency)
{
  RcPriceBook *book = rc_price_book_new (currency);

  book->tax_ppm = g_test_rand_int_range (0, 300000);
  book->deposit_ppm = g_test_rand_int_range (0, 1000000);
  book->shop_name = maybe_text ();
  book->shop_address = maybe_text ();
  book->terms = maybe_text ();
  office_maker_fill_book (rand_of_test, book);
  for (int n = g_test_rand_int_range (0, 4); n > 0; n--)
    g_ptr_array_add (book->goods, random_goods (n));
  for (int n = g_test_rand_int_range (0, 6); n > 0; n--)
    {
      RcPrice *price = rc_price_new (n % 2 ? "lay" : "goods-1", g_test_rand_int_range (0, RC_N_UNITS),
                                     g_test_rand_int_range (0, 100000), g_test_rand_int_range (0, 100000));

      price->from_micro = g_test_rand_bit () ? g_test_rand_int_range (1, G_MAXINT) : 0;
      price->valid_from = g_test_rand_bit () ? g_strdup ("2026-01-01") : NULL;
      price->valid_to = g_test_rand_bit () ? g_strdup ("2026-12-31") : NULL;
      g_ptr_array_add (book->prices, price);
    }
  return book;
}

/* --- sameness, field by field --- */

#define SAME_TEXT(field)   g_assert_cmpstr (a->field, ==, b->field)
#define SAME_NUMBER(field) g_assert_cmpint (a->field, ==, b->field)
#define SAME_EACH(list, type, check)                                                                                   \
  G_STMT_START                                                                                                         \
  {                                                                                                                    \
    g_assert_cmpuint (a->list->len, ==, b->list->len);                                                                 \
    for (guint i_ = 0; i_ < a->list->len; i_++)                                                                        \
      check ((const type *)a->list->pdata[i_], (const type *)b->list->pdata[i_]);                                      \
  }                                                                                                                    \
  G_STMT_END

static void
same_ring (const RcRing *a, const RcRing *b)
{
  g_assert_cmpmem (a->data, a->len * sizeof (RcPoint), b->data, b->len * sizeof (RcPoint));
}

static void
same_goods (const RcGoods *a, const RcGoods *b)
{
  SAME_TEXT (id);
  SAME_NUMBER (kind);
  SAME_TEXT (name);
  SAME_TEXT (supplier);
  SAME_NUMBER (unit);
  SAME_NUMBER (roll_width);
  SAME_NUMBER (usable_width);
  SAME_NUMBER (repeat_length);
  SAME_NUMBER (repeat_width);
  SAME_NUMBER (match);
  SAME_NUMBER (length_step);
  SAME_NUMBER (full_roll);
  SAME_NUMBER (least_cut);
  SAME_NUMBER (pack_micro);
  SAME_NUMBER (pack_unit);
  SAME_NUMBER (tape_width);
  SAME_NUMBER (pack_covers_area);
  SAME_NUMBER (pack_covers_length);
}

static void
same_roll (const RcRoll *a, const RcRoll *b)
{
  SAME_TEXT (id);
  SAME_TEXT (goods_id);
  SAME_TEXT (lot);
  SAME_NUMBER (length);
  SAME_NUMBER (remnant);
  SAME_TEXT (place);
  {
    g_autoptr (GString) text_a = g_string_new (NULL), text_b = g_string_new (NULL);

    office_maker_dump_roll (text_a, a);
    office_maker_dump_roll (text_b, b);
    g_assert_cmpstr (text_a->str, ==, text_b->str);
  }
}

static void
same_opening (const RcOpening *a, const RcOpening *b)
{
  SAME_TEXT (id);
  SAME_NUMBER (kind);
  SAME_NUMBER (wall);
  SAME_NUMBER (offset);
  SAME_NUMBER (width);
  SAME_NUMBER (depth);
  SAME_NUMBER (swing);
  SAME_NUMBER (hinge_at_end);
  SAME_TEXT (to_room);
  SAME_TEXT (to_opening);
  SAME_TEXT (transition);
}

static void
same_cutout (const RcCutout *a, const RcCutout *b)
{
  SAME_TEXT (name);
  SAME_NUMBER (kind);
  SAME_NUMBER (diameter);
  SAME_NUMBER (strip);
  SAME_NUMBER (counted);
  same_ring (a->points, b->points);
}

static void
same_room (const RcRoom *a, const RcRoom *b)
{
  SAME_TEXT (id);
  SAME_TEXT (name);
  SAME_NUMBER (floor);
  SAME_NUMBER (spread);
  SAME_NUMBER (placed);
  SAME_NUMBER (at.x);
  SAME_NUMBER (at.y);
  SAME_TEXT (notes);
  SAME_NUMBER (walls->len);
  for (guint i = 0; i < a->walls->len; i++)
    {
      const RcWall *wall_a = &g_array_index (a->walls, RcWall, i), *wall_b = &g_array_index (b->walls, RcWall, i);

      g_assert_cmpfloat (wall_a->bearing_degrees, ==, wall_b->bearing_degrees);
      g_assert_cmpint (wall_a->length, ==, wall_b->length);
      g_assert_cmpint (wall_a->bow, ==, wall_b->bow);
    }
  same_ring (a->outline, b->outline);
  SAME_EACH (cutouts, RcCutout, same_cutout);
  SAME_EACH (openings, RcOpening, same_opening);
  SAME_NUMBER (diagonals->len);
  for (guint i = 0; i < a->diagonals->len; i++)
    {
      const RcDiagonal *one = &g_array_index (a->diagonals, RcDiagonal, i);
      const RcDiagonal *two = &g_array_index (b->diagonals, RcDiagonal, i);

      g_assert_cmpuint (one->from, ==, two->from);
      g_assert_cmpuint (one->to, ==, two->to);
      g_assert_cmpint (one->length, ==, two->length);
    }
}

static void
same_turn (const RcStairTurn *a, const RcStairTurn *b)
{
  SAME_NUMBER (kind);
  SAME_NUMBER (bend);
  SAME_NUMBER (after);
  SAME_NUMBER (winders);
  SAME_NUMBER (going);
  SAME_NUMBER (width);
}

static void
same_stair (const RcStair *a, const RcStair *b)
{
  SAME_NUMBER (turns->len);
  for (guint i = 0; i < a->turns->len; i++)
    same_turn (rc_stair_get_turn (a, i), rc_stair_get_turn (b, i));
  SAME_TEXT (id);
  SAME_TEXT (name);
  SAME_NUMBER (steps);
  SAME_NUMBER (rise);
  SAME_NUMBER (going);
  SAME_NUMBER (width);
  SAME_NUMBER (style);
  SAME_NUMBER (nose_extra);
  SAME_NUMBER (end_extra);
  SAME_NUMBER (width_extra);
  SAME_NUMBER (cutting);
  SAME_NUMBER (runner_width);
  SAME_NUMBER (curved_width);
  SAME_NUMBER (piece_extra);
  SAME_NUMBER (placed);
  SAME_NUMBER (floor);
  SAME_NUMBER (at.x);
  SAME_NUMBER (at.y);
  SAME_NUMBER (bearing_degrees);
  SAME_TEXT (carpet);
  SAME_TEXT (cushion);
  SAME_TEXT (notes);
}

static void
same_id (const char *a, const char *b)
{
  g_assert_cmpstr (a, ==, b);
}

static void
same_pin (const RcPin *a, const RcPin *b)
{
  SAME_NUMBER (kind);
  SAME_TEXT (room);
  SAME_TEXT (roll);
  g_assert_cmpuint (a->points->len, ==, b->points->len);
  g_assert_cmpmem (a->points->data, a->points->len * sizeof (RcPoint), b->points->data,
                   b->points->len * sizeof (RcPoint));
}

static void
same_area (const RcFloorArea *a, const RcFloorArea *b)
{
  SAME_TEXT (id);
  SAME_TEXT (name);
  SAME_EACH (rooms, char, same_id);
  SAME_TEXT (carpet);
  SAME_TEXT (cushion);
  SAME_NUMBER (fixing);
  SAME_NUMBER (pile_degrees);
  SAME_TEXT (option);
  SAME_EACH (pins, RcPin, same_pin);
}

static void
same_measure (const RcMeasure *a, const RcMeasure *b)
{
  SAME_TEXT (id);
  SAME_TEXT (date);
  SAME_TEXT (taken_by);
  SAME_TEXT (notes);
  SAME_EACH (rooms, RcRoom, same_room);
  SAME_EACH (stairs, RcStair, same_stair);
  SAME_EACH (areas, RcFloorArea, same_area);
}

#define SAME_DUMP(function)                                                                                            \
  G_STMT_START                                                                                                         \
  {                                                                                                                    \
    g_autoptr (GString) text_a = g_string_new (NULL), text_b = g_string_new (NULL);                                    \
    function (text_a, a);                                                                                              \
    function (text_b, b);                                                                                              \
    g_assert_cmpstr (text_a->str, ==, text_b->str);                                                                    \
  }                                                                                                                    \
  G_STMT_END

static void
same_job (const RcJob *a, const RcJob *b)
{
  SAME_TEXT (id);
  SAME_TEXT (number);
  SAME_TEXT (title);
  SAME_TEXT (date);
  SAME_TEXT (notes);
  SAME_TEXT (customer.name);
  SAME_TEXT (customer.address);
  SAME_TEXT (customer.phone);
  SAME_TEXT (customer.email);
  SAME_TEXT (customer.language);
  SAME_NUMBER (units);
  SAME_TEXT (currency.code);
  SAME_NUMBER (currency.digits);
  SAME_NUMBER (tax_ppm);
  g_assert_cmpmem (&a->settings, sizeof a->settings, &b->settings, sizeof b->settings);
  SAME_EACH (goods, RcGoods, same_goods);
  SAME_EACH (rolls, RcRoll, same_roll);
  SAME_EACH (measures, RcMeasure, same_measure);
  SAME_DUMP (office_maker_dump_job);
}

static void
same_price (const RcPrice *a, const RcPrice *b)
{
  SAME_TEXT (item);
  SAME_NUMBER (unit);
  SAME_NUMBER (cost);
  SAME_NUMBER (sale);
  SAME_NUMBER (from_micro);
  SAME_TEXT (valid_from);
  SAME_TEXT (valid_to);
}

static void
same_book (const RcPriceBook *a, const RcPriceBook *b)
{
  SAME_TEXT (currency.code);
  SAME_NUMBER (tax_ppm);
  SAME_NUMBER (deposit_ppm);
  SAME_TEXT (shop_name);
  SAME_TEXT (shop_address);
  SAME_TEXT (terms);
  SAME_DUMP (office_maker_dump_book);
  SAME_EACH (goods, RcGoods, same_goods);
  SAME_EACH (prices, RcPrice, same_price);
}

/* Prices of goods before those of work. */
static int
compare_items (gconstpointer a, gconstpointer b)
{
  return strcmp ((*(RcPrice *const *)a)->item, (*(RcPrice *const *)b)->item);
}

static void
keep_what_applies (RcGoods *goods)
{
  if (goods->kind == RC_GOODS_ADHESIVE)
    goods->pack_covers_length = 0;
  else
    goods->pack_covers_area = 0;
  if (goods->name == NULL)
    goods->name = g_strdup (goods->id);
}

static void
strip (char *text)
{
  if (text != NULL)
    g_strstrip (text);
}

static void
strip_shop (RcPriceBook *book)
{
  for (guint i = 0; i < book->tax_areas->len; i++)
    strip (((RcTaxArea *)book->tax_areas->pdata[i])->name);
  for (guint i = 0; i < book->payments->len; i++)
    strip (((RcPayment *)book->payments->pdata[i])->name);
  for (guint i = 0; i < book->suppliers->len; i++)
    {
      RcSupplier *supplier = book->suppliers->pdata[i];

      strip (supplier->address);
      strip (supplier->phone);
      strip (supplier->email);
      strip (supplier->account);
    }
}

static void
test_random_jobs (void)
{
  for (guint i = 0; i < scale_rounds (200); i++)
    {
      g_autoptr (RcJob) job = random_job ();
      g_autoptr (RcJob) back = NULL;
      g_autoptr (RcPriceBook) book = random_book (&job->currency);
      g_autoptr (RcPriceBook) book_back = NULL;
      g_autoptr (GError) error = NULL;
      g_autofree char *xml = rc_job_file_format (job, book), *again = NULL;

      back = rc_job_file_parse (xml, strlen (xml), "JOB.xml", &book_back, &error);
      g_assert_no_error (error);
      same_job (job, back);
      same_book (book, book_back);
      again = rc_job_file_format (back, book_back);
      g_assert_cmpstr (xml, ==, again);
    }
}

/* The price book as a table, but for what a table does not hold: the logo, spaces at the ends of a text, fields that do
 * not apply to a kind of goods, and another order of the prices than that of their goods. */
static void
test_books_as_tables (void)
{
  const RcCurrency usd = { "USD", 2 };

  for (guint i = 0; i < scale_rounds (200); i++)
    {
      g_autoptr (RcPriceBook) book = random_book (&usd);
      g_autoptr (RcPriceBook) back = NULL;
      g_autoptr (GError) error = NULL;
      g_autofree char *csv = NULL;

      g_clear_pointer (&book->logo, g_bytes_unref);
      g_ptr_array_sort (book->prices, compare_items);
      strip_shop (book);
      for (guint k = 0; k < book->goods->len; k++)
        keep_what_applies (book->goods->pdata[k]);
      csv = rc_price_csv_format (book);
      back = rc_price_csv_parse (csv, "prices.csv", &usd, &error);
      g_assert_no_error (error);
      same_book (book, back);
    }
}

/* A copy has every field of its own. */
static void
test_copies (void)
{
  for (guint i = 0; i < 30; i++)
    {
      RcJob *job = random_job ();
      g_autoptr (RcJob) copy = rc_job_copy (job);
      g_autoptr (RcJob) second = rc_job_copy (job);

      same_job (job, copy);
      rc_job_free (job);
      same_job (copy, second);
    }
}

/* What XML cannot carry becomes U+FFFD instead of a file that cannot be read. */
static void
test_signs_that_xml_refuses (void)
{
  const RcCurrency usd = { "USD", 2 };
  g_autoptr (RcJob) job = rc_job_new ("J-1", &usd);
  g_autoptr (RcJob) back = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *xml = NULL;

  job->title = g_strdup ("bell \a, broken \xff");
  xml = rc_job_file_format (job, NULL);
  back = rc_job_file_parse (xml, strlen (xml), "JOB.xml", NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (back->title, ==, "bell \xEF\xBF\xBD, broken \xEF\xBF\xBD");
}

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  rand_of_test = g_rand_new_with_seed ((guint32)g_test_rand_int ());
  g_test_add_func ("/exchange/random/jobs keep every field", test_random_jobs);
  g_test_add_func ("/exchange/random/books as tables", test_books_as_tables);
  g_test_add_func ("/exchange/random/copies have every field", test_copies);
  g_test_add_func ("/exchange/random/signs that XML refuses", test_signs_that_xml_refuses);
  status = g_test_run ();
  g_rand_free (rand_of_test);
  return status;
}
