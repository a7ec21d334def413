/* Patterned goods: the pattern meets at every seam, judged point by point by the cuts' places on the roll and the floor
 * alone; usable widths, drops and lengths as published. */
#include <math.h>

#include "pattern.h"
#include "plan-maker.h"
#include "real-outlines.h"
#include "rounds.h"
#include "site.h"

/* --- the pattern, as a function of the place on the roll; knows nothing of the planner --- */

/* Goods as a mill would describe them. The pattern comes again `repeat` farther along the roll; it comes again `width`
 * farther across, there lower by `fraction` of the repeat. width 0: it is the same all across. */
typedef struct
{
  RcLength repeat, width;
  double   fraction;
} Pattern;

/* What is made of the goods. Set match: each width repeat looks like the last (CFI). Drop: the next roll width,
 * `usable` across, is dropped by the fraction, repeats standing on the diagonal (fabric-maker FAQ; quarter drop: common
 * practice, no source). So does each width repeat within it where that comes out even with the next width. */
static Pattern
get_pattern (const RcGoods *carpet, RcLength usable)
{
  double   fraction = (double)rc_match_get_numerator (carpet->match) / rc_match_get_denominator (carpet->match);
  RcLength width = carpet->repeat_width;
  double   over_all = width > 0 ? (double)(usable / width) * fraction : 0;
  if (fraction > 0 && (width == 0 || fabs (remainder (over_all - fraction, 1)) > 1e-9))
    width = usable;
  return (Pattern){ carpet->repeat_length, width, fraction };
}

/* Whole repeats of the width (M7), counted one by one. */
static RcLength
count_usable (const RcGoods *carpet)
{
  RcLength usable = 0;
  if (carpet->repeat_width == 0)
    return rc_goods_get_usable_width (carpet);
  while (usable + carpet->repeat_width <= rc_goods_get_usable_width (carpet))
    usable += carpet->repeat_width;
  return usable;
}

/* How far two values are apart modulo a repeat; just apart for 0. */
static double
get_distance (double a, double b, double repeat)
{
  double off = repeat > 0 ? fabs (remainder (a - b, repeat)) : 0;
  return off;
}

/* Whether two points of rolls, given across and along, show the same spot of the pattern, to 2 ticks (1/80 mm). */
static gboolean
looks_alike (const Pattern *pattern, double across_a, double along_a, double across_b, double along_b)
{
  double widths = pattern->width > 0 ? round ((across_b - across_a) / (double)pattern->width) : 0;
  double off_across = pattern->width > 0 ? fabs (across_b - across_a - widths * (double)pattern->width) : 0;
  double lower = widths * pattern->fraction * (double)pattern->repeat;
  return off_across <= 2 && get_distance (along_a, along_b + lower, (double)pattern->repeat) <= 2;
}

/* --- from the floor to the roll --- */

static const RcNestPlacement *
find_placement (const RcPlan *plan, guint number)
{
  for (guint c = 0; c < plan->cuttings->len; c++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, c);
      for (guint i = 0; i < cutting->answer->placements->len; i++)
        {
          const RcNestPlacement *placement = &g_array_index (cutting->answer->placements, RcNestPlacement, i);
          if (g_array_index (cutting->piece_numbers, guint, placement->cut) == number)
            return placement;
        }
    }
  g_assert_not_reached ();
}

/* Where on its roll lies what covers a point of the floor: pile leans along the roll, away from its start. */
static void
find_on_roll (const RcPlan *plan, guint number, double x, double y, double *across, double *along)
{
  const RcPiece         *piece = rc_plan_find_piece (plan, number);
  const RcNestPlacement *placement = find_placement (plan, number);
  double                 radians = piece->pile_degrees * G_PI / 180;
  double                 dx = x - (double)piece->cut_start.x, dy = y - (double)piece->cut_start.y;
  double                 ahead = dx * cos (radians) + dy * sin (radians);
  double                 aside = dx * sin (radians) - dy * cos (radians);
  double                 most = RC_SLIVER + 0.01; /* of what sine and cosine round off */
  g_assert_cmpfloat (ahead, >=, -most);
  g_assert_cmpfloat (aside, >=, -most);
  g_assert_cmpfloat (ahead, <=, (double)piece->cut_length + most);
  g_assert_cmpfloat (aside, <=, (double)piece->cut_width + most);
  *along = (double)placement->along + ahead;
  *across = (double)placement->across + aside;
}

#define POINTS_A_SEAM 9

