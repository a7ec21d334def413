#include "cost-sharing.h"

#include "area-together.h"
#include "range-price.h"
#include "slice-lp.h"

/* All ways to share out the groups among the lots are looked at where there are no more than this. */
#define MOST_SHARINGS 4096
#define MOST_GROUPS   12

/* The part of the time left that a program of a set's own takes at most. */
#define DEARER_SHARE 0.05

/* The part of the time left in which each area is looked at alone. */
#define ALONE_SHARE 0.2

enum
{
  LOOKS = 10,       /* closer, at a set of groups at a time */
  N_PERCENTS = 5,   /* of RC_COST_PERCENTS; where groups are looked at closer that is enough */
  STEP_LOOKS = 100, /* of them take as long as a step of the clock */
  MOST_LOOKS = 400000
};

/* Some groups out of one lot, with nothing else in it. */
typedef struct
{
  gboolean    is_begun, is_over;
  RcTogether *search; /* NULL: there is none, or no area among them */
  gint64      bound;  /* 0: not known */
} Together;

/* A lot that lengths come out of. */
typedef struct
{
  const RcCostGroups *groups;
  guint               lot;
} Source;

struct _RcCostSharing
{
  const RcCostGroups *groups;
  Source             *sources;  /* by lot */
  Together           *together; /* by lot and set of groups */
  guint64             looks_left;
};

/* Sets of groups: a bit for each. */
static Together *
get_together (const RcCostSharing *sharing, guint lot, guint set)
{
  return &sharing->together[((gsize)lot << sharing->groups->n_groups) + set];
}

/* --- some groups out of one lot --- */

/* An RcLengthCost: the cheapest rolls first, as if nothing were lost at their ends. */
static gint64
weigh_length (gconstpointer user_data, RcLength length)
{
  const Source       *source = user_data;
  const RcCostGroups *self = source->groups;
  const RcCostLot    *lot = rc_cost_groups_get_lot (self, source->lot);
  gint64              cost = 0;
  for (guint i = 0; i < lot->rolls->len && length > 0; i++)
    {
      const RcNestRoll *roll = g_ptr_array_index (lot->rolls, i);
      RcLength          taken = MIN (length, roll->length * roll->count);
      if (source->lot == 0 && roll->cost_per_m > self->goods_per_m)
        break;
      cost += taken * roll->cost_per_m * RC_NEST_PRICE_PARTS;
      length -= taken;
    }
  if (length > 0 && source->lot > 0)
    return G_MAXINT64;
  if (lot->rolls->len == 0)
    length = rc_goods_compute_bought (self->carpet, length);
  return cost + length * self->goods_per_m * RC_NEST_PRICE_PARTS;
}

/* Stairs' cuts are known. */
static RcLength
find_stair_length (const RcCostGroups *self, const GArray *cuts, const RcNestClock *clock)
{
  RcLength drops = 0, longest = 0, width = rc_goods_get_usable_width (self->carpet);
  g_autoptr (GArray) items = g_array_new (FALSE, FALSE, sizeof (RcNestSliceItem));
  for (guint i = 0; i < cuts->len; i++)
    {
      const RcNestChoiceCut *cut = &g_array_index (cuts, RcNestChoiceCut, i);
      RcNestSliceItem        item = { cut->w, cut->h, 1 };
      if (cut->w == width)
        {
          drops += cut->h;
          continue;
        }
      longest = MAX (longest, cut->h);
      g_array_append_val (items, item);
    }
  return drops + rc_nest_slice_bound ((const RcNestSliceItem *)items->data, items->len, width, longest, 1, clock);
}

/* What the rolls of the lot save at most against goods of that price. */
static gint64
find_savings (const RcCostLot *lot, gint64 per_m)
{
  gint64 savings = 0;
  for (guint r = 0; r < lot->rolls->len; r++)
    {
      const RcNestRoll *roll = g_ptr_array_index (lot->rolls, r);
      savings += MAX (0, per_m - roll->cost_per_m) * roll->length * roll->count * RC_NEST_PRICE_PARTS;
    }
  return savings;
}

/* What goods of the lot may be taken to cost a metre: what one of its rolls does or, where no more can be bought, more
 * than that, as if the rolls had to be saved. (transfer full) GArray of RcTogetherPrice. */
static GArray *
list_prices (const RcCostGroups *self, guint l)
{
  static const int percents[] = { 100, 150, 200 };
  const RcCostLot *lot = rc_cost_groups_get_lot (self, l);
  GArray          *prices = g_array_new (FALSE, FALSE, sizeof (RcTogetherPrice));
  for (guint i = 0; i < lot->rolls->len + G_N_ELEMENTS (percents); i++)
    {
      gint64          per_m = i < lot->rolls->len ? ((RcNestRoll *)g_ptr_array_index (lot->rolls, i))->cost_per_m
                                                  : self->goods_per_m * percents[i - lot->rolls->len] / 100;
      RcTogetherPrice price = { per_m, find_savings (lot, per_m) };
      if (l > 0 || per_m <= self->goods_per_m) /* what is to be bought is to be had at its price */
        g_array_append_val (prices, price);
    }
  return prices;
}

