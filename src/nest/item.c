#include "item.h"

static int
find_group (GPtrArray *groups, const char *name)
{
  if (name == NULL)
    return -1;
  for (guint i = 0; i < groups->len; i++)
    if (g_str_equal (groups->pdata[i], name))
      return (int)i;
  g_ptr_array_add (groups, (gpointer)name);
  return (int)groups->len - 1;
}

static RcLength
reduce_phase (const RcNestCut *cut)
{
  RcLength phase = cut->repeat > 0 ? cut->phase % cut->repeat : 0;

  return phase < 0 ? phase + cut->repeat : phase;
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
  self->least_w = self->least_h = G_MAXINT64;
  for (guint c = 0; c < problem->cuts->len; c++)
    {
      const RcNestCut *cut = problem->cuts->pdata[c];
      RcNestItem       item
          = { cut->width, cut->length, MAX (cut->repeat, 0), reduce_phase (cut), -1, cut->pinned_roll, c, 0 };

      item.group = find_group (self->groups, cut->group);
      self->has_repeats |= cut->repeat > 0;
      self->least_w = MIN (self->least_w, cut->width);
      self->least_h = MIN (self->least_h, cut->length);
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
  self->least_w = self->least_h = G_MAXINT64;
  for (guint k = 0; k < n; k++)
    {
      self->items[k] = all->items[chosen[k]];
      self->has_repeats |= self->items[k].repeat > 0;
      self->least_w = MIN (self->least_w, self->items[k].w);
      self->least_h = MIN (self->least_h, self->items[k].h);
    }
  return self;
}

void
rc_nest_items_free (RcNestItems *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->groups);
  g_free (self->items);
  g_free (self);
}
