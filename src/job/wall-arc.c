#include "wall-arc.h"

#include <math.h>

/* A tenth less than allowed, for the rounding to ticks. */
#define MAX_OFF (0.9 * RC_WALL_ARC_MAX_OFF)

/* The arc seen from its chord: u along the chord, n square to it towards the bulge. */
typedef struct
{
  double centre_x, centre_y, radius;
  double ux, uy, nx, ny;
  double half_angle; /* from the apex to either end */
} Arc;

static void
arc_init (Arc *arc, RcPoint from, RcPoint to, RcLength bow, gboolean right)
{
  double dx = to.x - from.x, dy = to.y - from.y;
  double chord = hypot (dx, dy);
  double rise = fabs ((double)bow);
  double side = (right ? 1.0 : -1.0) * (bow > 0 ? 1.0 : -1.0);

  arc->ux = dx / chord;
  arc->uy = dy / chord;
  arc->nx = side * arc->uy;
  arc->ny = side * -arc->ux;
  arc->radius = (chord * chord / 4 + rise * rise) / (2 * rise);
  arc->half_angle = 2 * atan (2 * rise / chord);
  arc->centre_x = (from.x + to.x) / 2.0 + (rise - arc->radius) * arc->nx;
  arc->centre_y = (from.y + to.y) / 2.0 + (rise - arc->radius) * arc->ny;
}

/* The point `radius` from the centre, `angle` from the apex towards the arc's end. */
static RcPoint
arc_get_point (const Arc *arc, double radius, double angle)
{
  double  along_n = radius * cos (angle), along_u = radius * sin (angle);
  RcPoint point = { llround (arc->centre_x + along_n * arc->nx + along_u * arc->ux),
                    llround (arc->centre_y + along_n * arc->ny + along_u * arc->uy) };

  return point;
}

void
rc_wall_arc_append (RcRing *ring, RcPoint from, RcPoint to, RcLength bow, gboolean right)
{
  Arc    arc;
  double step;
  int    n;

  if (bow == 0 || (from.x == to.x && from.y == to.y))
    return;
  arc_init (&arc, from, to, bow, right);
  n = MAX (2, (int)ceil (arc.half_angle / acos (arc.radius / (arc.radius + MAX_OFF))));
  step = 2 * arc.half_angle / n;
  if (bow > 0)
    for (int i = 0; i < n; i++)
      {
        RcPoint point = arc_get_point (&arc, arc.radius / cos (step / 2), -arc.half_angle + (i + 0.5) * step);

        g_array_append_val (ring, point);
      }
  else
    for (int i = 1; i < n; i++)
      {
        RcPoint point = arc_get_point (&arc, arc.radius, -arc.half_angle + i * step);

        g_array_append_val (ring, point);
      }
}
