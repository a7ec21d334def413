#include "lay-bound.h"

#include "range-price.h"
#include "slice-few.h"

enum
{
  FEW_JOINS = 2,  /* so many are tried in every part */
  MOST_JOINS = 6, /* with more a part is taken to lie beside itself as often as it fits */
  N_WIDTHS = 240, /* widths are rounded down to that part of the roll's, which only lowers a bound */
  MOST_NEEDS = 4, /* of a part: more are taken together */
  MOST_STEPS = 10 /* of a part that is tried with a seam in each */
};

/* A length of the roll that a part needs at that width. */
typedef struct
{
  RcLength w, length;
} Need;

typedef struct
{
  Need     whole;
  gboolean in_steps;            /* it is not as wide all along */
  guint    first, n;            /* of its needs where it is cut across */
  guint    first_step, n_steps; /* the same from low to high; none where that is not tried */
} Part;

typedef struct
{
  const RcSite *site;
  RcLengthCost  cost;
  gconstpointer user_data;
  GArray       *parts; /* of Part */
  GArray       *needs; /* of Need */
  GArray       *steps; /* of Need */
  GArray       *items; /* of RcNestSliceItem: those taken so far */
  RcLength      unit;
  gint64        join, beside, best;
} Laying;

static RcLength
find_width (const RcLineStretch *stretch, RcLength width, int slope, gboolean least)
{
  RcLength a = width + slope * stretch->from, b = width + slope * stretch->to;
  return least ? MIN (a, b) : MAX (a, b);
}

static gboolean
is_there (const RcLineStretch *stretch, guint index)
{
  const RcRangePart *part = &g_array_index (stretch->range->parts, RcRangePart, index);
  return find_width (stretch, part->width, part->slope, TRUE) > RC_SLIVER && part->length > RC_SLIVER;
}

/* --- what lies beside the carpet --- */

static RcMoney
weigh_sides (const RcLineStretch *stretch)
{
  const RcSite *site = stretch->site;
  RcMoney       cost = 0;
  for (guint i = 0; i < stretch->range->sides->len; i++)
    {
      const RcRangeSide *side = &g_array_index (stretch->range->sides, RcRangeSide, i);
      if (is_there (stretch, side->left) && is_there (stretch, side->right))
        cost += rc_range_weigh_down (side->length, site->weights.side_seam_per_m) + side->rules;
    }
  return cost;
}

static RcMoney
weigh_narrow (const RcLineStretch *stretch, const RcRangePart *part)
{
  const RcSite *site = stretch->site;
  if (!part->seamed || rc_site_is_in_doorway (site, part->box)
      || rc_range_get_cut_width (stretch->site, find_width (stretch, part->width, part->slope, TRUE))
             == site->roll_width)
    return 0;
  return rc_range_weigh_narrow (site, find_width (stretch, part->width, part->slope, FALSE));
}

/* --- what the parts need --- */

static void
add_need (GArray *needs, guint first, Need need)
{
  for (guint i = first; i < needs->len; i++)
    if (g_array_index (needs, Need, i).w == need.w)
      {
        g_array_index (needs, Need, i).length += need.length;
        return;
      }
  g_array_append_val (needs, need);
}

/* Takes needs together that are near in width, as the narrower, until they are few. */
static void
take_together (GArray *needs, guint first)
{
  while (needs->len > first + MOST_NEEDS)
    {
      guint    wide = 0, narrow = 0;
      __int128 least = 0;
      for (guint i = first; i < needs->len; i++)
        for (guint k = first; k < needs->len; k++)
          {
            const Need *a = &g_array_index (needs, Need, i), *b = &g_array_index (needs, Need, k);
            __int128    lost = (__int128)(a->w - b->w) * a->length;
            if (a->w <= b->w || (wide != narrow && lost >= least))
              continue;
            least = lost;
            wide = i;
            narrow = k;
          }
      g_array_index (needs, Need, narrow).length += g_array_index (needs, Need, wide).length;
      g_array_remove_index (needs, wide);
    }
}

/* What a step needs at that width; nothing, or less, where the part may be shorter by all of it: steps are those at the
 * range's middle. */
