#include "build.h"

#include "pins.h"

/* A length of a bin, or a part of one from `across` to `width`, that columns are opened in from left to right. */
typedef struct
{
  RcLength start, end; /* along the roll */
  RcLength across;     /* where the next column would start */
  RcLength width;      /* where the last must end */
  int      bin;
  int      first_column; /* -1: none */
} Level;

typedef struct
{
  RcLength across, width, end;
  RcLength limit; /* where its last item must end */
  int      next;
} Column;

/* A length of a bin between pinned ones that levels are opened in one after the other. */
typedef struct
{
  int      bin;
  RcLength end, limit; /* of the levels so far; where the last must end */
} Stretch;

/* Where the pattern of a match begins, once one of its items has a place. */
typedef struct
{
  gboolean is_known;
  RcLength at;
} Origin;

struct _RcNestBuilder
{
  const RcNestTask *task;
  Level            *levels;
  Column           *columns;
  int              *open; /* levels that may still take something */
  Stretch          *stretches;
  int              *first_stretch; /* by bin, and one more */
  RcLength         *used;          /* by bin: where its last item ends */
  int               n_levels, n_columns, n_open;
  gboolean          is_tied;
  Origin           *origins, *across_origins; /* by match */
  RcNestPins       *pins;                     /* NULL: nothing is pinned along the roll */
  RcLength         *back, *on;                /* by pinned length: how far it is made longer either way */
};

typedef struct
{
  gint64   score;
  int      slot, column; /* index in open[]; column -1: a new one */
  RcLength across, along;
} Choice;

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
  self->is_tied = task->items->is_tied;
  if (self->is_tied)
    {
      read_pins (self);
      self->origins = g_new (Origin, task->items->matches->len + 1);
      self->across_origins = g_new (Origin, task->items->across_matches->len + 1);
      n_lengths = self->pins != NULL ? self->pins->lengths->len : 0;
    }
  most = self->is_tied ? 4 * n + 2 * n_lengths : n; /* each item leaves at most a gap beside it, a pinned one three */
  self->levels = g_new (Level, most);
  self->columns = g_new (Column, most);
  self->open = g_new (int, most);
  self->stretches = g_new (Stretch, task->bins->n + n_lengths + 1);
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
  g_free (self->open);
  g_free (self->stretches);
  g_free (self->first_stretch);
  g_free (self->used);
  g_free (self->origins);
  g_free (self->across_origins);
  g_free (self->back);
  g_free (self->on);
  g_free (self);
}

/* A level is closed for good when nothing fits beside its columns nor on top of any. */
static gboolean
is_full (const RcNestBuilder *self, const Level *level)
{
  const RcNestItems *items = self->task->items;

  if (level->width - level->across >= items->least_w)
    return FALSE;
  for (int c = level->first_column; c >= 0; c = self->columns[c].next)
    if (self->columns[c].limit - self->columns[c].end >= items->least_h && self->columns[c].width >= items->least_w)
      return FALSE;
  return TRUE;
}

static inline RcLength
place_in_match (const Origin *origins, int match, RcLength repeat, RcLength phase, RcLength from)
{
  if (match < 0)
    return rc_nest_place_in_repeat (repeat, phase, from);
  return origins[match].is_known ? rc_nest_place_in_repeat (repeat, origins[match].at + phase, from) : from;
}

/* The first place along the roll, at or after `from`, where an item may start. */
static inline RcLength
place_along (const RcNestBuilder *self, const RcNestItem *item, RcLength from)
{
  return place_in_match (self->origins, item->match, item->repeat, item->phase, from);
}

/* The same across the roll; RC_NEST_ENDLESS: none. */
static inline RcLength
place_across (const RcNestBuilder *self, const RcNestItem *item, RcLength from)
{
  RcLength across = from;

  if (!self->is_tied)
    return from;
  if (item->is_across_pinned)
    from = item->across >= across ? item->across : RC_NEST_ENDLESS;
  across = place_in_match (self->across_origins, item->across_match, item->across_repeat, item->across_phase, from);
  return item->is_across_pinned && across != from ? RC_NEST_ENDLESS : across;
}

