#include "range-price.h"

gint64
rc_range_weigh_down (RcLength length, gint64 per_m)
{
  return length > 0 ? (gint64)((__int128)length * per_m / RC_TICKS_PER_M) : 0;
}

RcLength
rc_range_get_cut_width (const RcSite *site, RcLength width)
{
  gboolean is_drop = width + site->settings->trim_width >= site->roll_width || width >= site->strip_width;
  return is_drop ? site->roll_width : width + site->settings->trim_width;
}

static gint64
weigh_cut (const RcRangePricing *self, RcLength width, RcLength length)
{
  RcNestChoiceCut cut = { rc_range_get_cut_width (self->site, width), length + self->site->settings->trim_length };
  if (self->cuts != NULL)
    g_array_append_val (self->cuts, cut);
  return rc_nest_prices_get (self->prices, cut.w) * cut.h;
}

RcMoney
rc_range_weigh_join (const RcSite *site)
{
  return site->weights.cross_seam_each + site->settings->rule_cost[RC_RULE_EACH_SEAM];
}

/* `more`: than one by itself. */
static gint64
weigh_join (const RcRangePricing *self, RcMoney more)
{
  return self->carpet_only ? 0 : (rc_range_weigh_join (self->site) + more) * RC_RANGE_UNIT;
}

/* Narrower than the least fill by that much at least. */
RcMoney
rc_range_weigh_narrow (const RcSite *site, RcLength width)
{
  RcLength least = site->settings->least_fill_width;
  RcMoney  price = site->settings->rule_cost[RC_RULE_FILL_TOO_NARROW];
  if (width >= least)
    return 0;
  return price + (RcMoney)((__int128)price * (least - width) / least);
}

/* --- parts cut across --- */

RcLength
rc_range_get_step_width (const RcRangeStep *step, RcLength moved)
{
  return MAX (0, step->width + step->slope * moved);
}

static gint64
get_step_price (const RcRangePricing *self, const RcRangeStep *step, RcLength moved)
{
  return rc_nest_prices_get (self->prices, rc_range_get_cut_width (self->site, rc_range_get_step_width (step, moved)));
}

/* The cheapest partition of the steps into pieces that follow one another. A piece's cost changes evenly as a seam
 * moves along a step, so that seams at the steps' ends are enough; or all in one with a seam more, between sloping
 * walls, where a step is taken to be as narrow as it gets. `join`: what that costs more than one by itself. */
static gint64
weigh_pieces (RcRangePricing *self, const RcRangeStep *steps, guint n, RcMoney join, RcLength moved)
{
  g_autofree gint64 *least = g_new0 (gint64, n + 1);
  g_autofree guint  *from = g_new0 (guint, n + 1);
  GArray            *cuts = self->cuts;
  self->cuts = NULL;
  least[0] = 0;
  for (guint to = 1; to <= n; to++)
    {
      RcLength widest = 0;
      least[to] = G_MAXINT64;
      for (guint i = to; i-- > 0;)
        {
          widest = MAX (widest, rc_range_get_step_width (&steps[i], moved));
          gint64 cost = least[i] + weigh_cut (self, widest, steps[to - 1].y1 - steps[i].y0);
          if (i > 0)
            cost += weigh_join (self, MIN (steps[i - 1].join, steps[i].join));
          else if (to == n)
            cost += weigh_join (self, join);
          if (cost < least[to])
            {
              least[to] = cost;
              from[to] = i;
            }
        }
    }
  self->cuts = cuts;
  for (guint to = n; to > 0 && cuts != NULL; to = from[to])
    {
      RcLength widest = 0;
      for (guint i = from[to]; i < to; i++)
        widest = MAX (widest, rc_range_get_step_width (&steps[i], moved));
      weigh_cut (self, widest, steps[to - 1].y1 - steps[from[to]].y0);
    }
  return least[n];
}

/* The part's cheapest cutting into two or more pieces; G_MAXINT64 where the whole is as cheap. */
static gint64
weigh_joined (RcRangePricing *self, const RcLineRange *range, const RcRangePart *part, RcLength moved, gint64 whole)
{
  const RcRangeStep *steps = &g_array_index (range->steps, RcRangeStep, part->first_step);
  guint              n = part->n_steps, n_cuts = self->cuts != NULL ? self->cuts->len : 0;
  gint64             dearest = 0, least = weigh_join (self, part->join);
  for (guint i = 0; i < n; i++)
    {
      gint64 price = get_step_price (self, &steps[i], moved);
      dearest = MAX (dearest, price);
      least += price * (steps[i].y1 - steps[i].y0);
    }
  /* Steps are those at the range's middle: where the part is shorter elsewhere, so much less. */
  gint64 shorter = dearest * MAX (0, part->box.y1 - part->box.y0 - part->length);
  if (least - shorter >= whole)
    return G_MAXINT64;
  least = weigh_pieces (self, steps, n, part->join, moved) - shorter;
  if (least < whole)
    return least;
  if (self->cuts != NULL)
    g_array_set_size (self->cuts, n_cuts);
  return G_MAXINT64;
}

