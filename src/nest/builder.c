#include "builder.h"

static void
read_pins (RcNestBuilder *self)
{
  gboolean any = FALSE;

  for (guint i = 0; i < self->task->items->n && !any; i++)
    any = self->task->items->items[i].is_along_pinned;
  if (!any)
    return;
  self->pins = rc_nest_pins_new (self->task);
  self->back = g_new0 (RcLength, self->pins->lengths->len + 1);
  self->on = g_new0 (RcLength, self->pins->lengths->len + 1);
}

RcNestBuilder *
rc_nest_builder_new (const RcNestTask *task)
{
  RcNestBuilder *self = g_new0 (RcNestBuilder, 1);
  guint          n = task->items->n + 1, n_lengths = 0, most;

  self->task = task;
  self->below = RC_NEST_ENDLESS;
  self->is_tied = task->items->is_tied;
  self->may_grow = self->is_tied || task->items->has_repeats;
  if (self->is_tied)
    {
      read_pins (self);
      self->origins = g_new (RcNestOrigin, task->items->matches->len + 1);
      self->across_origins = g_new (RcNestOrigin, task->items->across_matches->len + 1);
      n_lengths = self->pins != NULL ? self->pins->lengths->len : 0;
    }
  most = self->is_tied ? 4 * n + 2 * n_lengths : n; /* each item leaves at most a gap beside it, a pinned one three */
  self->levels = g_new (RcNestLevel, most);
  self->columns = g_new (RcNestColumn, most);
  rc_nest_spaces_init (&self->tops);
  rc_nest_spaces_init (&self->sides);
  rc_nest_spaces_init (&self->bins);
  self->stretches = g_new (RcNestStretch, task->bins->n + n_lengths + 1);
  self->first_stretch = g_new (int, task->bins->n + 1);
  self->used = g_new (RcLength, task->bins->n + 1);
  return self;
}

void
rc_nest_builder_free (RcNestBuilder *self)
{
  if (self == NULL)
    return;
  rc_nest_pins_free (self->pins);
  g_free (self->levels);
  g_free (self->columns);
  rc_nest_spaces_clear (&self->tops);
  rc_nest_spaces_clear (&self->sides);
  rc_nest_spaces_clear (&self->bins);
  g_free (self->stretches);
  g_free (self->first_stretch);
  g_free (self->used);
  g_free (self->origins);
  g_free (self->across_origins);
  g_free (self->back);
  g_free (self->on);
  g_free (self);
}

static void
settle_origins (RcNestBuilder *self, const RcNestItem *item, const RcNestSpot *spot)
{
  if (item->match >= 0 && !self->origins[item->match].is_known)
    self->origins[item->match] = (RcNestOrigin){ TRUE, spot->along - item->phase };
  if (item->across_match >= 0 && !self->across_origins[item->across_match].is_known)
    self->across_origins[item->across_match] = (RcNestOrigin){ TRUE, spot->across - item->across_phase };
}

/* The free space of a pinned length that starts at `start` and ends at `end`. */
static void
open_pinned (RcNestBuilder *self, const RcNestPinnedLength *length, RcLength start, RcLength end)
{
  for (guint k = 0; k < length->blocks->len; k++)
    {
      const RcNestPinnedBlock *block = length->blocks->pdata[k];
      RcNestLevel              level = { start, end, block->to, block->to, length->bin, -1, self->n_levels - 1 };
      RcLength                 reach = start;

      if (k == 0)
        level.sibling = -1;
      if (block->pieces->len == 0)
        level.across = block->from;
      for (guint p = 0; p <= block->pieces->len && block->pieces->len > 0; p++)
        {
          guint    i = p < block->pieces->len ? g_array_index (block->pieces, guint, p) : 0;
          RcLength limit = p < block->pieces->len ? self->pins->spots[i].along : end;

          if (limit > reach)
            {
              self->columns[self->n_columns]
                  = (RcNestColumn){ block->from, block->to - block->from, reach, limit, -1, level.first_column };
              level.first_column = self->n_columns++;
            }
          if (p < block->pieces->len)
            reach = MAX (reach, limit + self->task->items->items[i].h);
        }
      rc_nest_builder_open (self, level);
    }
}

