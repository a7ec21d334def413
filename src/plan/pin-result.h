/* What became of the pins: which were kept, which contradict each other, what each costs. */
#pragma once

#include "progress.h"

/* Fills the `pins` of the plan's areas once options are chosen and cut. Costs are found only where the plan was given
 * time, and until `end_us` (rc_progress_get_us): those left then stay unknown. */
void rc_pin_results_fill (RcPlan *plan, const RcProgress *progress, gint64 end_us);
