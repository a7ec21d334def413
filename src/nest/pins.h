/* The cuts that are pinned to a place along the roll: which rolls take them, and the space that is left around them.
 *
 * Pinned cuts of one roll whose lengths overlap lie in one length of it, which straight cuts across part from the rest.
 * The parts in which rips part them are blocks: pieces one behind another, or, with any stages, whatever straight cuts
 * can part.
 */
#pragma once

#include "layout.h"

/* A part of a pinned length over its whole length: with pieces in it, or free. */
typedef struct
{
  RcLength from, to; /* across the roll */
  GArray  *pieces;   /* of guint: items, by place along the roll; empty: free */
} RcNestPinnedBlock;

/* A length of a bin. */
typedef struct
{
  int        bin;
  RcLength   from, to; /* along the roll, as its pieces need it */
  GPtrArray *blocks;   /* of RcNestPinnedBlock, from left to right */
} RcNestPinnedLength;

typedef struct
{
  GPtrArray  *lengths; /* of RcNestPinnedLength, by bin and place along the roll */
  RcNestSpot *spots;   /* by item; bin -1: not pinned along the roll, or without a place */
} RcNestPins;

/* Dye lots as the task has them. */
RcNestPins *rc_nest_pins_new (const RcNestTask *task);
void        rc_nest_pins_free (RcNestPins *pins);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcNestPins, rc_nest_pins_free)

/* A length of roll that the pins need in any case: how far from the start they reach, on each roll. */
RcLength rc_nest_pins_compute_bound (const RcNestTask *task);
