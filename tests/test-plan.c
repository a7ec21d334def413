/* The planner against published layouts. */
#include <string.h>

#include "plan-maker.h"
#include "site.h"
#include "area-bound.h"

typedef struct
{
  const char *source;
  RcLength    roll, width, length; /* the room, x by y */
  int         pile;                /* 90: along `length`; 0: along `width`; -1: free */
  RcLength    trim, repeat, step;
  guint       most_joins;
  RcMatch     match;
  RcLength    expected; /* roll length used */
  guint       pieces, joins;
} Layout;

/* The published source stands in each case's name. */
static const Layout layouts[] = {
  { "14 x 16 ft, drops along 16: 32 ft (ehow 6737804)", FT (12), FT (14), FT (16), 90, 0, 0, 0, 0, 0, FT (32), 2, 0 },
  { "14 x 16 ft, drops along 14: 28 ft (ehow 6737804)", FT (12), FT (16), FT (14), 90, 0, 0, 0, 0, 0, FT (28), 2, 0 },
  { "14 x 16 ft, fill split in two: 14 + 7 = 21 ft (ehow 6737804)", FT (12), FT (16), FT (14), 90, 0, 0, 0, 1, 0,
    FT (21), 3, 1 },
  { "15 x 20 ft, one three-piece fill: at most 27 ft (hasslefreeflooring.com); 26 ft 8 in when the pieces are not cut "
    "to whole "
    "feet",
    FT (12), FT (15), FT (20), 90, 0, 0, 0, 2, 0, FT (20) + FT (20) / 3, 4, 2 },
  { "15 x 21 ft: 12 x 28 ft (jiskha 1326255360)", FT (12), FT (15), FT (21), 90, 0, 0, 0, 2, 0, FT (28), 4, 2 },
  { "24 ft 9 in x 18 ft, carpet 3/4 yd, lengthwise: 8 strips, 66 yd (arithmetic textbook, section 483)", IN (27),
    FT (18), IN (297), 90, 0, 0, 0, 0, 0, RC_TICKS_PER_YARD * 66, 8, 0 },
  { "33 x 24 ft, 1 yd wide, 6 in waste a strip: 89 1/3 yd (same book; recomputed)", FT (3), FT (24), FT (33), 90,
    IN (6), 0, 0, 0, 0, FT (268), 8, 0 },
  { "11 ft 3 in x 12 ft, 27 in carpet, 9 in repeat: 5 strips, 20 yd (arithmetic, p. 242 ex. 1; recomputed)", IN (27),
    IN (135), FT (12), 90, 0, IN (9), 0, 0, 0, RC_TICKS_PER_YARD * 20, 5, 0 },
  { "13 ft 6 in x 16 ft, 27 in carpet, 1 yd repeat: first 16 ft, others 18 ft, 35 1/3 yd (same, ex. 2; recomputed)",
    IN (27), IN (162), FT (16), 90, 0, FT (3), 0, 0, 0, FT (106), 6, 0 },
  { "27 in strips in a 15 ft room, 19 ft long: 7 strips, 44 1/3 yd (Gifford, Everyday Arithmetic, q. 55)", IN (27),
    FT (15), FT (19), 90, 0, 0, 0, 0, 0, FT (133), 7, 0 },
  { "15 x 20 ft, 36 in carpet, each strip + 6 in: 34 1/6 yd (Gifford q. 51; recomputed)", FT (3), FT (15), FT (20), 90,
    IN (6), 0, 0, 0, 0, FT (102) + IN (6), 5, 0 },
  { "13 x 8 m, 3 m roll, along 13: 3 drops, 39 m (UK maths worksheet)", MM (3000), MM (8000), MM (13000), 90, 0, 0, 0,
    0, 0, MM (39000), 3, 0 },
  { "13 x 8 m, 3 m roll, along 8: 5 drops, 40 m (same; recomputed)", MM (3000), MM (13000), MM (8000), 90, 0, 0, 0, 0,
    0, MM (40000), 5, 0 },
  { "13 x 8 m, 3 m roll, free: along 13 is the cheaper by 1 m (same)", MM (3000), MM (13000), MM (8000), -1, 0, 0, 0, 0,
    0, MM (39000), 3, 0 },
  { "5.90 x 3.70 m, 4 m roll, + 0.10 m: 6.00 m (UK ordering guide)", MM (4000), MM (3700), MM (5900), 90, MM (100), 0,
    0, 0, 0, MM (6000), 1, 0 },
  { "3.85 x 2.85 m, 2 m roll, lengthwise: 2 x 3.95 m (Workspace Training; roll width assumed)", MM (2000), MM (2850),
    MM (3850), 90, MM (100), 0, 0, 0, 0, MM (7900), 2, 0 },
  { "3.85 x 2.85 m, 2 m roll, crosswise: 2 x 2.95 m (same)", MM (2000), MM (3850), MM (2850), 90, MM (100), 0, 0, 0, 0,
    MM (5900), 2, 0 },
  { "20 x 20 ft, 12 ft roll: 20 + 20 + 1 ft (exhibit-carpet supplier)", FT (12), FT (20), FT (20), 90, IN (6), 0, 0, 0,
    0, FT (41), 2, 0 },
  { "room 10 ft: cut 10 ft 4 in (consumer measuring page)", FT (12), FT (12), FT (10), 90, IN (4), 0, 0, 0, 0,
    FT (10) + IN (4), 1, 0 },
  { "18 in repeat, strips 15 ft: no loss, 10 repeats (arithmetic, oral 2)", IN (27), IN (54), FT (15), 90, 0, IN (18),
    0, 0, 0, FT (30), 2, 0 },
  { "18 in repeat, strips 14 ft: loss of 1 ft (same; recomputed)", IN (27), IN (54), FT (14), 90, 0, IN (18), 0, 0, 0,
    FT (29), 2, 0 },
  { "two drops of 176 in, 36 in repeat, set match: 356 in (phase rule)", FT (12), FT (24), IN (176), 90, 0, IN (36), 0,
    0, 0, IN (356), 2, 0 },
  { "two drops of 176 in, 36 in repeat, half drop: 374 in (phase rule)", FT (12), FT (24), IN (176), 90, 0, IN (36), 0,
    0, RC_MATCH_HALF_DROP, IN (374), 2, 0 },
};

