/* Placement rules: what a seam or a piece breaks, priced by the settings.
 *
 * Sources: CRI 2011 6.2 (seams along the area, not across traffic or light, not square into doorways), Workspace
 * Training "Planning joins and seams"; least sizes and distances are common practice without a source. All in the
 * site's frame.
 */
#pragma once

#include "site.h"

/* What a seam from a to b (along x or y) costs in broken rules, and for being one. `broken` (nullable) gets an
 * RcBrokenRule for each broken, its place in the frame. */
gint64 rc_rules_weigh_seam (const RcSite *site, RcSeamKind kind, RcPoint a, RcPoint b, GPtrArray *broken);

/* What a piece whose net size is the box costs: too narrow a fill (when it is seamed along a side; by its mean width
 * where it does not fill its box, so that floor inside a doorway does not hide a strip along the wall), too short a
 * joined piece. `floor`: between the box's heights it lies in the box; NULL where it fills it. */
gint64 rc_rules_weigh_piece (const RcSite *site, RcBox box, const RcRegion *floor, gboolean is_fill, gboolean is_joined,
                             GPtrArray *broken);

/* Two cross seams of neighbouring fills, at heights y_a and y_b. */
gint64 rc_rules_weigh_stagger (const RcSite *site, RcLength y_a, RcLength y_b, RcPoint place, GPtrArray *broken);

/* A fill with more cross seams than the settings allow. */
gint64 rc_rules_weigh_joins (const RcSite *site, guint joins, RcPoint place, GPtrArray *broken);
