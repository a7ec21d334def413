#include "cost-bound.h"

/* Rolls of one dye lot; the first lot has goods to buy as well. */
typedef struct
{
  GPtrArray *rolls;    /* of RcNestRoll, borrowed: those in stock */
  RcLength   capacity; /* all of their lengths */
  gint64     per_m;    /* what a metre out of it is taken to cost, at least what its cheapest roll does */
} Lot;

typedef struct
{
  const RcGoods   *carpet;
  gint64           goods_per_m;
  const GPtrArray *choices;
  GPtrArray       *stairs; /* of GArray of RcNestChoiceCut */
  GArray          *lots;   /* of Lot */
  guint            n_groups;
  RcNestPrices     prices; /* at goods_per_m */
  GPtrArray       *ways;   /* of RcAreaWay: all that the program was given */
  gboolean        *may;    /* by group and lot: it may come out of the lot */
} Bound;

/* The part of the time that the linear program takes. */
#define PROGRAM_SHARE 0.8

#define UNIT ((gint64)RC_NEST_PRICE_PARTS * RC_TICKS_PER_M)

static Lot *
get_lot (const Bound *self, guint lot)
{
  return &g_array_index (self->lots, Lot, lot);
}

/* --- groups: areas, then stairs --- */

static gint64
find_group (const Bound *self, guint group, const RcNestPrices *prices, RcChoiceScope scope, GArray *cuts, gint64 *own,
            RcAreaWay **way)
{
  gint64 cost = 0;
  if (group < self->choices->len)
    return rc_area_choice_find (g_ptr_array_index (self->choices, group), prices, scope, cuts, own, way);
  const GArray *fixed = g_ptr_array_index (self->stairs, group - self->choices->len);
  for (guint i = 0; i < fixed->len; i++)
    {
      const RcNestChoiceCut *cut = &g_array_index (fixed, RcNestChoiceCut, i);
      cost += rc_nest_prices_get (prices, cut->w) * cut->h;
      if (cuts != NULL)
        g_array_append_val (cuts, *cut);
    }
  if (own != NULL)
    *own = 0;
  return cost;
}

static gint64
find_for_program (gpointer user_data, guint group, const RcNestPrices *prices, gboolean likely, GArray *cuts,
                  gint64 *own, guint *way)
{
  Bound     *self = user_data;
  RcAreaWay *found = NULL;
  gint64     cost = find_group (self, group, prices, likely ? RC_CHOICE_LIKELY : RC_CHOICE_ALL, cuts, own, &found);
  *way = self->ways->len;
  if (found != NULL)
    g_ptr_array_add (self->ways, found);
  return cost;
}

/* What the group costs at least out of goods at that price a metre. */
static gint64
find_at (const Bound *self, guint group, gint64 per_m)
{
  RcNestPrices prices = rc_nest_prices_scale (&self->prices, per_m, self->goods_per_m);
  gint64       cost = find_group (self, group, &prices, RC_CHOICE_ALL, NULL, NULL, NULL);
  rc_nest_prices_clear (&prices);
  return cost;
}

static RcLength
find_length (const Bound *self, guint group)
{
  return find_group (self, group, &self->prices, RC_CHOICE_CARPET_ONLY, NULL, NULL, NULL)
         / MAX (1, self->goods_per_m * RC_NEST_PRICE_PARTS);
}

/* All pieces of one stair are one group. */
static void
add_stairs (Bound *self, const GPtrArray *pieces)
{
  const RcPiece *before = NULL;
  for (guint i = 0; i < pieces->len; i++)
    {
      const RcPiece  *piece = g_ptr_array_index (pieces, i);
      RcNestChoiceCut cut = { piece->cut_width, piece->cut_length };
      if (before == NULL || g_strcmp0 (before->room, piece->room) != 0)
        g_ptr_array_add (self->stairs, g_array_new (FALSE, FALSE, sizeof (RcNestChoiceCut)));
      g_array_append_val ((GArray *)g_ptr_array_index (self->stairs, self->stairs->len - 1), cut);
      before = piece;
    }
}

