/* Rooms put together into a house, the floor of an area, and goods out of a catalogue. */
#include <math.h>
#include <string.h>

#include "house.h"
#include "rowcut-error.h"

#define IN RC_TICKS_PER_INCH
#define FT RC_TICKS_PER_FOOT

static const RcClosureLimits limits = { 3 * IN, IN / 4 };

/* Walked counter-clockwise from its lower left corner, the whole turned by `turn` degrees clockwise. */
static RcRoom *
add_rectangle (RcMeasure *measure, const char *id, RcLength width, RcLength depth, double turn)
{
  RcRoom      *room = rc_room_new (id, id);
  const RcWall walls[]
      = { { 90 + turn, width, 0 }, { turn, depth, 0 }, { 270 + turn, width, 0 }, { 180 + turn, depth, 0 } };

  g_array_append_vals (room->walls, walls, G_N_ELEMENTS (walls));
  g_ptr_array_add (measure->rooms, room);
  return room;
}

static RcOpening *
add_door (RcRoom *room, const char *id, guint wall, RcLength offset, RcLength width, RcLength depth)
{
  RcOpening *opening = rc_opening_new (id, RC_OPENING_DOOR);

  opening->wall = wall;
  opening->offset = offset;
  opening->width = width;
  opening->depth = depth;
  g_ptr_array_add (room->openings, opening);
  return opening;
}

static void
lead (RcOpening *opening, const char *to_room, const char *to_opening)
{
  opening->to_room = g_strdup (to_room);
  opening->to_opening = g_strdup (to_opening);
}

static RcFloorArea *
add_area (RcMeasure *measure, const char *id, const char *first, const char *second)
{
  RcFloorArea *area = rc_floor_area_new (id, id);

  g_ptr_array_add (area->rooms, g_strdup (first));
  if (second != NULL)
    g_ptr_array_add (area->rooms, g_strdup (second));
  area->carpet = g_strdup ("twist");
  g_ptr_array_add (measure->areas, area);
  return area;
}

/* Two rooms side by side, a 4 1/2 in wall between them, a door of 30 in through it. */
static RcMeasure *
new_pair (double turn, gboolean both_sides)
{
  RcMeasure *measure = rc_measure_new ("M1");
  RcRoom    *a = add_rectangle (measure, "a", 10 * FT, 12 * FT, turn);
  RcRoom    *b = add_rectangle (measure, "b", 8 * FT, 9 * FT, turn);

  lead (add_door (a, "D1", 1, 2 * FT, 30 * IN, 9 * IN / 2), "b", both_sides ? "D7" : NULL);
  if (both_sides)
    add_door (b, "D7", 3, 3 * FT, 30 * IN, 4 * IN);
  return measure;
}

static RcHouse *
build (const RcMeasure *measure)
{
  g_autoptr (GError) error = NULL;
  RcHouse *house = rc_house_new (measure, &limits, &error);

  g_assert_no_error (error);
  return house;
}

static RcRegion *
compute_floor (const RcHouse *house, const RcFloorArea *area, RcArea *exact)
{
  g_autoptr (GError) error = NULL;
  RcRegion *floor = rc_house_compute_floor (house, area, exact, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < floor->len; i++)
    {
      rc_polygon_check (floor->pdata[i], &error);
      g_assert_no_error (error);
    }
  return floor;
}

static void
assert_refused (const RcMeasure *measure, int code, const char *const *words)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcHouse) house = rc_house_new (measure, &limits, &error);

  g_assert_null (house);
  g_assert_error (error, RC_ERROR, code);
  g_test_message ("%s", error->message);
  for (; *words != NULL; words++)
    if (strstr (error->message, *words) == NULL)
      g_error ("“%s” does not name “%s”", error->message, *words);
}

#define ASSERT_REFUSED(measure, code, ...) assert_refused (measure, code, (const char *const[]){ __VA_ARGS__, NULL })

/* --- placing --- */

