#include "polygon.h"

static gboolean
is_upright (const RcRing *ring, guint edge)
{
  const RcPoint *a = rc_ring_get (ring, edge % ring->len), *b = rc_ring_get (ring, (edge + 1) % ring->len);
  return ABS (b->x - a->x) <= ABS (b->y - a->y);
}

static RcLength *
get_coordinate (const RcRing *ring, guint corner, gboolean x)
{
  RcPoint *point = rc_ring_get (ring, corner % ring->len);
  return x ? &point->x : &point->y;
}

/* The wall of `n` edges from corner `first` on is put where it comes furthest into the polygon, which lies to the left
 * of it: one that goes up at its least x, one to the right at its greatest y. */
static void
straighten_wall (const RcRing *ring, guint first, guint n, RcRing *straight)
{
  gboolean upright = is_upright (ring, first);
  RcLength along = *get_coordinate (ring, first + n, !upright) - *get_coordinate (ring, first, !upright);
  RcLength at = *get_coordinate (ring, first, upright);
  for (guint i = 1; i <= n; i++)
    {
      RcLength own = *get_coordinate (ring, first + i, upright);
      at = upright == (along > 0) ? MIN (at, own) : MAX (at, own);
    }
  for (guint i = 0; i <= n; i++)
    *get_coordinate (straight, first + i, upright) = at;
}

/* Each coordinate of a corner belongs to one wall, so that no wall undoes another's. */
static RcRing *
straighten_ring (const RcRing *ring)
{
  RcRing *straight = rc_ring_copy (ring);
  guint   first = 1;
  while (first < ring->len && is_upright (ring, first) == is_upright (ring, first - 1))
    first++;
  for (guint i = first, n = 0; i < first + ring->len; i += n)
    {
      for (n = 1; n < ring->len && is_upright (ring, i + n) == is_upright (ring, i); n++)
        ;
      straighten_wall (ring, i, n, straight);
    }
  rc_ring_simplify (straight);
  return straight;
}

RcRegion *
rc_region_straighten (const RcRegion *region)
{
  RcRegion *straight = rc_region_new ();
  for (guint i = 0; i < region->len; i++)
    {
      const RcPolygon *polygon = g_ptr_array_index (region, i);
      RcPolygon       *own = rc_polygon_new_take (straighten_ring (polygon->outer));
      for (guint h = 0; h < polygon->holes->len; h++)
        g_ptr_array_add (own->holes, straighten_ring (g_ptr_array_index (polygon->holes, h)));
      g_ptr_array_add (straight, own);
    }
  return straight;
}
