/* Improving a cutting by cycles of annealing. Strict unless most of the length is fixed by wide cuts: then each cycle
 * aims at a used length, halving what lies between the best cutting known and the longest aim that has failed; cycles
 * become longer when the aims are used up, and begin from the first cutting again, as the best one is hard to leave.
 * Else each cycle goes on from the best and is twice as long as the one before.
 *
 * Where steps are counted, what comes next never depends on how many are left, so a run with more steps passes through
 * every shorter one of the same seed. Where only time counts, the last cycle is fitted into it. */
#pragma once

#include "anneal.h"

/* Whether the moves can handle the task: no pattern repeat, or one repeat and phase for all items. Others are for
 * rc_nest_improve_orders. */
gboolean rc_nest_can_improve (const RcNestTask *task);

/* Improves spots in place (items with bin -1 are still to be placed) until the clock is over or the goal met. */
void rc_nest_improve (const RcNestTask *task, const RcNestSearch *search, RcNestSpot *spots);
