/* Where a plan picture lies under the floor: pure functions from an old place to a new one.
 *
 * The picture's top left corner is `at`; it is turned about it counter-clockwise.
 */
#pragma once

#include "job.h"

/* Of a picture `width` pixels wide: its left edge at the box's, as wide as it. */
void rc_picture_edit_fit (RcPlanPicture *picture, guint width, RcBox box);

/* The stretch from-to of the floor is really `length` (> 0) long: the picture is scaled about `from`, and turned about
 * it so that the stretch lies along an axis of the house where it nearly does. FALSE when the two points are one. */
gboolean rc_picture_edit_scale (RcPlanPicture *picture, RcPoint from, RcPoint to, RcLength length);

void rc_picture_edit_move (RcPlanPicture *picture, RcPoint by);
/* About a place of the floor. */
void rc_picture_edit_turn (RcPlanPicture *picture, RcPoint about, gint64 millidegrees);

/* The next lighter one: whole, half, a quarter, hidden, whole again. */
void rc_picture_edit_lighten (RcPlanPicture *picture);