/* The groups of a set, and for the program those of them that it has. */
typedef struct
{
  const RcCostSharing *sharing;
  guint                lot, n;
  guint                members[MOST_GROUPS];
  GPtrArray           *choices; /* of RcAreaChoice */
  GArray              *cuts;    /* of RcNestChoiceCut: of the stairs */
} Set;

static void
list_set (Set *self, guint set)
{
  const RcCostGroups *groups = self->sharing->groups;
  for (guint g = 0; g < groups->n_groups; g++)
    {
      if ((set >> g & 1) == 0)
        continue;
      self->members[self->n++] = g;
      if (g < groups->choices->len)
        {
          g_ptr_array_add (self->choices, g_ptr_array_index (groups->choices, g));
          continue;
        }
      const GArray *stair = g_ptr_array_index (groups->stairs, g - groups->choices->len);
      g_array_append_vals (self->cuts, stair->data, stair->len);
    }
}

static gint64
find_for_program (gpointer user_data, guint group, const RcNestPrices *prices, gboolean likely, GArray *cuts,
                  gint64 *own, guint *way)
{
  const Set *self = user_data;
  *way = 0;
  return rc_cost_groups_find (self->sharing->groups, self->members[group], prices,
                              likely ? RC_CHOICE_LIKELY : RC_CHOICE_ALL, cuts, own, NULL);
}

/* Pieces longer than the lot's other rolls come out of its longest. Of goods to buy there is any length. */
static void
find_long (const RcCostLot *lot, guint l, RcLayCost *cost)
{
  RcLength longest = 0;
  for (guint r = 0; r < lot->rolls->len; r++)
    longest = MAX (longest, ((RcNestRoll *)g_ptr_array_index (lot->rolls, r))->length);
  for (guint r = 0; r < lot->rolls->len && l > 0; r++)
    {
      const RcNestRoll *roll = g_ptr_array_index (lot->rolls, r);
      if (roll->length < longest)
        cost->long_from = MAX (cost->long_from, roll->length);
      else
        cost->long_most += roll->length * roll->count;
    }
}

/* A search by these prices in place of the one there is, where it begins with a higher bound. FALSE: it does not. */
static gboolean
try_prices (const Set *self, const RcNestPrices *prices, gint64 per_m, const GArray *tried, Together *together)
{
  RcLayCost cost = { .func = weigh_length, .user_data = &self->sharing->sources[self->lot] };
  find_long (rc_cost_groups_get_lot (self->sharing->groups, self->lot), self->lot, &cost);
  RcTogether *search = rc_together_new (self->choices, self->cuts, &cost, prices, per_m, tried);
  gboolean    better
      = search != NULL
        && (together->search == NULL || rc_together_get_bound (search) > rc_together_get_bound (together->search));
  rc_together_free (better ? together->search : search);
  if (better)
    together->search = search;
  return better;
}

/* Out of a lot that is short for the set, other ways are cheapest than where goods are bought: the program is solved
 * for these groups alone, at prices by which it pays to do with less, the higher until that gains nothing. */
static void
try_dearer (Set *self, Together *together, const RcNestClock *clock)
{
  static const int    percents[] = { 200, 450, 800 };
  const RcCostGroups *groups = self->sharing->groups;
  gboolean            better = TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (percents) && better && !rc_nest_clock_is_over (clock); i++)
    {
      g_autoptr (GArray) shares = g_array_new (FALSE, FALSE, sizeof (RcNestShare));
      g_autoptr (GArray) tried = g_array_new (FALSE, FALSE, sizeof (RcTogetherPrice));
      gint64          per_m = groups->goods_per_m * percents[i] / 100;
      RcNestChoice    choice = { self->n, rc_goods_get_usable_width (groups->carpet), per_m, find_for_program, self };
      RcNestPrices    prices = { 0 };
      RcTogetherPrice price = { per_m, find_savings (rc_cost_groups_get_lot (groups, self->lot), per_m) };
      RcNestClock     part = rc_nest_clock_take_share (clock, DEARER_SHARE);
      rc_nest_choice_solve (&choice, &part, &prices, shares);
      g_array_append_val (tried, price);
      better = try_prices (self, &prices, per_m, tried, together);
      rc_nest_prices_clear (&prices);
    }
}

