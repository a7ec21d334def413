/* The placement rules one by one: what breaks them, what does not, and what it costs. */
#include <string.h>

#include "plan-maker.h"
#include "option.h"
#include "rounds.h"
#include "rule-least.h"
#include "rule.h"

/* A room 12 ft wide (x) and 16 ft long (y) seen with the pile along y. South wall: door D1, 1 ft from the west corner,
 * 3 ft wide. North wall: door D2 above it. West wall: window W1, 6 ft to 10 ft up. */
typedef struct
{
  RcJob   *job;
  RcHouse *house;
  RcSite  *site;
} Room;

static RcSite *
make_site (const Room *room)
{
  RcPlanWeights weights = { 0 };
  return rc_site_new (room->job, room->house, get_area (room->job, "area"), rc_job_find_goods (room->job, "carpet"),
                      &weights, 0);
}

static void
set_up (Room *room, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  room->job = make_job (FT (12));
  rc_settings_init (&room->job->settings, &room->job->currency);
  RcRoom *made = add_rectangle (room->job, "room", 0, 0, FT (12), FT (16), "area");
  add_door (made, "D1", 0, FT (1), FT (3), IN (4), NULL)->swing = RC_SWING_IN;
  add_door (made, "D2", 2, FT (8), FT (3), IN (4), NULL);
  RcOpening *window = add_door (made, "W1", 3, FT (6), FT (4), 0, NULL);
  window->kind = RC_OPENING_WINDOW;
  room->house = rc_house_new (rc_job_get_measure (room->job, NULL), &room->job->settings.closure, &error);
  g_assert_no_error (error);
  room->site = make_site (room);
}

static void
tear_down (Room *room, gconstpointer data)
{
  rc_site_free (room->site);
  rc_house_free (room->house);
  rc_job_free (room->job);
}

#define NO_RULE RC_N_RULES

typedef struct
{
  const char *case_name;
  RcSeamKind  kind;
  RcPoint     from, to;
  RcRule      first, second; /* broken, in the order they are noted; NO_RULE: none */
} SeamCase;

/* CRI 2011 6.2: "seams ... run the length of the area; main traffic runs along, not across; natural light does not
 * strike across; away from pivoting traffic; not perpendicular to doorway openings". The distance from doors is common
 * practice, no source. */
