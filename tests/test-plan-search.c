/* The planner's search: what an experienced estimator would find on small floors where it is plain to see. */
#include "option.h"
#include "plan-maker.h"
#include "rowcut-error.h"

/* A chimney breast leaves a neck of 1 in of fill beside it: nobody joins pieces there. */
static void
test_no_seam_in_a_neck (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  RcSettings defaults;
  rc_settings_init (&defaults, &job->currency);
  job->settings.least_fill_width = defaults.least_fill_width;
  job->settings.most_joins = 4;
  RcRoom *room = add_rectangle (job, "living", 0, 0, FT (13) + IN (7), FT (19.5), "area");
  RcPoint hearth[] = { { 0, FT (7.5) }, { IN (18), FT (7.5) }, { IN (18), FT (12.5) }, { 0, FT (12.5) } };
  g_ptr_array_add (room->cutouts,
                   rc_cutout_new_take (RC_CUTOUT_HEARTH, rc_ring_new_from_points (hearth, G_N_ELEMENTS (hearth))));
  get_area (job, "area")->pile_degrees = 90;
  g_autoptr (RcPlan) plan = make_plan_within (job, 1);
  const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, 0);
  for (guint o = 0; o < area_plan->options->len; o++)
    {
      const RcOption *option = g_ptr_array_index (area_plan->options, o);
      for (guint s = 0; s < option->seams->len; s++)
        {
          const RcSeam *seam = g_ptr_array_index (option->seams, s);
          if (seam->kind == RC_SEAM_CROSS)
            g_assert_cmpint (seam->length, >=, job->settings.least_fill_width);
        }
    }
}

static RcRoll *
add_stock (RcJob *job, const char *id, RcLength length, gboolean remnant)
{
  RcRoll *roll = rc_roll_new (id, "carpet", length);
  roll->lot = g_strdup (id);
  roll->remnant = remnant;
  g_ptr_array_add (job->rolls, roll);
  return roll;
}

/* The roll that the piece of that number is cut from; NULL when it is bought. */
static const char *
find_roll (const RcPlan *plan, guint number)
{
  const RcCutting *cutting = g_ptr_array_index (plan->cuttings, 0);
  for (guint i = 0; i < cutting->answer->placements->len; i++)
    {
      const RcNestPlacement *placement = &g_array_index (cutting->answer->placements, RcNestPlacement, i);
      const RcNestUse       *use = g_ptr_array_index (cutting->answer->rolls, placement->roll);
      if (g_array_index (cutting->piece_numbers, guint, placement->cut) == number)
        return g_ptr_array_index (cutting->roll_ids, use->source);
    }
  g_assert_not_reached ();
}

/* 14 x 11 ft on a roll of 13 ft 6 in: along 11 ft it takes 11 ft and a fill, along 14 ft one piece and more carpet.
 * With a roll of 14 ft in stock, a fifth cheaper, the one piece comes from that. */
static void
test_stock_roll (void)
{
  for (guint stock = 0; stock < 2; stock++)
    {
      g_autoptr (RcJob) job = make_job (FT (13.5));
      job->settings.most_joins = 0;
      add_rectangle (job, "bedroom", 0, 0, FT (14), FT (11), "area");
      if (stock)
        add_stock (job, "R-1", FT (14), FALSE);
      g_autoptr (RcPlan) plan = make_plan (job);
      g_assert_cmpuint (plan->pieces->len, ==, 1);
      g_assert_cmpstr (find_roll (plan, 1), ==, stock ? "R-1" : NULL);
    }
}

/* A closet of 4 x 6 ft out of what is left beside the 9 ft wide drop of another room: no carpet is bought for it,
 * though by itself it would lie the other way, 4 ft long. */
static void
test_closet_from_offcut (void)
{
  g_autoptr (RcJob) job = make_job (FT (13));
  job->settings.most_joins = 0;
  add_rectangle (job, "room", 0, 0, FT (9), FT (12.5), "room");
  add_rectangle (job, "closet", FT (30), 0, FT (4), FT (6), "closet");
  get_area (job, "room")->pile_degrees = 90;
  g_autoptr (RcPlan) plan = make_plan (job);
  g_assert_cmpint (plan->carpet_length, ==, FT (12.5));
  g_assert_cmpuint (plan->seams->len, ==, 0);
}

