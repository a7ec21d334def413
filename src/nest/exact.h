/* The best cutting of few items, proved: over the rolls each takes a subset of them. */
#pragma once

#include "clock.h"
#include "layout.h"

/* Whether the task is small enough. */
gboolean rc_nest_exact_can (const RcNestTask *task);

/* Roughly how long it takes. */
double rc_nest_exact_estimate_seconds (const RcNestTask *task);

/* *bound is a length that no cutting is shorter than. TRUE: it is now the least used length of any cutting
 * (RC_NEST_ENDLESS: there is none), and spots the cheapest one. On one roll only cuttings shorter than `below` are
 * looked for; where there is none *bound is that, and spots are untouched. FALSE: the clock was over first; nothing is
 * changed. Groups take every lot in turn; task->lot_of_group ends as the spots have it. */
gboolean rc_nest_exact_solve (RcNestTask *task, const RcNestClock *clock, RcLength below, RcNestSpot *spots,
                              RcLength *bound);
