/* How good and how fast the planner is: the demo house and a generated building of 300 rooms, against the simplest
 * practice. Prints processor time, so that a busy machine does not matter.
 *
 * The simplest practice: each room by itself, as the rectangle around it and its doorways as far as the closed door, in
 * the cheaper of the two directions, its cuts side by side with no other room's, the fill whole or in two; seams by the
 * same prices, those under the doors too, rules left aside.
 */
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "cutting.h"
#include "large-job.h"
#include "plan-building.h"
#include "plan-maker.h"
#include "price-book.h"
#include "shipped.h"

static double
get_cpu_seconds (void)
{
  return (double)clock () / CLOCKS_PER_SEC;
}

/* --- the simplest practice --- */

typedef struct
{
  const RcGoods *carpet;
  RcPlanWeights  weights;
  RcLength       trim_length, trim_width;
} Practice;

static RcMoney
cost_one_way (const Practice *practice, RcLength across, RcLength along, guint pieces)
{
  RcLength roll = rc_goods_get_usable_width (practice->carpet), cut = along + practice->trim_length;
  RcLength drops = across / roll, rest = across % roll, length = drops * cut;
  gint64   seams = MAX (0, drops - 1 + (rest > 0));
  RcMoney  cost = 0;
  if (rest > 0)
    {
      gboolean joined = pieces == 2 && (rest + practice->trim_width) * 2 <= roll;
      length += joined ? along / 2 + practice->trim_length : cut;
      if (joined)
        cost += practice->weights.cross_seam_each + practice->weights.cross_seam_per_m * rest / RC_TICKS_PER_M;
    }
  cost += practice->weights.side_seam_per_m * (seams * along) / RC_TICKS_PER_M;
  return cost
         + practice->weights.carpet_per_m * rc_length_round_up (length, practice->carpet->length_step) / RC_TICKS_PER_M;
}

/* The floor from `from` - `to` half through the wall, where the area is laid there. */
static void
add_half_doorway (RcBox *box, const RcAreaPlan *area_plan, RcPoint from, RcPoint to, RcPoint half)
{
  RcPoint within = { (from.x + to.x + half.x) / 2, (from.y + to.y + half.y) / 2 };
  if (rc_region_locate (area_plan->floor, within) <= 0)
    return;
  box->x0 = MIN (box->x0, MIN (from.x, to.x) + half.x);
  box->y0 = MIN (box->y0, MIN (from.y, to.y) + half.y);
  box->x1 = MAX (box->x1, MAX (from.x, to.x) + half.x);
  box->y1 = MAX (box->y1, MAX (from.y, to.y) + half.y);
}

static RcBox
compute_room_box (const RcHouse *house, const RcAreaPlan *area_plan, const RcPlacedRoom *room)
{
  RcBox box = rc_ring_compute_box (room->polygon->outer);
  for (guint i = 0; i < house->openings->len; i++)
    {
      const RcPlacedOpening *opening = g_ptr_array_index (house->openings, i);
      RcPoint                half = { opening->outward.x / 2, opening->outward.y / 2 };
      if (opening->opening->kind == RC_OPENING_WINDOW)
        continue;
      if (opening->room == room->room)
        add_half_doorway (&box, area_plan, opening->from, opening->to, half);
      else if (opening->joins && opening->other == room->room)
        add_half_doorway (&box, area_plan, opening->other_from, opening->other_to, (RcPoint){ -half.x, -half.y });
    }
  return box;
}

/* Where two rooms of the area meet a seam lies under the door. */
static RcMoney
cost_doors (const RcHouse *house, const RcFloorArea *area, const RcPlanWeights *weights)
{
  RcMoney cost = 0;
  for (guint i = 0; i < house->openings->len; i++)
    {
      const RcPlacedOpening *opening = g_ptr_array_index (house->openings, i);
      if (opening->joins && opening->opening->kind != RC_OPENING_WINDOW
          && rc_floor_area_find_room (area, opening->room->id) > 0
          && rc_floor_area_find_room (area, opening->other->id) > 0)
        cost += weights->side_seam_per_m * rc_point_distance (opening->from, opening->to) / RC_TICKS_PER_M;
    }
  return cost;
}

