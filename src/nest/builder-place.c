#include "builder.h"

enum
{
  MOST_LOOKED_AT = 40 /* spaces of either kind for one item: with repeats and pins the first need not be the best */
};

typedef struct
{
  gint64   score;
  int      level, column; /* column -1: a new one */
  RcLength across, along;
} Choice;

/* --- which spaces are open --- */

static inline RcLength
get_top (const RcNestColumn *column)
{
  return column->limit - column->end;
}

static inline RcLength
get_side (const RcNestLevel *level)
{
  return level->width - level->across;
}

/* Too small for any item. */
static inline gboolean
is_open_top (const RcNestBuilder *self, const RcNestColumn *column)
{
  return get_top (column) >= self->task->items->least_h && column->width >= self->task->items->least_w;
}

static inline gboolean
is_open_side (const RcNestBuilder *self, const RcNestLevel *level)
{
  return get_side (level) >= self->task->items->least_w;
}

/* Moves where a column ends, or must end. */
static void
set_top (RcNestBuilder *self, int c, RcLength end, RcLength limit)
{
  RcNestColumn *column = &self->columns[c];
  gboolean      was_open = is_open_top (self, column);

  column->end = end;
  column->limit = limit;
  if (was_open && is_open_top (self, column))
    rc_nest_spaces_set_room (&self->tops, column->width, c, get_top (column));
  else if (was_open)
    rc_nest_spaces_remove (&self->tops, column->width, c);
  else if (is_open_top (self, column))
    rc_nest_spaces_add (&self->tops, column->width, get_top (column), c);
}

static void
open_top (RcNestBuilder *self, int c)
{
  const RcNestColumn *column = &self->columns[c];

  if (is_open_top (self, column))
    rc_nest_spaces_add (&self->tops, column->width, get_top (column), c);
}

static void
open_side (RcNestBuilder *self, int l)
{
  const RcNestLevel *level = &self->levels[l];

  if (is_open_side (self, level))
    rc_nest_spaces_add (&self->sides, level->end - level->start, get_side (level), l);
}

static void
close_side (RcNestBuilder *self, int l)
{
  const RcNestLevel *level = &self->levels[l];

  if (is_open_side (self, level))
    rc_nest_spaces_remove (&self->sides, level->end - level->start, l);
}

void
rc_nest_builder_open (RcNestBuilder *self, RcNestLevel level)
{
  int l = self->n_levels++;

  self->levels[l] = level;
  open_side (self, l);
  for (int c = level.first_column; c >= 0; c = self->columns[c].next)
    {
      self->columns[c].level = l;
      open_top (self, c);
    }
}

/* --- where an item may lie --- */

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

static inline gboolean
may_lie_in (const RcNestBuilder *self, const RcNestItem *item, int level)
{
  return (item->group < 0 && item->pinned == 0)
         || rc_nest_task_allows (self->task, item, &self->task->bins->bins[self->levels[level].bin]);
}

/* On top of a column: narrow ones first, until their width alone wastes more than the best. */
static void
try_tops (const RcNestBuilder *self, const RcNestItem *item, Choice *best)
{
  RcNestSpacesPlace  place = rc_nest_spaces_find (&self->tops, item->w, item->h);
  const RcNestSpace *top;

  for (int left = MOST_LOOKED_AT; left > 0 && (top = rc_nest_spaces_get (&self->tops, place)) != NULL;
       place = rc_nest_spaces_find_next (&self->tops, place, item->h))
    {
      const RcNestColumn *column = &self->columns[top->id];
      gint64              score = 16 * (column->width - item->w) * item->h;
      RcLength            along, across;

      if (score >= best->score)
        return;
      if (!may_lie_in (self, item, column->level))
        continue;
      left--;
      along = place_along (self, item, column->end);
      across = place_across (self, item, column->across);
      score += 16 * (along - column->end) * item->w;
      if (along + item->h <= column->limit && across + item->w <= column->across + column->width && score < best->score)
        *best = (Choice){ score, column->level, top->id, across, along };
    }
}

/* In a new column of a level: short levels first. FALSE: there is none with room enough. */
static gboolean
try_sides (const RcNestBuilder *self, const RcNestItem *item, int eagerness, Choice *best)
{
  RcNestSpacesPlace  place = rc_nest_spaces_find (&self->sides, item->h, item->w);
  const RcNestSpace *side;
  gboolean           any = FALSE;

  for (int left = MOST_LOOKED_AT; left > 0 && (side = rc_nest_spaces_get (&self->sides, place)) != NULL;
       place = rc_nest_spaces_find_next (&self->sides, place, item->w))
    {
      const RcNestLevel *level = &self->levels[side->id];
      gint64             score = eagerness * (side->key - item->h) * item->w;
      RcLength           along, across;

      any = TRUE;
      if (score >= best->score)
        return TRUE;
      if (!may_lie_in (self, item, side->id))
        continue;
      left--;
      along = place_along (self, item, level->start);
      across = place_across (self, item, level->across);
      if (across + item->w > level->width || along + item->h > level->end)
        continue;
      if (across > level->across)
        score += (across - level->across >= self->task->items->least_w ? 2 : 16) * (across - level->across) * side->key;
      if (score < best->score)
        *best = (Choice){ score, side->id, -1, across, along };
    }
  return any;
}

/* --- putting it there --- */

