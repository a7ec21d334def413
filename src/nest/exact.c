#include "exact.h"

#include "bound.h"
#include "origins.h"
#include "subsets.h"

enum
{
  MOST_WORK = 150000000,
  MOST_LOT_CHOICES = 64,
  MOST_ORIGINS = 2000
};

typedef struct
{
  gint64   cost;
  RcLength used;
} Price;

typedef struct
{
  RcNestTask        *task;
  const RcNestClock *clock;
  guint              n;
  RcNestSubsets    **subsets; /* by bin; bins that are alike share one */
  guint              n_bins;
  Price             *best;  /* by set, over the bins so far */
  guint32           *taken; /* by bin and set: what that bin takes, and no later one of its roll takes anything */
  Price      *ahead; /* the same without what the roll itself costs: stretches of it that come later pay for all */
  guint32    *taken_ahead;
  Price       found; /* over all lots */
  RcNestSpot *spots;
  int        *lots;
  RcLength    least_used, below;
  gboolean    stopped;
} Exact;

static const Price NONE = { G_MAXINT64, G_MAXINT64 };

static gboolean
is_cheaper (Price a, Price b)
{
  return a.cost < b.cost || (a.cost == b.cost && a.used < b.used);
}

static guint
count_lot_choices (const RcNestTask *task)
{
  guint choices = 1;

  if (task->bins->n_lots > 1)
    for (guint g = 0; g < task->items->groups->len && choices <= MOST_LOT_CHOICES; g++)
      choices *= (guint)task->bins->n_lots;
  return choices;
}

static gboolean
has_order (const RcNestTask *task)
{
  return task->items->has_repeats || task->items->is_tied;
}

double
rc_nest_exact_estimate_seconds (const RcNestTask *task)
{
  double base = has_order (task) ? 4 : 3, sets = 1;

  if (task->items->is_tied)
    {
      g_autoptr (GPtrArray) origins = rc_nest_origins_list (task, MOST_ORIGINS);

      if (origins == NULL)
        return G_MAXDOUBLE;
      sets = origins->len;
    }
  for (guint i = 0; i < task->items->n; i++)
    sets *= base;
  return sets * (task->problem->stages == 0 ? 4e-7 : 1.5e-8);
}

gboolean
rc_nest_exact_can (const RcNestTask *task)
{
  guint   n = task->items->n, most = RC_NEST_MOST_EXACT;
  guint64 work = 1;

  if (task->problem->stages == 0)
    most = has_order (task) ? 0 : RC_NEST_MOST_EXACT_ANY;
  else if (has_order (task))
    most = RC_NEST_MOST_EXACT_REPEATS;
  if (n == 0 || n > most || count_lot_choices (task) > MOST_LOT_CHOICES)
    return FALSE;
  for (guint i = 0; i < n; i++)
    work *= 3;
  return task->bins->n == 1 || work * task->bins->n * count_lot_choices (task) <= MOST_WORK;
}

static gboolean
are_alike (const RcNestTask *task, const RcNestBin *a, const RcNestBin *b)
{
  return a->width == b->width && a->start == b->start;
}

/* The longest end that a cutting in this bin could usefully have. */
static RcLength
compute_most_end (const Exact *self, guint bin)
{
  const RcNestTask *task = self->task;
  RcLength          end = task->bins->bins[bin].end, most = 0, stacked = 0, from = task->bins->bins[bin].start;

  for (guint b = 0; b < task->bins->n; b++)
    if (are_alike (task, &task->bins->bins[b], &task->bins->bins[bin]))
      end = MAX (end, task->bins->bins[b].end);
  for (guint i = 0; i < task->items->n; i++)
    {
      most = MAX (most, task->items->items[i].repeat);
      stacked += task->items->items[i].h;
      if (task->items->items[i].is_along_pinned)
        from = MAX (from, task->items->items[i].along);
    }
  if (self->n_bins == 1)
    end = MIN (end, MIN (self->below, self->least_used) - 1);
  return MIN (end, from + stacked + most * (RcLength)task->items->n);
}

