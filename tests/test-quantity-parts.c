/* Strip, stairs, transitions; units and packs. */
#include "plan-builder.h"
#include "quantity.h"
#include "rowcut-error.h"

static RcLength
compute_strip (const RcJob *job)
{
  RcPlan  *plan = build_plan (job);
  RcLength strip = rc_quantity_compute_strip (plan);

  build_plan_free (plan);
  return strip;
}

/* Published gripper page (ehow.co.uk 7944580): room of 3 x 3.6 m, 13.2 m; and by own arithmetic (less a door of 0.8 m
 * by CRI 2015 11.1: 12.4 m, nine lengths of 1.5 m). */
static void
test_strip_of_a_room (void)
{
  g_autoptr (RcJob) job = build_job (RC_UNITS_METRIC);
  RcGoods  *strip = build_goods (job->goods, RC_GOODS_STRIP, "strip", RC_UNIT_M, 1500000, RC_UNIT_EACH);
  RcRoom   *room = build_room (job, "den", "Den", M (300), M (360), 0);
  RcPacking packing;

  build_area (job, "A", NULL, "den", NULL);
  g_assert_cmpint (compute_strip (job), ==, M (1320));

  build_opening (room, "D1", RC_OPENING_DOOR, 0, M (50), M (80));
  build_opening (room, "W1", RC_OPENING_WINDOW, 2, M (50), M (120));
  g_assert_cmpint (compute_strip (job), ==, M (1240));
  g_assert_true (rc_packing_from_length (strip, M (1240), &packing, NULL));
  g_assert_cmpint (packing.packs, ==, 9);
  g_assert_cmpint (packing.net_micro, ==, 12400000);
}

/* CRI 2015 11.1: a stretch over 30 ft has two ordinary strips; 30 ft itself has one. A room that stands askew is
 * measured along its own walls. */
static void
test_strip_doubled (void)
{
  static const struct
  {
    RcLength length;
    guint    times;
  } rows[] = { { FT (30), 1 }, { FT (30) + 1, 2 }, { FT (31), 2 }, { FT (12), 1 } };
  RcPoint askew[] = { { 0, 0 },
                      { 4 * FT (6), 3 * FT (6) },
                      { 4 * FT (6) - 3 * FT (4), 3 * FT (6) + 4 * FT (4) },
                      { -3 * FT (4), 4 * FT (4) } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);

      build_room (job, "den", "Den", FT (10), rows[i].length, 0);
      build_area (job, "A", NULL, "den", NULL);
      g_assert_cmpint (compute_strip (job), ==, (2 * FT (10) + 2 * rows[i].length) * rows[i].times);
    }
  {
    /* 30 ft by 20 ft at 36.87 degrees: its box is 36 ft wide, the room 30 ft long. */
    g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);

    build_outline_room (job, "den", "Den", askew, G_N_ELEMENTS (askew))->placed = TRUE;
    build_area (job, "A", NULL, "den", NULL);
    g_assert_cmpint (compute_strip (job), ==, FT (100));
  }
}

/* A door between two rooms interrupts the strip of both, whether it was measured from one side or from both. */
static void
test_strip_at_shared_door (void)
{
  for (int both = 0; both < 2; both++)
    {
      g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
      RcRoom    *den = build_room (job, "den", "Den", FT (10), FT (10), 0);
      RcRoom    *hall = build_room (job, "hall", "Hall", FT (10), FT (10), FT (10) + 4 * RC_TICKS_PER_INCH);
      RcOpening *door = build_opening (den, "D1", RC_OPENING_DOOR, 2, FT (4), FT (3));

      door->to_room = g_strdup ("hall");
      door->depth = 4 * RC_TICKS_PER_INCH;
      if (both)
        {
          RcOpening *back = build_opening (hall, "D9", RC_OPENING_DOOR, 0, FT (3), FT (3));

          back->to_room = g_strdup ("den");
          back->to_opening = g_strdup ("D1");
          back->depth = door->depth;
          door->to_opening = g_strdup ("D9");
        }
      build_area (job, "A", NULL, "den", "hall", NULL);
      g_assert_cmpint (compute_strip (job), ==, 2 * (FT (40) - FT (3)));
    }
}