/* The fill of one room, 3 x 14 ft, comes whole out of the offcut beside the 9 ft drop of another. */
static void
test_fill_from_offcut (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  job->settings.most_joins = 4;
  add_rectangle (job, "lounge", 0, 0, FT (15), FT (14), "lounge");
  add_rectangle (job, "bedroom", FT (30), 0, FT (9), FT (15), "bedroom");
  get_area (job, "lounge")->pile_degrees = 90;
  get_area (job, "bedroom")->pile_degrees = 90;
  g_autoptr (RcPlan) plan = make_plan (job);
  g_assert_cmpint (plan->carpet_length, ==, FT (29));
  g_assert_cmpuint (plan->pieces->len, ==, 3);
  g_assert_cmpuint (plan->seams->len, ==, 1);
}

/* Beside a flight of stairs 3 ft wide and long enough lies 9 ft of carpet: room for a room of 9 ft. */
static void
test_room_beside_stairs (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  RcStair *stair = rc_stair_new ("S1", "Stair");
  stair->steps = 13;
  stair->going = IN (10);
  stair->rise = IN (7.5);
  stair->width = IN (33);
  stair->carpet = g_strdup ("carpet");
  g_ptr_array_add (rc_job_get_measure (job, NULL)->stairs, stair);
  add_rectangle (job, "room", 0, 0, FT (9), FT (16), "area");
  get_area (job, "area")->pile_degrees = 90;
  g_autoptr (RcPlan) plan = make_plan (job);
  RcLength longest = 0;
  for (guint i = 0; i < plan->pieces->len; i++)
    longest = MAX (longest, ((RcPiece *)g_ptr_array_index (plan->pieces, i))->cut_length);
  g_assert_cmpint (plan->carpet_length, ==, longest);
}

/* Thirteen steps, a piece each: four lie side by side, so two remnants of 4 ft would hold them, at half the price of
 * new goods. They are taken where they are of one dye lot; else the stair comes off the roll. */
static void
test_stair_of_one_lot (void)
{
  for (guint apart = 0; apart < 2; apart++)
    {
      g_autoptr (RcJob) job = make_job (FT (12));
      RcStair *stair = rc_stair_new ("S1", "Stair");
      stair->steps = 13;
      stair->going = IN (10);
      stair->rise = IN (7.5);
      stair->width = IN (33);
      stair->cutting = RC_STAIR_PER_STEP;
      stair->carpet = g_strdup ("carpet");
      g_ptr_array_add (rc_job_get_measure (job, NULL)->stairs, stair);
      add_stock (job, "R-1", FT (4), TRUE);
      RcRoll *second = add_stock (job, "R-2", FT (4), TRUE);
      add_stock (job, "R-3", FT (12), FALSE);
      if (!apart)
        {
          g_free (second->lot);
          second->lot = g_strdup ("R-1");
        }
      g_autoptr (RcPlan) plan = make_plan (job);
      for (guint i = 1; i <= plan->pieces->len; i++)
        g_assert_true (g_str_equal (find_roll (plan, i), "R-3") == apart);
    }
}

typedef struct
{
  guint         n_told;
  double        share;
  RcMoney       cost, bound;
  gboolean      has_named_area, has_named_carpet;
  GCancellable *cancellable; /* nullable: cancelled when there is a plan of all areas */
} Told;

static void
take_progress (const RcPlanProgress *progress, gpointer data)
{
  Told *told = data;
  told->n_told++;
  g_assert_cmpfloat (progress->share, >=, told->share);
  g_assert_cmpfloat (progress->share, <=, 1);
  g_assert_cmpint (progress->cost_lower_bound, <=, progress->cost);
  told->share = progress->share;
  told->cost = progress->cost;
  told->bound = progress->cost_lower_bound;
  told->has_named_area |= g_str_equal (progress->what, "two");
  told->has_named_carpet |= g_str_equal (progress->what, "Carpet");
  if (told->cancellable != NULL && progress->cost > 0)
    g_cancellable_cancel (told->cancellable);
}

/* While it is at work a planner says what it looks at, what the best plan costs and how much time has passed. One that
 * is cancelled ends with a plan, long before its time. */
