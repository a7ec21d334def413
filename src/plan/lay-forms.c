#include "lay-forms.h"

#include "range-price.h"

enum
{
  MOST_STEPS = 5 /* of a part: more are taken together */
};

/* Of a cut: the least over the stretch, and what it is at least at the stretch's ends and evenly in between. */
typedef struct
{
  RcLength least, from, to;
} Width;

/* A length of the roll that a part needs at that width, and what a seam in it costs more than one by itself. */
typedef struct
{
  Width    w;
  RcLength length;
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

static RcLength
get_width_at (const RcLineStretch *stretch, RcLength width, int slope, RcLength moved)
{
  return MIN (stretch->site->roll_width, width + slope * moved + stretch->site->settings->trim_width);
}

/* Of the cut for what is so wide at the range's first position. */
static Width
get_width (const RcLineStretch *stretch, RcLength width, int slope)
{
  RcLength least = MAX (0, rc_line_stretch_get_width (stretch, width, slope, TRUE));
  return (Width){ rc_range_get_cut_width (stretch->site, least), get_width_at (stretch, width, slope, stretch->from),
                  get_width_at (stretch, width, slope, stretch->to) };
}

/* No wider than either. */
static Width
get_narrower (Width a, Width b)
{
  return (Width){ MIN (a.least, b.least), MIN (a.from, b.from), MIN (a.to, b.to) };
}

static Need *
get_need (GArray *needs, guint i)
{
  return &g_array_index (needs, Need, i);
}

/* Lets it go on over the next, as the narrower. */
static void
take_next (GArray *needs, guint at)
{
  get_need (needs, at)->w = get_narrower (get_need (needs, at)->w, get_need (needs, at + 1)->w);
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
      RcLength    more = a->w.least - b->w.least;
      __int128    lost = (__int128)ABS (more) * (more > 0 ? a->length : b->length);
      if (i > 0 && lost >= least)
        continue;
      least = lost;
      at = i;
    }
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
      Need               need = { get_width (stretch, step->width, step->slope), step->y1 - step->y0, step->join };
      g_array_append_val (needs, need);
    }
  clip (needs, TRUE, shorter);
  clip (needs, FALSE, shorter);
  if (part->n_steps > 0 && needs->len == 0)
    {
      Need unknown = { get_width (stretch, 0, 0), 0, part->join };
      g_array_append_val (needs, unknown);
    }
  for (guint i = 0; i + 1 < needs->len;)
    if (get_need (needs, i)->w.least == get_need (needs, i + 1)->w.least)
      take_next (needs, i);
    else
      i++;
  while (needs->len > MOST_STEPS)
    take_two_together (needs);
}

/* --- forms of a part --- */

static gint64
price_of (const RcLayForms *self, Width width)
{
  return rc_nest_prices_get (self->prices, width.least);
}

static void
add_area (RcLayArea *area, Width width, RcLength length)
{
  area->from += (__int128)width.from * length;
  area->to += (__int128)width.to * length;
}

