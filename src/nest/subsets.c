#include "subsets.h"

#include "subsets-joins.h"
#include "subsets-levels.h"

struct _RcNestSubsets
{
  RcNestItem  *items; /* widest first */
  guint       *index; /* of the caller's items */
  guint        n;
  gboolean     any_stages, is_ordered, only_all;
  RcLength     start;
  RcLength    *end;   /* by subset, in the order of items */
  guint32     *level; /* the last level of the best cutting */
  RcNestLevels levels;
  RcNestJoins  joins;
};

/* No patterns: levels may change places, so the lowest item's is taken last. */
static gboolean
fill_plain (RcNestSubsets *self, const RcNestClock *clock)
{
  guint32 all = (1u << self->n) - 1;

  if (!rc_nest_levels_fill (&self->levels, all, self->start, clock))
    return FALSE;
  for (guint32 set = 1; set <= all; set++)
    {
      guint32 low = set & -set, others = set ^ low;

      if (set % 16 == 0 && rc_nest_clock_is_over (clock))
        return FALSE;
      for (guint32 sub = others;; sub = (sub - 1) & others)
        {
          RcLength level_end = rc_nest_levels_get_end (&self->levels, sub | low), before = self->end[others ^ sub];

          if (level_end != G_MAXINT64 && before != G_MAXINT64 && level_end - self->start + before < self->end[set])
            {
              self->end[set] = level_end - self->start + before;
              self->level[set] = sub | low;
            }
          if (sub == 0)
            break;
        }
    }
  return TRUE;
}

/* Whether so much is left for the items of a set that their area would go beyond the end. */
static gboolean
leads_too_far (const RcNestSubsets *self, guint32 set, guint32 left)
{
  gint64 area = 0;

  for (; left != 0; left &= left - 1)
    area += self->items[__builtin_ctz (left)].w * self->items[__builtin_ctz (left)].h;
  return area > (self->levels.most_end - self->end[set]) * self->levels.width;
}

/* With patterns or pins: a level's length depends on where it starts, and an earlier start never makes it end later. */
static gboolean
fill_ordered (RcNestSubsets *self, const RcNestClock *clock)
{
  guint32 all = (1u << self->n) - 1;

  for (guint32 set = 0; set < all; set++)
    {
      guint32 left = all ^ set;

      if (self->end[set] == G_MAXINT64 || (self->only_all && leads_too_far (self, set, left)))
        continue;
      if (!rc_nest_levels_fill (&self->levels, left, self->end[set], clock))
        return FALSE;
      for (guint32 sub = left; sub != 0; sub = (sub - 1) & left)
        {
          RcLength end = rc_nest_levels_get_end (&self->levels, sub);

          if (end < self->end[set | sub])
            {
              self->end[set | sub] = end;
              self->level[set | sub] = sub;
            }
        }
    }
  return TRUE;
}

static gboolean
fill_any (RcNestSubsets *self, const RcNestClock *clock)
{
  if (!rc_nest_joins_fill (&self->joins, clock))
    return FALSE;
  for (guint32 set = 1; set < 1u << self->n; set++)
    {
      RcLength length = rc_nest_joins_get_length (&self->joins, set);
      self->end[set] = length == G_MAXINT64 ? length : self->start + length;
    }
  return TRUE;
}

static void
sort_widest_first (RcNestSubsets *self, const RcNestItem *items)
{
  for (guint i = 0; i < self->n; i++)
    {
      guint j = i;

      for (; j > 0 && self->items[j - 1].w < items[i].w; j--)
        {
          self->items[j] = self->items[j - 1];
          self->index[j] = self->index[j - 1];
        }
      self->items[j] = items[i];
      self->index[j] = i;
    }
}

RcNestSubsets *
rc_nest_subsets_new (const RcNestItem *items, guint n, int stages, RcLength width, RcLength start, RcLength end,
                     gboolean only_all, const RcNestClock *clock)
{
  g_autoptr (RcNestSubsets) self = g_new0 (RcNestSubsets, 1);
  gsize    n_sets = (gsize)1 << n;
  gboolean filled;

  self->n = n;
  self->start = start;
  self->any_stages = stages == 0;
  self->only_all = only_all;
  self->items = g_new (RcNestItem, n + 1);
  self->index = g_new (guint, n + 1);
  sort_widest_first (self, items);
  for (guint i = 0; i < n; i++)
    self->is_ordered |= items[i].repeat > 0 || items[i].is_along_pinned;
  self->end = g_new (RcLength, n_sets);
  self->level = g_new0 (guint32, n_sets);
  for (gsize set = 1; set < n_sets; set++)
    self->end[set] = G_MAXINT64;
  self->end[0] = start;
  rc_nest_levels_init (&self->levels, self->items, self->any_stages ? 0 : n, width, end);
  rc_nest_joins_init (&self->joins, self->items, self->any_stages ? n : 0, width, end - start);
  if (self->any_stages)
    filled = fill_any (self, clock);
  else
    filled = self->is_ordered ? fill_ordered (self, clock) : fill_plain (self, clock);
  return filled ? g_steal_pointer (&self) : NULL;
}

void
rc_nest_subsets_free (RcNestSubsets *self)
{
  if (self == NULL)
    return;
  rc_nest_levels_clear (&self->levels);
  rc_nest_joins_clear (&self->joins);
  g_free (self->items);
  g_free (self->index);
  g_free (self->end);
  g_free (self->level);
  g_free (self);
}

static guint32
to_own_order (const RcNestSubsets *self, guint32 set)
{
  guint32 own = 0;

  for (guint i = 0; i < self->n; i++)
    own |= (set >> self->index[i] & 1) << i;
  return own;
}

RcLength
rc_nest_subsets_get_end (const RcNestSubsets *self, guint32 set)
{
  return self->end[to_own_order (self, set)];
}

void
rc_nest_subsets_place (const RcNestSubsets *self, guint32 set, int bin, RcNestSpot *spots)
{
  g_autofree RcNestSpot *own = g_new (RcNestSpot, self->n + 1);
  guint32                left = to_own_order (self, set), all = left;
  RcNestLevels           levels;

  if (self->any_stages)
    rc_nest_joins_place (&self->joins, all, bin, self->start, own);
  rc_nest_levels_init (&levels, self->items, self->any_stages ? 0 : self->n, self->levels.width, self->levels.most_end);
  while (left != 0 && !self->any_stages)
    {
      guint32  level = self->level[left];
      RcLength begin = self->end[left ^ level];

      levels.most_end = MAX (levels.most_end, self->end[left]);
      rc_nest_levels_fill (&levels, level, begin, NULL);
      rc_nest_levels_place (&levels, level, begin, bin, own);
      left ^= level;
    }
  rc_nest_levels_clear (&levels);
  for (guint i = 0; i < self->n; i++)
    if (all >> i & 1)
      spots[self->index[i]] = own[i];
}
