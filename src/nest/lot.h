/* Which dye lot each group of cuts comes from. */
#pragma once

#include "layout.h"

/* Decides task->lot_of_group. Returns NULL, or why no lot can hold some group (transfer full). */
char *rc_nest_lot_choose (RcNestTask *task, RcNestSpot *spots);
