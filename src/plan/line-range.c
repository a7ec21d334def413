#include "line-range.h"

#include "range-steps.h"
#include "rule-least.h"
#include "rule.h"
#include "strip.h"

/* Over a floor with sloping walls, where lengths change as the lines move, no range is longer: 3 in. */
#define MOST_SLOPING (3 * RC_TICKS_PER_INCH)
/* Walls out of square by no more are made straight: where the walls of a room were measured to a fraction of an inch,
 * the traverse is closed by moving corners a hair. */
#define MOST_ASKEW RC_TICKS_PER_MM

static void
keep_each_once (GArray *lengths)
{
  guint kept = 0;
  g_array_sort (lengths, rc_length_compare);
  for (guint i = 0; i < lengths->len; i++)
    if (kept == 0 || g_array_index (lengths, RcLength, i) != g_array_index (lengths, RcLength, kept - 1))
      g_array_index (lengths, RcLength, kept++) = g_array_index (lengths, RcLength, i);
  g_array_set_size (lengths, kept);
}

static void
line_range_free (gpointer data)
{
  RcLineRange *range = data;
  g_array_unref (range->parts);
  g_array_unref (range->steps);
  g_array_unref (range->sides);
  g_free (range);
}

/* (transfer container) GPtrArray of RcRing. */
static GPtrArray *
list_rings (const RcRegion *floor)
{
  GPtrArray *rings = g_ptr_array_new ();
  for (guint p = 0; p < floor->len; p++)
    {
      const RcPolygon *polygon = g_ptr_array_index (floor, p);
      g_ptr_array_add (rings, polygon->outer);
      for (guint h = 0; h < polygon->holes->len; h++)
        g_ptr_array_add (rings, g_ptr_array_index (polygon->holes, h));
    }
  return rings;
}

static gboolean
is_sloping (const RcRegion *floor)
{
  g_autoptr (GPtrArray) rings = list_rings (floor);
  for (guint r = 0; r < rings->len; r++)
    {
      const RcRing *ring = g_ptr_array_index (rings, r);
      for (guint i = 0; i < ring->len; i++)
        {
          const RcPoint *a = rc_ring_get (ring, i), *b = rc_ring_get (ring, (i + 1) % ring->len);
          if (MIN (ABS (b->x - a->x), ABS (b->y - a->y)) > MOST_ASKEW)
            return TRUE;
        }
    }
  return FALSE;
}

/* (transfer full) GArray of RcPoint. */
static GArray *
list_corners (const RcRegion *floor)
{
  GArray *corners = g_array_new (FALSE, FALSE, sizeof (RcPoint));
  g_autoptr (GPtrArray) rings = list_rings (floor);
  for (guint r = 0; r < rings->len; r++)
    {
      const RcRing *ring = g_ptr_array_index (rings, r);
      g_array_append_vals (corners, ring->data, ring->len);
    }
  return corners;
}

/* --- parts --- */

/* The least length along the pile over the range: what of the part lies between the strip's lines wherever they are. */
static RcLength
find_least_length (const RcFloorLook *look, const RcLineRange *range, RcLength middle_x0, RcLength middle,
                   const RcBox *box)
{
  RcLength x0 = middle_x0 + (range->to - middle), x1 = middle_x0 + (range->from - middle) + look->site->strip_width;
  RcLength low = G_MAXINT64, high = G_MININT64;
  if (!look->sloping || range->from == range->to)
    return box->y1 - box->y0;
  if (x0 >= x1)
    return 0;
  g_autoptr (GArray) slices = rc_region_slice (look->floor, x0, x1);
  for (guint i = 0; i < slices->len; i++)
    {
      const RcBox *own = &g_array_index (slices, RcStripPart, i).box;
      /* Its own pieces lie inside its box; another's that does too makes the length no shorter than it is. */
      if (own->y0 < box->y0 - 2 || own->y1 > box->y1 + 2)
        continue;
      if (own->x1 <= box->x0 || own->x0 >= box->x1)
        continue;
      low = MIN (low, own->y0);
      high = MAX (high, own->y1);
    }
  return high > low ? high - low : 0;
}

