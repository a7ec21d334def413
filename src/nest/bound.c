#include "bound.h"

#include "level-lp.h"
#include "slice-lp.h"
#include "wide.h"

enum
{
  MOST_KINDS = 120 /* rows of the linear program */
};

typedef __int128 Wide;

typedef struct
{
  RcLength w, h; /* h summed over all items of width w */
} Slice;

static RcLength
divide_up (Wide dividend, Wide divisor)
{
  return (RcLength)((dividend + divisor - 1) / divisor);
}

static int
compare_slices (gconstpointer a, gconstpointer b)
{
  const Slice *p = a, *q = b;
  return p->w < q->w ? -1 : p->w > q->w;
}

static void
sort_slices (Slice *slices, guint n)
{
  if (n > 40)
    {
      qsort (slices, n, sizeof *slices, compare_slices);
      return;
    }
  for (guint i = 1; i < n; i++)
    {
      Slice moved = slices[i];
      guint j = i;

      for (; j > 0 && slices[j - 1].w > moved.w; j--)
        slices[j] = slices[j - 1];
      slices[j] = moved;
    }
}

static guint
merge_widths (const RcLength *w, const RcLength *h, guint n, Slice *slices)
{
  guint m = 0;

  for (guint i = 0; i < n; i++)
    slices[i] = (Slice){ w[i], h[i] };
  sort_slices (slices, n);
  for (guint i = 0; i < n; i++)
    if (m > 0 && slices[m - 1].w == slices[i].w)
      slices[m - 1].h += slices[i].h;
    else
      slices[m++] = slices[i];
  return m;
}

static RcLength
bound_by_threshold (const Slice *slices, guint m, RcLength width, RcLength p)
{
  Wide sum = 0;

  for (guint i = 0; i < m; i++)
    {
      if (slices[i].w > width - p)
        sum += (Wide)width * slices[i].h;
      else if (slices[i].w >= p)
        sum += (Wide)slices[i].w * slices[i].h;
    }
  return divide_up (sum, width);
}

static RcLength
bound_by_rounding (const Slice *slices, guint m, RcLength width, int k)
{
  Wide sum = 0;

  for (guint i = 0; i < m; i++)
    {
      RcLength times = (k + 1) * slices[i].w;

      if (times % width == 0)
        sum += (Wide)slices[i].w * k * slices[i].h;
      else
        sum += (Wide)(times / width) * width * slices[i].h;
    }
  return divide_up (sum, (Wide)width * k);
}

static RcLength
bound_by_counting (const Slice *slices, guint m, RcLength width, RcLength p)
{
  RcLength whole = width / p;
  Wide     sum = 0;

  for (guint i = 0; i < m; i++)
    {
      RcLength w = slices[i].w, value;

      if (2 * w > width)
        value = 2 * (whole - (width - w) / p);
      else if (2 * w == width)
        value = whole;
      else
        value = 2 * (w / p);
      sum += (Wide)value * slices[i].h;
    }
  return divide_up (sum, 2 * whole);
}

static RcLength
bound_slices (const Slice *slices, guint m, RcLength width)
{
  RcLength bound = bound_by_threshold (slices, m, width, 0), wide = 0;
  guint    step = m > 200 ? m / 200 : 1; /* a sample of thresholds is still valid */

  for (guint i = 0; i < m; i++)
    if (2 * slices[i].w > width)
      wide += slices[i].h;
  bound = MAX (bound, wide);
  for (int k = 1; k <= 30; k++)
    bound = MAX (bound, bound_by_rounding (slices, m, width, k));
  for (guint i = 0; i < m; i += step)
    {
      RcLength w = slices[i].w, p = MIN (w, width - w + 1);

      if (w > width)
        continue;
      if (p > 0 && 2 * p <= width)
        bound = MAX (bound, bound_by_threshold (slices, m, width, p));
      if (2 * w <= width)
        bound = MAX (bound, bound_by_counting (slices, m, width, w));
      if (width - w + 1 <= width / 2)
        bound = MAX (bound, bound_by_counting (slices, m, width, width - w + 1));
    }
  return bound;
}

RcLength
rc_nest_bound_rectangles (const RcLength *w, const RcLength *h, guint n, RcLength width)
{
  Slice             few[64];
  g_autofree Slice *many = n >= G_N_ELEMENTS (few) ? g_new (Slice, n + 1) : NULL;
  Slice            *slices = many != NULL ? many : few;
  guint             m = merge_widths (w, h, n, slices);
  RcLength          tallest = 0;

  for (guint i = 0; i < n; i++)
    tallest = MAX (tallest, h[i]);
  return MAX (tallest, bound_slices (slices, m, width));
}

RcLength
rc_nest_bound_grid (const RcNestTask *task)
{
  RcLength grid = 0;

  for (guint i = 0; i < task->items->n && grid != 1; i++)
    {
      const RcNestItem *item = &task->items->items[i];

      if (item->copy > 0)
        continue;
      grid = (RcLength)rc_wide_find_divisor (grid, item->h);
      if (item->repeat > 0)
        grid = (RcLength)rc_wide_find_divisor (rc_wide_find_divisor (grid, item->repeat), item->phase);
      if (item->is_along_pinned)
        grid = (RcLength)rc_wide_find_divisor (grid, ABS (item->along));
    }
  for (guint b = 0; b < task->bins->n; b++)
    grid = (RcLength)rc_wide_find_divisor (grid, task->bins->bins[b].start);
  return MAX (grid, 1);
}

