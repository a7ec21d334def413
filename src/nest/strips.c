#include "strips.h"

#include "random.h"

enum
{
  LEAST_PART = 12, /* items */
  MOST_PART = 34,
  PART_STEPS = 600 /* for each item of a part */
};

/* A length of a roll that straight cuts across part from the rest. */
typedef struct
{
  int      bin;
  RcLength from, to;
  guint    first, n; /* in order[] */
} Strip;

typedef struct
{
  const RcNestTask   *task;
  const RcNestSearch *search;
  RcNestRandom        random;
  RcNestSpot         *spots;
  guint              *order; /* items by bin and along */
  GArray             *strips;
  guint              *part; /* items of the part at hand */
  guint               n_part;
} Strips;

static int
compare_places (gconstpointer a, gconstpointer b, gpointer user_data)
{
  const RcNestSpot *spots = user_data;
  const RcNestSpot *p = &spots[*(const guint *)a], *q = &spots[*(const guint *)b];

  if (p->bin != q->bin)
    return p->bin < q->bin ? -1 : 1;
  if (p->along != q->along)
    return p->along < q->along ? -1 : 1;
  return p->across < q->across ? -1 : p->across > q->across;
}

static void
list_strips (Strips *self)
{
  const RcNestItem *items = self->task->items->items;
  guint             n = self->task->items->n;
  Strip             strip = { -1, 0, 0, 0, 0 };

  for (guint i = 0; i < n; i++)
    self->order[i] = i;
  g_qsort_with_data (self->order, (gint)n, sizeof (guint), compare_places, self->spots);
  g_array_set_size (self->strips, 0);
  for (guint k = 0; k < n; k++)
    {
      const RcNestSpot *spot = &self->spots[self->order[k]];

      if (strip.n > 0 && (spot->bin != strip.bin || spot->along >= strip.to))
        {
          g_array_append_val (self->strips, strip);
          strip.n = 0;
        }
      if (strip.n == 0)
        strip = (Strip){ spot->bin, spot->along, 0, k, 0 };
      strip.to = MAX (strip.to, spot->along + items[self->order[k]].h);
      strip.n++;
    }
  if (strip.n > 0)
    g_array_append_val (self->strips, strip);
}

/* Moves the items of a strip along the roll. */
static void
shift (Strips *self, const Strip *strip, RcLength by)
{
  for (guint k = 0; k < strip->n; k++)
    self->spots[self->order[strip->first + k]].along += by;
}

/* Strips of one roll change places so that those chosen come last, and closes all gaps. Returns where they begin. */
static RcLength
gather (Strips *self, int bin, const gboolean *chosen)
{
  RcLength along = self->task->bins->bins[bin].start, begin = 0;

  for (int last = 0; last < 2; last++)
    {
      begin = along;
      for (guint s = 0; s < self->strips->len; s++)
        {
          Strip *strip = &g_array_index (self->strips, Strip, s);

          if (strip->bin != bin || chosen[s] != last)
            continue;
          shift (self, strip, along - strip->from);
          along += strip->to - strip->from;
        }
    }
  return begin;
}

/* Strips of one bin at random, until there are enough items. */
static int
choose_part (Strips *self, gboolean *chosen)
{
  guint wanted = LEAST_PART + rc_nest_random_below (&self->random, MOST_PART - LEAST_PART);
  int   bin = g_array_index (self->strips, Strip, rc_nest_random_below (&self->random, self->strips->len)).bin;

  memset (chosen, 0, sizeof (gboolean) * self->strips->len);
  self->n_part = 0;
  for (guint tries = 0; tries < 40 && self->n_part < wanted; tries++)
    {
      guint        s = rc_nest_random_below (&self->random, self->strips->len);
      const Strip *strip = &g_array_index (self->strips, Strip, s);

      if (strip->bin != bin || chosen[s] || self->n_part + strip->n > MOST_PART + 8)
        continue;
      chosen[s] = TRUE;
      for (guint k = 0; k < strip->n; k++)
        self->part[self->n_part++] = self->order[strip->first + k];
    }
  return bin;
}

static RcNestTask *
make_part_task (const Strips *self, int bin)
{
  RcNestTask        *task = g_new0 (RcNestTask, 1);
  const RcNestItems *all = self->task->items;
  const RcNestBin   *own = &self->task->bins->bins[bin];

  task->problem = self->task->problem;
  task->items = rc_nest_items_new_part (all, self->part, self->n_part);
  task->bins = rc_nest_bins_new_endless (own->width);
  task->bins->bins[0].source = own->source;
  task->bins->bins[0].lot = own->lot;
  task->lot_of_group = g_memdup2 (self->task->lot_of_group, sizeof (int) * (all->groups->len + 1));
  return task;
}

static void
improve_part (Strips *self, int bin, RcLength begin)
{
  g_autoptr (RcNestTask) part = make_part_task (self, bin);
  g_autofree RcNestSpot *spots = g_new (RcNestSpot, self->n_part + 1);
  RcNestSearch           search = { self->search->clock, rc_nest_random_next (&self->random), 0, NULL, NULL };

  for (guint k = 0; k < self->n_part; k++)
    {
      spots[k] = self->spots[self->part[k]];
      spots[k].bin = 0;
      spots[k].along -= begin;
      search.goal += part->items->items[k].w * part->items->items[k].h;
    }
  search.goal = (search.goal + part->bins->bins[0].width - 1) / part->bins->bins[0].width;
  rc_nest_anneal (part, &search, self->n_part * PART_STEPS, spots);
  for (guint k = 0; k < self->n_part; k++)
    self->spots[self->part[k]] = (RcNestSpot){ bin, spots[k].across, spots[k].along + begin };
}

void
rc_nest_improve_strips (const RcNestTask *task, const RcNestSearch *search, guint64 steps, RcNestSpot *spots)
{
  guint                  n = task->items->n;
  g_autofree guint      *order = g_new (guint, n + 1);
  g_autofree guint      *part = g_new (guint, n + 1);
  g_autofree gboolean   *chosen = g_new (gboolean, n + 1);
  g_autofree RcNestSpot *tried = g_memdup2 (spots, sizeof *spots * (n + 1));
  RcNestScore            best = rc_nest_score (task, spots), score;
  Strips self = { task, search, { 0, 0 }, tried, order, g_array_new (FALSE, FALSE, sizeof (Strip)), part, 0 };

  rc_nest_random_seed (&self.random, search->seed);
  while (steps > 0 && n > MOST_PART && !task->items->has_repeats && best.unplaced == 0
         && !rc_nest_clock_is_over (search->clock) && best.used > search->goal)
    {
      int bin;

      list_strips (&self);
      bin = choose_part (&self, chosen);
      steps -= MIN (steps, MAX (self.n_part, LEAST_PART) * PART_STEPS);
      if (self.n_part < 2)
        continue;
      improve_part (&self, bin, gather (&self, bin, chosen));
      score = rc_nest_score (task, tried);
      if (rc_nest_score_compare (&score, &best) >= 0)
        continue;
      best = score;
      memcpy (spots, tried, sizeof *spots * n);
      if (search->found != NULL)
        search->found (spots, &best, search->user_data);
    }
  g_array_unref (self.strips);
}
