#include "area-bound.h"

#include "strip.h"

static void
collect_ring (const RcRing *ring, gboolean along_y, GArray *levels)
{
  for (guint i = 0; i < ring->len; i++)
    {
      const RcPoint *point = rc_ring_get (ring, i);
      g_array_append_val (levels, *(along_y ? &point->y : &point->x));
    }
}

/* The x (or y) of all corners, sorted; repeats stay. */
static GArray *
find_levels (const RcRegion *floor, gboolean along_y)
{
  GArray *levels = g_array_new (FALSE, FALSE, sizeof (RcLength));
  for (guint p = 0; p < floor->len; p++)
    {
      const RcPolygon *polygon = g_ptr_array_index (floor, p);
      collect_ring (polygon->outer, along_y, levels);
      for (guint h = 0; h < polygon->holes->len; h++)
        collect_ring (g_ptr_array_index (polygon->holes, h), along_y, levels);
    }
  g_array_sort (levels, rc_length_compare);
  return levels;
}

/* Width of the floor across the pile, counted once for each stretch of floor that lies over it. */
static RcLength
compute_chord_width (const RcRegion *floor)
{
  g_autoptr (GArray) levels = find_levels (floor, FALSE);
  RcLength width = 0;
  for (guint i = 0; i + 1 < levels->len; i++)
    {
      RcLength x0 = g_array_index (levels, RcLength, i), x1 = g_array_index (levels, RcLength, i + 1);
      if (x1 - x0 <= RC_SLIVER)
        continue;
      g_autoptr (GArray) parts = rc_region_slice (floor, x0, x1);
      width += (x1 - x0) * parts->len;
    }
  return width;
}

/* What stretches of floor across the pile ask for: side seams, and the allowances of their fills (area). */
static void
add_stretches (const RcSite *site, const RcRegion *floor, RcAreaBound *bound, __int128 *allowance)
{
  g_autoptr (GArray) levels = find_levels (floor, TRUE);
  RcBox box = rc_region_compute_box (floor);
  for (guint i = 0; i + 1 < levels->len; i++)
    {
      RcLength y0 = g_array_index (levels, RcLength, i), y1 = g_array_index (levels, RcLength, i + 1);
      if (y1 - y0 <= RC_SLIVER)
        continue;
      g_autoptr (GArray) low = rc_region_cross_line_y (floor, y0 + 1, box.x0, box.x1);
      g_autoptr (GArray) high = rc_region_cross_line_y (floor, y1 - 1, box.x0, box.x1);
      for (guint k = 0; k < low->len && low->len == high->len; k++)
        {
          const RcInterval *a = &g_array_index (low, RcInterval, k), *b = &g_array_index (high, RcInterval, k);
          RcLength          chord = MIN (a->to - a->from, b->to - b->from) - RC_SLIVER;
          RcLength          rest = chord > 0 ? chord % site->strip_width : 0;
          guint             seams
              = chord > site->strip_width ? (guint)((chord + site->strip_width - 1) / site->strip_width - 1) : 0;
          bound->side_seam += (y1 - y0) * seams;
          bound->n_seams = MAX (bound->n_seams, seams);
          if (a->from == b->from && a->to == b->to && rest > RC_SLIVER)
            *allowance += (__int128)(y1 - y0)
                          * MAX (0, MIN (site->settings->trim_width, site->strip_width - rest - RC_SLIVER));
        }
    }
}

RcAreaBound
rc_area_bound_compute (const RcSite *site, const RcRegion *floor)
{
  RcAreaBound bound = { 0 };
  __int128    area = rc_region_compute_area (floor) / 2;
  area += (__int128)compute_chord_width (floor) * site->settings->trim_length;
  add_stretches (site, floor, &bound, &area);
  bound.carpet_length = (RcLength)((area + site->roll_width - 1) / site->roll_width);
  return bound;
}

RcMoney
rc_area_bound_weigh (const RcAreaBound *bound, const RcSite *site, RcLength carpet_length)
{
  return rc_weigh (carpet_length, site->weights.carpet_per_m)
         + rc_weigh (bound->side_seam, site->weights.side_seam_per_m)
         + site->settings->rule_cost[RC_RULE_EACH_SEAM] * bound->n_seams;
}
