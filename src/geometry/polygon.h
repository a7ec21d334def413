/* Points, rings, polygons with holes and regions (sets of polygons), on whole ticks.
 *
 * Axes: x to the right (east), y up (north). Rings are closed implicitly (the first point is not repeated). Outer rings
 * run counter-clockwise, holes clockwise, once normalised. Boundary points belong to the polygon.
 */
#pragma once

#include "area.h"

typedef struct
{
  RcLength x, y;
} RcPoint;

typedef struct
{
  RcLength x0, y0, x1, y1; /* x0 <= x1, y0 <= y1; empty when n == 0: all zero */
} RcBox;

/* A ring is a GArray of RcPoint. */
typedef GArray RcRing;

typedef struct
{
  RcRing    *outer;
  GPtrArray *holes; /* of RcRing; never NULL */
} RcPolygon;

/* Polygons whose insides do not overlap. */
typedef GPtrArray RcRegion; /* of RcPolygon */

RcRing    *rc_ring_new (void);
RcRing    *rc_ring_new_from_points (const RcPoint *points, guint n_points);
RcRing    *rc_ring_copy (const RcRing *ring);
RcPolygon *rc_polygon_new (void);
RcPolygon *rc_polygon_new_take (RcRing *outer); /* takes the ring over, no holes */
RcPolygon *rc_polygon_new_from_box (RcBox box);
RcPolygon *rc_polygon_copy (const RcPolygon *polygon);
void       rc_polygon_free (RcPolygon *polygon);
RcRegion  *rc_region_new (void);
RcRegion  *rc_region_copy (const RcRegion *region);

#define rc_ring_get(ring, i) (&g_array_index ((ring), RcPoint, (i)))

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcPolygon, rc_polygon_free)

/* Signed (doubled) area by the surveyor's cross products: positive counter-clockwise; 0 for fewer than three points. */
RcArea rc_ring_compute_area (const RcRing *ring);
RcArea rc_polygon_compute_area (const RcPolygon *polygon); /* outer less holes, >= 0 */
RcArea rc_region_compute_area (const RcRegion *region);

/* (Doubled) area of what lies between the heights y0 <= y1, of polygons in normal order; where an edge comes in or goes
 * out its x is taken to the nearest tick. */
RcArea rc_region_compute_area_between (const RcRegion *region, RcLength y0, RcLength y1);

/* Length of the boundary, rounded to the nearest tick per edge. */
RcLength rc_ring_compute_length (const RcRing *ring);

RcBox rc_ring_compute_box (const RcRing *ring);
RcBox rc_region_compute_box (const RcRegion *region);

/* Removes repeated points and points on a straight line between their neighbours. A spike, where the boundary runs back
 * over itself, stays for rc_polygon_check to find. */
void rc_ring_simplify (RcRing *ring);

void rc_ring_reverse (RcRing *ring);

/* Simplifies every ring, turns the outer ring counter-clockwise and the holes clockwise. */
void rc_polygon_normalize (RcPolygon *polygon);

typedef enum
{
  RC_POLYGON_FAULT_FEW_CORNERS,  /* fewer than three */
  RC_POLYGON_FAULT_NO_LENGTH,    /* an edge from a point to itself */
  RC_POLYGON_FAULT_EDGES_MEET,   /* cross, touch or overlap, other than neighbours at their corner */
  RC_POLYGON_FAULT_HOLE_OUTSIDE, /* hole `ring` */
  RC_POLYGON_FAULT_HOLE_IN_HOLE, /* hole `ring` in hole `other_ring` */
} RcPolygonFaultKind;

/* What keeps a polygon from being simple. Ring 0 is the outer one, ring n is holes[n - 1]; edge i runs from point i to
 * the next, counted from 0. */
typedef struct
{
  RcPolygonFaultKind kind;
  guint              ring, edge;
  guint              other_ring, other_edge;
  RcPoint            where; /* to the nearest tick */
} RcPolygonFault;

/* TRUE if there is a fault, and the first one in *fault (may be NULL), for callers that name walls themselves. Exact.
 */
gboolean rc_polygon_find_fault (const RcPolygon *polygon, RcPolygonFault *fault);

/* TRUE if the polygon is simple: at least three points, no edge crosses or touches another save at shared ends, holes
 * inside the outer ring and apart from each other. Exact. On FALSE `error` (RC_ERROR_GEOMETRY) says which edges
 * (numbered from 1) meet and where. */
gboolean rc_polygon_check (const RcPolygon *polygon, GError **error);

/* > 0 inside, 0 on the boundary, < 0 outside. Exact. */
int rc_ring_locate (const RcRing *ring, RcPoint point);
int rc_polygon_locate (const RcPolygon *polygon, RcPoint point);
int rc_region_locate (const RcRegion *region, RcPoint point); /* 0 also where two polygons touch */

/* Distance rounded to the nearest tick. */
RcLength rc_point_distance (RcPoint a, RcPoint b);

/* Turns everything about the origin by `degrees` counter-clockwise. Exact for multiples of 90, else rounded to the
 * nearest tick. */
RcPoint   rc_point_rotate (RcPoint point, double degrees);
RcRegion *rc_region_rotate (const RcRegion *region, double degrees);
/* Every wall made straight along x or y, whichever it is nearer to, where it comes furthest into the floor: for floors
 * whose walls are out of square by a hair. Nothing is added to the floor but where it is no wider than walls are moved.
 * (transfer full) */
RcRegion *rc_region_straighten (const RcRegion *region);

RcRegion *rc_region_move (const RcRegion *region, RcLength dx, RcLength dy);

/* Overlay by GEOS, corners rounded to the nearest tick; slivers without area, lines and points dropped, rings in normal
 * order. The regions must be free of faults; within one region polygons may share edges or overlap, they are merged. An
 * empty result is an empty region. NULL and RC_ERROR_GEOMETRY where GEOS refuses. (transfer full) */
RcRegion *rc_region_union (const RcRegion *a, const RcRegion *b, GError **error);
RcRegion *rc_region_merge (const RcRegion *region, GError **error); /* polygons that share an edge become one */
RcRegion *rc_region_intersect (const RcRegion *a, const RcRegion *b, GError **error);
RcRegion *rc_region_intersect_box (const RcRegion *region, RcBox box, GError **error);
RcRegion *rc_region_difference (const RcRegion *a, const RcRegion *b, GError **error);
