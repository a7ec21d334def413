#include "anneal.h"

#include <math.h>

#include "tree.h"

enum
{
  MOST_WANTED = 10, /* neighbours taken out in a step */
  MOST_TAKEN = 64,  /* with those outside before */
  OPEN_LEAVES = 64  /* about so many neighbours are looked at in a step */
};

/* How much shorter a goal is than what has been reached, at least. */
#define LEAST_GAIN 0.0005

/* Of items outside, against waste, where they are to be kept in at the price of length. */
#define LOOSE_WEIGHT 8.0

typedef struct
{
  const RcNestTask   *task;
  const RcNestSearch *search;
  RcNestTree         *tree, *kept, *whole;
  RcNestRandom        random;
  RcNestSpot         *spots, *tried;
  RcNestScore         best;
  double              best_used; /* weighed */
  double              best_energy, energy, unit;
  double              spread; /* weight of the space that is spread */
  double              play;   /* by how much it may be missed on the way */
  int                *taken;
  int                 n_taken;
  int                *outside, *kept_outside; /* items without a place */
  int                 n_outside, n_kept_outside;
  gboolean            done;
} Improver;

/* The used length weighed by cost, what it exceeds the goal by once more, and the items outside: their waste, but for
 * what never changes. Plus a little for space that is spread over many lengths rather than kept in one. */
static double
compute_energy (const Improver *self)
{
  const RcNestTree *tree = self->tree;
  double            used = rc_nest_tree_get_used (tree), spread = 0, energy;

  energy = (used + MAX (used - self->tree->goal, 0)) * (double)self->task->bins->bins[0].width;
  for (int b = 0; b < tree->n_roots; b++)
    for (int c = tree->nodes[tree->n_leaves + b].first; c >= 0; c = tree->nodes[c].next)
      {
        double whole = (double)tree->nodes[c].h * (double)self->task->bins->bins[b].width;
        double area = (double)tree->nodes[c].area;

        spread += tree->weights[b] * (whole - area * (area / whole));
      }
  energy += self->spread * spread;
  for (int k = 0; k < self->n_outside; k++)
    energy += tree->outside_weight * (double)tree->nodes[self->outside[k]].area;
  return energy / self->unit;
}

static void
take (Improver *self, int item)
{
  if (self->n_taken == MOST_TAKEN)
    return;
  for (int k = 0; k < self->n_taken; k++)
    if (self->taken[k] == item)
      return;
  self->taken[self->n_taken++] = item;
}

static void
take_leaves (Improver *self, int v, int most)
{
  const RcNestTree *tree = self->tree;

  if (self->n_taken >= most)
    return;
  if (tree->nodes[v].kind == RC_NEST_LEAF)
    {
      take (self, v);
      return;
    }
  for (int c = tree->nodes[v].first; c >= 0; c = tree->nodes[c].next)
    take_leaves (self, c, most);
}

static int
choose_held (Improver *self)
{
  for (int tries = 0; tries < 50; tries++)
    {
      int item = (int)rc_nest_random_below (&self->random, (guint)self->tree->n_leaves);

      if (rc_nest_tree_holds (self->tree, item))
        return item;
    }
  return -1;
}

/* Everything under the ancestor of a chosen item that has at least `wanted` leaves below it, but no root. */
static void
take_neighbours (Improver *self, int wanted)
{
  const RcNestTree *tree = self->tree;
  int               v = choose_held (self);

  if (v < 0)
    return;
  while (tree->nodes[v].n_leaves < wanted && tree->nodes[tree->nodes[v].parent].parent >= 0)
    v = tree->nodes[v].parent;
  take_leaves (self, v, self->n_taken + MAX (wanted, 1) + 2);
}

static void
choose_taken (Improver *self)
{
  int wanted = 1 + (int)rc_nest_random_below (&self->random, MIN (MOST_WANTED, (guint)self->tree->n_leaves));

  self->n_taken = 0;
  switch (rc_nest_random_below (&self->random, 4))
    {
    case 0:
      take_neighbours (self, wanted);
      break;
    case 1:
      take_neighbours (self, (wanted + 1) / 2);
      take_neighbours (self, (wanted + 1) / 2);
      break;
    case 2:
      take_neighbours (self, (wanted + 2) / 3);
      take_neighbours (self, (wanted + 2) / 3);
      take_neighbours (self, (wanted + 2) / 3);
      break;
    default:
      for (int k = 0; k < wanted; k++)
        {
          int item = choose_held (self);
          if (item >= 0)
            take (self, item);
        }
    }
}

