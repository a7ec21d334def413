/* Pins: what is fixed is kept, the rest planned around it; what contradicts is named. The layouts are our own. */
#include <string.h>

#include "plan-maker.h"
#include "rounds.h"

/* A room 20 ft square, pile along y, 12 ft carpet: a drop and a fill of 8 ft. */
static RcJob *
make_square (void)
{
  RcJob *job = make_job (FT (12));
  rc_settings_init (&job->settings, &job->currency);
  add_rectangle (job, "room", FT (100), FT (50), FT (20), FT (20), "area");
  get_area (job, "area")->pile_degrees = 90;
  /* The room's outline stands in the house, so its own coordinates are the house's. */
  return job;
}

static RcPin *
add_pin (RcJob *job, RcPinKind kind, guint n_points, const RcPoint *points)
{
  RcPin *pin = rc_pin_new (kind, "room");
  for (guint i = 0; i < n_points; i++)
    {
      RcPoint point = { points[i].x + FT (100), points[i].y + FT (50) };
      g_array_append_val (pin->points, point);
    }
  g_ptr_array_add (get_area (job, "area")->pins, pin);
  return pin;
}

#define PIN(job, kind, ...)                                                                                            \
  add_pin (job, kind, sizeof ((RcPoint[]){ __VA_ARGS__ }) / sizeof (RcPoint), (RcPoint[]){ __VA_ARGS__ })

static const RcPinResult *
get_result (const RcPlan *plan, guint pin)
{
  return &g_array_index (((RcAreaPlan *)g_ptr_array_index (plan->areas, 0))->pins, RcPinResult, pin);
}

static const RcOption *
get_chosen (const RcPlan *plan)
{
  return rc_area_plan_get_chosen (g_ptr_array_index (plan->areas, 0));
}

static gboolean
has_side_seam_at (const RcPlan *plan, RcLength x)
{
  for (guint i = 0; i < plan->seams->len; i++)
    {
      const RcSeam *seam = g_ptr_array_index (plan->seams, i);
      if (seam->kind == RC_SEAM_SIDE && seam->from.x == FT (100) + x && seam->to.x == FT (100) + x)
        return TRUE;
    }
  return FALSE;
}

static void
test_seam (void)
{
  for (guint feet = 5; feet <= 16; feet++)
    {
      g_autoptr (RcJob) job = make_square ();
      PIN (job, RC_PIN_SEAM, { FT (feet), FT (4) }, { FT (feet), FT (16) });
      g_autoptr (RcPlan) plan = make_plan (job);
      g_assert_true (has_side_seam_at (plan, FT (feet)));
      g_assert_null (get_result (plan, 0)->unmet);
      g_assert_false (get_result (plan, 0)->cost_known);
    }
}

/* The pile runs along a pinned seam where it is not pinned itself. */
static void
test_seam_turns_the_pile (void)
{
  g_autoptr (RcJob) job = make_square ();
  get_area (job, "area")->pile_degrees = -1;
  PIN (job, RC_PIN_SEAM, { FT (2), FT (9) }, { FT (12), FT (9) });
  g_autoptr (RcPlan) plan = make_plan (job);
  g_assert_null (get_result (plan, 0)->unmet);
  g_assert_cmpfloat (((int)get_chosen (plan)->pile_degrees) % 180, ==, 0);
  g_assert_cmpint (((RcSeam *)g_ptr_array_index (plan->seams, 0))->from.y, ==, FT (59));
}

