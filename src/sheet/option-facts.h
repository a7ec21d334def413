/* What can be said about the ways of laying an area: what they take, what they cost the customer. */
#pragma once

#include "sheet.h"

guint rc_option_count_cross_seams (const RcOption *option);

/* Carpet and seaming of one option at what the customer pays, before tax, the area cut from a roll of its own. FALSE
 * when the price book has no price for what it needs. */
gboolean rc_option_compute_prices (const RcSheetData *data, const RcFloorArea *area, const RcOption *option,
                                   RcMoney *carpet, RcMoney *seaming);

/* Both together. */
gboolean rc_option_compute_price (const RcSheetData *data, const RcFloorArea *area, const RcOption *option,
                                  RcMoney *price);