static gboolean
prepare (Exact *self)
{
  const RcNestTask *task = self->task;

  for (guint b = 0; b < self->n_bins; b++)
    {
      const RcNestBin *bin = &task->bins->bins[b];

      for (guint a = 0; a < b && self->subsets[b] == NULL; a++)
        if (are_alike (task, bin, &task->bins->bins[a]))
          self->subsets[b] = self->subsets[a];
      if (self->subsets[b] == NULL)
        self->subsets[b] = rc_nest_subsets_new (task->items->items, self->n, task->problem->stages, bin->width,
                                                bin->start, compute_most_end (self, b), self->n_bins == 1, self->clock);
      if (self->subsets[b] == NULL)
        return FALSE;
    }
  return TRUE;
}

static void
forget (Exact *self)
{
  for (guint b = 0; b < self->n_bins; b++)
    {
      gboolean shared = FALSE;

      for (guint a = 0; a < b; a++)
        shared |= self->subsets[a] == self->subsets[b];
      if (!shared)
        rc_nest_subsets_free (self->subsets[b]);
    }
  memset (self->subsets, 0, sizeof *self->subsets * self->n_bins);
}

static guint32
find_allowed (const Exact *self, const RcNestBin *bin)
{
  guint32 allowed = 0;

  for (guint i = 0; i < self->n; i++)
    if (rc_nest_task_allows (self->task, &self->task->items->items[i], bin))
      allowed |= 1u << i;
  return allowed;
}

static Price
get_price (const Exact *self, guint b, RcLength end, gboolean by_length)
{
  const RcNestBin *bin = &self->task->bins->bins[b];
  RcLength         taken = rc_nest_bin_compute_taken (bin, end, self->task->problem);

  return (Price){ by_length ? end : taken * bin->cost_per_m, end };
}

/* Whether bin b is a stretch of the same roll as the bin before it. */
static gboolean
goes_on (const Exact *self, guint b)
{
  const RcNestBin *bins = self->task->bins->bins;

  return b > 0 && b < self->n_bins && bins[b].source == bins[b - 1].source && bins[b].copy == bins[b - 1].copy;
}

/* What bins 0 .. b cost for each set; sets are visited largest first so that a bin is used once. Of a roll's stretches
 * the last one that takes anything says what is taken of the roll. */
static void
add_bin (Exact *self, guint b, gboolean by_length)
{
  const RcNestBin     *bin = &self->task->bins->bins[b];
  guint32              n_sets = 1u << self->n, allowed = find_allowed (self, bin);
  guint32             *taken = self->taken + (gsize)b * n_sets, *taken_ahead = self->taken_ahead + (gsize)b * n_sets;
  g_autofree RcLength *ends = g_new (RcLength, n_sets);

  if (!goes_on (self, b))
    memcpy (self->ahead, self->best, sizeof (Price) * n_sets);
  for (guint32 set = 0; set < n_sets; set++)
    ends[set] = rc_nest_subsets_get_end (self->subsets[b], set);
  for (guint32 set = n_sets; set-- > 0;)
    {
      taken[set] = taken_ahead[set] = 0;
      if (set % 256 == 0 && rc_nest_clock_is_over (self->clock))
        return; /* which spread sees too */
      for (guint32 sub = set & allowed; sub != 0; sub = (sub - 1) & set & allowed)
        {
          Price before = self->ahead[set ^ sub], price;

          if (ends[sub] > bin->end || before.cost == G_MAXINT64)
            continue;
          price = get_price (self, b, ends[sub], by_length);
          price.cost += before.cost;
          price.used += before.used;
          if (is_cheaper (price, self->best[set]))
            {
              self->best[set] = price;
              taken[set] = sub;
            }
          if (is_cheaper (before, self->ahead[set]))
            {
              self->ahead[set] = before;
              taken_ahead[set] = sub;
            }
        }
    }
}

static Price
spread (Exact *self, gboolean by_length)
{
  guint32 n_sets = 1u << self->n;

  self->best[0] = (Price){ 0, 0 };
  for (guint32 set = 1; set < n_sets; set++)
    self->best[set] = NONE;
  for (guint b = 0; b < self->n_bins; b++)
    {
      add_bin (self, b, by_length);
      if (rc_nest_clock_is_over (self->clock))
        {
          self->stopped = TRUE;
          return NONE;
        }
    }
  return self->best[n_sets - 1];
}

