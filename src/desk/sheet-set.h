/* All sheets that one outcome can be put on: one of each kind, an order per supplier.
 */
#pragma once

#include "offer-plans.h"
#include "sheet.h"

typedef struct
{
  RcOutcome *outcome;
  char      *language;     /* of the sheets; NULL: the program's own */
  GPtrArray *quantities;   /* worded in that language; NULL: the outcome's */
  RcQuote   *quote;        /* likewise */
  GPtrArray *plans;        /* of RcOfferPlan; nullable */
  GPtrArray *alternatives; /* of RcQuote: those of the plans that have a price, worded likewise */
  GPtrArray *orders;       /* of RcOrder */
  GArray    *sheets;       /* of RcSheetEntry */
} RcSheetSet;

typedef struct
{
  RcSheetKind kind;
  int         order; /* index in orders; -1 for the other kinds */
} RcSheetEntry;

/* Without a quotation (no price) only the sheets of the plan. `plans` (of RcOfferPlan, nullable): the job's other ways,
 * side by side. `language` (nullable): of all words that are not the job's. For the main thread. (transfer full) */
RcSheetSet *rc_sheet_set_new (RcOutcome *outcome, const GPtrArray *plans, const char *language);
void        rc_sheet_set_free (RcSheetSet *set);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcSheetSet, rc_sheet_set_free)

/* The first sheet of a kind; -1 when the set has none. */
int   rc_sheet_set_find (const RcSheetSet *set, RcSheetKind kind);
char *rc_sheet_set_dup_label (const RcSheetSet *set, guint sheet);     /* "Order to Lowland Mills" */
char *rc_sheet_set_dup_file_name (const RcSheetSet *set, guint sheet); /* "J-1-quotation.pdf", no path in it */

/* What to draw the sheet from; it borrows from the set, and `number` (nullable). */
void rc_sheet_set_get_data (const RcSheetSet *set, guint sheet, RcPaper paper, const char *number, RcSheetData *data);
RcSheetKind rc_sheet_set_get_kind (const RcSheetSet *set, guint sheet);
/* NULL for all kinds but orders. */
const RcOrder *rc_sheet_set_get_order (const RcSheetSet *set, guint sheet);