static Need
get_need (const RcLineStretch *stretch, const RcRangePart *part, const RcRangeStep *step)
{
  RcLength width = find_width (stretch, step->width, step->slope, TRUE);
  RcLength shorter = MAX (0, part->box.y1 - part->box.y0 - part->length);
  return (Need){ rc_range_get_cut_width (stretch->site, MAX (0, width)), step->y1 - step->y0 - shorter };
}

/* Of a step that a wall parts in two each chord is needed by itself; of one parted in more, the widest. */
static void
add_needs (GArray *needs, const RcLineStretch *stretch, const RcRangePart *part)
{
  guint first = needs->len;
  for (guint i = 0; i < part->n_steps; i++)
    {
      const RcRangeStep *step = &g_array_index (stretch->range->steps, RcRangeStep, part->first_step + i);
      Need               need = get_need (stretch, part, step);
      if (step->n_chords == 0 && find_width (stretch, step->width, step->slope, TRUE) > 0 && need.length > 0)
        add_need (needs, first, need);
    }
  take_together (needs, first);
}

/* From low to high; none where a wall parts it or there are too many. */
static void
add_steps (GArray *steps, const RcLineStretch *stretch, const RcRangePart *part)
{
  guint first = steps->len;
  for (guint i = 0; i < part->n_steps; i++)
    {
      const RcRangeStep *step = &g_array_index (stretch->range->steps, RcRangeStep, part->first_step + i);
      Need               need = get_need (stretch, part, step);
      need.length = MAX (0, need.length);
      if (step->n_chords > 0 || i == MOST_STEPS)
        {
          g_array_set_size (steps, first);
          return;
        }
      g_array_append_val (steps, need);
    }
}

static Need
get_whole (const RcLineStretch *stretch, const RcRangePart *part)
{
  RcLength width = find_width (stretch, part->width, part->slope, TRUE);
  return (Need){ rc_range_get_cut_width (stretch->site, width), part->length + stretch->site->settings->trim_length };
}

RcLayLook
rc_lay_look (const RcLineStretch *stretch)
{
  RcLayLook look = { weigh_sides (stretch) * RC_RANGE_UNIT, 0 };
  g_autoptr (GArray) needs = g_array_new (FALSE, FALSE, sizeof (Need));
  for (guint i = 0; i < stretch->range->parts->len; i++)
    {
      const RcRangePart *part = &g_array_index (stretch->range->parts, RcRangePart, i);
      if (!is_there (stretch, i))
        continue;
      look.beside += weigh_narrow (stretch, part) * RC_RANGE_UNIT;
      Need     whole = get_whole (stretch, part);
      __int128 area = (__int128)whole.w * whole.length, in_steps = 0;
      g_array_set_size (needs, 0);
      add_needs (needs, stretch, part);
      for (guint k = 0; k < needs->len; k++)
        in_steps += (__int128)g_array_index (needs, Need, k).w * g_array_index (needs, Need, k).length;
      look.area += part->n_steps > 0 ? MIN (area, in_steps) : area;
    }
  return look;
}

static void
list_parts (Laying *self, const RcLineStretch *stretch)
{
  for (guint i = 0; i < stretch->range->parts->len; i++)
    {
      const RcRangePart *range_part = &g_array_index (stretch->range->parts, RcRangePart, i);
      if (!is_there (stretch, i))
        continue;
      Part part
          = { get_whole (stretch, range_part), range_part->n_steps > 0, self->needs->len, 0, self->steps->len, 0 };
      add_needs (self->needs, stretch, range_part);
      part.n = self->needs->len - part.first;
      add_steps (self->steps, stretch, range_part);
      part.n_steps = self->steps->len - part.first_step;
      g_array_append_val (self->parts, part);
    }
}

/* --- forms of the parts, one after the other --- */

static RcLength
get_roll_width (const Laying *self)
{
  return self->site->roll_width / self->unit;
}

static void
add_item (Laying *self, RcLength width, RcLength length, guint count)
{
  RcNestSliceItem item = { MAX (1, width / self->unit), length, count };
  g_array_append_val (self->items, item);
}

/* The length of roll for the items taken. */
static RcLength
find_length (const Laying *self, RcLength longest)
{
  const RcNestSliceItem *items = (const RcNestSliceItem *)self->items->data;
  RcLength               width = get_roll_width (self);
  guint                  beside = self->items->len == 1 ? (guint)MIN (items[0].count, width / items[0].w) : 0;
  if (self->items->len == 0)
    return longest;
  if (beside > 0)
    return MAX (longest, (items[0].demand + beside - 1) / beside);
  return rc_nest_slice_bound_few (items, self->items->len, width, longest);
}

