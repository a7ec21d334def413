#include "polygon.h"

#include "wide.h"

#include <math.h>

/* Rings, polygons, regions: making and copying */

RcRing *
rc_ring_new (void)
{
  return g_array_new (FALSE, FALSE, sizeof (RcPoint));
}

RcRing *
rc_ring_new_from_points (const RcPoint *points, guint n_points)
{
  RcRing *ring = g_array_sized_new (FALSE, FALSE, sizeof (RcPoint), n_points);

  return n_points > 0 ? g_array_append_vals (ring, points, n_points) : ring;
}

RcRing *
rc_ring_copy (const RcRing *ring)
{
  return rc_ring_new_from_points ((const RcPoint *)ring->data, ring->len);
}

static GPtrArray *
ring_list_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
}

RcPolygon *
rc_polygon_new (void)
{
  RcPolygon *polygon = g_new0 (RcPolygon, 1);

  polygon->outer = rc_ring_new ();
  polygon->holes = ring_list_new ();
  return polygon;
}

RcPolygon *
rc_polygon_new_take (RcRing *outer)
{
  RcPolygon *polygon = g_new0 (RcPolygon, 1);

  polygon->outer = outer;
  polygon->holes = ring_list_new ();
  return polygon;
}

RcPolygon *
rc_polygon_new_from_box (RcBox box)
{
  const RcPoint corners[] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };

  return rc_polygon_new_take (rc_ring_new_from_points (corners, G_N_ELEMENTS (corners)));
}

RcPolygon *
rc_polygon_copy (const RcPolygon *polygon)
{
  RcPolygon *copy = rc_polygon_new_take (rc_ring_copy (polygon->outer));

  for (guint i = 0; i < polygon->holes->len; i++)
    g_ptr_array_add (copy->holes, rc_ring_copy (g_ptr_array_index (polygon->holes, i)));

  return copy;
}

void
rc_polygon_free (RcPolygon *polygon)
{
  if (polygon == NULL)
    return;

  g_array_unref (polygon->outer);
  g_ptr_array_unref (polygon->holes);
  g_free (polygon);
}

RcRegion *
rc_region_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify)rc_polygon_free);
}

RcRegion *
rc_region_copy (const RcRegion *region)
{
  RcRegion *copy = rc_region_new ();

  for (guint i = 0; i < region->len; i++)
    g_ptr_array_add (copy, rc_polygon_copy (g_ptr_array_index (region, i)));

  return copy;
}

/* Areas, lengths, boxes */

RcArea
rc_ring_compute_area (const RcRing *ring)
{
  RcWide         sum = 0;
  const RcPoint *origin;

  if (ring->len < 3)
    return 0;

  origin = rc_ring_get (ring, 0);
  for (guint i = 1; i + 1 < ring->len; i++)
    {
      const RcPoint *a = rc_ring_get (ring, i);
      const RcPoint *b = rc_ring_get (ring, i + 1);

      sum += (RcWide)(a->x - origin->x) * (b->y - origin->y) - (RcWide)(b->x - origin->x) * (a->y - origin->y);
    }

  g_return_val_if_fail (rc_wide_fits_int64 (sum), sum > 0 ? G_MAXINT64 : -G_MAXINT64);
  return (RcArea)sum;
}

static RcArea
ring_compute_plain_area (const RcRing *ring)
{
  RcArea area = rc_ring_compute_area (ring);

  return area < 0 ? -area : area;
}

RcArea
rc_polygon_compute_area (const RcPolygon *polygon)
{
  RcArea area = ring_compute_plain_area (polygon->outer);

  for (guint i = 0; i < polygon->holes->len; i++)
    area -= ring_compute_plain_area (g_ptr_array_index (polygon->holes, i));

  return MAX (area, 0);
}

RcArea
rc_region_compute_area (const RcRegion *region)
{
  RcArea area = 0;

  for (guint i = 0; i < region->len; i++)
    {
      RcArea part = rc_polygon_compute_area (g_ptr_array_index (region, i));

      g_return_val_if_fail (part <= G_MAXINT64 - area, G_MAXINT64);
      area += part;
    }

  return area;
}

