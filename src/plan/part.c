#include "part.h"

#include "part-layout.h"
#include "site-pins.h"

/* More steps of an outline than this inside one strip are not tried as places for cross seams, nor more of them at
 * once. */
#define MOST_STEPS          6
#define MOST_STEPS_TOGETHER 2

/* Likely splits into unequal lengths are of no more pieces than this. */
#define MOST_UNEQUAL 3

/* Every set of places for cross seams is tried where there are no more sets than this. */
#define MOST_SETS 300

void
rc_part_free (RcPart *part)
{
  if (part == NULL)
    return;
  g_clear_pointer (&part->floor, g_ptr_array_unref);
  g_clear_pointer (&part->layouts, g_ptr_array_unref);
  g_free (part);
}

/* How many lengths as they are sold it takes at least to go from one end of the part to the other. */
static guint
count_least_pieces (const RcPart *part, const RcSite *site)
{
  RcLength height = part->box.y1 - part->box.y0, longest = rc_split_compute_longest (site);
  return height <= longest ? 1 : (guint)MIN (1 + (height - 1) / longest, RC_MOST_CUTS + 1);
}

/* More joins than are allowed are made where no length is sold for fewer: a rule broken, and shown. */
static guint
get_most_pieces (const RcPart *part, const RcSite *site)
{
  return MAX (site->settings->most_joins + 1, count_least_pieces (part, site));
}

/* A full width is cut across only where it must be. */
static gboolean
can_be_split (const RcPart *part, const RcSite *site)
{
  return !rc_part_get_whole (part, site).is_drop || count_least_pieces (part, site) > 1;
}

RcBlock
rc_part_get_whole (const RcPart *part, const RcSite *site)
{
  return rc_block_make (site, part->box);
}

/* Heights at which the part's outline steps, strictly inside its box; not too many, not too near one another. Empty
 * where it fills its box. */
