/* All the ways to lay an area, for bounds: every pile direction allowed, every parting of its doorways, every position
 * of the strip lines in each cell, pieces cut across anywhere. Found is the least that any of them costs when carpet is
 * paid for by the width and length of each cut (nest/choice-lp.h).
 *
 * Counted are the cuts with their allowances, side seams with the rules they break, cross seams and their price for
 * being one, fills too narrow, and the seams in doorways. All other rules, what pins ask for, and patterns only make a
 * plan dearer.
 */
#pragma once

#include "cell.h"
#include "choice-lp.h"

typedef struct _RcAreaChoice RcAreaChoice;

/* The ways with the pile along each of the sites (of RcSite), which outlive the choice. NULL, with no error, where
 * there are too many doorways to try every parting, or the clock is over; NULL and an error where the floor cannot be
 * dealt with. (transfer full) */
RcAreaChoice *rc_area_choice_new (const GPtrArray *sites, const RcNestClock *clock, GError **error);
void          rc_area_choice_free (RcAreaChoice *choice);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcAreaChoice, rc_area_choice_free)

/* One way to lay an area, its parts whole. */
typedef struct
{
  guint   axis;     /* which of the sites */
  GArray *partings; /* of RcParting: of the doorways */
  GArray *lines;    /* of RcLength: where the strip lines lie in each cell, in order */
} RcAreaWay;

RcAreaWay *rc_area_way_copy (const RcAreaWay *way);
void       rc_area_way_free (RcAreaWay *way); /* NULL is fine */

typedef enum
{
  RC_CHOICE_LIKELY,     /* with a strip line where something changes: no bound */
  RC_CHOICE_ALL,        /* of all */
  RC_CHOICE_CARPET_ONLY /* of all, by their carpet alone */
} RcChoiceScope;

/* The least cost, in the units of RcNestChoice. `cuts` (nullable, of RcNestChoiceCut) gets the cuts of the way found,
 * *own (nullable) what it costs beside them, *way (nullable) the way itself. (transfer full for *way) */
gint64 rc_area_choice_find (const RcAreaChoice *choice, const RcNestPrices *prices, RcChoiceScope scope, GArray *cuts,
                            gint64 *own, RcAreaWay **way);
