#include "item.h"

static int
find_name (GPtrArray *names, const char *name)
{
  if (name == NULL)
    return -1;
  for (guint i = 0; i < names->len; i++)
    if (g_str_equal (names->pdata[i], name))
      return (int)i;
  g_ptr_array_add (names, (gpointer)name);
  return (int)names->len - 1;
}

static RcLength
reduce_phase (RcLength repeat, RcLength phase)
{
  RcLength rest = repeat > 0 ? phase % repeat : 0;

  return rest < 0 ? rest + repeat : rest;
}

static RcNestItem
make_item (RcNestItems *self, const RcNestCut *cut, guint index)
{
  RcNestItem item = { .w = cut->width, .h = cut->length, .pinned = cut->pinned_roll, .cut = index };

  item.repeat = MAX (cut->repeat, 0);
  item.phase = reduce_phase (item.repeat, cut->phase);
  item.match = item.repeat > 0 ? find_name (self->matches, cut->match) : -1;
  item.across_repeat = MAX (cut->across_repeat, 0);
  item.across_phase = reduce_phase (item.across_repeat, cut->across_phase);
  item.across_match = item.across_repeat > 0 ? find_name (self->across_matches, cut->across_match) : -1;
  item.group = find_name (self->groups, cut->group);
  item.is_along_pinned = cut->is_along_pinned;
  item.is_across_pinned = cut->is_across_pinned;
  item.along = cut->along;
  item.across = cut->across;
  return item;
}

static void
take_in (RcNestItems *self, const RcNestItem *item)
{
  self->has_repeats |= item->repeat > 0;
  self->is_tied |= item->match >= 0 || item->across_repeat > 0 || item->is_along_pinned || item->is_across_pinned;
  self->least_w = MIN (self->least_w, item->w);
  self->least_h = MIN (self->least_h, item->h);
}

RcNestItems *
rc_nest_items_new (const RcNestProblem *problem)
{
  RcNestItems *self = g_new0 (RcNestItems, 1);
  guint        n = 0;

  for (guint c = 0; c < problem->cuts->len; c++)
    n += ((RcNestCut *)problem->cuts->pdata[c])->quantity;
  self->items = g_new (RcNestItem, n + 1);
  self->groups = g_ptr_array_new ();
  self->matches = g_ptr_array_new ();
  self->across_matches = g_ptr_array_new ();
  self->least_w = self->least_h = G_MAXINT64;
  for (guint c = 0; c < problem->cuts->len; c++)
    {
      const RcNestCut *cut = problem->cuts->pdata[c];
      RcNestItem       item = make_item (self, cut, c);

      take_in (self, &item);
      for (item.copy = 0; item.copy < cut->quantity; item.copy++)
        self->items[self->n++] = item;
    }
  return self;
}

RcNestItems *
rc_nest_items_new_part (const RcNestItems *all, const guint *chosen, guint n)
{
  RcNestItems *self = g_new0 (RcNestItems, 1);

  self->items = g_new (RcNestItem, n + 1);
  self->n = n;
  self->groups = g_ptr_array_ref (all->groups);
  self->matches = g_ptr_array_ref (all->matches);
  self->across_matches = g_ptr_array_ref (all->across_matches);
  self->least_w = self->least_h = G_MAXINT64;
  for (guint k = 0; k < n; k++)
    {
      self->items[k] = all->items[chosen[k]];
      take_in (self, &self->items[k]);
    }
  return self;
}

void
rc_nest_items_free (RcNestItems *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->groups);
  g_ptr_array_unref (self->matches);
  g_ptr_array_unref (self->across_matches);
  g_free (self->items);
  g_free (self);
}
