#include "builder.h"

typedef struct
{
  gint64   score;
  int      slot, column; /* index in open[]; column -1: a new one */
  RcLength across, along;
} Choice;

/* A level is closed for good when nothing fits beside its columns nor on top of any. */
static gboolean
is_full (const RcNestBuilder *self, const RcNestLevel *level)
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
place_in_match (const RcNestOrigin *origins, int match, RcLength repeat, RcLength phase, RcLength from)
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
  const RcNestLevel *level = &self->levels[self->open[slot]];
  RcLength           across;

  for (int c = level->first_column; c >= 0; c = self->columns[c].next)
    {
      const RcNestColumn *column = &self->columns[c];
      RcLength            along;
      gint64              score;

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

void
rc_nest_builder_open (RcNestBuilder *self, RcNestLevel level)
{
  self->levels[self->n_levels] = level;
  if (!is_full (self, &level))
    self->open[self->n_open++] = self->n_levels;
  self->n_levels++;
}

/* The space that a column leaves on its left is a level of its own. */
static void
add_column (RcNestBuilder *self, RcNestLevel *level, const RcNestItem *item, RcLength across, RcLength along,
            RcNestSpot *spot)
{
  int c = self->n_columns++;

  if (across - level->across >= self->task->items->least_w)
    {
      int sibling = self->n_levels;

      rc_nest_builder_open (
          self, (RcNestLevel){ level->start, level->end, level->across, across, level->bin, -1, level->sibling });
      level->sibling = sibling;
    }
  self->columns[c] = (RcNestColumn){ across, item->w, along + item->h, level->end, level->first_column };
  level->first_column = c;
  *spot = (RcNestSpot){ level->bin, across, along };
  level->across = across + item->w;
}

/* A new length of roll, or one more length for the last of a stretch. */
typedef struct
{
  RcLength growth; /* of the bin's used length */
  int      stretch;
  int      level, column; /* -1: a new one */
  RcLength across, along;
} Growth;

static void
consider_growth (const RcNestBuilder *self, const RcNestItem *item, Growth growth, RcLength most_across, Growth *best)
{
  const RcNestStretch *stretch = &self->stretches[growth.stretch];
  RcLength             end = growth.along + item->h;

  if (end > stretch->limit || growth.across + item->w > most_across)
    return;
  growth.growth = MAX (end - self->used[stretch->bin], 0);
  if (growth.growth < best->growth)
    *best = growth;
}

/* Levels that end where their stretch so far does: making them longer moves nothing. */
static void
consider_last_levels (const RcNestBuilder *self, const RcNestItem *item, int s, Growth *best)
{
  const RcNestStretch *stretch = &self->stretches[s];

  for (int l = stretch->last_level; l >= 0; l = self->levels[l].sibling)
    {
      const RcNestLevel *level = &self->levels[l];

      for (int c = level->first_column; c >= 0; c = self->columns[c].next)
        if (self->columns[c].limit == level->end)
          {
            const RcNestColumn *column = &self->columns[c];

            consider_growth (self, item,
                             (Growth){ 0, s, l, c, place_across (self, item, column->across),
                                       place_along (self, item, column->end) },
                             column->across + column->width, best);
          }
      consider_growth (
          self, item,
          (Growth){ 0, s, l, -1, place_across (self, item, level->across), place_along (self, item, level->start) },
          level->width, best);
    }
}

static void
reopen (RcNestBuilder *self, int level)
{
  for (int k = 0; k < self->n_open; k++)
    if (self->open[k] == level)
      return;
  self->open[self->n_open++] = level;
}

/* Makes the last length of a stretch longer. */
static void
lengthen (RcNestBuilder *self, RcNestStretch *stretch, RcLength end)
{
  RcLength before = stretch->end;

  if (end <= before)
    return;
  for (int l = stretch->last_level; l >= 0; l = self->levels[l].sibling)
    {
      RcNestLevel *level = &self->levels[l];

      level->end = end;
      for (int c = level->first_column; c >= 0; c = self->columns[c].next)
        if (self->columns[c].limit == before)
          self->columns[c].limit = end;
      reopen (self, l);
    }
  stretch->end = end;
}

static void
put (RcNestBuilder *self, const RcNestItem *item, const Growth *growth, RcNestSpot *spot)
{
  RcNestStretch *stretch = &self->stretches[growth->stretch];
  RcLength       end = growth->along + item->h;

  if (growth->level < 0)
    {
      RcNestLevel level = { stretch->end, end, 0, self->task->bins->bins[stretch->bin].width, stretch->bin, -1, -1 };

      stretch->end = end;
      add_column (self, &level, item, growth->across, growth->along, spot);
      stretch->last_level = self->n_levels;
      rc_nest_builder_open (self, level);
      return;
    }
  lengthen (self, stretch, end);
  if (growth->column < 0)
    {
      add_column (self, &self->levels[growth->level], item, growth->across, growth->along, spot);
      return;
    }
  self->columns[growth->column].end = end;
  *spot = (RcNestSpot){ stretch->bin, growth->across, growth->along };
}

/* In the first bin that takes the item, where the bin's used length grows least; at best a level of its own. */
static void
open_level (RcNestBuilder *self, const RcNestItem *item, const guint *bin_order, RcNestSpot *spot)
{
  const RcNestBins *bins = self->task->bins;

  *spot = (RcNestSpot){ -1, 0, 0 };
  for (guint k = 0; k < bins->n && spot->bin < 0; k++)
    {
      guint            b = bin_order != NULL ? bin_order[k] : k;
      const RcNestBin *bin = &bins->bins[b];
      Growth           best = { .growth = G_MAXINT64 };

      if (!rc_nest_task_allows (self->task, item, bin))
        continue;
      for (int s = self->first_stretch[b]; s < self->first_stretch[b + 1] && best.growth > 0; s++)
        {
          consider_growth (
              self, item,
              (Growth){ 0, s, -1, -1, place_across (self, item, 0), place_along (self, item, self->stretches[s].end) },
              bin->width, &best);
          if (self->may_grow)
            consider_last_levels (self, item, s, &best);
        }
      if (best.growth < G_MAXINT64)
        put (self, item, &best, spot);
    }
}

void
rc_nest_builder_place (RcNestBuilder *self, const RcNestItem *item, int eagerness, const guint *bin_order,
                       RcNestSpot *spot)
{
  Choice       best = { G_MAXINT64, -1, -1, 0, 0 };
  RcNestLevel *level;

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
