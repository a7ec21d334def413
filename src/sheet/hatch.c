#include "hatch.h"

#include <math.h>
#include <stdlib.h>

#define MOST_LINES 20000

static int
compare_doubles (const void *a, const void *b)
{
  double x = *(const double *)a, y = *(const double *)b;

  return (x > y) - (x < y);
}

/* Where a ring's edges cross the line "distance across = v": their distances along it. */
static void
collect_crossings (const GArray *ring, double cosine, double sine, double v, GArray *crossings)
{
  for (guint i = 0; i < ring->len; i++)
    {
      const RcSpot *a = &g_array_index (ring, RcSpot, i);
      const RcSpot *b = &g_array_index (ring, RcSpot, (i + 1) % ring->len);
      double        va = a->y * cosine - a->x * sine, vb = b->y * cosine - b->x * sine;

      /* Half open: a corner on the line counts for one of its edges only. */
      if ((va <= v) != (vb <= v))
        {
          double ua = a->x * cosine + a->y * sine, ub = b->x * cosine + b->y * sine;
          double u = ua + (ub - ua) * (v - va) / (vb - va);

          g_array_append_val (crossings, u);
        }
    }
}

/* Narrows the range of lines to those that meet the rectangle. */
static void
narrow_to_visible (const RcExtent *visible, double cosine, double sine, double *least, double *most)
{
  double corners[4] = {
    visible->y0 * cosine - visible->x0 * sine,
    visible->y0 * cosine - visible->x1 * sine,
    visible->y1 * cosine - visible->x0 * sine,
    visible->y1 * cosine - visible->x1 * sine,
  };

  qsort (corners, 4, sizeof (double), compare_doubles);
  *least = MAX (*least, corners[0]);
  *most = MIN (*most, corners[3]);
}

void
rc_hatch_add_path (cairo_t *cr, const GPtrArray *rings, double degrees, double spacing, const RcExtent *visible)
{
  double cosine = cos (degrees * G_PI / 180), sine = -sin (degrees * G_PI / 180);
  double least = G_MAXDOUBLE, most = -G_MAXDOUBLE;
  g_autoptr (GArray) crossings = g_array_new (FALSE, FALSE, sizeof (double));

  for (guint r = 0; r < rings->len; r++)
    {
      const GArray *ring = g_ptr_array_index (rings, r);

      for (guint i = 0; i < ring->len; i++)
        {
          const RcSpot *spot = &g_array_index (ring, RcSpot, i);
          double        v = spot->y * cosine - spot->x * sine;

          least = MIN (least, v);
          most = MAX (most, v);
        }
    }
  if (visible)
    narrow_to_visible (visible, cosine, sine, &least, &most);
  if (!(spacing > 0) || !(least < most) || (most - least) / spacing > MOST_LINES)
    return;
  for (double line = ceil (least / spacing); line * spacing < most; line++)
    {
      double v = line * spacing;

      g_array_set_size (crossings, 0);
      for (guint r = 0; r < rings->len; r++)
        collect_crossings (g_ptr_array_index (rings, r), cosine, sine, v, crossings);
      qsort (crossings->data, crossings->len, sizeof (double), compare_doubles);
      for (guint i = 0; i + 1 < crossings->len; i += 2)
        {
          double from = g_array_index (crossings, double, i), to = g_array_index (crossings, double, i + 1);

          cairo_move_to (cr, from * cosine - v * sine, from * sine + v * cosine);
          cairo_line_to (cr, to * cosine - v * sine, to * sine + v * cosine);
        }
    }
}