/* Every seam of the plan, at many points. Returns how many points were looked at. */
static guint
check_seams (const RcPlan *plan)
{
  guint n_points = 0;
  for (guint s = 0; s < plan->seams->len; s++)
    {
      const RcSeam  *seam = g_ptr_array_index (plan->seams, s);
      const RcGoods *carpet = rc_job_find_goods (plan->job, rc_plan_find_area (plan, seam->area)->area->carpet);
      Pattern        pattern = get_pattern (carpet, count_usable (carpet));
      for (guint i = 0; i < POINTS_A_SEAM; i++)
        {
          double part = (i + 0.5) / POINTS_A_SEAM, across_a, along_a, across_b, along_b;
          double x = (double)seam->from.x + part * (double)(seam->to.x - seam->from.x);
          double y = (double)seam->from.y + part * (double)(seam->to.y - seam->from.y);
          find_on_roll (plan, seam->piece_a, x, y, &across_a, &along_a);
          find_on_roll (plan, seam->piece_b, x, y, &across_b, &along_b);
          if (!looks_alike (&pattern, across_a, along_a, across_b, along_b))
            g_error ("seam %u between %u and %u: %.2f, %.2f against %.2f, %.2f (repeats %" G_GINT64_FORMAT
                     " along, %" G_GINT64_FORMAT " across, %s, pile %g)",
                     s, seam->piece_a, seam->piece_b, across_a, along_a, across_b, along_b, pattern.repeat,
                     pattern.width, rc_match_get_name (carpet->match),
                     rc_plan_find_piece (plan, seam->piece_a)->pile_degrees);
          n_points++;
        }
    }
  return n_points;
}

static void
check_plan (const RcPlan *plan, guint *n_points)
{
  for (guint c = 0; c < plan->cuttings->len; c++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, c);
      g_autoptr (GError) error = NULL;
      g_assert_true (rc_nest_check (cutting->problem, cutting->answer, &error));
      g_assert_no_error (error);
    }
  *n_points += check_seams (plan);
}

/* --- random goods and houses --- */

static void
make_random_pattern (RcGoods *carpet)
{
  static const RcMatch matches[] = { RC_MATCH_SET,    RC_MATCH_SET,    RC_MATCH_HALF_DROP, RC_MATCH_QUARTER_DROP,
                                     RC_MATCH (1, 3), RC_MATCH (3, 5), RC_MATCH (2, 7) };
  carpet->repeat_length = IN (g_test_rand_int_range (3, 41)) + g_test_rand_int_range (0, 3);
  carpet->repeat_width = g_test_rand_int_range (0, 3) == 0 ? 0 : IN (g_test_rand_int_range (6, 80));
  carpet->match = matches[g_test_rand_int_range (0, G_N_ELEMENTS (matches))];
  if (carpet->match == RC_MATCH_SET && carpet->repeat_width > 0 && g_test_rand_int_range (0, 4) == 0)
    carpet->repeat_length = 0; /* stripes */
}

static RcJob *
make_patterned_job (void)
{
  RcJob *job = make_job (g_test_rand_bit () ? FT (12) : MM (4000));
  make_random_pattern (g_ptr_array_index (job->goods, 0));
  job->settings.trim_length = IN (g_test_rand_int_range (0, 5));
  if (g_test_rand_int_range (0, 4) == 0) /* shorter than many a drop, which is joined then */
    ((RcGoods *)g_ptr_array_index (job->goods, 0))->full_roll = FT (g_test_rand_int_range (14, 26));
  job->settings.trim_width = IN (g_test_rand_int_range (0, 4));
  job->settings.most_joins = (guint)g_test_rand_int_range (0, 4);
  return job;
}

/* Rooms with a step in the outline. */
static void
test_rooms (void)
{
  guint n_points = 0;
  for (guint i = 0; i < scale_rounds (150); i++)
    {
      g_autoptr (RcJob) job = make_patterned_job ();
      RcLength w = IN (g_test_rand_int_range (100, 400)), l = IN (g_test_rand_int_range (100, 300));
      RcLength dw = IN (g_test_rand_int_range (10, 90)), dl = IN (g_test_rand_int_range (10, 90));
      RcPoint  points[] = { { 0, 0 }, { w, 0 }, { w, l - dl }, { w - dw, l - dl }, { w - dw, l }, { 0, l } };
      add_outline (job, "room", points, G_N_ELEMENTS (points), "area");
      g_autoptr (RcPlan) plan = make_plan (job);
      check_plan (plan, &n_points);
    }
  g_assert_cmpuint (n_points, >, 0);
}

