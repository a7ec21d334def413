/* What can be said about the ways of laying an area: which differ, what they are called, what they cost the customer.
 */
#pragma once

#include "sheet.h"

/* Indices (GArray of guint) of the options of which none is another's double. */
GArray *rc_option_dup_distinct (const RcAreaPlan *area_plan);

/* TRUE for the option taken, or the one it is the double of. */
gboolean rc_option_is_taken (const RcAreaPlan *area_plan, guint index);

/* All the names of one option: "Least cost, Least carpet". */
char *rc_option_dup_names (const RcAreaPlan *area_plan, guint index);

guint rc_option_count_cross_seams (const RcOption *option);

/* Carpet and seaming of one option at what the customer pays, before tax, the area cut from a roll of its own. FALSE
 * when the price book has no price for what it needs. */
gboolean rc_option_compute_price (const RcSheetData *data, const RcFloorArea *area, const RcOption *option,
                                  RcMoney *price);
