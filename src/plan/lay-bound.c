#include "lay-bound.h"

#include "lay-forms.h"
#include "range-price.h"
#include "slice-few.h"

typedef struct
{
  RcLayForms       forms;
  const RcLayCost *cost;
  gint64           beside;
  gint64          *rest; /* by part: what it and those after it cost at least by the prices */
  gint64           enough, best;

  const RcLayForm **chosen; /* by part */
  GArray           *own_items, *own_pools;
} Laying;

/* --- what lies beside the carpet --- */

static RcMoney
weigh_sides (const RcLineStretch *stretch)
{
  const RcSite *site = stretch->site;
  RcMoney       cost = 0;
  for (guint i = 0; i < stretch->range->sides->len; i++)
    {
      const RcRangeSide *side = &g_array_index (stretch->range->sides, RcRangeSide, i);
      if (rc_line_stretch_has_part (stretch, side->left) && rc_line_stretch_has_part (stretch, side->right))
        cost += rc_range_weigh_down (side->length, site->weights.side_seam_per_m) + side->rules;
    }
  return cost;
}

static RcMoney
weigh_narrow (const RcLineStretch *stretch, const RcRangePart *part)
{
  const RcSite *site = stretch->site;
  if (!part->seamed || rc_site_is_in_doorway (site, part->box)
      || rc_range_get_cut_width (stretch->site, rc_line_stretch_get_width (stretch, part->width, part->slope, TRUE))
             == site->roll_width)
    return 0;
  return rc_range_weigh_narrow (site, rc_line_stretch_get_width (stretch, part->width, part->slope, FALSE));
}

gint64
rc_lay_weigh_beside (const RcLineStretch *stretch)
{
  RcMoney cost = weigh_sides (stretch);
  for (guint i = 0; i < stretch->range->parts->len; i++)
    if (rc_line_stretch_has_part (stretch, i))
      cost += weigh_narrow (stretch, &g_array_index (stretch->range->parts, RcRangePart, i));
  return cost * RC_RANGE_UNIT;
}

/* --- forms together --- */

/* Sums of forms taken together. */
typedef struct
{
  gint64   beside;
  RcLength drops, longest;
  __int128 area; /* of the fills */
} Sums;

/* `most`: pieces of an item are no more. */
static void
gather (Laying *self, const RcLayForm *form, guint most, Sums *sums)
{
  guint first = self->own_items->len;
  sums->beside += form->beside;
  sums->drops += form->drops;
  for (guint i = 0; i < form->n_items; i++)
    {
      RcNestSliceItem item = g_array_index (self->forms.items, RcNestSliceItem, form->first_item + i);
      item.count = MIN (item.count, most);
      sums->longest = MAX (sums->longest, item.demand / item.count);
      sums->area += (__int128)item.w * item.demand;
      g_array_append_val (self->own_items, item);
    }
  for (guint i = 0; i < form->n_pools; i++)
    {
      RcNestSlicePool pool = g_array_index (self->forms.pools, RcNestSlicePool, form->first_pool + i);
      RcLength        narrowest = self->forms.site->roll_width;
      pool.first += first;
      for (guint k = 0; k < pool.n; k++)
        narrowest = MIN (narrowest, g_array_index (self->own_items, RcNestSliceItem, pool.first + k).w);
      sums->area += (__int128)narrowest * pool.length;
      g_array_append_val (self->own_pools, pool);
    }
}

/* A part of which only is known how much more than the cheapest its form may cost by the prices. */
static void
gather_any (Laying *self, const RcLayPart *part, gint64 slack, Sums *sums)
{
  const RcLayForm *cheapest = &g_array_index (part->forms, RcLayForm, 0);
  guint            n = 0, joins = 0;
  for (; n < part->forms->len && g_array_index (part->forms, RcLayForm, n).cost - cheapest->cost < slack; n++)
    joins = MAX (joins, g_array_index (part->forms, RcLayForm, n).joins);
  if (n == 1)
    gather (self, cheapest, RC_LAY_MANY, sums);
  else
    gather (self, &part->relaxed, joins > RC_LAY_FEW_JOINS ? RC_LAY_MANY : joins + 1, sums);
}

static gint64
weigh_sums (const Laying *self, const Sums *sums, RcLength length)
{
  gint64 carpet = self->cost->func (self->cost->user_data, sums->drops + length);

  return carpet == G_MAXINT64 ? carpet : carpet + sums->beside;
}

/* How much of so much in that many pieces at most is in pieces longer than `from`: but for one, none may be. */
static RcLength
find_long (RcLength length, guint pieces, RcLength from)
{
  return length > from * pieces ? length - from * (pieces - 1) : 0;
}

