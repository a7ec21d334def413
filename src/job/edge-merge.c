#include "edge-merge.h"

#include <math.h>

/* How far a point that was rounded may lie off its sloping edge. */
#define ON_EDGE_MAX 2.0

typedef struct
{
  RcPoint from, to;
} Edge;

static guint
hash_point (RcPoint point)
{
  guint64 mixed = (guint64)point.x * G_GUINT64_CONSTANT (0x9E3779B97F4A7C15)
                  + (guint64)point.y * G_GUINT64_CONSTANT (0xC2B2AE3D27D4EB4F);

  return (guint)(mixed >> 32);
}

static gboolean
points_equal (RcPoint a, RcPoint b)
{
  return a.x == b.x && a.y == b.y;
}

static guint
hash_edge (gconstpointer key)
{
  const Edge *edge = key;

  return hash_point (edge->from) * 31 + hash_point (edge->to);
}

static gboolean
edges_equal (gconstpointer a, gconstpointer b)
{
  return points_equal (((const Edge *)a)->from, ((const Edge *)b)->from)
         && points_equal (((const Edge *)a)->to, ((const Edge *)b)->to);
}

static guint
hash_from (gconstpointer key)
{
  return hash_point (((const Edge *)key)->from);
}

static gboolean
froms_equal (gconstpointer a, gconstpointer b)
{
  return points_equal (((const Edge *)a)->from, ((const Edge *)b)->from);
}

/* All edges of the rings, in order, less those that run both ways. */
static GPtrArray *
new_remaining_edges (const GPtrArray *rings)
{
  g_autoptr (GPtrArray) edges = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GHashTable) all = g_hash_table_new (hash_edge, edges_equal);
  GPtrArray *rest = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < rings->len; i++)
    {
      const RcRing *ring = rings->pdata[i];

      for (guint k = 0; k < ring->len; k++)
        {
          Edge  edge = { *rc_ring_get (ring, k), *rc_ring_get (ring, (k + 1) % ring->len) };
          Edge *kept = g_memdup2 (&edge, sizeof edge);

          g_ptr_array_add (edges, kept);
          g_hash_table_add (all, kept);
        }
    }
  for (guint i = 0; i < edges->len; i++)
    {
      const Edge *edge = edges->pdata[i];
      Edge        back = { edge->to, edge->from };

      if (!g_hash_table_contains (all, &back))
        g_ptr_array_add (rest, g_memdup2 (edge, sizeof *edge));
    }
  return rest;
}

/* The ring that begins with `first`; takes its edges out of `by_from`. NULL when the walk does not come back. */
static RcRing *
walk_ring (const Edge *first, GHashTable *by_from)
{
  g_autoptr (GArray) ring = rc_ring_new ();
  const Edge *edge = first;

  do
    {
      Edge next = { edge->to, edge->to };

      g_array_append_val (ring, edge->from);
      g_hash_table_remove (by_from, edge);
      if (points_equal (next.from, first->from))
        return g_steal_pointer (&ring);
      edge = g_hash_table_lookup (by_from, &next);
    }
  while (edge != NULL);
  return NULL;
}

static void
add_outer (RcRegion *region, const RcRing *ring)
{
  RcPolygon *polygon = rc_polygon_new ();

  g_array_append_vals (polygon->outer, ring->data, ring->len);
  g_ptr_array_add (region, polygon);
}

/* Each hole into the outer ring that holds it. FALSE when one is in none. */
static gboolean
add_holes (RcRegion *region, const GPtrArray *rings)
{
  for (guint i = 0; i < rings->len; i++)
    {
      RcRing  *ring = rings->pdata[i];
      gboolean found = FALSE;

      if (rc_ring_compute_area (ring) >= 0)
        continue;
      for (guint k = 0; k < region->len && !found; k++)
        {
          RcPolygon *polygon = region->pdata[k];
          RcPolygon  outer = { polygon->outer, NULL };
          g_autoptr (GPtrArray) no_holes = g_ptr_array_new ();

          outer.holes = no_holes;
          found = rc_polygon_locate (&outer, *rc_ring_get (ring, 0)) >= 0;
          if (found)
            g_ptr_array_add (polygon->holes, g_array_ref (ring));
        }
      if (!found)
        return FALSE;
    }
  return TRUE;
}

RcRegion *
rc_edge_merge (const GPtrArray *rings)
{
  g_autoptr (GPtrArray) edges = new_remaining_edges (rings);
  g_autoptr (GHashTable) by_from = g_hash_table_new (hash_from, froms_equal);
  g_autoptr (GPtrArray) walked = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  g_autoptr (GPtrArray) region = rc_region_new ();

  for (guint i = 0; i < edges->len; i++)
    if (!g_hash_table_add (by_from, edges->pdata[i]))
      return NULL;
  for (guint i = 0; i < edges->len; i++)
    {
      const Edge *edge = edges->pdata[i];
      RcRing     *ring;

      if (!g_hash_table_contains (by_from, edge))
        continue;
      ring = walk_ring (edge, by_from);
      if (ring == NULL)
        return NULL;
      g_ptr_array_add (walked, ring);
      if (rc_ring_compute_area (ring) > 0)
        add_outer (region, ring);
    }
  if (!add_holes (region, walked))
    return NULL;
  for (guint i = 0; i < region->len; i++)
    rc_polygon_normalize (region->pdata[i]);
  return g_steal_pointer (&region);
}

/* Distance of the point from the segment, INFINITY unless it lies beside it. */
static double
distance_beside (RcPoint a, RcPoint b, RcPoint point)
{
  double dx = (double)(b.x - a.x), dy = (double)(b.y - a.y), px = (double)(point.x - a.x), py = (double)(point.y - a.y);
  double squared = dx * dx + dy * dy, along = px * dx + py * dy;

  if (along <= 0 || along >= squared)
    return INFINITY;
  return fabs (px * dy - py * dx) / sqrt (squared);
}

void
rc_ring_insert_corner (RcRing *ring, RcPoint *point)
{
  double best = ON_EDGE_MAX;
  guint  after = G_MAXUINT;

  for (guint i = 0; i < ring->len; i++)
    {
      RcPoint a = *rc_ring_get (ring, i), b = *rc_ring_get (ring, (i + 1) % ring->len);
      double  distance = distance_beside (a, b, *point);

      if (ABS (a.x - point->x) <= ON_EDGE_MAX && ABS (a.y - point->y) <= ON_EDGE_MAX)
        {
          *point = a;
          return;
        }
      if (distance <= best)
        {
          best = distance;
          after = i;
        }
    }
  if (after != G_MAXUINT)
    g_array_insert_val (ring, after + 1, *point);
}