/* Bins are cut into the stretches before, between and behind their pinned lengths. */
static void
start_stretches (RcNestBuilder *self)
{
  const RcNestBins *bins = self->task->bins;
  GPtrArray        *lengths = self->pins != NULL ? self->pins->lengths : NULL;
  guint             k = 0, n = 0;

  for (guint b = 0; b < bins->n; b++)
    {
      RcLength from = bins->bins[b].start;
      int      last_level = -1;

      self->first_stretch[b] = (int)n;
      self->used[b] = from;
      for (; lengths != NULL && k < lengths->len && ((RcNestPinnedLength *)lengths->pdata[k])->bin == (int)b; k++)
        {
          const RcNestPinnedLength *length = lengths->pdata[k];
          gboolean last = k + 1 == lengths->len || ((RcNestPinnedLength *)lengths->pdata[k + 1])->bin != (int)b;
          RcLength limit = last ? bins->bins[b].end : ((RcNestPinnedLength *)lengths->pdata[k + 1])->from;
          RcLength start = length->from - MIN (self->back[k], length->from - from);
          RcLength end = length->to + MIN (self->on[k], limit - length->to);

          self->stretches[n++] = (RcNestStretch){ (int)b, from, start, last_level };
          open_pinned (self, length, start, end);
          last_level = self->n_levels - 1;
          self->used[b] = MAX (self->used[b], length->to);
          from = end;
        }
      self->stretches[n++] = (RcNestStretch){ (int)b, from, bins->bins[b].end, last_level };
    }
  self->first_stretch[bins->n] = (int)n;
}

/* Matches know where their pattern begins from the cuts that are pinned. */
static void
start_origins (RcNestBuilder *self)
{
  const RcNestItems *items = self->task->items;

  for (guint m = 0; m < items->matches->len; m++)
    self->origins[m].is_known = FALSE;
  for (guint m = 0; m < items->across_matches->len; m++)
    self->across_origins[m].is_known = FALSE;
  for (guint i = 0; i < items->n; i++)
    {
      RcNestItem item = items->items[i];
      RcNestSpot spot = { 0, item.across, item.along };

      if (self->pins != NULL && self->pins->spots[i].bin >= 0)
        spot = self->pins->spots[i];
      else if (!item.is_across_pinned)
        item.across_match = -1;
      if (!item.is_along_pinned)
        item.match = -1;
      settle_origins (self, &item, &spot);
    }
}

void
rc_nest_builder_vary (RcNestBuilder *self, RcNestRandom *random)
{
  for (guint k = 0; self->pins != NULL && k < self->pins->lengths->len; k++)
    {
      const RcNestPinnedLength *length = self->pins->lengths->pdata[k];
      RcLength                 *ways[] = { &self->back[k], &self->on[k] };

      for (guint way = 0; way < 2; way++)
        {
          guint    i = rc_nest_random_below (random, self->task->items->n);
          RcLength h = self->task->items->items[i].h;

          switch (rc_nest_random_below (random, 4))
            {
            case 0:
              *ways[way] = h;
              break;
            case 1:
              *ways[way] = MAX (h - (length->to - length->from), 0);
              break;
            case 2:
              *ways[way] = way == 0 ? length->from : 0;
              break;
            default:
              *ways[way] = 0;
            }
        }
    }
}

guint
rc_nest_builder_run (RcNestBuilder *self, const guint *order, guint n_order, int eagerness, const guint *bin_order,
                     RcNestSpot *spots)
{
  guint unplaced = 0;

  self->n_levels = self->n_columns = 0;
  rc_nest_spaces_reset (&self->tops);
  rc_nest_spaces_reset (&self->sides);
  rc_nest_spaces_reset (&self->bins);
  self->was_eager = FALSE;
  start_stretches (self);
  rc_nest_builder_open_bins (self, bin_order);
  if (self->is_tied)
    start_origins (self);
  for (guint k = 0; k < n_order; k++)
    {
      const RcNestItem *item = &self->task->items->items[order[k]];
      RcNestSpot       *spot = &spots[order[k]];

      if (item->is_along_pinned)
        *spot = self->pins->spots[order[k]];
      else
        rc_nest_builder_place (self, item, eagerness, spot);
      if (spot->bin < 0)
        {
          unplaced++;
          continue;
        }
      if (self->is_tied)
        settle_origins (self, item, spot);
      self->used[spot->bin] = MAX (self->used[spot->bin], spot->along + item->h);
      if (self->used[spot->bin] >= self->below)
        return n_order - k - 1 + unplaced;
    }
  return unplaced;
}

void
rc_nest_builder_stay_below (RcNestBuilder *self, RcLength used)
{
  self->below = used;
}

gboolean
rc_nest_builder_was_eager (const RcNestBuilder *self)
{
  return self->was_eager;
}

RcLength
rc_nest_builder_get_used (const RcNestBuilder *self)
{
  const RcNestBins *bins = self->task->bins;
  RcLength          used = 0;

  for (guint b = 0; b < bins->n; b++)
    {
      gboolean last = b + 1 == bins->n || bins->bins[b + 1].source != bins->bins[b].source
                      || bins->bins[b + 1].copy != bins->bins[b].copy;

      if (last && self->used[b] > bins->bins[b].start)
        used += self->used[b];
    }
  return used;
}