static const SeamCase seam_cases[] = {
  { "a seam along the room, away from doors and square to the window's wall is fine",
    RC_SEAM_CROSS,
    { FT (6), FT (4) },
    { FT (12), FT (4) },
    NO_RULE,
    NO_RULE },
  { "along the window's wall, in front of it: across the light",
    RC_SEAM_SIDE,
    { FT (9), 0 },
    { FT (9), FT (16) },
    RC_RULE_SEAM_ACROSS_LIGHT,
    NO_RULE },
  { "along the window's wall, not in front of it", RC_SEAM_SIDE, { FT (9), 0 }, { FT (9), FT (6) }, NO_RULE, NO_RULE },
  { "from wall to wall between the two doors: across the traffic",
    RC_SEAM_CROSS,
    { 0, FT (12) },
    { FT (12), FT (12) },
    RC_RULE_SEAM_ACROSS_TRAFFIC,
    NO_RULE },
  { "beside the way between the doors", RC_SEAM_CROSS, { FT (3), FT (12) }, { FT (12), FT (12) }, NO_RULE, NO_RULE },
  { "up from the middle of the doorway: square into it",
    RC_SEAM_SIDE,
    { FT (2), -IN (2) },
    { FT (2), FT (5) },
    RC_RULE_SEAM_SQUARE_TO_DOOR,
    NO_RULE },
  { "up from the jamb's corner: along the doorway's edge, not into it",
    RC_SEAM_SIDE,
    { FT (4), 0 },
    { FT (4), FT (5) },
    NO_RULE,
    NO_RULE },
  /* The leaf is hinged at x = 1 ft and sweeps a quarter circle of 3 ft: at 1 ft 6 in up it reaches x = 1 ft + 2 ft
   * 7.18 in (Pythagoras). */
  { "a side seam that ends above the leaf's sweep",
    RC_SEAM_SIDE,
    { FT (2), FT (3) },
    { FT (2), FT (5) },
    NO_RULE,
    NO_RULE },
  { "a side seam that reaches under the leaf's sweep",
    RC_SEAM_SIDE,
    { FT (2), FT (2.5) },
    { FT (2), FT (5) },
    RC_RULE_SEAM_IN_DOOR_SWING,
    NO_RULE },
  { "a seam that passes just outside the sweep",
    RC_SEAM_SIDE,
    { FT (1) + IN (31.25), FT (1.5) },
    { FT (12), FT (1.5) },
    NO_RULE,
    NO_RULE },
  { "a seam that passes just inside the sweep",
    RC_SEAM_SIDE,
    { FT (1) + IN (31), FT (1.5) },
    { FT (12), FT (1.5) },
    RC_RULE_SEAM_IN_DOOR_SWING,
    NO_RULE },
  { "a seam under the closed door is where it should be",
    RC_SEAM_SIDE,
    { FT (1), 0 },
    { FT (4), 0 },
    NO_RULE,
    NO_RULE },
  { "a cross seam under the open leaf and 1 ft from the door",
    RC_SEAM_CROSS,
    { FT (3), FT (1) },
    { FT (9), FT (1) },
    RC_RULE_SEAM_IN_DOOR_SWING,
    RC_RULE_CROSS_SEAM_AT_DOOR },
  { "a cross seam 2 ft from the door", RC_SEAM_CROSS, { FT (6), FT (1) }, { FT (9), FT (1) }, NO_RULE, NO_RULE },
};

static void
test_seams (Room *room, gconstpointer data)
{
  const RcMoney *prices = room->job->settings.rule_cost;
  for (guint i = 0; i < G_N_ELEMENTS (seam_cases); i++)
    {
      const SeamCase *c = &seam_cases[i];
      g_autoptr (GPtrArray) broken = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_broken_rule_free);
      g_test_message ("%s", c->case_name);
      RcMoney cost = rc_rules_weigh_seam (room->site, c->kind, c->from, c->to, broken);
      RcRule  expected[] = { c->first, c->second };
      RcMoney sum = prices[RC_RULE_EACH_SEAM];
      guint   n = 0;
      for (; n < 2 && expected[n] != NO_RULE; n++)
        {
          g_assert_cmpuint (broken->len, >, n);
          const RcBrokenRule *entry = g_ptr_array_index (broken, n);
          g_assert_cmpstr (rc_rule_get_name (entry->rule), ==, rc_rule_get_name (expected[n]));
          g_assert_cmpint (entry->cost, >=, prices[entry->rule]);
          g_assert_cmpint (entry->cost, <=, 2 * prices[entry->rule]);
          g_autofree char *reason = rc_broken_rule_dup_reason (entry);
          g_assert_nonnull (strstr (reason, "room"));
          sum += entry->cost;
        }
      g_assert_cmpuint (broken->len, ==, n);
      g_assert_cmpint (cost, ==, sum);
      /* The same from end to start, and without a list. */
      g_assert_cmpint (rc_rules_weigh_seam (room->site, c->kind, c->to, c->from, NULL), ==, cost);
    }
}

