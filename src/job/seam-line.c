#include "seam-line.h"

#include <glib/gi18n-lib.h>

#include "house.h"
#include "rowcut-error.h"
#include "strip.h"

/* FALSE where the line does not run inside the room. */
static gboolean
find_longest_run (const RcPolygon *room, gboolean upright, RcLength line, RcInterval *longest)
{
  g_autoptr (GPtrArray) region = rc_region_new ();
  RcBox box = rc_ring_compute_box (room->outer);

  g_ptr_array_add (region, rc_polygon_copy (room));
  g_autoptr (GArray) runs
      = upright ? rc_region_cross_line_x (region, line) : rc_region_cross_line_y (region, line, box.x0, box.x1);
  *longest = (RcInterval){ 0, 0 };
  for (guint i = 0; i < runs->len; i++)
    {
      const RcInterval *run = &g_array_index (runs, RcInterval, i);
      if (run->to - run->from > longest->to - longest->from)
        *longest = *run;
    }
  return longest->to > longest->from;
}

static RcPin *
new_pin (const RcPlacedRoom *placed, gboolean upright, RcLength line, RcInterval run)
{
  RcPin  *pin = rc_pin_new (RC_PIN_SEAM, placed->room->id);
  RcPoint ends[] = { upright ? (RcPoint){ line, run.from } : (RcPoint){ run.from, line },
                     upright ? (RcPoint){ line, run.to } : (RcPoint){ run.to, line } };

  for (guint i = 0; i < G_N_ELEMENTS (ends); i++)
    {
      RcPoint point = { ends[i].x - placed->at.x, ends[i].y - placed->at.y };
      g_array_append_val (pin->points, point);
    }
  return pin;
}

gboolean
rc_seam_line_pin (const RcMeasure *measure, const RcClosureLimits *limits, RcFloorArea *area, RcLength line,
                  GError **error)
{
  g_autoptr (RcHouse) house = rc_house_new_rooms (measure, limits, error);
  gboolean   upright = area->pile_degrees >= 0 && area->pile_degrees % 180 == 90;
  RcInterval run;

  if (house == NULL)
    return FALSE;
  for (guint i = 0; i < area->rooms->len; i++)
    {
      const RcPlacedRoom *placed = rc_house_find_room (house, g_ptr_array_index (area->rooms, i));
      if (placed == NULL || !find_longest_run (placed->polygon, upright, line, &run))
        continue;
      g_ptr_array_add (area->pins, new_pin (placed, upright, line, run));
      return TRUE;
    }
  g_set_error (
      error, RC_ERROR, RC_ERROR_GEOMETRY,
      _ ("no room of area “%s” is crossed by the seam line; hold the seam by a pin of the kind “seam” instead"),
      area->id);
  return FALSE;
}
