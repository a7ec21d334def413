/* The rows of an area's pins. */
#pragma once

#include "job.h"
#include "row-set.h"

void     rc_pin_rows_add (const RcMeasure *measure, const RcFloorArea *area, RcRowSet *rows);
gboolean rc_pin_rows_build (const RcRowSet *rows, RcJob *job, GError **error);
