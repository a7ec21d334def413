/* The lower bound of whole plans: below every plan's cost (the planner itself warns where it is not, which fails a
 * test), the same for the same floor, and no lower with a room more. */
#include "plan-maker.h"
#include "rounds.h"

/* What is proved depends a little on the order in which ways are looked at, and how far the looks go: mostly it is the
 * same, in one house of fifty a sixth less when turned. */
static void
assert_alike (RcMoney a, RcMoney b)
{
  g_assert_cmpint (ABS (a - b), <=, MAX (a, b) / 3 + 1);
}

static RcLength
random_inches (GRand *rand, int from, int to)
{
  return IN (g_rand_int_range (rand, from, to + 1));
}

/* A window in the room's upper wall or none, a door out of it or none, and that wall out of square by a hair, or
 * sloping, or not. */
static void
vary (GRand *rand, RcRoom *room, RcLength width)
{
  static const RcLength slopes[] = { 0, 0, RC_TICKS_PER_MM / 8, FT (1) };
  rc_ring_get (room->outline, 2)->y -= slopes[g_rand_int_range (rand, 0, G_N_ELEMENTS (slopes))];
  if (g_rand_boolean (rand))
    add_door (room, "W1", 2, IN (5), IN (30), IN (4.5), NULL)->kind = RC_OPENING_WINDOW;
  if (g_rand_boolean (rand))
    add_door (room, "D9", 0, width / 3, IN (30), IN (4.5), NULL)->swing
        = g_rand_boolean (rand) ? RC_SWING_IN : RC_SWING_NONE;
}

/* Two or three rooms beside each other, with a door from each to the next, a window or none, and a step in one. */
static RcJob *
make_house (GRand *rand)
{
  RcJob     *job = make_job (g_rand_boolean (rand) ? FT (12) : FT (13.5));
  RcSettings defaults;
  guint      n = (guint)g_rand_int_range (rand, 2, 4);
  RcLength   x = 0;
  rc_settings_init (&defaults, &job->currency);
  job->settings = defaults;
  for (guint r = 0; r < n; r++)
    {
      g_autofree char *id = g_strdup_printf ("room-%u", r), *next = g_strdup_printf ("room-%u", r + 1);
      RcLength         width = random_inches (rand, 70, 240), length = random_inches (rand, 70, 240);
      RcRoom          *room = add_rectangle (job, id, x, 0, width, length, "area");
      if (r == 0 && g_rand_boolean (rand)) /* its upper left corner is missing */
        {
          RcPoint step[] = { { x + IN (20), length }, { x + IN (20), length - IN (30) }, { x, length - IN (30) } };
          g_array_remove_range (room->outline, 3, 1);
          g_array_append_vals (room->outline, step, G_N_ELEMENTS (step));
        }
      if (r + 1 < n)
        add_door (room, "D1", 1, IN (12), IN (30), IN (4.5), next);
      vary (rand, room, width);
      x += width + IN (4.5);
    }
  return job;
}

/* The outlines by another map of the plane; doors are held to walls by number, so walls keep their order. */
static RcJob *
move_house (const RcJob *job, int how)
{
  RcJob           *moved = rc_job_copy (job);
  const RcMeasure *measure = rc_job_get_measure (moved, NULL);
  for (guint r = 0; r < measure->rooms->len; r++)
    {
      RcRoom *room = g_ptr_array_index (measure->rooms, r);
      for (guint p = 0; p < room->outline->len; p++)
        {
          RcPoint *point = rc_ring_get (room->outline, p);
          *point = how == 0   ? (RcPoint){ -point->y, point->x }
                   : how == 1 ? (RcPoint){ -point->x, -point->y }
                              : (RcPoint){ point->x + MM (12345), point->y - MM (777) };
        }
      g_free (room->name);
      room->name = g_strdup_printf ("Other name %u", r);
    }
  return moved;
}

static void
test_houses (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed ((guint32)g_test_rand_int ());
  double gap = 0;
  guint  n = g_test_slow () ? 200 : scale_rounds (6);
  for (guint round = 0; round < n; round++)
    {
      g_autoptr (RcJob) job = make_house (rand);
      g_autoptr (RcPlan) plan = make_plan_within (job, 1);
      g_assert_cmpint (plan->cost_lower_bound, >, 0);
      g_assert_cmpint (plan->cost_lower_bound, <=, plan->cost);
      gap += (double)(plan->cost - plan->cost_lower_bound) / (double)plan->cost;
    }
  g_test_message ("gap to the bound: %.1f %% on average", 100 * gap / n);
}