/* --- lots --- */

static void
lot_clear (gpointer data)
{
  g_ptr_array_unref (((Lot *)data)->rolls);
}

static const char *
get_name (const Lot *lot)
{
  return lot->rolls->len > 0 ? ((RcNestRoll *)g_ptr_array_index (lot->rolls, 0))->lot : NULL;
}

/* Stock without a lot is of the lot of goods to buy. */
static void
add_lots (Bound *self, const GPtrArray *rolls)
{
  Lot bought = { g_ptr_array_new (), 0, self->goods_per_m };
  g_array_append_val (self->lots, bought);
  for (guint i = 0; i + 1 < rolls->len; i++)
    {
      RcNestRoll *roll = g_ptr_array_index (rolls, i);
      guint       at = roll->lot == NULL ? 0 : 1;
      while (at > 0 && at < self->lots->len && g_strcmp0 (get_name (get_lot (self, at)), roll->lot) != 0)
        at++;
      if (at == self->lots->len)
        {
          Lot lot = { g_ptr_array_new (), 0, self->goods_per_m };
          g_array_append_val (self->lots, lot);
        }
      g_ptr_array_add (get_lot (self, at)->rolls, roll);
      get_lot (self, at)->capacity += roll->length * roll->count;
    }
}

/* A group comes out of one lot, which must hold it. */
static void
find_places (Bound *self)
{
  self->may = g_new0 (gboolean, self->n_groups * self->lots->len + 1);
  for (guint g = 0; g < self->n_groups; g++)
    for (guint l = 0; l < self->lots->len; l++)
      self->may[g * self->lots->len + l] = l == 0 || find_length (self, g) <= get_lot (self, l)->capacity;
}

static gboolean
is_used (const Bound *self, guint lot)
{
  for (guint g = 0; g < self->n_groups; g++)
    if (self->may[g * self->lots->len + lot])
      return TRUE;
  return FALSE;
}

/* --- the bound --- */

/* All groups at what a metre of each lot is taken to cost, goods to buy at `bought_per_m`; less what the rolls in stock
 * save against that. Below the cost of every plan, goods bought counted at bought_per_m. */
static gint64
add_up (const Bound *self, gint64 bought_per_m)
{
  gint64 sum = 0;
  for (guint g = 0; g < self->n_groups; g++)
    {
      gint64 least = G_MAXINT64;
      for (guint l = 0; l < self->lots->len; l++)
        if (self->may[g * self->lots->len + l])
          least = MIN (least, find_at (self, g, l == 0 ? bought_per_m : get_lot (self, l)->per_m));
      sum += least;
    }
  for (guint l = 0; l < self->lots->len; l++)
    {
      gint64 per_m = l == 0 ? bought_per_m : get_lot (self, l)->per_m;
      for (guint r = 0; r < get_lot (self, l)->rolls->len && is_used (self, l); r++)
        {
          const RcNestRoll *roll = g_ptr_array_index (get_lot (self, l)->rolls, r);
          sum -= MAX (0, per_m - roll->cost_per_m) * roll->length * roll->count * RC_NEST_PRICE_PARTS;
        }
    }
  return sum;
}

/* The price of a metre from each lot in stock at which the bound is highest: that of one of its rolls, or of goods to
 * buy. */
static gint64
set_lot_prices (Bound *self)
{
  gint64 best = add_up (self, self->goods_per_m);
  for (guint l = 1; l < self->lots->len; l++)
    {
      Lot *lot = get_lot (self, l);
      for (guint r = 0; r < lot->rolls->len && is_used (self, l); r++)
        {
          gint64 before = lot->per_m;
          lot->per_m = ((RcNestRoll *)g_ptr_array_index (lot->rolls, r))->cost_per_m;
          gint64 bound = add_up (self, self->goods_per_m);
          if (bound > best)
            best = bound;
          else
            lot->per_m = before;
        }
    }
  return best;
}

