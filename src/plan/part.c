#include "part.h"

#include "rule.h"
#include "site-pins.h"

/* More steps of an outline than this inside one strip are not tried as places for cross seams, nor more of them at
 * once. */
#define MOST_STEPS          6
#define MOST_STEPS_TOGETHER 2

/* Likely splits into unequal lengths are of no more pieces than this. */
#define MOST_UNEQUAL 3

/* Every set of places for cross seams is tried where there are no more sets than this. */
#define MOST_SETS 300

/* Cross seams of a layout, from low to high. */
typedef struct
{
  RcLength y;
  gboolean is_step; /* of the outline: a full width may be cut there too */
} RcCut;

#define MOST_CUTS 32

typedef struct
{
  RcCut cuts[MOST_CUTS];
  guint n;
} RcCuts;

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

RcBlock
rc_part_get_whole (const RcPart *part, const RcSite *site)
{
  return make_block (site, part->box);
}

static int
compare_lengths (gconstpointer a, gconstpointer b)
{
  RcLength x = *(const RcLength *)a, y = *(const RcLength *)b;
  return x < y ? -1 : x > y;
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
  g_array_sort (steps, compare_lengths);
  return steps;
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

/* The least box of the part's floor between two heights. `turned` is the part's floor turned by a quarter, so that its
 * heights run from -y; NULL when the floor fills its box. FALSE when there is none. */
static gboolean
find_box_between (const RcPart *part, const RcRegion *turned, RcLength y0, RcLength y1, RcBox *box)
{
  *box = (RcBox){ part->box.x0, y0, part->box.x1, y1 };
  if (turned == NULL)
    return TRUE;
  g_autoptr (GArray) slices = rc_region_slice (turned, -y1, -y0);
  for (guint i = 0; i < slices->len; i++)
    {
      RcBox found = g_array_index (slices, RcStripPart, i).box;
      box->x0 = i == 0 ? found.y0 : MIN (box->x0, found.y0);
      box->x1 = i == 0 ? found.y1 : MAX (box->x1, found.y1);
    }
  return slices->len > 0;
}

static gboolean
has_same_blocks (const RcLayout *a, const RcLayout *b)
{
  if (a->blocks->len != b->blocks->len)
    return FALSE;
  for (guint i = 0; i < a->blocks->len; i++)
    if (g_array_index (a->blocks, RcBlock, i).box.y0 != g_array_index (b->blocks, RcBlock, i).box.y0)
      return FALSE;
  return TRUE;
}

static gboolean
has_layout_like (const RcPart *part, const RcLayout *layout)
{
  for (guint i = 0; i < part->layouts->len; i++)
    if (has_same_blocks (g_ptr_array_index (part->layouts, i), layout))
      return TRUE;
  return FALSE;
}

/* The part cut there, unless a full width would be cut elsewhere than at a step, a seam would lie in a neck, or it is a
 * layout already. */
static void
add_layout (RcPart *part, const RcSite *site, const RcRegion *turned, const RcCuts *cuts)
{
  RcLayout *layout = layout_new ();
  gboolean  fine = TRUE;
  for (guint i = 0; i <= cuts->n && fine; i++)
    {
      RcLength y0 = i == 0 ? part->box.y0 : cuts->cuts[i - 1].y, y1 = i == cuts->n ? part->box.y1 : cuts->cuts[i].y;
      RcBox    box;
      fine = find_box_between (part, turned, y0, y1, &box);
      RcBlock block = make_block (site, box);
      g_array_append_val (layout->blocks, block);
      if (i == 0 || !fine)
        continue;
      fine = cuts->cuts[i - 1].is_step || !(block.is_drop || g_array_index (layout->blocks, RcBlock, i - 1).is_drop);
      add_crosses (layout, part, y0, i - 1, i);
    }
  if (!fine || crosses_neck (layout, site) || has_layout_like (part, layout))
    {
      rc_layout_free (layout);
      return;
    }
  weigh (layout, part, site);
  g_ptr_array_add (part->layouts, layout);
}

static void
add_cut (RcCuts *cuts, RcLength y, gboolean is_step)
{
  if (cuts->n < MOST_CUTS)
    cuts->cuts[cuts->n++] = (RcCut){ y, is_step };
}

/* Cuts y0 .. y1 into n equal lengths, to the tick. */
static void
add_equal_cuts (RcCuts *cuts, RcLength y0, RcLength y1, guint n)
{
  for (guint i = 1; i < n; i++)
    add_cut (cuts, y0 + (y1 - y0) * i / n, FALSE);
}

/* Cut at a step, or (n_steps 0) not: and the lengths between split into up to as many pieces as the joins allow: one of
 * them at a time, and all alike. */
static void
add_equal_splits (RcPart *part, const RcSite *site, const RcRegion *turned, const RcLength *steps, guint n_steps)
{
  for (guint n = 1; n <= get_most_pieces (site); n++)
    for (guint which = 0; which < (n == 1 || n_steps == 0 ? 1 : n_steps + 2); which++)
      {
        RcCuts cuts = { .n = 0 };
        for (guint i = 0; i <= n_steps; i++)
          {
            RcLength y0 = i == 0 ? part->box.y0 : steps[i - 1], y1 = i == n_steps ? part->box.y1 : steps[i];
            if (i > 0)
              add_cut (&cuts, y0, TRUE);
            add_equal_cuts (&cuts, y0, y1, which == 0 || which == i + 1 ? n : 1);
          }
        add_layout (part, site, turned, &cuts);
      }
}

/* The rules that the equal split into n pieces breaks cost so much; G_MAXINT64 when there is none. */
static gint64
get_equal_rule_cost (const RcPart *part, guint n)
{
  for (guint i = 0; i < part->layouts->len; i++)
    {
      const RcLayout *layout = g_ptr_array_index (part->layouts, i);
      if (layout->blocks->len == n)
        return layout->rule_cost;
    }
  return G_MAXINT64;
}

/* A cut at each place, the lengths below and above it split equally, n pieces in all; where that breaks rules for no
 * more than `limit`. */
static void
add_placed_splits (RcPart *part, const RcSite *site, const RcRegion *turned, const GArray *places, guint n,
                   gint64 limit)
{
  for (guint i = 0; i < places->len; i++)
    for (guint below = 1; below < n; below++)
      {
        RcLength y = g_array_index (places, RcLength, i);
        RcCuts   cuts = { .n = 0 };
        guint    before = part->layouts->len;
        add_equal_cuts (&cuts, part->box.y0, y, below);
        add_cut (&cuts, y, FALSE);
        add_equal_cuts (&cuts, y, part->box.y1, n - below);
        add_layout (part, site, turned, &cuts);
        if (part->layouts->len > before && ((RcLayout *)g_ptr_array_index (part->layouts, before))->rule_cost > limit)
          g_ptr_array_set_size (part->layouts, (int)before);
      }
}

/* Pieces of unequal length: where an equal split breaks a rule that they keep, and where one fits an offcut. */
static void
add_unequal_splits (RcPart *part, const RcSite *site, const RcSplitting *splitting, const RcRegion *turned)
{
  RcBlock whole = make_block (site, part->box);
  g_autoptr (GArray) by_rule = rc_split_find_rule_places (site, part->box);
  g_autoptr (GArray) by_offcut = rc_split_find_offcut_places (site, part->box, whole.cut_width, splitting->offcuts);
  for (guint n = 2; n <= MIN (get_most_pieces (site), MOST_UNEQUAL); n++)
    {
      gint64 least = site->settings->rule_cost[RC_RULE_EACH_SEAM] * (gint64)(n - 1);
      gint64 equal = get_equal_rule_cost (part, n);
      if (equal > least)
        add_placed_splits (part, site, turned, by_rule, n, equal - 1);
      if (n == 2)
        add_placed_splits (part, site, turned, by_offcut, n, equal);
    }
}

/* Cut at two steps of the outline: a fill on either side of a chimney breast. */
static void
add_step_pairs (RcPart *part, const RcSite *site, const RcRegion *turned, const GArray *steps)
{
  for (guint i = 0; i < steps->len; i++)
    for (guint k = i + 1; k < steps->len; k++)
      {
        RcCuts cuts = { .n = 0 };
        add_cut (&cuts, g_array_index (steps, RcLength, i), TRUE);
        add_cut (&cuts, g_array_index (steps, RcLength, k), TRUE);
        add_layout (part, site, turned, &cuts);
      }
}

/* The likely ones; equal splits only until the part is refined. */
static void
add_likely (RcPart *part, const RcSite *site, const RcSplitting *splitting, const RcRegion *turned, const GArray *steps)
{
  add_equal_splits (part, site, turned, NULL, 0);
  if (!part->refined)
    return;
  if (!make_block (site, part->box).is_drop)
    add_unequal_splits (part, site, splitting, turned);
  for (guint i = 0; i < steps->len; i++)
    add_equal_splits (part, site, turned, &g_array_index (steps, RcLength, i), 1);
  if (steps->len == 2)
    add_step_pairs (part, site, turned, steps);
}

/* Every set of the places from `next` on, added to the cuts: up to `joins` between two steps. */
static void
add_sets (RcPart *part, const RcSite *site, const RcRegion *turned, const RcCuts *places, guint next, guint joins,
          guint joins_left, guint steps_left, RcCuts *cuts)
{
  add_layout (part, site, turned, cuts);
  for (guint i = next; i < places->n; i++)
    {
      gboolean is_step = places->cuts[i].is_step;
      if ((is_step ? steps_left : joins_left) == 0)
        continue;
      add_cut (cuts, places->cuts[i].y, is_step);
      add_sets (part, site, turned, places, i + 1, joins, is_step ? joins : joins_left - 1, steps_left - is_step, cuts);
      cuts->n--;
    }
}

static double
count_sets (guint n, guint most)
{
  double sets = 1, sum = 1;
  for (guint k = 1; k <= MIN (n, most); k++)
    {
      sets = sets * (n - k + 1) / k;
      sum += sets;
    }
  return sum;
}

static void
add_all (RcPart *part, const RcSite *site, const RcSplitting *splitting, const RcRegion *turned, const GArray *steps)
{
  guint   joins = get_most_pieces (site) - 1, s = 0;
  RcBlock whole = make_block (site, part->box);
  g_autoptr (GArray) places
      = rc_split_find_all_places (site, part->box, whole.cut_width, splitting->offcuts, steps, joins + 1);
  RcCuts all = { .n = 0 }, cuts = { .n = 0 };
  if (whole.is_drop && part->floor == NULL)
    return;
  if (count_sets (places->len, joins * (1 + MIN (steps->len, MOST_STEPS_TOGETHER)))
              * count_sets (steps->len, MOST_STEPS_TOGETHER)
          > MOST_SETS
      || places->len + steps->len > MOST_CUTS)
    return;
  for (guint p = 0; p <= places->len; p++)
    {
      RcLength y = p < places->len ? g_array_index (places, RcLength, p) : G_MAXINT64;
      for (; s < steps->len && g_array_index (steps, RcLength, s) <= y; s++)
        add_cut (&all, g_array_index (steps, RcLength, s), TRUE);
      if (p < places->len && (s == 0 || g_array_index (steps, RcLength, s - 1) != y))
        add_cut (&all, y, FALSE);
    }
  add_sets (part, site, turned, &all, 0, joins, joins, MOST_STEPS_TOGETHER, &cuts);
}

/* The one layout that the estimator has fixed. */
static void
add_pinned (RcPart *part, const RcSite *site, const RcSitePin *pin, const RcRegion *turned)
{
  g_autoptr (GArray) heights = g_array_new (FALSE, FALSE, sizeof (RcLength));
  RcLayout *layout = layout_new ();
  RcLength  from = part->box.y0;
  for (guint i = 1; i < pin->points->len; i++)
    {
      RcLength y = rc_ring_get (pin->points, i)->y;
      if (y - part->box.y0 > RC_SLIVER && part->box.y1 - y > RC_SLIVER)
        g_array_append_val (heights, y);
    }
  g_array_sort (heights, compare_lengths);
  g_array_append_val (heights, part->box.y1);
  for (guint i = 0; i < heights->len; i++)
    {
      RcLength to = g_array_index (heights, RcLength, i);
      RcBox    box;
      if (to - from <= RC_SLIVER || !find_box_between (part, turned, from, to, &box))
        continue;
      RcBlock block = make_block (site, box);
      g_array_append_val (layout->blocks, block);
      if (layout->blocks->len > 1)
        add_crosses (layout, part, from, layout->blocks->len - 2, layout->blocks->len - 1);
      from = to;
    }
  weigh (layout, part, site);
  g_ptr_array_add (part->layouts, layout);
}

void
rc_part_add_layouts (RcPart *part, const RcSite *site, const RcSplitting *splitting)
{
  if (part->layouts != NULL && part->stamp == splitting->stamp)
    return;
  g_clear_pointer (&part->layouts, g_ptr_array_unref);
  part->layouts = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_layout_free);
  part->stamp = splitting->stamp;
  g_autoptr (GPtrArray) turned = part->floor != NULL ? rc_region_rotate (part->floor, 90) : NULL;
  g_autoptr (GArray) steps = part->floor != NULL ? find_steps (part) : g_array_new (FALSE, FALSE, sizeof (RcLength));
  const RcSitePin *pin = rc_site_find_pinned_split (site, &part->box);
  if (pin != NULL)
    add_pinned (part, site, pin, turned);
  else
    add_likely (part, site, splitting, turned, steps);
  if (pin == NULL && splitting->all && part->refined)
    add_all (part, site, splitting, turned, steps);
  part->pick = MIN (part->pick, part->layouts->len - 1);
}

gboolean
rc_part_refine (RcPart *part, const RcSite *site, const RcSplitting *splitting, const RcRegion *floor, GError **error)
{
  if (!part->refined && !is_filled (floor, &part->box))
    {
      part->floor = clip_floor (part, floor, error);
      if (part->floor == NULL)
        return FALSE;
    }
  if (!part->refined)
    part->stamp = 0; /* the layouts so far were a guess */
  part->refined = TRUE;
  rc_part_add_layouts (part, site, splitting);
  return TRUE;
}