/* A room by itself: by far the most is proved, as all ways to lay it are gone through. */
static void
test_alone (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed ((guint32)g_test_rand_int ());
  double gap = 0;
  guint  n = g_test_slow () ? 500 : scale_rounds (12);
  for (guint round = 0; round < n; round++)
    {
      g_autoptr (RcJob) job = make_job (g_rand_boolean (rand) ? FT (12) : FT (13.5));
      RcSettings defaults;
      rc_settings_init (&defaults, &job->currency);
      job->settings = defaults;
      add_rectangle (job, "room", 0, 0, random_inches (rand, 70, 240), random_inches (rand, 70, 240), "area");
      g_autoptr (RcPlan) plan = make_plan_within (job, 5);
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, 0);
      const RcOption   *option = rc_area_plan_get_chosen (area_plan);
      g_assert_cmpint (option->cost_lower_bound, <=, option->cost);
      g_assert_cmpint (option->cost_lower_bound, >=, area_plan->alone_lower_bound - 2);
      g_assert_cmpint (plan->cost_lower_bound, >=, area_plan->alone_lower_bound - 2);
      gap += (double)(plan->cost - plan->cost_lower_bound) / (double)plan->cost;
    }
  g_test_message ("gap to the bound of a room alone: %.2f %% on average", 100 * gap / n);
  g_assert_cmpfloat (gap / n, <, 0.06);
}

/* How much is proved is a matter of luck as well, so these are the same houses each time. */
static void
test_moved (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (1);
  guint  n = g_test_slow () ? 50 : scale_rounds (2);
  double seconds = g_test_slow () ? 60 : 1;
  for (guint round = 0; round < n; round++)
    {
      g_autoptr (RcJob) job = make_house (rand);
      g_autoptr (RcPlan) plan = make_plan_within (job, seconds);
      for (int how = 0; how < 3; how++)
        {
          g_autoptr (RcJob) moved = move_house (job, how);
          g_autoptr (RcPlan) again = make_plan_within (moved, seconds);
          g_assert_cmpint (plan->cost, ==, again->cost);
          assert_alike (plan->cost_lower_bound, again->cost_lower_bound);
        }
    }
}

/* A room more takes some of the looks from those before: in one house of a hundred a third of what was proved is lost,
 * of all together little. The same houses each time. */
static void
test_room_more (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (2);
  RcMoney before = 0, after = 0;
  guint   n = g_test_slow () ? 50 : scale_rounds (4);
  for (guint round = 0; round < n; round++)
    {
      g_autoptr (RcJob) job = make_house (rand);
      g_autoptr (RcPlan) plan = make_plan_within (job, 1);
      add_rectangle (job, "more", FT (200), 0, random_inches (rand, 50, 200), random_inches (rand, 50, 200), "second");
      g_autoptr (RcPlan) with_more = make_plan_within (job, 1);
      before += plan->cost_lower_bound;
      after += with_more->cost_lower_bound;
    }
  g_test_message ("bound of the houses %" G_GINT64_FORMAT ", with a room more %" G_GINT64_FORMAT, before, after);
  g_assert_cmpint (after, >=, before - before / 8);
}

static RcPlan *
make_first_answer (const RcJob *job, const RcPlan *previous)
{
  g_autoptr (GError) error = NULL;
  RcPlanParams params = { .seed = 1, .previous = previous };
  RcPlan      *plan = rc_plan_new (job, rc_job_get_measure (job, NULL), plain_weights, NULL, &params, &error);
  g_assert_no_error (error);
  return plan;
}

/* What was found and proved of a house is not forgotten by a quick look at it, and not taken for true of another. */
static void
test_kept (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed ((guint32)g_test_rand_int ());
  guint n = g_test_slow () ? 50 : scale_rounds (3);
  for (guint round = 0; round < n; round++)
    {
      g_autoptr (RcJob) job = make_house (rand);
      g_autoptr (RcPlan) plan = make_plan_within (job, 0.5);
      g_autoptr (RcPlan) quick = make_first_answer (job, plan);
      g_assert_cmpint (quick->cost, ==, plan->cost);
      g_assert_cmpint (quick->cost_lower_bound, >=, plan->cost_lower_bound);
      g_autoptr (RcJob) other = rc_job_copy (job);
      switch (round % 3)
        {
        case 0: /* a smaller room */
          for (guint i = 0; i < 2; i++)
            rc_ring_get (((RcRoom *)g_ptr_array_index (rc_job_get_measure (other, NULL)->rooms, 0))->outline, i)->y
                += IN (20);
          break;
        case 1: /* stock that costs less */
          g_ptr_array_add (other->rolls, rc_roll_new ("R-1", "carpet", FT (40)));
          break;
        default:
          g_ptr_array_set_size (rc_job_get_measure (other, NULL)->areas, 0);
          add_rectangle (other, "alone", FT (300), 0, IN (100), IN (100), "third");
          break;
        }
      g_autoptr (RcPlan) known = make_first_answer (other, plan);
      g_autoptr (RcPlan) anew = make_first_answer (other, NULL);
      g_assert_cmpint (known->cost_lower_bound, ==, anew->cost_lower_bound);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/bound/houses", test_houses);
  g_test_add_func ("/plan/bound/alone", test_alone);
  g_test_add_func ("/plan/bound/turned, moved and renamed", test_moved);
  g_test_add_func ("/plan/bound/a room more", test_room_more);
  g_test_add_func ("/plan/bound/kept", test_kept);
  return g_test_run ();
}
