/* Every plan covers its floor: on random rooms, on houses, with patterns; turned, mirrored and moved the cost stays. */
#include <string.h>

#include "cover-check.h"
#include "plan-maker.h"
#include "real-outlines.h"
#include "rounds.h"
#include "rowcut-error.h"
#include "site.h"

/* A skyline: columns of random height side by side on one base line, to whole inches. */
static RcRoom *
add_skyline (RcJob *job, const char *id, RcLength x, const char *area)
{
  g_autoptr (GArray) points = rc_ring_new ();
  guint   n = (guint)g_test_rand_int_range (1, 5);
  RcPoint start = { x, 0 };
  g_array_append_val (points, start);
  for (guint i = 0, height = 0; i < n; i++)
    {
      guint next = 0;
      do
        next = (guint)g_test_rand_int_range (48, 280);
      while (next == height);
      height = next;
      RcPoint left = { x, IN (height) };
      x += IN (g_test_rand_int_range (24, 120));
      RcPoint right = { x, IN (height) };
      g_array_append_val (points, left);
      g_array_append_val (points, right);
    }
  RcPoint end = { x, 0 };
  g_array_append_val (points, end);
  return add_outline (job, id, (RcPoint *)points->data, points->len, area);
}

static RcJob *
make_random_job (void)
{
  RcJob     *job = make_job (g_test_rand_bit () ? FT (12) : MM (4000));
  RcSettings defaults;
  rc_settings_init (&defaults, &job->currency);
  memcpy (job->settings.rule_cost, defaults.rule_cost, sizeof defaults.rule_cost);
  job->settings.trim_length = IN (g_test_rand_int_range (0, 5));
  if (g_test_rand_int_range (0, 4) == 0) /* shorter than many a drop, which is joined then */
    ((RcGoods *)g_ptr_array_index (job->goods, 0))->full_roll = FT (g_test_rand_int_range (14, 26));
  job->settings.trim_width = IN (g_test_rand_int_range (0, 3));
  job->settings.most_joins = (guint)g_test_rand_int_range (0, 5);
  return job;
}

/* Each of two kinds of rooms: 10,000 in all in slow mode. */
static guint
count_rounds (void)
{
  return g_test_slow () ? 5000 : scale_rounds (300);
}

static void
test_skylines (void)
{
  for (guint i = 0; i < count_rounds (); i++)
    {
      g_autoptr (RcJob) job = make_random_job ();
      add_skyline (job, "room", 0, "area");
      g_autoptr (RcPlan) plan = make_plan (job);
      check_plan (plan);
    }
}

/* Rooms with one corner cut off at any slope and a column in the middle. */
static void
test_angled (void)
{
  for (guint i = 0; i < count_rounds (); i++)
    {
      g_autoptr (RcJob) job = make_random_job ();
      RcLength width = IN (g_test_rand_int_range (60, 300)), length = IN (g_test_rand_int_range (60, 300));
      RcLength dx = g_test_rand_int_range (1, (int)width), dy = g_test_rand_int_range (1, (int)length);
      RcPoint  points[] = { { 0, 0 }, { width, 0 }, { width, length - dy }, { width - dx, length }, { 0, length } };
      RcRoom  *room = add_outline (job, "room", points, G_N_ELEMENTS (points), "area");
      if (i % 3 == 0)
        {
          RcPoint column[] = { { IN (6), IN (6) }, { IN (14), IN (6) }, { IN (14), IN (16) }, { IN (6), IN (16) } };
          if (dx < width - IN (14) || dy < length - IN (16))
            g_ptr_array_add (room->cutouts, rc_cutout_new_take (RC_CUTOUT_COLUMN, rc_ring_new_from_points (
                                                                                      column, G_N_ELEMENTS (column))));
        }
      g_autoptr (GError) error = NULL;
      g_autoptr (RcPlan) plan = rc_plan_new (job, rc_job_get_measure (job, NULL), plain_weights, NULL, NULL, &error);
      if (error != NULL && g_error_matches (error, RC_ERROR, RC_ERROR_GEOMETRY))
        continue; /* the column lies across the cut-off corner */
      g_assert_no_error (error);
      check_plan (plan);
    }
}