/* TRUE if what the first `n` parts have in long pieces, in the forms chosen, is more than comes out of long rolls. */
static gboolean
is_too_long (Laying *self, guint n)
{
  RcLength from = self->cost->long_from, drops = 0, longest = 0;
  if (from == 0)
    return FALSE;
  g_array_set_size (self->own_items, 0);
  for (guint i = 0; i < n; i++)
    {
      const RcLayForm *form = self->chosen[i];
      drops += find_long (form->drops, form->joins > RC_LAY_FEW_JOINS ? RC_LAY_MANY : form->joins + 1, from);
      for (guint k = 0; k < form->n_items; k++)
        {
          RcNestSliceItem item = g_array_index (self->forms.items, RcNestSliceItem, form->first_item + k);
          item.demand = find_long (item.demand, item.count, from);
          longest = MAX (longest, item.demand / item.count);
          if (item.demand > 0)
            g_array_append_val (self->own_items, item);
        }
    }
  return drops
             + rc_nest_slice_bound_few ((const RcNestSliceItem *)self->own_items->data, self->own_items->len, NULL, 0,
                                        self->forms.site->roll_width, longest)
         > self->cost->long_most;
}

/* What it costs at least with the forms of the first `n` parts as chosen, which come to `cost` by the prices; or less,
 * where that is as much as the cheapest known. */
static gint64
weigh_chosen (Laying *self, guint n, gint64 cost_by_prices)
{
  Sums   sums = { .beside = self->beside };
  gint64 slack = self->best == G_MAXINT64 ? G_MAXINT64 : self->best - cost_by_prices - self->rest[n];
  if (is_too_long (self, n))
    return G_MAXINT64;
  g_array_set_size (self->own_items, 0);
  g_array_set_size (self->own_pools, 0);
  gather (self, &self->forms.cuts, RC_LAY_MANY, &sums);
  sums.longest = MAX (sums.longest, self->forms.cuts.longest);
  for (guint i = 0; i < n; i++)
    gather (self, self->chosen[i], RC_LAY_MANY, &sums);
  for (guint i = n; i < self->forms.parts->len; i++)
    gather_any (self, &g_array_index (self->forms.parts, RcLayPart, i), slack, &sums);
  RcLength least = MAX (sums.longest, (RcLength)(sums.area / self->forms.site->roll_width));
  gint64   cost = weigh_sums (self, &sums, least);
  if (cost >= self->best)
    return cost;
  return weigh_sums (self, &sums,
                     rc_nest_slice_bound_few ((const RcNestSliceItem *)self->own_items->data, self->own_items->len,
                                              (const RcNestSlicePool *)self->own_pools->data, self->own_pools->len,
                                              self->forms.site->roll_width, least));
}

/* The forms of the parts from `at` on; `cost`: what those before come to by the prices. */
static void
choose_form (Laying *self, guint at, gint64 cost)
{
  if (at == self->forms.parts->len)
    {
      self->best = MIN (self->best, MAX (cost, weigh_chosen (self, at, cost)));
      return;
    }
  if (at > 0 && weigh_chosen (self, at, cost) >= self->best)
    return;
  const GArray *forms = g_array_index (self->forms.parts, RcLayPart, at).forms;
  for (guint i = 0; i < forms->len && self->best > self->enough; i++)
    {
      const RcLayForm *form = &g_array_index (forms, RcLayForm, i);
      if (cost + form->cost + self->rest[at + 1] >= self->best)
        break;
      self->chosen[at] = form;
      choose_form (self, at + 1, cost + form->cost);
    }
}

gint64
rc_lay_bound_compute (const RcLineStretch *cells, guint n, const GArray *cuts, gint64 beside, const RcLayCost *cost,
                      gint64 enough)
{
  Laying self = { .cost = cost, .beside = beside, .best = G_MAXINT64, .enough = enough };
  rc_lay_forms_init (&self.forms, cells[0].site, cost->prices, cuts);
  for (guint i = 0; i < n; i++)
    rc_lay_forms_add_cell (&self.forms, &cells[i]);
  guint n_parts = self.forms.parts->len;
  self.own_items = g_array_new (FALSE, FALSE, sizeof (RcNestSliceItem));
  self.own_pools = g_array_new (FALSE, FALSE, sizeof (RcNestSlicePool));
  self.chosen = g_new0 (const RcLayForm *, n_parts + 1);
  self.rest = g_new0 (gint64, n_parts + 1);
  for (guint i = n_parts; i-- > 0;)
    self.rest[i]
        = self.rest[i + 1] + g_array_index (g_array_index (self.forms.parts, RcLayPart, i).forms, RcLayForm, 0).cost;
  choose_form (&self, 0, self.forms.cuts.cost + beside - cost->savings);
  rc_lay_forms_clear (&self.forms);
  g_array_unref (self.own_items);
  g_array_unref (self.own_pools);
  g_free (self.chosen);
  g_free (self.rest);
  return MAX (self.best, enough);
}
