#include "viewport.h"

#include <math.h>

RcView
rc_viewport_pan (RcView view, double dx, double dy)
{
  view.x0 += dx;
  view.y0 += dy;
  return view;
}

RcView
rc_viewport_zoom (RcView view, double factor, double at_x, double at_y)
{
  g_return_val_if_fail (factor > 0, view);

  double scale = CLAMP (view.scale * factor, RC_VIEWPORT_SCALE_MIN, RC_VIEWPORT_SCALE_MAX);
  double applied = scale / view.scale;
  view.x0 = at_x + (view.x0 - at_x) * applied;
  view.y0 = at_y + (view.y0 - at_y) * applied;
  view.scale = scale;
  return view;
}

RcPoint
rc_viewport_to_house (RcView view, double x, double y)
{
  return (RcPoint){ llround ((x - view.x0) / view.scale), llround ((view.y0 - y) / view.scale) };
}

void
rc_viewport_from_house (RcView view, RcPoint point, double *x, double *y)
{
  *x = view.x0 + point.x * view.scale;
  *y = view.y0 - point.y * view.scale;
}

RcView
rc_viewport_resize (RcView view, double old_width, double old_height, double width, double height)
{
  return rc_viewport_pan (view, (width - old_width) / 2, (height - old_height) / 2);
}
