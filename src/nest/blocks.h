/* Whether a few items can be cut, by any number of straight cuts, out of a rectangle that is hardly larger than they
 * are.
 *
 * From the bottom up: two blocks with no item in common make a larger one, side by side or one after the other. Only
 * blocks that waste no more than the rectangle leaves over are kept, and of one set of items only those that none beats
 * in width and length. The less there is to waste, the fewer these are. (P. Y. Wang, Two algorithms for constrained
 * two-dimensional cutting stock problems, Operations Research 31, 1983; from memory.) */
#pragma once

#include "clock.h"

enum
{
  RC_NEST_MOST_BLOCK_ITEMS = 40
};

typedef enum
{
  RC_NEST_BLOCKS_FIT,
  RC_NEST_BLOCKS_CANNOT_FIT, /* proved */
  RC_NEST_BLOCKS_UNKNOWN,    /* too much work, or the clock was over */
} RcNestBlocksResult;

typedef struct
{
  RcLength w, h;          /* > 0 */
  RcLength across, along; /* its place, from the rectangle's corner */
} RcNestBlockItem;

/* How much may be tried. */
typedef struct
{
  guint64            work; /* pairs of blocks; what is left of it comes back */
  guint              blocks;
  const RcNestClock *clock;
} RcNestBlocksLimit;

/* A band: items that fill a length of the whole width without waste. */
typedef struct
{
  guint64  items; /* bit i is item i */
  RcLength length;
} RcNestBand;

/* n <= RC_NEST_MOST_BLOCK_ITEMS items into width x length; where they fit they get their places. */
RcNestBlocksResult rc_nest_blocks_fit (RcNestBlockItem *items, guint n, RcLength width, RcLength length,
                                       RcNestBlocksLimit *limit);

/* The bands shorter than `length` that n <= RC_NEST_MOST_BLOCK_ITEMS items can make, as far as the limit allows: of
 * RcNestBand. (transfer full) */
GArray *rc_nest_blocks_list_bands (RcNestBlockItem *items, guint n, RcLength width, RcLength length,
                                   RcNestBlocksLimit *limit);