static double
get_key (Improver *self, int item, guint by)
{
  const RcNestItem *it = &self->task->items->items[item];

  switch (by)
    {
    case 0:
      return (double)it->w * (double)it->h;
    case 1:
      return (double)it->h;
    case 2:
      return (double)it->w;
    default:
      return rc_nest_random_unit (&self->random);
    }
}

static void
sort_taken (Improver *self)
{
  guint  by = rc_nest_random_below (&self->random, 4);
  double keys[2 * MOST_TAKEN];

  for (int i = 0; i < self->n_taken; i++)
    {
      int    item = self->taken[i], j = i;
      double key = get_key (self, item, by);

      for (; j > 0 && keys[j - 1] < key; j--)
        {
          keys[j] = keys[j - 1];
          self->taken[j] = self->taken[j - 1];
        }
      keys[j] = key;
      self->taken[j] = item;
    }
}

static void
put_back (Improver *self)
{
  RcNestFit fit = (RcNestFit)rc_nest_random_below (&self->random, RC_NEST_N_FITS);

  for (int k = 0; k < self->n_taken; k++)
    {
      RcNestPlace place = rc_nest_tree_find_place (self->tree, self->taken[k], fit, &self->random);

      if (place.node < 0 || !rc_nest_tree_put (self->tree, self->taken[k], &place))
        self->outside[self->n_outside++] = self->taken[k];
    }
}

/* Where the roll may still grow, the items outside are put on, so that a cutting near the goal counts as well. */
static gboolean
put_outside (Improver *self)
{
  RcNestTree *whole = self->whole;

  rc_nest_tree_copy (whole, self->tree);
  whole->goal = G_MAXDOUBLE;
  rc_nest_tree_begin_step (whole, 0, (guint)whole->n_leaves);
  for (int k = 0; k < self->n_outside; k++)
    {
      RcNestPlace place = rc_nest_tree_find_place (whole, self->outside[k], RC_NEST_FIT_AREA, &self->random);

      if ((place.node < 0 || !rc_nest_tree_put (whole, self->outside[k], &place)) && self->best.unplaced == 0)
        return FALSE;
    }
  return TRUE;
}

/* From now on a used length a little below that of the tree as it is, if the goal is not below that already. */
static void
set_goal (Improver *self)
{
  double used = rc_nest_tree_get_used (self->tree);

  if (self->search->is_strict && self->best.unplaced == 0)
    self->tree->goal = MIN (self->tree->goal, MAX (used - MAX ((double)self->search->grain, used * LEAST_GAIN), 1));
}

static void
keep_best (Improver *self)
{
  RcNestScore score;

  if (!put_outside (self))
    return;
  rc_nest_tree_to_spots (self->whole, self->tried);
  score = rc_nest_score (self->task, self->tried);
  if (rc_nest_score_compare (&score, &self->best) >= 0)
    return;
  self->best = score;
  self->best_used = rc_nest_tree_get_used (self->whole);
  memcpy (self->spots, self->tried, sizeof (RcNestSpot) * self->task->items->n);
  if (self->search->found != NULL)
    self->search->found (self->spots, &self->best, self->search->user_data);
  self->done = score.unplaced == 0 && score.used <= self->search->goal;
  if (self->n_outside == 0)
    {
      set_goal (self);
      self->energy = self->best_energy = compute_energy (self);
    }
}

/* Those outside are tried again with those taken out, as many as there is room for. */
static void
take_outside (Improver *self)
{
  while (self->n_outside > 0 && self->n_taken < 2 * MOST_TAKEN)
    self->taken[self->n_taken++] = self->outside[--self->n_outside];
}

static void
keep (Improver *self)
{
  rc_nest_tree_copy (self->kept, self->tree);
  self->n_kept_outside = self->n_outside;
  memcpy (self->kept_outside, self->outside, sizeof (int) * (gsize)self->n_outside);
}