static void
test_progress (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  add_rectangle (job, "one", 0, 0, FT (15), FT (21), "one");
  add_rectangle (job, "two", FT (30), 0, FT (13), FT (17), "two");
  for (guint i = 0; i < 2; i++)
    {
      Told         told = { .cancellable = i == 1 ? g_cancellable_new () : NULL };
      RcPlanParams params = {
        .seconds = i == 1 ? 60 : 0.3, .cancellable = told.cancellable, .progress = take_progress, .progress_data = &told
      };
      g_autoptr (GError) error = NULL;
      gint64 start = g_get_monotonic_time ();
      g_autoptr (RcPlan) plan = rc_plan_new (job, rc_job_get_measure (job, NULL), plain_weights, NULL, &params, &error);
      g_assert_no_error (error);
      g_assert_cmpuint (plan->cuttings->len, ==, 1);
      g_assert_cmpuint (told.n_told, >=, 3);
      g_assert_true (told.has_named_area && told.has_named_carpet);
      g_assert_cmpint (plan->cost, <=, told.cost);
      g_assert_cmpint (plan->cost_lower_bound, >=, told.bound);
      if (i == 1)
        g_assert_cmpint (g_get_monotonic_time () - start, <, 50 * G_USEC_PER_SEC);
      g_clear_object (&told.cancellable);
    }
}

/* Plans it with rolls of that length, bought by the foot; NULL and *error where that cannot be. */
static RcPlan *
plan_from_rolls_of (RcJob *job, RcLength full_roll, double seconds, GError **error)
{
  RcGoods     *carpet = g_ptr_array_index (job->goods, 0);
  RcPlanParams params = { .effort = (guint64)(seconds * 1000), .seed = 1 };
  carpet->full_roll = full_roll;
  carpet->length_step = FT (1);
  return rc_plan_new (job, rc_job_get_measure (job, NULL), plain_weights, NULL, &params, error);
}

/* More than the mill rolls on one roll is bought in several lengths, each of which it can send. */
static void
test_several_full_rolls (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  for (guint i = 0; i < 12; i++)
    {
      g_autofree char *room = g_strdup_printf ("room-%u", i), *area = g_strdup_printf ("area-%u", i / 3);
      add_rectangle (job, room, FT (40) * i, 0, FT (10) + IN (7 * i), FT (25) - IN (5 * i), area);
    }
  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (RcPlan) plan = plan_from_rolls_of (job, FT (90) + IN (6), i, &error);
      g_assert_no_error (error);
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, 0);
      g_assert_true (rc_nest_check (cutting->problem, cutting->answer, &error));
      g_assert_cmpuint (cutting->answer->rolls->len, >, 1);
      g_assert_cmpint (plan->cost, >=, plan->cost_lower_bound);
      for (guint r = 0; r < cutting->answer->rolls->len; r++)
        g_assert_cmpint (((RcNestUse *)g_ptr_array_index (cutting->answer->rolls, r))->length, <=, FT (90));
    }
}

/* A room longer than a full roll is laid the other way, dearer as that is. */
static void
test_longer_than_a_full_roll (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  g_autoptr (GError) error = NULL;
  add_rectangle (job, "hall", 0, 0, FT (110), FT (12), "hall");
  g_autoptr (RcPlan) unlimited = plan_from_rolls_of (job, 0, 0, &error);
  g_assert_no_error (error);
  g_assert_cmpint (((RcPiece *)g_ptr_array_index (unlimited->pieces, 0))->cut_length, ==, FT (110));
  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (RcPlan) plan = plan_from_rolls_of (job, FT (100), i, &error);
      g_assert_no_error (error);
      g_assert_cmpint (plan->cost, >, unlimited->cost);
      for (guint k = 0; k < plan->pieces->len; k++)
        g_assert_cmpint (((RcPiece *)g_ptr_array_index (plan->pieces, k))->cut_length, <=, FT (100));
    }
}

