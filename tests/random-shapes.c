#include "random-shapes.h"

#include <math.h>

static RcRing *
make_star (GRand *random, RcPoint middle, double radius)
{
  RcRing *ring = rc_ring_new ();
  int     n = g_rand_int_range (random, 3, 24);
  double  angle = g_rand_double (random);

  for (int i = 0; i < n; i++)
    {
      double  reach = radius * g_rand_double_range (random, 0.2, 1.0);
      RcPoint point = { middle.x + llround (reach * cos (angle)), middle.y + llround (reach * sin (angle)) };

      g_array_append_val (ring, point);
      angle += 2 * G_PI / n;
    }

  return ring;
}

/* Corners anywhere; where edges meet, the way between them is walked the other way round. */
static RcRing *
make_walk (GRand *random, int n, RcLength size)
{
  for (;;)
    {
      g_autoptr (RcPolygon) polygon = rc_polygon_new ();
      RcPolygonFault fault;
      int            tries = 0;

      for (int i = 0; i < n; i++)
        {
          RcPoint point
              = { g_rand_int_range (random, 0, (gint32)size + 1), g_rand_int_range (random, 0, (gint32)size + 1) };

          g_array_append_val (polygon->outer, point);
        }
      rc_ring_simplify (polygon->outer);
      while (rc_polygon_find_fault (polygon, &fault) && fault.kind == RC_POLYGON_FAULT_EDGES_MEET && tries++ < 300)
        {
          for (guint i = fault.edge + 1, j = fault.other_edge; i < j; i++, j--)
            {
              RcPoint point = *rc_ring_get (polygon->outer, i);

              *rc_ring_get (polygon->outer, i) = *rc_ring_get (polygon->outer, j);
              *rc_ring_get (polygon->outer, j) = point;
            }
          rc_ring_simplify (polygon->outer);
        }
      if (!rc_polygon_find_fault (polygon, NULL))
        return rc_ring_copy (polygon->outer);
    }
}

/* Steps of random width and height along the top and the bottom of a bar. */
static RcRing *
make_square (GRand *random, RcPoint corner, RcLength size)
{
  RcRing  *ring = rc_ring_new ();
  int      n = g_rand_int_range (random, 1, 8);
  RcLength x = corner.x;

  for (int side = 0; side < 2; side++)
    {
      for (int i = 0; i < n; i++)
        {
          RcLength y = corner.y + (side == 0 ? 0 : size) + g_rand_int_range (random, 0, (gint32)size / 3 + 1);
          RcLength next = x + (side == 0 ? size : -size);
          RcPoint  points[] = { { x, y }, { next, y } };

          g_array_append_vals (ring, points, 2);
          x = next;
        }
    }

  return ring;
}

static void
add_hole (RcPolygon *polygon, RcRing *hole, gboolean may_touch)
{
  gboolean is_good;

  g_ptr_array_add (polygon->holes, hole);
  rc_polygon_normalize (polygon);
  if (may_touch)
    {
      GEOSContextHandle_t geos = GEOS_init_r ();
      g_autoptr (GPtrArray) region = rc_region_new ();
      GEOSGeometry *geometry;

      g_ptr_array_add (region, rc_polygon_copy (polygon));
      geometry = region_to_geos (geos, region);
      is_good = geometry != NULL && hole->len >= 3 && GEOSisValid_r (geos, geometry) == 1;
      GEOSGeom_destroy_r (geos, geometry);
      GEOS_finish_r (geos);
    }
  else
    {
      is_good = !rc_polygon_find_fault (polygon, NULL);
    }
  if (!is_good)
    g_ptr_array_remove_index (polygon->holes, polygon->holes->len - 1);
}

static RcRing *
make_outline (GRand *random, Shape shape, RcLength *size)
{
  static const RcLength sizes[] = { 40, 2000, 1000000, 100000000 };

  *size = sizes[g_rand_int_range (random, 0, G_N_ELEMENTS (sizes))];
  switch (shape)
    {
    case SHAPE_STAR:
      return make_star (random, (RcPoint){ 0, 0 }, (double)*size);
    case SHAPE_WALK:
      return make_walk (random, g_rand_int_range (random, 3, 20), *size);
    case SHAPE_SQUARE:
      return make_square (random, (RcPoint){ 0, 0 }, *size);
    default:
      *size = 8;
      return make_walk (random, g_rand_int_range (random, 3, 14), *size);
    }
}

