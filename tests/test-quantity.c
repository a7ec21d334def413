/* What a plan implies: carpet, tape, sealer, strip, cushion, adhesive, transitions, labour. */
#include <string.h>

#include "plan-builder.h"
#include "quantity.h"
#include "rowcut-error.h"

static const RcQuantityLine *
find_line (const GPtrArray *lines, const char *item, gboolean from_stock)
{
  for (guint i = 0; i < lines->len; i++)
    {
      const RcQuantityLine *line = g_ptr_array_index (lines, i);

      if (g_str_equal (line->item, item) && line->from_stock == from_stock)
        return line;
    }
  return NULL;
}

/* A catalogue with one of each sundry: tape 3 in wide in rolls of 66 ft (common practice, no source), sealer 60 ft of
 * edge a bottle (our own figure: none is published), strip in cartons of 400 ft (merchant listing), adhesive 4 gal
 * covering 36 sq yd (9 sq yd/gal: the trade says 8 to 10, no source), a moulding in bars of 6 ft. */
static GPtrArray *
build_catalogue (void)
{
  GPtrArray *catalogue = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_goods_free);
  RcGoods   *goods;

  goods = build_goods (catalogue, RC_GOODS_TAPE, "tape", RC_UNIT_FT, 66 * RC_MICRO, RC_UNIT_ROLL);
  goods->tape_width = 3 * RC_TICKS_PER_INCH;
  goods = build_goods (catalogue, RC_GOODS_SEALER, "sealer", RC_UNIT_EACH, 0, RC_UNIT_EACH);
  goods->pack_covers_length = FT (60);
  build_goods (catalogue, RC_GOODS_STRIP, "strip", RC_UNIT_FT, 400 * RC_MICRO, RC_UNIT_CARTON);
  goods = build_goods (catalogue, RC_GOODS_ADHESIVE, "adhesive", RC_UNIT_GALLON, 4 * RC_MICRO, RC_UNIT_TUB);
  goods->pack_covers_area = rc_area_from_rectangle (FT (18), FT (18));
  build_goods (catalogue, RC_GOODS_TRANSITION, "bar", RC_UNIT_FT, 6 * RC_MICRO, RC_UNIT_EACH);
  build_goods (catalogue, RC_GOODS_CUSHION, "pad", RC_UNIT_SQ_YD, 30 * RC_MICRO, RC_UNIT_ROLL);
  return catalogue;
}

static GPtrArray *
compute (const RcPlan *plan)
{
  g_autoptr (GPtrArray) catalogue = build_catalogue ();
  g_autoptr (GError) error = NULL;
  GPtrArray *lines = rc_quantity_compute (plan, catalogue, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < lines->len; i++)
    ((RcQuantityLine *)g_ptr_array_index (lines, i))->goods = NULL; /* the catalogue goes */
  return lines;
}

static void
assert_line (const GPtrArray *lines, const char *item, gint64 net_micro, gint64 packs, gint64 quantity_micro)
{
  const RcQuantityLine *line = find_line (lines, item, FALSE);

  g_assert_nonnull (line);
  g_assert_cmpint (line->net_micro, ==, net_micro);
  g_assert_cmpint (line->packs, ==, packs);
  g_assert_cmpint (line->quantity_micro, ==, quantity_micro);
  g_assert_cmpstr (line->because, !=, "");
  g_assert_cmpstr (line->name, !=, "");
}

/* Measuring page for a 15 x 20 ft room (hasslefreeflooring.com): 27 running feet of a 12 ft roll are 36 sq yd; two
 * cross seams. */