static RcMoney
cost_by_practice (const RcJob *job, const RcPlan *plan, RcPlanWeightsFunc weights, gpointer user_data, guint pieces)
{
  RcMoney cost = 0;
  for (guint a = 0; a < plan->areas->len; a++)
    {
      const RcAreaPlan  *area_plan = g_ptr_array_index (plan->areas, a);
      const RcFloorArea *area = area_plan->area;
      Practice           practice = { .carpet = rc_job_find_goods (job, area->carpet) };
      practice.trim_length = job->settings.trim_length;
      practice.trim_width = job->settings.trim_width;
      weights (practice.carpet, &practice.weights, user_data);
      cost += cost_doors (plan->house, area, &practice.weights);
      for (guint r = 0; r < area->rooms->len; r++)
        {
          const RcPlacedRoom *room = rc_house_find_room (plan->house, g_ptr_array_index (area->rooms, r));
          RcBox               box = compute_room_box (plan->house, area_plan, room);
          cost += MIN (cost_one_way (&practice, box.x1 - box.x0, box.y1 - box.y0, pieces),
                       cost_one_way (&practice, box.y1 - box.y0, box.x1 - box.x0, pieces));
        }
    }
  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (plan->pieces, i);
      RcPlanWeights  weigh = { 0 };
      if (piece->kind != RC_PIECE_STAIR)
        continue;
      const RcGoods *carpet = rc_job_find_goods (job, piece->goods);
      weights (carpet, &weigh, user_data);
      cost += weigh.carpet_per_m * rc_length_round_up (piece->cut_length, carpet->length_step) / RC_TICKS_PER_M;
    }
  return cost;
}

static RcMoney
sum_rules (const RcPlan *plan)
{
  RcMoney cost = 0;
  for (guint i = 0; i < plan->areas->len; i++)
    cost += rc_area_plan_get_chosen (g_ptr_array_index (plan->areas, i))->rule_cost;
  return cost;
}

/* --- the table --- */

/* Processor time of planning again after one wall of the job's first room has been moved, all else as it was. */
static double
time_edit (const RcJob *job, RcPlanWeightsFunc weights, gpointer user_data, const RcPlan *before)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcJob) edited = rc_job_copy (job);
  RcPlanParams params = { .seed = 1, .previous = before };
  RcMeasure   *measure = rc_job_get_measure (edited, NULL);
  RcRoom      *room = g_ptr_array_index (measure->rooms, 0);
  if (room->outline->len == 0)
    g_array_index (room->walls, RcWall, 0).length += IN (0.125);
  else
    for (guint i = 0; i < 2; i++)
      rc_ring_get (room->outline, i)->y -= IN (1);
  double start = get_cpu_seconds ();
  g_autoptr (RcPlan) plan = rc_plan_new (edited, measure, weights, user_data, &params, &error);
  double seconds = get_cpu_seconds () - start;
  if (plan == NULL)
    g_error ("%s", error->message);
  return seconds;
}

static double
get_gap (RcMoney cost, RcMoney bound)
{
  return cost > 0 ? 100.0 * (double)(cost - MIN (cost, bound)) / (double)cost : 0.0;
}

/* A row for each carpet, and one for all of those without a pattern. */
static void
tell_carpets (const RcPlan *plan)
{
  RcMoney plain_cost = 0, plain_bound = 0;
  for (guint i = 0; i < plan->cuttings->len; i++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, i);
      gboolean         is_plain = cutting->goods->repeat_length == 0 && cutting->goods->repeat_width == 0;
      RcMoney          goods = rc_cutting_get_cost (cutting), seams = 0, rules = 0;
      for (guint a = 0; a < plan->areas->len; a++)
        {
          const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, a);
          const RcOption   *option = rc_area_plan_get_chosen (area_plan);
          if (strcmp (area_plan->area->carpet, cutting->goods->id) != 0)
            continue;
          seams += option->seam_cost;
          rules += option->rule_cost;
        }
      RcMoney cost = goods + seams + rules;
      plain_cost += is_plain ? cost : 0;
      plain_bound += is_plain ? cutting->cost_lower_bound : 0;
      g_print ("  %-24s %s goods %10.2f seams %8.2f rules %8.2f together %10.2f at least %10.2f gap %5.1f %%\n",
               cutting->goods->id, is_plain ? "plain  " : "pattern", (double)goods / 100, (double)seams / 100,
               (double)rules / 100, (double)cost / 100, (double)cutting->cost_lower_bound / 100,
               get_gap (cost, cutting->cost_lower_bound));
    }
  g_print ("  where no pattern is involved: %.2f, at least %.2f, gap %.2f %%\n", (double)plain_cost / 100,
           (double)plain_bound / 100, get_gap (plain_cost, plain_bound));
}

