#include "polygon.h"

#include "rowcut-error.h"
#include "wide.h"

#include <geos_c.h>
#include <glib/gi18n-lib.h>
#include <math.h>

typedef enum
{
  OVERLAY_UNION,
  OVERLAY_INTERSECTION,
  OVERLAY_DIFFERENCE,
} Overlay;

/* One call's own GEOS context, so that threads do not meet. */
typedef struct
{
  GEOSContextHandle_t geos;
  RcPoint             origin; /* taken off going in and added coming out: small numbers keep more digits */
  char               *message;
} Session;

static void
keep_message (const char *message, void *data)
{
  Session *session = data;

  g_free (session->message);
  session->message = g_utf8_make_valid (message, -1);
}

static void
session_open (Session *session, RcPoint origin)
{
  *session = (Session){ .geos = GEOS_init_r (), .origin = origin };
  GEOSContext_setErrorMessageHandler_r (session->geos, keep_message, session);
}

static void
session_close (Session *session)
{
  GEOS_finish_r (session->geos);
  g_free (session->message);
}

/* Into GEOS */

static GEOSGeometry *
ring_to_geos (Session *session, const RcRing *ring)
{
  GEOSCoordSequence *points;
  guint              n = ring->len;

  if (n < 3)
    return GEOSGeom_createEmptyLineString_r (session->geos);

  points = GEOSCoordSeq_create_r (session->geos, n + 1, 2);
  if (points == NULL)
    return NULL;

  for (guint i = 0; i <= n; i++)
    {
      const RcPoint *point = rc_ring_get (ring, i % n);

      GEOSCoordSeq_setXY_r (session->geos, points, i, (double)(point->x - session->origin.x),
                            (double)(point->y - session->origin.y));
    }

  return GEOSGeom_createLinearRing_r (session->geos, points);
}

static GEOSGeometry *
polygon_to_geos (Session *session, const RcPolygon *polygon)
{
  g_autoptr (GPtrArray) holes = g_ptr_array_new ();
  GEOSGeometry *outer = ring_to_geos (session, polygon->outer);

  for (guint i = 0; i < polygon->holes->len; i++)
    {
      const RcRing *hole = g_ptr_array_index (polygon->holes, i);
      GEOSGeometry *ring = hole->len >= 3 ? ring_to_geos (session, hole) : NULL;

      if (ring != NULL)
        g_ptr_array_add (holes, ring);
    }

  return outer == NULL ? NULL
                       : GEOSGeom_createPolygon_r (session->geos, outer, (GEOSGeometry **)holes->pdata, holes->len);
}

/* Polygons as one GEOS collection of the type asked for. */
static GEOSGeometry *
region_to_geos (Session *session, const RcRegion *region, int type)
{
  g_autoptr (GPtrArray) polygons = g_ptr_array_new ();

  for (guint i = 0; i < region->len; i++)
    {
      const RcPolygon *polygon = g_ptr_array_index (region, i);
      GEOSGeometry    *part = polygon->outer->len >= 3 ? polygon_to_geos (session, polygon) : NULL;

      if (part != NULL)
        g_ptr_array_add (polygons, part);
    }

  return GEOSGeom_createCollection_r (session->geos, type, (GEOSGeometry **)polygons->pdata, polygons->len);
}

/* A geometry that overlay accepts: polygons that share an edge are made one first. */
static GEOSGeometry *
region_to_operand (Session *session, const RcRegion *region)
{
  GEOSGeometry *collection;
  GEOSGeometry *merged;

  if (region->len == 1 && ((RcPolygon *)g_ptr_array_index (region, 0))->outer->len >= 3)
    return polygon_to_geos (session, g_ptr_array_index (region, 0));

  collection = region_to_geos (session, region, GEOS_GEOMETRYCOLLECTION);
  if (collection == NULL)
    return NULL;
  merged = GEOSUnaryUnion_r (session->geos, collection);
  GEOSGeom_destroy_r (session->geos, collection);
  return merged;
}

/* Out of GEOS */

/* Takes out points where the boundary runs back over itself, as rounding may leave them. */
static void
remove_spikes (RcRing *ring)
{
  gboolean again = TRUE;

  while (again)
    {
      again = FALSE;
      rc_ring_simplify (ring);
      for (guint i = 0; i < ring->len && ring->len >= 3 && !again; i++)
        {
          RcPoint a = *rc_ring_get (ring, i);
          RcPoint b = *rc_ring_get (ring, (i + 1) % ring->len);
          RcPoint c = *rc_ring_get (ring, (i + 2) % ring->len);

          again = (RcWide)(b.x - a.x) * (c.y - b.y) == (RcWide)(c.x - b.x) * (b.y - a.y);
          if (again)
            g_array_remove_index (ring, (i + 1) % ring->len);
        }
    }
}

