/* The job as a whole: customer, measures, settings.
 */
#pragma once

#include "panel.h"

#define RC_TYPE_JOB_PANEL (rc_job_panel_get_type ())
G_DECLARE_FINAL_TYPE (RcJobPanel, rc_job_panel, RC, JOB_PANEL, RcPanel)

void rc_job_panel_focus_title (RcJobPanel *self);
