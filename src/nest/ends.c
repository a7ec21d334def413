#include "ends.h"

#include "leftover.h"

static gboolean
have_one_pattern (const RcNestItems *items)
{
  for (guint i = 0; i < items->n; i++)
    if (items->items[i].repeat == 0 || items->items[i].repeat != items->items[0].repeat
        || items->items[i].phase != items->items[0].phase)
      return FALSE;
  return items->n > 0 && !items->is_tied;
}

/* What is lost behind a length until the pattern comes again. */
static RcLength
compute_gap (const RcNestSegment *segment, RcLength repeat)
{
  return rc_length_round_up (segment->to - segment->from, repeat) - (segment->to - segment->from);
}

/* Where the lengths segments[0 .. n-1] of one bin go; FALSE: they are as well where they are. */
static gboolean
move_lengths (const RcNestSegment *segments, guint n, RcLength repeat, RcLength *moved)
{
  RcLength along = segments[0].from;
  guint    last = n - 1;

  for (guint s = 0; s < n; s++)
    if (compute_gap (&segments[s], repeat) > compute_gap (&segments[last], repeat))
      last = s;
  for (guint s = 0; s < n; s++)
    if (s != last)
      {
        moved[s] = along;
        along += rc_length_round_up (segments[s].to - segments[s].from, repeat);
      }
  moved[last] = along;
  return along + segments[last].to - segments[last].from < segments[n - 1].to;
}

static guint
find_segment (const RcNestSegment *segments, guint n, const RcNestSpot *spot)
{
  guint lo = 0, hi = n;

  while (hi - lo > 1)
    {
      guint mid = (lo + hi) / 2;

      if (segments[mid].bin < spot->bin || (segments[mid].bin == spot->bin && segments[mid].from <= spot->along))
        lo = mid;
      else
        hi = mid;
    }
  return lo;
}

static gboolean
is_better (const RcNestTask *task, const RcNestSpot *tried, const RcNestSpot *spots)
{
  RcNestScore score = rc_nest_score (task, tried), before = rc_nest_score (task, spots);

  return rc_nest_score_compare (&score, &before) < 0;
}

gboolean
rc_nest_shorten_ends (const RcNestTask *task, RcNestSpot *spots)
{
  const RcNestItems        *items = task->items;
  g_autofree RcNestSegment *segments = g_new (RcNestSegment, items->n + 1);
  g_autofree RcLength      *moved = g_new (RcLength, items->n + 1);
  g_autofree RcNestSpot    *tried = NULL;
  gboolean                  better = FALSE;
  guint                     n;

  if (!have_one_pattern (items))
    return FALSE;
  n = rc_nest_list_segments (task, spots, segments);
  for (guint first = 0, next; first < n; first = next)
    {
      for (next = first; next < n && segments[next].bin == segments[first].bin; next++)
        moved[next] = segments[next].from;
      if (!move_lengths (segments + first, next - first, items->items[0].repeat, moved + first))
        for (guint s = first; s < next; s++)
          moved[s] = segments[s].from;
      else
        better = TRUE;
    }
  if (!better)
    return FALSE;
  tried = g_memdup2 (spots, sizeof *spots * items->n);
  for (guint i = 0; i < items->n; i++)
    if (spots[i].bin >= 0)
      {
        guint s = find_segment (segments, n, &spots[i]);

        tried[i].along += moved[s] - segments[s].from;
      }
  if (!is_better (task, tried, spots))
    return FALSE;
  memcpy (spots, tried, sizeof *spots * items->n);
  return TRUE;
}
