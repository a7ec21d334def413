/* Which way the pile may run.
 */
#pragma once

#include "site.h"

/* The direction that most wall length of the largest room runs along or square to, in degrees from 0 to under 90. */
double rc_pile_find_main_degrees (const RcRegion *floor);

/* Of the two ways the pile can lean along an axis, the one that faces the way in (Workspace Training): towards the door
 * that leads out of the area. In degrees; `degrees` where no door says. */
double rc_pile_face_entry (const RcSite *site, const RcRegion *floor, double degrees);
