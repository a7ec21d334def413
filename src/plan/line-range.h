/* Where the strip lines of a cell may lie, in ranges of positions over which its floor falls into the same parts: what
 * is true of a whole range is true of every position there is, not only of those a search tries.
 *
 * Corners of the floor end the ranges. From one to the next no corner meets a strip line, so parts neither join nor
 * divide nor end; only those that reach just one of their strip's lines get wider or narrower, by a tick for each tick.
 * So do the places where a side seam begins or ceases to break a rule: the ends and middles of doors, their sweeps, and
 * where the ways between doors meet a wall's height. Over floors with sloping walls these come anywhere, so there only
 * a single position has its rules counted.
 */
#pragma once

#include "cell.h"

/* A stretch of a part's height over which its width is the same: from its left end to its right end, whatever wall or
 * cut-out lies in between, as a part is cut straight across and its pieces reach over both. */
typedef struct
{
  RcLength y0, y1;
  RcLength width; /* at the range's first position, at least */
  int      slope; /* its change for each tick that the lines move on: -1, 0 or 1 */
  RcMoney  join;  /* what a cross seam in it, or at an end of it, costs more than one by itself: at least */
} RcRangeStep;

/* A connected piece of floor inside a strip. */
typedef struct
{
  RcLength width;               /* of its box at the range's first position */
  int      slope;               /* likewise */
  RcLength length, longest;     /* at least and at most, wherever the lines lie in the range */
  guint    first_step, n_steps; /* in the range's steps, from low to high; none where it is as wide all along */
  RcMoney  join;                /* the least of its steps, or of all of it where there are none */
  RcBox    box;                 /* at the range's middle position */
  guint    strip;
  gboolean seamed;
} RcRangePart;

typedef struct
{
  guint    left, right; /* parts */
  RcLength x, y0, y1;   /* where it lies at the range's middle position */
  RcLength length;      /* at least */
  RcMoney  rules;       /* what it breaks, and for being one: at least */
} RcRangeSide;

typedef struct
{
  RcLength from, to; /* positions of the strip lines, both among the range */
  GArray  *parts;    /* of RcRangePart */
  GArray  *steps;    /* of RcRangeStep */
  GArray  *sides;    /* of RcRangeSide */
} RcLineRange;

/* All positions 0 .. strip width - 1, in ranges. (transfer full) GPtrArray of RcLineRange. */
GPtrArray *rc_line_ranges_new (const RcSite *site, const RcRegion *floor);
