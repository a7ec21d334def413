#include "lay-forms.h"

#include "range-price.h"

enum
{
  MOST_STEPS = 5 /* of a part: more are taken together */
};

/* A length of the roll that a part needs at that width, and what a seam in it costs more than one by itself. */
typedef struct
{
  RcLength w, length;
  RcMoney  join;
} Need;

RcLength
rc_line_stretch_get_width (const RcLineStretch *stretch, RcLength width, int slope, gboolean least)
{
  RcLength a = width + slope * stretch->from, b = width + slope * stretch->to;
  return least ? MIN (a, b) : MAX (a, b);
}

gboolean
rc_line_stretch_has_part (const RcLineStretch *stretch, guint index)
{
  const RcRangePart *part = &g_array_index (stretch->range->parts, RcRangePart, index);
  return rc_line_stretch_get_width (stretch, part->width, part->slope, TRUE) > RC_SLIVER && part->length > RC_SLIVER;
}

/* --- what the parts need --- */

static Need *
get_need (GArray *needs, guint i)
{
  return &g_array_index (needs, Need, i);
}

/* Lets it go on over the next. */
static void
take_next (GArray *needs, guint at)
{
  get_need (needs, at)->length += get_need (needs, at + 1)->length;
  get_need (needs, at)->join = MIN (get_need (needs, at)->join, get_need (needs, at + 1)->join);
  g_array_remove_index (needs, at + 1);
}

/* Takes neighbours together, as the narrower, that lose least by it. */
static void
take_two_together (GArray *needs)
{
  guint    at = 0;
  __int128 least = 0;
  for (guint i = 0; i + 1 < needs->len; i++)
    {
      const Need *a = get_need (needs, i), *b = get_need (needs, i + 1);
      __int128    lost = (__int128)ABS (a->w - b->w) * (a->w > b->w ? a->length : b->length);
      if (i > 0 && lost >= least)
        continue;
      least = lost;
      at = i;
    }
  get_need (needs, at)->w = MIN (get_need (needs, at)->w, get_need (needs, at + 1)->w);
  take_next (needs, at);
}

/* Takes so much off the first or last needs. */
static void
clip (GArray *needs, gboolean first, RcLength length)
{
  while (length > 0 && needs->len > 0)
    {
      guint    at = first ? 0 : needs->len - 1;
      RcLength taken = MIN (length, get_need (needs, at)->length);
      get_need (needs, at)->length -= taken;
      length -= taken;
      if (get_need (needs, at)->length > 0)
        continue;
      RcMoney join = get_need (needs, at)->join;
      g_array_remove_index (needs, at);
      at = first ? 0 : needs->len - 1;
      if (needs->len > 0)
        get_need (needs, at)->join = MIN (get_need (needs, at)->join, join);
    }
}

/* What the part needs from low to high, without allowances, wherever in the stretch the lines lie. Steps are those at
 * the range's middle; where the part is shorter elsewhere, either end of it may not be there. */
static void
list_needs (const RcLineStretch *stretch, const RcRangePart *part, GArray *needs)
{
  RcLength shorter = MAX (0, part->box.y1 - part->box.y0 - part->length);
  g_array_set_size (needs, 0);
  for (guint i = 0; i < part->n_steps; i++)
    {
      const RcRangeStep *step = &g_array_index (stretch->range->steps, RcRangeStep, part->first_step + i);
      RcLength           width = MAX (0, rc_line_stretch_get_width (stretch, step->width, step->slope, TRUE));
      Need               need = { rc_range_get_cut_width (stretch->site, width), step->y1 - step->y0, step->join };
      g_array_append_val (needs, need);
    }
  clip (needs, TRUE, shorter);
  clip (needs, FALSE, shorter);
  if (part->n_steps > 0 && needs->len == 0)
    {
      Need unknown = { rc_range_get_cut_width (stretch->site, 0), 0, part->join };
      g_array_append_val (needs, unknown);
    }
  for (guint i = 0; i + 1 < needs->len;)
    if (get_need (needs, i)->w == get_need (needs, i + 1)->w)
      take_next (needs, i);
    else
      i++;
  while (needs->len > MOST_STEPS)
    take_two_together (needs);
}

/* --- forms of a part --- */

static gint64
price_of (const RcLayForms *self, RcLength width)
{
  return rc_nest_prices_get (self->prices, width);
}

static void
add_item (RcLayForms *self, RcLayForm *form, RcLength width, RcLength length, guint count)
{
  form->cost += price_of (self, width) * length;
  if (width == self->site->roll_width)
    {
      form->drops += length;
      return;
    }
  RcNestSliceItem item = { MAX (1, width), length, count };
  form->longest = MAX (form->longest, (length + count - 1) / count);
  g_array_append_val (self->items, item);
  form->n_items++;
}

