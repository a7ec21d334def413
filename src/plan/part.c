#include "part.h"

#include "rule.h"

/* More steps of an outline than this inside one strip are not tried as places for cross seams. */
#define MOST_STEPS 6

void
rc_layout_free (RcLayout *layout)
{
  if (layout == NULL)
    return;
  g_array_unref (layout->blocks);
  g_array_unref (layout->crosses);
  g_free (layout);
}

void
rc_part_free (RcPart *part)
{
  if (part == NULL)
    return;
  g_clear_pointer (&part->floor, g_ptr_array_unref);
  g_clear_pointer (&part->layouts, g_ptr_array_unref);
  g_free (part);
}

static RcLayout *
layout_new (void)
{
  RcLayout *layout = g_new0 (RcLayout, 1);
  layout->blocks = g_array_new (FALSE, FALSE, sizeof (RcBlock));
  layout->crosses = g_array_new (FALSE, FALSE, sizeof (RcCrossLine));
  return layout;
}

static RcBlock
make_block (const RcSite *site, RcBox box)
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

/* Appends `box` cut across into n pieces of equal length (to the tick). Returns the index of the first. */
static guint
append_split (RcLayout *layout, const RcPart *part, const RcSite *site, RcBox box, guint n)
{
  guint    first = layout->blocks->len;
  RcLength length = box.y1 - box.y0;
  for (guint i = 0; i < n; i++)
    {
      RcBox   piece = { box.x0, box.y0 + length * i / n, box.x1, box.y0 + length * (i + 1) / n };
      RcBlock block = make_block (site, piece);
      g_array_append_val (layout->blocks, block);
      if (i > 0)
        add_crosses (layout, part, piece.y0, first + i - 1, first + i);
    }
  return first;
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

static guint
get_most_pieces (const RcSite *site)
{
  return site->settings->most_joins + 1;
}

/* Layouts in which the boxes (one above the other) are cut apart, and each box that is no drop is split into up to as
 * many pieces as the joins allow: one of them at a time, and all alike. */
static void
add_stacked (RcPart *part, const RcSite *site, const RcBox *boxes, guint n_boxes)
{
  guint n_fills = 0;
  for (guint i = 0; i < n_boxes; i++)
    n_fills += !make_block (site, boxes[i]).is_drop;
  guint most = n_fills > 0 ? get_most_pieces (site) : 1;

  for (guint n = 1; n <= most; n++)
    for (guint which = 0; which < (n == 1 || n_boxes == 1 ? 1 : n_boxes + 1); which++)
      {
        RcLayout *layout = layout_new ();
        guint     previous_last = 0;
        for (guint i = 0; i < n_boxes; i++)
          {
            gboolean split = !make_block (site, boxes[i]).is_drop && (which == 0 || which == i + 1);
            guint    first = append_split (layout, part, site, boxes[i], split ? n : 1);
            if (i > 0)
              add_crosses (layout, part, boxes[i].y0, previous_last, first);
            previous_last = layout->blocks->len - 1;
          }
        if (crosses_neck (layout, site))
          {
            rc_layout_free (layout);
            continue;
          }
        weigh (layout, part, site);
        g_ptr_array_add (part->layouts, layout);
      }
}

RcBlock
rc_part_get_whole (const RcPart *part, const RcSite *site)
{
  return make_block (site, part->box);
}

void
rc_part_add_layouts (RcPart *part, const RcSite *site)
{
  if (part->layouts != NULL)
    return;
  part->layouts = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_layout_free);
  add_stacked (part, site, &part->box, 1);
}