static void
try_level (const RcNestBuilder *self, const RcNestItem *item, int slot, int eagerness, Choice *best)
{
  const Level *level = &self->levels[self->open[slot]];
  RcLength     across;

  for (int c = level->first_column; c >= 0; c = self->columns[c].next)
    {
      const Column *column = &self->columns[c];
      RcLength      along;
      gint64        score;

      if (column->width < item->w || column->limit - column->end < item->h)
        continue;
      along = place_along (self, item, column->end);
      across = place_across (self, item, column->across);
      if (along + item->h > column->limit || across + item->w > column->across + column->width)
        continue;
      score = 16 * ((column->width - item->w) * item->h + (along - column->end) * item->w);
      if (score < best->score)
        *best = (Choice){ score, slot, c, across, along };
    }
  across = place_across (self, item, level->across);
  if (across + item->w <= level->width)
    {
      RcLength along = place_along (self, item, level->start);
      gint64   score = eagerness * (level->end - level->start - item->h) * item->w;

      if (across > level->across)
        score += (across - level->across >= self->task->items->least_w ? 2 : 16) * (across - level->across)
                 * (level->end - level->start);
      if (along + item->h <= level->end && score < best->score)
        *best = (Choice){ score, slot, -1, across, along };
    }
}

static void
open (RcNestBuilder *self, Level level)
{
  self->levels[self->n_levels] = level;
  if (!is_full (self, &level))
    self->open[self->n_open++] = self->n_levels;
  self->n_levels++;
}

/* The space that a column leaves on its left is a level of its own. */
static void
add_column (RcNestBuilder *self, Level *level, const RcNestItem *item, RcLength across, RcLength along,
            RcNestSpot *spot)
{
  int c = self->n_columns++;

  if (across - level->across >= self->task->items->least_w)
    open (self, (Level){ level->start, level->end, level->across, across, level->bin, -1 });
  self->columns[c] = (Column){ across, item->w, along + item->h, level->end, level->first_column };
  level->first_column = c;
  *spot = (RcNestSpot){ level->bin, across, along };
  level->across = across + item->w;
}

static void
open_level (RcNestBuilder *self, const RcNestItem *item, const guint *bin_order, RcNestSpot *spot)
{
  const RcNestBins *bins = self->task->bins;

  for (guint k = 0; k < bins->n; k++)
    {
      guint            b = bin_order != NULL ? bin_order[k] : k;
      const RcNestBin *bin = &bins->bins[b];

      if (!rc_nest_task_allows (self->task, item, bin))
        continue;
      for (int s = self->first_stretch[b]; s < self->first_stretch[b + 1]; s++)
        {
          Stretch *stretch = &self->stretches[s];
          RcLength along = place_along (self, item, stretch->end), across = place_across (self, item, 0);
          Level    level = { stretch->end, along + item->h, 0, bin->width, (int)b, -1 };

          if (along + item->h > stretch->limit || across + item->w > bin->width)
            continue;
          stretch->end = level.end;
          add_column (self, &level, item, across, along, spot);
          open (self, level);
          return;
        }
    }
  *spot = (RcNestSpot){ -1, 0, 0 };
}

static void
settle_origins (RcNestBuilder *self, const RcNestItem *item, const RcNestSpot *spot)
{
  if (item->match >= 0 && !self->origins[item->match].is_known)
    self->origins[item->match] = (Origin){ TRUE, spot->along - item->phase };
  if (item->across_match >= 0 && !self->across_origins[item->across_match].is_known)
    self->across_origins[item->across_match] = (Origin){ TRUE, spot->across - item->across_phase };
}

