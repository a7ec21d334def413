#include "origins.h"

#include "wide.h"

enum
{
  MOST_PLACES = 4096
};

/* One of the two directions. */
typedef struct
{
  const RcNestTask *task;
  gboolean          along;
  guint             n_matches;
  RcLength         *origin; /* by match */
  gboolean         *known;
  GPtrArray        *lists; /* of RcLength*: all origins found */
  guint             most;
  gboolean          overflow;
} Search;

/* What of an item counts in that direction. */
typedef struct
{
  RcLength size, repeat, phase, pinned;
  gboolean is_pinned;
  int      match;
} Side;

static Side
get_side (const Search *self, guint i)
{
  const RcNestItem *item = &self->task->items->items[i];

  if (self->along)
    return (Side){ item->h, item->repeat, item->phase, item->along, item->is_along_pinned, item->match };
  return (Side){ item->w,      item->across_repeat,    item->across_phase,
                 item->across, item->is_across_pinned, item->across_match };
}

static RcLength
reduce (RcLength length, RcLength repeat)
{
  RcLength rest = length % repeat;

  return rest < 0 ? rest + repeat : rest;
}

static void
add_place (Search *self, GHashTable *places, RcLength place)
{
  if (g_hash_table_size (places) < MOST_PLACES)
    g_hash_table_add (places, g_memdup2 (&place, sizeof place));
  else
    self->overflow = TRUE;
}

/* Where what stays ends, modulo a repeat. */
static void
add_ends (Search *self, GHashTable *places, RcLength repeat)
{
  for (guint b = 0; b < self->task->bins->n; b++)
    add_place (self, places, self->along ? reduce (self->task->bins->bins[b].start, repeat) : 0);
  for (guint i = 0; i < self->task->items->n; i++)
    {
      Side     side = get_side (self, i);
      RcLength end = side.phase + side.size, step;

      if (side.is_pinned)
        {
          add_place (self, places, reduce (side.pinned + side.size, repeat));
          continue;
        }
      if (side.repeat == 0 || (side.match >= 0 && !self->known[side.match]))
        continue;
      end += side.match >= 0 ? self->origin[side.match] : 0;
      step = (RcLength)rc_wide_find_divisor (side.repeat, repeat);
      for (RcLength place = reduce (end, step); place < repeat && !self->overflow; place += step)
        add_place (self, places, place);
    }
}

/* Free items may lie between. */
static void
add_sums (Search *self, GHashTable *places, RcLength repeat)
{
  for (guint i = 0; i < self->task->items->n && !self->overflow; i++)
    {
      Side                 side = get_side (self, i);
      g_autofree RcLength *before = NULL;
      GHashTableIter       iter;
      gpointer             place;
      guint                n = 0;

      if (side.repeat > 0 || side.is_pinned)
        continue;
      before = g_new (RcLength, g_hash_table_size (places));
      g_hash_table_iter_init (&iter, places);
      while (g_hash_table_iter_next (&iter, &place, NULL))
        before[n++] = *(const RcLength *)place;
      for (guint k = 0; k < n; k++)
        add_place (self, places, reduce (before[k] + side.size, repeat));
    }
}

/* Where a match may begin by what is settled, in rising order. */
static GArray *
list_beginnings (Search *self, int match)
{
  GArray *beginnings = g_array_new (FALSE, FALSE, sizeof (RcLength));
  g_autoptr (GHashTable) places = NULL;
  RcLength repeat = 0;

  for (guint i = 0; i < self->task->items->n && repeat == 0; i++)
    if (get_side (self, i).match == match)
      repeat = get_side (self, i).repeat;
  if (repeat == 0)
    return beginnings;
  places = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  add_ends (self, places, repeat);
  add_sums (self, places, repeat);
  for (guint i = 0; i < self->task->items->n; i++)
    {
      Side           side = get_side (self, i);
      GHashTableIter iter;
      gpointer       place;

      if (side.match != match || side.is_pinned)
        continue;
      g_hash_table_iter_init (&iter, places);
      while (g_hash_table_iter_next (&iter, &place, NULL))
        {
          RcLength beginning = reduce (*(const RcLength *)place - side.phase, repeat);
          g_array_append_val (beginnings, beginning);
        }
    }
  g_array_sort (beginnings, rc_length_compare);
  return beginnings;
}

