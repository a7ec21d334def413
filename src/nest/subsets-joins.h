/* Cuttings of any stages for the subsets of a few items; part of subsets.c. */
#pragma once

#include "clock.h"
#include "item.h"
#include "layout.h"

typedef struct
{
  RcLength w, h;
  guint32  part;              /* subset of the first of the two that are joined; 0: one item alone */
  guint32  first_at, rest_at; /* their entries */
  gboolean beside;            /* side by side; else one after the other */
} RcNestJoinEntry;

typedef struct
{
  const RcNestItem *items;
  guint             n;
  RcLength          width, most_h;
  guint32          *first, *count; /* by subset, in entries */
  GArray           *entries;       /* of RcNestJoinEntry: by width, lengths falling */
} RcNestJoins;

void rc_nest_joins_init (RcNestJoins *joins, const RcNestItem *items, guint n, RcLength width, RcLength most_h);
void rc_nest_joins_clear (RcNestJoins *joins);

/* FALSE when the clock is over first, or there is too much to keep. */
gboolean rc_nest_joins_fill (RcNestJoins *joins, const RcNestClock *clock);

RcLength rc_nest_joins_get_length (const RcNestJoins *joins, guint32 set); /* G_MAXINT64: none */
void     rc_nest_joins_place (const RcNestJoins *joins, guint32 set, int bin, RcLength along, RcNestSpot *spots);