/* Doors out through walls that slope against the pile, which corners turned and rounded to ticks stand off by a hair:
 * what lies in the wall is covered once, and so is the room behind it. */
static void
test_sloping_doors (void)
{
  for (guint i = 0; i < scale_rounds (100); i++)
    {
      g_autoptr (RcJob) job = make_random_job ();
      RcLength width = IN (g_test_rand_int_range (100, 300)), length = IN (g_test_rand_int_range (60, 300));
      RcLength dx = g_test_rand_int_range (1, (int)width), dy = g_test_rand_int_range (1, (int)length);
      RcPoint  points[] = { { 0, 0 }, { width, dy }, { width - dx, length + dy }, { -dx, length } };
      RcRoom  *room = add_outline (job, "room", points, G_N_ELEMENTS (points), "area");
      add_door (room, "D1", 0, IN (6), IN (g_test_rand_int_range (20, 80)), IN (g_test_rand_int_range (1, 13)), NULL);
      add_door (room, "D2", 2, IN (6), IN (g_test_rand_int_range (20, 80)), IN (g_test_rand_int_range (1, 13)), NULL);
      if (g_test_rand_bit ())
        get_area (job, "area")->pile_degrees = g_test_rand_int_range (0, 360);
      g_autoptr (RcPlan) plan = make_plan (job);
      check_plan (plan);
    }
}

/* A door out of one area with a room of another right behind it, nearer than where the carpet would end under the
 * closed door: none of the wall is carpeted. Once the room has gone, half of it is. */
static void
test_blocked_door (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  RcRoom *room = add_rectangle (job, "room", 0, 0, FT (10), FT (10), "area");
  RcRoom *behind = add_rectangle (job, "behind", FT (10) + IN (1), 0, FT (10), FT (10), "other");
  add_door (room, "D1", 1, FT (3), FT (3), IN (8), NULL);
  g_autoptr (RcPlan) plan = make_plan (job);
  const RcAreaPlan *laid = rc_plan_find_area (plan, "area");
  check_plan (plan);
  g_assert_cmpint (laid->floor_area, ==, rc_area_from_rectangle (FT (10), FT (10)));
  g_autoptr (RcJob) apart = rc_job_copy (job);
  rc_measure_find_room (rc_job_get_measure (apart, NULL), behind->id)->at.x = FT (5);
  RcPlanParams params = { .steady = TRUE, .previous = plan };
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPlan) after
      = rc_plan_new (apart, rc_job_get_measure (apart, NULL), plain_weights, NULL, &params, &error);
  g_assert_no_error (error);
  check_plan (after);
  laid = rc_plan_find_area (after, "area");
  g_assert_cmpint (laid->floor_area, ==,
                   rc_area_from_rectangle (FT (10), FT (10)) + rc_area_from_rectangle (FT (3), IN (4)));
}

/* A bay on either side of a point of the wall between, where they touch: each has a seam of its own to the drop. */
static void
test_bays_that_touch (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  RcPoint points[] = { { 0, 0 },
                       { FT (18), 0 },
                       { FT (18), FT (8) },
                       { FT (12), FT (10) },
                       { FT (18), FT (12) },
                       { FT (18), FT (20) },
                       { 0, FT (20) } };
  add_outline (job, "room", points, G_N_ELEMENTS (points), "area");
  get_area (job, "area")->pile_degrees = 90;
  g_autoptr (RcPlan) plan = make_plan_within (job, 1);
  const RcOption *option = rc_area_plan_get_chosen (g_ptr_array_index (plan->areas, 0));
  check_plan (plan);
  g_assert_cmpuint (option->pieces->len, ==, 3); /* both bays come off one length, side by side */
  g_assert_cmpint (option->carpet_length, ==, FT (30));
  g_assert_cmpint (option->side_seam, ==, FT (20));
  g_assert_cmpuint (option->seams->len, ==, 2);
}

/* A door to a room of another area that lies an inch farther off than the wall was measured: each area has half of the
 * wall. */
