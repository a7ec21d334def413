#include "reason.h"

#include <glib/gi18n-lib.h>

#include "bound.h"

char *
rc_nest_reason_format_length (RcLength length)
{
  g_autofree char *metric = rc_length_format (length, &RC_LENGTH_STYLE_METRIC);
  g_autofree char *imperial = rc_length_format (length, &RC_LENGTH_STYLE_IMPERIAL);

  return g_strdup_printf ("%s (%s)", metric, imperial);
}

const char *
rc_nest_reason_get_label (const RcNestTask *task, const RcNestItem *item)
{
  const RcNestCut *cut = task->problem->cuts->pdata[item->cut];

  return cut->label != NULL ? cut->label : "?";
}

static char *
check_item (const RcNestTask *task, const RcNestItem *item)
{
  RcLength widest = 0, longest = 0;

  for (guint b = 0; b < task->bins->n; b++)
    {
      const RcNestBin *bin = &task->bins->bins[b];

      if (item->pinned > 0 && item->pinned <= MAX (task->problem->rolls->len, 1) && item->pinned != bin->source + 1)
        continue;
      widest = MAX (widest, bin->width);
      if (item->w <= bin->width)
        longest = MAX (longest, bin->end - rc_nest_item_place (item, bin->start));
    }
  if (item->w <= 0 || item->h <= 0)
    return g_strdup_printf (_ ("Cut %s has no size: its width and its length must both be more than zero"),
                            rc_nest_reason_get_label (task, item));
  if (item->w > widest)
    {
      g_autofree char *has = rc_nest_reason_format_length (item->w);
      g_autofree char *may = rc_nest_reason_format_length (widest);

      return g_strdup_printf (_ ("Cut %s is %s wide, wider than every roll it may come from; at most %s can be cut"),
                              rc_nest_reason_get_label (task, item), has, may);
    }
  if (item->h > longest)
    {
      g_autofree char *has = rc_nest_reason_format_length (item->h);
      g_autofree char *may = rc_nest_reason_format_length (MAX (longest, 0));

      return g_strdup_printf (_ ("Cut %s is %s long, longer than every roll it may come from; at most %s can be cut"),
                              rc_nest_reason_get_label (task, item), has, may);
    }
  return NULL;
}

char *
rc_nest_reason_find (const RcNestTask *task)
{
  if (task->problem->roll_width <= 0)
    return g_strdup (_ ("The roll has no width: it must be more than zero"));
  for (guint i = 0; i < task->items->n; i++)
    {
      char *reason = task->items->items[i].copy == 0 ? check_item (task, &task->items->items[i]) : NULL;

      if (reason != NULL)
        return reason;
    }
  return rc_nest_reason_for_ties (task);
}

/* The length of a lot's rolls (-1: of all) that the items of `group` (-1: all) need at least, with what their repeats
 * leave between them. */
static RcLength
compute_need (const RcNestTask *task, int group, int lot)
{
  g_autofree guint *chosen = g_new (guint, task->items->n + 1);
  g_autoptr (RcNestItems) items = NULL;
  g_autofree RcLength *w = NULL;
  RcLength            *h, width = 1, need;
  guint                n = 0, n_bins = 0;

  for (guint i = 0; i < task->items->n; i++)
    if (group < 0 || task->items->items[i].group == group)
      chosen[n++] = i;
  items = rc_nest_items_new_part (task->items, chosen, n);
  w = g_new (RcLength, 2 * n + 1);
  h = w + n;
  for (guint b = 0; b < task->bins->n; b++)
    {
      width = MAX (width, task->bins->bins[b].width);
      n_bins += lot < 0 || task->bins->bins[b].lot == lot;
    }
  for (guint i = 0; i < n; i++)
    {
      w[i] = items->items[i].w;
      h[i] = items->items[i].h;
    }
  need = rc_nest_bound_rectangles (w, h, n, width);
  return items->has_repeats ? MAX (need, rc_nest_bound_held (items, width, n_bins)) : need;
}

/* What the rolls of a lot (-1: all) hold. */
static RcLength
compute_stock (const RcNestTask *task, int lot)
{
  RcLength stock = 0;

  for (guint b = 0; b < task->bins->n; b++)
    {
      const RcNestBin *bin = &task->bins->bins[b];

      if (lot < 0 || bin->lot == lot)
        stock = MIN (stock + bin->end - bin->start, RC_NEST_ENDLESS);
    }
  return stock;
}

RcLength
rc_nest_reason_find_shortage (const RcNestTask *task, int lot, guint group)
{
  return compute_need (task, (int)group, lot) - compute_stock (task, lot);
}

