#include "layout.h"

static RcNestTask *
task_new (const RcNestProblem *problem, RcNestBins *bins)
{
  RcNestTask *self = g_new0 (RcNestTask, 1);

  self->problem = problem;
  self->items = rc_nest_items_new (problem);
  self->bins = bins;
  self->lot_of_group = g_new (int, self->items->groups->len + 1);
  for (guint g = 0; g < self->items->groups->len; g++)
    self->lot_of_group[g] = self->bins->n_lots == 1 ? 0 : -1;
  return self;
}

RcNestTask *
rc_nest_task_new (const RcNestProblem *problem)
{
  return task_new (problem, rc_nest_bins_new (problem));
}

RcNestTask *
rc_nest_task_new_endless (const RcNestProblem *problem)
{
  return task_new (problem, rc_nest_bins_new_endless (problem->roll_width));
}

void
rc_nest_task_free (RcNestTask *self)
{
  if (self == NULL)
    return;
  rc_nest_items_free (self->items);
  rc_nest_bins_free (self->bins);
  g_free (self->lot_of_group);
  g_free (self);
}

/* The lengths used of each roll, at the roll's first bin; 0 elsewhere. */
static void
sum_used (const RcNestTask *task, const RcNestSpot *spots, RcLength *used)
{
  const RcNestBins *bins = task->bins;

  memset (used, 0, sizeof (RcLength) * bins->n);
  for (guint i = 0; i < task->items->n; i++)
    if (spots[i].bin >= 0)
      {
        RcLength end = spots[i].along + task->items->items[i].h;
        used[spots[i].bin] = MAX (used[spots[i].bin], end);
      }
  for (guint b = bins->n; b-- > 1;)
    if (bins->bins[b].source == bins->bins[b - 1].source && bins->bins[b].copy == bins->bins[b - 1].copy)
      {
        used[b - 1] = MAX (used[b - 1], used[b]);
        used[b] = 0;
      }
}

typedef struct
{
  int      bin;
  RcLength from, to;
} Stretch;

static int
compare_stretches (gconstpointer a, gconstpointer b)
{
  const Stretch *p = a, *q = b;

  if (p->bin != q->bin)
    return p->bin < q->bin ? -1 : 1;
  return p->from < q->from ? -1 : p->from > q->from;
}

static guint
count_cross_cuts (const RcNestTask *task, const RcNestSpot *spots)
{
  guint               n = task->items->n, cuts = 0;
  g_autofree Stretch *list = g_new (Stretch, n + 1);
  RcLength            reach = -1;
  int                 bin = -1;

  for (guint i = 0; i < n; i++)
    list[i] = (Stretch){ spots[i].bin, spots[i].along, spots[i].along + task->items->items[i].h };
  qsort (list, n, sizeof *list, compare_stretches);
  for (guint i = 0; i < n; i++)
    {
      if (list[i].bin != bin || list[i].from >= reach)
        cuts++;
      reach = list[i].bin != bin ? list[i].to : MAX (reach, list[i].to);
      bin = list[i].bin;
    }
  return cuts;
}

static gboolean
starts_roll (const RcNestBins *bins, guint b)
{
  return b == 0 || bins->bins[b].source != bins->bins[b - 1].source || bins->bins[b].copy != bins->bins[b - 1].copy;
}

RcNestScore
rc_nest_score (const RcNestTask *task, const RcNestSpot *spots)
{
  const RcNestBins    *bins = task->bins;
  RcNestScore          score = { 0 };
  g_autofree RcLength *used = g_new (RcLength, bins->n + 1);

  sum_used (task, spots, used);
  for (guint i = 0; i < task->items->n; i++)
    score.unplaced += spots[i].bin < 0;
  for (guint b = 0; b < bins->n; b++)
    if (starts_roll (bins, b))
      {
        const RcNestBin *bin = &bins->bins[b];
        RcLength         taken = used[b], whole = bin->roll_length;

        if (bin->roll_length == 0)
          taken = whole = rc_length_round_up (used[b], task->problem->buy_step);
        score.cost += bin->cost_per_m * taken;
        score.used += used[b];
        if (whole - used[b] >= task->problem->least_balance)
          score.balance = MAX (score.balance, whole - used[b]);
      }
  score.cross_cuts = count_cross_cuts (task, spots);
  return score;
}

int
rc_nest_score_compare (const RcNestScore *a, const RcNestScore *b)
{
  if (a->unplaced != b->unplaced)
    return a->unplaced < b->unplaced ? -1 : 1;
  if (a->cost != b->cost)
    return a->cost < b->cost ? -1 : 1;
  if (a->balance != b->balance)
    return a->balance > b->balance ? -1 : 1;
  if (a->used != b->used)
    return a->used < b->used ? -1 : 1;
  return a->cross_cuts < b->cross_cuts ? -1 : a->cross_cuts > b->cross_cuts;
}

static int
compare_placements (gconstpointer a, gconstpointer b)
{
  const RcNestPlacement *p = a, *q = b;

  if (p->roll != q->roll)
    return p->roll < q->roll ? -1 : 1;
  if (p->along != q->along)
    return p->along < q->along ? -1 : 1;
  return p->across < q->across ? -1 : p->across > q->across;
}

void
rc_nest_layout_to_answer (const RcNestTask *task, const RcNestSpot *spots, RcNestAnswer *answer)
{
  const RcNestBins    *bins = task->bins;
  g_autofree RcLength *used = g_new (RcLength, bins->n + 1);
  g_autofree guint    *roll_of_bin = g_new0 (guint, bins->n + 1);

  sum_used (task, spots, used);
  answer->used_length = 0;
  g_array_set_size (answer->placements, 0);
  g_ptr_array_set_size (answer->rolls, 0);
  for (guint b = 0; b < bins->n; b++)
    {
      const RcNestBin *bin = &bins->bins[b];

      if (used[b] > 0)
        {
          RcNestUse *use = g_new0 (RcNestUse, 1);

          *use = (RcNestUse){ bin->source, bin->copy, used[b], bin->roll_length };
          if (bin->roll_length == 0)
            use->length = rc_length_round_up (used[b], task->problem->buy_step);
          answer->used_length += used[b];
          g_ptr_array_add (answer->rolls, use);
        }
      roll_of_bin[b] = answer->rolls->len - 1;
    }
  for (guint i = 0; i < task->items->n; i++)
    {
      const RcNestItem *item = &task->items->items[i];
      RcNestPlacement   placement
          = { item->cut, item->copy, roll_of_bin[spots[i].bin], spots[i].across, spots[i].along, item->w, item->h };
      g_array_append_val (answer->placements, placement);
    }
  g_array_sort (answer->placements, compare_placements);
}
