#include "layout.h"

#include "leftover.h"

/* A single match of all items with one phase, on rolls that all start at one place, may as well begin where the rolls
 * do: its first item then lies at the start of its roll, and no other beginning lets it lie earlier. Such a match
 * becomes a phase counted from the roll, which every search handles. */
static void
settle_only_match (RcNestItems *items, const RcNestBins *bins)
{
  if (!items->is_tied || bins->n == 0)
    return;
  for (guint i = 0; i < items->n; i++)
    {
      const RcNestItem *item = &items->items[i], *first = &items->items[0];

      if (item->match != 0 || item->repeat != first->repeat || item->phase != first->phase || item->across_repeat > 0
          || item->is_along_pinned || item->is_across_pinned)
        return;
    }
  for (guint b = 1; b < bins->n; b++)
    if (bins->bins[b].start != bins->bins[0].start)
      return;
  for (guint i = 0; i < items->n; i++)
    {
      items->items[i].match = -1;
      items->items[i].phase = bins->bins[0].start % items->items[i].repeat;
    }
  items->is_tied = FALSE;
}

static RcNestTask *
task_new (const RcNestProblem *problem, RcNestBins *bins)
{
  RcNestTask *self = g_new0 (RcNestTask, 1);

  self->problem = problem;
  self->items = rc_nest_items_new (problem);
  self->bins = bins;
  settle_only_match (self->items, bins);
  self->lot_of_group = g_new (int, self->items->groups->len + 1);
  for (guint g = 0; g < self->items->groups->len; g++)
    self->lot_of_group[g] = self->bins->n_lots == 1 ? 0 : -1;
  return self;
}

RcNestTask *
rc_nest_task_new (const RcNestProblem *problem, guint n_bought)
{
  return task_new (problem, rc_nest_bins_new (problem, n_bought));
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

/* Whether bin b is another stretch of the roll of the bin before it. */
static gboolean
continues_roll (const RcNestBins *bins, guint b)
{
  return b > 0 && bins->bins[b].source == bins->bins[b - 1].source && bins->bins[b].copy == bins->bins[b - 1].copy;
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
    if (continues_roll (bins, b))
      {
        used[b - 1] = MAX (used[b - 1], used[b]);
        used[b] = 0;
      }
}

static void
find_largest (const RcNestRest *rest, gpointer user_data)
{
  gint64 *largest = user_data;

  *largest = MAX (*largest, rest->width * rest->length);
}

/* All but balance and cross cuts. */
static RcNestScore
score_used (const RcNestTask *task, const RcNestSpot *spots, RcLength *used)
{
  const RcNestBins *bins = task->bins;
  RcNestScore       score = { 0 };

  sum_used (task, spots, used);
  for (guint i = 0; i < task->items->n; i++)
    score.unplaced += spots[i].bin < 0;
  for (guint b = 0; b < bins->n; b++)
    if (used[b] > 0)
      {
        const RcNestBin *bin = &bins->bins[b];

        score.cost += bin->cost_per_m * rc_nest_bin_compute_taken (bin, used[b], task->problem);
        score.used += used[b];
      }
  return score;
}

RcNestScore
rc_nest_score_cost (const RcNestTask *task, const RcNestSpot *spots)
{
  g_autofree RcLength *used = g_new (RcLength, task->bins->n + 1);

  return score_used (task, spots, used);
}

RcNestScore
rc_nest_score (const RcNestTask *task, const RcNestSpot *spots)
{
  g_autofree RcLength      *used = g_new (RcLength, task->bins->n + 1);
  g_autofree RcNestSegment *segments = g_new (RcNestSegment, task->items->n + 1);
  RcNestScore               score = score_used (task, spots, used);

  score.cross_cuts = rc_nest_list_segments (task, spots, segments);
  rc_nest_each_leftover (task, segments, score.cross_cuts, used, find_largest, &score.balance);
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
  if (a->cross_cuts != b->cross_cuts)
    return a->cross_cuts < b->cross_cuts ? -1 : 1;
  return a->used < b->used ? -1 : a->used > b->used;
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

typedef struct
{
  const guint  *roll_of_bin; /* G_MAXUINT: not used */
  RcNestAnswer *answer;
} Leftovers;

static void
add_leftover (const RcNestRest *rest, gpointer user_data)
{
  Leftovers     *self = user_data;
  RcNestLeftover leftover = { self->roll_of_bin[rest->bin], rest->across, rest->along, rest->width, rest->length };

  if (leftover.roll != G_MAXUINT)
    g_array_append_val (self->answer->leftovers, leftover);
}

static int
compare_leftovers (gconstpointer a, gconstpointer b)
{
  const RcNestLeftover *p = a, *q = b;

  if (p->roll != q->roll)
    return p->roll < q->roll ? -1 : 1;
  if (p->along != q->along)
    return p->along < q->along ? -1 : 1;
  return p->across < q->across ? -1 : p->across > q->across;
}

static void
list_leftovers (const RcNestTask *task, const RcNestSpot *spots, const RcLength *used, const guint *roll_of_bin,
                RcNestAnswer *answer)
{
  g_autofree RcNestSegment *segments = g_new (RcNestSegment, task->items->n + 1);
  guint                     n = rc_nest_list_segments (task, spots, segments);
  Leftovers                 leftovers = { roll_of_bin, answer };

  g_array_set_size (answer->leftovers, 0);
  rc_nest_each_leftover (task, segments, n, used, add_leftover, &leftovers);
  g_array_sort (answer->leftovers, compare_leftovers);
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
            use->length = rc_nest_bin_compute_taken (bin, used[b], task->problem);
          answer->used_length += used[b];
          g_ptr_array_add (answer->rolls, use);
        }
      if (used[b] > 0)
        roll_of_bin[b] = answer->rolls->len - 1;
      else
        roll_of_bin[b] = continues_roll (bins, b) ? roll_of_bin[b - 1] : G_MAXUINT;
    }
  for (guint i = 0; i < task->items->n; i++)
    {
      const RcNestItem *item = &task->items->items[i];
      RcNestPlacement   placement
          = { item->cut, item->copy, roll_of_bin[spots[i].bin], spots[i].across, spots[i].along, item->w, item->h };
      g_array_append_val (answer->placements, placement);
    }
  g_array_sort (answer->placements, compare_placements);
  list_leftovers (task, spots, used, roll_of_bin, answer);
}