static void
test_split (void)
{
  g_autoptr (RcJob) job = make_square ();
  PIN (job, RC_PIN_SEAM, { FT (12), FT (4) }, { FT (12), FT (16) });
  PIN (job, RC_PIN_SPLIT, { FT (15), FT (1) }, { FT (15), FT (5) }, { FT (15), FT (11) });
  g_autoptr (RcPlan) plan = make_plan (job);
  g_assert_null (get_result (plan, 1)->unmet);
  g_assert_cmpuint (get_chosen (plan)->joins, ==, 2);
  RcLength heights[] = { FT (55), FT (61) };
  guint    n = 0;
  for (guint i = 0; i < plan->seams->len; i++)
    {
      const RcSeam *seam = g_ptr_array_index (plan->seams, i);
      if (seam->kind == RC_SEAM_CROSS)
        g_assert_cmpint (seam->from.y, ==, heights[n++]);
    }
  g_assert_cmpuint (n, ==, 2);

  /* In one piece, though splitting it saves carpet: the 15 x 20 ft room of hasslefreeflooring.com. */
  g_autoptr (RcJob) whole = make_job (FT (12));
  add_rectangle (whole, "room", FT (100), FT (50), FT (15), FT (20), "area");
  get_area (whole, "area")->pile_degrees = 90;
  PIN (whole, RC_PIN_SEAM, { FT (12), FT (4) }, { FT (12), FT (16) });
  g_autoptr (RcPlan) split = make_plan_within (whole, 0.05);
  g_assert_cmpuint (get_chosen (split)->joins, >, 0);
  PIN (whole, RC_PIN_SPLIT, { FT (14), FT (1) });
  g_autoptr (RcPlan) plain = make_plan_within (whole, 0.05);
  g_assert_cmpuint (get_chosen (plain)->joins, ==, 0);
  g_assert_true (get_result (plain, 1)->cost_known);
  g_assert_cmpint (get_result (plain, 1)->cost, ==, get_chosen (plain)->cost - get_chosen (split)->cost);
}

static gboolean
breaks (const RcOption *option, RcRule rule)
{
  for (guint i = 0; i < option->broken->len; i++)
    if (((RcBrokenRule *)g_ptr_array_index (option->broken, i))->rule == rule)
      return TRUE;
  return FALSE;
}

/* Floor kept free of seams, as a rectangle, a triangle, either way round. */
static void
test_kept_floor (void)
{
  g_autoptr (RcJob) job = make_square ();
  PIN (job, RC_PIN_NO_SEAMS, { FT (6), FT (2) }, { FT (6), FT (6) }, { FT (13), FT (6) }, { FT (13), FT (2) });
  PIN (job, RC_PIN_NO_SEAMS, { FT (13), FT (10) }, { FT (16), FT (10) }, { FT (16), FT (12) });
  g_autoptr (RcPlan) plan = make_plan (job);
  g_assert_null (get_result (plan, 0)->unmet);
  g_assert_null (get_result (plan, 1)->unmet);
  g_assert_false (breaks (get_chosen (plan), RC_RULE_SEAM_ON_KEPT_FLOOR));
  for (guint x = 7; x <= 15; x++)
    if (x != 13) /* a seam may run between the two */
      g_assert_false (has_side_seam_at (plan, FT (x)));

  /* All of a floor wider than the roll: the seam lies there all the same, and is named with place and price. */
  g_autoptr (RcJob) all = make_square ();
  PIN (all, RC_PIN_NO_SEAMS, { 0, 0 }, { FT (20), 0 }, { FT (20), FT (20) }, { 0, FT (20) });
  g_autoptr (RcPlan) seamed = make_plan (all);
  g_assert_true (breaks (get_chosen (seamed), RC_RULE_SEAM_ON_KEPT_FLOOR));
  g_assert_nonnull (strstr (get_result (seamed, 0)->unmet, "without a seam"));
}

static RcRoll *
add_roll (RcJob *job, const char *id, RcLength length)
{
  RcRoll *roll = rc_roll_new (id, "carpet", length);
  roll->lot = g_strdup (id);
  g_ptr_array_add (job->rolls, roll);
  return roll;
}

static const char *
find_roll_of (const RcPlan *plan, guint piece)
{
  const RcCutting *cutting = g_ptr_array_index (plan->cuttings, 0);
  for (guint i = 0; i < cutting->answer->placements->len; i++)
    {
      const RcNestPlacement *place = &g_array_index (cutting->answer->placements, RcNestPlacement, i);
      const RcNestUse       *use = g_ptr_array_index (cutting->answer->rolls, place->roll);
      if (g_array_index (cutting->piece_numbers, guint, place->cut) == piece)
        return g_ptr_array_index (cutting->roll_ids, use->source);
    }
  return NULL;
}

static void
test_roll (void)
{
  g_autoptr (RcJob) job = make_square ();
  add_roll (job, "R-1", FT (60))->remnant = TRUE;
  add_roll (job, "R-2", FT (60));
  g_autoptr (RcPlan) free_plan = make_plan (job);
  g_assert_cmpstr (find_roll_of (free_plan, 1), ==, "R-1"); /* remnants first */
  PIN (job, RC_PIN_ROLL, { FT (1), FT (10) })->roll = g_strdup ("R-2");
  g_autoptr (RcPlan) plan = make_plan_within (job, 0.05);
  g_assert_null (get_result (plan, 0)->unmet);
  for (guint i = 1; i <= plan->pieces->len; i++) /* of one dye lot */
    g_assert_cmpstr (find_roll_of (plan, i), ==, "R-2");
  g_assert_true (get_result (plan, 0)->cost_known);
  g_assert_cmpint (get_result (plan, 0)->cost, >, 0);
}

