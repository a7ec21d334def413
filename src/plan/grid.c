#include "grid.h"

#include "rule.h"
#include "site-pins.h"

/* Corners beyond this many (curved walls) are thinned out to those that end a wall along the pile. */
#define MOST_OFFSETS 40

static void
collect_ring (const RcRing *ring, RcLength width, gboolean walls_only, GArray *offsets)
{
  for (guint i = 0; i < ring->len; i++)
    {
      const RcPoint *p = rc_ring_get (ring, i);
      const RcPoint *q = rc_ring_get (ring, (i + 1) % ring->len);
      RcLength       offset = rc_wrap (p->x, width);
      if (!walls_only || ABS (p->x - q->x) <= RC_SLIVER)
        g_array_append_val (offsets, offset);
    }
}

static void
collect (const RcSite *site, const RcRegion *floor, gboolean walls_only, GArray *offsets)
{
  RcLength width = site->strip_width, least_fill = site->settings->least_fill_width;
  /* A fill just wide enough at either end is worth trying too, beside what a line on the wall leaves at the other. */
  RcBox    box = rc_region_compute_box (floor);
  RcLength ends[] = { rc_wrap (box.x0, width), rc_wrap (box.x1, width), rc_wrap (box.x0 + least_fill, width),
                      rc_wrap (box.x1 - least_fill, width) };
  g_array_append_vals (offsets, ends, G_N_ELEMENTS (ends));
  for (guint i = 0; i < site->pins->len; i++) /* beside floor where no seam may lie */
    {
      const RcSitePin *pin = g_ptr_array_index (site->pins, i);
      if (pin->floor == NULL)
        continue;
      RcBox    kept_floor = rc_region_compute_box (pin->floor);
      RcLength sides[] = { rc_wrap (kept_floor.x0, width), rc_wrap (kept_floor.x1, width) };
      g_array_append_vals (offsets, sides, G_N_ELEMENTS (sides));
    }
  for (guint p = 0; p < floor->len; p++)
    {
      const RcPolygon *polygon = g_ptr_array_index (floor, p);
      collect_ring (polygon->outer, width, walls_only, offsets);
      for (guint h = 0; h < polygon->holes->len; h++)
        collect_ring (g_ptr_array_index (polygon->holes, h), width, walls_only, offsets);
    }
  g_array_sort (offsets, rc_length_compare);
  guint kept = 0;
  for (guint i = 0; i < offsets->len; i++)
    {
      RcLength offset = g_array_index (offsets, RcLength, i);
      if (kept == 0 || offset != g_array_index (offsets, RcLength, kept - 1))
        g_array_index (offsets, RcLength, kept++) = offset;
    }
  g_array_set_size (offsets, kept);
}

GArray *
rc_site_find_offsets (const RcSite *site, const RcRegion *floor)
{
  GArray *offsets = g_array_new (FALSE, FALSE, sizeof (RcLength));
  collect (site, floor, FALSE, offsets);
  if (offsets->len > MOST_OFFSETS)
    {
      g_array_set_size (offsets, 0);
      collect (site, floor, TRUE, offsets);
    }
  return offsets;
}

/* The one position with a strip line at x. */
static GArray *
dup_offset (const RcSite *site, RcLength x)
{
  GArray  *offsets = g_array_new (FALSE, FALSE, sizeof (RcLength));
  RcLength offset = rc_wrap (x, site->strip_width);
  g_array_append_val (offsets, offset);
  return offsets;
}

GArray *
rc_site_find_cell_offsets (const RcSite *site, GArray *shared, const RcRegion *floor)
{
  RcLength line;
  if (shared != NULL)
    return g_array_ref (shared);
  if (rc_site_find_pinned_line (site, floor, &line))
    return dup_offset (site, line);
  return rc_site_find_offsets (site, floor);
}

GArray *
rc_site_find_shared_offsets (const RcSite *site)
{
  if (site->repeat == 0 && site->across_repeat == 0)
    return NULL;
  RcLength line;
  if (rc_site_find_pinned_line (site, NULL, &line))
    return dup_offset (site, line);
  g_autoptr (GPtrArray) rooms = rc_region_new ();
  for (guint i = 0; i < site->rooms->len; i++)
    g_ptr_array_add (rooms, rc_polygon_copy (((RcSiteRoom *)g_ptr_array_index (site->rooms, i))->polygon));
  return rc_site_find_offsets (site, rooms);
}

static void
add_parts (RcGrid *grid, const RcSite *site, const RcRegion *floor, RcLength x0, guint strip)
{
  g_autoptr (GArray) slices = rc_region_slice (floor, x0, x0 + site->strip_width);
  for (guint i = 0; i < slices->len; i++)
    {
      RcBox box = g_array_index (slices, RcStripPart, i).box;
      if (box.x1 - box.x0 <= RC_SLIVER || box.y1 - box.y0 <= RC_SLIVER)
        continue;
      RcPart *part = g_new0 (RcPart, 1);
      part->box = box;
      part->strip = strip;
      g_ptr_array_add (grid->parts, part);
    }
}

/* The part of `strip` that reaches the line x at height y. */
static guint
find_part (const RcGrid *grid, guint strip, RcLength x, RcLength y)
{
  for (guint i = 0; i < grid->parts->len; i++)
    {
      const RcPart *part = g_ptr_array_index (grid->parts, i);
      if (part->strip == strip && (part->box.x0 == x || part->box.x1 == x) && y >= part->box.y0 && y <= part->box.y1)
        return i;
    }
  return G_MAXUINT;
}

