/* The planner against trying everything: rectangles and L-shapes, with and without a door. */
#include <string.h>

#include "plan-maker.h"
#include "plan-oracle.h"
#include "rounds.h"

/* Prices at which a whole inch of anything costs a whole number of minor units, so that no sum is rounded. */
static void
round_weights (const RcGoods *carpet, RcPlanWeights *weights, gpointer user_data)
{
  *weights = (RcPlanWeights){
    .carpet_per_m = 50000, .side_seam_per_m = 5000, .cross_seam_per_m = 10000, .cross_seam_each = 1500
  };
}

typedef struct
{
  RcLength width, length;         /* of the rectangle around the room */
  RcLength cut_width, cut_length; /* taken out of a corner; 0: a rectangle */
  gboolean left, low;             /* which corner */
  guint    door;                  /* 1: in the lower wall, 2: in the right wall, 0: none */
  RcLength door_at;
} Room;

static RcLength
random_inches (guint from, guint to)
{
  return IN (g_test_rand_int_range ((int)from, (int)to + 1));
}

static Room
make_room (void)
{
  Room room = { random_inches (60, 330), random_inches (60, 330), .door = (guint)g_test_rand_int_range (0, 4) % 3 };
  if (g_test_rand_bit ())
    {
      room.cut_width = random_inches (12, (guint)(room.width / IN (1)) - 24);
      room.cut_length = random_inches (12, (guint)(room.length / IN (1)) - 24);
      room.left = g_test_rand_bit ();
      room.low = FALSE;
    }
  return room;
}

static void
tell_plan (const RcOption *option)
{
  g_test_message ("pile %g, carpet %g in, seams %" G_GINT64_FORMAT ", rules %" G_GINT64_FORMAT, option->pile_degrees,
                  (double)option->carpet_length / IN (1), option->seam_cost, option->rule_cost);
  for (guint i = 0; i < option->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (option->pieces, i);
      RcBox          box = rc_region_compute_box (piece->outline);
      g_test_message ("piece %g,%g to %g,%g cut %g x %g", (double)box.x0 / IN (1), (double)box.y0 / IN (1),
                      (double)box.x1 / IN (1), (double)box.y1 / IN (1), (double)piece->cut_width / IN (1),
                      (double)piece->cut_length / IN (1));
    }
  for (guint i = 0; i < option->broken->len; i++)
    {
      const RcBrokenRule *broken = g_ptr_array_index (option->broken, i);
      g_autofree char    *reason = rc_broken_rule_dup_reason (broken);
      g_test_message ("%s: %" G_GINT64_FORMAT, reason, broken->cost);
    }
}

/* The room's corner is cut out of its upper left or right. */
static RcRoom *
add_room (RcJob *job, const Room *room)
{
  RcLength w = room->width, l = room->length, cw = room->cut_width, cl = room->cut_length;
  RcPoint  right[] = { { 0, 0 }, { w, 0 }, { w, l - cl }, { w - cw, l - cl }, { w - cw, l }, { 0, l } };
  RcPoint  left[] = { { 0, 0 }, { w, 0 }, { w, l }, { cw, l }, { cw, l - cl }, { 0, l - cl } };
  if (cw == 0)
    return add_rectangle (job, "room", 0, 0, w, l, "area");
  return add_outline (job, "room", room->left ? left : right, 6, "area");
}

static OracleFloor
see_along_y (const Room *room)
{
  RcLength    w = room->width, l = room->length, cw = room->cut_width, step = l - room->cut_length;
  OracleFloor floor = { { 0, room->left ? cw : w - cw, w }, { 0, 0 }, { l, l } };
  if (cw == 0)
    floor.x[1] = w;
  else
    floor.high[room->left ? 0 : 1] = step;
  return floor;
}

/* Turned by a quarter, so that what was x runs up: (x, y) to (-y, x). */
static OracleFloor
see_along_x (const Room *room)
{
  RcLength    w = room->width, l = room->length, cw = room->cut_width;
  OracleFloor floor = { { -l, room->cut_length - l, 0 }, { 0, 0 }, { w, w } };
  if (cw == 0)
    floor.x[1] = 0;
  else if (room->left)
    floor.low[0] = cw;
  else
    floor.high[0] = w - cw;
  return floor;
}