/* Heights at which the part's outline steps, strictly inside its box; not too many, not too near one another. */
static GArray *
find_steps (const RcPart *part)
{
  GArray *steps = g_array_new (FALSE, FALSE, sizeof (RcLength));
  for (guint p = 0; p < part->floor->len; p++)
    {
      const RcPolygon *polygon = g_ptr_array_index (part->floor, p);
      for (guint r = 0; r <= polygon->holes->len; r++)
        {
          const RcRing *ring = r == 0 ? polygon->outer : g_ptr_array_index (polygon->holes, r - 1);
          for (guint i = 0; i < ring->len && steps->len < MOST_STEPS; i++)
            {
              RcLength y = rc_ring_get (ring, i)->y;
              gboolean known = y - part->box.y0 <= RC_SLIVER || part->box.y1 - y <= RC_SLIVER;
              for (guint s = 0; s < steps->len; s++)
                known = known || ABS (g_array_index (steps, RcLength, s) - y) <= RC_SLIVER;
              if (!known)
                g_array_append_val (steps, y);
            }
        }
    }
  return steps;
}

/* The least box of the part's floor between two heights; FALSE when the floor falls apart there. `turned` is the part's
 * floor turned by a quarter, so that its heights run from -y. */
static gboolean
find_box_between (const RcRegion *turned, RcLength y0, RcLength y1, RcBox *box)
{
  g_autoptr (GArray) slices = rc_region_slice (turned, -y1, -y0);
  if (slices->len != 1)
    return FALSE;
  RcBox found = g_array_index (slices, RcStripPart, 0).box;
  *box = (RcBox){ found.y0, y0, found.y1, y1 };
  return TRUE;
}

/* Just the part's own polygon out of the cell's floor: the one that reaches farthest, others of the strip may dip into
 * its box. */
static RcRegion *
clip_floor (const RcPart *part, const RcRegion *floor, GError **error)
{
  g_autoptr (GPtrArray) clipped = rc_region_intersect_box (floor, part->box, error);
  if (clipped == NULL)
    return NULL;
  RcRegion *own = rc_region_new ();
  RcArea    best = -1;
  for (guint i = 0; i < clipped->len; i++)
    {
      RcPolygon *polygon = g_ptr_array_index (clipped, i);
      RcBox      box = rc_ring_compute_box (polygon->outer);
      RcArea     reach = rc_area_from_rectangle (box.x1 - box.x0, box.y1 - box.y0);
      if (reach > best)
        {
          best = reach;
          g_ptr_array_set_size (own, 0);
          g_ptr_array_add (own, rc_polygon_copy (polygon));
        }
    }
  return own;
}

/* TRUE only if the floor fills the box: no edge runs inside it. */
static gboolean
is_filled (const RcRegion *floor, const RcBox *box)
{
  for (guint p = 0; p < floor->len; p++)
    {
      const RcPolygon *polygon = g_ptr_array_index (floor, p);
      for (guint r = 0; r <= polygon->holes->len; r++)
        {
          const RcRing *ring = r == 0 ? polygon->outer : g_ptr_array_index (polygon->holes, r - 1);
          for (guint i = 0; i < ring->len; i++)
            {
              const RcPoint *a = rc_ring_get (ring, i), *b = rc_ring_get (ring, (i + 1) % ring->len);
              if (MIN (a->x, b->x) < box->x1 && MAX (a->x, b->x) > box->x0 && MIN (a->y, b->y) < box->y1
                  && MAX (a->y, b->y) > box->y0)
                return FALSE;
            }
        }
    }
  return TRUE;
}

gboolean
rc_part_refine (RcPart *part, const RcSite *site, const RcRegion *floor, GError **error)
{
  rc_part_add_layouts (part, site);
  if (part->floor != NULL || is_filled (floor, &part->box))
    return TRUE; /* a rectangle: the layouts are exact as they are */
  part->floor = clip_floor (part, floor, error);
  if (part->floor == NULL)
    return FALSE;

  g_ptr_array_set_size (part->layouts, 0);
  add_stacked (part, site, &part->box, 1);
  g_autoptr (GArray) steps = find_steps (part);
  g_autoptr (GPtrArray) turned = rc_region_rotate (part->floor, 90);
  for (guint i = 0; i < steps->len; i++)
    {
      RcLength y = g_array_index (steps, RcLength, i);
      RcBox    boxes[2];
      if (find_box_between (turned, part->box.y0, y, &boxes[0])
          && find_box_between (turned, y, part->box.y1, &boxes[1]))
        add_stacked (part, site, boxes, 2);
    }
  return TRUE;
}