/* The strip runs round a cut-out (hearth, column) too. */
static void
test_strip_round_a_cutout (void)
{
  g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
  RcRoom *room = build_room (job, "den", "Den", FT (10), FT (10), 0);
  RcPoint column[] = { { FT (4), FT (4) }, { FT (5), FT (4) }, { FT (5), FT (6) }, { FT (4), FT (6) } };

  g_ptr_array_add (room->cutouts,
                   rc_cutout_new_take (RC_CUTOUT_COLUMN, rc_ring_new_from_points (column, G_N_ELEMENTS (column))));
  build_area (job, "A", NULL, "den", NULL);
  g_assert_cmpint (compute_strip (job), ==, FT (46));
  /* Unless it is to have none; a stair opening has none from the start. */
  ((RcCutout *)g_ptr_array_index (room->cutouts, 0))->strip = FALSE;
  g_assert_cmpint (compute_strip (job), ==, FT (40));
  RcPoint hatch[] = { { FT (8), FT (2) }, { FT (10), FT (2) }, { FT (10), FT (5) }, { FT (8), FT (5) } };
  g_ptr_array_add (room->cutouts,
                   rc_cutout_new_take (RC_CUTOUT_STAIR_OPENING, rc_ring_new_from_points (hatch, G_N_ELEMENTS (hatch))));
  g_assert_cmpint (compute_strip (job), ==, FT (37));
}

/* CRI 2011 17.2: one strip on each tread, for waterfall also on each riser; turned edges: 1 1/2 in less than the width.
 * Cushion goes over tread, riser and nose. */
static void
test_stairs (void)
{
  g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
  RcStair *stair
      = build_stair (job, "S", 13, RC_TICKS_PER_INCH * 15 / 2, 10 * RC_TICKS_PER_INCH, FT (3), RC_STAIR_WATERFALL);
  RcLength inner = FT (3) - RC_TICKS_PER_INCH * 3 / 2;

  g_assert_cmpint (rc_stair_compute_strip (stair), ==, 26 * inner);
  g_assert_cmpint (rc_stair_compute_cushion (stair), ==,
                   rc_area_from_rectangle (inner, 13 * RC_TICKS_PER_INCH * 37 / 2));
  stair->style = RC_STAIR_CAP_AND_BAND;
  g_assert_cmpint (rc_stair_compute_strip (stair), ==, 13 * inner);
  stair->width_extra = 0;
  g_assert_cmpint (rc_stair_compute_strip (stair), ==, 13 * FT (3));
  g_assert_cmpint (compute_strip (job), ==, 13 * FT (3));

  /* Three winders more, 4 ft long, 30 in at their widest; then a landing of 4 by 6 ft besides, held at its two sides
   * too (common practice, no source). */
  RcStairTurn winders = { RC_TURN_WINDERS, RC_BEND_LEFT, 6, 3, 30 * RC_TICKS_PER_INCH, FT (4) };
  RcStairTurn landing = { RC_TURN_LANDING, RC_BEND_LEFT, 4, 0, FT (4), FT (6) };
  g_array_append_val (stair->turns, winders);
  g_assert_cmpint (rc_stair_compute_strip (stair), ==, 13 * FT (3) + 3 * FT (4));
  g_assert_cmpint (rc_stair_compute_cushion (stair), ==,
                   rc_area_from_rectangle (FT (3), 13 * RC_TICKS_PER_INCH * 37 / 2)
                       + rc_area_from_rectangle (FT (4), 3 * RC_TICKS_PER_INCH * 77 / 2));
  g_array_append_val (stair->turns, landing);
  g_assert_cmpint (rc_stair_compute_strip (stair), ==, 13 * FT (3) + 3 * FT (4) + FT (6) + 2 * FT (4));
}

