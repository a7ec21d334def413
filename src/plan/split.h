/* Where a piece of floor may be cut across: places for cross seams that come from the floor and the rules, not from a
 * grid.
 */
#pragma once

#include "site.h"

/* What lies free beside a cut of that length: a fill no wider may come out of it. */
typedef struct
{
  RcLength width, length;
} RcOffcut;

/* What the places are chosen for. */
typedef struct
{
  GArray  *offcuts; /* of RcOffcut */
  gboolean all;     /* every set of places, where they are few enough; else those most likely to be of use */
  guint    stamp;   /* changed with the other two: layouts of an older stamp are out of date */
} RcSplitting;

void rc_splitting_init (RcSplitting *splitting);
void rc_splitting_clear (RcSplitting *splitting);

/* What is left beside the cuts (of RcNestCut), and the rolls (of RcNestRoll) themselves; either may be NULL. */
void rc_splitting_set_offcuts (RcSplitting *splitting, const RcSite *site, const GPtrArray *cuts,
                               const GPtrArray *rolls);

/* The longest stretch of floor that one length as it is sold covers, its allowance taken off; at least 1. G_MAXINT64
 * where a full roll's length is not known. */
RcLength rc_split_compute_longest (const RcSite *site);

/* Heights strictly inside the box of a fill, more than a sliver from its ends, sorted, each once. (transfer full)
 * GArray of RcLength. */

/* Where a rule about cross seams stops being broken: as far from each door as the settings ask and out of its sweep,
 * and the least joined piece from either end; where the box is longer than what is sold, that from either end too. */
GArray *rc_split_find_rule_places (const RcSite *site, RcBox box);

/* Where a piece ends that just fits an offcut, from either end; `cut_width` is the fill's. */
GArray *rc_split_find_offcut_places (const RcSite *site, RcBox box, RcLength cut_width, const GArray *offcuts);

/* Both, and the seams of splits of the box, and of what lies below and above each step and each of the places, into 2
 * .. most_pieces of equal length. `steps`: GArray of RcLength. */
GArray *rc_split_find_all_places (const RcSite *site, RcBox box, RcLength cut_width, const GArray *offcuts,
                                  const GArray *steps, guint most_pieces);
