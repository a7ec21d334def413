#include "bound.h"

#include "wide.h"

/* Items of one repeat and phase. */
typedef struct
{
  RcLength repeat, phase;
  guint    count;
} Kind;

static int
compare_kinds (gconstpointer a, gconstpointer b)
{
  const Kind *p = a, *q = b;

  if (p->repeat != q->repeat)
    return p->repeat < q->repeat ? -1 : 1;
  return p->phase < q->phase ? -1 : p->phase > q->phase;
}

/* All items are held to a pattern, and to one: otherwise any of them may follow an item without a gap. */
static gboolean
are_held_together (const RcNestItems *items)
{
  for (guint i = 0; i < items->n; i++)
    if (items->items[i].repeat == 0 || items->items[i].match != items->items[0].match)
      return FALSE;
  return TRUE;
}

static guint
list_kinds (const RcNestItems *items, Kind *kinds)
{
  guint n = 0;

  for (guint i = 0; i < items->n; i++)
    kinds[i] = (Kind){ items->items[i].repeat, items->items[i].phase, 1 };
  qsort (kinds, items->n, sizeof *kinds, compare_kinds);
  for (guint i = 0; i < items->n; i++)
    if (n > 0 && compare_kinds (&kinds[n - 1], &kinds[i]) == 0)
      kinds[n - 1].count++;
    else
      kinds[n++] = kinds[i];
  return n;
}

static RcLength
reduce (RcLength length, RcLength repeat)
{
  RcLength rest = length % repeat;

  return rest < 0 ? rest + repeat : rest;
}

/* The gap to the first place at or behind `end`, along an item's own pattern, where a kind of kinds[first .. next-1] of
 * the same repeat may start; `self`, the item's own kind, only where there are more of it. */
static RcLength
find_gap_in_repeat (const Kind *kinds, guint first, guint next, RcLength end, const Kind *self)
{
  RcLength repeat = kinds[first].repeat, from = reduce (end, repeat);
  guint    lo = first, hi = next, n = next - first;

  while (lo < hi)
    {
      guint mid = (lo + hi) / 2;

      if (kinds[mid].phase < from)
        lo = mid + 1;
      else
        hi = mid;
    }
  for (guint k = 0; k < MIN (n, 2); k++)
    {
      const Kind *kind = &kinds[first + (lo - first + k) % n];

      if (kind->count > 1 || compare_kinds (kind, self) != 0)
        return reduce (kind->phase - from, repeat);
    }
  return repeat;
}

/* The least gap between an item and one that follows it somewhere along the same line. */
static RcLength
find_least_gap (const RcNestItem *item, const Kind *kinds, guint n)
{
  const Kind self = { item->repeat, item->phase, 1 };
  RcLength   least = item->repeat, end = item->phase + item->h;

  for (guint first = 0, next; first < n && least > 0; first = next)
    {
      RcLength common = (RcLength)rc_wide_find_divisor (item->repeat, kinds[first].repeat);

      for (next = first; next < n && kinds[next].repeat == kinds[first].repeat; next++)
        if (kinds[next].repeat != item->repeat)
          least = MIN (least, reduce (kinds[next].phase - end, common));
      if (kinds[first].repeat == item->repeat)
        least = MIN (least, find_gap_in_repeat (kinds, first, next, end, &self));
    }
  return least;
}

static int
compare_falling (gconstpointer a, gconstpointer b)
{
  RcLength p = *(const RcLength *)a, q = *(const RcLength *)b;

  return p > q ? -1 : p < q;
}

RcLength
rc_nest_bound_extend (const RcNestItems *items, guint n_rolls, RcLength *extended)
{
  g_autofree RcLength *gaps = g_new0 (RcLength, items->n + 1);
  g_autofree Kind     *kinds = g_new (Kind, items->n + 1);
  RcLength             most = 0;

  if (are_held_together (items))
    {
      guint n = list_kinds (items, kinds);

      for (guint i = 0; i < items->n; i++)
        gaps[i] = find_least_gap (&items->items[i], kinds, n);
    }
  for (guint i = 0; i < items->n; i++)
    extended[i] = items->items[i].h + gaps[i];
  qsort (gaps, items->n, sizeof *gaps, compare_falling);
  for (guint i = 0; i < MIN (items->n, n_rolls); i++)
    most += gaps[i];
  return most;
}

/* The items held to a pattern that are of one match; NULL: there are none. The others may be left away: what is left
 * of a cutting is no longer than it. */
static RcNestItems *
list_held (const RcNestItems *items, int match)
{
  g_autofree guint *chosen = g_new (guint, items->n + 1);
  guint             n = 0;

  for (guint i = 0; i < items->n; i++)
    if (items->items[i].repeat > 0 && items->items[i].match == match)
      chosen[n++] = i;
  return n > 0 ? rc_nest_items_new_part (items, chosen, n) : NULL;
}

RcLength
rc_nest_bound_held (const RcNestItems *items, RcLength width, guint n_rolls)
{
  RcLength bound = 0;

  for (int match = -1; match < (int)items->matches->len; match++)
    {
      g_autoptr (RcNestItems) held = list_held (items, match);
      g_autofree RcLength *w = NULL;
      RcLength             gaps;

      if (held == NULL)
        continue;
      w = g_new (RcLength, 2 * held->n);
      for (guint i = 0; i < held->n; i++)
        w[i] = held->items[i].w;
      gaps = rc_nest_bound_extend (held, n_rolls, w + held->n);
      bound = MAX (bound, rc_nest_bound_rectangles (w, w + held->n, held->n, width) - gaps);
    }
  return bound;
}