/* Two pins that cannot both be kept: the later one is let go of, and both are named. */
static void
test_contradictions (void)
{
  g_autoptr (RcJob) lines = make_square ();
  PIN (lines, RC_PIN_SEAM, { FT (8), FT (4) }, { FT (8), FT (16) });
  PIN (lines, RC_PIN_SEAM, { FT (13), FT (4) }, { FT (13), FT (16) });
  g_autoptr (RcPlan) plan = make_plan (lines);
  g_assert_null (get_result (plan, 0)->unmet);
  g_assert_nonnull (strstr (get_result (plan, 1)->unmet, "Pin 2 (seam line in room)"));
  g_assert_nonnull (strstr (get_result (plan, 1)->unmet, "contradicts pin 1 (seam line in room)"));

  g_autoptr (RcJob) square = make_square ();
  PIN (square, RC_PIN_SEAM, { FT (4), FT (8) }, { FT (16), FT (8) });
  g_autoptr (RcPlan) square_plan = make_plan (square);
  g_assert_nonnull (strstr (get_result (square_plan, 0)->unmet, "pile direction"));

  g_autoptr (RcJob) through = make_square ();
  PIN (through, RC_PIN_SEAM, { FT (8), FT (4) }, { FT (8), FT (16) });
  PIN (through, RC_PIN_NO_SEAMS, { FT (7), FT (2) }, { FT (9), FT (2) }, { FT (9), FT (9) });
  g_autoptr (RcPlan) through_plan = make_plan (through);
  g_assert_nonnull (strstr (get_result (through_plan, 1)->unmet, "contradicts pin 1"));

  g_autoptr (RcJob) splits = make_square ();
  PIN (splits, RC_PIN_SEAM, { FT (12), FT (4) }, { FT (12), FT (16) });
  PIN (splits, RC_PIN_SPLIT, { FT (15), FT (1) }, { FT (15), FT (10) });
  PIN (splits, RC_PIN_SPLIT, { FT (15), FT (2) }, { FT (15), FT (6) });
  g_autoptr (RcPlan) splits_plan = make_plan (splits);
  g_assert_null (get_result (splits_plan, 1)->unmet);
  g_assert_nonnull (strstr (get_result (splits_plan, 2)->unmet, "contradicts pin 2"));

  g_autoptr (RcJob) rolls = make_square ();
  add_roll (rolls, "R-1", FT (60));
  add_roll (rolls, "R-2", FT (10));
  PIN (rolls, RC_PIN_ROLL, { FT (1), FT (10) })->roll = g_strdup ("R-1");
  PIN (rolls, RC_PIN_ROLL, { FT (19), FT (1) })->roll = g_strdup ("R-2");
  g_autoptr (RcPlan) rolls_plan = make_plan (rolls);
  g_assert_null (get_result (rolls_plan, 0)->unmet);
  g_assert_nonnull (strstr (get_result (rolls_plan, 1)->unmet, "Pin 2 (piece on roll R-2 in room)"));
  g_assert_nonnull (strstr (get_result (rolls_plan, 1)->unmet, "contradicts pin 1 (piece on roll R-1 in room)"));
}

/* The plan keeps the pins before this one, and says so of it. */
static void
assert_unmet (const RcJob *job, guint pin, const char *says)
{
  g_autoptr (RcPlan) plan = make_plan (job);

  for (guint i = 0; i < pin; i++)
    g_assert_cmpstr (get_result (plan, i)->unmet, ==, NULL);
  if (get_result (plan, pin)->unmet == NULL || strstr (get_result (plan, pin)->unmet, says) == NULL)
    g_error ("pin %u: “%s” does not say “%s”", pin + 1, get_result (plan, pin)->unmet, says);
}

