/* Real outlines, drawn by architects and surveyors: every room is taken, its area is that of its outline, and its floor
 * that of the room. Read from $RC_SHARED/floors/rooms.jsonl; skipped where that is not set.
 */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "real-outlines.h"

static const RcClosureLimits limits = { 3 * RC_TICKS_PER_INCH, RC_TICKS_PER_INCH / 4 };

static void
check_room (RcRoom *room, double area_m2)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcMeasure) measure = rc_measure_new ("M1");
  g_autoptr (RcHouse) house = NULL;
  g_autoptr (GPtrArray) floor = NULL;
  RcFloorArea *area = rc_floor_area_new ("area", "Area");
  RcArea       exact;

  g_ptr_array_add (measure->rooms, rc_room_copy (room));
  g_ptr_array_add (measure->areas, area);
  g_ptr_array_add (area->rooms, g_strdup (room->id));
  house = rc_house_new (measure, &limits, &error);
  g_assert_no_error (error);
  floor = rc_house_compute_floor (house, area, &exact, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (floor->len, ==, 1);
  g_assert_cmpint (rc_region_compute_area (floor), ==, exact);
  /* The source rounds to 0.0001 m2. */
  if (fabs (rc_area_to_m2 (exact) - area_m2) > 0.0001)
    g_error ("%s: %.4f m2, but %.4f m2 by its source", room->name, rc_area_to_m2 (exact), area_m2);
}

static void
test_outlines (void)
{
  g_autofree char *text = rc_outlines_load ();
  g_auto (GStrv) lines = NULL;
  guint n = 0;

  if (text == NULL)
    return;
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_autoptr (RcRoom) room = NULL;

      if (*lines[i] == '\0')
        continue;
      room = rc_outlines_read_room (lines[i]);
      check_room (room, g_ascii_strtod (rc_outlines_find_value (lines[i], "area_m2"), NULL));
      n++;
    }
  g_test_message ("%u outlines", n);
  g_assert_cmpuint (n, >, 0);
}

/* Every opening of the source, put where its middle lies on the outline, keeps the room sound and its floor one. */
static void
test_outlines_with_openings (void)
{
  g_autofree char *text = rc_outlines_load ();
  g_auto (GStrv) lines = NULL;
  guint n = 0;

  if (text == NULL)
    return;
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL && *lines[i] != '\0'; i++)
    {
      g_autoptr (RcRoom) room = rc_outlines_read_room (lines[i]);
      g_autoptr (RcMeasure) measure = rc_measure_new ("M1");
      g_autoptr (RcHouse) house = NULL;
      g_autoptr (GPtrArray) floor = NULL;
      g_autoptr (GError) error = NULL;
      RcFloorArea *area = rc_floor_area_new ("area", "Area");
      RcArea       exact;

      for (guint k = 0; k < room->outline->len; k++)
        {
          RcPoint    a = *rc_ring_get (room->outline, k);
          RcPoint    b = *rc_ring_get (room->outline, (k + 1) % room->outline->len);
          RcLength   length = rc_point_distance (a, b);
          RcOpening *door;

          if (length < 900 * RC_TICKS_PER_MM || k % 3 != 0)
            continue;
          door = rc_opening_new ("", RC_OPENING_DOOR);
          door->wall = k;
          door->offset = (length - 800 * RC_TICKS_PER_MM) / 2;
          door->width = 800 * RC_TICKS_PER_MM;
          door->depth = 2 * RC_TICKS_PER_MM;
          g_ptr_array_add (room->openings, door);
          n++;
        }
      g_ptr_array_add (measure->rooms, rc_room_copy (room));
      g_ptr_array_add (measure->areas, area);
      g_ptr_array_add (area->rooms, g_strdup (room->id));
      house = rc_house_new (measure, &limits, &error);
      g_assert_no_error (error);
      floor = rc_house_compute_floor (house, area, &exact, &error);
      g_assert_no_error (error);
      if (floor->len != 1)
        g_error ("%s: the floor is in %u parts", room->name, floor->len);
      rc_polygon_check (floor->pdata[0], &error);
      g_assert_no_error (error);
      g_assert_cmpint (ABS (rc_region_compute_area (floor) - exact), <=,
                       4 * rc_ring_compute_length (((RcPolygon *)floor->pdata[0])->outer));
    }
  g_test_message ("%u doors", n);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/outlines/areas", test_outlines);
  g_test_add_func ("/job/outlines/with doors", test_outlines_with_openings);
  return g_test_run ();
}