static RcLayForm
form_begin (const RcLayForms *self)
{
  return (RcLayForm){ .first_item = self->items->len, .first_pool = self->pools->len };
}

static void
form_end (RcLayForm *form, RcLayPart *part, guint joins, gint64 beside)
{
  form->joins = joins;
  form->beside = beside;
  form->cost += beside;
  g_array_append_val (part->forms, *form);
}

/* Joins, and what they break in pieces of a part so long. `more`: what all of them cost beyond so many by themselves.
 */
static gint64
weigh_joins (const RcLayForms *self, guint joins, RcMoney more, RcLength length)
{
  const RcSettings *settings = self->site->settings;
  RcMoney           rules = joins > settings->most_joins ? settings->rule_cost[RC_RULE_TOO_MANY_JOINS] : 0;
  if (joins > 0 && length / (joins + 1) < settings->least_piece_length)
    rules += settings->rule_cost[RC_RULE_PIECE_TOO_SHORT];
  return (rc_range_weigh_join (self->site) * joins + more + rules) * RC_RANGE_UNIT;
}

/* Pieces of needs, with seams somewhere in those of `seams`, which do not fall: what lies between is in one piece, what
 * has a seam in it is shared out. */
static void
add_form_of (RcLayForms *self, RcLayPart *part, const GArray *needs, const guint *seams, guint joins, RcLength length)
{
  RcLayForm form = form_begin (self);
  RcLength  trim = self->site->settings->trim_length, widths[RC_LAY_FEW_JOINS + 1];
  RcMoney   more = 0;
  guint     item_of[RC_LAY_FEW_JOINS + 2]; /* in the form; where a piece has none, that of the next which has */
  for (guint i = 0; i <= joins; i++)
    {
      guint    from = i == 0 ? 0 : seams[i - 1], to = i == joins ? needs->len - 1 : seams[i];
      RcLength fixed = trim;
      widths[i] = 0;
      for (guint k = from; k <= to; k++)
        {
          const Need *need = &g_array_index (needs, Need, k);
          widths[i] = MAX (widths[i], need->w);
          fixed += (i > 0 && k == from) || (i < joins && k == to) ? 0 : need->length;
        }
      item_of[i] = form.n_items;
      add_item (self, &form, widths[i], fixed, 1);
    }
  item_of[joins + 1] = form.n_items;
  for (guint i = 0; i < joins; i++)
    more += g_array_index (needs, Need, seams[i]).join;
  for (guint i = 0, next; i < joins; i = next)
    {
      RcLength narrowest = widths[i];
      RcLength shared = g_array_index (needs, Need, seams[i]).length;
      for (next = i; next < joins && seams[next] == seams[i]; next++)
        narrowest = MIN (narrowest, widths[next + 1]);
      /* Pieces i .. next share it out. */
      RcNestSlicePool pool = { shared, item_of[i], item_of[next + 1] - item_of[i] };
      gint64          least = G_MAXINT64;
      for (guint k = i; k <= next; k++)
        least = MIN (least, price_of (self, widths[k]));
      form.cost += least * shared;
      if (pool.n == 0)
        form.drops += shared;
      else
        {
          g_array_append_val (self->pools, pool);
          form.n_pools++;
        }
    }
  form_end (&form, part, joins, weigh_joins (self, joins, more, length));
}

/* All places of that many seams. */
static void
add_forms_of (RcLayForms *self, RcLayPart *part, const GArray *needs, guint *seams, guint n, guint joins,
              RcLength length)
{
  if (n == joins)
    {
      add_form_of (self, part, needs, seams, joins, length);
      return;
    }
  for (guint s = n == 0 ? 0 : seams[n - 1]; s < needs->len; s++)
    {
      seams[n] = s;
      add_forms_of (self, part, needs, seams, n + 1, joins, length);
    }
}

/* As if in many pieces, but for so many joins. */
static RcLayForm
make_many (RcLayForms *self, const GArray *needs, Need all_along, guint joins)
{
  RcLayForm form = form_begin (self);
  RcLength  narrowest = all_along.w;
  for (guint i = 0; i < needs->len && needs->len > 1; i++)
    {
      const Need *need = &g_array_index (needs, Need, i);
      narrowest = MIN (narrowest, need->w);
      add_item (self, &form, need->w, need->length, RC_LAY_MANY);
    }
  add_item (self, &form, narrowest,
            self->site->settings->trim_length * (joins + 1) + (needs->len > 1 ? 0 : all_along.length), RC_LAY_MANY);
  return form;
}