static GArray *
find_steps (const RcPart *part)
{
  GArray *steps = g_array_new (FALSE, FALSE, sizeof (RcLength));
  for (guint p = 0; part->floor != NULL && p < part->floor->len; p++)
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
  g_array_sort (steps, rc_length_compare);
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

/* The part cut there, unless that is a layout already or none. */
static void
add_layout (RcPart *part, const RcSite *site, const RcCuts *cuts)
{
  for (guint i = 0; i < part->layouts->len; i++)
    if (rc_layout_is_cut_so (g_ptr_array_index (part->layouts, i), cuts))
      return;
  RcLayout *layout = rc_layout_new (part, site, cuts);
  if (layout != NULL)
    g_ptr_array_add (part->layouts, layout);
}

/* Cuts y0 .. y1 into n equal lengths, to the tick. */
static void
add_equal_cuts (RcCuts *cuts, RcLength y0, RcLength y1, guint n)
{
  for (guint i = 1; i < n; i++)
    rc_cuts_add (cuts, y0 + (y1 - y0) * i / n, FALSE);
}

/* Cut at a step, or (n_steps 0) not: and the lengths between split into up to as many pieces as the joins allow: one of
 * them at a time, and all alike. */
static void
add_equal_splits (RcPart *part, const RcSite *site, const RcLength *steps, guint n_steps)
{
  for (guint n = 1; n <= get_most_pieces (part, site); n++)
    for (guint which = 0; which < (n == 1 || n_steps == 0 ? 1 : n_steps + 2); which++)
      {
        RcCuts cuts = { .n = 0 };
        for (guint i = 0; i <= n_steps; i++)
          {
            /* cppcheck-suppress nullPointer ; no step is read where n_steps is 0 */
            RcLength y0 = i == 0 ? part->box.y0 : steps[i - 1], y1 = i == n_steps ? part->box.y1 : steps[i];
            if (i > 0)
              rc_cuts_add (&cuts, y0, TRUE);
            add_equal_cuts (&cuts, y0, y1, which == 0 || which == i + 1 ? n : 1);
          }
        add_layout (part, site, &cuts);
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
add_placed_splits (RcPart *part, const RcSite *site, const GArray *places, guint n, gint64 limit)
{
  for (guint i = 0; i < places->len; i++)
    for (guint below = 1; below < n; below++)
      {
        RcLength y = g_array_index (places, RcLength, i);
        RcCuts   cuts = { .n = 0 };
        guint    before = part->layouts->len;
        add_equal_cuts (&cuts, part->box.y0, y, below);
        rc_cuts_add (&cuts, y, FALSE);
        add_equal_cuts (&cuts, y, part->box.y1, n - below);
        add_layout (part, site, &cuts);
        if (part->layouts->len > before && ((RcLayout *)g_ptr_array_index (part->layouts, before))->rule_cost > limit)
          g_ptr_array_set_size (part->layouts, (int)before);
      }
}

/* Pieces of unequal length, where an equal split breaks a rule that they keep; or where it must be split and a
 * neighbour too, so that their seams can be staggered. */
static void
add_splits_by_rule (RcPart *part, const RcSite *site)
{
  g_autoptr (GArray) places = rc_split_find_rule_places (site, part->box);
  guint must = count_least_pieces (part, site);
  for (guint n = MAX (2, must); n <= MAX (must, MIN (get_most_pieces (part, site), MOST_UNEQUAL)); n++)
    {
      gint64 least = site->settings->rule_cost[RC_RULE_EACH_SEAM] * (gint64)(n - 1);
      gint64 equal = get_equal_rule_cost (part, n);
      if (equal > least || must > 1)
        add_placed_splits (part, site, places, n, must > 1 ? equal : equal - 1);
    }
}

/* Two pieces, one of which fits an offcut. */
static void
add_splits_by_offcut (RcPart *part, const RcSite *site, const RcSplitting *splitting)
{
  RcBlock whole = rc_block_make (site, part->box);
  if (!can_be_split (part, site) || splitting->offcuts->len == 0 || get_most_pieces (part, site) < 2)
    return;
  g_autoptr (GArray) places = rc_split_find_offcut_places (site, part->box, whole.cut_width, splitting->offcuts);
  add_placed_splits (part, site, places, 2, get_equal_rule_cost (part, 2));
}

/* Cut at two steps of the outline: a fill on either side of a chimney breast. */
static void
add_step_pairs (RcPart *part, const RcSite *site, const GArray *steps)
{
  for (guint i = 0; i < steps->len; i++)
    for (guint k = i + 1; k < steps->len; k++)
      {
        RcCuts cuts = { .n = 0 };
        rc_cuts_add (&cuts, g_array_index (steps, RcLength, i), TRUE);
        rc_cuts_add (&cuts, g_array_index (steps, RcLength, k), TRUE);
        add_layout (part, site, &cuts);
      }
}

/* What doors, rules and steps of the outline suggest: once for a part. */
static void
add_likely (RcPart *part, const RcSite *site, const GArray *steps)
{
  if (can_be_split (part, site))
    add_splits_by_rule (part, site);
  for (guint i = 0; i < steps->len; i++)
    add_equal_splits (part, site, &g_array_index (steps, RcLength, i), 1);
  if (steps->len == 2)
    add_step_pairs (part, site, steps);
}

/* Every set of the places from `next` on, added to the cuts: up to `joins` between two steps. */
static void
add_sets (RcPart *part, const RcSite *site, const RcCuts *places, guint next, guint joins, guint joins_left,
          guint steps_left, RcCuts *cuts)
{
  add_layout (part, site, cuts);
  for (guint i = next; i < places->n; i++)
    {
      gboolean is_step = places->cuts[i].is_step;
      if ((is_step ? steps_left : joins_left) == 0)
        continue;
      rc_cuts_add (cuts, places->cuts[i].y, is_step);
      add_sets (part, site, places, i + 1, joins, is_step ? joins : joins_left - 1, steps_left - is_step, cuts);
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
add_all (RcPart *part, const RcSite *site, const RcSplitting *splitting)
{
  guint   joins = get_most_pieces (part, site) - 1, s = 0;
  RcBlock whole = rc_block_make (site, part->box);
  g_autoptr (GArray) steps = find_steps (part);
  g_autoptr (GArray) places
      = rc_split_find_all_places (site, part->box, whole.cut_width, splitting->offcuts, steps, joins + 1);
  RcCuts all = { .n = 0 }, cuts = { .n = 0 };
  if (!can_be_split (part, site) && part->floor == NULL)
    return;
  if (count_sets (places->len, joins * (1 + MIN (steps->len, MOST_STEPS_TOGETHER)))
              * count_sets (steps->len, MOST_STEPS_TOGETHER)
          > MOST_SETS
      || places->len + steps->len > RC_MOST_CUTS)
    return;
  for (guint p = 0; p <= places->len; p++)
    {
      RcLength y = p < places->len ? g_array_index (places, RcLength, p) : G_MAXINT64;
      for (; s < steps->len && g_array_index (steps, RcLength, s) <= y; s++)
        rc_cuts_add (&all, g_array_index (steps, RcLength, s), TRUE);
      if (p < places->len && (s == 0 || g_array_index (steps, RcLength, s - 1) != y))
        rc_cuts_add (&all, y, FALSE);
    }
  add_sets (part, site, &all, 0, joins, joins, MOST_STEPS_TOGETHER, &cuts);
}

/* The whole part and equal splits, or the one layout that the estimator has fixed. */
static void
begin_layouts (RcPart *part, const RcSite *site)
{
  const RcSitePin *pin = rc_site_find_pinned_split (site, &part->box);
  g_clear_pointer (&part->layouts, g_ptr_array_unref);
  part->layouts = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_layout_free);
  part->is_pinned = pin != NULL;
  if (part->is_pinned)
    g_ptr_array_add (part->layouts, rc_layout_new_pinned (part, site, pin->points));
  else
    add_equal_splits (part, site, NULL, 0);
  part->n_lasting = part->layouts->len;
}

void
rc_part_add_layouts (RcPart *part, const RcSite *site, const RcSplitting *splitting)
{
  if (part->layouts == NULL)
    begin_layouts (part, site);
  if (!part->refined || part->is_pinned || part->stamp == splitting->stamp)
    return;
  g_ptr_array_set_size (part->layouts, (int)part->n_lasting);
  part->stamp = splitting->stamp;
  add_splits_by_offcut (part, site, splitting);
  if (splitting->all)
    add_all (part, site, splitting);
  part->pick = MIN (part->pick, part->layouts->len - 1);
}

gboolean
rc_part_refine (RcPart *part, const RcSite *site, const RcSplitting *splitting, const RcRegion *floor, GError **error)
{
  if (!part->refined)
    {
      gboolean is_filled_box = is_filled (floor, &part->box);
      if (!is_filled_box && (part->floor = clip_floor (part, floor, error)) == NULL)
        return FALSE;
      if (!is_filled_box || part->layouts == NULL) /* the layouts so far were a guess */
        begin_layouts (part, site);
      part->refined = TRUE;
      part->stamp = 0;
      g_autoptr (GArray) steps = find_steps (part);
      if (!part->is_pinned)
        add_likely (part, site, steps);
      part->n_lasting = part->layouts->len;
    }
  rc_part_add_layouts (part, site, splitting);
  return TRUE;
}