/* Rows of rooms with doors between neighbours, and one at the end of the row with a door out, which turns the pile. */
static void
test_houses (void)
{
  guint n_points = 0;
  for (guint i = 0; i < scale_rounds (80); i++)
    {
      g_autoptr (RcJob) job = make_patterned_job ();
      RcLength x = 0, depth = IN (g_test_rand_int_range (0, 7));
      guint    n = (guint)g_test_rand_int_range (2, 5);
      for (guint r = 0; r < n; r++)
        {
          g_autofree char *id = g_strdup_printf ("room%u", r), *next = g_strdup_printf ("room%u", r + 1);
          RcLength         width = IN (g_test_rand_int_range (48, 240)), length = IN (g_test_rand_int_range (60, 240));
          RcRoom          *room = add_rectangle (job, id, x, 0, width, length, "area");
          if (r + 1 < n)
            add_door (room, "D1", 1, IN (6), IN (30), depth, next);
          else
            add_door (room, "D2", g_test_rand_bit () ? 0 : 2, IN (6), IN (30), depth, NULL);
          x += width + depth;
        }
      g_autoptr (RcPlan) plan = make_plan (job);
      check_plan (plan, &n_points);
    }
  g_assert_cmpuint (n_points, >, 0);
}

/* Real rooms at any angle; large ones are left out, as hundreds of cuts take a minute. */
static void
test_real_outlines (void)
{
  g_autofree char *text = rc_outlines_load ();
  g_auto (GStrv) lines = g_strsplit (text != NULL ? text : "", "\n", -1);
  guint n_points = 0, n_rooms = 0;
  for (guint i = 0; lines[i] != NULL && *lines[i] != '\0'; i++)
    {
      g_autoptr (RcJob) job = make_patterned_job ();
      RcRoom *room = rc_outlines_read_room (lines[i]);
      room->placed = TRUE;
      g_ptr_array_add (rc_job_get_measure (job, NULL)->rooms, room);
      g_ptr_array_add (get_area (job, "area")->rooms, g_strdup (room->id));
      RcBox box = rc_ring_compute_box (room->outline);
      if (box.x1 - box.x0 > MM (25000) || box.y1 - box.y0 > MM (25000))
        continue;
      g_test_message ("%s", room->name);
      g_autoptr (RcPlan) plan = make_plan (job);
      check_plan (plan, &n_points);
      n_rooms++;
    }
  g_test_message ("%u points in %u rooms", n_points, n_rooms);
}

/* A stair cut step by step carries its pattern down from piece to piece: where one ends the next goes on, and all come
 * from the same place across the roll, seen from their middle. The pieces' order and sizes are those of the plan. */
static void
test_stairs (void)
{
  for (guint i = 0; i < scale_rounds (40); i++)
    {
      g_autoptr (RcJob) job = make_patterned_job ();
      RcGoods *carpet = g_ptr_array_index (job->goods, 0);
      RcStair *stair = rc_stair_new ("stair", "Stair");
      carpet->match = RC_MATCH_SET;
      stair->steps = 9;
      stair->rise = IN (7.5);
      stair->going = IN (10);
      stair->width = IN (32) + g_test_rand_int_range (0, 10);
      stair->cutting = i % 2 == 0 ? RC_STAIR_PER_STEP : RC_STAIR_WHOLE_FLIGHT;
      stair->style = i % 3 == 0 ? RC_STAIR_CAP_AND_BAND : RC_STAIR_WATERFALL;
      RcStairTurn winders = { RC_TURN_WINDERS, RC_BEND_LEFT, 4, 3, IN (40), IN (40) };
      RcStairTurn landing = { RC_TURN_LANDING, RC_BEND_RIGHT, 2, 0, IN (36), IN (38) };
      g_array_append_val (stair->turns, winders);
      if (i % 4 < 2)
        g_array_append_val (stair->turns, landing);
      stair->carpet = g_strdup (carpet->id);
      g_ptr_array_add (rc_job_get_measure (job, NULL)->stairs, stair);
      g_autoptr (RcPlan) plan = make_plan (job);
      Pattern pattern = get_pattern (carpet, count_usable (carpet));
      double  end_across = 0, end_along = 0;
      for (guint n = plan->pieces->len; n >= 1; n--) /* from the top down */
        {
          const RcPiece         *piece = rc_plan_find_piece (plan, n);
          const RcNestPlacement *placement = find_placement (plan, n);
          g_autoptr (GArray) parts = rc_stair_compute_pieces (stair);
          const RcStairPiece *part = &g_array_index (parts, RcStairPiece, piece->stair_piece);
          RcLength            over = (part->cut_length - part->length) / 2;
          double              across = (double)placement->across + (double)part->cut_width / 2,
                 along = (double)placement->along + (double)over;
          if (n < plan->pieces->len && !looks_alike (&pattern, end_across, end_along, across, along))
            g_error ("piece %u: %.1f, %.1f against %.1f, %.1f", n, end_across, end_along, across, along);
          end_across = across;
          end_along = along + (double)part->length;
        }
    }
}

/* --- published figures --- */

