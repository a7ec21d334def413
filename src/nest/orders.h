/* Improving a cutting whose cuts have repeats and phases of several kinds: the constructive solver is run again and
 * again on orders of the items that are a little changed, and an order is kept when its cutting is no worse. */
#pragma once

#include "anneal.h"

/* Improves spots in place until the clock is over or the goal met. */
void rc_nest_improve_orders (const RcNestTask *task, const RcNestSearch *search, RcNestSpot *spots);