static int
compare_forms (gconstpointer a, gconstpointer b)
{
  const RcLayForm *p = a, *q = b;
  return (p->cost > q->cost) - (p->cost < q->cost);
}

/* A part as wide all along has no needs but the whole; it gains nothing by joins where no two pieces of it lie side by
 * side. */
static void
add_part (RcLayForms *self, const GArray *needs, Need whole)
{
  RcLayPart part = { .forms = g_array_new (FALSE, FALSE, sizeof (RcLayForm)) };
  RcLength  trim = self->site->settings->trim_length, length = whole.length - trim;
  Need      all_along = needs->len == 1 ? g_array_index (needs, Need, 0) : (Need){ whole.w, length, whole.join };
  gboolean  gains = needs->len > 1 || all_along.w < whole.w || whole.w * 2 <= self->site->roll_width;
  guint     seams[RC_LAY_FEW_JOINS], most = gains ? RC_LAY_FEW_JOINS : 0;
  RcLayForm form = form_begin (self);
  add_item (self, &form, whole.w, whole.length, 1);
  form_end (&form, &part, 0, 0);
  for (guint joins = 1; joins <= most; joins++)
    {
      if (needs->len > 1)
        {
          add_forms_of (self, &part, needs, seams, 0, joins, length);
          continue;
        }
      form = form_begin (self);
      add_item (self, &form, all_along.w, all_along.length + trim * (joins + 1), joins + 1);
      form_end (&form, &part, joins, weigh_joins (self, joins, whole.join * joins, length));
    }
  if (most > 0)
    {
      form = make_many (self, needs, all_along, RC_LAY_FEW_JOINS + 1);
      form_end (&form, &part, RC_LAY_FEW_JOINS + 1,
                weigh_joins (self, RC_LAY_FEW_JOINS + 1, whole.join * (RC_LAY_FEW_JOINS + 1), length));
    }
  part.relaxed = make_many (self, needs, all_along, 0);
  g_array_sort (part.forms, compare_forms);
  g_array_append_val (self->parts, part);
}

/* Cuts that are what they are; those of one width together. */
static void
take_cuts (RcLayForms *self, const GArray *cuts)
{
  self->cuts = form_begin (self);
  for (guint i = 0; i < cuts->len; i++)
    {
      const RcNestChoiceCut *cut = &g_array_index (cuts, RcNestChoiceCut, i);
      RcLength               length = 0;
      guint                  count = 0;
      gboolean               is_first = TRUE;
      for (guint k = 0; k < cuts->len; k++)
        if (g_array_index (cuts, RcNestChoiceCut, k).w == cut->w)
          {
            is_first &= k >= i;
            length += g_array_index (cuts, RcNestChoiceCut, k).h;
            count++;
          }
      if (is_first)
        add_item (self, &self->cuts, cut->w, length, MIN (count, RC_LAY_MANY));
      if (cut->w < self->site->roll_width)
        self->cuts.longest = MAX (self->cuts.longest, cut->h);
    }
}

static void
part_clear (gpointer data)
{
  g_array_unref (((RcLayPart *)data)->forms);
}

void
rc_lay_forms_init (RcLayForms *forms, const RcSite *site, const RcNestPrices *prices, const GArray *cuts)
{
  *forms = (RcLayForms){ .site = site, .prices = prices };
  forms->parts = g_array_new (FALSE, FALSE, sizeof (RcLayPart));
  g_array_set_clear_func (forms->parts, part_clear);
  forms->items = g_array_new (FALSE, FALSE, sizeof (RcNestSliceItem));
  forms->pools = g_array_new (FALSE, FALSE, sizeof (RcNestSlicePool));
  take_cuts (forms, cuts);
}

void
rc_lay_forms_clear (RcLayForms *forms)
{
  g_array_unref (forms->parts);
  g_array_unref (forms->items);
  g_array_unref (forms->pools);
}

void
rc_lay_forms_add_cell (RcLayForms *self, const RcLineStretch *stretch)
{
  g_autoptr (GArray) needs = g_array_new (FALSE, FALSE, sizeof (Need));
  for (guint i = 0; i < stretch->range->parts->len; i++)
    {
      const RcRangePart *part = &g_array_index (stretch->range->parts, RcRangePart, i);
      RcLength           width = rc_line_stretch_get_width (stretch, part->width, part->slope, TRUE);
      Need whole = { rc_range_get_cut_width (stretch->site, width), part->length + stretch->site->settings->trim_length,
                     part->join };
      if (!rc_line_stretch_has_part (stretch, i))
        continue;
      list_needs (stretch, part, needs);
      add_part (self, needs, whole);
    }
}
