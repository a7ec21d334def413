/* The lengths that straight cuts across a roll part, and what is left over beside, between and behind them. */
#pragma once

#include "layout.h"

typedef struct
{
  int      bin;
  RcLength from, to;    /* along the roll */
  RcLength left, right; /* across: where its first item begins and its last ends */
} RcNestSegment;

typedef struct
{
  int      bin;
  RcLength across, along, width, length;
} RcNestRest;

/* By bin and along; items without a bin are left out. segments has room for one an item. Returns how many. */
guint rc_nest_list_segments (const RcNestTask *task, const RcNestSpot *spots, RcNestSegment *segments);

/* Calls func for every leftover of use, the bins that no item lies in too. `used` is by bin, at the first bin of each
 * roll (as in layout.c); it tells what is bought. */
void rc_nest_each_leftover (const RcNestTask *task, const RcNestSegment *segments, guint n, const RcLength *used,
                            void (*func) (const RcNestRest *rest, gpointer user_data), gpointer user_data);
