/* One function for each kind of sheet: lays its pages out, from a new page on.
 */
#pragma once

#include "sheet-head.h"

void rc_seam_plan_lay_out (RcSheetWork *work);
void rc_fitters_sheet_lay_out (RcSheetWork *work);
void rc_cut_list_lay_out (RcSheetWork *work);
void rc_quotation_lay_out (RcSheetWork *work);
void rc_order_sheet_lay_out (RcSheetWork *work);
void rc_options_sheet_lay_out (RcSheetWork *work);
void rc_alternatives_lay_out (RcSheetWork *work);
void rc_roll_labels_lay_out (RcSheetWork *work);
void rc_job_summary_lay_out (RcSheetWork *work);

/* The alternatives side by side on a page of their own; nothing when there are none. */
void rc_alternatives_flow (RcSheetWork *work);