/* NULL for a ring that has no area after rounding. */
static RcRing *
ring_from_geos (Session *session, const GEOSGeometry *geometry, gboolean *was_rounded)
{
  const GEOSCoordSequence *points = GEOSGeom_getCoordSeq_r (session->geos, geometry);
  g_autoptr (GArray) ring = rc_ring_new ();
  unsigned int n = 0;

  if (points != NULL)
    GEOSCoordSeq_getSize_r (session->geos, points, &n);
  for (guint i = 0; i + 1 < n; i++)
    {
      double  x, y;
      RcPoint point;

      GEOSCoordSeq_getXY_r (session->geos, points, i, &x, &y);
      *was_rounded |= x != rint (x) || y != rint (y);
      point = (RcPoint){ session->origin.x + llround (x), session->origin.y + llround (y) };
      g_array_append_val (ring, point);
    }

  remove_spikes (ring);
  return rc_ring_compute_area (ring) != 0 ? g_steal_pointer (&ring) : NULL;
}

static void
add_polygon_from_geos (Session *session, const GEOSGeometry *geometry, RcRegion *region, gboolean *was_rounded)
{
  RcRing    *outer = ring_from_geos (session, GEOSGetExteriorRing_r (session->geos, geometry), was_rounded);
  RcPolygon *polygon;
  int        n_holes;

  if (outer == NULL)
    return;

  polygon = rc_polygon_new_take (outer);
  n_holes = GEOSGetNumInteriorRings_r (session->geos, geometry);
  for (int i = 0; i < n_holes; i++)
    {
      RcRing *hole = ring_from_geos (session, GEOSGetInteriorRingN_r (session->geos, geometry, i), was_rounded);

      if (hole != NULL)
        g_ptr_array_add (polygon->holes, hole);
    }

  rc_polygon_normalize (polygon);
  g_ptr_array_add (region, polygon);
}

/* The polygons of a geometry of any type; lines and points in it have no area and are left out. */
static void
add_from_geos (Session *session, const GEOSGeometry *geometry, RcRegion *region, gboolean *was_rounded)
{
  int type = GEOSGeomTypeId_r (session->geos, geometry);
  int n;

  if (type == GEOS_POLYGON && GEOSisEmpty_r (session->geos, geometry) == 0)
    add_polygon_from_geos (session, geometry, region, was_rounded);
  if (type != GEOS_MULTIPOLYGON && type != GEOS_GEOMETRYCOLLECTION)
    return;

  n = GEOSGetNumGeometries_r (session->geos, geometry);
  for (int i = 0; i < n; i++)
    add_from_geos (session, GEOSGetGeometryN_r (session->geos, geometry, i), region, was_rounded);
}

static gboolean
is_valid (Session *session, const RcRegion *region)
{
  GEOSGeometry *geometry = region_to_geos (session, region, GEOS_MULTIPOLYGON);
  gboolean      valid = geometry != NULL && GEOSisValid_r (session->geos, geometry) == 1;

  GEOSGeom_destroy_r (session->geos, geometry);
  return valid;
}

/* Overlay; grid 0 keeps full doubles, 1 keeps every corner on whole ticks throughout. */
static GEOSGeometry *
overlay_geos (Session *session, Overlay overlay, const GEOSGeometry *a, const GEOSGeometry *b, double grid)
{
  switch (overlay)
    {
    case OVERLAY_UNION:
      return GEOSUnionPrec_r (session->geos, a, b, grid);
    case OVERLAY_INTERSECTION:
      return GEOSIntersectionPrec_r (session->geos, a, b, grid);
    case OVERLAY_DIFFERENCE:
      return GEOSDifferencePrec_r (session->geos, a, b, grid);
    }

  g_assert_not_reached ();
}

/* Full doubles give the truest corners. Only where rounding them makes edges cross is the overlay done on the grid of
 * whole ticks, which moves edges by up to half a tick but never lets them cross. */
static RcRegion *
overlay_operands (Session *session, Overlay overlay, const GEOSGeometry *a, const GEOSGeometry *b)
{
  for (int grid = 0; grid <= 1; grid++)
    {
      g_autoptr (GPtrArray) region = rc_region_new ();
      gboolean      was_rounded = FALSE;
      GEOSGeometry *result = overlay_geos (session, overlay, a, b, grid);

      if (result == NULL)
        continue;
      add_from_geos (session, result, region, &was_rounded);
      GEOSGeom_destroy_r (session->geos, result);
      if (!was_rounded || is_valid (session, region))
        return g_steal_pointer (&region);
    }

  return NULL;
}

