#include "leftover.h"

static int
compare_segments (gconstpointer a, gconstpointer b)
{
  const RcNestSegment *p = a, *q = b;

  if (p->bin != q->bin)
    return p->bin < q->bin ? -1 : 1;
  return p->from < q->from ? -1 : p->from > q->from;
}

guint
rc_nest_list_segments (const RcNestTask *task, const RcNestSpot *spots, RcNestSegment *segments)
{
  guint n = 0, merged = 0;

  for (guint i = 0; i < task->items->n; i++)
    {
      const RcNestItem *item = &task->items->items[i];
      const RcNestSpot *spot = &spots[i];

      if (spot->bin >= 0)
        segments[n++]
            = (RcNestSegment){ spot->bin, spot->along, spot->along + item->h, spot->across, spot->across + item->w };
    }
  qsort (segments, n, sizeof *segments, compare_segments);
  for (guint i = 0; i < n; i++)
    {
      RcNestSegment *last = &segments[merged - 1];

      if (merged == 0 || last->bin != segments[i].bin || segments[i].from >= last->to)
        {
          segments[merged++] = segments[i];
          continue;
        }
      last->to = MAX (last->to, segments[i].to);
      last->left = MIN (last->left, segments[i].left);
      last->right = MAX (last->right, segments[i].right);
    }
  return merged;
}

typedef struct
{
  const RcNestProblem *problem;
  void (*func) (const RcNestRest *rest, gpointer user_data);
  gpointer user_data;
} Walk;

static void
visit (const Walk *walk, int bin, RcLength across, RcLength along, RcLength width, RcLength length)
{
  RcNestRest rest = { bin, across, along, width, length };

  if (width > 0 && length > 0 && width >= walk->problem->least_balance_width && length >= walk->problem->least_balance)
    walk->func (&rest, walk->user_data);
}

/* Where a bin ends: of a roll that is bought to measure so much is bought. */
static RcLength
compute_end (const RcNestTask *task, const RcNestBin *bin, RcLength used)
{
  if (bin->roll_length > 0)
    return bin->end;
  return used > 0 ? rc_nest_bin_compute_taken (bin, used, task->problem) - bin->trim_end : bin->start;
}

void
rc_nest_each_leftover (const RcNestTask *task, const RcNestSegment *segments, guint n, const RcLength *used,
                       void (*func) (const RcNestRest *rest, gpointer user_data), gpointer user_data)
{
  Walk  walk = { task->problem, func, user_data };
  guint s = 0;

  for (int b = 0; b < (int)task->bins->n; b++)
    {
      const RcNestBin *bin = &task->bins->bins[b];
      RcLength         reach = bin->start;

      for (; s < n && segments[s].bin == b; s++)
        {
          const RcNestSegment *segment = &segments[s];
          RcLength             length = segment->to - segment->from;

          visit (&walk, b, 0, reach, bin->width, segment->from - reach);
          visit (&walk, b, 0, segment->from, segment->left, length);
          visit (&walk, b, segment->right, segment->from, bin->width - segment->right, length);
          reach = segment->to;
        }
      visit (&walk, b, 0, reach, bin->width, compute_end (task, bin, used[b]) - reach);
    }
}