/* `moved`: how far the lines lie from the range's first position; there, and up to the position before `until`, all
 * prices stay. */
static gint64
weigh_part (RcRangePricing *self, const RcLineRange *range, const RcRangePart *part, RcLength moved, RcLength until)
{
  RcLength width = part->width + part->slope * moved;
  guint    n_cuts = self->cuts != NULL ? self->cuts->len : 0;
  if (width <= RC_SLIVER || part->length <= RC_SLIVER)
    return 0;
  gint64 cost = weigh_cut (self, width, part->length);
  if (part->n_steps > 0)
    {
      gint64 joined = weigh_joined (self, range, part, moved, cost);
      if (joined < cost && self->cuts != NULL)
        g_array_remove_range (self->cuts, n_cuts, 1);
      cost = MIN (cost, joined);
    }
  if (part->seamed && !rc_site_is_in_doorway (self->site, part->box)
      && rc_range_get_cut_width (self->site, width) < self->site->roll_width && !self->carpet_only)
    cost += rc_range_weigh_narrow (self->site, MAX (width, part->width + part->slope * (until - 1))) * RC_RANGE_UNIT;
  return cost;
}

static gboolean
is_there (const RcRangePart *part, RcLength moved)
{
  return part->width + part->slope * moved > RC_SLIVER;
}

static gint64
weigh_sides (const RcRangePricing *self, const RcLineRange *range, RcLength moved)
{
  gint64 cost = 0;
  for (guint i = 0; i < range->sides->len && !self->carpet_only; i++)
    {
      const RcRangeSide *side = &g_array_index (range->sides, RcRangeSide, i);
      if (is_there (&g_array_index (range->parts, RcRangePart, side->left), moved)
          && is_there (&g_array_index (range->parts, RcRangePart, side->right), moved))
        cost += rc_range_weigh_down (side->length, self->site->weights.side_seam_per_m) + side->rules;
    }
  return cost * RC_RANGE_UNIT;
}

gint64
rc_range_weigh_at (RcRangePricing *self, const RcLineRange *range, RcLength moved, RcLength until)
{
  gint64 cost = weigh_sides (self, range, moved);
  for (guint i = 0; i < range->parts->len; i++)
    cost += weigh_part (self, range, &g_array_index (range->parts, RcRangePart, i), moved, until);
  return cost;
}

/* --- ranges --- */

/* Where a width that grows or shrinks from `width` comes to `at` or leaves it. */
static void
add_turn (RcRangePricing *self, RcLength width, int slope, RcLength at)
{
  RcLength moved = slope > 0 ? at - width : width - at + 1;
  if (moved > self->from && moved <= self->to)
    g_array_append_val (self->turns, moved);
}

static void
add_turns (RcRangePricing *self, RcLength width, int slope)
{
  const RcSite *site = self->site;
  if (slope == 0)
    return;
  add_turn (self, width, slope, RC_SLIVER + 1);
  add_turn (self, width, slope, site->settings->least_fill_width);
  add_turn (self, width, slope, MIN (site->roll_width - site->settings->trim_width, site->strip_width));
  for (guint i = 0; i < self->prices->turns->len; i++)
    add_turn (self, width, slope, g_array_index (self->prices->turns, RcLength, i) - site->settings->trim_width);
}

/* From one turn to the next every price is the same. */
gint64
rc_range_find_least (RcRangePricing *self, const RcLineRange *range, RcLength from, RcLength to, RcLength *moved)
{
  gint64 least = G_MAXINT64;
  self->from = from;
  self->to = to;
  g_array_set_size (self->turns, 0);
  for (guint i = 0; i < range->parts->len; i++)
    {
      const RcRangePart *part = &g_array_index (range->parts, RcRangePart, i);
      add_turns (self, part->width, part->slope);
      for (guint k = 0; k < part->n_steps; k++)
        {
          const RcRangeStep *step = &g_array_index (range->steps, RcRangeStep, part->first_step + k);
          if (step->slope != part->slope || step->width != part->width)
            add_turns (self, step->width, step->slope);
        }
    }
  RcLength end = to + 1;
  g_array_append_val (self->turns, from);
  g_array_append_val (self->turns, end);
  g_array_sort (self->turns, rc_length_compare);
  for (guint i = 0; i + 1 < self->turns->len; i++)
    {
      RcLength at = g_array_index (self->turns, RcLength, i), until = g_array_index (self->turns, RcLength, i + 1);
      if (at == until)
        continue;
      gint64 cost = rc_range_weigh_at (self, range, at, until);
      if (cost < least)
        {
          least = cost;
          *moved = at;
        }
    }
  return least;
}
