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
  RcLength  width, longest;
  RcLength  too_long; /* of all those, full widths too, that are longer than what is sold */
  guint     n_too_long;
  guint64   area;         /* ticks x ticks: some 700 km2 */
  RcLength  wide_length;  /* of cuts wider than half the roll: no two of them lie side by side */
  gboolean  is_patterned; /* some cut is held by a pattern */
  RcCutsKey key;
} RcCutsSum;

/* Cuts that come together, added up once for the many sums they are part of. */
typedef struct
{
  RcLength  roll_width, longest_sold;
  GArray   *cuts;     /* of RcNestCut: their strings are borrowed */
  guint     n_beside; /* the first of them: all but full widths of plain goods */
  RcCutsSum bought;   /* what they add to cuts bought to measure */
  RcCutsSum stocked;  /* and to cuts that come from rolls */
} RcCutSet;

/* For a carpet of that usable width; `longest_sold` is rc_goods_compute_longest. */
RcCutSet *rc_cut_set_new (RcLength roll_width, RcLength longest_sold);
void      rc_cut_set_free (RcCutSet *set);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcCutSet, rc_cut_set_free)

/* One more cut; its quantity is taken as 1, the rolls as of one dye lot. */
void rc_cut_set_add (RcCutSet *set, const RcNestCut *cut);

typedef struct
{
  RcCutsKey key;
  RcTaken   taken; /* length 0: nothing known here */
} RcKnownCuts;

#define RC_N_KNOWN 8192

typedef struct
{
  gint64    work_us; /* spent on weighing, as a usual machine would take for it */
  RcCutsSum sum;     /* of the cuts at hand: set it back to an earlier value to take later cuts away */

  guint          most_exact;
  guint64        salt; /* stands for the rolls and what is weighed exactly */
  const RcGoods *carpet;
  gint64         carpet_per_m;
  RcNestProblem  problem;
  GPtrArray     *pool;     /* of RcNestCut, borrowed; the first are those at hand */
  GPtrArray     *cheapest; /* the rolls, cheapest first */
  RcKnownCuts   *known;    /* of RC_N_KNOWN: what was found before, at key modulo RC_N_KNOWN */
} RcTaking;

void rc_taking_init (RcTaking *taking, const RcGoods *carpet, gint64 carpet_per_m);
void rc_taking_clear (RcTaking *taking);

/* Takes from these rolls (of RcNestRoll, all of one dye lot; borrowed), with no cut at hand. NULL or empty: from one
 * roll bought to measure, which is how it starts. */
void rc_taking_set_rolls (RcTaking *taking, const GPtrArray *rolls);

/* Sets of no more cuts than this are weighed exactly, when bought to measure; 0 to begin with. */
void rc_taking_set_most_exact (RcTaking *taking, guint most_exact);

/* These cuts come to hand. The set outlives that, and gets no more cuts. */
void rc_taking_add (RcTaking *taking, const RcCutSet *set);

/* What the cuts at hand take. A cut that finds no place counts as much as two of the longest would, bought; so does
 * each to be bought that is longer than goods are. */
RcTaken rc_taking_take (RcTaking *taking);

/* No cutting of the cuts at hand takes less: by their area, and by those that cannot lie side by side. */
RcTaken rc_taking_take_at_least (const RcTaking *taking);