static void
begin (const RcCostSharing *sharing, guint lot, guint set, const RcNestClock *clock)
{
  const RcCostGroups *groups = sharing->groups;
  Together           *together = get_together (sharing, lot, set);
  Set                 self = { .sharing = sharing, .lot = lot, .choices = g_ptr_array_new () };
  self.cuts = g_array_new (FALSE, FALSE, sizeof (RcNestChoiceCut));
  list_set (&self, set);
  together->is_begun = TRUE;
  if (self.choices->len == 0)
    together->bound = weigh_length (&sharing->sources[lot], find_stair_length (groups, self.cuts, clock));
  else
    {
      g_autoptr (GArray) tried = list_prices (groups, lot);
      if (try_prices (&self, &groups->prices, groups->goods_per_m, tried, together) && lot > 0)
        try_dearer (&self, together, clock);
    }
  together->is_over = together->search == NULL;
  g_ptr_array_unref (self.choices);
  g_array_unref (self.cuts);
}

/* Looks at what the set costs out of the lot, or closer. FALSE: the clock or the looks are over, or all is seen. */
static gboolean
look_at (RcCostSharing *sharing, guint lot, guint set, const RcNestClock *clock)
{
  Together *together = get_together (sharing, lot, set);
  if (together->is_over || sharing->looks_left == 0 || rc_nest_clock_is_over (clock))
    return FALSE;
  if (!together->is_begun)
    begin (sharing, lot, set, clock);
  if (together->search != NULL)
    {
      guint n = (guint)MIN (LOOKS, sharing->looks_left);
      together->is_over = !rc_together_look (together->search, n, clock);
      together->bound = MAX (together->bound, rc_together_get_bound (together->search));
      sharing->looks_left -= n;
    }
  return TRUE;
}

/* Each area alone, its carpet bought to measure, in an equal part of what is left of the time for that. */
static void
find_alone (RcCostSharing *sharing, const RcNestClock *clock)
{
  guint       n = sharing->groups->choices->len;
  RcNestClock alone = rc_nest_clock_take_share (clock, ALONE_SHARE);
  guint64     all = sharing->looks_left, left_after = all - (guint64)((double)all * ALONE_SHARE);
  for (guint g = 0; g < n; g++)
    {
      RcNestClock part = rc_nest_clock_take_share (&alone, 1.0 / (n - g));
      guint64     until = sharing->looks_left - (sharing->looks_left - left_after) / (n - g);
      while (sharing->looks_left > until && look_at (sharing, 0, 1u << g, &part))
        ;
    }
}

/* --- the groups shared out among the lots --- */

/* The prices a metre that are tried for the goods of a lot. */
typedef struct
{
  GArray *per_m; /* of gint64: those of goods to buy at `percents`, then those of all rolls */
  gint64 *cost;  /* by price, then group */
} TriedPrices;

static void
tried_prices_clear (TriedPrices *prices)
{
  g_array_unref (prices->per_m);
  g_free (prices->cost);
}

/* As many as there is time for, one at least. */
static TriedPrices
tried_prices_new (const RcCostGroups *self, const RcNestClock *clock)
{
  static const int percents[] = RC_COST_PERCENTS;
  TriedPrices      prices = { g_array_new (FALSE, FALSE, sizeof (gint64)), NULL };
  for (guint i = 0; i < N_PERCENTS; i++)
    {
      gint64 per_m = self->goods_per_m * percents[i] / 100;
      g_array_append_val (prices.per_m, per_m);
    }
  for (guint l = 0; l < self->lots->len; l++)
    for (guint i = 0; i < rc_cost_groups_get_lot (self, l)->rolls->len; i++)
      g_array_append_val (prices.per_m,
                          ((RcNestRoll *)g_ptr_array_index (rc_cost_groups_get_lot (self, l)->rolls, i))->cost_per_m);
  prices.cost = g_new (gint64, (gsize)prices.per_m->len * self->n_groups + 1);
  for (guint i = 0; i < prices.per_m->len; i++)
    {
      if (i > 0 && rc_nest_clock_is_over (clock))
        g_array_set_size (prices.per_m, i);
      for (guint g = 0; g < self->n_groups && i < prices.per_m->len; g++)
        prices.cost[i * self->n_groups + g] = rc_cost_groups_find_at (self, g, g_array_index (prices.per_m, gint64, i));
    }
  return prices;
}