/* Goods are bought in steps. For each length that may be bought: it, and the least that all else costs of the plans
 * that need no more; which is at least what plans cost with goods dearer or cheaper than they are, less the length at
 * that price. As many prices are looked at as there is time for. */
static gint64
round_to_steps (const Bound *self, gint64 bound, const RcNestClock *clock)
{
  static const int percents[] = { 100, 90, 110, 75, 125, 50, 150, 25, 200, 0, 300, 600 };
  gint64           at_price[G_N_ELEMENTS (percents)], least = G_MAXINT64;
  guint            n = 0;
  RcLength         step = self->carpet->length_step;
  gint64           per_tick = self->goods_per_m * RC_NEST_PRICE_PARTS;
  if (step == 0 || get_lot (self, 0)->rolls->len > 0)
    return bound;
  for (; n < G_N_ELEMENTS (percents) && !rc_nest_clock_is_over (clock); n++)
    at_price[n] = add_up (self, self->goods_per_m * percents[n] / 100);
  if (n == 0)
    return bound;
  for (RcLength length = 0; length * per_tick < least; length += step)
    {
      gint64 other = 0;
      for (guint i = 0; i < n; i++)
        other = MAX (other, at_price[i] - length * (self->goods_per_m * percents[i] / 100) * RC_NEST_PRICE_PARTS);
      least = MIN (least, length * per_tick + other);
    }
  return MAX (bound, least);
}

/* Each area's way with the greatest part in the program's answer. */
static void
list_ways (const Bound *self, const GArray *shares, GPtrArray *ways)
{
  for (guint g = 0; g < self->choices->len; g++)
    {
      const RcNestShare *best = NULL;
      for (guint i = 0; i < shares->len; i++)
        {
          const RcNestShare *share = &g_array_index (shares, RcNestShare, i);
          if (share->group == g && (best == NULL || share->share > best->share))
            best = share;
        }
      if (best != NULL)
        g_ptr_array_add (ways, rc_area_way_copy (g_ptr_array_index (self->ways, best->way)));
      else
        g_ptr_array_add (ways, NULL);
    }
}

RcMoney
rc_cost_bound_compute (const RcGoods *carpet, const GPtrArray *rolls, const GPtrArray *choices, const GPtrArray *pieces,
                       const RcNestClock *clock, GPtrArray *ways)
{
  const RcNestRoll *bought = g_ptr_array_index (rolls, rolls->len - 1);
  Bound             self = { .carpet = carpet, .goods_per_m = bought->cost_per_m, .choices = choices };
  self.stairs = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  self.lots = g_array_new (FALSE, FALSE, sizeof (Lot));
  g_array_set_clear_func (self.lots, lot_clear);
  add_stairs (&self, pieces);
  add_lots (&self, rolls);
  self.n_groups = choices->len + self.stairs->len;

  RcNestChoice choice
      = { self.n_groups, rc_goods_get_usable_width (carpet), self.goods_per_m, find_for_program, &self };
  self.ways = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_area_way_free);
  g_autoptr (GArray) shares = g_array_new (FALSE, FALSE, sizeof (RcNestShare));
  RcNestClock part = *clock;
  if (clock->end_us < G_MAXINT64)
    part = rc_nest_clock_take_part (clock, PROGRAM_SHARE * (double)(clock->end_us - rc_nest_clock_get_us (clock))
                                               / G_USEC_PER_SEC);
  rc_nest_choice_solve (&choice, &part, &self.prices, shares);
  list_ways (&self, shares, ways);
  find_places (&self);
  gint64 bound = round_to_steps (&self, set_lot_prices (&self), clock);

  rc_nest_prices_clear (&self.prices);
  g_ptr_array_unref (self.ways);
  g_ptr_array_unref (self.stairs);
  g_array_unref (self.lots);
  g_free (self.may);
  return MAX (0, bound / UNIT);
}