RcLength
rc_nest_bound_quick (const RcNestTask *task)
{
  const RcNestItems   *items = task->items;
  RcLength             few[128];
  g_autofree RcLength *many = items->n > 64 ? g_new (RcLength, 2 * items->n) : NULL;
  RcLength            *w = many != NULL ? many : few, *h = w + items->n;
  RcLength             width = 1, bound;
  guint                n_rolls = MIN (items->n, task->bins->n);

  if (items->n == 0)
    return 0;
  for (guint b = 0; b < task->bins->n; b++)
    width = MAX (width, task->bins->bins[b].width);
  for (guint i = 0; i < items->n; i++)
    {
      w[i] = items->items[i].w;
      h[i] = items->items[i].h;
    }
  bound = rc_nest_bound_rectangles (w, h, items->n, width);
  if (items->has_repeats)
    {
      bound = MAX (bound, rc_nest_bound_held (items, width, n_rolls));
      for (guint i = 0; i < items->n; i++)
        bound = MAX (bound, rc_nest_item_place (&items->items[i], 0) + items->items[i].h);
    }
  return rc_length_round_up (bound, rc_nest_bound_grid (task));
}

typedef struct
{
  RcLength w, h;
} Side;

static int
compare_sides (gconstpointer a, gconstpointer b)
{
  const Side *p = a, *q = b;

  if (p->w != q->w)
    return p->w > q->w ? -1 : 1;
  return p->h > q->h ? -1 : p->h < q->h;
}

/* Items of one size become one kind; those of one width when `by_width`, which only loses that each of them lies in a
 * slice at most once. */
static guint
list_kinds (const RcNestItems *items, const RcLength *h, gboolean by_width, RcNestSliceItem *kinds)
{
  g_autofree Side *sides = g_new (Side, items->n + 1);
  guint            n = 0;

  for (guint i = 0; i < items->n; i++)
    sides[i] = (Side){ items->items[i].w, h[i] };
  qsort (sides, items->n, sizeof *sides, compare_sides);
  for (guint i = 0; i < items->n; i++)
    {
      if (n == 0 || sides[i].w != sides[i - 1].w || (!by_width && sides[i].h != sides[i - 1].h))
        kinds[n++] = (RcNestSliceItem){ sides[i].w, 0, 0 };
      kinds[n - 1].demand += sides[i].h;
      kinds[n - 1].count++;
    }
  return n;
}

/* The coarse program first: it is much smaller where many items are of one width. */
static RcLength
bound_by_kinds (const RcNestItems *items, const RcLength *h, RcLength width, RcLength known, RcLength grid,
                const RcNestClock *clock)
{
  g_autofree RcNestSliceItem *kinds = g_new (RcNestSliceItem, items->n + 1);
  guint                       n_coarse = 0;

  for (int by_width = 1; by_width >= 0; by_width--)
    {
      guint n = list_kinds (items, h, by_width, kinds);

      if (n <= MOST_KINDS && n != n_coarse)
        known = rc_nest_slice_bound (kinds, n, width, known, grid, clock);
      n_coarse = n;
    }
  return known;
}

RcLength
rc_nest_bound_by_slices (const RcNestTask *task, RcLength known, const RcNestClock *clock)
{
  const RcNestItems   *items = task->items;
  g_autofree RcLength *h = g_new (RcLength, items->n + 1);
  RcLength             width = 1, grid = rc_nest_bound_grid (task), most, extended;

  for (guint b = 0; b < task->bins->n; b++)
    width = MAX (width, task->bins->bins[b].width);
  for (guint i = 0; i < items->n; i++)
    h[i] = items->items[i].h;
  known = bound_by_kinds (items, h, width, known, grid, clock);
  if (!items->has_repeats)
    return known;
  most = rc_nest_bound_extend (items, MIN (items->n, task->bins->n), h);
  extended = bound_by_kinds (items, h, width, known + most, 1, clock) - most;
  return rc_length_round_up (MAX (known, extended), grid);
}

RcLength
rc_nest_bound_by_levels (const RcNestTask *task, RcLength longest, RcLength known, const RcNestClock *clock)
{
  const RcNestItems          *items = task->items;
  g_autofree RcNestLevelItem *sizes = g_new (RcNestLevelItem, items->n + 1);
  RcLength                    width = 1;

  if (task->problem->stages != 3)
    return known;
  for (guint b = 0; b < task->bins->n; b++)
    width = MAX (width, task->bins->bins[b].width);
  for (guint i = 0; i < items->n; i++)
    sizes[i] = (RcNestLevelItem){ items->items[i].w, items->items[i].h };
  known = rc_nest_level_bound (sizes, items->n, width, longest, known, clock);
  return rc_length_round_up (known, rc_nest_bound_grid (task));
}
