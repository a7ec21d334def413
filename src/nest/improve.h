/* Improving a cutting: some items are taken out and put back where they fit best; worse cuttings are accepted with a
 * chance that falls over a cycle (simulated annealing). Cycles grow twice as long each, and each starts from the best
 * cutting known, so that a run with more steps passes through every shorter one with the same seed. */
#pragma once

#include "clock.h"
#include "layout.h"

/* What the search works with besides the task. */
typedef struct
{
  RcNestClock *clock;
  guint64      seed;
  RcLength     goal; /* stop when the used length is this */
  void (*found) (const RcNestSpot *spots, const RcNestScore *score, gpointer user_data); /* nullable: a better one */
  gpointer user_data;
} RcNestSearch;

/* Whether the moves can handle the task: no pattern repeat, or one repeat and phase for all items. */
gboolean rc_nest_can_improve (const RcNestTask *task);

/* Improves spots in place (items with bin -1 are still to be placed) until the clock is over or the goal met. */
void rc_nest_improve (const RcNestTask *task, const RcNestSearch *search, RcNestSpot *spots);