static void
test_joined_fill (void)
{
  RcJob  *job;
  RcPlan *plan = build_joined_fill (&job);
  g_autoptr (GPtrArray) lines = compute (plan);

  assert_line (lines, "twist", 36 * RC_MICRO, 0, 36 * RC_MICRO);
  g_assert_cmpint (find_line (lines, "twist", FALSE)->roll_length, ==, FT (27));
  g_assert_cmpstr (find_line (lines, "twist", FALSE)->because, ==,
                   "Living room: pieces 1–4; 27' 0\" of roll × 12' 0\" wide");

  /* Side seam 20 ft and cross seams 2 x 4 ft, less 1 1/2 in at the side seam each (common practice, no source). */
  assert_line (lines, "tape", 27750000, 1, 66 * RC_MICRO);
  g_assert_cmpstr (find_line (lines, "tape", FALSE)->because, ==,
                   "1 side seam, 20' 0\" (Living room, pieces 1, 2); 2 cross seams, 8' 0\" in all (Living room, "
                   "pieces 2–4) less 3\" of setback (half the tape at each side seam)");

  /* Both edges (CRI 2015 13.7): 2 x 28 ft, within one bottle of 60 ft. */
  assert_line (lines, "sealer", 933333, 1, 1 * RC_MICRO);
  assert_line (lines, "strip", 70 * RC_MICRO, 1, 400 * RC_MICRO);

  /* 300 sq ft of floor: 33.33 sq yd, as the page says. */
  assert_line (lines, "lay", 33333333, 0, 33333333);
  assert_line (lines, "side-seam", 20 * RC_MICRO, 0, 20 * RC_MICRO);
  assert_line (lines, "cross-seam", 2 * RC_MICRO, 0, 2 * RC_MICRO);
  assert_line (lines, "fixed", RC_MICRO, 0, RC_MICRO);
  g_assert_null (find_line (lines, "stair", FALSE));
  g_assert_null (find_line (lines, "adhesive", FALSE));
  g_assert_null (find_line (lines, "pad", FALSE));
  g_assert_cmpuint (lines->len, ==, 8);

  build_plan_free (plan);
  rc_job_free (job);
}