/* The most, likewise: what of the floor the strip reaches somewhere in the range is one part with it. */
static RcLength
find_most_length (const RcFloorLook *look, const RcLineRange *range, RcLength middle_x0, RcLength middle,
                  const RcBox *box)
{
  RcLength x0 = middle_x0 + (range->from - middle), x1 = middle_x0 + (range->to - middle) + look->site->strip_width;
  RcLength most = box->y1 - box->y0;
  if (!look->sloping || range->from == range->to)
    return most;
  g_autoptr (GArray) slices = rc_region_slice (look->floor, x0, x1);
  for (guint i = 0; i < slices->len; i++)
    {
      const RcBox *all = &g_array_index (slices, RcStripPart, i).box;
      if (all->y0 < box->y1 && all->y1 > box->y0 && all->x0 < box->x1 && all->x1 > box->x0)
        most = MAX (most, all->y1 - all->y0);
    }
  return most;
}

static void
add_parts (const RcFloorLook *look, RcLineRange *range, RcLength x0, RcLength middle, guint strip)
{
  RcLength width = look->site->strip_width;
  g_autoptr (GArray) slices = rc_region_slice (look->floor, x0, x0 + width);
  g_autoptr (GArray) chords = rc_chords_new (look->floor, x0, x0 + width);
  for (guint i = 0; i < slices->len; i++)
    {
      RcRangePart part = { .box = g_array_index (slices, RcStripPart, i).box, .strip = strip };
      part.slope = rc_range_get_slope (part.box.x0 == x0, part.box.x1 == x0 + width);
      part.width = part.box.x1 - part.box.x0 - part.slope * (middle - range->from);
      part.length = find_least_length (look, range, x0, middle, &part.box);
      part.longest = find_most_length (look, range, x0, middle, &part.box);
      rc_range_add_steps (look, range, x0, middle, chords, &part);
      g_array_append_val (range->parts, part);
    }
}

/* --- side seams --- */

static guint
find_part (const RcLineRange *range, guint strip, RcLength x, RcLength y)
{
  for (guint i = 0; i < range->parts->len; i++)
    {
      const RcRangePart *part = &g_array_index (range->parts, RcRangePart, i);
      if (part->strip == strip && (part->box.x0 == x || part->box.x1 == x) && y >= part->box.y0 && y <= part->box.y1)
        return i;
    }
  return G_MAXUINT;
}

/* Where no corner lies between two positions of a line, what of it lies on the floor changes evenly. */
static RcLength
find_least_side (const RcFloorLook *look, const RcLineRange *range, RcLength x, RcLength middle, guint index, guint n)
{
  RcLength least = G_MAXINT64;
  for (int end = 0; end < 2; end++)
    {
      RcLength at = x + (end == 0 ? range->from : range->to) - middle;
      g_autoptr (GArray) inside = rc_region_cross_line_x (look->floor, at);
      if (inside->len != n)
        return 0;
      const RcInterval *interval = &g_array_index (inside, RcInterval, index);
      least = MIN (least, interval->to - interval->from);
    }
  return least;
}

/* Where parts beside the line begin or end within the interval, with its own ends, in
 * order. */
static GArray *
find_side_breaks (const RcLineRange *range, RcLength x, guint left_strip, const RcInterval *interval)
{
  GArray *breaks = g_array_new (FALSE, FALSE, sizeof (RcLength));
  g_array_append_val (breaks, interval->from);
  for (guint i = 0; i < range->parts->len; i++)
    {
      const RcRangePart *part = &g_array_index (range->parts, RcRangePart, i);
      if ((part->strip == left_strip && part->box.x1 == x) || (part->strip == left_strip + 1 && part->box.x0 == x))
        rc_interval_add_breaks (interval, &part->box, breaks);
    }
  g_array_append_val (breaks, interval->to);
  g_array_sort (breaks, rc_length_compare);
  return breaks;
}

static void
add_side (RcLineRange *range, const RcRangeSide *side)
{
  if (side->left == G_MAXUINT || side->right == G_MAXUINT || side->length <= 3 * RC_SLIVER)
    return;
  g_array_append_val (range->sides, *side);
  g_array_index (range->sides, RcRangeSide, range->sides->len - 1).length
      -= 2 * RC_SLIVER; /* sloping walls are rounded outwards, and slivers of seams left out */
  g_array_index (range->parts, RcRangePart, side->left).seamed = TRUE;
  g_array_index (range->parts, RcRangePart, side->right).seamed = TRUE;
}

