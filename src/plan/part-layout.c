#include "part-layout.h"

#include "rule.h"
#include "wide.h"

void
rc_cuts_add (RcCuts *cuts, RcLength y, gboolean is_step)
{
  if (cuts->n < RC_MOST_CUTS)
    cuts->cuts[cuts->n++] = (RcCut){ y, is_step };
}

void
rc_layout_free (RcLayout *layout)
{
  if (layout == NULL)
    return;
  g_array_unref (layout->blocks);
  g_array_unref (layout->crosses);
  g_clear_pointer (&layout->cut_set, rc_cut_set_free);
  g_free (layout);
}

static RcLayout *
layout_new (void)
{
  RcLayout *layout = g_new0 (RcLayout, 1);
  layout->blocks = g_array_new (FALSE, FALSE, sizeof (RcBlock));
  layout->crosses = g_array_new (FALSE, FALSE, sizeof (RcCrossLine));
  return layout;
}

RcBlock
rc_block_make (const RcSite *site, RcBox box)
{
  RcLength width = box.x1 - box.x0;
  RcBlock  block = { .box = box };
  block.is_drop = width + site->settings->trim_width >= site->roll_width || width >= site->strip_width;
  block.cut_width = block.is_drop ? site->roll_width : width + site->settings->trim_width;
  block.cut_length = box.y1 - box.y0 + site->settings->trim_length;
  return block;
}

/* Cross seams at height y inside the part, between the blocks `below` and `above`. */
static void
add_crosses (RcLayout *layout, const RcPart *part, RcLength y, guint below, guint above)
{
  const RcBox *a = &g_array_index (layout->blocks, RcBlock, below).box;
  const RcBox *b = &g_array_index (layout->blocks, RcBlock, above).box;
  RcLength     x0 = MAX (a->x0, b->x0), x1 = MIN (a->x1, b->x1);
  if (part->floor == NULL)
    {
      RcCrossLine line = { y, x0, x1, below, above };
      g_array_append_val (layout->crosses, line);
      return;
    }
  g_autoptr (GArray) inside = rc_region_cross_line_y (part->floor, y, x0, x1);
  for (guint i = 0; i < inside->len; i++)
    {
      const RcInterval *interval = &g_array_index (inside, RcInterval, i);
      RcCrossLine       line = { y, interval->from, interval->to, below, above };
      if (line.x1 - line.x0 > RC_SLIVER)
        g_array_append_val (layout->crosses, line);
    }
}

static void
weigh (RcLayout *layout, const RcPart *part, const RcSite *site)
{
  layout->seam_cost = layout->rule_cost = 0;
  for (guint i = 0; i < layout->crosses->len; i++)
    {
      const RcCrossLine *line = &g_array_index (layout->crosses, RcCrossLine, i);
      layout->seam_cost
          += rc_weigh (line->x1 - line->x0, site->weights.cross_seam_per_m) + site->weights.cross_seam_each;
      layout->rule_cost += rc_rules_weigh_seam (site, RC_SEAM_CROSS, (RcPoint){ line->x0, line->y },
                                                (RcPoint){ line->x1, line->y }, NULL);
    }
  for (guint i = 0; i < layout->blocks->len; i++)
    {
      const RcBlock *block = &g_array_index (layout->blocks, RcBlock, i);
      layout->rule_cost += rc_rules_weigh_piece (site, block->box, part->floor, part->seamed && !block->is_drop,
                                                 layout->blocks->len > 1, NULL);
    }
  layout->rule_cost += rc_rules_weigh_joins (site, layout->crosses->len, (RcPoint){ part->box.x0, part->box.y0 }, NULL);
}

/* TRUE if a cross seam lies in a neck: shorter than the least width of a fill, with a wider piece at one side of it. No
 * fitter joins pieces there. */
static gboolean
crosses_neck (const RcLayout *layout, const RcSite *site)
{
  for (guint i = 0; i < layout->crosses->len; i++)
    {
      const RcCrossLine *line = &g_array_index (layout->crosses, RcCrossLine, i);
      const RcBox       *below = &g_array_index (layout->blocks, RcBlock, line->below).box;
      const RcBox       *above = &g_array_index (layout->blocks, RcBlock, line->above).box;
      RcLength           length = line->x1 - line->x0, wider = MAX (below->x1 - below->x0, above->x1 - above->x0);
      if (length < site->settings->least_fill_width && length + RC_SLIVER < wider)
        return TRUE;
    }
  return FALSE;
}