/* Running lengths of a roll and what they come to. */
static void
test_carpet_quantities (void)
{
  static const struct
  {
    const char *source;
    RcLength    roll_width, length;
    RcUnit      unit;
    gint64      quantity_micro;
  } rows[] = {
    { "2 drops of 16 ft, 42.67 sq yd (ehow 6737804)", FT (12), FT (32), RC_UNIT_SQ_YD, 42666667 },
    { "2 drops of 14 ft, 37.33 sq yd (ehow 6737804)", FT (12), FT (28), RC_UNIT_SQ_YD, 37333333 },
    { "21 running feet, 28 sq yd (ehow 6737804)", FT (12), FT (21), RC_UNIT_SQ_YD, 28000000 },
    { "27 running feet, 36 sq yd (hasslefreeflooring.com)", FT (12), FT (27), RC_UNIT_SQ_YD, 36000000 },
    { "the same, 324 sq ft (hasslefreeflooring.com)", FT (12), FT (27), RC_UNIT_SQ_FT, 324000000 },
    { "12 x 28 ft, 37.33 sq yd (jiskha 1326255360)", FT (12), FT (28), RC_UNIT_SQ_YD, 37333333 },
    { "21 running feet, 28 sq yd (thespruce 2908826)", FT (12), FT (21), RC_UNIT_SQ_YD, 28000000 },
    { "34 ft 2 in, 410 sq ft (rusticgirls.com)", FT (12), FT_IN (34, 2), RC_UNIT_SQ_FT, 410000000 },
    { "the same, 45.6 sq yd (45.556) (rusticgirls.com)", FT (12), FT_IN (34, 2), RC_UNIT_SQ_YD, 45555556 },
    { "8 strips of 24 ft 9 in, 66 yd (arithmetic textbook, section 483)", FT_IN (2, 3), 8 * FT_IN (24, 9), RC_UNIT_YD,
      66000000 },
    { "8 strips of 33 1/2 ft, 89 1/3 yd (same textbook, recomputed)", FT (3), 8 * FT_IN (33, 6), RC_UNIT_YD, 89333333 },
    { "5 strips of 12 ft, 20 yd (arithmetic, p. 242, recomputed)", FT_IN (2, 3), 5 * FT (12), RC_UNIT_YD, 20000000 },
    { "16 ft and 5 x 18 ft, 35 1/3 yd (arithmetic, p. 242, recomputed)", FT_IN (2, 3), FT (16) + 5 * FT (18),
      RC_UNIT_YD, 35333333 },
    { "20 ft and 7 x 20 ft 9 in, 55 1/12 yd (arithmetic, p. 242, recomputed)", FT_IN (2, 3),
      FT (20) + 7 * FT_IN (20, 9), RC_UNIT_YD, 55083333 },
    { "5 strips of 6 5/6 yd, 34 1/6 yd (Gifford q. 51, recomputed)", FT (3), 5 * FT_IN (20, 6), RC_UNIT_YD, 34166667 },
    { "7 strips of 19 ft, 44 1/3 yd (Gifford q. 55, recomputed)", FT_IN (2, 3), 7 * FT (19), RC_UNIT_YD, 44333333 },
    { "6 strips of 15 ft, 30 yd (chestofbooks, Carpets part 4, recomputed)", FT_IN (2, 3), 6 * FT (15), RC_UNIT_YD,
      30000000 },
    { "3 drops of 13 m (UK maths worksheet)", M (300), 3 * M (1300), RC_UNIT_M, 39000000 },
    { "5 drops of 8 m (UK maths worksheet)", M (300), 5 * M (800), RC_UNIT_M, 40000000 },
    { "6 m of a 4 m roll (UK ordering guide)", M (400), M (600), RC_UNIT_M2, 24000000 },
    { "crosswise 2 x 2.95 m (Workspace Training, recomputed)", M (200), 2 * M (295), RC_UNIT_M, 5900000 },
    { "41 running feet, 492 sq ft (exhibit-carpet supplier)", FT (12), FT (41), RC_UNIT_SQ_FT, 492000000 },
    { "the same, 54.67 sq yd (exhibit-carpet supplier)", FT (12), FT (41), RC_UNIT_SQ_YD, 54666667 },
    { "a roll of 100 ft, 133.33 sq yd (Math Central)", FT (12), FT (100), RC_UNIT_SQ_YD, 133333333 },
    { "the same, 111.48364 m2 (111.483648) (Math Central)", FT (12), FT (100), RC_UNIT_M2, 111483648 },
    { "28.75 ft of 41 in, 10.91 sq yd (ehow video 4950950, recomputed)", FT_IN (3, 5), FT_IN (28, 9), RC_UNIT_SQ_YD,
      10914352 },
    { "units: a running foot of 13 ft 6 in is 1.5 sq yd", FT_IN (13, 6), FT (1), RC_UNIT_SQ_YD, 1500000 },
    { "units: a running foot of 15 ft is 1.6667 sq yd", FT (15), FT (1), RC_UNIT_SQ_YD, 1666667 },
    { "units: a running foot of 9 ft is 1 sq yd", FT (9), FT (1), RC_UNIT_SQ_YD, 1000000 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
      RcGoods   *carpet = build_carpet (job, "twist", rows[i].roll_width, rows[i].unit);
      RcPlan    *plan = build_plan (job);
      RcCutting *cutting = build_cutting (plan, carpet);
      g_autoptr (GPtrArray) lines = NULL;

      g_test_message ("%s", rows[i].source);
      build_roll (cutting, NULL, rows[i].length, rows[i].length);
      lines = compute (plan);
      g_assert_cmpint (find_line (lines, "twist", FALSE)->quantity_micro, ==, rows[i].quantity_micro);
      g_assert_cmpint (find_line (lines, "twist", FALSE)->unit, ==, rows[i].unit);
      build_plan_free (plan);
    }
}

/* A remnant narrower than its goods is charged for the carpet it is: 9 ft of 4 ft wide is 4 sq yd. */
static void
test_narrow_remnant (void)
{
  g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
  RcGoods   *carpet = build_carpet (job, "twist", FT (12), RC_UNIT_SQ_YD);
  RcPlan    *plan;
  RcCutting *cutting;
  g_autoptr (GPtrArray) lines = NULL;

  build_room (job, "hall", "Hall", FT (4), FT (9), 0);
  plan = build_plan (job);
  cutting = build_cutting (plan, carpet);
  build_roll (cutting, "R-7", FT (9), FT (9))->width = FT (4);
  build_placement (cutting, build_piece (plan, RC_PIECE_FILL, NULL, "hall", "twist", FT (4), FT (9)), 0, 0);
  lines = compute (plan);
  g_assert_cmpint (find_line (lines, "twist", TRUE)->quantity_micro, ==, 4 * RC_MICRO);
  g_assert_cmpint (find_line (lines, "twist", TRUE)->roll_length, ==, FT (9));
  g_assert_cmpstr (find_line (lines, "twist", TRUE)->because, ==,
                   "Hall: piece 1; roll R-7: 9' 0\", 4' 0\" wide; 3' 0\" of roll × 12' 0\" wide");
  build_plan_free (plan);
}

/* What lies in stock is charged by the cut and stands apart; what is bought is charged in the supplier's steps. */
static void
test_stock_apart (void)
{
  g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
  RcGoods              *carpet = build_carpet (job, "twist", FT (12), RC_UNIT_SQ_YD);
  RcPlan               *plan;
  RcCutting            *cutting;
  const RcQuantityLine *line;
  g_autoptr (GPtrArray) lines = NULL;

  build_room (job, "hall", "Hall", FT (12), FT (9), 0);
  build_room (job, "den", "Den", FT (12), FT (20), FT (30));
  plan = build_plan (job);
  cutting = build_cutting (plan, carpet);
  build_roll (cutting, "R-7", FT_IN (9, 3), FT (40));
  build_placement (cutting, build_piece (plan, RC_PIECE_DROP, NULL, "hall", "twist", FT (12), FT_IN (9, 3)), 0, 0);
  build_roll (cutting, NULL, FT_IN (20, 3), FT (21));
  build_placement (cutting, build_piece (plan, RC_PIECE_DROP, NULL, "den", "twist", FT (12), FT_IN (20, 3)), 0, 0);

  lines = compute (plan);
  line = find_line (lines, "twist", TRUE);
  g_assert_cmpint (line->quantity_micro, ==, 12333333);
  g_assert_cmpstr (line->name, ==, "twist, from stock");
  g_assert_cmpstr (line->because, ==, "Hall: piece 1; roll R-7: 9' 3\"; 9' 3\" of roll × 12' 0\" wide");
  line = find_line (lines, "twist", FALSE);
  g_assert_cmpint (line->quantity_micro, ==, 28 * RC_MICRO);
  g_assert_cmpint (line->net_micro, ==, 27 * RC_MICRO);
  g_assert_cmpstr (line->because, ==,
                   "Den: piece 2; 21' 0\" of roll × 12' 0\" wide; 20' 3\" is cut from it, the rest is "
                   "the supplier's step");
  build_plan_free (plan);
}

/* Tape by the rule of cross seams (common practice, no source), and never below nothing. */
static void
test_tape_setback (void)
{
  static const struct
  {
    RcSeamKind kind;
    RcLength   length;
    guint      side_ends;
    RcLength   tape_width, tape;
  } rows[] = {
    { RC_SEAM_SIDE, FT (20), 2, 3 * RC_TICKS_PER_INCH, FT (20) },
    { RC_SEAM_CROSS, FT (4), 0, 3 * RC_TICKS_PER_INCH, FT (4) },
    { RC_SEAM_CROSS, FT (4), 1, 3 * RC_TICKS_PER_INCH, FT (4) - RC_TICKS_PER_INCH * 3 / 2 },
    { RC_SEAM_CROSS, FT (4), 2, 3 * RC_TICKS_PER_INCH, FT (4) - RC_TICKS_PER_INCH * 3 },
    { RC_SEAM_CROSS, FT (4), 2, 6 * RC_TICKS_PER_INCH, FT_IN (3, 6) },
    { RC_SEAM_CROSS, 2 * RC_TICKS_PER_INCH, 2, 3 * RC_TICKS_PER_INCH, 0 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      RcSeam seam = { .kind = rows[i].kind, .length = rows[i].length, .side_ends = rows[i].side_ends };

      g_assert_cmpint (rc_seam_compute_tape (&seam, rows[i].tape_width), ==, rows[i].tape);
    }
}

/* Carpet glued straight down is sealed but not taped (common practice, no source), and stuck by coverage: 300 sq ft at
 * 324 sq ft a tub. Glued on cushion it is taped (CRI 2015 13.8), and there are two coats. */
static void
test_stuck_down (void)
{
  RcJob       *job;
  RcPlan      *plan = build_joined_fill (&job);
  RcFloorArea *area = rc_measure_find_area (rc_job_get_measure (job, NULL), "A");

  area->fixing = RC_FIXING_GLUE;
  {
    g_autoptr (GPtrArray) lines = compute (plan);

    g_assert_null (find_line (lines, "tape", FALSE));
    g_assert_null (find_line (lines, "strip", FALSE));
    assert_line (lines, "sealer", 933333, 1, 1 * RC_MICRO);
    assert_line (lines, "adhesive", 3703704, 1, 4 * RC_MICRO);
  }
  area->cushion = g_strdup ("pad");
  {
    g_autoptr (GPtrArray) lines = compute (plan);

    assert_line (lines, "tape", 27750000, 1, 66 * RC_MICRO);
    assert_line (lines, "adhesive", 7407407, 2, 8 * RC_MICRO);
    assert_line (lines, "pad", 33333333, 2, 60 * RC_MICRO);
    g_assert_cmpstr (find_line (lines, "adhesive", FALSE)->because, ==, "Living room 300.00 sq ft × 2 coats");
  }
  build_plan_free (plan);
  rc_job_free (job);
}

/* Packs are rounded up over the whole job: three rooms of 12 x 10 ft take 40 sq yd of cushion, two rolls of 30 sq yd
 * (consumer page) and not three. */
static void
test_packs_over_the_whole_job (void)
{
  g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
  RcPlan *plan;
  g_autoptr (GPtrArray) lines = NULL;

  build_carpet (job, "twist", FT (12), RC_UNIT_SQ_YD);
  for (int i = 0; i < 3; i++)
    {
      g_autofree char *id = g_strdup_printf ("r%d", i), *area = g_strdup_printf ("A%d", i);

      build_room (job, id, id, FT (12), FT (10), FT (20) * i);
      build_area (job, area, "twist", id, NULL)->cushion = g_strdup ("pad");
    }
  plan = build_plan (job);
  lines = compute (plan);
  assert_line (lines, "pad", 40 * RC_MICRO, 2, 60 * RC_MICRO);
  assert_line (lines, "strip", 132 * RC_MICRO, 1, 400 * RC_MICRO);
  build_plan_free (plan);
}

/* Floors and their area: published arithmetic, its source in each row. */
static void
test_floor_areas (void)
{
  g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
  RcPoint ell[]
      = { { 0, 0 }, { FT (18), 0 }, { FT (18), FT (12) }, { FT (3), FT (12) }, { FT (3), FT (15) }, { 0, FT (15) } };
  RcPlan *plan;
  g_autoptr (GPtrArray) lines = NULL;

  build_carpet (job, "twist", FT (12), RC_UNIT_SQ_YD);
  build_room (job, "b1", "b1", FT (12), FT (14), FT (100));
  build_room (job, "b2", "b2", FT (12), FT (10), FT (120));
  build_room (job, "b3", "b3", FT (8), FT (12), FT (140));
  build_area (job, "bedrooms", "twist", "b1", "b2", "b3", NULL);
  plan = build_plan (job);
  lines = compute (plan);
  assert_line (lines, "lay", 42666667, 0, 42666667); /* 42 2/3 sq yd (ASVAB practice item) */
  build_plan_free (plan);
  g_clear_pointer (&lines, g_ptr_array_unref);

  build_outline_room (job, "ell", "ell", ell, G_N_ELEMENTS (ell))->placed = TRUE;
  build_area (job, "ell", "twist", "ell", NULL);
  plan = build_plan (job);
  lines = compute (plan);
  assert_line (lines, "lay", 67666667, 0, 67666667); /* 25 sq yd more (a maths lesson) */
  build_plan_free (plan);
}

/* Goods that are nowhere are named; nothing is made up. */
static void
test_missing_goods (void)
{
  RcJob  *job;
  RcPlan *plan = build_joined_fill (&job);
  g_autoptr (GError) error = NULL;

  g_assert_null (rc_quantity_compute (plan, NULL, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_REFERENCE);
  g_assert_nonnull (strstr (error->message, "strip"));
  g_clear_error (&error);

  rc_measure_find_area (rc_job_get_measure (job, NULL), "A")->cushion = g_strdup ("cloud");
  g_assert_null (rc_quantity_compute (plan, NULL, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_REFERENCE);
  g_assert_nonnull (strstr (error->message, "cloud"));

  build_plan_free (plan);
  rc_job_free (job);
}

/* Every kind of line at once: stretched in over cushion, stuck down over cushion, a doorway with a moulding, a stair.
 */
static RcPlan *
build_all (RcJob **job)
{
  RcRoom      *living, *study;
  RcFloorArea *area;
  RcGoods     *carpet;
  RcPlan      *plan;

  *job = build_job (RC_UNITS_IMPERIAL);
  carpet = build_carpet (*job, "twist", FT (12), RC_UNIT_SQ_YD);
  living = build_room (*job, "living", "Living room", FT (15), FT (20), 0);
  study = build_room (*job, "study", "Study", FT (10), FT (10), FT (20));
  build_opening (living, "D1", RC_OPENING_DOOR, 0, FT (1), FT (3))->transition = g_strdup ("bar");
  build_opening (study, "D2", RC_OPENING_DOOR, 0, FT (1), FT (3))->transition = g_strdup ("bar");
  build_area (*job, "A", "twist", "living", NULL)->cushion = g_strdup ("pad");
  area = build_area (*job, "B", "twist", "study", NULL);
  area->cushion = g_strdup ("pad");
  area->fixing = RC_FIXING_GLUE;
  build_stair (*job, "S", 12, FT_IN (0, 7), FT_IN (0, 10), FT (3), RC_STAIR_WATERFALL)->cushion = g_strdup ("pad");
  plan = build_plan (*job);
  build_roll (build_cutting (plan, carpet), NULL, FT (27), FT (27));
  build_seam (plan, RC_SEAM_SIDE, "A", "living", FT (20), 1, 2, 0);
  return plan;
}

/* The message of a take-off that cannot be made. (transfer full) */
static char *
fail_to_compute (const RcPlan *plan, const GPtrArray *catalogue, RcErrorCode code)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (rc_quantity_compute (plan, catalogue, &error));
  g_assert_error (error, RC_ERROR, (gint)code);
  return g_strdup (error->message);
}

/* Each of the catalogue in turn is not there, or says nothing of what one covers: named, whatever else could be
 * counted.
 */
static void
test_each_of_the_catalogue_missing (void)
{
  RcJob  *job;
  RcPlan *plan = build_all (&job);

  for (guint i = 0;; i++)
    {
      g_autoptr (GPtrArray) catalogue = build_catalogue ();
      g_autofree char *measureless = NULL, *missing = NULL, *id = NULL;
      RcGoods         *goods;
      const char      *kind;

      if (i == catalogue->len)
        break;
      goods = g_ptr_array_index (catalogue, i);
      id = g_strdup (goods->id);
      kind = rc_goods_kind_get_name (goods->kind);
      goods->unit = RC_UNIT_TUB;
      goods->pack_micro = goods->pack_covers_length = goods->pack_covers_area = 0;
      measureless = fail_to_compute (plan, catalogue, RC_ERROR_RANGE);
      g_assert_nonnull (strstr (measureless, goods->name));
      g_ptr_array_remove_index (catalogue, i);
      missing = fail_to_compute (plan, catalogue, RC_ERROR_REFERENCE);
      g_assert_true (strstr (missing, id) != NULL || strstr (missing, kind) != NULL);
    }
  build_plan_free (plan);
  rc_job_free (job);
}

static RcAreaPlan *
get_area (const RcPlan *plan, guint i)
{
  return g_ptr_array_index (plan->areas, i);
}

static RcFloorArea *
get_floor_area (RcJob *job, const char *id)
{
  return rc_measure_find_area (rc_job_get_measure (job, NULL), id);
}

/* Sums past what 63 bits hold are refused with what they are of: cushion, adhesive in two coats and in one, laying,
 * mouldings, the roll. */
static void
test_sums_too_large (void)
{
  static const char *const what[] = { "Living room", "Study", "Study", "Study", "Transitions", "twist", "twist" };

  for (guint i = 0; i < G_N_ELEMENTS (what); i++)
    {
      RcJob  *job;
      RcPlan *plan = build_all (&job);
      g_autoptr (GPtrArray) catalogue = build_catalogue ();
      g_autofree char *message = NULL;
      RcNestUse       *use = g_ptr_array_index (((RcCutting *)plan->cuttings->pdata[0])->answer->rolls, 0);

      if (i == 0)
        get_area (plan, 0)->floor_area = -1;
      if (i == 1)
        get_area (plan, 1)->floor_area = G_MAXINT64 / 2 + 1;
      if (i == 2 || i == 3)
        for (guint k = 0; k < 2; k++)
          {
            get_area (plan, k)->floor_area = G_MAXINT64 - 1;
            g_clear_pointer (&get_floor_area (job, k == 0 ? "A" : "B")->cushion, g_free);
            get_floor_area (job, k == 0 ? "A" : "B")->fixing = i == 2 ? RC_FIXING_GLUE : RC_FIXING_STRETCH;
          }
      if (i == 1 || i == 2)
        g_clear_pointer (&((RcStair *)plan->measure->stairs->pdata[0])->cushion, g_free);
      if (i == 4)
        for (guint k = 0; k < plan->house->openings->len; k++)
          ((RcOpening *)((RcPlacedOpening *)plan->house->openings->pdata[k])->opening)->width = G_MAXINT64 - 1;
      if (i == 5)
        use->used = -1;
      if (i == 6)
        use->length = -1;
      message = fail_to_compute (plan, catalogue, RC_ERROR_RANGE);
      if (strstr (message, what[i]) == NULL || strstr (message, "more than can be counted") == NULL)
        g_error ("“%s” does not name %s", message, what[i]);
      build_plan_free (plan);
      rc_job_free (job);
    }
}

/* Carpet that is counted in something that no roll can be measured in. */
static void
test_carpet_of_no_measure (void)
{
  g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
  g_autoptr (GError) error = NULL;
  RcPlan *plan = build_plan (job);

  build_roll (build_cutting (plan, build_carpet (job, "twist", FT (12), RC_UNIT_TUB)), NULL, FT (9), FT (9));
  g_assert_null (rc_quantity_compute (plan, NULL, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_RANGE);
  g_assert_nonnull (strstr (error->message, "twist"));
  build_plan_free (plan);
}

/* The job's own goods go before the catalogue's. */
static void
test_own_goods_first (void)
{
  RcJob  *job;
  RcPlan *plan = build_joined_fill (&job);
  g_autoptr (GPtrArray) lines = NULL;

  build_goods (job->goods, RC_GOODS_STRIP, "own-strip", RC_UNIT_FT, 0, RC_UNIT_EACH);
  lines = compute (plan);
  assert_line (lines, "own-strip", 70 * RC_MICRO, 0, 70 * RC_MICRO);
  g_assert_null (find_line (lines, "strip", FALSE));
  build_plan_free (plan);
  rc_job_free (job);
}

/* No floors, no stairs: no lines, not even the fixed charge. */
static void
test_empty_plan (void)
{
  g_autoptr (RcJob) job = build_job (RC_UNITS_METRIC);
  RcPlan *plan = build_plan (job);
  g_autoptr (GPtrArray) lines = rc_quantity_compute (plan, NULL, NULL);

  g_assert_cmpuint (lines->len, ==, 0);
  build_plan_free (plan);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/quantity/joined-fill", test_joined_fill);
  g_test_add_func ("/quantity/carpet", test_carpet_quantities);
  g_test_add_func ("/quantity/stock-apart", test_stock_apart);
  g_test_add_func ("/quantity/a narrow remnant is charged by its own width", test_narrow_remnant);
  g_test_add_func ("/quantity/tape-setback", test_tape_setback);
  g_test_add_func ("/quantity/stuck-down", test_stuck_down);
  g_test_add_func ("/quantity/packs-over-the-whole-job", test_packs_over_the_whole_job);
  g_test_add_func ("/quantity/floor-areas", test_floor_areas);
  g_test_add_func ("/quantity/missing-goods", test_missing_goods);
  g_test_add_func ("/quantity/each-of-the-catalogue-missing", test_each_of_the_catalogue_missing);
  g_test_add_func ("/quantity/sums-too-large", test_sums_too_large);
  g_test_add_func ("/quantity/carpet-of-no-measure", test_carpet_of_no_measure);
  g_test_add_func ("/quantity/own-goods-first", test_own_goods_first);
  g_test_add_func ("/quantity/empty-plan", test_empty_plan);
  return g_test_run ();
}