/* More that cannot be kept: what stands against it is named, or why no plan has it. */
static void
test_more_contradictions (void)
{
  g_autoptr (RcJob) one_piece = make_square ();
  add_roll (one_piece, "R-1", FT (60));
  add_roll (one_piece, "R-2", FT (60));
  PIN (one_piece, RC_PIN_ROLL, { FT (1), FT (10) })->roll = g_strdup ("R-1");
  PIN (one_piece, RC_PIN_ROLL, { FT (2), FT (11) })->roll = g_strdup ("R-2");
  assert_unmet (one_piece, 1, "contradicts pin 1 (piece on roll R-1 in room)");

  g_autoptr (RcJob) kept_floor = make_square ();
  PIN (kept_floor, RC_PIN_SEAM, { FT (12), FT (4) }, { FT (12), FT (16) });
  PIN (kept_floor, RC_PIN_SPLIT, { FT (15), FT (1) }, { FT (15), FT (5) });
  PIN (kept_floor, RC_PIN_NO_SEAMS, { FT (14), FT (4) }, { FT (16), FT (4) }, { FT (16), FT (7) }, { FT (14), FT (7) });
  assert_unmet (kept_floor, 2, "contradicts pin 2 (split of a fill in room)");

  g_autoptr (RcJob) two_fills = make_square ();
  PIN (two_fills, RC_PIN_SEAM, { FT (12), FT (4) }, { FT (12), FT (16) });
  PIN (two_fills, RC_PIN_SPLIT, { FT (15), FT (1) }, { FT (15), FT (5) }, { FT (3), FT (10) });
  assert_unmet (two_fills, 1, "its cross seams do not lie in one fill");

  g_autoptr (RcJob) at_wall = make_square ();
  PIN (at_wall, RC_PIN_SEAM, { FT (20), FT (4) }, { FT (20), FT (16) });
  assert_unmet (at_wall, 0, "no side seam can lie there");

  g_autoptr (RcJob) outside = make_square ();
  add_roll (outside, "R-1", FT (60));
  PIN (outside, RC_PIN_ROLL, { FT (30), FT (10) })->roll = g_strdup ("R-1");
  assert_unmet (outside, 0, "no piece lies there");

  g_autoptr (RcJob) twice = make_square ();
  PIN (twice, RC_PIN_SEAM, { FT (8), FT (4) }, { FT (8), FT (16) });
  PIN (twice, RC_PIN_SEAM, { FT (8), FT (5) }, { FT (8), FT (15) });
  PIN (twice, RC_PIN_SEAM, { FT (13), FT (4) }, { FT (13), FT (16) });
  assert_unmet (twice, 2, "it contradicts the other pins together"); /* without either the other is still there */

  g_autoptr (RcJob) crossed = make_square ();
  get_area (crossed, "area")->pile_degrees = -1;
  PIN (crossed, RC_PIN_SEAM, { FT (12), FT (4) }, { FT (12), FT (16) });
  PIN (crossed, RC_PIN_SEAM, { FT (4), FT (12) }, { FT (16), FT (12) });
  assert_unmet (crossed, 1, "contradicts pin 1 (seam line in room), for seams run with the pile");

  g_autoptr (RcJob) near = make_square ();
  PIN (near, RC_PIN_SEAM, { FT (12), FT (4) }, { FT (12), FT (16) });
  PIN (near, RC_PIN_SEAM, { FT (11), FT (4) }, { FT (11), FT (16) });
  assert_unmet (near, 1, "contradicts pin 1 (seam line in room), for seams lie a carpet's width apart");
}

static void
add_seam_pin (RcJob *job, const char *room, RcPoint from, RcPoint to)
{
  RcPin *pin = rc_pin_new (RC_PIN_SEAM, room);
  g_array_append_val (pin->points, from);
  g_array_append_val (pin->points, to);
  g_ptr_array_add (get_area (job, "area")->pins, pin);
}

/* An area of many rooms is not planned as a whole to find out what stands against a pin. */
static void
test_many_rooms (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  for (guint r = 0; r < 8; r++)
    {
      g_autofree char *id = g_strdup_printf ("room-%u", r), *next = g_strdup_printf ("room-%u", r + 1);
      RcRoom          *room = add_rectangle (job, id, FT (20) * r, 0, FT (19), FT (17), "area");
      if (r < 7)
        add_door (room, "D1", 1, IN (12), IN (30), FT (1), next);
    }
  add_seam_pin (job, "room-1", (RcPoint){ FT (28), FT (4) }, (RcPoint){ FT (28), FT (14) });
  add_seam_pin (job, "room-1", (RcPoint){ FT (30), FT (4) }, (RcPoint){ FT (30), FT (14) });
  add_seam_pin (job, "room-6", (RcPoint){ FT (123), FT (9) }, (RcPoint){ FT (135), FT (9) });
  add_seam_pin (job, "room-3", (RcPoint){ FT (60), FT (4) }, (RcPoint){ FT (60), FT (14) });
  g_autoptr (RcPlan) plan = make_plan (job);
  g_assert_cmpstr (get_result (plan, 0)->unmet, ==, NULL);
  g_assert_nonnull (strstr (get_result (plan, 1)->unmet,
                            "contradicts pin 1 (seam line in room-1), for seams lie a carpet's width apart"));
  g_assert_nonnull (strstr (get_result (plan, 2)->unmet, "contradicts pin 1 (seam line in room-1), for seams run"));
  g_assert_nonnull (strstr (get_result (plan, 3)->unmet, "no side seam can lie there"));
}