static void
test_published (gconstpointer data)
{
  const Layout *layout = data;
  g_test_message ("%s", layout->source);
  g_autoptr (RcJob) job = make_job (layout->roll);
  RcGoods *carpet = g_ptr_array_index (job->goods, 0);
  carpet->repeat_length = layout->repeat;
  carpet->match = layout->match;
  job->settings.trim_length = layout->trim;
  job->settings.most_joins = layout->most_joins;
  add_rectangle (job, "room", 0, 0, layout->width, layout->length, "area");
  get_area (job, "area")->pile_degrees = layout->pile;
  g_autoptr (RcPlan) plan = make_plan (job);
  g_assert_cmpint (plan->carpet_length, ==, layout->expected);
  g_assert_cmpuint (plan->pieces->len, ==, layout->pieces);
  const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, 0);
  const RcOption   *option = rc_area_plan_get_chosen (area_plan);
  g_assert_cmpuint (option->joins, ==, layout->joins);
  g_assert_cmpint (option->length_lower_bound, <=, option->carpet_length);
  g_assert_cmpint (option->cost_lower_bound, <=, option->cost);
}

/* Gifford, Everyday Arithmetic, 1914, q. 46-50: 27 in strips for 8, 10, 14, 16, 18 ft: 4, 5, 7, 8, 8; part of a strip
 * counts as a whole. */
static void
test_strip_counts (void)
{
  static const guint feet[] = { 8, 10, 14, 16, 18 }, strips[] = { 4, 5, 7, 8, 8 };
  for (guint i = 0; i < G_N_ELEMENTS (feet); i++)
    {
      g_autoptr (RcJob) job = make_job (IN (27));
      job->settings.most_joins = 0;
      add_rectangle (job, "room", 0, 0, FT (feet[i]), FT (20), "area");
      get_area (job, "area")->pile_degrees = 90;
      g_autoptr (RcPlan) plan = make_plan (job);
      g_assert_cmpuint (plan->pieces->len, ==, strips[i]);
      g_assert_cmpint (plan->carpet_length, ==, FT (20 * strips[i]));
    }
}

