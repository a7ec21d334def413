/* What `rowcut-cli nest` prints. */
#pragma once

#include "nest.h"

/* Where the cuts lie, then for each roll the strokes in the order a person makes them with what each frees, the
 * leftovers of use and the balance. */
void rc_nest_print_text (const RcNestProblem *problem, const RcNestAnswer *answer);

/* One JSON object. FALSE when it cannot be written. */
gboolean rc_nest_print_json (const RcNestProblem *problem, const RcNestAnswer *answer);
