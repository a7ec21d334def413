#include "cost-bound.h"

#include "cost-sharing.h"
#include "range-price.h"

/* The part of the time that the linear program takes; less where the groups are few and looked at closer. */
#define PROGRAM_SHARE        0.8
#define PROGRAM_SHARE_OF_FEW 0.1

typedef struct
{
  RcCostGroups groups;
  GPtrArray   *ways; /* of RcAreaWay: all that the program was given */
  gboolean    *may;  /* by group and lot: it may come out of the lot */
} Bound;

static gint64
find_for_program (gpointer user_data, guint group, const RcNestPrices *prices, gboolean likely, GArray *cuts,
                  gint64 *own, guint *way)
{
  Bound     *self = user_data;
  RcAreaWay *found = NULL;
  gint64 cost = rc_cost_groups_find (&self->groups, group, prices, likely ? RC_CHOICE_LIKELY : RC_CHOICE_ALL, cuts, own,
                                     &found);
  *way = self->ways->len;
  if (found != NULL)
    g_ptr_array_add (self->ways, found);
  return cost;
}

static RcLength
find_length (const Bound *self, guint group)
{
  return rc_cost_groups_find (&self->groups, group, &self->groups.prices, RC_CHOICE_CARPET_ONLY, NULL, NULL, NULL)
         / MAX (1, self->groups.goods_per_m * RC_NEST_PRICE_PARTS);
}

/* A group comes out of one lot, which must hold it. */
static void
find_places (Bound *self)
{
  self->may = g_new0 (gboolean, self->groups.n_groups * self->groups.lots->len + 1);
  for (guint g = 0; g < self->groups.n_groups; g++)
    for (guint l = 0; l < self->groups.lots->len; l++)
      self->may[g * self->groups.lots->len + l]
          = l == 0 || find_length (self, g) <= rc_cost_groups_get_lot (&self->groups, l)->capacity;
}

static gboolean
is_used (const Bound *self, guint lot)
{
  for (guint g = 0; g < self->groups.n_groups; g++)
    if (self->may[g * self->groups.lots->len + lot])
      return TRUE;
  return FALSE;
}

/* All groups at what a metre of each lot is taken to cost, goods to buy at `bought_per_m`; less what the rolls in stock
 * save against that. Below the cost of every plan, goods bought counted at bought_per_m. */
static gint64
add_up (const Bound *self, gint64 bought_per_m)
{
  gint64 sum = 0;
  for (guint g = 0; g < self->groups.n_groups; g++)
    {
      gint64 least = G_MAXINT64;
      for (guint l = 0; l < self->groups.lots->len; l++)
        if (self->may[g * self->groups.lots->len + l])
          least = MIN (
              least, rc_cost_groups_find_at (&self->groups, g,
                                             l == 0 ? bought_per_m : rc_cost_groups_get_lot (&self->groups, l)->per_m));
      sum += least;
    }
  for (guint l = 0; l < self->groups.lots->len; l++)
    {
      gint64 per_m = l == 0 ? bought_per_m : rc_cost_groups_get_lot (&self->groups, l)->per_m;
      for (guint r = 0; r < rc_cost_groups_get_lot (&self->groups, l)->rolls->len && is_used (self, l); r++)
        {
          const RcNestRoll *roll = g_ptr_array_index (rc_cost_groups_get_lot (&self->groups, l)->rolls, r);
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
  gint64 best = add_up (self, self->groups.goods_per_m);
  for (guint l = 1; l < self->groups.lots->len; l++)
    {
      RcCostLot *lot = rc_cost_groups_get_lot (&self->groups, l);
      for (guint r = 0; r < lot->rolls->len && is_used (self, l); r++)
        {
          gint64 before = lot->per_m;
          lot->per_m = ((RcNestRoll *)g_ptr_array_index (lot->rolls, r))->cost_per_m;
          gint64 bound = add_up (self, self->groups.goods_per_m);
          if (bound > best)
            best = bound;
          else
            lot->per_m = before;
        }
    }
  return best;
}

/* As many prices are looked at as there is time for. */
static gint64
add_up_in_steps (const Bound *self, gint64 bound, const RcNestClock *clock)
{
  static const int percents[] = RC_COST_PERCENTS;
  gint64           at_price[RC_COST_N_PERCENTS];
  guint            n = 0;
  if (self->groups.carpet->length_step == 0 || rc_cost_groups_get_lot (&self->groups, 0)->rolls->len > 0)
    return bound;
  for (; n < RC_COST_N_PERCENTS && !rc_nest_clock_is_over (clock); n++)
    at_price[n] = add_up (self, self->groups.goods_per_m * percents[n] / 100);
  return rc_cost_groups_round (&self->groups, bound, at_price, n);
}

/* Each area's way with the greatest part in the program's answer. */
static void
list_ways (const Bound *self, const GArray *shares, GPtrArray *ways)
{
  for (guint g = 0; g < self->groups.choices->len; g++)
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
                       const RcNestClock *clock, GPtrArray *ways, GArray *alone)
{
  Bound self = { .ways = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_area_way_free) };
  rc_cost_groups_init (&self.groups, carpet, rolls, choices, pieces);
  RcNestChoice choice
      = { self.groups.n_groups, rc_goods_get_usable_width (carpet), self.groups.goods_per_m, find_for_program, &self };
  g_autoptr (GArray) shares = g_array_new (FALSE, FALSE, sizeof (RcNestShare));
  RcNestClock part = rc_nest_clock_take_share (clock, rc_cost_sharing_is_possible (&self.groups) ? PROGRAM_SHARE_OF_FEW
                                                                                                 : PROGRAM_SHARE);
  rc_nest_choice_solve (&choice, &part, &self.groups.prices, shares);
  RcCostSharing *sharing = rc_cost_sharing_new (&self.groups, clock);
  list_ways (&self, shares, ways);
  find_places (&self);
  gint64 bound = set_lot_prices (&self);
  if (sharing == NULL)
    bound = add_up_in_steps (&self, bound, clock);
  gint64 shared = sharing != NULL ? rc_cost_sharing_find_cheapest (sharing, clock) : 0;
  bound = MAX (bound, shared);
  for (guint i = 0; i < choices->len; i++)
    {
      RcMoney cost = sharing != NULL ? rc_cost_sharing_get_alone (sharing, i) : 0;
      g_array_append_val (alone, cost);
    }

  rc_cost_sharing_free (sharing);
  rc_cost_groups_clear (&self.groups);
  g_ptr_array_unref (self.ways);
  g_free (self.may);
  return MAX (0, bound / RC_RANGE_UNIT);
}
