/* Small jobs read out of any bytes, for a fuzzing engine: each byte settles one thing, so that a few bytes changed are
 * a job changed a little, and where the bytes end all else is at its plainest. */
#pragma once

#include "plan.h"

/* One to four rooms in a row, at any angle, joined by doors or not, in one or two areas, with what an estimator may
 * have measured, pinned and in stock. Most pass rc_job_check, not all. (transfer full) */
RcJob *make_job_from_bytes (const guint8 *data, gsize size, RcPlanWeights *weights, guint64 *effort);