static RcRegion *
overlay_regions (Overlay overlay, const RcRegion *a, const RcRegion *b, GError **error)
{
  RcBox         box = rc_region_compute_box (a->len > 0 ? a : b);
  Session       session;
  GEOSGeometry *left, *right;
  RcRegion     *result = NULL;

  session_open (&session, (RcPoint){ box.x0, box.y0 });
  left = region_to_operand (&session, a);
  right = region_to_operand (&session, b);
  if (left != NULL && right != NULL)
    result = overlay_operands (&session, overlay, left, right);
  if (result == NULL)
    g_set_error (error, RC_ERROR, RC_ERROR_GEOMETRY, _ ("these outlines cannot be laid over one another: %s"),
                 session.message != NULL ? session.message : _ ("their edges cross themselves"));

  GEOSGeom_destroy_r (session.geos, left);
  GEOSGeom_destroy_r (session.geos, right);
  session_close (&session);
  return result;
}

RcRegion *
rc_region_union (const RcRegion *a, const RcRegion *b, GError **error)
{
  return overlay_regions (OVERLAY_UNION, a, b, error);
}

RcRegion *
rc_region_merge (const RcRegion *region, GError **error)
{
  g_autoptr (GPtrArray) nothing = rc_region_new ();

  return overlay_regions (OVERLAY_UNION, region, nothing, error);
}

RcRegion *
rc_region_intersect (const RcRegion *a, const RcRegion *b, GError **error)
{
  return overlay_regions (OVERLAY_INTERSECTION, a, b, error);
}

/* Whether any of the edge lies inside the box, its sides not counted. Exact. */
static gboolean
edge_enters_box (const RcPoint *a, const RcPoint *b, RcBox box)
{
  const RcPoint corners[] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };
  gboolean      has_left = FALSE;
  gboolean      has_right = FALSE;

  if (MAX (a->x, b->x) <= box.x0 || MIN (a->x, b->x) >= box.x1 || MAX (a->y, b->y) <= box.y0
      || MIN (a->y, b->y) >= box.y1)
    return FALSE;

  /* the edge's line passes through the inside when it has corners on both hands */
  for (guint i = 0; i < G_N_ELEMENTS (corners); i++)
    {
      RcWide turn = (RcWide)(b->x - a->x) * (corners[i].y - a->y) - (RcWide)(corners[i].x - a->x) * (b->y - a->y);

      has_left |= turn > 0;
      has_right |= turn < 0;
    }

  return has_left && has_right;
}

static gboolean
ring_enters_box (const RcRing *ring, RcBox box)
{
  for (guint i = 0, j = ring->len - 1; i < ring->len; j = i++)
    {
      if (edge_enters_box (rc_ring_get (ring, j), rc_ring_get (ring, i), box))
        return TRUE;
    }

  return FALSE;
}

static gboolean
region_enters_box (const RcRegion *region, RcBox box)
{
  for (guint i = 0; i < region->len; i++)
    {
      const RcPolygon *polygon = g_ptr_array_index (region, i);

      if (ring_enters_box (polygon->outer, box))
        return TRUE;
      for (guint h = 0; h < polygon->holes->len; h++)
        {
          if (ring_enters_box (g_ptr_array_index (polygon->holes, h), box))
            return TRUE;
        }
    }

  return FALSE;
}

static gboolean
box_holds (RcBox box, RcBox other)
{
  return box.x0 <= other.x0 && box.y0 <= other.y0 && box.x1 >= other.x1 && box.y1 >= other.y1;
}

/* The common cases that need no overlay: the box holds the only polygon, or lies wholly inside or outside the region.
 * NULL when it is none of them. */
static RcRegion *
intersect_box_simply (const RcRegion *region, RcBox box)
{
  RcRegion *result;

  if (region->len == 1 && box_holds (box, rc_region_compute_box (region)))
    {
      result = rc_region_copy (region);
      rc_polygon_normalize (g_ptr_array_index (result, 0));
      return result;
    }
  if (box.x1 - box.x0 < 2 || box.y1 - box.y0 < 2 || region_enters_box (region, box))
    return NULL;

  /* no edge runs through the box, so that one point inside it stands for all */
  result = rc_region_new ();
  if (rc_region_locate (region, (RcPoint){ box.x0 + 1, box.y0 + 1 }) > 0)
    g_ptr_array_add (result, rc_polygon_new_from_box (box));
  return result;
}

RcRegion *
rc_region_intersect_box (const RcRegion *region, RcBox box, GError **error)
{
  g_autoptr (GPtrArray) window = rc_region_new ();
  RcRegion *simple;

  if (box.x0 >= box.x1 || box.y0 >= box.y1)
    return g_steal_pointer (&window);

  simple = intersect_box_simply (region, box);
  if (simple != NULL)
    return simple;

  g_ptr_array_add (window, rc_polygon_new_from_box (box));
  return overlay_regions (OVERLAY_INTERSECTION, region, window, error);
}

RcRegion *
rc_region_difference (const RcRegion *a, const RcRegion *b, GError **error)
{
  return overlay_regions (OVERLAY_DIFFERENCE, a, b, error);
}
