#include "picture-edit.h"

#include <math.h>

#define NEAR_AXIS_DEGREES 10.0
#define TICKS_MIN         1000            /* for 1000 pixels */
#define TICKS_MAX         (1000000000000) /* so that products stay far from overflow */

void
rc_picture_edit_fit (RcPlanPicture *picture, guint width, RcBox box)
{
  picture->at = (RcPoint){ box.x0, box.y1 };
  picture->turn_millidegrees = 0;
  picture->ticks_per_1000px = CLAMP ((box.x1 - box.x0) * 1000 / MAX (width, 1), TICKS_MIN, TICKS_MAX);
}

void
rc_picture_edit_turn (RcPlanPicture *picture, RcPoint about, gint64 millidegrees)
{
  double radians = (double)millidegrees / 1000 * G_PI / 180, c = cos (radians), s = sin (radians);
  double dx = (double)(picture->at.x - about.x), dy = (double)(picture->at.y - about.y);

  picture->at = (RcPoint){ about.x + llround (dx * c - dy * s), about.y + llround (dx * s + dy * c) };
  picture->turn_millidegrees = (picture->turn_millidegrees + millidegrees) % 360000;
}

gboolean
rc_picture_edit_scale (RcPlanPicture *picture, RcPoint from, RcPoint to, RcLength length)
{
  RcLength shown = rc_point_distance (from, to);

  if (shown == 0 || length <= 0)
    return FALSE;
  double factor = (double)length / (double)shown;
  picture->ticks_per_1000px = CLAMP (llround ((double)picture->ticks_per_1000px * factor), TICKS_MIN, TICKS_MAX);
  picture->at = (RcPoint){ from.x + llround ((double)(picture->at.x - from.x) * factor),
                           from.y + llround ((double)(picture->at.y - from.y) * factor) };
  double angle = atan2 ((double)(to.y - from.y), (double)(to.x - from.x)) * 180 / G_PI;
  double off = angle - round (angle / 90) * 90;
  if (fabs (off) <= NEAR_AXIS_DEGREES)
    rc_picture_edit_turn (picture, from, -llround (off * 1000));
  return TRUE;
}

void
rc_picture_edit_move (RcPlanPicture *picture, RcPoint by)
{
  picture->at.x += by.x;
  picture->at.y += by.y;
}

void
rc_picture_edit_lighten (RcPlanPicture *picture)
{
  picture->strength_percent = picture->strength_percent > 50   ? 50
                              : picture->strength_percent > 25 ? 25
                              : picture->strength_percent > 0  ? 0
                                                               : 100;
}
