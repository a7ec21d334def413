/* Goods with one pattern: what the repeat leaves behind the last length of a roll is not used.
 *
 * Between two lengths of a roll some of it is lost until the pattern comes again. So the length that would lose most
 * goes last. */
#pragma once

#include "layout.h"

/* Lengths change places within their rolls, where all items have one repeat and one phase; else nothing is done. No
 * roll is used any further. TRUE: the score got better. */
gboolean rc_nest_shorten_ends (const RcNestTask *task, RcNestSpot *spots);
