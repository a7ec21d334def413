#include "anneal.h"

#include <math.h>

#include "tree.h"

enum
{
  MOST_TAKEN = 16,
  OPEN_LEAVES = 64 /* about so many neighbours are looked at in a step */
};

typedef struct
{
  const RcNestTask   *task;
  const RcNestSearch *search;
  RcNestTree         *tree, *kept;
  RcNestRandom        random;
  RcNestSpot         *spots, *tried;
  RcNestScore         best;
  double              best_energy, energy, unit;
  double              spread; /* weight of the space that is spread */
  int                *taken;
  int                 n_taken;
  int                *outside; /* items without a place */
  int                 n_outside;
  gboolean            done;
} Improver;

/* Used length weighed by cost, plus a little for space that is spread over many lengths rather than kept in one. */
static double
compute_energy (const Improver *self)
{
  const RcNestTree *tree = self->tree;
  double            energy = 0;

  for (int b = 0; b < tree->n_roots; b++)
    {
      const RcNestNode *root = &tree->nodes[tree->n_leaves + b];
      double            width = (double)self->task->bins->bins[b].width, spread = 0;

      for (int c = root->first; c >= 0; c = tree->nodes[c].next)
        {
          double whole = (double)tree->nodes[c].h * width, area = (double)tree->nodes[c].area;

          spread += whole - area * (area / whole);
        }
      energy += tree->weights[b] * ((double)root->h * width + self->spread * spread);
    }
  for (int k = 0; k < self->n_outside; k++)
    energy += 8.0 * (double)tree->nodes[self->outside[k]].area;
  return energy / self->unit;
}

static void
take (Improver *self, int item)
{
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
  int wanted = 1 + (int)rc_nest_random_below (&self->random, MIN (10, (guint)self->tree->n_leaves));

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
  double keys[4 * MOST_TAKEN];
  int    n = self->n_taken;

  if (n > (int)G_N_ELEMENTS (keys))
    return;
  for (int i = 0; i < n; i++)
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

  self->n_outside = 0;
  for (int k = 0; k < self->n_taken; k++)
    {
      RcNestPlace place = rc_nest_tree_find_place (self->tree, self->taken[k], fit, &self->random);

      if (place.node < 0 || !rc_nest_tree_put (self->tree, self->taken[k], &place))
        self->outside[self->n_outside++] = self->taken[k];
    }
}

static void
keep_best (Improver *self)
{
  RcNestScore score;

  rc_nest_tree_to_spots (self->tree, self->tried);
  score = rc_nest_score (self->task, self->tried);
  if (rc_nest_score_compare (&score, &self->best) >= 0)
    return;
  self->best = score;
  memcpy (self->spots, self->tried, sizeof (RcNestSpot) * self->task->items->n);
  if (self->search->found != NULL)
    self->search->found (self->spots, &self->best, self->search->user_data);
  self->done = score.unplaced == 0 && score.used <= self->search->goal;
}

static void
step (Improver *self, double temperature)
{
  double energy;
  int    n_outside = self->n_outside;

  rc_nest_tree_copy (self->kept, self->tree);
  rc_nest_tree_begin_step (self->tree, (guint32)rc_nest_random_next (&self->random), OPEN_LEAVES);
  choose_taken (self);
  for (int k = 0; k < self->n_taken; k++)
    rc_nest_tree_remove (self->tree, self->taken[k]);
  for (int k = 0; k < n_outside && self->n_taken < 4 * MOST_TAKEN; k++)
    self->taken[self->n_taken++] = self->outside[k];
  sort_taken (self);
  put_back (self);
  energy = compute_energy (self);
  if (energy > self->energy - temperature * log (1 - rc_nest_random_unit (&self->random)))
    {
      rc_nest_tree_copy (self->tree, self->kept);
      self->n_outside = 0;
      for (int i = 0; i < self->tree->n_leaves && n_outside > 0; i++)
        if (!rc_nest_tree_holds (self->tree, i))
          self->outside[self->n_outside++] = i;
      return;
    }
  self->energy = energy;
  if (energy < self->best_energy - 1e-9)
    {
      self->best_energy = energy;
      keep_best (self);
    }
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
  self->energy = self->best_energy = compute_energy (self);
}

static void
run_cycle (Improver *self, guint64 steps)
{
  RcNestClock *clock = self->search->clock;
  double       hot = 0.2, cold = 0.003;

  for (guint64 s = 0; s < steps && !self->done && clock->steps_left > 0; s++)
    {
      double share = (double)s / (double)steps;

      if (s % 8 == 0 && rc_nest_clock_is_over (clock))
        return;
      if (clock->steps_left != G_MAXUINT64)
        clock->steps_left--;
      step (self, hot * pow (cold / hot, share));
    }
}

void
rc_nest_anneal (const RcNestTask *task, const RcNestSearch *search, guint64 steps, RcNestSpot *spots)
{
  guint     n = task->items->n;
  Improver *self = g_new0 (Improver, 1);

  *self = (Improver){ .task = task, .search = search, .spots = spots };
  self->tree = rc_nest_tree_new (task);
  self->kept = rc_nest_tree_new (task);
  self->tried = g_new (RcNestSpot, n + 1);
  self->taken = g_new (int, n + 4 * MOST_TAKEN + 1);
  self->outside = g_new (int, n + 1);
  self->best = rc_nest_score (task, spots);
  for (guint i = 0; i < n; i++)
    self->unit += (double)self->tree->nodes[i].area / n;
  rc_nest_random_seed (&self->random, search->seed);
  self->spread = rc_nest_random_below (&self->random, 2) == 0 ? 0.1 : 0.4;
  self->done = self->best.unplaced == 0 && self->best.used <= search->goal;
  load (self);
  run_cycle (self, steps);
  rc_nest_tree_free (self->tree);
  rc_nest_tree_free (self->kept);
  g_free (self->tried);
  g_free (self->taken);
  g_free (self->outside);
  g_free (self);
}