/* Twice the signed area between the ring's edges and the y axis, of what of them lies between the two heights. */
static RcWide
ring_sum_between (const RcRing *ring, RcLength y0, RcLength y1)
{
  RcWide sum = 0;

  for (guint i = 0, j = ring->len - 1; i < ring->len; j = i++)
    {
      const RcPoint *a = rc_ring_get (ring, j), *b = rc_ring_get (ring, i);
      RcLength       from = CLAMP (a->y, y0, y1), to = CLAMP (b->y, y0, y1);

      /* x grows evenly along the edge: at `from` and `to` it adds up to this */
      if (from != to)
        {
          RcWide rise = b->y - a->y, run = b->x - a->x;
          RcWide over = (RcWide)(from - a->y) + (to - a->y);
          sum += (2 * (RcWide)a->x
                  + (run == 0 ? 0 : rc_wide_divide_round (run * over, rise > 0 ? rise : -rise) * (rise > 0 ? 1 : -1)))
                 * (to - from);
        }
    }
  return sum;
}

RcArea
rc_region_compute_area_between (const RcRegion *region, RcLength y0, RcLength y1)
{
  RcWide area = 0;

  for (guint i = 0; i < region->len; i++)
    {
      const RcPolygon *polygon = g_ptr_array_index (region, i);

      area += ring_sum_between (polygon->outer, y0, y1);
      for (guint h = 0; h < polygon->holes->len; h++)
        area += ring_sum_between (g_ptr_array_index (polygon->holes, h), y0, y1);
    }
  return (RcArea)(area < 0 ? -area : area);
}

/* The whole number below the square root. */
static gint64
square_root (RcWide square)
{
  gint64 root = (gint64)sqrt ((double)square);

  /* the double is right to 53 bits: a step or two put the last ones right */
  while ((RcWide)root * root > square)
    root--;
  while ((RcWide)(root + 1) * (root + 1) <= square)
    root++;

  return root;
}

RcLength
rc_point_distance (RcPoint a, RcPoint b)
{
  RcWide dx = (RcWide)b.x - a.x;
  RcWide dy = (RcWide)b.y - a.y;
  RcWide square = dx * dx + dy * dy;
  gint64 root = square_root (square);

  /* (root + 1/2)^2 is never whole, so there are no halves to round */
  return square - (RcWide)root * root > root ? root + 1 : root;
}

RcLength
rc_ring_compute_length (const RcRing *ring)
{
  RcLength length = 0;

  if (ring->len < 2)
    return 0;

  for (guint i = 0; i < ring->len; i++)
    length += rc_point_distance (*rc_ring_get (ring, i), *rc_ring_get (ring, (i + 1) % ring->len));

  return length;
}

RcBox
rc_ring_compute_box (const RcRing *ring)
{
  RcBox box = { 0 };

  for (guint i = 0; i < ring->len; i++)
    {
      const RcPoint *point = rc_ring_get (ring, i);

      if (i == 0)
        box = (RcBox){ point->x, point->y, point->x, point->y };
      box.x0 = MIN (box.x0, point->x);
      box.y0 = MIN (box.y0, point->y);
      box.x1 = MAX (box.x1, point->x);
      box.y1 = MAX (box.y1, point->y);
    }

  return box;
}

RcBox
rc_region_compute_box (const RcRegion *region)
{
  RcBox    box = { 0 };
  gboolean is_first = TRUE;

  for (guint i = 0; i < region->len; i++)
    {
      const RcPolygon *polygon = g_ptr_array_index (region, i);
      RcBox            part = rc_ring_compute_box (polygon->outer);

      if (polygon->outer->len == 0)
        continue;
      if (is_first)
        box = part;
      is_first = FALSE;
      box.x0 = MIN (box.x0, part.x0);
      box.y0 = MIN (box.y0, part.y0);
      box.x1 = MAX (box.x1, part.x1);
      box.y1 = MAX (box.y1, part.y1);
    }

  return box;
}

/* Putting in order */

/* Whether b lies on the straight way from a to c, or at one of the two. */
static gboolean
is_between (const RcPoint *a, const RcPoint *b, const RcPoint *c)
{
  RcWide cross = (RcWide)(b->x - a->x) * (c->y - b->y) - (RcWide)(c->x - b->x) * (b->y - a->y);
  RcWide dot = (RcWide)(b->x - a->x) * (c->x - b->x) + (RcWide)(b->y - a->y) * (c->y - b->y);

  return cross == 0 && dot >= 0;
}

