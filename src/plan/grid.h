/* Strips over a cell: where the side seams fall for one position of the strip lines.
 */
#pragma once

#include "cell.h"
#include "part.h"

/* A stretch of side seam between two parts. */
typedef struct
{
  RcLength x, y0, y1;
  guint    left, right; /* indices in parts */
} RcSideLine;

typedef struct
{
  RcLength   first;                /* where the first strip begins */
  RcLength   offset;               /* the strip lines lie at offset + k x strip width */
  GPtrArray *parts;                /* of RcPart */
  GArray    *sides;                /* of RcSideLine */
  gint64     seam_cost, rule_cost; /* of the side seams */
} RcGrid;

/* Positions of the strip lines worth trying: a line at a corner of the floor, or the least fill's width from its ends.
 * Sorted, 0 <= offset < strip width. (transfer full) GArray of RcLength. */
GArray *rc_site_find_offsets (const RcSite *site, const RcRegion *floor);

/* The positions for all cells of the area alike: where a line is held for the whole area, or a pattern must meet at
 * every seam. NULL where each cell has its own. (transfer full) */
GArray *rc_site_find_shared_offsets (const RcSite *site);

/* The positions for one cell: the shared ones (nullable), that of a line pinned in it, or all worth trying. (transfer
 * full) */
GArray *rc_site_find_cell_offsets (const RcSite *site, GArray *shared, const RcRegion *floor);

/* Parts without layouts. (transfer full) */
RcGrid *rc_grid_new (const RcSite *site, const RcRegion *floor, RcLength offset);
void    rc_grid_free (RcGrid *grid);

/* Gives every part its layouts; those with cross seams where the outline steps come with refining. */
void rc_grid_add_layouts (RcGrid *grid, const RcSite *site, const RcSplitting *splitting);

/* Refines every part. */
gboolean rc_grid_refine (RcGrid *grid, const RcSite *site, const RcSplitting *splitting, const RcRegion *floor,
                         GError **error);

/* How many strip widths a strip lies from the line at the offset itself: the pattern of a half drop steps with it. */
gint64 rc_grid_get_step (const RcGrid *grid, const RcSite *site, guint strip);

/* Where the block's cut lies before trimming: the allowance over both ends, the spare width away from a side seam. With
 * a pattern across it lies wholly over its strip's roll width, so that it can come from there. */
RcBox rc_grid_get_cut_box (const RcGrid *grid, const RcSite *site, const RcPart *part, const RcBlock *block);

/* At how many of its ends the cross seam meets a side seam. */
guint rc_grid_count_side_ends (const RcGrid *grid, const RcCrossLine *line);
