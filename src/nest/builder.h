/* What the constructive solver keeps while it places items; part of builder.c and builder-place.c. */
#pragma once

#include "build.h"
#include "pins.h"
#include "spaces.h"

/* A length of a bin, or a part of one from `across` to `width`, that columns are opened in from left to right. */
typedef struct
{
  RcLength start, end; /* along the roll */
  RcLength across;     /* where the next column would start */
  RcLength width;      /* where the last must end */
  int      bin;
  int      first_column; /* -1: none */
  int      sibling;      /* the next level of the same length of roll; -1: none */
} RcNestLevel;

typedef struct
{
  RcLength across, width, end;
  RcLength limit; /* where its last item must end */
  int      level;
  int      next; /* of the level; -1: none */
} RcNestColumn;

/* A length of a bin between pinned ones that levels are opened in one after the other. */
typedef struct
{
  int      bin;
  RcLength end, limit; /* of the levels so far; where the last must end */
  int      last_level; /* one of the last length; its siblings are the others. -1: none */
} RcNestStretch;

/* Where the pattern of a match begins, once one of its items has a place. */
typedef struct
{
  gboolean is_known;
  RcLength at;
} RcNestOrigin;

struct _RcNestBuilder
{
  const RcNestTask *task;
  RcNestLevel      *levels;
  RcNestColumn     *columns;
  RcNestSpaces      tops;  /* of columns, by width */
  RcNestSpaces      sides; /* beside the columns of levels, by length */
  RcNestSpaces      bins;  /* in the order in which they are opened */
  RcNestStretch    *stretches;
  int              *first_stretch; /* by bin, and one more */
  RcLength         *used;          /* by bin: where its last item ends */
  int               n_levels, n_columns;
  gboolean          is_tied, may_grow;        /* the last levels may be made longer */
  gboolean          was_eager;                /* the eagerness decided something in this run */
  RcLength          below;                    /* bins used as far as this end the run */
  RcNestOrigin     *origins, *across_origins; /* by match */
  RcNestPins       *pins;                     /* NULL: nothing is pinned along the roll */
  RcLength         *back, *on;                /* by pinned length: how far it is made longer either way */
};

/* Opens a level with the columns that it has. */
void rc_nest_builder_open (RcNestBuilder *self, RcNestLevel level);

void rc_nest_builder_open_bins (RcNestBuilder *self, const guint *bin_order);

/* Finds a place for an item that is not pinned along the roll; spot->bin -1: there is none. */
void rc_nest_builder_place (RcNestBuilder *self, const RcNestItem *item, int eagerness, RcNestSpot *spot);
