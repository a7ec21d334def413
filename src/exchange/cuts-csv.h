/* CUTS.csv for `rowcut-cli nest`: a header row label,width,length,quantity and optionally repeat,phase,lot, in any
 * order. Cuts of one lot come from rolls of one dye lot. A quotation mark inside a field is an inch. */
#pragma once

#include "nest.h"

/* Appends the cuts to problem->cuts; `name` is what errors call the file. Errors (RC_ERROR_FORMAT) name file, line and
 * column; cuts read before the fault stay appended. */
gboolean rc_cuts_csv_parse (const char *csv, const char *name, RcLengthUnit bare_unit, RcNestProblem *problem,
                            GError **error);