static void
write_spots (Exact *self)
{
  guint32  n_sets = 1u << self->n, left = n_sets - 1;
  gboolean ahead = FALSE; /* a later stretch of the roll is used */

  for (guint b = self->n_bins; b-- > 0;)
    {
      const guint32 *taken = ahead ? self->taken_ahead : self->taken;
      guint32        sub = taken[(gsize)b * n_sets + left];

      ahead = goes_on (self, b) && (ahead || sub != 0);
      if (sub == 0)
        continue;
      rc_nest_subsets_place (self->subsets[b], sub, (int)b, self->spots);
      left ^= sub;
    }
}

static void
solve_lots (Exact *self)
{
  Price price = spread (self, TRUE);

  self->least_used = MIN (self->least_used, price.cost);
  if (self->stopped || price.cost == G_MAXINT64)
    return;
  price = spread (self, FALSE);
  if (self->stopped || !is_cheaper (price, self->found))
    return;
  self->found = price;
  write_spots (self);
  memcpy (self->lots, self->task->lot_of_group, sizeof (int) * self->task->items->groups->len);
}

static void
solve_groups (Exact *self, guint group)
{
  if (self->stopped)
    return;
  if (group == self->task->items->groups->len || self->task->bins->n_lots == 1)
    {
      solve_lots (self);
      return;
    }
  for (int lot = 0; lot < self->task->bins->n_lots; lot++)
    {
      self->task->lot_of_group[group] = lot;
      solve_groups (self, group + 1);
    }
}

/* One beginning of the matches' patterns after the other. */
static void
solve_origins (Exact *self, const GPtrArray *origins, RcLength enough)
{
  RcNestItems           *items = self->task->items;
  g_autofree RcNestItem *tied = g_memdup2 (items->items, sizeof (RcNestItem) * self->n);

  for (guint k = 0; k < origins->len && !self->stopped; k++)
    {
      memcpy (items->items, tied, sizeof (RcNestItem) * self->n);
      rc_nest_origins_settle (origins->pdata[k], items->items, self->n);
      if (self->n_bins == 1 && rc_nest_bound_quick (self->task) >= MIN (self->least_used, self->below))
        continue;
      self->stopped = !prepare (self);
      if (!self->stopped)
        solve_groups (self, 0);
      forget (self);
      if (self->n_bins == 1 && self->least_used <= enough)
        break; /* nothing is shorter, and on one roll nothing cheaper */
    }
  memcpy (items->items, tied, sizeof (RcNestItem) * self->n);
}

gboolean
rc_nest_exact_solve (RcNestTask *task, const RcNestClock *clock, RcLength below, RcNestSpot *spots, RcLength *bound)
{
  guint n = task->items->n, n_groups = task->items->groups->len;
  Exact self = { .task = task, .clock = clock, .n = n, .n_bins = task->bins->n, .found = NONE, .spots = spots };
  g_autofree int *before = g_memdup2 (task->lot_of_group, sizeof (int) * (n_groups + 1));
  g_autoptr (GPtrArray) origins = rc_nest_origins_list (task, MOST_ORIGINS);

  if (origins == NULL)
    return FALSE;
  self.subsets = g_new0 (RcNestSubsets *, self.n_bins + 1);
  self.best = g_new (Price, (gsize)1 << n);
  self.taken = g_new (guint32, (gsize)self.n_bins << n);
  self.ahead = g_new (Price, (gsize)1 << n);
  self.taken_ahead = g_new (guint32, (gsize)self.n_bins << n);
  self.spots = g_new (RcNestSpot, n + 1);
  self.lots = g_memdup2 (before, sizeof (int) * (n_groups + 1));
  self.least_used = RC_NEST_ENDLESS;
  self.below = self.n_bins == 1 ? below : RC_NEST_ENDLESS;
  solve_origins (&self, origins, *bound);
  memcpy (task->lot_of_group, self.stopped ? before : self.lots, sizeof (int) * n_groups);
  if (!self.stopped)
    *bound = MIN (self.least_used, self.below);
  if (!self.stopped && self.least_used < RC_NEST_ENDLESS)
    memcpy (spots, self.spots, sizeof (RcNestSpot) * n);
  g_free (self.subsets);
  g_free (self.best);
  g_free (self.taken);
  g_free (self.ahead);
  g_free (self.taken_ahead);
  g_free (self.spots);
  g_free (self.lots);
  return !self.stopped;
}
