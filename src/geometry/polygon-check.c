#include "polygon.h"

#include "rowcut-error.h"
#include "wide.h"

#include <glib/gi18n-lib.h>
#include <math.h>

typedef struct
{
  RcPoint a, b;
} Segment;

/* Twice the area of the triangle a, b, c: positive when it turns left. */
static RcWide
cross (RcPoint a, RcPoint b, RcPoint c)
{
  return (RcWide)(b.x - a.x) * (c.y - a.y) - (RcWide)(c.x - a.x) * (b.y - a.y);
}

static int
sign (RcWide value)
{
  return (value > 0) - (value < 0);
}

static gboolean
box_has (const Segment *segment, RcPoint p)
{
  return MIN (segment->a.x, segment->b.x) <= p.x && p.x <= MAX (segment->a.x, segment->b.x)
         && MIN (segment->a.y, segment->b.y) <= p.y && p.y <= MAX (segment->a.y, segment->b.y);
}

static gboolean
boxes_meet (const Segment *s, const Segment *t)
{
  return MAX (s->a.x, s->b.x) >= MIN (t->a.x, t->b.x) && MAX (t->a.x, t->b.x) >= MIN (s->a.x, s->b.x)
         && MAX (s->a.y, s->b.y) >= MIN (t->a.y, t->b.y) && MAX (t->a.y, t->b.y) >= MIN (s->a.y, s->b.y);
}

static gboolean
segment_has (const Segment *segment, RcPoint p)
{
  return box_has (segment, p) && cross (segment->a, segment->b, p) == 0;
}

/* Whether the two share a point, and one such point to the nearest tick. */
static gboolean
segments_meet (const Segment *s, const Segment *t, RcPoint *where)
{
  RcWide a, b;

  if (!boxes_meet (s, t))
    return FALSE;

  if (segment_has (s, t->a) || segment_has (s, t->b))
    *where = segment_has (s, t->a) ? t->a : t->b;
  else if (segment_has (t, s->a) || segment_has (t, s->b))
    *where = segment_has (t, s->a) ? s->a : s->b;
  else
    {
      a = cross (t->a, t->b, s->a);
      b = cross (t->a, t->b, s->b);
      if (sign (a) * sign (b) >= 0 || sign (cross (s->a, s->b, t->a)) * sign (cross (s->a, s->b, t->b)) >= 0)
        return FALSE;

      /* only shown to people, so doubles will do */
      where->x = s->a.x + llround ((double)(s->b.x - s->a.x) * ((double)a / (double)(a - b)));
      where->y = s->a.y + llround ((double)(s->b.y - s->a.y) * ((double)a / (double)(a - b)));
    }

  return TRUE;
}

static const RcRing *
polygon_get_ring (const RcPolygon *polygon, guint ring)
{
  return ring == 0 ? polygon->outer : g_ptr_array_index (polygon->holes, ring - 1);
}

static Segment
ring_get_edge (const RcRing *ring, guint edge)
{
  return (Segment){ *rc_ring_get (ring, edge), *rc_ring_get (ring, (edge + 1) % ring->len) };
}

/* Whether two edges of one ring meet where they should not: neighbours share a corner and no more. */
static gboolean
find_meeting_in_ring (const RcRing *ring, guint i, guint j, RcPoint *where)
{
  Segment  s = ring_get_edge (ring, i);
  Segment  t = ring_get_edge (ring, j);
  gboolean is_next = (i + 1) % ring->len == j;
  gboolean is_before = (j + 1) % ring->len == i;

  if (!is_next && !is_before)
    return segments_meet (&s, &t, where);

  if ((is_next && segment_has (&s, t.b)) || (is_before && segment_has (&s, t.a)))
    {
      *where = is_next ? t.b : t.a;
      return TRUE;
    }
  if ((is_next && segment_has (&t, s.a)) || (is_before && segment_has (&t, s.b)))
    {
      *where = is_next ? s.a : s.b;
      return TRUE;
    }

  return FALSE;
}

static gboolean
find_fault_in_ring (const RcRing *ring, RcPolygonFault *fault)
{
  if (ring->len < 3)
    {
      fault->kind = RC_POLYGON_FAULT_FEW_CORNERS;
      return TRUE;
    }

  for (guint i = 0; i < ring->len; i++)
    {
      Segment edge = ring_get_edge (ring, i);

      fault->edge = fault->other_edge = i;
      fault->where = edge.a;
      fault->kind = RC_POLYGON_FAULT_NO_LENGTH;
      if (edge.a.x == edge.b.x && edge.a.y == edge.b.y)
        return TRUE;
    }

  fault->kind = RC_POLYGON_FAULT_EDGES_MEET;
  for (guint i = 0; i < ring->len; i++)
    {
      for (guint j = i + 1; j < ring->len; j++)
        {
          fault->edge = i;
          fault->other_edge = j;
          if (find_meeting_in_ring (ring, i, j, &fault->where))
            return TRUE;
        }
    }

  return FALSE;
}

static gboolean
find_fault_between_rings (const RcRing *ring, const RcRing *other, RcPolygonFault *fault)
{
  fault->kind = RC_POLYGON_FAULT_EDGES_MEET;

  for (guint i = 0; i < ring->len; i++)
    {
      Segment s = ring_get_edge (ring, i);

      for (guint j = 0; j < other->len; j++)
        {
          Segment t = ring_get_edge (other, j);

          fault->edge = i;
          fault->other_edge = j;
          if (segments_meet (&s, &t, &fault->where))
            return TRUE;
        }
    }

  return FALSE;
}

