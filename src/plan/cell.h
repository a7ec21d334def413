/* Cells: the floor of an area parted at its doorways.
 *
 * Inside a cell the strip lines run through; each cell has strip lines of its own. Where a doorway is parted a seam
 * lies across it, along the closed door or at one of the wall's faces.
 */
#pragma once

#include "site.h"

typedef enum
{
  RC_PARTING_MIDDLE,     /* seam under the closed door: half the wall's depth to each room */
  RC_PARTING_FIRST_FACE, /* seam at the first room's face: the floor inside the wall goes with the other room */
  RC_PARTING_OTHER_FACE, /* seam at the other room's face */
  RC_PARTING_NONE,       /* the carpet runs through: both rooms lie in one cell */
  RC_N_PARTINGS
} RcParting;

typedef struct
{
  RcSiteOpening opening; /* between two rooms of the area; a copy */
  RcParting     parting;
  gboolean      may_run_through; /* a piece can be brought through it uncut */
} RcDoorway;

typedef struct
{
  char     *key;   /* what it is made of: the same key means the same floor */
  RcRegion *floor; /* in the frame; more than one polygon when its rooms do not touch */
} RcCell;

void rc_cell_free (RcCell *cell);

/* A piece runs through an opening of at least this width, or into a closet: a room of at most this floor. Through a
 * narrower door into a larger room it is not brought uncut. Common practice, no source: 4 ft, 60 sq ft. */
#define RC_RUN_THROUGH_WIDTH (4 * RC_TICKS_PER_FOOT)
#define RC_CLOSET_AREA       (2 * 60 * RC_TICKS_PER_FOOT * RC_TICKS_PER_FOOT)

/* The doorways between rooms of the area, all parted in the middle; (transfer full) GArray of RcDoorway. */
GArray *rc_site_find_doorways (const RcSite *site);

/* (transfer full) GPtrArray of RcCell, in the order of the area's rooms; NULL and an error where GEOS refuses. The
 * floor of a cell whose key is in `known` is not made again: it stays NULL. */
GPtrArray *rc_cells_new (const RcSite *site, const GArray *doorways, GHashTable *known, GError **error);

/* The seam of a parted doorway, in the frame. FALSE when the carpet runs through. */
gboolean rc_doorway_get_seam (const RcDoorway *doorway, RcPoint *from, RcPoint *to);
