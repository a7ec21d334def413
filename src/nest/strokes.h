/* The strokes of the knife that cut an answer's placements out of their rolls, in the order a person makes them: a
 * length is cut off the roll, ripped, and its rips cut across, before the next length. */
#pragma once

#include "nest.h"

/* Fills answer->strokes from its placements and rolls. */
void rc_nest_strokes_fill (const RcNestProblem *problem, RcNestAnswer *answer);