/* --- pins by chance --- */

static RcLength
random_feet (int from, int to)
{
  return FT (g_test_rand_int_range (from * 4, to * 4 + 1)) / 4;
}

/* One pin within the square of make_square, of any kind; none that is no pin at all. */
static RcPin *
make_random_pin (void)
{
  RcPin   *pin = rc_pin_new (g_test_rand_int_range (0, RC_N_PIN_KINDS), "room");
  RcLength x = random_feet (1, 19), y = random_feet (1, 19);
  RcPoint  points[4] = { { x, y } };
  guint    n_points = 1;

  if (pin->kind == RC_PIN_SEAM)
    points[n_points++] = g_test_rand_bit () ? (RcPoint){ x, y < FT (10) ? y + FT (5) : y - FT (5) }
                                            : (RcPoint){ x < FT (10) ? x + FT (5) : x - FT (5), y };
  else if (pin->kind == RC_PIN_SPLIT)
    for (guint n_joins = g_test_rand_int_range (0, 3); n_points <= n_joins; n_points++)
      points[n_points] = (RcPoint){ x, FT (20) * n_points / (n_joins + 1) };
  else if (pin->kind == RC_PIN_NO_SEAMS)
    {
      RcLength width = random_feet (1, 5), length = random_feet (1, 5);

      points[n_points++] = (RcPoint){ x + width, y };
      points[n_points++] = (RcPoint){ x + width, y + length };
      points[n_points++] = (RcPoint){ x, y + length };
    }
  else
    pin->roll = g_strdup (g_test_rand_bit () ? "R-1" : "R-2");
  for (guint i = 0; i < n_points; i++)
    g_array_append_val (pin->points, ((RcPoint){ points[i].x + FT (100), points[i].y + FT (50) }));
  return pin;
}

/* The plan with these pins, which are lent. */
static RcPlan *
plan_with (RcJob *job, const RcPin *first, const RcPin *second)
{
  GPtrArray *pins = get_area (job, "area")->pins;

  g_ptr_array_set_size (pins, 0);
  g_ptr_array_add (pins, rc_pin_copy (first));
  if (second != NULL)
    g_ptr_array_add (pins, rc_pin_copy (second));
  return make_plan (job);
}

/* Two pins of which either could be kept by itself: both are kept, or one is not and the other is named. */
static void
test_pairs (void)
{
  const guint n_rounds = scale_rounds (g_test_slow () ? 5000 : 300);
  guint       n_pairs = 0, n_contradictions = 0;

  for (guint round = 0; round < n_rounds; round++)
    {
      g_autoptr (RcJob) job = make_square ();
      g_autoptr (RcPin) first = make_random_pin ();
      g_autoptr (RcPin) second = make_random_pin ();
      g_autoptr (RcPlan) with_first = NULL;
      g_autoptr (RcPlan) with_second = NULL;
      g_autoptr (RcPlan) plan = NULL;
      const char *unmet[2];

      add_roll (job, "R-1", FT (60));
      add_roll (job, "R-2", FT (60));
      get_area (job, "area")->pile_degrees = g_test_rand_bit () ? -1 : 90;
      with_first = plan_with (job, first, NULL);
      with_second = plan_with (job, second, NULL);
      if (get_result (with_first, 0)->unmet != NULL || get_result (with_second, 0)->unmet != NULL)
        continue;
      plan = plan_with (job, first, second);
      unmet[0] = get_result (plan, 0)->unmet;
      unmet[1] = get_result (plan, 1)->unmet;
      g_assert_true (unmet[0] == NULL || unmet[1] == NULL);
      if (unmet[0] != NULL)
        g_assert_nonnull (strstr (unmet[0], "contradicts pin 2"));
      if (unmet[1] != NULL)
        g_assert_nonnull (strstr (unmet[1], "contradicts pin 1"));
      n_pairs++;
      n_contradictions += unmet[0] != NULL || unmet[1] != NULL;
    }
  g_test_message ("%u pairs, %u of them contradict", n_pairs, n_contradictions);
}

