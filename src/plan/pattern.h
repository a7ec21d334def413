/* Where the pattern holds a cut on the roll, so that it meets at every seam of an area.
 *
 * The pattern lies over the whole floor of an area as one: it comes again a length repeat farther along the pile, and a
 * roll width's whole repeats farther across it, there dropped by the match's fraction (CFI, "Pattern matching", parts 3
 * and 4). A piece must come from a place of the roll that shows what the floor shows under it.
 */
#pragma once

#include "grid.h"

/* After how much of the roll's width a cut may come from elsewhere across it without any change along it; 0: from
 * anywhere, the goods have no pattern across.
 *
 * Set match: the width repeat. With a drop the repeats stand on the diagonal, so that as many of them as bring the drop
 * to whole repeats; but where the number of repeats in a width does not make the next width drop so, nothing is known
 * of what lies between, and each cut comes from its own place: the whole roll width. */
RcLength rc_pattern_compute_across_repeat (const RcGoods *carpet);

/* The block's cut, to be placed on a roll: its sizes, and where the pattern holds it. The area's cuts are a match along
 * the roll: where its pattern begins is left to the nester. Strings are borrowed. */
RcNestCut rc_pattern_get_cut (const RcSite *site, const RcGrid *grid, const RcPart *part, const RcBlock *block);
