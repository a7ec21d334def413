/* What is done with a roll, written into a few fields: received, corrected, reserved for the open job, cut. */
#pragma once

#include <gtk/gtk.h>

#include "plan.h"
#include "stock-line.h"

#define RC_TYPE_ROLL_FORM (rc_roll_form_get_type ())
G_DECLARE_FINAL_TYPE (RcRollForm, rc_roll_form, RC, ROLL_FORM, GtkBox)

typedef enum
{
  RC_ROLL_RECEIVE,
  RC_ROLL_CORRECT,
  RC_ROLL_RESERVE,
  RC_ROLL_CUT,
} RcRollDoing;

/* What the form is about. */
typedef struct
{
  RcRollDoing        doing;
  const RcStockLine *line; /* the roll; for RECEIVE NULL, or one like it */
  const RcJob       *job;  /* the open one; nullable but for RESERVE and CUT */
  const RcPlan      *plan; /* of the job; nullable */
  const RcPriceBook *book;
} RcRollTask;

/* Signals: "done" (a translated text that says what was done): the store has it. "refused" (a text that says why not).
 * "left": Escape or Cancel. */
void rc_roll_form_open (RcRollForm *self, RcStore *store, const RcRollTask *task);
/* As Return in a field. FALSE when it was refused. */
gboolean rc_roll_form_do (RcRollForm *self);
