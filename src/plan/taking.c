#include "taking.h"

#include <string.h>

void
rc_taking_init (RcTaking *taking, const RcGoods *carpet, gint64 carpet_per_m)
{
  *taking = (RcTaking){ .carpet = carpet, .carpet_per_m = carpet_per_m };
  taking->problem.roll_width = rc_goods_get_usable_width (carpet);
  taking->problem.cuts = g_ptr_array_new ();
  taking->problem.rolls = g_ptr_array_new ();
  taking->problem.buy_step = carpet->length_step;
  taking->problem.buy_least = carpet->least_cut;
  taking->problem.stages = 3;
  taking->pool = g_ptr_array_new_with_free_func (g_free);
  taking->known = g_new0 (RcKnownCuts, RC_N_KNOWN);
}

void
rc_taking_clear (RcTaking *taking)
{
  g_ptr_array_unref (taking->problem.cuts);
  g_ptr_array_unref (taking->problem.rolls);
  g_ptr_array_unref (taking->pool);
  g_free (taking->known);
}

void
rc_taking_set_rolls (RcTaking *taking, const GPtrArray *rolls)
{
  gboolean other = rolls != NULL && rolls->len > 0;
  if (other || taking->problem.rolls->len > 0) /* what is known to measure stays true */
    memset (taking->known, 0, sizeof (RcKnownCuts) * RC_N_KNOWN);
  g_ptr_array_set_size (taking->problem.rolls, 0);
  for (guint i = 0; other && i < rolls->len; i++)
    g_ptr_array_add (taking->problem.rolls, g_ptr_array_index (rolls, i));
  taking->sum = (RcCutsSum){ 0 };
}

void
rc_taking_set_most_exact (RcTaking *taking, guint most_exact)
{
  if (taking->most_exact == most_exact)
    return;
  taking->most_exact = most_exact;
  memset (taking->known, 0, sizeof (RcKnownCuts) * RC_N_KNOWN);
}

static gboolean
is_bought_to_measure (const RcTaking *taking)
{
  return taking->problem.rolls->len == 0;
}

static gint64
divide_by_metre (__int128 product)
{
  return (gint64)((product + RC_TICKS_PER_M / 2) / RC_TICKS_PER_M);
}

/* The cost of a length bought to measure. */
static gint64
weigh_bought (const RcTaking *taking, RcLength length)
{
  return divide_by_metre ((__int128)rc_goods_compute_bought (taking->carpet, length) * taking->carpet_per_m);
}

/* splitmix64's finisher. */
static guint64
mix (guint64 x)
{
  x = (x ^ (x >> 30)) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  x = (x ^ (x >> 27)) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  return x ^ (x >> 31);
}

/* A full width of plain goods bought to measure lies by itself; all else is for the nester. */
void
rc_taking_add (RcTaking *taking, const RcNestCut *cut)
{
  RcCutsSum *sum = &taking->sum;
  if (cut->width >= taking->problem.roll_width && cut->repeat == 0 && is_bought_to_measure (taking))
    {
      sum->drops_length += cut->length;
      return;
    }
  guint64 shape = (guint64)cut->width * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15) ^ mix ((guint64)cut->length)
                  ^ mix (mix ((guint64)cut->phase)) ^ mix (mix (mix ((guint64)cut->across_phase)));
  sum->key.a += mix (shape);
  sum->key.b += mix (~shape);
  sum->area += (__int128)cut->width * cut->length;
  sum->width += cut->width;
  sum->longest = MAX (sum->longest, cut->length);
  if (sum->n_cuts == taking->pool->len)
    g_ptr_array_add (taking->pool, g_new0 (RcNestCut, 1));
  RcNestCut *at_hand = g_ptr_array_index (taking->pool, sum->n_cuts++);
  *at_hand = *cut;
  at_hand->quantity = 1;
  at_hand->group = NULL; /* the rolls are of one lot */
  sum->is_patterned |= cut->repeat > 0 || cut->across_repeat > 0;
}

static RcTaken
take_from_rolls (const RcTaking *taking)
{
  RcTaken taken;
  gint64  cost;
  taken.unplaced = rc_nest_compute_quick_cost (&taking->problem, &cost, &taken.length);
  taken.cost = divide_by_metre (cost) + weigh_bought (taking, taking->sum.longest) * 2 * taken.unplaced;
  return taken;
}

/* What the cuts for the nester take. */
static RcTaken
take_cuts (RcTaking *taking)
{
  const RcCutsSum *sum = &taking->sum;
  RcKnownCuts     *known = &taking->known[sum->key.a % RC_N_KNOWN];
  if (sum->n_cuts == 0
      || (is_bought_to_measure (taking) && !sum->is_patterned && sum->width <= taking->problem.roll_width))
    return (RcTaken){ 0, sum->longest, 0 }; /* side by side */
  if (known->taken.length > 0 && known->key.a == sum->key.a && known->key.b == sum->key.b)
    return known->taken;
  g_ptr_array_set_size (taking->problem.cuts, (int)sum->n_cuts);
  memcpy (taking->problem.cuts->pdata, taking->pool->pdata, sum->n_cuts * sizeof (gpointer));
  RcTaken taken = is_bought_to_measure (taking)
                      ? (RcTaken){ 0, rc_nest_compute_exact_length (&taking->problem, taking->most_exact), 0 }
                      : take_from_rolls (taking);
  *known = (RcKnownCuts){ sum->key, taken };
  return taken;
}

RcTaken
rc_taking_take (RcTaking *taking)
{
  RcTaken taken = take_cuts (taking);
  taken.length += taking->sum.drops_length;
  if (is_bought_to_measure (taking))
    taken.cost = weigh_bought (taking, taken.length);
  return taken;
}

RcTaken
rc_taking_take_at_least (const RcTaking *taking)
{
  const RcCutsSum *sum = &taking->sum;
  RcLength         width = taking->problem.roll_width;
  RcTaken least = { 0, sum->drops_length + MAX (sum->longest, (RcLength)((sum->area + width - 1) / width)), 0 };
  if (is_bought_to_measure (taking))
    least.cost = weigh_bought (taking, least.length);
  return least;
}