/* CFI, "Pattern matching" parts 3 and 4: a repeat that does not come out whole is lost. */
static void
test_repeats_across (void)
{
  static const struct
  {
    double width, usable, repeat, expected;
  } cases[] = {
    { 144, 0, 18, 144 },          /* 8 repeats */
    { 142, 0, 18, 126 },          /* 7 repeats and 16 in: lose one */
    { 145.75, 0, 18.25, 127.75 }, /* 8 would need 146 in: 1/4 in short */
    { 143, 0, 12, 132 },          /* 11 ft 11 in received: the seam falls at 11 ft */
    { 144, 143.5, 18, 126 },      /* no selvage left to trim: lose one repeat */
    { 144, 0, 0, 144 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (RcJob) job = make_job (IN (cases[i].width));
      RcGoods *carpet = g_ptr_array_index (job->goods, 0);
      carpet->usable_width = IN (cases[i].usable);
      carpet->repeat_width = IN (cases[i].repeat);
      g_assert_cmpint (rc_goods_compute_matching_width (carpet), ==, IN (cases[i].expected));
      /* A room of just two such widths takes two drops. */
      add_rectangle (job, "room", 0, 0, 2 * IN (cases[i].expected), FT (10), "area");
      get_area (job, "area")->pile_degrees = 90;
      g_autoptr (RcPlan) plan = make_plan (job);
      g_assert_cmpuint (plan->pieces->len, ==, 2);
      g_assert_cmpint (plan->carpet_length, ==, FT (20));
    }
}

/* The phase rule: neighbouring drops start at places that differ by the drop modulo the repeat. Two drops of 176 in, 36
 * in repeat: set match 0 and 180, roll used 356 in; half drop 0 and 198, 374 in. Quarter drop by the same rule: 0 and
 * 189, 365 in; a third: 0 and 192, 368 in. The safe rule (CFI) gives each cut a repeat: 2 x 212 in. */
static void
test_phase_rule (void)
{
  static const struct
  {
    RcMatch match;
    double  used;
  } cases[] = {
    { RC_MATCH_SET, 356 }, { RC_MATCH_HALF_DROP, 374 }, { RC_MATCH_QUARTER_DROP, 365 }, { RC_MATCH (1, 3), 368 }
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (RcJob) job = make_job (FT (12));
      RcGoods *carpet = g_ptr_array_index (job->goods, 0);
      carpet->repeat_length = IN (36);
      carpet->match = cases[i].match;
      add_rectangle (job, "room", 0, 0, FT (24), IN (176), "area");
      get_area (job, "area")->pile_degrees = 90;
      g_autoptr (RcPlan) plan = make_plan (job);
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, 0);
      g_assert_cmpint (plan->carpet_length, ==, IN (cases[i].used));
      g_assert_cmpint (cutting->safe_length, ==, IN (424));
      g_assert_cmpint (find_option (plan, 0, "least-cost")->safe_length, ==, IN (424));
    }
}

/* Where the pattern holds fills across the roll. Set: by the width repeat. Half drop: repeats stand on the diagonal, so
 * by two of them, where an odd number of them makes a width; where an even number does, or no width repeat is known, by
 * the whole width. Recomputed. */
static void
test_across_repeat (void)
{
  static const struct
  {
    RcMatch match;
    double  repeat, expected;
  } cases[] = {
    { RC_MATCH_SET, 18, 18 },       { RC_MATCH_SET, 0, 0 },
    { RC_MATCH_HALF_DROP, 48, 96 }, { RC_MATCH_HALF_DROP, 18, 144 },
    { RC_MATCH_HALF_DROP, 0, 144 }, { RC_MATCH_QUARTER_DROP, 28, 112 },
    { RC_MATCH (1, 3), 36, 108 },   { RC_MATCH_QUARTER_DROP, 48, 144 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (RcGoods) carpet = rc_goods_new ("carpet", RC_GOODS_CARPET, "Carpet");
      carpet->roll_width = FT (12);
      carpet->repeat_length = IN (36);
      carpet->repeat_width = IN (cases[i].repeat);
      carpet->match = cases[i].match;
      g_assert_cmpint (rc_pattern_compute_across_repeat (carpet), ==, IN (cases[i].expected));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/pattern/rooms", test_rooms);
  g_test_add_func ("/plan/pattern/houses", test_houses);
  g_test_add_func ("/plan/pattern/real-outlines", test_real_outlines);
  g_test_add_func ("/plan/pattern/stairs", test_stairs);
  g_test_add_func ("/plan/pattern/repeats-across", test_repeats_across);
  g_test_add_func ("/plan/pattern/phase-rule", test_phase_rule);
  g_test_add_func ("/plan/pattern/across-repeat", test_across_repeat);
  return g_test_run ();
}