/* The cross seams of a plan lie as far from the door and from those beside them as the settings ask. */
static void
assert_well_placed (const RcPlan *plan, RcPoint door)
{
  const RcSettings *settings = &plan->job->settings;
  for (guint i = 0; i < plan->seams->len; i++)
    {
      const RcSeam *a = g_ptr_array_index (plan->seams, i);
      if (a->kind != RC_SEAM_CROSS)
        continue;
      g_assert_cmpint (rc_point_distance (a->from, door), >=, settings->door_distance);
      g_assert_cmpint (rc_point_distance (a->to, door), >=, settings->door_distance);
      for (guint k = 0; k < i; k++)
        {
          const RcSeam *b = g_ptr_array_index (plan->seams, k);
          gboolean      meet = b->kind == RC_SEAM_CROSS
                          && (rc_point_distance (a->from, b->to) < settings->stagger
                              || rc_point_distance (a->to, b->from) < settings->stagger);
          g_assert_false (meet);
        }
    }
}

/* A court longer than a full roll both ways: its drops are joined of two lengths, their seams staggered and away from
 * the door, as many as there are drops and no more; where the rolls are so short that it takes more joins than are
 * allowed, that is a rule broken. What is pinned in one piece cannot be laid, and the length is named. */
static void
test_drops_are_joined (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  g_autoptr (GError) error = NULL;
  RcRoom *room = add_rectangle (job, "court", 0, 0, FT (110), FT (36), "court");
  rc_settings_init (&job->settings, &job->currency);
  job->settings.trim_length = job->settings.trim_width = 0;
  get_area (job, "court")->pile_degrees = 180;
  RcPoint door = { FT (55), 0 }; /* in the middle of a long wall, where two equal lengths would meet */
  add_door (room, "D1", 0, FT (53.5), FT (3), 0, NULL);
  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (RcPlan) plan = plan_from_rolls_of (job, FT (100), i, &error);
      g_assert_no_error (error);
      g_assert_cmpuint (plan->pieces->len, ==, 6);
      g_assert_cmpint (plan->cost, >=, plan->cost_lower_bound);
      for (guint k = 0; k < plan->pieces->len; k++)
        {
          const RcPiece *piece = g_ptr_array_index (plan->pieces, k);
          g_assert_cmpint (piece->kind, ==, RC_PIECE_DROP);
          g_assert_cmpint (piece->cut_length, <=, FT (100));
          g_assert_cmpint (piece->cut_length, >=, job->settings.least_piece_length);
        }
      assert_well_placed (plan, door);
      g_assert_cmpuint (rc_area_plan_get_chosen (g_ptr_array_index (plan->areas, 0))->broken->len, ==, 0);
    }

  job->settings.most_joins = 1;
  g_autoptr (RcPlan) shorter = plan_from_rolls_of (job, FT (40), 0, &error);
  g_assert_no_error (error);
  const RcOption *option = rc_area_plan_get_chosen (g_ptr_array_index (shorter->areas, 0));
  g_assert_cmpuint (option->joins, ==, 6);
  g_assert_cmpint (((RcBrokenRule *)g_ptr_array_index (option->broken, 0))->rule, ==, RC_RULE_TOO_MANY_JOINS);

  RcPin  *pin = rc_pin_new (RC_PIN_SPLIT, "court");
  RcPoint inside = { FT (10), FT (6) };
  g_array_append_val (pin->points, inside);
  g_ptr_array_add (get_area (job, "court")->pins, pin);
  g_assert_null (plan_from_rolls_of (job, FT (100), 0, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_INFEASIBLE);
  g_assert_nonnull (strstr (error->message, "Carpet"));
  g_assert_nonnull (strstr (error->message, "at most"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/search/no-seam-in-a-neck", test_no_seam_in_a_neck);
  g_test_add_func ("/plan/search/stock-roll", test_stock_roll);
  g_test_add_func ("/plan/search/stair-of-one-lot", test_stair_of_one_lot);
  g_test_add_func ("/plan/search/closet-from-offcut", test_closet_from_offcut);
  g_test_add_func ("/plan/search/fill-from-offcut", test_fill_from_offcut);
  g_test_add_func ("/plan/search/room-beside-stairs", test_room_beside_stairs);
  g_test_add_func ("/plan/search/several-full-rolls", test_several_full_rolls);
  g_test_add_func ("/plan/search/longer-than-a-full-roll", test_longer_than_a_full_roll);
  g_test_add_func ("/plan/search/drops-are-joined", test_drops_are_joined);
  g_test_add_func ("/plan/search/progress", test_progress);
  return g_test_run ();
}
