/* Where the patterns of matches may begin, for the exact search: in some best cutting each begins at one of these.
 *
 * Let every item lie as near to the start as it can (normal patterns, Herz 1972; Christofides and Whitlock 1977), and
 * move all items of the matches that are still open on together until one of them meets something that stays: the
 * start of a roll, a pinned item, or one whose pattern has a place, perhaps with free items between. So the open
 * matches get their beginnings one after the other, each from what is settled by then, in every order. */
#pragma once

#include "layout.h"

typedef struct
{
  RcLength *along, *across; /* by match: the place of phase 0 */
} RcNestOrigins;

/* All that must be tried; one without content where there are no matches. NULL: more than `most`. */
GPtrArray *rc_nest_origins_list (const RcNestTask *task, guint most);

/* Gives the items of all matches the phases that follow, and takes them out of their matches. */
void rc_nest_origins_settle (const RcNestOrigins *origins, RcNestItem *items, guint n);
