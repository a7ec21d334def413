#include "cost-groups.h"

RcCostLot *
rc_cost_groups_get_lot (const RcCostGroups *self, guint lot)
{
  return &g_array_index (self->lots, RcCostLot, lot);
}

gint64
rc_cost_groups_find (const RcCostGroups *self, guint group, const RcNestPrices *prices, RcChoiceScope scope,
                     GArray *cuts, gint64 *own, RcAreaWay **way)
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

gint64
rc_cost_groups_find_at (const RcCostGroups *self, guint group, gint64 per_m)
{
  RcNestPrices prices = rc_nest_prices_scale (&self->prices, per_m, self->goods_per_m);
  gint64       cost = rc_cost_groups_find (self, group, &prices, RC_CHOICE_ALL, NULL, NULL, NULL);
  rc_nest_prices_clear (&prices);
  return cost;
}

/* All pieces of one stair are one group. */
static void
add_stairs (RcCostGroups *self, const GPtrArray *pieces)
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
  g_ptr_array_unref (((RcCostLot *)data)->rolls);
}

static const char *
get_name (const RcCostLot *lot)
{
  return lot->rolls->len > 0 ? ((RcNestRoll *)g_ptr_array_index (lot->rolls, 0))->lot : NULL;
}

/* Stock without a lot is of the lot of goods to buy. */
static void
add_lots (RcCostGroups *self, const GPtrArray *rolls)
{
  RcCostLot bought = { g_ptr_array_new (), 0, self->goods_per_m };
  g_array_append_val (self->lots, bought);
  for (guint i = 0; i + 1 < rolls->len; i++)
    {
      RcNestRoll *roll = g_ptr_array_index (rolls, i);
      guint       at = roll->lot == NULL ? 0 : 1;
      while (at > 0 && at < self->lots->len && g_strcmp0 (get_name (rc_cost_groups_get_lot (self, at)), roll->lot) != 0)
        at++;
      if (at == self->lots->len)
        {
          RcCostLot lot = { g_ptr_array_new (), 0, self->goods_per_m };
          g_array_append_val (self->lots, lot);
        }
      g_ptr_array_add (rc_cost_groups_get_lot (self, at)->rolls, roll);
      rc_cost_groups_get_lot (self, at)->capacity += roll->length * roll->count;
    }
}

static int
compare_costs (gconstpointer a, gconstpointer b)
{
  const RcNestRoll *p = *(RcNestRoll *const *)a, *q = *(RcNestRoll *const *)b;
  return (p->cost_per_m > q->cost_per_m) - (p->cost_per_m < q->cost_per_m);
}

static void
sort_lots (RcCostGroups *self)
{
  for (guint l = 0; l < self->lots->len; l++)
    g_ptr_array_sort (rc_cost_groups_get_lot (self, l)->rolls, compare_costs);
}

void
rc_cost_groups_init (RcCostGroups *groups, const RcGoods *carpet, const GPtrArray *rolls, const GPtrArray *choices,
                     const GPtrArray *pieces)
{
  const RcNestRoll *bought = g_ptr_array_index (rolls, rolls->len - 1);
  *groups = (RcCostGroups){ .carpet = carpet, .goods_per_m = bought->cost_per_m, .choices = choices };
  groups->stairs = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  groups->lots = g_array_new (FALSE, FALSE, sizeof (RcCostLot));
  g_array_set_clear_func (groups->lots, lot_clear);
  add_stairs (groups, pieces);
  add_lots (groups, rolls);
  sort_lots (groups);
  groups->n_groups = choices->len + groups->stairs->len;
}

void
rc_cost_groups_clear (RcCostGroups *groups)
{
  rc_nest_prices_clear (&groups->prices);
  g_ptr_array_unref (groups->stairs);
  g_array_unref (groups->lots);
}

/* Goods are bought in steps. For each length that may be bought: it, and the least that all else costs of the plans
 * that need no more; which is at least what plans cost with goods dearer or cheaper than they are, less the length at
 * that price. `at_price`: what plans cost at those prices. */
gint64
rc_cost_groups_round (const RcCostGroups *self, gint64 bound, const gint64 *at_price, guint n)
{
  static const int percents[] = RC_COST_PERCENTS;
  gint64           least = G_MAXINT64;
  RcLength         step = self->carpet->length_step;
  gint64           per_tick = self->goods_per_m * RC_NEST_PRICE_PARTS;
  for (RcLength length = 0; step > 0 && n > 0 && length * per_tick < least; length += step)
    {
      gint64 other = 0;
      for (guint i = 0; i < n; i++)
        other = MAX (other, at_price[i] - length * (self->goods_per_m * percents[i] / 100) * RC_NEST_PRICE_PARTS);
      least = MIN (least, length * per_tick + other);
    }
  return step > 0 && n > 0 ? MAX (bound, least) : bound;
}
