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
RcLength rc_pattern_compute_across_repeat (const RcGoods *carpet, RcLength strip_width);

/* A point of the roll that shows the pattern as it is at the start of the block's cut, at its left edge: 0 <= along <
 * length repeat, 0 <= across < across repeat; 0 where there is none. */
RcPoint rc_pattern_find_place (const RcSite *site, const RcGrid *grid, const RcPart *part, const RcBlock *block);
