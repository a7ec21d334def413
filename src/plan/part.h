/* Ways to cut one part of floor inside a strip into pieces: whole, cut across where the outline steps, split into
 * joined pieces of equal length.
 */
#pragma once

#include "site.h"
#include "strip.h"

/* One piece of a part; the box is what it covers, without allowances. */
typedef struct
{
  RcBox    box;
  RcLength cut_width, cut_length;
  gboolean is_drop;
} RcBlock;

/* A cross seam inside a part. */
typedef struct
{
  RcLength y, x0, x1;
  guint    below, above; /* blocks it joins */
} RcCrossLine;

typedef struct
{
  GArray *blocks;    /* of RcBlock, in order of y */
  GArray *crosses;   /* of RcCrossLine */
  gint64  seam_cost; /* of its cross seams */
  gint64  rule_cost; /* of rules its pieces and cross seams break */
} RcLayout;

void rc_layout_free (RcLayout *layout);

/* One connected part of a cell's floor inside a strip. */
typedef struct
{
  RcBox      box;
  guint      strip;
  gboolean   seamed;  /* a side seam runs along it */
  RcRegion  *floor;   /* just this part; NULL until refined */
  GPtrArray *layouts; /* of RcLayout; the first is the whole part in one piece */
  guint      pick;    /* index of the layout the search has taken for now */
} RcPart;

void rc_part_free (RcPart *part);

/* The whole part in one piece. */
RcBlock rc_part_get_whole (const RcPart *part, const RcSite *site);

/* Unless done before: fills part->layouts with the whole part and the equal splits, cross seams taken as wide as the
 * box. */
void rc_part_add_layouts (RcPart *part, const RcSite *site);

/* Makes the cross seams exact and adds layouts cut where the outline steps. `floor` is the cell's. */
gboolean rc_part_refine (RcPart *part, const RcSite *site, const RcRegion *floor, GError **error);