static RcRing *
make_hole (GRand *random, Shape shape, const RcPolygon *polygon, RcLength size)
{
  RcBox   box = rc_ring_compute_box (polygon->outer);
  RcPoint place = { box.x0 + (RcLength)(g_rand_double (random) * (double)(box.x1 - box.x0)),
                    box.y0 + (RcLength)(g_rand_double (random) * (double)(box.y1 - box.y0)) };

  switch (shape)
    {
    case SHAPE_SQUARE:
      return make_square (random, place, size / 20 + 1);
    case SHAPE_CROWDED:
      return make_walk (random, g_rand_int_range (random, 3, 6), size);
    default:
      return make_star (random, place, (double)size / 5);
    }
}

static RcRegion *
make_cells (GRand *random)
{
  RcRegion *region = rc_region_new ();
  int       n = g_rand_int_range (random, 2, 7);
  double    chance = g_rand_double_range (random, 0.3, 0.9);

  for (int x = 0; x < n; x++)
    {
      for (int y = 0; y < n; y++)
        {
          RcBox box = { x * 10, y * 10, x * 10 + 10, y * 10 + 10 };

          if (g_rand_double (random) < chance)
            g_ptr_array_add (region, rc_polygon_new_from_box (box));
        }
    }

  return region;
}

RcRegion *
make_random_region (GRand *random, Shape shape)
{
  for (;;)
    {
      g_autoptr (RcPolygon) polygon = NULL;
      RcRegion *region;
      RcLength  size;

      if (shape == SHAPE_CELLS)
        return make_cells (random);

      polygon = rc_polygon_new_take (make_outline (random, shape, &size));
      rc_polygon_normalize (polygon);
      if (rc_polygon_find_fault (polygon, NULL))
        continue;

      for (int i = g_rand_int_range (random, 0, 5); i > 0; i--)
        add_hole (polygon, make_hole (random, shape, polygon, size), shape == SHAPE_CROWDED);

      region = rc_region_new ();
      g_ptr_array_add (region, g_steal_pointer (&polygon));
      return region;
    }
}

static GEOSGeometry *
ring_to_geos (GEOSContextHandle_t geos, const RcRing *ring)
{
  GEOSCoordSequence *points = GEOSCoordSeq_create_r (geos, ring->len + 1, 2);

  for (guint i = 0; i <= ring->len; i++)
    GEOSCoordSeq_setXY_r (geos, points, i, (double)rc_ring_get (ring, i % ring->len)->x,
                          (double)rc_ring_get (ring, i % ring->len)->y);

  return GEOSGeom_createLinearRing_r (geos, points);
}

GEOSGeometry *
region_to_geos (GEOSContextHandle_t geos, const RcRegion *region)
{
  g_autoptr (GPtrArray) polygons = g_ptr_array_new ();
  GEOSGeometry *all, *united;

  for (guint i = 0; i < region->len; i++)
    {
      const RcPolygon *polygon = g_ptr_array_index (region, i);
      g_autoptr (GPtrArray) holes = g_ptr_array_new ();

      for (guint h = 0; h < polygon->holes->len; h++)
        g_ptr_array_add (holes, ring_to_geos (geos, g_ptr_array_index (polygon->holes, h)));
      g_ptr_array_add (polygons, GEOSGeom_createPolygon_r (geos, ring_to_geos (geos, polygon->outer),
                                                           (GEOSGeometry **)holes->pdata, holes->len));
    }

  if (polygons->len == 1)
    return g_ptr_array_index (polygons, 0);

  all = GEOSGeom_createCollection_r (geos, GEOS_GEOMETRYCOLLECTION, (GEOSGeometry **)polygons->pdata, polygons->len);
  united = GEOSUnaryUnion_r (geos, all);
  GEOSGeom_destroy_r (geos, all);
  return united;
}

GEOSGeometry *
box_to_geos (GEOSContextHandle_t geos, double x0, double y0, double x1, double y1)
{
  GEOSCoordSequence *points = GEOSCoordSeq_create_r (geos, 5, 2);
  const double       corners[5][2] = { { x0, y0 }, { x1, y0 }, { x1, y1 }, { x0, y1 }, { x0, y0 } };

  for (guint i = 0; i < 5; i++)
    GEOSCoordSeq_setXY_r (geos, points, i, corners[i][0], corners[i][1]);

  return GEOSGeom_createPolygon_r (geos, GEOSGeom_createLinearRing_r (geos, points), NULL, 0);
}
