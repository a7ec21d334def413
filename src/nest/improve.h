/* Improving a cutting: cycles of annealing, each twice as long as the one before and from the best cutting known,
 * strict unless most of the length is fixed by wide cuts. What comes next never depends on the time or the steps that
 * are left, so a run with more steps passes through every shorter one of the same seed. */
#pragma once

#include "anneal.h"

/* Whether the moves can handle the task: no pattern repeat, or one repeat and phase for all items. Others are for
 * rc_nest_improve_orders. */
gboolean rc_nest_can_improve (const RcNestTask *task);

/* Improves spots in place (items with bin -1 are still to be placed) until the clock is over or the goal met. */
void rc_nest_improve (const RcNestTask *task, const RcNestSearch *search, RcNestSpot *spots);