static void
go_back (Improver *self)
{
  RcNestTree *tree = self->tree;
  int        *outside = self->outside;

  self->tree = self->kept;
  self->kept = tree;
  self->n_outside = self->n_kept_outside;
  self->outside = self->kept_outside;
  self->kept_outside = outside;
}

static void
step (Improver *self, double temperature)
{
  double energy;

  keep (self);
  rc_nest_tree_begin_step (self->tree, (guint32)rc_nest_random_next (&self->random), OPEN_LEAVES);
  choose_taken (self);
  for (int k = 0; k < self->n_taken; k++)
    rc_nest_tree_remove (self->tree, self->taken[k]);
  take_outside (self);
  sort_taken (self);
  put_back (self);
  energy = compute_energy (self);
  if (energy > self->energy - temperature * log (1 - rc_nest_random_unit (&self->random)))
    {
      go_back (self);
      return;
    }
  self->energy = energy;
  if (energy >= self->best_energy - 1e-9
      && (self->n_outside > 0 || rc_nest_tree_get_used (self->tree) >= self->best_used))
    return;
  self->best_energy = MIN (self->best_energy, energy);
  keep_best (self);
}

static void
load (Improver *self)
{
  g_autoptr (RcNestTree) fresh = rc_nest_tree_new (self->task);

  rc_nest_tree_load (fresh, self->spots);
  rc_nest_tree_copy (self->tree, fresh);
  self->n_outside = 0;
  for (int i = 0; i < fresh->n_leaves; i++)
    if (!rc_nest_tree_holds (fresh, i))
      self->outside[self->n_outside++] = i;
}

static void
run_cycle (Improver *self, guint64 steps)
{
  RcNestClock *clock = self->search->clock;
  double       hot = 0.3, cold = 0.01;

  for (guint64 s = 0; s < steps && !self->done && clock->steps_left > 0; s++)
    {
      double share = (double)s / (double)steps;

      if (s % 8 == 0 && rc_nest_clock_is_over (clock))
        return;
      if (rc_nest_clock_counts_steps (clock))
        clock->steps_left--;
      step (self, hot * pow (cold / hot, share));
    }
}

static void
choose_manner (Improver *self)
{
  static const double SPREADS[] = { 0, 0.02, 0.1 };

  self->spread = SPREADS[rc_nest_random_below (&self->random, G_N_ELEMENTS (SPREADS))];
  self->tree->outside_weight = self->search->is_strict && self->best.unplaced == 0 ? 1 : LOOSE_WEIGHT;
  self->best_used = self->best.unplaced == 0 ? rc_nest_tree_get_used (self->tree) : G_MAXDOUBLE;
  if (self->search->is_strict && self->best.unplaced == 0)
    self->tree->goal = rint (self->best_used * (double)self->search->aim / (double)self->best.used);
}

void
rc_nest_anneal (const RcNestTask *task, const RcNestSearch *search, guint64 steps, RcNestSpot *spots)
{
  guint     n = task->items->n;
  Improver *self = g_new0 (Improver, 1);

  *self = (Improver){ .task = task, .search = search, .spots = spots };
  self->tree = rc_nest_tree_new (task);
  self->kept = rc_nest_tree_new (task);
  self->whole = rc_nest_tree_new (task);
  self->tried = g_new (RcNestSpot, n + 1);
  self->taken = g_new (int, 2 * MOST_TAKEN);
  self->outside = g_new (int, n + 1);
  self->kept_outside = g_new (int, n + 1);
  self->best = rc_nest_score (task, spots);
  for (guint i = 0; i < n; i++)
    self->unit += (double)self->tree->nodes[i].area / n;
  rc_nest_random_seed (&self->random, search->seed);
  self->done = self->best.unplaced == 0 && self->best.used <= search->goal;
  load (self);
  choose_manner (self);
  self->energy = self->best_energy = compute_energy (self);
  run_cycle (self, steps);
  rc_nest_tree_free (self->tree);
  rc_nest_tree_free (self->kept);
  rc_nest_tree_free (self->whole);
  g_free (self->tried);
  g_free (self->taken);
  g_free (self->outside);
  g_free (self->kept_outside);
  g_free (self);
}
