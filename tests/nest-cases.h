/* Random nesting problems shared by the tests of src/nest. */
#pragma once

#include "nest.h"

typedef struct
{
  guint    n_least, n_most; /* cuts, quantities counted */
  RcLength width;
  RcLength grid;        /* all lengths are multiples of this */
  guint    most_rolls;  /* 0: one roll bought to measure */
  guint    most_groups; /* dye lots asked for */
  gboolean repeats;     /* a third of the problems gets repeats, alike or mixed */
  int      stages;
  gboolean rough; /* rolls of their own widths, with trims and flaws; cuts pinned to rolls */
  gboolean tied;  /* patterns across, matches, cuts pinned to places where one can lie; leftovers of least sizes */
} RcNestCaseStyle;

RcNestProblem *rc_nest_case_new (GRand *rand, const RcNestCaseStyle *style);

/* One roll bought to measure, from a file of the published sets: count, width, then width and height of each. NULL when
 * there is no such file. */
RcNestProblem *rc_nest_case_read (const char *set, const char *name);

/* A job as the trade has them (invented): `n` cuts, half of them the full width, the others fills, pieces of joined
 * fills and stair pieces; 1 to 40 rolls of stock and one bought to measure; a third of the jobs with a repeat. */
RcNestProblem *rc_nest_case_new_trade (GRand *rand, guint n);

/* The yardstick: first-fit decreasing height, levels only. The sum of used lengths; -1 when the stock does not do. */
RcLength rc_nest_case_compute_ffdh (const RcNestProblem *problem);
