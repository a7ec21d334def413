/* What people measure in, and print on: as the open job does, else as is usual on this desktop. */
#pragma once

#include "sheet.h"

RcUnitSystem rc_usual_units_find (void);

/* Of the job; NULL: the usual ones here. */
const RcLengthStyle *rc_usual_units_get_style (const RcJob *job);
RcLengthUnit         rc_usual_units_get_bare (const RcJob *job);
/* Letter where the desktop prints on Letter. */
RcPaper rc_usual_paper_find (void);
