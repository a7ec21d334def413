#include "subsets-joins.h"

enum
{
  MOST_FRONT = 1024,
  MOST_ENTRIES = 4000000
};

typedef struct
{
  RcNestJoinEntry entries[MOST_FRONT + 1];
  guint           n;
  gboolean        overflow;
} Front;

void
rc_nest_joins_init (RcNestJoins *self, const RcNestItem *items, guint n, RcLength width, RcLength most_h)
{
  gsize n_sets = (gsize)1 << n;

  *self = (RcNestJoins){ items, n, width, most_h };
  self->first = g_new0 (guint32, n_sets);
  self->count = g_new0 (guint32, n_sets);
  self->entries = g_array_new (FALSE, FALSE, sizeof (RcNestJoinEntry));
}

void
rc_nest_joins_clear (RcNestJoins *self)
{
  g_free (self->first);
  g_free (self->count);
  g_array_unref (self->entries);
}

static void
add_to_front (Front *front, RcNestJoinEntry entry)
{
  guint lo = 0, hi = front->n, to;

  while (lo < hi)
    {
      guint mid = (lo + hi) / 2;
      if (front->entries[mid].w < entry.w)
        lo = mid + 1;
      else
        hi = mid;
    }
  if (lo > 0 && front->entries[lo - 1].h <= entry.h)
    return;
  if (lo < front->n && front->entries[lo].w == entry.w && front->entries[lo].h <= entry.h)
    return;
  for (to = lo; to < front->n && front->entries[to].h >= entry.h;)
    to++;
  if (to == lo && front->n == MOST_FRONT)
    {
      front->overflow = TRUE;
      return;
    }
  memmove (front->entries + lo + 1, front->entries + to, sizeof *front->entries * (front->n - to));
  front->entries[lo] = entry;
  front->n = front->n - (to - lo) + 1;
}

/* Side by side: walking both fronts from their longest entries, each pair that is as long as one of its two. */
static void
join_beside (const RcNestJoins *self, Front *front, guint32 part, guint32 rest)
{
  const RcNestJoinEntry *all = &g_array_index (self->entries, RcNestJoinEntry, 0);
  guint32                a = self->first[part], b = self->first[rest];
  guint32                a_end = a + self->count[part], b_end = b + self->count[rest];

  while (a < a_end && b < b_end)
    {
      RcLength w = all[a].w + all[b].w;

      if (w > self->width)
        return;
      add_to_front (front, (RcNestJoinEntry){ w, MAX (all[a].h, all[b].h), part, a, b, TRUE });
      if (all[a].h >= all[b].h)
        a++;
      else
        b++;
    }
}

/* One after the other: likewise from the widest entries. */
static void
join_after (const RcNestJoins *self, Front *front, guint32 part, guint32 rest)
{
  const RcNestJoinEntry *all = &g_array_index (self->entries, RcNestJoinEntry, 0);
  guint32                a = self->first[part] + self->count[part], b = self->first[rest] + self->count[rest];

  while (a > self->first[part] && b > self->first[rest])
    {
      RcLength h = all[a - 1].h + all[b - 1].h;

      if (h > self->most_h)
        return;
      add_to_front (front, (RcNestJoinEntry){ MAX (all[a - 1].w, all[b - 1].w), h, part, a - 1, b - 1, FALSE });
      if (all[a - 1].w >= all[b - 1].w)
        a--;
      else
        b--;
    }
}

static void
fill_set (RcNestJoins *self, guint32 set, Front *front)
{
  guint32 low = set & -set, others = set ^ low;

  front->n = 0;
  if (others == 0)
    {
      const RcNestItem *item = &self->items[__builtin_ctz (set)];

      if (item->w <= self->width && item->h <= self->most_h)
        add_to_front (front, (RcNestJoinEntry){ item->w, item->h, 0, 0, 0, FALSE });
    }
  for (guint32 sub = (others - 1) & others; others != 0; sub = (sub - 1) & others)
    {
      join_beside (self, front, sub | low, others ^ sub);
      join_after (self, front, sub | low, others ^ sub);
      if (sub == 0)
        break;
    }
  self->first[set] = self->entries->len;
  self->count[set] = front->n;
  g_array_append_vals (self->entries, front->entries, front->n);
}

gboolean
rc_nest_joins_fill (RcNestJoins *self, const RcNestClock *clock)
{
  g_autofree Front *front = g_new0 (Front, 1);

  for (guint32 set = 1; set < 1u << self->n; set++)
    {
      fill_set (self, set, front);
      if (front->overflow || self->entries->len > MOST_ENTRIES
          || (clock != NULL && set % 4 == 0 && rc_nest_clock_is_over (clock)))
        return FALSE;
    }
  return TRUE;
}

RcLength
rc_nest_joins_get_length (const RcNestJoins *self, guint32 set)
{
  guint32 n = self->count[set];

  if (set == 0)
    return 0;
  return n > 0 ? g_array_index (self->entries, RcNestJoinEntry, self->first[set] + n - 1).h : G_MAXINT64;
}

static void
place_entry (const RcNestJoins *self, guint32 set, guint32 at, int bin, RcLength across, RcLength along,
             RcNestSpot *spots)
{
  const RcNestJoinEntry *entry = &g_array_index (self->entries, RcNestJoinEntry, at);
  const RcNestJoinEntry *part;

  if (entry->part == 0)
    {
      spots[__builtin_ctz (set)] = (RcNestSpot){ bin, across, along };
      return;
    }
  part = &g_array_index (self->entries, RcNestJoinEntry, entry->first_at);
  place_entry (self, entry->part, entry->first_at, bin, across, along, spots);
  if (entry->beside)
    across += part->w;
  else
    along += part->h;
  place_entry (self, set ^ entry->part, entry->rest_at, bin, across, along, spots);
}

void
rc_nest_joins_place (const RcNestJoins *self, guint32 set, int bin, RcLength along, RcNestSpot *spots)
{
  if (set != 0)
    place_entry (self, set, self->first[set] + self->count[set] - 1, bin, 0, along, spots);
}
