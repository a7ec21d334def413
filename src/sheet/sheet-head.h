/* What every sheet begins with, and the state of laying one out.
 */
#pragma once

#include "page.h"
#include "sheet.h"

typedef struct
{
  RcSheetKind        kind;
  const RcSheetData *data;
  RcPages           *pages;
  RcFlow             flow;
} RcSheetWork;

/* A label with a value under it; values may have several lines. */
typedef struct
{
  const char *label;
  char       *value; /* freed by rc_sheet_add_fields */
  double      share; /* of the width */
} RcSheetField;

/* Sheets for the shop and the fitters: the sheet's name, the job, the customer, what was measured when. The flow must
 * stand on an empty page. */
void rc_sheet_add_job_head (RcSheetWork *work);

/* Letters: the shop's letterhead, the sheet's name, to whom, job, number and date; with `deliver_to` (nullable) where
 * goods are sent to. */
void rc_sheet_add_letter_head (RcSheetWork *work, const char *to_label, const char *to, const char *deliver_to);

/* A strip of fields between two thin rules. */
void rc_sheet_add_fields (RcSheetWork *work, RcSheetField *fields, guint n_fields);

/* A line to write on, with its label under it. */
void rc_sheet_add_signature (RcSheetWork *work, double x, double width, const char *label);

/* "Q-12", or "Draft". */
const char *rc_sheet_get_number (const RcSheetData *data);

/* Running header and footer. (transfer full) */
char *rc_sheet_dup_about (RcSheetKind kind, const RcSheetData *data);
char *rc_sheet_dup_foot (const RcSheetData *data);