static void
add_side (RcGrid *grid, const RcSite *site, const RcSideLine *line)
{
  if (line->left == G_MAXUINT || line->right == G_MAXUINT || line->y1 - line->y0 <= RC_SLIVER)
    return;
  ((RcPart *)g_ptr_array_index (grid->parts, line->left))->seamed = TRUE;
  ((RcPart *)g_ptr_array_index (grid->parts, line->right))->seamed = TRUE;
  grid->seam_cost += rc_weigh (line->y1 - line->y0, site->weights.side_seam_per_m);
  grid->rule_cost
      += rc_rules_weigh_seam (site, RC_SEAM_SIDE, (RcPoint){ line->x, line->y0 }, (RcPoint){ line->x, line->y1 }, NULL);
  g_array_append_val (grid->sides, *line);
}

/* Where the parts beside the line begin or end within the interval, with its own ends, in order. */
static GArray *
find_breaks (const RcGrid *grid, RcLength x, guint left_strip, const RcInterval *interval)
{
  GArray *breaks = g_array_new (FALSE, FALSE, sizeof (RcLength));
  g_array_append_val (breaks, interval->from);
  for (guint i = 0; i < grid->parts->len; i++)
    {
      const RcPart *part = g_ptr_array_index (grid->parts, i);
      if ((part->strip == left_strip && part->box.x1 == x) || (part->strip == left_strip + 1 && part->box.x0 == x))
        rc_interval_add_breaks (interval, &part->box, breaks);
    }
  g_array_append_val (breaks, interval->to);
  g_array_sort (breaks, rc_length_compare);
  return breaks;
}

/* A side seam for each two parts that lie beside the interval. */
static void
add_sides_along (RcGrid *grid, const RcSite *site, RcLength x, guint left_strip, const RcInterval *interval)
{
  g_autoptr (GArray) breaks = find_breaks (grid, x, left_strip, interval);
  RcSideLine line = { .left = G_MAXUINT, .right = G_MAXUINT };
  for (guint k = 0; k + 1 < breaks->len; k++)
    {
      RcLength from = g_array_index (breaks, RcLength, k), to = g_array_index (breaks, RcLength, k + 1);
      RcLength at = from + (to - from) / 2;
      guint    left = find_part (grid, left_strip, x, at), right = find_part (grid, left_strip + 1, x, at);
      if (left != line.left || right != line.right)
        {
          add_side (grid, site, &line);
          line = (RcSideLine){ x, from, to, left, right };
        }
      line.y1 = to;
    }
  add_side (grid, site, &line);
}

static void
add_sides (RcGrid *grid, const RcSite *site, const RcRegion *floor, RcLength x, guint left_strip)
{
  g_autoptr (GArray) inside = rc_region_cross_line_x (floor, x);
  for (guint i = 0; i < inside->len; i++)
    add_sides_along (grid, site, x, left_strip, &g_array_index (inside, RcInterval, i));
}

RcGrid *
rc_grid_new (const RcSite *site, const RcRegion *floor, RcLength offset)
{
  RcGrid *grid = g_new0 (RcGrid, 1);
  grid->offset = offset;
  grid->parts = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_part_free);
  grid->sides = g_array_new (FALSE, FALSE, sizeof (RcSideLine));

  RcBox    box = rc_region_compute_box (floor);
  RcLength first = box.x0 - rc_wrap (box.x0 - offset, site->strip_width);
  grid->first = first;
  guint n_strips = 0;
  for (RcLength x = first; x < box.x1; x += site->strip_width)
    add_parts (grid, site, floor, x, n_strips++);
  for (guint i = 0; i + 1 < n_strips; i++)
    add_sides (grid, site, floor, first + site->strip_width * (i + 1), i);
  return grid;
}

void
rc_grid_free (RcGrid *grid)
{
  if (grid == NULL)
    return;
  g_ptr_array_unref (grid->parts);
  g_array_unref (grid->sides);
  g_free (grid);
}

void
rc_grid_add_layouts (RcGrid *grid, const RcSite *site, const RcSplitting *splitting)
{
  for (guint i = 0; i < grid->parts->len; i++)
    rc_part_add_layouts (g_ptr_array_index (grid->parts, i), site, splitting);
}

gboolean
rc_grid_refine (RcGrid *grid, const RcSite *site, const RcSplitting *splitting, const RcRegion *floor, GError **error)
{
  for (guint i = 0; i < grid->parts->len; i++)
    if (!rc_part_refine (g_ptr_array_index (grid->parts, i), site, splitting, floor, error))
      return FALSE;
  return TRUE;
}

gint64
rc_grid_get_step (const RcGrid *grid, const RcSite *site, guint strip)
{
  return (grid->first - grid->offset) / site->strip_width + strip;
}

RcBox
rc_grid_get_cut_box (const RcGrid *grid, const RcSite *site, const RcPart *part, const RcBlock *block)
{
  RcLength strip_x0 = grid->first + site->strip_width * part->strip;
  RcBox    box = block->box;
  box.y0 -= site->settings->trim_length / 2;
  box.y1 = box.y0 + block->cut_length;
  if (part->box.x0 != strip_x0)
    box.x0 = box.x1 - block->cut_width;
  if (site->across_repeat > 0)
    box.x0 = CLAMP (box.x0, strip_x0, strip_x0 + site->roll_width - block->cut_width);
  box.x1 = box.x0 + block->cut_width;
  return box;
}

guint
rc_grid_count_side_ends (const RcGrid *grid, const RcCrossLine *line)
{
  guint ends = 0;
  for (guint i = 0; i < grid->sides->len; i++)
    {
      const RcSideLine *side = &g_array_index (grid->sides, RcSideLine, i);
      if (line->y >= side->y0 && line->y <= side->y1)
        ends += (side->x == line->x0) + (side->x == line->x1);
    }
  return ends;
}