static void
test_door_between_areas (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  RcSettings defaults;
  rc_settings_init (&defaults, &job->currency);
  job->settings.closure = defaults.closure;
  RcRoom *room = add_rectangle (job, "room", 0, 0, FT (10), FT (10), "area");
  add_rectangle (job, "other", FT (10) + IN (9), 0, FT (10), FT (10), "other");
  add_door (room, "D1", 1, FT (3), FT (3), IN (8), "other");
  g_autoptr (RcPlan) plan = make_plan (job);
  RcArea half = rc_area_from_rectangle (FT (3), IN (8)) / 2;
  check_plan (plan);
  for (guint i = 0; i < 2; i++)
    g_assert_cmpint (((RcAreaPlan *)g_ptr_array_index (plan->areas, i))->floor_area, ==,
                     rc_area_from_rectangle (FT (10), FT (10)) + half);
}

/* Rows of rooms with doors between neighbours. */
static RcJob *
make_random_house (void)
{
  RcJob   *job = make_random_job ();
  RcLength x = 0, depth = IN (g_test_rand_int_range (0, 7));
  guint    n = (guint)g_test_rand_int_range (2, 6);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *id = g_strdup_printf ("room%u", i), *next = g_strdup_printf ("room%u", i + 1);
      RcLength         width = IN (g_test_rand_int_range (48, 240)), length = IN (g_test_rand_int_range (60, 240));
      RcRoom          *room = add_rectangle (job, id, x, 0, width, length, "area");
      if (i + 1 < n)
        add_door (room, "D1", 1, IN (6), IN (30), depth, next);
      x += width + depth;
    }
  return job;
}

static void
test_houses (void)
{
  for (guint i = 0; i < scale_rounds (100); i++)
    {
      g_autoptr (RcJob) job = make_random_house ();
      g_autoptr (RcPlan) plan = make_plan (job);
      check_plan (plan);
    }
}

/* The pattern's place along the roll at a point of the floor, for pile along y. */
static RcLength
get_pattern (const RcPiece *piece, RcPoint point)
{
  RcLength along = piece->pile_degrees == 90 ? point.y - piece->cut_box.y0 : piece->cut_box.y1 - point.y;
  return rc_wrap (piece->phase + along, piece->repeat);
}

/* Point by point along every seam: level for a set match, stepped by half a repeat for each width of a half drop. */
static void
test_patterns_match (void)
{
  for (guint i = 0; i < scale_rounds (100); i++)
    {
      g_autoptr (RcJob) job = make_random_house ();
      RcGoods *carpet = g_ptr_array_index (job->goods, 0);
      carpet->repeat_length = IN (g_test_rand_int_range (4, 40));
      carpet->match = g_test_rand_bit () ? RC_MATCH_SET : RC_MATCH_HALF_DROP;
      get_area (job, "area")->pile_degrees = 90;
      g_autoptr (RcPlan) plan = make_plan (job);
      check_plan (plan);
      const RcOption *option = find_option (plan, 0, "least-cost");
      RcLength        drop = rc_goods_compute_drop (carpet, 1);
      for (guint s = 0; s < option->seams->len; s++)
        {
          const RcSeam  *seam = g_ptr_array_index (option->seams, s);
          const RcPiece *a = g_ptr_array_index (option->pieces, seam->piece_a - 1);
          const RcPiece *b = g_ptr_array_index (option->pieces, seam->piece_b - 1);
          RcPoint        middle = { (seam->from.x + seam->to.x) / 2, (seam->from.y + seam->to.y) / 2 };
          RcLength       off = rc_wrap (get_pattern (a, middle) - get_pattern (b, middle), carpet->repeat_length);
          gboolean level = MIN (off, carpet->repeat_length - off) <= 1, stepped = drop > 0 && ABS (off - drop) <= 1;
          g_assert_true (level || (seam->kind == RC_SEAM_SIDE && stepped));
          if (seam->kind == RC_SEAM_CROSS)
            g_assert_true (level);
        }
    }
}

static RcMoney
get_cost (const RcPlan *plan, const char *name)
{
  return find_option (plan, 0, name)->cost;
}