/* The leaf sweeps the floor behind the wall when it swings out, and the other quarter when hinged at its other edge. */
static void
test_sweeps (Room *room, gconstpointer data)
{
  static const struct
  {
    RcSwing  swing;
    gboolean hinge_at_end;
    RcPoint  at; /* middle of a seam 2 in long, along x */
    gboolean breaks;
  } cases[] = {
    { RC_SWING_IN, FALSE, { FT (1.25), FT (2.75) }, TRUE },    { RC_SWING_IN, FALSE, { FT (3.75), FT (2.75) }, FALSE },
    { RC_SWING_IN, TRUE, { FT (3.75), FT (2.75) }, TRUE },     { RC_SWING_IN, TRUE, { FT (1.25), FT (2.75) }, FALSE },
    { RC_SWING_OUT, FALSE, { FT (1.25), FT (2.75) }, FALSE },  { RC_SWING_OUT, FALSE, { FT (1.25), -FT (2.75) }, TRUE },
    { RC_SWING_NONE, FALSE, { FT (1.25), FT (2.75) }, FALSE },
  };
  RcRoom    *measured = rc_measure_find_room (rc_job_get_measure (room->job, NULL), "room");
  RcOpening *door = g_ptr_array_index (measured->openings, 0);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GPtrArray) broken = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_broken_rule_free);
      door->swing = cases[i].swing;
      door->hinge_at_end = cases[i].hinge_at_end;
      RcPoint from = { cases[i].at.x - IN (1), cases[i].at.y }, to = { cases[i].at.x + IN (1), cases[i].at.y };
      g_autoptr (RcSite) site = make_site (room);
      rc_rules_weigh_seam (site, RC_SEAM_SIDE, from, to, broken);
      g_assert_cmpuint (broken->len, ==, cases[i].breaks);
    }
}

/* A rule about a size: its price at the limit, twice that at nothing, in proportion between. Limits: job specifications
 * ask for fills of 6 to 18 in and pieces of 3 to 4 ft at least; common practice, no source. */
static void
test_sizes (Room *room, gconstpointer data)
{
  const RcSettings *settings = &room->job->settings;
  RcMoney           narrow = settings->rule_cost[RC_RULE_FILL_TOO_NARROW];
  RcLength          least = settings->least_fill_width, half = least / 2;
  RcBox             box = { 0, 0, least, FT (16) };
  g_assert_cmpint (rc_rules_weigh_piece (room->site, box, NULL, TRUE, FALSE, NULL), ==, 0);
  box.x1 = half;
  g_assert_cmpint (rc_rules_weigh_piece (room->site, box, NULL, TRUE, FALSE, NULL), ==, narrow + narrow / 2);
  g_assert_cmpint (rc_rules_weigh_piece (room->site, box, NULL, FALSE, FALSE, NULL), ==, 0);
  box.x1 = 0;
  g_assert_cmpint (rc_rules_weigh_piece (room->site, box, NULL, TRUE, FALSE, NULL), ==, 2 * narrow);

  RcMoney  brief = settings->rule_cost[RC_RULE_PIECE_TOO_SHORT];
  RcLength piece = settings->least_piece_length;
  box = (RcBox){ 0, 0, FT (2), piece };
  g_assert_cmpint (rc_rules_weigh_piece (room->site, box, NULL, TRUE, TRUE, NULL), ==, 0);
  box.y1 = piece / 2;
  g_assert_cmpint (rc_rules_weigh_piece (room->site, box, NULL, TRUE, TRUE, NULL), ==, brief + brief / 2);

  RcMoney level = settings->rule_cost[RC_RULE_CROSS_SEAMS_NOT_STAGGERED];
  RcPoint at = { 0, 0 };
  g_assert_cmpint (rc_rules_weigh_stagger (room->site, 0, settings->stagger, at, NULL), ==, 0);
  g_assert_cmpint (rc_rules_weigh_stagger (room->site, settings->stagger / 2, 0, at, NULL), ==, level + level / 2);
  g_assert_cmpint (rc_rules_weigh_joins (room->site, settings->most_joins, at, NULL), ==, 0);
  g_assert_cmpint (rc_rules_weigh_joins (room->site, settings->most_joins + 1, at, NULL), ==,
                   settings->rule_cost[RC_RULE_TOO_MANY_JOINS]);
}

