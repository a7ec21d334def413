#include "taking.h"

#include <string.h>

/* What it takes to weigh a set of cuts that is known, and more for each cut of one that is not. */
enum
{
  KNOWN_WORK_US = 1,
  CUT_WORK_US = 3
};

/* splitmix64's finisher. */
static guint64
mix (guint64 x)
{
  x = (x ^ (x >> 30)) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  x = (x ^ (x >> 27)) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  return x ^ (x >> 31);
}

RcCutSet *
rc_cut_set_new (RcLength roll_width, RcLength longest_sold)
{
  RcCutSet *set = g_new0 (RcCutSet, 1);
  set->roll_width = roll_width;
  set->longest_sold = longest_sold;
  set->cuts = g_array_new (FALSE, FALSE, sizeof (RcNestCut));
  return set;
}

void
rc_cut_set_free (RcCutSet *set)
{
  if (set == NULL)
    return;
  g_array_unref (set->cuts);
  g_free (set);
}

static void
sum_cut (RcCutsSum *sum, const RcNestCut *cut, RcLength roll_width)
{
  guint64 shape = (guint64)cut->width * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15) ^ mix ((guint64)cut->length)
                  ^ mix (mix ((guint64)cut->phase)) ^ mix (mix (mix ((guint64)cut->across_phase)));
  sum->key.a += mix (shape);
  sum->key.b += mix (~shape);
  sum->area += (guint64)cut->width * (guint64)cut->length;
  sum->width += cut->width;
  sum->longest = MAX (sum->longest, cut->length);
  sum->wide_length += 2 * cut->width > roll_width ? cut->length : 0;
  sum->n_cuts++;
  sum->is_patterned |= cut->repeat > 0 || cut->across_repeat > 0;
}

/* A full width of plain goods bought to measure lies by itself; all else is for the nester. */
void
rc_cut_set_add (RcCutSet *set, const RcNestCut *cut)
{
  gboolean  by_itself = cut->width >= set->roll_width && cut->repeat == 0;
  RcNestCut own = *cut;
  own.quantity = 1;
  own.group = NULL; /* the rolls are of one lot */
  sum_cut (&set->stocked, &own, set->roll_width);
  if (own.length > set->longest_sold)
    {
      set->bought.too_long += own.length;
      set->bought.n_too_long++;
    }
  if (by_itself)
    {
      set->bought.drops_length += own.length;
      g_array_append_val (set->cuts, own);
      return;
    }
  sum_cut (&set->bought, &own, set->roll_width);
  g_array_insert_val (set->cuts, set->n_beside, own);
  set->n_beside++;
}

void
rc_taking_init (RcTaking *taking, const RcGoods *carpet, gint64 carpet_per_m)
{
  *taking = (RcTaking){ .carpet = carpet, .carpet_per_m = carpet_per_m };
  taking->problem.roll_width = rc_goods_get_usable_width (carpet);
  taking->problem.cuts = g_ptr_array_new ();
  taking->problem.rolls = g_ptr_array_new ();
  taking->problem.buy_step = carpet->length_step;
  taking->problem.buy_least = carpet->least_cut;
  taking->problem.buy_most = carpet->full_roll;
  taking->problem.stages = 3;
  taking->pool = g_ptr_array_new ();
  taking->cheapest = g_ptr_array_new ();
  taking->known = g_new0 (RcKnownCuts, RC_N_KNOWN);
}

void
rc_taking_clear (RcTaking *taking)
{
  g_ptr_array_unref (taking->problem.cuts);
  g_ptr_array_unref (taking->problem.rolls);
  g_ptr_array_unref (taking->pool);
  g_ptr_array_unref (taking->cheapest);
  g_free (taking->known);
}

static int
compare_costs (gconstpointer a, gconstpointer b)
{
  const RcNestRoll *x = *(const RcNestRoll *const *)a, *y = *(const RcNestRoll *const *)b;
  return x->cost_per_m < y->cost_per_m ? -1 : x->cost_per_m > y->cost_per_m;
}

static void
add_salt (RcTaking *taking, gint64 number)
{
  taking->salt = mix (taking->salt * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15) + (guint64)number);
}

/* What is known of other rolls stays known, for when they come back. */
static void
set_salt (RcTaking *taking)
{
  taking->salt = taking->most_exact;
  for (guint i = 0; i < taking->problem.rolls->len; i++)
    {
      const RcNestRoll *roll = g_ptr_array_index (taking->problem.rolls, i);
      gint64 numbers[] = { roll->length, roll->count, roll->cost_per_m, roll->width, roll->trim, roll->trim_end };
      for (guint k = 0; k < G_N_ELEMENTS (numbers); k++)
        add_salt (taking, numbers[k]);
      for (guint k = 0; roll->flaws != NULL && k < roll->flaws->len; k++)
        {
          add_salt (taking, g_array_index (roll->flaws, RcNestFlaw, k).from);
          add_salt (taking, g_array_index (roll->flaws, RcNestFlaw, k).to);
        }
    }
}