static gint64
count_bars (const RcLength *widths, guint n_widths, RcLength bar)
{
  g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
  g_autoptr (GPtrArray) lines = NULL;
  RcGoods *goods = build_goods (job->goods, RC_GOODS_TRANSITION, "bar", RC_UNIT_EACH, 0, RC_UNIT_EACH);
  RcPlan  *plan;
  gint64   packs;

  goods->pack_covers_length = bar;
  for (guint i = 0; i < n_widths; i++)
    {
      g_autofree char *id = g_strdup_printf ("r%u", i);
      RcRoom          *room = build_room (job, id, id, FT (30), FT (30), FT (40) * i);

      build_opening (room, "D1", RC_OPENING_DOOR, 0, FT (1), widths[i])->transition = g_strdup ("bar");
    }
  plan = build_plan (job);
  lines = rc_quantity_compute (plan, NULL, NULL);
  g_assert_nonnull (lines);
  packs = ((const RcQuantityLine *)g_ptr_array_index (lines, 0))->packs;
  build_plan_free (plan);
  return packs;
}

/* Each opening's moulding is in one piece where a bar is long enough (common practice, no source). */
static void
test_transitions (void)
{
  const RcLength three[] = { FT (2), FT (2), FT (2) }, wide[] = { FT (7) }, mixed[] = { FT (3), FT (4), FT (2) };
  const RcLength forty[] = { FT_IN (3, 4), FT_IN (3, 4), FT_IN (3, 4) };

  g_assert_cmpint (count_bars (three, 3, FT (6)), ==, 1);
  g_assert_cmpint (count_bars (three, 3, FT (3)), ==, 3);
  g_assert_cmpint (count_bars (wide, 1, FT (3)), ==, 3);
  g_assert_cmpint (count_bars (mixed, 3, FT (6)), ==, 2);
  g_assert_cmpint (count_bars (forty, 3, FT (6)), ==, 3); /* 10 ft in all, but no bar holds two of 40 in */
}

static const RcQuantityLine *
compute_first_line (const RcPlan *plan, GPtrArray **lines)
{
  g_autoptr (GError) error = NULL;

  *lines = rc_quantity_compute (plan, NULL, &error);
  g_assert_no_error (error);
  return g_ptr_array_index (*lines, 0);
}

/* What is counted is work, and told with the room it stands in. */
static void
test_fitting_round_things (void)
{
  g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
  RcRoom *room = build_room (job, "den", "Den", FT (10), FT (10), 0);

  RcPlan *plan;
  g_autoptr (GPtrArray) lines = NULL;

  build_carpet (job, "twist", FT (12), RC_UNIT_SQ_YD);
  build_goods (job->goods, RC_GOODS_STRIP, "strip", RC_UNIT_FT, 0, RC_UNIT_EACH);
  build_area (job, "A", "twist", "den", NULL);
  g_ptr_array_add (room->cutouts, rc_cutout_new_round (RC_CUTOUT_COLUMN, (RcPoint){ FT (5), FT (5) }, FT (1)));
  g_ptr_array_add (room->cutouts, rc_cutout_new_round (RC_CUTOUT_COLUMN, (RcPoint){ FT (8), FT (8) }, FT (1)));
  RcCutout *second = g_ptr_array_index (room->cutouts, 1);
  second->name = g_strdup ("flue");
  for (int counted = 2; counted >= 0; counted--)
    {
      const RcQuantityLine *line = NULL;
      second->counted = counted > 1;
      ((RcCutout *)g_ptr_array_index (room->cutouts, 0))->counted = counted > 0;
      plan = build_plan (job);
      g_clear_pointer (&lines, g_ptr_array_unref);
      compute_first_line (plan, &lines);
      for (guint i = 0; i < lines->len; i++)
        if (g_strcmp0 (((const RcQuantityLine *)g_ptr_array_index (lines, i))->item, "fitting") == 0)
          line = g_ptr_array_index (lines, i);
      g_assert_cmpint (line ? line->quantity_micro : 0, ==, counted * RC_MICRO);
      if (line)
        g_assert_cmpstr (line->because, ==, counted > 1 ? "Den: column, flue" : "Den: column");
      build_plan_free (plan);
    }
}

