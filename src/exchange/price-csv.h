/* The price book as CSV, in and out. */
#pragma once

#include "quote.h"

/* Header row: item,kind,name,supplier,unit,cost,sale,valid_from,valid_to, then goods' columns (roll_width,
 * usable_width, repeat_length, repeat_width, match, length_step, full_roll, pack, pack_unit, tape_width, covers).
 * Errors name line and column. (transfer full) */
RcPriceBook *rc_price_csv_parse (const char *csv, const char *name, const RcCurrency *currency, GError **error);
char        *rc_price_csv_format (const RcPriceBook *book);
