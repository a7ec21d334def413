/* A job file brought through the steps that a command needs: read, completed, planned, measured out, priced.
 *
 * What the file leaves out comes from the store: prices; goods that it only names; sundries; and rolls when it carries
 * neither prices nor rolls. A file that is complete by itself opens the store only to see what is
 * accepted of the job, and makes none for that.
 */
#pragma once

#include "command.h"
#include "sheet.h"

typedef struct
{
  const RcJobOptions *options; /* borrowed */
  RcJob              *job;
  RcPriceBook        *book;
  RcMeasure          *measure;      /* of the job */
  RcPlan             *plan;         /* NULL until planned */
  GPtrArray          *quantities;   /* of RcQuantityLine; NULL until measured out */
  RcQuote            *quote;        /* NULL until priced */
  GPtrArray          *alternatives; /* of RcQuote, each named; NULL until they are priced */
  RcHeld             *held;         /* what the job has already, where it is planned with that; else NULL */
  RcHeld             *known;        /* the same where it is only looked at; NULL until it is */
  gboolean            store_read;
} RcJobWork;

/* Reads the job and finds the measure. `options` must outlive the work. (transfer full) */
RcJobWork *rc_job_work_new (const char *path, const RcJobOptions *options, GError **error);
void       rc_job_work_free (RcJobWork *work);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcJobWork, rc_job_work_free)

/* Each does the steps before it that are not done yet. */
gboolean rc_job_work_plan (RcJobWork *work, GError **error);
gboolean rc_job_work_measure_out (RcJobWork *work, GError **error);
gboolean rc_job_work_price (RcJobWork *work, GError **error);

gboolean rc_job_work_price_alternatives (RcJobWork *work, GError **error); /* those of the job's offer */

/* From now on the job, which was read from `path`, is planned with what the store says is cut, ordered and kept for it;
 * what is as the measure that it was cut or ordered by stays as that lays it (rc_held_find_begun_by). */
gboolean rc_job_work_count_on_held (RcJobWork *work, const char *path, GError **error);

/* Looks in the store, where there is one, for what the customer has accepted: sheets are then held against it. */
gboolean rc_job_work_look_at_held (RcJobWork *work, GError **error);

/* The orders, priced; of a job planned with what it has, what is still to be ordered. Each in its supplier's language,
 * unless the program was told to write in `language`. (transfer full) GPtrArray of RcOrder. */
GPtrArray *rc_job_work_order (RcJobWork *work, const char *language, GError **error);

/* What the job goes by: its number, or its id when it has none yet. */
const char *rc_job_work_get_number (const RcJobWork *work);

/* What sheets of the job are drawn from; for an order's sheet set `order`. Borrows from the work. */
RcSheetData rc_job_work_get_sheet_data (const RcJobWork *work, RcPaper paper);
