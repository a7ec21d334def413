/* CUTS.csv for `rowcut-cli nest`: label,width,length,quantity and optionally repeat,phase,lot. */
#pragma once

#include "nest.h"

/* Appends the cuts to problem->cuts. Errors name file, line and column. */
gboolean rc_cuts_csv_parse (const char *csv, const char *name, RcLengthUnit bare_unit, RcNestProblem *problem,
                            GError **error);