/* `least`: so long is all of the interval at least, wherever the lines are in the range. */
static void
add_sides_along (RcLineRange *range, RcLength x, guint left_strip, const RcInterval *interval, RcLength least)
{
  g_autoptr (GArray) breaks = find_side_breaks (range, x, left_strip, interval);
  RcLength    shorter = interval->to - interval->from - least;
  RcRangeSide side = { .left = G_MAXUINT, .right = G_MAXUINT };
  for (guint k = 0; k + 1 < breaks->len; k++)
    {
      RcLength from = g_array_index (breaks, RcLength, k), to = g_array_index (breaks, RcLength, k + 1);
      RcLength at = from + (to - from) / 2;
      guint    left = find_part (range, left_strip, x, at), right = find_part (range, left_strip + 1, x, at);
      if (left != side.left || right != side.right)
        {
          add_side (range, &side);
          side = (RcRangeSide){ .x = x, .y0 = from, .left = left, .right = right };
        }
      side.y1 = to;
      side.length = to - side.y0 - shorter;
    }
  add_side (range, &side);
}

static void
add_sides (const RcFloorLook *look, RcLineRange *range, RcLength x, RcLength middle, guint left_strip)
{
  g_autoptr (GArray) inside = rc_region_cross_line_x (look->floor, x);
  for (guint i = 0; i < inside->len; i++)
    {
      const RcInterval *interval = &g_array_index (inside, RcInterval, i);
      RcLength          least = interval->to - interval->from;
      if (look->sloping && range->from < range->to)
        least = find_least_side (look, range, x, middle, i, inside->len);
      add_sides_along (range, x, left_strip, interval, least);
    }
}

/* --- rules --- */

/* What the seam breaks at that position of the lines. */
static RcMoney
weigh_rules (const RcFloorLook *look, const RcRangeSide *side, RcLength moved)
{
  return rc_rules_weigh_seam (look->site, RC_SEAM_SIDE, (RcPoint){ side->x + moved, side->y0 },
                              (RcPoint){ side->x + moved, side->y1 }, NULL);
}

/* Where it lies, wherever the lines are in the range: over all of its x, and as far in y as it does in any case. */
static RcBox
get_side_reach (const RcFloorLook *look, const RcLineRange *range, const RcRangeSide *side, RcLength middle)
{
  RcBox reach = { side->x + range->from - middle, side->y0, side->x + range->to - middle, side->y1 };
  for (int end = 0; end < 2; end++)
    {
      g_autoptr (GArray) inside = rc_region_cross_line_x (look->floor, end == 0 ? reach.x0 : reach.x1);
      RcLength at = side->y0 + (side->y1 - side->y0) / 2, y0 = at, y1 = at;
      for (guint i = 0; i < inside->len; i++)
        {
          const RcInterval *interval = &g_array_index (inside, RcInterval, i);
          if (interval->from > at || interval->to < at)
            continue;
          y0 = interval->from;
          y1 = interval->to;
        }
      reach.y0 = MAX (reach.y0, y0);
      reach.y1 = MIN (reach.y1, y1);
    }
  return reach;
}

static void
add_rules (const RcFloorLook *look, RcLineRange *range, RcLength middle)
{
  for (guint i = 0; i < range->sides->len; i++)
    {
      RcRangeSide *side = &g_array_index (range->sides, RcRangeSide, i);
      if (look->sloping && range->from < range->to)
        side->rules = look->site->settings->rule_cost[RC_RULE_EACH_SEAM]
                      + rc_rules_weigh_side_least (look->site, get_side_reach (look, range, side, middle));
      else
        side->rules
            = MIN (weigh_rules (look, side, range->from - middle), weigh_rules (look, side, range->to - middle));
    }
}

static void
add_break (GArray *breaks, const RcSite *site, RcLength x)
{
  for (RcLength near = x - 1; near <= x + 1; near++)
    {
      RcLength at = rc_wrap (near, site->strip_width);
      g_array_append_val (breaks, at);
    }
}

