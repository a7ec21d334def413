/* Shapes by chance, the same for the same seed, and GEOS as the judge of them. */
#pragma once

#include "polygon.h"

#include <geos_c.h>

typedef enum
{
  SHAPE_STAR,    /* corners in order round a middle, any size */
  SHAPE_WALK,    /* corners anywhere, crossings taken out: bays and spirals */
  SHAPE_SQUARE,  /* right angles only: rooms with chimney breasts */
  SHAPE_CROWDED, /* few whole numbers, so that corners fall on the lines of others; holes may touch in points */
  SHAPE_CELLS,   /* squares of a chessboard, not joined: shared edges and shared corners */
  N_SHAPES
} Shape;

/* A region with holes, free of faults except for touching points in CROWDED and CELLS. (transfer full) */
RcRegion *make_random_region (GRand *random, Shape shape);

/* Into GEOS without rounding; CELLS and other regions of several polygons are united. (transfer full) */
GEOSGeometry *region_to_geos (GEOSContextHandle_t geos, const RcRegion *region);

/* A rectangle. */
GEOSGeometry *box_to_geos (GEOSContextHandle_t geos, double x0, double y0, double x1, double y1);