static void
place (RcNestBuilder *self, const RcNestItem *item, int eagerness, const guint *bin_order, RcNestSpot *spot)
{
  Choice best = { G_MAXINT64, -1, -1, 0, 0 };
  Level *level;

  for (int s = 0; s < self->n_open && best.score > 0; s++)
    if ((item->group < 0 && item->pinned == 0 && self->task->bins->n == 1)
        || rc_nest_task_allows (self->task, item, &self->task->bins->bins[self->levels[self->open[s]].bin]))
      try_level (self, item, s, eagerness, &best);
  if (best.slot < 0)
    {
      open_level (self, item, bin_order, spot);
      return;
    }

  level = &self->levels[self->open[best.slot]];
  if (best.column >= 0)
    {
      *spot = (RcNestSpot){ level->bin, best.across, best.along };
      self->columns[best.column].end = best.along + item->h;
    }
  else
    add_column (self, level, item, best.across, best.along, spot);
  if (is_full (self, level))
    {
      self->n_open--;
      for (int s = best.slot; s < self->n_open; s++)
        self->open[s] = self->open[s + 1];
    }
}

/* The free space of a pinned length that starts at `start` and ends at `end`. */
static void
open_pinned (RcNestBuilder *self, const RcNestPinnedLength *length, RcLength start, RcLength end)
{
  for (guint k = 0; k < length->blocks->len; k++)
    {
      const RcNestPinnedBlock *block = length->blocks->pdata[k];
      Level                    level = { start, end, block->to, block->to, length->bin, -1 };
      RcLength                 reach = start;

      if (block->pieces->len == 0)
        level.across = block->from;
      for (guint p = 0; p <= block->pieces->len && block->pieces->len > 0; p++)
        {
          guint    i = p < block->pieces->len ? g_array_index (block->pieces, guint, p) : 0;
          RcLength limit = p < block->pieces->len ? self->pins->spots[i].along : end;

          if (limit > reach)
            {
              self->columns[self->n_columns]
                  = (Column){ block->from, block->to - block->from, reach, limit, level.first_column };
              level.first_column = self->n_columns++;
            }
          if (p < block->pieces->len)
            reach = MAX (reach, limit + self->task->items->items[i].h);
        }
      open (self, level);
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

      self->first_stretch[b] = (int)n;
      self->used[b] = from;
      for (; lengths != NULL && k < lengths->len && ((RcNestPinnedLength *)lengths->pdata[k])->bin == (int)b; k++)
        {
          const RcNestPinnedLength *length = lengths->pdata[k];
          gboolean last = k + 1 == lengths->len || ((RcNestPinnedLength *)lengths->pdata[k + 1])->bin != (int)b;
          RcLength limit = last ? bins->bins[b].end : ((RcNestPinnedLength *)lengths->pdata[k + 1])->from;
          RcLength start = length->from - MIN (self->back[k], length->from - from);
          RcLength end = length->to + MIN (self->on[k], limit - length->to);

          self->stretches[n++] = (Stretch){ (int)b, from, start };
          open_pinned (self, length, start, end);
          self->used[b] = MAX (self->used[b], length->to);
          from = end;
        }
      self->stretches[n++] = (Stretch){ (int)b, from, bins->bins[b].end };
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

  self->n_levels = self->n_columns = self->n_open = 0;
  start_stretches (self);
  if (self->is_tied)
    start_origins (self);
  for (guint k = 0; k < n_order; k++)
    {
      const RcNestItem *item = &self->task->items->items[order[k]];
      RcNestSpot       *spot = &spots[order[k]];

      if (item->is_along_pinned)
        *spot = self->pins->spots[order[k]];
      else
        place (self, item, eagerness, bin_order, spot);
      if (spot->bin < 0)
        {
          unplaced++;
          continue;
        }
      if (self->is_tied)
        settle_origins (self, item, spot);
      self->used[spot->bin] = MAX (self->used[spot->bin], spot->along + item->h);
    }
  return unplaced;
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
