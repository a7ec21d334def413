/* Quick guesses at how good the positions of the strip lines are, before any cut is laid on a roll. */
#pragma once

#include "area-state.h"

typedef struct
{
  gint64 score;
  guint  index; /* of the grid in its cell */
} RcRank;

/* All positions of the strip lines, best guess first, summed over the cells first .. first + n - 1, which have the same
 * positions when n > 1. (transfer full) GArray of RcRank. */
GArray *rc_area_guess_rank (const RcAreaState *state, guint first, guint n);

/* Best score first; of equal ones the first grid. */
void rc_area_guess_sort (GArray *ranks);
