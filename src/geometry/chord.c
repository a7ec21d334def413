#include "chord.h"

enum
{
  LEAST_SLAB = 4, /* lower ones have no inside to look at */
  LEAST_NECK = 4  /* chords just inside their slabs are that much wider than where these meet */
};

static RcChord *
get_chord (const GArray *chords, guint i)
{
  return &g_array_index (chords, RcChord, i);
}

static void
add_corners (GArray *heights, const RcRing *ring)
{
  for (guint i = 0; i < ring->len; i++)
    g_array_append_val (heights, rc_ring_get (ring, i)->y);
}

static void
add_ends (GArray *heights, const RcRegion *region, RcLength x)
{
  g_autoptr (GArray) inside = rc_region_cross_line_x (region, x);
  for (guint i = 0; i < inside->len; i++)
    {
      const RcInterval *interval = &g_array_index (inside, RcInterval, i);
      g_array_append_val (heights, interval->from);
      g_array_append_val (heights, interval->to);
    }
}

/* Of corners, and of where sloping walls leave the strip. (transfer full) GArray of RcLength, rising. */
static GArray *
list_heights (const RcRegion *region, RcLength x0, RcLength x1)
{
  GArray *heights = g_array_new (FALSE, FALSE, sizeof (RcLength));
  for (guint p = 0; p < region->len; p++)
    {
      const RcPolygon *polygon = g_ptr_array_index (region, p);
      add_corners (heights, polygon->outer);
      for (guint h = 0; h < polygon->holes->len; h++)
        add_corners (heights, g_ptr_array_index (polygon->holes, h));
    }
  add_ends (heights, region, x0);
  add_ends (heights, region, x1);
  g_array_sort (heights, rc_length_compare);
  return heights;
}

static gboolean
overlap (const RcInterval *a, const RcInterval *b, RcLength least)
{
  return MIN (a->to, b->to) - MAX (a->from, b->from) >= least;
}

/* Chords that are at both ends of the slab; `last`: its last corner above y0, or y0, from which on walls are straight.
 */
static void
add_slab (GArray *chords, const RcRegion *region, RcLength y0, RcLength last, RcLength y1, RcLength x0, RcLength x1)
{
  g_autoptr (GArray) low = rc_region_cross_line_y (region, last + 1, x0, x1);
  g_autoptr (GArray) high = rc_region_cross_line_y (region, y1 - 1, x0, x1);
  for (guint i = 0, k = 0; i < low->len && k < high->len;)
    {
      RcChord chord = { y0, y1, g_array_index (low, RcInterval, i), g_array_index (high, RcInterval, k), 0 };
      if (overlap (&chord.low, &chord.high, 1))
        {
          chord.part = chords->len;
          g_array_append_val (chords, chord);
        }
      if (chord.low.to < chord.high.to)
        i++;
      else
        k++;
    }
}

/* Chords of two slabs that meet are of one part. */
static void
join_parts (GArray *chords)
{
  for (guint i = 0; i < chords->len; i++)
    for (guint k = i + 1; k < chords->len && get_chord (chords, k)->y0 <= get_chord (chords, i)->y1; k++)
      {
        const RcChord *below = get_chord (chords, i), *above = get_chord (chords, k);
        guint          from = above->part, to = below->part;
        if (above->y0 != below->y1 || from == to || !overlap (&below->high, &above->low, LEAST_NECK))
          continue;
        for (guint c = 0; c < chords->len; c++)
          if (get_chord (chords, c)->part == from)
            get_chord (chords, c)->part = to;
      }
}

GArray *
rc_chords_new (const RcRegion *region, RcLength x0, RcLength x1)
{
  GArray *chords = g_array_new (FALSE, FALSE, sizeof (RcChord));
  g_autoptr (GArray) heights = list_heights (region, x0, x1);
  RcLength at = heights->len > 0 ? g_array_index (heights, RcLength, 0) : 0, last = at;
  for (guint i = 1; i < heights->len; i++)
    {
      RcLength next = g_array_index (heights, RcLength, i);
      if (next - last >= LEAST_SLAB)
        {
          add_slab (chords, region, at, last, next, x0, x1);
          at = next;
        }
      last = next;
    }
  join_parts (chords);
  return chords;
}

RcBox
rc_chords_compute_box (const GArray *chords, guint part)
{
  RcBox box = { G_MAXINT64, G_MAXINT64, G_MININT64, G_MININT64 };
  for (guint i = 0; i < chords->len; i++)
    {
      const RcChord *chord = get_chord (chords, i);
      if (chord->part != part)
        continue;
      box.x0 = MIN (box.x0, MIN (chord->low.from, chord->high.from));
      box.x1 = MAX (box.x1, MAX (chord->low.to, chord->high.to));
      box.y0 = MIN (box.y0, chord->y0);
      box.y1 = MAX (box.y1, chord->y1);
    }
  return box;
}
