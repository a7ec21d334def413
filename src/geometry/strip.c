#include "strip.h"

#include "strip-edge.h"

#include <stdlib.h>

/* The strip is cut into slabs at every corner inside it. Within a slab no edge begins or ends, so the region is a stack
 * of spans there; spans of neighbouring slabs that share more than a point belong to one part. */

/* A part in the making; parts found to be one point to the first of them. */
typedef struct
{
  RcBox box;
  guint same_as;
} Part;

typedef struct
{
  RcLength      x0, x1;
  RcStripEdge  *edges; /* by left end */
  guint         n_edges, n_taken;
  RcStripEdge **active; /* those in the slab at hand, from below to above */
  guint         n_active;
  gint64       *cuts; /* the slabs' limits, x0 first and x1 last */
  guint         n_cuts;
  RcStripSpan  *spans, *spans_before;
  guint         n_spans, n_spans_before;
  GArray       *parts; /* of Part */
} Sweep;

static guint
find_first (const GArray *parts, guint part)
{
  Part *list = (Part *)parts->data;

  while (list[part].same_as != part)
    {
      list[part].same_as = list[list[part].same_as].same_as;
      part = list[part].same_as;
    }

  return part;
}

static guint
join_parts (GArray *parts, guint a, guint b)
{
  Part *list = (Part *)parts->data;
  guint first = find_first (parts, a);
  guint second = find_first (parts, b);

  if (first == second)
    return first;

  list[second].same_as = first;
  list[first].box.x0 = MIN (list[first].box.x0, list[second].box.x0);
  list[first].box.y0 = MIN (list[first].box.y0, list[second].box.y0);
  list[first].box.x1 = MAX (list[first].box.x1, list[second].box.x1);
  list[first].box.y1 = MAX (list[first].box.y1, list[second].box.y1);
  return first;
}

static int
compare_left_ends (const void *a, const void *b)
{
  const RcStripEdge *edge = a;
  const RcStripEdge *other = b;

  return (edge->xl > other->xl) - (edge->xl < other->xl);
}

static int
compare_numbers (const void *a, const void *b)
{
  gint64 number = *(const gint64 *)a;
  gint64 other = *(const gint64 *)b;

  return (number > other) - (number < other);
}

static void
find_cuts (Sweep *sweep)
{
  guint n = 0;
  guint n_unique = 0;

  sweep->cuts[n++] = sweep->x0;
  for (guint i = 0; i < sweep->n_edges; i++)
    {
      const RcStripEdge *edge = &sweep->edges[i];

      if (edge->xl > sweep->x0)
        sweep->cuts[n++] = edge->xl;
      if (edge->xr < sweep->x1)
        sweep->cuts[n++] = edge->xr;
    }
  sweep->cuts[n++] = sweep->x1;

  qsort (sweep->cuts, n, sizeof (gint64), compare_numbers);
  for (guint i = 0; i < n; i++)
    {
      if (i == 0 || sweep->cuts[i] != sweep->cuts[i - 1])
        sweep->cuts[n_unique++] = sweep->cuts[i];
    }
  sweep->n_cuts = n_unique;
}

/* Edges that touch the strip's sides from outside are of no use here. */
static void
drop_edges_outside (Sweep *sweep)
{
  guint n = 0;

  for (guint i = 0; i < sweep->n_edges; i++)
    {
      if (sweep->edges[i].xl < sweep->x1 && sweep->edges[i].xr > sweep->x0)
        sweep->edges[n++] = sweep->edges[i];
    }
  sweep->n_edges = n;
}

static gboolean
is_above (const RcStripEdge *a, const RcStripEdge *b, gint64 twice_x)
{
  int order = rc_strip_edge_compare (a, b, twice_x);

  /* where two polygons share an edge, going in before coming out joins them */
  return order > 0 || (order == 0 && a->depth < b->depth);
}

/* Brings the active edges from the slab before to the one from xa to xb. Their order hardly changes, so that sorting by
 * insertion takes few steps. */
static void
enter_slab (Sweep *sweep, gint64 xa, gint64 xb)
{
  guint n = 0;

  for (guint i = 0; i < sweep->n_active; i++)
    {
      if (sweep->active[i]->xr > xa)
        sweep->active[n++] = sweep->active[i];
    }
  while (sweep->n_taken < sweep->n_edges && sweep->edges[sweep->n_taken].xl <= xa)
    sweep->active[n++] = &sweep->edges[sweep->n_taken++];
  sweep->n_active = n;

  for (guint i = 1; i < n; i++)
    {
      RcStripEdge *edge = sweep->active[i];
      guint        j = i;

      for (; j > 0 && is_above (sweep->active[j - 1], edge, xa + xb); j--)
        sweep->active[j] = sweep->active[j - 1];
      sweep->active[j] = edge;
    }
}

/* Whether two spans on either side of the line share more than a point of it. */
static gboolean
spans_meet (const RcStripSpan *a, const RcStripSpan *b, gint64 twice_x)
{
  return rc_strip_edge_compare (a->lower, b->upper, twice_x) < 0
         && rc_strip_edge_compare (b->lower, a->upper, twice_x) < 0
         && rc_strip_edge_compare (a->lower, a->upper, twice_x) < 0
         && rc_strip_edge_compare (b->lower, b->upper, twice_x) < 0;
}

#define NO_PART G_MAXUINT