/* The least that the set costs out of the lot, by the program's prices and by what was looked at. */
static gint64
weigh_lot (const RcCostSharing *sharing, guint l, guint set, const TriedPrices *prices)
{
  const RcCostGroups *self = sharing->groups;
  const RcCostLot    *lot = rc_cost_groups_get_lot (self, l);
  gint64              best = 0, at_price[N_PERCENTS];
  if (set == 0)
    return 0;
  for (guint i = 0; i < prices->per_m->len; i++)
    {
      gint64 per_m = g_array_index (prices->per_m, gint64, i), sum = 0;
      for (guint g = 0; g < self->n_groups; g++)
        sum += set >> g & 1 ? prices->cost[i * self->n_groups + g] : 0;
      if (i < N_PERCENTS)
        at_price[i] = sum;
      if (l > 0 || per_m <= self->goods_per_m) /* what is to be bought is to be had at its price */
        best = MAX (best, sum - find_savings (lot, per_m));
    }
  if (l == 0 && lot->rolls->len == 0)
    best = rc_cost_groups_round (self, best, at_price, MIN (prices->per_m->len, N_PERCENTS));
  return MAX (best, get_together (sharing, l, set)->bound);
}

/* 0: there are too many. */
static guint
count_sharings (const RcCostGroups *self)
{
  guint n = 1;
  for (guint g = 0; g < self->n_groups && n <= MOST_SHARINGS; g++)
    n *= self->lots->len;
  return n > MOST_SHARINGS || self->n_groups > MOST_GROUPS ? 0 : n;
}

gboolean
rc_cost_sharing_is_possible (const RcCostGroups *groups)
{
  return count_sharings (groups) > 0;
}

RcCostSharing *
rc_cost_sharing_new (const RcCostGroups *groups, const RcNestClock *clock)
{
  if (count_sharings (groups) == 0)
    return NULL;
  RcCostSharing *sharing = g_new0 (RcCostSharing, 1);
  sharing->groups = groups;
  sharing->together = g_new0 (Together, (gsize)groups->lots->len << groups->n_groups);
  sharing->sources = g_new (Source, groups->lots->len);
  sharing->looks_left = MIN (MOST_LOOKS / STEP_LOOKS, clock->steps_left) * STEP_LOOKS;
  for (guint l = 0; l < groups->lots->len; l++)
    sharing->sources[l] = (Source){ groups, l };
  find_alone (sharing, clock);
  return sharing;
}

void
rc_cost_sharing_free (RcCostSharing *sharing)
{
  if (sharing == NULL)
    return;
  for (gsize i = 0; i < (gsize)sharing->groups->lots->len << sharing->groups->n_groups; i++)
    rc_together_free (sharing->together[i].search);
  g_free (sharing->together);
  g_free (sharing->sources);
  g_free (sharing);
}

RcMoney
rc_cost_sharing_get_alone (const RcCostSharing *sharing, guint group)
{
  gint64 found = get_together (sharing, 0, 1u << group)->bound;
  if (rc_cost_groups_get_lot (sharing->groups, 0)->rolls->len > 0 || found == G_MAXINT64)
    return 0;
  return MAX (0, found) / RC_RANGE_UNIT;
}

/* The sharing's number, in the base of the number of lots, as the set of each lot. */
static void
list_sets (const RcCostGroups *self, guint number, guint *sets)
{
  guint n_lots = self->lots->len;
  memset (sets, 0, sizeof (guint) * n_lots);
  for (guint g = 0; g < self->n_groups; g++, number /= n_lots)
    sets[number % n_lots] |= 1u << g;
}

static gint64
weigh_sharing (const RcCostSharing *sharing, const guint *sets, const TriedPrices *prices)
{
  gint64 cost = 0;
  for (guint l = 0; l < sharing->groups->lots->len; l++)
    {
      gint64 own = weigh_lot (sharing, l, sets[l], prices);
      if (own == G_MAXINT64)
        return own;
      cost += own;
    }
  return cost;
}

/* Looks closer at the sharing. FALSE: there is nothing more to see, or the clock or the looks are over. */
static gboolean
look_closer (RcCostSharing *sharing, const guint *sets, const RcNestClock *clock)
{
  gboolean looked = FALSE;
  for (guint l = 0; l < sharing->groups->lots->len; l++)
    looked |= sets[l] != 0 && look_at (sharing, l, sets[l], clock);
  return looked;
}

gint64
rc_cost_sharing_find_cheapest (RcCostSharing *sharing, const RcNestClock *clock)
{
  guint             n = count_sharings (sharing->groups), best = 0;
  g_autofree guint *sets = g_new (guint, sharing->groups->lots->len);
  TriedPrices       prices = tried_prices_new (sharing->groups, clock);
  gint64            least;
  do
    {
      least = G_MAXINT64;
      for (guint i = 0; i < n; i++)
        {
          list_sets (sharing->groups, i, sets);
          gint64 cost = weigh_sharing (sharing, sets, &prices);
          if (cost >= least)
            continue;
          least = cost;
          best = i;
        }
      list_sets (sharing->groups, best, sets);
    }
  while (least < G_MAXINT64 && look_closer (sharing, sets, clock));
  tried_prices_clear (&prices);
  return least;
}
