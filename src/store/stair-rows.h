/* Stairs as rows, and rows as stairs, with their turns. */
#pragma once

#include "job.h"
#include "row-set.h"

void     rc_stair_rows_add (const RcMeasure *measure, RcRowSet *rows);
gboolean rc_stair_rows_build (const RcRowSet *rows, RcJob *job, GError **error);

/* Stores held the only turn of a stair in columns of its row once, which are read as the first turn and written as
 * none. Makes rows that were read what would be written today but for that turn; TRUE where there is one. */
gboolean rc_stair_rows_drop_turns (RcRowSet *rows);