/* The space that a column leaves on its left is a level of its own. */
static void
add_column (RcNestBuilder *self, int l, const RcNestItem *item, RcLength across, RcLength along, RcNestSpot *spot)
{
  RcNestLevel *level = &self->levels[l];
  int          c = self->n_columns++;

  if (across - level->across >= self->task->items->least_w)
    {
      int sibling = self->n_levels;

      rc_nest_builder_open (
          self, (RcNestLevel){ level->start, level->end, level->across, across, level->bin, -1, level->sibling });
      level->sibling = sibling;
    }
  self->columns[c] = (RcNestColumn){ across, item->w, along + item->h, level->end, l, level->first_column };
  level->first_column = c;
  open_top (self, c);
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

/* Makes the last length of a stretch longer. */
static void
lengthen (RcNestBuilder *self, RcNestStretch *stretch, RcLength end)
{
  RcLength before = stretch->end;

  if (end <= before)
    return;
  for (int l = stretch->last_level; l >= 0; l = self->levels[l].sibling)
    {
      close_side (self, l);
      self->levels[l].end = end;
      open_side (self, l);
      for (int c = self->levels[l].first_column; c >= 0; c = self->columns[c].next)
        if (self->columns[c].limit == before)
          set_top (self, c, self->columns[c].end, end);
    }
  stretch->end = end;
}

static void
put (RcNestBuilder *self, const RcNestItem *item, const Growth *growth, RcNestSpot *spot)
{
  RcNestStretch *stretch = &self->stretches[growth->stretch];
  RcLength       end = growth->along + item->h;
  int            l = growth->level;

  if (l < 0)
    {
      l = self->n_levels++;
      self->levels[l]
          = (RcNestLevel){ stretch->end, end, 0, self->task->bins->bins[stretch->bin].width, stretch->bin, -1, -1 };
      stretch->end = end;
      stretch->last_level = l;
    }
  else
    {
      lengthen (self, stretch, end);
      if (growth->column >= 0)
        {
          *spot = (RcNestSpot){ stretch->bin, growth->across, growth->along };
          set_top (self, growth->column, end, self->columns[growth->column].limit);
          return;
        }
      close_side (self, l);
    }
  add_column (self, l, item, growth->across, growth->along, spot);
  open_side (self, l);
}

/* Where an item that makes the last length of a stretch longer, or a new one, could start at the earliest. */
static RcLength
find_start (const RcNestBuilder *self, const RcNestStretch *stretch)
{
  RcLength start = stretch->end;

  for (int l = self->may_grow ? stretch->last_level : -1; l >= 0; l = self->levels[l].sibling)
    {
      const RcNestLevel *level = &self->levels[l];

      if (is_open_side (self, level))
        return level->start;
      for (int c = level->first_column; c >= 0; c = self->columns[c].next)
        if (self->columns[c].limit == level->end)
          start = MIN (start, self->columns[c].end);
    }
  return start;
}

/* How long an item can be that still goes into a bin. */
static RcLength
get_room (const RcNestBuilder *self, int b)
{
  RcLength room = 0;

  for (int s = self->first_stretch[b]; s < self->first_stretch[b + 1]; s++)
    room = MAX (room, self->stretches[s].limit - find_start (self, &self->stretches[s]));
  return room;
}

void
rc_nest_builder_open_bins (RcNestBuilder *self, const guint *bin_order)
{
  for (guint k = 0; k < self->task->bins->n; k++)
    {
      int b = bin_order != NULL ? (int)bin_order[k] : (int)k;

      rc_nest_spaces_add (&self->bins, k, get_room (self, b), b);
    }
}

/* Where a bin's used length grows least; at best a level of its own. */
static Growth
find_growth (const RcNestBuilder *self, const RcNestItem *item, int b)
{
  const RcNestBin *bin = &self->task->bins->bins[b];
  Growth           best = { .growth = G_MAXINT64 };

  if (!rc_nest_task_allows (self->task, item, bin))
    return best;
  for (int s = self->first_stretch[b]; s < self->first_stretch[b + 1] && best.growth > 0; s++)
    {
      consider_growth (
          self, item,
          (Growth){ 0, s, -1, -1, place_across (self, item, 0), place_along (self, item, self->stretches[s].end) },
          bin->width, &best);
      if (self->may_grow)
        consider_last_levels (self, item, s, &best);
    }
  return best;
}

/* In the first bin that takes the item. */
static void
open_level (RcNestBuilder *self, const RcNestItem *item, RcNestSpot *spot)
{
  RcNestSpacesPlace  place = rc_nest_spaces_find (&self->bins, 0, item->h);
  const RcNestSpace *bin;

  *spot = (RcNestSpot){ -1, 0, 0 };
  for (; (bin = rc_nest_spaces_get (&self->bins, place)) != NULL;
       place = rc_nest_spaces_find_next (&self->bins, place, item->h))
    {
      Growth best = find_growth (self, item, bin->id);

      if (best.growth == G_MAXINT64)
        continue;
      put (self, item, &best, spot);
      rc_nest_spaces_set_room (&self->bins, bin->key, bin->id, get_room (self, bin->id));
      return;
    }
}

void
rc_nest_builder_place (RcNestBuilder *self, const RcNestItem *item, int eagerness, RcNestSpot *spot)
{
  Choice   best = { G_MAXINT64, -1, -1, 0, 0 };
  gboolean has_top;

  try_tops (self, item, &best);
  has_top = best.level >= 0;
  if (best.score > 0 && try_sides (self, item, eagerness, &best))
    self->was_eager |= self->is_tied || (has_top && best.score > 0);
  if (best.level < 0)
    open_level (self, item, spot);
  else if (best.column >= 0)
    {
      *spot = (RcNestSpot){ self->levels[best.level].bin, best.across, best.along };
      set_top (self, best.column, best.along + item->h, self->columns[best.column].limit);
    }
  else
    {
      close_side (self, best.level);
      add_column (self, best.level, item, best.across, best.along, spot);
      open_side (self, best.level);
    }
}