/* Widens the box by what of the edge lies between its heights. FALSE where that is at most a point, or runs across. */
static gboolean
add_edge (RcBox *box, const RcPoint *a, const RcPoint *b)
{
  const RcPoint *low = a->y < b->y ? a : b, *high = a->y < b->y ? b : a;
  RcLength       from = MAX (low->y, box->y0), to = MIN (high->y, box->y1);
  if (from >= to)
    return FALSE;
  if (low->x == high->x)
    {
      box->x0 = MIN (box->x0, low->x);
      box->x1 = MAX (box->x1, low->x);
      return TRUE;
    }
  RcLength ends[] = { from, to };
  for (guint i = 0; i < G_N_ELEMENTS (ends); i++)
    {
      RcWide over = (RcWide)(high->x - low->x) * (ends[i] - low->y);
      box->x0 = MIN (box->x0, low->x + (RcLength)rc_wide_divide_floor (over, high->y - low->y));
      box->x1 = MAX (box->x1, low->x + (RcLength)rc_wide_divide_ceil (over, high->y - low->y));
    }
  return TRUE;
}

/* The least box of the part's floor between two heights: on both hands it ends at edges that do not run across. FALSE
 * when there is none, or it is so narrow that it is no piece of its own. */
static gboolean
find_box_between (const RcPart *part, RcLength y0, RcLength y1, RcBox *box)
{
  gboolean found = part->floor == NULL;
  *box = (RcBox){ part->box.x0, y0, part->box.x1, y1 };
  if (found)
    return TRUE;
  box->x0 = G_MAXINT64;
  box->x1 = G_MININT64;
  for (guint p = 0; p < part->floor->len; p++)
    {
      const RcRing *ring = ((RcPolygon *)g_ptr_array_index (part->floor, p))->outer;
      for (guint i = 0, j = ring->len - 1; i < ring->len; j = i++)
        found |= add_edge (box, rc_ring_get (ring, j), rc_ring_get (ring, i));
    }
  return found && box->x1 - box->x0 > RC_SLIVER;
}

RcLayout *
rc_layout_new (const RcPart *part, const RcSite *site, const RcCuts *cuts)
{
  RcLayout *layout = layout_new ();
  gboolean  fine = TRUE, too_long = part->box.y1 - part->box.y0 > rc_split_compute_longest (site);
  for (guint i = 0; i <= cuts->n && fine; i++)
    {
      RcLength y0 = i == 0 ? part->box.y0 : cuts->cuts[i - 1].y, y1 = i == cuts->n ? part->box.y1 : cuts->cuts[i].y;
      RcBox    box;
      fine = find_box_between (part, y0, y1, &box);
      if (!fine)
        break;
      RcBlock block = rc_block_make (site, box);
      g_array_append_val (layout->blocks, block);
      if (i == 0)
        continue;
      fine = too_long || cuts->cuts[i - 1].is_step
             || !(block.is_drop || g_array_index (layout->blocks, RcBlock, i - 1).is_drop);
      add_crosses (layout, part, y0, i - 1, i);
    }
  if (!fine || crosses_neck (layout, site))
    {
      rc_layout_free (layout);
      return NULL;
    }
  weigh (layout, part, site);
  return layout;
}

gboolean
rc_layout_is_cut_so (const RcLayout *layout, const RcCuts *cuts)
{
  if (layout->blocks->len != cuts->n + 1)
    return FALSE;
  for (guint i = 0; i < cuts->n; i++)
    if (g_array_index (layout->blocks, RcBlock, i + 1).box.y0 != cuts->cuts[i].y)
      return FALSE;
  return TRUE;
}

RcLayout *
rc_layout_new_pinned (const RcPart *part, const RcSite *site, const RcRing *points)
{
  g_autoptr (GArray) heights = g_array_new (FALSE, FALSE, sizeof (RcLength));
  RcLayout *layout = layout_new ();
  RcLength  from = part->box.y0;
  for (guint i = 1; i < points->len; i++)
    {
      RcLength y = rc_ring_get (points, i)->y;
      if (y - part->box.y0 > RC_SLIVER && part->box.y1 - y > RC_SLIVER)
        g_array_append_val (heights, y);
    }
  g_array_sort (heights, rc_length_compare);
  g_array_append_val (heights, part->box.y1);
  for (guint i = 0; i < heights->len; i++)
    {
      RcLength to = g_array_index (heights, RcLength, i);
      RcBox    box;
      if (to - from <= RC_SLIVER || !find_box_between (part, from, to, &box))
        continue;
      RcBlock block = rc_block_make (site, box);
      g_array_append_val (layout->blocks, block);
      if (layout->blocks->len > 1)
        add_crosses (layout, part, from, layout->blocks->len - 2, layout->blocks->len - 1);
      from = to;
    }
  weigh (layout, part, site);
  return layout;
}