/* A strip 6 in wide along a wall, with the 6 x 36 in of floor inside a doorway: 12 in wide over all, 7.5 in on the
 * mean of its 12 ft. */
static void
test_narrow_beside_a_doorway (Room *room, gconstpointer data)
{
  g_autoptr (GPtrArray) floor = rc_region_new ();
  g_autoptr (GPtrArray) broken = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_broken_rule_free);
  RcPoint corners[]
      = { { 0, 0 },           { IN (6), 0 },       { IN (6), FT (5) }, { IN (12), FT (5) }, { IN (12), FT (8) },
          { IN (6), FT (8) }, { IN (6), FT (12) }, { 0, FT (12) } };
  RcPolygon *polygon = rc_polygon_new ();
  g_array_append_vals (polygon->outer, corners, G_N_ELEMENTS (corners));
  g_ptr_array_add (floor, polygon);
  RcBox box = { 0, 0, IN (12), FT (12) };
  g_assert_cmpint (rc_rules_weigh_piece (room->site, box, NULL, TRUE, FALSE, NULL), ==, 0);
  rc_rules_weigh_piece (room->site, box, floor, TRUE, FALSE, broken);
  g_assert_cmpuint (broken->len, ==, 1);
  g_autofree char *reason = rc_broken_rule_dup_reason (g_ptr_array_index (broken, 0));
  g_assert_nonnull (strstr (reason, "7 1/2\""));
}

/* A rule at no price is off: neither counted nor named. */
static void
test_switched_off (Room *room, gconstpointer data)
{
  g_autoptr (GPtrArray) broken = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_broken_rule_free);
  RcBox box = { 0, 0, IN (1), IN (1) };
  memset (room->job->settings.rule_cost, 0, sizeof room->job->settings.rule_cost);
  for (guint i = 0; i < G_N_ELEMENTS (seam_cases); i++)
    g_assert_cmpint (rc_rules_weigh_seam (room->site, seam_cases[i].kind, seam_cases[i].from, seam_cases[i].to, broken),
                     ==, 0);
  g_assert_cmpint (rc_rules_weigh_piece (room->site, box, NULL, TRUE, TRUE, broken), ==, 0);
  g_assert_cmpuint (broken->len, ==, 0);
}

/* With the default prices: the worked layouts of a joined fill come out as they are published, with our trim of 3 in.
 * Carpet at 15.20 a foot of roll, seams as the demo's price book has them. */
static void
demo_weights (const RcGoods *carpet, RcPlanWeights *weights, gpointer user_data)
{
  *weights = (RcPlanWeights){
    .carpet_per_m = 4987, .side_seam_per_m = 431, .cross_seam_per_m = 119, .cross_seam_each = 850
  };
}