static void
run (const char *label, const RcJob *job, RcPlanWeightsFunc weights, gpointer user_data, double seconds)
{
  g_autoptr (GError) error = NULL;
  RcPlanParams params = { .seconds = seconds, .seed = 1 };
  double       start = get_cpu_seconds ();
  gint64       from = g_get_monotonic_time ();
  g_autoptr (RcPlan) plan = rc_plan_new (job, rc_job_get_measure (job, NULL), weights, user_data, &params, &error);
  double cpu = get_cpu_seconds () - start, wall = (double)(g_get_monotonic_time () - from) / 1e6;
  if (plan == NULL)
    g_error ("%s", error->message);
  RcMoney whole = cost_by_practice (job, plan, weights, user_data, 1);
  RcMoney halved = cost_by_practice (job, plan, weights, user_data, 2);
  RcMoney rules = sum_rules (plan);
  g_print ("%-18s %5.0f %8.3f %8.3f %12.2f %10.2f %12.2f %6.1f %12.2f %6.3f %12.2f %6.3f %6.1f %8.3f\n", label, seconds,
           cpu, wall, (double)plan->cost / 100, (double)rules / 100, (double)plan->cost_lower_bound / 100,
           get_gap (plan->cost, plan->cost_lower_bound), (double)whole / 100,
           (double)(plan->cost - rules) / (double)whole, (double)halved / 100,
           (double)(plan->cost - rules) / (double)halved, (double)plan->waste_ppm / 1e4,
           time_edit (job, weights, user_data, plan));
  tell_carpets (plan);
}

static void
run_house (double seconds)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcJob) house = rc_shipped_load_demo_job (&error);
  g_assert_no_error (error);
  g_autoptr (RcPriceBook) book = rc_shipped_load_price_book (&error);
  g_assert_no_error (error);
  RcPriceDay day = { book, "2026-03-04" };
  run ("demo house", house, rc_price_day_get_weights, &day, seconds);
}

static void
run_building (const char *label, guint n_rooms, double seconds)
{
  g_autoptr (RcJob) building
      = strstr (label, "large") ? make_large_job ("J-large", n_rooms, "carpet") : make_building (n_rooms);
  if (strstr (label, "large"))
    rc_settings_init (&building->settings, &building->currency);
  run (label, building, building_weights, NULL, seconds);
}

/* Arguments: "house", a number of rooms with "rooms" behind it, as 300rooms, or with "large" where areas of twenty
 * rooms are wanted, any number of them (by default the house and 300rooms); then the seconds to search for, by default
 * 0 1 5 30. */
int
main (int argc, char **argv)
{
  static const char *const usual_jobs[] = { "house", "300rooms", NULL };
  static const char *const usual_seconds[] = { "0", "1", "5", "30", NULL };
  g_autoptr (GPtrArray) jobs = g_ptr_array_new (), times = g_ptr_array_new ();
  for (int i = 1; i < argc; i++)
    g_ptr_array_add (strstr (argv[i], "house") || strstr (argv[i], "rooms") || strstr (argv[i], "large") ? jobs : times,
                     argv[i]);
  for (guint i = 0; jobs->len == i && usual_jobs[i] != NULL; i++)
    g_ptr_array_add (jobs, (gpointer)usual_jobs[i]);
  for (guint i = 0; times->len == i && usual_seconds[i] != NULL; i++)
    g_ptr_array_add (times, (gpointer)usual_seconds[i]);
  g_print ("%-18s %5s %8s %8s %12s %10s %12s %6s %12s %6s %12s %6s %6s %8s\n", "job", "s", "cpu s", "wall s", "cost",
           "of rules", "at least", "gap %", "unsplit", "ratio", "one split", "ratio", "waste%", "edit cpu");
  for (guint j = 0; j < jobs->len; j++)
    for (guint t = 0; t < times->len; t++)
      {
        const char *job = g_ptr_array_index (jobs, j);
        double      seconds = g_ascii_strtod (g_ptr_array_index (times, t), NULL);
        guint       n_rooms = (guint)g_ascii_strtoull (job, NULL, 10);
        if (n_rooms > 0)
          run_building (job, n_rooms, seconds);
        else
          run_house (seconds);
      }
  return 0;
}
