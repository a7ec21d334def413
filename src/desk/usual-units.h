/* What people measure in: as the open job does, else by the desktop's locale. */
#pragma once

#include "job.h"

RcUnitSystem rc_usual_units_find (void);

/* Of the job; NULL: the usual ones here. */
const RcLengthStyle *rc_usual_units_get_style (const RcJob *job);
RcLengthUnit         rc_usual_units_get_bare (const RcJob *job);
