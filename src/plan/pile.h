/* Which way the pile may run.
 */
#pragma once

#include "site.h"

/* The direction that most wall length of the largest room runs along or square to, in degrees from 0 to under 90. */
double rc_pile_find_main_degrees (const RcRegion *floor);

/* Of the two ways the pile can lean along an axis, the one that faces the way in (Workspace Training): towards the door
 * that leads out of the area. In degrees; `degrees` where no door says. */
double rc_pile_face_entry (const RcSite *site, const RcRegion *floor, double degrees);

/* Pile directions are tried along the main wall direction and square to it. */
#define RC_PILE_MOST_AXES 2

/* The directions, in degrees, that the area's pile is tried along on its floor, up to RC_PILE_MOST_AXES; returns how
 * many. *is_pinned: the pile leans just that way, as the estimator has it; else it may lean either way along it. */
guint rc_pile_list_axes (const RcFloorArea *area, const RcRegion *floor, double *degrees, gboolean *is_pinned);
