/* Which opening of one room is the same as which of another.
 */
#pragma once

#include "job.h"

typedef struct
{
  const RcRoom    *room;
  const RcOpening *opening;
  const RcRoom    *other;         /* nullable: leads outside or to a room not measured */
  const RcOpening *other_opening; /* nullable: measured from this side only */
} RcDoorLink;

/* Links of every opening of the measure, by its RcOpening. Links are mutual. Errors (RC_ERROR_REFERENCE): a room or
 * opening named that is not there, a room that leads to itself, an opening named by two. (transfer full) */
GHashTable *rc_door_links_new (const RcMeasure *measure, GError **error);

/* "Hall: door D1"; (transfer full) */
char *rc_door_link_describe (const RcDoorLink *link);
