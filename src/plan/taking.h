/* What sets of cuts take of a carpet: many sets weighed one after another, each by the nester's quick answer, which is
 * remembered.
 */
#pragma once

#include "goods.h"
#include "nest.h"

/* What a set of cuts takes. */
typedef struct
{
  gint64   cost; /* minor units: goods bought in the supplier's steps, stock at its own value */
  RcLength length;
  guint    unplaced; /* cuts that find no place on the rolls there are */
} RcTaken;

/* Stands for a set of cuts whatever their order: two independent 64-bit sums. */
typedef struct
{
  guint64 a, b;
} RcCutsKey;

/* What a set of cuts adds up to. */
typedef struct
{
  RcLength  drops_length; /* full widths of plain goods bought to measure, which lie by themselves */
  guint     n_cuts;       /* the other cuts */
  __int128  area;
  RcLength  width, longest;
  gboolean  is_patterned; /* some cut is held by a pattern */
  RcCutsKey key;
} RcCutsSum;

typedef struct
{
  RcCutsKey key;
  RcTaken   taken; /* length 0: nothing known here */
} RcKnownCuts;

#define RC_N_KNOWN 8192

typedef struct
{
  RcCutsSum sum; /* of the cuts at hand: set it back to an earlier value to take later cuts away */

  guint          most_exact;
  const RcGoods *carpet;
  gint64         carpet_per_m;
  RcNestProblem  problem;
  GPtrArray     *pool;  /* of RcNestCut; the first are those at hand */
  RcKnownCuts   *known; /* of RC_N_KNOWN: what was found before, at key modulo RC_N_KNOWN */
} RcTaking;

void rc_taking_init (RcTaking *taking, const RcGoods *carpet, gint64 carpet_per_m);
void rc_taking_clear (RcTaking *taking);

/* Takes from these rolls (of RcNestRoll, all of one dye lot; borrowed), with no cut at hand. NULL or empty: from one
 * roll bought to measure, which is how it starts. */
void rc_taking_set_rolls (RcTaking *taking, const GPtrArray *rolls);

/* Sets of no more cuts than this are weighed exactly, when bought to measure; 0 to begin with. */
void rc_taking_set_most_exact (RcTaking *taking, guint most_exact);

/* One more cut at hand; its quantity is taken as 1. Its strings outlive the cuts at hand. */
void rc_taking_add (RcTaking *taking, const RcNestCut *cut);

/* What the cuts at hand take. A cut that finds no place counts as much as two of the longest would, bought. */
RcTaken rc_taking_take (RcTaking *taking);

/* No cutting of the cuts at hand takes less: their area alone. */
RcTaken rc_taking_take_at_least (const RcTaking *taking);
