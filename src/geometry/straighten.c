#include "polygon.h"

/* From its corner to that of the next edge. */
typedef struct
{
  RcPoint  from, straight;
  gboolean upright;
} Edge;

static Edge *
get_edge (const GArray *edges, guint i)
{
  return &g_array_index (edges, Edge, i % edges->len);
}

static RcLength
get_step (const RcRing *ring, guint edge, gboolean x)
{
  const RcPoint *a = rc_ring_get (ring, edge % ring->len), *b = rc_ring_get (ring, (edge + 1) % ring->len);
  return x ? b->x - a->x : b->y - a->y;
}

static gboolean
is_upright (const RcRing *ring, guint edge)
{
  return ABS (get_step (ring, edge, TRUE)) <= ABS (get_step (ring, edge, FALSE));
}

/* Where the outline runs back beside itself, an edge of no length parts the two walls. (transfer full) */
static GArray *
list_edges (const RcRing *ring)
{
  GArray *edges = g_array_new (FALSE, FALSE, sizeof (Edge));
  for (guint i = 0; i < ring->len; i++)
    {
      RcPoint  from = *rc_ring_get (ring, i), to = *rc_ring_get (ring, (i + 1) % ring->len);
      gboolean upright = is_upright (ring, i);
      Edge     own = { from, from, upright }, end = { to, to, !upright };
      g_array_append_val (edges, own);
      if (is_upright (ring, i + 1) == upright
          && (get_step (ring, i, !upright) > 0) != (get_step (ring, i + 1, !upright) > 0))
        g_array_append_val (edges, end);
    }
  return edges;
}

static RcLength *
get_coordinate (RcPoint *point, gboolean x)
{
  return x ? &point->x : &point->y;
}

/* The wall of `n` edges from that one on is put where it comes furthest into the polygon, which lies to the left of it:
 * one that goes up at its least x, one to the right at its greatest y. */
static void
straighten_wall (GArray *edges, guint first, guint n)
{
  gboolean upright = get_edge (edges, first)->upright;
  RcLength along = *get_coordinate (&get_edge (edges, first + n)->from, !upright)
                   - *get_coordinate (&get_edge (edges, first)->from, !upright);
  RcLength at = *get_coordinate (&get_edge (edges, first)->from, upright);
  for (guint i = 1; i <= n; i++)
    {
      RcLength own = *get_coordinate (&get_edge (edges, first + i)->from, upright);
      at = upright == (along > 0) ? MIN (at, own) : MAX (at, own);
    }
  for (guint i = 0; i <= n; i++)
    *get_coordinate (&get_edge (edges, first + i)->straight, upright) = at;
}

/* Each coordinate of a corner belongs to one wall, so that no wall undoes another's. */
static RcRing *
straighten_ring (const RcRing *ring)
{
  g_autoptr (GArray) edges = list_edges (ring);
  RcRing *straight = rc_ring_new ();
  guint   first = 1;
  while (first < edges->len && get_edge (edges, first)->upright == get_edge (edges, first - 1)->upright)
    first++;
  for (guint i = first, n = 0; i < first + edges->len; i += n)
    {
      for (n = 1; n < edges->len && get_edge (edges, i + n)->upright == get_edge (edges, i)->upright; n++)
        ;
      straighten_wall (edges, i, n);
    }
  for (guint i = 0; i < edges->len; i++)
    g_array_append_val (straight, get_edge (edges, i)->straight);
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