static void
test_worked_layouts (void)
{
  static const struct
  {
    const char *source;
    RcLength    width, length; /* of the room; the pile runs along the length */
    guint       pieces, joins;
  } cases[] = {
    { "15 x 20 ft: one drop and a three-piece fill (hasslefreeflooring.com)", FT (15), FT (20), 4, 2 },
    { "15 x 21 ft: 12 x 28 ft, a third of the length for the fill (jiskha 1326255360)", FT (15), FT (21), 4, 2 },
    { "14 ft along the pile, 16 ft across: fill in two pieces (ehow 6737804)", FT (16), FT (14), 3, 1 },
    { "a room of the roll's width takes one piece", FT (12), FT (20), 1, 0 },
    { "12 ft 6 in: a fill of 6 in is too narrow, so the line moves to the least width, 9 in (common practice, no "
      "source)",
      FT (12.5), FT (20), 5, 3 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (RcJob) job = make_job (FT (12));
      RcPlanParams params = { .steady = TRUE };
      g_test_message ("%s", cases[i].source);
      rc_settings_init (&job->settings, &job->currency);
      add_rectangle (job, "room", 0, 0, cases[i].width, cases[i].length, "area");
      get_area (job, "area")->pile_degrees = 90;
      g_autoptr (RcPlan) plan = rc_plan_new (job, rc_job_get_measure (job, NULL), demo_weights, NULL, &params, &error);
      g_assert_no_error (error);
      const RcOption *option = rc_area_plan_get_chosen (g_ptr_array_index (plan->areas, 0));
      g_test_message ("%u pieces, %u joins, %u rules broken", option->pieces->len, option->joins, option->broken->len);
      g_assert_cmpuint (option->pieces->len, ==, cases[i].pieces);
      g_assert_cmpuint (option->joins, ==, cases[i].joins);
      g_assert_cmpuint (option->broken->len, ==, 0);
      g_assert_cmpint (option->cost, ==, option->carpet_cost + option->seam_cost + option->rule_cost);
    }
}

/* A room as wide as the roll with a door in a long wall: the half of the doorway's depth that lies before the closed
 * door is pieced in (common practice, no source) rather than a fill joined all along the room. The piece's seam lies in
 * the doorway's mouth, 30 in long. */
static void
test_doorway_piece (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcJob) job = make_job (FT (12));
  RcPlanParams params = { .steady = TRUE };
  rc_settings_init (&job->settings, &job->currency);
  RcRoom *room = add_rectangle (job, "room", 0, 0, FT (12), FT (15), "area");
  add_door (room, "D1", 1, FT (3), IN (30), IN (4.5), NULL);
  g_autoptr (RcPlan) plan = rc_plan_new (job, rc_job_get_measure (job, NULL), demo_weights, NULL, &params, &error);
  g_assert_no_error (error);
  const RcOption *option = rc_area_plan_get_chosen (g_ptr_array_index (plan->areas, 0));
  g_assert_cmpuint (option->pieces->len, ==, 2);
  g_assert_cmpuint (option->joins, ==, 0);
  g_assert_cmpint (option->side_seam, ==, IN (30));
  g_assert_cmpuint (option->broken->len, ==, 0);
}

/* Doors, archways and windows, some of them, one in each half of a wall. */
static void
set_up_openings (Room *room)
{
  RcRoom *made = g_ptr_array_index (rc_job_get_measure (room->job, NULL)->rooms, 0);
  g_ptr_array_set_size (made->openings, 0);
  for (guint i = 0; i < 8; i++)
    {
      g_autofree char *id = g_strdup_printf ("O%u", i);
      int              half = i % 2 == 0 ? 72 : 96, width = g_test_rand_int_range (20, 70); /* in */
      int              offset = g_test_rand_int_range (0, half - width) + (i < 4 ? 0 : half);
      if (g_test_rand_int_range (0, 3) == 0)
        continue;
      RcOpening *opening = add_door (made, id, i % 4, IN (offset), IN (width), IN (4.5), NULL);
      opening->kind = g_test_rand_int_range (0, 3) == 0 ? RC_OPENING_WINDOW : RC_OPENING_DOOR;
      opening->swing = opening->kind == RC_OPENING_DOOR && g_test_rand_bit () ? RC_SWING_IN : RC_SWING_NONE;
    }
}

static RcLength
random_between (RcLength from, RcLength to)
{
  return from + (RcLength)((double)(to - from) * g_test_rand_double ());
}

