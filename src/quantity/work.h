/* Work that is charged by a rate: laying, seaming, stairs, fixed sums. */
#pragma once

#include "job.h"

typedef enum
{
  RC_WORK_NONE,       /* a line of goods */
  RC_WORK_LAY,        /* laying, by floor area */
  RC_WORK_SIDE_SEAM,  /* side seams, by length */
  RC_WORK_CROSS_SEAM, /* cross seams, each, whatever its length */
  RC_WORK_STAIR,      /* each step */
  RC_WORK_FITTING,    /* round each thing on the floor that is counted */
  RC_WORK_FIXED,      /* once a job: call-out, moving in */
  RC_N_WORKS
} RcWork;

/* Stable word for files and price books: "", "lay", "side-seam", "cross-seam", "stair", "fitting", "fixed". */
const char *rc_work_get_name (RcWork work);

/* Translated, for people; "" for RC_WORK_NONE. */
const char *rc_work_get_label (RcWork work);

/* Reads a stable word; "" is RC_WORK_NONE. FALSE and RC_ERROR_PARSE naming the words allowed; *work is then
 * untouched. */
gboolean rc_work_parse (const char *name, RcWork *work, GError **error);

/* The unit the work is counted in: laying m2 or sq yd, side seams m or ft, everything else each. */
RcUnit rc_work_get_unit (RcWork work, RcUnitSystem units);