/* The deeper of the two sides' thicknesses counts; the doors' middles face each other. */
static void
test_door_places_room (void)
{
  g_autoptr (RcMeasure) measure = new_pair (0, TRUE);
  g_autoptr (RcHouse) house = build (measure);
  const RcPlacedRoom    *b = rc_house_find_room (house, "b");
  const RcPlacedOpening *opening = house->openings->pdata[0];

  g_assert_cmpint (b->at.x, ==, 10 * FT + 9 * IN / 2);
  /* Wall 4 of b runs down from 9 ft: the door stands 3 ft from its start. */
  g_assert_cmpint (b->at.y, ==, 2 * FT - (9 * FT - 3 * FT - 30 * IN));
  g_assert_cmpuint (house->openings->len, ==, 1);
  g_assert_true (opening->joins);
  g_assert_true (opening->room == measure->rooms->pdata[0]);
  g_assert_true (opening->other == measure->rooms->pdata[1]);
  g_assert_cmpint (opening->outward.x, ==, 9 * IN / 2);
  g_assert_cmpint (opening->other_from.x, ==, b->at.x);
  g_assert_cmpint (opening->other_from.y, ==, opening->from.y);
  g_assert_cmpint (opening->other_to.y, ==, opening->to.y);
}

/* Each door names the other's room only, and there can be no doubt. */
static void
test_doors_that_name_rooms (void)
{
  g_autoptr (RcMeasure) measure = new_pair (0, TRUE);
  RcOpening *d1 = ((RcRoom *)measure->rooms->pdata[0])->openings->pdata[0];
  RcOpening *d7 = ((RcRoom *)measure->rooms->pdata[1])->openings->pdata[0];
  g_autoptr (RcHouse) house = NULL;

  g_clear_pointer (&d1->to_opening, g_free);
  lead (d7, "a", NULL);
  house = build (measure);
  g_assert_cmpuint (house->openings->len, ==, 1);
  g_assert_cmpint (rc_house_find_room (house, "b")->at.x, ==, 10 * FT + 9 * IN / 2);
}

static void
test_rooms_without_doors_stand_in_a_row (void)
{
  g_autoptr (RcMeasure) measure = rc_measure_new ("M1");
  g_autoptr (RcHouse) house = NULL;

  add_rectangle (measure, "a", 10 * FT, 12 * FT, 0);
  add_rectangle (measure, "b", 8 * FT, 9 * FT, 0);
  add_rectangle (measure, "c", 8 * FT, 9 * FT, 0);
  ((RcRoom *)add_rectangle (measure, "up", 8 * FT, 9 * FT, 0))->floor = 1;
  house = build (measure);
  g_assert_cmpint (rc_house_find_room (house, "a")->at.x, ==, 0);
  g_assert_cmpint (rc_house_find_room (house, "b")->at.x, ==, 13 * FT);
  g_assert_cmpint (rc_house_find_room (house, "c")->at.x, ==, 24 * FT);
  g_assert_cmpint (rc_house_find_room (house, "up")->at.x, ==, 0);
}

static void
test_placed_room_stays (void)
{
  g_autoptr (RcMeasure) measure = new_pair (0, TRUE);
  RcRoom *b = measure->rooms->pdata[1];
  g_autoptr (RcHouse) house = NULL;

  b->placed = TRUE;
  b->at = (RcPoint){ -7 * FT, 5 * FT };
  house = build (measure);
  g_assert_cmpint (rc_house_find_room (house, "b")->at.x, ==, -7 * FT);
  g_assert_cmpint (rc_house_find_room (house, "a")->at.x, ==, -7 * FT - 9 * IN / 2 - 10 * FT);
}

/* --- floors --- */

/* Two rooms and the floor inside the wall: 120 + 72 sq ft and 30 x 4 1/2 in. */
static void
test_floor_through_door (void)
{
  g_autoptr (RcMeasure) measure = new_pair (0, TRUE);
  g_autoptr (RcHouse) house = build (measure);
  g_autoptr (GPtrArray) floor = NULL;
  RcArea exact, expected = rc_area_from_rectangle (192 * FT, FT) + rc_area_from_rectangle (30 * IN, 9 * IN / 2);

  floor = compute_floor (house, add_area (measure, "both", "a", "b"), &exact);
  g_assert_cmpint (exact, ==, expected);
  g_assert_cmpuint (floor->len, ==, 1);
  g_assert_cmpint (rc_region_compute_area (floor), ==, expected);
}