static void
add_door_breaks (GArray *breaks, const RcSite *site, const RcSiteOpening *door)
{
  const RcPoint ends[] = { door->from, door->to, door->far_from, door->far_to };
  RcLength      reach = door->opening->width;
  for (guint i = 0; i < G_N_ELEMENTS (ends); i++)
    {
      add_break (breaks, site, ends[i].x);
      if (door->opening->swing == RC_SWING_NONE)
        continue;
      add_break (breaks, site, ends[i].x - reach);
      add_break (breaks, site, ends[i].x - reach + RC_SLIVER);
      add_break (breaks, site, ends[i].x + reach - RC_SLIVER);
      add_break (breaks, site, ends[i].x + reach);
    }
  add_break (breaks, site, (door->from.x + door->to.x) / 2);
}

/* Where the way between two doors passes the heights of the floor's corners. */
static void
add_way_breaks (GArray *breaks, const RcFloorLook *look, const RcSiteOpening *p, const RcSiteOpening *q)
{
  RcPoint a = { (p->from.x + p->to.x) / 2, (p->from.y + p->to.y) / 2 };
  RcPoint b = { (q->from.x + q->to.x) / 2, (q->from.y + q->to.y) / 2 };
  if (a.y == b.y)
    return;
  for (guint i = 0; i < look->corners->len; i++)
    {
      RcLength y = g_array_index (look->corners, RcPoint, i).y;
      if (y > MIN (a.y, b.y) && y < MAX (a.y, b.y))
        add_break (breaks, look->site, a.x + (RcLength)((__int128)(b.x - a.x) * (y - a.y) / (b.y - a.y)));
    }
}

static gboolean
is_near (const RcFloorLook *look, const RcSiteOpening *door)
{
  const RcBox *box = &look->box;
  RcLength     reach = door->opening->width + ABS (door->outward.x) + ABS (door->outward.y);
  return MAX (door->from.x, door->to.x) + reach > box->x0 && MIN (door->from.x, door->to.x) - reach < box->x1
         && MAX (door->from.y, door->to.y) + reach > box->y0 && MIN (door->from.y, door->to.y) - reach < box->y1;
}

/* Positions at which what a side seam breaks may change. (transfer full) GArray of RcLength. */
static GArray *
find_breaks (const RcFloorLook *look)
{
  const RcSite *site = look->site;
  GArray       *breaks = g_array_new (FALSE, FALSE, sizeof (RcLength));
  for (guint i = 0; i < site->doors->len; i++)
    {
      const RcSiteOpening *door = &g_array_index (site->doors, RcSiteOpening, i);
      if (is_near (look, door))
        add_door_breaks (breaks, site, door);
      for (guint k = i + 1; k < site->doors->len && is_near (look, door); k++)
        if (is_near (look, &g_array_index (site->doors, RcSiteOpening, k)))
          add_way_breaks (breaks, look, door, &g_array_index (site->doors, RcSiteOpening, k));
    }
  for (guint i = 0; i < site->windows->len; i++)
    {
      add_break (breaks, site, g_array_index (site->windows, RcSiteOpening, i).from.x);
      add_break (breaks, site, g_array_index (site->windows, RcSiteOpening, i).to.x);
    }
  keep_each_once (breaks);
  return breaks;
}

/* --- ranges --- */

/* What of the range lies from `from` to `to`. (transfer full) */
static RcLineRange *
get_part_of (const RcFloorLook *look, const RcLineRange *range, RcLength from, RcLength to)
{
  RcLineRange *own = g_new0 (RcLineRange, 1);
  RcLength     moved = from - range->from;
  *own = (RcLineRange){ from, to, g_array_copy (range->parts), g_array_copy (range->steps),
                        g_array_copy (range->sides) };
  for (guint i = 0; i < own->parts->len; i++)
    {
      RcRangePart *part = &g_array_index (own->parts, RcRangePart, i);
      part->width += part->slope * moved;
    }
  for (guint i = 0; i < own->steps->len; i++)
    {
      RcRangeStep *step = &g_array_index (own->steps, RcRangeStep, i);
      step->width += step->slope * moved;
    }
  add_rules (look, own, range->from + (range->to - range->from) / 2);
  return own;
}