static gboolean
is_same_point (const RcPoint *a, const RcPoint *b)
{
  return a->x == b->x && a->y == b->y;
}

void
rc_ring_simplify (RcRing *ring)
{
  RcPoint *points = (RcPoint *)ring->data;
  guint    n = 0;

  for (guint i = 0; i < ring->len; i++)
    {
      RcPoint next = points[i];

      while (n >= 2 && is_between (&points[n - 2], &points[n - 1], &next))
        n--;
      if (n == 1 && is_same_point (&points[0], &next))
        n--;
      points[n++] = next;
    }

  /* where the end meets the start */
  while (n >= 3 && is_between (&points[n - 2], &points[n - 1], &points[0]))
    n--;
  if (n == 2 && is_same_point (&points[0], &points[1]))
    n--;
  g_array_set_size (ring, n);
  while (ring->len >= 3 && is_between (rc_ring_get (ring, ring->len - 1), rc_ring_get (ring, 0), rc_ring_get (ring, 1)))
    g_array_remove_index (ring, 0);
}

void
rc_ring_reverse (RcRing *ring)
{
  for (guint i = 0, j = ring->len; i + 1 < j; i++)
    {
      RcPoint point = *rc_ring_get (ring, i);

      j--;
      *rc_ring_get (ring, i) = *rc_ring_get (ring, j);
      *rc_ring_get (ring, j) = point;
    }
}

void
rc_polygon_normalize (RcPolygon *polygon)
{
  rc_ring_simplify (polygon->outer);
  if (rc_ring_compute_area (polygon->outer) < 0)
    rc_ring_reverse (polygon->outer);

  for (guint i = 0; i < polygon->holes->len; i++)
    {
      RcRing *hole = g_ptr_array_index (polygon->holes, i);

      rc_ring_simplify (hole);
      if (rc_ring_compute_area (hole) > 0)
        rc_ring_reverse (hole);
    }
}

/* Turning and moving */

RcPoint
rc_point_rotate (RcPoint point, double degrees)
{
  double within = fmod (degrees, 360.0);
  double turn = within < 0.0 ? within + 360.0 : within;
  double sine, cosine;

  if (turn == 0.0 || turn == 360.0)
    return point;
  if (turn == 90.0)
    return (RcPoint){ -point.y, point.x };
  if (turn == 180.0)
    return (RcPoint){ -point.x, -point.y };
  if (turn == 270.0)
    return (RcPoint){ point.y, -point.x };

  sine = sin (turn * G_PI / 180.0);
  cosine = cos (turn * G_PI / 180.0);
  return (RcPoint){ llround ((double)point.x * cosine - (double)point.y * sine),
                    llround ((double)point.x * sine + (double)point.y * cosine) };
}

static void
ring_rotate (RcRing *ring, double degrees)
{
  for (guint i = 0; i < ring->len; i++)
    *rc_ring_get (ring, i) = rc_point_rotate (*rc_ring_get (ring, i), degrees);
}

RcRegion *
rc_region_rotate (const RcRegion *region, double degrees)
{
  RcRegion *turned = rc_region_copy (region);

  for (guint i = 0; i < turned->len; i++)
    {
      RcPolygon *polygon = g_ptr_array_index (turned, i);

      ring_rotate (polygon->outer, degrees);
      for (guint h = 0; h < polygon->holes->len; h++)
        ring_rotate (g_ptr_array_index (polygon->holes, h), degrees);
    }

  return turned;
}

static void
ring_move (RcRing *ring, RcLength dx, RcLength dy)
{
  for (guint i = 0; i < ring->len; i++)
    {
      rc_ring_get (ring, i)->x += dx;
      rc_ring_get (ring, i)->y += dy;
    }
}

RcRegion *
rc_region_move (const RcRegion *region, RcLength dx, RcLength dy)
{
  RcRegion *moved = rc_region_copy (region);

  for (guint i = 0; i < moved->len; i++)
    {
      RcPolygon *polygon = g_ptr_array_index (moved, i);

      ring_move (polygon->outer, dx, dy);
      for (guint h = 0; h < polygon->holes->len; h++)
        ring_move (g_ptr_array_index (polygon->holes, h), dx, dy);
    }

  return moved;
}
