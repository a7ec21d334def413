#include "cutout.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "wall-arc.h"
#include "words.h"

#define NEAR 3 /* ticks: rounding of sloping sides */

static const char *const kind_names[RC_N_CUTOUT_KINDS]
    = { "other", "hearth", "island", "column", "stair-opening", "fixture" };
static const char *const kind_labels[RC_N_CUTOUT_KINDS]
    = { N_ ("something else"), N_ ("hearth"), N_ ("island"), N_ ("column"), N_ ("stair opening"), N_ ("fixture") };

RcCutout *
rc_cutout_new (RcCutoutKind kind)
{
  RcCutout *cutout = g_new0 (RcCutout, 1);

  cutout->kind = kind;
  cutout->points = rc_ring_new ();
  cutout->strip = kind != RC_CUTOUT_STAIR_OPENING;
  cutout->counted = TRUE;
  return cutout;
}

RcCutout *
rc_cutout_new_take (RcCutoutKind kind, RcRing *points)
{
  RcCutout *cutout = rc_cutout_new (kind);

  g_array_unref (cutout->points);
  cutout->points = points;
  return cutout;
}

RcCutout *
rc_cutout_new_round (RcCutoutKind kind, RcPoint middle, RcLength diameter)
{
  RcCutout *cutout = rc_cutout_new (kind);

  cutout->diameter = diameter;
  g_array_append_val (cutout->points, middle);
  return cutout;
}

RcCutout *
rc_cutout_copy (const RcCutout *cutout)
{
  RcCutout *copy = g_memdup2 (cutout, sizeof *cutout);

  copy->name = g_strdup (cutout->name);
  copy->points = rc_ring_copy (cutout->points);
  return copy;
}

void
rc_cutout_free (RcCutout *cutout)
{
  if (cutout == NULL)
    return;
  g_free (cutout->name);
  g_array_unref (cutout->points);
  g_free (cutout);
}

void
rc_cutout_move (RcCutout *cutout, RcPoint by)
{
  for (guint i = 0; i < cutout->points->len; i++)
    {
      RcPoint *point = rc_ring_get (cutout->points, i);
      *point = (RcPoint){ point->x + by.x, point->y + by.y };
    }
}

/* Two half circles that bow into the room, from the west end of the diameter to the east end and back. */
static RcRing *
new_circle (RcPoint middle, RcLength diameter)
{
  RcRing  *ring = rc_ring_new ();
  RcLength radius = diameter / 2;
  RcPoint  west = { middle.x - radius, middle.y }, east = { middle.x + diameter - radius, middle.y };

  g_array_append_val (ring, west);
  rc_wall_arc_append (ring, west, east, -radius, FALSE);
  g_array_append_val (ring, east);
  rc_wall_arc_append (ring, east, west, -radius, FALSE);
  return ring;
}

RcRing *
rc_cutout_compute_ring (const RcCutout *cutout)
{
  if (cutout->diameter == 0)
    return rc_ring_copy (cutout->points);
  return cutout->points->len == 1 ? new_circle (*rc_ring_get (cutout->points, 0), cutout->diameter) : rc_ring_new ();
}

/* How long the stretch is that side a-b has in common with side c-d. */
static double
compute_common (RcPoint a, RcPoint b, RcPoint c, RcPoint d)
{
  double dx = (double)(b.x - a.x), dy = (double)(b.y - a.y), length = hypot (dx, dy);
  double cx = (double)(c.x - a.x), cy = (double)(c.y - a.y), ex = (double)(d.x - a.x), ey = (double)(d.y - a.y);

  if (length == 0 || fabs (cx * dy - cy * dx) > NEAR * length || fabs (ex * dy - ey * dx) > NEAR * length)
    return 0;
  double from = (cx * dx + cy * dy) / length, to = (ex * dx + ey * dy) / length;
  return MAX (0, MIN (length, MAX (from, to)) - MAX (0, MIN (from, to)));
}

static double
sum_common (const RcRing *ring, RcPoint at, const RcRing *edge)
{
  double sum = 0;

  for (guint i = 0; i < ring->len; i++)
    for (guint k = 0; k < edge->len; k++)
      {
        RcPoint a = *rc_ring_get (ring, i), b = *rc_ring_get (ring, (i + 1) % ring->len);
        sum += compute_common ((RcPoint){ a.x + at.x, a.y + at.y }, (RcPoint){ b.x + at.x, b.y + at.y },
                               *rc_ring_get (edge, k), *rc_ring_get (edge, (k + 1) % edge->len));
      }
  return sum;
}

RcLength
rc_cutout_compute_edge (const RcCutout *cutout, const RcPolygon *floor, RcPoint at)
{
  g_autoptr (GArray) ring = rc_cutout_compute_ring (cutout);
  double sum = sum_common (ring, at, floor->outer);

  for (guint i = 0; i < floor->holes->len; i++)
    sum += sum_common (ring, at, g_ptr_array_index (floor->holes, i));
  return llround (sum);
}

const char *
rc_cutout_get_label (const RcCutout *cutout)
{
  return cutout->name && *cutout->name ? cutout->name : rc_cutout_kind_get_label (cutout->kind);
}

const char *
rc_cutout_kind_get_name (RcCutoutKind kind)
{
  g_return_val_if_fail ((guint)kind < RC_N_CUTOUT_KINDS, "");
  return kind_names[kind];
}

const char *
rc_cutout_kind_get_label (RcCutoutKind kind)
{
  g_return_val_if_fail ((guint)kind < RC_N_CUTOUT_KINDS, "");
  return _ (kind_labels[kind]);
}

gboolean
rc_cutout_kind_parse (const char *name, RcCutoutKind *kind, GError **error)
{
  guint index;

  if (!rc_words_parse (kind_names, G_N_ELEMENTS (kind_names), _ ("kind of cut-out"), name, &index, error))
    return FALSE;
  *kind = index;
  return TRUE;
}