/* What has been chosen of the parts before. */
typedef struct
{
  guint    joins;
  RcMoney  rules;   /* what the joins break */
  RcLength drops;   /* the length of full width */
  RcLength longest; /* of the fills that are whole */
  __int128 area;    /* of the fills */
} Chosen;

static gint64
weigh_chosen (const Laying *self, const Chosen *chosen, RcLength length)
{
  gint64 carpet = self->cost (self->user_data, chosen->drops + length);

  return carpet == G_MAXINT64 ? carpet
                              : carpet + self->beside + self->join * chosen->joins + chosen->rules * RC_RANGE_UNIT;
}

/* FALSE: as dear as the cheapest known, whatever comes. */
static gboolean
may_be_best (const Laying *self, const Chosen *chosen, RcLength *least)
{
  *least = MAX (chosen->longest, (RcLength)(chosen->area / self->site->roll_width));
  return weigh_chosen (self, chosen, *least) < self->best;
}

static void
weigh_all (Laying *self, const Chosen *chosen)
{
  RcLength least;
  if (may_be_best (self, chosen, &least))
    self->best = MIN (self->best, weigh_chosen (self, chosen, find_length (self, least)));
}

static void
add_need_item (Laying *self, Chosen *chosen, const Need *need, guint count)
{
  if (need->w == self->site->roll_width)
    {
      chosen->drops += need->length;
      return;
    }
  add_item (self, need->w, need->length, count);
  chosen->area += (__int128)need->w * need->length;
}

static void
take_whole (Laying *self, const Part *part, Chosen *chosen)
{
  add_need_item (self, chosen, &part->whole, 1);
  if (part->whole.w < self->site->roll_width)
    chosen->longest = MAX (chosen->longest, part->whole.length);
}

/* In up to `n` pieces; cut across where it is not as wide all along. */
static void
take_pieces (Laying *self, const Part *part, guint n, Chosen *chosen)
{
  Need narrowest = { self->site->roll_width, self->site->settings->trim_length };
  if (!part->in_steps)
    {
      add_need_item (self, chosen, &part->whole, n);
      return;
    }
  for (guint i = 0; i < part->n; i++)
    {
      const Need *need = &g_array_index (self->needs, Need, part->first + i);
      narrowest.w = MIN (narrowest.w, need->w);
      add_need_item (self, chosen, need, n);
    }
  if (part->n > 0)
    add_need_item (self, chosen, &narrowest, n);
}

/* In two pieces, with the seam anywhere in step `s`: what lies below it is in one, what lies above in the other. */
static void
take_two (Laying *self, const Part *part, guint s, Chosen *chosen)
{
  Need below = { 0, 0 }, above = { 0, 0 }, between = { 0, self->site->settings->trim_length * 2 };
  for (guint i = 0; i < part->n_steps; i++)
    {
      const Need *step = &g_array_index (self->steps, Need, part->first_step + i);
      if (i <= s)
        below = (Need){ MAX (below.w, step->w), below.length + (i < s ? step->length : 0) };
      if (i >= s)
        above = (Need){ MAX (above.w, step->w), above.length + (i > s ? step->length : 0) };
      if (i == s)
        between.length += step->length;
    }
  between.w = MIN (below.w, above.w);
  if (below.length > 0)
    add_need_item (self, chosen, &below, 1);
  if (above.length > 0)
    add_need_item (self, chosen, &above, 1);
  add_need_item (self, chosen, &between, 2);
}

static void choose_form (Laying *self, guint at, Chosen chosen);

static void
choose_next (Laying *self, guint at, const Chosen *chosen, guint n_items)
{
  RcLength least;
  if (may_be_best (self, chosen, &least))
    choose_form (self, at + 1, *chosen);
  g_array_set_size (self->items, n_items);
}

