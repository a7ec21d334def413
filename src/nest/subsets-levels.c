#include "subsets-levels.h"

enum
{
  MOST_FRONT = 256
};

void
rc_nest_levels_init (RcNestLevels *self, const RcNestItem *items, guint n, RcLength width, RcLength most_end)
{
  gsize n_sets = (gsize)1 << n;

  *self = (RcNestLevels){ items, n, width, most_end };
  for (guint i = 0; i < n; i++)
    {
      self->is_ordered |= items[i].repeat > 0 || items[i].is_along_pinned;
      self->has_across |= items[i].across_repeat > 0 || items[i].is_across_pinned;
    }
  self->column_end = g_new (RcLength, n_sets);
  self->first = g_new (guint32, n_sets);
  self->count = g_new (guint32, n_sets);
  self->entries = g_array_new (FALSE, FALSE, sizeof (RcNestLevelEntry));
}

void
rc_nest_levels_clear (RcNestLevels *self)
{
  g_free (self->column_end);
  g_free (self->first);
  g_free (self->count);
  g_array_unref (self->entries);
}

/* The first place at or after `from` where an item may lie; RC_NEST_ENDLESS: none. Never earlier for a later `from`. */
static inline RcLength
place_along (const RcNestItem *item, RcLength from)
{
  if (item->is_along_pinned)
    return from <= item->along ? item->along : RC_NEST_ENDLESS;
  return rc_nest_place_in_repeat (item->repeat, item->phase, from);
}

static inline RcLength
place_across (const RcNestItem *item, RcLength from)
{
  if (item->is_across_pinned)
    return from <= item->across ? item->across : RC_NEST_ENDLESS;
  return rc_nest_place_in_repeat (item->across_repeat, item->across_phase, from);
}

/* Where a column of these items ends, at best; *last gets the item that comes last then. G_MAXINT64: there is none. */
static RcLength
compute_column_end (const RcNestLevels *self, guint32 set, guint *last)
{
  RcLength best = G_MAXINT64;

  for (guint32 rest = set; rest != 0; rest &= rest - 1)
    {
      guint    i = (guint)__builtin_ctz (rest);
      RcLength before = self->column_end[set & ~(1u << i)], place;

      if (before == G_MAXINT64)
        continue;
      place = place_along (&self->items[i], before);
      if (place < RC_NEST_ENDLESS && place + self->items[i].h < best)
        {
          best = place + self->items[i].h;
          *last = i;
        }
      if (!self->is_ordered)
        break;
    }
  return best;
}

/* Where a column ends across the roll that may start at `from`. */
static RcLength
compute_right (const RcNestLevels *self, guint32 column, RcLength from)
{
  RcLength right = from;

  if (!self->has_across)
    return from + self->items[__builtin_ctz (column)].w;
  for (guint32 rest = column; rest != 0; rest &= rest - 1)
    {
      const RcNestItem *item = &self->items[__builtin_ctz (rest)];

      right = MAX (right, place_across (item, from) + item->w);
    }
  return right;
}

/* Keeps the front sorted by width, ends falling. */
static guint
add_to_front (RcNestLevelEntry *front, guint n, RcNestLevelEntry entry, gboolean *overflow)
{
  guint at = 0, to;

  while (at < n && front[at].w < entry.w)
    at++;
  if (at > 0 && front[at - 1].end <= entry.end)
    return n;
  if (at < n && front[at].w == entry.w && front[at].end <= entry.end)
    return n;
  for (to = at; to < n && front[to].end >= entry.end;)
    to++;
  if (to == at && n == MOST_FRONT)
    {
      *overflow = TRUE;
      return n;
    }
  memmove (front + at + 1, front + to, sizeof *front * (n - to));
  front[at] = entry;
  return n - (to - at) + 1;
}

/* Columns may change places unless something across holds them: then the widest item's may come last. */
static void
fill_set (RcNestLevels *self, guint32 set)
{
  RcNestLevelEntry front[MOST_FRONT + 1];
  guint32          held = self->has_across ? 0 : set & -set, others = set ^ held;
  guint            n = 0;

  for (guint32 sub = others;; sub = (sub - 1) & others)
    {
      guint32  column = sub | held, rest = set ^ column;
      RcLength end = self->column_end[column];

      for (guint32 k = 0; column != 0 && end <= self->most_end && k < self->count[rest]; k++)
        {
          guint32                 index = self->first[rest] + k;
          const RcNestLevelEntry *entry = &g_array_index (self->entries, RcNestLevelEntry, index);
          RcLength                right = compute_right (self, column, entry->w);

          if (right > self->width)
            break;
          n = add_to_front (front, n, (RcNestLevelEntry){ right, MAX (end, entry->end), column, index },
                            &self->overflow);
        }
      if (sub == 0)
        break;
    }
  self->first[set] = self->entries->len;
  self->count[set] = n;
  g_array_append_vals (self->entries, front, n);
}

gboolean
rc_nest_levels_fill (RcNestLevels *self, guint32 universe, RcLength start, const RcNestClock *clock)
{
  RcNestLevelEntry nothing = { 0, start, 0, 0 };
  guint            last;

  g_array_set_size (self->entries, 0);
  g_array_append_val (self->entries, nothing);
  self->column_end[0] = start;
  self->first[0] = 0;
  self->count[0] = 1;
  for (guint32 set = -universe & universe, n = 0; set != 0; set = (set - universe) & universe, n++)
    {
      self->column_end[set] = compute_column_end (self, set, &last);
      fill_set (self, set);
      if (self->overflow)
        return FALSE;
      if (clock != NULL && n % 8 == 7 && rc_nest_clock_is_over (clock))
        return FALSE;
    }
  return TRUE;
}

RcLength
rc_nest_levels_get_end (const RcNestLevels *self, guint32 set)
{
  guint32 n = self->count[set];

  return n > 0 ? g_array_index (self->entries, RcNestLevelEntry, self->first[set] + n - 1).end : G_MAXINT64;
}

/* The column may start at `from` across. */
static void
place_column (const RcNestLevels *self, guint32 column, int bin, RcLength from, RcNestSpot *spots)
{
  while (column != 0)
    {
      guint    last = 0;
      RcLength end = compute_column_end (self, column, &last);

      spots[last] = (RcNestSpot){ bin, place_across (&self->items[last], from), end - self->items[last].h };
      column &= ~(1u << last);
    }
}

void
rc_nest_levels_place (const RcNestLevels *self, guint32 set, RcLength start, int bin, RcNestSpot *spots)
{
  const RcNestLevelEntry *entry
      = &g_array_index (self->entries, RcNestLevelEntry, self->first[set] + self->count[set] - 1);

  while (entry->column != 0)
    {
      const RcNestLevelEntry *rest = &g_array_index (self->entries, RcNestLevelEntry, entry->rest);

      place_column (self, entry->column, bin, rest->w, spots);
      entry = rest;
    }
}
