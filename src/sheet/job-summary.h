/* The parts of the job summary.
 */
#pragma once

#include "sheet-head.h"

/* What the net is made of, as a bar and in figures; nothing without a quotation. */
void rc_summary_add_money (RcSheetWork *work);
/* Cost and margin line by line, and of the alternatives. */
void rc_summary_add_lines (RcSheetWork *work);

/* What is laid, storey by storey, and the rolls it comes off; nothing where there is nothing. */
void rc_summary_add_floors (RcSheetWork *work);
void rc_summary_add_rolls (RcSheetWork *work);