static void
keep (Search *self)
{
  for (guint k = 0; k < self->lists->len; k++)
    if (memcmp (self->lists->pdata[k], self->origin, sizeof (RcLength) * self->n_matches) == 0)
      return;
  if (self->lists->len < self->most)
    g_ptr_array_add (self->lists, g_memdup2 (self->origin, sizeof (RcLength) * (self->n_matches + 1)));
  else
    self->overflow = TRUE;
}

static void
settle_rest (Search *self)
{
  gboolean all_known = TRUE;

  for (guint m = 0; m < self->n_matches && !self->overflow; m++)
    if (!self->known[m])
      {
        g_autoptr (GArray) beginnings = list_beginnings (self, (int)m);

        all_known = FALSE;
        self->known[m] = TRUE;
        for (guint k = 0; k < beginnings->len && !self->overflow; k++)
          {
            self->origin[m] = g_array_index (beginnings, RcLength, k);
            if (k == 0 || self->origin[m] != g_array_index (beginnings, RcLength, k - 1))
              settle_rest (self);
          }
        self->known[m] = FALSE;
      }
  if (all_known)
    keep (self);
}

/* Of RcLength[n_matches + 1]; NULL: too many. */
static GPtrArray *
search (const RcNestTask *task, gboolean along, guint most)
{
  const RcNestItems *items = task->items;
  Search self = { .task = task, .along = along, .most = most, .lists = g_ptr_array_new_with_free_func (g_free) };

  self.n_matches = along ? items->matches->len : items->across_matches->len;
  self.origin = g_new0 (RcLength, self.n_matches + 1);
  self.known = g_new0 (gboolean, self.n_matches + 1);
  for (guint m = 0; m < self.n_matches; m++)
    {
      gboolean is_open = FALSE;

      for (guint i = 0; i < items->n; i++)
        {
          Side side = get_side (&self, i);

          if (side.match != (int)m)
            continue;
          is_open |= !side.is_pinned;
          if (side.is_pinned && !self.known[m])
            self.origin[m] = reduce (side.pinned - side.phase, side.repeat);
          self.known[m] |= side.is_pinned;
        }
      self.known[m] |= !is_open;
    }
  settle_rest (&self);
  g_free (self.origin);
  g_free (self.known);
  if (self.overflow)
    g_clear_pointer (&self.lists, g_ptr_array_unref);
  return self.lists;
}

static void
origins_free (RcNestOrigins *origins)
{
  g_free (origins->along);
  g_free (origins->across);
  g_free (origins);
}

GPtrArray *
rc_nest_origins_list (const RcNestTask *task, guint most)
{
  g_autoptr (GPtrArray) along = search (task, TRUE, most);
  g_autoptr (GPtrArray) across = search (task, FALSE, most);
  GPtrArray *list;

  if (along == NULL || across == NULL || along->len * across->len > most)
    return NULL;
  list = g_ptr_array_new_with_free_func ((GDestroyNotify)origins_free);
  for (guint a = 0; a < along->len; a++)
    for (guint b = 0; b < across->len; b++)
      {
        RcNestOrigins *origins = g_new (RcNestOrigins, 1);

        origins->along = g_memdup2 (along->pdata[a], sizeof (RcLength) * (task->items->matches->len + 1));
        origins->across = g_memdup2 (across->pdata[b], sizeof (RcLength) * (task->items->across_matches->len + 1));
        g_ptr_array_add (list, origins);
      }
  return list;
}

void
rc_nest_origins_settle (const RcNestOrigins *origins, RcNestItem *items, guint n)
{
  for (guint i = 0; i < n; i++)
    {
      RcNestItem *item = &items[i];

      if (item->match >= 0)
        item->phase = reduce (item->phase + origins->along[item->match], item->repeat);
      if (item->across_match >= 0)
        item->across_phase = reduce (item->across_phase + origins->across[item->across_match], item->across_repeat);
      item->match = item->across_match = -1;
    }
}
