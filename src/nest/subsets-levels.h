/* Levels of three-stage cuttings for the subsets of a few items; part of subsets.c. */
#pragma once

#include "clock.h"
#include "item.h"
#include "layout.h"

/* A level of a subset: no other is both narrower and shorter. */
typedef struct
{
  RcLength w, end;
  guint32  column; /* its last column */
  guint32  rest;   /* index of the entry of the other columns' level */
} RcNestLevelEntry;

typedef struct
{
  const RcNestItem *items; /* widest first */
  guint             n;
  RcLength          width, most_end;
  gboolean          is_ordered; /* the order along a column matters: patterns, pins */
  gboolean          has_across; /* and so does that across a level */
  gboolean          overflow;   /* some front was too long to keep: the levels are not exact */
  RcLength         *column_end; /* by subset */
  guint32          *first, *count;
  GArray           *entries; /* of RcNestLevelEntry */
} RcNestLevels;

void rc_nest_levels_init (RcNestLevels *levels, const RcNestItem *items, guint n, RcLength width, RcLength most_end);
void rc_nest_levels_clear (RcNestLevels *levels);

/* Fills the levels of all subsets of `universe` that start at `start`. FALSE when the clock is over first or
 * there is too much to keep. */
gboolean rc_nest_levels_fill (RcNestLevels *levels, guint32 universe, RcLength start, const RcNestClock *clock);

/* Where the shortest level of a subset ends; G_MAXINT64 when it does not fit the width. */
RcLength rc_nest_levels_get_end (const RcNestLevels *levels, guint32 set);

/* Writes the spots of the items of the shortest level of `set`, which starts at `start` (as filled). */
void rc_nest_levels_place (const RcNestLevels *levels, guint32 set, RcLength start, int bin, RcNestSpot *spots);
