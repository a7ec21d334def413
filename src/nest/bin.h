/* The stretches of roll that cuts may lie on: one per roll, or one per sound stretch of a roll. */
#pragma once

#include "nest.h"

/* End of a roll that is bought to measure: longer than anything that is read. */
#define RC_NEST_ENDLESS (G_MAXINT64 / 4)

typedef struct
{
  guint    source, copy; /* as in RcNestUse */
  RcLength start, end;   /* from the roll's start; end RC_NEST_ENDLESS when bought to measure without a limit */
  RcLength width;
  RcLength roll_length; /* of the whole roll; 0 when bought to measure */
  RcLength trim_end;    /* off the roll's end */
  int      lot;         /* equal lots have equal numbers; goods to be bought have 0 */
  gint64   cost_per_m;
} RcNestBin;

typedef struct
{
  RcNestBin *bins; /* cheapest first, then shortest first; stretches of one roll together and in order */
  guint      n;
  int        n_lots;
  GPtrArray *lots; /* of char*: the names, borrowed; [0] is NULL */
} RcNestBins;

/* With so many rolls to be bought, where the problem limits their length; else one without an end. */
RcNestBins *rc_nest_bins_new (const RcNestProblem *problem, guint n_bought);
RcNestBins *rc_nest_bins_new_endless (RcLength width);
void        rc_nest_bins_free (RcNestBins *bins);

/* How many rolls to be bought hold all cuts that rolls to be bought can hold, one beside or behind another anyhow. */
guint rc_nest_bins_count_enough (const RcNestProblem *problem);

/* What is taken of a roll whose last cut ends at `used` > 0: that much of stock; of goods that are bought the least
 * number of the problem's steps, not less than it says, that holds it with the end that is trimmed off. */
RcLength rc_nest_bin_compute_taken (const RcNestBin *bin, RcLength used, const RcNestProblem *problem);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcNestBins, rc_nest_bins_free)