/* x and y exchanged is a mirror in the diagonal: a quarter turn and a mirror at once. */
static RcPoint
move (RcPoint point, int how)
{
  switch (how)
    {
    case 0:
      return (RcPoint){ point.y, point.x };
    case 1:
      return (RcPoint){ -point.x, point.y };
    case 2:
      return (RcPoint){ -point.y, point.x };
    default:
      return (RcPoint){ point.x + MM (12345), point.y - MM (777) };
    }
}

static void
test_metamorphic (void)
{
  for (guint i = 0; i < 20; i++)
    {
      g_autoptr (RcJob) job = make_random_job ();
      RcRoom *room = add_skyline (job, "room", 0, "area");
      g_autoptr (RcPlan) plan = make_plan_within (job, 20);
      for (int how = 0; how < 4; how++)
        {
          g_autoptr (RcJob) moved = rc_job_copy (job);
          RcRoom *moved_room = rc_measure_find_room (rc_job_get_measure (moved, NULL), room->id);
          for (guint p = 0; p < moved_room->outline->len; p++)
            *rc_ring_get (moved_room->outline, p) = move (*rc_ring_get (moved_room->outline, p), how);
          g_autoptr (RcPlan) again = make_plan_within (moved, 20);
          const RcOption *a = find_option (plan, 0, "least-cost"), *b = find_option (again, 0, "least-cost");
          g_test_message ("%d: carpet %" G_GINT64_FORMAT " %" G_GINT64_FORMAT ", side %" G_GINT64_FORMAT
                          " %" G_GINT64_FORMAT ", cross %" G_GINT64_FORMAT " %" G_GINT64_FORMAT
                          ", pieces %u %u, broken %u %u",
                          how, a->carpet_length, b->carpet_length, a->side_seam, b->side_seam, a->cross_seam,
                          b->cross_seam, a->pieces->len, b->pieces->len, a->broken->len, b->broken->len);
          g_assert_cmpint (get_cost (plan, "least-cost"), ==, get_cost (again, "least-cost"));
          g_assert_cmpint (get_cost (plan, "fewest-seams"), ==, get_cost (again, "fewest-seams"));
        }
    }
}

/* A corner in the middle of a wall and other names change nothing. */
static void
test_split_wall (void)
{
  for (guint i = 0; i < 20; i++)
    {
      g_autoptr (RcJob) job = make_random_job ();
      RcRoom *room = add_skyline (job, "room", 0, "area");
      g_autoptr (RcPlan) plan = make_plan_within (job, 20);
      RcPoint *a = rc_ring_get (room->outline, 0), *b = rc_ring_get (room->outline, room->outline->len - 1);
      RcPoint  between = { a->x, (a->y + rc_ring_get (room->outline, 1)->y) / 2 };
      g_assert_cmpint (b->y, ==, 0);
      g_array_insert_val (room->outline, 1, between);
      g_free (room->name);
      room->name = g_strdup ("Another name");
      g_autoptr (RcPlan) again = make_plan_within (job, 20);
      g_assert_cmpint (rc_area_plan_get_chosen (g_ptr_array_index (plan->areas, 0))->cost, ==,
                       rc_area_plan_get_chosen (g_ptr_array_index (again->areas, 0))->cost);
      g_assert_cmpint (plan->cost_lower_bound, ==, again->cost_lower_bound);
    }
}

/* An area that is as it was keeps its options, also where it has moved as a whole; one whose wall moved is planned
 * anew, to the same as without a memory. */