static guint
count_kept (const RcPlan *plan)
{
  return (guint)(get_result (plan, 0)->unmet == NULL) + (guint)(get_result (plan, 1)->unmet == NULL);
}

/* Searching longer, with another area to be cut beside, gives no pin up that a first answer keeps. */
static void
test_searched_on (void)
{
  for (guint round = 0; round < scale_rounds (g_test_slow () ? 1000 : 12); round++)
    {
      g_autoptr (RcJob) job = make_square ();
      add_roll (job, "R-1", FT (60));
      add_roll (job, "R-2", FT (60));
      get_area (job, "area")->pile_degrees = -1;
      add_rectangle (job, "beside", FT (200), FT (50), random_feet (4, 30), random_feet (4, 30), "other");
      g_ptr_array_add (get_area (job, "area")->pins, make_random_pin ());
      g_ptr_array_add (get_area (job, "area")->pins, make_random_pin ());
      g_autoptr (RcPlan) first = make_plan (job);
      g_autoptr (RcPlan) longer = make_plan_within (job, 0.2);
      g_assert_cmpuint (count_kept (longer), >=, count_kept (first));
    }
}

/* A pin goes with its room. */
static void
test_pin_moves_with_the_room (void)
{
  g_autoptr (RcJob) job = make_square ();
  PIN (job, RC_PIN_SEAM, { FT (9), FT (4) }, { FT (9), FT (16) });
  rc_measure_find_room (rc_job_get_measure (job, NULL), "room")->at = (RcPoint){ FT (3), FT (7) };
  g_autoptr (RcPlan) plan = make_plan (job);
  g_assert_true (has_side_seam_at (plan, FT (12)));
}

/* What cannot be a pin is refused, naming area and pin. */
static void
test_faults (void)
{
  static const struct
  {
    RcPinKind   kind;
    guint       n_points;
    const char *room, *says;
  } cases[] = {
    { RC_PIN_SEAM, 1, "room", "has 1 points; it should have 2 to 2" },
    { RC_PIN_NO_SEAMS, 2, "room", "should have 3" },
    { RC_PIN_SPLIT, 1, "attic", "“attic”, which is not in the area" },
    { RC_PIN_ROLL, 1, "room", "names no roll" },
    { RC_PIN_NO_SEAMS, 3, "room", "no area" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const RcPoint points[] = { { FT (1), FT (1) }, { FT (2), FT (2) }, { FT (3), FT (3) } };
      g_autoptr (GError) error = NULL;
      g_autoptr (RcJob) job = make_square ();
      RcPin *pin = add_pin (job, cases[i].kind, cases[i].n_points, points);
      g_free (pin->room);
      pin->room = g_strdup (cases[i].room);
      g_assert_false (rc_job_check (job, NULL, &error));
      g_assert_nonnull (strstr (error->message, "Area area, pin 1: "));
      g_assert_nonnull (strstr (error->message, cases[i].says));
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan-pins/a seam lies where it is pinned", test_seam);
  g_test_add_func ("/plan-pins/the pile runs along a pinned seam", test_seam_turns_the_pile);
  g_test_add_func ("/plan-pins/a fill is split as it is pinned", test_split);
  g_test_add_func ("/plan-pins/floor kept free of seams", test_kept_floor);
  g_test_add_func ("/plan-pins/a piece comes off its roll", test_roll);
  g_test_add_func ("/plan-pins/contradictions are named", test_contradictions);
  g_test_add_func ("/plan-pins/more contradictions are named", test_more_contradictions);
  g_test_add_func ("/plan-pins/contradictions in an area of many rooms are named", test_many_rooms);
  g_test_add_func ("/plan-pins/pairs by chance", test_pairs);
  g_test_add_func ("/plan-pins/searching longer gives none up", test_searched_on);
  g_test_add_func ("/plan-pins/a pin moves with its room", test_pin_moves_with_the_room);
  g_test_add_func ("/plan-pins/what cannot be a pin", test_faults);
  return g_test_run ();
}
