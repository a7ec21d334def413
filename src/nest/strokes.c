#include "strokes.h"

typedef struct
{
  RcLength from_across, to_across, from_along, to_along;
} Region;

typedef struct
{
  GArray *strokes;
  guint   roll;
} Knife;

static int
compare_across (gconstpointer a, gconstpointer b)
{
  const RcNestPlacement *p = a, *q = b;

  if (p->across != q->across)
    return p->across < q->across ? -1 : 1;
  return p->along < q->along ? -1 : p->along > q->along;
}

static int
compare_along (gconstpointer a, gconstpointer b)
{
  const RcNestPlacement *p = a, *q = b;

  if (p->along != q->along)
    return p->along < q->along ? -1 : 1;
  return p->across < q->across ? -1 : p->across > q->across;
}

static void
cut (Knife *knife, const Region *region, int stage, gboolean along_roll, RcLength at)
{
  RcNestStroke stroke = { knife->roll, stage, along_roll, at, region->from_across, region->to_across };

  if (along_roll)
    {
      stroke.from = region->from_along;
      stroke.to = region->to_along;
    }
  g_array_append_val (knife->strokes, stroke);
}

static void
cut_region (Knife *knife, RcNestPlacement *list, guint n, Region region, int stage, gboolean along_roll, int idle)
{
  if (idle == 2 || n == 0)
    return;
  qsort (list, n, sizeof *list, along_roll ? compare_across : compare_along);
  for (guint first = 0; first < n;)
    {
      RcLength from = along_roll ? list[first].across : list[first].along, to = from;
      RcLength begin = along_roll ? region.from_across : region.from_along;
      RcLength end = along_roll ? region.to_across : region.to_along;
      guint    next = first;
      Region   part = region;

      for (; next < n && (next == first || (along_roll ? list[next].across : list[next].along) < to); next++)
        to = MAX (to, along_roll ? list[next].across + list[next].width : list[next].along + list[next].length);
      if (from > begin)
        {
          cut (knife, &region, stage, along_roll, from);
          *(along_roll ? &region.from_across : &region.from_along) = from;
        }
      if (to < end)
        cut (knife, &region, stage, along_roll, to);
      *(along_roll ? &part.from_across : &part.from_along) = from;
      *(along_roll ? &part.to_across : &part.to_along) = to;
      cut_region (knife, list + first, next - first, part, stage + 1, !along_roll,
                  first == 0 && next == n && from == begin && to == end ? idle + 1 : 0);
      *(along_roll ? &region.from_across : &region.from_along) = to;
      first = next;
    }
}

static RcLength
get_width (const RcNestProblem *problem, const RcNestUse *use)
{
  const RcNestRoll *roll = problem->rolls->len > 0 ? problem->rolls->pdata[use->source] : NULL;

  return roll != NULL && roll->width > 0 ? MIN (roll->width, problem->roll_width) : problem->roll_width;
}

void
rc_nest_strokes_fill (const RcNestProblem *problem, RcNestAnswer *answer)
{
  g_autofree RcNestPlacement *list = g_new (RcNestPlacement, answer->placements->len + 1);

  g_array_set_size (answer->strokes, 0);
  for (guint r = 0; r < answer->rolls->len; r++)
    {
      const RcNestUse *use = answer->rolls->pdata[r];
      Knife            knife = { answer->strokes, r };
      Region           whole = { 0, get_width (problem, use), 0, use->length };
      guint            n = 0;

      for (guint p = 0; p < answer->placements->len; p++)
        {
          const RcNestPlacement *placement = &g_array_index (answer->placements, RcNestPlacement, p);
          if (placement->roll == r)
            list[n++] = *placement;
        }
      cut_region (&knife, list, n, whole, 1, FALSE, 0);
    }
}

/* Whether a stroke runs along the whole of one of a placement's edges. */
static gboolean
frees_edge (const RcNestStroke *stroke, const RcNestPlacement *placement)
{
  RcLength low = placement->along, high = low + placement->length, begin = placement->across,
           end = begin + placement->width;

  if (stroke->along_roll)
    return (stroke->at == begin || stroke->at == end) && stroke->from <= low && stroke->to >= high;
  return (stroke->at == low || stroke->at == high) && stroke->from <= begin && stroke->to >= end;
}

guint *
rc_nest_answer_list_freeing (const RcNestAnswer *answer)
{
  guint *freed_by = g_new (guint, answer->placements->len + 1);

  for (guint p = 0; p < answer->placements->len; p++)
    {
      const RcNestPlacement *placement = &g_array_index (answer->placements, RcNestPlacement, p);

      freed_by[p] = G_MAXUINT;
      for (guint s = answer->strokes->len; s-- > 0 && freed_by[p] == G_MAXUINT;)
        {
          const RcNestStroke *stroke = &g_array_index (answer->strokes, RcNestStroke, s);

          if (stroke->roll == placement->roll && frees_edge (stroke, placement))
            freed_by[p] = s;
        }
    }
  return freed_by;
}