/* What a fill breaks in that many pieces: too many joins, or one of them is too short. */
static RcMoney
weigh_rules (const Laying *self, const Part *part, guint n)
{
  const RcSettings *settings = self->site->settings;
  RcMoney           cost = n - 1 > settings->most_joins ? settings->rule_cost[RC_RULE_TOO_MANY_JOINS] : 0;
  if (n > 1 && part->whole.length / n + settings->trim_length < settings->least_piece_length)
    cost += settings->rule_cost[RC_RULE_PIECE_TOO_SHORT];
  return part->in_steps ? 0 : cost;
}

/* The forms of the parts from `at` on, up to FEW_JOINS joins in all. */
static void
choose_form (Laying *self, guint at, Chosen chosen)
{
  if (at == self->parts->len)
    {
      weigh_all (self, &chosen);
      return;
    }
  const Part *part = &g_array_index (self->parts, Part, at);
  guint       n_items = self->items->len;
  guint beside = part->in_steps ? G_MAXUINT : (guint)(self->site->roll_width / part->whole.w); /* more gains nothing */
  for (guint n = 1; n - 1 + chosen.joins <= FEW_JOINS && (n == 1 || n <= beside); n++)
    {
      Chosen with = chosen;
      with.joins += n - 1;
      with.rules += weigh_rules (self, part, n);
      for (guint s = 0; s < part->n_steps && n == 2; s++)
        {
          Chosen two = with;
          take_two (self, part, s, &two);
          choose_next (self, at, &two, n_items);
        }
      if (n == 2 && part->n_steps > 0)
        continue;
      if (n == 1)
        take_whole (self, part, &with);
      else
        take_pieces (self, part, n, &with);
      choose_next (self, at, &with, n_items);
    }
}

/* More joins, any of the parts in that many pieces. */
static void
choose_many (Laying *self, guint n_joins, Chosen chosen)
{
  guint n_items = self->items->len;
  chosen.joins = n_joins;
  for (guint i = 0; i < self->parts->len; i++)
    take_pieces (self, &g_array_index (self->parts, Part, i), n_joins < MOST_JOINS ? n_joins + 1 : G_MAXUINT8, &chosen);
  weigh_all (self, &chosen);
  g_array_set_size (self->items, n_items);
}

/* Cuts that are what they are; those of one width together. */
static void
take_cuts (Laying *self, const GArray *cuts, Chosen *chosen)
{
  for (guint i = 0; i < cuts->len; i++)
    {
      const RcNestChoiceCut *cut = &g_array_index (cuts, RcNestChoiceCut, i);
      Need                   need = { cut->w, 0 };
      guint                  count = 0;
      gboolean               is_first = TRUE;
      for (guint k = 0; k < cuts->len; k++)
        if (g_array_index (cuts, RcNestChoiceCut, k).w == cut->w)
          {
            is_first &= k >= i;
            need.length += g_array_index (cuts, RcNestChoiceCut, k).h;
            count++;
          }
      if (cut->w < self->site->roll_width)
        chosen->longest = MAX (chosen->longest, cut->h);
      if (is_first)
        add_need_item (self, chosen, &need, count);
    }
}

gint64
rc_lay_bound_compute (const RcLineStretch *cells, guint n, const GArray *cuts, gint64 beside, RcLengthCost cost,
                      gconstpointer user_data)
{
  const RcSite *site = cells[0].site;
  Laying        self = { .site = site, .cost = cost, .user_data = user_data, .beside = beside, .best = G_MAXINT64 };
  Chosen        chosen = { 0 };
  self.parts = g_array_new (FALSE, FALSE, sizeof (Part));
  self.needs = g_array_new (FALSE, FALSE, sizeof (Need));
  self.steps = g_array_new (FALSE, FALSE, sizeof (Need));
  self.items = g_array_new (FALSE, FALSE, sizeof (RcNestSliceItem));
  self.unit = site->roll_width / N_WIDTHS + 1;
  self.join = rc_range_weigh_join (site) * RC_RANGE_UNIT;
  for (guint i = 0; i < n; i++)
    list_parts (&self, &cells[i]);
  take_cuts (&self, cuts, &chosen);
  choose_form (&self, 0, chosen);
  for (guint n_joins = FEW_JOINS + 1; n_joins <= MOST_JOINS; n_joins++)
    choose_many (&self, n_joins, chosen);
  g_array_unref (self.parts);
  g_array_unref (self.needs);
  g_array_unref (self.steps);
  g_array_unref (self.items);
  return self.best;
}
