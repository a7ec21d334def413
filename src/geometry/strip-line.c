#include "strip.h"

#include "strip-edge.h"

#include <stdlib.h>

/* The spans of the region just left or just right of the line x. Where edges meet on the line, those that lead into the
 * region are counted first: spans that touch in a point become one, spans of no height vanish. */
static guint
find_spans_beside (RcStripEdge *edges, guint n_edges, gint64 x, gboolean is_left, RcStripEdge **beside,
                   RcStripSpan *spans)
{
  guint n = 0;

  for (guint i = 0; i < n_edges; i++)
    {
      RcStripEdge *edge = &edges[i];
      guint        j = n;

      if (is_left ? edge->xl >= x || edge->xr < x : edge->xl > x || edge->xr <= x)
        continue;

      for (; j > 0; j--)
        {
          int order = rc_strip_edge_compare (beside[j - 1], edge, 2 * x);

          if (order < 0 || (order == 0 && beside[j - 1]->depth >= edge->depth))
            break;
          beside[j] = beside[j - 1];
        }
      beside[j] = edge;
      n++;
    }

  return rc_strip_find_spans (beside, n, 2 * x, spans);
}

static void
add_interval (GArray *intervals, RcLength from, RcLength to)
{
  RcInterval *last = intervals->len > 0 ? &g_array_index (intervals, RcInterval, intervals->len - 1) : NULL;
  RcInterval  interval = { from, to };

  if (last != NULL && from <= last->to)
    last->to = MAX (last->to, to);
  else
    g_array_append_val (intervals, interval);
}

/* What lies in spans on both sides of the line. */
static GArray *
intersect_spans (const RcStripSpan *left, guint n_left, const RcStripSpan *right, guint n_right, gint64 x)
{
  GArray *intervals = g_array_new (FALSE, FALSE, sizeof (RcInterval));
  guint   i = 0;
  guint   j = 0;

  while (i < n_left && j < n_right)
    {
      gboolean           right_starts_later = rc_strip_edge_compare (left[i].lower, right[j].lower, 2 * x) < 0;
      gboolean           left_ends_first = rc_strip_edge_compare (left[i].upper, right[j].upper, 2 * x) < 0;
      const RcStripEdge *lower = right_starts_later ? right[j].lower : left[i].lower;
      const RcStripEdge *upper = left_ends_first ? left[i].upper : right[j].upper;

      if (rc_strip_edge_compare (lower, upper, 2 * x) < 0)
        add_interval (intervals, rc_strip_edge_get_floor (lower, x), rc_strip_edge_get_ceil (upper, x));

      if (left_ends_first)
        i++;
      else
        j++;
    }

  return intervals;
}

static GArray *
cross_line (const RcRegion *region, gboolean transposed, RcLength x)
{
  guint                    n = rc_region_count_points (region) + 2;
  g_autofree RcStripEdge  *edges = g_new (RcStripEdge, n);
  g_autofree RcStripEdge **beside = g_new (RcStripEdge *, n);
  g_autofree RcStripSpan  *left = g_new (RcStripSpan, n);
  g_autofree RcStripSpan  *right = g_new (RcStripSpan, n);
  guint                    n_edges = rc_strip_collect_edges (region, transposed, x, x, edges);
  guint                    n_left = find_spans_beside (edges, n_edges, x, TRUE, beside, left);
  guint                    n_right = find_spans_beside (edges, n_edges, x, FALSE, beside, right);

  return intersect_spans (left, n_left, right, n_right, x);
}

GArray *
rc_region_cross_line_x (const RcRegion *region, RcLength x)
{
  return cross_line (region, FALSE, x);
}

GArray *
rc_region_cross_line_y (const RcRegion *region, RcLength y, RcLength x0, RcLength x1)
{
  g_autoptr (GArray) all = cross_line (region, TRUE, y);
  GArray *inside = g_array_new (FALSE, FALSE, sizeof (RcInterval));

  for (guint i = 0; i < all->len; i++)
    {
      const RcInterval *interval = &g_array_index (all, RcInterval, i);
      RcLength          from = MAX (interval->from, x0);
      RcLength          to = MIN (interval->to, x1);

      if (from < to)
        add_interval (inside, from, to);
    }

  return inside;
}

void
rc_interval_add_breaks (const RcInterval *interval, const RcBox *box, GArray *breaks)
{
  if (box->y0 > interval->from && box->y0 < interval->to)
    g_array_append_val (breaks, box->y0);
  if (box->y1 > interval->from && box->y1 < interval->to)
    g_array_append_val (breaks, box->y1);
}
