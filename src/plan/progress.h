/* How far a plan has come, told while it is being made. */
#pragma once

#include "plan.h"

typedef struct
{
  const RcPlan       *plan;
  const RcPlanParams *params;
  RcPlanWeightsFunc   weights;
  gpointer            weights_data;
  gint64              start_us;
  gint64              work_us;        /* with an effort: spent so far */
  GThread            *thread;         /* that asked for the plan */
  GMutex              lock;           /* on what follows */
  RcMoney            *costs, *bounds; /* of each of the job's goods, as far as is known */
} RcProgress;

/* All arguments outlive it. */
void rc_progress_init (RcProgress *progress, const RcPlan *plan, const RcPlanParams *params, RcPlanWeightsFunc weights,
                       gpointer weights_data);
void rc_progress_clear (RcProgress *progress);

/* The time as the plan counts it: that which passes, or with an effort the work done. */
gint64 rc_progress_get_us (const RcProgress *progress);
void   rc_progress_add_work (RcProgress *progress, gint64 us);

/* Of the areas planned so far, each by itself. */
void rc_progress_note_areas (RcProgress *progress);

/* All that is laid in the carpet costs so much as it is chosen now. */
void rc_progress_note_carpet (RcProgress *progress, const RcGoods *carpet, RcMoney cost);

/* And at least so much, however it is chosen; of what was noted before the greater counts. */
void rc_progress_note_bound (RcProgress *progress, const RcGoods *carpet, RcMoney bound);

/* Tells the one who asked for the plan what comes next: the name of an area or a carpet. Only from that one's own
 * thread: what others look at meanwhile is not told. A first answer tells nothing. */
void rc_progress_tell (RcProgress *progress, const char *what);