static gboolean
has_same_rules (const RcLineRange *a, const RcLineRange *b)
{
  for (guint i = 0; i < a->sides->len; i++)
    if (g_array_index (a->sides, RcRangeSide, i).rules != g_array_index (b->sides, RcRangeSide, i).rules)
      return FALSE;
  return TRUE;
}

/* Takes the part over. */
static void
add_part_of (const RcFloorLook *look, const RcLineRange *range, RcLength from, RcLength to, guint first,
             GPtrArray *ranges)
{
  RcLineRange *own = get_part_of (look, range, from, to);
  RcLineRange *before = ranges->len > first ? g_ptr_array_index (ranges, ranges->len - 1) : NULL;
  if (before == NULL || !has_same_rules (before, own))
    {
      g_ptr_array_add (ranges, own);
      return;
    }
  before->to = to;
  line_range_free (own);
}

/* The range, in parts over which no rule begins or ceases to be broken. Takes it over. */
static void
add_in_parts (const RcFloorLook *look, const GArray *breaks, RcLineRange *range, GPtrArray *ranges)
{
  RcLength from = range->from;
  guint    first = ranges->len;
  for (int turn = 0; turn < 2 && !look->sloping && range->sides->len > 0; turn++)
    for (guint i = 0; i < breaks->len; i++)
      {
        RcLength at = g_array_index (breaks, RcLength, i) + turn * look->site->strip_width;
        if (at <= from || at > range->to)
          continue;
        add_part_of (look, range, from, at - 1, first, ranges);
        from = at;
      }
  add_part_of (look, range, from, range->to, first, ranges);
  line_range_free (range);
}

static void
add_range (const RcFloorLook *look, const GArray *breaks, RcLength from, RcLength to, GPtrArray *ranges)
{
  RcLength     width = look->site->strip_width, middle = from + (to - from) / 2;
  RcLineRange *range = g_new0 (RcLineRange, 1);
  guint        n_strips = 0;
  *range = (RcLineRange){ from, to, g_array_new (FALSE, FALSE, sizeof (RcRangePart)),
                          g_array_new (FALSE, FALSE, sizeof (RcRangeStep)),
                          g_array_new (FALSE, FALSE, sizeof (RcRangeSide)) };
  RcLength first = look->box.x0 - rc_wrap (look->box.x0 - middle, width);
  for (RcLength x = first; x < look->box.x1; x += width)
    add_parts (look, range, x, middle, n_strips++);
  for (guint i = 0; i + 1 < n_strips; i++)
    add_sides (look, range, first + width * (i + 1), middle, i);
  add_in_parts (look, breaks, range, ranges);
}

GPtrArray *
rc_line_ranges_new (const RcSite *site, const RcRegion *floor)
{
  GPtrArray *ranges = g_ptr_array_new_with_free_func (line_range_free);
  gboolean   sloping = is_sloping (floor);
  g_autoptr (GPtrArray) straight = sloping ? rc_region_copy (floor) : rc_region_straighten (floor);
  g_autoptr (GArray) corners = list_corners (straight);
  RcFloorLook look = { site, straight, rc_region_compute_box (straight), corners, sloping };
  g_autoptr (GArray) breaks = find_breaks (&look);
  g_autoptr (GArray) ends = g_array_new (FALSE, FALSE, sizeof (RcLength));
  for (guint i = 0; i < look.corners->len; i++)
    {
      RcLength at = rc_wrap (g_array_index (look.corners, RcPoint, i).x, site->strip_width);
      g_array_append_val (ends, at);
    }
  keep_each_once (ends);
  for (guint i = 0; i < ends->len; i++)
    {
      RcLength at = g_array_index (ends, RcLength, i);
      RcLength next = i + 1 < ends->len ? g_array_index (ends, RcLength, i + 1)
                                        : g_array_index (ends, RcLength, 0) + site->strip_width;
      RcLength step = look.sloping ? MOST_SLOPING : site->strip_width;
      add_range (&look, breaks, at, at, ranges);
      for (RcLength from = at + 1; from < next; from += step)
        add_range (&look, breaks, from, MIN (from + step, next) - 1, ranges);
    }
  return ranges;
}
