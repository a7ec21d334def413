#include "pile.h"

#include <math.h>

/* A wall's direction in degrees from 0 to under 90, square ones alike. */
static double
get_edge_degrees (const RcRing *ring, guint i)
{
  const RcPoint *a = rc_ring_get (ring, i), *b = rc_ring_get (ring, (i + 1) % ring->len);
  double         degrees = fmod (atan2 ((double)(b->y - a->y), (double)(b->x - a->x)) * 180 / G_PI + 360, 90);
  return degrees > 89.999 ? 0 : degrees;
}

double
rc_pile_find_main_degrees (const RcRegion *floor)
{
  const RcPolygon *largest = NULL;
  for (guint p = 0; p < floor->len; p++)
    if (largest == NULL || rc_polygon_compute_area (g_ptr_array_index (floor, p)) > rc_polygon_compute_area (largest))
      largest = g_ptr_array_index (floor, p);
  double best = 0, best_length = 0;
  for (guint i = 0; largest != NULL && i < largest->outer->len; i++)
    {
      double degrees = get_edge_degrees (largest->outer, i), length = 0;
      for (guint k = 0; k < largest->outer->len; k++)
        if (fabs (get_edge_degrees (largest->outer, k) - degrees) < 0.01)
          length += (double)rc_point_distance (*rc_ring_get (largest->outer, k),
                                               *rc_ring_get (largest->outer, (k + 1) % largest->outer->len));
      if (length > best_length * 1.000001)
        {
          best = degrees;
          best_length = length;
        }
    }
  return best < 0.001 ? 0 : best;
}

double
rc_pile_face_entry (const RcSite *site, const RcRegion *floor, double degrees)
{
  RcBox box = rc_region_compute_box (floor);
  for (guint i = 0; i < site->doors->len; i++)
    {
      const RcSiteOpening *door = &g_array_index (site->doors, RcSiteOpening, i);
      gboolean             inside
          = door->other != NULL && rc_site_has_room (site, door->room) && rc_site_has_room (site, door->other);
      if (inside)
        continue;
      RcPoint at = rc_point_rotate (door->from, -site->turn_degrees);
      double  dx = (double)at.x - (double)(box.x0 + box.x1) / 2, dy = (double)at.y - (double)(box.y0 + box.y1) / 2;
      double  along = dx * cos (degrees * G_PI / 180) + dy * sin (degrees * G_PI / 180);
      if (along < -RC_TICKS_PER_MM)
        return fmod (degrees + 180, 360);
      if (along > RC_TICKS_PER_MM)
        return degrees;
    }
  return degrees;
}

/* The direction of the first pinned seam, which the pile runs along. */
static gboolean
find_pinned_axis (const RcFloorArea *area, double *degrees)
{
  for (guint i = 0; i < area->pins->len; i++)
    {
      const RcPin *pin = g_ptr_array_index (area->pins, i);
      if (pin->kind != RC_PIN_SEAM)
        continue;
      const RcPoint *a = rc_ring_get (pin->points, 0), *b = rc_ring_get (pin->points, 1);
      *degrees = fmod (atan2 ((double)(b->y - a->y), (double)(b->x - a->x)) * 180 / G_PI + 360, 180);
      return TRUE;
    }
  return FALSE;
}

guint
rc_pile_list_axes (const RcFloorArea *area, const RcRegion *floor, double *degrees, gboolean *is_pinned)
{
  double main_degrees = rc_pile_find_main_degrees (floor), pinned = area->pile_degrees;
  *is_pinned = pinned >= 0;
  if (*is_pinned)
    {
      for (int quarter = 0; quarter < 5; quarter++)
        if (fabs (main_degrees + 90 * quarter - pinned) < 1)
          pinned = fmod (main_degrees + 90 * quarter, 360);
      degrees[0] = pinned;
      return 1;
    }
  if (find_pinned_axis (area, &pinned))
    {
      for (int quarter = 0; quarter < 3; quarter++)
        if (fabs (main_degrees + 90 * quarter - pinned) < 0.01)
          pinned = main_degrees + 90 * quarter;
      degrees[0] = fmod (pinned, 180);
      return 1;
    }
  for (guint i = 0; i < RC_PILE_MOST_AXES; i++)
    degrees[i] = main_degrees + 90 * i;
  return RC_PILE_MOST_AXES;
}