/* A cut of the group that no roll of the lot takes; NULL: each is taken by one, or a pin keeps it away. */
static char *
check_rolls_of_lot (const RcNestTask *task, guint group, int lot, const char *lot_name)
{
  const char *name = task->items->groups->pdata[group];

  for (guint i = 0; i < task->items->n; i++)
    {
      const RcNestItem *item = &task->items->items[i];
      const char       *label = rc_nest_reason_get_label (task, item);
      RcLength          widest = 0, longest = 0;
      g_autofree char  *over = NULL;

      if (item->group != (int)group)
        continue;
      for (guint b = 0; b < task->bins->n; b++)
        {
          const RcNestBin *bin = &task->bins->bins[b];

          if (bin->lot != lot)
            continue;
          widest = MAX (widest, bin->width);
          if (item->w <= bin->width)
            longest = MAX (longest, bin->end - rc_nest_item_place (item, bin->start));
        }
      over = rc_nest_reason_format_length (item->w > widest ? item->w - widest : item->h - longest);
      if (item->w > widest)
        return g_strdup_printf (_ ("The cuts of %s must come from one dye lot, but cut %s is %s wider than every roll "
                                   "of the largest, %s"),
                                name, label, over, lot_name);
      if (item->h > longest)
        return g_strdup_printf (_ ("The cuts of %s must come from one dye lot, but cut %s is %s longer than every roll "
                                   "of the largest, %s"),
                                name, label, over, lot_name);
    }
  return NULL;
}

char *
rc_nest_reason_for_group (const RcNestTask *task, guint group)
{
  const char *name = task->items->groups->pdata[group], *lot_name;
  RcLength    need, most = 0;
  int         best = 0;
  char       *reason;

  for (int lot = 0; lot < task->bins->n_lots; lot++)
    if (compute_stock (task, lot) > most)
      {
        most = compute_stock (task, lot);
        best = lot;
      }
  need = compute_need (task, (int)group, best);
  lot_name = task->bins->lots->pdata[best];
  lot_name = lot_name != NULL ? lot_name : _ ("goods to be bought");
  if (need > most)
    {
      g_autofree char *needs = rc_nest_reason_format_length (need);
      g_autofree char *has = rc_nest_reason_format_length (most);
      g_autofree char *lacks = rc_nest_reason_format_length (need - most);

      return g_strdup_printf (
          _ ("The cuts of %s must come from one dye lot and need at least %s; the largest, %s, has %s: %s too little"),
          name, needs, lot_name, has, lacks);
    }
  reason = check_rolls_of_lot (task, group, best, lot_name);
  if (reason != NULL)
    return reason;
  return g_strdup_printf (_ ("The cuts of %s must come from one dye lot, but no lot has rolls that take all of them"),
                          name);
}

char *
rc_nest_reason_for_left_over (const RcNestTask *task, const RcNestSpot *spots, gboolean proved)
{
  RcLength         need = compute_need (task, -1, -1), stock = compute_stock (task, -1);
  g_autofree char *needs = rc_nest_reason_format_length (need);
  g_autofree char *has = rc_nest_reason_format_length (stock);
  guint            left = 0, first = G_MAXUINT;

  for (guint i = 0; i < task->items->n; i++)
    if (spots[i].bin < 0)
      {
        left++;
        first = MIN (first, i);
      }
  if (need > stock)
    {
      g_autofree char *lacks = rc_nest_reason_format_length (need - stock);

      return g_strdup_printf (_ ("The cuts need at least %s of roll; the stock has %s: %s too little"), needs, has,
                              lacks);
    }
  if (task->items->items[first].is_along_pinned)
    return g_strdup_printf (_ ("Straight cuts from edge to edge cannot part cut %s from the others that are pinned"),
                            rc_nest_reason_get_label (task, &task->items->items[first]));
  return g_strdup_printf (
      proved
          ? g_dngettext (GETTEXT_PACKAGE, "The cuts do not go onto the rolls in stock (%2$s): %1$u is left over, %3$s",
                         "The cuts do not go onto the rolls in stock (%2$s): %1$u are left over, the first %3$s", left)
          : g_dngettext (
              GETTEXT_PACKAGE, "No way was found to cut all from the rolls in stock (%2$s): %1$u is left over, %3$s",
              "No way was found to cut all from the rolls in stock (%2$s): %1$u are left over, the first %3$s", left),
      left, has, rc_nest_reason_get_label (task, &task->items->items[first]));
}
