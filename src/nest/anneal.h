/* One cycle of simulated annealing: some items are taken out of the tree of a cutting and put back where they fit best;
 * a worse cutting is kept with a chance that falls over the cycle. */
#pragma once

#include "clock.h"
#include "layout.h"

/* What a search works with besides the task. */
typedef struct
{
  RcNestClock *clock;
  guint64      seed;
  RcLength     goal; /* stop when the used length is this */
  void (*found) (const RcNestSpot *spots, const RcNestScore *score, gpointer user_data); /* nullable: a better one */
  gpointer user_data;
} RcNestSearch;

/* Improves spots in place (items with bin -1 are still to be placed) until `steps` are done, the clock is over or the
 * goal is met. */
void rc_nest_anneal (const RcNestTask *task, const RcNestSearch *search, guint64 steps, RcNestSpot *spots);
