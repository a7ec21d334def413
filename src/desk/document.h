/* The open job: its state, what it comes to, what is chosen, and the edits.
 *
 * Every edit is a whole new state of the job. It is saved as one step that can be undone, then planned by a thread;
 * better plans replace the first answer until the next edit. A state that cannot be planned is saved all the same: the
 * last plan stays to be shown beside the fault.
 *
 * Signals, all without arguments: "edited" (the job or the measure looked at is another), "planned" (outcome, figures
 * or fault changed), "chosen" (the choice changed), "pointed" (the pointer is over other pieces).
 */
#pragma once

#include <gio/gio.h>

#include "choice.h"
#include "figures.h"
#include "store.h"

#define RC_TYPE_DOCUMENT (rc_document_get_type ())
G_DECLARE_FINAL_TYPE (RcDocument, rc_document, RC, DOCUMENT, GObject)

/* The store must outlive the document. Errors: as rc_store_load_job. */
RcDocument *rc_document_new (RcStore *store, const char *job_id, GError **error);

const RcJob     *rc_document_get_job (RcDocument *self);
const RcMeasure *rc_document_get_measure (RcDocument *self);
RcStore         *rc_document_get_store (RcDocument *self);

/* Another measure of the job (NULL: the last). FALSE when there is none of that id. */
gboolean rc_document_set_measure (RcDocument *self, const char *id);

/* NULL until there has been a plan. Until a state is planned, outcome and figures are those of a state before. Stale:
 * they are to be shown as such, as this state cannot be planned or takes long. */
RcOutcome       *rc_document_get_outcome (RcDocument *self);
gboolean         rc_document_is_planned (RcDocument *self); /* this very state has a plan, or a fault */
gboolean         rc_document_is_settled (RcDocument *self); /* and no better plan will be looked for any more */
gboolean         rc_document_is_stale (RcDocument *self);
const GError    *rc_document_get_fault (RcDocument *self); /* why this state cannot be planned; NULL: it can */
const RcFigures *rc_document_get_figures (RcDocument *self);
const RcFigures *rc_document_get_figures_before (RcDocument *self); /* before the last edit; NULL without one */
gboolean         rc_document_is_busy (RcDocument *self);            /* with a plan that is late, or a better one */
/* While a better plan is looked for, how far that is, 0 to 1, and what it looks at (borrowed; NULL: nothing told yet);
 * below 0 when none is. */
double             rc_document_get_progress (RcDocument *self, const char **what);
const RcPriceBook *rc_document_get_price_book (RcDocument *self);
/* Prices that were changed in the store by its own RcStore: takes them and plans anew, as they weigh in the plan. */
gboolean rc_document_follow_prices (RcDocument *self, GError **error);

/* What the job has already: the stock, what is ordered and cut. follow: takes what the store says now, and plans anew
 * where that is another. */
RcHeld  *rc_document_get_held (RcDocument *self);
gboolean rc_document_follow_stock (RcDocument *self, GError **error);

/* How long a thread looks for better plans once a state is planned; 0: not at all. */
void   rc_document_set_improve_seconds (RcDocument *self, double seconds);
double rc_document_get_improve_seconds (RcDocument *self);

/* A copy of the job to edit. (transfer full) */
RcJob     *rc_document_dup_job (RcDocument *self);
RcMeasure *rc_document_get_measure_of (RcDocument *self, RcJob *job); /* the measure looked at, in that copy */

/* Takes `job` (transfer full) as the new state. `step` names the edit for undo. Edits in a row with the same `key`
 * (nullable), as the letters typed into one field, are one step. FALSE when the store refuses: then nothing has
 * changed, and *error says why. RC_ERROR_CONFLICT: somebody else had changed the job; their state is loaded and shown
 * now, and *error asks to make the edit again. */
gboolean rc_document_commit (RcDocument *self, RcJob *job, const char *step, const char *key, GError **error);
/* Likewise a state that differs in its plan pictures alone: no plan depends on them, so none is made. */
gboolean rc_document_commit_picture (RcDocument *self, RcJob *job, const char *step, GError **error);
/* Ends the run of edits that are one step: the field was left. */
void rc_document_end_step (RcDocument *self);

/* FALSE without error when there is nothing to undo. *step (nullable, transfer full) gets its name. */
gboolean rc_document_undo (RcDocument *self, char **step, GError **error);
gboolean rc_document_redo (RcDocument *self, char **step, GError **error);

/* Loads the job anew when somebody else has changed it: TRUE then. FALSE without error: it is as it was. An error of
 * RC_ERROR_REFERENCE: it was deleted; what is open here stays as it is. Cheap enough to ask every second. */
gboolean rc_document_refresh (RcDocument *self, GError **error);

RcChoice rc_document_get_choice (RcDocument *self);
void     rc_document_choose (RcDocument *self, RcChoice choice);

/* The pieces (of guint: their numbers) under the pointer in any of the views, to be lit in all: one on the floor and
 * the rolls, all that a row of a list is about. Some may not be in the plan any more. */
const GArray *rc_document_get_pointed (RcDocument *self);
void          rc_document_point (RcDocument *self, guint piece);              /* 0: none */
void          rc_document_point_all (RcDocument *self, const GArray *pieces); /* nullable: none */