/* A door measured from the other room only, or from both sides with the moulding named there, is one opening. Loose
 * goods take its length, goods counted each one for an opening. */
static void
test_transition_of_a_shared_door (void)
{
  static const struct
  {
    RcUnit      unit;
    gint64      pack_micro, quantity_micro, packs;
    const char *because;
  } rows[] = {
    { RC_UNIT_FT, 0, 3 * RC_MICRO, 0, "Den to Hall, D1: 3' 0\"" },
    { RC_UNIT_FT, 6 * RC_MICRO, 6 * RC_MICRO, 1, "Den to Hall, D1: 3' 0\"" },
    { RC_UNIT_EACH, 0, RC_MICRO, 0, "Den to Hall, D1: 3' 0\"" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
      g_autoptr (GPtrArray) lines = NULL;
      RcRoom               *den = build_room (job, "den", "Den", FT (10), FT (10), 0);
      RcRoom               *hall = build_room (job, "hall", "Hall", FT (10), FT (10), FT (10) + 4 * RC_TICKS_PER_INCH);
      RcOpening            *door = build_opening (den, "D1", RC_OPENING_DOOR, 2, FT (4), FT (3));
      RcOpening            *back = build_opening (hall, "D9", RC_OPENING_DOOR, 0, FT (3), FT (3));
      RcOpening            *window = build_opening (hall, "W1", RC_OPENING_WINDOW, 2, FT (3), FT (3));
      const RcQuantityLine *line;
      RcPlan               *plan;

      build_goods (job->goods, RC_GOODS_TRANSITION, "bar", rows[i].unit, rows[i].pack_micro, RC_UNIT_EACH);
      door->to_room = g_strdup ("hall");
      back->to_room = g_strdup ("den");
      back->to_opening = g_strdup ("D1");
      door->depth = back->depth = 4 * RC_TICKS_PER_INCH;
      back->transition = g_strdup ("bar");
      window->transition = g_strdup ("bar"); /* no floor goes through a window */
      plan = build_plan (job);
      line = compute_first_line (plan, &lines);
      g_assert_cmpstr (line->item, ==, "bar");
      g_assert_cmpint (line->quantity_micro, ==, rows[i].quantity_micro);
      g_assert_cmpint (line->packs, ==, rows[i].packs);
      g_assert_cmpstr (line->because, ==, rows[i].because);
      build_plan_free (plan);
    }
}

/* A flight alone: cushion under its steps (12 x 18 1/2 in x 34 1/2 in, 53.19 sq ft, 5.9097 sq yd), strip, each step. */
static void
test_stairs_alone (void)
{
  g_autoptr (RcJob) job = build_job (RC_UNITS_IMPERIAL);
  g_autoptr (GPtrArray) lines = NULL;
  RcStair *stair
      = build_stair (job, "S", 12, RC_TICKS_PER_INCH * 15 / 2, 10 * RC_TICKS_PER_INCH, FT (3), RC_STAIR_WATERFALL);
  const RcQuantityLine *line;
  RcPlan               *plan;

  stair->cushion = g_strdup ("pad");
  build_goods (job->goods, RC_GOODS_CUSHION, "pad", RC_UNIT_SQ_YD, 0, RC_UNIT_EACH);
  build_goods (job->goods, RC_GOODS_STRIP, "strip", RC_UNIT_FT, 0, RC_UNIT_EACH);
  plan = build_plan (job);
  line = compute_first_line (plan, &lines);
  g_assert_cmpuint (lines->len, ==, 4);
  g_assert_cmpint (line->quantity_micro, ==, 5909722);
  g_assert_cmpstr (line->because, ==, "S: 12 steps × 1' 6 1/2\" × 2' 10 1/2\" wide");
  line = g_ptr_array_index (lines, 1);
  g_assert_cmpint (line->quantity_micro, ==, 69 * RC_MICRO);
  g_assert_cmpstr (line->because, ==, "S: 12 steps × 2 strips of 2' 10 1/2\"");
  line = g_ptr_array_index (lines, 2);
  g_assert_cmpint (line->work, ==, RC_WORK_STAIR);
  g_assert_cmpint (line->quantity_micro, ==, 12 * RC_MICRO);
  build_plan_free (plan);
}

/* Absurd sizes are refused by name, never wrapped. */
static void
test_too_large (void)
{
  g_autoptr (RcGoods) goods = rc_goods_new ("x", RC_GOODS_SEALER, "Sealer X");
  RcPacking packing;

  goods->unit = RC_UNIT_FT;
  for (int i = 0; i < 3; i++)
    {
      g_autoptr (GError) error = NULL;

      goods->pack_covers_length = i == 0 ? 1 : 0;
      goods->pack_micro = i == 1 ? G_MAXINT64 / 2 : 0;
      g_assert_cmpint (rc_packing_from_length (goods, i == 1 ? FT (1) : G_MAXINT64 / 2, &packing, &error), ==, i == 1);
      if (i != 1)
        {
          g_assert_error (error, RC_ERROR, RC_ERROR_RANGE);
          g_assert_nonnull (strstr (error->message, "Sealer X"));
        }
    }
}

/* Whole packs of what can be counted come to more than can be; so does a whole step of length; so do packs as such. */
static void
test_whole_packs_too_large (void)
{
  g_autoptr (RcGoods) goods = rc_goods_new ("x", RC_GOODS_STRIP, "Strip X");
  const RcLength most = G_MAXINT64 / RC_MICRO * RC_TICKS_PER_FOOT; /* as much as can be counted in feet */
  RcPacking      packing;

  goods->unit = RC_UNIT_FT;
  g_assert_true (rc_packing_from_length (goods, most, &packing, NULL));
  goods->length_step = most - 1;
  g_assert_false (rc_packing_from_length (goods, most, &packing, NULL));
  goods->length_step = 0;
  goods->pack_micro = G_MAXINT64 / 8 * 5;
  g_assert_true (rc_packing_from_length (goods, most / 2, &packing, NULL));
  g_assert_cmpint (packing.packs, ==, 1);
  g_assert_false (rc_packing_from_length (goods, most, &packing, NULL));
  g_assert_true (rc_packing_from_packs (goods, 1, FT (1), &packing, NULL));
  g_assert_false (rc_packing_from_packs (goods, 2, FT (1), &packing, NULL));
  g_assert_false (rc_packing_from_packs (goods, 2, most, &packing, NULL));
  goods->unit = RC_UNIT_FT; /* of no width */
  g_assert_false (rc_packing_from_area (goods, 10, &packing, NULL));
}

/* Cushion sold by the running foot of a roll: area over the roll's width. */
static void
test_area_by_the_running_foot (void)
{
  g_autoptr (RcGoods) goods = rc_goods_new ("pad", RC_GOODS_CUSHION, "Pad");
  RcPacking packing;

  goods->unit = RC_UNIT_FT;
  goods->roll_width = FT (6);
  goods->pack_micro = 45 * RC_MICRO; /* common roll: 6 x 45 ft, 270 sq ft (consumer page) */
  goods->pack_unit = RC_UNIT_ROLL;
  g_assert_true (rc_packing_from_area (goods, rc_area_from_rectangle (FT (27), FT (20)), &packing, NULL));
  g_assert_cmpint (packing.net_micro, ==, 90 * RC_MICRO);
  g_assert_cmpint (packing.packs, ==, 2);
}

/* Exact definitions of the units, and published arithmetic on areas, its source in each row. */
static void
test_conversions (void)
{
  static const struct
  {
    const char *source;
    gint64      from_micro;
    RcUnit      from, to;
    RcLength    roll_width;
    gint64      to_micro;
  } rows[] = {
    { "yard = 0.9144 m", RC_MICRO, RC_UNIT_YD, RC_UNIT_M, 0, 914400 },
    { "foot = 0.3048 m", RC_MICRO, RC_UNIT_FT, RC_UNIT_M, 0, 304800 },
    { "sq ft = 0.09290304 m2", RC_MICRO, RC_UNIT_SQ_FT, RC_UNIT_M2, 0, 92903 },
    { "sq ft, a million of them", RC_MICRO * RC_MICRO, RC_UNIT_SQ_FT, RC_UNIT_M2, 0, 92903040000 },
    { "sq yd = 0.83612736 m2", RC_MICRO, RC_UNIT_SQ_YD, RC_UNIT_M2, 0, 836127 },
    { "sq yd = 9 sq ft", RC_MICRO, RC_UNIT_SQ_YD, RC_UNIT_SQ_FT, 0, 9000000 },
    { "US gallon = 3.785411784 L (recalled)", RC_MICRO, RC_UNIT_GALLON, RC_UNIT_LITRE, 0, 3785412 },
    { "a running foot of 12 ft is 1.3333 sq yd", RC_MICRO, RC_UNIT_FT, RC_UNIT_SQ_YD, FT (12), 1333333 },
    { "and back", 36 * RC_MICRO, RC_UNIT_SQ_YD, RC_UNIT_FT, FT (12), 27000000 },
    { "16 x 16 ft is 28.444 sq yd, not 28.41 (megaelecciones.com)", 256 * RC_MICRO, RC_UNIT_SQ_FT, RC_UNIT_SQ_YD, 0,
      28444444 },
    { "132 sq ft is 14.667 sq yd (daltoncarpet.com)", 132 * RC_MICRO, RC_UNIT_SQ_FT, RC_UNIT_SQ_YD, 0, 14666667 },
    { "169 sq ft is 18 7/9 sq yd (jiskha 1232497269)", 169 * RC_MICRO, RC_UNIT_SQ_FT, RC_UNIT_SQ_YD, 0, 18777778 },
    { "444 sq ft is 49.3 sq yd (howstuffworks)", 444 * RC_MICRO, RC_UNIT_SQ_FT, RC_UNIT_SQ_YD, 0, 49333333 },
    { "15 ft of 3 ft is 5 sq yd (ehow.co.uk 7299478)", 15 * RC_MICRO, RC_UNIT_FT, RC_UNIT_SQ_YD, FT (3), 5000000 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (RcGoods) goods = rc_goods_new ("g", RC_GOODS_CARPET, "g");
      gint64 result;

      g_test_message ("%s", rows[i].source);
      goods->roll_width = rows[i].roll_width;
      g_assert_true (rc_conversion_apply (goods, rows[i].from_micro, rows[i].from, rows[i].to, &result));
      g_assert_cmpint (result, ==, rows[i].to_micro);
    }
}

static void
test_conversions_refused (void)
{
  gint64 result = 7;

  g_assert_false (rc_conversion_apply (NULL, RC_MICRO, RC_UNIT_FT, RC_UNIT_SQ_YD, &result));
  g_assert_false (rc_conversion_apply (NULL, RC_MICRO, RC_UNIT_HOUR, RC_UNIT_FT, &result));
  g_assert_false (rc_conversion_apply (NULL, RC_MICRO, RC_UNIT_LITRE, RC_UNIT_M, &result));
  g_assert_false (rc_conversion_apply (NULL, G_MAXINT64, RC_UNIT_YD, RC_UNIT_FT, &result));
  g_assert_cmpint (result, ==, 7);
}

/* There and back again loses less than a millionth of the larger unit. */
static void
test_conversions_return (void)
{
  static const RcUnit units[] = { RC_UNIT_M, RC_UNIT_FT, RC_UNIT_YD, RC_UNIT_M2, RC_UNIT_SQ_FT, RC_UNIT_SQ_YD };
  g_autoptr (RcGoods) goods = rc_goods_new ("g", RC_GOODS_CARPET, "g");

  for (int i = 0; i < 20000; i++)
    {
      RcUnit from = units[g_test_rand_int_range (0, 6)], to = units[g_test_rand_int_range (0, 6)];
      gint64 start = (gint64)(guint32)g_test_rand_int () * g_test_rand_int_range (1, 1000), there, back;

      goods->roll_width = g_test_rand_int_range (FT (3), FT (16));
      g_assert_true (rc_conversion_apply (goods, start, from, to, &there));
      g_assert_true (rc_conversion_apply (goods, there, to, from, &back));
      /* Half a millionth of `to` is at most 9 x 5.3 / 2 millionths of `from` here (sq yd of a 16 ft roll, sq ft). */
      g_assert_cmpint (ABS (back - start), <=, 30);
    }
}

/* A retailer's "ABC of measuring": up to the next half foot; the areas of the rounded sizes. */
static void
test_rounding_up (void)
{
  const RcLength half = RC_TICKS_PER_FOOT / 2;

  g_assert_cmpint (rc_length_round_up (FT_IN (15, 3), half), ==, FT_IN (15, 6));
  g_assert_cmpint (rc_length_round_up (FT_IN (15, 8), half), ==, FT (16));
  g_assert_cmpint (rc_unit_from_area (rc_area_from_rectangle (FT_IN (27, 6), FT (15)), RC_UNIT_SQ_FT), ==, 412500000);
  g_assert_cmpint (rc_unit_from_area (rc_area_from_rectangle (FT (16), FT_IN (4, 6)), RC_UNIT_SQ_FT), ==, 72000000);
  g_assert_cmpint (rc_unit_from_area (rc_area_from_rectangle (FT (16), FT_IN (9, 6)), RC_UNIT_SQ_FT), ==, 152000000);
}

/* Packs come from the exact length: one tick over two packs is a third; the net alone would round it away. */
static void
test_packs_are_exact (void)
{
  g_autoptr (RcGoods) tape = rc_goods_new ("tape", RC_GOODS_TAPE, "Tape");
  RcPacking packing;

  tape->unit = RC_UNIT_FT;
  tape->pack_micro = 66 * RC_MICRO;
  tape->pack_unit = RC_UNIT_ROLL;
  g_assert_true (rc_packing_from_length (tape, FT (132), &packing, NULL));
  g_assert_cmpint (packing.packs, ==, 2);
  g_assert_true (rc_packing_from_length (tape, FT (132) + 1, &packing, NULL));
  g_assert_cmpint (packing.packs, ==, 3);
  g_assert_cmpint (packing.quantity_micro, ==, 198 * RC_MICRO);
  g_assert_true (rc_packing_from_length (tape, 0, &packing, NULL));
  g_assert_cmpint (packing.packs, ==, 0);
}

/* For random goods and lengths the packs hold what is needed, and one pack less does not. */
static void
test_packs_hold_enough (void)
{
  g_autoptr (RcGoods) goods = rc_goods_new ("g", RC_GOODS_STRIP, "g");

  for (int i = 0; i < 20000; i++)
    {
      RcLength  length = (RcLength)(guint32)g_test_rand_int () * 100;
      RcPacking packing;
      double    content_ticks;

      goods->unit = g_test_rand_bit () ? RC_UNIT_M : RC_UNIT_FT;
      goods->pack_micro = g_test_rand_int_range (1000, 500 * RC_MICRO);
      goods->pack_unit = RC_UNIT_BOX;
      content_ticks = (double)rc_unit_get_ticks (goods->unit) * (double)goods->pack_micro / RC_MICRO;
      g_assert_true (rc_packing_from_length (goods, length, &packing, NULL));
      g_assert_cmpfloat ((double)packing.packs * content_ticks, >=, (double)length * (1 - 1e-12));
      g_assert_cmpfloat ((double)(packing.packs - 1) * content_ticks, <, (double)length * (1 + 1e-12));
    }
}

/* Workspace Training, "Estimating quantities": bags = area / coverage; coverage quoted at 1 mm and laid 3 mm thick
 * takes three times the bags. 13 m2 a bag, 39 m2: 3 bags at 1 mm, 9 at 3 mm, and a tick more of floor one bag more. */
static void
test_coverage (void)
{
  g_autoptr (RcGoods) bag = rc_goods_new ("bag", RC_GOODS_ADHESIVE, "Bag");
  RcArea    area = rc_area_from_rectangle (M (600), M (650));
  RcPacking packing;

  bag->unit = RC_UNIT_EACH;
  bag->pack_covers_area = rc_area_from_rectangle (M (1300), M (100));
  g_assert_true (rc_packing_from_area (bag, area, &packing, NULL));
  g_assert_cmpint (packing.packs, ==, 3);
  g_assert_true (rc_packing_from_area (bag, 3 * area, &packing, NULL));
  g_assert_cmpint (packing.packs, ==, 9);
  g_assert_true (rc_packing_from_area (bag, 3 * area + 1, &packing, NULL));
  g_assert_cmpint (packing.packs, ==, 10);
}

static void
test_goods_without_measure (void)
{
  g_autoptr (RcGoods) goods = rc_goods_new ("x", RC_GOODS_SEALER, "Sealer X");
  g_autoptr (GError) error = NULL;
  RcPacking packing;

  goods->unit = RC_UNIT_TUB;
  g_assert_false (rc_packing_from_length (goods, FT (3), &packing, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_RANGE);
  g_assert_nonnull (strstr (error->message, "Sealer X"));
  g_clear_error (&error);
  g_assert_false (rc_packing_from_area (goods, 10, &packing, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_RANGE);
}

static void
test_works (void)
{
  g_autoptr (GError) error = NULL;
  RcWork work = RC_WORK_STAIR;

  for (int i = 0; i < RC_N_WORKS; i++)
    {
      g_assert_true (rc_work_parse (rc_work_get_name (i), &work, NULL));
      g_assert_cmpint (work, ==, i);
    }
  g_assert_false (rc_work_parse ("polish", &work, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_PARSE);
  g_assert_cmpint (rc_work_get_unit (RC_WORK_LAY, RC_UNITS_METRIC), ==, RC_UNIT_M2);
  g_assert_cmpint (rc_work_get_unit (RC_WORK_SIDE_SEAM, RC_UNITS_IMPERIAL), ==, RC_UNIT_FT);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/quantity-parts/strip-of-a-room", test_strip_of_a_room);
  g_test_add_func ("/quantity-parts/strip-doubled", test_strip_doubled);
  g_test_add_func ("/quantity-parts/strip-at-shared-door", test_strip_at_shared_door);
  g_test_add_func ("/quantity-parts/strip-round-a-cutout", test_strip_round_a_cutout);
  g_test_add_func ("/quantity-parts/fitting-round-things", test_fitting_round_things);
  g_test_add_func ("/quantity-parts/stairs", test_stairs);
  g_test_add_func ("/quantity-parts/transitions", test_transitions);
  g_test_add_func ("/quantity-parts/transition-of-a-shared-door", test_transition_of_a_shared_door);
  g_test_add_func ("/quantity-parts/stairs-alone", test_stairs_alone);
  g_test_add_func ("/quantity-parts/too-large", test_too_large);
  g_test_add_func ("/quantity-parts/whole-packs-too-large", test_whole_packs_too_large);
  g_test_add_func ("/quantity-parts/area-by-the-running-foot", test_area_by_the_running_foot);
  g_test_add_func ("/quantity-parts/conversions", test_conversions);
  g_test_add_func ("/quantity-parts/conversions-refused", test_conversions_refused);
  g_test_add_func ("/quantity-parts/conversions-return", test_conversions_return);
  g_test_add_func ("/quantity-parts/rounding-up", test_rounding_up);
  g_test_add_func ("/quantity-parts/packs-are-exact", test_packs_are_exact);
  g_test_add_func ("/quantity-parts/packs-hold-enough", test_packs_hold_enough);
  g_test_add_func ("/quantity-parts/coverage", test_coverage);
  g_test_add_func ("/quantity-parts/goods-without-measure", test_goods_without_measure);
  g_test_add_func ("/quantity-parts/works", test_works);
  return g_test_run ();
}