/* The options of the 15 x 20 ft room: carpet against seams; the area bound of 25 ft is met with four pieces. */
static void
test_options (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  job->settings.most_joins = 3;
  add_rectangle (job, "room", 0, 0, FT (15), FT (20), "area");
  g_autoptr (RcPlan) plan = make_plan (job);
  const RcOption *fewest = find_option (plan, 0, "fewest-seams");
  const RcOption *least = find_option (plan, 0, "least-carpet");
  g_assert_cmpuint (fewest->joins, ==, 0);
  g_assert_cmpint (least->carpet_length, ==, FT (25));
  g_assert_cmpint (least->length_lower_bound, ==, FT (25));
  g_assert_cmpint (find_option (plan, 0, "least-cost")->cost, <=, MIN (fewest->cost, least->cost));

  get_area (job, "area")->option = g_strdup ("fewest-seams");
  g_autoptr (RcPlan) taken = make_plan (job);
  g_assert_cmpint (taken->carpet_length, ==, fewest->carpet_length);
}

/* thespruce 2908826, option 1: a 3 x 12 ft hall into a 12 x 9 ft room, pile constant: 9 + 12 = 21 ft; turning the hall
 * piece is not allowed. */
static void
test_hall (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  job->settings.most_joins = 0;
  add_rectangle (job, "room", 0, 0, FT (12), FT (9), "area");
  RcRoom *hall = add_rectangle (job, "hall", FT (4), FT (9), FT (3), FT (12), "area");
  add_door (hall, "D1", 0, 0, FT (3), 0, "room");
  get_area (job, "area")->pile_degrees = 90;
  g_autoptr (RcPlan) plan = make_plan (job);
  g_assert_cmpint (plan->carpet_length, ==, FT (21));
  /* One piece runs through the doorway, or two meet in it. */
  g_assert_cmpuint (plan->pieces->len, ==, plan->seams->len + 1);
}

/* A 30 in gap 10 ft long: pieces 33 in wide cut side by side add about 3 ft of roll (consumer measuring page); four
 * pieces of 30 in add 2 ft 6 in. */
static void
test_gap (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  job->settings.most_joins = 3;
  job->settings.trim_width = IN (3);
  add_rectangle (job, "room", 0, 0, FT (12) + IN (30), FT (10), "area");
  get_area (job, "area")->pile_degrees = 90;
  g_autoptr (RcPlan) plan = make_plan (job);
  g_assert_cmpint (find_option (plan, 0, "least-carpet")->carpet_length, ==, FT (12) + IN (6));
}

/* Litchfield: stairs 36 in wide are cut 38 1/2 in wide, so only three widths come out of a 12 ft roll. */
static void
test_stairs_share_a_width (void)
{
  RcLength used[2];
  for (guint n = 3; n <= 4; n++)
    {
      g_autoptr (RcJob) job = make_job (FT (12));
      for (guint i = 0; i < n; i++)
        {
          g_autofree char *id = g_strdup_printf ("S%u", i);
          RcStair         *stair = rc_stair_new (id, id);
          stair->steps = 13;
          stair->going = IN (10);
          stair->rise = IN (7.5);
          stair->width = IN (36);
          stair->carpet = g_strdup ("carpet");
          g_ptr_array_add (rc_job_get_measure (job, NULL)->stairs, stair);
        }
      g_autoptr (RcPlan) plan = make_plan (job);
      used[n - 3] = plan->carpet_length;
    }
  g_assert_cmpint (used[0], ==, IN (246.5));
  g_assert_cmpint (used[1], ==, IN (493));
}

static void
test_errors (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  g_autoptr (GError) error = NULL;
  add_rectangle (job, "room", 0, 0, FT (15), FT (20), "Lounge");
  g_free (get_area (job, "Lounge")->carpet);
  get_area (job, "Lounge")->carpet = g_strdup ("velvet");
  g_autoptr (RcPlan) plan = rc_plan_new (job, rc_job_get_measure (job, NULL), plain_weights, NULL, NULL, &error);
  g_assert_null (plan);
  g_assert_nonnull (error);
  g_assert_nonnull (strstr (error->message, "velvet"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (layouts); i++)
    {
      g_autofree char *path = g_strdup_printf ("/plan/published/%u", i + 1);
      g_test_add_data_func (path, &layouts[i], test_published);
    }
  g_test_add_func ("/plan/strip-counts", test_strip_counts);
  g_test_add_func ("/plan/options", test_options);
  g_test_add_func ("/plan/hall", test_hall);
  g_test_add_func ("/plan/gap", test_gap);
  g_test_add_func ("/plan/stairs-share-a-width", test_stairs_share_a_width);
  g_test_add_func ("/plan/errors", test_errors);
  return g_test_run ();
}