void
rc_taking_set_rolls (RcTaking *taking, const GPtrArray *rolls)
{
  g_ptr_array_set_size (taking->problem.rolls, 0);
  g_ptr_array_set_size (taking->cheapest, 0);
  for (guint i = 0; rolls != NULL && i < rolls->len; i++)
    {
      g_ptr_array_add (taking->problem.rolls, g_ptr_array_index (rolls, i));
      g_ptr_array_add (taking->cheapest, g_ptr_array_index (rolls, i));
    }
  g_ptr_array_sort (taking->cheapest, compare_costs);
  taking->sum = (RcCutsSum){ 0 };
  set_salt (taking);
}

void
rc_taking_set_most_exact (RcTaking *taking, guint most_exact)
{
  taking->most_exact = most_exact;
  set_salt (taking);
}

static gboolean
is_bought_to_measure (const RcTaking *taking)
{
  return taking->problem.rolls->len == 0;
}

static gint64
divide_by_metre (__int128 product)
{
  if (product >= 0 && product < G_MAXINT64 - RC_TICKS_PER_M) /* quicker by far */
    return ((gint64)product + RC_TICKS_PER_M / 2) / RC_TICKS_PER_M;
  return (gint64)((product + RC_TICKS_PER_M / 2) / RC_TICKS_PER_M);
}

/* The cost of a length bought to measure. */
static gint64
weigh_bought (const RcTaking *taking, RcLength length)
{
  return divide_by_metre ((__int128)rc_goods_compute_bought (taking->carpet, length) * taking->carpet_per_m);
}

void
rc_taking_add (RcTaking *taking, const RcCutSet *set)
{
  const RcCutsSum *added = is_bought_to_measure (taking) ? &set->bought : &set->stocked;
  RcCutsSum       *sum = &taking->sum;
  if (taking->pool->len < sum->n_cuts + added->n_cuts)
    g_ptr_array_set_size (taking->pool, (int)(sum->n_cuts + added->n_cuts));
  for (guint i = 0; i < added->n_cuts; i++)
    taking->pool->pdata[sum->n_cuts + i] = &g_array_index (set->cuts, RcNestCut, i);
  sum->drops_length += added->drops_length;
  sum->n_cuts += added->n_cuts;
  sum->area += added->area;
  sum->width += added->width;
  sum->longest = MAX (sum->longest, added->longest);
  sum->too_long += added->too_long;
  sum->n_too_long += added->n_too_long;
  sum->wide_length += added->wide_length;
  sum->is_patterned |= added->is_patterned;
  sum->key.a += added->key.a;
  sum->key.b += added->key.b;
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
  RcCutsKey        key = { sum->key.a ^ taking->salt, sum->key.b };
  RcKnownCuts     *known = &taking->known[key.a % RC_N_KNOWN];
  if (sum->n_cuts == 0
      || (is_bought_to_measure (taking) && !sum->is_patterned && sum->width <= taking->problem.roll_width))
    return (RcTaken){ 0, sum->longest, 0 }; /* side by side */
  taking->work_us += KNOWN_WORK_US;
  if (known->taken.length > 0 && known->key.a == key.a && known->key.b == key.b)
    return known->taken;
  taking->work_us += CUT_WORK_US * sum->n_cuts;
  g_ptr_array_set_size (taking->problem.cuts, (int)sum->n_cuts);
  memcpy (taking->problem.cuts->pdata, taking->pool->pdata, sum->n_cuts * sizeof (gpointer));
  RcTaken taken = is_bought_to_measure (taking)
                      ? (RcTaken){ 0, rc_nest_compute_exact_length (&taking->problem, taking->most_exact), 0 }
                      : take_from_rolls (taking);
  *known = (RcKnownCuts){ key, taken };
  return taken;
}

RcTaken
rc_taking_take (RcTaking *taking)
{
  RcTaken taken = take_cuts (taking);
  taken.length += taking->sum.drops_length;
  if (!is_bought_to_measure (taking))
    return taken;
  taken.cost = weigh_bought (taking, taken.length);
  taken.cost += weigh_bought (taking, taking->sum.too_long) * 2;
  taken.unplaced += taking->sum.n_too_long;
  return taken;
}

/* The cost of so much off the rolls, the cheapest first, as if nothing were lost at their ends. What finds no place
 * costs more than any of them. */
static gint64
weigh_cheapest (const RcTaking *taking, RcLength length)
{
  __int128 cost = 0;
  for (guint i = 0; i < taking->cheapest->len && length > 0; i++)
    {
      const RcNestRoll *roll = g_ptr_array_index (taking->cheapest, i);
      RcLength          taken = roll->length > 0 ? MIN (length, roll->length * roll->count) : length;
      cost += (__int128)taken * roll->cost_per_m;
      length -= taken;
    }
  return divide_by_metre (cost);
}

RcTaken
rc_taking_take_at_least (const RcTaking *taking)
{
  const RcCutsSum *sum = &taking->sum;
  RcLength         width = taking->problem.roll_width;
  RcLength         beside
      = MAX (MAX (sum->longest, sum->wide_length), (RcLength)((sum->area + (guint64)width - 1) / (guint64)width));
  RcTaken least = { 0, sum->drops_length + beside, 0 };
  least.cost = is_bought_to_measure (taking) ? weigh_bought (taking, least.length) : weigh_cheapest (taking, beside);
  return least;
}
