#include "lay-bound.h"

#include "lay-forms.h"
#include "range-price.h"
#include "slice-few.h"

/* Of forms taken one after the other no more than so many sets are weighed; what begins like one beyond that is taken
 * at what it comes to at least, so that the bound is lower but soon there. */
#define MOST_WEIGHED 500

/* Sums of forms taken together. */
typedef struct
{
  gint64    beside;
  RcLength  drops, longest;
  __int128  area; /* of the fills of the cells before, wherever their lines lie */
  RcLayArea own;  /* of the cell's at hand */
} Sums;

/* What the parts from one on come to at least. */
typedef struct
{
  gint64    cost; /* by the prices */
  RcLength  drops;
  RcLayArea own;  /* in the cell of the part before */
  __int128  area; /* in the cells after that */
} Rest;

typedef struct
{
  RcLayForms       forms;
  const RcLayCost *cost;
  Rest            *rest; /* by part */
  gint64           enough, best;
  guint            n_weighed;

  const RcLayForm **chosen; /* by part */
  Sums             *sums;   /* by part: of those before it */
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

static const RcLayPart *
get_part (const Laying *self, guint i)
{
  return &g_array_index (self->forms.parts, RcLayPart, i);
}

static gboolean
begins_cell (const Laying *self, guint part)
{
  return part == 0 || get_part (self, part)->cell != get_part (self, part - 1)->cell;
}

static __int128
get_area (const RcLayArea *area)
{
  return MAX (0, MIN (area->from, area->to));
}

static void
add_area (RcLayArea *area, const RcLayArea *more)
{
  area->from += more->from;
  area->to += more->to;
}

static void
add_form (Sums *sums, const RcLayForm *form)
{
  sums->beside += form->beside;
  sums->drops += form->drops;
  sums->longest = MAX (sums->longest, form->longest);
  add_area (&sums->own, &form->area);
}

/* Takes the form for the part, after those before. */
static void
take_form (Laying *self, guint at, const RcLayForm *form)
{
  Sums *sums = &self->sums[at + 1];
  *sums = self->sums[at];
  self->chosen[at] = form;
  if (begins_cell (self, at))
    {
      sums->area += get_area (&sums->own);
      sums->own = g_array_index (self->forms.cells, RcLayArea, get_part (self, at)->cell);
    }
  add_form (sums, form);
}

static void
find_rest (Laying *self)
{
  guint n = self->forms.parts->len;
  self->rest = g_new0 (Rest, n + 1);
  for (guint i = n; i-- > 0;)
    {
      const RcLayPart *part = get_part (self, i);
      Rest            *rest = &self->rest[i];
      *rest = self->rest[i + 1];
      rest->cost += g_array_index (part->forms, RcLayForm, 0).cost;
      rest->drops += part->relaxed.drops;
      add_area (&rest->own, &part->relaxed.area);
      if (!begins_cell (self, i))
        continue;
      add_area (&rest->own, &g_array_index (self->forms.cells, RcLayArea, part->cell));
      rest->area += get_area (&rest->own);
      rest->own = (RcLayArea){ 0, 0 };
    }
}

/* `most`: pieces of an item are no more. */
static void
list_items (Laying *self, const RcLayForm *form, guint most)
{
  guint first = self->own_items->len;
  for (guint i = 0; i < form->n_items; i++)
    {
      RcNestSliceItem item = g_array_index (self->forms.items, RcNestSliceItem, form->first_item + i);
      item.count = MIN (item.count, most);
      g_array_append_val (self->own_items, item);
    }
  for (guint i = 0; i < form->n_pools; i++)
    {
      RcNestSlicePool pool = g_array_index (self->forms.pools, RcNestSlicePool, form->first_pool + i);
      pool.first += first;
      g_array_append_val (self->own_pools, pool);
    }
}

/* Those of a part of which only is known how much more than the cheapest its form may cost by the prices. */
static void
list_any_items (Laying *self, const RcLayPart *part, gint64 slack)
{
  const RcLayForm *cheapest = &g_array_index (part->forms, RcLayForm, 0);
  guint            n = 0, joins = 0;
  for (; n < part->forms->len && g_array_index (part->forms, RcLayForm, n).cost - cheapest->cost < slack; n++)
    joins = MAX (joins, g_array_index (part->forms, RcLayForm, n).joins);
  if (n == 1)
    list_items (self, cheapest, RC_LAY_MANY);
  else
    list_items (self, &part->relaxed, joins > RC_LAY_FEW_JOINS ? RC_LAY_MANY : joins + 1);
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

static gint64
weigh_length (const Laying *self, guint n, RcLength length)
{
  gint64 carpet = self->cost->func (self->cost->user_data, self->sums[n].drops + self->rest[n].drops + length);
  return carpet == G_MAXINT64 ? carpet : carpet + self->sums[n].beside;
}

/* What it costs at least with the forms of the first `n` parts as chosen, which come to `cost` by the prices; or less,
 * where that is as much as the cheapest known. */
static gint64
weigh_chosen (Laying *self, guint n, gint64 cost_by_prices)
{
  const Sums *sums = &self->sums[n];
  RcLayArea   own = self->rest[n].own;
  gint64      slack = self->best == G_MAXINT64 ? G_MAXINT64 : self->best - cost_by_prices - self->rest[n].cost;
  add_area (&own, &sums->own);
  RcLength least = (RcLength)((sums->area + get_area (&own) + self->rest[n].area) / self->forms.site->roll_width);
  least = MAX (least, sums->longest);
  gint64 weighed = weigh_length (self, n, least);
  if (weighed >= self->best)
    return weighed;
  g_array_set_size (self->own_items, 0);
  g_array_set_size (self->own_pools, 0);
  list_items (self, &self->forms.cuts, RC_LAY_MANY);
  for (guint i = 0; i < n; i++)
    list_items (self, self->chosen[i], RC_LAY_MANY);
  for (guint i = n; i < self->forms.parts->len; i++)
    list_any_items (self, get_part (self, i), slack);
  weighed = weigh_length (self, n,
                          rc_nest_slice_bound_few ((const RcNestSliceItem *)self->own_items->data, self->own_items->len,
                                                   (const RcNestSlicePool *)self->own_pools->data, self->own_pools->len,
                                                   self->forms.site->roll_width, least));
  return weighed < self->best && is_too_long (self, n) ? G_MAXINT64 : weighed;
}

/* The forms of the parts from `at` on; `cost`: what those before come to by the prices. */
static void
choose_form (Laying *self, guint at, gint64 cost)
{
  gint64 weighed = at > 0 || self->forms.parts->len == 0 ? weigh_chosen (self, at, cost) : 0;
  if (weighed >= self->best)
    return;
  self->n_weighed++;
  if (at == self->forms.parts->len || (at > 0 && self->n_weighed > MOST_WEIGHED))
    {
      self->best = MIN (self->best, MAX (cost + self->rest[at].cost, weighed));
      return;
    }
  const GArray *forms = get_part (self, at)->forms;
  for (guint i = 0; i < forms->len && self->best > self->enough; i++)
    {
      const RcLayForm *form = &g_array_index (forms, RcLayForm, i);
      if (cost + form->cost + self->rest[at + 1].cost >= self->best)
        break;
      take_form (self, at, form);
      choose_form (self, at + 1, cost + form->cost);
    }
}

gint64
rc_lay_bound_compute (const RcLineStretch *cells, guint n, const GArray *cuts, gint64 beside, const RcLayCost *cost,
                      gint64 enough, gint64 most)
{
  Laying self = { .cost = cost, .best = most, .enough = enough };
  rc_lay_forms_init (&self.forms, cells[0].site, cost->prices, cuts);
  for (guint i = 0; i < n; i++)
    rc_lay_forms_add_cell (&self.forms, &cells[i]);
  guint n_parts = self.forms.parts->len;
  self.own_items = g_array_new (FALSE, FALSE, sizeof (RcNestSliceItem));
  self.own_pools = g_array_new (FALSE, FALSE, sizeof (RcNestSlicePool));
  self.chosen = g_new0 (const RcLayForm *, n_parts + 1);
  self.sums = g_new0 (Sums, n_parts + 1);
  self.sums[0].beside = beside;
  add_form (&self.sums[0], &self.forms.cuts);
  find_rest (&self);
  choose_form (&self, 0, self.forms.cuts.cost + beside - cost->savings);
  rc_lay_forms_clear (&self.forms);
  g_array_unref (self.own_items);
  g_array_unref (self.own_pools);
  g_free (self.chosen);
  g_free (self.sums);
  g_free (self.rest);
  return MAX (self.best, enough);
}