int
rc_ring_locate (const RcRing *ring, RcPoint p)
{
  gboolean is_inside = FALSE;

  for (guint i = 0; i < ring->len; i++)
    {
      Segment edge = ring_get_edge (ring, i);

      if (segment_has (&edge, p))
        return 0;
      if ((edge.a.y > p.y) == (edge.b.y > p.y))
        continue;
      if ((cross (edge.a, edge.b, p) > 0) == (edge.b.y > edge.a.y))
        is_inside = !is_inside;
    }

  return is_inside ? 1 : -1;
}

/* Rings do not touch here, so one corner tells where the whole ring is. */
static gboolean
find_misplaced_hole (const RcPolygon *polygon, RcPolygonFault *fault)
{
  for (guint i = 1; i <= polygon->holes->len; i++)
    {
      RcPoint corner = *rc_ring_get (polygon_get_ring (polygon, i), 0);

      fault->ring = i;
      fault->where = corner;
      fault->edge = fault->other_edge = 0;
      for (guint j = 0; j <= polygon->holes->len; j++)
        {
          int place = rc_ring_locate (polygon_get_ring (polygon, j), corner);

          fault->other_ring = j;
          fault->kind = j == 0 ? RC_POLYGON_FAULT_HOLE_OUTSIDE : RC_POLYGON_FAULT_HOLE_IN_HOLE;
          if ((j == 0 && place < 0) || (j > 0 && j != i && place > 0))
            return TRUE;
        }
    }

  return FALSE;
}

gboolean
rc_polygon_find_fault (const RcPolygon *polygon, RcPolygonFault *fault)
{
  RcPolygonFault found = { 0 };
  guint          n_rings = polygon->holes->len + 1;
  gboolean       is_faulty = FALSE;

  for (guint i = 0; i < n_rings && !is_faulty; i++)
    {
      found.ring = found.other_ring = i;
      is_faulty = find_fault_in_ring (polygon_get_ring (polygon, i), &found);
    }
  for (guint i = 0; i < n_rings && !is_faulty; i++)
    {
      for (guint j = i + 1; j < n_rings && !is_faulty; j++)
        {
          found.ring = i;
          found.other_ring = j;
          is_faulty = find_fault_between_rings (polygon_get_ring (polygon, i), polygon_get_ring (polygon, j), &found);
        }
    }
  if (!is_faulty)
    is_faulty = find_misplaced_hole (polygon, &found);

  if (is_faulty && fault != NULL)
    *fault = found;
  return is_faulty;
}

/* "edge 3" or "edge 3 of hole 1" */
static char *
format_edge (guint ring, guint edge)
{
  return ring == 0 ? g_strdup_printf (_ ("edge %u"), edge + 1)
                   : g_strdup_printf (_ ("edge %u of hole %u"), edge + 1, ring);
}

static char *
format_fault (const RcPolygonFault *fault)
{
  g_autofree char *edge = format_edge (fault->ring, fault->edge);
  g_autofree char *other = format_edge (fault->other_ring, fault->other_edge);
  g_autofree char *x = rc_length_format_mm (fault->where.x);
  g_autofree char *y = rc_length_format_mm (fault->where.y);

  switch (fault->kind)
    {
    case RC_POLYGON_FAULT_FEW_CORNERS:
      return fault->ring == 0 ? g_strdup (_ ("the outline has fewer than three corners"))
                              : g_strdup_printf (_ ("hole %u has fewer than three corners"), fault->ring);
    case RC_POLYGON_FAULT_NO_LENGTH:
      return g_strdup_printf (_ ("%s has no length, at x %s mm, y %s mm"), edge, x, y);
    case RC_POLYGON_FAULT_EDGES_MEET:
      return g_strdup_printf (_ ("%s meets %s at x %s mm, y %s mm"), edge, other, x, y);
    case RC_POLYGON_FAULT_HOLE_OUTSIDE:
      return g_strdup_printf (_ ("hole %u lies outside the outline, at x %s mm, y %s mm"), fault->ring, x, y);
    case RC_POLYGON_FAULT_HOLE_IN_HOLE:
      return g_strdup_printf (_ ("hole %u lies inside hole %u, at x %s mm, y %s mm"), fault->ring, fault->other_ring, x,
                              y);
    }

  g_assert_not_reached ();
}

gboolean
rc_polygon_check (const RcPolygon *polygon, GError **error)
{
  g_autofree char *message = NULL;
  RcPolygonFault   fault;

  if (!rc_polygon_find_fault (polygon, &fault))
    return TRUE;

  message = format_fault (&fault);
  g_set_error_literal (error, RC_ERROR, RC_ERROR_GEOMETRY, message);
  return FALSE;
}

int
rc_polygon_locate (const RcPolygon *polygon, RcPoint point)
{
  int place = rc_ring_locate (polygon->outer, point);

  for (guint i = 0; i < polygon->holes->len && place > 0; i++)
    place = -rc_ring_locate (g_ptr_array_index (polygon->holes, i), point);

  return place;
}

int
rc_region_locate (const RcRegion *region, RcPoint point)
{
  int place = -1;

  for (guint i = 0; i < region->len && place <= 0; i++)
    place = MAX (place, rc_polygon_locate (g_ptr_array_index (region, i), point));

  return place;
}
