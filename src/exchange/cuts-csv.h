/* CUTS.csv and ROLLS.csv for `rowcut-cli nest`. A quotation mark inside a field is an inch. Errors (RC_ERROR_FORMAT)
 * name file, line and column; `name` is what they call the file; what was read before the fault stays appended. */
#pragma once

#include "nest.h"

/* Appends cuts to problem->cuts. Columns, in any order: label, width, length, quantity, and optionally
 *   repeat, phase, match                        the pattern along the roll
 *   across_repeat, across_phase, across_match   the pattern across it
 *   lot                                         cuts of one lot come from rolls of one dye lot
 *   roll, along, across                         where the cut is pinned: a roll, counted from 1, and places on it */
gboolean rc_cuts_csv_parse (const char *csv, const char *name, RcLengthUnit bare_unit, RcNestProblem *problem,
                            GError **error);

/* Appends rolls to problem->rolls. Columns, in any order: length, and optionally
 *   name, count, width, lot
 *   value             of a metre, like 12.50: the cheaper is used first
 *   trim, trim_end    off the roll's start and its end
 *   damaged           stretches that cannot be used: 2 m to 2.5 m; 7 m to 7.2 m
 * An empty length is a roll to be bought, as long as it must be. A roll without value counts RC_CSV_STOCK_VALUE a
 * metre, one to be bought RC_CSV_BUY_VALUE. */
gboolean rc_rolls_csv_parse (const char *csv, const char *name, RcLengthUnit bare_unit, RcNestProblem *problem,
                             GError **error);

enum
{
  RC_CSV_MOST_ROLLS = 10000,
  RC_CSV_STOCK_VALUE = 100, /* hundredths */
  RC_CSV_BUY_VALUE = 200
};
