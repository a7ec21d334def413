#include "strip-edge.h"

guint
rc_region_count_points (const RcRegion *region)
{
  guint n = 0;

  for (guint i = 0; i < region->len; i++)
    {
      const RcPolygon *polygon = g_ptr_array_index (region, i);

      n += polygon->outer->len;
      for (guint h = 0; h < polygon->holes->len; h++)
        n += ((const RcRing *)g_ptr_array_index (polygon->holes, h))->len;
    }

  return n;
}

static gboolean
runs_against (const RcRing *ring, gboolean is_hole)
{
  RcWide         sum = 0;
  const RcPoint *points = (const RcPoint *)ring->data;

  for (guint i = 0, j = ring->len - 1; i < ring->len; j = i++)
    sum += (RcWide)(points[j].x - points[0].x) * (points[i].y - points[0].y)
           - (RcWide)(points[i].x - points[0].x) * (points[j].y - points[0].y);

  return is_hole ? sum > 0 : sum < 0;
}

static guint
collect_from_ring (const RcRing *ring, gboolean is_hole, gboolean transposed, RcLength x0, RcLength x1,
                   RcStripEdge *edges)
{
  const RcPoint *points = (const RcPoint *)ring->data;
  guint          n = 0;

  for (guint i = 0, j = ring->len - 1; i < ring->len; j = i++)
    {
      gint64 xa = transposed ? points[j].y : points[j].x;
      gint64 ya = transposed ? points[j].x : points[j].y;
      gint64 xb = transposed ? points[i].y : points[i].x;
      gint64 yb = transposed ? points[i].x : points[i].y;

      /* the region lies to the left of an edge: above one that runs right */
      if (xa < xb && xa <= x1 && xb >= x0)
        edges[n++] = (RcStripEdge){ xa, ya, xb, yb, 1 };
      else if (xa > xb && xb <= x1 && xa >= x0)
        edges[n++] = (RcStripEdge){ xb, yb, xa, ya, -1 };
    }

  /* changing x and y over is a mirror: left becomes right */
  if (n > 0 && runs_against (ring, is_hole) != transposed)
    {
      for (guint i = 0; i < n; i++)
        edges[i].depth = -edges[i].depth;
    }

  return n;
}

guint
rc_strip_collect_edges (const RcRegion *region, gboolean transposed, RcLength x0, RcLength x1, RcStripEdge *edges)
{
  guint n = 0;

  for (guint i = 0; i < region->len; i++)
    {
      const RcPolygon *polygon = g_ptr_array_index (region, i);

      n += collect_from_ring (polygon->outer, FALSE, transposed, x0, x1, edges + n);
      for (guint h = 0; h < polygon->holes->len; h++)
        n += collect_from_ring (g_ptr_array_index (polygon->holes, h), TRUE, transposed, x0, x1, edges + n);
    }

  return n;
}

/* y at twice_x / 2, times twice the edge's width */
static inline RcWide
scale_y (const RcStripEdge *edge, gint64 twice_x)
{
  return (RcWide)(2 * edge->yl) * (edge->xr - edge->xl) + (RcWide)(edge->yr - edge->yl) * (twice_x - 2 * edge->xl);
}

static inline int
sign (RcWide value)
{
  return (value > 0) - (value < 0);
}

int
rc_strip_edge_compare (const RcStripEdge *a, const RcStripEdge *b, gint64 twice_x)
{
  if (MAX (a->yl, a->yr) < MIN (b->yl, b->yr))
    return -1;
  if (MIN (a->yl, a->yr) > MAX (b->yl, b->yr))
    return 1;
  if (a == b || (a->yl == a->yr && b->yl == b->yr))
    return 0;

  return sign (scale_y (a, twice_x) * (b->xr - b->xl) - scale_y (b, twice_x) * (a->xr - a->xl));
}

RcLength
rc_strip_edge_get_floor (const RcStripEdge *edge, gint64 x)
{
  RcWide rise = (RcWide)(edge->yr - edge->yl) * (x - edge->xl);

  return edge->yl + (RcLength)rc_wide_divide_floor (rise, edge->xr - edge->xl);
}

RcLength
rc_strip_edge_get_ceil (const RcStripEdge *edge, gint64 x)
{
  RcWide rise = (RcWide)(edge->yr - edge->yl) * (x - edge->xl);

  return edge->yl + (RcLength)rc_wide_divide_ceil (rise, edge->xr - edge->xl);
}

guint
rc_strip_find_spans (RcStripEdge *const *edges, guint n_edges, gint64 twice_x, RcStripSpan *spans)
{
  const RcStripEdge *lower = NULL;
  int                depth = 0;
  guint              n = 0;

  /* the depth counts how many polygons lie over one another: one, save where corners rounded to ticks overlap */
  for (guint i = 0; i < n_edges; i++)
    {
      int below = depth;

      depth += edges[i]->depth;
      if (below <= 0 && depth > 0)
        lower = edges[i];
      else if (below > 0 && depth <= 0)
        {
          g_assert (lower != NULL); /* since the depth rose above nothing */
          if (rc_strip_edge_compare (lower, edges[i], twice_x) < 0)
            spans[n++] = (RcStripSpan){ lower, edges[i], 0 };
        }
    }

  return n;
}
