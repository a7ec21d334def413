/* What changes between two plans of one job, for rooms that were measured again. */
#pragma once

#include "plan.h"

typedef struct _RcQuote RcQuote;

typedef enum
{
  RC_CHANGE_ADDED,
  RC_CHANGE_REMOVED,
  RC_CHANGE_CHANGED,
} RcChangeKind;

typedef struct
{
  RcChangeKind kind;
  char        *what;   /* stable: "room", "wall", "opening", "stair", "cut", "carpet", "item", "total" */
  char        *name;   /* translated: "Living room", "Living room, wall 2", "piece 3, Hall", "Seam tape" */
  char        *before; /* as printed, with its unit; NULL when added */
  char        *after;  /* NULL when removed */
} RcChange;

/* Rooms added, gone or of another area; walls of another length, wall by wall where their number is the same; doors,
 * archways and windows; stairs; cuts; roll length of carpet; quantities; net, tax and total. Rooms, walls, openings and
 * stairs are told apart by their ids and places in the measure. Cuts are told apart by size: one that keeps its carpet,
 * width and length is no change, whatever its number; of the rest, those of one room and kind are paired in the order
 * of their numbers. Lengths and areas are printed in the style of `after`'s job. Either side's plan and quote belong
 * together; both quotes may be NULL, which leaves quantities and price out. Nothing changed: empty. (transfer full)
 * GPtrArray of RcChange. */
GPtrArray *rc_compare (const RcPlan *before, const RcQuote *quote_before, const RcPlan *after,
                       const RcQuote *quote_after);
void       rc_change_free (RcChange *change);

const char *rc_change_kind_get_name (RcChangeKind kind); /* stable: "added", "removed", "changed" */
