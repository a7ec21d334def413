/* Improving a few neighbouring lengths of a roll at a time, as a small problem of their own. */
#pragma once

#include "anneal.h"

/* Improves spots in place over about `steps` steps. Does nothing with repeats, with items left over, or when the whole
 * is hardly larger than a part. */
void rc_nest_improve_strips (const RcNestTask *task, const RcNestSearch *search, guint64 steps, RcNestSpot *spots);