/* Where the door leads out of the area the carpet runs under it, half the wall, from whichever side the area is. */
static void
test_floor_half_under_door (void)
{
  g_autoptr (RcMeasure) measure = new_pair (0, TRUE);
  g_autoptr (RcHouse) house = build (measure);
  RcArea exact, half = rc_area_from_rectangle (30 * IN, 9 * IN / 4);
  g_autoptr (GPtrArray) a = compute_floor (house, add_area (measure, "one", "a", NULL), &exact), b = NULL;

  g_assert_cmpint (exact, ==, rc_area_from_rectangle (120 * FT, FT) + half);
  g_assert_cmpint (rc_region_compute_area (a), ==, exact);
  b = compute_floor (house, add_area (measure, "two", "b", NULL), &exact);
  g_assert_cmpint (exact, ==, rc_area_from_rectangle (72 * FT, FT) + half);
  g_assert_cmpint (rc_region_compute_area (b), ==, exact);
}

/* Measured from one side only, the door joins the room that lies right behind it; else it leads out. */
static void
test_floor_measured_from_one_side (void)
{
  g_autoptr (RcMeasure) measure = new_pair (0, FALSE);
  RcRoom *a = measure->rooms->pdata[0], *b = measure->rooms->pdata[1];
  g_autoptr (RcHouse) near = NULL, far = NULL;
  g_autoptr (GPtrArray) joined = NULL, apart = NULL;
  RcFloorArea *area = add_area (measure, "both", "a", "b");
  RcArea       exact;

  a->placed = b->placed = TRUE;
  b->at = (RcPoint){ 10 * FT + 5 * IN, FT };
  near = build (measure);
  joined = compute_floor (near, area, &exact);
  g_assert_cmpuint (joined->len, ==, 1);
  /* To the other room's wall as it lies, 5 in away. */
  g_assert_cmpint (exact, ==, rc_area_from_rectangle (192 * FT, FT) + rc_area_from_rectangle (30 * IN, 5 * IN));
  b->at.x += 3 * FT;
  far = build (measure);
  apart = compute_floor (far, area, &exact);
  g_assert_cmpuint (apart->len, ==, 2);
  g_assert_cmpint (exact, ==, rc_area_from_rectangle (192 * FT, FT) + rc_area_from_rectangle (30 * IN, 9 * IN / 4));
}

/* Turned against the compass the floor is still one, and its area that of its parts. */
static void
test_floor_of_turned_house (void)
{
  for (double turn = 3.7; turn < 360; turn += 23)
    {
      g_autoptr (RcMeasure) measure = new_pair (turn, TRUE);
      g_autoptr (RcHouse) house = build (measure);
      g_autoptr (GPtrArray) floor = NULL;
      RcArea exact, straight = rc_area_from_rectangle (192 * FT, FT) + rc_area_from_rectangle (30 * IN, 9 * IN / 2);

      floor = compute_floor (house, add_area (measure, "both", "a", "b"), &exact);
      g_assert_cmpuint (floor->len, ==, 1);
      g_assert_cmpint (ABS (exact - straight), <, 200 * FT);
      g_assert_cmpint (ABS (rc_region_compute_area (floor) - exact), <, 200 * FT);
    }
}