/* A seam somewhere in a box breaks no less than what is told of all seams there. */
static void
test_least (Room *room, gconstpointer data)
{
  guint n_told = 0, n = scale_rounds (300);
  for (guint round = 0; round < n; round++)
    {
      g_autoptr (GError) error = NULL;
      set_up_openings (room);
      rc_site_free (room->site);
      rc_house_free (room->house);
      room->house = rc_house_new (rc_job_get_measure (room->job, NULL), &room->job->settings.closure, &error);
      g_assert_no_error (error);
      room->site = make_site (room);
      for (guint k = 0; k < 20; k++)
        {
          gboolean across = g_test_rand_bit ();
          RcLength x0 = random_between (0, FT (12)), y0 = random_between (0, FT (16));
          RcBox    box = { x0, y0, random_between (x0, FT (12)), random_between (y0, FT (16)) };
          if (across && g_test_rand_bit ())
            box.y1 = MIN (FT (16), box.y0 + IN (6));
          RcMoney least
              = across ? rc_rules_weigh_cross_least (room->site, box) : rc_rules_weigh_side_least (room->site, box);
          n_told += least > 0;
          for (guint s = 0; s < 20; s++)
            {
              RcLength x = random_between (box.x0, box.x1), y = random_between (box.y0, box.y1);
              RcPoint  a
                  = across ? (RcPoint){ random_between (0, box.x0), y } : (RcPoint){ x, random_between (0, box.y0) };
              RcPoint b = across ? (RcPoint){ random_between (box.x1, FT (12)), y }
                                 : (RcPoint){ x, random_between (box.y1, FT (16)) };
              RcMoney cost = rc_rules_weigh_seam (room->site, across ? RC_SEAM_CROSS : RC_SEAM_SIDE, a, b, NULL)
                             - room->job->settings.rule_cost[RC_RULE_EACH_SEAM];
              g_assert_cmpint (least, <=, cost);
            }
        }
    }
  g_assert_cmpuint (n_told, >, n * 4);
}

#define ROOM_TEST(path, func) g_test_add (path, Room, NULL, set_up, func, tear_down)

/* A broken rule is shown where on the seam it is broken, however long the seam. */
static void
test_places (Room *room, gconstpointer data)
{
  static const struct
  {
    RcRule  rule;
    RcPoint from, to, place;
  } cases[] = {
    { RC_RULE_SEAM_ACROSS_LIGHT, { FT (9), FT (1) }, { FT (9), FT (16) }, { FT (9), FT (8) } },
    { RC_RULE_SEAM_ACROSS_TRAFFIC, { 0, FT (12) }, { FT (12), FT (12) }, { FT (2.5), FT (12) } },
    { RC_RULE_SEAM_IN_DOOR_SWING, { FT (2), FT (2.5) }, { FT (2), FT (5) }, { FT (2), FT (2.5) } },
    { RC_RULE_CROSS_SEAM_AT_DOOR, { FT (4.5), FT (0.5) }, { FT (12), FT (0.5) }, { FT (4.5), FT (0.5) } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GPtrArray) broken = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_broken_rule_free);
      rc_rules_weigh_seam (room->site, RC_SEAM_CROSS, cases[i].from, cases[i].to, broken);
      const RcBrokenRule *first = g_ptr_array_index (broken, 0);
      g_assert_cmpint (first->rule, ==, cases[i].rule);
      g_assert_cmpint (first->place.x, ==, cases[i].place.x);
      g_assert_cmpint (first->place.y, ==, cases[i].place.y);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  ROOM_TEST ("/plan-rules/each seam rule where it is broken and where it is not", test_seams);
  ROOM_TEST ("/plan-rules/a broken rule is shown where it is broken", test_places);
  ROOM_TEST ("/plan-rules/a leaf sweeps the side and the quarter it swings to", test_sweeps);
  ROOM_TEST ("/plan-rules/sizes cost more the less there is", test_sizes);
  ROOM_TEST ("/plan-rules/floor inside a doorway does not hide a narrow strip", test_narrow_beside_a_doorway);
  ROOM_TEST ("/plan-rules/of seams somewhere no more is told than each breaks", test_least);
  ROOM_TEST ("/plan-rules/a rule without a price is off", test_switched_off);
  g_test_add_func ("/plan-rules/worked layouts come out as published at the default prices", test_worked_layouts);
  g_test_add_func ("/plan-rules/a doorway's floor is pieced in", test_doorway_piece);
  return g_test_run ();
}