static void
test_previous (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  add_rectangle (job, "one", 0, 0, FT (15), FT (20), "first");
  RcRoom *two = add_rectangle (job, "two", FT (30), 0, FT (14), FT (16), "second");
  RcRoom *three = add_skyline (job, "three", FT (60), "third");
  g_autoptr (RcPlan) before = make_plan_within (job, 20);

  g_autoptr (RcJob) edited = rc_job_copy (job);
  RcRoom *moved = rc_measure_find_room (rc_job_get_measure (edited, NULL), two->id);
  rc_ring_get (moved->outline, 1)->x += FT (1);
  rc_ring_get (moved->outline, 2)->x += FT (1);
  RcRoom *pushed = rc_measure_find_room (rc_job_get_measure (edited, NULL), three->id);
  for (guint i = 0; i < pushed->outline->len; i++)
    {
      rc_ring_get (pushed->outline, i)->x += FT (7) + 11;
      rc_ring_get (pushed->outline, i)->y -= FT (90) + 1;
    }
  RcPlanParams params = { .steady = TRUE, .previous = before };
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPlan) after
      = rc_plan_new (edited, rc_job_get_measure (edited, NULL), plain_weights, NULL, &params, &error);
  g_assert_no_error (error);
  g_autoptr (RcPlan) anew = make_plan (edited);
  g_assert_cmpfloat (((RcAreaPlan *)g_ptr_array_index (after->areas, 0))->seconds, ==, 20);
  g_assert_cmpint (find_option (after, 0, "least-cost")->cost, ==, find_option (before, 0, "least-cost")->cost);
  g_assert_cmpfloat (((RcAreaPlan *)g_ptr_array_index (after->areas, 1))->seconds, ==, 0);
  g_assert_cmpint (find_option (after, 1, "least-cost")->cost, ==, find_option (anew, 1, "least-cost")->cost);
  g_assert_cmpfloat (((RcAreaPlan *)g_ptr_array_index (after->areas, 2))->seconds, ==, 20);
  g_assert_cmpint (find_option (after, 2, "least-cost")->cost, ==, find_option (before, 2, "least-cost")->cost);
  check_plan (after);
}

/* Columns, slivers, any angle to the axes, floors far larger than a house's. */
static void
test_real_outlines (void)
{
  g_autofree char *text = rc_outlines_load ();
  g_auto (GStrv) lines = g_strsplit (text != NULL ? text : "", "\n", -1);
  for (guint i = 0; lines[i] != NULL && *lines[i] != '\0'; i++)
    {
      g_autoptr (RcJob) job = make_random_job ();
      RcRoom *room = rc_outlines_read_room (lines[i]);
      room->placed = TRUE;
      g_ptr_array_add (rc_job_get_measure (job, NULL)->rooms, room);
      g_ptr_array_add (get_area (job, "area")->rooms, g_strdup (room->id));
      g_test_message ("%s", room->name);
      g_autoptr (RcPlan) plan = make_plan (job);
      check_plan (plan);
    }
}

static void
test_pins (void)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  add_rectangle (job, "room", 0, 0, FT (20), FT (25), "area");
  RcFloorArea *area = get_area (job, "area");
  area->pile_degrees = 270;
  RcPin *pin = rc_pin_new (RC_PIN_SEAM, "room");
  g_array_append_vals (pin->points, ((RcPoint[]){ { FT (9), 0 }, { FT (9), FT (25) } }), 2);
  g_ptr_array_add (area->pins, pin);
  g_autoptr (RcPlan) plan = make_plan (job);
  const RcOption *option = find_option (plan, 0, "least-cost");
  g_assert_cmpfloat (option->pile_degrees, ==, 270);
  for (guint i = 0; i < option->seams->len; i++)
    {
      const RcSeam *seam = g_ptr_array_index (option->seams, i);
      if (seam->kind == RC_SEAM_SIDE)
        g_assert_cmpint (seam->from.x, ==, FT (9));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/cover/skylines", test_skylines);
  g_test_add_func ("/plan/cover/angled", test_angled);
  g_test_add_func ("/plan/cover/sloping-doors", test_sloping_doors);
  g_test_add_func ("/plan/cover/blocked-door", test_blocked_door);
  g_test_add_func ("/plan/cover/door-between-areas", test_door_between_areas);
  g_test_add_func ("/plan/cover/bays-that-touch", test_bays_that_touch);
  g_test_add_func ("/plan/cover/houses", test_houses);
  g_test_add_func ("/plan/cover/patterns-match", test_patterns_match);
  g_test_add_func ("/plan/cover/metamorphic", test_metamorphic);
  g_test_add_func ("/plan/cover/split-wall", test_split_wall);
  g_test_add_func ("/plan/cover/previous", test_previous);
  g_test_add_func ("/plan/cover/real-outlines", test_real_outlines);
  g_test_add_func ("/plan/cover/pins", test_pins);
  return g_test_run ();
}