/* Four rooms in a ring round a core: the floor has a hole. */
static void
test_floor_round_a_core (void)
{
  g_autoptr (RcMeasure) measure = rc_measure_new ("M1");
  RcFloorArea *area;
  g_autoptr (RcHouse) house = NULL;
  g_autoptr (GPtrArray) floor = NULL;
  RcArea        exact;
  const RcPoint at[]
      = { { 0, 0 }, { 12 * FT + 4 * IN, 0 }, { 12 * FT + 4 * IN, 12 * FT + 4 * IN }, { 0, 12 * FT + 4 * IN } };
  const char *ids[] = { "a", "b", "c", "d" };
  const guint walls[] = { 1, 2, 3, 0 };

  area = add_area (measure, "all", "a", "b");
  g_ptr_array_add (area->rooms, g_strdup ("c"));
  g_ptr_array_add (area->rooms, g_strdup ("d"));
  for (guint i = 0; i < 4; i++)
    {
      RcRoom *room = add_rectangle (measure, ids[i], 12 * FT, 12 * FT, 0);

      room->placed = TRUE;
      room->at = at[i];
      lead (add_door (room, "D1", walls[i], 3 * FT, 6 * FT, 4 * IN), ids[(i + 1) % 4], NULL);
    }
  house = build (measure);
  floor = compute_floor (house, area, &exact);
  g_assert_cmpuint (floor->len, ==, 1);
  g_assert_cmpuint (((RcPolygon *)floor->pdata[0])->holes->len, ==, 1);
  g_assert_cmpint (exact, ==, rc_region_compute_area (floor));
  g_assert_cmpint (exact, ==, 4 * (rc_area_from_rectangle (144 * FT, FT) + rc_area_from_rectangle (6 * FT, 4 * IN)));
}

/* Drawn without walls between them, rooms joined by an opening make one floor all the same. */
static void
test_floor_without_wall (void)
{
  g_autoptr (RcMeasure) measure = new_pair (0, TRUE);
  RcOpening *d1 = ((RcRoom *)measure->rooms->pdata[0])->openings->pdata[0];
  RcOpening *d7 = ((RcRoom *)measure->rooms->pdata[1])->openings->pdata[0];
  g_autoptr (RcHouse) house = NULL;
  g_autoptr (GPtrArray) floor = NULL;
  RcArea exact;

  d1->depth = d7->depth = 0;
  house = build (measure);
  floor = compute_floor (house, add_area (measure, "both", "a", "b"), &exact);
  g_assert_cmpuint (floor->len, ==, 1);
  g_assert_cmpint (exact, ==, rc_area_from_rectangle (192 * FT, FT));
  g_assert_cmpint (rc_region_compute_area (floor), ==, exact);
}

/* --- what is refused --- */

static void
test_house_refused (void)
{
  g_autoptr (RcMeasure) overlap = new_pair (0, TRUE), lost = new_pair (0, TRUE), unknown = new_pair (0, TRUE),
                        facing = new_pair (0, TRUE), missing = new_pair (0, TRUE), self = new_pair (0, TRUE);
  RcRoom    *room = overlap->rooms->pdata[1];
  RcOpening *opening;

  /* Both placed, so the door cannot move them apart. */
  room->placed = ((RcRoom *)overlap->rooms->pdata[0])->placed = TRUE;
  room->at = (RcPoint){ 9 * FT, 0 };
  ASSERT_REFUSED (overlap, RC_ERROR_GEOMETRY, "a and b", "lie over each other");

  room = missing->rooms->pdata[1];
  room->placed = ((RcRoom *)missing->rooms->pdata[0])->placed = TRUE;
  room->at = (RcPoint){ 10 * FT + 9 * IN / 2, 0 };
  ASSERT_REFUSED (missing, RC_ERROR_GEOMETRY, "a: door D1 misses D7 of b by 1' 6\"");

  opening = ((RcRoom *)lost->rooms->pdata[0])->openings->pdata[0];
  opening->to_room = (g_free (opening->to_room), g_strdup ("attic"));
  ASSERT_REFUSED (lost, RC_ERROR_REFERENCE, "a: door D1", "“attic”");

  opening = ((RcRoom *)unknown->rooms->pdata[0])->openings->pdata[0];
  opening->to_opening = (g_free (opening->to_opening), g_strdup ("D9"));
  ASSERT_REFUSED (unknown, RC_ERROR_REFERENCE, "a: door D1", "“D9”", "b has no opening");

  opening = ((RcRoom *)facing->rooms->pdata[1])->openings->pdata[0];
  opening->wall = 1;
  ASSERT_REFUSED (facing, RC_ERROR_GEOMETRY, "a: door D1", "does not face D7 of b");

  opening = ((RcRoom *)self->rooms->pdata[0])->openings->pdata[0];
  opening->to_room = (g_free (opening->to_room), g_strdup ("a"));
  ASSERT_REFUSED (self, RC_ERROR_REFERENCE, "a: door D1", "its own room");
}