static void
join_with_slab_before (Sweep *sweep, gint64 x)
{
  guint i = 0;
  guint j = 0;

  while (i < sweep->n_spans_before && j < sweep->n_spans)
    {
      RcStripSpan *before = &sweep->spans_before[i];
      RcStripSpan *span = &sweep->spans[j];

      if (spans_meet (before, span, 2 * x))
        span->part = span->part == NO_PART ? find_first (sweep->parts, before->part)
                                           : join_parts (sweep->parts, span->part, before->part);

      if (rc_strip_edge_compare (before->upper, span->upper, 2 * x) < 0)
        i++;
      else
        j++;
    }
}

static void
box_add (RcBox *box, RcLength y)
{
  box->y0 = MIN (box->y0, y);
  box->y1 = MAX (box->y1, y);
}

/* Adds the height of a span to its part: corners, and crossings with the strip's sides. Other ends of the slab are
 * passed over, the edge goes on beyond them in the same part. */
static void
measure_span (const Sweep *sweep, const RcStripSpan *span, gint64 xa, gint64 xb, RcBox *box)
{
  const RcStripEdge *edges[] = { span->lower, span->upper };

  box->x1 = MAX (box->x1, xb);
  for (guint i = 0; i < 2; i++)
    {
      if (edges[i]->xl == xa)
        box_add (box, edges[i]->yl);
      if (edges[i]->xr == xb)
        box_add (box, edges[i]->yr);
    }

  if (xa == sweep->x0)
    {
      box->y0 = MIN (box->y0, rc_strip_edge_get_floor (span->lower, xa));
      box->y1 = MAX (box->y1, rc_strip_edge_get_ceil (span->upper, xa));
    }
  if (xb == sweep->x1)
    {
      box->y0 = MIN (box->y0, rc_strip_edge_get_floor (span->lower, xb));
      box->y1 = MAX (box->y1, rc_strip_edge_get_ceil (span->upper, xb));
    }
}

static void
sweep_slab (Sweep *sweep, gint64 xa, gint64 xb)
{
  RcStripSpan *spans = sweep->spans_before;

  sweep->spans_before = sweep->spans;
  sweep->n_spans_before = sweep->n_spans;
  sweep->spans = spans;

  enter_slab (sweep, xa, xb);
  sweep->n_spans = rc_strip_find_spans (sweep->active, sweep->n_active, xa + xb, spans);
  for (guint i = 0; i < sweep->n_spans; i++)
    spans[i].part = NO_PART;
  join_with_slab_before (sweep, xa);

  for (guint i = 0; i < sweep->n_spans; i++)
    {
      if (spans[i].part == NO_PART)
        {
          Part part = { { xa, G_MAXINT64, xb, G_MININT64 }, sweep->parts->len };

          spans[i].part = part.same_as;
          g_array_append_val (sweep->parts, part);
        }
      spans[i].part = find_first (sweep->parts, spans[i].part);
      measure_span (sweep, &spans[i], xa, xb, &g_array_index (sweep->parts, Part, spans[i].part).box);
    }
}

static int
compare_parts (const void *a, const void *b)
{
  const RcStripPart *part = a;
  const RcStripPart *other = b;

  if (part->box.y0 != other->box.y0)
    return part->box.y0 < other->box.y0 ? -1 : 1;
  if (part->box.x0 != other->box.x0)
    return part->box.x0 < other->box.x0 ? -1 : 1;
  if (part->box.y1 != other->box.y1)
    return part->box.y1 < other->box.y1 ? -1 : 1;

  return (part->box.x1 > other->box.x1) - (part->box.x1 < other->box.x1);
}

static GArray *
list_parts (const GArray *parts)
{
  GArray *list = g_array_new (FALSE, FALSE, sizeof (RcStripPart));

  for (guint i = 0; i < parts->len; i++)
    {
      const Part *part = &g_array_index (parts, Part, i);

      if (part->same_as == i)
        g_array_append_val (list, part->box);
    }
  if (list->len > 1)
    qsort (list->data, list->len, sizeof (RcStripPart), compare_parts);

  return list;
}

GArray *
rc_region_slice (const RcRegion *region, RcLength x0, RcLength x1)
{
  guint                    n = rc_region_count_points (region) + 2;
  g_autofree RcStripEdge  *edges = g_new (RcStripEdge, n);
  g_autofree RcStripEdge **active = g_new (RcStripEdge *, n);
  g_autofree gint64       *cuts = g_new (gint64, 2 * n);
  g_autofree RcStripSpan  *spans = g_new (RcStripSpan, n);
  g_autoptr (GArray) parts = g_array_sized_new (FALSE, FALSE, sizeof (Part), 8);
  Sweep sweep = { .x0 = x0, .x1 = x1, .edges = edges, .active = active, .cuts = cuts, .parts = parts };

  g_return_val_if_fail (x0 < x1, NULL);

  /* a span has two edges, so that half the room holds a slab's */
  sweep.spans = spans;
  sweep.spans_before = spans + n / 2;
  sweep.n_edges = rc_strip_collect_edges (region, FALSE, x0, x1, edges);
  drop_edges_outside (&sweep);
  qsort (edges, sweep.n_edges, sizeof (RcStripEdge), compare_left_ends);
  find_cuts (&sweep);

  for (guint i = 0; i + 1 < sweep.n_cuts; i++)
    sweep_slab (&sweep, cuts[i], cuts[i + 1]);

  return list_parts (parts);
}
