/* One cycle of simulated annealing towards a goal: a used length a little less than the best known. Items that find no
 * place within it stay outside, and the area of these is what the search lessens: it changes little from step to step
 * where the used length itself would not change at all. In a step some items are taken out of the tree of a cutting
 * and put back where they fit best, with those outside; a worse cutting is kept with a chance that falls over the
 * cycle. (Ruin and recreate towards a goal: Gardeyn and Wauters 2022; from memory.) */
#pragma once

#include "clock.h"
#include "layout.h"

/* What a search works with besides the task. */
typedef struct
{
  RcNestClock *clock;
  guint64      seed;
  RcLength     goal;      /* stop when the used length is this */
  RcLength     aim;       /* when strict: the used length that is aimed at */
  RcLength     grain;     /* used lengths are multiples of this */
  gboolean     is_strict; /* the goal is kept to, rather than all items kept in */
  void (*found) (const RcNestSpot *spots, const RcNestScore *score, gpointer user_data); /* nullable: a better one */
  gpointer user_data;
} RcNestSearch;

/* Improves spots in place (items with bin -1 are still to be placed) until `steps` are done, the clock is over or the
 * goal is met. */
void rc_nest_anneal (const RcNestTask *task, const RcNestSearch *search, guint64 steps, RcNestSpot *spots);