/* A millimetre of overlap is rounding of a sketch; touching is fine. */
static void
test_rooms_may_touch (void)
{
  g_autoptr (RcMeasure) measure = rc_measure_new ("M1");
  RcRoom *a = add_rectangle (measure, "a", 10 * FT, 12 * FT, 0), *b = add_rectangle (measure, "b", 8 * FT, 12 * FT, 0);

  a->placed = b->placed = TRUE;
  for (RcLength x = 10 * FT - RC_TICKS_PER_MM; x <= 10 * FT; x += RC_TICKS_PER_MM / 2)
    {
      g_autoptr (RcHouse) house = NULL;

      b->at.x = x;
      house = build (measure);
    }
  b->at.x = 10 * FT - 2 * RC_TICKS_PER_MM;
  ASSERT_REFUSED (measure, RC_ERROR_GEOMETRY, "a and b");
}

/* --- goods --- */

static RcJob *
new_job (void)
{
  const RcCurrency usd = { "USD", 2 };
  RcJob           *job = rc_job_new ("J-1", &usd);
  RcGoods         *carpet = rc_goods_new ("twist", RC_GOODS_CARPET, "Twist");
  RcMeasure       *measure = new_pair (0, TRUE);

  carpet->roll_width = 12 * FT;
  g_ptr_array_add (job->goods, carpet);
  g_ptr_array_set_size (job->measures, 0);
  g_ptr_array_add (job->measures, measure);
  add_area (measure, "one", "a", "b");
  g_ptr_array_add (job->rolls, rc_roll_new ("R-1", "twist", 30 * FT));
  return job;
}

static void
name_missing_carpet (RcJob *job)
{
  RcFloorArea *area = rc_job_get_measure (job, NULL)->areas->pdata[0];

  area->carpet = (g_free (area->carpet), g_strdup ("velvet"));
}

/* Goods that the job names and lacks come from a catalogue. */
static void
test_adopt_goods (void)
{
  g_autoptr (RcJob) job = new_job ();
  g_autoptr (GPtrArray) catalogue = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_goods_free);

  name_missing_carpet (job);
  g_ptr_array_add (catalogue, rc_goods_new ("velvet", RC_GOODS_CARPET, "Velvet"));
  g_ptr_array_add (catalogue, rc_goods_new ("unwanted", RC_GOODS_CARPET, "Unwanted"));
  rc_job_adopt_goods (job, catalogue);
  g_assert_nonnull (rc_job_find_goods (job, "velvet"));
  g_assert_null (rc_job_find_goods (job, "unwanted"));
  g_assert_cmpuint (job->goods->len, ==, 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/house/a door places a room", test_door_places_room);
  g_test_add_func ("/job/house/doors that name rooms", test_doors_that_name_rooms);
  g_test_add_func ("/job/house/rooms without doors stand in a row", test_rooms_without_doors_stand_in_a_row);
  g_test_add_func ("/job/house/a placed room stays", test_placed_room_stays);
  g_test_add_func ("/job/house/is refused", test_house_refused);
  g_test_add_func ("/job/house/rooms may touch", test_rooms_may_touch);
  g_test_add_func ("/job/floor/through a door", test_floor_through_door);
  g_test_add_func ("/job/floor/half under a door", test_floor_half_under_door);
  g_test_add_func ("/job/floor/measured from one side", test_floor_measured_from_one_side);
  g_test_add_func ("/job/floor/of a turned house", test_floor_of_turned_house);
  g_test_add_func ("/job/floor/round a core", test_floor_round_a_core);
  g_test_add_func ("/job/floor/without a wall", test_floor_without_wall);
  g_test_add_func ("/job/goods/are adopted", test_adopt_goods);
  return g_test_run ();
}