static RcMoney
find_least_cost (const RcJob *job, const Room *room)
{
  const RcGoods *carpet = g_ptr_array_index (job->goods, 0);
  RcPlanWeights  weights;
  RcPoint        from = { 0, 0 }, to = { 0, 0 };
  if (room->door == 1)
    from.x = room->door_at, to.x = room->door_at + IN (30);
  if (room->door == 2)
    from = (RcPoint){ room->width, room->door_at }, to = (RcPoint){ room->width, room->door_at + IN (30) };
  round_weights (carpet, &weights, NULL);
  OracleFloor up = see_along_y (room), across = see_along_x (room);
  RcMoney     a = oracle_find_least_cost (&up, &job->settings, carpet, &weights, from, to);
  RcMoney     b = oracle_find_least_cost (&across, &job->settings, carpet, &weights, (RcPoint){ -from.y, from.x },
                                          (RcPoint){ -to.y, to.x });
  return MIN (a, b);
}

static RcJob *
make_settings (void)
{
  RcJob     *job = make_job (g_test_rand_bit () ? FT (12) : FT (13.5));
  RcSettings defaults;
  rc_settings_init (&defaults, &job->currency);
  job->settings = defaults;
  job->settings.trim_length = IN (g_test_rand_int_range (0, 5));
  job->settings.trim_width = IN (g_test_rand_int_range (0, 3));
  job->settings.most_joins = (guint)g_test_rand_int_range (0, 3);
  ((RcGoods *)g_ptr_array_index (job->goods, 0))->length_step = IN (g_test_rand_int_range (0, 2) * 6);
  return job;
}

static void
check_room (guint round, double *gap)
{
  g_autoptr (RcJob) job = make_settings ();
  Room room = make_room ();
  if (room.cut_width > 0 && room.door == 2)
    room.door = 1;                         /* the right wall may be too short */
  if (room.cut_width > 0 || room.door > 0) /* two joins in these are more than the planner tries every set of */
    job->settings.most_joins = MIN (job->settings.most_joins, 1);
  RcRoom *made = add_room (job, &room);
  if (room.door > 0)
    {
      RcLength wall = room.door == 1 ? room.width : room.length;
      room.door_at = random_inches (1, (guint)((wall - IN (30)) / IN (1)) - 1);
      RcOpening *door = add_door (made, "D1", room.door - 1, room.door_at, IN (30), 0, NULL);
      door->swing = RC_SWING_NONE;
    }
  g_autoptr (GError) error = NULL;
  RcPlanParams params = { .seconds = 60, .steady = TRUE };
  g_autoptr (RcPlan) plan = rc_plan_new (job, rc_job_get_measure (job, NULL), round_weights, NULL, &params, &error);
  g_assert_no_error (error);
  const RcOption *option = rc_area_plan_get_chosen (g_ptr_array_index (plan->areas, 0));
  RcMoney         least = find_least_cost (job, &room);
  /* That the bound is no more than the plan's cost is seen to by the planner itself: a warning, which fails a test. */
  g_assert_cmpint (plan->cost_lower_bound, <=, least);
  *gap += (double)(least - plan->cost_lower_bound) / (double)least;
  if (option->cost != least)
    tell_plan (option);
  if (option->cost != least)
    g_test_message ("round %u: %g x %g in, corner %g x %g %d, door %u at %g, roll %g, trim %g %g, joins %u, step %g: "
                    "planned %" G_GINT64_FORMAT ", least %" G_GINT64_FORMAT,
                    round, (double)room.width / IN (1), (double)room.length / IN (1), (double)room.cut_width / IN (1),
                    (double)room.cut_length / IN (1), room.left, room.door, (double)room.door_at / IN (1),
                    (double)((RcGoods *)g_ptr_array_index (job->goods, 0))->roll_width / IN (1),
                    (double)job->settings.trim_width / IN (1), (double)job->settings.trim_length / IN (1),
                    job->settings.most_joins,
                    (double)((RcGoods *)g_ptr_array_index (job->goods, 0))->length_step / IN (1), option->cost, least);
  g_assert_cmpint (option->cost, ==, least);
}

static void
test_rooms (void)
{
  guint  n = g_test_slow () ? 2000 : scale_rounds (40);
  double gap = 0;
  for (guint round = 0; round < n; round++)
    check_room (round, &gap);
  g_test_message ("the lower bound lies %.1f %% below the least cost, on average", 100 * gap / n);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/exact/rooms", test_rooms);
  return g_test_run ();
}
