/* A cutting as trees, one per bin, that items can be put into and taken out of.
 *
 * Inner nodes are stacks (children one after another along the roll) and rows (side by side across it); the root of a
 * bin is a stack, leaves are items. Stack and row alternate down every branch, so the depth of a leaf is the number of
 * stages that free it. Children have no order: only sums and maxima count.
 *
 * With a pattern repeat that all items share, lengths in a stack are rounded up to it, the last but for its own end.
 */
#pragma once

#include "layout.h"
#include "random.h"

enum
{
  RC_NEST_MOST_GROUP = 16 /* siblings considered at once */
};

typedef enum
{
  RC_NEST_LEAF,
  RC_NEST_STACK,
  RC_NEST_ROW,
} RcNestNodeKind;

/* One line of cache. */
typedef struct
{
  RcLength       w, h;
  gint64         area;                      /* of the items below */
  RcLength       pitch, slack;              /* stacks: sum of rounded lengths; the most that a last child saves of it */
  int            first, next, prev, parent; /* -1: none */
  RcNestNodeKind kind;
  int            n_leaves;
} RcNestNode;

typedef struct
{
  const RcNestTask *task;
  RcNestNode       *nodes; /* leaves first, then the roots of the bins, then others */
  int               n_leaves, n_roots, n_nodes, most_nodes;
  int               free_node; /* chain of unused nodes through next; -1: none */
  int               stages;    /* most stages; G_MAXINT: any number */
  RcLength          repeat;    /* 1: none */
  guint32          *touched;   /* by node: the last step that changed it */
  guint32           step, salt;
  guint             open_share;     /* of 256: how many of the untouched lengths are looked at in this step */
  double            goal;           /* of the used length, weighed; G_MAXDOUBLE: as much as it takes */
  double            outside_weight; /* of the area of items outside, against waste */
  double           *weights;        /* of the bins: what a tick of used length weighs, 1 for the dearest */
} RcNestTree;

/* Where an item may be put. */
typedef struct
{
  int      node;      /* the stack or row that takes it, or the leaf it is paired with; -1: nowhere */
  int      group;     /* rows: so many of the shortest children are stacked under it; 0: it is added beside them */
  RcLength growth;    /* of the bin's used length */
  double   cost, fit; /* of the growth; of the space lost */
} RcNestPlace;

/* How tight a place is. */
typedef enum
{
  RC_NEST_FIT_AREA,
  RC_NEST_FIT_SHORT_SIDE,
  RC_NEST_FIT_WIDTH,
  RC_NEST_N_FITS
} RcNestFit;

RcNestTree *rc_nest_tree_new (const RcNestTask *task);
void        rc_nest_tree_free (RcNestTree *tree);
void        rc_nest_tree_copy (RcNestTree *to, const RcNestTree *from); /* both of one task */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcNestTree, rc_nest_tree_free)

/* Begins a step: until the next, places are looked for in all lengths that the step has changed, in new ones, and in
 * about `most_leaves` leaves' worth of the others, chosen by salt. */
void rc_nest_tree_begin_step (RcNestTree *tree, guint32 salt, guint most_leaves);

gboolean    rc_nest_tree_holds (const RcNestTree *tree, int item);
void        rc_nest_tree_remove (RcNestTree *tree, int item);
RcNestPlace rc_nest_tree_find_place (const RcNestTree *tree, int item, RcNestFit fit, RcNestRandom *random);
/* FALSE: it did not fit after all and is out again. */
gboolean rc_nest_tree_put (RcNestTree *tree, int item, const RcNestPlace *place);

/* The order of siblings by length along the roll, so that the same ones form a group when it is judged and made. */
gboolean rc_nest_tree_is_lower (const RcNestTree *tree, RcNestNodeKind kind, int a, int b);

/* The used lengths of all bins, weighed. */
double rc_nest_tree_get_used (const RcNestTree *tree);

/* For loading: children are added without measuring, then everything is settled once. An inner node is of the other
 * kind than its parent. */
void rc_nest_tree_add_child (RcNestTree *tree, int parent, int child);
int  rc_nest_tree_add_inner (RcNestTree *tree, int parent);
void rc_nest_tree_settle (RcNestTree *tree);

/* Where the first item of a bin may start. */
RcLength rc_nest_tree_get_base (const RcNestTree *tree, int bin);

/* Takes over a cutting; items with bin -1 stay out. Spots must be cuttable in the tree's stages. */
void rc_nest_tree_load (RcNestTree *tree, const RcNestSpot *spots);

/* Writes the spot of every item; those not held get bin -1. */
void rc_nest_tree_to_spots (const RcNestTree *tree, RcNestSpot *spots);
