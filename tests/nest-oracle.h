/* Exact models of three-stage nesting for GLPK, independent of src/nest. */
#pragma once

#include "nest.h"

/* The least used length (sum over rolls), at most 8 cuts and 3 rolls. FALSE when GLPK did not prove it. *least is -1
 * when there is no cutting. Without repeats: columns led by their widest piece, levels led by a column, after Lodi,
 * Martello and Vigo. With repeats: places along the roll, pairs put in order. */
gboolean rc_nest_oracle_solve (const RcNestProblem *problem, RcLength *least);

/* The same for at most 5 cuts with matches, patterns across, pins, and rolls with widths, trims and flaws of their own;
 * groups are left out. Every piece, column and level has a place and a size of its own. */
gboolean rc_nest_oracle_solve_tied (const RcNestProblem *problem, RcLength *least);
