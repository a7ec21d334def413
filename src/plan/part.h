/* Ways to cut one part of floor inside a strip into pieces: whole, cut across where the outline steps, split into
 * joined pieces, of equal length or as doors, rules and offcuts suggest.
 */
#pragma once

#include "split.h"
#include "strip.h"
#include "taking.h"

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
  GArray   *blocks;    /* of RcBlock, in order of y */
  GArray   *crosses;   /* of RcCrossLine */
  gint64    seam_cost; /* of its cross seams */
  gint64    rule_cost; /* of rules its pieces and cross seams break */
  RcCutSet *cut_set;   /* its cuts, once it has been weighed; else NULL */
} RcLayout;

/* One connected part of a cell's floor inside a strip. */
typedef struct
{
  RcBox      box;
  guint      strip;
  gboolean   seamed; /* a side seam runs along it */
  gboolean   refined;
  gboolean   is_pinned; /* the estimator has fixed its only layout */
  RcRegion  *floor;     /* just this part, once refined; NULL when it fills its box */
  GPtrArray *layouts;   /* of RcLayout; the first is the whole part in one piece */
  guint      n_lasting; /* so many of them do not depend on the splitting */
  guint      stamp;     /* of the splitting that the others were made for */
  guint      pick;      /* index of the layout the search has taken for now */
} RcPart;

void rc_part_free (RcPart *part);

/* The whole part in one piece. */
RcBlock rc_part_get_whole (const RcPart *part, const RcSite *site);

/* Fills part->layouts with the whole part and splits of it; those made before stay, but for what hangs on the splitting
 * when its stamp is another. Those for a splitting of `all` begin with those for one without. Until the part is
 * refined, splits are equal and cross seams taken as wide as the box. */
void rc_part_add_layouts (RcPart *part, const RcSite *site, const RcSplitting *splitting);

/* The same with exact cross seams, cut where the outline steps too. `floor` is the cell's. */
gboolean rc_part_refine (RcPart *part, const RcSite *site, const RcSplitting *splitting, const RcRegion *floor,
                         GError **error);