static void
add_item (RcLayForms *self, RcLayForm *form, Width width, RcLength length, guint count)
{
  form->cost += price_of (self, width) * length;
  if (width.least == self->site->roll_width)
    {
      form->drops += length;
      return;
    }
  RcNestSliceItem item = { MAX (1, width.least), length, count };
  add_area (&form->area, width, length);
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

/* What `n` joined pieces break that are together so long at most: one of them at least is too short if all are on
 * average, and those that are lack together what all do at least. */
static RcMoney
weigh_short (const RcLayForms *self, guint n, RcLength length)
{
  RcMoney  price = self->site->settings->rule_cost[RC_RULE_PIECE_TOO_SHORT];
  RcLength least = self->site->settings->least_piece_length, lacking = least * n - MAX (length, 0);
  return lacking > 0 ? price + (RcMoney)((__int128)price * lacking / least) : 0;
}

/* Joins, and what they break in pieces that are together so long at most. `more`: what all of them cost beyond so many
 * by themselves; `short_each`: what is known of each piece that is too short. */
static gint64
weigh_joins (const RcLayForms *self, guint joins, RcMoney more, RcMoney short_each, RcLength length)
{
  const RcSettings *settings = self->site->settings;
  RcMoney           rules = joins > settings->most_joins ? settings->rule_cost[RC_RULE_TOO_MANY_JOINS] : 0;
  if (joins > 0)
    rules += MAX (short_each, weigh_short (self, joins + 1, length));
  return (rc_range_weigh_join (self->site) * joins + more + rules) * RC_RANGE_UNIT;
}

/* Pieces of needs, with seams somewhere in those of `seams`, which do not fall: what lies between is in one piece, what
 * has a seam in it is shared out. */
static void
add_form_of (RcLayForms *self, RcLayPart *part, const GArray *needs, const guint *seams, guint joins, RcLength longest)
{
  RcLayForm form = form_begin (self);
  RcLength  trim = self->site->settings->trim_length;
  Width     widths[RC_LAY_FEW_JOINS + 1] = { 0 };
  RcLength  unknown = longest; /* of the part's length: what no need tells of */
  RcMoney   more = 0, short_each = 0;
  guint     item_of[RC_LAY_FEW_JOINS + 2]; /* in the form; where a piece has none, that of the next which has */
  for (guint k = 0; k < needs->len; k++)
    unknown -= g_array_index (needs, Need, k).length;
  for (guint i = 0; i <= joins; i++)
    {
      guint    from = i == 0 ? 0 : seams[i - 1], to = i == joins ? needs->len - 1 : seams[i];
      RcLength fixed = trim, all = 0;
      for (guint k = from; k <= to; k++)
        {
          const Need *need = &g_array_index (needs, Need, k);
          if (need->w.least > widths[i].least)
            widths[i] = need->w;
          all += need->length;
          fixed += (i > 0 && k == from) || (i < joins && k == to) ? 0 : need->length;
        }
      item_of[i] = form.n_items;
      add_item (self, &form, widths[i], fixed, 1);
      short_each += weigh_short (self, 1, all + unknown);
    }
  item_of[joins + 1] = form.n_items;
  for (guint i = 0; i < joins; i++)
    more += g_array_index (needs, Need, seams[i]).join;
  for (guint i = 0, next; i < joins; i = next)
    {
      Width    narrowest = { G_MAXINT64, G_MAXINT64, G_MAXINT64 };
      RcLength shared = g_array_index (needs, Need, seams[i]).length;
      for (next = i; next < joins && seams[next] == seams[i]; next++)
        narrowest = get_narrower (narrowest, get_narrower (widths[next], widths[next + 1]));
      /* Pieces i .. next share it out. */
      RcNestSlicePool pool = { shared, item_of[i], item_of[next + 1] - item_of[i] };
      form.cost += price_of (self, narrowest) * shared;
      if (pool.n == 0)
        form.drops += shared;
      else
        {
          g_array_append_val (self->pools, pool);
          add_area (&form.area, narrowest, shared);
          form.n_pools++;
        }
    }
  form_end (&form, part, joins, weigh_joins (self, joins, more, short_each, longest));
}

/* All places of that many seams. */
static void
add_forms_of (RcLayForms *self, RcLayPart *part, const GArray *needs, guint *seams, guint n, guint joins,
              RcLength longest)
{
  if (n == joins)
    {
      add_form_of (self, part, needs, seams, joins, longest);
      return;
    }
  for (guint s = n == 0 ? 0 : seams[n - 1]; s < needs->len; s++)
    {
      seams[n] = s;
      add_forms_of (self, part, needs, seams, n + 1, joins, longest);
    }
}

/* As if in many pieces, but for so many joins. */
static RcLayForm
make_many (RcLayForms *self, const GArray *needs, Need all_along, guint joins)
{
  RcLayForm form = form_begin (self);
  Width     narrowest = all_along.w;
  for (guint i = 0; i < needs->len && needs->len > 1; i++)
    {
      const Need *need = &g_array_index (needs, Need, i);
      narrowest = get_narrower (narrowest, need->w);
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

/* `longest`: of the part, without allowances. A part as wide all along has no needs but the whole; it gains nothing by
 * joins where no two pieces of it lie side by side. */
static void
add_part (RcLayForms *self, const GArray *needs, Need whole, RcLength longest)
{
  RcLayPart part = { .forms = g_array_new (FALSE, FALSE, sizeof (RcLayForm)), .cell = self->cells->len - 1 };
  RcLength  trim = self->site->settings->trim_length, length = whole.length - trim;
  Need      all_along = needs->len == 1 ? g_array_index (needs, Need, 0) : (Need){ whole.w, length, whole.join };
  gboolean  gains = needs->len > 1 || all_along.w.least < whole.w.least || whole.w.least * 2 <= self->site->roll_width;
  guint     seams[RC_LAY_FEW_JOINS], most = gains ? RC_LAY_FEW_JOINS : 0;
  RcLayForm form = form_begin (self);
  add_item (self, &form, whole.w, whole.length, 1);
  form_end (&form, &part, 0, 0);
  for (guint joins = 1; joins <= most; joins++)
    {
      if (needs->len > 1)
        {
          add_forms_of (self, &part, needs, seams, 0, joins, longest);
          continue;
        }
      form = form_begin (self);
      add_item (self, &form, all_along.w, all_along.length + trim * (joins + 1), joins + 1);
      form_end (&form, &part, joins, weigh_joins (self, joins, whole.join * joins, 0, longest));
    }
  if (most > 0)
    {
      form = make_many (self, needs, all_along, RC_LAY_FEW_JOINS + 1);
      form_end (&form, &part, RC_LAY_FEW_JOINS + 1,
                weigh_joins (self, RC_LAY_FEW_JOINS + 1, whole.join * (RC_LAY_FEW_JOINS + 1), 0, longest));
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
        add_item (self, &self->cuts, (Width){ cut->w, cut->w, cut->w }, length, MIN (count, RC_LAY_MANY));
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
  forms->cells = g_array_new (FALSE, FALSE, sizeof (RcLayArea));
  forms->parts = g_array_new (FALSE, FALSE, sizeof (RcLayPart));
  g_array_set_clear_func (forms->parts, part_clear);
  forms->items = g_array_new (FALSE, FALSE, sizeof (RcNestSliceItem));
  forms->pools = g_array_new (FALSE, FALSE, sizeof (RcNestSlicePool));
  take_cuts (forms, cuts);
}

void
rc_lay_forms_clear (RcLayForms *forms)
{
  g_array_unref (forms->cells);
  g_array_unref (forms->parts);
  g_array_unref (forms->items);
  g_array_unref (forms->pools);
}

/* What of the part is floor where it is there, but for slivers; no more than nothing where it is not. */
static void
add_area_of (RcLayArea *area, const RcLineStretch *stretch, const RcRangePart *part)
{
  RcLength trim = stretch->site->settings->trim_width + RC_SLIVER;
  if (part->box.y1 - part->box.y0 > part->length) /* elsewhere in the stretch it is shorter */
    return;
  for (guint i = 0; i < part->n_steps; i++)
    {
      const RcRangeStep *step = &g_array_index (stretch->range->steps, RcRangeStep, part->first_step + i);
      add_area (area, get_width (stretch, step->width - trim, step->slope), step->y1 - step->y0);
    }
  if (part->n_steps == 0)
    add_area (area, get_width (stretch, part->width - trim, part->slope), part->length);
}

void
rc_lay_forms_add_cell (RcLayForms *self, const RcLineStretch *stretch)
{
  g_autoptr (GArray) needs = g_array_new (FALSE, FALSE, sizeof (Need));
  RcLayArea area = { 0, 0 };
  for (guint i = 0; i < stretch->range->parts->len; i++)
    if (!rc_line_stretch_has_part (stretch, i))
      add_area_of (&area, stretch, &g_array_index (stretch->range->parts, RcRangePart, i));
  g_array_append_val (self->cells, area);
  for (guint i = 0; i < stretch->range->parts->len; i++)
    {
      const RcRangePart *part = &g_array_index (stretch->range->parts, RcRangePart, i);
      if (!rc_line_stretch_has_part (stretch, i))
        continue;
      Need whole = { get_width (stretch, part->width, part->slope), part->length + stretch->site->settings->trim_length,
                     part->join };
      list_needs (stretch, part, needs);
      add_part (self, needs, whole, part->longest + RC_SLIVER);
    }
}
